// What may be noted of gauges and stock. Invented ids and days.
#include <gtest/gtest.h>

#include "job/shop_rules.h"

namespace flatwise::job {
namespace {

constexpr Day kToday{2026, 11, 27};

Calibration certificate(Id id, Day day, Day until, Id corrects = {}) {
  Calibration c;
  c.id = std::move(id), c.gauge = "BG-1", c.day = day, c.until = until, c.corrects = std::move(corrects);
  return c;
}
std::vector<std::string> codes(const std::vector<Problem>& problems) {
  std::vector<std::string> out;
  for (const Problem& p : problems) out.push_back(p.field + " " + std::string{p.code.id()});
  return out;
}
using Codes = std::vector<std::string>;

TEST(CalibrationNoted, ADayThatHasBeenAndRunsOutLaterIsRight) {
  EXPECT_EQ(codes(problems_of(certificate("a", kToday, {2026, 11, 28}), {}, kToday)), Codes{});
  EXPECT_EQ(codes(problems_of(certificate("a", {2026, 11, 28}, {2027, 11, 28}), {}, kToday)),
            Codes{"day shop.still_to_come"});
  EXPECT_EQ(codes(problems_of(certificate("a", {2026, 3, 1}, {2026, 3, 1}), {}, kToday)),
            Codes{"until shop.until_before"});
  EXPECT_EQ(codes(problems_of(certificate("a", {2027, 3, 1}, {2026, 3, 1}), {}, kToday)),
            (Codes{"day shop.still_to_come", "until shop.until_before"}));
}

TEST(CalibrationNoted, AnOlderCertificateDoesNotTakeThePlaceOfANewerOneUnlessItCorrectsIt) {
  const Calibration wrong = certificate("wrong", {2026, 6, 1}, {2027, 6, 1});
  const Day earlier{2026, 2, 1}, until{2027, 2, 1};
  EXPECT_EQ(codes(problems_of(certificate("b", earlier, until), {{wrong}}, kToday)),
            Codes{"day shop.older_certificate"});
  EXPECT_EQ(codes(problems_of(certificate("b", {2026, 6, 1}, until), {{wrong}}, kToday)), Codes{});
  EXPECT_EQ(codes(problems_of(certificate("b", earlier, until, "wrong"), {{wrong}}, kToday)), Codes{});
  // What was corrected no longer holds anybody up, and one that is sent again does not stand in its own way.
  const Calibration mended = certificate("mended", earlier, until, "wrong");
  EXPECT_EQ(codes(problems_of(certificate("c", {2026, 3, 1}, until), {{wrong, mended}}, kToday)), Codes{});
  EXPECT_EQ(codes(problems_of(mended, {{wrong, mended}}, kToday)), Codes{});
  Calibration other = certificate("b", earlier, until);
  other.gauge = "BG-2";
  EXPECT_EQ(codes(problems_of(other, {{wrong}}, kToday)), Codes{});
}

TEST(CalibrationNoted, WhatItCorrectsIsOfThisGauge) {
  Calibration other = certificate("a", {2026, 1, 1}, {2027, 1, 1});
  other.gauge = "BG-2";
  EXPECT_EQ(codes(problems_of(certificate("b", kToday, {2027, 1, 1}, "a"), {{other}}, kToday)),
            Codes{"corrects shop.no_such_calibration"});
  EXPECT_EQ(codes(problems_of(certificate("b", kToday, {2027, 1, 1}, "none"), {}, kToday)),
            Codes{"corrects shop.no_such_calibration"});
}

StockMove moved(MoveReason reason, int shelf, int order, std::optional<int> counted = {}) {
  StockMove move;
  move.part_number = "P-1", move.reason = reason, move.shelf = shelf, move.order = order, move.counted = counted;
  return move;
}
std::string field_wrong(const StockMove& move) {
  const auto problem = problem_of(move);
  return problem ? problem->field : "";
}

TEST(StockMoved, EachReasonMovesWhatItMay) {
  using enum MoveReason;
  EXPECT_EQ(field_wrong(moved(counted, 0, 0, 7)), "");
  EXPECT_EQ(field_wrong(moved(counted, 0, 0)), "counted");
  EXPECT_EQ(field_wrong(moved(counted, 1, 0, 7)), "shelf");
  EXPECT_EQ(field_wrong(moved(counted, 0, 1, 7)), "order");
  EXPECT_EQ(field_wrong(moved(ordered, 0, 3)), "");
  EXPECT_EQ(field_wrong(moved(ordered, 0, -3)), "");  // Taken back.
  EXPECT_EQ(field_wrong(moved(ordered, 0, 0)), "order");
  EXPECT_EQ(field_wrong(moved(ordered, 1, 3)), "shelf");
  EXPECT_EQ(field_wrong(moved(ordered, 0, 3, 7)), "counted");
  EXPECT_EQ(field_wrong(moved(received, 3, -3)), "");
  EXPECT_EQ(field_wrong(moved(received, 3, 0)), "");
  EXPECT_EQ(field_wrong(moved(received, 0, 0)), "shelf");
  EXPECT_EQ(field_wrong(moved(received, 3, -4)), "order");
  EXPECT_EQ(field_wrong(moved(received, 3, 1)), "order");
  EXPECT_EQ(field_wrong(moved(scrapped, -1, 0)), "");
  EXPECT_EQ(field_wrong(moved(scrapped, 0, 0)), "shelf");
  EXPECT_EQ(field_wrong(moved(scrapped, -1, -1)), "order");
  EXPECT_EQ(field_wrong(moved(job, 1, 0)), "reason");
}

TEST(StockMoved, NoLessThanNothingIsLeft) {
  Workshop workshop;
  StockItem item;
  item.part_number = "P-1", item.on_shelf = 2, item.on_order = 1;
  workshop.stock.push_back(item);
  const auto field = [&](const StockMove& move) {
    const auto problem = problem_of_level(workshop, move);
    return problem ? problem->field + " " + std::string{problem->code.id()} : "";
  };
  EXPECT_EQ(field(moved(MoveReason::scrapped, -2, 0)), "");
  EXPECT_EQ(field(moved(MoveReason::scrapped, -3, 0)), "shelf shop.not_so_many_there");
  EXPECT_EQ(field(moved(MoveReason::received, 1, -1)), "");
  EXPECT_EQ(field(moved(MoveReason::ordered, 0, -2)), "order shop.not_so_many_there");
  StockMove unknown = moved(MoveReason::ordered, 0, 1);
  unknown.part_number = "P-2";
  EXPECT_EQ(field(unknown), "part_number shop.no_such_part");
}

}  // namespace
}  // namespace flatwise::job
