// The simulated rebuilds once more, through the API: entries sent, report fetched. It must say what is said of the same readings
// in a file, and with it all that is promised.
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <iostream>
#include <nlohmann/json.hpp>

#include "job/bench_entries.h"
#include "job/judge.h"
#include "record/entry_json.h"
#include "tests/api/house.h"
#include "tests/rebuilds/files.h"
#include "wire/json.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

using rebuilds::Files;

job::Instant noon_of(Day day) {
  const std::chrono::year_month_day date{std::chrono::year{day.year},
                                         std::chrono::month(static_cast<unsigned>(day.month)),
                                         std::chrono::day(static_cast<unsigned>(day.day))};
  return {std::chrono::sys_days{date}.time_since_epoch().count() * 86'400'000LL + 43'200'000};
}

class CatchRate : public testing::Test {
 protected:
  Answer send(const std::string& path, const json& body, int status = 201) {
    Answer answer = house_.ask(post(path, body.dump()));
    EXPECT_EQ(answer.status, status) << path << ": " << answer.body.substr(0, 600);
    return answer;
  }
  /// Books the shaft in and sends all entries, as a tablet that was without a network would.
  std::string record(const Files& files, int number) {
    EXPECT_TRUE(house_.other().put_workshop(files.workshop));
    now_ = noon_of(files.bench.date).ms;
    const std::string shaft = fresh_id(), version = fresh_id(), machine = fresh_id(), job = fresh_id();
    send("/api/shafts",
         {{"id", version}, {"shaft", shaft}, {"by", house_.known().lead}, {"seen", 0}, {"toml", files.texts.shaft}});
    send("/api/machines",
         {{"id", machine}, {"customer", house_.known().customer}, {"name", "Simulated"}, {"shaft", shaft}});
    std::vector<job::EntryBody> bodies{job::BookedIn{std::to_string(1000 + number), machine, version, {}, {}, {}}};
    for (job::EntryBody& body : job::entries_of(files.shaft, files.bench)) bodies.push_back(std::move(body));
    const auto entries =
        job::as_entries({}, std::move(bodies), {job, house_.known().lead, "test", noon_of(files.bench.date)},
                        [](job::Instant) { return fresh_id(); });
    constexpr std::size_t kAtOnce = 200;
    for (std::size_t at = 0; at < entries.size(); at += kAtOnce) {
      json list = json::array();
      for (std::size_t i = at; i < std::min(entries.size(), at + kAtOnce); ++i)
        list.push_back(json::parse(record::entry_in_json(entries[i]).dump()));
      const Answer answer = house_.ask(post("/api/jobs/" + job + "/entries", json{{"entries", list}}.dump()));
      if (answer.status == 201) continue;
      why_not_ = json::parse(answer.body)["problems"][0]["code"];
      EXPECT_TRUE(why_not_ == "record.not_safe_yet" || why_not_ == "record.not_possible") << answer.body.substr(0, 600);
      return {};
    }
    return job;
  }
  static json findings(const json& report) {
    json all = json::array();
    for (const json& stage : report["stages"]) {
      json found = json::array();
      for (const json& finding : stage["findings"])
        if (finding["code"] != "kit.shelf_below_nought") found.push_back(finding);  // Only the record moves the stock.
      all.push_back({stage["stage"], std::move(found)});
    }
    return all;
  }
  std::atomic<std::int64_t> now_{kHouseNow};  ///< The server's clock: a rebuild comes in when it was done.
  House house_{[this](server::Settings& s) { s.now = [this] { return job::Instant{now_}; }; }};
  std::string why_not_;  ///< Code of what kept a job's entries out.
};

TEST_F(CatchRate, OverTheApiTheSameIsCaught) {
  constexpr int kRebuilds = 300;
  rebuilds::Tally tally;
  tally.first_seed = 1;
  int same = 0, kept_out = 0, refused = 0;
  for (int i = 0; i < kRebuilds; ++i) {
    const rebuilds::Rebuild rebuild = rebuilds::make_rebuild(1 + static_cast<unsigned long long>(i));
    const auto files = rebuilds::files_of(rebuild);
    ASSERT_TRUE(files) << "seed " << i + 1;
    const std::string sent = record(*files, i);
    if (sent.empty() && why_not_ == "record.not_possible") {  // Typed in the wrong unit: named at once, and not taken.
      EXPECT_TRUE(std::ranges::any_of(rebuild.mistakes, [](const rebuilds::Mistake& m) { return !m.typed.empty(); }))
          << "seed " << i + 1 << ": a reading that somebody could have made was refused";
      ++refused;
      tally.add(rebuild, rebuilds::compare(rebuild, rebuilds::said_of(rebuild)));
      continue;
    }
    if (sent.empty()) {  // A safety question not answered yes: the record takes no reading, the file's report names it.
      const auto early = job::judge_through({files->shaft, files->workshop, files->bench}, job::Stage::booking_in);
      EXPECT_FALSE(early.stages.front().findings.empty()) << "seed " << i + 1;
      ++kept_out;
      tally.add(rebuild, rebuilds::compare(rebuild, rebuilds::said_of(rebuild)));
      continue;
    }
    const Answer answer = house_.ask(get("/api/jobs/" + sent + "/report"));
    ASSERT_EQ(answer.status, 200) << answer.body;
    const auto of_file = job::judge_through({files->shaft, files->workshop, files->bench}, job::Stage::release);
    Voice voice;
    voice.currency = files->workshop.currency;
    const json expected = findings(json::parse(wire::to_json(of_file, voice).dump()));
    const json found = findings(json::parse(answer.body));
    EXPECT_EQ(json::diff(expected, found), json::array()) << "seed " << i + 1;
    if (found == expected) ++same;
    tally.add(rebuild, rebuilds::compare(rebuild, rebuilds::said_of(rebuild)));
  }
  EXPECT_EQ(same + kept_out + refused, kRebuilds);
  EXPECT_EQ(rebuilds::broken_promises(tally), std::vector<std::string>{});
  int put_in = 0, caught = 0, named = 0;
  for (const rebuilds::Row& row : tally.rows) {
    put_in += row.put_in;
    caught += row.caught;
    named += row.named;
  }
  std::cout << "| through the API | " << same << " of " << kRebuilds << " rebuilds say the same, " << kept_out
            << " kept out as not safe, " << refused << " refused for a wrong unit | " << put_in << " mistakes put in | "
            << caught << " caught | " << named << " named |\n";
}

}  // namespace
}  // namespace flatwise::api_test
