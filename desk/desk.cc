#include "desk/desk.h"

#include <algorithm>
#include <array>

#include "definition/read.h"
#include "desk/stock.h"
#include "job/entry_says.h"
#include "job/roles.h"
#include "record/entry_json.h"

namespace flatwise::desk {
namespace {

using namespace job;
using Kind = StoreFault::Kind;

tl::unexpected<Refusal> fault(StoreFault f) { return tl::unexpected(Refusal{{}, std::move(f)}); }
tl::unexpected<Refusal> refused(std::vector<Problem> problems) {
  return tl::unexpected(Refusal{std::move(problems), std::nullopt});
}

Done<std::vector<Entry>> entries_of(Store& store, const Id& job) {
  auto rows = store.entries(job, 0);
  if (!rows) return fault(std::move(rows.error()));
  std::vector<Entry> entries;
  entries.reserve(rows->size());
  for (const EntryRow& row : *rows) {
    Results<Entry> entry = record::from_row(row);
    if (!entry) return fault({Kind::damaged, "entry " + row.id + " cannot be read"});
    entries.push_back(*std::move(entry));
  }
  return entries;
}

/// The booking that holds: the last that nothing corrects. Every job has one, since its first entry books it in.
const BookedIn* booking(std::span<const Entry> entries) {
  const BookedIn* last = nullptr;
  for (const Entry& entry : entries) {
    const auto* booked = std::get_if<BookedIn>(&entry.body);
    const auto points_at = [&](const Entry& e) { return std::ranges::find(e.corrects, entry.id) != e.corrects.end(); };
    if (booked != nullptr && std::ranges::none_of(entries, points_at)) last = booked;
  }
  return last;
}

/// The definition that a job goes by. Missing: no such version.
Done<Shaft> shaft_of(Store& store, const Id& version) {
  auto row = store.shaft_version(version);
  if (!row) return fault(std::move(row.error()));
  Results<Shaft> shaft = definition::read_shaft(row->toml, row->name);
  if (!shaft) return fault({Kind::damaged, "shaft " + version + " cannot be read"});
  return *std::move(shaft);
}

/// What a job needs beside its entries.
struct Surroundings {
  Workshop workshop;
  std::vector<Person> people;
};
Done<Surroundings> surroundings(Store& store) {
  auto workshop = store.workshop();
  if (!workshop) return fault(std::move(workshop.error()));
  auto people = store.people();
  if (!people) return fault(std::move(people.error()));
  return Surroundings{*std::move(workshop), *std::move(people)};
}

std::string name_of(const std::vector<Person>& people, const Id& id) {
  const auto it = std::ranges::find(people, id, &Person::id);
  return it == people.end() ? id : it->name;
}

std::unique_ptr<OpenJob> opened(Shaft shaft, Surroundings around, std::vector<Entry> entries) {
  auto job =
      std::make_unique<OpenJob>(OpenJob{std::move(shaft), std::move(around.workshop), std::move(entries), {}, {}});
  job->state = fold(job->shaft, job->workshop, job->entries);
  gauges_for(job->workshop, job->state, [&](const Id& id) { return name_of(around.people, id); });
  job->report = judge_through(job->facts(), Stage::release);
  return job;
}

/// The row as it follows from the entries alone.
JobRow row_of(const OpenJob& job, const Standing& standing, const Id& id) {
  JobRow row;
  row.id = id;
  const BookedIn& booked = *booking(job.entries);
  row.machine = booked.machine;
  row.shaft_version = booked.shaft;
  row.number = booked.number;
  row.due = booked.due;
  row.present = standing.present;
  row.waiting = waiting_name(standing.waiting);
  row.booked = job.entries.front().at;
  for (const Entry& entry : job.entries) row.changed = std::max(row.changed, entry.at);
  row.released = job.state.answers("released") != nullptr;
  row.entries = static_cast<int>(job.entries.size());
  row.head = job.entries.back().hash;
  return row;
}

// ---- Taking entries -----------------------------------------------------------------------------------------------------

/// A booking is of a machine that is there and of its own shaft.
Done<std::vector<Problem>> problems_of_booking(Store& store, const BookedIn& booked) {
  std::vector<Problem> problems;
  const auto machine = store.machine(booked.machine);
  if (!machine && machine.error().kind != Kind::missing) return fault(machine.error());
  if (!machine)
    problems.push_back(Problem{Code{"record.no_such_machine"}, "body.machine", booked.machine, {}, std::nullopt});
  const auto version = store.shaft_version(booked.shaft);
  if (!version && version.error().kind != Kind::missing) return fault(version.error());
  if (!version)
    problems.push_back(Problem{Code{"record.no_such_shaft"}, "body.shaft", booked.shaft, {}, std::nullopt});
  else if (machine && !machine->shaft.empty() && machine->shaft != version->shaft)
    problems.push_back(Problem{Code{"record.another_shaft"},
                               "body.shaft",
                               {},
                               {{"machine", machine->name}, {"shaft", version->name}},
                               std::nullopt});
  return problems;
}

/// One attempt to take entries, against the job as it is in the store now.
class Taking {
 public:
  Taking(Store& store, const Id& id, const std::vector<Entry>& given) : store_{store}, id_{id}, given_{given} {}

  Done<Appended> run(const std::optional<std::string>& only_if_head) {
    auto there = entries_of(store_, id_);
    if (!there && there.error().fault->kind != Kind::missing) return tl::unexpected(std::move(there.error()));
    if (there) entries_ = *std::move(there);
    append_.job = id_;
    for (const Entry& entry : given_) append_.rows.push_back(record::to_row(entry));
    if (std::ranges::all_of(given_, [&](const Entry& e) { return known(e.id); })) return store();
    const std::string head = entries_.empty() ? std::string{} : entries_.back().hash;
    if (only_if_head && *only_if_head != head) return fault({Kind::changed, "the head is another one"});
    append_.only_if_head = head;
    auto around = surroundings(store_);
    if (!around) return tl::unexpected(std::move(around.error()));
    if (auto done = check_all(*around); !done) return tl::unexpected(std::move(done.error()));
    if (!problems_.empty()) return refused(std::move(problems_));
    auto job = opened(*std::move(shaft_), *std::move(around), std::move(entries_));
    append_.projection = row_of(*job, standing(*job), id_);
    return store();
  }

 private:
  [[nodiscard]] bool known(const Id& id) const { return std::ranges::find(entries_, id, &Entry::id) != entries_.end(); }
  Done<Appended> store() {
    auto appended = store_.append(append_);
    if (!appended) return fault(std::move(appended.error()));
    return *std::move(appended);
  }

  /// Each new entry against the state that those before it make. What is wrong with one does not hide the others.
  Done<void> check_all(const Surroundings& around) {
    entries_.reserve(entries_.size() + given_.size());
    if (!entries_.empty())
      if (auto done = load_shaft(); !done) return done;
    for (std::size_t i = 0; i < given_.size(); ++i) {
      if (known(given_[i].id)) continue;
      path_ = "entries[" + std::to_string(i) + "].";
      if (auto done = check(around, given_[i]); !done) return done;
      if (!shaft_) return {};  // Nothing more can be said of a job that goes by no definition.
    }
    return {};
  }

  Done<void> check(const Surroundings& around, const Entry& given) {
    const auto by = std::ranges::find(around.people, given.by, &Person::id);
    if (by == around.people.end() || !by->active)
      add(Problem{Code{"record.no_such_person"}, "by", given.by, {}, std::nullopt});
    else if (const auto role = lacks_role(by->role, given.body))
      add(Problem{Code{"record.wrong_role"}, "by", by->name, {{"role", role_word(*role)}}, std::nullopt});
    const auto* booked = std::get_if<BookedIn>(&given.body);
    if (booked != nullptr) {
      auto problems = problems_of_booking(store_, *booked);
      if (!problems) return tl::unexpected(std::move(problems.error()));
      for (Problem& p : *problems) add(std::move(p));
      if (!problems_.empty() && !shaft_) return {};
    } else if (!shaft_) {
      add(Problem{Code{"record.not_booked_in"}, "body.kind", {}, {}, std::nullopt});
      return {};
    }
    if (!shaft_) {
      auto shaft = shaft_of(store_, booked->shaft);
      if (!shaft) return tl::unexpected(std::move(shaft.error()));
      shaft_ = *std::move(shaft);
    }
    const JobState before = fold(*shaft_, around.workshop, entries_);
    for (Problem& p : check_entry(*shaft_, around.workshop, before, given)) add(std::move(p));
    const Effects effects = stock_effects(*shaft_, before);
    entries_.push_back(given);
    entries_.back().number = static_cast<int>(entries_.size());
    if (booked != nullptr && problems_.empty())
      if (auto done = load_shaft(); !done) return done;
    const JobState after = fold(*shaft_, around.workshop, entries_);
    for (StockMove& move : moves_between(effects, stock_effects(*shaft_, after), entries_.back()))
      append_.moves.push_back(std::move(move));
    return {};
  }

  Done<void> load_shaft() {
    const BookedIn* booked = booking(entries_);
    if (booked == nullptr) return fault({Kind::damaged, "job " + id_ + " was never booked in"});
    auto shaft = shaft_of(store_, booked->shaft);
    if (!shaft) return tl::unexpected(std::move(shaft.error()));
    shaft_ = *std::move(shaft);
    return {};
  }
  void add(Problem problem) {
    problem.field = path_ + problem.field;
    problems_.push_back(std::move(problem));
  }

  Store& store_;
  const Id& id_;
  const std::vector<Entry>& given_;
  std::vector<Entry> entries_;  ///< Those of the store, then those taken.
  std::optional<Shaft> shaft_;
  std::vector<Problem> problems_;
  std::string path_;
  Append append_;
};

}  // namespace

std::string_view waiting_name(Waiting waiting) {
  constexpr std::array<std::string_view, 7> kNames{"stopped", "cannot_tell", "customer", "parts",
                                                   "bench",   "release",     "released"};
  return kNames[static_cast<std::size_t>(waiting)];
}

Done<Opened> open_job(Store& store, const Id& id) {
  if (auto row = store.job(id); !row) return fault(std::move(row.error()));
  auto entries = entries_of(store, id);
  if (!entries) return tl::unexpected(std::move(entries.error()));
  const BookedIn* booked = booking(*entries);
  if (booked == nullptr) return fault({Kind::damaged, "job " + id + " was never booked in"});
  auto shaft = shaft_of(store, booked->shaft);
  if (!shaft) return tl::unexpected(std::move(shaft.error()));
  auto around = surroundings(store);
  if (!around) return tl::unexpected(std::move(around.error()));
  auto job = opened(*std::move(shaft), *std::move(around), *std::move(entries));
  Standing stands = standing(*job);
  JobRow made = row_of(*job, stands, id);
  return Opened{std::move(job), std::move(stands), std::move(made)};
}

Done<Appended> take(Store& store, const Id& id, std::vector<Entry> entries,
                    const std::optional<std::string>& only_if_head) {
  constexpr int kAttempts = 8;  // Somebody else may write between reading and storing.
  for (Entry& entry : entries) entry.job = id;
  for (int attempt = 1;; ++attempt) {
    Done<Appended> done = Taking{store, id, entries}.run(only_if_head);
    const bool overtaken = !done && done.error().fault && done.error().fault->kind == Kind::changed;
    if (!overtaken || only_if_head || attempt == kAttempts) return done;
  }
}

Done<JobRow> project_again(Store& store, const Id& id) {
  auto job = open_job(store, id);
  if (!job) return tl::unexpected(std::move(job.error()));
  if (auto put = store.put_projection(job->row); !put) return fault(std::move(put.error()));
  return std::move(job->row);
}

}  // namespace flatwise::desk
