#include "tests/rebuilds/timing_truth.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rebuilds {
namespace {

constexpr double kSame = 1e-6;  // Radians; a flat is 0.26 rad at the least, a lean 0.03.

double azimuth(int flat, int flats) { return 2 * std::numbers::pi * (flat - 1) / flats; }

/// A way the whole shaft may stand.
struct Standing {
  int first = 1;
  bool other_hand = false;
};

/// Axes of the two bores of a rotor. Half B faces the other way, so its mark lies opposite to where its bore leans.
Axis axis_of_half(const Rebuild& r, int rotor, char half) {
  const Rotor& at = r.rotor(rotor);
  const double lean = r.drawing.lean[static_cast<std::size_t>(rotor) - 1].si;
  const double mark = azimuth(half == 'a' ? at.mark_a : at.mark_b, r.drawing.flats);
  return bore_axis(lean, half == 'a' ? mark : mark + std::numbers::pi);
}

Axis wanted_axis(const Rebuild& r, const Standing& s, int rotor) {
  const double lean = r.drawing.lean[static_cast<std::size_t>(rotor) - 1].si;
  return bore_axis(lean, azimuth(flat_of(r.drawing, s.first, s.other_hand, rotor), r.drawing.flats));
}

bool half_right(const Rebuild& r, const Standing& s, int rotor, char half) {
  return angle_between(axis_of_half(r, rotor, half), wanted_axis(r, s, rotor)) < kSame;
}

bool pair_straight(const Rebuild& r, int rotor) {
  return angle_between(axis_of_half(r, rotor, 'a'), axis_of_half(r, rotor, 'b')) < kSame;
}

std::vector<Standing> every_standing(const Drawing& d) {
  std::vector<Standing> out;
  for (int first = 1; first <= d.flats; ++first) {
    if (d.first_flat && first != *d.first_flat) continue;
    out.push_back({first, false});
    if (d.rule == Rule::step && !d.first_flat) out.push_back({first, true});
  }
  return out;
}

/// Those that some half of a rotor that stayed is right by; all, where nothing stayed or none is.
std::vector<Standing> allowed(const Rebuild& r) {
  const std::vector<Standing> all = every_standing(r.drawing);
  if (r.drawing.first_flat) return all;
  std::vector<Standing> out;
  for (const Standing& s : all) {
    const auto sets = [&](int n) { return half_right(r, s, n, 'a') || half_right(r, s, n, 'b'); };
    if (std::ranges::any_of(r.fixed(), sets)) out.push_back(s);
  }
  return out.empty() ? all : out;
}

Halves wrong_by(const Rebuild& r, const Standing& s) {
  Halves out;
  for (const Rotor& rotor : r.rotors) {
    const int flat = flat_of(r.drawing, s.first, s.other_hand, rotor.number);
    if (!half_right(r, s, rotor.number, 'a')) out[{rotor.number, 'a'}] = flat;
    if (!half_right(r, s, rotor.number, 'b'))
      out[{rotor.number, 'b'}] = turned(flat, r.drawing.flats / 2, r.drawing.flats);
  }
  return out;
}

std::set<int> rotors_of(const Halves& halves) {
  std::set<int> out;
  for (const auto& [at, to] : halves) out.insert(at.rotor);
  return out;
}

/// Nothing that frees fewer rotors, and turns fewer halves, would do as well.
bool of_least_work(const Rebuild& r, const Halves& halves) {
  const std::set<int> mine = rotors_of(halves);
  for (const Standing& s : allowed(r)) {
    const Halves other = wrong_by(r, s);
    if (other.size() < halves.size() && std::ranges::includes(mine, rotors_of(other))) return false;
  }
  return true;
}

/// Groups of rotors that stayed and agree, the largest; more than one is a tie.
std::set<std::set<int>> largest_groups(const Rebuild& r) {
  std::set<std::set<int>> out;
  std::size_t most = 0;
  for (const Standing& s : every_standing(r.drawing)) {
    std::set<int> group;
    for (const int n : r.fixed())
      if (half_right(r, s, n, 'a') && half_right(r, s, n, 'b')) group.insert(n);
    if (group.size() > most) out.clear();
    most = std::max(most, group.size());
    if (group.size() == most) out.insert(group);
  }
  return out;
}

struct FixedTruth {
  std::set<int> mispaired, outside;
  bool tie = false;
};
FixedTruth fixed_truth(const Rebuild& r) {
  FixedTruth out;
  const std::vector<int> fixed = r.fixed();
  for (const int n : fixed)
    if (!pair_straight(r, n)) out.mispaired.insert(n);
  const auto groups = largest_groups(r);
  out.tie = groups.size() > 1;
  for (const int n : fixed)
    if (out.tie || !groups.begin()->contains(n)) out.outside.insert(n);
  if (!out.tie)
    for (const int n : out.mispaired) out.outside.erase(n);  // Said already, and first.
  if (fixed.empty()) return {};
  return out;
}

bool judge_fixed(const Rebuild& r, const TimingTold& told) {
  const FixedTruth truth = fixed_truth(r);
  if (told.mispaired != truth.mispaired || told.contradicting != truth.outside) return false;
  if (truth.outside.empty()) return told.contradiction.empty();
  if (r.drawing.first_flat) return told.contradiction == "timing.fixed_against_first_flat";
  return told.contradiction == (truth.tie ? "timing.fixed_disagree" : "timing.fixed_outside");
}

std::string way(int by, int flats) {
  if (2 * std::abs(by) == flats) return "way.either";
  return by > 0 ? "way.clockwise" : "way.counter_clockwise";
}

/// The sentence for a shaft built in steps of `by` flats.
std::string built(int by, int flats) {
  if (by == 0) return "timing.built_all_alike";
  if (2 * std::abs(by) == flats) return "timing.built_facing";
  return "timing.built_step " + std::to_string(std::abs(by)) + " " + way(by, flats);
}

bool judge_story(const Rebuild& r, const TimingTold& told) {
  const auto said = [&](const std::string& story) {
    return std::ranges::find(told.stories, story) != told.stories.end();
  };
  for (const Mistake& m : r.mistakes) {
    if (m.kind == Kind::other_pattern && fewest_mistakes(r) > 1 && !said(built(m.step, r.drawing.flats))) return false;
    if (m.kind == Kind::mirrored && !said("timing.mirrored")) return false;
  }
  return true;
}

}  // namespace

int turned(int flat, int by, int flats) { return ((flat - 1 + by) % flats + flats) % flats + 1; }

int flat_of(const Drawing& d, int first, bool other_hand, int rotor) {
  int by = 0;
  if (d.rule == Rule::facing) by = rotor % 2 == 1 ? 0 : d.flats / 2;
  if (d.rule == Rule::step) by = (rotor - 1) * d.step;
  if (d.rule == Rule::listed) by = d.listed[static_cast<std::size_t>(rotor) - 1] - d.listed.front();
  return turned(first, other_hand ? -by : by, d.flats);
}

bool marks_are_wrong(const Rebuild& r) {
  return std::ranges::none_of(allowed(r), [&](const Standing& s) { return wrong_by(r, s).empty(); });
}

bool fixed_contradict(const Rebuild& r) {
  const FixedTruth truth = fixed_truth(r);
  return !truth.mispaired.empty() || !truth.outside.empty();
}

int fewest_mistakes(const Rebuild& r) {
  int fewest = 1 << 20;
  for (const Standing& s : allowed(r)) {
    int here = 0;
    for (const Rotor& rotor : r.rotors) {
      const bool a = half_right(r, s, rotor.number, 'a'), b = half_right(r, s, rotor.number, 'b');
      here += (a && b) ? 0 : (a || b || pair_straight(r, rotor.number)) ? 1 : 2;
    }
    fewest = std::min(fewest, here);
  }
  return fewest;
}

TimingVerdict judge_timing(const Rebuild& r, const TimingTold& told) {
  TimingVerdict out;
  for (const Standing& s : allowed(r))
    if (wrong_by(r, s) == told.halves) out.halves_right = of_least_work(r, told.halves);
  if (!out.halves_right) out.why = "the halves named are not those of least work by any allowed reference";
  out.as_made = out.halves_right;
  for (const Mistake& m : r.mistakes)
    for (const auto& [rotor, half] : m.halves) out.as_made = out.as_made && told.halves.contains({rotor, half});
  Rebuild mended = r;
  bool there = true;  // A rotor that is not on the shaft cannot be mended.
  for (const auto& [at, to] : told.halves) {
    if (at.rotor >= 1 && at.rotor <= r.drawing.rotors)
      (at.half == 'a' ? mended.rotor(at.rotor).mark_a : mended.rotor(at.rotor).mark_b) = to;
    else
      there = false;
  }
  const auto standings = every_standing(r.drawing);
  out.mend_right =
      there && std::ranges::any_of(standings, [&](const Standing& s) { return wrong_by(mended, s).empty(); });
  out.fixed_right = judge_fixed(r, told);
  out.story_right = judge_story(r, told);
  if (!out.mend_right) out.why += "; the mend leaves the shaft wrong";
  if (!out.fixed_right) out.why += "; rotors that stayed are not named as they should be";
  if (!out.story_right) out.why += "; another pattern or hand is not named";
  return out;
}

}  // namespace rebuilds
