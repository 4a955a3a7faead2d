// bad_lines_test.cc: one wrong line in a file that is otherwise right: the field, the value, what is allowed, the line.
#include <gtest/gtest.h>

#include <filesystem>

#include "tests/end_to_end/refusal.h"

namespace flatwise::end_to_end {
namespace {

/// A copy of the demo with one change in one file, judged by `verb`.
void expect_change_refused(const Changed& change, const std::string& verb, const std::string& judged) {
  const Scratch scratch;
  std::filesystem::copy(std::string{FLATWISE_SOURCE_DIR} + "/demo", scratch.path(),
                        std::filesystem::copy_options::recursive);
  Expected expected = change.expected;
  int line = 0;
  scratch.write(change.file, changed(ours("demo/" + change.file), change.from, change.to, line));
  if (expected.line == 0) expected.line = line;
  if (expected.line < 0) expected.line = 0;
  std::vector<std::string> words{verb, judged};
  if (verb == "define") words = {"define", "check", judged};
  SCOPED_TRACE(change.file + ": " + change.to.substr(0, 60));
  expect_refused(words, expected, {.folder = scratch.path().string()});
}

class WrongShaft : public testing::TestWithParam<Changed> {};
TEST_P(WrongShaft, IsRefusedWithItsLine) { expect_change_refused(GetParam(), "define", GetParam().file); }

const std::string kNine = "long-nine.toml";
INSTANTIATE_TEST_SUITE_P(
    Lines, WrongShaft,
    testing::Values(
        Changed{kNine, "flats = 6", "flats = 5", {"shaft.flats", "5", "even"}},
        Changed{kNine, "flats = 6", "flats = 7.5", {"shaft.flats", "7.5", "whole number"}},
        Changed{kNine, "flats = 6", "flats = -6", {"shaft.flats", "-6", "from 3 up to 24"}},
        Changed{kNine, "flats = 6", "flats = \"6 mm\"", {"shaft.flats", "6 mm", "whole number"}},
        Changed{kNine, "flats = 6", "flat = 6", {"shaft.flat", "flat", "flats", "Did you mean flats?"}},
        Changed{kNine, "\\[nut\\]", "[nutt]", {"nutt", "nutt", "nut", "Did you mean nut?"}},
        Changed{kNine, "across = ", "across = \"2 in\"\nacross = ", {"across", "twice", "once", "", 8}},
        Changed{kNine, "\"1 1/2 in\"", "38.1", {"shaft.across", "38.1", "38.1 mm", "38.1"}},
        Changed{kNine, "\"1 1/2 in\"", "\"38.1\"", {"shaft.across", "38.1", "38.1 mm", "unit"}},
        Changed{kNine, "\"1 1/2 in\"", "\"38.1 N\"", {"shaft.across", "force", "38.1 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"38.1 furlong\"", {"shaft.across", "furlong", "38.1 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"-38.1 mm\"", {"shaft.across", "-38.1 mm", "from 5 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"0 mm\"", {"shaft.across", "0 mm", "from 5 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"38.1 m\"", {"shaft.across", "38.1 m", "up to 500 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"nan mm\"", {"shaft.across", "nan", "finite"}},
        Changed{kNine, "\"1 1/2 in\"", "\"inf mm\"", {"shaft.across", "inf", "finite"}},
        Changed{kNine, "\"1 1/2 in\"", "nan", {"shaft.across", "nan", "38.1 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"1e999 mm\"", {"shaft.across", "1e999", "38.1 mm"}},
        Changed{kNine, "\"1 1/2 in\"", "\"1,5 in\"", {"shaft.across", "1,5", ""}},
        Changed{kNine, "\"1 1/2 in\"", "[1, 2]", {"shaft.across", "list", "unit"}},
        Changed{kNine, "\"480 /min\"", "\"480 rpm/s\"", {"shaft.speed", "rpm/s", ""}},
        Changed{kNine, "\"facing\"", "\"faceing\"", {"shaft.pattern", "faceing", "facing", "Did you mean facing?"}},
        Changed{kNine, "drive_end = \"B\"", "drive_end = \"C\"", {"shaft.drive_end", "C", "A"}},
        Changed{kNine, "repeat = 5", "repeat = 100000", {"stack.order[4].repeat", "100000", "up to 240"}},
        Changed{kNine, "mass = \"11\\.6 kg\"", "", {"rotor.mass", "missing", "", "mass =", -1}},
        Changed{kNine, "lean = \"5°\"", "lean = \"95°\"", {"rotor.lean", "95°", "30°"}},
        Changed{kNine, "fit = \"100 N7\"", "fit = \"100 Ñ7\"", {"rotor.hub.fit", "Ñ7", ""}},
        Changed{kNine, "fit = \"100 N7\"", "fit = \"100 N77\"", {"rotor.hub.fit", "N77", ""}},
        Changed{kNine,
                "material = \"ductile_iron\"",
                "material = \"cheese\"",
                {"rotor.hub.material", "cheese", "ductile_iron"}},
        Changed{kNine, "clearance = \"C3\"", "clearance = \"C33\"", {"rotor.bearing.clearance", "C33", "C3"}},
        Changed{kNine, "D = \"100 mm\"", "D = \"50 mm\"", {"rotor.bearing.D", "50 mm", ""}},
        Changed{kNine, "invented = true", "invented = \"yes\"", {"shaft.invented", "yes", "true or false"}},
        Changed{kNine, "thread = \"1 1/2-6 UNC\"", "thread = \"1 1/2-6 UNK\"", {"nut.thread", "UNK", ""}},
        Changed{kNine, "\\{ spacer = \"14 mm\" \\},", "{ spacer = \"14 mm\", },", {"file", "comma", "TOML"}},
        Changed{kNine,
                "\\{ spacer = \"14 mm\" \\},",
                "{ spacr = \"14 mm\" },",
                {"stack.order[11].spacr", "spacr", "spacer", "spacer"}},
        Changed{kNine, "name = \"Looseners 2, long nine\"", "name = \"Looseners 2", {"file", "", ""}}));

class WrongReadings : public testing::TestWithParam<Changed> {};
TEST_P(WrongReadings, AreRefusedWithTheirLine) { expect_change_refused(GetParam(), "check", "job-31.toml"); }

const std::string kJob = "job-31.toml", kShop = "workshop.toml";
INSTANTIATE_TEST_SUITE_P(
    Lines, WrongReadings,
    testing::Values(
        Changed{kJob, "marks = \\{ a = 4, b = 2 \\}", "marks = { a = 7, b = 2 }", {"rotor[4].marks.a", "7", "6"}},
        Changed{kJob, "marks = \\{ a = 4, b = 2 \\}", "marks = { a = 0, b = 2 }", {"rotor[4].marks.a", "0", "1"}},
        Changed{kJob, "marks = \\{ a = 4, b = 2 \\}", "marks = { a = 4, c = 2 }", {"rotor[4].marks.c", "c", "a or b"}},
        Changed{kJob, "number = 9", "number = 10", {"rotor[9].number", "10", "9"}},
        Changed{kJob, "number = 9", "number = 8", {"rotor[9].number", "8", "one [[rotor]]"}},
        Changed{kJob, "came_off = \\[1, 2, 3, 4\\]", "came_off = [1, 2, 3, 14]", {"readings.came_off", "14", "9"}},
        Changed{kJob, "2026-02-03", "2026-02-30", {"file", "", ""}},
        Changed{kJob, "2026-02-03", "\"February\"", {"readings.date", "February", "day"}},
        Changed{kJob, "\"S1\", \"S3\"", "\"S1\", \"S33\"", {"readings.labels_back", "S33", ""}},
        Changed{kJob, "gauge = \"TAPE-2\"", "gauge = \"TAPE-3\"", {"stack[1].gauge", "TAPE-3", "TAPE-2"}},
        Changed{kJob, "gauge = \"TAPE-2\"", "gauge = \"TH-1\"", {"stack[1].gauge", "TH-1", ""}},
        Changed{kJob, "length = \"[0-9.]+ in\"", "length = 65.95", {"stack[1].length", "65.95", "38.1 mm"}},
        Changed{kJob, "length = \"[0-9.]+ in\"", "length = \"65.95 lbf\"", {"stack[1].length", "force", ""}},
        Changed{kJob, "length = \"[0-9.]+ in\"", "length = \"-65.95 in\"", {"stack[1].length", "-65.95 in", "from"}},
        Changed{kJob, "part = \"68 °F\"", "part = \"-500 °F\"", {"rotor[1].bore.part", "-500 °F", ""}},
        Changed{kJob, "A = .\"3.[0-9]+ in\"", "A = [\"NaN in\"", {"rotor[1].bore.A[1]", "NaN", ""}},
        Changed{kJob, "force = \"[0-9]+ lbf\"", "force = \"1900 lb\"", {"rotor[1].press.force", "1900 lb", ""}},
        Changed{kJob,
                "power_locked_off = \"yes\"",
                "power_locked_off = \"maybe\"",
                {"answers.power_locked_off", "maybe", "not seen"}},
        Changed{kJob,
                "power_locked_off = \"yes\"",
                "power_lockd_off = \"yes\"",
                {"answers.power_lockd_off", "power_lockd_off", "", "power_locked_off"}},
        Changed{
            kJob, "seals_new = \\{ 1 = \"yes\"", "seals_new = { 111 = \"yes\"", {"answers.seals_new.111", "111", "9"}},
        Changed{kJob,
                "shaft = \"long-nine\\.toml\"",
                "shaft = \"long-ten.toml\"",
                {"file", "long-ten.toml", "file that exists", "", -1}},
        Changed{kJob,
                "workshop = \"workshop\\.toml\"",
                "workshop = \"shop.toml\"",
                {"file", "shop.toml", "file that exists", "", -1}},
        Changed{kShop, "currency = \"GBP\"", "currency = \"pounds\"", {"workshop.currency", "pounds", ""}},
        Changed{kShop, "rate = \"48 GBP/h\"", "rate = \"48\"", {"workshop.rate", "48", ""}},
        Changed{kShop, "use = \"bore gauge\"", "use = \"bore gage\"", {"gauge[1].use", "bore gage", "bore gauge"}},
        Changed{kShop, "id = \"BG-2\"", "id = \"BG-1\"", {"gauge[2].id", "BG-1", ""}},
        Changed{kShop,
                "calibrated_until = 2036-09-30",
                "calibrated_until = \"soon\"",
                {"gauge[1].calibrated_until", "soon", "day"}},
        Changed{
            kShop, "resolution = \"0\\.0001 in\"", "resolution = \"0.0001 s\"", {"gauge[1].resolution", "time", ""}}));

/// Every problem of every file at once, not only the first.
TEST(WrongLines, AreToldAllAtOnce) {
  int line = 0;
  std::string text = changed(ours("demo/long-nine.toml"), "flats = 6", "flats = 5.5", line);
  text = changed(text, "lean = \"5°\"", "lean = 5", line);
  text = changed(text, "torque = \"900 ft·lb\"", "torque = \"900 ft\"", line);
  const Ran ran = flatwise({"define", "check", "-", "--json"}, {.in = text});
  EXPECT_EQ(ran.status, 2);
  EXPECT_EQ(parsed(ran.out)["problems"].size(), 3U) << ran.out;
}

/// A file torn off anywhere (a full disk, a pulled plug) is read or refused, never worse.
TEST(TornFile, IsReadOrRefused) {
  const std::string readings = ours("demo/job-31.toml"), shaft = ours("demo/short-three.toml");
  int refused = 0;
  for (std::size_t part = 1; part < 40; ++part) {
    const Ran check = flatwise({"check", "-", "--shaft", "demo/long-nine.toml", "--workshop", "demo/workshop.toml"},
                               {.in = readings.substr(0, readings.size() * part / 40)});
    const Ran define = flatwise({"define", "check", "-"}, {.in = shaft.substr(0, shaft.size() * part / 40)});
    for (const Ran& ran : {check, define}) {
      EXPECT_EQ(ran.signal, 0);
      EXPECT_TRUE(ran.status >= 0 && ran.status <= 2) << ran.status << "\n" << ran.err;
      refused += ran.status == 2 ? 1 : 0;
    }
  }
  EXPECT_GT(refused, 40);
}

TEST(ManyStations, AreRefusedOrReadInGoodTime) {
  std::string order;
  for (int i = 0; i < 100'000; ++i) order += "  { spacer = \"1 mm\" },\n";
  int line = 0;
  const std::string text = changed(ours("demo/short-three.toml"), "order = .\n", "order = [\n" + order, line);
  const Ran ran = flatwise({"define", "check", "-"}, {.in = text, .seconds = 120});
  EXPECT_EQ(ran.status, 2) << ran.out.substr(0, 400);
  EXPECT_FALSE(ran.late);
  EXPECT_LT(lines_of(ran.err).size(), 100U) << "a page of problems, not a flood";
  EXPECT_NE(ran.err.find("stack.order"), std::string::npos) << ran.err.substr(0, 400);
}

}  // namespace
}  // namespace flatwise::end_to_end
