#include "core/dynamics/figures.h"

#include <string>
#include <utility>
#include <vector>

#include "core/dynamics/balance.h"
#include "core/dynamics/figures_parts.h"
#include "core/dynamics/tine_gap.h"
#include "core/dynamics/wobble.h"

namespace flatwise::dynamics {

InputSpec lean_input(std::string_view name, std::string_view symbol) {
  return between(name, symbol, Kind::angle, 0, kMostLean);
}
InputSpec speed_input() { return above_nought("speed", "Ω", Kind::angular_speed, kMostSpeed); }

namespace {

Result<AngularSpeed> spin_from(const Given& in) {
  const std::string& word = in.text("spinning");
  const auto spinning = word == "rolling" ? Spinning::rolling : word == "held" ? Spinning::held : Spinning::with_shaft;
  const bool travel = in.has("travel"), radius = in.has("rolling-radius");
  if (spinning == Spinning::rolling ? !(travel && radius) : travel || radius) {
    const std::string_view field = spinning == Spinning::rolling && travel ? "rolling-radius" : "travel";
    return tl::unexpected(
        Problem{Code{"dynamics.rolling_inputs"}, std::string{field}, {}, {{"spinning", word}}, std::nullopt});
  }
  const double rolling = travel ? in.si("travel") / in.si("rolling-radius") : 0;
  return spin_of(spinning, radians_per_second(in.si("speed")), radians(in.si("lean")), radians_per_second(rolling));
}

Result<Computed> compute_couple(const Given& in) {
  const auto spin = spin_from(in);
  if (!spin) return tl::unexpected(spin.error());
  const auto couple = rotating_couple({radians_per_second(in.si("speed")), radians(in.si("lean")),
                                       Inertia::from_si(in.si("across")), Inertia::from_si(in.si("along")), *spin});
  if (!couple) return tl::unexpected(couple.error());
  return Computed{.values = {any(*couple), any(*spin)}};
}

FigureSpec make_rotating_couple() {
  return {
      .name = "rotating-couple",
      .formula = "C = I_t Ω² sin α cos α − I_p s Ω sin α; s = v/r rolling, −Ω (1 − cos α) held, Ω cos α with the shaft",
      .inputs = {speed_input(), lean_input(), between("across", "I_t", Kind::inertia, 0, 1e4),
                 between("along", "I_p", Kind::inertia, 0, 2e4), one_of("spinning", "s", kSpinningChoices),
                 optional(between("travel", "v", Kind::speed, -100, 100)),
                 optional(above_nought("rolling-radius", "r", Kind::length, kMostLength))},
      .outputs = {{"couple", "C", Kind::torque}, {"spin", "s", Kind::angular_speed}},
      .sources = {"Euler", "Skewed-disk"},
      .compute = compute_couple,
      .example = {{"speed=480 /min", "lean=5°", "across=0.085 kg·m²", "along=0.160 kg·m²", "spinning=rolling",
                   "travel=6 km/h", "rolling-radius=230 mm"},
                  "couple=13.57 N·m"}};
}

Result<Computed> compute_force(const Given& in) {
  const auto force = rotating_force({radians_per_second(in.si("speed")), radians(in.si("lean")),
                                     Mass::from_si(in.si("mass")), Length::from_si(in.si("mass-offset"))});
  if (!force) return tl::unexpected(force.error());
  return Computed{.values = {any(*force)}};
}

FigureSpec rotating_force_figure() {
  return {.name = "rotating-force",
          .formula = "F = m c sin α Ω²",
          .inputs = {speed_input(), lean_input(), between("mass", "m", Kind::mass, 0, 1e4),
                     between("mass-offset", "c", Kind::length, -10, 10)},
          .outputs = {{"force", "F", Kind::force}},
          .sources = {"Euler"},
          .compute = compute_force,
          .example = {{"speed=480 /min", "lean=5°", "mass=11.6 kg", "mass-offset=2 mm"}, "force=5.109 N"}};
}

Result<Computed> compute_travel(const Given& in) {
  const auto swing =
      tine_swing({metres(in.si("tip-radius")), radians(in.si("lean")), radians_per_second(in.si("speed"))});
  if (!swing) return tl::unexpected(swing.error());
  return Computed{.values = {any(swing->amplitude), any(swing->speed), any(swing->at_ends), any(swing->frequency)}};
}

FigureSpec tine_travel_figure() {
  return {.name = "tine-travel",
          .formula = "amplitude R sin α, speed R Ω tan α, acceleration R Ω² sin α cos² α, frequency Ω/2π",
          .inputs = {above_nought("tip-radius", "R", Kind::length, 10), lean_input(), speed_input()},
          .outputs = {{"amplitude", "R sin α", Kind::length},
                      {"tine-speed", "R Ω tan α", Kind::speed},
                      {"acceleration", "R Ω² sin α cos² α", Kind::acceleration},
                      {"frequency", "f", Kind::frequency}},
          .sources = {"Geometry"},
          .compute = compute_travel,
          .example = {{"tip-radius=230 mm", "lean=5°", "speed=480 /min"}, "amplitude=20.05 mm"}};
}

FigureSpec ground_figure() {
  return {.name = "ground-per-swing",
          .formula = "g = 2π v/Ω",
          .inputs = {above_nought("travel", "v", Kind::speed, 100), speed_input()},
          .outputs = {{"ground", "g", Kind::length}},
          .sources = {"Geometry"},
          .compute = [](const Given& in) -> Result<Computed> {
            if (!(in.si("speed") > 1e-3))
              return tl::unexpected(Problem{Code{"dynamics.too_slow"},
                                            "speed",
                                            {},
                                            {{"value", any(radians_per_second(in.si("speed")))}},
                                            std::nullopt});
            return Computed{.values = {any(metres(2 * std::numbers::pi * in.si("travel") / in.si("speed")))}};
          },
          .example = {{"travel=6 km/h", "speed=480 /min"}, "ground=208.3 mm"}};
}

Result<Computed> compute_gap(const Given& in) {
  const auto or_same = [&](std::string_view name, std::string_view other) {
    return in.si(in.has(other) ? other : name);
  };
  const TineRow a{metres(in.si("tip-radius")), metres(in.si("tine-width")), radians(in.si("lean")), Angle{}};
  const TineRow b{metres(or_same("tip-radius", "other-tip-radius")), metres(or_same("tine-width", "other-tine-width")),
                  radians(or_same("lean", "other-lean")), radians(in.si("between"))};
  const auto gap = tine_gap(metres(in.si("pitch")), a, b);
  if (!gap) return tl::unexpected(gap.error());
  Computed out{.values = {any(gap->gap), any(gap->closing), any(gap->at)}};
  if (gap->gap < Length{})
    out.findings.push_back({Code{"dynamics.tines_strike"},
                            Severity::out,
                            {{"by", any(-gap->gap)}},
                            {},
                            Message{Code{"dynamics.keep_apart"}, {}}});
  return out;
}

FigureSpec make_tine_gap() {
  return {
      .name = "tine-gap",
      .formula = "g = p − max (z_A − z_B) − (w_A + w_B)/2, z = −R tan α cos ψ/√(1 + tan² α cos² ψ)",
      .inputs = {above_nought("pitch", "p", Kind::length, kMostLength),
                 above_nought("tip-radius", "R_A", Kind::length, 10), lean_input("lean", "α_A"),
                 between("tine-width", "w_A", Kind::length, 0, 10),
                 between("between", "φ_B − φ_A", Kind::angle, -kMostTurn, kMostTurn),
                 optional(above_nought("other-tip-radius", "R_B", Kind::length, 10)),
                 optional(lean_input("other-lean", "α_B")),
                 optional(between("other-tine-width", "w_B", Kind::length, 0, 10))},
      .outputs = {{"gap", "g", Kind::length}, {"closing", "max (z_A − z_B)", Kind::length}, {"at", "ψ", Kind::angle}},
      .sources = {"Geometry"},
      .compute = compute_gap,
      .example = {{"pitch=160 mm", "tip-radius=230 mm", "lean=5°", "tine-width=34 mm", "between=180°"}, "gap=85.9 mm"}};
}

Result<Computed> compute_permissible(const Given& in) {
  const auto u = permissible_unbalance(
      {Speed::from_si(in.si("grade")), Mass::from_si(in.si("mass")), radians_per_second(in.si("speed"))});
  if (!u) return tl::unexpected(u.error());
  return Computed{.values = {any(u->unbalance), any(u->mass_offset)}};
}

FigureSpec permissible_figure() {
  InputSpec speed = speed_input();
  speed.least_si = 1e-3;  // Under a turn in two hours nothing is out of balance.
  return {.name = "permissible-unbalance",
          .formula = "U = m G/Ω, e = G/Ω",
          .inputs = {above_nought("grade", "G", Kind::speed, 10), above_nought("mass", "m", Kind::mass, 1e5), speed},
          .outputs = {{"unbalance", "U", Kind::unbalance}, {"mass-offset", "e", Kind::length}},
          .sources = {"ISO21940-11"},
          .compute = compute_permissible,
          .example = {{"grade=16 mm/s", "mass=60 kg", "speed=540 /min"}, "unbalance=16977 g·mm"}};
}

}  // namespace

const FigureSpec& rotating_couple_figure() {
  static const FigureSpec kFigure = make_rotating_couple();
  return kFigure;
}
const FigureSpec& tine_gap_figure() {
  static const FigureSpec kFigure = make_tine_gap();
  return kFigure;
}

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kFigures{
      rotating_couple_figure(), rotating_force_figure(), couple_resultant_figure(),
      tine_travel_figure(),     ground_figure(),         tine_gap_figure(),
      permissible_figure(),     least_couple_figure(),   least_force_figure()};
  return kFigures;
}

}  // namespace flatwise::dynamics
