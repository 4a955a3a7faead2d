// The kit and press sheets: what is missing on the tray, the caution before the press, the band before the force.
#include <set>

#include "view/test_job_31.h"

namespace flatwise::view {
namespace {

TEST_F(Job31, CountsTheTrayAndNamesWhatIsMissing) {
  const Plain full = view_of(subject_, Stage::kit, at_rotor(3));
  EXPECT_TRUE(says(first(full, "answer")["word"], "5 of 5"));
  EXPECT_TRUE(first(full, "drawing")["taps"].empty());
  SampleJob sample;
  sample.answer(Stage::booking_in);
  sample.take_off(2);
  sample.write(job::Laid{1, "set", 1});
  sample.write(job::Laid{1, "seal", 2});
  sample.write(job::Laid{1, "snap_ring", 1});
  const Plain view = view_of(sample.subject(), Stage::kit, sample.shaft().station_of_rotor(1));
  EXPECT_EQ(first(view, "answer")["word"], "4 of 5. Missing: snap ring.");
  const Plain taps = first(view, "drawing")["taps"];
  ASSERT_EQ(taps.size(), 1U);
  EXPECT_EQ(taps[0]["id"], "tray-ring-b");
  EXPECT_EQ(taps[0]["do"]["record"][0]["body"]["count"], 2);
}

// Source: the demo's file: rotor 3 went home at 200 lbf, below what its bore promises; nobody said which ring of rotor 2.
TEST_F(Job31, CautionsBeforeThePressAndSaysTheForceIsLow) {
  const Plain view = view_of(subject_, Stage::press, at_rotor(3));
  // Its bore cannot be told yet: that stands above all, and no force takes it away.
  const Plain& head = view["sheet"]["head"];
  EXPECT_EQ(head[0]["block"], "answer");
  EXPECT_EQ(head.back()["block"], "caution");
  const auto answers = blocks_of(view, "answer");
  ASSERT_GE(answers.size(), 2U);
  const Plain& answer = answers[1];
  EXPECT_TRUE(says(answer["value"], "200"));
  EXPECT_TRUE(answer.contains("bar"));
  EXPECT_TRUE(says(view["sheet"]["right"], "Is the cross in the band? (demo)"));
  EXPECT_TRUE(says(view["sheet"]["right"], "read 200"));
  const Plain two = view_of(subject_, Stage::press, at_rotor(2));
  EXPECT_EQ(first(two, "asks")["questions"][0]["said"].size(), 0U);
  EXPECT_EQ(first(two, "asks")["questions"][0]["choices"].size(), 3U);
  EXPECT_TRUE(says(two["sheet"]["foot"], "nobody said which ring"));
  EXPECT_EQ(cell(two, at_rotor(2))["word"], "say");
}

TEST(Press, ShowsTheBandBeforeTheForceIsRead) {
  SampleJob sample;
  sample.answer(Stage::booking_in);
  sample.take_off(1);
  sample.write(job::SetRenewed{1, Reply::yes});
  const int station = sample.shaft().station_of_rotor(1);
  EXPECT_TRUE(says(view_of(sample.subject(), Stage::press, station)["sheet"], "not gauged yet"));
  for (const char plane : {'A', 'B'})
    for (int d = 1; d <= 4; ++d) sample.write(job::BoreRead{1, plane, d, 4, typed("3.9358 in", Kind::length), "BG-1"});
  const Plain view = view_of(sample.subject(), Stage::press, station);
  const Plain facts = first(view, "facts");
  EXPECT_EQ(facts["rows"][0]["caption"], "Expected force");
  EXPECT_EQ(facts["rows"][0]["working"]["figure"], "press-force");
  EXPECT_TRUE(says(view["sheet"]["right"], "How much force, how far in?"));
  EXPECT_TRUE(says(view["sheet"]["right"], "It grips after a lead of"));
  EXPECT_TRUE(says(view, "press.not_read") || says(view["sheet"], "no press force was read"));
  // The force over the way in: a field a stop, and then what the points say.
  EXPECT_EQ(first(view, "keypad")["fields"].size(), 1U);
  const Plain typing = view_of(sample.subject(), Stage::press, station, UnitSystem::inch, End::a, 1);
  const Plain fields = first(typing, "keypad")["fields"];
  ASSERT_EQ(fields.size(), 5U);
  EXPECT_EQ(fields[0]["draft"]["body"]["kind"], "press_point_read");
  EXPECT_EQ(fields[0]["draft"]["body"]["travel"], "1/4 in");
  EXPECT_EQ(fields[0]["into"], "force");
  EXPECT_EQ(fields[0]["next"], fields[1]["key"]);
  const char* travels[] = {"1/4 in", "7/16 in", "9/16 in", "3/4 in", "7/8 in"};
  for (int point = 1; point <= 5; ++point)
    sample.write(job::PressPointRead{1, point, typed(travels[point - 1], Kind::length),
                                     typed(std::to_string(20'000 * point) + " lbf", Kind::force), "PG-1"});
  const Plain told = view_of(sample.subject(), Stage::press, station);
  EXPECT_TRUE(says(told["sheet"]["right"], "Above the band"));
  EXPECT_TRUE(says(told["sheet"]["right"], "tight by the curve"));
  EXPECT_TRUE(says(told["sheet"]["right"], "Are the crosses in the band?"));
}

TEST_F(Job31, SaysFromWhatFitARingCannotCreep) {
  const Plain view = view_of(subject_, Stage::press, at_rotor(2));
  std::set<std::string> figures;
  for (const Plain& block : blocks_of(view, "facts"))
    for (const Plain& row : block["rows"])
      if (row.contains("working")) figures.insert(row["working"]["figure"].get<std::string>());
  EXPECT_TRUE(figures.contains("creep-load")) << view["sheet"];
  EXPECT_TRUE(figures.contains("fitted-clearance"));
  EXPECT_FALSE(figures.contains("hub-yielding")) << "its hub stays elastic";
}

}  // namespace
}  // namespace flatwise::view
