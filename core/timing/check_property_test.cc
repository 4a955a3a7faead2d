// What holds for every shaft and every reading.
#include "core/timing/check.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "core/timing/timing_samples.h"

namespace flatwise::timing {
namespace {

Check checked(const Shaft& shaft, const Reading& reading) {
  auto c = check(shaft, reading);
  EXPECT_TRUE(c) << (c ? "" : c.error().code.id());
  return *std::move(c);
}

Pattern any_pattern(int rotors, int flats) {
  const int kind = *rc::gen::inRange(0, 3);
  if (kind == 0) return facing();
  if (kind == 1) return step(*rc::gen::inRange(1, flats));
  std::vector<int> flats_listed;
  for (int i = 0; i < rotors; ++i) flats_listed.push_back(*rc::gen::inRange(1, flats + 1));
  return listed(std::move(flats_listed));
}

Shaft any_shaft(int least_rotors, int most_rotors, bool may_fix_first_flat = true) {
  const int rotors = *rc::gen::inRange(least_rotors, most_rotors + 1);
  const int flats = 2 * *rc::gen::inRange(2, 5);
  Pattern pattern = any_pattern(rotors, flats);
  std::optional<int> first;
  if (may_fix_first_flat && *rc::gen::inRange(0, 4) == 3)
    first = pattern.rule == Pattern::Rule::listed ? pattern.flats.front() : *rc::gen::inRange(1, flats + 1);
  return sample(rotors, flats, std::move(pattern), first);
}

Reading any_reading(const Shaft& shaft) {
  Reading r = as_mapped(shaft);
  const int errors = *rc::gen::inRange(0, 4);
  for (int i = 0; i < errors; ++i)
    turn_in(r, shaft, *rc::gen::inRange(1, shaft.rotor_count() + 1), *rc::gen::inRange(0, 2) == 0 ? Half::a : Half::b,
            *rc::gen::inRange(1, shaft.flats()));
  return r;
}

// --- properties ------------------------------------------------------------------------------------------------------

RC_GTEST_PROP(CheckProperty, TheMapOfAnyShaftPassesItsOwnCheck, ()) {
  const Shaft shaft = any_shaft(1, 24);
  Reference reference = map(shaft)->reference;
  if (turn_is_free(shaft)) reference.first_flat = *rc::gen::inRange(1, shaft.flats() + 1);
  if (hand_is_free(shaft)) reference.as_listed = *rc::gen::inRange(0, 2) == 0;
  const Check c = checked(shaft, as_mapped(shaft, reference));
  RC_ASSERT(c.answer == Answer::in);
  RC_ASSERT(c.plan.turns.empty());
  RC_ASSERT(c.stories.empty());
  RC_ASSERT(c.findings.size() == 1U && c.findings[0].severity == Severity::note);
}

RC_GTEST_PROP(CheckProperty, AddingATurnToEveryMarkChangesNothing, ()) {
  const Shaft shaft = any_shaft(1, 12, false);
  const Reading r = any_reading(shaft);
  Reading turned = r;
  const int by = *rc::gen::inRange(1, shaft.flats());
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor)
    for (const Half half : {Half::a, Half::b}) turn_in(turned, shaft, rotor, half, by);
  const Check x = checked(shaft, r), y = checked(shaft, turned);
  RC_ASSERT(x.plan.time == y.plan.time);
  RC_ASSERT(x.equal_plans == y.equal_plans);
  RC_ASSERT(x.plan.turns.size() == y.plan.turns.size());
  for (std::size_t i = 0; i < x.plan.turns.size(); ++i) {
    RC_ASSERT(x.plan.turns[i].rotor == y.plan.turns[i].rotor && x.plan.turns[i].half == y.plan.turns[i].half);
    RC_ASSERT(x.plan.turns[i].by == y.plan.turns[i].by);
  }
  for (std::size_t i = 0; i < x.rotors.size(); ++i) RC_ASSERT(x.rotors[i].verdict == y.rotors[i].verdict);
  RC_ASSERT(x.stories.size() == y.stories.size());
  for (std::size_t i = 0; i < x.stories.size(); ++i) RC_ASSERT(x.stories[i].kind == y.stories[i].kind);
}

RC_GTEST_PROP(CheckProperty, ThePlanAppliedPassesTheCheck, ()) {
  const Shaft shaft = any_shaft(1, 12);
  Reading r = any_reading(shaft);
  for (Marks& m : r.rotors) m.fixed = *rc::gen::inRange(0, 3) == 0;
  const Check before = checked(shaft, r);
  for (const Turn& t : before.plan.turns) {
    mark_in(r, t.rotor, t.half) = t.to;
    r.rotors[static_cast<std::size_t>(t.rotor) - 1].fixed = false;
  }
  const Check after = checked(shaft, r);
  RC_ASSERT(after.answer == Answer::in);
  RC_ASSERT(after.contradicting.empty());
}

/// Five rotors and more: on shorter ones the other hand of a step can be as little work, and is then as true.
RC_GTEST_PROP(CheckProperty, ASingleHalfOutIsNamedExactly, ()) {
  const Shaft shaft = any_shaft(5, 24);
  Reading r = as_mapped(shaft);
  const int rotor = *rc::gen::inRange(1, shaft.rotor_count() + 1);
  const Half half = *rc::gen::inRange(0, 2) == 0 ? Half::a : Half::b;
  const int by = *rc::gen::inRange(1, shaft.flats());
  turn_in(r, shaft, rotor, half, by);
  const Check c = checked(shaft, r);
  const int shorter = flats_out(1 + by, 1, shaft.flats());
  RC_ASSERT(c.answer == Answer::out);
  RC_ASSERT(c.equal_plans == 1);
  for (const RotorVerdict& v : c.rotors) {
    const Verdict wanted = v.rotor != rotor  ? Verdict::right
                           : half == Half::a ? Verdict::half_a_out
                                             : Verdict::half_b_out;
    RC_ASSERT(v.verdict == wanted);
  }
  const RotorVerdict& v = c.rotors[static_cast<std::size_t>(rotor) - 1];
  RC_ASSERT((half == Half::a ? v.flats_a : v.flats_b) == shorter);
  RC_ASSERT(v.kink.has_value());
  RC_ASSERT(c.plan.turns.size() == 1U);
  RC_ASSERT(c.plan.turns[0].by == (2 * shorter == shaft.flats() ? shorter : -shorter));
}

RC_GTEST_PROP(CheckProperty, AWholeRotorIndexedWrongIsNamed, ()) {
  const int flats = 2 * *rc::gen::inRange(2, 5);
  const int rotors = *rc::gen::inRange(3, 13);
  const Shaft shaft = sample(rotors, flats, facing());
  Reading r = as_mapped(shaft);
  const int rotor = *rc::gen::inRange(1, rotors + 1), by = *rc::gen::inRange(1, flats);
  for (const Half half : {Half::a, Half::b}) turn_in(r, shaft, rotor, half, by);
  const Check c = checked(shaft, r);
  const RotorVerdict& v = c.rotors[static_cast<std::size_t>(rotor) - 1];
  RC_ASSERT(v.verdict == Verdict::indexed_wrong);
  RC_ASSERT(v.pair_out == 0);
  RC_ASSERT(v.flats_a == flats_out(1 + by, 1, flats));
  RC_ASSERT(c.plan.turns.size() == 2U);
}

/// Every state of the shortest shafts, turned by every flat: ties are broken by nothing that knows a flat's number.
TEST(Check, OnTheShortestShaftsATurnOfAllMarksChangesNothingInAnyState) {
  constexpr int kFlats = 4;
  for (const Pattern& pattern : {facing(), step(1), listed({1, 2})}) {
    ShaftSpec spec = sample_shaft({.rotors = 2, .flats = kFlats});
    spec.pattern = pattern;
    spec.policies.turn_a_half = {};  // The most ties: it costs nothing to turn one half more.
    const Shaft shaft = made(spec);
    for (int state = 0; state < kFlats * kFlats * kFlats * kFlats; ++state) {
      Reading r = as_mapped(shaft);
      int digits = state;
      for (Marks& m : r.rotors)
        for (auto* half : {&m.a, &m.b}) *half = digits % kFlats + 1, digits /= kFlats;
      const Check first = checked(shaft, r);
      for (int by = 1; by < kFlats; ++by) {
        Reading turned = r;
        for (int rotor = 1; rotor <= 2; ++rotor)
          for (const Half half : {Half::a, Half::b}) turn_in(turned, shaft, rotor, half, by);
        const Check c = checked(shaft, turned);
        ASSERT_EQ(c.plan.turns.size(), first.plan.turns.size()) << state;
        for (std::size_t i = 0; i < c.plan.turns.size(); ++i) {
          ASSERT_EQ(c.plan.turns[i].rotor, first.plan.turns[i].rotor) << state;
          ASSERT_EQ(c.plan.turns[i].half, first.plan.turns[i].half) << state;
          ASSERT_EQ(c.plan.turns[i].by, first.plan.turns[i].by) << state;
        }
      }
    }
  }
}

/// What is said of a read half while others are unread must hold whatever the unread ones show.
RC_GTEST_PROP(CheckProperty, CertainWordsHoldForEveryCompletion, ()) {
  const Shaft shaft = any_shaft(1, 5);
  Reading r = any_reading(shaft);
  for (Marks& m : r.rotors) m.fixed = *rc::gen::inRange(0, 4) == 0;
  const int rotor = *rc::gen::inRange(1, shaft.rotor_count() + 1),
            other = *rc::gen::inRange(1, shaft.rotor_count() + 1);
  mark_in(r, rotor, Half::a) = std::nullopt;
  mark_in(r, other, Half::b) = std::nullopt;
  const Check open = checked(shaft, r);
  RC_ASSERT(open.answer == Answer::cannot_tell);
  RC_ASSERT(open.unread_halves == 2);
  for (int x = 1; x <= shaft.flats(); ++x) {
    for (int y = 1; y <= shaft.flats(); ++y) {
      Reading full = r;
      mark_in(full, rotor, Half::a) = x;
      mark_in(full, other, Half::b) = y;
      const Check c = checked(shaft, full);
      if (open.certainly_out) RC_ASSERT(c.answer == Answer::out);
      for (std::size_t i = 0; i < c.rotors.size(); ++i) {
        const RotorVerdict& said = open.rotors[i];
        if (said.flats_a) RC_ASSERT(said.flats_a == c.rotors[i].flats_a);
        if (said.flats_b) RC_ASSERT(said.flats_b == c.rotors[i].flats_b);
        if (said.verdict != Verdict::unread && said.verdict != Verdict::unsure)
          RC_ASSERT(said.verdict == c.rotors[i].verdict);
      }
    }
  }
}

}  // namespace
}  // namespace flatwise::timing
