#include "core/bearings/fitted.h"

#include "core/units/any_quantity.h"
#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

using Change = Result<Length> (*)(const fits::PressedJoint&, Pressure);

/// What a pressed joint takes of the clearance at an interference: by how much its raceway comes nearer to the balls.
Result<Length> taken(const Pressed& pressed, Length interference, Change change, double sign) {
  const Length left = fits::after_flattening(interference, pressed.flattened);
  if (!(left > Length{})) return Length{};
  const auto pressure = fits::contact_pressure(pressed.joint, left);
  if (!pressure) return tl::unexpected(pressure.error());
  const auto moved = change(pressed.joint, *pressure);
  if (!moved) return tl::unexpected(moved.error());
  return sign * *moved;
}

struct Taken {
  Length least, greatest;
};
Result<Taken> taken(const Pressed& pressed, Change change, double sign) {
  const auto least = taken(pressed, pressed.least, change, sign);
  if (!least) return tl::unexpected(least.error());
  const auto greatest = taken(pressed, pressed.greatest, change, sign);
  if (!greatest) return tl::unexpected(greatest.error());
  return Taken{*least, *greatest};
}

std::optional<Problem> reversed(std::string_view field, Length least, Length greatest) {
  if (least <= greatest) return std::nullopt;
  return Problem{Code{"bearings.range_reversed"},
                 std::string{field},
                 {},
                 {{"least", any(least)}, {"greatest", any(greatest)}},
                 std::nullopt};
}

std::optional<Problem> cannot_fit(const FittedTask& t) {
  if (auto bad = reversed("group_greatest", t.group.least, t.group.greatest)) return bad;
  if (auto bad = reversed("interference_greatest", t.outer.least, t.outer.greatest)) return bad;
  if (auto bad = reversed("inner_loss_greatest", t.inner_loss.least, t.inner_loss.greatest)) return bad;
  if (auto bad = outside("expansion", any_expansion(t.expansion), 0, 1e-4)) return bad;
  if (auto bad = not_finite("warmer", any(t.warmer))) return bad;
  if (auto bad = fits::check_joint(t.outer.joint)) return bad;
  if (!t.inner) return std::nullopt;
  if (auto bad = reversed("seat_interference_greatest", t.inner->least, t.inner->greatest)) return bad;
  auto bad = fits::check_joint(t.inner->joint);
  if (bad) bad->field = "seat." + bad->field;
  return bad;
}

}  // namespace

Result<ClearanceLeft> clearance_left(const FittedTask& t) {
  if (auto bad = cannot_fit(t)) return tl::unexpected(*std::move(bad));
  const auto outer = taken(t.outer, fits::outer_raceway_change, -1);
  if (!outer) return tl::unexpected(outer.error());
  Taken inner{t.inner_loss.least, t.inner_loss.greatest};
  if (t.inner) {
    const auto seat = taken(*t.inner, fits::inner_raceway_change, 1);
    if (!seat) return tl::unexpected(seat.error());
    inner = {inner.least + seat->least, inner.greatest + seat->greatest};
  }
  ClearanceLeft left;
  left.warm_loss = t.expansion * t.warmer.kelvins() * t.outer.joint.ring_inside;
  left.least = t.group.least - outer->greatest - inner.greatest - left.warm_loss;
  left.greatest = t.group.greatest - outer->least - inner.least - left.warm_loss;
  left.mean = 0.5 * (left.least + left.greatest);
  left.outer_loss = outer->greatest;
  left.inner_loss = inner.greatest;
  return left;
}

}  // namespace flatwise::bearings
