// The bearing of a wobbling rotor through one turn, and how long that leaves it.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/bearings/figures.h"
#include "core/bearings/figures_parts.h"
#include "core/bearings/turn_life.h"

namespace flatwise::bearings {
namespace {

constexpr std::string_view kSpinning[] = {"rolling", "held"};

WobblingRotor rotor_from(const Given& in) {
  return {.lean = radians(in.si("lean")),
          .mass = kilograms(in.si("mass")),
          .mass_offset = length_of(in, "mass-offset"),
          .force = newtons(in.si("rotating-force")),
          .couple = newton_metres(in.si("rotating-couple")),
          .tip_radius = length_of(in, "tip-radius")};
}

Result<TurnLifeTask> task_from(const Given& in, std::vector<Finding>& findings) {
  const auto b = inside_from(in);
  if (!b) return tl::unexpected(b.error());
  const auto ratings = ratings_from(in, *b, findings);
  if (!ratings) return tl::unexpected(ratings.error());
  const auto contacts = point_contacts(*b, kBearingSteel);
  if (!contacts) return as_input(contacts.error());
  const bool held = in.text("spinning") == "held";
  const double shaft = in.si("speed"), lean = in.si("lean");
  TurnLifeTask task{
      .turn = {.at = {*b, length_of(in, "clearance")},
               .contacts = *contacts,
               .rotor = rotor_from(in),
               .ground = {newtons(in.si("ground-up")), newtons(in.si("ground-drag")), newtons(in.si("ground-along"))},
               .outer = held ? OuterRing::held : OuterRing::turns,
               .angles = static_cast<int>(std::lround(in.si("angles")))},
      .ratings = *ratings,
      .shaft = radians_per_second(shaft),
      .spin = radians_per_second(held ? -shaft * (1 - std::cos(lean)) : in.si("rolling-speed")),
      .lubrication = lubrication_from(in),
      .reliability = in.si("reliability")};
  return task;
}

Word word_of(Influenced of) {
  switch (of) {
    case Influenced::speed:
      return Word{"bearings.more_speed"};
    case Influenced::lean:
      return Word{"bearings.more_lean"};
    case Influenced::clearance:
      return Word{"bearings.more_clearance"};
    case Influenced::ground:
      return Word{"bearings.more_ground"};
    case Influenced::viscosity:
      return Word{"bearings.less_viscosity"};
    case Influenced::cleanliness:
      return Word{"bearings.more_dirt"};
  }
  CORE_CHECK(false);
}

void say_influences(const TurnLifeTask& task, const TurnLife& life, std::vector<Finding>& findings) {
  const auto all = influences(task, life);
  for (std::size_t i = 0; i < std::min<std::size_t>(3, all.size()); ++i)
    findings.push_back({Code{"bearings.influence"},
                        Severity::note,
                        {{"change", word_of(all[i].of)}, {"factor", any_ratio(all[i].factor)}},
                        {},
                        std::nullopt});
}

/// Ball load at which dents begin over the greatest one: C_0 stands for the same stress, but knows no couple.
double static_safety(Pressure stress) { return std::pow(megapascals(4200) / stress, 3); }

constexpr double kMostFlung = 0.1;  ///< Of the hardest ball's load: our own bound, under it the life hardly feels it.

/// m D d_m/2 w², with the speed of the cage between both rings' about the bearing's axis (Harris, from memory); steel 7850 kg/m³.
Force flung(const TurnLifeTask& task) {
  const BallBearing& b = task.turn.at.bearing;
  const double share = b.ball / b.pitch,
               inner = task.shaft.radians_per_second() * std::cos(task.turn.rotor.lean.radians());
  const double cage = 0.5 * (inner * (1 - share) + task.spin.radians_per_second() * (1 + share));
  const double mass_kg = 7850 * std::numbers::pi / 6 * std::pow(b.ball.si(), 3);
  return newtons(0.5 * mass_kg * b.pitch.si() * cage * cage);
}

void say_flung(const TurnLifeTask& task, Force greatest, std::vector<Finding>& findings) {
  const Force each = flung(task);
  if (each <= kMostFlung * greatest) return;
  findings.push_back({Code{"bearings.balls_flung"},
                      Severity::cannot_tell,
                      {{"flung", any(each)}, {"greatest", any(greatest)}, {"share", any_ratio(kMostFlung)}},
                      {},
                      std::nullopt});
}

Result<Computed> compute_turn(const Given& in) {
  std::vector<Finding> findings;
  const auto task = task_from(in, findings);
  if (!task) return tl::unexpected(task.error());
  const auto life = turn_life(*task);
  if (!life) {
    Problem problem = life.error();
    problem.field = turn_input_behind(std::move(problem.field));
    return tl::unexpected(std::move(problem));
  }
  const AtAngle& hardest = life->turn.angles[static_cast<std::size_t>(life->turn.hardest)];
  const double season = in.si("season-hours");
  Computed out{.values = {any(life->basic), any_ratio(life->million_turns), any(life->least), any(life->greatest),
                          any_ratio(life->least.si() / season), any_ratio(life->greatest.si() / season),
                          any(life->reference), any(hardest.greatest), any(hardest.stress), any(hardest.shaft),
                          any(life->relative), any_ratio(static_safety(hardest.stress)),
                          any_ratio(life->viscosity_ratio), any_ratio(life->reliability_factor)},
               .findings = std::move(findings)};
  if (hardest.stress > megapascals(4200))
    out.findings.push_back(
        {Code{"bearings.balls_dent"}, Severity::note, {{"stress", any(hardest.stress)}}, {}, std::nullopt});
  say_flung(*task, hardest.greatest, out.findings);
  say_viscosity_capped(life->viscosity_ratio, out.findings);
  say_influences(*task, *life, out.findings);
  return out;
}

std::vector<InputSpec> rotor_inputs() {
  const auto none = [](std::string_view name, std::string_view symbol, Kind kind, double most) {
    return assumed(between(name, symbol, kind, -most, most), AnyQuantity{0, kind}, kOwnRule);
  };
  return {between("clearance", "G", Kind::length, -1e-3, 1e-2),
          from_nought("lean", "α", Kind::angle, 0.7853),
          above_nought("speed", "Ω", Kind::angular_speed, 1e4),
          assumed(one_of("spinning", "spinning", kSpinning), std::string{"rolling"}, kCommonPractice),
          none("rolling-speed", "s", Kind::angular_speed, 1e4),
          above_nought("tip-radius", "R", Kind::length, 10),
          assumed(from_nought("mass", "m", Kind::mass, 1e4), AnyQuantity{0, Kind::mass}, kOwnRule),
          none("mass-offset", "c", Kind::length, 1),
          none("rotating-force", "F", Kind::force, kMostForce),
          none("rotating-couple", "C_r", Kind::torque, kMostCouple),
          none("ground-up", "G_r", Kind::force, kMostForce),
          none("ground-drag", "G_t", Kind::force, kMostForce),
          none("ground-along", "G_a", Kind::force, kMostForce),
          assumed(between("angles", "N", Kind::count, kFewestAngles, 720), any_count(kFewestAngles), kOwnRule)};
}

}  // namespace

std::string turn_input_behind(std::string field) {
  constexpr std::pair<std::string_view, std::string_view> kInputs[] = {{"x", "ground-up"},
                                                                       {"y", "ground-drag"},
                                                                       {"z", "ground-along"},
                                                                       {"about-x", "rotating-couple"},
                                                                       {"about-y", "rotating-couple"},
                                                                       {"spin", "rolling-speed"},
                                                                       {"shaft", "speed"}};
  std::ranges::replace(field, '_', '-');
  for (const auto& [kernel, input] : kInputs)
    if (field == kernel) return std::string{input};
  return field;
}

FigureSpec bearing_turn_figure() {
  return {.name = "bearing-turn",
          .formula =
              "at N shaft angles: ground, weight, rotating force and couple turned into the leaning bearing, balls in "
              "balance "
              "(load-distribution); Q_i^(10/3) = mean over the inner ring of (mean over the turn of Q³)^(10/9), outer "
              "alike; L = "
              "((Q_ci/Q_i)^(−10/3) + (Q_ce/Q_e)^(−10/3))^(−9/10) 10⁶/(Ω cos α − s); L_m = a_1 a_ISO L; κ = ν/ν_1 "
              "(bearing-life); S_0 = (4200 MPa/σ)³",
          .inputs = joined({inside_inputs(), rotor_inputs(), rating_inputs(), lubrication_inputs(), {season_input()}}),
          .outputs = {{"life", "L", Kind::time},
                      {"million-turns", "L_10r", Kind::ratio},
                      {"modified-least", "L_m1", Kind::time},
                      {"modified-greatest", "L_m2", Kind::time},
                      {"seasons-least", "seasons1", Kind::ratio},
                      {"seasons-greatest", "seasons2", Kind::ratio},
                      {"reference-load", "P_ref", Kind::force},
                      {"greatest", "Q_max", Kind::force},
                      {"stress", "σ", Kind::pressure},
                      {"hardest-at", "φ", Kind::angle},
                      {"relative-speed", "n", Kind::angular_speed},
                      {"static-safety", "S_0", Kind::ratio},
                      {"viscosity-ratio", "κ", Kind::ratio},
                      {"reliability-factor", "a_1", Kind::ratio}},
          .sources = {"ISO16281-code", "ISO281", "ISO76", "Lundberg-Palmgren", "Harris5"},
          .compute = compute_turn,
          .example = {
              {"balls=10", "ball-diameter=14.288 mm", "pitch-diameter=77.5 mm", "inner-groove=7.43 mm",
               "outer-groove=7.57 mm", "clearance=15 µm", "lean=5°", "speed=540 rpm", "rolling-speed=30 rpm",
               "tip-radius=250 mm", "mass=12 kg", "rotating-couple=35 N·m", "ground-up=1.5 kN", "ground-along=150 N"},
              "life=25796 h"}};
}

}  // namespace flatwise::bearings
