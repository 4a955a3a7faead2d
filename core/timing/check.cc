#include "core/timing/check.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "core/timing/frame.h"
#include "core/timing/say.h"
#include "core/timing/stories.h"

namespace flatwise::timing {
namespace {

int unread_halves(const Marks& marks) { return (marks.a ? 0 : 1) + (marks.b ? 0 : 1); }

Verdict verdict_of(int flats_a, int flats_b) {
  if (flats_a == 0 && flats_b == 0) return Verdict::right;
  if (flats_b == 0) return Verdict::half_a_out;
  if (flats_a == 0) return Verdict::half_b_out;
  return flats_a == flats_b ? Verdict::indexed_wrong : Verdict::both_out;
}

/// What all references that may still hold say of one half; none when they do not say the same.
std::optional<int> agreed(const Frame& frame, const Reading& reading, const std::vector<Mend>& possible, int number,
                          Half half) {
  std::optional<int> out;
  for (const Mend& mend : possible) {
    const auto flats = out_by(frame, reading, mend.reference, number, half);
    if (!flats || (out && *out != *flats)) return std::nullopt;
    out = flats;
  }
  return out;
}

void add_pairing(RotorVerdict& v, const Shaft& shaft, const Marks& marks) {
  if (!marks.a || !marks.b) return;
  const auto error = pairing_error({.flat_a = *marks.a, .flat_b = *marks.b}, shaft.flats());
  CORE_CHECK(error.has_value());
  v.pair_out = *error;
  if (*error == 0) return;
  const Rotor& rotor = shaft.rotor(v.rotor);
  const auto bent = kink({.lean = rotor.lean,
                          .flats_out = *error,
                          .flats = shaft.flats(),
                          .permissible = rotor.bearing.permissible_misalignment});
  if (bent) v.kink = *bent;
}

RotorVerdict judge(const Shaft& shaft, const Frame& frame, const Reading& reading, const Mends& mends, bool all_read,
                   int number) {
  const Marks& marks = marks_of(reading, number);
  RotorVerdict v;
  v.rotor = number;
  add_pairing(v, shaft, marks);
  const Reference& reference = mends.allowed.front().reference;
  if (all_read) {
    v.flats_a = out_by(frame, reading, reference, number, Half::a);
    v.flats_b = out_by(frame, reading, reference, number, Half::b);
  } else {
    v.flats_a = agreed(frame, reading, mends.possible, number, Half::a);
    v.flats_b = agreed(frame, reading, mends.possible, number, Half::b);
  }
  if (v.flats_a) v.wanted_a = turned_flat(*marks.a, -*v.flats_a, frame.flats);
  if (v.flats_b) v.wanted_b = turned_flat(*marks.b, -*v.flats_b, frame.flats);
  if (unread_halves(marks) > 0)
    v.verdict = Verdict::unread;
  else
    v.verdict = v.flats_a && v.flats_b ? verdict_of(*v.flats_a, *v.flats_b) : Verdict::unsure;
  return v;
}

/// Fixed rotors of which a half was read.
std::vector<int> fixed_and_read(const Frame& frame, const Reading& reading) {
  std::vector<int> out;
  for (int number = 1; number <= frame.rotors(); ++number) {
    const Marks& marks = marks_of(reading, number);
    if (marks.fixed && (marks.a || marks.b)) out.push_back(number);
  }
  return out;
}

struct Contradiction {
  std::vector<int> outside;  ///< Empty: the fixed rotors agree.
  bool tie = false;
};

Contradiction contradiction(const Frame& frame, const Reading& reading) {
  const std::vector<int> fixed = fixed_and_read(frame, reading);
  std::vector<std::vector<int>> largest;  // Different groups of the greatest size.
  for (const Reference& reference : frame.references()) {
    std::vector<int> group;
    for (const int number : fixed)
      if (agrees(frame, reading, reference, number)) group.push_back(number);
    if (!largest.empty() && group.size() < largest.front().size()) continue;
    if (!largest.empty() && group.size() > largest.front().size()) largest.clear();
    if (std::ranges::find(largest, group) == largest.end()) largest.push_back(std::move(group));
  }
  if (largest.size() > 1) return {.outside = fixed, .tie = true};
  Contradiction out;
  std::ranges::set_difference(fixed, largest.front(), std::back_inserter(out.outside));
  return out;
}

}  // namespace

Result<Check> check(const Shaft& shaft, const Reading& reading) {
  auto found = mends(shaft, reading);
  if (!found) return tl::unexpected(found.error());
  const Frame frame = frame_of(shaft);
  Check out;
  for (const Marks& marks : reading.rotors) out.unread_halves += unread_halves(marks);
  const bool all_read = out.unread_halves == 0;
  for (int number = 1; number <= frame.rotors(); ++number)
    out.rotors.push_back(judge(shaft, frame, reading, *found, all_read, number));
  out.plan = found->allowed.front();
  out.equal_plans = found->equal;
  out.look_time = out.unread_halves * shaft.spec().policies.look_at_a_mark;
  out.certainly_out = std::ranges::none_of(found->possible, [](const Mend& m) { return m.turns.empty(); });
  out.answer = !all_read ? Answer::cannot_tell : out.plan.turns.empty() ? Answer::in : Answer::out;
  const Contradiction fixed = contradiction(frame, reading);
  out.contradicting = fixed.outside;
  out.stories = stories(frame, reading, *found);
  if (!fixed.outside.empty()) {
    out.references = std::move(found->allowed);
    out.references.insert(out.references.end(), found->others.begin(), found->others.end());
  }
  out.findings = say_check(shaft, frame, reading, out, fixed.tie);
  return out;
}

}  // namespace flatwise::timing
