#include "view/shop.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <nlohmann/json.hpp>

#include "job/entry_fields.h"
#include "job/gauges.h"
#include "record/instant.h"
#include "view/blocks.h"

namespace flatwise::view {
namespace {

using wire::Json;

constexpr int kSoonDays = 30;  // Common practice: a month is time enough to send a gauge away.

std::string say_code(Code code, const Args& args, const Voice& voice) { return say(code.id(), args, voice); }

std::string person_of(std::span<const job::Person> people, const job::Id& id) {
  const auto it = std::ranges::find(people, id, &job::Person::id);
  return it == people.end() ? id : it->name;
}

int days_between(Day from, Day to) {
  using namespace std::chrono;
  const auto days_of = [](Day d) {
    return sys_days{year{d.year} / month{static_cast<unsigned>(d.month)} / day{static_cast<unsigned>(d.day)}};
  };
  return static_cast<int>((days_of(to) - days_of(from)).count());
}

// ---- Gauges ---------------------------------------------------------------------------------------------------------

enum class Date { overdue, soon, good };
Date date_of(const Gauge& gauge, Day today) {
  if (gauge.calibrated_until < today) return Date::overdue;
  return days_between(today, gauge.calibrated_until) <= kSoonDays ? Date::soon : Date::good;
}

/// The uncertainty of a certificate: a share of the reading, or a length of its scale.
std::string expanded_shown(const Gauge& gauge, double expanded, const Voice& voice) {
  if (gauge.relative) return say_code(Code{"view.gauges.share"}, {{"share", any_ratio(expanded)}}, voice);
  return shown({expanded, job::step_of_scale(gauge.use)}, voice);
}

Json note_json(const GaugesSubject& subject, const Gauge& gauge, const job::Calibration& c, const Voice& voice) {
  Json json{{"id", c.id},
            {"until", day_text(c.until, voice)},
            {"expanded", expanded_shown(gauge, c.expanded_si, voice)},
            {"who", c.who},
            {"certificate", c.certificate},
            {"by", person_of(subject.people, c.by)},
            {"at", record::text_of(c.at)}};
  if (c.day) json["day"] = day_text(*c.day, voice);
  json["corrected"] =
      std::ranges::any_of(subject.noted, [&](const job::Calibration& later) { return later.corrects == c.id; });
  return json;
}

/// What was noted of it, newest first.
Json history_of(const GaugesSubject& subject, const Gauge& gauge, const Voice& voice) {
  Json list = Json::array();
  for (auto it = subject.noted.rbegin(); it != subject.noted.rend(); ++it)
    if (it->gauge == gauge.id) list.push_back(note_json(subject, gauge, *it, voice));
  return list;
}

Json units_json(const Gauge& gauge, const Voice& voice) {
  Json list = Json::array();
  for (std::string& unit : units_of(job::step_of_scale(gauge.use), voice.units)) list.push_back(std::move(unit));
  return list;
}

Json card(const GaugesSubject& subject, const Gauge& gauge, const Voice& voice) {
  const Date date = date_of(gauge, subject.today);
  const int days = days_between(subject.today, gauge.calibrated_until);
  const Code state = date == Date::overdue ? Code{"view.gauges.overdue"}
                     : date == Date::soon  ? Code{"view.gauges.soon"}
                                           : Code{"view.gauges.good"};
  Json json{
      {"id", gauge.id},
      {"use", job::fields::kUses[static_cast<std::size_t>(gauge.use)]},
      {"label",
       say_code(Code{"view.gauges.use"},
                {{"use", Word{"gauge_use." + std::string{job::fields::kUses[static_cast<std::size_t>(gauge.use)]}}}},
                voice)},
      {"resolution", shown({gauge.resolution_si, job::step_of_scale(gauge.use)}, voice)},
      {"expanded", expanded_shown(gauge, gauge.calibration_expanded_si, voice)},
      {"until", day_text(gauge.calibrated_until, voice)},
      {"flag", date == Date::overdue ? "stopped"
               : date == Date::soon  ? "waits"
                                     : "done"},
      {"tone", date == Date::overdue ? "out"
               : date == Date::soon  ? "tell"
                                     : "in"},
      {"state", say_code(state, {{"days", std::abs(days)}}, voice)},
      {"overdue", date == Date::overdue},
      {"units", units_json(gauge, voice)},
      {"share", gauge.kind != Kind::temperature},
      {"notes", history_of(subject, gauge, voice)}};
  if (!gauge.certificates.empty() && gauge.certificates.back().from)
    json["calibrated"] = day_text(*gauge.certificates.back().from, voice);
  // What it came with, before anything was noted: the log holds it only where its day is known.
  if (!gauge.certificates.empty() && !gauge.certificates.front().from)
    json["came_with"] = say_code(Code{"view.gauges.came_with"},
                                 {{"until", day_text(gauge.certificates.front().until, voice)},
                                  {"expanded", expanded_shown(gauge, gauge.certificates.front().expanded_si, voice)}},
                                 voice);
  return json;
}

// ---- Stock ----------------------------------------------------------------------------------------------------------

int wanted_of(const JobWants& job, const std::string& part) {
  int count = 0;
  for (const job::PartWanted& p : job.wanted)
    if (p.part.part_number == part) count += p.to_take();
  return count;
}

struct Level {
  Code word;
  std::string_view flag, tone;
};
Level level_of(const StockItem& item, int left) {
  if (left < 0) return {Code{"view.stock.short"}, "stopped", "out"};
  if (item.on_shelf < item.least) return {Code{"view.stock.below"}, "waits", "tell"};
  return {item.least > 0 ? Code{"view.stock.enough"} : Code{"view.stock.no_least"}, "none", "plain"};
}

Json row_of(const StockItem& item, std::span<const JobWants> jobs, const Voice& voice) {
  Json takers = Json::array();
  int reserved = 0;
  for (const JobWants& job : jobs)
    if (const int count = wanted_of(job, item.part_number); count > 0) {
      reserved += count;
      takers.push_back({{"job", job.job}, {"number", job.number}, {"count", count}});
    }
  const int left = item.on_shelf - reserved;
  const Level level = level_of(item, left);
  return {{"part_number", item.part_number},
          {"name", item.name},
          {"on_shelf", item.on_shelf},
          {"on_order", item.on_order},
          {"least", item.least},
          {"reserved", reserved},
          {"left", left},
          {"jobs", std::move(takers)},
          {"flag", level.flag},
          {"tone", level.tone},
          {"state", say_code(level.word, {{"short", std::abs(left)}, {"least", item.least}}, voice)}};
}

std::string reason_shown(const job::StockMove& move, const std::string& number, const Voice& voice) {
  switch (move.reason) {
    case job::MoveReason::counted:
      return say_code(Code{"view.stock.counted"}, {}, voice);
    case job::MoveReason::ordered:
      return say_code(Code{"view.stock.ordered"}, {}, voice);
    case job::MoveReason::received:
      return say_code(Code{"view.stock.received"}, {}, voice);
    case job::MoveReason::scrapped:
      return say_code(Code{"view.stock.scrapped"}, {}, voice);
    case job::MoveReason::job:
      break;
  }
  return say_code(Code{"view.stock.job"}, {{"number", number}}, voice);
}

}  // namespace

Json gauge_card(const GaugesSubject& subject, std::string_view id, const Voice& voice) {
  const Gauge* gauge = job::find_gauge(subject.workshop, id);
  return gauge == nullptr ? Json() : card(subject, *gauge, voice);
}

Json gauges_view(const GaugesSubject& subject, const Voice& voice) {
  std::vector<const Gauge*> order;
  for (const Gauge& gauge : subject.workshop.gauges) order.push_back(&gauge);
  std::ranges::stable_sort(order, {}, [&](const Gauge* g) { return date_of(*g, subject.today); });
  Json list = Json::array();
  int overdue = 0;
  for (const Gauge* gauge : order) {
    list.push_back(card(subject, *gauge, voice));
    overdue += date_of(*gauge, subject.today) == Date::overdue ? 1 : 0;
  }
  return {{"workshop", subject.workshop.name},
          {"invented", subject.workshop.invented},
          {"head", say_code(Code{"view.gauges.head"}, {{"count", static_cast<int>(order.size())}, {"overdue", overdue}},
                            voice)},
          {"gauges", std::move(list)}};
}

Json stock_view(const Workshop& workshop, std::span<const JobWants> jobs, const Voice& voice) {
  Json list = Json::array();
  int low = 0;
  for (const StockItem& item : workshop.stock) {
    list.push_back(row_of(item, jobs, voice));
    low += list.back()["flag"] == "none" ? 0 : 1;
  }
  const Code head = low > 0 ? Code{"view.stock.head_low"} : Code{"view.stock.head"};
  return {{"head", say_code(head, {{"count", static_cast<int>(workshop.stock.size())}, {"low", low}}, voice)},
          {"stock", std::move(list)}};
}

Json moves_view(const MovesSubject& subject, const Voice& voice) {
  Json list = Json::array();
  for (const job::StockMove& m : subject.moves) {
    const bool of_job = m.reason == job::MoveReason::job;
    const auto number = subject.jobs.find(m.why);
    const std::string job = of_job && number != subject.jobs.end() ? number->second : std::string{};
    Json json{{"id", m.id},
              {"part_number", m.part_number},
              {"shelf", m.shelf},
              {"order", m.order},
              {"reason", reason_shown(m, job, voice)},
              {"why", of_job || m.why == "counted" ? std::string{} : m.why},
              {"by", person_of(subject.people, m.by)},
              {"at", record::text_of(m.at)}};
    if (m.counted) json["counted"] = *m.counted;
    list.push_back(std::move(json));
  }
  return {{"moves", std::move(list)}};
}

}  // namespace flatwise::view
