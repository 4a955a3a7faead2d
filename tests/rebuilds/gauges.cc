#include "tests/rebuilds/gauges.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace rebuilds {
namespace {

constexpr double kRectangular = 1 / std::numbers::sqrt3;

double square(double x) { return x * x; }

/// Share of the length by which the correction to 20 °C may be wrong (standard uncertainty).
double temperature_share(const Rebuild& r, const Rotor& rotor) {
  const Gauge& gauge = r.shop.gauge("BG");
  const double taken = r.shop.gauge("TH").calibration.si / 2, room = r.shop.half_width.si * kRectangular;
  const double part = r.drawing.material.expansion, own = gauge.expansion ? gauge.expansion->si : 11.5e-6;
  const double part_u = rotor.part_taken ? taken : room, gauge_u = rotor.gauge_taken ? taken : room;
  const double part_rise = (rotor.part_taken ? rotor.part_c : r.shop.room.si) - 20;
  const double gauge_rise = (rotor.gauge_taken ? rotor.gauge_c : r.shop.room.si) - 20;
  const double spread = 0.1 * kRectangular;  // Handbook expansions differ by ten in a hundred.
  return std::sqrt(square(part * part_u) + square(own * gauge_u) +
                   square(part * spread) * (square(part_rise) + square(part_u)) +
                   square(own * spread) * (square(gauge_rise) + square(gauge_u)));
}

}  // namespace

double BoreKnown::mean() const { return std::sqrt(square(scatter) / 4 + square(common)); }
double BoreKnown::size() const { return std::sqrt(square(scatter) * 0.75 + square(common)); }
double BoreKnown::oval() const { return std::numbers::sqrt2 * scatter; }
double BoreKnown::taper() const { return scatter / std::numbers::sqrt2; }

BoreKnown bore_known(const Rebuild& r, const Rotor& rotor) {
  const Gauge& gauge = r.shop.gauge("BG");
  BoreKnown out;
  const double resolution = gauge.resolution.si / std::sqrt(12.0);
  out.scatter = std::hypot(gauge.repeatability->si, resolution);
  const double ring = gauge.ring_calibration ? gauge.ring_calibration->si / 2 : 0.0;
  const double warm = r.drawing.D.si * temperature_share(r, rotor);
  out.common = std::sqrt(square(gauge.calibration.si / 2) + square(ring) + square(warm) + square(resolution));
  out.resolution = resolution;
  out.student = student_95(gauge.study - 1);
  out.factor = r.drawing.one_sided ? 1.645 : 1.96;
  out.tail = r.drawing.one_sided ? 0.05 : 0.025;
  return out;
}

namespace {

/// Range of the friction: the textbooks' for oiled to dry steel, or what its own presses foretell of the next one, 95 %.
std::pair<double, double> friction_range(const Rebuild& r) {
  const std::size_t n = r.shop.presses.size();
  if (n < 8) return {0.08, 0.18};
  double sum = 0, squares = 0;
  for (const OwnPress& p : r.shop.presses) {
    const double friction = p.force.si / force_to_press(r.drawing.joint(), p.interference.si, 1);
    sum += friction;
    squares += friction * friction;
  }
  const double count = static_cast<double>(n), mean = sum / count;
  const double deviation = std::sqrt((squares - count * mean * mean) / (count - 1));
  const double by = student_95(static_cast<int>(n) - 1) * deviation * std::sqrt(1 + 1 / count);
  return {mean - by, mean + by};
}

}  // namespace

ForceBand force_band(const Rebuild& r, const Rotor& rotor, double wide, double u) {
  const Drawing& d = r.drawing;
  const double widest = std::max(rotor.planes[0].mean, rotor.planes[1].mean) + wide + u;
  const double tightest = std::min(rotor.planes[0].mean, rotor.planes[1].mean) + wide - u;
  const auto [low, high] = friction_range(r);
  return {force_to_press(d.joint(), d.ring_least - widest, low),
          force_to_press(d.joint(), d.ring_greatest - tightest, high)};
}

double force_expanded(const Gauge& gauge, double force) {
  return std::hypot(gauge.calibration.si * force, 2 * gauge.resolution.si / std::sqrt(12.0));
}

StackKnown stack_known(const Rebuild& r) {
  StackKnown out;
  std::vector<double> halves;
  double measured = 0;
  const Gauge& micrometer = r.shop.gauge("MIC");
  for (const Part& p : r.drawing.parts) {
    if (p.kind == "nut") continue;
    out.true_length += p.true_length;
    const auto read = r.sheet.parts_measured.find(p.label);
    if (read != r.sheet.parts_measured.end()) {
      out.nominal += read->second.si;
      measured += square(micrometer.calibration.si / 2) + square(micrometer.resolution.si) / 12;
      continue;
    }
    out.nominal += p.length.si;
    if (p.kind == "rotor")
      halves.insert(halves.end(), 2, r.drawing.half_tolerance.si);
    else
      halves.push_back(p.tolerance.si);
  }
  const SumBand band = sum_band(halves, std::sqrt(measured));
  out.least = out.nominal + band.least;
  out.greatest = out.nominal + band.greatest;
  const Gauge& gauge = r.shop.gauge("SL");
  out.sigma = gauge.calibration.si / 2;
  out.step = gauge.resolution.si;
  out.expanded = 1.96 * std::hypot(out.sigma, out.step / std::sqrt(12.0));
  return out;
}

std::vector<int> joints_touched(const Rebuild& r) {
  std::vector<bool> off;
  for (std::size_t i = 0; i < r.drawing.parts.size(); ++i)
    if (r.drawing.parts[i].kind != "nut")
      off.insert(off.end(), r.drawing.parts[i].kind == "rotor" ? 2U : 1U, static_cast<bool>(r.part_off[i]));
  std::vector<int> out;
  for (std::size_t j = 1; j < off.size(); ++j)
    if (off[j - 1] || off[j]) out.push_back(static_cast<int>(j));
  return out;
}

double lever_of(const TorqueSheet& pull) {
  if (pull.bar) return pull.length->si;
  if (!pull.extension) return 1;
  return (pull.length->si + pull.extension->si) / pull.length->si;
}

namespace {

void weigh_bore(Rebuild& r, const Rotor& rotor) {
  const BoreKnown known = bore_known(r, rotor);
  // The noise of a fitted form has longer tails than a normal's a little way out; a quarter more width holds them.
  const auto chance = [&](double inside, double u) { return 1 - normal_cdf(known.factor + inside / (1.25 * u)); };
  for (const Plane& p : rotor.planes) {
    r.sound.push_back({"bore size", chance(r.drawing.bore_greatest.si - p.mean - p.oval / 2, known.size())});
    r.sound.push_back({"bore size", chance(p.mean - p.oval / 2 - r.drawing.bore_least.si, known.size())});
    r.sound.push_back({"ovality", chance(r.drawing.ovality_limit - p.oval, known.oval())});
  }
  const double taper = std::abs(rotor.planes[0].mean - rotor.planes[1].mean);
  r.sound.push_back({"taper", chance(r.drawing.taper_limit - taper, known.taper())});
}

void weigh_press(Rebuild& r, const Rotor& rotor) {
  const Gauge& gauge = r.shop.gauge("PG");
  const ForceBand band = force_band(r, rotor, 0, 0);
  const double u = force_expanded(gauge, rotor.force), sigma = gauge.calibration.si / 2 * rotor.force;
  const double low = chance_below(rotor.force, sigma, gauge.resolution.si, band.least - u);
  const double high = 1 - chance_below(rotor.force, sigma, gauge.resolution.si, band.greatest + u);
  r.sound.push_back({"press force", low + high});
}

}  // namespace

void weigh_sound(Rebuild& r) {
  for (const Rotor& rotor : r.rotors) {
    if (!rotor.off) continue;
    weigh_bore(r, rotor);
    if (rotor.new_set) weigh_press(r, rotor);
  }
  const StackKnown s = stack_known(r);
  const double long_one = 1 - chance_below(s.true_length, s.sigma, s.step, s.greatest + s.expanded);
  const double short_one = chance_below(s.true_length, s.sigma, s.step, s.least - s.expanded);
  r.sound.push_back({"stack length", long_one + short_one});
}

}  // namespace rebuilds
