// The bench inspection sheet: a bore on its limit, the keypad that goes from reading to reading, what the wobble does to the
// bearing.
#include <utility>

#include "study/study.h"
#include "tests/support/contract.h"
#include "view/test_job_31.h"
#include "wire/written.h"

namespace flatwise::view {
namespace {

// Source: the demo's file: rotor 3, plane A read 3.9364 to 3.9366 in against 100 N7 (99.955 to 99.990 mm, ISO 286-2).
TEST_F(Job31, CannotTellPlaneAOfRotor3AndDrawsItOnItsLimit) {
  const Plain view = view_of(subject_, Stage::inspection, at_rotor(3));
  const auto answers = blocks_of(view, "answer");
  ASSERT_GE(answers.size(), 2U);
  EXPECT_NE(answers[0]["sign"], "in");
  EXPECT_TRUE(says(answers[0]["word"], "Plane A"));
  EXPECT_TRUE(answers[0].contains("bar"));
  EXPECT_TRUE(answers[0].contains("working"));
  EXPECT_NE(answers[0].value("do", ""), "");
  EXPECT_EQ(answers[1]["sign"], "in");
  const Plain grid = first(view, "grid");
  EXPECT_EQ(grid["rows"][0]["cells"][1]["text"], "3.9366");
  EXPECT_EQ(grid["head"][0], "Plane, in");  // The unit once, over them all.
  EXPECT_TRUE(says(view["sheet"]["foot"], "100 N7"));
  EXPECT_NE(cell(view, at_rotor(3))["word"], "done");
  EXPECT_EQ(cell(view, at_rotor(1))["word"], "done");
}

// Source: the workshop's file: BG-1 is set with a ring of 3.9370 in (invented demo).
// Tolerance: 1e-9 in, the ring goes through nanometres.
TEST_F(Job31, GoesFromReadingToReadingOnTheKeypad) {
  const Plain view = view_of(subject_, Stage::inspection, at_rotor(3));
  const Plain fields = first(view, "keypad")["fields"];
  ASSERT_GE(fields.size(), 10U);
  for (std::size_t i = 0; i + 1 < 8; ++i) EXPECT_EQ(fields[i]["next"], fields[i + 1]["key"]);
  EXPECT_EQ(fields[0]["title"], "Plane A, direction 1");
  EXPECT_EQ(fields[7]["title"], "Plane B, direction 4");
  EXPECT_EQ(fields[3]["marks"], Plain({"plane-A", "direction-4"}));
  EXPECT_EQ(fields[1]["before"]["typed"], "3.9365 in");
  EXPECT_NEAR(fields[0]["reference"]["value"].get<double>(), 3.9370, 1e-9);
}

TEST(Inspection, SaysThatAGaugeIsPastItsDateAndAsksWhoAcceptsIt) {
  SampleJob sample;
  sample.answer(Stage::booking_in);
  sample.take_off(1);
  sample.write(job::BoreRead{1, 'A', 1, 4, typed("3.9358 in", Kind::length), "BG-2"});
  Screen screen = screen_of(UnitSystem::metric);
  screen.stage = Stage::inspection;
  screen.station = sample.shaft().station_of_rotor(1);
  screen.today = {2036, 7, 1};  // BG-2 is in date until 2036-06-30.
  const Plain view = Plain::parse(wire::text_of(bench_view(sample.subject(), screen)));
  EXPECT_EQ(tests::faults_against_contract("BenchView", view), "");
  EXPECT_TRUE(says(view["sheet"]["foot"], "past its date (30 Jun 2036)"));
  EXPECT_TRUE(says(view["sheet"]["foot"], "gauge_accepted"));
}

/// The rows about the bearing on the bench sheet of rotor 4 of a shaft, and what is said under them.
std::pair<Plain, std::string> bearing_on_the_sheet(const std::string& toml) {
  SampleJob sample{toml};
  sample.answer(Stage::booking_in);
  sample.take_off(4);
  const Plain view = view_of(sample.subject(), Stage::inspection, sample.shaft().station_of_rotor(4));
  std::pair<Plain, std::string> found;
  for (const Plain& block : blocks_of(view, "facts"))
    if (says(block, "What the wobble leaves")) found.first = block["rows"];
  for (const Plain& block : blocks_of(view, "text"))
    if (says(block, "Assumed, because the definition")) found.second = block["says"];
  return found;
}

// Source: a study's own path to the bearing (study::outcome_of), whose figure tests/data/bearings_turn.csv holds against scipy.
// Tolerance: none, the same JSON.
TEST(Inspection, SaysWhatTheWobbleDoesToTheBearing) {
  const std::string toml = demo_file("long-nine.toml");
  const auto [rows, note] = bearing_on_the_sheet(toml);
  ASSERT_EQ(rows.size(), 3U);
  const auto outcome = study::outcome_of({.typed = {}, .shaft = *definition::read_shaft(toml, "shaft.toml")});
  ASSERT_TRUE(outcome && outcome->bearing);
  const Voice voice = screen_of(UnitSystem::inch).voice;
  EXPECT_EQ(rows[0]["working"], Plain::parse(wire::text_of(wire::to_json(*outcome->bearing->turn, voice))));
  const study::Beared& bearing = *outcome->bearing;
  EXPECT_EQ(rows[0]["value"], study::figure_text(any(bearing.life.least), voice) + " to " +
                                  study::figure_text(any(bearing.life.greatest), voice));
  EXPECT_TRUE(says(rows[0]["other"], "seasons of 300"));
  EXPECT_NE(note.find("From the ground: 270"), std::string::npos) << note;  // 1.2 kN are 269.8 lbf.
  EXPECT_NE(note.find("Not for release decisions: the bearing maker's catalogue goes first."), std::string::npos);
}

TEST(Inspection, SaysNoLifeOfABearingWhereNoLoadFromTheGroundIsDefined) {
  std::string toml = demo_file("long-nine.toml");
  const std::size_t load = toml.find("[[load]]"), next = toml.find("[minutes]");
  ASSERT_LT(load, next);
  const auto [rows, note] = bearing_on_the_sheet(toml.erase(load, next - load));
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0]["value"], "not known");
  EXPECT_TRUE(says(rows[0]["other"], "State the load from the ground"));
  EXPECT_TRUE(rows[0].contains("working"));
  EXPECT_NE(note.find("No load from the ground is defined"), std::string::npos);
}

TEST(Inspection, SaysWhyTheBearingCannotBeWorkedOut) {
  std::string toml = demo_file("long-nine.toml");
  const auto change = [&](const std::string& was, const std::string& is) {
    toml.replace(toml.find(was), was.size(), is);
  };
  change("speed = \"480 /min\"", "speed = \"6000 /min\"");  // Some 300 kN m on each bearing: no ball stays round.
  change("across = \"0.085 kg·m²\"", "across = \"8.5 kg·m²\"");
  SampleJob sample{toml};
  sample.answer(Stage::booking_in);
  sample.take_off(4);
  const Plain view = view_of(sample.subject(), Stage::inspection, sample.shaft().station_of_rotor(4));
  EXPECT_FALSE(says(view, "What the wobble leaves"));
  EXPECT_TRUE(says(view, "What the wobble does to the bearing of rotor 4 cannot be worked out: "));
}

}  // namespace
}  // namespace flatwise::view
