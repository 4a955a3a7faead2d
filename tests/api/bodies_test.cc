// What is no body, or not the one that is asked for: refused with its field, and nothing of it is kept.
#include <gtest/gtest.h>

#include <thread>

#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

std::string as_utf16(const std::string& ascii) {
  std::string out = "\xFF\xFE";
  for (const char c : ascii) (out += c) += '\0';
  return out;
}

class Bodies : public testing::Test {
 protected:
  /// Asks with `text` as the body of each operation that takes JSON; `given` makes it from the body that is right.
  void each(int status, const std::function<std::string(const json&)>& given, const std::string& field = {}) {
    for (const Operation& op : contract_.operations()) {
      if (!op.takes_json) continue;
      Ask ask = asks_.good(op);
      ask.body = given(json::parse(ask.body));
      refused(op, house_.ask(ask), status, field);
    }
  }
  void refused(const Operation& op, const Answer& answer, int status, const std::string& field) {
    EXPECT_EQ(answer.status, status) << op.id << ": " << answer.body.substr(0, 300);
    EXPECT_EQ(contract_.faults(op.id, answer), "");
    const json body = json::parse(answer.body, nullptr, false);
    if (!field.empty() && body.is_object()) {
      bool named = false;
      for (const json& p : body["problems"]) named = named || p["field"] == field;
      EXPECT_TRUE(named) << op.id << " names not " << field << ": " << answer.body.substr(0, 300);
    }
    EXPECT_EQ(house_.last_change(), before_) << op.id << " kept something";
  }
  /// A body of an entry in job 31, and the field that is wrong with it.
  void entry(const json& body, int status, const std::string& field) {
    const Operation& op = contract_.operation("record");
    Ask ask = asks_.good(op);
    ask.body = entries_text({house_.known().lead, house_.known().last_31}, {body.dump()});
    refused(op, house_.ask(ask), status, field);
  }

  House house_;
  Asks asks_{house_.known()};
  Contract contract_;
  std::int64_t before_ = house_.last_change();
};

TEST_F(Bodies, EveryFieldThatIsMissingIsNamed) {
  for (const Operation& op : contract_.operations()) {
    if (!op.takes_json) continue;
    const json good = json::parse(asks_.good(op).body);
    for (const auto& [name, value] : good.items()) {
      if (name == "note" || name == "reach" || name == "active" || name == "invented" || name == "copied") continue;
      Ask ask = asks_.good(op);
      json body = good;
      body.erase(name);
      ask.body = body.dump();
      refused(op, house_.ask(ask), 400, name);
    }
  }
}

TEST_F(Bodies, AFieldThatIsNotKnownIsNamed) {
  each(
      400,
      [](json body) {
        body["colour"] = "red";
        return body.dump();
      },
      "colour");
}

TEST_F(Bodies, AKeyMayNotStandTwice) {
  each(400, [](const json& body) {
    const std::string text = body.dump(), key = body.begin().key();
    return "{\"" + key + "\":" + body.begin()->dump() + "," + text.substr(1);
  });
}

TEST_F(Bodies, NumbersThatAreNoneAreNotRead) {
  for (const std::string number : {"1e999", "-1e999", "NaN", "Infinity", "0x10", "01", "1.", "+1"})
    each(400, [&](const json& body) { return body.dump().replace(0, 1, "{\"x\":" + number + ","); });
}

TEST_F(Bodies, WhatIsNestedBeyondMeasureIsNotRead) {
  each(400, [](const json&) { return std::string(200'000, '['); });
  each(400, [](const json&) {
    std::string text;
    for (int i = 0; i < 20'000; ++i) text += "{\"a\":";
    return text;
  });
  each(400, [](const json&) { return "{\"x\":" + std::string(100, '[') + std::string(100, ']') + "}"; });
}

TEST_F(Bodies, OnlyUtf8IsRead) {
  each(400, [](const json& body) { return as_utf16(body.dump()); });
  // Source: RFC 3629 section 3: no lone surrogate, no overlong form, nothing cut.
  for (const std::string bytes : {"\xC3", "\xC0\xAF", "\xED\xA0\x80", "\xF5\x80\x80\x80", "\xFF"})
    each(400, [&](const json& body) { return body.dump().replace(0, 1, "{\"x\":\"" + bytes + "\","); });
}

TEST_F(Bodies, WhatIsNoObjectIsNotRead) {
  for (const std::string text : {"", " ", "null", "true", "[]", "\"x\"", "7", "{", "{}{}", "{\"a\":1,}", "//\n{}"})
    each(400, [&](const json&) { return text; });
}

TEST_F(Bodies, OtherTypesOfContentAreNotTaken) {
  for (const std::string type : {"", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data",
                                 "application/json; charset=utf-16", "application/jsonp"})
    for (const Operation& op : contract_.operations()) {
      if (!op.takes_json) continue;
      Ask ask = asks_.good(op);
      ask.headers = {"Content-Type: " + type};
      refused(op, house_.ask(ask), 415, "Content-Type");
    }
}

TEST_F(Bodies, WhatIsCutShortIsNotKept) {
  for (const Operation& op : contract_.operations()) {
    if (!op.takes_json && op.id != "putBlob") continue;
    const std::string text = text_of(asks_.good(op), house_.port());
    Connection connection{house_.port()};
    connection.send(text.substr(0, text.size() - 2));
    connection.half_close();
    refused(op, connection.read(), 400, "body");
  }
}

TEST_F(Bodies, MoreThanAllowedIsRefusedHoweverItComes) {
  const std::string piece(64U << 10U, ' ');
  for (const Operation& op : contract_.operations()) {
    if (!op.takes_json) continue;
    Connection connection{house_.port()};  // In chunks, so that nobody says beforehand how much it will be.
    connection.send(op.method + " " + asks_.target(op) + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " +
                    "application/json\r\nTransfer-Encoding: chunked\r\n\r\n");
    for (int i = 0; i < 1600 && connection.send("10000\r\n" + piece + "\r\n"); ++i) {}  // 100 MB where it goes on.
    refused(op, connection.read(), 413, "body");
  }
}

TEST_F(Bodies, AWrongUnitIsNamedWithItsField) {
  const json bore{{"kind", "bore_read"}, {"rotor", 1},  {"plane", "A"},           {"direction", 1},
                  {"directions", 4},     {"gauge", ""}, {"diameter", "3.9359 kg"}};
  entry(bore, 422, "entries[0].body.diameter");
  json bare = bore;
  bare["diameter"] = "3.9359";
  entry(bare, 422, "entries[0].body.diameter");
  for (const char* typed : {"1e999 mm", "nan mm", "inf in", "-3 in", "", "3,9 in", "99999999999 in"}) {
    json odd = bore;
    odd["diameter"] = typed;
    entry(odd, 422, "entries[0].body.diameter");
  }
  json number = bore;
  number["diameter"] = 3.9359;
  entry(number, 400, "entries[0].body.diameter");
}

TEST_F(Bodies, EntriesThatCannotBeAreNamedWithTheirField) {
  entry({{"kind", "mark_seen"}, {"rotor", 99}, {"half", "a"}, {"flat", 1}}, 422, "entries[0].body.rotor");
  entry({{"kind", "mark_seen"}, {"rotor", 1}, {"half", "c"}, {"flat", 1}}, 422, "entries[0].body.half");
  entry({{"kind", "mark_seen"}, {"rotor", 1}, {"half", "a"}}, 400, "entries[0].body.flat");
  entry({{"kind", "mark_seen"}, {"rotor", 1.5}, {"half", "a"}, {"flat", 1}}, 400, "entries[0].body.rotor");
  entry({{"kind", "taken_off"}, {"station", 900}}, 422, "entries[0].body.station");
  entry({{"kind", "released"}, {"forced", false}, {"reason", ""}}, 422, "entries[0].body.forced");
  entry({{"kind", "released"}, {"forced", true}, {"reason", " "}}, 422, "entries[0].body.reason");
  entry({{"kind", "withdrawn"}, {"reason", "typed wrong"}}, 422, "entries[0].corrects");
  entry({{"kind", "no_such_kind"}}, 400, "entries[0].body.kind");
}

TEST_F(Bodies, OneWrongEntryKeepsAllOthersOut) {
  const Operation& op = contract_.operation("record");
  Ask ask = asks_.good(op);
  ask.body = entries_text({house_.known().lead, house_.known().last_31},
                          {note("good"), R"({"kind":"taken_off","station":900})", note("good too")});
  refused(op, house_.ask(ask), 422, "entries[1].body.station");
}

TEST_F(Bodies, ABodyWithAQuestionIsRefused) {
  for (const Operation& op : contract_.operations()) {
    if (op.method != "GET") continue;
    Ask ask = asks_.good(op);
    ask.body = "{}";
    refused(op, house_.ask(ask), 400, "body");
  }
}

}  // namespace
}  // namespace flatwise::api_test
