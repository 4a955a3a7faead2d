#include "job/press_path.h"

#include <cmath>
#include <numeric>

namespace flatwise::job {
namespace {

constexpr int kTravels = 16, kStops = 5;

std::string sixteenths(double inches) {
  const auto all = std::lround(inches * 16), rest = all % 16, common = std::gcd(rest, 16L);
  std::string text = all >= 16 ? std::to_string(all / 16) : std::string{};
  if (rest != 0) text += (text.empty() ? "" : " ") + std::to_string(rest / common) + "/" + std::to_string(16 / common);
  return text + " in";
}

}  // namespace

fits::PressPath press_path_of(const Working& band) {
  const auto si = [&](std::string_view name) {
    const Input* input = band.input(name);
    CORE_CHECK(input != nullptr);
    return std::get<AnyQuantity>(input->value).si;
  };
  const auto length = [&](std::string_view name) { return metres(si(name)); };
  return {
      .pressing = {.joint = {.diameter = length("joint-diameter"),
                             .ring_inside = length("ring-inside"),
                             .hub_outside = length("hub-outside"),
                             .ring = {pascals(si("ring-modulus")), si("ring-poisson")},
                             .hub = {pascals(si("hub-modulus")), si("hub-poisson")}},
                   .width = length("width"),
                   .roughness_loss = length("roughness-loss"),
                   .interference = {.least = length("interference-least"), .greatest = length("interference-greatest")},
                   .friction = {.least = si("friction-least"), .greatest = si("friction-greatest")},
                   .hub_yield = pascals(si("hub-yield"))},
      .lead = kPressLead};
}

std::optional<std::vector<fits::CurvePoint>> expected_curve(const fits::PressPath& path) {
  std::vector<Length> travels{Length{}};
  for (int i = 0; i <= kTravels; ++i)
    travels.push_back(path.lead + (static_cast<double>(i) / kTravels) * path.pressing.width);
  auto curve = fits::press_curve(path, travels);
  if (!curve) return std::nullopt;
  return *std::move(curve);
}

std::optional<PressDrawn> press_drawn(const Facts& facts, int rotor, const Working& band, UnitSystem units) {
  const fits::PressPath path = press_path_of(band);
  auto curve = expected_curve(path);
  if (!curve) return std::nullopt;
  PressDrawn out{.rotor = rotor, .invented = facts.shaft.spec().invented, .band = *std::move(curve)};
  out.home = path.lead + path.pressing.width;
  for (const PressReading& press : facts.bench.presses)
    if (press.rotor == rotor) out.force = newtons(press.force.value.value.si);
  for (const PressPoint& p : facts.bench.press_points)
    if (p.rotor == rotor) out.points.push_back({metres(p.travel.value.value.si), newtons(p.force.value.value.si)});
  const bool metric = units == UnitSystem::metric;
  out.length_unit = metric ? "mm" : "in";
  out.force_unit = metric ? "kN" : "lbf";
  out.length_si = metric ? millimetres(1).si() : inches(1).si();
  out.force_si = metric ? kilonewtons(1).si() : pounds_force(1).si();
  const bool nothing = !out.force && out.points.empty();
  out.question.push_back({nothing              ? Code{"bench.press.curve_asks"}
                          : out.points.empty() ? Code{"bench.press.curve_in"}
                                               : Code{"bench.press.curve_all_in"},
                          {}});
  if (out.invented) out.question.push_back({Code{"study.demo"}, {}});
  out.title.args = {{"rotor", rotor}};
  out.x_words.args = {{"unit", out.length_unit}};
  if (out.force) out.read_words = Message{Code{"bench.press.curve_read"}, {{"force", any(*out.force)}}};
  return out;
}

std::vector<std::string> press_stops(const Rotor& rotor, UnitSystem units) {
  constexpr double kInch = 0.0254;
  std::vector<std::string> stops;
  for (int i = 1; i <= kStops; ++i) {
    const double travel = kPressLead.si() + rotor.bearing.width.si() * i / kStops;
    stops.push_back(units == UnitSystem::metric ? std::to_string(std::lround(travel * 1e3)) + " mm"
                                                : sixteenths(travel / kInch));
  }
  return stops;
}

}  // namespace flatwise::job
