// shaft_samples.h: invented shafts for tests (no machine's). Header only; not part of the library.
#pragma once

#include <string>

#include "core/shaft/shaft.h"

namespace flatwise {

struct SampleShaft {
  int rotors = 9;
  int flats = 6;
  double lean_degrees = 5;
  double pitch_mm = 160;  ///< Rotor to rotor.
  bool pulley = true;     ///< At end B, comes off; hides the flange bolts of the hanger beside it.
  TestRun test_run = {};
  Service service = {};
};

inline Rotor sample_rotor(double lean_degrees) {
  Rotor r;
  r.mass = kilograms(11.6);
  r.across = kilogram_square_metres(0.085);
  r.along = kilogram_square_metres(0.160);
  r.tip_radius = millimetres(230);
  r.tine_width = millimetres(34);
  r.lean = degrees(lean_degrees);
  r.mark = "notch";
  r.half = {millimetres(34), millimetres(0.1), millimetres(0.1)};
  r.bearing.designation = "TH-100-C3";
  r.bearing.bore = millimetres(55);
  r.bearing.outside = millimetres(100);
  r.bearing.width = millimetres(21);
  r.bearing.clearance = ClearanceGroup::c3;
  r.bearing.outer_ring_inside = millimetres(86.5);
  r.hub.bore = {millimetres(99.955), millimetres(99.990)};
  r.hub.fit_code = "100 N7";
  r.hub.outside = millimetres(150);
  r.hub.ovality_limit = micrometres(17.5);
  r.hub.taper_limit = micrometres(17.5);
  r.hub.roughness_loss = micrometres(3);
  r.hub.material = {"cast_iron", gigapascals(110), 0.26, megapascals(200), 10.5e-6, 0.1};
  r.adapter_set = {"TH-SET-5", 148.0};
  r.seal = {"TH-SEAL", 6.5};
  r.snap_ring = {"TH-RING", 3.2};
  return r;
}

inline Station sample_station(StationKind kind, std::string label, double length_mm, double outside_mm, double off,
                              double on) {
  Station s;
  s.kind = kind;
  s.label = std::move(label);
  s.length = {millimetres(length_mm), millimetres(0.1), millimetres(0.1)};
  s.outside = millimetres(outside_mm);
  s.minutes_off = minutes(off);
  s.minutes_on = minutes(on);
  return s;
}

/// Nut, washer, hanger, spacer, rotor, spacer, rotor, ..., spacer, hanger, [pulley], washer, nut.
inline ShaftSpec sample_shaft(const SampleShaft& sample = {}) {
  ShaftSpec s;
  s.name = "sample";
  s.invented = true;
  s.profile = {sample.flats, millimetres(38.1)};
  s.speed = turns_per_minute(480);
  s.test_run = sample.test_run;
  s.service = sample.service;
  const auto add = [&](Station station) { s.stations.push_back(std::move(station)); };
  const auto add_nut = [&](const char* label, End end, int order) {
    Station nut = sample_station(StationKind::nut, label, 34, 60, 6, 8);
    nut.nut = static_cast<int>(s.nuts.size());
    add(nut);
    Nut n;
    n.end = end;
    n.torque = foot_pounds(900);
    n.thread = {"1 1/2-6 UNC", inches(1.5), inches(1.0 / 6)};
    n.nut_factor_least = 0.15;
    n.nut_factor_greatest = 0.20;
    n.strength_class = "grade 8";
    n.order = order;
    s.nuts.push_back(n);
  };
  add_nut("nut A", End::a, 1);
  add(sample_station(StationKind::washer, "washer A", 6, 62, 1, 1));
  add(sample_station(StationKind::hanger, "hanger A", 31, 110, 10, 12));
  for (int i = 1; i <= sample.rotors; ++i) {
    const double spacer = i == 1 ? 50 : sample.pitch_mm - 68;
    add(sample_station(StationKind::spacer, "S" + std::to_string(i), spacer, 55, 1, 1));
    s.stations.back().number = i;
    Station rotor = sample_station(StationKind::rotor, std::to_string(i), 68, 150, 4, 5);
    rotor.number = i;
    rotor.rotor = i - 1;
    add(rotor);
    s.rotors.push_back(sample_rotor(sample.lean_degrees));
  }
  add(sample_station(StationKind::spacer, "S" + std::to_string(sample.rotors + 1), 50, 55, 1, 1));
  s.stations.back().number = sample.rotors + 1;
  add(sample_station(StationKind::hanger, "hanger B", 31, 110, 10, 12));
  if (sample.pulley) {
    add(sample_station(StationKind::pulley, "pulley", 70, 180, 12, 15));
    s.stations.back().fit_before = {{"flange bolts of hanger B", 4}};
  }
  add(sample_station(StationKind::washer, "washer B", 6, 62, 1, 1));
  add_nut("nut B", End::b, 2);
  return s;
}

}  // namespace flatwise
