// Every operation of schemas/api/openapi.json with every status it documents: each answer is one of the contract's, none of the
// contract's was left untried. One test, since the last check is of all that was tried before it.
#include <gtest/gtest.h>

#include <atomic>
#include <cerrno>
#include <nlohmann/json.hpp>

#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

/// Lets all statements, or all file calls, fail while it is set.
struct Broken : store_sqlite::Watch {
  static constexpr int kFull = 13;  // SQLITE_FULL. Source: sqlite.org/rescode.html
  std::atomic<bool> on{false};
  int statement(std::string_view) override { return on ? kFull : 0; }
  int file(std::string_view) override { return on ? ENOSPC : 0; }
};

class EveryOperation : public testing::Test {
 protected:
  Answer expect(House& house, const Operation& op, const Ask& ask, int status) {
    Answer answer = house.ask(ask);
    EXPECT_EQ(answer.status, status) << op.id << ": " << answer.body.substr(0, 400);
    EXPECT_EQ(contract_.faults(op.id, answer), "");
    return answer;
  }
  Answer expect(const std::string& id, const Ask& ask, int status) {
    return expect(house_, contract_.operation(id), ask, status);
  }
  [[nodiscard]] Ask good(const std::string& id) const { return asks_.good(contract_.operation(id)); }
  [[nodiscard]] Ask with_body(const std::string& id, const json& body) const {
    Ask ask = good(id);
    ask.body = body.dump();
    return ask;
  }
  [[nodiscard]] Ask with_header(const std::string& id, const std::string& header) const {
    Ask ask = good(id);
    ask.headers.push_back(header);
    return ask;
  }
  /// Of all operations that have `status`.
  void each(int status, const std::function<void(const Operation&)>& what) {
    for (const Operation& op : contract_.operations())
      if (std::ranges::find(op.statuses, status) != op.statuses.end()) what(op);
  }

  void in_order();
  void unreadable();
  void strangers();
  void not_there();
  void taken_and_overtaken();
  void unchanged();
  void not_possible();
  void ways_that_cannot_be(const Operation& op);
  std::string shaft_without_hangers();
  void shaft_that_cannot_be(const Operation& op);
  void too_large();
  void not_json();
  void letting_in();
  void too_busy();
  void store_full();

  Broken broken_;
  House house_{[this](server::Settings& s) { s.watch = &broken_; }};
  Asks asks_{house_.known()};
  Contract contract_;
};

void EveryOperation::in_order() {
  for (const int status : {200, 201})
    each(status, [&](const Operation& op) {
      // One is there only once it was put, the other only once it was let in.
      if (op.id != "blob" && op.id != "takeBackTablet") expect(house_, op, asks_.good(op), status);
    });
  expect("blob", good("blob"), 200);  // Now that it was put there.
  for (const std::string units : {"metric", "inch"})
    for (const std::string id : {"board", "machine", "bench", "report"}) {
      Ask ask = good(id);
      ask.target += "?units=" + units;
      expect(id, ask, 200);
    }
  for (const std::string kind : {"format=svg", "format=png&page=1", "format=pdf&paper=letter&units=inch"}) {
    Ask ask = good("sheet");
    ask.target += "?" + kind;
    expect("sheet", ask, 200);
  }
  for (const char* stage : {"booking_in", "finding", "plan", "teardown", "inspection", "kit", "press", "timing",
                            "stack", "torque", "test_run", "release"})
    for (const char* more : {"", "&station=4&from=b", "&station=0&step=2"}) {
      Ask ask = good("bench");
      ask.target += std::string{"?stage="} + stage + more;
      expect("bench", ask, 200);
    }
}

void EveryOperation::unreadable() {
  each(400, [&](const Operation& op) {
    Ask ask = asks_.good(op);
    ask.target += "?nonsense=1";
    expect(house_, op, ask, 400);
    if (!op.takes_json) return;
    ask = asks_.good(op);
    ask.body = ask.body.substr(0, ask.body.size() - 1);
    expect(house_, op, ask, 400);
  });
}

void EveryOperation::strangers() {
  each(403, [&](const Operation& op) {
    Ask ask = asks_.good(op);
    ask.headers.emplace_back("Host: elsewhere.example");
    expect(house_, op, ask, 403);
  });
}

void EveryOperation::not_there() {
  each(404, [&](const Operation& op) {
    Ask ask = asks_.good(op);
    ask.target = op.path;
    for (const auto& [place, value] : {std::pair<std::string, std::string>{"{id}", fresh_id()},
                                       {"{hash}", std::string(64, 'a')},
                                       {"{file}", "study.csv"},
                                       {"{name}", "bench"}})
      if (const auto at = ask.target.find(place); at != std::string::npos) ask.target.replace(at, place.size(), value);
    expect(house_, op, ask, 404);
  });
  Ask ask = good("sheet");
  ask.target += "ing";
  expect("sheet", ask, 404);
  ask = good("sheet");
  ask.target += "?format=svg&page=900";
  expect("sheet", ask, 404);
}

void EveryOperation::taken_and_overtaken() {
  json hours = asks_.body("putHours");
  expect("putHours", with_body("putHours", hours), 201);
  expect("putHours", with_body("putHours", hours), 201);
  hours["hours"] = "2423 h";
  expect("putHours", with_body("putHours", hours), 409);

  for (const auto& [id, name] : std::vector<std::pair<std::string, std::string>>{
           {"putPerson", "Third bench"}, {"putCustomer", "Growers, north"}, {"putMachine", "Spare two"}}) {
    json body = asks_.body(id);
    body["name"] = name;
    expect(id, with_body(id, body), 201);
    const std::int64_t before = house_.last_change();
    expect(id, with_body(id, body), 201);
    body["name"] = "Somebody else";
    const Answer taken = expect(id, with_body(id, body), 409);
    EXPECT_EQ(json::parse(taken.body)["problems"][0]["field"], "id");
    EXPECT_EQ(house_.last_change(), before) << id;
  }
  json part = asks_.body("putPart");
  expect("putPart", with_body("putPart", part), 201);
  part["least"] = 5;
  expect("putPart", with_body("putPart", part), 409);
  Ask late = with_body("putPart", part);
  late.headers.emplace_back("If-Match: \"0\"");
  expect("putPart", late, 412);

  json shaft = asks_.body("putShaft");
  expect("putShaft", with_body("putShaft", shaft), 201);
  shaft["shaft"] = fresh_id();
  expect("putShaft", with_body("putShaft", shaft), 409);
  shaft["id"] = fresh_id();
  shaft["seen"] = 7;
  expect("putShaft", with_body("putShaft", shaft), 412);

  // Back under a name that somebody else has by now.
  json person = asks_.body("putPerson");
  person["name"] = "Fourth bench";
  expect("putPerson", with_body("putPerson", person), 201);
  const auto at_work = [&](bool active, int status) {
    Ask ask = with_body("setAtWork", {{"by", house_.known().lead}, {"active", active}});
    ask.target = "/api/people/" + std::string{person["id"]} + "/at-work";
    expect("setAtWork", ask, status);
  };
  at_work(false, 200);
  json twin = person;
  twin["id"] = fresh_id();
  expect("putPerson", with_body("putPerson", twin), 201);
  at_work(true, 409);

  json move = asks_.body("moveStock");
  expect("moveStock", with_body("moveStock", move), 201);
  expect("moveStock", with_body("moveStock", move), 201);
  move["shelf"] = 2;
  expect("moveStock", with_body("moveStock", move), 409);

  json noted = asks_.body("noteCalibration");
  expect("noteCalibration", with_body("noteCalibration", noted), 201);
  expect("noteCalibration", with_body("noteCalibration", noted), 201);
  noted["who"] = "Another laboratory";
  expect("noteCalibration", with_body("noteCalibration", noted), 409);
  json gauge = asks_.body("addGauge");
  expect("addGauge", with_body("addGauge", gauge), 201);
  expect("addGauge", with_body("addGauge", gauge), 201);
  gauge["id"] = fresh_id();
  expect("addGauge", with_body("addGauge", gauge), 409);

  const std::string id = fresh_id();
  expect("record",
         with_body("record",
                   json::parse(entries_text({house_.known().lead, house_.known().last_31}, {note("one")}, {id}))),
         201);
  expect("record",
         with_body("record",
                   json::parse(entries_text({house_.known().lead, house_.known().last_31}, {note("two")}, {id}))),
         409);
  expect("record", with_header("record", "If-Match: \"" + std::string(64, '0') + "\""), 412);
}

void EveryOperation::unchanged() {
  each(304, [&](const Operation& op) {
    const std::string tag = house_.ask(asks_.good(op)).header("etag");
    EXPECT_NE(tag, "");
    Ask ask = asks_.good(op);
    ask.headers.push_back("If-None-Match: " + tag);
    const Answer answer = expect(house_, op, ask, 304);
    EXPECT_EQ(answer.header("etag"), tag);
  });
}

/// What a definition may say and no beam can be: nothing holds the shaft. It is added to the record as a shaft of its own.
std::string EveryOperation::shaft_without_hangers() {
  std::string text = house_.known().toml;
  for (std::size_t at = text.find("{ hanger = "); at != std::string::npos; at = text.find("{ hanger = "))
    text.replace(at, 11, "{ spacer = ");
  json body = asks_.body("putShaft");
  body["toml"] = text;
  expect("putShaft", with_body("putShaft", body), 201);
  return body["id"];
}

/// Of a shaft as it is defined: what is asked of it stands in the address, and a beam has no more than its definition.
void EveryOperation::shaft_that_cannot_be(const Operation& op) {
  static const std::map<std::string, std::pair<std::string, std::string>> kWrong{
      {"pattern", {"?stay=99=1", "stay"}},
      {"patternFile", {"?least_gap=4+kg", "least_gap"}},
      {"bend", {"", "stack.order"}},
      {"bendFile", {"?to=9+mm", "to"}},
      {"bearing", {"?station=99", "station"}}};
  const auto& [query, field] = kWrong.at(op.id);
  Ask ask = asks_.good(op);
  if (op.id == "bend") ask.target = "/api/shafts/" + shaft_without_hangers() + "/bend";
  ask.target += query;
  const Answer answer = expect(house_, op, ask, 422);
  EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], field) << answer.body;
}

/// A study has no body: its ways stand in the address.
void EveryOperation::ways_that_cannot_be(const Operation& op) {
  Ask ask = asks_.good(op);
  ask.target += "?ways=" + encoded(R"([{"name":"A","lean":"3°"},{"name":"B","lean":"80°"}])");
  const Answer answer = expect(house_, op, ask, 422);
  EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], "ways[1].lean");
}

void EveryOperation::not_possible() {
  const std::map<std::string, std::pair<std::string, json>> wrong{{"putPerson", {"name", ""}},
                                                                  {"setAtWork", {"by", fresh_id()}},
                                                                  {"putCustomer", {"name", ""}},
                                                                  {"putMachine", {"name", std::string(121, 'x')}},
                                                                  {"putHours", {"hours", "12 mm"}},
                                                                  {"putShaft", {"toml", "[shaft"}},
                                                                  {"checkShaft", {"toml", "a\u0001b"}},
                                                                  {"moveStock", {"part_number", ""}},
                                                                  {"putPart", {"name", ""}},
                                                                  {"addGauge", {"resolution", "1 N·m"}},
                                                                  {"noteCalibration", {"expanded", "4 kg"}},
                                                                  {"figure", {"inputs", {"width=5 kg"}}},
                                                                  {"offerLetIn", {"by", fresh_id()}},
                                                                  {"takeBackTablet", {"by", fresh_id()}},
                                                                  {"letIn", {"code", ""}}};
  each(422, [&](const Operation& op) {
    if (op.id == "putBlob" || op.id == "record") return;
    if (op.id == "study" || op.id == "studyFile") return ways_that_cannot_be(op);
    if (op.path.starts_with("/api/shafts/{id}/")) return shaft_that_cannot_be(op);
    json body = asks_.body(op.id);
    const auto& [field, value] = wrong.at(op.id);
    body[field] = value;
    const Answer answer = expect(house_, op, with_body(op.id, body), 422);
    const std::map<std::string, std::string> inside{{"putShaft", "file"}, {"figure", "width"}};
    EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], inside.contains(op.id) ? inside.at(op.id) : field);
  });
  for (const char* field : {"customer", "shaft"}) {
    json body = asks_.body("putMachine");
    body[field] = fresh_id();
    const Answer answer = expect("putMachine", with_body("putMachine", body), 422);
    EXPECT_EQ(json::parse(answer.body)["problems"][0]["field"], field);
  }
  expect("record",
         with_body("record", json::parse(entries_text({fresh_id(), house_.known().last_31}, {note("by nobody")}))),
         422);
  Ask ask = good("putBlob");
  ask.body += "other bytes";
  expect("putBlob", ask, 422);
}

void EveryOperation::too_large() {
  each(413, [&](const Operation& op) {
    Connection connection{house_.port()};
    Ask ask = asks_.good(op);
    ask.body.clear();
    std::string text = text_of(ask, house_.port());
    text.replace(text.find("Content-Length: 0"), 17, "Content-Length: 104857600");
    connection.send(text);  // It is refused by its head: the 100 MB never travel.
    const Answer answer = connection.read();
    EXPECT_EQ(answer.status, 413) << op.id;
    EXPECT_EQ(contract_.faults(op.id, answer), "");
  });
}

void EveryOperation::not_json() {
  each(415, [&](const Operation& op) {
    Ask ask = asks_.good(op);
    ask.headers = {"Content-Type: text/plain"};
    expect(house_, op, ask, 415);
  });
}

void EveryOperation::letting_in() {
  std::string code;
  House beyond{[&](server::Settings& s) {
    s.listen = "0.0.0.0";
    s.show_code = [&](const std::string& shown) { code = shown; };
  }};
  beyond.server().show_code();
  const Operation& op = contract_.operation("letIn");
  expect(beyond, op, with_body("letIn", {{"code", code}, {"name", "Bench tablet"}}), 204);
  const Operation &list = contract_.operation("tablets"), &back = contract_.operation("takeBackTablet");
  const json tablets = json::parse(expect(beyond, list, asks_.good(list), 200).body)["tablets"];
  ASSERT_EQ(tablets.size(), 1U);
  EXPECT_EQ(tablets[0]["name"], "Bench tablet");
  Ask take = with_body("takeBackTablet", {{"by", beyond.known().lead}});
  take.target = "/api/tablets/" + std::string{tablets[0]["id"]} + "/take-back";
  expect(beyond, back, take, 200);
  expect(beyond, back, take, 404);
  for (int i = 0; i < 5; ++i) expect(beyond, op, with_body("letIn", {{"code", "ABCD-EFGH"}}), 401);
  expect(beyond, op, with_body("letIn", {{"code", code}}), 429);
}

void EveryOperation::too_busy() {
  House full{[](server::Settings& s) { s.limits.connections = 0; }};
  each(503, [&](const Operation& op) {
    const Answer answer = expect(full, op, asks_.good(op), 503);
    EXPECT_EQ(answer.header("retry-after"), "1");
  });
}

void EveryOperation::store_full() {
  broken_.on = true;
  each(503, [&](const Operation& op) {
    // These ask nothing of the store, or only read a file.
    if (std::set<std::string>{"checkShaft", "events", "letIn", "tablets", "blob", "figures", "figure"}.contains(op.id))
      return;
    expect(house_, op, asks_.good(op), 503);
  });
  broken_.on = false;
}

TEST_F(EveryOperation, AnswersEveryStatusOfTheContractAndNoOther) {
  in_order();
  unreadable();
  strangers();
  not_there();
  taken_and_overtaken();
  unchanged();
  not_possible();
  too_large();
  not_json();
  letting_in();
  too_busy();
  store_full();
  EXPECT_EQ(contract_.never_tried(), std::vector<std::string>{});
}

}  // namespace
}  // namespace flatwise::api_test
