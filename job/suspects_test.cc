// Side play beside a new bearing, and the list of suspects. Invented sample shaft (core/shaft/shaft_samples.h).
#include "job/suspects.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/working/figure.h"
#include "job/job_samples.h"
#include "job/play.h"

namespace flatwise::job {
namespace {

std::vector<Where> order(const Suspects& s) {
  std::vector<Where> out;
  for (const Suspect& one : s.ranked) out.push_back(one.part);
  return out;
}
bool has_reason(const Suspect& s, Code code) {
  return std::ranges::any_of(s.reasons, [&](const Message& m) { return m.code == code; });
}
BearingLife running(int rotor, double from) { return {"m", rotor, from, std::nullopt, false, std::nullopt}; }
BearingLife failed(int rotor, double from, double to) { return {"m", rotor, from, to, true, std::nullopt}; }

/// Play at rotor 1 far past, at 2 in doubt, at 3 as new; the swings follow from the figures themselves.
struct Rocked : ::testing::Test {
  SampleRecord record;
  double new_mm = 0;  ///< Greatest swing of a new bearing.
  Rocked() {
    record.book_in();
    record.answer(Stage::booking_in);
    const auto job = record.open();
    const WorkingPtr fresh = new_bearing_play(job->facts(), 1, given("radius", any(millimetres(230))));
    new_mm = fresh->si("swing-greatest") * 1e3;
  }
  [[nodiscard]] Suspects list(std::span<const BearingLife> lives = {}, std::optional<double> hours = {}) const {
    const auto job = record.open();
    return suspects(job->facts(), lives, hours);
  }
  void look(Where part, Sign sign, Reply reply = Reply::yes, Stage stage = Stage::booking_in) {
    record.write(Looked{part, stage, sign, reply});
  }
};

TEST_F(Rocked, PlayIsSetBesideANewBearing) {
  record.read_play(1, 2.0 * new_mm);
  record.read_play(2, 0.9 * new_mm);
  record.read_play(3, 0.3 * new_mm);
  const auto job = record.open();
  EXPECT_EQ(play_of(job->facts(), 1)->stands, PlayStands::past_new);
  EXPECT_EQ(play_of(job->facts(), 2)->stands, PlayStands::may_be_new);
  EXPECT_EQ(play_of(job->facts(), 3)->stands, PlayStands::as_new);
  const StageReport report = judge(job->facts(), Stage::booking_in);
  EXPECT_EQ(report.worst(), Severity::note) << "play keeps nothing back";
  int shown = 0;
  for (const Shown& s : report.workings) shown += s.working->figure == "clearance-from-play" ? 1 : 0;
  EXPECT_EQ(shown, 3);
}

TEST_F(Rocked, ASwingThatCannotBeIsSaidAndBlocksNothing) {
  record.read_play(1, 90 * new_mm);
  const auto job = record.open();
  EXPECT_EQ(play_of(job->facts(), 1)->stands, PlayStands::not_possible);
  const StageReport report = judge(job->facts(), Stage::booking_in);
  EXPECT_TRUE(report.problems.empty());
  EXPECT_TRUE(
      std::ranges::any_of(report.findings, [](const Finding& f) { return f.code == Code{"job.play_not_possible"}; }));
  EXPECT_EQ(report.worst(), Severity::note);
}

TEST_F(Rocked, TheDialStandsAtTheTipsUnlessToldAndThatIsMarked) {
  record.write(PlayRead{1, {any(millimetres(1)), {}, "1 mm"}, "L1", {}});
  record.write(PlayRead{2, {any(millimetres(1)), {}, "1 mm"}, "L1", Entered{any(millimetres(115)), {}, "115 mm"}});
  const auto job = record.open();
  const std::optional<Play> tip = play_of(job->facts(), 1), told = play_of(job->facts(), 2);
  EXPECT_EQ(tip->behind->input("radius")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(told->behind->input("radius")->origin.kind, OriginKind::measured);
  // Half the radius: twice the tilt for one swing, four times the clearance while it is small.
  EXPECT_GT(told->behind->si("clearance"), 3.5 * tip->behind->si("clearance"));
  EXPECT_FALSE(play_of(job->facts(), 3));
}

PlayRead play_of_a_hanging_rotor(int rotor, std::optional<Entered> push) {
  PlayRead read{rotor, {any(millimetres(0.5)), {}, "0.5 mm"}, "L1", {}};
  read.held = Held::hanging;
  read.push = std::move(push);
  return read;
}

// Source: derivation (core/bearings): hanging and not pushed a rotor shows 1/sqrt 2 of what it shows carried, at any clearance.
// Tolerance: 1e-9, the bisection's end.
TEST_F(Rocked, TheResultAllowsForTheWayTheRotorWasHeld) {
  record.write(PlayRead{1, {any(millimetres(0.5)), {}, "0.5 mm"}, "L1", {}});
  record.write(play_of_a_hanging_rotor(2, {}));
  const Force weight = weight_of(record.shaft().rotor(3));
  record.write(play_of_a_hanging_rotor(3, Entered{any(0.2 * weight), {}, "a fifth"}));
  const auto job = record.open();
  const std::optional<Play> untold = play_of(job->facts(), 1), unpushed = play_of(job->facts(), 2),
                            pushed = play_of(job->facts(), 3);
  EXPECT_EQ(untold->behind->input("held")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(std::get<std::string>(untold->behind->input("held")->value), "carried");
  EXPECT_EQ(unpushed->behind->input("held")->origin.kind, OriginKind::measured);
  EXPECT_NEAR(unpushed->fresh->si("swing-greatest") / untold->fresh->si("swing-greatest"), std::sqrt(0.5), 1e-9);
  EXPECT_GT(unpushed->behind->si("clearance"), 1.9 * untold->behind->si("clearance"));
  EXPECT_GT(pushed->behind->si("clearance"), untold->behind->si("clearance"));
  EXPECT_LT(pushed->behind->si("clearance"), 1.1 * untold->behind->si("clearance"));
  EXPECT_EQ(push_wanted(record.shaft().rotor(3)), 0.2 * weight);
}

TEST_F(Rocked, RanksWhatWasFoundAboveDoubtAndSaysWhatWasNotMeasured) {
  record.read_play(1, 0.9 * new_mm);
  look(at_rotor(2), Sign::grease_out);
  const Suspects s = list();
  ASSERT_EQ(order(s), (std::vector<Where>{at_rotor(2), at_rotor(1)}));
  EXPECT_TRUE(s.ranked[0].stands_apart);
  EXPECT_FALSE(s.ranked[1].stands_apart);
  EXPECT_EQ(s.not_measured, (std::vector<int>{2, 3}));
  ASSERT_EQ(s.says.size(), 1U);
  EXPECT_EQ(s.says[0].code, Code{"suspect.not_measured"});
  EXPECT_EQ(rotors_that_stand_apart(s), std::vector<int>{2});
}

TEST_F(Rocked, ReasonsAddUpAndEachIsSaid) {
  record.read_play(3, 2.0 * new_mm);
  look(at_rotor(3), Sign::rough);
  look(at_rotor(3), Sign::hot);
  look(at_rotor(1), Sign::rough);
  look(at_rotor(1), Sign::noisy);
  const Suspects s = list();
  ASSERT_EQ(order(s), (std::vector<Where>{at_rotor(3), at_rotor(1)}));
  EXPECT_EQ(s.ranked[0].reasons.front().code, Code{"suspect.play_past_new"});
  EXPECT_TRUE(has_reason(s.ranked[0], Code{"suspect.rough"}));
  EXPECT_TRUE(has_reason(s.ranked[0], Code{"suspect.hot"}));
  EXPECT_EQ(s.ranked[1].reasons.size(), 2U);
}

TEST_F(Rocked, OfTwoWithTheSameSignsTheWiderSwingComesFirst) {
  record.read_play(1, 1.8 * new_mm);
  record.read_play(2, 2.4 * new_mm);
  EXPECT_EQ(order(list()), (std::vector<Where>{at_rotor(2), at_rotor(1)}));
}

TEST_F(Rocked, NothingFoundIsNoSuspect) {
  for (int r = 1; r <= 3; ++r) record.read_play(r, 0.3 * new_mm);
  look(at_rotor(1), Sign::rough, Reply::no);
  EXPECT_TRUE(list().ranked.empty());
  EXPECT_TRUE(list().says.empty());
}

TEST_F(Rocked, SaidToBeSoundTakesDoubtAwayButNotWhatWasFound) {
  record.read_play(1, 0.9 * new_mm);
  look(at_rotor(1), Sign::sound);
  look(at_rotor(2), Sign::rough);
  look(at_rotor(2), Sign::sound);
  EXPECT_EQ(order(list()), std::vector<Where>{at_rotor(2)});
}

TEST_F(Rocked, AHangerIsASuspectToo) {
  const Where hanger{Where::Part::station, record.station("hanger B")};
  look(hanger, Sign::hot);
  const Suspects s = list();
  ASSERT_EQ(order(s), std::vector<Where>{hanger});
  EXPECT_TRUE(rotors_that_stand_apart(s).empty());
}

TEST_F(Rocked, ALaterLookCounts) {
  look(at_rotor(1), Sign::rough);
  look(at_rotor(1), Sign::rough, Reply::no, Stage::finding);
  EXPECT_TRUE(list().ranked.empty());
}

TEST_F(Rocked, AgeSpeaksAgainstThoseThatRanLongerThanOneThatFailed) {
  const std::vector<BearingLife> lives{failed(1, 0, 800), failed(2, 0, 1500), running(1, 800), running(2, 1500),
                                       running(3, 0)};
  const Suspects s = list(lives, 1700);
  // Rotor 1 has run 900 h: past the one failure at 800 h. Rotor 2: 200 h. Rotor 3: 1700 h, past both.
  ASSERT_EQ(order(s), (std::vector<Where>{at_rotor(1), at_rotor(3)}));
  EXPECT_FALSE(s.ranked[0].stands_apart);
  const Args& args = s.ranked[1].reasons.front().args;
  EXPECT_EQ(std::get<std::int64_t>(args[1].value), 2);
  EXPECT_TRUE(list(lives).ranked.empty()) << "without the hour meter age says nothing";
}

TEST_F(Rocked, TheSameHoursAsOneThatStandsApartIsAReason) {
  look(at_rotor(3), Sign::rough);
  const std::vector<BearingLife> lives{running(1, 100), running(2, 700), running(3, 100)};
  const Suspects s = list(lives, 1000);
  ASSERT_EQ(order(s), (std::vector<Where>{at_rotor(3), at_rotor(1)}));
  EXPECT_TRUE(has_reason(s.ranked[1], Code{"suspect.same_hours"}));
}

}  // namespace
}  // namespace flatwise::job
