#include "job/play.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/bearings/figures.h"
#include "core/fits/figures.h"
#include "core/metrology/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"

namespace flatwise::job {
namespace {

constexpr std::array<const char*, 5> kGroups{"C2", "CN", "C3", "C4", "C5"};
constexpr std::array<const char*, 3> kTolerances{"normal", "P6", "P5"};

WorkingPtr evaluated(std::span<const FigureSpec> figures, std::string_view name, std::vector<Input> inputs) {
  Results<Working> working = use(figures, name, std::move(inputs));
  return working ? std::make_shared<const Working>(*std::move(working)) : nullptr;
}

struct Part {
  const Facts& facts;
  int rotor;
  [[nodiscard]] const Rotor& it() const { return facts.shaft.rotor(rotor); }
  [[nodiscard]] Origin from(std::string_view field) const { return rotor_origin(facts.shaft, rotor, field); }
  [[nodiscard]] Input length(std::string_view name, Length value, std::string_view field) const {
    return given(name, any(value), from(field));
  }
};

WorkingPtr inside_of(const Part& p) {
  return evaluated(bearings::figures(), "bearing-geometry",
                   {p.length("bearing-bore", p.it().bearing.bore, "bearing.d"),
                    p.length("bearing-outside", p.it().bearing.outside, "bearing.D")});
}

/// The hub is not open yet: its bore lies anywhere within its limits.
WorkingPtr interference_by_limits(const Part& p) {
  const Limits& bore = p.it().hub.bore;
  const WorkingPtr ring =
      evaluated(fits::figures(), "ring-outside",
                {p.length("outside", p.it().bearing.outside, "bearing.D"),
                 given("tolerance", std::string{kTolerances[static_cast<std::size_t>(p.it().bearing.tolerance)]},
                       p.from("bearing.tolerance"))});
  if (ring == nullptr) return nullptr;
  return evaluated(fits::figures(), "interference",
                   {p.length("bore", 0.5 * (bore.least + bore.greatest), "hub.bore"),
                    p.length("bore-uncertainty", 0.5 * (bore.greatest - bore.least), "hub.bore"),
                    computed("ring-least", "least", ring), computed("ring-greatest", "greatest", ring)});
}

/// What a new bearing has left once it is pressed into this hub.
WorkingPtr fitted_clearance(const Part& p) {
  const Rotor& r = p.it();
  const WorkingPtr group =
      evaluated(fits::figures(), "clearance-group",
                {p.length("bore", r.bearing.bore, "bearing.d"),
                 given("group", std::string{kGroups[static_cast<std::size_t>(r.bearing.clearance)]},
                       p.from("bearing.clearance"))});
  const WorkingPtr fit = interference_by_limits(p);
  if (group == nullptr || fit == nullptr) return nullptr;
  return evaluated(bearings::figures(), "fitted-clearance",
                   {computed("group-least", "least", group), computed("group-greatest", "greatest", group),
                    computed("interference-least", "least", fit), computed("interference-greatest", "greatest", fit),
                    p.length("roughness-loss", r.hub.roughness_loss, "hub.roughness_loss"),
                    p.length("joint-diameter", r.bearing.outside, "bearing.D"),
                    p.length("ring-inside", r.bearing.outer_ring_inside, "bearing.outer_ring_inside"),
                    p.length("hub-outside", r.hub.outside, "hub.outside"),
                    given("hub-modulus", any(r.hub.material.youngs_modulus), p.from("hub.material")),
                    given("hub-poisson", any_ratio(r.hub.material.poisson), p.from("hub.material"))});
}

std::vector<Input> rocked(const WorkingPtr& inside, const Input& radius) {
  return {computed("balls", "balls", inside),
          computed("ball-diameter", "ball-diameter", inside),
          computed("pitch-diameter", "pitch-diameter", inside),
          computed("inner-groove", "groove-radius", inside),
          computed("outer-groove", "groove-radius", inside),
          radius};
}

Input radius_of(const Part& p, const PlayReading& reading) {
  if (reading.radius)
    return measured("radius", reading.radius->value.value, text_of(reading.radius->place), reading.radius->typed);
  return given("radius", any(p.it().tip_radius), {OriginKind::assumed, "dial at the tine tips"});
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
  const WorkingPtr u = evaluated(metrology::figures(), "expanded-uncertainty", std::move(in));
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

WorkingPtr new_bearing_play(const Facts& facts, int rotor, const Input& radius) {
  const Part p{facts, rotor};
  const WorkingPtr inside = inside_of(p), clearance = fitted_clearance(p);
  if (inside == nullptr || clearance == nullptr) return nullptr;
  std::vector<Input> in = rocked(inside, radius);
  in.push_back(computed("clearance-least", "least", clearance));
  in.push_back(computed("clearance-greatest", "greatest", clearance));
  return evaluated(bearings::figures(), "rim-play", std::move(in));
}

std::optional<Play> play_of(const Facts& facts, int rotor) {
  Play play;
  for (const PlayReading& r : facts.bench.plays)
    if (r.rotor == rotor) play.reading = &r;
  if (play.reading == nullptr) return std::nullopt;
  const Part p{facts, rotor};
  const Input radius = radius_of(p, *play.reading);
  play.fresh = new_bearing_play(facts, rotor, radius);
  const WorkingPtr inside = inside_of(p);
  if (inside == nullptr) return play;
  std::vector<Input> in = rocked(inside, radius);
  const Told<Entered>& swing = play.reading->swing;
  in.push_back(measured("swing", swing.value.value, text_of(swing.place) + ", " + play.reading->gauge, swing.typed));
  in.push_back(swing_doubt(facts, *play.reading));
  if (play.fresh != nullptr)
    in.push_back(computed("new-greatest", "greatest", play.fresh->input("clearance-greatest")->from));
  Results<Working> behind = use(bearings::figures(), "clearance-from-play", std::move(in));
  if (!behind) {
    play.problems = std::move(behind.error());
    play.stands = PlayStands::not_possible;
    return play;
  }
  play.behind = std::make_shared<const Working>(*std::move(behind));
  play.stands = stands_of(*play.behind);
  return play;
}

}  // namespace flatwise::job
