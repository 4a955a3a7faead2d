// The workshop: its gauges with certificates that are true of them (k = 2), and the errors nobody knows.
#include "tests/rebuilds/truth.h"

namespace rebuilds {
namespace {

std::string day(int year, int month, int day_of_month) {
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return std::to_string(year) + "-" + two(month) + "-" + two(day_of_month);
}

Gauge gauge_of(const char* id, const char* use, Random& random) {
  Gauge g;
  // Two digits: none has the name of a gauge of the demo, whose certificates would then count.
  g.id = std::string{id} + "-" + std::to_string(random.whole(11, 19));
  g.use = use;
  g.until = day(random.whole(2027, 2029), random.whole(1, 12), random.whole(1, 28));
  g.inches = random.chance(0.35);
  return g;
}

Gauge bore_gauge(const Drawing& drawing, Random& random) {
  Gauge g = gauge_of("BG", "bore gauge", random);
  g.calibration = in_micrometres(random.between(1.5, 4) * 1e-6, 1);
  g.resolution =
      g.inches ? in_inches(0.00005 * 0.0254 * random.whole(1, 2), 5) : in_micrometres(random.whole(1, 2) * 1e-6, 0);
  g.repeatability = in_micrometres(random.between(0.7, 2) * 1e-6, 1);
  g.study = random.whole(10, 30);
  if (random.chance(0.7)) {
    g.ring = in_millimetres(drawing.D.si, 3);
    g.ring_calibration = in_micrometres(random.between(0.8, 2) * 1e-6, 1);
  }
  double expansion = 11.5e-6;
  if (random.chance(0.2)) {
    g.expansion = Typed{10.8e-6, "10.8 µm/(m·K)"};
    expansion = g.expansion->si;
  }
  g.true_expansion = expansion * random.between(0.9, 1.1);
  const double ring = g.ring_calibration ? g.ring_calibration->si : 0.0;
  g.error = g.calibration.si / 2 * random.normal() + ring / 2 * random.normal();
  return g;
}

Gauge thermometer(Random& random) {
  Gauge g = gauge_of("TH", "thermometer", random);
  g.calibration = in_kelvins(random.between(0.3, 1.0), 1);
  g.resolution = in_kelvins(0.1, 1);
  g.error = g.calibration.si / 2 * random.normal();
  return g;
}

Gauge stack_gauge(Random& random) {
  Gauge g = gauge_of("SL", "length", random);
  if (random.chance(0.5)) {  // A tape or rule.
    g.calibration = in_millimetres(random.between(0.1, 0.4) * 1e-3, 2);
    g.resolution = g.inches ? in_inches(0.0254 / 64, 6) : in_millimetres(0.5e-3, 1);
  } else {
    g.calibration = in_millimetres(random.between(0.03, 0.1) * 1e-3, 2);
    g.resolution = g.inches ? in_inches(0.001 * 0.0254, 3) : in_millimetres(0.02e-3, 2);
  }
  g.error = g.calibration.si / 2 * random.normal();
  return g;
}

Gauge micrometer(Random& random) {
  Gauge g = gauge_of("MIC", "length", random);
  g.calibration = in_micrometres(4e-6, 0);
  g.resolution = g.inches ? in_inches(0.0001 * 0.0254, 4) : in_millimetres(0.01e-3, 2);
  g.error = g.calibration.si / 2 * random.normal();
  return g;
}

Gauge relative(const char* id, const char* use, double least, double greatest, Random& random) {
  Gauge g = gauge_of(id, use, random);
  g.relative = true;
  g.calibration = in_percent(random.between(least, greatest), 1);
  g.error = g.calibration.si / 2 * random.normal();
  return g;
}

/// Friction of eight to twelve presses of its own, narrow round its own mean.
void own_presses(const Drawing& drawing, Shop& shop, Random& random) {
  shop.friction = random.between(0.10, 0.15);
  shop.friction_sigma = random.between(0.004, 0.010);
  Joint joint = drawing.joint();
  const int count = random.whole(8, 12);
  for (int i = 0; i < count; ++i) {
    const Typed interference = in_micrometres(random.between(25e-6, 45e-6), 1);
    const double force = force_to_press(joint, interference.si, shop.friction + shop.friction_sigma * random.normal());
    shop.presses.push_back({interference, drawing.D, drawing.B, in_newtons(force, 0)});
  }
}

}  // namespace

const Gauge& Shop::gauge(const std::string& id) const { return const_cast<Shop*>(this)->gauge(id); }
Gauge& Shop::gauge(const std::string& id) {
  for (Gauge& g : gauges)
    if (g.id.starts_with(id + "-")) return g;
  return gauges.front();
}

void draw_shop(Rebuild& to, Random& random) {
  Shop& shop = to.shop;
  shop.room = random.chance(0.7) ? in_celsius(random.whole(15, 24), 0) : in_fahrenheit(random.whole(15, 24), 0);
  shop.half_width = in_kelvins(5, 0);
  if (random.chance(0.3)) shop.half_width = in_kelvins(random.pick<double>({3, 8}), 0);
  if (random.chance(0.7)) shop.rate = random.whole(30, 90);
  shop.gauges.push_back(bore_gauge(to.drawing, random));
  shop.gauges.push_back(thermometer(random));
  shop.gauges.push_back(stack_gauge(random));
  shop.gauges.push_back(micrometer(random));
  Gauge feeler = gauge_of("FG", "feeler", random);
  feeler.calibration = in_micrometres(5e-6, 0);
  feeler.resolution = in_millimetres(0.01e-3, 2);
  shop.gauges.push_back(feeler);
  Gauge wrench = relative("TW", "wrench", 0.02, 0.05, random);
  wrench.resolution = wrench.inches ? in_foot_pounds(5 * 1.3558179483314004, 0) : in_newton_metres(5, 0);
  shop.gauges.push_back(wrench);
  Gauge scale = relative("PS", "press gauge", 0.01, 0.03, random);
  scale.resolution = scale.inches ? in_pounds_force(2 * 4.4482216152605, 0) : in_newtons(10, 0);
  shop.gauges.push_back(scale);
  Gauge press = relative("PG", "press gauge", 0.02, 0.04, random);
  press.resolution = press.inches ? in_pounds_force(20 * 4.4482216152605, 0) : in_kilonewtons(100, 1);
  shop.gauges.push_back(press);
  if (random.chance(0.3)) own_presses(to.drawing, shop, random);
  if (!random.chance(0.1)) return;
  Gauge& accepted = shop.gauges[static_cast<std::size_t>(random.whole(0, 6))];
  accepted.until = day(2026, random.whole(1, 5), 15);
  accepted.accepted_by = "the lead";
}

}  // namespace rebuilds
