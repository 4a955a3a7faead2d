// The test run: what the definition asks of it, how the shaft really ran, and what was read. It draws its numbers from a row of its
// own, so that all else of a rebuild is what it was before there was a run in it.
#include "tests/rebuilds/run.h"

#include <algorithm>
#include <cmath>

#include "tests/rebuilds/gauges.h"

namespace rebuilds {
namespace {

constexpr double kInch = 0.0254, kMinute = 60;

double square(double x) { return x * x; }
double factor_of(const Rebuild& r) { return r.drawing.one_sided ? 1.645 : 1.96; }

Gauge vibration_meter(Random& random) {
  Gauge g;
  g.id = "VM-" + std::to_string(random.whole(11, 19));
  g.use = "vibration meter";
  g.until = std::to_string(random.whole(2027, 2029)) + "-06-15";
  g.relative = true;
  g.inches = random.chance(0.35);
  g.calibration = in_percent(random.between(0.03, 0.08), 1);
  g.resolution = g.inches ? in_inches_a_second(0.005 * kInch, 3) : in_millimetres_a_second(0.1e-3, 1);
  g.error = g.calibration.si / 2 * random.normal();
  return g;
}

Typed read_temperature(const Gauge& thermometer, double celsius) {
  const double shown = to_step(celsius + thermometer.error, thermometer.resolution.si);
  return thermometer.inches ? in_fahrenheit(shown, 2) : in_celsius(shown, 1);
}

Typed read_vibration(const Gauge& meter, double speed) {
  const double shown = to_step(speed * (1 + meter.error), meter.resolution.si);
  return meter.inches ? in_inches_a_second(shown, 3) : in_millimetres_a_second(shown, 1);
}

}  // namespace

double rise_known(const Rebuild& r) {
  const Gauge& thermometer = r.shop.gauge("TH");
  return std::sqrt(2 * (square(thermometer.calibration.si / 2) + square(thermometer.resolution.si) / 12));
}

double vibration_known(const Rebuild& r, double read) {
  const Gauge& meter = r.shop.gauge("VM");
  return std::sqrt(square(meter.calibration.si / 2 * read) + square(meter.resolution.si) / 12);
}

double rise_chance_above(const Rebuild& r, double rise, double bound) {
  // One thermometer took both, so that its error is in both and goes: what is left is that each is rounded to a step. Their
  // difference is then the step below the true rise or the one above it, each as often as it is near.
  const double step = r.shop.gauge("TH").resolution.si, steps = rise / step, below = std::floor(steps);
  const double upper = steps - below;
  return (below * step > bound ? 1 - upper : 0) + ((below + 1) * step > bound ? upper : 0);
}

double vibration_bound(const Rebuild& r, double sign) {
  double bound = r.drawing.run.vibration->si;
  for (int i = 0; i < 20; ++i) bound = r.drawing.run.vibration->si + sign * factor_of(r) * vibration_known(r, bound);
  return bound;
}
double rise_bound(const Rebuild& r, double sign) {
  return r.drawing.run.rise->si + sign * factor_of(r) * rise_known(r);
}

void draw_run(Rebuild& to, Random& random) {
  to.shop.gauges.push_back(vibration_meter(random));
  RunLimits& limits = to.drawing.run;
  const bool hangers = std::ranges::any_of(to.drawing.parts, [](const Part& p) { return p.kind == "hanger"; });
  limits.shortest = in_minutes(5 * random.whole(3, 8) * kMinute, 0);
  if (hangers) {
    limits.rise = in_kelvins(random.pick<double>({30, 35, 40, 45}), 0);
    const double mm_s = random.pick<double>({2.8, 4.5, 7.1});
    limits.vibration =
        random.chance(0.6) ? in_millimetres_a_second(mm_s * 1e-3, 1) : in_inches_a_second(mm_s * 1e-3, 2);
  }
  Run& run = to.run;
  run.read = true;
  run.seconds = limits.shortest->si + random.whole(1, 20) * kMinute;
  run.room_c = to.shop.room.si + random.between(-3, 3);
  // In order is well inside: what lies within the doubt of a limit is a mistake's to be.
  for (const Part& p : to.drawing.parts)
    if (p.kind == "hanger")
      run.hangers[p.label] = {random.between(0.3, 0.8) * limits.rise->si,
                              random.between(0.2, 0.75) * limits.vibration->si};
}

void read_run(Rebuild& to) {
  if (!to.run.read) return;
  RunSheet& sheet = to.sheet.run;
  const Gauge &thermometer = to.shop.gauge("TH"), &meter = to.shop.gauge("VM");
  sheet.ran = in_minutes(to.run.seconds, 0);
  sheet.room = read_temperature(thermometer, to.run.room_c);
  for (const auto& [label, ran] : to.run.hangers)
    sheet.hangers[label] = {read_temperature(thermometer, to.run.room_c + ran.rise),
                            read_vibration(meter, ran.vibration)};
}

}  // namespace rebuilds
