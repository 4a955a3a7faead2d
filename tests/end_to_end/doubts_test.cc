// doubts_test.cc: a shaft whose file says how well its values are known, asked at the shell: figures with ±, what to measure better,
// and what its schemas promise.
#include <gtest/gtest.h>

#include "tests/end_to_end/process.h"
#include "tests/end_to_end/schema.h"

namespace flatwise::end_to_end {
namespace {

/// Five rotors that face, one of them left over; inertia, mass and the ground's force doubted.
std::string doubted() {
  std::string text = ours("demo/five.toml");
  const auto put = [&](const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    if (at != std::string::npos) text.replace(at, from.size(), to);
  };
  put("pattern = { flats = [1, 3, 4, 5, 1] }", "pattern = \"facing\"");
  put("\"11.6 kg\"", "\"11.6 kg ± 0.2 kg\"");
  put("\"0.085 kg·m²\"", "\"0.085 kg·m² ± 5 %\"");
  return text;
}

// Source: definition; the parts of a variance make the whole of it.
// Tolerance: 1e-9, rounding.
class Doubts : public testing::TestWithParam<std::vector<std::string>> {};

TEST_P(Doubts, AreShownAndSayWhatToMeasureBetter) {
  const Scratch scratch;
  std::vector<std::string> words = GetParam();
  words.insert(words.begin() + 1, scratch.write("doubted.toml", doubted()));
  const Ran shown = flatwise(words);
  EXPECT_EQ(shown.status, 0) << shown.err;
  EXPECT_NE(shown.out.find(" ± "), std::string::npos) << shown.out;
  EXPECT_NE(shown.out.find("What makes this uncertain"), std::string::npos) << shown.out;
  words.push_back("--json");
  const nlohmann::json json = parsed(flatwise(words).out);
  EXPECT_EQ(faults_against(words.front(), json), "");
  ASSERT_FALSE(json["doubts"].empty());
  for (const nlohmann::json& one : json["doubts"]) {
    double whole = 0;
    for (const nlohmann::json& share : one["shares"]) whole += share["part"].get<double>();
    EXPECT_NEAR(whole, 1, 1e-9) << one;
  }
  words[1] = "demo/five.toml";
  EXPECT_FALSE(parsed(flatwise(words).out).contains("doubts"));
}

INSTANTIATE_TEST_SUITE_P(Verbs, Doubts,
                         testing::Values(std::vector<std::string>{"pattern", "--stay", "1=1,2=4,3=1,4=4,5=1"},
                                         std::vector<std::string>{"bend"}, std::vector<std::string>{"study"},
                                         std::vector<std::string>{"bearing"}));

}  // namespace
}  // namespace flatwise::end_to_end
