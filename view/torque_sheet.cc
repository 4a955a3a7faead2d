// Torque. Found first: the framed way to pull, with the force on it, under the caution.
#include <algorithm>

#include "drawing/bars.h"
#include "view/bench_parts.h"
#include "view/torque_tools.h"
#include "view/torque_turn.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr double kBar = 92;
constexpr std::string_view kNoBreakSpace = "\u00a0";

Word end_word(End end) { return Word{end == End::a ? "end.a" : "end.b"}; }
std::string letter(End end) { return end == End::a ? "A" : "B"; }

const Nut* nut_at(const Shaft& shaft, int station) {
  const int nut = shaft.stations()[static_cast<std::size_t>(station)].nut;
  return nut < 0 ? nullptr : &shaft.spec().nuts[static_cast<std::size_t>(nut)];
}

const TorquePull* pull_of(const Subject& subject, End nut) {
  const TorquePull* last = nullptr;
  for (const TorquePull& pull : subject.job.state.bench.torques)
    if (pull.nut == nut) last = &pull;
  return last;
}

std::vector<const Nut*> in_order(const Shaft& shaft) {
  std::vector<const Nut*> nuts;
  for (const Nut& nut : shaft.spec().nuts) nuts.push_back(&nut);
  std::ranges::stable_sort(nuts, {}, [](const Nut* n) { return n->order; });
  return nuts;
}

const Nut* next_nut(const Subject& subject) {
  for (const Nut* nut : in_order(subject.job.shaft))
    if (pull_of(subject, nut->end) == nullptr) return nut;
  return nullptr;
}

Json caution(const Screen& screen, const Way& way) {
  std::vector<std::string> lines{tell(screen, Code{"bench.torque.caution"})};
  for (const Finding& f : way.working->findings)
    if (f.code == Code{"fasteners.multiplier_foot"}) lines.push_back(say(f, screen.voice));
  return caution_block(tell(screen, Code{"bench.torque.before"}), std::move(lines), tell(screen, Code{"bench.rule"}));
}

Json reading_field(const Subject& subject, const Screen& screen, const Nut& nut, const Way& way) {
  job::NutPulled body;
  body.nut = nut.end;
  body.with = TorquePull::With::wrench;
  body.tool_length = length_typed(way.tool.wrench);
  if (!way.tool.extension.empty()) body.extension = length_typed(way.tool.extension);
  body.multiplier = way.tool.multiplier;
  FieldIs is;
  is.label = is.title = tell(screen, Code{"bench.torque.field"}, {{"nut", letter(nut.end)}});
  is.kind = "torque";
  is.body = body;
  is.into = "shown";
  is.gauge_into = "gauge";
  is.gauges = Gauge::Use::wrench;
  is.hint = tell(screen, Code{"bench.torque.hint"},
                 {{"reading", output_of(*way.working, "setting")}, {"way", way_name(screen, way)}});
  return field(subject, screen, is);
}

std::string pull_key(const Nut& nut) {
  job::NutPulled body;
  body.nut = nut.end;
  return field_key(body);
}

bool on_a_bar(const job::NutPulled* pulled) { return pulled != nullptr && pulled->with == TorquePull::With::bar; }

/// No torque wrench: a spring balance on a bar. As long as the wrench of the way until its own length is told.
Json bar_field(const Subject& subject, const Screen& screen, const Nut& nut, const Way& way) {
  job::NutPulled body;
  body.nut = nut.end;
  body.with = TorquePull::With::bar;
  body.tool_length = length_typed(way.tool.wrench);
  if (way.tool.own) body.multiplier = way.tool.multiplier;
  FieldIs is;
  is.label = is.title = tell(screen, Code{"bench.torque.bar_field"}, {{"nut", letter(nut.end)}});
  is.kind = "force";
  is.units = {"N", "lbf"};  // As a spring balance reads; a press is told in kN.
  if (screen.voice.units == UnitSystem::inch) std::swap(is.units[0], is.units[1]);
  is.body = body;
  is.into = "shown";
  is.gauge_into = "gauge";
  is.gauges = Gauge::Use::press_gauge;
  is.hint = tell(screen, Code{"bench.torque.bar_hint"}, {{"length", way.tool.wrench}});
  return field(subject, screen, is);
}

/// The reading as it stands, once somebody has told it and nobody told another.
const job::NutPulled* told_pull(const Subject& subject, const Nut& nut) {
  return subject.job.state.agreed<job::NutPulled>(pull_key(nut));
}

/// What stands in the record was said at another field of the same question.
void not_told(Json& field) {
  field["said"] = Json::array();
  field.erase("undo");
}

/// One length of the tool that was really used: the same reading told again with it, so the old one is corrected.
Json tool_field(const Subject& subject, const Screen& screen, const job::NutPulled& pulled, std::string_view into) {
  const bool extension = into == "extension";
  job::NutPulled body = pulled;
  (extension ? body.extension : body.tool_length) = Entered{};
  FieldIs is;
  is.label = is.title = tell(screen, extension           ? Code{"bench.torque.extension"}
                                     : on_a_bar(&pulled) ? Code{"bench.torque.bar_length"}
                                                         : Code{"bench.torque.length"});
  is.body = body;
  is.into = into;
  const std::optional<Entered>& now = extension ? pulled.extension : pulled.tool_length;
  if (now) is.before_label = tell(screen, Code{"bench.torque.reckoned"}), is.before_typed = now->typed;
  is.hint = tell(screen, Code{"bench.torque.to_the_grip"});
  Json json = field(subject, screen, is);
  json["key"] = field_key(pulled) + "#" + std::string{into};
  not_told(json);
  return json;
}

/// What was read with a wrench or on a bar: one question, so each field says only what was told of its own tool.
Json pull_keypad(const Subject& subject, const Screen& screen, const Nut& nut, const Way& way) {
  const job::NutPulled* pulled = told_pull(subject, nut);
  Json wrench = reading_field(subject, screen, nut, way), bar = bar_field(subject, screen, nut, way);
  bar["key"] = pull_key(nut) + "#bar";
  if (pulled != nullptr) not_told(on_a_bar(pulled) ? wrench : bar);
  std::vector<Json> fields{std::move(wrench), std::move(bar)};
  if (pulled != nullptr) fields.push_back(tool_field(subject, screen, *pulled, "tool_length"));
  if (pulled != nullptr && !on_a_bar(pulled)) fields.push_back(tool_field(subject, screen, *pulled, "extension"));
  if (pulled != nullptr)
    for (Json& f : turn_fields(subject, screen, nut, *pulled)) fields.push_back(std::move(f));
  // Once it is pulled, the lengths of the reading itself are put right.
  if (pulled == nullptr)
    for (Json& f : own_tool_fields(subject, screen, nut, way)) fields.push_back(std::move(f));
  return keypad_block(std::move(fields), pull_key(nut));
}

Json ratio_question(const Subject& subject, const Screen& screen, const job::NutPulled& pulled) {
  std::vector<Option> options;
  std::vector<double> ratios{1, 3, kMultiplier, 5};
  if (std::ranges::find(ratios, pulled.multiplier) == ratios.end()) ratios.push_back(pulled.multiplier);
  for (const double ratio : ratios) {
    job::NutPulled body = pulled;
    body.multiplier = ratio;
    const std::string figure = figure_only(any_ratio(ratio), screen.voice) + " : 1";
    options.push_back({ratio > 1 ? figure : tell(screen, Code{"bench.torque.no_multiplier"}), body, {}});
  }
  return asks_block("chips",
                    {question(subject, screen, {.label = tell(screen, Code{"bench.torque.multiplier"})}, options)});
}

std::vector<const Finding*> findings_of_nut(const Subject& subject, const Nut& nut) {
  auto findings = findings_at(subject, Stage::torque, {});
  std::erase_if(findings, [&](const Finding* f) {
    return std::ranges::none_of(f->args, [&](const Arg& a) {
      const auto* word = std::get_if<Word>(&a.value);
      return a.name == "nut" && word != nullptr && *word == end_word(nut.end);
    });
  });
  return findings;
}

Json reached_answer(const Subject& subject, const Screen& screen, const Nut& nut) {
  auto findings = findings_of_nut(subject, nut);
  std::erase_if(findings, [](const Finding* f) { return about_turn(*f); });
  const job::Shown* reached = shown_of(subject, Stage::torque, "torque-reached", {}, letter(nut.end));
  if (reached == nullptr || !reached->working->answer) return findings_block(screen, findings);
  const Working& working = *reached->working;
  return measured_block(screen, {.shown = *reached,
                                 .findings = findings,
                                 .value = output_of(working, "torque"),
                                 .expanded_si = output_of(working, "torque-u").si,
                                 .least = output_of(working, "least"),
                                 .greatest = output_of(working, "greatest"),
                                 .of = tell(screen, Code{"bench.torque.reached"})});
}

/// What it clamps with: a band up to proof, where the nut's strength is known.
void add_clamping(const Subject& subject, const Screen& screen, const Nut& nut, SheetParts& parts) {
  const WorkingPtr preload = working_of(subject, Stage::torque, "torque-preload", {}, letter(nut.end));
  if (preload == nullptr) return;
  const AnyQuantity least = output_of(*preload, "preload-least"), greatest = output_of(*preload, "preload-greatest");
  parts.right.push_back(facts_block({{.caption = tell(screen, Code{"bench.torque.clamps"}),
                                      .value = range_words(least, greatest, screen.voice),
                                      .tone = "strong",
                                      .working = preload}},
                                    screen.voice));
  const auto proof = input_of(*preload, "proof-load");
  if (!proof) return;
  parts.right.push_back(
      drawing_block(drawing::band_bar({.least = least.si,
                                       .greatest = greatest.si,
                                       .end = proof->si,
                                       .end_words = tell(screen, Code{"bench.torque.proof"}, {{"proof", *proof}})},
                                      kBar),
                    tell(screen, Code{"bench.torque.band_says"},
                         {{"range", range_words(least, greatest, screen.voice)}, {"proof", *proof}})));
}

std::string order_text(const Subject& subject, const Screen& screen) {
  std::vector<std::string> nuts;
  for (const Nut* nut : in_order(subject.job.shaft)) nuts.push_back(letter(nut->end));
  if (nuts.size() < 2) return {};
  return tell(screen, Code{"bench.torque.order"}, {{"first", nuts[0]}, {"then", nuts[1]}});
}

Json target_facts(const Screen& screen, const Nut& nut) {
  const Torque least = (1 - nut.torque_tolerance) * nut.torque, greatest = (1 + nut.torque_tolerance) * nut.torque;
  return facts_block({{.caption = tell(screen, Code{"bench.torque.target"}),
                       .value = shown(any(nut.torque), screen.voice),
                       .tone = "strong",
                       .other = shown_other(any(nut.torque), screen.voice)},
                      {.caption = tell(screen, Code{"bench.torque.within"}),
                       .value = range_words(any(least), any(greatest), screen.voice),
                       .other = range_other(any(least), any(greatest), screen.voice)}},
                     screen.voice);
}

/// What is known to be wrong in the stack that this nut clamps. `opens`: the step that goes on all the same; none: it is open.
std::vector<Json> stop_here(const Subject& subject, const Screen& screen, const Nut& nut, std::optional<int> opens) {
  const Args args{{"nut", letter(nut.end)}};
  const bool pulled = pull_of(subject, nut.end) != nullptr;
  StopIs is{.stage = Stage::torque,
            .stop = tell(screen, pulled ? Code{"bench.torque.stop_pulled"} : Code{"bench.torque.stop"}, args),
            .wait = tell(screen, pulled ? Code{"bench.torque.wait_pulled"} : Code{"bench.torque.wait"}, args)};
  if (opens) is.all_the_same = tell(screen, Code{"bench.torque.all_the_same"}), is.on = {.step = opens};
  return stop_blocks(subject, screen, is);
}

SheetParts nut_sheet(const Subject& subject, const Screen& screen, const Spot& spot, const Nut& nut) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.torque.title"}, {{"nut", letter(nut.end)}, {"torque", any(nut.torque)}});
  parts.aside = order_text(subject, screen);
  const std::vector<Way> ways = ways_of(subject, nut, screen.voice.units);
  if (ways.empty()) return parts;
  const std::size_t chosen = chosen_of(ways, spot);
  // A way taken by hand, or a pull that stands, opens the sheet: what happened goes into the record.
  const bool open = pull_of(subject, nut.end) != nullptr || spot.step.has_value();
  const std::optional<int> opens = open ? std::nullopt : std::optional{static_cast<int>(chosen) + 1};
  for (Json& block : stop_here(subject, screen, nut, opens)) parts.head.push_back(std::move(block));
  if (!parts.head.empty() && !open) return parts;
  parts.head.push_back(caution(screen, ways[chosen]));
  parts.head.push_back(target_facts(screen, nut));
  parts.head.push_back(ways_table(subject, screen, ways, chosen));
  if (const std::string why = own_tool_refused(subject, screen, nut); !why.empty())
    parts.head.push_back(text_block(why, "read", "out"));
  parts.left.push_back(pull_keypad(subject, screen, nut, ways[chosen]));
  if (const job::NutPulled* pulled = told_pull(subject, nut); pulled != nullptr && !on_a_bar(pulled))
    parts.left.push_back(ratio_question(subject, screen, *pulled));
  parts.left.push_back(text_block(tell(screen, Code{"bench.torque.own_tool"}), "note"));
  if (Json answer = reached_answer(subject, screen, nut); !answer.is_null()) parts.right.push_back(std::move(answer));
  add_clamping(subject, screen, nut, parts);
  add_turn(subject, screen, nut, findings_of_nut(subject, nut), parts);
  return parts;
}

}  // namespace

SheetParts torque_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  if (const Nut* nut = nut_at(subject.job.shaft, spot.station)) return nut_sheet(subject, screen, spot, *nut);
  SheetParts parts;
  parts.title = station_name(subject.job.shaft, spot.station, screen.voice);
  parts.aside = order_text(subject, screen);
  parts.left.push_back(text_block(tell(screen, Code{"bench.torque.tap_nut"})));
  return parts;
}

CellSays torque_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const Nut* nut = nut_at(subject.job.shaft, station);
  if (nut == nullptr) return cell;
  const Severity worst = worst_of(findings_of_nut(subject, *nut));
  const TorquePull* pull = pull_of(subject, nut->end);
  if (pull == nullptr) {
    const bool now = next_nut(subject) == nut;
    cell.word = tell(screen, now ? Code{"bench.cell.now"} : Code{"bench.cell.next"});
    cell.flag = now ? "unknown" : "waits";
    return cell;
  }
  mark_cell(cell, worst, true);
  // What the nut has, not what the tool read: with a multiplier they differ.
  const WorkingPtr reached = working_of(subject, Stage::torque, "torque-reached", {}, letter(nut->end));
  cell.sub = reached != nullptr ? shown(output_of(*reached, "torque"), screen.voice) : pull->shown.typed;
  if (const auto at = cell.sub.rfind(kNoBreakSpace); at != std::string::npos)
    cell.sub.replace(at, kNoBreakSpace.size(), " ");  // A narrow cell puts the unit on a line of its own.
  cell.word = tell(screen, worst == Severity::note  ? Code{"bench.cell.done"}
                           : worst == Severity::out ? Code{"bench.cell.stop"}
                                                    : Code{"bench.cell.gauge"});
  return cell;
}

}  // namespace flatwise::view
