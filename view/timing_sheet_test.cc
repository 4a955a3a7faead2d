// The timing sheet on job 31: what a half out of time reads like, and what is kept from a tired eye.
#include "view/test_job_31.h"

namespace flatwise::view {
namespace {

// Source: the demo's file: rotor 4 has half A on 4 and half B on 2; facing rotor 5, which stayed, half B belongs on 1.
// The kink of one flat of six at 5° is 5.0°, and 30 times the 10' that the bearing allows: sin(γ/2) = sin 5° sin 30°.
TEST_F(Job31, SaysThatHalfBOfRotor4IsOneFlatOut) {
  const Plain view = view_of(subject_, Stage::timing, at_rotor(4));
  EXPECT_EQ(view["sheet"]["title"], "Rotor 4, marks as read");
  const Plain answer = first(view, "answer");
  EXPECT_EQ(answer["sign"], "stopped");
  EXPECT_EQ(answer["word"], "Half B is one flat out.");
  EXPECT_TRUE(says(answer["says"], "on flat 2, wanted 1"));
  EXPECT_TRUE(says(answer["do"], "from flat 2 to flat 1"));
  const Plain working = first(view, "working");
  EXPECT_TRUE(working["open"]);
  EXPECT_EQ(working["working"]["figure"], "kink");
  EXPECT_TRUE(says(working, "5°"));
  const Plain table = first(view, "table");
  ASSERT_EQ(table["rows"].size(), 2U);
  EXPECT_EQ(table["rows"][0]["cells"][0]["text"], "A");
  EXPECT_EQ(table["rows"][0]["cells"][3]["text"], "right");
  EXPECT_EQ(table["rows"][1]["cells"][1]["text"], "2");
  EXPECT_EQ(table["rows"][1]["cells"][2]["text"], "1");
  EXPECT_EQ(table["rows"][1]["cells"][3]["text"], "out");
  EXPECT_EQ(cell(view, at_rotor(4))["sub"], "4 · 2");
  EXPECT_EQ(cell(view, at_rotor(4))["word"], "stop");
  EXPECT_EQ(cell(view, at_rotor(4))["flag"], "stopped");
  EXPECT_EQ(cell(view, at_rotor(3))["word"], "done");
}

TEST_F(Job31, TurnsTheHalfNearestTheEyeAndMirrorsTheKeys) {
  const Plain a = view_of(subject_, Stage::timing, at_rotor(4), UnitSystem::inch, End::a);
  const Plain b = view_of(subject_, Stage::timing, at_rotor(4), UnitSystem::inch, End::b);
  EXPECT_TRUE(says(a, "Half B is on the side of end B"));
  EXPECT_FALSE(says(b, "is on the side of"));
  // 2026-11-27: with end B chosen the words still said the way from end A, against the arrow.
  EXPECT_EQ(first(a, "answer")["do"],
            "Turn half B of rotor 4 by one flat, counter-clockwise seen from end A, from flat 2 to flat 1.");
  EXPECT_EQ(first(b, "answer")["do"],
            "Turn half B of rotor 4 by one flat, clockwise seen from end B, from flat 2 to flat 1.");
  EXPECT_FALSE(says(first(b, "answer"), "seen from end A"));
  const auto keys = [](const Plain& view) { return first(view, "actions")["actions"]; };
  // From end B flats count the other way round: one flat on from 2 is flat 1, and that is the one wanted.
  EXPECT_EQ(keys(b)[1]["do"]["record"][0]["body"]["half"], "b");
  EXPECT_EQ(keys(b)[1]["do"]["record"][0]["body"]["flat"], 1);
  EXPECT_EQ(keys(b)[1]["tone"], "next");
  EXPECT_EQ(keys(b)[0]["do"]["record"][0]["body"]["flat"], 3);
  EXPECT_EQ(keys(a)[1]["do"]["record"][0]["body"]["half"], "a");
  EXPECT_EQ(keys(a)[1]["do"]["record"][0]["body"]["flat"], 5);
  const Plain taps = first(b, "drawing")["taps"];
  ASSERT_EQ(taps.size(), 6U);
  EXPECT_EQ(taps[0]["do"]["record"][0]["body"]["half"], "b");
  EXPECT_EQ(first(b, "table")["rows"][0]["cells"][0]["text"], "B");
}

// 2026-11-27: both marks read, the pair one flat out, and the head said 'Not known yet' with a question mark.
TEST(Timing, APairThatIsOutIsAStopBeforeItIsKnownWhichHalfTurns) {
  SampleJob sample;
  sample.answer(Stage::booking_in);
  sample.take_off(4);
  sample.marks(1, 1, 5);
  const Plain view = view_of(sample.subject(), Stage::timing, sample.shaft().station_of_rotor(1));
  const Plain answer = first(view, "answer");
  EXPECT_EQ(answer["sign"], "stopped");
  EXPECT_EQ(answer["word"], "The pair is one flat out.");
  EXPECT_TRUE(says(answer["do"], "Read the marks of rotors 2, 3")) << answer;
  const Plain table = first(view, "table");
  ASSERT_EQ(table["rows"].size(), 2U);
  for (const Plain& row : table["rows"]) {
    EXPECT_EQ(row["cells"][3]["text"], "one of the two");
    EXPECT_EQ(row["cells"][3]["flag"], "stopped");
  }
}

// A tired eye reads what it expects: the wanted flat must not be on the sheet, in no form, until both halves are read.
TEST(Timing, HidesTheWantedFlatUntilBothHalvesAreRead) {
  SampleJob sample;
  sample.answer(Stage::booking_in);
  sample.take_off(4);
  for (int r = 1; r <= 9; ++r)
    if (r != 4) sample.marks(r, r % 2 == 1 ? 1 : 4, r % 2 == 1 ? 4 : 1);
  const int station = sample.shaft().station_of_rotor(4);
  for (int read = 0; read < 3; ++read) {
    if (read == 1) sample.write(job::MarkSeen{4, Half::a, 4});
    if (read == 2) sample.write(job::MarkSeen{4, Half::b, 1});
    const Plain view = view_of(sample.subject(), Stage::timing, station);
    const Plain table = first(view, "table");
    EXPECT_EQ(table["head"].size(), read == 2 ? 4U : 2U);
    for (const Plain& row : table["rows"]) EXPECT_EQ(row["cells"].size(), read == 2 ? 4U : 2U);
    const bool blue = std::ranges::any_of(first(view, "drawing")["list"]["items"], [](const Plain& item) {
      return item.contains("stroke") && item["stroke"] == "wanted";
    });
    EXPECT_FALSE(blue);
    EXPECT_EQ(says(view["sheet"], "wanted 1") || says(view["sheet"], "to flat 1"), false) << read;
    const char* half = read == 0   ? "a"
                       : read == 1 ? "b"
                                   : "a";  // Near half first, then the far one, then the near one.
    EXPECT_EQ(first(view, "drawing")["taps"][0]["do"]["record"][0]["body"]["half"], half) << read;
  }
}

}  // namespace
}  // namespace flatwise::view
