// Entries over the API: sent twice, changed, corrected, withdrawn, and two people who do not agree.
#include <gtest/gtest.h>

#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

class Entries : public testing::Test {
 protected:
  [[nodiscard]] std::string path() const { return "/api/jobs/" + house_.known().job_31; }
  Answer send(const std::string& text, const std::vector<std::string>& headers = {}) {
    Ask ask = post(path() + "/entries", text);
    ask.headers.insert(ask.headers.end(), headers.begin(), headers.end());
    const Answer answer = house_.ask(ask);
    EXPECT_EQ(contract_.faults("record", answer), "");
    return answer;
  }
  json got(const std::string& what) {
    const Answer answer = house_.ask(get(path() + what));
    EXPECT_EQ(answer.status, 200) << answer.body;
    return json::parse(answer.body);
  }
  json entries() { return got("/entries")["entries"]; }
  [[nodiscard]] Author author(const std::string& by, std::vector<std::string> corrects = {}) const {
    return {by, house_.known().last_31, std::move(corrects)};
  }
  static std::string mark(int flat) {
    return json{{"kind", "mark_seen"}, {"rotor", 4}, {"half", "b"}, {"flat", flat}}.dump();
  }
  /// Ids of the marks of rotor 4, half b, in the order they came.
  std::vector<std::string> marks() {
    std::vector<std::string> ids;
    for (const json& e : entries())
      if (e["body"]["kind"] == "mark_seen" && e["body"]["rotor"] == 4 && e["body"]["half"] == "b")
        ids.push_back(e["id"]);
    return ids;
  }

  House house_;
  Contract contract_;
};

TEST_F(Entries, SentTwiceTheyAreKeptOnce) {
  const std::string text = entries_text(author(house_.known().lead), {note("one"), note("two")});
  const json first = json::parse(send(text).body);
  const std::size_t count = entries().size();
  const std::int64_t change = house_.last_change();
  const Answer again = send(text, {"If-Match: \"" + std::string(64, '0') + "\""});  // A resend is no change of the job.
  EXPECT_EQ(again.status, 201);
  const json second = json::parse(again.body);
  EXPECT_EQ(entries().size(), count);
  EXPECT_EQ(house_.last_change(), change);
  for (std::size_t i = 0; i < 2; ++i) {
    EXPECT_EQ(first["saved"][i]["fresh"], true);
    EXPECT_EQ(second["saved"][i]["fresh"], false);
    for (const char* same : {"id", "number", "hash"}) EXPECT_EQ(first["saved"][i][same], second["saved"][i][same]);
  }
  EXPECT_EQ(first["head"], second["head"]);
}

TEST_F(Entries, PartOfThemAgainAndOneMoreKeepsTheOneMore) {
  const std::vector<std::string> ids{fresh_id(), fresh_id()};
  ASSERT_EQ(send(entries_text(author(house_.known().lead), {note("one")}, ids)).status, 201);
  const json saved = json::parse(send(entries_text(author(house_.known().lead), {note("one"), note("two")}, ids)).body);
  EXPECT_EQ(saved["saved"][0]["fresh"], false);
  EXPECT_EQ(saved["saved"][1]["fresh"], true);
}

TEST_F(Entries, OneIdCannotSayTwoThings) {
  const std::string id = fresh_id();
  ASSERT_EQ(send(entries_text(author(house_.known().lead), {note("one")}, {id})).status, 201);
  const std::int64_t change = house_.last_change();
  EXPECT_EQ(send(entries_text(author(house_.known().lead), {note("two")}, {id})).status, 409);
  EXPECT_EQ(send(entries_text(author(house_.known().bench), {note("one")}, {id})).status, 409);
  EXPECT_EQ(send(entries_text(author(house_.known().lead), {note("three"), note("two")}, {fresh_id(), id})).status,
            409);
  EXPECT_EQ(house_.last_change(), change);
}

TEST_F(Entries, OnlyOntoTheHeadThatWasSeen) {
  const std::string tag = house_.ask(get(path())).header("etag");
  ASSERT_EQ(send(entries_text(author(house_.known().lead), {note("one")}), {"If-Match: " + tag}).status, 201);
  const std::int64_t change = house_.last_change();
  EXPECT_EQ(send(entries_text(author(house_.known().lead), {note("two")}), {"If-Match: " + tag}).status, 412);
  EXPECT_EQ(house_.last_change(), change);
  EXPECT_EQ(send(entries_text(author(house_.known().lead), {note("two")}), {"If-Match: *"}).status, 201);
}

TEST_F(Entries, TwoWhoDoNotAgreeAreBothHeardUntilSomebodyDecides) {
  const std::vector<std::string> before = marks();
  ASSERT_FALSE(before.empty());
  const std::string at_bench = fresh_id(), at_lead = fresh_id();
  ASSERT_EQ(send(entries_text(author(house_.known().bench, before), {mark(2)}, {at_bench})).status, 201);
  ASSERT_EQ(send(entries_text(author(house_.known().lead, before), {mark(3)}, {at_lead})).status, 201);
  EXPECT_EQ(marks().size(), before.size() + 2);
  const auto disagree = [&] {
    const std::string shown = got("/bench?stage=timing").dump();
    return shown.find("\"disagree\"") != std::string::npos;
  };
  EXPECT_TRUE(disagree());
  ASSERT_EQ(send(entries_text(author(house_.known().lead, {at_bench, at_lead}), {mark(3)})).status, 201);
  EXPECT_FALSE(disagree());
  EXPECT_EQ(marks().size(), before.size() + 3) << "nothing goes away";
}

TEST_F(Entries, ACorrectionHoldsAndWhatWasWithdrawnIsOpenAgain) {
  const std::string report = got("/report").dump();
  ASSERT_EQ(send(entries_text(author(house_.known().bench, marks()), {mark(1)})).status, 201);
  const std::string corrected = got("/report").dump();
  EXPECT_NE(corrected, report) << "the demo's job 31 has rotor 4 set wrong, or the mark says so no more";
  const std::vector<std::string> all = marks();
  ASSERT_EQ(
      send(entries_text(author(house_.known().bench, all), {R"({"kind":"withdrawn","reason":"not looked"})"})).status,
      201);
  EXPECT_NE(got("/report").dump(), corrected);
  EXPECT_EQ(marks(), all);
}

TEST_F(Entries, ACorrectionOfAnotherQuestionIsRefused) {
  const Answer answer = send(entries_text(author(house_.known().bench, {house_.known().last_31}), {mark(1)}));
  EXPECT_EQ(answer.status, 422);
  EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], "entries[0].corrects[0]");
}

TEST_F(Entries, AJobBeginsWithItsBooking) {
  const std::string job = fresh_id();
  const json booking{{"kind", "booked_in"},
                     {"number", "77"},
                     {"machine", house_.known().machine},
                     {"shaft", house_.known().version},
                     {"complaint", "<script>alert(1)</script>"},
                     {"hour_meter", "2430 h"}};
  const std::string text = entries_text({house_.known().lead, ""}, {booking.dump()});
  const Answer made = house_.ask(post("/api/jobs/" + job + "/entries", text));
  EXPECT_EQ(made.status, 201) << made.body;
  EXPECT_EQ(contract_.faults("record", made), "");
  EXPECT_EQ(json::parse(house_.ask(get("/api/jobs/" + job)).body)["number"], "77");
  // Another job of that number.
  const std::int64_t change = house_.last_change();
  const std::string twin = entries_text({house_.known().lead, ""}, {booking.dump()});
  EXPECT_EQ(house_.ask(post("/api/jobs/" + fresh_id() + "/entries", twin)).status, 409);
  EXPECT_EQ(house_.last_change(), change);
}

TEST_F(Entries, WhatIsTypedIsTextAndNeverMarkup) {
  const std::string typed = "<script>alert(1)</script>\" onload=\"x & </text>";
  const std::string job = fresh_id();
  const json booking{{"kind", "booked_in"},
                     {"number", "78"},
                     {"machine", house_.known().machine},
                     {"shaft", house_.known().version},
                     {"complaint", typed}};
  const std::string text = entries_text({house_.known().lead, ""}, {booking.dump()});
  ASSERT_EQ(house_.ask(post("/api/jobs/" + job + "/entries", text)).status, 201);
  const Answer list = house_.ask(get("/api/jobs/" + job + "/entries"));
  EXPECT_EQ(list.header("content-type"), "application/json");
  EXPECT_EQ(list.header("x-content-type-options"), "nosniff");
  EXPECT_EQ(json::parse(list.body)["entries"][0]["body"]["complaint"], typed);
  for (const char* name : {"tear-down", "bench", "kit", "timing-map", "assembly", "labels", "workings", "hand-over"}) {
    const Answer sheet = house_.ask(get("/api/jobs/" + job + "/sheets/" + name + "?format=svg"));
    EXPECT_NE(sheet.status, 500) << sheet.body;
    if (sheet.status != 200) continue;
    EXPECT_EQ(sheet.body.find("<script"), std::string::npos) << name;
    EXPECT_NE(sheet.header("content-security-policy").find("default-src 'none'"), std::string::npos);
  }
}

}  // namespace
}  // namespace flatwise::api_test
