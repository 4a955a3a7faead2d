// A report as JSON: beside each working stands the answer that counts, which its gauges may have made less than its own.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "wire/json.h"

namespace flatwise::wire {
namespace {

job::Shown shown(std::optional<Answer> own, std::optional<Answer> with_its_gauge) {
  Working working;
  working.figure = "run-vibration";
  working.answer = own;
  return {{Where::Part::station, 2}, "", std::make_shared<const Working>(std::move(working)), with_its_gauge};
}

TEST(Report, BesideAWorkingStandsTheAnswerThatCounts) {
  job::StageReport report{.stage = job::Stage::test_run,
                          .findings = {},
                          .workings = {shown(Answer::in, Answer::cannot_tell), shown(Answer::out, std::nullopt),
                                       shown(std::nullopt, std::nullopt)},
                          .problems = {}};
  const Json json = to_json(report, Voice{})["workings"];
  EXPECT_EQ(json[0]["answer"], "cannot_tell");
  EXPECT_EQ(json[0]["working"]["answer"], "in");
  EXPECT_EQ(json[1]["answer"], "out");
  EXPECT_FALSE(json[2].contains("answer"));
}

}  // namespace
}  // namespace flatwise::wire
