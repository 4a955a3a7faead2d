#include "view/machine_view.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <tuple>

#include "drawing/play_scale.h"
#include "job/gauges.h"
#include "job/hours.h"
#include "job/service.h"
#include "view/bearing_told.h"
#include "view/blocks.h"
#include "view/picture_json.h"
#include "view/rails.h"
#include "view/rotor_lists.h"

namespace flatwise::view {
namespace {

std::string say_code(Code code, const Args& args, const Voice& voice) { return say(code.id(), args, voice); }

std::optional<double> hours_on(const std::vector<job::HourReading>& hours, Day day) {
  std::optional<double> found;
  for (const job::HourReading& reading : hours)
    if (reading.day <= day) found = reading.hours;
  return found;
}

std::string no_hours(const Voice& voice) { return say_code(Code{"view.machine.no_hours"}, {}, voice); }
std::string hours_text(double hours, const Voice& voice) {
  return say_code(Code{"view.machine.hours"}, {{"hours", static_cast<std::int64_t>(std::llround(hours))}}, voice);
}

struct History {
  double now = 0, begin = 0;
  std::map<int, double> age;  ///< Hours on the bearing that runs, by rotor.
};

History history_of(const MachineSubject& subject, const std::vector<job::HourReading>& hours) {
  History history;
  if (!hours.empty()) history.begin = hours.front().hours, history.now = hours.back().hours;
  for (const job::BearingLife& life : subject.lives) {
    history.now = std::max(history.now, life.to_hours.value_or(life.from_hours));
    history.begin = std::min(history.begin, life.from_hours);
  }
  for (const job::BearingLife& life : subject.lives)
    if (!life.to_hours) history.age[life.rotor] = history.now - life.from_hours;
  return history;
}

/// The oldest bearings: no other runs longer, by an hour or more.
std::vector<int> oldest(const History& history) {
  double most = 0;
  for (const auto& [rotor, age] : history.age) most = std::max(most, age);
  std::vector<int> rotors;
  for (const auto& [rotor, age] : history.age)
    if (most > 0 && age > most - 1) rotors.push_back(rotor);
  return static_cast<int>(rotors.size()) == static_cast<int>(history.age.size()) ? std::vector<int>{} : rotors;
}

Screen spoken(const Voice& voice) {
  Screen screen;
  screen.voice = voice;
  return screen;
}

/// A day of renewals: by a job of the record, or by what the log of the bearings says.
struct Event {
  double hours = 0;
  Day day;
  std::string number;
  job::Id job;
  std::vector<int> renewed;
};

std::vector<Event> events_of(const MachineSubject& subject, const std::vector<job::HourReading>& hours,
                             const History& history) {
  std::map<long long, Event> by_hours;
  for (const job::BearingLife& life : subject.lives) {
    if (life.from_hours <= history.begin) continue;
    Event& event = by_hours[std::llround(life.from_hours * 10)];
    event.hours = life.from_hours;
    event.renewed.push_back(life.rotor);
  }
  for (auto& [key, event] : by_hours)
    for (const job::HourReading& reading : hours)
      if (std::abs(reading.hours - event.hours) < 0.06) event.day = reading.day;
  for (const job::JobRow& row : subject.jobs) {
    const Day day = day_of(row.booked);
    const double at = hours_on(hours, day).value_or(history.begin);
    Event& event = by_hours[std::llround(at * 10)];
    event.hours = at;
    event.day = day;
    event.number = row.number;
    event.job = row.id;
  }
  std::vector<Event> events;
  for (auto& [key, event] : by_hours) events.push_back(std::move(event));
  return events;
}

drawing::AgesDrawing draw(const MachineSubject& subject, const History& history, const std::vector<Event>& events,
                          const Voice& voice) {
  drawing::Ages ages;
  ages.from_hours = history.begin;
  ages.now_hours = history.now;
  for (const job::BearingLife& life : subject.lives)
    ages.bars.push_back({life.rotor, life.from_hours, life.to_hours, life.failed});
  for (const Event& event : events)
    if (!event.number.empty())
      ages.jobs.push_back(
          {event.hours, say_code(Code{"view.machine.job"}, {{"number", event.number}}, voice), event.job});
  ages.watch = oldest(history);
  ages.now_words = say_code(Code{"view.machine.now"}, {}, voice);
  ages.hours_words = say_code(Code{"view.machine.h"}, {}, voice);
  return drawing::ages(subject.shaft, ages, kStripWidth, 88);
}

Json cells(const MachineSubject& subject, const History& history, const drawing::StripDrawing& strip,
           const Voice& voice) {
  const std::vector<int> watch = oldest(history);
  Json list = Json::array();
  for (std::size_t i = 0; i < subject.shaft.stations().size(); ++i) {
    const Station& station = subject.shaft.stations()[i];
    const int rotor = rotor_at(subject.shaft, static_cast<int>(i));
    const auto age = history.age.find(rotor);
    const bool watched = std::ranges::find(watch, rotor) != watch.end();
    const std::string hours = age == history.age.end() ? std::string{} : std::to_string(std::llround(age->second));
    const std::string on = say_code(watched ? Code{"view.machine.watch"} : Code{"view.cell.on"}, {}, voice);
    Json json{{"index", i},
              {"kind", name_of(station.kind)},
              {"name", station.label},
              {"word", on},
              {"flag", "none"},
              {"body", "on"},
              {"renew", false},
              {"chosen", watched},
              {"rail", rail_of(station.kind)},
              {"from", strip.stations[i].from},
              {"to", strip.stations[i].to}};
    json["said"] =
        say_code(Code{"view.machine.said"},
                 {{"part", station_name(subject.shaft, static_cast<int>(i), voice)}, {"hours", hours}}, voice);
    if (!hours.empty()) json["sub"] = hours;
    list.push_back(std::move(json));
  }
  return list;
}

/// What was renewed; a job that still stands open has not renewed nothing, it has not come so far.
std::string renewed_text(const MachineSubject& subject, const Event& event, const Voice& voice) {
  const std::string rotors = event.renewed.empty() ? std::string{} : rotor_runs(spoken(voice), event.renewed);
  const auto row = std::ranges::find(subject.jobs, event.job, &job::JobRow::id);
  const bool open = !event.job.empty() && row != subject.jobs.end() && !row->released;
  return say_code(open ? Code{"view.machine.open"} : Code{"view.machine.renewed"}, {{"rotors", rotors}}, voice);
}

Json jobs_json(const MachineSubject& subject, const std::vector<Event>& events, const Voice& voice) {
  Json list = Json::array();
  for (auto it = events.rbegin(); it != events.rend(); ++it) {
    const Event& event = *it;
    list.push_back({{"job", event.job.empty() ? Json() : Json(event.job)},
                    {"number", event.number},
                    {"day", event.day.year == 0 ? std::string{} : day_text(event.day, voice)},
                    {"hours", hours_text(event.hours, voice)},
                    {"says", renewed_text(subject, event, voice)}});
  }
  return list;
}

int failures(const MachineSubject& subject) {
  return static_cast<int>(std::ranges::count_if(subject.lives, &job::BearingLife::failed));
}

/// Counted from the last job that was released, by the meter as it stood then.
void add_next_due(const MachineSubject& subject, const std::vector<job::HourReading>& hours, Json& facts,
                  const Voice& voice) {
  const job::JobRow* last = nullptr;
  for (const job::JobRow& row : subject.jobs)
    if (row.released && (last == nullptr || row.booked > last->booked)) last = &row;
  if (last == nullptr) return;
  std::optional<Input> meter;
  if (const auto at = hours_on(hours, day_of(last->booked)))
    meter = measured("meter", any(Time::from_si(*at * 3600)), last->number, hours_text(*at, voice));
  const std::optional<job::NextDue> due = job::next_due(subject.shaft, std::move(meter));
  if (!due || !due->due) return;
  const Args args{{"number", last->number}, {"hours", hours_text(due->meter->si() / 3600, voice)}};
  facts.push_back(fact({.caption = say_code(Code{"view.machine.next_due"}, {}, voice),
                        .value = hours_text(due->due_at()->si() / 3600, voice),
                        .other = say_code(Code{"view.machine.due_since"}, args, voice),
                        .working = due->due},
                       voice));
}

Json facts_json(const MachineSubject& subject, const History& history, const std::vector<job::HourReading>& hours,
                const Voice& voice) {
  Json facts = Json::array();
  const std::string now = hours.empty() ? no_hours(voice) : hours_text(hours.back().hours, voice);
  facts.push_back(fact({say_code(Code{"view.machine.meter"}, {}, voice), now}, voice));
  facts.push_back(fact({say_code(Code{"view.machine.shaft"}, {}, voice), subject.shaft.spec().name}, voice));
  facts.push_back(fact({say_code(Code{"view.machine.failed"}, {}, voice), std::to_string(failures(subject))}, voice));
  double most = 0;
  for (const auto& [rotor, age] : history.age) most = std::max(most, age);
  const std::string age = history.age.empty() ? no_hours(voice) : hours_text(most, voice);
  facts.push_back(fact({say_code(Code{"view.machine.oldest"}, {}, voice), age}, voice));
  add_next_due(subject, hours, facts, voice);
  return facts;
}

/// The rotor with the most hours on its bearing; the first of several.
std::optional<int> most_hours(const History& history) {
  std::optional<int> rotor;
  for (const auto& [number, age] : history.age)
    if (!rotor || age > history.age.at(*rotor)) rotor = number;
  return rotor;
}

Json blocks_json(const MachineSubject& subject, const History& history, const Voice& voice) {
  Json blocks = Json::array();
  const std::vector<int> watch = oldest(history);
  if (!watch.empty())
    blocks.push_back(
        text_block(say_code(Code{"view.machine.watch_says"},
                            {{"rotors", rotor_runs(spoken(voice), watch)},
                             {"hours", static_cast<std::int64_t>(std::llround(history.age.at(watch.front())))}},
                            voice),
                   "head", "strong"));
  blocks.push_back(text_block(say_code(Code{"view.machine.key"}, {}, voice), "note"));
  // Beside the hours that are on the oldest bearing: what it may be expected to bear.
  if (const auto rotor = most_hours(history); rotor && *rotor >= 1 && *rotor <= subject.shaft.rotor_count())
    for (Json& block : bearing_told(subject.shaft, *rotor, voice)) blocks.push_back(std::move(block));
  return blocks;
}

/// All that was read off the meter, the newest first; what was corrected stays, and counts no more.
Json readings_json(const MachineSubject& subject, const Voice& voice) {
  std::vector<job::HourReading> all{subject.hours.begin(), subject.hours.end()};
  std::ranges::stable_sort(all, std::ranges::greater{},
                           [](const job::HourReading& r) { return std::tuple{r.day, r.at.ms, r.id}; });
  Json list = Json::array();
  for (const job::HourReading& r : all) {
    const auto who = subject.people.find(r.by);
    Json json{{"id", r.id},
              {"day", job::text_of(r.day)},
              {"on", day_text(r.day, voice)},
              {"says", hours_text(r.hours, voice)},
              {"by", who == subject.people.end() ? std::string{} : who->second},
              {"corrected", job::is_corrected(r, subject.hours)}};
    if (!r.note.empty()) json["note"] = r.note;
    list.push_back(std::move(json));
  }
  return list;
}

}  // namespace

wire::Json machine_view(const MachineSubject& subject, const Voice& voice) {
  const std::vector<job::HourReading> hours = job::standing_hours(subject.hours);
  const History history = history_of(subject, hours);
  const std::vector<Event> events = events_of(subject, hours, history);
  const drawing::AgesDrawing drawing = draw(subject, history, events, voice);
  Json json{{"id", subject.machine.id},
            {"name", subject.machine.name},
            {"customer", subject.customer},
            {"workshop", subject.workshop.name},
            {"invented", subject.machine.invented || subject.workshop.invented}};
  json["facts"] = facts_json(subject, history, hours, voice);
  json["drawing"] = picture_json(drawing.list);
  json["says"] = say_code(Code{"view.machine.drawing_says"}, {{"shaft", subject.shaft.spec().name}}, voice);
  json["stations"] = cells(subject, history, drawing.strip, voice);
  json["jobs"] = jobs_json(subject, events, voice);
  json["blocks"] = blocks_json(subject, history, voice);
  json["readings"] = readings_json(subject, voice);
  return json;
}

}  // namespace flatwise::view
