#include "core/timing/stories.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

namespace flatwise::timing {
namespace {

/// Mistakes in one rotor by a reference.
int mistakes_in(const Frame& frame, const Reading& reading, const Reference& reference, int number) {
  const auto a = out_by(frame, reading, reference, number, Half::a);
  const auto b = out_by(frame, reading, reference, number, Half::b);
  if (a && b && *a == *b) return *a != 0 ? 1 : 0;
  return (a.value_or(0) != 0 ? 1 : 0) + (b.value_or(0) != 0 ? 1 : 0);
}

int mistakes(const Frame& frame, const Reading& reading, const Reference& reference) {
  int total = 0;
  for (int number = 1; number <= frame.rotors(); ++number) total += mistakes_in(frame, reading, reference, number);
  return total;
}

/// The best turn of an arrangement, and the mistakes it leaves.
struct Best {
  int first_flat = 1;
  int mistakes = std::numeric_limits<int>::max();
};
Best best_turn(const Frame& frame, const Reading& reading, bool as_listed) {
  Best best;
  for (int flat = 1; flat <= frame.flats; ++flat) {
    const int m = mistakes(frame, reading, {.first_flat = flat, .as_listed = as_listed});
    if (m < best.mistakes) best = {.first_flat = flat, .mistakes = m};
  }
  return best;
}

struct Told {
  Story story;
  int mistakes = 0;  ///< Left over.
};

/// Steps by how simple they are to say: facing, all alike, then small ones.
std::vector<int> steps_to_try(int flats) {
  std::vector<int> out{flats / 2, 0};
  for (int step = 1; 2 * step < flats; ++step) out.insert(out.end(), {step, -step});
  return out;
}

std::vector<int> step_offsets(int rotors, int step, int flats) {
  std::vector<int> out;
  for (int i = 0; i < rotors; ++i) out.push_back(((i * step) % flats + flats) % flats);
  return out;
}

std::vector<int> mirrored(std::vector<int> offsets, int flats) {
  for (int& offset : offsets) offset = (flats - offset) % flats;
  return offsets;
}

void consider_other_patterns(std::vector<Told>& told, const Frame& frame, const Reading& reading) {
  const std::vector<int> other_hand = mirrored(frame.offsets, frame.flats);
  for (const int step : steps_to_try(frame.flats)) {
    Frame other = frame;
    other.offsets = step_offsets(frame.rotors(), step, frame.flats);
    if (other.offsets == frame.offsets || other.offsets == other_hand) continue;
    Story story{.kind = Story::Kind::other_pattern, .rotors = {}, .step_flats = step};
    told.push_back({std::move(story), best_turn(other, reading, true).mistakes});
  }
}

/// Whole-shaft stories that keep the definition's pattern.
void consider_same_pattern(std::vector<Told>& told, const Frame& frame, const Reading& reading) {
  if (frame.first_flat && frame.rotors() > 1) {
    const Best best = best_turn(frame, reading, true);
    const int turned = flats_out(best.first_flat, *frame.first_flat, frame.flats);
    Story story{.kind = Story::Kind::whole_turned, .rotors = {}, .turned = turned};
    if (turned != 0) told.push_back({std::move(story), best.mistakes});
  }
  if (frame.hand_free || !mirror_differs(frame.offsets, frame.flats)) return;
  told.push_back({{.kind = Story::Kind::mirrored, .rotors = {}}, best_turn(frame, reading, false).mistakes});
}

std::optional<Story> whole_shaft_story(const Frame& frame, const Reading& reading, int by_definition) {
  std::vector<Told> told;
  consider_same_pattern(told, frame, reading);
  consider_other_patterns(told, frame, reading);
  const auto best = std::ranges::min_element(told, {}, &Told::mistakes);
  if (best == told.end()) return std::nullopt;
  const bool exactly_mirrored = best->story.kind == Story::Kind::mirrored && best->mistakes == 0;
  if (1 + best->mistakes < by_definition || exactly_mirrored) return best->story;
  return std::nullopt;
}

bool sits_where_other_belongs(const Frame& frame, const Reference& reference, const Turn& x, const Turn& y) {
  return x.from == y.to && y.from == x.to && frame.wanted(reference, x.rotor, x.half) == x.to;
}

std::optional<Story> swap_in(const Frame& frame, const Mend& mend) {
  const auto& t = mend.turns;
  if (t.size() == 2 && t[0].rotor != t[1].rotor && sits_where_other_belongs(frame, mend.reference, t[0], t[1]))
    return Story{.kind = Story::Kind::halves_swapped,
                 .rotors = {t[0].rotor, t[1].rotor},
                 .half = t[0].half,
                 .other_half = t[1].half};
  const bool two_rotors = t.size() == 4 && t[0].rotor == t[1].rotor && t[2].rotor == t[3].rotor;
  if (two_rotors && sits_where_other_belongs(frame, mend.reference, t[0], t[2]) &&
      sits_where_other_belongs(frame, mend.reference, t[1], t[3]))
    return Story{.kind = Story::Kind::rotors_swapped, .rotors = {t[0].rotor, t[2].rotor}};
  return std::nullopt;
}

std::optional<Story> swap_story(const Frame& frame, const Mends& mends) {
  for (const Mend& mend : mends.allowed)
    if (auto story = swap_in(frame, mend)) return story;
  return std::nullopt;
}

/// Pairs right, most rotors out.
bool index_only(const Frame& frame, const Reading& reading, const Reference& reference) {
  int out = 0;
  for (int number = 1; number <= frame.rotors(); ++number) {
    const auto a = out_by(frame, reading, reference, number, Half::a);
    const auto b = out_by(frame, reading, reference, number, Half::b);
    if (!a || !b || *a != *b) return false;
    out += *a != 0 ? 1 : 0;
  }
  return out >= 2 && 2 * out > frame.rotors();
}

}  // namespace

std::vector<Story> stories(const Frame& frame, const Reading& reading, const Mends& mends) {
  int by_definition = std::numeric_limits<int>::max();
  for (const Mend& mend : mends.allowed)
    by_definition = std::min(by_definition, mistakes(frame, reading, mend.reference));
  std::vector<Story> out;
  if (by_definition == 0) return out;
  if (auto story = whole_shaft_story(frame, reading, by_definition)) out.push_back(*std::move(story));
  if (auto story = swap_story(frame, mends)) out.push_back(*std::move(story));
  if (out.empty() && index_only(frame, reading, mends.allowed.front().reference))
    out.push_back({.kind = Story::Kind::no_pattern, .rotors = {}});
  return out;
}

}  // namespace flatwise::timing
