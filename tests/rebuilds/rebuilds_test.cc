// The catch rate as a test: a few hundred rebuilds keep every promise; and each check, broken on purpose, takes down the rows
// that it holds up and no other.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "tests/rebuilds/simulate.h"

namespace rebuilds {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::string all_of(const std::filesystem::path& path) {
  std::ostringstream out;
  out << std::ifstream{path}.rdbuf();
  return out.str();
}

// Enough for every kind to be put in a few times (41 kinds, seven in ten).
constexpr int kFew = 300;

/// The program is asked once; what it said is then counted whole, or as if a check were broken.
struct Said {
  Rebuild rebuild;
  AllTold told;
};
const std::vector<Said>& everything_said() {
  static const std::vector<Said> kSaid = [] {
    std::vector<Said> all;
    for (int seed = 1; seed <= kFew; ++seed) {
      Rebuild r = make_rebuild(static_cast<unsigned long long>(seed));
      AllTold told = said_of(r);
      all.push_back({std::move(r), std::move(told)});
    }
    return all;
  }();
  return kSaid;
}

Tally counted(const Break& broken) {
  Tally tally;
  for (const Said& s : everything_said())
    if (broken.what.empty() ||
        s.rebuild.mistakes.size() < 2)  // Where there are several, one check may hold up two rows.
      tally.add(s.rebuild, compare(s.rebuild, broken_by(broken, s.told)));
  return tally;
}

std::vector<std::string> fallen(const char* broken) { return fallen_rows(counted(read_break(broken))); }

// Source: the promise itself, docs/catch-rate.md. Tolerance: chance once in a million (Bernstein's inequality); none for what
// is known for certain.
TEST(CatchRate, EveryPromiseIsKeptOnAFewHundredRebuilds) {
  const Tally tally = counted({});
  EXPECT_THAT(broken_promises(tally), IsEmpty());
  EXPECT_THAT(tally.misses, IsEmpty());
  for (int i = 0; i < kKinds; ++i)
    EXPECT_GT(tally.rows[static_cast<std::size_t>(i)].put_in, 2) << row_of(static_cast<Kind>(i)).name;
  EXPECT_EQ(tally.mends, tally.mends_right);
  EXPECT_GT(tally.mends, 20);
}

TEST(CatchRate, ABrokenCheckTakesDownItsRowAndNoOther) {
  EXPECT_THAT(fallen("kit.wrong_bearing"), ElementsAre("wrong_bearing"));
  EXPECT_THAT(fallen("press.inner_ring"), ElementsAre("inner_ring"));
  EXPECT_THAT(fallen("stack.spacer_without_label"), ElementsAre("spacer_without_label"));
  EXPECT_THAT(fallen("question.bearing_greased"), ElementsAre("grease_forgotten"));
  EXPECT_THAT(fallen("torque.nut_not_pulled"), ElementsAre("nut_not_torqued"));
  EXPECT_THAT(fallen("timing.mirrored"), ElementsAre("mirrored"));
  EXPECT_THAT(fallen("job.run_too_short"), ElementsAre("run_cut_short"));
  EXPECT_THAT(fallen("job.run_vibration_not_read"), ElementsAre("run_not_read"));
}

TEST(CatchRate, ABrokenCheckOfAGaugeTakesDownItsRow) {
  EXPECT_THAT(fallen("metrology.bore_over"), ElementsAre("bore_worn"));
  EXPECT_THAT(fallen("metrology.oval"), ElementsAre("bore_oval"));
  EXPECT_THAT(fallen("fits.force_high"), ElementsAre("press_high"));
  EXPECT_THAT(fallen("metrology.rise_out"), ElementsAre("run_hot"));
  EXPECT_THAT(fallen("metrology.vibration_out"), ElementsAre("run_shakes"));
  EXPECT_THAT(fallen("stack.not_seated"), ElementsAre("joint_open", "joint_partly_home"));
}

TEST(CatchRate, SayingItOfAnotherPartIsNotNamingIt) {
  EXPECT_THAT(fallen("timing.half_out:misplace"), ElementsAre("half_out", "halves_swapped", "fixed_contradict"));
  EXPECT_THAT(fallen("kit.wrong_lean:misplace"), ElementsAre("wrong_lean"));
  EXPECT_THAT(fallen("question.nut_rechecked:misplace"), ElementsAre("recheck_forgotten"));
}

// A check that cries wolf is caught on the clean ones.
TEST(CatchRate, AnAlarmOnACleanRebuildIsCounted) {
  Tally tally;
  const Rebuild clean = make_rebuild(20);
  ASSERT_TRUE(clean.mistakes.empty());
  AllTold told = ask_program(texts_of(clean));
  told.findings.push_back({"kit.wrong_bearing", Told::Severity::out, "rotor 1", {}, {}, {}});
  tally.add(clean, compare(clean, told));
  EXPECT_THAT(broken_promises(tally), ElementsAre(testing::HasSubstr("alarms that no gauge excuses")));
}

TEST(CatchRate, AMendThatLeavesAHalfOutIsCounted) {
  for (unsigned long long seed = 1;; ++seed) {
    const Rebuild r = make_rebuild(seed);
    if (r.mistakes.size() != 1 || r.mistakes.front().kind != Kind::half_out) continue;
    AllTold told = ask_program(texts_of(r));
    EXPECT_TRUE(compare(r, told).mend_right) << seed;
    for (Told& t : told.findings)
      for (auto& [name, value] : t.todo_args)
        if (name == "to") value = std::to_string(turned(std::atoi(value.c_str()), 1, r.drawing.flats));
    EXPECT_FALSE(compare(r, told).mend_right) << seed;
    return;
  }
}

/// A line of expect.txt: "has CODE", "not CODE", "out-not CODE" (may be said, but not be out), then what its place and arguments
/// hold, if that matters.
bool holds(const AllTold& told, const std::string& line) {
  std::istringstream words{line};
  std::string what, code, rest;
  words >> what >> code;
  std::getline(words >> std::ws, rest);
  const bool said = std::ranges::any_of(told.findings, [&](const Told& t) {
    std::string here = t.place;
    for (const auto& [name, value] : t.args) here += " " + name + "=" + value;
    const bool loud = what != "out-not" || t.severity == Told::Severity::out;
    return t.code == code && loud && here.find(rest) != std::string::npos;
  });
  return said == (what == "has");
}

// Each was found by the simulation; its file says when, and what went wrong.
TEST(Cases, StayMended) {
  int cases = 0;
  for (const auto& entry : std::filesystem::directory_iterator{FLATWISE_SOURCE_DIR "/tests/rebuilds/cases"}) {
    const auto& at = entry.path();
    const AllTold told =
        ask_program({all_of(at / "shaft.toml"), all_of(at / "workshop.toml"), all_of(at / "readings.toml")});
    EXPECT_THAT(told.refused, IsEmpty()) << at;
    std::istringstream expected{all_of(at / "expect.txt")};
    for (std::string line; std::getline(expected, line);)
      if (!line.empty() && !line.starts_with("#")) {
        EXPECT_TRUE(holds(told, line)) << at.filename() << ": " << line;
      }
    ++cases;
  }
  EXPECT_GE(cases, 5);
}

TEST(Truth, SharesNoCodeWithTheChecks) {
  const std::filesystem::path folder{FLATWISE_SOURCE_DIR "/tests/rebuilds"};
  int looked_at = 0;
  for (const auto& entry : std::filesystem::directory_iterator{folder}) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(".cc") && !name.ends_with(".h")) continue;
    if (name.starts_with("runner.") || name.starts_with("simulate.") || name.starts_with("files.") ||
        name == "main.cc" || name == "as_entries.cc" || name == "rebuilds_test.cc")
      continue;
    ++looked_at;
    std::istringstream text{all_of(entry.path())};
    for (std::string line; std::getline(text, line);)
      if (line.starts_with("#include \"")) {
        EXPECT_TRUE(line.starts_with("#include \"tests/rebuilds/")) << name << ": " << line;
      }
  }
  EXPECT_GT(looked_at, 15);
}

TEST(Truth, TheSameSeedGivesTheSameRebuild) {
  const Texts one = texts_of(make_rebuild(77)), again = texts_of(make_rebuild(77)), other = texts_of(make_rebuild(78));
  EXPECT_EQ(one.readings, again.readings);
  EXPECT_EQ(one.shaft, again.shaft);
  EXPECT_NE(one.readings, other.readings);
}

// Source: worked by hand: thick rings of one material and equal ratio give p = delta E / (2 d) (1 - (d_i/d)^2) / 2 with d_i/d = d/D,
// here delta 50 um, d 100 mm, d_i 50 mm, D 200 mm, E 200 GPa: radial gives 2 * 5/3, p = 50e-6/0.1*200e9/(10/3) = 30 MPa;
// F = 0.1 * 30e6 * pi * 0.1 * 0.02 = 18.85 kN. Tolerance: last digit given.
TEST(Truth, PressForceAgreesWithAHandSheet) {
  Joint joint;
  joint.diameter = 0.1, joint.width = 0.02, joint.ring_inside = 0.05, joint.hub_outside = 0.2;
  joint.ring_modulus = joint.hub_modulus = 200e9, joint.ring_poisson = joint.hub_poisson = 0.3;
  EXPECT_NEAR(force_to_press(joint, 50e-6, 0.1), 18.85e3, 5);
}

// Source: the sum of two even distributions is a triangle; its upper 2.5 % lies at 2 - sqrt(0.2) half widths; of four, Irwin and
// Hall's distribution: 1 - F(x) = (4 - x)^4 / 24 = 0.025 at x = 3.1199 widths. Tolerance: half a cell of the grid.
TEST(Truth, BandOfASumAgreesWithClosedForms) {
  EXPECT_NEAR(sum_band({1, 1}, 0).greatest, 2 - std::sqrt(0.2), 2e-3);
  EXPECT_NEAR(sum_band({0.5, 0.5, 0.5, 0.5}, 0).greatest, 3.1199 - 2, 2e-3);
}

// Source: common practice: the marks of a pair are half a turn apart. Two bores that lean 5 deg the opposite ways enclose 10 deg.
// Tolerance: rounding.
TEST(Truth, BoresLeanTheOtherWayHalfATurnOn) {
  const double lean = 5 * std::numbers::pi / 180;
  EXPECT_NEAR(angle_between(bore_axis(lean, 0.3), bore_axis(lean, 0.3 + std::numbers::pi)), 2 * lean, 1e-12);
}

}  // namespace
}  // namespace rebuilds
