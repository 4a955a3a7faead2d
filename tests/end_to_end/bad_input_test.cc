// bad_input_test.cc: files, streams, words typed and places to write to that are no good.
#include <gtest/gtest.h>

#include <csignal>
#include <filesystem>
#include <fstream>

#include "tests/end_to_end/refusal.h"

namespace flatwise::end_to_end {
namespace {

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

// --- Files -------------------------------------------------------------------------------------------------------------

/// UTF-16, little end first, as some editors save it.
std::string utf16(const std::string& ascii) {
  std::string out = "\xFF\xFE";
  for (const char c : ascii) out += {c, '\0'};
  return out;
}

TEST(BadFile, IsNamedByEveryVerbThatReadsOne) {
  const Expected missing{"file", "nothere.toml", "exists"};
  for (const char* verb : {"map", "check", "marks", "inspect", "press", "stack", "torque", "kit", "book-in",
                           "tear-down", "test-run", "sheets"})
    expect_refused({verb, "nothere.toml"}, missing);
  expect_refused({"define", "check", "nothere.toml"}, missing);
  expect_refused({"plan", "nothere.toml", "--open", "1"}, missing);
  expect_refused({"plan", "demo/long-nine.toml", "--open", "1", "--workshop", "nothere.toml"}, missing);
  expect_refused({"marks", "demo/job-31.toml", "--shaft", "nothere.toml"}, missing);
}

TEST(BadFile, MayBeAFolder) {
  expect_refused({"check", "demo"}, {"file", "demo", "a file"});
  expect_refused({"map", "."}, {"file", ".", "a file"});
}

TEST(BadFile, OfAHundredMegabytesIsNotReadThrough) {
  const Scratch scratch;
  const std::string big = scratch.write("big.toml", "");
  fs::resize_file(big, 100'000'000);
  expect_refused({"check", big}, {"file", "big.toml", "4 MiB"}, {.seconds = 10});
  expect_refused({"map", "-"}, {"file", "-", "4 MiB"}, {.in_file = big, .seconds = 10});
}

TEST(BadFile, WithoutEndOnTheStandardInputIsNotReadThrough) {
  expect_refused({"map", "-"}, {"file", "-", "4 MiB"}, {.in_file = "/dev/zero", .seconds = 10});
}

TEST(BadFile, MayBeEmpty) {
  const Scratch scratch;
  const std::string empty = scratch.write("empty.toml", "");
  expect_refused({"define", "check", empty}, {"shaft", "missing", "", "[shaft]"});
  expect_refused({"check", empty, "--shaft", "demo/long-nine.toml"}, {"readings", "missing", "", "[readings]"});
  expect_refused({"define", "check", "-"}, {"shaft", "missing", ""});
}

TEST(BadFile, MayHoldBytesThatAreNoText) {
  const std::string text = ours("demo/long-nine.toml");
  const Scratch scratch;
  for (const auto& [name, bytes] :
       std::map<std::string, std::string>{{"nul.toml", std::string("[shaft]\0\nname = 1\n", 17)},
                                          {"utf16.toml", utf16(text)},
                                          {"latin.toml", "name = \"caf\xE9\"\n"},
                                          {"half.toml", text.substr(0, text.find("°") + 1)},
                                          {"noise.toml", std::string("\x7F"
                                                                     "ELF\x02\x01\x01\0\0\0",
                                                                     10)}}) {
    const std::string file = scratch.write(name, bytes);
    for (const Words& words :
         {Words{"define", "check", file}, Words{"check", file, "--shaft", "demo/long-nine.toml"}}) {
      const Ran ran = flatwise(words);
      EXPECT_EQ(ran.status, 2) << typed(words) << ran.out.substr(0, 600) << ran.err;
      EXPECT_NE(ran.err.find(name), std::string::npos) << ran.err;
      EXPECT_EQ(ran.err.find('\x7F'), std::string::npos);
    }
  }
}

TEST(BadFile, MayNotBeReadable) {
  const Scratch scratch;
  const std::string file = scratch.write("secret.toml", ours("demo/long-nine.toml"));
  fs::permissions(file, fs::perms::none);
  if (std::ifstream{file}) fs::remove(file);  // Root reads everything: then the file is gone instead.
  expect_refused({"define", "check", file}, {"file", "secret.toml", "file"});
}

TEST(BadFile, CannotBeTheStandardInputTwice) {
  expect_refused({"check", "-", "--shaft", "-"}, {"--shaft", "standard input", "once"},
                 {.in = ours("demo/job-31.toml")});
  expect_refused({"plan", "-", "--open", "1", "--workshop", "-"}, {"--workshop", "standard input", "once"},
                 {.in = ours("demo/long-nine.toml")});
}

TEST(BadFile, OfAnotherKindSaysSo) {
  expect_refused({"map", "demo/workshop.toml"}, {"shaft", "missing", ""});
  expect_refused({"check", "demo/long-nine.toml", "--shaft", "demo/long-nine.toml"}, {"readings", "missing", ""});
  expect_refused({"map", "README.md"}, {"file", "", ""});
}

TEST(BadReadings, NameNoShaft) {
  expect_refused({"check", "-"}, {"shaft", "no shaft", "--shaft"},
                 {.in = "[readings]\njob = \"1\"\ndate = 2026-01-01\n"});
}

// --- Words typed -------------------------------------------------------------------------------------------------------

TEST(BadWords, GetTheNearName) {
  expect_refused({"chek", "demo/job-31.toml"}, {"command", "chek", "", "check"});
  expect_refused({"mrks", "demo/job-31.toml"}, {"command", "mrks", "", "marks"});
  expect_refused({"zzzzzzzz"}, {"command", "zzzzzzzz", "check"});
  expect_refused({"map", "demo/long-nine.toml", "--from-bee"}, {"command", "--from-bee", "", "--from-b"});
  expect_refused({"define", "chekc", "demo/long-nine.toml"}, {"command", "chekc", "", "check"});
  expect_refused({"check", "demo/job-31.toml", "--through", "relase"}, {"command", "relase", "release"});
  expect_refused({"sheets", "demo/job-31.toml", "--sheet", "timing"}, {"command", "timing", "timing-map"});
  expect_refused({"figure", "knik"}, {"figure", "knik", "", "kink"});
}

TEST(BadWords, OutOfRangeNameTheRange) {
  expect_refused({"map", "demo/long-nine.toml", "--first-flat", "9"}, {"first_flat", "9", "1 to 6"});
  for (const char* bad : {"x", "-1", "", "1e3", "2.0", "0x2", "1234567"})
    expect_refused({"map", "demo/long-nine.toml", "--first-flat", bad}, {"--first-flat", bad, "whole number"});
  expect_refused({"map", "demo/long-nine.toml", "--mirrored"}, {"hand", "", "definition"});
  expect_refused({"plan", "demo/long-nine.toml", "--open", "12"}, {"open", "12", "1 to 9"});
  expect_refused({"plan", "demo/long-nine.toml", "--open", "4,4"}, {"open", "4", "once"});
  for (const char* bad : {"x", "", ",", "3,,4", "3,", "1-3", "-1", "99999999999999"})
    expect_refused({"plan", "demo/long-nine.toml", "--open", bad}, {"--open", bad, "comma"});
  expect_refused({"plan", "demo/long-nine.toml", "--open", "0"}, {"open", "0", "1 to 9"});
  expect_refused({"sheets", "demo/job-31.toml", "--format", "gif"}, {"command", "gif", "svg"});
  expect_refused({"sheets", "demo/job-31.toml", "--paper", "a3"}, {"command", "a3", "letter"});
  expect_refused({"map", "demo/long-nine.toml", "--inch", "--metric"}, {"command", "--inch", ""});
}

TEST(BadWords, MayNotHangOnAFlag) {
  expect_refused({"map", "demo/long-nine.toml", "--from-b=no"}, {"command", "from-b", ""});
  expect_refused({"map", "demo/long-nine.toml", "--inch=maybe"}, {"command", "inch", ""});
}

TEST(BadWords, LeaveTheWordsAfterThemAlone) {
  EXPECT_EQ(flatwise({"plan", "--open", "4", "demo/long-nine.toml"}).out,
            flatwise({"plan", "demo/long-nine.toml", "--open", "4"}).out);
  EXPECT_EQ(flatwise({"plan", "demo/long-nine.toml", "--open", "3", "--open", "4"}).out,
            flatwise({"plan", "demo/long-nine.toml", "--open", "3,4"}).out);
}

TEST(BadWords, MissingOrOneTooMany) {
  expect_refused({"map"}, {"command", "SHAFT", ""});
  expect_refused({"check"}, {"command", "READINGS", ""});
  expect_refused({"plan", "demo/long-nine.toml"}, {"command", "--open", ""});
  expect_refused({"map", "demo/long-nine.toml", "extra"}, {"command", "extra", ""});
  expect_refused({"sheets"}, {"READINGS", "neither", "--shaft"});
  expect_refused({"completions", "tcsh"}, {"command", "tcsh", "zsh"});
  const Ran none = flatwise({});
  EXPECT_EQ(none.status, 2);
  EXPECT_NE(none.err.find("command"), std::string::npos);
}

TEST(BadFigureInput, IsNamedWithItsRange) {
  expect_refused({"figure", "kink", "lean=5°"}, {"flats", "missing", "flats"});
  expect_refused({"figure", "kink", "lean=5°", "flats=6", "flats-out=1", "flats=6"}, {"flats", "6", "once"});
  expect_refused({"figure", "kink", "lean=90°", "flats=6", "flats-out=1"}, {"lean", "90°", "30°"});
  expect_refused({"figure", "kink", "lean=-5°", "flats=6", "flats-out=1"}, {"lean", "5°", "0°"});
  expect_refused({"figure", "kink", "lean=5°", "flats=6", "flats-out=1", "mu=3"}, {"mu", "mu", "lean"});
  expect_refused({"figure", "kink", "lean=5°", "flats=6", "flts-out=1"},
                 {"flts-out", "flts-out", "flats-out", "flats-out"});
  expect_refused({"figure", "kink", "lean=nan", "flats=6", "flats-out=1"}, {"lean", "nan", "finite"});
  expect_refused({"figure", "kink", "lean=inf°", "flats=6", "flats-out=1"}, {"lean", "inf", "finite"});
  expect_refused({"figure", "kink", "lean=1e999°", "flats=6", "flats-out=1"}, {"lean", "1e999", ""});
  expect_refused({"figure", "kink", "lean=5", "flats=6", "flats-out=1"}, {"lean", "5", "unit"});
  expect_refused({"figure", "kink", "lean=5 mm", "flats=6", "flats-out=1"}, {"lean", "length", "5°"});
  expect_refused({"figure", "kink", "lean=5°", "flats=7", "flats-out=1"}, {"flats", "7", "even"});
  expect_refused({"figure", "kink", "lean=5°", "flats=6.5", "flats-out=1"}, {"flats", "6.5", "whole number"});
  expect_refused({"figure", "kink", "lean"}, {"input", "lean", "NAME=QUANTITY"});
  expect_refused({"figure", "kink", "=5"}, {"input", "=5", "NAME=QUANTITY"});
  expect_refused({"figure", "fit-limits", "nominal=100 mm", "class=N99"}, {"class", "N99", ""});
  expect_refused({"figure", "press-pressure", "interference=45 µm"}, {"hub-outside", "missing", ""});
}

// --- Places to write to ------------------------------------------------------------------------------------------------

void expect_nothing_left(const Scratch& scratch) { EXPECT_EQ(scratch.files(), std::vector<std::string>{}); }

TEST(BadPlace, IsNamed) {
  expect_refused({"sheets", "demo/job-31.toml", "--out", ""}, {"--out", "nothing", "folder"});
  expect_refused({"define", "new", "--out", ""}, {"--out", "nothing", "folder"});
  expect_refused({"sheets", "demo/job-31.toml", "--out", "/proc/nowhere"}, {"file", "/proc/nowhere", ""});
  expect_refused({"sheets", "demo/job-31.toml", "--out", "/dev/null/x"}, {"file", "/dev/null/x", ""});
  expect_refused({"define", "new", "--out", "/proc/nowhere/mine.toml"}, {"file", "/proc/nowhere", ""});
  expect_refused({"define", "reference", "/proc/nowhere"}, {"file", "/proc/nowhere", ""});
  const Scratch scratch;
  const std::string file = scratch.write("file", "kept");
  expect_refused({"sheets", "demo/job-31.toml", "--out", file}, {"file", "file", ""});
  expect_refused({"define", "new", "--out", file}, {"out", "file", "new file", "--force"});
  EXPECT_EQ(text_of(file), "kept");
  EXPECT_EQ(scratch.files(), std::vector<std::string>{"file"});
}

/// A greatest size of file stands for the full disk: no root is needed, and the write fails half way all the same.
TEST(FullDisk, LeavesTheOldFileAndNothingHalf) {
  const Scratch scratch;
  const Start small{.file_limit = 1024};
  expect_refused({"sheets", "demo/job-31.toml", "--out", scratch / "sheets"}, {"file", "sheets/", "", "room"}, small);
  expect_refused({"define", "new", "--out", scratch / "mine.toml"}, {"file", "mine.toml", "", "room"}, small);
  expect_nothing_left(scratch);
  const std::string old = scratch.write("mine.toml", "the old one\n");
  expect_refused({"define", "new", "--force", "--out", old}, {"file", "mine.toml", ""}, small);
  EXPECT_EQ(text_of(old), "the old one\n");
  EXPECT_EQ(scratch.files(), std::vector<std::string>{"mine.toml"});
}

TEST(FullDisk, UnderTheOutputIsStatusTwo) {
  for (const Words& words : {Words{"map", "demo/long-nine.toml"}, Words{"check", "demo/job-31.toml", "--json"},
                             Words{"figure", "--reference"}, Words{"man"}}) {
    const Ran ran = flatwise(words, {.out_file = "/dev/full"});
    EXPECT_EQ(ran.status, 2) << typed(words);
    EXPECT_NE(ran.err.find("output"), std::string::npos) << ran.err;
  }
}

/// 'flatwise figure --reference | head' ends quietly, as every program in a pipe does: by SIGPIPE, without a word.
TEST(ClosedPipe, EndsQuietly) {
  for (const Words& words : {Words{"map", "demo/long-nine.toml"}, Words{"check", "demo/job-31.toml", "--json"},
                             Words{"figure", "--reference"}}) {
    const Ran ran = flatwise(words, {.closed_pipe = true});
    EXPECT_EQ(ran.signal, SIGPIPE) << typed(words);
    EXPECT_EQ(ran.err, "");
  }
}

// --- The checks above bite ---------------------------------------------------------------------------------------------

TEST(Refusals, AreHeldToEveryWordOfThem) {
  const nlohmann::json problem =
      parsed(flatwise({"plan", "demo/long-nine.toml", "--open", "12", "--json"}).out)["problems"][0];
  const Expected right{"open", "12", "1 to 9"};
  ASSERT_TRUE(holds(problem, right));
  Expected wrong = right;
  wrong.field = "opened";
  EXPECT_FALSE(holds(problem, wrong));
  wrong = right;
  wrong.read = "13";
  EXPECT_FALSE(holds(problem, wrong));
  wrong = right;
  wrong.allowed = "1 to 8";
  EXPECT_FALSE(holds(problem, wrong));
  wrong = right;
  wrong.line = 3;
  EXPECT_FALSE(holds(problem, wrong));
}

}  // namespace
}  // namespace flatwise::end_to_end
