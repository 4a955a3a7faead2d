// Mistakes at the press and at the nuts.
#include "tests/rebuilds/mistakes.h"

namespace rebuilds {
namespace {

int pressed_rotor(Rebuild& r, Random& random) {
  const int n = free_rotor(r, "press", random);
  return n != 0 && r.rotor(n).new_set ? n : 0;
}

/// Over what the bore readings may be wrong by, in nine equal shares of a normal distribution.
void promise_force(const Rebuild& r, Mistake& m, const Rotor& rotor, bool low) {
  constexpr double kNinths[] = {-1.593, -0.967, -0.589, -0.282, 0, 0.282, 0.589, 0.967, 1.593};
  const BoreKnown known = bore_known(r, rotor);
  const Gauge& gauge = r.shop.gauge("PG");
  const double sigma = gauge.calibration.si / 2 * rotor.force, u = force_expanded(gauge, rotor.force);
  const auto below = [&](double bound) { return chance_below(rotor.force, sigma, gauge.resolution.si, bound); };
  m.promised = m.pass_allowed = 0;
  for (const double z : kNinths) {
    // The wider of two planes is chosen because it reads the wider: a little more than one plane's own noise.
    const double chosen = 0.6 * known.scatter, bore_u = known.student * known.mean() + chosen;
    const ForceBand band = force_band(r, rotor, z * known.mean(), bore_u);
    const bool hidden = low && band.least == 0;  // A band from nought has no lower side.
    m.promised += (hidden ? 0 : low ? below(0.99 * band.least - u) : 1 - below(1.01 * band.greatest + u)) / 9;
    m.pass_allowed += (hidden ? 1 : low ? 1 - below(0.99 * band.least + u) : below(1.01 * band.greatest - u)) / 9;
  }
}

bool force_wrong(Rebuild& r, Mistake& m, Random& random) {
  if (has_claim(r, "overdue")) return false;
  const int n = pressed_rotor(r, random);
  if (n == 0) return false;
  r.claimed.emplace_back("gauge-limited");
  Rotor& rotor = r.rotor(n);
  const bool low = m.kind == Kind::press_low, ring = low && random.chance(0.4);
  const double share = low ? random.between(0, 0.95) : random.between(0.95, 2);
  if (ring) rotor.ring_outside = r.drawing.ring_least - random.between(5e-6, 40e-6);
  m.told = "rotor " + std::to_string(n) + (ring ? ": ring too small" : low ? ": force too low" : ": force too high");
  m.promised = 0;
  const std::string near = low ? "fits.force_near_low" : "fits.force_near_high";
  m.out = {{{low ? "fits.force_low" : "fits.force_high"}, at_rotor(n), {}}};
  m.cannot_tell = {{{near, "fits.force_near_both"}, at_rotor(n), {}}};
  const ForceBand band = force_band(r, rotor, 0, 0);
  if (!ring) rotor.force = std::max(1.0, share * (low ? band.least : band.greatest));
  m.after = [=](Rebuild& to, Mistake& mine, Random&) { promise_force(to, mine, to.rotor(n), low); };
  return true;
}

bool on_inner_ring(Rebuild& r, Mistake& m, Random& random) {
  const int n = pressed_rotor(r, random);
  if (n == 0) return false;
  m.told = "rotor " + std::to_string(n) + " pressed on the inner ring";
  m.names = {{{"press.inner_ring"}, at_rotor(n), {}}};
  m.after = [=](Rebuild& to, Mistake&, Random&) { to.sheet.rotors[n].ring = "inner"; };
  return true;
}

bool old_set(Rebuild& r, Mistake& m, Random& random) {
  const int n = r.drawing.renew ? pressed_rotor(r, random) : 0;
  if (n == 0) return false;
  r.rotor(n).new_set = false;
  m.told = "rotor " + std::to_string(n) + " got no new set";
  m.names = {{{"kit.no_new_set"}, at_rotor(n), {}}};
  return true;
}

/// A nut that no other mistake has.
const Nut* free_nut(Rebuild& r, Random& random) {
  const Nut& nut = random.pick(r.drawing.nuts);
  return claim(r, std::string{"nut "} + nut.end) ? &nut : nullptr;
}
std::pair<std::string, std::string> nut_arg(char end) { return {"nut", end == 'A' ? "end.a" : "end.b"}; }
TorqueSheet& pull_of(Rebuild& r, char end) { return *std::ranges::find(r.sheet.torques, end, &TorqueSheet::nut); }

bool bar_too_short(Mistake& m, const Nut& nut, Random& random) {
  const double planned = random.between(1.4, 2.2), used = planned * random.between(0.35, 0.8);
  m.told = std::string{"nut "} + nut.end + " pulled on a bar of " + in_millimetres(used, 0).text;
  m.names = {{{"fasteners.torque_below"}, {}, {nut_arg(nut.end)}}};
  m.after = [=, torque = nut.torque.si, end = nut.end](Rebuild& to, Mistake&, Random&) {
    const Gauge& scale = to.shop.gauge("PS");
    const double pull = to_step(torque / planned, scale.resolution.si);
    TorqueSheet& sheet = pull_of(to, end);
    sheet = {
        end, true, scale.inches ? in_pounds_force(pull, 0) : in_newtons(pull, 0), scale.id, in_millimetres(used, 0),
        {}};
  };
  return true;
}

bool pulled_wrong(Rebuild& r, Mistake& m, const Nut& nut, Random& random) {
  if (has_claim(r, "overdue")) return false;
  r.claimed.emplace_back("gauge-limited");
  const bool low = random.chance(0.6);
  const double beyond = random.between(0, 0.25), share = low ? 1 - nut.tolerance - beyond : 1 + nut.tolerance + beyond;
  m.told = std::string{"nut "} + nut.end + " pulled to " + in_percent(share, 0).text;
  m.out = {{{low ? "fasteners.torque_below" : "fasteners.torque_above"}, {}, {nut_arg(nut.end)}}};
  m.cannot_tell = {{{"fasteners.torque_cannot_tell"}, {}, {nut_arg(nut.end)}}};
  m.promised = 0;
  m.after = [=, copy = nut](Rebuild& to, Mistake& mine, Random&) {
    const Gauge& wrench = to.shop.gauge("TW");
    const double true_torque = share * copy.torque.si, step = wrench.resolution.si;
    const double shown = to_step(true_torque / (1 + wrench.error), step);
    pull_of(to, copy.end) = {copy.end,  false, wrench.inches ? in_foot_pounds(shown, 0) : in_newton_metres(shown, 0),
                             wrench.id, {},    {}};
    const double u = std::hypot(wrench.calibration.si, 2 * step / std::sqrt(12.0) / shown);
    const auto below = [&](double bound) {
      return chance_below(true_torque, true_torque * wrench.calibration.si / 2, step, bound);
    };
    const double limit = copy.torque.si * (low ? 1 - copy.tolerance : 1 + copy.tolerance);
    mine.promised = low ? below(limit / (1 + u)) : 1 - below(limit / (1 - u));
    mine.pass_allowed = low ? 1 - below(limit / (1 - u)) : below(limit / (1 + u));
  };
  return true;
}

}  // namespace

bool put_in_press(Rebuild& r, Mistake& m, Random& random) {
  if (m.kind == Kind::inner_ring) return on_inner_ring(r, m, random);
  if (m.kind == Kind::no_new_set) return old_set(r, m, random);
  return force_wrong(r, m, random);
}

bool put_in_torque(Rebuild& r, Mistake& m, Random& random) {
  const Nut* nut = free_nut(r, random);
  if (nut == nullptr) return false;
  if (m.kind == Kind::short_bar) return bar_too_short(m, *nut, random);
  if (m.kind == Kind::torque_off) return pulled_wrong(r, m, *nut, random);
  m.told = std::string{"nut "} + nut->end + " not torqued";
  m.names = {{{"torque.nut_not_pulled"}, {}, {nut_arg(nut->end)}}};
  m.after = [end = nut->end](Rebuild& to, Mistake&, Random&) {
    std::erase_if(to.sheet.torques, [&](const TorqueSheet& t) { return t.nut == end; });
  };
  return true;
}

}  // namespace rebuilds
