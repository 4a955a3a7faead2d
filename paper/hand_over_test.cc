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

std::string printed(Ending ending, int rotors = 3) {
  const Folder folder;
  return squeezed(text_of(hand_over_pages(ending, rotors, sample_head(), fonts()), folder));
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
  return squeezed(text_of(hand_over_pages(record, sample_head(Paper::a4, units), fonts()), folder));
}

TEST(HandOver, SaysTheUnitOfARangeOnceAndBeginsEachLineWithACapital) {
  const std::string text = printed(Ending::blocked);
  EXPECT_THAT(text, HasSubstr("Nut A came off."));
  EXPECT_THAT(text, Not(HasSubstr("nut A came off.")));
  const auto open = hand_over_record(Ending::blocked, 3).open();
  const auto& bore = open->shaft.rotor(1).hub.bore;
  EXPECT_THAT(text, HasSubstr(figure_only(any(bore.least), {}) + " to " + figure_only(any(bore.greatest), {})));
}

// Source: 40 °C less 14 °C; 4.3 mm/s against 4.5 mm/s; all given in hand_over_samples.h.
TEST(HandOver, PrintsTheRunAgainstItsLimits) {
  const std::string text = printed(Ending::complete);
  EXPECT_THAT(text, HasSubstr("Ran 40 min, at least 20"));
  EXPECT_THAT(text, HasSubstr("Hanger A: 26.0"));
  EXPECT_THAT(text, HasSubstr("the room, at most 40"));
  EXPECT_THAT(text, HasSubstr("Hanger B: 4.30"));
  EXPECT_THAT(text, HasSubstr("IN"));
}

TEST(HandOver, WithoutLimitsTheRunIsPrintedAndNotJudged) {
  job::SampleRecord record{{.rotors = 3}};
  record.do_all();
  run(record);
  const std::string text = printed_of(record);
  EXPECT_THAT(text, HasSubstr("Hanger A: 26.0"));
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

// 2026-11-27: whose machine it was stood nowhere on the sheet that is handed over with it.
TEST(HandOver, NamesMachineAndCustomerAboveTheVerdict) {
  const std::string text = printed(Ending::complete);
  const std::size_t machine = text.find("Looseners 2"), customer = text.find("Orchard growers, east");
  ASSERT_NE(machine, std::string::npos);
  ASSERT_NE(customer, std::string::npos);
  EXPECT_LT(std::max(machine, customer), text.find("Complete"));
}

// 2026-11-27: a signature that the rules held void stood on the sheet as made.
TEST(HandOver, ASignatureThatIsVoidIsABlankAgain) {
  job::SampleRecord record = hand_over_record(Ending::blocked, 3);
  record.write(job::Signed{job::Role::bench}, "bench");
  EXPECT_THAT(printed_of(record), HasSubstr("Signed Bench 3 Feb"));
  record.write(job::Withdrawn{"slip"}, "apprentice", record.live(job::MarkSeen{1, Half::b, 3}));
  EXPECT_THAT(printed_of(record), Not(HasSubstr("Signed Bench 3 Feb")));
}

TEST(HandOver, CarriesACodeToScan) {
  const Pages pages = hand_over_pages(Ending::complete, 3, sample_head(), fonts());
  int codes = 0;
  for (const DisplayList& page : pages)
    for (const drawing::Item& item : page.items) codes += std::holds_alternative<drawing::Code>(item) ? 1 : 0;
  EXPECT_EQ(codes, 1);
}

// --- what somebody typed -----------------------------------------------------------------------------------------------

struct Typed {
  std::string text, printed;
};
const Typed kTyped[] = {{"hot\nat end A", "hot at end A"},
                        {"hot\u2028at end A", "hot at end A"},
                        {"hot 🙂 A", "hot [U+1F642] A"},
                        {"中文", "[U+4E2D][U+6587]"}};

/// A job with the text in every field that takes free text, and in the names. The job is forced out by the same words.
std::pair<job::SampleRecord, Head> filled_with(const std::string& text) {
  job::SampleRecord record{served(3)};
  record.workshop().name = text;
  record.do_all();
  run(record);
  record.write(job::BookedIn{text, "machine", "shaft", text, {}, {}}, "lead", {"e1"});
  record.write(job::NoteWritten{job::at_rotor(1), job::Stage::inspection, text});
  record.write(job::PhotoTaken{job::at_rotor(1), job::Stage::inspection, std::string(64, 'b'), "image/jpeg", text});
  record.write(job::CustomerSaid{Reply::yes, text, text, {}}, "lead");
  record.write(job::GaugeAccepted{"G1", text}, "lead");
  record.write(job::FittedRead{1, text}, "bench", record.live(job::FittedRead{1, text}));
  record.write(job::LabelPutBack{1, text}, "bench", record.live(job::LabelPutBack{1, text}));
  record.write(job::Ordered{text, 1, {}}, "lead");
  record.write(job::Withdrawn{text}, "lead", {record.write(job::NoteWritten{{}, job::Stage::plan, text})});
  record.write(job::Released{true, text}, "lead");
  Head h = sample_head();
  h.shaft = h.job = h.workshop = text;
  return {std::move(record), h};
}

// 2026-11-27: Enter or an emoji in a complaint kept this record from being printed, for good.
TEST(HandOver, PrintsWhateverSomebodyTyped) {
  for (const auto& [typed, wanted] : kTyped) {
    const auto [record, h] = filled_with(typed);
    const Folder folder;
    const Pages pages = hand_over_pages(record, h, fonts(), {typed, typed, typed});
    const std::string text = squeezed(text_of(pages, folder));
    EXPECT_THAT(text, HasSubstr(wanted));
    for (const DisplayList& page : pages) {
      EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty()) << typed;
      EXPECT_THAT(collisions(page, fonts()), testing::IsEmpty()) << typed;
    }
  }
}

// 2026-11-27: job 31 of the demo, blocked for more than a page: the first page was blank, the last reasons stood off the second.
TEST(HandOver, AFrameOfManyReasonsGoesOnOverThePage) {
  const job::SampleRecord record = hand_over_record(Ending::blocked, 3);
  const Shaft& shaft = record.shaft();
  HandOverSheet sheet{.head = sample_head(), .shaft = &shaft};
  sheet.verdict = "Blocked";
  for (int i = 1; i <= 70; ++i) sheet.because.push_back("Reason number " + std::to_string(i) + ": look again.");
  const Pages pages = hand_over_sheet(sheet, fonts());
  const Folder folder;
  EXPECT_THAT(squeezed(text_of({pages.front()}, folder)), testing::AllOf(HasSubstr("Blocked"), HasSubstr("number 1:")));
  const std::string text = squeezed(text_of(pages, folder));
  for (int i = 1; i <= 70; ++i) EXPECT_THAT(text, HasSubstr("number " + std::to_string(i) + ":"));
  for (const DisplayList& page : pages) {
    EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty());
    EXPECT_THAT(collisions(page, fonts()), testing::IsEmpty());
  }
}

class HandOverLayout : public testing::TestWithParam<std::tuple<Ending, int, Paper>> {};

TEST_P(HandOverLayout, StaysInsideTheMarginsAndNoTextStandsOnAnother) {
  const auto& [ending, rotors, paper] = GetParam();
  const UnitSystem units = paper == Paper::a4 ? UnitSystem::metric : UnitSystem::inch;
  for (const DisplayList& page : hand_over_pages(ending, rotors, sample_head(paper, units), fonts())) {
    EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty());
    EXPECT_THAT(collisions(page, fonts()), testing::IsEmpty());
  }
}
INSTANTIATE_TEST_SUITE_P(All, HandOverLayout,
                         testing::Combine(testing::Values(Ending::complete, Ending::blocked, Ending::forced),
                                          testing::Values(3, 24), testing::Values(Paper::a4, Paper::letter)));

}  // namespace
}  // namespace flatwise::paper
