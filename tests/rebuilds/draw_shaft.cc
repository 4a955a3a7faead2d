// The shaft as drawn: what a shop could have standing in its yard.
#include <algorithm>
#include <cmath>

#include "tests/rebuilds/truth.h"

namespace rebuilds {
namespace {

// Boundary dimensions of ISO 15 (series 62), ring inside estimated by the shop; bore classes of ISO 286-2 for N7, P7, M7
// and the lower deviation of the outside of normal, P6, P5 rings of ISO 492, all in micrometres. From memory.
struct Size {
  double d, D, B, inside;
  int n7_upper, n7_lower, p7_upper, p7_lower;
  int normal, p6, p5;
};
constexpr Size kSizes[] = {
    {40, 80, 18, 69, -9, -39, -21, -51, 13, 11, 9},      {50, 90, 20, 78, -10, -45, -24, -59, 15, 13, 10},
    {55, 100, 21, 86.5, -10, -45, -24, -59, 15, 13, 10}, {60, 110, 22, 95.5, -10, -45, -24, -59, 15, 13, 10},
    {65, 120, 23, 104, -10, -45, -24, -59, 15, 13, 10},  {80, 140, 26, 122, -12, -52, -28, -68, 18, 15, 11}};

Typed drawn_length(double mm, Random& random) {
  if (random.chance(0.7)) return in_millimetres(std::round(mm * 2) / 2 * 1e-3, 1);
  return in_inch_fractions(mm * 1e-3, 16);
}
Typed drawn_tolerance(double mm, Random& random) {
  return random.chance(0.8) ? in_millimetres(mm * 1e-3, 3) : in_thou(mm * 1e-3, 1);
}

void draw_bearing(Drawing& to, Random& random) {
  const Size& s = kSizes[random.whole(0, 5)];
  to.d = in_millimetres(s.d * 1e-3, 0);
  to.D = in_millimetres(s.D * 1e-3, 0);
  to.B = in_millimetres(s.B * 1e-3, 0);
  to.ring_inside = in_millimetres(s.inside * 1e-3, 1);
  to.across = random.chance(0.5) ? in_millimetres(s.d * 0.6 * 1e-3, 0) : in_inch_fractions(s.d * 0.6e-3, 8);
  const int tolerance = random.whole(0, 2);
  to.tolerance_class = tolerance == 0 ? "normal" : tolerance == 1 ? "P6" : "P5";
  to.ring_greatest = to.D.si;
  to.ring_least = to.D.si - 1e-6 * (tolerance == 0 ? s.normal : tolerance == 1 ? s.p6 : s.p5);
  to.designation = "TH-" + std::to_string(static_cast<int>(s.D)) + "-" + random.pick<std::string>({"C3", "C4", "CN"});
  const bool tight = random.chance(0.5);
  const double upper = to.D.si + 1e-6 * (tight ? s.p7_upper : s.n7_upper);
  const double lower = to.D.si + 1e-6 * (tight ? s.p7_lower : s.n7_lower);
  to.bore_least = random.chance(0.5) ? in_millimetres(lower, 3) : in_inches(lower, 5);
  to.bore_greatest = in_millimetres(upper, 3);
  if (random.chance(0.6)) {
    to.fit = (random.chance(0.5) ? std::to_string(static_cast<int>(s.D)) + " " : "") + (tight ? "P7" : "N7");
    to.bore_least = in_millimetres(lower, 3);
  }
  to.hub_outside = in_millimetres(std::round(s.D * random.between(1.35, 1.7)) * 1e-3, 0);
  to.loss = in_micrometres(random.whole(2, 6) * 1e-6, 0);
}

void draw_hub(Drawing& to, Random& random) {
  const double tolerance = to.bore_greatest.si - to.bore_least.si;
  to.ovality_limit = to.taper_limit = tolerance / 2;
  if (random.chance(0.4)) to.ovality = in_micrometres(random.whole(10, 20) * 1e-6, 0);
  if (random.chance(0.4)) to.taper = in_micrometres(random.whole(10, 20) * 1e-6, 0);
  if (to.ovality) to.ovality_limit = to.ovality->si;
  if (to.taper) to.taper_limit = to.taper->si;
  switch (random.whole(0, 2)) {
    case 0:
      to.material = {"steel", {}, 207e9, 0.292, 11.5e-6};
      break;
    case 1:
      to.material = {"cast_iron", {}, 100e9, 0.211, 10.5e-6};
      break;
    default:
      to.material = {"ductile_iron",
                     "[material.ductile_iron]\nyoungs_modulus = \"170 GPa\"\npoisson = 0.275\nyield = \"310 MPa\"\n"
                     "expansion = \"11 µm/(m·K)\"\n",
                     170e9, 0.275, 11e-6};
  }
}

void draw_pattern(Drawing& to, Random& random) {
  const double which = random.uniform();
  to.rule = which < 0.45 ? Rule::facing : which < 0.72 ? Rule::step : Rule::listed;
  to.step = random.whole(1, to.flats - 1);
  if (to.rule == Rule::listed)
    for (int i = 0; i < to.rotors; ++i) to.listed.push_back(random.whole(1, to.flats));
  if (random.chance(0.35)) to.first_flat = to.rule == Rule::listed ? to.listed.front() : random.whole(1, to.flats);
}

class Stack {
 public:
  Stack(Drawing& to, Random& random) : to_{to}, random_{random} {}

  void draw() {
    blocked_a_ = random_.chance(0.12);
    blocked_b_ = !blocked_a_ && random_.chance(0.12);
    if (blocked_a_) {
      add("shoulder", random_.between(8, 20)).obstacle = true;
    } else {
      add("nut", 34);
      add("washer", 6);
    }
    if (random_.chance(0.8)) hanger();
    add("spacer", random_.between(15, 80));
    for (int n = 1; n <= to_.rotors; ++n) rotor(n);
    add("spacer", random_.between(15, 80));
    if (random_.chance(0.2)) add("guard disc", random_.between(10, 30));
    if (random_.chance(0.8)) hanger();
    end_b();
    name();
  }

 private:
  Part& add(const char* kind, double mm) {
    Part p;
    p.kind = kind;
    p.length = drawn_length(mm, random_);
    p.tolerance = drawn_tolerance(random_.pick<double>({0.02, 0.03, 0.05, 0.05, 0.1}), random_);
    to_.parts.push_back(std::move(p));
    return to_.parts.back();
  }
  void hanger() {
    Part& h = add("hanger", 31);
    if (random_.chance(0.25)) h.fit_before = {{"grease pipe", 1}};
  }
  void rotor(int number) {
    Part& r = add("rotor", 0);
    r.rotor = number;
    r.length = {2 * to_.half_length.si, "two halves"};
    r.tolerance = {2 * to_.half_tolerance.si, {}};
    if (number == to_.rotors) return;
    add("spacer", random_.between(40, 140));
    if (!random_.chance(0.08)) return;
    hanger();
    add("spacer", random_.between(20, 90));
  }
  void end_b() {
    if (random_.chance(0.5) || blocked_b_) {
      add("spacer", random_.between(8, 30));
      Part& pulley = add("pulley", random_.between(50, 80));
      pulley.obstacle = blocked_b_;
      if (random_.chance(0.6)) pulley.fit_before = {{"flange bolts", 4}};
      to_.unbalance = to_.first_flat.has_value() && random_.chance(0.5);
    }
    add("washer", 6);
    add("nut", 34);
  }
  void name() {
    const auto count = [&](const std::string& kind) { return std::ranges::count(to_.parts, kind, &Part::kind); };
    std::map<std::string, int> seen;
    for (Part& p : to_.parts) {
      const int number = ++seen[p.kind];
      const auto all = count(p.kind);
      std::string which = all == 1 ? "" : std::to_string(number);
      if (all == 2) which = number == 1 ? "A" : "B";
      if (all == 3 && p.kind == "hanger") which = number == 1 ? "A" : number == 2 ? "M" : "B";
      if (p.kind == "nut" && all == 1) which = "B";
      p.label = which.empty() ? p.kind : p.kind + " " + which;
      if (p.kind == "spacer") p.label = "S" + std::to_string(number);
      if (p.kind == "rotor") p.label = std::to_string(number);
    }
  }

  Drawing& to_;
  Random& random_;
  bool blocked_a_ = false, blocked_b_ = false;
};

void draw_nuts(Drawing& to, Random& random) {
  for (const Part& p : to.parts) {
    if (p.kind != "nut") continue;
    const double torque = random.between(300, 1300);
    const Typed text =
        random.chance(0.5) ? in_foot_pounds(to_step(torque, 33.9), 0) : in_newton_metres(to_step(torque, 10), 0);
    const bool last = &p == &to.parts.back();
    to.nuts.push_back({last ? 'B' : 'A', text, random.pick<double>({0.08, 0.10, 0.10, 0.12})});
  }
}

}  // namespace

Joint Drawing::joint() const {
  Joint j;
  j.diameter = D.si, j.width = B.si, j.ring_inside = ring_inside.si, j.hub_outside = hub_outside.si;
  j.hub_modulus = material.modulus, j.hub_poisson = material.poisson, j.flattening = loss.si;
  return j;
}

int Drawing::part_of_rotor(int number) const {
  const auto it = std::ranges::find(parts, number, &Part::rotor);
  return static_cast<int>(it - parts.begin());
}

void draw_shaft(Rebuild& rebuild, Random& random) {
  Drawing& to = rebuild.drawing;
  to.flats = random.pick<int>({6, 6, 6, 4, 8});
  to.rotors = 3 + static_cast<int>(22 * random.uniform() * random.uniform());
  draw_bearing(to, random);
  draw_hub(to, random);
  draw_pattern(to, random);
  to.half_length = drawn_length(random.between(25, 40), random);
  to.half_tolerance = drawn_tolerance(random.pick<double>({0.02, 0.03, 0.05}), random);
  const double lean = random.chance(0.5) ? 5 : 2;
  for (int i = 0; i < to.rotors; ++i)
    to.lean.push_back(in_degrees(i > 0 && random.chance(0.04) ? 7 - lean : lean, false));
  to.rings = random.pick<int>({2, 2, 2, 1, 0});
  to.seals = random.pick<int>({2, 2, 1});
  to.renew = !random.chance(0.1);
  to.one_sided = random.chance(0.15);
  to.open_step = in_millimetres(random.pick<double>({1.5, 2, 3}) * 1e-3, 1);
  to.least_gap = {to.open_step.si / 2, {}};
  to.least_gap_given = random.chance(0.3);
  if (to.least_gap_given) to.least_gap = in_millimetres(to.open_step.si * random.between(0.3, 0.6), 2);
  Stack{to, random}.draw();
  draw_nuts(to, random);
}

}  // namespace rebuilds
