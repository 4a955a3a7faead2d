// Names, signs and figures to be typed: what of blocks.h speaks about parts, gauges and units.
#include <algorithm>
#include <array>

#include "core/units/parse.h"
#include "job/gauges.h"
#include "view/blocks.h"

namespace flatwise::view {
namespace {

/// Units that one types at the bench, metric and inch; other kinds take the two commonest of parse.h.
struct BenchUnits {
  Kind kind;
  std::string_view metric, inch;
};
constexpr std::array<BenchUnits, 8> kBenchUnits{{{Kind::length, "mm", "in"},
                                                 {Kind::force, "kN", "lbf"},
                                                 {Kind::torque, "N·m", "ft·lb"},
                                                 {Kind::temperature, "°C", "°F"},
                                                 {Kind::temperature_rise, "K", "°F"},
                                                 {Kind::speed, "mm/s", "in/s"},
                                                 {Kind::mass, "kg", "lb"},
                                                 {Kind::pressure, "bar", "psi"}}};

std::optional<Kind> kind_named(std::string_view name) {
  for (int i = 0; i < kKindCount; ++i)
    if (kind_name(static_cast<Kind>(i)) == name) return static_cast<Kind>(i);
  return std::nullopt;
}

// The gauge of this use in date that the workshop has first, or the finest.
std::string gauge_in_date(const Subject& subject, const Screen& screen, Gauge::Use use, bool finest) {
  const Gauge* chosen = nullptr;
  for (const Gauge& gauge : subject.job.workshop.gauges) {
    if (gauge.use != use || job::overdue(gauge, screen.today)) continue;
    const bool finer = finest && chosen != nullptr && gauge.calibration_expanded_si < chosen->calibration_expanded_si;
    if (chosen == nullptr || finer) chosen = &gauge;
  }
  return chosen == nullptr ? std::string{} : chosen->id;
}

// The gauge of this use that somebody used last in this job for such a reading; else one in date.
std::string gauge_to_offer(const Subject& subject, const Screen& screen, const FieldIs& is) {
  const auto entries = subject.job.state.entries;
  for (std::size_t i = entries.size(); i > 0; --i) {
    // A dial for the play is no gauge for a stack, nor a tape one for the play.
    if (std::holds_alternative<job::PlayRead>(entries[i - 1].body) != is.finest) continue;
    const std::string used = std::visit(
        [](const auto& body) -> std::string {
          if constexpr (requires { body.thermometer; })
            return body.thermometer;
          else if constexpr (requires {
                               body.gauge;
                               body.reason;
                             })
            return {};  // Accepted, not used.
          else if constexpr (requires { body.gauge; })
            return body.gauge;
          else
            return {};
        },
        entries[i - 1].body);
    const Gauge* gauge = job::find_gauge(subject.job.workshop, used);
    if (gauge != nullptr && gauge->use == *is.gauges) return used;
  }
  return gauge_in_date(subject, screen, *is.gauges, is.finest);
}

Json gauges_json(const Subject& subject, const Screen& screen, const FieldIs& is) {
  const std::string chosen = gauge_to_offer(subject, screen, is);
  Json list = Json::array();
  for (const Gauge& gauge : subject.job.workshop.gauges) {
    if (gauge.use != *is.gauges) continue;
    Json json{{"id", gauge.id}, {"label", gauge.id}, {"chosen", gauge.id == chosen}};
    if (job::overdue(gauge, screen.today)) json["overdue"] = true;
    list.push_back(std::move(json));
  }
  return list;
}

double in_unit(AnyQuantity value, const std::string& unit) {
  // A reference is shown to be typed against, so it goes through the same text a person would type.
  const Result<Entered> one = parse_quantity("1 " + unit, value.kind, "unit");
  return one && one->value.si != 0 ? value.si / one->value.si : value.si;
}

}  // namespace

std::string field_key(const job::EntryBody& body) { return job::question_of(body); }

std::vector<std::string> units_of(Kind kind, UnitSystem system) {
  for (const BenchUnits& units : kBenchUnits) {
    if (units.kind != kind) continue;
    std::vector<std::string> both{std::string{units.metric}, std::string{units.inch}};
    if (system == UnitSystem::inch) std::swap(both[0], both[1]);
    return both;
  }
  std::vector<std::string> out;
  for (const std::string_view unit : unit_spellings(kind))
    if (out.size() < 2) out.emplace_back(unit);
  return out;
}

Json field(const Subject& subject, const Screen& screen, const FieldIs& is) {
  const std::string key = field_key(is.body);
  const std::optional<Kind> kind = kind_named(is.kind);
  const bool plain = !kind || *kind == Kind::count;
  const std::vector<std::string> units = !is.units.empty() || plain ? is.units : units_of(*kind, screen.voice.units);
  Json json{{"key", key}, {"title", is.title}, {"label", is.label}, {"kind", is.kind}};
  json["units"] = units;
  json["unit"] = units.empty() ? "" : units.front();
  json["draft"] = draft(subject, is.body);
  json["into"] = is.into;
  json["said"] = said(subject, screen, key);
  json["agreed"] = agreed(subject, key);
  if (!is.before_typed.empty()) json["before"] = {{"label", is.before_label}, {"typed", is.before_typed}};
  if (is.reference && !units.empty())
    json["reference"] = {
        {"label", is.reference_label}, {"value", in_unit(*is.reference, units.front())}, {"unit", units.front()}};
  if (is.gauges) json["gauges"] = gauges_json(subject, screen, is);
  if (!is.gauge_into.empty()) json["gauge_into"] = is.gauge_into;
  if (!is.hint.empty()) json["hint"] = is.hint;
  if (!is.marks.empty()) json["marks"] = is.marks;
  if (Json undo = undo_draft(subject, key); !undo.is_null()) json["undo"] = std::move(undo);
  if (!is.next.empty()) json["next"] = is.next;
  return json;
}

std::vector<Json> workings_at(const Subject& subject, const Screen& screen, job::Stage stage, Where where) {
  std::vector<Json> out;
  for (const job::StageReport& report : subject.job.report.stages) {
    if (report.stage != stage) continue;
    for (const job::Shown& shown : report.workings)
      if (shown.where == where && shown.working != nullptr)
        out.push_back(working_block(shown.about, *shown.working, screen.voice));
  }
  return out;
}

std::vector<const Finding*> findings_at(const Subject& subject, job::Stage stage, Where where) {
  std::vector<const Finding*> out;
  for (const job::StageReport& report : subject.job.report.stages) {
    if (report.stage != stage) continue;
    for (const Finding& finding : report.findings)
      if (finding.where == where) out.push_back(&finding);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Finding* a, const Finding* b) { return a->severity > b->severity; });
  return out;
}

std::string_view sign_of(Severity severity) {
  switch (severity) {
    case Severity::out:
      return "out";
    case Severity::cannot_tell:
      return "tell";
    case Severity::unanswered:
      return "unknown";
    case Severity::note:
      break;
  }
  return "none";
}
std::string_view sign_of(Answer answer) {
  if (answer == Answer::in) return "in";
  return answer == Answer::out ? "out" : "tell";
}
std::string_view tone_of(Severity severity) {
  if (severity == Severity::out) return "out";
  return severity == Severity::cannot_tell ? "tell" : "plain";
}
std::string_view tone_of(Answer answer) { return sign_of(answer); }
std::string_view flag_of(Severity severity) {
  if (severity == Severity::out) return "stopped";
  return severity == Severity::note ? "none" : "unknown";
}

int rotor_at(const Shaft& shaft, int station) {
  const Station& s = shaft.stations()[static_cast<std::size_t>(station)];
  return s.kind == StationKind::rotor ? s.rotor + 1 : 0;
}

Where where_of(const Shaft& shaft, int station) {
  const int rotor = rotor_at(shaft, station);
  return rotor > 0 ? job::at_rotor(rotor) : job::at_station(station);
}

std::optional<int> station_of(const Shaft& shaft, Where where) {
  if (where.part == Where::Part::rotor && where.number >= 1 && where.number <= shaft.rotor_count())
    return shaft.station_of_rotor(where.number);
  const bool there = where.number >= 1 && where.number <= static_cast<int>(shaft.stations().size());
  if (where.part == Where::Part::station && there) return where.number - 1;
  return std::nullopt;
}

std::string station_name(const Shaft& shaft, int station, const Voice& voice, bool inside) {
  const Station& s = shaft.stations()[static_cast<std::size_t>(station)];
  std::string name = s.label;
  if (s.kind == StationKind::rotor) name = say(Code{"view.rotor"}.id(), {{"rotor", s.rotor + 1}}, voice);
  if (s.kind == StationKind::spacer) name = say(Code{"view.spacer"}.id(), {{"label", s.label}}, voice);
  return inside ? name : capital(name);
}

std::string day_text(Day day, const Voice& voice) {
  return say(Code{"view.day"}.id(),
             {{"day", day.day},
              {"month", Word{"view.month." + std::to_string(day.month)}},
              {"year", std::to_string(day.year)}},
             voice);
}

std::string shown(AnyQuantity value, const Voice& voice) {
  return format_quantity(value, {.system = voice.units, .decimals = {}, .unit = {}, .currency = voice.currency});
}
std::string bare_length(Length length, const Voice& voice) {
  const bool metric = voice.units == UnitSystem::metric;
  const Shown as{.system = voice.units, .decimals = metric ? 2 : 3, .unit = metric ? "mm" : "in", .currency = {}};
  const std::string text = format_quantity(any(length), as);
  return text.substr(0, text.rfind("\u00a0"));
}
std::string shown_other(AnyQuantity value, const Voice& voice) {
  return format_quantity(value, {.system = other(voice.units), .decimals = {}, .unit = {}, .currency = voice.currency});
}
std::string range_other(AnyQuantity least, AnyQuantity greatest, const Voice& voice) {
  Voice turned = voice;
  turned.units = other(voice.units);
  return range_words(least, greatest, turned);
}

}  // namespace flatwise::view
