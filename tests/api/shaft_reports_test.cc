// Arrangements, beam and bearing of a shaft over the API: what the shell says of the same definition, and what is refused by its field.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/api/asks.h"
#include "tests/end_to_end/process.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

class ShaftReports : public testing::Test {
 protected:
  [[nodiscard]] Answer got(const std::string& rest) const {
    return house_.ask({.target = "/api/shafts/" + house_.known().version + "/" + rest});
  }
  /// The shell beside the same text, in a file of the name that the server gives it: the origins of inputs name it.
  [[nodiscard]] json shell(std::string verb, const std::vector<std::string>& options) const {
    std::vector<std::string> words{std::move(verb), "shaft.toml", "--json"};
    words.insert(words.end(), options.begin(), options.end());
    return json::parse(end_to_end::flatwise(words, {.folder = scratch_.path().string()}).out);
  }
  void same(const std::string& rest, const std::string& verb, const std::vector<std::string>& options) {
    const Answer answer = got(rest);
    ASSERT_EQ(answer.status, 200) << rest << answer.body.substr(0, 400);
    EXPECT_EQ(json::parse(answer.body), shell(verb, options)) << rest;
  }
  void refused(const std::string& rest, int status, const std::string& field) {
    const Answer answer = got(rest);
    ASSERT_EQ(answer.status, status) << rest << answer.body.substr(0, 400);
    EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], field) << answer.body;
  }

  House house_;
  end_to_end::Scratch scratch_;
  std::string file_ = scratch_.write("shaft.toml", house_.known().toml);
};

TEST_F(ShaftReports, SayWhatTheShellSays) {
  same("pattern", "pattern", {});
  same("pattern?judged=couple&error_share=3+%25&units=inch", "pattern",
       {"--judged", "couple", "--error-share", "3 %", "--inch"});
  same("pattern?stay=3%3D4,4%3D1&least_gap=20+mm", "pattern", {"--stay", "3=4,4=1", "--least-gap", "20 mm"});
  same("pattern?by_hangers=true&error_azimuth=1%C2%B0", "pattern", {"--by-hangers", "--error-azimuth", "1°"});
  same("bend", "bend", {});
  same("bend?units=inch", "bend", {"--inch"});
  same("bearing", "bearing", {});
  same("bearing?station=9&units=inch", "bearing", {"--station", "9", "--inch"});
}

TEST_F(ShaftReports, TheListStartsWithTheAdvisedAndSaysWhatEachMistakeWouldDo) {
  const json said = json::parse(got("pattern?stay=3%3D4").body);
  ASSERT_GT(said["rows"].size(), 1U);
  for (const json& row : said["rows"]) EXPECT_EQ(row["flats"][2], 4) << row.dump();
  EXPECT_FALSE(said["mistakes"].empty());
}

TEST_F(ShaftReports, TheResponseIsTheShellsFile) {
  const std::string csv = scratch_ / "response.csv";
  ASSERT_EQ(end_to_end::flatwise({"bend", file_, "--csv", csv, "--from", "100 /min", "--speeds", "9"}).status, 0);
  const Answer answer = got("bend/response.csv?from=100+%2Fmin&speeds=9");
  ASSERT_EQ(answer.status, 200) << answer.body;
  EXPECT_EQ(answer.body, end_to_end::text_of(csv));
  EXPECT_TRUE(got("pattern/pattern.pdf?paper=letter&judged=couple").body.starts_with("%PDF-"));
}

TEST_F(ShaftReports, WhatCannotBeIsRefusedByItsField) {
  refused("pattern?judged=loudness", 400, "judged");
  refused("pattern?by_hangers=perhaps", 400, "by_hangers");
  refused("pattern?least_gap=20+kg", 422, "least_gap");
  refused("pattern?least_gap=9+m", 422, "least_gap");
  refused("pattern?stay=3", 422, "stay");
  refused("pattern?stay=3%3D4,3%3D5", 422, "stay");
  refused("pattern?stay=3%3D7", 422, "stay");
  refused("pattern?error_share=3+furlongs", 422, "error_share");
  refused("pattern?error_azimuth=-3%C2%B0", 422, "error_azimuth");
  refused("pattern/other.pdf", 404, "file");
  refused("bend/response.csv?speeds=2001", 400, "speeds");
  refused("bend/response.csv?from=900+%2Fmin&to=100+%2Fmin", 422, "to");
  refused("bend/response.svg", 404, "file");
  refused("bearing?station=rotor+4", 422, "station");
}

}  // namespace
}  // namespace flatwise::api_test
