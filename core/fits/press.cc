#include "core/fits/press.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "core/metrology/quantiles.h"
#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

std::optional<Problem> check_range(std::string_view field, AnyQuantity least, AnyQuantity greatest) {
  const bool finite = std::isfinite(least.si) && std::isfinite(greatest.si);
  if (finite && least.si <= greatest.si) return std::nullopt;
  return Problem{
      Code{"fits.range_reversed"}, std::string{field}, {}, {{"least", least}, {"greatest", greatest}}, std::nullopt};
}

std::optional<Problem> check_friction(FrictionRange friction) {
  if (friction.least > 0 && friction.greatest <= 1)
    return check_range("friction", any_ratio(friction.least), any_ratio(friction.greatest));
  return Problem{Code{"fits.friction_out_of_range"},
                 "friction",
                 {},
                 {{"least", any_ratio(friction.least)}, {"greatest", any_ratio(friction.greatest)}},
                 std::nullopt};
}

std::optional<Problem> check_pressing(const Pressing& pressing) {
  if (auto bad = check_joint(pressing.joint)) return bad;
  if (auto bad = not_above_nought("width", any(pressing.width))) return bad;
  if (auto bad = negative("roughness_loss", any(pressing.roughness_loss))) return bad;
  const auto& fit = pressing.interference;
  if (auto bad = check_range("interference", any(fit.least), any(fit.greatest))) return bad;
  if (auto bad = check_friction(pressing.friction)) return bad;
  return not_above_nought("hub_yield", any(pressing.hub_yield));
}

Area seat(Length diameter, Length width) { return std::numbers::pi * (diameter * width); }

// Clearance presses on nothing: an exact zero, never a negative pressure.
Result<Pressure> pressed_pressure(const PressedJoint& joint, Length interference, Length loss) {
  return contact_pressure(joint, std::max(after_flattening(interference, loss), Length{}));
}

}  // namespace

Result<PressForce> press_force(const Pressing& pressing) {
  if (auto bad = check_pressing(pressing)) return tl::unexpected(*bad);
  const auto least = pressed_pressure(pressing.joint, pressing.interference.least, pressing.roughness_loss);
  const auto greatest = pressed_pressure(pressing.joint, pressing.interference.greatest, pressing.roughness_loss);
  const auto onset = yield_onset(pressing.joint, pressing.hub_yield);
  CORE_CHECK(least && greatest && onset);
  const Area area = seat(pressing.joint.diameter, pressing.width);
  PressForce result;
  result.least = pressing.friction.least * (*least * area);
  result.greatest = pressing.friction.greatest * (*greatest * area);
  result.pressure_least = *least;
  result.pressure_greatest = *greatest;
  result.yield_onset = *onset;
  result.hub_yields = *greatest > *onset;
  result.from_nought = !(result.least > Force{});
  result.energy_greatest = 0.5 * (result.greatest * pressing.width);
  return result;
}

namespace {

Result<double> friction_of(const FinishedPress& press, Length loss, int number) {
  const std::string field = "presses[" + std::to_string(number) + "]";
  if (auto bad = check_joint(press.joint)) {
    bad->field = field + "." + bad->field;
    return tl::unexpected(*bad);
  }
  if (auto bad = not_above_nought(field + ".width", any(press.width))) return tl::unexpected(*bad);
  if (auto bad = not_above_nought(field + ".force", any(press.force))) return tl::unexpected(*bad);
  if (!(press.interference > loss && std::isfinite(press.interference.si())))
    return tl::unexpected(Problem{Code{"fits.press_without_interference"},
                                  field,
                                  {},
                                  {{"interference", any(press.interference)}, {"loss", any(loss)}, {"press", number}},
                                  std::nullopt});
  const auto pressure = pressed_pressure(press.joint, press.interference, loss);
  CORE_CHECK(pressure);
  return press.force / (*pressure * seat(press.joint.diameter, press.width));
}

// Mean and standard deviation, two passes: the differences are small beside the mean.
void summarise(ShopFriction& shop) {
  const double n = shop.presses;
  double sum = 0;
  for (double mu : shop.each) sum += mu;
  shop.mean = sum / n;
  double squares = 0;
  for (double mu : shop.each) squares += (mu - shop.mean) * (mu - shop.mean);
  shop.deviation = shop.presses > 1 ? std::sqrt(squares / (n - 1)) : 0.0;
}

}  // namespace

Result<ShopFriction> shop_friction(std::span<const FinishedPress> presses, Length roughness_loss, FrictionRange book) {
  if (auto bad = negative("roughness_loss", any(roughness_loss))) return tl::unexpected(*bad);
  if (auto bad = check_friction(book)) return tl::unexpected(*bad);
  ShopFriction shop;
  shop.range = book;
  shop.mean = 0.5 * (book.least + book.greatest);
  shop.presses = static_cast<int>(presses.size());
  shop.missing = std::max(kPressesToNarrow - shop.presses, 0);
  for (int i = 0; i < shop.presses; ++i) {
    const auto mu = friction_of(presses[static_cast<std::size_t>(i)], roughness_loss, i + 1);
    if (!mu) return tl::unexpected(mu.error());
    shop.each.push_back(*mu);
  }
  if (shop.presses > 0) summarise(shop);
  if (shop.missing > 0) return shop;
  const double n = shop.presses;
  const double half = metrology::student_quantile(0.975, n - 1) * shop.deviation * std::sqrt(1.0 + 1.0 / n);
  if (!(shop.mean - half > 0)) {
    shop.standing = ShopFriction::Standing::too_scattered;
    return shop;
  }
  shop.standing = ShopFriction::Standing::narrowed;
  shop.range = {.least = shop.mean - half, .greatest = shop.mean + half};
  return shop;
}

namespace {

std::optional<Problem> check_reading(const ForceReading& reading, const ForceBand& band) {
  if (auto bad = negative("force", any(reading.force))) return bad;
  if (auto bad = negative("calibration", any(reading.calibration_expanded))) return bad;
  if (auto bad = negative("resolution", any(reading.resolution))) return bad;
  if (auto bad = negative("band_least", any(band.least))) return bad;
  return check_range("band", any(band.least), any(band.greatest));
}

Readback::Side side_of(Force force, Force expanded, const ForceBand& band) {
  using Side = Readback::Side;
  const bool lower_side = band.least > Force{};
  if (lower_side && force + expanded < band.least) return Side::low;
  if (force - expanded > band.greatest) return Side::high;
  const bool near_low = lower_side && force - expanded < band.least;
  const bool near_high = force + expanded > band.greatest;
  if (near_low && near_high) return Side::near_both;
  if (near_low) return Side::near_low;
  return near_high ? Side::near_high : Side::inside;
}

Answer answer_of(Readback::Side side) {
  using Side = Readback::Side;
  if (side == Side::inside) return Answer::in;
  return side == Side::low || side == Side::high ? Answer::out : Answer::cannot_tell;
}

Length interference_behind(const Pressing& pressing, Force force, double friction) {
  if (!(force > Force{})) return Length{};
  const Pressure pressure = force / (friction * seat(pressing.joint.diameter, pressing.width));
  const auto flattened = interference_of(pressing.joint, pressure);
  CORE_CHECK(flattened);
  return *flattened + pressing.roughness_loss;
}

}  // namespace

Result<Readback> read_back(const ForceReading& reading, const ForceBand& band, const Pressing& pressing) {
  if (auto bad = check_reading(reading, band)) return tl::unexpected(*bad);
  if (auto bad = check_pressing(pressing)) return tl::unexpected(*bad);
  const double resolution_n = 2.0 * reading.resolution.si() / std::sqrt(12.0);
  Readback result;
  result.expanded = newtons(std::hypot(reading.calibration_expanded.si(), resolution_n));
  result.side = side_of(reading.force, result.expanded, band);
  result.answer = answer_of(result.side);
  result.no_lower_side = !(band.least > Force{});
  const auto& friction = pressing.friction;
  result.interference_least = interference_behind(pressing, reading.force - result.expanded, friction.greatest);
  result.interference_greatest = interference_behind(pressing, reading.force + result.expanded, friction.least);
  const auto onset = yield_onset(pressing.joint, pressing.hub_yield);
  CORE_CHECK(onset);
  const Area area = seat(pressing.joint.diameter, pressing.width);
  result.hub_yields = (reading.force + result.expanded) / (friction.least * area) > *onset;
  return result;
}

Result<RingCreep> ring_creep(const CreepInput& input) {
  if (auto bad = not_above_nought("diameter", any(input.diameter))) return tl::unexpected(*bad);
  if (auto bad = not_above_nought("width", any(input.width))) return tl::unexpected(*bad);
  if (auto bad = negative("pressure", any(input.pressure_least))) return tl::unexpected(*bad);
  if (auto bad = check_range("pressure", any(input.pressure_least), any(input.pressure_greatest)))
    return tl::unexpected(*bad);
  if (auto bad = check_friction(input.friction)) return tl::unexpected(*bad);
  if (auto bad = not_above_nought("couple", any(input.couple))) return tl::unexpected(*bad);
  const auto holding = [&](Pressure pressure, double friction) {
    return 0.5 * friction * (pressure * seat(input.diameter, input.width) * input.diameter);
  };
  RingCreep result;
  result.holding_least = holding(input.pressure_least, input.friction.least);
  result.holding_greatest = holding(input.pressure_greatest, input.friction.greatest);
  result.margin = result.holding_least / input.couple;
  if (result.holding_least > input.couple)
    result.answer = Answer::in;
  else if (result.holding_greatest < input.couple)
    result.answer = Answer::out;
  return result;
}

}  // namespace flatwise::fits
