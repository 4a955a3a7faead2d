// Gauges and stock over HTTP: what is refused and by which field, that nothing noted is overwritten, and that a certificate of today
// makes no reading of yesterday better.
#include <gtest/gtest.h>

#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

class Shop : public testing::Test {
 protected:
  json asked(const std::string& target) { return json::parse(house_.ask({.target = target}).body); }
  Answer sent(const std::string& id, const json& body) {
    Ask ask = asks_.good(contract_.operation(id));
    ask.body = body.dump();
    Answer answer = house_.ask(ask);
    EXPECT_EQ(contract_.faults(id, answer), "");
    return answer;
  }
  /// A body that is right but for these fields: refused, and the first problem is of `field`.
  void refused(const std::string& id, const json& change, const std::string& field) {
    json body = asks_.body(id);
    body.update(change);
    const auto before = house_.last_change();
    const Answer answer = sent(id, body);
    EXPECT_EQ(answer.status, 422) << id << " " << change.dump() << ": " << answer.body.substr(0, 300);
    const json reply = json::parse(answer.body);
    EXPECT_EQ(reply["problems"][0]["field"], field) << reply.dump();
    EXPECT_EQ(house_.last_change(), before) << id << " kept something";
  }
  json gauge(const std::string& id) {
    const json view = asked("/api/gauges");
    for (const json& g : view["gauges"])
      if (g["id"] == id) return g;
    return nullptr;
  }
  json part(const std::string& number) {
    const json view = asked("/api/stock");
    for (const json& p : view["stock"])
      if (p["part_number"] == number) return p;
    return nullptr;
  }

  House house_;
  Asks asks_{house_.known()};
  Contract contract_;
};

TEST_F(Shop, OnlyTheLeadAnswersForGauges) {
  for (const char* id : {"addGauge", "noteCalibration"}) {
    refused(id, {{"by", house_.known().bench}}, "by");
    refused(id, {{"by", fresh_id()}}, "by");
  }
}

TEST_F(Shop, CertificatesThatCannotBeAreNamedWithTheirField) {
  for (const char* id : {"addGauge", "noteCalibration"}) {
    refused(id, {{"day", "2999-01-01"}, {"until", "2999-06-01"}}, "day");
    refused(id, {{"until", "2026-02-02"}}, "until");
    for (const char* typed : {"-1 µm", "1", "nan mm", "1e999 mm", "60 %", "11 mm"})
      refused(id, {{"expanded", typed}}, "expanded");
    refused(id, {{"who", ""}}, "who");
  }
  refused("noteCalibration", {{"gauge", "BG-99"}}, "gauge");
  refused("noteCalibration", {{"expanded", "4 %"}}, "expanded");  // It had micrometres.
  refused("noteCalibration", {{"gauge", "TH-1"}, {"expanded", "4 %"}}, "expanded");
  refused("noteCalibration", {{"corrects", fresh_id()}}, "corrects");
  refused("addGauge", {{"setting_ring", "100 mm"}}, "setting_ring_expanded");
  refused("addGauge", {{"repeatability_readings", 20}}, "repeatability");
  refused("addGauge", {{"least", "2 in"}, {"greatest", "1 in"}}, "least");
  refused("addGauge", {{"use", "sundial"}}, "use");
}

TEST_F(Shop, WhatWasNotedStaysAndTheLastHolds) {
  json first = asks_.body("noteCalibration");
  const json before = gauge("BG-1");
  ASSERT_EQ(sent("noteCalibration", first).status, 201);
  json second = asks_.body("noteCalibration");
  second["day"] = "2026-02-03";
  second["expanded"] = "0.0001 in";
  ASSERT_EQ(sent("noteCalibration", second).status, 201);
  const json now = gauge("BG-1");
  ASSERT_EQ(now["notes"].size(), 3U);  // With the one that the demo brings.
  EXPECT_EQ(now["notes"][0]["id"], second["id"]);
  EXPECT_EQ(now["notes"][1]["who"], "A laboratory");
  EXPECT_EQ(now["expanded"], now["notes"][0]["expanded"]);
  EXPECT_NE(now["came_with"].get<std::string>().find(before["until"].get<std::string>()), std::string::npos);

  refused("noteCalibration", {{"day", "2026-01-01"}}, "day");  // Older than the last, and corrects nothing.
  json right = asks_.body("noteCalibration");
  right.update({{"day", "2026-01-01"}, {"corrects", second["id"]}});
  refused("noteCalibration", right, "day");  // The first is of 2 February still.
  right["day"] = "2026-02-02";
  ASSERT_EQ(sent("noteCalibration", right).status, 201);
  const json corrected = gauge("BG-1");
  ASSERT_EQ(corrected["notes"].size(), 4U);
  EXPECT_EQ(corrected["notes"][1]["corrected"], true);
}

/// A gauge past its date when it was read: a later certificate does not reach back to that reading.
TEST_F(Shop, ACertificateOfTodayMakesNoReadingOfBeforeBetter) {
  const json report = asked("/api/jobs/" + house_.known().job_31 + "/report");
  json early = asks_.body("noteCalibration");
  early.update({{"gauge", "BG-1"}, {"day", "2025-10-02"}, {"until", "2026-01-02"}});
  ASSERT_EQ(sent("noteCalibration", early).status, 201);
  const std::string past = asked("/api/jobs/" + house_.known().job_31 + "/report").dump();
  EXPECT_NE(past, report.dump());
  EXPECT_NE(past.find("gauge_overdue"), std::string::npos);
  json late = asks_.body("noteCalibration");
  late.update({{"gauge", "BG-1"}, {"day", "2026-10-02"}, {"until", "2036-01-02"}});
  ASSERT_EQ(sent("noteCalibration", late).status, 201);
  EXPECT_EQ(asked("/api/jobs/" + house_.known().job_31 + "/report").dump(), past);
  EXPECT_EQ(gauge("BG-1")["overdue"], false);
}

TEST_F(Shop, MovesThatCannotBeAreNamedWithTheirField) {
  refused("moveStock", {{"by", fresh_id()}}, "by");
  refused("moveStock", {{"part_number", "nothing of this kind"}}, "part_number");
  refused("moveStock", {{"reason", "job"}}, "reason");
  refused("moveStock", {{"reason", "stolen"}}, "reason");
  refused("moveStock", {{"shelf", -1}}, "shelf");
  refused("moveStock", {{"shelf", 1}, {"order", -2}}, "order");
  refused("moveStock", {{"reason", "scrapped"}}, "shelf");
  refused("moveStock", {{"reason", "scrapped"}, {"shelf", -9999}}, "shelf");
  refused("moveStock", {{"reason", "ordered"}, {"shelf", 0}, {"order", -9999}}, "order");
  refused("moveStock", {{"reason", "counted"}, {"shelf", 0}}, "counted");
  refused("moveStock", {{"reason", "counted"}, {"counted", 3}, {"shelf", 1}}, "shelf");
  refused("moveStock", {{"reason", "counted"}, {"counted", -1}, {"shelf", 0}}, "counted");
  refused("putPart", {{"by", fresh_id()}}, "by");
  refused("putPart", {{"least", -1}}, "least");
}

TEST_F(Shop, EveryMoveIsKeptWithItsReasonAndWhoMadeIt) {
  const int lay = part("TH-SEAL-100")["on_shelf"];
  json move = asks_.body("moveStock");
  move.update(
      {{"part_number", "TH-SEAL-100"}, {"reason", "counted"}, {"counted", 2}, {"shelf", 0}, {"why", "shelf 3"}});
  ASSERT_EQ(sent("moveStock", move).status, 201);
  json scrap = asks_.body("moveStock");
  scrap.update({{"part_number", "TH-SEAL-100"}, {"reason", "scrapped"}, {"shelf", -1}, {"why", "lip torn"}});
  ASSERT_EQ(sent("moveStock", scrap).status, 201);
  EXPECT_EQ(part("TH-SEAL-100")["on_shelf"], 1);
  const Answer answer = house_.ask({.target = "/api/stock/moves?limit=2"});
  EXPECT_EQ(contract_.faults("stockMoves", answer), "");
  const json moves = json::parse(answer.body)["moves"];
  ASSERT_EQ(moves.size(), 2U);
  EXPECT_EQ(moves[0]["id"], scrap["id"]);
  EXPECT_EQ(moves[0]["why"], "lip torn");
  EXPECT_EQ(moves[1]["counted"], 2);
  EXPECT_EQ(moves[1]["shelf"], 2 - lay);
  EXPECT_NE(moves[1]["by"], "");

  json least = asks_.body("putPart");
  least.update({{"part_number", "TH-SEAL-100"}, {"name", "seal"}, {"least", 6}});
  const Operation& put = contract_.operation("putPart");
  Ask change = asks_.good(put);
  change.body = least.dump();
  EXPECT_EQ(house_.ask(change).status, 409) << "it is there, and nobody said that he had seen it";
  const std::string tag = part("TH-SEAL-100")["tag"];
  change.headers.push_back("If-Match: " + tag);
  ASSERT_EQ(house_.ask(change).status, 201);
  ASSERT_EQ(house_.ask(change).status, 201) << "sent twice";
  least["least"] = 9;
  change.body = least.dump();
  EXPECT_EQ(house_.ask(change).status, 412) << "somebody else was quicker";
  EXPECT_NE(part("TH-SEAL-100")["tag"], tag);
  EXPECT_EQ(part("TH-SEAL-100")["on_shelf"], 1);
  EXPECT_EQ(part("TH-SEAL-100")["least"], 6);
  EXPECT_NE(part("TH-SEAL-100")["flag"], "none");
}

}  // namespace
}  // namespace flatwise::api_test
