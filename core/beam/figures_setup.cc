#include <algorithm>
#include <cmath>
#include <string>

#include "core/beam/figures_parts.h"

namespace flatwise::beam {
namespace {

constexpr std::string_view kSpinningChoices[] = {"held", "with-shaft", "rolling"};
constexpr std::string_view kSteelBooks = "steel; handbook, from memory";

Problem uneven(std::string_view name, std::size_t count, std::size_t positions) {
  return {Code{"beam.values_uneven"},
          std::string{name},
          {},
          {{"count", static_cast<std::int64_t>(count)}, {"positions", static_cast<std::int64_t>(positions)}},
          std::nullopt};
}

Result<Section> section_from(const Given& in) {
  const bool polygon = in.has("flats") && in.has("across"), round = in.has("diameter");
  if (polygon == round || in.has("flats") != in.has("across") || (in.has("inside") && !round))
    return tl::unexpected(Problem{Code{"beam.polygon_or_round"}, round ? "diameter" : "across", {}, {}, std::nullopt});
  if (polygon && in.si("flats") != std::floor(in.si("flats")))
    return tl::unexpected(
        Problem{Code{"beam.whole_flats"}, "flats", {}, {{"flats", any_ratio(in.si("flats"))}}, std::nullopt});
  if (round) return tube_section({metres(in.si("diameter")), in.has("inside") ? metres(in.si("inside")) : Length{}});
  return polygon_section(static_cast<int>(in.si("flats")), metres(in.si("across")));
}

/// Lists that go with the positions; the first that does not fit is kept.
class Lists {
 public:
  Lists(const Given& in, std::size_t count) : in_{in}, count_{count} {}

  std::vector<double> of(std::string_view name, double missing = 0) {
    const std::size_t given = in_.all_si(name).size();
    if (count_ == 0 && given > 0) return failed(name, given);  // Values of nothing are a slip, not a default.
    if (auto values = one_each(in_, name, count_, missing)) return *std::move(values);
    return failed(name, given);
  }
  std::vector<std::string> words(std::string_view name, const char* missing) {
    std::vector<std::string> all = in_.all_text(name);
    if (count_ == 0 && !all.empty()) (void)failed(name, all.size());
    if (all.empty()) all.assign(count_, missing);
    if (all.size() == 1) all.assign(count_, std::string{all.front()});
    if (all.size() == count_) return all;
    (void)failed(name, all.size());
    return std::vector<std::string>(count_, missing);
  }
  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }

 private:
  std::vector<double> failed(std::string_view name, std::size_t size) {
    if (!problem_) problem_ = uneven(name, size, count_);
    return std::vector<double>(count_);
  }
  const Given& in_;
  std::size_t count_;
  std::optional<Problem> problem_;
};

Body body_of(const std::string& spinning, double lean, double rolling) {
  Body b;
  b.with_shaft = spinning == "with-shaft" ? std::cos(lean) : spinning == "held" ? -(1 - std::cos(lean)) : 0;
  if (spinning == "rolling") b.own_spin = radians_per_second(rolling);
  return b;
}

std::optional<Problem> add_hangers(const Given& in, Setup& to) {
  for (const double z_m : in.all_si("hanger")) to.beam.hangers.push_back({metres(z_m)});
  const std::vector<double> at = in.all_si("soft-hanger");
  Lists lists{in, at.size()};
  const auto stiffness = lists.of("stiffness");
  if (lists.problem()) return lists.problem();
  for (std::size_t i = 0; i < at.size(); ++i)
    to.beam.hangers.push_back({metres(at[i]), Stiffness::from_si(stiffness[i])});
  std::ranges::stable_sort(to.beam.hangers, {}, &Hanger::at);
  return std::nullopt;
}

std::optional<Problem> add_bodies(const Given& in, Setup& to) {
  const std::vector<double> at = in.all_si("position");
  Lists lists{in, at.size()};
  const auto mass = lists.of("mass"), offset = lists.of("mass-offset"), across = lists.of("inertia-across"),
             along = lists.of("inertia-along"), lean = lists.of("lean"), azimuth = lists.of("azimuth");
  const auto spinning = lists.words("spinning", "held");
  if (lists.problem()) return lists.problem();
  const bool rolling = std::ranges::find(spinning, "rolling") != spinning.end();
  if (rolling != in.has("rolling-speed"))
    return Problem{Code{"beam.rolling_speed"}, "rolling-speed", {}, {}, std::nullopt};
  for (std::size_t i = 0; i < at.size(); ++i) {
    Body b = body_of(spinning[i], lean[i], rolling ? in.si("rolling-speed") : 0);
    b.at = metres(at[i]);
    b.mass = Mass::from_si(mass[i]);
    b.mass_offset = metres(offset[i]);
    b.across = Inertia::from_si(across[i]);
    b.along = Inertia::from_si(along[i]);
    to.beam.bodies.push_back(b);
    to.turning.push_back(turning_of(b, radians(lean[i]), radians(azimuth[i])));
  }
  return std::nullopt;
}

std::optional<Problem> add_loads(const Given& in, Setup& to) {
  const std::vector<double> load_at = in.all_si("load-at"), unbalance_at = in.all_si("unbalance-at");
  Lists lists{in, load_at.size()}, more{in, unbalance_at.size()};
  const auto force = lists.of("load"), direction = lists.of("load-direction", degrees(180).radians());
  const auto unbalance = more.of("unbalance"), towards = more.of("unbalance-azimuth");
  for (const auto* p : {&lists.problem(), &more.problem()})
    if (*p) return *p;
  for (std::size_t i = 0; i < load_at.size(); ++i)
    to.loads.push_back({metres(load_at[i]), Force::from_si(force[i]), radians(direction[i])});
  for (std::size_t i = 0; i < unbalance_at.size(); ++i)
    to.turning.push_back({metres(unbalance_at[i]), radians(towards[i]), Unbalance::from_si(unbalance[i])});
  for (const double z_m : load_at) to.beam.places.push_back(metres(z_m));
  for (const double z_m : unbalance_at) to.beam.places.push_back(metres(z_m));
  return std::nullopt;
}

}  // namespace

InputSpec speed_input() { return above_nought("speed", "Ω", Kind::angular_speed, kMostSpeed); }

std::vector<InputSpec> shaft_inputs() {
  return {above_nought("length", "L", Kind::length, kMostLength),
          optional(between("flats", "n", Kind::count, 3, kMostFlats)),
          optional(above_nought("across", "b", Kind::length, 2)),
          optional(above_nought("diameter", "D", Kind::length, 2)),
          optional(from_nought("inside", "d", Kind::length, 2)),
          assumed(above_nought("youngs-modulus", "E", Kind::pressure, 1e13), any(gigapascals(207)), kSteelBooks),
          assumed(from_nought("poisson", "ν", Kind::ratio, 0.499), any_ratio(0.29), kSteelBooks),
          assumed(above_nought("density", "ρ", Kind::density, 1e5), any(Density::from_si(7850)), kSteelBooks),
          optional(repeated(from_nought("hanger", "z_h", Kind::length, kMostLength))),
          optional(repeated(from_nought("soft-hanger", "z_k", Kind::length, kMostLength))),
          optional(repeated(above_nought("stiffness", "k_h", Kind::stiffness, 1e15))),
          optional(repeated(from_nought("position", "z_i", Kind::length, kMostLength))),
          optional(repeated(from_nought("mass", "m_i", Kind::mass, 1e6))),
          optional(repeated(between("mass-offset", "c_i", Kind::length, -10, 10))),
          optional(repeated(from_nought("inertia-across", "I_t", Kind::inertia, 1e6))),
          optional(repeated(from_nought("inertia-along", "I_p", Kind::inertia, 2e6))),
          optional(repeated(one_of("spinning", "s", kSpinningChoices))),
          optional(between("rolling-speed", "v/r", Kind::angular_speed, -kMostSpeed, kMostSpeed))};
}

std::vector<InputSpec> lean_inputs() {
  return {optional(repeated(between("lean", "α_i", Kind::angle, 0, degrees(45).radians()))),
          optional(repeated(between("azimuth", "φ_i", Kind::angle, -1e3, 1e3))),
          optional(repeated(from_nought("unbalance-at", "z_u", Kind::length, kMostLength))),
          optional(repeated(from_nought("unbalance", "U", Kind::unbalance, 1e6))),
          optional(repeated(between("unbalance-azimuth", "φ_u", Kind::angle, -1e3, 1e3)))};
}

std::vector<InputSpec> load_inputs() {
  return {optional(repeated(from_nought("load-at", "z_F", Kind::length, kMostLength))),
          optional(repeated(from_nought("load", "F", Kind::force, kMostForce))),
          optional(repeated(between("load-direction", "φ_F", Kind::angle, -1e3, 1e3)))};
}

Result<Setup> setup_from(const Given& in) {
  const Result<Section> section = section_from(in);
  if (!section) return tl::unexpected(section.error());
  Setup to;
  to.beam.stretches = {{metres(in.si("length")), *section}};
  to.beam.elastic = {Pressure::from_si(in.si("youngs-modulus")), in.si("poisson"), Density::from_si(in.si("density"))};
  if (auto p = add_hangers(in, to)) return tl::unexpected(*std::move(p));
  if (auto p = add_bodies(in, to)) return tl::unexpected(*std::move(p));
  if (auto p = add_loads(in, to)) return tl::unexpected(*std::move(p));
  return to;
}

}  // namespace flatwise::beam
