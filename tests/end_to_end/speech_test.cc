// speech_test.cc: how the program speaks: unit systems, standard input, colour.
#include <gtest/gtest.h>

#include "tests/end_to_end/process.h"
#include "tests/end_to_end/schema.h"

namespace flatwise::end_to_end {
namespace {

using Words = std::vector<std::string>;

const std::string kDemo = std::string{FLATWISE_SOURCE_DIR} + "/demo";

/// Everything for people taken out: what remains are the facts.
nlohmann::json facts(const nlohmann::json& json) {
  if (json.is_array()) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto& item : json) out.push_back(facts(item));
    return out;
  }
  if (!json.is_object()) return json;
  nlohmann::json out = nlohmann::json::object();
  for (const auto& item : json.items())
    if (item.key() != "shown" && item.key() != "says" && item.key() != "cautions")
      out[item.key()] = facts(item.value());
  return out;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
    text.replace(at, from.size(), to);
  return text;
}

TEST(Units, AreForTheEyeOnlyAndTheFactsAreTheSame) {
  for (const Words& words : std::vector<Words>{{"check", "demo/job-31.toml", "--json"},
                                               {"check", "demo/job-31-done.toml", "--json"},
                                               {"plan", "demo/long-nine.toml", "--open", "4", "--json"},
                                               {"kit", "demo/job-31.toml", "--json"},
                                               {"figure", "bar-pull", "--json"},
                                               {"figure", "kink", "lean=5°", "flats-out=1", "flats=6", "--json"}}) {
    Words inch = words, metric = words;
    inch.emplace_back("--inch");
    metric.emplace_back("--metric");
    const nlohmann::json in_inch = parsed(flatwise(inch).out), in_metric = parsed(flatwise(metric).out);
    EXPECT_EQ(nlohmann::json::diff(facts(in_inch), facts(in_metric)).dump(), "[]") << typed(words);
  }
}

TEST(Units, OfTheTableFollowTheSwitch) {
  const std::string inch = flatwise({"inspect", "demo/job-31.toml", "--inch"}).out;
  const std::string metric = flatwise({"inspect", "demo/job-31.toml", "--metric"}).out;
  EXPECT_NE(inch, metric);
  EXPECT_NE(inch.find(" in"), std::string::npos);
  EXPECT_EQ(metric, flatwise({"inspect", "demo/job-31.toml"}).out);
}

TEST(Readings, OnTheStandardInputAreAsGoodAsAFile) {
  const std::string text = ours("demo/job-31.toml");
  for (const char* verb : {"check", "marks", "inspect", "kit", "stack"}) {
    const Ran by_file = flatwise({verb, "job-31.toml", "--json"}, {.folder = kDemo});
    const Ran by_stream = flatwise({verb, "-", "--json"}, {.in = text, .folder = kDemo});
    EXPECT_EQ(by_stream.status, by_file.status);
    EXPECT_EQ(by_stream.out, replaced(by_file.out, "job-31.toml", "-")) << verb;
  }
}

TEST(Readings, NameTheirShaftFromTheirOwnFolder) {
  const Ran here = flatwise({"marks", "demo/job-31.toml", "--json"});
  const Ran there = flatwise({"marks", kDemo + "/job-31.toml", "--json"}, {.folder = "/"});
  EXPECT_EQ(facts(parsed(here.out))["findings"], facts(parsed(there.out))["findings"]);
}

TEST(Shafts, OnTheStandardInputAreAsGoodAsAFile) {
  const std::string text = ours("demo/short-three.toml");
  EXPECT_EQ(flatwise({"map", "-"}, {.in = text}).out, flatwise({"map", "demo/short-three.toml"}).out);
  EXPECT_EQ(flatwise({"define", "check", "-"}, {.in = text}).out,
            flatwise({"define", "check", "demo/short-three.toml"}).out);
  const Ran other = flatwise({"marks", "demo/job-31.toml", "--shaft", "-"}, {.in = ours("demo/long-nine.toml")});
  EXPECT_EQ(other.out, flatwise({"marks", "demo/job-31.toml"}).out);
}

TEST(Shafts, WithAByteOrderMarkOrTheOtherLineEndsAreRead) {
  const std::string text = ours("demo/long-nine.toml");
  const std::string map = flatwise({"map", "-"}, {.in = text}).out;
  EXPECT_EQ(flatwise({"map", "-"}, {.in = "\xEF\xBB\xBF" + text}).out, map);
  EXPECT_EQ(flatwise({"map", "-"}, {.in = replaced(text, "\n", "\r\n")}).out, map);
}

bool coloured(const std::string& text) { return text.find('\x1b') != std::string::npos; }

TEST(Colour, IsForTerminalsOnly) {
  const Words words{"check", "demo/job-31.toml"};
  EXPECT_FALSE(coloured(flatwise(words).out));
  EXPECT_TRUE(coloured(flatwise(words, {.terminal = true}).out));
  EXPECT_FALSE(coloured(flatwise(words, {.terminal = true, .environment = {{"NO_COLOR", "1"}}}).out));
  EXPECT_FALSE(coloured(flatwise({"check", "demo/job-31.toml", "--no-colour"}, {.terminal = true}).out));
  EXPECT_FALSE(coloured(flatwise({"check", "demo/job-31.toml", "--json"}, {.terminal = true}).out));
}

TEST(Colour, AddsNothingToTheWords) {
  std::string plain;
  const std::string toned = replaced(flatwise({"marks", "demo/job-31.toml"}, {.terminal = true}).out, "\r\n", "\n");
  for (std::size_t i = 0; i < toned.size(); ++i) {
    if (toned[i] == '\x1b')
      i = toned.find('m', i);
    else
      plain += toned[i];
  }
  EXPECT_EQ(plain, flatwise({"marks", "demo/job-31.toml"}).out);
}

/// What a file holds may be shown, but never drives the terminal: neither read nor refused.
TEST(TextOfOthers, DrivesNoTerminal) {
  for (const std::string bad : {"\\u001b[2J", "\\u009b1m", "\\u0007", "\x1b[2J",
                                "\xC2\x9B"
                                "1m"}) {
    std::string text = ours("demo/short-three.toml");
    text.insert(text.find("Edge loosener"), bad);
    const Ran ran = flatwise({"map", "-"}, {.in = text});
    for (const std::string& out : {ran.out, ran.err}) {
      EXPECT_FALSE(coloured(out)) << bad;
      EXPECT_EQ(out.find('\a'), std::string::npos) << bad;
      EXPECT_EQ(out.find("\xC2\x9B"), std::string::npos) << bad;
    }
  }
}

}  // namespace
}  // namespace flatwise::end_to_end
