#include "job/play.h"

#include <algorithm>
#include <cmath>

#include "core/bearings/figures.h"
#include "core/metrology/figures.h"
#include "core/units/gravity.h"
#include "job/figure_use.h"
#include "job/fitted_bearing.h"
#include "job/gauges.h"

namespace flatwise::job {
namespace {

/// What a new bearing has left once it is pressed into this hub, which is not open yet.
WorkingPtr new_clearance(const RotorOf& part, const WorkingPtr& inside) {
  const auto fit = fit_by_limits(part);
  if (!fit) return nullptr;
  return clearance_fitted(part, inside, fit_of(*fit)).value_or(nullptr);
}

std::vector<Input> rocked(const RotorOf& part, const WorkingPtr& inside, const Input& radius,
                          const std::vector<Input>& held) {
  std::vector<Input> in = rocked_inputs(part, inside);
  in.push_back(radius);
  in.insert(in.end(), held.begin(), held.end());
  return in;
}

/// What was told of how it was held; the figure assumes the rest, and marks it.
std::vector<Input> held_inputs(const RotorOf& part, const PlayReading& reading) {
  if (!reading.held) return {};
  const Told<Held>& held = *reading.held;
  std::vector<Input> in{given("held", held.typed, {OriginKind::measured, text_of(held.place)})};
  if (held.value != Held::hanging) return in;
  in.push_back(given("weight", any(weight_of(part.it)), part.from("mass")));
  if (reading.push)
    in.push_back(measured("push", reading.push->value.value, text_of(reading.push->place), reading.push->typed));
  return in;
}

Input radius_of(const RotorOf& p, const PlayReading& reading) {
  if (reading.radius)
    return measured("radius", reading.radius->value.value, text_of(reading.radius->place), reading.radius->typed);
  return given("radius", any(p.it.tip_radius), {OriginKind::assumed, "dial at the tine tips"});
}

// A dial on a magnetic stand, read by hand, where nothing is known of it: common practice.
constexpr double kUnknownDial = 0.05e-3;

/// Certificate, scatter where there is a study, and resolution twice: a swing is the difference of two readings.
Input swing_doubt(const Facts& facts, const PlayReading& reading) {
  const Gauge* gauge = find_gauge(facts.workshop, reading.gauge);
  if (gauge == nullptr) return given("swing-u", any(metres(kUnknownDial)), {OriginKind::assumed, "common practice"});
  std::vector<Input> in{gauge_input("u", {gauge->calibration_expanded_si / 2, Kind::length}, *gauge)};
  for (int i = 0; i < 2; ++i) {
    in.push_back(gauge_input("u", {gauge->resolution_si / std::sqrt(12.0), Kind::length}, *gauge));
    if (gauge->repeatability_si) in.push_back(gauge_input("u", {*gauge->repeatability_si, Kind::length}, *gauge));
  }
  const WorkingPtr u = worked(metrology::figures(), "expanded-uncertainty", std::move(in)).value_or(nullptr);
  CORE_CHECK(u != nullptr);
  return computed("swing-u", "expanded", u);
}

PlayStands stands_of(const Working& behind) {
  for (const Finding& f : behind.findings) {
    if (f.code == Code{"bearings.play_past_new"}) return PlayStands::past_new;
    if (f.code == Code{"bearings.play_as_new"}) return PlayStands::as_new;
  }
  return PlayStands::may_be_new;
}

}  // namespace

Force weight_of(const Rotor& rotor) { return newtons(rotor.mass.si() * kGravity); }

Force push_wanted(const Rotor& rotor) { return 0.2 * weight_of(rotor); }

WorkingPtr new_bearing_play(const Facts& facts, int rotor, const Input& radius, const std::vector<Input>& held) {
  const RotorOf part = rotor_of(facts.shaft, rotor);
  const auto inside = bearing_inside(part);
  if (!inside) return nullptr;
  const WorkingPtr clearance = new_clearance(part, *inside);
  if (clearance == nullptr) return nullptr;
  std::vector<Input> in = rocked(part, *inside, radius, held);
  in.push_back(computed("clearance-least", "least", clearance));
  in.push_back(computed("clearance-greatest", "greatest", clearance));
  return worked(bearings::figures(), "rim-play", std::move(in)).value_or(nullptr);
}

Message swing_as_read(const PlayReading& reading) {
  const Arg typed{"typed", reading.swing.typed};
  if (!reading.held || reading.held->value != Held::hanging) return {Code{"play.read"}, {typed}};
  return {Code{"play.read_hanging"}, {typed, {"push", reading.push ? reading.push->typed : std::string{}}}};
}

std::optional<Play> play_of(const Facts& facts, int rotor) {
  Play play;
  for (const PlayReading& r : facts.bench.plays)
    if (r.rotor == rotor) play.reading = &r;
  if (play.reading == nullptr) return std::nullopt;
  const RotorOf part = rotor_of(facts.shaft, rotor);
  const Input radius = radius_of(part, *play.reading);
  const std::vector<Input> held = held_inputs(part, *play.reading);
  play.fresh = new_bearing_play(facts, rotor, radius, held);
  const auto inside = bearing_inside(part);
  if (!inside) return play;
  std::vector<Input> in = rocked(part, *inside, radius, held);
  const Told<Entered>& swing = play.reading->swing;
  in.push_back(measured("swing", swing.value.value, text_of(swing.place) + ", " + play.reading->gauge, swing.typed));
  in.push_back(swing_doubt(facts, *play.reading));
  if (play.fresh != nullptr)
    in.push_back(computed("new-greatest", "greatest", play.fresh->input("clearance-greatest")->from));
  Results<WorkingPtr> behind = worked(bearings::figures(), "clearance-from-play", std::move(in));
  if (!behind) {
    play.problems = std::move(behind.error());
    play.stands = PlayStands::not_possible;
    return play;
  }
  play.behind = *std::move(behind);
  play.stands = stands_of(*play.behind);
  return play;
}

}  // namespace flatwise::job
