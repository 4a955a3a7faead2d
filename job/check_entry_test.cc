// What may not go into a record: each refusal by its code, and what is taken.
#include <gtest/gtest.h>

#include <algorithm>

#include "job/job_samples.h"
#include "job/steps.h"

namespace flatwise::job {
namespace {

class CheckEntry : public testing::Test {
 protected:
  /// Codes and fields of what is wrong with a body as the next entry.
  std::string codes(EntryBody body, std::vector<Id> corrects = {}, const Id& by = "someone") {
    const auto job = record.open();
    Entry e;
    e.id = "new";
    e.by = by;
    e.follows = job->entries.empty() ? "" : job->entries.back().id;
    e.corrects = std::move(corrects);
    e.body = std::move(body);
    return codes(e);
  }
  std::string codes(const Entry& entry) {
    const auto job = record.open();
    std::string out;
    for (const Problem& p : check_entry(job->shaft, job->workshop, job->state, entry))
      out += std::string{p.code.id()} + " " + p.field + "; ";
    return out;
  }
  void safe() {
    record.book_in();
    record.answer(Stage::booking_in);
  }
  static Entered mm(double v) { return {any(millimetres(v)), {}, "x"}; }
  static Entered nm(double v) { return {any(newton_metres(v)), {}, "x"}; }

  SampleRecord record;
};

TEST_F(CheckEntry, TheFirstBooksIn) {
  EXPECT_EQ(codes(NoteWritten{{}, Stage::kit, "x"}), "record.not_booked_in body.kind; ");
  EXPECT_EQ(codes(BookedIn{"31", "m", "s", {}, {}, {}}), "");
  record.book_in();
  EXPECT_EQ(codes(BookedIn{"31", "m", "s", {}, {}, {}}), "record.booked_already body.kind; ");
  EXPECT_EQ(codes(BookedIn{"31", "m", "s", {}, {}, {}}, {"e1"}), "");
}

TEST_F(CheckEntry, FollowsWhatIsThere) {
  record.book_in();
  Entry e;
  e.body = NoteWritten{{}, Stage::kit, "x"};
  EXPECT_EQ(codes(e), "record.follows_unknown follows; ");
  e.follows = "elsewhere";
  EXPECT_EQ(codes(e), "record.follows_unknown follows; ");
  e.follows = "e1";
  EXPECT_EQ(codes(e), "");
}

TEST_F(CheckEntry, CorrectsOnlyItsOwnQuestion) {
  safe();
  const Id mark = record.write(MarkSeen{1, Half::a, 1});
  const Id note = record.write(NoteWritten{{}, Stage::kit, "x"});
  EXPECT_EQ(codes(MarkSeen{1, Half::a, 2}, {mark}), "");
  EXPECT_EQ(codes(MarkSeen{1, Half::b, 2}, {mark}), "record.corrects_another_question corrects[0]; ");
  EXPECT_EQ(codes(MarkSeen{1, Half::a, 2}, {mark, "gone"}), "record.corrects_unknown corrects[1]; ");
  EXPECT_EQ(codes(MarkSeen{1, Half::a, 2}, {mark, mark}),
            "record.corrects_twice corrects[0]; record.corrects_twice corrects[1]; ");
  EXPECT_EQ(codes(NoteWritten{{}, Stage::kit, "y"}, {note}), "");
  EXPECT_EQ(codes(PhotoTaken{{}, Stage::kit, "b", "image/png", ""}, {note}),
            "record.corrects_another_question corrects[0]; ");
}

TEST_F(CheckEntry, WithdrawsWhatCanBeTakenBack) {
  safe();
  const Id mark = record.write(MarkSeen{1, Half::a, 1});
  EXPECT_EQ(codes(Withdrawn{"x"}), "record.withdraws_nothing corrects; ");
  EXPECT_EQ(codes(Withdrawn{"x"}, {mark}), "");
  EXPECT_EQ(codes(Withdrawn{"x"}, {"e1"}), "record.stays corrects[0]; ");
  const Id taken_back = record.write(Withdrawn{"x"}, "bench", {mark});
  EXPECT_EQ(codes(Withdrawn{"x"}, {taken_back}), "record.stays corrects[0]; ");
}

TEST_F(CheckEntry, APushGoesWithARotorThatHung) {
  record.answer(Stage::booking_in);
  PlayRead play{1, mm(1), "L1", {}};
  play.push = Entered{any(newtons(30)), {}, "30 N"};
  const std::string refused = "record.push_of_hanging body.push; ";
  EXPECT_EQ(codes(play), refused);
  play.held = Held::carried;
  EXPECT_EQ(codes(play), refused);
  play.held = Held::hanging;
  EXPECT_EQ(codes(play), "");
}

TEST_F(CheckEntry, NoHandAtTheMachineBeforeItIsSafe) {
  record.book_in();
  const std::string unsafe = "record.not_safe_yet body; ";
  const EntryBody touching[] = {PlayRead{1, mm(1), "L1", {}},
                                Looked{{Where::Part::rotor, 1}, Stage::booking_in, Sign::hot, Reply::no},
                                TakenOff{1},
                                MarkSeen{1, Half::a, 1},
                                FittedRead{1, "x"},
                                NutPulled{End::a, TorquePull::With::wrench, nm(900), "W1", {}, {}, {}, {}, 1},
                                Answered{"guards_on", 0, Reply::yes}};
  for (const EntryBody& body : touching) EXPECT_EQ(codes(body), unsafe) << kind_of(body);
  for (const EntryBody& body :
       {EntryBody{NoteWritten{{}, Stage::kit, "x"}}, EntryBody{PhotoTaken{{}, Stage::kit, "b", "image/png", ""}},
        EntryBody{WayChosen{{1}, "all"}}, EntryBody{CustomerSaid{Reply::no, {}, {}, {}}}})
    EXPECT_EQ(codes(body), "") << kind_of(body);
  record.answer(Stage::booking_in);
  for (const EntryBody& body : touching) EXPECT_EQ(codes(body), "") << kind_of(body);
  // A no, or two that differ, is not safe.
  record.write(Answered{"tines_clear", 0, Reply::no}, "apprentice");
  for (const EntryBody& body : touching) EXPECT_EQ(codes(body), unsafe) << kind_of(body);
}

TEST_F(CheckEntry, PartsAreOrderedAfterTheCustomersYes) {
  safe();
  const Ordered order{"TH-SET-5", 2, {}};
  EXPECT_EQ(codes(order), "record.customer_first body; ");
  const Id no = record.write(CustomerSaid{Reply::no, {}, {}, {}});
  EXPECT_EQ(codes(order), "record.customer_first body; ");
  record.write(CustomerSaid{Reply::yes, {}, {}, {}}, "lead", {no});
  EXPECT_EQ(codes(order), "");
  record.write(WayChosen{{1}, "all"});  // What the customer had not seen.
  EXPECT_EQ(codes(order), "record.customer_first body; ");
  EXPECT_EQ(codes(Received{"TH-SET-9", 2}), "record.no_such_part body.part_number; ");
}

// 2026-11-27: while two ways stood beside each other parts could be ordered for either.
TEST_F(CheckEntry, NothingIsOrderedWhileItIsDisputedWhatIsOpened) {
  safe();
  record.agree();
  const Ordered order{"TH-SET-5", 2, {}};
  EXPECT_EQ(codes(order), "");
  record.write(WayChosen{{1, 2}, "all"}, "bench");
  EXPECT_EQ(codes(order), "record.customer_first body; ");
}

// 2026-11-27: a thousand sets laid on one tray left 996 fewer than none on the shelf.
TEST_F(CheckEntry, ATrayHoldsTwiceWhatItsRotorTakesAtMost) {
  safe();
  for (const auto& [item, most] : {std::pair{"set", 2}, {"seal", 4}, {"snap_ring", 4}}) {
    EXPECT_EQ(codes(Laid{1, item, most}), "") << item;
    EXPECT_EQ(codes(Laid{1, item, most + 1}), "record.out_of_range body.count; ") << item;
    EXPECT_EQ(codes(LeftOver{1, item, most + 1}), "record.out_of_range body.count; ") << item;
    EXPECT_EQ(codes(Scrapped{1, item, most + 1}), "record.out_of_range body.count; ") << item;
  }
}

// 2026-11-27: what nobody had ordered came in and left fewer than none on order.
TEST_F(CheckEntry, NoMoreComesInThanIsOnOrder) {
  safe();
  record.agree();
  const std::string too_many = "record.not_on_order body.count; ";
  EXPECT_EQ(codes(Received{"TH-SET-5", 1}), too_many);
  record.workshop().stock.front().on_order = 4;  // By the workshop, for no job.
  EXPECT_EQ(codes(Received{"TH-SET-5", 4}), "");
  EXPECT_EQ(codes(Received{"TH-SET-5", 5}), too_many);
  record.workshop().stock.front().on_order = 0;
  const Id order = record.write(Ordered{"TH-SET-5", 3, {}});
  EXPECT_EQ(codes(Received{"TH-SET-5", 4}), too_many);
  EXPECT_EQ(codes(Received{"TH-SEAL", 1}), too_many);
  const Id came = record.write(Received{"TH-SET-5", 2});
  EXPECT_EQ(codes(Received{"TH-SET-5", 1}), "");
  EXPECT_EQ(codes(Received{"TH-SET-5", 2}), too_many);
  EXPECT_EQ(codes(Received{"TH-SET-5", 3}, {came}), "") << "instead of the two";
  EXPECT_EQ(codes(Ordered{"TH-SET-5", 2, {}}, {order}), "");
  EXPECT_EQ(codes(Ordered{"TH-SET-5", 1, {}}, {order}), "record.came_in_already corrects; ");
  EXPECT_EQ(codes(Withdrawn{"x"}, {order}), "record.came_in_already corrects; ");
  EXPECT_EQ(codes(Withdrawn{"x"}, {order, came}), "");
}

TEST_F(CheckEntry, AGaugeInDateIsNotAccepted) {
  safe();
  record.workshop().gauges.front().calibrated_until = {2026, 2, 10};
  const auto accepted_on = [&](std::int64_t ms) {
    Entry e;
    e.id = "new";
    e.by = "lead";
    e.follows = record.open()->entries.back().id;
    e.at = {ms};
    e.body = GaugeAccepted{"G1", "checked against the ring"};
    return codes(e);
  };
  constexpr std::int64_t kDay = 86'400'000, kFirstOfFebruary = 1'769'904'000'000;
  EXPECT_EQ(accepted_on(kFirstOfFebruary + 9 * kDay), "record.gauge_in_date body.gauge; ");
  EXPECT_EQ(accepted_on(kFirstOfFebruary + 10 * kDay), "");
  // What was read on 2 February is judged by that day: a certificate of later makes it no better.
  record.workshop().gauges.front().certificates = {{.from = {}, .until = {2026, 2, 1}},
                                                   {.from = Day{2026, 2, 3}, .until = {2027, 2, 1}}};
  EXPECT_EQ(accepted_on(kFirstOfFebruary + 9 * kDay), "");
}

// 2026-11-27: a release sent by a tablet that slept passed over "power locked off: no".
TEST_F(CheckEntry, WhoReleasesHasSeenTheRecord) {
  safe();
  const auto released = [&](const Id& follows, const Id& by) {
    Entry e;
    e.id = "new";
    e.by = by;
    e.on = "tablet";
    e.follows = follows;
    e.body = Released{true, "the customer fetched it"};
    return codes(e);
  };
  const Id seen = record.open()->entries.back().id;
  record.write(NoteWritten{{}, Stage::release, "wiped down"}, "bench");
  EXPECT_EQ(released(seen, "lead"), "");
  const Id no = record.write(Answered{"power_locked_off", 0, Reply::no}, "bench");
  EXPECT_EQ(released(seen, "lead"), "record.not_seen_yet follows; ");
  EXPECT_EQ(released(seen, "bench"), "") << "who said it knows it";
  EXPECT_EQ(released(no, "lead"), "");
}

TEST_F(CheckEntry, PartsThatAreNotThere) {
  safe();
  const std::string rotor = "record.no_such_rotor body.rotor; ", station = "record.no_such_station body.station; ";
  EXPECT_EQ(codes(SetRenewed{4, Reply::yes}), rotor);
  EXPECT_EQ(codes(MarkSeen{0, Half::a, 1}), rotor);
  EXPECT_EQ(codes(MarkSeen{1, Half::a, 7}), "record.out_of_range body.flat; ");
  EXPECT_EQ(codes(TakenOff{999}), station);
  EXPECT_EQ(codes(PutOn{999}), station);
  EXPECT_EQ(codes(PutOn{1}), "record.did_not_come_off body.station; ");
  EXPECT_EQ(codes(RingSound{1, 3, Reply::yes}), "record.not_so_many body.ring; ");
  EXPECT_EQ(codes(LabelPutBack{1, "S99"}), "record.no_such_label body.label; ");
  EXPECT_EQ(codes(LabelPutBack{99, "S1"}), "record.out_of_range body.position; ");
  EXPECT_EQ(codes(LabelPutBack{1, ""}), "");
  EXPECT_EQ(codes(NoteWritten{{Where::Part::rotor, 9}, Stage::kit, "x"}), "record.no_such_rotor body.part.number; ");
  EXPECT_EQ(codes(NoteWritten{{Where::Part::shaft, 1}, Stage::kit, "x"}), "record.out_of_range body.part.number; ");
  EXPECT_EQ(codes(WayChosen{{1, 1, 9}, "all"}), "plan.rotor_twice body.open; plan.no_such_rotor body.open; ");
  EXPECT_EQ(codes(RunRead{RunQuantity::hanger, record.station("1"), {any(celsius(40)), {}, "x"}, "T1"}),
            "record.no_hanger body.station; ");
  EXPECT_EQ(codes(RunRead{RunQuantity::room, 1, {any(celsius(20)), {}, "x"}, ""}),
            "record.out_of_range body.station; ");
}

TEST_F(CheckEntry, ScrapIsOfARotorAndItsPieces) {
  record.book_in();  // A box on the floor: no hand is at the machine.
  EXPECT_EQ(codes(Scrapped{1, "seal", 2}), "");
  EXPECT_EQ(codes(Scrapped{9, "seal", 2}), "record.no_such_rotor body.rotor; ");
}

TEST_F(CheckEntry, HalvesAreOfRotors) {
  safe();
  EXPECT_EQ(codes(PartMeasured{record.station("1"), {}, mm(34), "L1"}), "record.half_missing body.half; ");
  EXPECT_EQ(codes(PartMeasured{record.station("S1"), Half::a, mm(92), "L1"}), "record.no_halves body.half; ");
  EXPECT_EQ(codes(PartMeasured{record.station("1"), Half::b, mm(34), "L1"}), "");
}

TEST_F(CheckEntry, GaugesAreThoseOfTheShopAndOfTheRightKind) {
  safe();
  EXPECT_EQ(codes(StackRead{mm(900), "L9"}), "record.no_such_gauge body.gauge; ");
  EXPECT_EQ(codes(StackRead{mm(900), "G1"}), "record.wrong_gauge body.gauge; ");
  EXPECT_EQ(codes(StackRead{mm(900), ""}), "record.gauge_missing body.gauge; ");
  EXPECT_EQ(codes(BoreRead{1, 'A', 5, 4, mm(100), "G1"}), "record.out_of_range body.direction; ");
  EXPECT_EQ(codes(TemperatureRead{1, Measured::part, {any(celsius(20)), {}, "x"}, "G1"}),
            "record.wrong_gauge body.thermometer; ");
  EXPECT_EQ(codes(GaugeAccepted{"G9", "x"}), "record.no_such_gauge body.gauge; ");
  EXPECT_EQ(codes(NutPulled{End::a, TorquePull::With::bar, {any(newtons(600)), {}, "x"}, "", {}, {}, {}, {}, 1}),
            "record.tool_length_missing body.tool_length; ");
  EXPECT_EQ(codes(NutPulled{End::a, TorquePull::With::wrench, nm(900), "W1", {}, mm(200), {}, {}, 1}),
            "record.tool_length_missing body.tool_length; ");
  const Entered five{any(degrees(5)), {}, "5°"};
  EXPECT_EQ(codes(NutPulledAgain{End::a, five, "W9"}), "record.no_such_gauge body.gauge; ");
  EXPECT_EQ(codes(NutPulledAgain{End::a, five, "G1"}), "record.wrong_gauge body.gauge; ");
  EXPECT_EQ(codes(NutPulledAgain{End::a, five, ""}), "");
  EXPECT_EQ(codes(NutPulledAgain{End::b, five, "W1"}), "");
}

TEST_F(CheckEntry, QuestionsAreThoseOfTheBench) {
  safe();
  EXPECT_EQ(codes(Answered{"guards_onn", 0, Reply::yes}), "record.no_such_question body.question; ");
  EXPECT_EQ(codes(Answered{"guards_on", 1, Reply::yes}), "record.not_asked_of_it body.number; ");
  EXPECT_EQ(codes(Answered{"seals_new", 0, Reply::yes}), "record.not_asked_of_it body.number; ");
  EXPECT_EQ(codes(Answered{"nut_rechecked", 3, Reply::yes}), "record.not_asked_of_it body.number; ");
  EXPECT_EQ(codes(Answered{"seals_new", 3, Reply::yes}), "");
}

TEST_F(CheckEntry, StepsAreThoseOfTheWayChosen) {
  safe();
  EXPECT_EQ(codes(StepDone{Phase::teardown, "x", Reply::yes}), "record.nothing_chosen body.step; ");
  record.agree();
  EXPECT_EQ(codes(StepDone{Phase::teardown, "x", Reply::yes}), "record.no_such_step body.step; ");
  const auto job = record.open();
  const auto steps = job_steps(job->shaft, job->workshop, job->state, Phase::teardown);
  ASSERT_GT(steps.size(), 5U);
  for (const JobStep& step : steps) {
    EXPECT_FALSE(step.done());
    for (const EntryBody& body : entries_of_step(step, Phase::teardown)) {
      EXPECT_EQ(codes(body), "");
      record.write(body);
    }
  }
  const auto after = record.open();
  for (const JobStep& step : job_steps(after->shaft, after->workshop, after->state, Phase::teardown))
    EXPECT_TRUE(step.done()) << step.key;
  EXPECT_EQ(after->state.bench.came_off, std::vector{1});
  // The way back puts on what came off, each once.
  std::vector<int> back;
  for (const JobStep& step : job_steps(after->shaft, after->workshop, after->state, Phase::assembly))
    back.insert(back.end(), step.moves.begin(), step.moves.end());
  std::ranges::sort(back);
  std::vector<int> off;
  for (std::size_t i = 0; i < after->state.came_off.size(); ++i)
    if (after->state.came_off[i]) off.push_back(static_cast<int>(i) + 1);
  EXPECT_EQ(back, off);
}

TEST_F(CheckEntry, OpenedFromAnEndThatCanBe) {
  safe();
  using teardown::OpenedFrom;
  EXPECT_EQ(codes(OpenedBy{OpenedFrom::b, 0}), "") << "before anything is planned too";
  EXPECT_EQ(codes(OpenedBy{OpenedFrom::a, 1}), "record.out_of_range body.rotors_from_a; ");
  EXPECT_EQ(codes(OpenedBy{OpenedFrom::both, 3}), "record.out_of_range body.rotors_from_a; ");
  record.agree();  // Rotor 1 alone: one rotor has no two ends, unless its share is said.
  EXPECT_EQ(codes(OpenedBy{OpenedFrom::both, 0}), "teardown.no_such_share body.rotors_from_a; ");
  EXPECT_EQ(codes(OpenedBy{OpenedFrom::both, 2}), "");
  EXPECT_EQ(codes(OpenedBy{OpenedFrom::b, 0}), "");
}

TEST_F(CheckEntry, WhatWasSaidByHandChangesTheStepsAndKeepsWhatIsOff) {
  safe();
  record.agree();
  const int nut_a = record.station("nut A"), nut_b = record.station("nut B");
  record.write(TakenOff{nut_a});
  record.write(OpenedBy{teardown::OpenedFrom::b, 0});
  const auto job = record.open();
  const auto plan = chosen_plan(job->shaft, job->workshop, job->state);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->rotors, (std::vector<int>{1, 2, 3})) << "from end B all three lie before rotor 1";
  const auto moved = [&](Phase phase, int station) {
    return std::ranges::any_of(job_steps(job->shaft, job->workshop, job->state, phase), [&](const JobStep& step) {
      return std::ranges::find(step.moves, station) != step.moves.end();
    });
  };
  EXPECT_TRUE(moved(Phase::teardown, nut_b));
  EXPECT_TRUE(moved(Phase::assembly, nut_a)) << "what came off before it was said goes back too";
}

TEST_F(CheckEntry, SpacersAreCountedAtTheirPlaces) {
  safe();
  const int place = record.station("S1");
  EXPECT_EQ(codes(SpacersFound{Phase::teardown, place, 2, {}}), "");
  EXPECT_EQ(codes(SpacersFound{Phase::teardown, place, 0, {}}), "");
  EXPECT_EQ(codes(SpacersFound{Phase::assembly, place, 1, "S2"}), "");
  EXPECT_EQ(codes(SpacersFound{Phase::teardown, place, 0, "S2"}), "record.nothing_lies_there body.label; ");
  EXPECT_EQ(codes(SpacersFound{Phase::teardown, place, 1, "S77"}), "record.no_such_label body.label; ");
  EXPECT_EQ(codes(SpacersFound{Phase::teardown, record.station("1"), 2, {}}), "record.no_spacer body.station; ");
  EXPECT_EQ(codes(SpacersFound{Phase::teardown, 99, 2, {}}), "record.no_such_station body.station; ");
}

TEST_F(CheckEntry, AToolIsForANutThatIsThere) {
  safe();
  EXPECT_EQ(codes(ToolTaken{End::a, mm(1700), {}, {}}), "");
  EXPECT_EQ(codes(ToolTaken{End::b, mm(1700), mm(300), Entered{any_ratio(3.5), {}, "3.5"}}), "");
}

TEST_F(CheckEntry, ASecondLookIsSomebodyElses) {
  safe();
  record.write(MarkSeen{2, Half::a, 4}, "bench");
  EXPECT_EQ(codes(SecondLook{2, Reply::yes}, {}, "bench"), "record.own_marks by; ");
  EXPECT_EQ(codes(SecondLook{2, Reply::yes}, {}, "lead"), "");
}

TEST_F(CheckEntry, ReleaseWaitsUntilNothingIsOpen) {
  safe();
  EXPECT_EQ(codes(Released{false, ""}), "record.still_open body.forced; ");
  EXPECT_EQ(codes(Released{true, " \n"}), "record.reason_missing body.reason; ");
  EXPECT_EQ(codes(Released{true, "the customer fetched it"}), "");
}

TEST_F(CheckEntry, AWholeJobIsReleasedAndThenOnlyNotesFollow) {
  record.do_all();
  EXPECT_EQ(codes(Released{false, ""}), "record.still_open body.forced; ");  // The signatures.
  record.sign_all();
  EXPECT_EQ(codes(Released{false, ""}), "");
  const Id mark = record.open()->state.answers("mark_seen/1/a")->first().id;
  record.write(Released{false, ""}, "lead");
  EXPECT_EQ(codes(NoteWritten{{}, Stage::release, "fetched on Friday"}), "");
  for (const EntryBody& body : {EntryBody{MarkSeen{1, Half::a, 1}}, EntryBody{Withdrawn{"x"}}, EntryBody{Released{}}})
    EXPECT_TRUE(codes(body, {mark}).starts_with("record.released_already body.kind; ")) << kind_of(body);
}

}  // namespace
}  // namespace flatwise::job
