// Who signed, what the meter showed, and clocks that are wrong: none of it is overwritten, and what cannot be is refused by its field.
// Days and readings are invented; the server under test stands still at kHouseNow.
#include <gtest/gtest.h>

#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

class People : public testing::Test {
 protected:
  Answer sent(const std::string& operation, const json& body) {
    const Operation& op = contract_.operation(operation);
    Ask ask = asks_.good(op);
    ask.body = body.dump();
    Answer answer = house_.ask(ask);
    EXPECT_EQ(contract_.faults(operation, answer), "");
    return answer;
  }
  /// The first problem, as "409 name http.name_taken".
  std::string refusal(const std::string& operation, const json& body) {
    const std::int64_t before = house_.last_change();
    const Answer answer = sent(operation, body);
    EXPECT_EQ(house_.last_change(), before) << "something was kept";
    const json reply = json::parse(answer.body);
    if (!reply.contains("problems")) return std::to_string(answer.status);
    const json& first = reply["problems"][0];
    return std::to_string(answer.status) + " " + std::string{first["field"]} + " " + std::string{first["code"]};
  }
  [[nodiscard]] json hours(const std::string& day, const std::string& typed) const {
    return {{"id", fresh_id()}, {"by", house_.known().bench}, {"day", day}, {"hours", typed}};
  }
  json readings() {
    const json machine = json::parse(house_.ask(get("/api/machines/" + house_.known().machine)).body);
    facts_ = machine["facts"].dump();
    return machine["readings"];
  }
  /// Answer to a note in job 31 with that time on the tablet.
  Answer note_at(const std::string& at) {
    json body = json::parse(entries_text({house_.known().lead, house_.known().last_31}, {note("seen")}));
    body["entries"][0]["at"] = at;
    return sent("record", body);
  }

  /// A booking of the known machine, with what else the entry says.
  json booking(const std::string& number, const json& more, const json& round = json::object()) {
    json body{{"kind", "booked_in"},
              {"number", number},
              {"machine", house_.known().machine},
              {"shaft", house_.known().version},
              {"complaint", "rattles"}};
    body.update(more);
    json all = json::parse(entries_text({house_.known().lead, ""}, {body.dump()}));
    all["entries"][0].update(round);
    return all;
  }
  Answer to_job(const std::string& job, const json& entries) {
    Answer answer = house_.ask(post("/api/jobs/" + job + "/entries", entries.dump()));
    EXPECT_EQ(contract_.faults("record", answer), "");
    return answer;
  }
  /// Status and first problem of an answer.
  static std::string told(const Answer& answer) {
    const json reply = json::parse(answer.body);
    if (!reply.contains("problems")) return std::to_string(answer.status);
    const json& first = reply["problems"][0];
    return std::to_string(answer.status) + " " + std::string{first["field"]} + " " + std::string{first["code"]};
  }

  House house_;
  Asks asks_{house_.known()};
  Contract contract_;
  std::string facts_;
};

// 2026-11-27: a person sent again under his id with another name took over all that the first had signed.
TEST_F(People, NobodyBecomesSomebodyElse) {
  json person = asks_.body("putPerson");
  person["name"] = "Second bench";
  ASSERT_EQ(sent("putPerson", person).status, 201);
  EXPECT_EQ(refusal("putPerson", person), "201") << "sent twice, kept once";
  for (const json& change : {json{{"name", "Somebody Else"}}, json{{"role", "owner"}}, json{{"active", false}}}) {
    json other = person;
    other.update(change);
    EXPECT_EQ(refusal("putPerson", other), "409 id http.taken") << change;
  }
}

TEST_F(People, TwoAtWorkHaveNotOneName) {
  json person = asks_.body("putPerson");
  person["name"] = "Vera Ríos";
  ASSERT_EQ(sent("putPerson", person).status, 201);
  for (const std::string name : {"Vera Ríos", "vera ríos", " VERA  RÍOS ", "Vera\u00A0Ríos"}) {
    json twin = asks_.body("putPerson");
    twin["name"] = name;
    EXPECT_EQ(refusal("putPerson", twin), "409 name http.name_taken") << name;
  }
  for (const char* operation : {"putPerson", "putCustomer", "putMachine"}) {
    json blank = asks_.body(operation);
    blank["name"] = "   ";
    EXPECT_EQ(refusal(operation, blank), "422 name http.no_name") << operation;
  }
}

// 2026-11-27: 999999 h today, 3 h tomorrow and 5 h in 2199 were all kept, and nobody had read them.
TEST_F(People, AMeterIsReadBySomebodyAndShowsWhatItCan) {
  EXPECT_EQ(refusal("putHours", hours("2026-02-04", "999999 h")), "422 hours shop.hours_jumped");
  EXPECT_EQ(refusal("putHours", hours("2026-02-04", "3 h")), "422 hours shop.hours_fell");
  EXPECT_EQ(refusal("putHours", hours("2026-02-05", "2425 h")), "422 day shop.hours_to_come");
  EXPECT_EQ(refusal("putHours", hours("2199-01-01", "2425 h")), "422 day shop.hours_to_come");
  json nobody = hours("2026-02-04", "2425 h");
  nobody["by"] = fresh_id();
  EXPECT_EQ(refusal("putHours", nobody), "422 by record.no_such_person");
  json anyway = hours("2026-02-04", "3 h");
  anyway["anyway"] = true;
  EXPECT_EQ(refusal("putHours", anyway), "422 note shop.hours_need_note");
  anyway["note"] = "another meter was fitted";
  EXPECT_EQ(sent("putHours", anyway).status, 201);
  const json all = readings();
  EXPECT_EQ(all[0]["id"], anyway["id"]);
  EXPECT_NE(all[0]["by"], "");
  EXPECT_EQ(all[0]["note"], "another meter was fitted");
}

TEST_F(People, AReadingIsCorrectedAndStays) {
  const json wrong = hours("2026-02-04", "2445 h");
  ASSERT_EQ(sent("putHours", wrong).status, 201);
  json right = hours("2026-02-04", "2425 h");
  EXPECT_EQ(refusal("putHours", right), "422 hours shop.hours_fell");
  right["corrects"] = fresh_id();
  EXPECT_EQ(refusal("putHours", right), "422 corrects shop.no_such_hours");
  right["corrects"] = wrong["id"];
  ASSERT_EQ(sent("putHours", right).status, 201);
  EXPECT_EQ(refusal("putHours", right), "201") << "sent twice, kept once";
  json again = hours("2026-02-04", "2430 h");
  again["corrects"] = wrong["id"];
  EXPECT_EQ(refusal("putHours", again), "422 corrects shop.hours_corrected");
  const json all = readings();
  EXPECT_NE(facts_.find("2425"), std::string::npos) << facts_;
  EXPECT_EQ(facts_.find("2445"), std::string::npos) << facts_;
  int struck = 0;
  for (const json& one : all)
    if (one["id"] == wrong["id"]) struck += one["corrected"].get<bool>() ? 1 : 0;
  EXPECT_EQ(struck, 1);
}

// 2026-11-27: a tablet whose clock stood at 2020 made a gauge pass that was past its date.
TEST_F(People, AClockThatCannotBeRightIsToldAndOneThatIsBehindIsNotBelieved) {
  const auto problem = [](const Answer& answer) {
    const json first = json::parse(answer.body)["problems"][0];
    return std::to_string(answer.status) + " " + std::string{first["field"]} + " " + std::string{first["code"]};
  };
  EXPECT_EQ(problem(note_at("2026-02-05T12:00:00.001Z")), "422 entries[0].at http.clock_ahead");
  EXPECT_EQ(note_at("2026-02-05T12:00:00.000Z").status, 201) << "a day ahead may be another time zone, badly set";
  EXPECT_EQ(problem(note_at("2020-01-01T00:00:00.000Z")), "422 entries[0].at http.clock_behind");
  EXPECT_EQ(note_at("2026-02-03T00:00:00.000Z").status, 201) << "entered without a network, in order";
  const json entries = json::parse(house_.ask(get("/api/jobs/" + house_.known().job_31 + "/entries")).body)["entries"];
  EXPECT_EQ(entries.back()["at"], "2026-02-03T00:00:00.000Z");
  EXPECT_EQ(entries.back()["received"], "2026-02-04T12:00:00.000Z");
  EXPECT_FALSE(entries.front().contains("received")) << "of the demo nobody knows";
}

// 2026-11-27: what was typed at booking in was held against nothing, and the machine's log never heard of it.
TEST_F(People, TheMeterTypedAtBookingInIsAReadingOfTheMachinesLogOnce) {
  const auto tried = [&](const char* hours) {
    return told(to_job(fresh_id(), booking("80", {{"hour_meter", hours}})));
  };
  const std::size_t before = readings().size();
  EXPECT_EQ(tried("3 h"), "422 entries[0].body.hour_meter shop.hours_fell");
  EXPECT_EQ(tried("9999 h"), "422 entries[0].body.hour_meter shop.hours_jumped");
  EXPECT_EQ(readings().size(), before);
  const std::string job = fresh_id();
  const json good = booking("80", {{"hour_meter", "2425 h"}});
  EXPECT_EQ(to_job(job, good).status, 201);
  EXPECT_EQ(to_job(job, good).status, 201) << "sent twice";
  const json noted = readings();
  ASSERT_EQ(noted.size(), before + 1) << noted.dump(1);
  EXPECT_NE(noted[0].dump().find("2425"), std::string::npos) << noted[0];
  EXPECT_EQ(refusal("putHours", hours("2026-02-04", "2423 h")), "422 hours shop.hours_fell") << "it counts from now on";

  // A corrected booking corrects its reading; with the same hours it adds nothing.
  const std::string first = good["entries"][0]["id"];
  const auto corrected = [&](const std::string& of, const char* hours) {
    json entries = booking("80", {{"hour_meter", hours}}, {{"follows", of}, {"corrects", {of}}});
    EXPECT_EQ(to_job(job, entries).status, 201);
    return std::string{entries["entries"][0]["id"]};
  };
  const std::string same = corrected(first, "2425 h");
  EXPECT_EQ(readings().size(), before + 1);
  corrected(same, "2422 h");
  const json after = readings();
  ASSERT_EQ(after.size(), before + 2) << after.dump(1);
  int struck = 0;
  for (const json& one : after) struck += one.value("corrected", false) ? 1 : 0;
  EXPECT_EQ(struck, 1);
  EXPECT_NE(facts_.find("2422"), std::string::npos) << facts_;
}

// 2026-11-27: a tablet whose clock stood at 2020 began a job six years old.
TEST_F(People, AJobIsNotBookedInLongAgo) {
  const auto booked = [&](const char* number, const char* at) {
    return told(to_job(fresh_id(), booking(number, json::object(), {{"at", at}})));
  };
  EXPECT_EQ(booked("81", "2020-01-01T00:00:00.000Z"), "422 entries[0].at http.clock_long_ago");
  EXPECT_EQ(booked("81", "2026-02-06T00:00:00.000Z"), "422 entries[0].at http.clock_ahead");
  EXPECT_EQ(booked("81", "2026-01-10T00:00:00.000Z"), "201") << "three weeks without a network";
}

TEST_F(People, WhoLeavesIsKeptAndEntersNothingMore) {
  const Operation& op = contract_.operation("setAtWork");
  const auto at_work = [&](const std::string& who, const std::string& by, bool active) {
    Ask ask = asks_.good(op);
    ask.target = "/api/people/" + who + "/at-work";
    ask.body = json{{"by", by}, {"active", active}}.dump();
    const Answer answer = house_.ask(ask);
    EXPECT_EQ(contract_.faults("setAtWork", answer), "");
    return told(answer);
  };
  const std::string bench = house_.known().bench, lead = house_.known().lead;
  EXPECT_EQ(at_work(lead, bench, false), "422 by record.wrong_role");
  EXPECT_EQ(at_work(lead, lead, false), "422 active shop.last_of_role") << "nobody could sign as the lead any more";
  EXPECT_EQ(at_work(fresh_id(), lead, false), "404 id http.not_there");
  EXPECT_EQ(at_work(bench, lead, false), "200");
  EXPECT_EQ(at_work(bench, lead, false), "200") << "sent twice";
  EXPECT_EQ(told(to_job(house_.known().job_31,
                        json::parse(entries_text({bench, house_.known().last_31}, {note("still here")})))),
            "422 entries[0].by record.no_such_person");
  const json people = json::parse(house_.ask(get("/api/people")).body)["people"];
  int left = 0;
  for (const json& one : people) left += one.value("active", true) ? 0 : 1;
  EXPECT_EQ(left, 1) << people;
  EXPECT_EQ(at_work(bench, lead, true), "200");
}

// 2026-11-27: whoever wanted to put right a released record was told 'only notes', and the note did not say that it came after.
TEST_F(People, AfterTheReleaseANoteSaysSoAndNothingElseGoesIn) {
  const std::string job = house_.known().job_34, path = "/api/jobs/" + job;
  const auto last = [&] {
    const json all = json::parse(house_.ask(get(path + "/entries")).body);
    return std::string{all["entries"].back()["id"]};
  };
  const auto sends = [&](const std::string& body) {
    return told(to_job(job, json::parse(entries_text({house_.known().lead, last()}, {body}))));
  };
  ASSERT_EQ(sends(R"({"kind":"released","forced":true,"reason":"goes out as it is"})"), "201");
  EXPECT_EQ(sends(R"({"kind":"answered","question":"power_locked_off","number":0,"reply":"yes"})"),
            "422 entries[0].body.kind record.released_already");
  EXPECT_EQ(sends(note("Entry 1: the complaint was about rotor 2. Misheard.")), "201");
  const Answer bench = house_.ask(get(path + "/bench?stage=release"));
  EXPECT_NE(bench.body.find("After the release: "), std::string::npos) << bench.body.substr(0, 400);
}

}  // namespace
}  // namespace flatwise::api_test
