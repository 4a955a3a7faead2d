// The quote: what is asked for, and whether the record holds a yes to it. The jobs are invented.
#include "paper/quote.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "paper/compose.h"
#include "paper/hand_over_samples.h"
#include "paper/sheets_in_test.h"

namespace flatwise::paper {
namespace {

using testing::ContainsRegex;
using testing::HasSubstr;
using testing::Not;

/// The quote as server and shell print it.
Pages pages_of(const job::SampleRecord& record, const Head& head, const SampleNames& names = {}) {
  const auto open = record.open();
  const job::Standing standing = job::standing(*open);
  SheetOrder order;
  order.shaft = &open->shaft;
  order.workshop = &open->workshop;
  order.bench = &open->state.bench;
  order.rotors = {1};
  order.names = {"quote"};
  order.head = head;
  order.record = HandOverOrder{.job = open.get(),
                               .standing = &standing,
                               .people = {{"bench", "Bench"}, {"lead", names.lead}, {"owner", "Owner"}},
                               .machine = names.machine,
                               .customer = names.customer,
                               .head = {},
                               .when = sample_time};
  auto sheets = compose(order, fonts());
  return sheets && !sheets->empty() ? std::move(sheets->front().pages) : Pages{};
}
std::string text_of_quote(const job::SampleRecord& record) {
  const Folder folder;
  return squeezed(text_of(pages_of(record, sample_head()), folder));
}

job::SampleRecord booked() {
  job::SampleRecord record{served(5)};
  record.book_in();
  return record;
}

TEST(Quote, NamesWhoSaidYesWhenAndToWhat) {
  job::SampleRecord record = booked();
  record.write(job::WayChosen{{3}, "disturbed"}, "lead");
  const Entered price{any_money(700), {}, "USD 700.00"};
  record.write(job::CustomerSaid{Reply::yes, "The owner", "by telephone", price}, "lead");
  const std::string text = text_of_quote(record);
  EXPECT_THAT(text, HasSubstr("The owner said yes to USD 700.00, by telephone: 3 Feb"));
  EXPECT_THAT(text, ContainsRegex("written .*by Lead, entry 3[.]"));
  EXPECT_THAT(text, HasSubstr("Way 2, everything disturbed: from end A: rotors 1 to 3"));
  EXPECT_THAT(text, HasSubstr("Complaint: hot and noisy"));
  EXPECT_THAT(text, HasSubstr("Orchard growers, east"));
  EXPECT_THAT(text, HasSubstr("Invented demo workshop"));
}

TEST(Quote, OffersThreeWaysAndSaysThatNobodyAgreedYet) {
  const std::string text = text_of_quote(booked());
  for (const char* way : {"1 the failed only", "2 everything disturbed", "3 all rotors"})
    EXPECT_THAT(text, HasSubstr(way));
  EXPECT_THAT(text, HasSubstr("Nobody has said yes yet."));
  EXPECT_THAT(text, HasSubstr("advised"));
  EXPECT_THAT(text, Not(HasSubstr("chosen")));
}

// A yes to one way is not a yes to another.
TEST(Quote, AYesFromBeforeTheWayWasChangedIsShownAndAskedForAgain) {
  job::SampleRecord record = booked();
  const job::WayChosen first{{3}, "failed_only"};
  const job::Id old = record.write(first, "lead");
  record.write(job::CustomerSaid{Reply::yes, "The owner", "", {}}, "lead");
  record.write(job::WayChosen{{3}, "all"}, "lead", {old});
  const std::string text = text_of_quote(record);
  EXPECT_THAT(text, HasSubstr("The owner said yes"));
  EXPECT_THAT(text, HasSubstr("ask once more"));
  EXPECT_THAT(text, HasSubstr("Way 3, all rotors"));
}

TEST(Quote, SaysThatAPriceIsMissingAndMakesNoSumOfTheRest) {
  job::SampleRecord record = booked();
  record.workshop().rate_per_hour.reset();
  EXPECT_THAT(text_of_quote(record), HasSubstr("open: a price is missing"));
}

// Source: the plan of the same rotors; what stands in the table is its parts, its minutes and their sum.
// Tolerance: none, whole amounts as they are printed.
TEST(Quote, TheTableAddsUpToThePrice) {
  job::SampleRecord record = booked();
  record.write(job::WayChosen{{3}, "disturbed"}, "lead");
  const auto open = record.open();
  const std::vector<int> rotors{3};
  const auto offered = job::offer(open->shaft, open->workshop, rotors);
  ASSERT_TRUE(offered);
  const job::Standing standing = job::standing(*open);
  const HandOverOrder order{.job = open.get(), .standing = &standing, .people = {}, .head = {}, .when = sample_time};
  const QuoteSheet sheet = quote({.shaft = &open->shaft,
                                  .workshop = &open->workshop,
                                  .offered = &*offered,
                                  .record = &order,
                                  .head = sample_head()});
  const auto amount = [](const std::string& text) {
    std::string digits;
    for (const char c : text)
      if ((c >= '0' && c <= '9') || c == '.') digits += c;
    return std::stod(digits);
  };
  double parts = 0;
  for (const QuotePart& part : sheet.parts) {
    EXPECT_DOUBLE_EQ(amount(part.each) * part.count, amount(part.sum)) << part.item;
    parts += amount(part.sum);
  }
  EXPECT_GT(parts, 0);
  EXPECT_DOUBLE_EQ(parts, amount(sheet.parts_price));
  EXPECT_DOUBLE_EQ(parts + amount(sheet.work_price), amount(sheet.price));
}

// 2026-11-27: Enter or an emoji in a text kept a sheet from being printed.
TEST(Quote, PrintsWhateverSomebodyTyped) {
  const std::string typed = "two\nlines \xF0\x9F\x99\x82 " + std::string(300, 'w');
  job::SampleRecord record{served(5)};
  record.write(job::BookedIn{typed, "machine", "shaft", typed, {}, {}}, "lead");
  record.write(job::WayChosen{{3}, "disturbed"}, "lead");
  record.write(job::CustomerSaid{Reply::no, typed, typed, {}}, "lead");
  const Pages pages = pages_of(record, sample_head(), {typed, typed, typed});
  const Folder folder;
  EXPECT_THAT(text_of(pages, folder), HasSubstr("[U+1F642]"));
  for (const DisplayList& page : pages) EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty());
}

class QuoteLayout : public testing::TestWithParam<std::tuple<int, Paper>> {};
TEST_P(QuoteLayout, StaysInsideTheMarginsAndNoTextStandsOnAnother) {
  const auto& [rotors, paper] = GetParam();
  job::SampleRecord record{served(rotors)};
  record.book_in();
  record.write(job::WayChosen{{2, rotors}, "disturbed"}, "lead");
  record.write(job::CustomerSaid{Reply::yes, "The owner", "by telephone", {}}, "lead");
  const Pages pages = pages_of(record, sample_head(paper, paper == Paper::a4 ? UnitSystem::metric : UnitSystem::inch));
  ASSERT_FALSE(pages.empty());
  for (const DisplayList& page : pages) {
    EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty());
    EXPECT_THAT(collisions(page, fonts()), testing::IsEmpty());
  }
}
INSTANTIATE_TEST_SUITE_P(All, QuoteLayout,
                         testing::Combine(testing::Values(3, 9, 24), testing::Values(Paper::a4, Paper::letter)));

}  // namespace
}  // namespace flatwise::paper
