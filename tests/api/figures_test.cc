// Figures over the API: what the shell says of the same inputs, and nothing that keeps the server busy.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "tests/api/house.h"
#include "tests/end_to_end/process.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

class Figures : public testing::Test {
 protected:
  [[nodiscard]] Answer figure(const std::string& name, const json& inputs, const std::string& units = "metric") const {
    return house_.ask({.method = "POST",
                       .target = "/api/figures/" + name + "?units=" + units,
                       .headers = {"Content-Type: application/json"},
                       .body = json{{"inputs", inputs}}.dump()});
  }
  [[nodiscard]] json catalogue(const std::string& units = "metric") const {
    return json::parse(house_.ask({.target = "/api/figures?units=" + units}).body);
  }
  static json shell(const std::vector<std::string>& words) {
    std::vector<std::string> all{"figure", "--json"};
    all.insert(all.end(), words.begin(), words.end());
    return json::parse(end_to_end::flatwise(all).out);
  }
  House house_;
};

TEST_F(Figures, TheCatalogueIsTheShells) {
  EXPECT_EQ(catalogue(), shell({}));
  EXPECT_EQ(catalogue("inch"), shell({"--inch"}));
}

TEST_F(Figures, EveryExampleSaysWhatTheShellSays) {
  const json all = catalogue();  // Held: the loop keeps no more than what it goes through.
  ASSERT_FALSE(all["figures"].empty());
  for (const json& spec : all["figures"]) {
    const std::string name = spec["name"];
    std::vector<std::string> words{name, "--inch"};
    for (const json& input : spec["example"]["inputs"]) words.push_back(input);
    const Answer answer = figure(name, spec["example"]["inputs"], "inch");
    EXPECT_EQ(answer.status, 200) << name;
    EXPECT_EQ(json::parse(answer.body), shell(words)) << name;
  }
}

TEST_F(Figures, ADoubtSaysWhatToMeasureBetterAsTheShellDoes) {
  const std::vector<std::string> inputs{"bore=99.968 mm ± 4 µm", "ring-least=99.985 mm .. 100.005 mm",
                                        "ring-greatest=100.01 mm"};
  std::vector<std::string> words{"interference"};
  words.insert(words.end(), inputs.begin(), inputs.end());
  const json said = json::parse(figure("interference", inputs).body);
  EXPECT_EQ(said, shell(words));
  ASSERT_TRUE(said.contains("doubt")) << said.dump(1);
  EXPECT_EQ(said["doubt"][0]["shares"][0]["input"], "ring-least");  // 20 µm wide, halved by the mean.
  EXPECT_GT(said["outputs"][0]["uncertainty"]["expanded_m"], 0.0);
}

TEST_F(Figures, WhatIsWrongIsNamedByTheFiguresOwnInputs) {
  const auto problems = [&](const json& inputs) {
    const Answer answer = figure("interference", inputs);
    EXPECT_EQ(answer.status, 422) << answer.body;
    std::set<std::string> fields;
    const json body = json::parse(answer.body);
    for (const json& p : body["problems"]) fields.insert(p["field"]);
    return fields;
  };
  EXPECT_EQ(problems(json::array()), (std::set<std::string>{"bore", "ring-least", "ring-greatest"}));
  EXPECT_EQ(problems({"bore=4 kg", "ring-least=100 mm ± 0 µm"}), (std::set<std::string>{"bore", "ring-least"}));
  EXPECT_EQ(problems({"bore=99.98 mm", "ring-least=99.9 mm", "ring-greatest=100 mm", "colour=red"}),
            (std::set<std::string>{"colour"}));
  EXPECT_EQ(problems({"bore=99.98 mm", "ring-least=99.9 mm", "ring-greatest=100 mm", std::string(201, 'x')}),
            (std::set<std::string>{"inputs[3]"}));
  EXPECT_EQ(problems(std::vector<std::string>(1001, "bore=1 m")), (std::set<std::string>{"inputs"}));
  EXPECT_EQ(json::parse(figure("interferance", json::array()).body)["problems"][0]["field"], "figure");
}

TEST_F(Figures, WhatTakesTooLongIsRefusedBeforeItIsBegun) {
  const json stack{"length=50 mm", "length=60 mm", "above=0.1 mm", "below=0.1 mm"};
  json drawn = stack;
  drawn.push_back("samples=1000000000");
  EXPECT_EQ(figure("stack-drawn", drawn).status, 422);  // Beyond the figure's own range.
  drawn.back() = "samples=1000000";
  EXPECT_EQ(figure("stack-drawn", drawn).status, 200);
  drawn.back() = "samples=100000000";
  for (int i = 0; i < 40; ++i) drawn.push_back("length=50 mm");
  const Answer refused = figure("stack-drawn", drawn);
  EXPECT_EQ(refused.status, 422);
  EXPECT_EQ(json::parse(refused.body)["problems"][0]["code"], "doubt.too_long");
}

TEST_F(Figures, AFigureThatTakesLongIsNotDrawnTenThousandTimes) {
  json inputs;
  const json all = catalogue();
  for (const json& spec : all["figures"])
    if (spec["name"] == "bearing-turn") inputs = spec["example"]["inputs"];
  for (json& input : inputs)
    if (input == "lean=5°") input = "lean=5° ± 0.1°";
  const json said = json::parse(figure("bearing-turn", inputs).body);
  EXPECT_GE(said["draws"], 100) << said.dump(1);
  EXPECT_LT(said["draws"], 10000);
  json codes;
  for (const json& finding : said["findings"]) codes.push_back(finding["code"]);
  EXPECT_EQ(std::ranges::count(codes, json("doubt.few_draws")), 1) << codes;
  EXPECT_TRUE(said["doubt"][0].contains("drawn"));
  inputs.push_back("angles=720");
  const json longer = json::parse(figure("bearing-turn", inputs).body);
  EXPECT_EQ(longer["draws"], 0) << longer.dump(1);
  EXPECT_EQ(longer["findings"].back()["code"], "doubt.first_order_only");
}

}  // namespace
}  // namespace flatwise::api_test
