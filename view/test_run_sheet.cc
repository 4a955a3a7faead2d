// Test run. Found first: every reading against its limit, sign, word and bar together, and the nuts that are checked again afterwards.
#include <algorithm>

#include "drawing/bars.h"
#include "view/bench_parts.h"
#include "view/torque_turn.h"

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
    if (all[i].what == RunQuantity::vibration) is.gauges = Gauge::Use::vibration_meter;
    if (i + 1 < all.size()) is.next = field_key(body_of(all[i + 1]));
    if (all[i].what == RunQuantity::hanger) is.hint = tell(screen, Code{"bench.run.locked_off"});
    if (all[i].what == RunQuantity::vibration) is.hint = tell(screen, Code{"bench.run.while_it_runs"});
    // The station that was tapped comes first; else what nobody has read yet.
    const bool here = all[i].station == spot.station + 1 && all[i].what == RunQuantity::hanger;
    const bool open = reading_of(subject, all[i].what, all[i].station) == nullptr;
    if (here || (first.empty() && open)) first = field_key(is.body);
    fields.push_back(field(subject, screen, is));
  }
  return keypad_block(std::move(fields), first);
}

// --- what the readings are worth ---------------------------------------------------------------------------------------

constexpr std::string_view kRise = "run-rise", kVibration = "run-vibration";

/// What the rule worked out of a figure at a station; nullptr where its readings are not complete.
const job::Shown* shown_at(const Subject& subject, std::string_view figure, int station) {
  const job::StageReport* report = report_of(subject, Stage::test_run);
  if (report == nullptr) return nullptr;
  const auto it = std::ranges::find_if(report->workings, [&](const job::Shown& s) {
    return s.working->figure == figure && s.where == job::at_station(station);
  });
  return it == report->workings.end() ? nullptr : &*it;
}

std::string said_value(const Working& working, const Voice& voice, bool in_other = false) {
  const Output& value = working.outputs.front();
  const AnyQuantity quantity = std::get<AnyQuantity>(value.value);
  if (value.u) return with_u(quantity, value.u->expanded_si, voice, in_other);
  return in_other ? shown_other(quantity, voice) : shown(quantity, voice);
}

/// What the definition judges the run by; where it says nothing, that.
Json limits(const Subject& subject, const Screen& screen) {
  const TestRun& run = subject.job.shaft.spec().test_run;
  std::vector<FactRow> rows;
  const auto add = [&](Code caption, const auto& limit, Code says) {
    if (!limit) return;
    const std::string second = shown_other(any(*limit), screen.voice);
    rows.push_back({.caption = tell(screen, caption),
                    .value = tell(screen, says, {{"limit", any(*limit)}}),
                    .tone = "strong",
                    .other = second == shown(any(*limit), screen.voice) ? std::string{} : second});
  };
  add(Code{"bench.run.has_to_run"}, run.shortest, Code{"bench.run.at_least"});
  add(Code{"bench.run.above_room"}, run.greatest_rise, Code{"bench.run.at_most"});
  add(Code{"bench.run.vibration_limit"}, run.greatest_vibration, Code{"bench.run.at_most"});
  if (rows.empty()) return text_block(tell(screen, Code{"bench.run.no_limits"}), "note");
  return facts_block(rows, screen.voice);
}

struct Bars {
  std::string_view figure;
  Code caption, says, none;
  std::optional<AnyQuantity> limit;
};

/// The newest former run that read this figure; of those asked for, the good ones alone.
const job::FormerRun* run_before(const Subject& subject, std::string_view figure, bool good) {
  const auto it = std::ranges::find_if(subject.former_runs, [&](const job::FormerRun& run) {
    return (run.good || !good) &&
           std::ranges::find(run.values, figure, &job::FormerRun::Value::figure) != run.values.end();
  });
  return it == subject.former_runs.end() ? nullptr : &*it;
}

std::string label_of(const Subject& subject, int station) {
  return subject.job.shaft.stations()[static_cast<std::size_t>(station)].label;
}

/// One figure of all hangers on one scale, with its limit where there is one and what the last good run read.
Json bars_of(const Subject& subject, const Screen& screen, const Bars& is) {
  drawing::RunBars bars;
  std::vector<std::string> said, said_good;
  const job::FormerRun* good = run_before(subject, is.figure, true);
  for (const int station : hangers(subject.job.shaft)) {
    const job::Shown* read = shown_at(subject, is.figure, station);
    if (read == nullptr) continue;
    const AnyQuantity value = std::get<AnyQuantity>(read->working->outputs.front().value);
    const std::string words = shown(value, screen.voice);
    const std::string name = label_of(subject, station);
    bars.rows.push_back({"run-" + std::to_string(station), name, words, std::max(0.0, value.si)});
    said.push_back(tell(screen, Code{"bench.run.rise_of"}, {{"part", name}, {"rise", words}}));
    const auto once = good == nullptr ? std::nullopt : good->at(is.figure, name);
    if (!once) continue;
    bars.rows.back().good = std::max(0.0, once->si);
    said_good.push_back(
        tell(screen, Code{"bench.run.rise_of"}, {{"part", name}, {"rise", shown(*once, screen.voice)}}));
  }
  if (bars.rows.empty()) return text_block(tell(screen, is.none), "note");
  if (is.limit) bars.limit = is.limit->si, bars.limit_words = shown(*is.limit, screen.voice);
  std::string says = tell(screen, is.says, {{"parts", said}}), caption = tell(screen, is.caption);
  if (!said_good.empty()) {
    says += " " + tell(screen, Code{"bench.run.good_says"}, {{"number", good->job}, {"parts", said_good}});
    caption += ". " + tell(screen, Code{"bench.run.good_line"}, {{"number", good->job}});
  }
  return drawing_block(drawing::run_bars(bars, kBar), std::move(says), {}, {.caption = std::move(caption)});
}

void add_bars(const Subject& subject, const Screen& screen, SheetParts& parts) {
  const TestRun& run = subject.job.shaft.spec().test_run;
  const auto limit = [](const auto& q) { return q ? std::optional{any(*q)} : std::nullopt; };
  parts.left.push_back(bars_of(subject, screen,
                               {kRise, Code{"bench.run.above_room"}, Code{"bench.run.rises"}, Code{"bench.run.no_rise"},
                                limit(run.greatest_rise)}));
  parts.left.push_back(bars_of(subject, screen,
                               {kVibration, Code{"bench.run.vibrations"}, Code{"bench.run.vibrations_say"},
                                Code{"bench.run.no_vibration"}, limit(run.greatest_vibration)}));
}

/// Findings about one figure of a hanger: its own, and those of the gauges that took it.
std::vector<const Finding*> findings_of(const Subject& subject, const job::Shown& of, std::string_view prefix) {
  std::vector<const Finding*> out = findings_at(subject, Stage::test_run, of.where);
  std::erase_if(out, [&](const Finding* f) {
    if (!f->code.id().starts_with("job.gauge_")) return !f->code.id().starts_with(prefix);
    return std::ranges::none_of(of.working->inputs, [&](const Input& input) {
      const auto gauge = std::ranges::find(f->args, std::string_view{"gauge"}, &Arg::name);
      return gauge != f->args.end() && input.origin.kind == OriginKind::measured &&
             input.origin.where.ends_with(std::get<std::string>(gauge->value));
    });
  });
  return out;
}

/// A figure of a hanger against its limit: sign, word and bar; without a limit the figure and its working alone.
Json answer_of(const Subject& subject, const Screen& screen, const job::Shown& of, const std::string& caption) {
  const Working& working = *of.working;
  const auto findings = findings_of(subject, of, working.figure == kRise ? "metrology.rise" : "metrology.vibration");
  const auto limit = input_of(working, "greatest");
  if (!of.answer || !limit)
    return facts_block(
        {{.caption = caption,
          .value = said_value(working, screen.voice),
          .tone = "strong",
          .other = findings.empty() ? said_value(working, screen.voice, true) : sentences(screen, findings).front(),
          .working = of.working}},
        screen.voice);
  const Output& value = working.outputs.front();
  std::vector<std::string> says{caption};
  for (std::string& line : sentences(screen, findings)) says.push_back(std::move(line));
  const job::FormerRun* former = run_before(subject, working.figure, false);
  const auto before = former == nullptr ? std::nullopt : former->at(working.figure, of.about);
  if (before)
    says.push_back(
        tell(screen, Code{"bench.run.before_was"}, {{"number", former->job}, {"value", shown(*before, screen.voice)}}));
  return answer_block({.sign = sign_of(*of.answer),
                       .word = answer_word(*of.answer, screen.voice),
                       .says = std::move(says),
                       .value = said_value(working, screen.voice),
                       .other = said_value(working, screen.voice, true),
                       .bar = drawing::answer_bar({.greatest = limit->si,
                                                   .value = std::get<AnyQuantity>(value.value).si,
                                                   .expanded = value.u ? value.u->expanded_si : 0,
                                                   .answer = *of.answer,
                                                   .before = before ? std::optional{before->si} : std::nullopt,
                                                   .greatest_words = shown(*limit, screen.voice)},
                                                  kBar),
                       .does = instruction(screen, findings),
                       .working = of.working},
                      screen.voice);
}

Severity worst_at(const Subject& subject, int station) {
  return worst_of(findings_at(subject, Stage::test_run, job::at_station(station)));
}

/// The hanger that was tapped; else the one that is worst off.
std::optional<int> hanger_to_show(const Subject& subject, const Spot& spot) {
  const std::vector<int> all = hangers(subject.job.shaft);
  if (std::ranges::find(all, spot.station) != all.end()) return spot.station;
  const auto worst = std::ranges::max_element(all, {}, [&](int station) { return worst_at(subject, station); });
  return worst == all.end() ? std::nullopt : std::optional{*worst};
}

void add_answers(const Subject& subject, const Screen& screen, const Spot& spot, SheetParts& parts) {
  const std::optional<int> station = hanger_to_show(subject, spot);
  if (!station) return;
  const Args args{{"part", station_name(subject.job.shaft, *station, screen.voice, true)}};
  if (const job::Shown* rise = shown_at(subject, kRise, *station))
    parts.right.push_back(answer_of(subject, screen, *rise, tell_big(screen, Code{"bench.run.rise_caption"}, args)));
  if (const job::Shown* shake = shown_at(subject, kVibration, *station))
    parts.right.push_back(answer_of(subject, screen, *shake, tell_big(screen, Code{"bench.run.vibration"}, args)));
}

/// The answer beside a reading: sign and word where it was judged.
TableCell answer_cell(const Subject& subject, const Screen& screen, const RunField& is) {
  const bool ran = is.what == RunQuantity::minutes && subject.job.shaft.spec().test_run.shortest &&
                   reading_of(subject, is.what, 0) != nullptr;
  std::optional<Answer> answer;
  if (ran) answer = findings_like(subject, Stage::test_run, {}, "job.run_too_short").empty() ? Answer::in : Answer::out;
  if (is.station > 0)
    if (const job::Shown* of = shown_at(subject, is.what == RunQuantity::hanger ? kRise : kVibration, is.station - 1))
      answer = of->answer;
  if (!answer) return {};
  return {.text = answer_word(*answer, screen.voice), .tone = tone_of(*answer), .sign = sign_of(*answer)};
}

Json readings_table(const Subject& subject, const Screen& screen) {
  std::vector<TableRow> rows;
  for (const RunField& is : fields_of(subject, screen)) {
    const RunReading* read = reading_of(subject, is.what, is.station);
    TableRow row;
    row.cells = {{.text = is.title},
                 {.text = read == nullptr ? "\u2013" : read->value.typed,
                  .tone = "strong",
                  .detail = read == nullptr ? std::string{} : shown_other(read->value.value.value, screen.voice)},
                 answer_cell(subject, screen, is)};
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"bench.run.read_head"})},
                      {tell(screen, Code{"bench.run.value_head"}), true},
                      {tell(screen, Code{"bench.run.answer_head"})}},
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

/// What is open of the run as a whole, and what nobody read of any hanger.
std::vector<const Finding*> left_open(const Subject& subject) {
  std::vector<const Finding*> out = findings_at(subject, Stage::test_run, {});
  for (const int station : hangers(subject.job.shaft))
    for (const Finding* f : findings_like(subject, Stage::test_run, job::at_station(station), "job.run_"))
      out.push_back(f);
  return out;
}

/// What is known to be wrong on the shaft that is to turn.
std::vector<Json> stop_here(const Subject& subject, const Screen& screen, bool ran, bool open) {
  return stop_blocks(subject, screen,
                     {.stage = Stage::test_run,
                      .stop = tell(screen, ran ? Code{"bench.run.stop_ran"} : Code{"bench.run.stop"}),
                      .wait = tell(screen, ran ? Code{"bench.run.wait_ran"} : Code{"bench.run.wait"}),
                      .all_the_same = open ? std::string{} : tell(screen, Code{"bench.run.all_the_same"}),
                      .on = {.step = 1}});
}

}  // namespace

SheetParts test_run_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.run.title"});
  parts.aside = shown(any(subject.job.shaft.spec().speed), screen.voice);
  // The key that goes on all the same, or a run that was read, opens the sheet: what happened goes into the record.
  const bool ran = !subject.job.state.bench.runs.empty(), open = ran || spot.step.has_value();
  for (Json& block : stop_here(subject, screen, ran, open)) parts.head.push_back(std::move(block));
  const bool held = !parts.head.empty() && !open;
  if (held) parts.head.push_back(limits(subject, screen));
  if (held) return parts;
  parts.head.push_back(
      caution_block(tell(screen, Code{"bench.run.before"}),
                    {tell(screen, Code{"bench.run.caution_1"}), tell(screen, Code{"bench.run.caution_2"})},
                    tell(screen, Code{"bench.rule"})));
  parts.head.push_back(limits(subject, screen));
  parts.left.push_back(readings_table(subject, screen));
  add_bars(subject, screen, parts);
  parts.right.push_back(keypad(subject, screen, spot));
  add_answers(subject, screen, spot, parts);
  parts.foot.push_back(afterwards(subject, screen));
  for (std::string& line : second_pulls(subject, screen)) parts.foot.push_back(text_block(std::move(line), "note"));
  if (Json block = findings_block(screen, left_open(subject)); !block.is_null()) parts.foot.push_back(std::move(block));
  return parts;
}

CellSays test_run_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const Station& at = subject.job.shaft.stations()[static_cast<std::size_t>(station)];
  if (at.kind == StationKind::hanger) {
    const RunReading* read = reading_of(subject, RunQuantity::hanger, station + 1);
    const Severity worst = worst_at(subject, station);
    if (read != nullptr) cell.sub = shown(read->value.value.value, screen.voice);
    mark_cell(cell, worst, read != nullptr);
    if (read == nullptr || worst == Severity::unanswered) cell.word = tell(screen, Code{"bench.cell.read"});
    if (worst == Severity::cannot_tell) cell.word = tell(screen, Code{"bench.cell.gauge"});
    if (worst == Severity::out) cell.word = tell(screen, Code{"bench.cell.stop"});
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
