// The two figures of the play: what a new bearing would show at the rim, and what a swing means inside the bearing.
#include <algorithm>
#include <cmath>

#include "core/bearings/figures_parts.h"

namespace flatwise::bearings {
namespace {

/// The values with the share after them, and how a rotor that hung was rocked.
Computed with_held(const Given& in, const Rocked& rocked, double share, std::vector<Value> values) {
  values.push_back(any_ratio(share));
  Computed out{.values = std::move(values)};
  if (!rocked.hanging) return out;
  Args args{{"share", any_ratio(share)}};
  if (in.has("push")) args.emplace_back("push", AnyQuantity{in.si("push"), Kind::force});
  out.findings.push_back({in.has("push") ? Code{"bearings.play_hung"} : Code{"bearings.play_hung_unpushed"},
                          Severity::note,
                          std::move(args),
                          {},
                          std::nullopt});
  return out;
}

Result<Computed> compute_rim_play(const Given& in) {
  const auto rocked = rocked_from(in);
  if (!rocked) return tl::unexpected(rocked.error());
  const Length least = length_of(in, "clearance-least"), greatest = length_of(in, "clearance-greatest");
  if (least > greatest)
    return tl::unexpected(Problem{Code{"bearings.range_reversed"},
                                  "clearance-greatest",
                                  {},
                                  {{"least", any(least)}, {"greatest", any(greatest)}},
                                  std::nullopt});
  const Rocked wide = with_reach(*rocked, rocked->reach_doubt);
  const auto low = swing_at(with_reach(*rocked, -rocked->reach_doubt), least, rocked->factor.least);
  const auto high = swing_at(wide, greatest, rocked->factor.greatest);
  if (!low) return tl::unexpected(low.error());
  if (!high) return tl::unexpected(high.error());
  const Angle carried = *free_tilt(wide.bearing, std::max(greatest, Length{}), rocked->factor.greatest);
  return with_held(in, *rocked, share_at(wide, greatest, carried), {any(*low), any(*high)});
}

double mean_tilt(const Rocked& r, Length clearance) {
  const Angle carried = *free_tilt(r.bearing, clearance, r.factor.mean);
  return carried.radians() * share_at(r, clearance, carried);
}

/// By how many per cent the clearance moves with one per cent of the swing: near two, and more where the rotor hangs.
double clearance_power(const Rocked& r, Length clearance) {
  if (!r.hanging || !(clearance > Length{})) return 2.0;
  constexpr double kStep = 1e-4;
  const double grown = std::log(mean_tilt(r, clearance) / mean_tilt(r, (1.0 - kStep) * clearance));
  return kStep / std::max(grown, kStep / 4);  // Over four only where the grooves let go of the balls.
}

/// The clearance behind a swing, with its doubt: clearance goes as the square of the play, so twice its relative doubt.
struct Behind {
  Length least, middle, greatest;
  double share = 1;
};
Result<Behind> clearance_behind(const Given& in, const Rocked& r) {
  const double swing = in.si("swing");
  // The dial's share depends, very little, on the clearance that is looked for: it settles in three rounds.
  Length clearance;
  for (int round = 0; round < 3; ++round) {
    const double tilt = swing / (2.0 * r.radius.si() * dial_factor(r.hub, r.bearing, clearance, r.radius));
    const auto found = r.hanging ? clearance_of_hanging(r.bearing, radians(tilt), r.factor.mean, *r.hanging)
                                 : clearance_of(r.bearing, radians(tilt), r.factor.mean);
    if (!found) return tl::unexpected(found.error());
    clearance = *found;
  }
  const double root3 = std::sqrt(3.0);
  const double power = clearance_power(r, clearance);
  const double share = share_at(r, clearance, *free_tilt(r.bearing, clearance, r.factor.mean));
  const double of_swing = swing > 0 ? power * in.si("swing-u") / (2.0 * swing) : 0;  // Expanded, k = 2.
  const double of_factor = power * (r.factor.greatest - r.factor.least) / (2.0 * r.factor.mean) / root3;
  const double of_reach = r.reach_doubt / root3;
  // Nobody pushes evenly, and the share is that of many balls: doubted by as much as it takes off.
  const double of_share = power * (1.0 - share) / share / root3;
  const double expanded =
      2.0 * std::sqrt(of_swing * of_swing + of_factor * of_factor + of_reach * of_reach + of_share * of_share);
  return Behind{std::max(0.0, 1.0 - expanded) * clearance, clearance, (1.0 + expanded) * clearance, share};
}

/// Beside a new bearing, where its clearance is told. A suspect is not a verdict: notes only.
void compare_with_new(const Given& in, const Behind& behind, std::vector<Finding>& findings) {
  if (!in.has("new-greatest")) return;
  const Length most = length_of(in, "new-greatest");
  const Args args{{"least", any(behind.least)}, {"greatest", any(behind.greatest)}, {"new", any(most)}};
  if (behind.greatest <= most)
    findings.push_back({Code{"bearings.play_as_new"}, Severity::note, args, {}, std::nullopt});
  else if (behind.least <= most || !(most > Length{}))
    findings.push_back({Code{"bearings.play_may_be_new"}, Severity::note, args, {}, std::nullopt});
  else {
    Args more = args;
    more.emplace_back("times", any_ratio(std::floor(10.0 * (behind.least / most)) / 10.0));
    findings.push_back({Code{"bearings.play_past_new"}, Severity::note, std::move(more), {}, std::nullopt});
  }
}

Result<Computed> compute_clearance(const Given& in) {
  const auto rocked = rocked_from(in);
  if (!rocked) return tl::unexpected(rocked.error());
  const auto behind = clearance_behind(in, *rocked);
  if (!behind) return tl::unexpected(behind.error());
  Computed out =
      with_held(in, *rocked, behind->share, {any(behind->middle), any(behind->least), any(behind->greatest)});
  compare_with_new(in, *behind, out.findings);
  return out;
}

}  // namespace

FigureSpec rim_play_figure() {
  return {.name = "rim-play",
          .formula =
              "s = 2 θ R c (centred; free: times √(1 + (R_i/R)²)); c = 1 carried; hanging: c = cos β, W G cos 2β = P R "
              "θ sin β; θ = (G_a/2)/R_i (1 + A cos α/(2 R_i)) k; G_a = 2 A sin α; "
              "cos α = 1 − G/(2 A); A = r_i + r_e − D_w; R_i = d_m/2 + (r_i − D_w/2) cos α",
          .inputs = joined({{between("clearance-greatest", "G2", Kind::length, -1e-2, 1e-2),
                             between("clearance-least", "G1", Kind::length, -1e-2, 1e-2)},
                            rocked_inputs()}),
          .outputs = {{"swing-least", "s1", Kind::length},
                      {"swing-greatest", "s2", Kind::length},
                      {"share", "c", Kind::ratio}},
          .sources = {"Harris5", "TiltSearch"},
          .compute = compute_rim_play,
          .example = {{"clearance-least=12.7 µm", "clearance-greatest=38.1 µm", "radius=117.475 mm", "balls=10",
                       "balls-from=counted", "ball-diameter=14.288 mm", "ball-doubt=0", "pitch-diameter=77.5 mm",
                       "inner-groove=7.42976 mm", "outer-groove=7.42976 mm", "groove-doubt=0"},
                      "swing-least=0.5151 mm"}};
}

FigureSpec clearance_from_play_figure() {
  return {
      .name = "clearance-from-play",
      .formula =
          "G from s as in rim-play, with the mean k; U/G = 2 √((n U_s/2s)² + (n u_k/k)² + (u_A/A)² + (n u_c/c)²), "
          "n = 2 carried, a little more hanging; u_c = (1 − c)/√3; G1 = G − U, not under nought; G2 = G + U",
      .inputs = joined({{above_nought("swing", "s", Kind::length, 1), from_nought("swing-u", "U_s", Kind::length, 1),
                         optional(between("new-greatest", "G_new", Kind::length, -1e-2, 1e-2))},
                        rocked_inputs()}),
      .outputs = {{"clearance", "G", Kind::length},
                  {"clearance-least", "G1", Kind::length},
                  {"clearance-greatest", "G2", Kind::length},
                  {"share", "c", Kind::ratio}},
      .sources = {"Harris5", "TiltSearch", "GUM"},
      .compute = compute_clearance,
      .example = {{"swing=1.47 mm", "swing-u=0.05 mm", "radius=117.475 mm", "balls=10", "balls-from=counted",
                   "ball-diameter=14.288 mm", "ball-doubt=0", "pitch-diameter=77.5 mm", "inner-groove=7.42976 mm",
                   "outer-groove=7.42976 mm", "groove-doubt=0"},
                  "clearance=104.2 µm"}};
}

}  // namespace flatwise::bearings
