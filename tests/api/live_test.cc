// The feed of changes: what one device keeps, the others see.
#include <gtest/gtest.h>

#include <thread>

#include "record/entry_json.h"
#include "tests/api/asks.h"

namespace flatwise::api_test {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;

/// One who listens.
class Listener {
 public:
  Listener(unsigned short port, const std::string& target, const std::vector<std::string>& headers = {})
      : connection_{port} {
    connection_.send(text_of({.method = "GET", .target = target, .headers = headers}, port));
    head_ = connection_.read();
    heard_ = connection_.read_until("retry: 2000\n\n", 2s);
  }
  [[nodiscard]] const Answer& head() const { return head_; }
  /// Whether `what` comes, or came, within that time.
  bool hears(std::string_view what, std::chrono::milliseconds time = 1s) {
    const auto end = std::chrono::steady_clock::now() + time;
    while (heard_.find(what) == std::string::npos && std::chrono::steady_clock::now() < end)
      heard_ += connection_.read_until(what, 20ms);
    return heard_.find(what) != std::string::npos;
  }
  [[nodiscard]] const std::string& heard() const { return heard_; }
  Connection& connection() { return connection_; }

 private:
  Connection connection_;
  Answer head_;
  std::string heard_;
};

class Feed : public testing::Test {
 protected:
  std::string write(const std::string& text) {
    const std::string id = fresh_id();
    const Answer answer =
        house_.ask(post("/api/jobs/" + house_.known().job_31 + "/entries",
                        entries_text({house_.known().lead, house_.known().last_31}, {note(text)}, {id})));
    EXPECT_EQ(answer.status, 201) << answer.body;
    return id;
  }
  House house_{[](server::Settings& s) {
    s.limits.heartbeat = 100ms;
    s.limits.write = 300ms;
  }};
};

TEST_F(Feed, TwoDevicesSeeEachOthersEntries) {
  Listener one{house_.port(), "/api/events"}, two{house_.port(), "/api/events"};
  EXPECT_EQ(one.head().status, 200);
  EXPECT_EQ(one.head().header("content-type"), "text/event-stream");
  EXPECT_EQ(one.head().header("cache-control"), "no-cache");
  for (int i = 0; i < 3; ++i) {
    const std::string id = write("seen");
    EXPECT_TRUE(one.hears("\"entry\":\"" + id + "\"")) << one.heard();
    EXPECT_TRUE(two.hears("\"entry\":\"" + id + "\"")) << two.heard();
  }
  EXPECT_TRUE(one.hears("event: job\ndata: {\"id\":\"" + house_.known().job_31 + "\""));
}

TEST_F(Feed, WhoComesBackGetsWhatWasMissed) {
  const std::int64_t seen = house_.last_change();
  const std::vector<std::string> missed{write("one"), write("two"), write("three")};
  Listener by_header{house_.port(), "/api/events", {"Last-Event-ID: " + std::to_string(seen)}};
  Listener by_query{house_.port(), "/api/events?after=" + std::to_string(seen)};
  for (Listener* listener : {&by_header, &by_query}) {
    std::size_t at = 0;
    for (const std::string& id : missed) {
      EXPECT_TRUE(listener->hears(id)) << listener->heard();
      const std::size_t found = listener->heard().find(id);
      EXPECT_GE(found, at) << "in their order";
      at = found;
      EXPECT_EQ(listener->heard().find(id, found + 1), std::string::npos) << "once";
    }
  }
  Listener fresh{house_.port(), "/api/events"};
  EXPECT_FALSE(fresh.hears(missed.back(), 200ms)) << "from now on";
}

TEST_F(Feed, WhoMissedTooMuchIsToldToReadAnew) {
  Listener ahead{house_.port(), "/api/events?after=9000000000000"};
  EXPECT_TRUE(ahead.hears("event: reload\ndata: {}\n\n")) << ahead.heard();
  for (const std::string wrong : {"x", "-1", "1.5", ""}) {
    const Answer answer = house_.ask({.method = "GET", .target = "/api/events?after=" + wrong});
    EXPECT_EQ(answer.status, 400) << wrong;
  }
}

TEST_F(Feed, WhatAnotherProgramWritesIsSeen) {
  Listener listener{house_.port(), "/api/events"};
  const std::string id = fresh_id();
  ASSERT_TRUE(house_.other().put_person({id, "From elsewhere", job::Role::bench, true}));
  EXPECT_TRUE(listener.hears("event: person\ndata: {\"id\":\"" + id + "\",\"entry\":null}")) << listener.heard();
}

TEST_F(Feed, ItBeatsWhenNothingHappens) {
  Listener listener{house_.port(), "/api/events"};
  EXPECT_TRUE(listener.hears(": here\n\n"));
  EXPECT_FALSE(listener.connection().closed_within(300ms));
}

TEST_F(Feed, WhoDoesNotReadIsDroppedAndHoldsNobodyUp) {
  Connection deaf{house_.port()};
  deaf.send(text_of(get("/api/events"), house_.port()));
  // More changes than the sockets and the queue hold together: each is told in more than 100 bytes.
  const job::JobRow row = house_.other().job(house_.known().job_31).value();
  for (int times = 0; times < 12; ++times) {
    job::Append append{.job = row.id, .rows = {}, .only_if_head = {}, .projection = row, .moves = {}, .hours = {}};
    for (int i = 0; i < 5000; ++i) {
      job::Entry entry{.id = fresh_id(),
                       .job = row.id,
                       .by = house_.known().lead,
                       .on = "test",
                       .at = {},
                       .follows = {},
                       .corrects = {},
                       .body = job::NoteWritten{{}, job::Stage::booking_in, "many"},
                       .number = 0,
                       .before = {},
                       .hash = {}};
      entry.follows = house_.known().last_31;
      append.rows.push_back(record::to_row(entry));
    }
    ASSERT_TRUE(house_.other().append(append));
  }
  EXPECT_EQ(house_.ask(get("/api/people")).status, 200);
  EXPECT_TRUE(deaf.closed_within(10s));
  Listener other{house_.port(), "/api/events"};
  const std::string id = fresh_id();
  ASSERT_TRUE(house_.other().put_person({id, "From elsewhere", job::Role::bench, true}));
  EXPECT_TRUE(other.hears(id, 5s));
}

}  // namespace
}  // namespace flatwise::api_test
