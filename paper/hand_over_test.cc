// The hand-over record: what is first, what must stand in it, and that it stays on its pages. The jobs are invented.
#include "paper/hand_over.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "paper/hand_over_samples.h"
#include "paper/sheets_in_test.h"

namespace flatwise::paper {
namespace {

using testing::HasSubstr;
using testing::Not;

Head head(Paper paper, UnitSystem units) {
  Head h;
  h.shaft = "Sample, invented";
  h.job = "31";
  h.workshop = "sample shop";
  h.invented = true;
  h.printed = "3 Feb 14:20";
  h.from = "entry 60";
  h.paper = paper;
  h.voice.units = units;
  return h;
}

std::string printed(Ending ending, int rotors = 3) {
  const Folder folder;
  return squeezed(text_of(hand_over_pages(ending, rotors, head(Paper::a4, UnitSystem::metric), fonts()), folder));
}

TEST(HandOver, CompleteSaysSoAndNamesWhoSigned) {
  const std::string text = printed(Ending::complete);
  EXPECT_THAT(text, HasSubstr("Complete"));
  EXPECT_THAT(text, HasSubstr("Nothing open. May go to work."));
  EXPECT_THAT(text, Not(HasSubstr("Blocked")));
}

// Released as complete, yet marks of the longer shaft were never read: the sheet believes the rules, not the release.
TEST(HandOver, IsNotCompleteWhileSomethingIsOpen) {
  EXPECT_THAT(printed(Ending::complete, 9), Not(HasSubstr("Complete")));
}

TEST(HandOver, APartThatCameOffAndWentBackIsNoCorrection) {
  EXPECT_THAT(printed(Ending::complete), Not(HasSubstr("came off. Now:")));
}

TEST(HandOver, BlockedListsWhatIsOpen) {
  const std::string text = printed(Ending::blocked);
  EXPECT_THAT(text, HasSubstr("Blocked"));
  EXPECT_THAT(text, HasSubstr("otor 1"));
  EXPECT_THAT(text, Not(HasSubstr("Complete")));
}

TEST(HandOver, AForcedReleasePrintsItsReason) {
  const std::string text = printed(Ending::forced);
  EXPECT_THAT(text, HasSubstr("Released with things open"));
  EXPECT_THAT(text, HasSubstr("Harvest waits"));
}

TEST(HandOver, PrintsBothReadingsOfWhatWasCorrected) {
  const std::string text = printed(Ending::complete);
  EXPECT_THAT(text, HasSubstr("Corrected on the way"));
  EXPECT_THAT(text, HasSubstr("half B read on flat 3"));
  EXPECT_THAT(text, HasSubstr("Now: Rotor 1, half B read on flat 4."));
}

TEST(HandOver, PrintsTheHeadOfTheChainAsTextAndEveryEntryOnce) {
  const std::string text = printed(Ending::complete);
  EXPECT_THAT(text, HasSubstr(std::string(64, 'a')));
  const auto record = hand_over_record(Ending::complete, 3).open();
  EXPECT_THAT(text, HasSubstr("Record of " + std::to_string(record->entries.size()) + " entries"));
  EXPECT_THAT(text, HasSubstr("Booked in as job 31"));
  EXPECT_THAT(text, HasSubstr("Signed as owner."));
}

TEST(HandOver, CarriesACodeToScan) {
  const Pages pages = hand_over_pages(Ending::complete, 3, head(Paper::a4, UnitSystem::metric), fonts());
  int codes = 0;
  for (const DisplayList& page : pages)
    for (const drawing::Item& item : page.items) codes += std::holds_alternative<drawing::Code>(item) ? 1 : 0;
  EXPECT_EQ(codes, 1);
}

class HandOverLayout : public testing::TestWithParam<std::tuple<Ending, int, Paper>> {};

TEST_P(HandOverLayout, StaysInsideTheMarginsAndNoTextStandsOnAnother) {
  const auto& [ending, rotors, paper] = GetParam();
  const UnitSystem units = paper == Paper::a4 ? UnitSystem::metric : UnitSystem::inch;
  for (const DisplayList& page : hand_over_pages(ending, rotors, head(paper, units), fonts())) {
    EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty());
    EXPECT_THAT(collisions(page, fonts()), testing::IsEmpty());
  }
}
INSTANTIATE_TEST_SUITE_P(All, HandOverLayout,
                         testing::Combine(testing::Values(Ending::complete, Ending::blocked, Ending::forced),
                                          testing::Values(3, 24), testing::Values(Paper::a4, Paper::letter)));

}  // namespace
}  // namespace flatwise::paper
