// The record from the shell, while the server runs or not: what waits, what is next, entries in, report, log, chain.
#include <sodium.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/data.h"
#include "cli/files.h"
#include "cli/people.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/typed_entry.h"
#include "cli/verbs.h"
#include "definition/read.h"
#include "desk/desk.h"
#include "job/bench_entries.h"
#include "job/entry_says.h"
#include "record/chain.h"
#include "record/entry_json.h"
#include "record/instant.h"
#include "record/uuid.h"
#include "server/answers.h"
#include "server/times.h"

namespace flatwise::cli {
namespace {

using wire::Json;
using StorePtr = std::unique_ptr<job::Store>;

std::string_view name_of(job::StageProgress progress) {
  constexpr std::string_view kNames[] = {"to_come", "open", "passed"};
  return kNames[static_cast<std::size_t>(progress)];
}

std::vector<Problem> problems_of(const desk::Refusal& refusal, const std::string& number) {
  if (!refusal.fault) return refusal.problems;
  return {server::fault_problem(*refusal.fault, "JOB", number)};
}

/// A job by its number or its id.
Results<job::JobRow> find_row(job::Store& store, const std::string& number) {
  const auto row = record::is_uuid(number) ? store.job(number) : store.job_by_number(number);
  if (row) return *row;
  return tl::unexpected(std::vector<Problem>{server::fault_problem(row.error(), "JOB", number)});
}

/// The store with one job opened.
struct AtJob {
  StorePtr store;
  desk::Opened opened;
};
Results<AtJob> open_at(const RecordOptions& options) {
  auto store = open_data(data_folder(options.data));
  if (!store) return tl::unexpected(std::vector<Problem>{std::move(store.error())});
  const auto row = find_row(**store, options.job);
  if (!row) return tl::unexpected(row.error());
  auto opened = desk::open_job(**store, row->id);
  if (!opened) return tl::unexpected(problems_of(opened.error(), options.job));
  return AtJob{*std::move(store), *std::move(opened)};
}

Context speaking(const Context& context, const desk::Opened& opened) {
  Context own = context;
  own.voice.currency = opened.job->workshop.currency;
  return own;
}

std::string head_of(const Context& context, const desk::Opened& opened) {
  const Shaft& shaft = opened.job->shaft;
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour);
  out += ", " + printable(say(Message{Code{"cli.job"}, {{"job", opened.row.number}}}, context.voice)) + "\n";
  if (shaft.spec().invented || opened.job->workshop.invented) out += word("cli.invented", context.voice) + "\n";
  return out;
}

std::string waiting_word(const Context& context, const std::string& waiting) {
  return word("cli.waiting." + waiting, context.voice);
}

std::string name_of_person(const std::vector<job::Person>& people, const job::Id& id) {
  const auto it = std::ranges::find(people, id, &job::Person::id);
  return it == people.end() ? id : it->name;
}

Json row_json(const job::JobRow& row) {
  Json json{{"id", row.id}, {"number", row.number}, {"machine", row.machine}, {"stage", job::stage_name(row.present)}};
  json["waiting"] = row.waiting;
  json["released"] = row.released;
  json["entries"] = row.entries;
  json["head"] = row.head;
  json["due"] = row.due ? Json(record::text_of(*row.due)) : Json(nullptr);
  return json;
}

std::string machine_name(job::Store& store, const job::Id& id) {
  const auto machine = store.machine(id);
  return machine ? machine->name : std::string{};
}

Json standing_json(const Context& context, const desk::Opened& o) {
  Json json{{"job", row_json(o.row)}, {"next", say(o.standing.next.does, o.standing.next.where, context.voice)}};
  if (o.standing.next.because) json["because"] = say(*o.standing.next.because, context.voice);
  json["stages"] = Json::array();
  for (std::size_t s = 0; s < o.standing.stages.size(); ++s)
    json["stages"].push_back(
        {{"stage", job::stage_name(static_cast<job::Stage>(s))}, {"progress", name_of(o.standing.stages[s])}});
  json["blocks"] = Json::array();
  for (const job::Block& b : o.standing.blocks) {
    Json one{{"stage", job::stage_name(b.stage)}, {"severity", wire::name_of(b.severity)}};
    one["what"] = say(b.what, context.voice);
    if (b.instruction) one["mend"] = say(*b.instruction, context.voice);
    json["blocks"].push_back(std::move(one));
  }
  return json;
}

std::string standing_text(const Context& context, const desk::Opened& o) {
  const auto w = [&](const std::string& id) { return word(id, context.voice); };
  std::string out = head_of(context, o) + "\n";
  Table stages{.head = {}, .rows = {}, .right = {}};
  for (std::size_t s = 0; s < o.standing.stages.size(); ++s)
    stages.rows.push_back({w("stage." + std::string{job::stage_name(static_cast<job::Stage>(s))}),
                           w("cli.progress." + std::string{name_of(o.standing.stages[s])})});
  out += lay_out(stages) + "\n";
  for (const job::Block& b : o.standing.blocks) {
    out += severity_tag(context, b.severity) + "  " + printable(say(b.what, context.voice)) + "\n";
    if (b.instruction) out += "      " + printable(say(*b.instruction, context.voice)) + "\n";
  }
  out += (o.standing.blocks.empty() ? "" : "\n") + toned(w("cli.next"), Tone::strong, context.colour) + " " +
         printable(say(o.standing.next.does, o.standing.next.where, context.voice)) + "\n";
  if (o.standing.next.because) out += "      " + printable(say(*o.standing.next.because, context.voice)) + "\n";
  return out;
}

}  // namespace

Status list_jobs(const Context& context, const RecordOptions& options) {
  auto store = open_data(data_folder(options.data));
  if (!store) return refuse(context, store.error());
  const auto rows = (*store)->open_jobs();
  if (!rows) return refuse(context, server::fault_problem(rows.error(), "--data", data_folder(options.data)));
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Json list = Json::array();
  Table table{.head = {w("cli.head.job"), w("cli.head.machine"), w("cli.head.stage"), w("cli.head.waits"),
                       w("cli.head.due"), w("cli.head.entries")},
              .rows = {},
              .right = "lllllr"};
  for (const job::JobRow& row : *rows) {
    list.push_back(row_json(row));
    table.rows.push_back({printable(row.number), printable(machine_name(**store, row.machine)),
                          w("stage." + std::string{job::stage_name(row.present)}), waiting_word(context, row.waiting),
                          row.due ? record::text_of(*row.due) : "–", std::to_string(row.entries)});
  }
  if (context.json)
    *context.out << wire::dump(Json{{"jobs", std::move(list)}});
  else
    *context.out << (rows->empty() ? w("cli.no_jobs") + "\n" : lay_out(table));
  return Status::in_order;
}

Status show_job(const Context& context, const RecordOptions& options) {
  const auto at = open_at(options);
  if (!at) return refuse(context, at.error());
  const Context own = speaking(context, at->opened);
  *own.out << (own.json ? wire::dump(standing_json(own, at->opened)) : standing_text(own, at->opened));
  return at->opened.standing.blocks.empty() ? Status::in_order : Status::not_in_order;
}

Status report_job(const Context& context, const RecordOptions& options) {
  const auto at = open_at(options);
  if (!at) return refuse(context, at.error());
  const Context own = speaking(context, at->opened);
  const job::JobReport& report = at->opened.job->report;
  if (own.json)
    *own.out << wire::dump(wire::to_json(report, own.voice));
  else
    *own.out << head_of(own, at->opened) << "\n" << render(own, report);
  return status_of(report.worst());
}

Status log_job(const Context& context, const RecordOptions& options) {
  const auto at = open_at(options);
  if (!at) return refuse(context, at.error());
  const Context own = speaking(context, at->opened);
  const job::OpenJob& job = *at->opened.job;
  const std::vector<job::Person> people = at->store->people().value_or(std::vector<job::Person>{});
  Json list = Json::array();
  Table table{.head = {}, .rows = {}, .right = "rlll"};
  for (const job::Entry& e : job.entries) {
    std::string says = say(job::entry_says(job.shaft, e.body), own.voice);
    if (job.state.after_release(e)) says = say({Code{"record.after_release"}, {{"says", says}}}, own.voice);
    Json one = record::entry_json(e);
    one["says"] = says;
    list.push_back(std::move(one));
    std::vector<std::int64_t> replaced_by;
    for (const job::Entry* by : job.state.replacing(e)) replaced_by.push_back(by->number);
    const std::string after =
        replaced_by.empty() ? "" : " " + say({Code{"cli.corrected_by"}, {{"entries", replaced_by}}}, own.voice);
    table.rows.push_back({std::to_string(e.number), record::text_of(e.at).substr(0, 16),
                          printable(name_of_person(people, e.by)), printable(says + after)});
  }
  *own.out << (own.json ? wire::dump(Json{{"entries", std::move(list)}})
                        : head_of(own, at->opened) + "\n" + lay_out(table));
  return Status::in_order;
}

Status verify_job(const Context& context, const RecordOptions& options) {
  auto store = open_data(data_folder(options.data));
  if (!store) return refuse(context, store.error());
  const auto row = find_row(**store, options.job);
  if (!row) return refuse(context, row.error());
  const auto rows = (*store)->entries(row->id, 0);
  if (!rows) return refuse(context, server::fault_problem(rows.error(), "JOB", options.job));
  const auto broken = record::verify_chain(*rows);
  const bool headed = rows->empty() || rows->back().hash == row->head;
  const bool whole = !broken && headed && row->entries == static_cast<int>(rows->size());
  const std::int64_t first = broken ? broken->number : static_cast<std::int64_t>(rows->size());
  if (context.json) {
    Json json{{"job", row->number}, {"entries", rows->size()}, {"holds", whole}, {"head", row->head}};
    if (!whole) json["first_broken"] = first;
    *context.out << wire::dump(json);
  } else {
    const auto count = static_cast<std::int64_t>(rows->size());
    *context.out << say(whole ? Message{Code{"cli.chain_holds"}, {{"entries", count}, {"head", row->head}}}
                              : Message{Code{"cli.chain_broken"}, {{"entry", first}}},
                        context.voice)
                 << "\n";
  }
  return whole ? Status::in_order : Status::not_in_order;
}

namespace {

/// What was typed, or what a readings file says.
Results<std::vector<job::EntryBody>> bodies_of(const Context& context, const RecordOptions& options,
                                               const job::OpenJob& job) {
  if (options.readings.empty() == options.entry.empty())
    return tl::unexpected(std::vector<Problem>{{Code{"cli.entry_or_readings"}, "ENTRY", {}, {}, std::nullopt}});
  if (!options.entry.empty()) {
    auto body = typed_entry(options.entry);
    if (!body) return tl::unexpected(std::move(body.error()));
    return std::vector<job::EntryBody>{*std::move(body)};
  }
  const auto text = read_text(context, options.readings);
  if (!text) return tl::unexpected(std::vector<Problem>{text.error()});
  const auto ids = job::question_ids();
  const auto bench = definition::read_bench(*text, options.readings, job.shaft, job.workshop, ids);
  if (!bench) return tl::unexpected(bench.error());
  return job::entries_of(job.shaft, *bench);
}

/// Entries by the numbers that `job log` shows.
Results<std::vector<job::Id>> pointed_at(const std::vector<int>& numbers, const job::OpenJob& job) {
  std::vector<job::Id> ids;
  for (const int number : numbers) {
    const auto it = std::ranges::find(job.entries, number, &job::Entry::number);
    if (it == job.entries.end())
      return tl::unexpected(std::vector<Problem>{{Code{"cli.no_such_entry"},
                                                  "--of",
                                                  std::to_string(number),
                                                  {{"entries", static_cast<std::int64_t>(job.entries.size())}},
                                                  std::nullopt}});
    ids.push_back(it->id);
  }
  return ids;
}

job::Author author_of(const job::Id& job, const job::Person& by) {
  return {.job = job, .by = by.id, .on = "shell", .at = server::now()};
}
/// Taken in at once, by the clock that also wrote it.
std::vector<job::Entry> received(std::vector<job::Entry> entries) {
  for (job::Entry& e : entries) e.received = e.at;
  return entries;
}
job::Id next_id(job::Instant) { return server::fresh_id(); }

/// Bodies with what stands round them. An answer takes the place of an earlier one only where that is asked for: else both
/// stand, and where they differ somebody decides.
Results<std::vector<job::Entry>> signed_entries(const Context& context, const RecordOptions& options,
                                                const desk::Opened& opened, const job::Person& by) {
  auto bodies = bodies_of(context, options, *opened.job);
  if (!bodies) return tl::unexpected(bodies.error());
  const auto of = pointed_at(options.of, *opened.job);
  if (!of) return tl::unexpected(of.error());
  const std::vector<job::Entry>& before = opened.job->entries;
  auto entries = job::as_entries(before, *std::move(bodies), author_of(opened.row.id, by), next_id);
  for (job::Entry& e : entries) {
    if (!of->empty()) e.corrects = *of;
    if (options.correct || !of->empty()) continue;
    std::erase_if(e.corrects,
                  [&](const job::Id& id) { return std::ranges::find(before, id, &job::Entry::id) != before.end(); });
  }
  return entries;
}

Status tell_kept(const Context& context, const std::string& number, const job::Appended& taken) {
  if (context.json) {
    Json list = Json::array();
    for (const job::EntryRow& row : taken.rows)
      list.push_back({{"id", row.id}, {"number", row.number}, {"kind", row.kind}, {"hash", row.hash}});
    *context.out << wire::dump(Json{{"saved", std::move(list)}, {"head", taken.head}});
  } else {
    *context.out << say({Code{"cli.entries_kept"}, {{"entries", taken.fresh}, {"job", number}}}, context.voice) << "\n";
  }
  return Status::in_order;
}

/// A job that is not in the record yet begins with its booking in.
Status book_in(const Context& context, const RecordOptions& options, job::Store& store) {
  const auto by = find_person(store, options.by, {.option = "--by"});
  if (!by) return refuse(context, by.error());
  auto body = typed_entry(options.entry);
  if (!body) return refuse(context, body.error());
  const job::Id job = server::fresh_id();
  const std::string number = std::get<job::BookedIn>(*body).number;
  const auto taken =
      desk::take(store, job, received(job::as_entries({}, {*std::move(body)}, author_of(job, *by), next_id)));
  if (!taken) return refuse(context, problems_of(taken.error(), number));
  return tell_kept(context, number, *taken);
}

}  // namespace

Status record_entries(const Context& context, const RecordOptions& options) {
  if (sodium_init() < 0) return Status::bad_input;
  if (!options.entry.empty() && options.entry.front() == "booked_in") {
    auto store = open_data(data_folder(options.data));
    if (!store) return refuse(context, store.error());
    if (!find_row(**store, options.job)) return book_in(context, options, **store);
  }
  const auto at = open_at(options);
  if (!at) return refuse(context, at.error());
  const auto by = find_person(*at->store, options.by, {.option = "--by"});
  if (!by) return refuse(context, by.error());
  auto entries = signed_entries(context, options, at->opened, *by);
  if (!entries) return refuse(context, entries.error());
  const auto taken = desk::take(*at->store, at->opened.row.id, received(*std::move(entries)));
  if (!taken) return refuse(context, problems_of(taken.error(), options.job));
  return tell_kept(context, at->opened.row.number, *taken);
}

}  // namespace flatwise::cli
