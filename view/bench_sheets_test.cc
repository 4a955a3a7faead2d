// The sheets from bench inspection to release, on the demo's job 31: against the contract at every station, and the sentences
// of the test run and the release that follow from its six mistakes.
#include <regex>
#include <set>

#include "job/release.h"
#include "tests/support/contract.h"
#include "view/test_job_31.h"

namespace flatwise::view {
namespace {

void collect_drafts(const Plain& json, std::vector<Plain>& out) {
  if (json.is_object() && json.contains("body") && json.contains("corrects")) return out.push_back(json);
  if (json.is_structured())
    for (const Plain& item : json) collect_drafts(item, out);
}

constexpr Stage kMine[] = {Stage::inspection, Stage::kit,    Stage::press,    Stage::timing,
                           Stage::stack,      Stage::torque, Stage::test_run, Stage::release};

/// Stations up to rotor 5: every kind but the pulley, rotors that came off and one that stayed.
constexpr int kHalfRow = 13;

TEST_F(Job31, KeepsTheContractAtEveryStationInBothUnitsFromBothEnds) {
  for (const Stage stage : kMine)
    for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric})
      for (const End from : {End::a, End::b})
        for (int i = 0; i < static_cast<int>(sample_.shaft().stations().size()); ++i) {
          if (from == End::b && stage != Stage::timing) continue;      // Only the end view turns with the mechanic.
          if (units == UnitSystem::metric && i >= kHalfRow) continue;  // Every kind stands before it.
          const Plain view = view_of(subject_, stage, i, units, from);
          EXPECT_NE(view["sheet"]["title"], "");
          // A sheet is empty only while a question of the yellow band shuts it.
          EXPECT_EQ(blocks_of(view).empty(), view["sheet"].contains("shut")) << job::stage_name(stage) << ' ' << i;
        }
}

TEST_F(Job31, DrawsEveryPlaceThatCanBeTapped) {
  for (const Stage stage : kMine)
    for (int i = 0; i < kHalfRow; ++i) {
      const Plain view = view_of(subject_, stage, i);
      std::set<std::string> fields;
      for (const Plain& keypad : blocks_of(view, "keypad")) {
        for (const Plain& field : keypad["fields"])
          EXPECT_TRUE(fields.insert(field["key"].get<std::string>()).second) << field["key"];
        EXPECT_TRUE(!keypad.contains("first") || fields.contains(keypad["first"].get<std::string>()));
        for (const Plain& field : keypad["fields"])
          EXPECT_TRUE(!field.contains("next") || fields.contains(field["next"].get<std::string>())) << field.dump();
      }
      for (const Plain& drawing : blocks_of(view, "drawing")) {
        std::set<std::string> ids;
        collect_ids(drawing["list"], ids);
        for (const Plain& tap : drawing["taps"]) {
          EXPECT_TRUE(ids.contains(tap["id"].get<std::string>())) << tap["id"];
          EXPECT_TRUE(!tap.contains("field") || fields.contains(tap["field"].get<std::string>())) << tap.dump();
        }
      }
    }
}

TEST_F(Job31, EveryDraftCorrectsJustTheLiveAnswersOfItsQuestion) {
  std::set<std::string> known;
  for (const job::Entry& e : subject_.job.entries) known.insert(e.id);
  int some = 0;
  for (const Stage stage : kMine) {
    std::vector<Plain> drafts;
    collect_drafts(view_of(subject_, stage, at_rotor(4)), drafts);
    EXPECT_FALSE(drafts.empty());
    for (const Plain& draft : drafts)
      for (const Plain& id : draft["corrects"]) {
        EXPECT_TRUE(known.contains(id.get<std::string>()));
        EXPECT_FALSE(subject_.job.state.corrected_by.contains(id.get<std::string>()));
        ++some;
      }
  }
  EXPECT_GT(some, 20);
}

TEST(TestRun, DrawsTheHangersAboveTheRoom) {
  SampleJob sample = job_31();
  sample.write(job::Answered{"guards_on", 0, Reply::yes});
  sample.write(job::RunRead{job::RunQuantity::room, 0, typed("57 °F", Kind::temperature), "TH-1"});
  const auto& stations = sample.shaft().stations();
  const int hanger =
      static_cast<int>(std::ranges::find(stations, StationKind::hanger, &Station::kind) - stations.begin());
  sample.write(job::RunRead{job::RunQuantity::hanger, hanger + 1, typed("104 °F", Kind::temperature), "TH-1"});
  const Plain view = view_of(sample.subject(), Stage::test_run, hanger);
  EXPECT_TRUE(says(view["sheet"]["left"], "47"));  // 104 - 57.
  EXPECT_EQ(first(view, "keypad")["first"], "run_read/hanger/" + std::to_string(hanger + 1));
  EXPECT_TRUE(says(view["sheet"]["foot"], "Nut A checked again"));
}

// 2026-11-27: the tear-down asked for labels and the timing map, and neither could be printed before the release.
TEST_F(Job31, HasThePapersOfAStageAtTheStage) {
  const std::vector<std::pair<Stage, std::string>> wanted{{Stage::plan, "kit"},           {Stage::plan, "quote"},
                                                          {Stage::teardown, "tear-down"}, {Stage::teardown, "labels"},
                                                          {Stage::inspection, "bench"},   {Stage::kit, "kit"},
                                                          {Stage::timing, "timing-map"},  {Stage::stack, "assembly"},
                                                          {Stage::release, "hand-over"},  {Stage::release, "assembly"}};
  for (const auto& [stage, sheet] : wanted)
    EXPECT_TRUE(says(view_of(subject_, stage, 5)["sheet"], "/sheets/" + sheet + "\""))
        << job::stage_name(stage) << " " << sheet;
  EXPECT_FALSE(says(view_of(subject_, Stage::press, 5)["sheet"], "/sheets/"));
}

TEST_F(Job31, BlocksTheReleaseAndSaysWhoLiftsWhat) {
  const Plain view = view_of(subject_, Stage::release, 0);
  const Plain standing = first(view, "standing");
  EXPECT_FALSE(standing["complete"]);
  EXPECT_EQ(standing["rows"].size(), subject_.standing.blocks.size());
  EXPECT_TRUE(says(standing["head"], std::to_string(subject_.standing.blocks.size()) + " open things"));
  for (const Plain& row : standing["rows"]) EXPECT_NE(row["lifted_by"], "");
  EXPECT_EQ(standing["force"]["into"], "reason");
  EXPECT_EQ(standing["force"]["draft"]["body"]["forced"], true);
  for (const Plain& row : standing["rows"])  // The part stands in its own column.
    EXPECT_FALSE(row["what"].get<std::string>().starts_with(row["part"].get<std::string>() + ":")) << row["what"];
  for (const Plain& row : standing["rows"]) {  // 2026-11-27: "Rotor 4" alone, and "From end A. Turn half B".
    EXPECT_FALSE(std::regex_match(row["what"].get<std::string>(), std::regex{"(Rotor \\d+|From end [AB])\\.?"})) << row;
    EXPECT_FALSE(says(row["detail"], "From end A. ")) << row;
  }
  Subject by_owner = subject_;
  by_owner.roles = {{sample_id(900'001), job::Role::owner}};  // Who may not lift it sees 'Ask'.
  EXPECT_EQ(first(view_of(by_owner, Stage::release, 0), "standing")["rows"][0]["action"]["label"], "Ask");
  by_owner.roles = {{sample_id(900'001), job::Role::lead}};  // The lead stands in at the bench.
  EXPECT_EQ(first(view_of(by_owner, Stage::release, 0), "standing")["rows"][0]["action"]["label"], "Do it now");
  const Plain rows = first(view, "signatures")["rows"];
  ASSERT_EQ(rows.size(), 3U);
  for (const Plain& row : rows) EXPECT_NE(row["action"].value("blocked", ""), "");  // Nobody signs for what is open.
  EXPECT_EQ(first(view, "log")["entries"].size(), subject_.job.entries.size());
  EXPECT_TRUE(says(view["sheet"]["right"], "/sheets/hand-over"));
}

// 2026-11-27: the paper said when it is due although nobody read the meter, and the page said nothing.
TEST(Release, SaysWhenItIsDueAlsoWhereNobodyReadTheMeter) {
  SampleJob sample;
  const job::Entry first = sample.subject().job.entries.front();
  job::BookedIn without = std::get<job::BookedIn>(first.body);
  without.hour_meter.reset();
  sample.write(without, 1, {first.id});
  const Plain view = view_of(sample.subject(), Stage::release, 0);
  EXPECT_TRUE(says(view["sheet"]["right"], "Next due")) << view["sheet"]["right"];
  EXPECT_TRUE(says(view["sheet"]["right"], "The hour meter was not read at this job"));
}

// A refused correction said why and what to do; the sheet itself did not.
TEST(Release, SaysWhatMayStillBeWrittenOnceItIsReleased) {
  SampleJob sample;
  EXPECT_FALSE(says(view_of(sample.subject(), Stage::release, 0)["sheet"], "Write a note: it prints under"));
  sample.write(job::Released{true, "goes out as it is"}, 1);
  EXPECT_TRUE(says(view_of(sample.subject(), Stage::release, 0)["sheet"], "Write a note: it prints under"));
}

// 2026-11-27: 'sign it: owner' stood at the foot without a key, and nothing asked the owner.
TEST_F(Job31, TheFootSignsOrAsksWhoMayOnceOnlySignaturesAreOpen) {
  job::Standing only = subject_.standing;
  std::erase_if(only.blocks, [](const job::Block& b) { return !job::is_of_signature(b); });
  ASSERT_EQ(only.blocks.size(), 3U);
  only.next = {{Code{"job.sign"}, {{"role", Word{"role.bench"}}}}, {}, Stage::release, {}, {}};
  const Subject near{.job = subject_.job,
                     .standing = only,
                     .row = subject_.row,
                     .people = subject_.people,
                     .machine = subject_.machine,
                     .customer = subject_.customer};
  const auto key = [](const Subject& subject) {
    return view_of(subject, Stage::release, 0)["next"].value("action", Plain{});
  };
  EXPECT_EQ(key(near)["label"], "Bench signs");
  EXPECT_EQ(key(near)["do"]["record"][0]["body"]["kind"], "signed");
  Subject by_owner = near;
  by_owner.roles = {{sample_id(900'001), job::Role::owner}};
  EXPECT_EQ(key(by_owner)["label"], "Ask: bench");
  EXPECT_EQ(key(by_owner)["do"]["go"]["page"], "people");
  const Plain view = view_of(by_owner, Stage::release, 0);
  EXPECT_EQ(first(view, "standing")["rows"][0]["action"]["label"], "Ask: bench");
  const std::string elsewhere = key(subject_)["label"];  // While other things are open the line leads there.
  EXPECT_TRUE(elsewhere.starts_with("Go to")) << elsewhere;
}

}  // namespace
}  // namespace flatwise::view
