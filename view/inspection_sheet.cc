// Bench inspection. Found first: the number being entered; after it is kept, the answer of its plane.
#include <algorithm>

#include "drawing/section.h"
#include "job/gauges.h"
#include "view/bearing_told.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr double kHubWidth = 58, kCircle = 34, kGap = 4;
constexpr int kDirections = 4;

job::BoreRead bore(int rotor, char plane, int direction, int directions) {
  job::BoreRead body;
  body.rotor = rotor;
  body.plane = plane;
  body.direction = direction;
  body.directions = directions;
  return body;
}

/// As many directions as were begun with; four where nobody has.
int directions_of(const Subject& subject, int rotor) {
  int count = kDirections;
  for (const auto& [question, live] : subject.job.state.live)
    if (const auto* read = std::get_if<job::BoreRead>(&live.first().body); read != nullptr && read->rotor == rotor)
      count = std::max(count, read->directions);
  return count;
}

struct Place {
  char plane = 'A';
  int direction = 1;
  std::string key, typed;
};
std::vector<Place> places_of(const Subject& subject, int rotor) {
  std::vector<Place> places;
  const int count = directions_of(subject, rotor);
  for (const char plane : {'A', 'B'})
    for (int d = 1; d <= count; ++d) {
      Place place{plane, d, field_key(bore(rotor, plane, d, count)), {}};
      if (const auto* read = subject.job.state.agreed<job::BoreRead>(place.key)) place.typed = read->diameter.typed;
      places.push_back(std::move(place));
    }
  return places;
}
std::string first_open(const std::vector<Place>& places, char plane) {
  for (const Place& p : places)
    if (p.plane == plane && p.typed.empty()) return p.key;
  for (const Place& p : places)
    if (p.plane == plane) return p.key;
  return {};
}
std::string first_open(const std::vector<Place>& places) {
  for (const Place& p : places)
    if (p.typed.empty()) return p.key;
  return places.front().key;
}

/// The gauge last used on this rotor; else the first bore gauge in date: whose ring a difference is typed from.
const Gauge* gauge_in_use(const Subject& subject, const Screen& screen, int rotor) {
  for (auto it = subject.job.state.bench.bores.rbegin(); it != subject.job.state.bench.bores.rend(); ++it)
    if (it->rotor == rotor) return job::find_gauge(subject.job.workshop, it->gauge);
  for (const Gauge& gauge : subject.job.workshop.gauges)
    if (gauge.use == Gauge::Use::bore_gauge && !job::overdue(gauge, screen.today)) return &gauge;
  return nullptr;
}

Json bore_field(const Subject& subject, const Screen& screen, int rotor, const std::vector<Place>& places,
                std::size_t at, const std::string& after) {
  const Place& place = places[at];
  const Args args{{"plane", std::string(1, place.plane)}, {"direction", place.direction}};
  FieldIs is;
  is.title = tell(screen, Code{"bench.bore.field"}, args);
  is.label = is.title;
  is.body = bore(rotor, place.plane, place.direction, static_cast<int>(places.size()) / 2);
  is.into = "diameter";
  is.gauge_into = "gauge";
  is.gauges = Gauge::Use::bore_gauge;
  if (at > 0) is.before_label = tell(screen, Code{"bench.before"}), is.before_typed = places[at - 1].typed;
  const Gauge* gauge = gauge_in_use(subject, screen, rotor);
  if (gauge != nullptr && gauge->setting_ring) {
    is.reference = any(*gauge->setting_ring);
    is.reference_label = tell(screen, Code{"bench.bore.ring"}, {{"gauge", gauge->id}});
  }
  is.marks = {std::string{"plane-"} + place.plane, "direction-" + std::to_string(place.direction)};
  if (place.direction == 1) is.hint = tell(screen, Code{"bench.bore.direction_one"});
  is.next = at + 1 < places.size() ? places[at + 1].key : after;
  return field(subject, screen, is);
}

Json temperature_field(const Subject& subject, const Screen& screen, int rotor, job::Measured what) {
  job::TemperatureRead body;
  body.rotor = rotor;
  body.what = what;
  FieldIs is;
  is.title = tell(screen, what == job::Measured::part ? Code{"bench.bore.part"} : Code{"bench.bore.gauge"});
  is.label = is.title;
  is.kind = "temperature";
  is.body = body;
  is.into = "temperature";
  is.gauge_into = "thermometer";
  is.gauges = Gauge::Use::thermometer;
  is.hint = tell(screen, Code{"bench.bore.one_night"});
  if (what == job::Measured::part) {
    body.what = job::Measured::gauge;
    is.next = field_key(body);
  }
  return field(subject, screen, is);
}

Json length_field(const Subject& subject, const Screen& screen, int station, std::optional<Half> half) {
  job::PartMeasured body;
  body.station = station + 1;
  body.half = half;
  FieldIs is;
  is.title = half ? tell(screen, *half == Half::a ? Code{"bench.length.half_a"} : Code{"bench.length.half_b"})
                  : tell(screen, Code{"bench.length.part"},
                         {{"part", station_name(subject.job.shaft, station, screen.voice, true)}});
  is.label = is.title;
  is.body = body;
  is.into = "length";
  is.gauge_into = "gauge";
  is.gauges = Gauge::Use::length;
  is.hint = tell(screen, Code{"bench.length.hint"});
  return field(subject, screen, is);
}

Json keypad(const Subject& subject, const Screen& screen, const Spot& spot, int rotor,
            const std::vector<Place>& places) {
  std::vector<Json> fields;
  job::TemperatureRead after;
  after.rotor = rotor;
  const std::string temperatures = field_key(after);
  for (std::size_t i = 0; i < places.size(); ++i)
    fields.push_back(bore_field(subject, screen, rotor, places, i, temperatures));
  for (const job::Measured what : {job::Measured::part, job::Measured::gauge})
    fields.push_back(temperature_field(subject, screen, rotor, what));
  for (const Half half : {Half::a, Half::b}) fields.push_back(length_field(subject, screen, spot.station, half));
  return keypad_block(std::move(fields), first_open(places));
}

Json section_block(const Subject& subject, const Screen& screen, const Spot& spot, int rotor,
                   const std::vector<Place>& places) {
  const Station& station = subject.job.shaft.stations()[static_cast<std::size_t>(spot.station)];
  const int count = static_cast<int>(places.size()) / 2;
  drawing::DisplayList list = drawing::hub_section(station, subject.job.shaft.rotor(rotor), kHubWidth);
  drawing::append(list, drawing::direction_circle(count, kCircle), {kHubWidth + kGap, 2});
  list.width = kHubWidth + kGap + kCircle;
  list.height = std::max(list.height, kCircle + 2.0);
  std::vector<TapOn> taps;
  for (const char plane : {'A', 'B'})
    taps.push_back({.id = std::string{"plane-"} + plane,
                    .says = tell(screen, Code{"bench.bore.tap_plane"}, {{"plane", std::string(1, plane)}}),
                    .does = {},
                    .field = first_open(places, plane)});
  const std::string open = first_open(places);
  const auto now = std::ranges::find(places, open, &Place::key);
  for (int d = 1; d <= count; ++d) {
    const auto at =
        std::ranges::find_if(places, [&](const Place& p) { return p.plane == now->plane && p.direction == d; });
    taps.push_back(
        {.id = "direction-" + std::to_string(d),
         .says = tell(screen, Code{"bench.bore.field"}, {{"plane", std::string(1, at->plane)}, {"direction", d}}),
         .does = {},
         .field = at->key});
  }
  return drawing_block(list, tell(screen, Code{"bench.bore.section"}, {{"rotor", rotor}}), std::move(taps),
                       {.chosen = {std::string{"plane-"} + now->plane, "direction-" + std::to_string(now->direction)},
                        .caption = tell(screen, Code{"bench.bore.direction_one"})});
}

WorkingPtr plane_working(const Subject& subject, int rotor, char plane) {
  return working_of(subject, Stage::inspection, "bore-at-plane", job::at_rotor(rotor), std::string(1, plane));
}

/// The unit a figure was typed in, empty where none stands behind it: "3.9365 in" gives "in".
std::string unit_typed(const std::string& typed) {
  const std::size_t at = typed.find_last_of("0123456789.");
  const std::size_t from = at == std::string::npos ? at : typed.find_first_not_of(' ', at + 1);
  return from == std::string::npos ? std::string{} : typed.substr(from);
}

/// The one unit all readings were typed in; empty where there are several: then each cell keeps its own.
std::string common_unit(const std::vector<Place>& places) {
  std::string unit;
  for (const Place& p : places) {
    if (p.typed.empty()) continue;
    const std::string here = unit_typed(p.typed);
    if (!unit.empty() && here != unit) return {};
    unit = here;
  }
  return unit;
}

Json readings_grid(const Subject& subject, const Screen& screen, int rotor, const std::vector<Place>& places) {
  const std::string unit = common_unit(places);
  const auto figure = [&](const std::string& typed) {
    if (unit.empty() || typed.empty()) return typed;
    return typed.substr(0, typed.find_last_not_of(' ', typed.size() - unit.size() - 1) + 1);
  };
  std::vector<std::string> head{tell(screen, Code{"bench.bore.plane"}, {{"unit", unit}})};
  const int count = static_cast<int>(places.size()) / 2;
  for (int d = 1; d <= count; ++d) head.push_back(std::to_string(d));
  std::vector<GridRow> rows;
  for (const char plane : {'A', 'B'}) {
    GridRow row{std::string(1, plane), {}};
    const WorkingPtr working = plane_working(subject, rotor, plane);
    for (const Place& p : places)
      if (p.plane == plane)
        row.cells.push_back(
            {figure(p.typed), p.key, working != nullptr && working->answer ? tone_of(*working->answer) : ""});
    rows.push_back(std::move(row));
  }
  return grid_block(std::move(head), rows);
}

bool about_plane(const Finding& finding, char plane) {
  return std::ranges::any_of(finding.args, [&](const Arg& a) {
    if (a.name != "plane") return false;
    const auto* text = std::get_if<std::string>(&a.value);
    const auto* named = std::get_if<Word>(&a.value);  // "plane.a"
    const std::string id = text != nullptr ? *text : named != nullptr ? named->id : std::string{};
    return !id.empty() && (id.back() == plane || id.back() == plane - 'A' + 'a');
  });
}

/// The size that lies nearest its limit: on it hangs the answer.
AnyQuantity deciding_size(const Working& working) {
  const AnyQuantity least = output_of(working, "least-size"), greatest = output_of(working, "greatest-size");
  const auto low = input_of(working, "least"), high = input_of(working, "greatest");
  if (!low || !high) return output_of(working, "mean");
  return high->si - greatest.si < least.si - low->si ? greatest : least;
}

Json plane_answer(const Subject& subject, const Screen& screen, int rotor, char plane) {
  auto findings = findings_at(subject, Stage::inspection, job::at_rotor(rotor));
  std::erase_if(findings, [&](const Finding* f) { return !about_plane(*f, plane); });
  const std::string about(1, plane);
  const job::Shown* shown = shown_of(subject, Stage::inspection, "bore-at-plane", job::at_rotor(rotor), about);
  if (shown == nullptr || !shown->working->answer) return findings_block(screen, findings);
  const Working& working = *shown->working;
  return measured_block(screen, {.shown = *shown,
                                 .findings = findings,
                                 .value = deciding_size(working),
                                 .expanded_si = output_of(working, "U-size").si,
                                 .least = input_of(working, "least"),
                                 .greatest = input_of(working, "greatest"),
                                 .of = tell(screen, Code{"bench.bore.of_plane"}, {{"plane", about}})});
}

Json taper_answer(const Subject& subject, const Screen& screen, int rotor) {
  const WorkingPtr working = working_of(subject, Stage::inspection, "bore-taper", job::at_rotor(rotor));
  if (working == nullptr || !working->answer) return nullptr;
  return facts_block({{.caption = tell(screen, Code{"bench.bore.taper"}),
                       .value = shown(output_of(*working, "taper"), screen.voice),
                       .tone = tone_of(*working->answer),
                       .other = answer_word(*working->answer, screen.voice),
                       .working = working}},
                     screen.voice);
}

/// Its limits, its gauge, and whether the gauge is in date.
void add_limits(const Subject& subject, const Screen& screen, int rotor, SheetParts& parts) {
  const Hub& hub = subject.job.shaft.rotor(rotor).hub;
  parts.foot.push_back(text_block(
      tell(screen, Code{"bench.bore.limits"},
           {{"fit", hub.fit_code}, {"range", range_words(any(hub.bore.least), any(hub.bore.greatest), screen.voice)}}),
      "note"));
  const Gauge* gauge = gauge_in_use(subject, screen, rotor);
  if (gauge == nullptr) return;
  const bool late = job::overdue(*gauge, screen.today);
  parts.foot.push_back(
      text_block(tell(screen, late ? Code{"bench.gauge.late"} : Code{"bench.gauge.in_date"},
                      {{"gauge", gauge->id}, {"until", day_text(gauge->calibrated_until, screen.voice)}}),
                 "note", late ? "tell" : "plain"));
  if (!late) return;
  job::GaugeAccepted accept;
  accept.gauge = gauge->id;
  parts.foot.push_back({{"block", "note"},
                        {"label", tell(screen, Code{"bench.gauge.accept"}, {{"gauge", gauge->id}})},
                        {"draft", draft(subject, accept)},
                        {"into", "reason"},
                        {"said", said(subject, screen, field_key(accept))}});
}

Json sound_question(const Subject& subject, const Screen& screen, Where part, const std::string& label,
                    const std::string& detail) {
  return yes_no(
      subject, screen, {.label = label, .detail = detail},
      [&](Reply reply) {
        job::Looked looked;
        looked.part = part;
        looked.stage = Stage::inspection;
        looked.sign = job::Sign::sound;
        looked.reply = reply;
        return job::EntryBody{looked};
      },
      true);
}

SheetParts rotor_sheet(const Subject& subject, const Screen& screen, const Spot& spot, int rotor) {
  SheetParts parts;
  const std::vector<Place> places = places_of(subject, rotor);
  parts.title = tell(screen, Code{"bench.bore.title"}, {{"rotor", rotor}});
  parts.left.push_back(section_block(subject, screen, spot, rotor, places));
  parts.left.push_back(readings_grid(subject, screen, rotor, places));
  parts.right.push_back(keypad(subject, screen, spot, rotor, places));
  // The answers stand beside the keys, under the readings they come from.
  for (const char plane : {'A', 'B'})
    if (Json block = plane_answer(subject, screen, rotor, plane); !block.is_null())
      parts.left.push_back(std::move(block));
  if (Json taper = taper_answer(subject, screen, rotor); !taper.is_null()) parts.foot.push_back(std::move(taper));
  // What is about the whole bore: its form, its temperature, a reading in the other unit.
  auto rest = findings_at(subject, Stage::inspection, job::at_rotor(rotor));
  std::erase_if(rest, [](const Finding* f) { return about_plane(*f, 'A') || about_plane(*f, 'B'); });
  if (Json block = findings_block(screen, rest); !block.is_null()) parts.foot.push_back(std::move(block));
  add_limits(subject, screen, rotor, parts);
  for (Json& block : bearing_told(subject.job.shaft, rotor, screen.voice)) parts.foot.push_back(std::move(block));
  return parts;
}

SheetParts part_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const Station& station = subject.job.shaft.stations()[static_cast<std::size_t>(spot.station)];
  const Where where = where_of(subject.job.shaft, spot.station);
  SheetParts parts;
  parts.title = station_name(subject.job.shaft, spot.station, screen.voice);
  parts.left.push_back(asks_block("rows", {sound_question(subject, screen, where, tell(screen, Code{"bench.look.part"}),
                                                          tell(screen, Code{"bench.look.part_at"}))}));
  if (station.kind != StationKind::nut) {
    const Length least = station.length.nominal - station.length.below;
    const Length greatest = station.length.nominal + station.length.above;
    parts.left.push_back(facts_block({{.caption = tell(screen, Code{"bench.length.given"}),
                                       .value = range_words(any(least), any(greatest), screen.voice)}},
                                     screen.voice));
    parts.right.push_back(keypad_block({length_field(subject, screen, spot.station, std::nullopt)}));
  }
  if (Json block = findings_block(screen, findings_at(subject, Stage::inspection, where)); !block.is_null())
    parts.foot.push_back(std::move(block));
  return parts;
}

SheetParts stayed_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  parts.title = station_name(subject.job.shaft, spot.station, screen.voice);
  parts.left.push_back(text_block(tell(screen, Code{"bench.stayed"}, {{"part", parts.title}})));
  return parts;
}

/// By hand and eye: of the rotor, and of the whole shaft on every sheet.
void add_looks(const Subject& subject, const Screen& screen, int rotor, SheetParts& parts) {
  std::vector<Json> rows;
  if (rotor > 0) rows = job_questions(subject, screen, Stage::inspection, job::AskedOf::rotor_that_came_off, rotor);
  for (Json& q : job_questions(subject, screen, Stage::inspection, job::AskedOf::shaft, 0))
    rows.push_back(std::move(q));
  // Where the record asks for each thing by itself, the one question for the whole rotor is not asked as well.
  if (rotor > 0 && rows.empty() && rotor_came_off(subject, rotor))
    rows.push_back(sound_question(subject, screen, job::at_rotor(rotor), tell(screen, Code{"bench.look.rotor"}),
                                  tell(screen, Code{"bench.look.rotor_at"})));
  if (!rows.empty())
    parts.foot.push_back(asks_block("rows", std::move(rows), tell(screen, Code{"view.inspection.looks"})));
}

}  // namespace

SheetParts inspection_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const int rotor = rotor_at(subject.job.shaft, spot.station);
  SheetParts parts = !station_came_off(subject, spot.station) ? stayed_sheet(subject, screen, spot)
                     : rotor > 0                              ? rotor_sheet(subject, screen, spot, rotor)
                                                              : part_sheet(subject, screen, spot);
  add_looks(subject, screen, rotor, parts);
  return parts;
}

CellSays inspection_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor == 0 || !rotor_came_off(subject, rotor)) return cell;
  const Severity worst = worst_of(findings_at(subject, Stage::inspection, job::at_rotor(rotor)));
  mark_cell(cell, worst, true);
  cell.word = tell(screen, worst == Severity::note  ? Code{"bench.cell.done"}
                           : worst == Severity::out ? Code{"bench.cell.stop"}
                                                    : Code{"bench.cell.gauge"});
  return cell;
}

}  // namespace flatwise::view
