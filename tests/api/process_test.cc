// The server as a process: killed, ended, started twice; and the shell beside it on the same record.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <fstream>
#include <nlohmann/json.hpp>
#include <thread>

#include "tests/api/house.h"
#include "tests/end_to_end/process.h"

namespace flatwise::api_test {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;

/// `flatwise serve` on a folder, at any free port.
class Served {
 public:
  explicit Served(const std::string& folder, const std::string& port = "0") {
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
    const std::string program = end_to_end::program();
    child_ = ::fork();
    if (child_ == 0) {
      ::dup2(ends[1], STDOUT_FILENO);
      ::execl(program.c_str(), program.c_str(), "serve", "--data", folder.c_str(), "--port", port.c_str(), nullptr);
      ::_exit(127);
    }
    ::close(ends[1]);
    out_ = ends[0];
    std::string line = read_line();
    if (line.find("/ with") == std::string::npos) line = read_line();  // A new record is told first.
    const std::size_t at = line.rfind(':', line.find("/ with"));
    if (at == std::string::npos) throw std::runtime_error("not served: " + line);
    port_ = static_cast<unsigned short>(std::stoi(line.substr(at + 1)));
  }
  ~Served() {
    if (child_ > 0) end(SIGKILL);
    ::close(out_);
  }
  Served(const Served&) = delete;
  Served& operator=(const Served&) = delete;
  [[nodiscard]] unsigned short port() const { return port_; }
  void signal(int number) const { ::kill(child_, number); }
  /// The status as waitpid() has it.
  int end(int number) {
    signal(number);
    int status = 0;
    ::waitpid(child_, &status, 0);
    child_ = -1;
    return status;
  }

 private:
  std::string read_line() const {
    std::string line;
    for (char c = 0; line.find('\n') == std::string::npos && ::read(out_, &c, 1) == 1;) line += c;
    return line;
  }
  pid_t child_ = -1;
  int out_ = -1;
  unsigned short port_ = 0;
};

class Process : public testing::Test {
 protected:
  Process() { copy_demo_record(folder_.path()); }
  [[nodiscard]] std::string data() const { return folder_.path().string(); }
  static json got(unsigned short port, const std::string& target) {
    const Answer answer = ask(port, get(target));
    EXPECT_EQ(answer.status, 200) << answer.body;
    return json::parse(answer.body, nullptr, false);
  }
  [[nodiscard]] static json job(unsigned short port, const std::string& number) {
    return got(port, "/api/jobs?number=" + number)["jobs"][0];
  }
  /// A note behind all that is there; its id.
  static std::string write(unsigned short port, const std::string& number) {
    const std::string id = fresh_id(), path = "/api/jobs/" + std::string{job(port, number)["id"]} + "/entries";
    const json entries = got(port, path)["entries"];
    const Answer answer =
        ask(port, post(path, entries_text({entries.back()["by"], entries.back()["id"]}, {note("kept")}, {id})));
    EXPECT_EQ(answer.status, 201) << answer.body;
    return id;
  }
  end_to_end::Ran shell(std::vector<std::string> words) const {
    words.insert(words.end(), {"--data", data()});
    return end_to_end::flatwise(words);
  }
  store_sqlite::TestFolder folder_;
};

TEST_F(Process, WhatWasAnsweredAsKeptIsThereAfterAKill) {
  std::vector<std::string> ids;
  {
    Served served{data()};
    for (int i = 0; i < 5; ++i) ids.push_back(write(served.port(), "34"));
    served.end(SIGKILL);
  }
  Served again{data()};
  const std::string all =
      got(again.port(), "/api/jobs/" + std::string{job(again.port(), "34")["id"]} + "/entries").dump();
  for (const std::string& id : ids) EXPECT_NE(all.find(id), std::string::npos);
  EXPECT_EQ(shell({"job", "verify", "34"}).status, 0);
}

TEST_F(Process, AskedToEndItAnswersWhatIsUnderWayAndEndsInOrder) {
  Served served{data()};
  const std::string id = job(served.port(), "31")["id"];
  Connection sheet{served.port()}, idle{served.port()}, feed{served.port()};
  feed.send(text_of(get("/api/events"), served.port()));
  EXPECT_NE(feed.read_until("retry", 2s), "");
  sheet.send(text_of(get("/api/jobs/" + id + "/sheets/assembly"), served.port()));
  std::this_thread::sleep_for(20ms);  // So that it is under way.
  served.signal(SIGTERM);
  EXPECT_EQ(sheet.read().status, 200);
  EXPECT_TRUE(idle.closed_within(5s));
  EXPECT_TRUE(feed.closed_within(5s));
  const int status = served.end(0);
  EXPECT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), 0);
}

TEST_F(Process, ASecondServerAtOnePortSaysSo) {
  const Served served{data()};
  const auto ran = shell({"serve", "--port", std::to_string(served.port())});
  EXPECT_EQ(ran.status, 2);
  EXPECT_NE(ran.err.find(std::to_string(served.port())), std::string::npos) << ran.err;
}

TEST_F(Process, ServeNamesWhatItCannotDo) {
  EXPECT_EQ(end_to_end::flatwise({"serve", "--data", data(), "--port", "70000"}).status, 2);
  EXPECT_EQ(end_to_end::flatwise({"serve", "--data", data(), "--port", "x"}).status, 2);
  EXPECT_EQ(end_to_end::flatwise({"serve", "--data", data(), "--listen", "nowhere"}).status, 2);
  EXPECT_EQ(end_to_end::flatwise({"serve", "--data", "/dev/null/record"}).status, 2);
}

std::string text_in(const std::filesystem::path& file) {
  std::ifstream in{file};
  return {std::istreambuf_iterator<char>{in}, {}};
}

constexpr std::filesystem::perms kOthers = std::filesystem::perms::group_all | std::filesystem::perms::others_all;

// 2026-11-27: the first start took a folder of somebody else away, and everybody on the machine could read the record.
TEST_F(Process, TheFirstStartTouchesNothingThatItDidNotMake) {
  namespace fs = std::filesystem;
  const store_sqlite::TestFolder house;
  for (const std::string name : {"g", "h"}) {
    for (const char* behind : {".new", ".growing"}) {
      fs::create_directory(house.path() / (name + behind));
      std::ofstream{house.path() / (name + behind) / "notes.txt"} << "mine";
    }
  }
  fs::create_directory(house.path() / "h");
  std::ofstream{house.path() / "h" / "notes.txt"} << "mine too";
  for (const std::string name : {"g", "h"}) {
    Served served{(house.path() / name).string() + (name == "g" ? "/" : "")};
    EXPECT_EQ(got(served.port(), "/api/workshop")["invented"], true);
    EXPECT_EQ(fs::status(house.path() / name / "record.db").permissions() & kOthers, fs::perms::none);
    served.end(SIGTERM);
    EXPECT_EQ(text_in(house.path() / (name + ".new") / "notes.txt"), "mine");
    EXPECT_EQ(text_in(house.path() / (name + ".growing") / "notes.txt"), "mine");
  }
  EXPECT_EQ(text_in(house.path() / "h" / "notes.txt"), "mine too");
  EXPECT_EQ(fs::status(house.path() / "g").permissions() & kOthers, fs::perms::none);
  EXPECT_EQ(std::distance(fs::directory_iterator{house.path()}, {}), 6) << "nothing of the making is left";
}

// 2026-11-27: two first starts at once each made a record, and the second one's took the place of the first's.
TEST_F(Process, TwoFirstStartsAtOnceMakeOneRecord) {
  const store_sqlite::TestFolder empty;
  for (const bool there : {true, false}) {  // Into a folder that is there, and into one that is not yet.
    const std::string folder = (there ? empty.path() : empty.path() / "new" / "record").string();
    std::array<std::unique_ptr<Served>, 2> both;
    std::vector<std::thread> starting;
    for (auto& one : both) starting.emplace_back([&one, &folder] { one = std::make_unique<Served>(folder); });
    for (std::thread& one : starting) one.join();
    // What the one keeps the other has: it is one record.
    const std::string id = write(both[0]->port(), "34");
    const std::string job34 = job(both[1]->port(), "34")["id"];
    EXPECT_NE(got(both[1]->port(), "/api/jobs/" + job34 + "/entries").dump().find(id), std::string::npos);
    EXPECT_EQ(end_to_end::flatwise({"job", "verify", "34", "--data", folder}).status, 0);
    if (!there) continue;
    for (const auto& entry : std::filesystem::directory_iterator{empty.path()})
      EXPECT_EQ(entry.path().filename().string().find("growing"), std::string::npos) << entry.path();
  }
}

TEST_F(Process, WhoLeavesIsSaidAtTheShell) {
  EXPECT_EQ(shell({"people", "Bench", "--leaves", "--by", "Bench"}).status, 2) << "not for the bench to say";
  EXPECT_EQ(shell({"people", "Bench", "--by", "Lead"}).status, 2) << "what of it?";
  EXPECT_EQ(shell({"people", "Lead", "--leaves", "--by", "Lead"}).status, 2) << "the only lead";
  EXPECT_EQ(shell({"people", "Bench", "--leaves", "--by", "Lead"}).status, 0);
  EXPECT_NE(shell({"people"}).out.find("has left"), std::string::npos);
  EXPECT_EQ(shell({"people", "bench", "--returns", "--by", "Lead"}).status, 0);
  const json all = json::parse(shell({"people", "--json"}).out);
  for (const json& one : all["people"]) EXPECT_TRUE(one.value("active", true)) << one;
}

TEST_F(Process, TheShellReadsTheSameRecord) {
  const Served served{data()};
  const std::string id = write(served.port(), "34");
  const auto log = shell({"job", "log", "34", "--json"});
  EXPECT_EQ(log.status, 0) << log.err;
  EXPECT_NE(log.out.find(id), std::string::npos);
  const auto report = shell({"job", "report", "31", "--json"});
  EXPECT_EQ(report.status, 1) << "job 31 of the demo stops";
  json by_api = got(served.port(), "/api/jobs/" + std::string{job(served.port(), "31")["id"]} + "/report");
  EXPECT_EQ(json::parse(report.out, nullptr, false)["stages"], by_api["stages"]);
  for (const std::string verb : {"show", "report", "log", "verify"}) {
    EXPECT_EQ(shell({"job", verb, "nothing"}).status, 2) << verb;
    EXPECT_EQ(shell({"job", verb}).status, 2) << verb;
  }
  EXPECT_EQ(shell({"job", "list"}).status, 0);
  EXPECT_EQ(shell({"job", "record", "34", "no_such_kind", "--by", "Lead"}).status, 2);
}

// 2026-11-27: a job could not be begun at the shell, and nothing be taken back there.
TEST_F(Process, TheShellBooksInAndTakesBack) {
  const Served served{data()};
  const json like = job(served.port(), "34");
  const auto record = [&](std::vector<std::string> words) {
    words.insert(words.begin(), {"job", "record", "77"});
    words.insert(words.end(), {"--by", "Lead"});
    return shell(words).status;
  };
  const std::string machine = "machine=" + std::string{like["machine"]},
                    version = "shaft=" + std::string{like["shaft_version"]};
  EXPECT_EQ(record({"note_written", "part=shaft", "stage=booking_in", "text=Too soon"}), 2) << "no such job yet";
  EXPECT_EQ(record({"booked_in", "number=77", machine, version, "complaint=Rattles"}), 0);
  EXPECT_EQ(record({"booked_in", "number=77", machine, version, "complaint=Rattles"}), 2) << "booked in already";
  EXPECT_EQ(record({"answered", "question=power_locked_off", "number=0", "reply=yes"}), 0);
  EXPECT_EQ(record({"withdrawn", "reason=Not yet"}), 2) << "takes back nothing";
  EXPECT_EQ(record({"withdrawn", "reason=Not yet", "--of", "9"}), 2);
  EXPECT_EQ(record({"withdrawn", "reason=Not yet", "--of", "2"}), 0);
  const json entries =
      got(served.port(), "/api/jobs/" + std::string{job(served.port(), "77")["id"]} + "/entries")["entries"];
  ASSERT_EQ(entries.size(), 3U);
  for (const json& entry : entries) EXPECT_EQ(entry["received"], entry["at"]) << "taken in as it was written";
  EXPECT_EQ(entries[2]["body"]["kind"], "withdrawn");
  EXPECT_EQ(entries[2]["corrects"], json::array({entries[1]["id"]}));
  EXPECT_EQ(shell({"job", "verify", "77"}).status, 0);
}

TEST_F(Process, TheShellTakesSidePlayAsItWasHeldAndPushed) {
  const Served served{data()};
  const auto record = [&](std::vector<std::string> words) {
    words.insert(words.begin(), {"job", "record", "31", "play_read", "rotor=2", "gauge="});
    words.insert(words.end(), {"--by", "Lead"});
    return shell(words);
  };
  EXPECT_EQ(record({"swing=0.8 mm", "held=hanging", "push=-1 N"}).status, 2) << "no push";
  EXPECT_EQ(record({"swing=0.8 mm", "held=hanging", "push=30 mm"}).status, 2) << "another unit";
  EXPECT_NE(record({"swing=0.8 mm", "held=somehow"}).err.find("held"), std::string::npos) << "names the field";
  const auto taken = record({"swing=0.8 mm", "held=hanging", "push=30 N"});
  ASSERT_EQ(taken.status, 0) << taken.err;
  const json entries =
      got(served.port(), "/api/jobs/" + std::string{job(served.port(), "31")["id"]} + "/entries")["entries"];
  const json& body = entries.back()["body"];
  EXPECT_EQ(body["kind"], "play_read");
  EXPECT_EQ(body["held"], "hanging");
  EXPECT_NE(body["push"].dump().find("30 N"), std::string::npos) << body;
}

}  // namespace
}  // namespace flatwise::api_test
