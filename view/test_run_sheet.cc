// Test run. Found first: what is read while it runs against what the room has, and the nuts that are checked again afterwards.
#include <algorithm>

#include "drawing/bars.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

using job::RunQuantity;
using job::Stage;

constexpr double kBar = 92;

const RunReading* reading_of(const Subject& subject, RunQuantity what, int station) {
  const auto& runs = subject.job.state.bench.runs;
  const auto it =
      std::ranges::find_if(runs, [&](const RunReading& r) { return r.what == what && r.station == station; });
  return it == runs.end() ? nullptr : &*it;
}

std::vector<int> hangers(const Shaft& shaft) {
  std::vector<int> out;
  for (std::size_t i = 0; i < shaft.stations().size(); ++i)
    if (shaft.stations()[i].kind == StationKind::hanger) out.push_back(static_cast<int>(i));
  return out;
}

struct RunField {
  RunQuantity what = RunQuantity::room;
  int station = 0;  ///< As in RunRead.
  std::string title;
  std::string_view kind = "temperature";
};

std::vector<RunField> fields_of(const Subject& subject, const Screen& screen) {
  std::vector<RunField> out{{RunQuantity::minutes, 0, tell(screen, Code{"bench.run.minutes"}), "time"},
                            {RunQuantity::room, 0, tell(screen, Code{"bench.run.room"})}};
  for (const int station : hangers(subject.job.shaft)) {
    const Args args{{"part", station_name(subject.job.shaft, station, screen.voice, true)}};
    out.push_back({RunQuantity::hanger, station + 1, tell_big(screen, Code{"bench.run.hanger"}, args)});
    out.push_back({RunQuantity::vibration, station + 1, tell_big(screen, Code{"bench.run.vibration"}, args), "speed"});
  }
  return out;
}

job::EntryBody body_of(const RunField& is) {
  job::RunRead body;
  body.what = is.what;
  body.station = is.station;
  return body;
}

Json keypad(const Subject& subject, const Screen& screen, const Spot& spot) {
  const std::vector<RunField> all = fields_of(subject, screen);
  std::vector<Json> fields;
  std::string first;
  for (std::size_t i = 0; i < all.size(); ++i) {
    FieldIs is;
    is.title = all[i].title;
    is.label = all[i].title;
    is.kind = all[i].kind;
    if (all[i].what == RunQuantity::minutes) is.units = {"min"};
    is.body = body_of(all[i]);
    is.into = "value";
    is.gauge_into = "gauge";
    if (all[i].kind == "temperature") is.gauges = Gauge::Use::thermometer;
    if (i + 1 < all.size()) is.next = field_key(body_of(all[i + 1]));
    if (all[i].station != 0) is.hint = tell(screen, Code{"bench.run.locked_off"});
    // The station that was tapped comes first; else what nobody has read yet.
    const bool here = all[i].station == spot.station + 1 && all[i].what == RunQuantity::hanger;
    const bool open = reading_of(subject, all[i].what, all[i].station) == nullptr;
    if (here || (first.empty() && open)) first = field_key(is.body);
    fields.push_back(field(subject, screen, is));
  }
  return keypad_block(std::move(fields), first);
}

/// Hangers above the room: what the run has added.
Json hanger_bars(const Subject& subject, const Screen& screen) {
  const RunReading* room = reading_of(subject, RunQuantity::room, 0);
  drawing::RunBars bars;
  std::vector<std::string> said;
  for (const int station : hangers(subject.job.shaft)) {
    const RunReading* read = reading_of(subject, RunQuantity::hanger, station + 1);
    if (read == nullptr || room == nullptr) continue;
    const double rise = read->value.value.value.si - room->value.value.value.si;
    const std::string words = shown(AnyQuantity{rise, Kind::temperature_rise}, screen.voice);
    const std::string name = subject.job.shaft.stations()[static_cast<std::size_t>(station)].label;
    bars.rows.push_back({"run-" + std::to_string(station), name, words, std::max(0.0, rise)});
    said.push_back(tell(screen, Code{"bench.run.rise_of"}, {{"part", name}, {"rise", words}}));
  }
  if (bars.rows.empty()) return text_block(tell(screen, Code{"bench.run.no_rise"}), "note");
  return drawing_block(drawing::run_bars(bars, kBar), tell(screen, Code{"bench.run.rises"}, {{"parts", said}}), {},
                       {.caption = tell(screen, Code{"bench.run.above_room"})});
}

Json readings_table(const Subject& subject, const Screen& screen) {
  std::vector<TableRow> rows;
  for (const RunField& is : fields_of(subject, screen)) {
    const RunReading* read = reading_of(subject, is.what, is.station);
    TableRow row;
    row.cells = {{.text = is.title},
                 {.text = read == nullptr ? "\u2013" : read->value.typed,
                  .tone = "strong",
                  .detail = read == nullptr ? std::string{} : shown_other(read->value.value.value, screen.voice)}};
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"bench.run.read_head"})}, {tell(screen, Code{"bench.run.value_head"}), true}},
                     rows);
}

/// Asked in the yellow band, before the shaft turns.
bool in_band(const Json& question) {
  return std::ranges::any_of(job::questions(), [&](const job::Question& q) {
    return job::is_safety(q.id) && question["key"] == field_key(job::Answered{std::string{q.id}, 0, Reply::yes});
  });
}

Json afterwards(const Subject& subject, const Screen& screen) {
  std::vector<Json> questions;
  for (Json& q : job_questions(subject, screen, Stage::test_run, job::AskedOf::shaft, 0))
    if (!in_band(q)) questions.push_back(std::move(q));
  for (const int nut : {1, 2})
    for (Json& q : job_questions(subject, screen, Stage::test_run, job::AskedOf::nut, nut)) {
      q["label"] = tell(screen, nut == 1 ? Code{"bench.run.nut_a"} : Code{"bench.run.nut_b"});
      questions.push_back(std::move(q));
    }
  return asks_block("rows", std::move(questions), tell(screen, Code{"bench.run.afterwards"}));
}

}  // namespace

SheetParts test_run_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.run.title"});
  parts.aside = shown(any(subject.job.shaft.spec().speed), screen.voice);
  parts.head.push_back(
      caution_block(tell(screen, Code{"bench.run.before"}),
                    {tell(screen, Code{"bench.run.caution_1"}), tell(screen, Code{"bench.run.caution_2"})},
                    tell(screen, Code{"bench.rule"})));
  parts.left.push_back(readings_table(subject, screen));
  parts.left.push_back(hanger_bars(subject, screen));
  parts.left.push_back(text_block(tell(screen, Code{"bench.run.no_limits"}), "note"));
  parts.right.push_back(keypad(subject, screen, spot));
  parts.foot.push_back(afterwards(subject, screen));
  if (Json block = findings_block(screen, findings_at(subject, Stage::test_run, {})); !block.is_null())
    parts.foot.push_back(std::move(block));
  return parts;
}

CellSays test_run_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const Station& at = subject.job.shaft.stations()[static_cast<std::size_t>(station)];
  if (at.kind == StationKind::hanger) {
    const RunReading* read = reading_of(subject, RunQuantity::hanger, station + 1);
    if (read != nullptr) cell.sub = shown(read->value.value.value, screen.voice);
    if (read == nullptr) cell.word = tell(screen, Code{"bench.cell.read"});
  }
  if (at.kind == StationKind::nut) {
    const int number = subject.job.shaft.spec().nuts[static_cast<std::size_t>(at.nut)].end == End::a ? 1 : 2;
    const auto* said =
        subject.job.state.agreed<job::Answered>(field_key(job::Answered{"nut_rechecked", number, Reply::yes}));
    const bool tight = said != nullptr && said->reply == Reply::yes;
    cell.word = tell(screen, tight ? Code{"bench.cell.tight"} : Code{"bench.cell.check"});
    cell.flag = tight ? "done" : (said == nullptr ? "unknown" : "stopped");
  }
  return cell;
}

}  // namespace flatwise::view
