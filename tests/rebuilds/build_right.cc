// Everything built as it should be, and then everything read with the gauges there are.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/rebuilds/gauges.h"
#include "tests/rebuilds/timing_truth.h"
#include "tests/rebuilds/truth.h"

namespace rebuilds {
namespace {

constexpr double kEighth = std::numbers::pi / 4;

void take_off(Rebuild& to, Random& random) {
  const auto& parts = to.drawing.parts;
  const int all = to.drawing.rotors;
  const bool free_a = !parts.front().obstacle;
  const bool free_b = std::ranges::none_of(parts, [](const Part& p) { return p.kind == "pulley" && p.obstacle; });
  const double how = random.uniform();
  if (how < 0.3) {
    (free_a ? to.from_a : to.from_b) = all;
  } else if (how < 0.5 && free_a && free_b) {
    to.from_a = random.whole(1, std::max(1, all / 2 - 1));
    to.from_b = random.whole(1, std::max(1, all - to.from_a - 1));
  } else if (free_a && (how < 0.75 || !free_b)) {
    to.from_a = random.whole(1, all - 1);
  } else {
    to.from_b = random.whole(1, all - 1);
  }
  const bool bare = to.from_a + to.from_b == all;
  to.part_off.assign(parts.size(), false);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const int at = static_cast<int>(i);
    const bool by_a = to.from_a > 0 && at <= to.drawing.part_of_rotor(to.from_a);
    const bool by_b = to.from_b > 0 && at >= to.drawing.part_of_rotor(all - to.from_b + 1);
    to.part_off[i] = (by_a || by_b || bare) && !parts[i].obstacle;
  }
  if (free_b) return;
  // What stands between an obstacle and its end of the shaft cannot have come off over it.
  for (std::size_t i = parts.size(); i-- > 0 && !parts[i].obstacle;) to.part_off[i] = false;
}

void set_marks(Rebuild& to, Random& random) {
  const Drawing& d = to.drawing;
  const int first = d.first_flat ? *d.first_flat : random.whole(1, d.flats);
  const bool other_hand = d.rule == Rule::step && !d.first_flat && random.chance(0.5);
  for (Rotor& r : to.rotors) {
    r.mark_a = flat_of(d, first, other_hand, r.number);
    r.mark_b = turned(r.mark_a, d.flats / 2, d.flats);
  }
}

void bore_right(const Rebuild& to, Rotor& r, Random& random) {
  const Drawing& d = to.drawing;
  const double low = d.bore_least.si, high = d.bore_greatest.si;
  const double oval_a = random.between(0, 0.5) * d.ovality_limit;
  double mean = random.between(low + oval_a / 2, high - oval_a / 2);
  if (random.chance(0.3)) mean = high - oval_a / 2 - random.between(0, 3e-6);  // Used hubs run to the wide side.
  r.planes[0] = {mean, oval_a, random.between(0, std::numbers::pi)};
  const double oval_b = random.between(0, 0.5) * d.ovality_limit;
  const double other = mean + random.between(-0.5, 0.5) * d.taper_limit;
  r.planes[1] = {std::clamp(other, low + oval_b / 2, high - oval_b / 2), oval_b, random.between(0, std::numbers::pi)};
}

void warm(const Rebuild& to, Rotor& r, Random& random) {
  const double room = to.shop.room.si, by = to.shop.half_width.si;
  r.part_c = std::clamp(room + by * random.between(-1, 1), 7.0, 33.0);
  r.gauge_c = std::clamp(room + by * random.between(-1, 1), 7.0, 33.0);
  r.part_taken = random.chance(0.75);
  r.gauge_taken = random.chance(0.75);
  r.expansion = to.drawing.material.expansion * random.between(0.9, 1.1);
}

}  // namespace

std::vector<int> Rebuild::off() const {
  std::vector<int> out;
  for (const Rotor& r : rotors)
    if (r.off) out.push_back(r.number);
  return out;
}
std::vector<int> Rebuild::fixed() const {
  std::vector<int> out;
  for (const Rotor& r : rotors)
    if (!r.off) out.push_back(r.number);
  return out;
}

void build_right(Rebuild& to, Random& random) {
  const Drawing& d = to.drawing;
  take_off(to, random);
  for (int n = 1; n <= d.rotors; ++n) {
    Rotor r;
    r.number = n;
    r.off = n <= to.from_a || n > d.rotors - to.from_b;
    r.new_set = r.off && (d.renew || random.chance(0.5));
    warm(to, r, random);
    bore_right(to, r, random);
    r.ring_outside = random.between(d.ring_least, d.ring_greatest);
    r.friction = random.between(0.08, 0.18);
    if (to.shop.friction_sigma > 0) r.friction = to.shop.friction + to.shop.friction_sigma * random.normal();
    to.rotors.push_back(r);
  }
  set_marks(to, random);
  for (std::size_t i = 0; i < d.parts.size(); ++i) {
    Part& p = to.drawing.parts[i];
    const auto within = [&](double tolerance) { return tolerance * random.between(-1, 1); };
    p.true_length = p.length.si + (p.kind == "rotor" ? within(d.half_tolerance.si) + within(d.half_tolerance.si)
                                                     : within(p.tolerance.si));
    if (p.kind == "spacer" && to.part_off[i]) to.labels.push_back(p.label);
  }
}

namespace {

std::string bore_text(const Gauge& gauge, double shown) {
  const double read = to_step(shown, gauge.resolution.si);
  return (gauge.inches ? in_inches(read, 5) : in_millimetres(read, 3)).text;
}

void read_bore(Rebuild& to, const Rotor& r, RotorSheet& sheet, Random& random) {
  const Gauge& gauge = to.shop.gauge("BG");
  for (int plane = 0; plane < 2; ++plane) {
    const Plane& p = r.planes[plane];
    for (int i = 0; i < 4; ++i) {
      const double at_20 = p.mean + p.oval / 2 * std::cos(2 * (i * kEighth - p.greatest_at));
      const double shown = shown_warm(at_20, r.part_c, r.expansion, r.gauge_c, gauge.true_expansion);
      sheet.bore[plane].push_back(bore_text(gauge, shown + gauge.error + gauge.repeatability->si * random.normal()));
    }
  }
  const Gauge& thermometer = to.shop.gauge("TH");
  const auto read = [&](double c) {
    const double shown = to_step(c + thermometer.error, thermometer.resolution.si);
    return (thermometer.inches ? in_fahrenheit(shown, 1) : in_celsius(shown, 1)).text;
  };
  if (r.part_taken) sheet.part = read(r.part_c);
  if (r.gauge_taken) sheet.gauge_at = read(r.gauge_c);
  if (r.part_taken || r.gauge_taken) sheet.thermometer = thermometer.id;
}

void read_press(Rebuild& to, Rotor& r, RotorSheet& sheet) {
  const Gauge& gauge = to.shop.gauge("PG");
  const double mean = (r.planes[0].mean + r.planes[1].mean) / 2;
  if (r.force == 0) r.force = force_to_press(to.drawing.joint(), r.ring_outside - mean, r.friction);
  const double shown = to_step(r.force * (1 + gauge.error), gauge.resolution.si);
  sheet.force = (gauge.inches ? in_pounds_force(shown, 0) : in_kilonewtons(shown, 1)).text;
  sheet.ring = "outer";
}

void read_rotor(Rebuild& to, Rotor& r, Random& random) {
  RotorSheet& sheet = to.sheet.rotors[r.number];
  sheet.mark_a = r.mark_a;
  sheet.mark_b = r.mark_b;
  if (!r.off) return;
  read_bore(to, r, sheet, random);
  if (r.new_set) read_press(to, r, sheet);
  const Drawing& d = to.drawing;
  sheet.fitted = d.designation;
  const double lean = d.lean[static_cast<std::size_t>(r.number) - 1].si * 180 / std::numbers::pi;
  sheet.lean_a = in_degrees(std::round(lean), random.chance(0.3)).text;
  sheet.lean_b = in_degrees(std::round(lean), random.chance(0.3)).text;
  const int reused = random.chance(0.3) ? random.whole(0, d.rings) : 0;
  sheet.rings_sound.assign(static_cast<std::size_t>(reused), "yes");
  if (d.renew) sheet.counted["set"] = {1, 0};
  sheet.counted["seal"] = {d.seals, 0};
  if (d.rings > 0) sheet.counted["snap_ring"] = {d.rings, 0};
}

TorqueSheet pull_nut(const Rebuild& to, const Nut& nut, Random& random) {
  TorqueSheet pull;
  pull.nut = nut.end;
  pull.bar = random.chance(0.3);
  const Gauge& gauge = to.shop.gauge(pull.bar ? "PS" : "TW");
  pull.gauge = gauge.id;
  if (pull.bar || random.chance(0.4)) {
    const double length = pull.bar ? random.between(1.2, 2.2) : random.between(0.6, 1.3);
    pull.length = random.chance(0.5) ? in_feet(length, 1) : in_millimetres(to_step(length, 0.01), 0);
    if (!pull.bar)
      pull.extension = random.chance(0.5) ? in_inches(random.between(0.1, 0.4), 0) : in_millimetres(0.2, 0);
  }
  const double shown = to_step(nut.torque.si / lever_of(pull), gauge.resolution.si);
  if (pull.bar)
    pull.shown = gauge.inches ? in_pounds_force(shown, 0) : in_newtons(shown, 0);
  else
    pull.shown = gauge.inches ? in_foot_pounds(shown, 0) : in_newton_metres(shown, 0);
  return pull;
}

void read_stack(Rebuild& to, Random& random) {
  const Gauge& micrometer = to.shop.gauge("MIC");
  double length = to.gap + to.true_stack_extra;
  for (std::size_t i = 0; i < to.drawing.parts.size(); ++i) {
    const Part& p = to.drawing.parts[i];
    if (p.kind == "nut") continue;
    length += p.true_length;
    if (p.kind != "spacer" || !to.part_off[i] || !random.chance(0.08)) continue;
    const double shown = to_step(p.true_length + micrometer.error, micrometer.resolution.si);
    to.sheet.parts_measured[p.label] = micrometer.inches ? in_inches(shown, 4) : in_millimetres(shown, 2);
  }
  const Gauge& gauge = to.shop.gauge("SL");
  const double shown = to_step(length + gauge.error, gauge.resolution.si);
  if (!gauge.inches)
    to.sheet.stack = in_millimetres(shown, 2);
  else
    to.sheet.stack = gauge.resolution.text == "0.015625 in" ? in_inch_fractions(shown, 64) : in_inches(shown, 3);
}

/// A few joints are tried with the feeler; where one is open, most often that one too.
void feel_joints(Rebuild& to, Random& random) {
  if (!random.chance(0.3)) return;
  const std::vector<int> joints = joints_touched(to);
  std::vector<int> tried;
  for (int i = 0; i < 2; ++i) {
    const int joint = random.pick(joints);
    if (joint == to.open_joint || std::ranges::find(tried, joint) != tried.end()) continue;
    tried.push_back(joint);
    to.sheet.feelers.push_back({joint, false});
  }
  if (to.open_joint > 0 && random.chance(0.7)) to.sheet.feelers.push_back({to.open_joint, true});
}

void answer_all(Rebuild& to) {
  auto& answers = to.sheet.answers;
  for (const char* once : {"power_locked_off", "stored_energy_let_off", "frame_chocked", "tines_clear",
                           "spacers_labelled", "guards_on", "ran_cool_and_quiet"})
    answers[once][""] = "yes";
  for (const int n : to.off()) {
    const std::string number = std::to_string(n);
    answers["seals_new"][number] = "yes";
    answers["bearing_greased"][number] = "yes";
    if (to.drawing.rings > 0) answers["snap_rings_home"][number] = "yes";
  }
  for (std::size_t i = 0; i < to.part_off.size(); ++i)
    if (to.part_off[i] && !to.drawing.parts[i].fit_before.empty())
      answers["captive_in"][to.drawing.parts[i].label] = "yes";
  for (const Nut& nut : to.drawing.nuts) answers["nut_rechecked"][std::string(1, nut.end)] = "yes";
}

}  // namespace

void read_everything(Rebuild& to, Random& random) {
  Sheet& sheet = to.sheet;
  sheet.date = "2026-11-25";
  sheet.came_off = to.off();
  for (Rotor& r : to.rotors) {
    if (r.new_set) sheet.new_set.push_back(r.number);
    read_rotor(to, r, random);
  }
  if (random.chance(0.1)) {  // The marks are looked at before the last rotor is back on.
    const int last = to.from_b > 0 ? to.drawing.rotors : 1;
    sheet.still_off = {last};
  }
  sheet.labels_back = to.labels;
  read_stack(to, random);
  feel_joints(to, random);
  for (const Nut& nut : to.drawing.nuts) sheet.torques.push_back(pull_nut(to, nut, random));
  answer_all(to);
}

}  // namespace rebuilds
