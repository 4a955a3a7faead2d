// Ways of one shaft over HTTP: the page's answer, its files by the addresses it gives, and what is refused by its field.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

class StudyOverHttp : public testing::Test {
 protected:
  Answer got(const std::string& id, const std::string& target) {
    Answer answer = house_.ask({.target = target});
    EXPECT_EQ(contract_.faults(id, answer), "") << target;
    return answer;
  }
  [[nodiscard]] std::string address(const std::string& ways, const std::string& more = {}) const {
    return asks_.good(contract_.operation("study")).target + "?ways=" + encoded(ways) + more;
  }
  json study(const std::string& target) {
    const Answer answer = got("study", target);
    EXPECT_EQ(answer.status, 200) << answer.body.substr(0, 400);
    return json::parse(answer.body, nullptr, false);
  }
  void refused(const std::string& ways, int status, const std::string& field, const std::string& more = {}) {
    const Answer answer = got("study", address(ways, more));
    ASSERT_EQ(answer.status, status) << ways << answer.body.substr(0, 400);
    EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], field) << answer.body;
  }

  House house_;
  Asks asks_{house_.known()};
  Contract contract_;
};

constexpr const char* kTwo = R"([{"name":"Facing","pattern":"facing"},{"name":"Thirds","pattern":"step 2"}])";

TEST_F(StudyOverHttp, WaysAsAskedAndAsUsual) {
  const json two = study(address(kTwo, "&units=inch"));
  EXPECT_EQ(two["ways"].size(), 2U);
  EXPECT_EQ(two["ways"][1]["asked"]["pattern"], "step 2");
  for (const json& row : two["rows"]) EXPECT_EQ(row["cells"].size(), 2U) << row["key"];
  for (const json& row : two["rows"])
    for (const json& cell : row["cells"]) {
      EXPECT_LT(cell.value("working", 0U), two["figures"].size()) << row["key"];
    }
  // What is left of couple and of force is one working: it goes out once.
  const auto cell_of = [&](const char* key) {
    const auto row = std::ranges::find_if(two["rows"], [&](const json& r) { return r["key"] == key; });
    return (*row)["cells"][0]["working"];
  };
  EXPECT_EQ(cell_of("couple"), cell_of("hanger"));
  const json usual = study(asks_.good(contract_.operation("study")).target);
  EXPECT_GE(usual["ways"].size(), 2U);
  EXPECT_FALSE(usual["finding"]["because"].get<std::string>().empty());
}

TEST_F(StudyOverHttp, TheErrorsThatMakeTheFloorAreSaid) {
  const json assumed = study(address(kTwo));
  const json stated = study(address(kTwo, "&error_share=3+%25"));
  EXPECT_FALSE(assumed["errors"][0]["said"].get<bool>());
  EXPECT_TRUE(stated["errors"][0]["said"].get<bool>());
  EXPECT_FALSE(stated["errors"][1]["said"].get<bool>());
  EXPECT_NE(assumed["notes"][0], stated["notes"][0]);
  EXPECT_NE(stated["csv"].get<std::string>().find("error_share"),
            std::string::npos);  // Its files are of the same study.
}

TEST_F(StudyOverHttp, EveryFileIsThereByTheAddressItIsGiven) {
  const json view = study(address(kTwo, "&units=inch&ground=1.2+kN&name=Two+ways"));
  EXPECT_EQ(view["name"], "Two ways");
  for (const json& plot : view["plots"]) {
    const Answer csv = got("studyFile", plot["csv"]), svg = got("studyFile", plot["svg"]);
    EXPECT_EQ(csv.status, 200);
    EXPECT_TRUE(csv.body.starts_with("way,")) << csv.body.substr(0, 40);
    EXPECT_NE(csv.body.find("\"Thirds\""), std::string::npos);
    EXPECT_EQ(svg.status, 200);
    EXPECT_NE(svg.body.find("<svg"), std::string::npos);
  }
  EXPECT_TRUE(got("studyFile", view["csv"]).body.starts_with("row,way,"));
  for (const char* paper : {"a4", "letter"})
    EXPECT_TRUE(got("studyFile", view["print"][paper]).body.starts_with("%PDF-")) << paper;
}

TEST_F(StudyOverHttp, WhatIsNoStudyIsRefusedByItsField) {
  refused("[", 400, "ways");
  refused("{}", 400, "ways");
  refused("[3, 4]", 400, "ways[0]");
  refused(R"([{"name":"A","colour":"red"},{"name":"B","lean":"3°"}])", 400, "ways[0].colour");
  refused(R"([{"name":"A","lean":"3°"}])", 422, "ways");
  refused(R"([{"name":"A","lean":"3°"},{"name":"B"}])", 422, "ways[1].name");
  refused(R"([{"name":"A","lean":"3°"},{"name":"A","lean":"4°"}])", 422, "ways[1].name");
  refused(R"([{"name":"A","lean":"3°"},{"name":"B","lean":"3"}])", 422, "ways[1].lean");
  refused(R"([{"name":"A","lean":"3°"},{"name":"B","pattern":"9 9 9"}])", 422, "ways[1].pattern");
  refused(kTwo, 422, "ground", "&ground=12");
  refused(kTwo, 422, "error_share", "&error_share=3+furlongs");
  refused(kTwo, 422, "error_azimuth", "&error_azimuth=40%C2%B0");
}

TEST_F(StudyOverHttp, NoSuchFileIsNamed) {
  const std::string base = asks_.good(contract_.operation("study")).target;
  EXPECT_EQ(got("studyFile", base + "/secrets.csv").status, 404);
  EXPECT_EQ(got("studyFile", base + "/hanger.png").status, 404);
}

}  // namespace
}  // namespace flatwise::api_test
