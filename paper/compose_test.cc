// What is filled into the sheets of a job. The shaft is invented.
#include "paper/compose.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/units/format.h"
#include "job/job_samples.h"
#include "paper/sheets_in_test.h"

namespace flatwise::paper {
namespace {

/// Text of one sheet, for taking rotor 1 off and putting it back.
std::string sheet_of(const job::SampleRecord& record, const std::string& name) {
  const auto job = record.open();
  SheetOrder order;
  order.shaft = &job->shaft;
  order.workshop = &job->workshop;
  order.bench = &job->state.bench;
  order.rotors = {1};
  order.names = {name};
  const Folder folder;
  const auto sheets = compose(order, fonts());
  if (!sheets) return "refused";
  return squeezed(text_of(sheets->front().pages, folder));
}

// Source: the lengths of the sample's parts, added up here.
TEST(Compose, TheWayBackSaysHowLongTheStackShouldBeBeforeTheNuts) {
  const job::SampleRecord record;
  Length sum;
  for (const Station& s : record.shaft().stations())
    if (s.kind == StationKind::rotor)
      sum = sum + record.shaft().rotor(s.number).half.nominal * 2.0;
    else if (s.kind != StationKind::nut)
      sum = sum + s.length.nominal;
  const std::string text = sheet_of(record, "assembly");
  const std::size_t stack = text.find("Stack length");
  ASSERT_NE(stack, std::string::npos) << text;
  const std::string whole = std::to_string(static_cast<int>(sum.si() * 1e3));
  EXPECT_NE(text.find(whole + ".", stack), std::string::npos) << whole << " in " << text.substr(stack, 80);
  EXPECT_LT(stack, text.find("Nut at end A"));
}

// 2026-11-27: what the side play was when the machine came in stood on no sheet at the bench.
TEST(Compose, TheBenchSheetSaysTheSidePlayAsItCameIn) {
  job::SampleRecord record;
  record.book_in();
  record.read_play(1, 0.9);
  const std::string text = sheet_of(record, "bench");
  EXPECT_NE(text.find("Side play, came in"), std::string::npos) << text;
  EXPECT_NE(text.find("0.9"), std::string::npos) << text;
}

// 2026-11-28: a side play read at a hanging rotor stood there as if the rotor had been carried.
TEST(Compose, TheBenchSheetSaysHowTheRotorWasHeldWhenItHung) {
  job::SampleRecord record;
  record.book_in();
  job::PlayRead hung{1, {any(millimetres(0.9)), {}, "0.9 mm"}, "L1", {}};
  hung.held = Held::hanging;
  hung.push = Entered{any(newtons(30)), {}, "30 N"};
  record.write(hung);
  const std::string text = sheet_of(record, "bench");
  EXPECT_NE(text.find("0.9 mm, hanging, pushed 30 N"), std::string::npos) << text;
}

// 2026-11-28: what the fit means for bearing and hub stood at the page only.
TEST(Compose, TheBenchSheetSaysWhatTheFitMeansForTheBearing) {
  job::SampleRecord record;
  record.book_in();
  record.agree();
  record.take_off();
  record.inspect();
  record.lay_out();
  const std::string text = sheet_of(record, "bench");
  EXPECT_NE(text.find("Clearance left in the bearing"), std::string::npos) << text;
  EXPECT_NE(text.find("Tight enough not to creep from"), std::string::npos) << text;
}

}  // namespace
}  // namespace flatwise::paper
