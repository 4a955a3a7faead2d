#include "job/bores.h"

#include <algorithm>
#include <cmath>

#include "core/metrology/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"

namespace flatwise::job {
namespace {

Input told(std::string_view name, const Told<Entered>& reading, const std::string& by) {
  return measured(name, reading.value.value, text_of(reading.place) + (by.empty() ? "" : ", " + by), reading.typed);
}

/// A temperature taken, or none: then the figure assumes the shop's room.
void add_temperatures(const Facts& facts, const BoreReading& r, std::vector<Input>& in) {
  if (r.part_temperature) in.push_back(told("part-temperature", *r.part_temperature, r.thermometer));
  if (r.gauge_temperature) in.push_back(told("gauge-temperature", *r.gauge_temperature, r.thermometer));
  in.push_back(given("room-temperature", any(facts.workshop.room)));
  in.push_back(given("room-half-width", any(facts.workshop.room_half_width)));
  if (const Gauge* thermometer = find_gauge(facts.workshop, r.thermometer))
    in.push_back(
        gauge_input("thermometer", {thermometer->calibration_expanded_si, Kind::temperature_rise}, *thermometer));
}

void add_gauge(const Facts& facts, const Gauge& gauge, std::vector<Input>& in) {
  for (Input& dated : gauge_date(gauge, facts.bench.date)) in.push_back(std::move(dated));
  in.push_back(given("gauge", gauge.id));
  in.push_back(given("until", text_of(gauge.calibrated_until)));
  if (gauge.accepted_overdue_by) in.push_back(given("accepted-by", *gauge.accepted_overdue_by));
  in.push_back(gauge_input("calibration", {gauge.calibration_expanded_si, Kind::length}, gauge));
  in.push_back(gauge_input("resolution", {gauge.resolution_si, Kind::length}, gauge));
  in.push_back(gauge_input("gauge-expansion", any_expansion(gauge.expansion_per_kelvin), gauge));
  if (gauge.repeatability_si) {
    in.push_back(gauge_input("repeatability", {*gauge.repeatability_si, Kind::length}, gauge));
    in.push_back(gauge_input("repeatability-readings", any_count(gauge.repeatability_readings), gauge));
  }
  if (gauge.setting_ring) in.push_back(gauge_input("ring-calibration", any(gauge.setting_ring_expanded), gauge));
}

void add_limits(const Facts& facts, int rotor, std::vector<Input>& in) {
  const Hub& hub = facts.shaft.rotor(rotor).hub;
  const Policies& policy = facts.shaft.spec().policies;
  const auto from = [&](std::string_view field) { return rotor_origin(facts.shaft, rotor, field); };
  in.push_back(given("part-expansion", any_expansion(hub.material.expansion_per_kelvin), from("hub.material")));
  in.push_back(given("least", any(hub.bore.least), from("hub.fit")));
  in.push_back(given("greatest", any(hub.bore.greatest), from("hub.fit")));
  in.push_back(given("ovality-limit", any(hub.ovality_limit), from("hub.ovality")));
  in.push_back(given("furthest", any(policy.furthest_from_20), facts.shaft.origin("policy.furthest_from_20")));
  in.push_back(given("rule", policy.decision == Policies::DecisionRule::guard_u ? "guard_u" : "one_sided",
                     facts.shaft.origin("policy.decision")));
}

}  // namespace

bool possible(const Working& plane) {
  return std::ranges::none_of(plane.findings, [](const Finding& f) { return f.code == Code{"metrology.far_off"}; });
}

std::vector<PlaneMeasured> planes_measured(const Facts& facts, int rotor) {
  std::vector<PlaneMeasured> planes;
  for (const char plane : {'A', 'B'}) {
    std::vector<Input> in;
    const BoreReading* first = nullptr;
    for (const BoreReading& r : facts.bench.bores) {
      if (r.rotor != rotor || r.plane != plane) continue;
      if (first == nullptr) first = &r;
      in.push_back(told("reading", r.diameter, r.gauge));
      in.push_back(given("direction", any(r.direction)));
    }
    if (first == nullptr) continue;
    const Gauge* gauge = find_gauge(facts.workshop, first->gauge);
    CORE_CHECK(gauge != nullptr);
    in.push_back(given("plane", std::string(1, plane)));
    add_temperatures(facts, *first, in);
    add_gauge(facts, *gauge, in);
    add_limits(facts, rotor, in);
    planes.push_back({plane, gauge, first, use(metrology::figures(), "bore-at-plane", std::move(in))});
  }
  return planes;
}

}  // namespace flatwise::job
