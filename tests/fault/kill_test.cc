// kill_test.cc: a program that writes the record is killed (SIGKILL) at random points, over and over, while another writes
// too. Everything that was answered 'stored' must be there, photos too, and every chain whole.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <random>
#include <set>
#include <thread>

#include "store/contract_rows.h"
#include "store/sqlite/test_place.h"

namespace flatwise::fault {
namespace {

using store_contract::append_of;
using store_contract::id;
using store_contract::note;

/// What a writer says to its parent after it has the answer.
struct Told {
  int job = 0, entry = 0;
  char blob[65] = {};  ///< Hash of the photo that came before it; empty: none.
};
static_assert(sizeof(Told) < 512, "one write to a pipe is whole");

std::string photo_of(int entry) {
  std::string bytes = "photo " + std::to_string(entry) + " ";
  while (bytes.size() < 150'000) bytes += std::to_string(entry * 7919 + static_cast<int>(bytes.size())) + ",";
  return bytes;
}

enum class Writer { honest, hasty };  ///< hasty: answers before it has stored.

/// Writes without end. Runs in a child; never comes back.
[[noreturn]] void write_on(const std::filesystem::path& folder, int job, int first, int pipe, Writer writer) {
  auto store = store_sqlite::open_store(folder, {.wait_ms = 60'000});
  if (!store) _exit(3);
  for (int entry = first;; ++entry) {
    Told told{job, entry, {}};
    job::Append append = append_of({note(entry, "entry " + std::to_string(entry), job)}, job);
    if (entry % 3 == 0) {
      const auto hash = (*store)->put_blob(photo_of(entry));
      if (!hash) _exit(4);
      hash->copy(told.blob, 64);
      append.rows[0].body = R"({"blob":")" + *hash + "\"}";
    }
    if (writer == Writer::hasty) {
      if (::write(pipe, &told, sizeof told) != sizeof told) _exit(5);
      ::usleep(20'000);
    }
    if (!(*store)->append(append)) _exit(6);
    if (writer == Writer::honest && ::write(pipe, &told, sizeof told) != sizeof told) _exit(5);
  }
}

struct Child {
  pid_t pid = -1;
  int read_end = -1;
};
Child start(const std::filesystem::path& folder, int job, int first, Writer writer) {
  int ends[2];
  if (::pipe(ends) != 0) return {};
  const pid_t pid = ::fork();
  if (pid == 0) {
    ::close(ends[0]);
    write_on(folder, job, first, ends[1], writer);
  }
  ::close(ends[1]);
  return {pid, ends[0]};
}

/// Waits for `count` answers, then a random moment more, then kills. All answers that came.
std::vector<Told> kill_after(const std::vector<Child>& children, int count, int microseconds) {
  std::vector<Told> told;
  const auto take = [&](int pipe) {
    Told one;
    if (::read(pipe, &one, sizeof one) != sizeof one) return false;
    told.push_back(one);
    return true;
  };
  for (int i = 0; i < count; ++i)
    if (!take(children[0].read_end)) break;
  ::usleep(static_cast<useconds_t>(microseconds));
  for (const Child& child : children) ::kill(child.pid, SIGKILL);
  for (const Child& child : children) {
    int status = 0;
    ::waitpid(child.pid, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status)) << "the writer stopped by itself: " << WEXITSTATUS(status);
    while (take(child.read_end)) {}
    ::close(child.read_end);
  }
  return told;
}

/// What of it is not there as told.
int lost(job::Store& store, const std::vector<Told>& told) {
  int count = 0;
  for (const Told& one : told) {
    const auto entry = store.entry(id(one.entry));
    bool there = entry && *entry && (*entry)->job == id(one.job);
    if (there && one.blob[0] != '\0') {
      const auto bytes = store.blob(one.blob);
      there = bytes && *bytes == photo_of(one.entry);
    }
    count += there ? 0 : 1;
  }
  return count;
}

struct Outcome {
  int kills = 0, answered = 0, photos = 0, lost = 0, stored = 0;
  bool whole = true;
};

Outcome kill_over_and_over(Writer writer, int answers, int longest_wait_us) {
  store_sqlite::FolderPlace place;
  if (!store_contract::furnished(place)) return {};
  std::mt19937 random{20261125};  // The same points every time, as far as two processes allow.
  Outcome outcome;
  std::vector<Told> all;
  while (static_cast<int>(all.size()) < answers) {
    const int first = 1000 + outcome.kills * 2000;
    const std::vector<Child> children{start(place.folder(), 1, first, writer),
                                      start(place.folder(), 2, first + 1000, writer)};
    const int count = std::uniform_int_distribution{0, 12}(random);
    const auto told = kill_after(children, count, std::uniform_int_distribution{0, longest_wait_us}(random));
    all.insert(all.end(), told.begin(), told.end());
    ++outcome.kills;
    auto store = place.open(id(1));
    if (!store) {
      ADD_FAILURE() << "does not open after a kill: " << store.error().detail;
      return outcome;
    }
    for (const int job : {1, 2})
      if ((*store)->job(id(job))) outcome.whole = outcome.whole && store_contract::is_whole(**store, id(job));
    outcome.lost = lost(**store, all);
    if (outcome.lost > 0 && writer == Writer::hasty) break;
  }
  auto store = place.open(id(1));
  outcome.answered = static_cast<int>(all.size());
  for (const Told& one : all) outcome.photos += one.blob[0] != '\0' ? 1 : 0;
  for (const int job : {1, 2}) {
    const auto row = (*store)->job(id(job));
    outcome.stored += row ? row->entries : 0;
  }
  return outcome;
}

TEST(Kill, loses_nothing_that_was_answered) {
  const Outcome outcome = kill_over_and_over(Writer::honest, 300, 8'000);
  std::printf("killed %d times; %d writes answered (%d with a photo), %d stored, %d lost\n", outcome.kills,
              outcome.answered, outcome.photos, outcome.stored, outcome.lost);
  EXPECT_GE(outcome.answered, 300);
  EXPECT_GE(outcome.kills, 10);
  EXPECT_EQ(outcome.lost, 0);
  EXPECT_TRUE(outcome.whole);
  EXPECT_GE(outcome.stored, outcome.answered);
}

TEST(Kill, finds_out_a_writer_that_answers_too_early) {
  EXPECT_GT(kill_over_and_over(Writer::hasty, 300, 1'000).lost, 0);
}

}  // namespace
}  // namespace flatwise::fault
