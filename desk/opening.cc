#include "desk/opening.h"

#include <algorithm>
#include <array>

#include "record/entry_json.h"

namespace flatwise::desk {

using namespace job;
using Fault = StoreFault::Kind;

Done<std::vector<Entry>> entries_of(Store& store, const Id& job) {
  auto rows = store.entries(job, 0);
  if (!rows) return fault(std::move(rows.error()));
  std::vector<Entry> entries;
  entries.reserve(rows->size());
  for (const EntryRow& row : *rows) {
    Results<Entry> entry = record::from_row(row);
    if (!entry) return fault({Fault::damaged, "entry " + row.id + " cannot be read"});
    entries.push_back(*std::move(entry));
  }
  return entries;
}

const BookedIn* booking(std::span<const Entry> entries) {
  const BookedIn* last = nullptr;
  for (const Entry& entry : entries) {
    const auto* booked = std::get_if<BookedIn>(&entry.body);
    const auto points_at = [&](const Entry& e) { return std::ranges::find(e.corrects, entry.id) != e.corrects.end(); };
    if (booked != nullptr && std::ranges::none_of(entries, points_at)) last = booked;
  }
  return last;
}

Done<std::shared_ptr<const Shaft>> shaft_of(Store& store, const Id& version, Definitions& definitions) {
  auto row = store.shaft_version(version);
  if (!row) return fault(std::move(row.error()));
  auto shaft = definitions.read(row->toml, row->name);
  if (!shaft) return fault({Fault::damaged, "shaft " + version + " cannot be read"});
  return *std::move(shaft);
}

Done<std::shared_ptr<const Surroundings>> surroundings(Store& store) {
  auto workshop = store.workshop();
  if (!workshop) return fault(std::move(workshop.error()));
  auto people = store.people();
  if (!people) return fault(std::move(people.error()));
  return std::make_shared<const Surroundings>(Surroundings{*std::move(workshop), *std::move(people)});
}

Workshop workshop_of(const Surroundings& around, const JobState& state) {
  Workshop workshop = around.workshop;
  gauges_for(workshop, state, [&](const Id& id) {
    const auto it = std::ranges::find(around.people, id, &Person::id);
    return it == around.people.end() ? id : it->name;
  });
  return workshop;
}

std::unique_ptr<OpenJob> put_together(std::shared_ptr<const Shaft> shaft, const Surroundings& around,
                                      std::vector<Entry> entries, std::optional<JobState> state) {
  auto job = std::make_unique<OpenJob>(OpenJob{std::move(shaft), {}, std::move(entries), {}, {}});
  job->state = state ? *std::move(state) : fold(job->shaft, around.workshop, job->entries);
  job->state.entries = job->entries;
  job->workshop = workshop_of(around, job->state);
  job->report = judge_through(job->facts(), Stage::release);
  return job;
}

std::string_view waiting_name(Waiting waiting) {
  constexpr std::array<std::string_view, 7> kNames{"stopped", "cannot_tell", "customer", "parts",
                                                   "bench",   "release",     "released"};
  return kNames[static_cast<std::size_t>(waiting)];
}

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

Done<Whole> open_whole(Store& store, const Id& id, Definitions& definitions) {
  if (auto row = store.job(id); !row) return fault(std::move(row.error()));
  auto entries = entries_of(store, id);
  if (!entries) return tl::unexpected(std::move(entries.error()));
  const BookedIn* booked = booking(*entries);
  if (booked == nullptr) return fault({Fault::damaged, "job " + id + " was never booked in"});
  auto shaft = shaft_of(store, booked->shaft, definitions);
  if (!shaft) return tl::unexpected(std::move(shaft.error()));
  auto around = surroundings(store);
  if (!around) return tl::unexpected(std::move(around.error()));
  auto job = put_together(*std::move(shaft), **around, *std::move(entries), std::nullopt);
  Standing stands = standing(*job);
  JobRow made = row_of(*job, stands, id);
  return Whole{{std::move(job), std::move(stands), std::move(made)}, *std::move(around)};
}

}  // namespace flatwise::desk
