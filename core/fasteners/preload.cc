#include "core/fasteners/preload.h"

#include <cmath>
#include <numbers>
#include <string>

#include "core/units/guards.h"

namespace flatwise::fasteners {
namespace {

std::optional<Problem> wrong_factor(const NutFactor& factor) {
  if (auto p = not_above_nought("nut-factor-least", any_ratio(factor.least))) return p;
  if (auto p = not_above_nought("nut-factor-greatest", any_ratio(factor.greatest))) return p;
  if (factor.least <= factor.greatest) return std::nullopt;
  return Problem{Code{"fasteners.nut_factor_order"},
                 "nut-factor-least",
                 {},
                 {{"least", any_ratio(factor.least)}, {"greatest", any_ratio(factor.greatest)}},
                 std::nullopt};
}

}  // namespace

PublishedNutFactor nut_factor(Lubrication lubrication) {
  switch (lubrication) {
    case Lubrication::dry:
      return {{0.18, 0.27}, "NutFactors"};
    case Lubrication::oiled:
      return {{0.10, 0.26}, "NutFactors"};
    case Lubrication::greased:
      return {{0.15 * 0.7, 0.15 * 1.3}, "NutFactors"};
    case Lubrication::moly:
      return {{0.10, 0.18}, "NutFactors"};
    case Lubrication::zinc:
      return {{0.17, 0.35}, "NutFactors"};
  }
  CORE_CHECK(false);
}

Result<ForceBand> preload_from_torque(const TorqueOnThread& on) {
  if (auto p = not_above_nought("torque", any(on.torque))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("diameter", any(on.diameter))) return tl::unexpected(*std::move(p));
  if (auto p = outside("torque-u", any(on.torque_u), 0, on.torque.si())) return tl::unexpected(*std::move(p));
  if (auto p = wrong_factor(on.factor)) return tl::unexpected(*std::move(p));
  return ForceBand{(on.torque - on.torque_u) / (on.factor.greatest * on.diameter),
                   (on.torque + on.torque_u) / (on.factor.least * on.diameter)};
}

Result<TorqueBand> torque_for_preload(const WantedPreload& wanted) {
  if (auto p = not_above_nought("preload", any(wanted.preload))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("diameter", any(wanted.diameter))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_factor(wanted.factor)) return tl::unexpected(*std::move(p));
  return TorqueBand{wanted.factor.least * (wanted.preload * wanted.diameter),
                    wanted.factor.greatest * (wanted.preload * wanted.diameter)};
}

Result<FullTorque> torque_full(const TorqueParts& parts) {
  if (auto p = not_above_nought("preload", any(parts.preload))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("pitch", any(parts.pitch))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("pitch-diameter", any(parts.pitch_diameter))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("bearing-diameter", any(parts.bearing_diameter))) return tl::unexpected(*std::move(p));
  if (auto p = outside("thread-friction", any_ratio(parts.thread_friction), 0, 1)) return tl::unexpected(*std::move(p));
  if (auto p = outside("bearing-friction", any_ratio(parts.bearing_friction), 0, 1))
    return tl::unexpected(*std::move(p));
  constexpr double kTwoCos30 = std::numbers::sqrt3;
  const Torque stretching = parts.preload * parts.pitch / (2 * std::numbers::pi);
  const Torque thread = parts.thread_friction * (parts.preload * parts.pitch_diameter) / kTwoCos30;
  const Torque face = parts.bearing_friction * (parts.preload * parts.bearing_diameter) / 2;
  return FullTorque{stretching + thread + face, stretching, thread, face};
}

Result<Length> stack_compression(Force force, Pressure youngs_modulus, std::span<const Sleeve> sleeves) {
  if (auto p = not_above_nought("force", any(force))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("youngs-modulus", any(youngs_modulus))) return tl::unexpected(*std::move(p));
  if (sleeves.empty()) return tl::unexpected(Problem{Code{"fasteners.no_sleeve"}, "length", {}, {}, std::nullopt});
  Length sum;
  for (const Sleeve& sleeve : sleeves) {
    if (auto p = not_above_nought("length", any(sleeve.length))) return tl::unexpected(*std::move(p));
    if (auto p = not_above_nought("outside", any(sleeve.outside))) return tl::unexpected(*std::move(p));
    if (!(sleeve.bore >= Length{} && sleeve.bore < sleeve.outside))
      return tl::unexpected(Problem{Code{"fasteners.sleeve_bore"},
                                    "bore",
                                    {},
                                    {{"bore", any(sleeve.bore)}, {"outside", any(sleeve.outside)}},
                                    std::nullopt});
    const Area area = std::numbers::pi / 4 * (sleeve.outside * sleeve.outside - sleeve.bore * sleeve.bore);
    sum = sum + force / (youngs_modulus * area) * sleeve.length;
  }
  return sum;
}

}  // namespace flatwise::fasteners
