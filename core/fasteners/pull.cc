#include "core/fasteners/pull.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "core/units/guards.h"

namespace flatwise::fasteners {
namespace {

double arm_m(const Lever& lever, double pull_angle_rad) {
  const double along = lever.length.si() + lever.extension.si() * std::cos(lever.extension_angle.radians());
  const double across = lever.extension.si() * std::sin(lever.extension_angle.radians());
  return along * std::sin(pull_angle_rad) - across * std::cos(pull_angle_rad);
}

std::optional<Problem> wrong_pull_angle(Angle angle) {
  if (angle > Angle{} && angle < degrees(180)) return std::nullopt;
  return Problem{Code{"fasteners.pull_angle"}, "pull-angle", {}, {{"value", any(angle)}}, std::nullopt};
}

std::optional<Problem> wrong_lever(const Lever& lever) {
  if (auto p = not_above_nought("length", any(lever.length))) return p;
  if (auto p = negative("extension", any(lever.extension))) return p;
  if (auto p = outside("extension-angle", any(lever.extension_angle), -std::numbers::pi, std::numbers::pi)) return p;
  if (auto p = wrong_pull_angle(lever.pull_angle)) return p;
  if (arm_m(lever, std::numbers::pi / 2) > 0 && arm_m(lever, lever.pull_angle.radians()) > 0) return std::nullopt;
  return Problem{
      Code{"fasteners.no_lever"},
      "extension",
      {},
      {{"length", any(lever.length)}, {"extension", any(lever.extension)}, {"angle", any(lever.extension_angle)}},
      std::nullopt};
}

std::optional<Problem> wrong_multiplier(const Multiplier& multiplier) {
  if (auto p = outside("multiplier", any_ratio(multiplier.ratio), 1, 200)) return p;
  return outside("multiplier-u", any_ratio(multiplier.relative_u), 0, 0.5);
}

/// Root mean square of f(b + d) / f(b) - 1 for d rectangular over +-half width: Simpson, 64 steps.
template <class F>
double rms_change(F&& f, double at, double half_width) {
  if (half_width == 0) return 0;
  constexpr int kSteps = 64;
  const double middle = f(at);
  double sum = 0;
  for (int i = 0; i <= kSteps; ++i) {
    const double change = f(at + half_width * (2.0 * i / kSteps - 1)) / middle - 1;
    sum += (i == 0 || i == kSteps ? 1 : i % 2 == 1 ? 4 : 2) * change * change;
  }
  return std::sqrt(sum / (3 * kSteps));
}

}  // namespace

Result<Length> lever_arm(const Lever& lever) {
  if (auto p = wrong_lever(lever)) return tl::unexpected(*std::move(p));
  return metres(arm_m(lever, lever.pull_angle.radians()));
}

Result<PullBand> bar_pull(const BarPull& bar) {
  if (auto p = not_above_nought("torque", any(bar.torque))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_multiplier(bar.multiplier)) return tl::unexpected(*std::move(p));
  const auto arm = lever_arm(bar.lever);
  if (!arm) return tl::unexpected(arm.error());
  const Force pull = bar.torque / (bar.multiplier.ratio * *arm);
  return PullBand{pull, pull / (1 - bar.multiplier.relative_u)};
}

Result<BetterWay> for_one_person(const BarPull& bar, Force limit) {
  if (auto p = not_above_nought("one-person", any(limit))) return tl::unexpected(*std::move(p));
  const auto pull = bar_pull(bar);
  if (!pull) return tl::unexpected(pull.error());
  const double sine = std::sin(bar.lever.pull_angle.radians());
  const double least_ratio = bar.multiplier.ratio * (1 - bar.multiplier.relative_u);
  return BetterWay{bar.torque / (least_ratio * sine * limit),
                   std::max(1.0, bar.multiplier.ratio * (pull->greatest / limit))};
}

Torque multiplier_reaction(Torque torque, double ratio) { return torque - torque / ratio; }

Result<Multiplier> multiplier_ratio(double gear_ratio, double efficiency_least, double efficiency_greatest) {
  if (auto p = outside("gear-ratio", any_ratio(gear_ratio), 1, 200)) return tl::unexpected(*std::move(p));
  if (auto p = outside("efficiency-least", any_ratio(efficiency_least), 0.5, efficiency_greatest))
    return tl::unexpected(*std::move(p));
  if (auto p = outside("efficiency-greatest", any_ratio(efficiency_greatest), 0.5, 1))
    return tl::unexpected(*std::move(p));
  const double middle = 0.5 * (efficiency_least + efficiency_greatest);
  return Multiplier{gear_ratio * middle, 0.5 * (efficiency_greatest - efficiency_least) / middle};
}

Result<Torque> wrench_setting(Torque torque, const Lever& lever, const Multiplier& multiplier) {
  if (auto p = not_above_nought("torque", any(torque))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_multiplier(multiplier)) return tl::unexpected(*std::move(p));
  Lever square = lever;
  square.pull_angle = degrees(90);
  const auto arm = lever_arm(square);
  if (!arm) return tl::unexpected(arm.error());
  return torque * (lever.length / *arm) / multiplier.ratio;
}

Result<TorqueReached> torque_reached(const Pulled& pulled) {
  const bool wrench = pulled.with == PulledWith::wrench;
  const AnyQuantity shown = wrench ? any(pulled.reading) : any(pulled.pull);
  if (auto p = not_above_nought("shown", shown)) return tl::unexpected(*std::move(p));
  if (auto p = wrong_multiplier(pulled.multiplier)) return tl::unexpected(*std::move(p));
  if (auto p = outside("calibration", any_ratio(pulled.calibration_u), 0, 0.5)) return tl::unexpected(*std::move(p));
  if (auto p = outside("resolution", {pulled.resolution_si, shown.kind}, 0, shown.si))
    return tl::unexpected(*std::move(p));
  if (auto p = outside("pull-angle-width", any(pulled.pull_angle_half_width), 0, degrees(30).radians()))
    return tl::unexpected(*std::move(p));
  if (auto p = wrong_lever(pulled.lever)) return tl::unexpected(*std::move(p));
  const Angle width = pulled.pull_angle_half_width;
  for (const Angle end : {pulled.lever.pull_angle - width, pulled.lever.pull_angle + width})
    if (auto p = wrong_pull_angle(end)) return tl::unexpected(*std::move(p));

  // A wrench feels the moment at its own drive, so only the extension's share depends on the pull's direction.
  const auto arm = [&](double angle_rad) {
    const double at_nut = arm_m(pulled.lever, angle_rad);
    return wrench ? at_nut / (pulled.lever.length.si() * std::sin(angle_rad)) : at_nut;
  };
  const double pull_angle_rad = pulled.lever.pull_angle.radians();
  const double from_angle = rms_change(arm, pull_angle_rad, width.radians());
  const double resolution = pulled.resolution_si / std::sqrt(12.0) / shown.si;
  const double relative =
      std::sqrt(pulled.calibration_u * pulled.calibration_u / 4 + resolution * resolution +
                pulled.multiplier.relative_u * pulled.multiplier.relative_u / 4 + from_angle * from_angle);
  const Torque torque = Torque::from_si(pulled.multiplier.ratio * shown.si * arm(pull_angle_rad));
  return TorqueReached{torque, relative * torque, 2 * relative * torque};
}

Result<TorqueJudged> judge_torque(const TorqueReached& reached, const TorqueTarget& target) {
  if (auto p = not_above_nought("target", any(target.torque))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("tolerance", any_ratio(target.tolerance))) return tl::unexpected(*std::move(p));
  if (auto p = outside("tolerance", any_ratio(target.tolerance), 0, 0.5)) return tl::unexpected(*std::move(p));
  TorqueJudged judged;
  judged.least = (1 - target.tolerance) * target.torque;
  judged.greatest = (1 + target.tolerance) * target.torque;
  const Torque low = reached.torque - reached.expanded, high = reached.torque + reached.expanded;
  if (high < judged.least)
    judged.state = TorqueState::below;
  else if (low > judged.greatest)
    judged.state = TorqueState::above;
  else if (low >= judged.least && high <= judged.greatest)
    judged.state = TorqueState::inside;
  const double relative_u = reached.expanded / reached.torque;
  judged.tool_can_tell = relative_u < target.tolerance;
  judged.expanded_wanted = Torque::from_si(
      std::min(std::abs((reached.torque - judged.least).si()), std::abs((judged.greatest - reached.torque).si())));
  return judged;
}

Result<std::vector<int>> torque_order(std::span<const Nut> nuts) {
  std::vector<int> order(nuts.size());
  for (std::size_t i = 0; i < nuts.size(); ++i) order[i] = static_cast<int>(i);
  const auto place = [&](int i) { return nuts[static_cast<std::size_t>(i)].order; };
  std::ranges::sort(order, {}, place);
  const auto twice = std::ranges::adjacent_find(order, {}, place);
  if (twice == order.end()) return order;
  return tl::unexpected(Problem{Code{"fasteners.order_twice"}, "order", {}, {{"order", place(*twice)}}, std::nullopt});
}

}  // namespace flatwise::fasteners
