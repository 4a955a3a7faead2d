// The plan's sheet: what the customer said, as he said it.
#include "view/test_job_31.h"

namespace flatwise::view {
namespace {

/// The question to the customer after he said yes to this price.
Plain asked_after(std::optional<Entered> price) {
  SampleJob sample;
  sample.answer(Stage::booking_in);
  sample.write(job::WayChosen{{3}, "disturbed"});
  sample.write(job::CustomerSaid{Reply::yes, "The owner", "by telephone", std::move(price)});
  const Plain view = view_of(sample.subject(), Stage::plan, sample.shaft().station_of_rotor(3));
  for (const Plain& block : blocks_of(view, "asks"))
    for (const Plain& question : block["questions"])
      if (question["key"] == "customer_said") return question;
  return Plain();
}

TEST(Plan, ShowsAYesThatNamedNoPriceAsOne) {
  const Plain question = asked_after(std::nullopt);
  ASSERT_TRUE(question.contains("choices")) << question;
  EXPECT_TRUE(question["choices"][0]["chosen"].get<bool>());
  EXPECT_FALSE(question["choices"][1]["chosen"].get<bool>());
}

TEST(Plan, AsksAgainWhereTheYesWasToAnotherPrice) {
  const Plain question = asked_after(Entered{any_money(1), {}, "USD 1.00"});
  ASSERT_TRUE(question.contains("choices")) << question;
  EXPECT_FALSE(question["choices"][0]["chosen"].get<bool>());
  EXPECT_TRUE(says(question["detail"], "The answer was to USD 1.00: ask again."));
}

}  // namespace
}  // namespace flatwise::view
