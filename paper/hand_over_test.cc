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

std::string printed_of(const job::SampleRecord& record, UnitSystem units = UnitSystem::metric) {
  const Folder folder;
  return squeezed(text_of(hand_over_pages(record, head(Paper::a4, units), fonts()), folder));
}

// Source: 40 °C less 14 °C; 4.3 mm/s against 4.5 mm/s; all given in hand_over_samples.h.
TEST(HandOver, PrintsTheRunAgainstItsLimits) {
  const std::string text = printed(Ending::complete);
  EXPECT_THAT(text, HasSubstr("Ran 40 min, at least 20"));
  EXPECT_THAT(text, HasSubstr("hanger A: 26.0"));
  EXPECT_THAT(text, HasSubstr("the room, at most 40"));
  EXPECT_THAT(text, HasSubstr("hanger B: 4.30"));
  EXPECT_THAT(text, HasSubstr("IN"));
}

TEST(HandOver, WithoutLimitsTheRunIsPrintedAndNotJudged) {
  job::SampleRecord record{{.rotors = 3}};
  record.do_all();
  run(record);
  const std::string text = printed_of(record);
  EXPECT_THAT(text, HasSubstr("hanger A: 26.0"));
  EXPECT_THAT(text, Not(HasSubstr("at most")));
}

TEST(HandOver, ARunThatIsOutBlocksAndSaysSo) {
  job::SampleRecord record{served(3)};
  record.do_all();
  run(record);
  const job::RunRead hot{job::RunQuantity::hanger, record.station("hanger A"), {any(celsius(80)), {}, "80 °C"}, "T1"};
  record.write(hot, "bench", record.live(hot));
  const std::string text = printed_of(record);
  EXPECT_THAT(text, HasSubstr("Blocked"));
  EXPECT_THAT(text, HasSubstr("Too hot at hanger A"));
  EXPECT_THAT(text, HasSubstr("OUT"));
}

// Source: 2421.2 h at the job and 400 h by the definition, added up by hand.
TEST(HandOver, SaysWhenTheShaftIsDueAgain) {
  const std::string text = printed(Ending::complete);
  EXPECT_THAT(text, HasSubstr("Next due"));
  EXPECT_THAT(text, HasSubstr("2821.2"));
  EXPECT_THAT(text, HasSubstr("before next season"));
  EXPECT_THAT(text, HasSubstr("Check the end nuts again after 10"));
  EXPECT_THAT(text, Not(HasSubstr("h rms"))) << "it is no reading of the run";
}

TEST(HandOver, SaysOfTheNextTimeOnlyWhatIsKnown) {
  const auto with = [](const Service& service) {
    job::SampleRecord record{{.rotors = 3, .service = service}};
    record.do_all();
    return printed_of(record);
  };
  EXPECT_THAT(with({}), Not(HasSubstr("Next due")));
  EXPECT_THAT(with({.seasons = 2}), HasSubstr("in 2 seasons"));
  EXPECT_THAT(with({.nuts_again = minutes(600)}), HasSubstr("nuts, after 10"));
  job::SampleRecord unread{{.rotors = 3, .service = {.every = 400.0 * minutes(60)}}};
  unread.write(job::BookedIn{"31", "machine", "shaft", "noisy", {}, {}}, "lead");
  const std::string text = printed_of(unread);
  EXPECT_THAT(text, HasSubstr("after 400"));
  EXPECT_THAT(text, HasSubstr("The hour meter was not read at this job."));
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
