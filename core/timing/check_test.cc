#include "core/timing/check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/timing/timing_samples.h"

namespace flatwise::timing {
namespace {

Check checked(const Shaft& shaft, const Reading& reading) {
  auto c = check(shaft, reading);
  EXPECT_TRUE(c) << (c ? "" : c.error().code.id());
  return *std::move(c);
}

/// One flat out in a row of nine, facing: half B of rotor 4 on flat 2 instead of 1.
// Source: by hand: nut 14, washer 2, hanger 22, four spacers of 2 and rotors of 9, and one half to turn 5 minutes; 60
// an hour; a set of 148 and two seals of 6.50 a rotor.
// Tolerance: 1e-9 min and 1e-7 of money, rounding of sums.
TEST(Check, NamesHalfBOfRotorFourWithItsMend) {
  const Shaft shaft = sample(9, 6, facing());
  Reading r = as_mapped(shaft);
  mark_in(r, 4, Half::b) = 2;
  const Check c = checked(shaft, r);
  const Finding* f = find(c, Code{"timing.half_out"});
  ASSERT_NE(f, nullptr);
  EXPECT_EQ(f->where, (Where{Where::Part::rotor, 4}));
  EXPECT_EQ(f->severity, Severity::out);
  EXPECT_THAT(f->args, testing::IsSupersetOf({Arg("rotor", 4), Arg("half", Word{"half.b"}), Arg("flats", 1),
                                              Arg("way", Word{"way.clockwise"}), Arg("from", 2), Arg("to", 1)}));
  ASSERT_TRUE(f->instruction);
  EXPECT_EQ(f->instruction->code, Code{"timing.turn_half"});
  EXPECT_THAT(f->instruction->args,
              testing::IsSupersetOf({Arg("way", Word{"way.counter_clockwise"}), Arg("end", Word{"end.a"})}));
  EXPECT_NEAR(c.plan.time.si() / 60, 38 + 4 * 11 + 5, 1e-9);
  EXPECT_NEAR(*c.plan.money, 87 + 4 * 161, 1e-7);
}

TEST(Check, HalfATurnOutHasNoDirection) {
  const Shaft shaft = sample(5, 6, facing());
  Reading r = as_mapped(shaft);
  turn_in(r, shaft, 2, Half::b, 3);
  const Check c = checked(shaft, r);
  const Finding* f = find(c, Code{"timing.half_out"});
  ASSERT_NE(f, nullptr);
  EXPECT_THAT(f->args, testing::IsSupersetOf({Arg("flats", 3), Arg("way", Word{"way.either"}), Arg("half_turn", 1)}));
}

/// Common practice: three rotors stepped by two flats of a hexagon (120 degrees); either hand balances.
TEST(Check, AMirroredStepIsRight) {
  const Shaft shaft = sample(3, 6, step(2));
  const Check c = checked(shaft, as_mapped(shaft, Reference{.first_flat = 5, .as_listed = false}));
  EXPECT_EQ(c.answer, Answer::in);
  EXPECT_TRUE(c.stories.empty());
}

TEST(Check, AMirroredListIsSaidSoAndMayBeLeftOnlyWhenSomebodySaysItIsTheSame) {
  const Shaft shaft = sample(5, 6, listed({1, 4, 1, 3, 5}));
  Reading r = as_mapped(shaft);
  const std::vector<int> mirrored{1, 4, 1, 5, 3};
  for (int i = 1; i <= 5; ++i) {
    mark_in(r, i, Half::a) = turned_flat(mirrored[static_cast<std::size_t>(i) - 1], 2, 6);
    mark_in(r, i, Half::b) = turned_flat(mirrored[static_cast<std::size_t>(i) - 1], 5, 6);
  }
  Check c = checked(shaft, r);
  EXPECT_EQ(c.answer, Answer::out);
  ASSERT_EQ(c.stories.size(), 2U);  // Rotors 4 and 5 might have changed places: the same marks.
  EXPECT_EQ(c.stories[0].kind, Story::Kind::mirrored);
  EXPECT_EQ(c.stories[1].kind, Story::Kind::rotors_swapped);
  EXPECT_FALSE(find(c, Code{"timing.mirrored"})->instruction);
  r.mirror_is_same = false;
  EXPECT_FALSE(find(checked(shaft, r), Code{"timing.mirrored"})->instruction);
  r.mirror_is_same = true;
  c = checked(shaft, r);
  EXPECT_EQ(find(c, Code{"timing.mirrored"})->instruction->code, Code{"timing.mirrored_may_be_left"});
  EXPECT_EQ(c.answer, Answer::out);
}

TEST(Check, AStepWithAFirstFlatKeepsItsHand) {
  const Shaft shaft = sample(4, 6, step(1), 1);
  Reading r = as_mapped(shaft);
  for (int i = 1; i <= 4; ++i) {
    mark_in(r, i, Half::a) = turned_flat(1, -(i - 1), 6);
    mark_in(r, i, Half::b) = turned_flat(4, -(i - 1), 6);
  }
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.answer, Answer::out);
  ASSERT_FALSE(c.stories.empty());
  EXPECT_EQ(c.stories[0].kind, Story::Kind::mirrored);
}

TEST(Check, AWholeRowTurnedAgainstItsFirstFlatIsSaidSo) {
  const Shaft shaft = sample(5, 6, facing(), 2);
  Reading r = as_mapped(shaft);
  for (int i = 1; i <= 5; ++i)
    for (const Half half : {Half::a, Half::b}) turn_in(r, shaft, i, half, -1);
  const Check c = checked(shaft, r);
  ASSERT_FALSE(c.stories.empty());
  EXPECT_EQ(c.stories[0].kind, Story::Kind::whole_turned);
  EXPECT_EQ(c.stories[0].turned, -1);
  EXPECT_EQ(c.plan.turns.size(), 10U);
}

TEST(Check, BuiltToAnotherPatternIsNamed) {
  const Shaft shaft = sample(6, 6, facing());
  const auto built = [&](int flats) {
    Reading r = as_mapped(shaft);
    for (int i = 1; i <= 6; ++i) {
      mark_in(r, i, Half::a) = turned_flat(3, (i - 1) * flats, 6);
      mark_in(r, i, Half::b) = turned_flat(6, (i - 1) * flats, 6);
    }
    return checked(shaft, r);
  };
  EXPECT_THAT(find(built(2), Code{"timing.built_step"})->args, testing::Contains(Arg("flats", 2)));
  EXPECT_THAT(find(built(-1), Code{"timing.built_step"})->args,
              testing::Contains(Arg("way", Word{"way.counter_clockwise"})));
  EXPECT_TRUE(has(built(0), Code{"timing.built_all_alike"}));
  const Shaft stepped = sample(6, 6, step(2));
  Reading r = as_mapped(shaft);
  EXPECT_TRUE(has(checked(stepped, r), Code{"timing.built_facing"}));
}

TEST(Check, NoSimplePatternIsSaidWhenMostRotorsAreOut) {
  const Shaft shaft = sample(6, 6, facing());
  Reading r = as_mapped(shaft);
  const std::vector<int> flats{1, 2, 4, 3, 6, 6};
  for (int i = 1; i <= 6; ++i) {
    mark_in(r, i, Half::a) = flats[static_cast<std::size_t>(i) - 1];
    mark_in(r, i, Half::b) = turned_flat(flats[static_cast<std::size_t>(i) - 1], 3, 6);
  }
  const Check c = checked(shaft, r);
  EXPECT_TRUE(has(c, Code{"timing.built_to_no_pattern"}));
}

TEST(Check, SwappedHalvesAreOfferedAsAStoryAndTheHalvesNamed) {
  const Shaft shaft = sample(6, 6, listed({1, 2, 4, 5, 3, 6}));
  Reading r = as_mapped(shaft);
  std::swap(mark_in(r, 2, Half::b), mark_in(r, 5, Half::b));
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.rotors[1].verdict, Verdict::half_b_out);
  EXPECT_EQ(c.rotors[4].verdict, Verdict::half_b_out);
  ASSERT_EQ(c.stories.size(), 1U);
  EXPECT_EQ(c.stories[0].kind, Story::Kind::halves_swapped);
  EXPECT_EQ(c.stories[0].rotors, (std::vector<int>{2, 5}));
  EXPECT_EQ(find(c, Code{"timing.maybe_halves_swapped"})->severity, Severity::note);
}

TEST(Check, TwoHalvesOutThatAreNoSwapAreNotCalledOne) {
  const Shaft shaft = sample(6, 6, listed({1, 2, 4, 5, 3, 6}));
  Reading r = as_mapped(shaft);
  mark_in(r, 2, Half::b) = *mark_in(r, 5, Half::b);  // Sits where the other belongs, but the other sits elsewhere.
  turn_in(r, shaft, 5, Half::b, 1);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.plan.turns.size(), 2U);
  EXPECT_TRUE(c.stories.empty());
}

TEST(Check, ARotorIndexedWrongCountsAsOneMistakeInAStory) {
  // Two rotors indexed wrong are two mistakes; no whole-shaft story is shorter.
  const Shaft shaft = sample(4, 6, facing());
  Reading r = as_mapped(shaft);
  for (const Half half : {Half::a, Half::b}) {
    turn_in(r, shaft, 2, half, 1);
    turn_in(r, shaft, 3, half, 2);
  }
  const Check c = checked(shaft, r);
  for (const Story& story : c.stories) EXPECT_NE(story.kind, Story::Kind::other_pattern);
}

/// Facing with an odd number leaves one rotor's couple: as defined, so no alarm here.
TEST(Check, ADefinedPatternThatLeavesACoupleIsNoAlarm) {
  const Shaft shaft = sample(9, 6, facing());
  EXPECT_EQ(checked(shaft, as_mapped(shaft)).answer, Answer::in);
}

TEST(Unread, CannotTellAndSaysWhatALookCosts) {
  const Shaft shaft = sample(9, 6, facing());
  Reading r = as_mapped(shaft);
  mark_in(r, 3, Half::a) = std::nullopt;
  mark_in(r, 7, Half::b) = std::nullopt;
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.answer, Answer::cannot_tell);
  EXPECT_FALSE(c.certainly_out);
  EXPECT_EQ(c.look_time, minutes(2));
  EXPECT_EQ(c.rotors[2].verdict, Verdict::unread);
  EXPECT_EQ(c.rotors[0].verdict, Verdict::right);
  EXPECT_TRUE(has(c, Code{"timing.cannot_tell"}));
  EXPECT_EQ(c.findings.back().instruction->code, Code{"timing.go_and_look"});
}

TEST(Unread, AMistakeThatIsCertainIsStillNamed) {
  const Shaft shaft = sample(9, 6, facing());
  Reading r = as_mapped(shaft);
  turn_in(r, shaft, 4, Half::b, 1);
  mark_in(r, 7, Half::b) = std::nullopt;
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.answer, Answer::cannot_tell);
  EXPECT_TRUE(c.certainly_out);
  EXPECT_EQ(c.rotors[3].verdict, Verdict::half_b_out);
  EXPECT_TRUE(has(c, Code{"timing.half_out"}));
}

TEST(Unread, WithNothingReadNothingIsClaimed) {
  const Shaft shaft = sample(3, 6, facing());
  Reading r = as_mapped(shaft);
  for (Marks& m : r.rotors) m = {};
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.answer, Answer::cannot_tell);
  for (const RotorVerdict& v : c.rotors) EXPECT_EQ(v.verdict, Verdict::unread);
  EXPECT_EQ(c.unread_halves, 6);
}

TEST(Fixed, SetTheReferenceEvenAgainstTheMany) {
  const Shaft shaft = sample(5, 6, facing());
  Reading r = as_mapped(shaft);
  r.rotors[4].fixed = true;
  for (const Half half : {Half::a, Half::b}) turn_in(r, shaft, 5, half, 1);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.rotors[4].verdict, Verdict::right);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(c.rotors[i].verdict, Verdict::indexed_wrong);
  EXPECT_TRUE(c.contradicting.empty());
}

TEST(Fixed, ThatContradictAreNamedOutsideTheLargestGroupAndEveryReferenceAnswered) {
  const Shaft shaft = sample(6, 6, facing());
  Reading r = as_mapped(shaft);
  for (const std::size_t i : {3U, 4U, 5U}) r.rotors[i].fixed = true;
  for (const Half half : {Half::a, Half::b}) turn_in(r, shaft, 5, half, 2);
  Check c = checked(shaft, r);
  EXPECT_EQ(c.contradicting, std::vector<int>{5});
  EXPECT_EQ(c.references.size(), 2U);
  EXPECT_EQ(c.findings[0].code, Code{"timing.fixed_outside"});
  EXPECT_EQ(c.findings[0].args[0], Arg("rotors", std::vector<std::int64_t>{5}));
  EXPECT_EQ(c.references[0].fixed_rotors, (std::vector<int>{4, 6}));
  r.rotors[5].fixed = false;
  c = checked(shaft, r);
  EXPECT_EQ(c.contradicting, (std::vector<int>{4, 5}));
  EXPECT_EQ(c.findings[0].code, Code{"timing.fixed_disagree"});
}

TEST(Fixed, AMispairedOneOffersBothItsHalves) {
  const Shaft shaft = sample(3, 6, facing());
  Reading r = as_mapped(shaft);
  r.rotors[2].fixed = true;
  turn_in(r, shaft, 3, Half::a, 1);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.findings[0].code, Code{"timing.fixed_mispaired"});
  EXPECT_EQ(c.contradicting, std::vector<int>{3});
  EXPECT_EQ(c.references.size(), 2U);
  EXPECT_EQ(c.references[0].half_right, std::vector<int>{3});
  EXPECT_EQ(c.rotors[2].verdict, Verdict::half_a_out);  // By half B all the rest is right.
}

TEST(Fixed, OneReadHalfOfAFixedRotorSetsTheReference) {
  const Shaft shaft = sample(3, 6, facing());
  Reading r = as_mapped(shaft);
  r.rotors[2].fixed = true;
  for (const Half half : {Half::a, Half::b}) turn_in(r, shaft, 3, half, 1);
  r.rotors[2].a = std::nullopt;
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.plan.reference.first_flat, 2);
  EXPECT_EQ(c.plan.turns.size(), 4U);
  EXPECT_EQ(c.answer, Answer::cannot_tell);
}

TEST(Fixed, AgainstTheFirstFlatIsSaidAndTheFirstFlatHolds) {
  const Shaft shaft = sample(4, 6, facing(), 1);
  Reading r = as_mapped(shaft);
  for (int i = 1; i <= 4; ++i)
    for (const Half half : {Half::a, Half::b}) turn_in(r, shaft, i, half, 2);
  r.rotors[3].fixed = true;
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.findings[0].code, Code{"timing.fixed_against_first_flat"});
  EXPECT_EQ(c.plan.reference.first_flat, 1);
  EXPECT_EQ(c.plan.turns.size(), 8U);
  ASSERT_EQ(c.references.size(), 2U);  // What setting by rotor 4 would take: nothing.
  EXPECT_TRUE(c.references[1].turns.empty());
}

TEST(Least, RotorsInHandCostNothingToReach) {
  const Shaft shaft = sample(9, 6, facing());
  Reading r = as_mapped(shaft);
  const std::vector<int> off{1, 2, 3}, fitted{1, 2, 3};
  r.state = *teardown::with_rotors_off(shaft, off, fitted);
  turn_in(r, shaft, 2, Half::a, 1);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.plan.time, minutes(5));
  EXPECT_EQ(c.plan.turns[0].reached_from, std::nullopt);
}

TEST(Least, AMendOutOfReachIsSaidSo) {
  ShaftSpec spec = sample_shaft({.rotors = 3});
  spec.stations.front().obstacle = true;
  spec.stations.back().obstacle = true;
  const Shaft shaft = made(spec);
  Reading r = as_mapped(shaft);
  turn_in(r, shaft, 2, Half::a, 1);
  const Check c = checked(shaft, r);
  EXPECT_FALSE(c.plan.reachable);
  EXPECT_TRUE(has(c, Code{"timing.out_of_reach"}));
  EXPECT_EQ(c.rotors[1].verdict, Verdict::half_a_out);
}

TEST(Refuses, ReadingsThatCannotBe) {
  const Shaft shaft = sample(3, 6, facing());
  const auto problem = [&](auto change) {
    Reading r = as_mapped(shaft);
    change(r);
    return check(shaft, r).error();
  };
  EXPECT_EQ(problem([](Reading& r) { r.rotors.pop_back(); }).code, Code{"timing.reading_size"});
  EXPECT_EQ(problem([](Reading& r) { r.rotors[1].a = 7; }).code, Code{"timing.flat_range"});
  EXPECT_EQ(problem([](Reading& r) { r.rotors[1].b = 0; }).field, "rotor 2.half_b");
  EXPECT_EQ(problem([](Reading& r) { r.state.on_shaft.pop_back(); }).code, Code{"teardown.state_size"});
  EXPECT_EQ(problem([](Reading& r) { r.prices.rate_per_hour = -3; }).code, Code{"teardown.rate"});
  EXPECT_EQ(problem([](Reading& r) {
              r.rotors[0].fixed = true;
              r.state.new_set[0] = true;
            }).code,
            Code{"timing.fixed_but_new_set"});
  EXPECT_EQ(problem([&](Reading& r) {
              r.rotors[0].fixed = true;
              r.state.on_shaft[static_cast<std::size_t>(shaft.station_of_rotor(1))] = false;
            }).code,
            Code{"timing.fixed_but_off"});
  ShaftSpec odd = sample_shaft({.rotors = 3, .flats = 5, .lean_degrees = 0});
  odd.pattern = step(1);
  const Shaft five = made(odd);
  EXPECT_EQ(check(five, {}).error().code, Code{"timing.odd_flats"});
  EXPECT_EQ(map(five).error().code, Code{"timing.odd_flats"});
}

TEST(Check, NamesASingleHalfOnTheShortestShaftsWhoseHandIsFixed) {
  for (const int flats : {4, 6, 8}) {
    for (int rotor = 1; rotor <= 2; ++rotor) {
      for (int by = 1; by < flats; ++by) {
        const Shaft shaft = sample(2, flats, facing());
        Reading r = as_mapped(shaft);
        turn_in(r, shaft, rotor, Half::b, by);
        const Check c = checked(shaft, r);
        EXPECT_EQ(c.rotors[static_cast<std::size_t>(rotor) - 1].verdict, Verdict::half_b_out);
        EXPECT_EQ(c.equal_plans, 1);
      }
    }
  }
}

/// Half A gives a rotor its index: where either half will do, half B is the one to turn.
TEST(Check, OneRotorAloneTurnsItsHalfBAndSaysThatHalfAWouldDo) {
  const Shaft shaft = sample(1, 6, facing());
  Reading r = as_mapped(shaft);
  turn_in(r, shaft, 1, Half::a, 1);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.equal_plans, 2);
  EXPECT_EQ(c.rotors[0].verdict, Verdict::half_b_out);
  EXPECT_EQ(c.rotors[0].flats_b, -1);
  EXPECT_THAT(find(c, Code{"timing.equal_plans"})->args, testing::Contains(Arg("count", 2)));
}

TEST(Check, WhereTurningCostsNothingFewerHalvesAreStillPreferred) {
  ShaftSpec spec = sample_shaft({.rotors = 1});
  spec.policies.turn_a_half = {};
  const Shaft shaft = made(spec);
  Reading r = as_mapped(shaft);
  turn_in(r, shaft, 1, Half::b, 2);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.plan.turns.size(), 1U);
  EXPECT_EQ(c.equal_plans, 3);
}

TEST(Check, BothHalvesOutByDifferentFlatsAreNamedTogether) {
  const Shaft shaft = sample(5, 6, facing());
  Reading r = as_mapped(shaft);
  turn_in(r, shaft, 2, Half::a, 1);
  turn_in(r, shaft, 2, Half::b, -2);
  const Check c = checked(shaft, r);
  EXPECT_EQ(c.rotors[1].verdict, Verdict::both_out);
  EXPECT_EQ(c.rotors[1].flats_a, 1);
  EXPECT_EQ(c.rotors[1].flats_b, -2);
  EXPECT_EQ(c.rotors[1].pair_out, 3);
  ASSERT_NE(find(c, Code{"timing.both_out"}), nullptr);
  EXPECT_EQ(find(c, Code{"timing.both_out"})->instruction->code, Code{"timing.turn_both"});
}

}  // namespace
}  // namespace flatwise::timing
