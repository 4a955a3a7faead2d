// The board, the page of a machine and the check of a definition against the contract.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/support/contract.h"
#include "view/board.h"
#include "view/machine_view.h"
#include "view/shaft_check.h"
#include "view/view_samples.h"
#include "wire/written.h"

namespace flatwise::view {
namespace {

using tests::faults_against_contract;

nlohmann::json plain(const Json& json) { return nlohmann::json::parse(wire::text_of(json)); }
void leave(const std::string& name, const nlohmann::json& json) {
  if (const char* folder = std::getenv("FLATWISE_LOOK"))
    std::ofstream{std::string{folder} + "/" + name} << json.dump(1);
}
const Voice kInch{.language = Language::english, .units = UnitSystem::inch, .currency = "GBP"};

// How far apart the letters A and B of a strip stand tells its scale: one scale for all shafts.
double drawn_width(const nlohmann::json& row) { return row["strip"]["width"]; }

// Source: the two demo definitions: their lengths drawn must have the ratio of their stacks.
// Tolerance: said beside the comparison; thread beyond the nuts is part of both.
TEST(BoardView, TheWorstComesFirstAndAllShaftsHaveOneScale) {
  SampleJob calm;
  calm.answer(job::Stage::booking_in);
  SampleJob stopped{demo_file("short-three.toml")};
  stopped.answer(job::Stage::booking_in, Reply::no);
  const Subject& a = calm.subject();
  const Subject& b = stopped.subject();
  const std::vector<BoardJob> jobs{{a.job, a.standing, a.row, "Looseners 2", "Lower fields"},
                                   {b.job, b.standing, b.row, "Looseners 5", ""}};
  const nlohmann::json json = plain(board_view(a.job.workshop, jobs, Day{2026, 2, 13}, kInch));
  EXPECT_EQ(faults_against_contract("Board", json), "");
  leave("board.json", json);
  ASSERT_EQ(json["rows"].size(), 2U);
  EXPECT_EQ(json["rows"][0]["name"], "Looseners 5");
  EXPECT_EQ(json["rows"][0]["flag"], "stopped");
  EXPECT_EQ(json["rows"][1]["late"], true);  // Due on the 12th.
  // Thread beyond the nuts is part of both, so the ratio is near that of the stacks, not the same.
  const double ratio = (drawn_width(json["rows"][0]) - 16) / (drawn_width(json["rows"][1]) - 16);
  const double wanted = b.job.shaft.total_length().si() / a.job.shaft.total_length().si();
  EXPECT_NEAR(ratio, wanted, 0.03);
}

// 2026-11-27: a reading that was wrong stayed "Hour meter 999999 h" and nobody could say who had read it.
TEST(MachineView, ACorrectedReadingIsShownAndCountsNoMore) {
  SampleJob sample;
  const Subject& subject = sample.subject();
  const job::Machine machine{sample_id(1), sample_id(2), "Looseners 2", sample_id(3), true};
  const std::vector<job::HourReading> hours{
      {sample_id(4), machine.id, {2026, 2, 3}, 999'999, "", sample_id(9), "", {10}},
      {sample_id(5), machine.id, {2026, 2, 3}, 2421.2, "misread", sample_id(9), sample_id(4), {20}}};
  const MachineSubject is{machine, "", subject.job.shaft,        subject.job.workshop, hours,
                          {},      {}, {{sample_id(9), "Bench"}}};
  const nlohmann::json json = plain(machine_view(is, kInch));
  EXPECT_EQ(faults_against_contract("MachineView", json), "");
  EXPECT_EQ(json["facts"].dump().find("999999"), std::string::npos);
  EXPECT_NE(json["facts"].dump().find("2421"), std::string::npos);
  ASSERT_EQ(json["readings"].size(), 2U);
  EXPECT_EQ(json["readings"][0]["id"], sample_id(5));
  EXPECT_EQ(json["readings"][0]["by"], "Bench");
  EXPECT_EQ(json["readings"][0]["note"], "misread");
  EXPECT_FALSE(json["readings"][0]["corrected"]);
  EXPECT_EQ(json["readings"][1]["id"], sample_id(4));
  EXPECT_TRUE(json["readings"][1]["corrected"]);
}

TEST(MachineView, TheHoursOnEveryBearingHangUnderTheirRotors) {
  SampleJob sample;
  const Subject& subject = sample.subject();
  job::Machine machine{sample_id(1), sample_id(2), "Looseners 2", sample_id(3), true};
  std::vector<job::HourReading> hours{{sample_id(4), machine.id, {2026, 2, 3}, 2421.2, ""},
                                      {sample_id(5), machine.id, {2023, 3, 20}, 1312.4, "record begins"},
                                      {sample_id(6), machine.id, {2025, 5, 4}, 2112.0, "job"}};
  std::vector<job::BearingLife> lives{{machine.id, 1, 1312.4, std::nullopt, false, {}},
                                      {machine.id, 5, 1312.4, 2112.0, true, {}},
                                      {machine.id, 5, 2112.0, std::nullopt, false, {}}};
  std::vector<job::JobRow> jobs{subject.row};
  jobs[0].booked = {1'770'105'600'000};  // 3 February 2026
  const MachineSubject is{machine, "Lower fields", subject.job.shaft, subject.job.workshop, hours, lives, jobs};
  const nlohmann::json json = plain(machine_view(is, kInch));
  EXPECT_EQ(faults_against_contract("MachineView", json), "");
  leave("machine.json", json);
  const int one = sample.shaft().station_of_rotor(1);
  EXPECT_EQ(json["stations"][static_cast<std::size_t>(one)]["sub"], "1109");  // 2421.2 - 1312.4
  EXPECT_EQ(json["stations"][static_cast<std::size_t>(one)]["chosen"], true);
  EXPECT_EQ(json["stations"][static_cast<std::size_t>(sample.shaft().station_of_rotor(5))]["sub"], "309");
  ASSERT_EQ(json["jobs"].size(), 2U);
  EXPECT_EQ(json["jobs"][0]["number"], "31");
  EXPECT_EQ(json["jobs"][0]["says"], "Open: no set renewed yet.");
  EXPECT_TRUE(json["jobs"][1]["job"].is_null());     // By the log alone.
  const std::string blocks = json["blocks"].dump();  // Of the oldest bearing: what it may be expected to bear.
  EXPECT_NE(blocks.find("What the wobble leaves the bearing of rotor 1"), std::string::npos);
  EXPECT_NE(blocks.find("Not for release decisions"), std::string::npos);
}

TEST(MachineView, AMachineNobodyKnowsAnythingOfIsStillAPage) {
  SampleJob sample;
  const Subject& subject = sample.subject();
  const job::Machine machine{sample_id(1), sample_id(2), "New", sample_id(3), false};
  const MachineSubject is{machine, "", subject.job.shaft, subject.job.workshop, {}, {}, {}};
  EXPECT_EQ(faults_against_contract("MachineView", plain(machine_view(is, kInch))), "");
}

TEST(ShaftCheck, TheFiveLinesToChangeAreFoundAndSayHowTheyStand) {
  const std::string toml = demo_file("long-nine.toml");
  std::string changed = toml;
  const std::string spacer = "spacer = \"92 mm\"";
  changed.replace(changed.find(spacer), spacer.size(), "spacer = \"92\"");
  const std::string name = "Looseners 2, long nine";
  changed.replace(changed.find(name), name.size(), "Row looseners");
  const nlohmann::json json = plain(shaft_check(changed, toml, kInch));
  EXPECT_EQ(faults_against_contract("ShaftCheck", json), "");
  leave("shaft-wrong.json", json);
  EXPECT_FALSE(json.contains("strip"));
  ASSERT_FALSE(json["problems"].empty());
  std::map<int, std::string> states;
  for (const nlohmann::json& line : json["lines"]) states[line["number"]] = line["state"];
  const std::map<int, std::string> wanted{
      {1, "done"}, {2, "as_copied"}, {3, "as_copied"}, {4, "wrong"}, {5, "as_copied"}};
  EXPECT_EQ(states, wanted);
  // What stands in them is told beside the drawing, by the field's own name.
  std::map<std::string, std::string> five;
  for (const nlohmann::json& line : json["lines"]) five[line["key"]] = line["value"];
  EXPECT_EQ(five["name"], "Row looseners");
  EXPECT_EQ(five["spacer"], "92");
  EXPECT_EQ(five["repeat"], "5");  // Of the first of its two lines.
}

// 2026-11-27: of two equal keys one said what would follow and the other nothing: 92 in is over what a spacer may be.
TEST(ShaftCheck, AMendThatWouldBeRefusedSaysWhatIsAllowed) {
  std::string toml = demo_file("long-nine.toml");
  const std::string was = "spacer = \"92 mm\"";
  toml.replace(toml.find(was), was.size(), "spacer = 92");
  const nlohmann::json json = plain(shaft_check(toml, {}, kInch));
  ASSERT_EQ(json["mends"].size(), 2U);
  for (const nlohmann::json& mend : json["mends"]) EXPECT_NE(mend.value("says", ""), "") << mend;
  EXPECT_NE(json["mends"][1]["says"].get<std::string>().find("Allowed"), std::string::npos) << json["mends"][1];
}

// Source: figures couple-resultant and tine-gap of the same shaft, by the study of it.
TEST(ShaftCheck, SaysWhatFollowsAndWhatNobodyGave) {
  const nlohmann::json json = plain(shaft_check(demo_file("long-nine.toml"), "", kInch));
  EXPECT_EQ(faults_against_contract("ShaftCheck", json), "");
  const auto fact = [&](std::string_view caption) {
    for (const nlohmann::json& one : json["facts"])
      if (one["caption"] == caption) return one;
    return nlohmann::json{};
  };
  EXPECT_EQ(fact("Couple left over")["working"]["figure"], "couple-resultant");  // Nine facing: one couple is left.
  EXPECT_EQ(fact("Tine gap, least")["working"]["figure"], "tine-gap");
  EXPECT_NE(fact("Turns at a hanger").value("value", ""), "");
  EXPECT_FALSE(json["end_view"]["list"]["items"].empty());
  const auto assumed = std::ranges::count_if(json["assumed"], [](const nlohmann::json& one) {
    return one["caption"] != "" && one["value"] != "" && one["why"] != "";
  });
  EXPECT_EQ(static_cast<std::size_t>(assumed), json["assumed"].size());
  EXPECT_GT(assumed, 5);
}

TEST(ShaftCheck, AGoodDefinitionIsDrawnWithItsParts) {
  const nlohmann::json json = plain(shaft_check(demo_file("square-four.toml"), "", kInch));
  EXPECT_EQ(faults_against_contract("ShaftCheck", json), "");
  leave("shaft-good.json", json);
  EXPECT_TRUE(json["problems"].empty());
  ASSERT_TRUE(json.contains("strip"));
  int rotors = 0;
  for (const nlohmann::json& station : json["strip"]["stations"]) rotors += station["kind"] == "rotor" ? 1 : 0;
  EXPECT_EQ(rotors, 4);
}

TEST(ShaftCheck, AFigureWithoutUnitHasEqualMendsAndSaysWhatFollows) {
  std::string toml = demo_file("long-nine.toml");
  const std::string was = "spacer = \"92 mm\"";
  toml.replace(toml.find(was), was.size(), "spacer = 92");
  const nlohmann::json json = plain(shaft_check(toml, {}, screen_of(UnitSystem::inch).voice));
  EXPECT_EQ(faults_against_contract("ShaftCheck", json), "");
  ASSERT_EQ(json["mends"].size(), 2U);
  EXPECT_EQ(json["mends"][0]["label"], "\"92 mm\"");
  EXPECT_EQ(json["mends"][0]["text"].get<std::string>().substr(0, was.size()), was);
  // Each mend gives a text that is read: with it the problem is gone.
  EXPECT_NE(json["mends"][0].value("says", ""), json["mends"][1].value("says", ""));
}

// Source: the definition itself: the line of a field is where its text stands, and what hangs on it is what it describes.
TEST(ShaftCheck, SaysWhichPartsHangOnALine) {
  const std::string toml = demo_file("short-three.toml");
  const nlohmann::json json = plain(shaft_check(toml, "", kInch));
  const auto hang_on = [&](std::string_view text) {
    const auto line = 1 + std::count(toml.begin(), toml.begin() + static_cast<std::ptrdiff_t>(toml.find(text)), '\n');
    std::vector<std::string> names;
    for (const nlohmann::json& one : json["hangs"])
      if (one["line"] == line)
        for (const std::size_t station : one["stations"]) names.push_back(json["strip"]["stations"][station]["name"]);
    return names;
  };
  EXPECT_EQ(hang_on("spacer = \"92 mm\""), (std::vector<std::string>{"S2", "S3"}));
  EXPECT_EQ(hang_on("lean = "), (std::vector<std::string>{"1", "2", "3"}));
  EXPECT_EQ(hang_on("{ hanger = \"31 mm\""), (std::vector<std::string>{"hanger A"}));
  EXPECT_EQ(hang_on("torque = "), (std::vector<std::string>{"nut A", "nut B"}));
  EXPECT_TRUE(hang_on("travel = ").empty());
}

TEST(ShaftCheck, NoTextMakesItStumble) {
  for (const char* text : {"", "[", "[shaft]\nname = ", "\xff\xfe", "repeat = 9", "[stack]\nrepeat"})
    EXPECT_EQ(faults_against_contract("ShaftCheck", plain(shaft_check(text, text, kInch))), "") << text;
}

}  // namespace
}  // namespace flatwise::view
