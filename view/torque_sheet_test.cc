// The stack and torque sheets: a stack that is not seated, the order of the nuts, the tool at hand, the turn of a nut.
#include <algorithm>
#include <tuple>

#include "view/test_job_31.h"

namespace flatwise::view {
namespace {

/// What is known to be wrong on job 31 holds the sheet back: a way taken by hand opens it.
Plain open_sheet(SampleJob& sample, int nut, int way) {
  return view_of(sample.subject(), Stage::torque, nut, UnitSystem::inch, End::a, way);
}
/// The answers about the nut itself: what stands in its way is told before them.
std::vector<Plain> about_the_nut(const Plain& view) {
  auto answers = blocks_of(view, "answer");
  std::erase_if(answers, [](const Plain& a) { return a["sign"] == "stopped"; });
  return answers;
}

// Source: the demo's file: 65.95 in with the tape, 0.03 in over the seated band; S2 and S3 exchanged.
TEST_F(Job31, SaysTheStackIsNotSeatedAndNamesTheJointToLookAt) {
  const Plain view = view_of(subject_, Stage::stack, labelled("S3"));
  EXPECT_TRUE(says(view["sheet"]["left"], "S3 and S2 stand where S2 and S3 belong"));
  const auto answers = blocks_of(view, "answer");
  const bool not_seated = std::ranges::any_of(
      answers, [](const Plain& a) { return a["word"] == "NOT SEATED" && a["sign"] == "out" && a.contains("bar"); });
  EXPECT_TRUE(not_seated);
  // 2026-11-27: six of the joints were shown, the others of the four rotors looked closed, and the first of the equals was named.
  EXPECT_TRUE(says(view["sheet"]["foot"], "none likelier than another"));
  EXPECT_FALSE(says(view["sheet"]["foot"], "Look first: "));
  EXPECT_EQ(cell(view, labelled("S2"))["word"], "stop");
  EXPECT_EQ(cell(view, labelled("S3"))["flag"], "stopped");
  EXPECT_TRUE(says(view["sheet"]["foot"], "All joints home"));
  // Every joint that has a bar can be tried with a feeler.
  const Plain bars = first(Plain{{"sheet",
                                  {{"head", Plain::array()},
                                   {"left", Plain::array()},
                                   {"right", Plain::array()},
                                   {"foot", view["sheet"]["foot"]}}}},
                           "drawing");
  std::set<std::string> ids;
  collect_ids(bars["list"], ids);
  EXPECT_GT(ids.size(), 8U) << "rotors 3 and 4 came off too";
  for (const Plain& asks : blocks_of(view, "asks"))
    EXPECT_TRUE(asks.value("head", "") != "Feelers tried" || asks["questions"].size() == ids.size());
}

// 2026-11-27: a half that locks its bearing, a stack not seated and two spacers exchanged were known, and the sheet said how to pull.
TEST_F(Job31, StopsThePullAndTheRunWithTheReasonsThatAreKnown) {
  for (const auto& [stage, station, on] :
       {std::tuple{Stage::torque, labelled("nut A"), "Pull all the same"},
        std::tuple{Stage::test_run, labelled("hanger A"), "Enter a run all the same"}}) {
    const Plain view = view_of(subject_, stage, station);
    const Plain head = view["sheet"]["head"];
    EXPECT_EQ(head[0]["block"], "answer");
    EXPECT_EQ(head[0]["sign"], "stopped");
    EXPECT_TRUE(says(head[0]["word"], "STOP"));
    EXPECT_TRUE(says(head[0], "half B of rotor 4") || says(head[0], "half B is")) << head[0];
    EXPECT_TRUE(says(head[0], "S3 and S2 stand where S2 and S3 belong")) << head[0];
    EXPECT_TRUE(first(view, "keypad").is_null()) << "nothing to type before it is looked at";
    EXPECT_FALSE(says(view["sheet"], "Run it"));
    const Plain keys = first(view, "actions")["actions"];
    ASSERT_EQ(keys.size(), 2U);
    EXPECT_EQ(keys[0]["tone"], "next");
    EXPECT_EQ(keys[1]["label"], on);
    const int step = keys[1]["do"]["go"]["step"];
    const Plain open = view_of(subject_, stage, station, UnitSystem::inch, End::a, step);
    EXPECT_FALSE(first(open, "keypad").is_null());
    EXPECT_EQ(open["sheet"]["head"][0]["sign"], "stopped") << "the reasons stay";
  }
}

// 2026-11-27: the press of a rotor whose bore cannot be told said IN alone.
TEST_F(Job31, AForceInItsBandIsInForTheForceAloneWhileTheBoreCannotBeTold) {
  const Plain view = view_of(subject_, Stage::press, at_rotor(3));
  EXPECT_EQ(view["sheet"]["head"][0]["block"], "answer");
  EXPECT_EQ(view["sheet"]["head"][0]["sign"], "tell");
  EXPECT_TRUE(
      std::ranges::any_of(blocks_of(view, "answer"), [](const Plain& a) { return says(a["word"], "Force: "); }));
  EXPECT_EQ(view_of(subject_, Stage::press, at_rotor(1))["sheet"]["head"][0]["block"], "caution");
}

TEST_F(Job31, PullsTheNutsInTheirOrderAndFramesTheWayOnePersonCanHold) {
  const int nut = labelled("nut A");
  const Plain view = view_of(subject_, Stage::torque, nut, UnitSystem::inch, End::a, 3);
  EXPECT_EQ(first(view, "caution")["block"], "caution");
  EXPECT_TRUE(says(view["sheet"]["title"], "900\u00a0ft·lb"));
  const Plain table = first(view, "table");
  ASSERT_EQ(table["rows"].size(), 3U);
  // Source: statics by hand: 900 ft·lb at 4 ft is 225 lbf, with 2 ft more 150 lbf; a multiplier of 4 leaves 56 lbf.
  EXPECT_TRUE(says(table["rows"][0], "225"));
  EXPECT_TRUE(says(table["rows"][1], "600\u00a0ft·lb"));
  EXPECT_TRUE(says(table["rows"][1], "Too much for one person"));
  EXPECT_TRUE(table["rows"][2]["chosen"]);
  EXPECT_TRUE(says(table["rows"][2], "225\u00a0ft·lb"));
  EXPECT_EQ(first(view, "keypad")["fields"][0]["draft"]["body"]["multiplier"], 4.0);
  EXPECT_EQ(cell(view, nut)["word"], "now");
  EXPECT_EQ(cell(view, labelled("nut B"))["word"], "next");
  const Plain straight = view_of(subject_, Stage::torque, nut, UnitSystem::inch, End::a, 1);
  EXPECT_TRUE(first(straight, "table")["rows"][0]["chosen"]);
  EXPECT_FALSE(first(straight, "table")["rows"][2]["chosen"]);
}

// Source: statics by hand: 900 ft·lb by a multiplier of 3.5 on 6 ft is 900 / (3.5 × 6) = 42.86 lbf; on 1 ft alone 900 lbf.
// Tolerance: as printed.
TEST(Torque, ReckonsWithTheToolAtHand) {
  SampleJob sample = job_31();
  const auto& stations = sample.shaft().stations();
  const int nut =
      static_cast<int>(std::ranges::find(stations, std::string{"nut A"}, &Station::label) - stations.begin());
  const Plain before = open_sheet(sample, nut, 3);
  const Plain fields = first(before, "keypad")["fields"];
  ASSERT_EQ(fields.size(), 5U);
  EXPECT_EQ(fields[2]["draft"]["body"]["kind"], "tool_taken");
  EXPECT_EQ(fields[2]["draft"]["body"]["length"], "");
  EXPECT_EQ(fields[4]["into"], "ratio");
  EXPECT_EQ(fields[4]["draft"]["body"]["length"], "4 ft") << "a ratio alone goes with the wrench of the way";
  const job::Id told = sample.write(
      job::ToolTaken{End::a, typed("6 ft", Kind::length), std::nullopt, Entered{any_ratio(3.5), std::nullopt, "3.5"}});
  const Plain view = open_sheet(sample, nut, 4);
  const Plain table = first(view, "table");
  ASSERT_EQ(table["rows"].size(), 4U);
  EXPECT_TRUE(table["rows"][3]["chosen"]);
  EXPECT_TRUE(says(table["rows"][3], "Own tool: 6 ft, multiplier 3.5") || says(table["rows"][3], "Own tool: 6 ft"));
  EXPECT_TRUE(says(table["rows"][3], "42.9"));
  const Plain draft = first(view, "keypad")["fields"][0]["draft"]["body"];
  EXPECT_EQ(draft["tool_length"], "6 ft");
  EXPECT_EQ(draft["multiplier"], 3.5);
  sample.write(job::ToolTaken{End::a, typed("1 ft", Kind::length), std::nullopt, std::nullopt}, 1, {told});
  const Plain shorter = first(open_sheet(sample, nut, 4), "table")["rows"][3];
  EXPECT_TRUE(says(shorter, "Too much for one person"));
}

TEST(Torque, JudgesWhatTheNutGotAndWhatItClampsWith) {
  SampleJob sample = job_31();
  job::NutPulled pull;
  pull.nut = End::a;
  pull.shown = typed("225 ft·lb", Kind::torque);
  pull.gauge = "TW-1";
  pull.tool_length = typed("4 ft", Kind::length);
  pull.multiplier = 4;
  sample.write(pull);
  const auto& stations = sample.shaft().stations();
  const int nut =
      static_cast<int>(std::ranges::find(stations, std::string{"nut A"}, &Station::label) - stations.begin());
  const Plain view = view_of(sample.subject(), Stage::torque, nut);
  const Plain answer = about_the_nut(view).at(0);
  EXPECT_TRUE(answer.contains("bar"));
  EXPECT_TRUE(says(answer["value"], "900"));
  EXPECT_EQ(cell(view, nut)["sub"], "900 ft·lb") << "the nut's, not the wrench's 225";
  EXPECT_TRUE(says(view["sheet"]["right"], "Clamps with"));
  EXPECT_TRUE(says(view["sheet"]["right"], "proof "));
  // A tool of another length corrects the reading: the same pull, told again with that length.
  const Plain fields = first(view, "keypad")["fields"];
  ASSERT_EQ(fields.size(), 6U);
  EXPECT_EQ(fields[4]["into"], "turned");
  EXPECT_EQ(fields[4]["kind"], "angle");
  EXPECT_EQ(fields[4]["draft"]["body"]["shown"], "225 ft·lb");
  EXPECT_EQ(fields[4]["draft"]["corrects"].size(), 1U);
  EXPECT_EQ(fields[5]["draft"]["body"]["kind"], "nut_pulled_again");
  EXPECT_EQ(fields[5]["draft"]["body"]["gauge"], "TW-1");
  EXPECT_EQ(fields[2]["into"], "tool_length");
  EXPECT_EQ(fields[2]["draft"]["body"]["tool_length"], "");
  EXPECT_EQ(fields[2]["draft"]["body"]["shown"], "225 ft·lb");
  EXPECT_EQ(fields[2]["draft"]["corrects"].size(), 1U);
  EXPECT_EQ(fields[2]["before"]["typed"], "4 ft");
}

TEST(Torque, SaysHowFarTheNutShouldTurnAndJudgesWhatWasSeen) {
  SampleJob sample = job_31();
  const auto& stations = sample.shaft().stations();
  const int nut =
      static_cast<int>(std::ranges::find(stations, std::string{"nut A"}, &Station::label) - stations.begin());
  const Plain before = open_sheet(sample, nut, 3);
  EXPECT_FALSE(first(before, "caution").is_null());
  EXPECT_TRUE(says(before["sheet"]["right"], "Turn from snug"));
  EXPECT_TRUE(says(before["sheet"]["right"], "Settling takes"));
  EXPECT_TRUE(says(before["sheet"]["right"], "Assumed: "));
  job::NutPulled pull;
  pull.nut = End::a;
  pull.shown = typed("225 ft·lb", Kind::torque);
  pull.gauge = "TW-1";
  pull.multiplier = 4;
  pull.turned = typed("600°", Kind::angle);
  sample.write(pull);
  sample.write(job::NutPulledAgain{End::a, typed("30°", Kind::angle), "TW-1"});
  const Plain view = view_of(sample.subject(), Stage::torque, nut);
  const auto answers = about_the_nut(view);
  ASSERT_EQ(answers.size(), 3U);
  EXPECT_EQ(answers[0]["sign"], "in") << "the torque itself is in";
  EXPECT_EQ(answers[1]["sign"], "out");
  EXPECT_TRUE(answers[1].contains("bar"));
  EXPECT_TRUE(says(answers[1], "A joint is closing"));
  EXPECT_TRUE(says(answers[1], "Pull no further"));
  EXPECT_EQ(answers[2]["sign"], "out");
  EXPECT_TRUE(says(answers[2], "Something closed or gave way"));
  EXPECT_TRUE(says(view["sheet"]["right"], "Clamps with, by the angle"));
  // The second nut pulls on the same parts.
  const int other =
      static_cast<int>(std::ranges::find(stations, std::string{"nut B"}, &Station::label) - stations.begin());
  EXPECT_TRUE(says(open_sheet(sample, other, 3)["sheet"]["right"], "may have nothing to turn"));
}

// 2026-11-27: a nut pulled on a bar with a spring balance could be told by file and API, and not at the page.
TEST(Torque, TakesAPullOnABarAndItsLength) {
  SampleJob sample = job_31();
  const auto& stations = sample.shaft().stations();
  const int nut =
      static_cast<int>(std::ranges::find(stations, std::string{"nut A"}, &Station::label) - stations.begin());
  const Plain before = first(open_sheet(sample, nut, 3), "keypad")["fields"];
  ASSERT_EQ(before.size(), 5U) << "wrench, bar, and three of one's own tool";
  EXPECT_EQ(before[1]["kind"], "force");
  EXPECT_EQ(before[1]["draft"]["body"]["with"], "bar");
  EXPECT_EQ(before[1]["draft"]["body"]["tool_length"], "4 ft");
  job::NutPulled pull;
  pull.nut = End::a;
  pull.with = TorquePull::With::bar;
  pull.shown = typed("225 lbf", Kind::force);
  pull.gauge = "PG-1";
  pull.tool_length = typed("4 ft", Kind::length);
  sample.write(pull);
  const Plain view = view_of(sample.subject(), Stage::torque, nut);
  // Source: statics by hand: 225 lbf at 4 ft is 900 ft·lb.
  EXPECT_TRUE(says(about_the_nut(view).at(0)["value"], "900"));
  const Plain fields = first(view, "keypad")["fields"];
  ASSERT_EQ(fields.size(), 5U);
  EXPECT_TRUE(fields[0]["said"].empty()) << "what was told of the bar is no reading of the wrench";
  EXPECT_EQ(fields[1]["said"].size(), 1U);
  EXPECT_EQ(fields[2]["label"], "Length of the bar");
  EXPECT_EQ(fields[2]["draft"]["body"]["shown"], "225 lbf");
}

}  // namespace
}  // namespace flatwise::view
