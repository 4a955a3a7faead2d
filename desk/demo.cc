#include "desk/demo.h"

#include <algorithm>
#include <array>

#include "definition/read.h"
#include "desk/demo_texts.h"
#include "job/bench_entries.h"
#include "job/gauges.h"
#include "job/steps.h"
#include "record/chain.h"
#include "record/entry_json.h"
#include "record/instant.h"
#include "record/uuid.h"

namespace flatwise::desk {
namespace {

using namespace job;
using wire::Json;

constexpr std::array<std::string_view, 10> kFiles{
    "workshop.toml",    "record.toml", "long-nine.toml",   "short-three.toml",  "five.toml",
    "square-four.toml", "job-31.toml", "history/jobs.csv", "history/hours.csv", "history/bearings.csv"};
constexpr std::int64_t kMinute = 60'000;

/// The same id for the same thing each time.
Id id_of(const std::string& what, Instant at = {1'679'270'400'000}) {
  const std::string hash = record::sha256("Tarn Hollow Growers/" + what);
  std::array<std::uint8_t, 10> random{};
  for (std::size_t i = 0; i < random.size(); ++i)
    random[i] = static_cast<std::uint8_t>(std::stoi(hash.substr(2 * i, 2), nullptr, 16));
  return record::uuid7(at, random);
}

tl::unexpected<Refusal> refused(std::vector<Problem> problems) {
  return tl::unexpected(Refusal{std::move(problems), std::nullopt});
}

/// Puts one thing after the other into the store; the first that goes wrong ends it.
class DemoStore {
 public:
  DemoStore(Store& store, const DemoTexts& texts) : store_{store}, texts_{texts} {}

  Done<void> fill() {
    for (const std::string_view name : kFiles)
      if (!texts_.contains(name))
        return refused({Problem{Code{"record.demo_text_missing"}, std::string{name}, {}, {}, std::nullopt}});
    auto json = record_json(text("record.toml"));
    if (!json) return refused(std::move(json.error()));
    plan_ = *std::move(json);
    if (auto done = put_shop(); !done) return done;
    for (const Json& machine : plan_["machine"])
      if (auto done = put_machine(machine); !done) return done;
    for (const CsvRow& row : csv_rows(text("history/jobs.csv")))
      if (!open_now(row.at("job")))
        if (auto done = put_past_job(row); !done) return done;
    for (const Json& job : plan_["job"])
      if (auto done = put_open_job(job); !done) return done;
    return {};
  }

 private:
  [[nodiscard]] const std::string& text(std::string_view name) const { return texts_.find(name)->second; }
  static Id person(const std::string& key) { return id_of("person/" + key); }
  static Id machine(const std::string& shaft) { return id_of("machine/" + shaft); }
  static Id version(const std::string& shaft) { return id_of("version/" + shaft); }
  static std::string said(const Json& json, const char* key) { return json.value(key, std::string{}); }

  /// A job that stands open in the record is not in the log of the winters before.
  [[nodiscard]] bool open_now(const std::string& number) const {
    return std::ranges::any_of(plan_["job"], [&](const Json& job) { return job["number"] == number; });
  }

  template <class T>
  Done<void> put(Stored<T> stored) {
    if (!stored) return tl::unexpected(Refusal{{}, std::move(stored.error())});
    return {};
  }

  Done<void> put_shop() {
    auto workshop = definition::read_workshop(text("workshop.toml"), "workshop.toml");
    if (!workshop) return refused(std::move(workshop.error()));
    if (auto done = put(store_.put_workshop(*workshop)); !done) return done;
    for (const Json& p : plan_["person"]) {
      const std::string role = said(p, "role");
      const Person made{person(said(p, "id")), said(p, "name"),
                        role == "lead"    ? Role::lead
                        : role == "owner" ? Role::owner
                                          : Role::bench,
                        true};
      if (auto done = put(store_.put_person(made)); !done) return done;
    }
    if (auto done = put_calibrations(*workshop); !done) return done;
    for (const Json& c : plan_["customer"])
      if (auto done = put(store_.put_customer({id_of("customer/" + said(c, "id")), said(c, "name"), said(c, "reach")}));
          !done)
        return done;
    return {};
  }

  /// The certificate each gauge came with, noted with its day.
  Done<void> put_calibrations(const Workshop& workshop) {
    for (const Json& json : plan_.value("calibration", Json::array())) {
      const Gauge* gauge = find_gauge(workshop, said(json, "gauge"));
      const auto day = record::day_of(said(json, "day"));
      if (gauge == nullptr || !day)
        return refused({Problem{Code{"record.demo_text_missing"}, said(json, "gauge"), {}, {}, std::nullopt}});
      Calibration noted{.id = id_of("calibration/" + gauge->id, instant_of(*day, 16)),
                        .gauge = gauge->id,
                        .day = day,
                        .until = gauge->calibrated_until,
                        .expanded_si = gauge->calibration_expanded_si,
                        .who = said(json, "who"),
                        .certificate = said(json, "certificate"),
                        .corrects = {},
                        .by = person("lead"),
                        .at = instant_of(*day, 16)};
      if (auto done = put(store_.put_calibration(noted)); !done) return done;
    }
    return {};
  }

  Done<void> put_machine(const Json& json) {
    const std::string shaft = said(json, "shaft");
    const std::string& toml = text(shaft + ".toml");
    auto read = definition::read_shaft(toml, shaft + ".toml");
    if (!read) return refused(std::move(read.error()));
    const Id of = id_of("shaft/" + shaft);
    if (auto done = put(store_.put_shaft(
            {version(shaft), of, 1, read->spec().name, toml, person("lead"), instant_of({2023, 3, 20}, 8)}, 0));
        !done)
      return done;
    if (auto done = put(store_.put_machine(
            {machine(shaft), id_of("customer/" + said(json, "customer")), said(json, "name"), of, true}));
        !done)
      return done;
    return put_log(shaft);
  }

  Done<void> put_log(const std::string& shaft) {
    for (const CsvRow& row : csv_rows(text("history/hours.csv"))) {
      if (row.at("shaft") != shaft) continue;
      const std::string& day = row.at("date");
      if (auto done = put(store_.put_hours({id_of("hours/" + shaft + "/" + day), machine(shaft), day_in(row, "date"),
                                            number_in(row, "hour_meter_h").value_or(0), row.at("note")}));
          !done)
        return done;
    }
    std::vector<BearingLife> lives;
    for (const CsvRow& row : csv_rows(text("history/bearings.csv")))
      if (row.at("shaft") == shaft && !open_now(row.at("fitted_in_job"))) lives.push_back(life_of(row));
    return put(store_.put_lives(machine(shaft), lives));
  }

  /// What an open job took out still runs as far as the log knows.
  [[nodiscard]] BearingLife life_of(const CsvRow& row) const {
    BearingLife life;
    life.machine = machine(row.at("shaft"));
    life.rotor = static_cast<int>(number_in(row, "rotor").value_or(0));
    life.from_hours = number_in(row, "entry_meter_h").value_or(0) - number_in(row, "entry_age_h").value_or(0);
    const std::string& outcome = row.at("outcome");
    if (outcome == "running" || open_now(row.at("out_in_job"))) return life;
    life.to_hours = number_in(row, "exit_meter_h");
    life.failed = outcome == "failed";
    if (const auto age = number_in(row, "last_known_sound_age_h")) life.last_sound_hours = life.from_hours + *age;
    return life;
  }

  /// An id a new entry of a job gets: the same each time, in order of time.
  auto ids(const std::string& job) {
    return [this, job](Instant at) { return id_of("entry/" + job + "/" + std::to_string(++count_), at); };
  }

  BookedIn booking(const std::string& number, const std::string& shaft, std::string complaint,
                   const std::string& hours) {
    BookedIn booked{number, machine(shaft), version(shaft), std::move(complaint), {}, {}};
    if (!hours.empty()) {
      const double meter = std::strtod(hours.c_str(), nullptr);
      booked.hour_meter = Entered{{meter * 3600, Kind::time}, {}, hours};
    }
    return booked;
  }

  Done<void> put_past_job(const CsvRow& row) {
    const std::string& number = row.at("job");
    const Id job = id_of("job/" + number);
    std::string note = said(plan_["past"], "note");
    for (const char* key : {"failed", "came_off", "new_set", "bench_min"}) {
      const std::string mark = "{" + std::string{key} + "}";
      if (const std::size_t at = note.find(mark); at != std::string::npos) note.replace(at, mark.size(), row.at(key));
    }
    const Instant in = instant_of(day_in(row, "date_in"), 8), out = instant_of(day_in(row, "date_out"), 16);
    const auto next = ids(number);
    std::vector<Entry> entries =
        as_entries({}, {booking(number, row.at("shaft"), row.at("reason"), row.at("hour_meter_h") + " h")},
                   {job, person("lead"), "office", in}, next);
    if (auto done = put_past_run(number, row.at("shaft"), {job, {}, "bench tablet", before(out), kMinute}, entries);
        !done)
      return done;
    const std::vector<Entry> rest = as_entries(
        entries, {NoteWritten{{}, Stage::release, std::move(note)}, Released{true, said(plan_["past"], "reason")}},
        {job, person("lead"), "office", out, kMinute}, next);
    entries.insert(entries.end(), rest.begin(), rest.end());
    return take_all(job, std::move(entries));
  }

  /// The run of a past job is done and written down in the hour before it goes out.
  static Instant before(Instant out) { return {out.ms - 60 * kMinute}; }

  /// The test run of a past job, where it was kept: what is answered before the first touch and of the run, and what was read.
  Done<void> put_past_run(const std::string& number, const std::string& shaft, Author author,
                          std::vector<Entry>& entries) {
    const Json runs = plan_["past"].value("run", Json::array());
    const auto run = std::ranges::find_if(runs, [&](const Json& one) { return said(one, "job") == number; });
    if (run == runs.end()) return {};
    const auto definition = definition::read_shaft(text(shaft + ".toml"), shaft + ".toml");
    if (!definition) return refused(definition.error());
    std::vector<EntryBody> bodies;
    for (const Asked& a : asked(*definition, Bench{}))
      if (a.question->stage == Stage::booking_in || a.question->stage == Stage::test_run)
        bodies.emplace_back(flatwise::job::Answered{std::string{a.question->id}, a.number, Reply::yes});
    for (const Json& item : (*run)["read"]) {
      Results<EntryBody> body = record::read_body(item, "record.toml");
      if (!body) return refused(std::move(body.error()));
      bodies.push_back(*std::move(body));
    }
    author.by = person(said(*run, "by"));
    // Ids of its own count: those of the jobs after it stay what they were.
    int count = 0;
    const std::vector<Entry> made = as_entries(entries, std::move(bodies), author, [&](Instant at) {
      return id_of("entry/" + number + "/run/" + std::to_string(++count), at);
    });
    entries.insert(entries.end(), made.begin(), made.end());
    return {};
  }

  Done<void> take_all(const Id& job, std::vector<Entry> entries) {
    Done<Appended> done = take(store_, job, std::move(entries));
    if (!done) return tl::unexpected(std::move(done.error()));
    return {};
  }

  // ---- Jobs that are open -------------------------------------------------------------------------------------------------

  struct OpenDemoJob {
    Id job;
    std::string number;
    Instant at;
    Shaft shaft;
    Workshop workshop;
    std::vector<Entry> entries;
  };

  /// Writes bodies by one person, two minutes each, into the job being made.
  void write(OpenDemoJob& to, const std::string& by, std::vector<EntryBody> bodies, std::int64_t minutes = 2) {
    std::vector<Entry> made = as_entries(
        to.entries, std::move(bodies),
        {to.job, person(by), by == "lead" ? "office" : "bench tablet", to.at, minutes * kMinute}, ids(to.number));
    to.at.ms += minutes * kMinute * static_cast<std::int64_t>(made.size());
    to.entries.insert(to.entries.end(), std::make_move_iterator(made.begin()), std::make_move_iterator(made.end()));
  }

  Done<void> put_open_job(const Json& json) {
    const std::string number = said(json, "number"), shaft = said(json, "shaft");
    auto definition = definition::read_shaft(text(shaft + ".toml"), shaft + ".toml");
    if (!definition) return refused(std::move(definition.error()));
    auto workshop = definition::read_workshop(text("workshop.toml"), "workshop.toml");
    if (!workshop) return refused(std::move(workshop.error()));
    OpenDemoJob job{id_of("job/" + number),
                    number,
                    record::instant_of(said(json, "booked")).value_or(Instant{}),
                    *std::move(definition),
                    *std::move(workshop),
                    {}};
    BookedIn booked = booking(number, shaft, said(json, "complaint"), said(json, "hour_meter"));
    booked.due = record::day_of(said(json, "due"));
    write(job, "lead", {std::move(booked)}, 5);
    for (const Json& item : json["entries"])
      if (auto done = put_item(job, item); !done) return done;
    return take_all(job.job, std::move(job.entries));
  }

  Done<void> put_item(OpenDemoJob& job, Json item) {
    const std::string by = said(item, "by"), kind = said(item, "kind");
    if (kind == "safe") {
      std::vector<EntryBody> answers;
      for (const Question& q : questions())
        if (q.stage == Stage::booking_in)
          answers.emplace_back(flatwise::job::Answered{std::string{q.id}, 0, Reply::yes});
      write(job, by, std::move(answers), 1);
      return {};
    }
    if (kind == "all_yes") {
      const JobState state = fold(job.shaft, job.workshop, job.entries);
      std::vector<EntryBody> answers;
      for (const Asked& a : asked(job.shaft, state.bench))
        if (stage_name(a.question->stage) == said(item, "stage"))
          answers.emplace_back(flatwise::job::Answered{std::string{a.question->id}, a.number, Reply::yes});
      write(job, by, std::move(answers), 1);
      return {};
    }
    if (kind == "steps") return put_steps(job, by, Phase::teardown), Done<void>{};
    if (kind == "readings") return put_readings(job, by);
    item.erase("by");
    Results<EntryBody> body = record::read_body(item, "record.toml");
    if (!body) return refused(std::move(body.error()));
    write(job, by, {*std::move(body)});
    return {};
  }

  void put_steps(OpenDemoJob& job, const std::string& by, Phase phase) {
    const JobState state = fold(job.shaft, job.workshop, job.entries);
    std::vector<EntryBody> bodies;
    for (const JobStep& step : job_steps(job.shaft, job.workshop, state, phase))
      for (EntryBody& body : entries_of_step(step, phase)) bodies.push_back(std::move(body));
    write(job, by, std::move(bodies), 3);
  }

  /// The readings of job 31, in the order of the bench; what the steps have said already is not said again.
  Done<void> put_readings(OpenDemoJob& job, const std::string& by) {
    Results<Bench> bench =
        definition::read_bench(text("job-31.toml"), "job-31.toml", job.shaft, job.workshop, question_ids());
    if (!bench) return refused(std::move(bench.error()));
    std::vector<EntryBody> rest;
    bool back = false;
    for (EntryBody& body : entries_of(job.shaft, *bench)) {
      if (stage_of(body) == Stage::booking_in || std::holds_alternative<TakenOff>(body)) continue;
      const bool puts_on = std::holds_alternative<PutOn>(body);
      if (puts_on && !back) {  // Once for all: the steps of the way back.
        back = true;
        write(job, by, std::exchange(rest, {}), 1);
        put_steps(job, by, Phase::assembly);
      }
      if (!puts_on) rest.push_back(std::move(body));
    }
    write(job, by, std::move(rest), 1);
    return {};
  }

  Store& store_;
  const DemoTexts& texts_;
  Json plan_;
  int count_ = 0;
};

}  // namespace

std::span<const std::string_view> demo_files() { return kFiles; }

Id demo_workshop_id() { return id_of("workshop"); }

Done<void> fill_demo(Store& store, const DemoTexts& texts) {
  const auto people = store.people();
  if (!people) return tl::unexpected(Refusal{{}, people.error()});
  if (!people->empty())
    return tl::unexpected(Refusal{{}, StoreFault{StoreFault::Kind::exists, "the store is not empty"}});
  return DemoStore{store, texts}.fill();
}

}  // namespace flatwise::desk
