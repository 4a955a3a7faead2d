// Torque. Found first: the framed way to pull, with the force on it, under the caution.
#include <algorithm>

#include "core/fasteners/figures.h"
#include "core/units/parse.h"
#include "drawing/bars.h"
#include "drawing/bench_pictures.h"
#include "job/figure_use.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr double kWays = 120, kBar = 92;
constexpr double kMultiplier = 4;  // The commonest ratio of a hand multiplier.

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

/// A tool as it is typed and drawn: round in the units the bench works in.
struct Tool {
  std::string wrench, extension;  ///< Extension empty: straight on.
  double multiplier = 1;
};
std::vector<Tool> tools(UnitSystem units) {
  const bool metric = units == UnitSystem::metric;
  const std::string wrench = metric ? "1.2 m" : "4 ft";
  return {{wrench, "", 1}, {wrench, metric ? "0.6 m" : "2 ft", 1}, {wrench, "", kMultiplier}};
}

Entered length_typed(const std::string& text) {
  Result<Entered> read = parse_quantity(text, Kind::length, "length");
  CORE_CHECK(read.has_value());
  return *std::move(read);
}

/// One way to pull a nut, worked out by the figure of the wrench.
struct Way {
  Tool tool;
  WorkingPtr working;
  bool too_much = false;
};

std::vector<Way> ways_of(const Subject& subject, const Nut& nut, UnitSystem units) {
  std::vector<Way> out;
  for (const Tool& tool : tools(units)) {
    std::vector<Input> in{given("torque", any(nut.torque), job::nut_origin(subject.job.shaft, nut.end, "torque")),
                          given("length", any(length_typed(tool.wrench).length())),
                          given("multiplier", any_ratio(tool.multiplier)),
                          given("one-person", any(subject.job.shaft.spec().policies.one_person_pull),
                                subject.job.shaft.origin("policy.one_person_pull"))};
    if (!tool.extension.empty()) in.push_back(given("extension", any(length_typed(tool.extension).length())));
    Results<Working> working = job::use(fasteners::figures(), "wrench-setting", std::move(in));
    if (!working) continue;
    Way way{tool, std::make_shared<const Working>(*std::move(working)), false};
    way.too_much = way.working->si("pull") > subject.job.shaft.spec().policies.one_person_pull.si();
    out.push_back(std::move(way));
  }
  return out;
}

/// The first that one person can hold; where none can, the one that takes least.
std::size_t advised_of(const std::vector<Way>& ways) {
  std::size_t best = 0;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (!ways[i].too_much) return i;
    if (ways[i].working->si("pull") < ways[best].working->si("pull")) best = i;
  }
  return best;
}

std::size_t chosen_of(const std::vector<Way>& ways, const Spot& spot) {
  const bool named = spot.step && *spot.step >= 1 && static_cast<std::size_t>(*spot.step) <= ways.size();
  return named ? static_cast<std::size_t>(*spot.step) - 1 : advised_of(ways);
}

std::string way_name(const Screen& screen, const Way& way) {
  return tell(
      screen, Code{"bench.torque.way"},
      {{"wrench", way.tool.wrench},
       {"extension", way.tool.extension},
       {"ratio", way.tool.multiplier > 1 ? figure_only(any_ratio(way.tool.multiplier), screen.voice) : std::string{}}});
}

Json caution(const Screen& screen, const Way& way) {
  std::vector<std::string> lines{tell(screen, Code{"bench.torque.caution"})};
  for (const Finding& f : way.working->findings)
    if (f.code == Code{"fasteners.multiplier_foot"}) lines.push_back(say(f, screen.voice));
  return caution_block(tell(screen, Code{"bench.torque.before"}), std::move(lines), tell(screen, Code{"bench.rule"}));
}

drawing::TorqueWays drawn(const Subject& subject, const Screen& screen, const std::vector<Way>& ways) {
  const Force one = subject.job.shaft.spec().policies.one_person_pull;
  std::vector<drawing::TorqueWay> out;
  const std::size_t advised = advised_of(ways);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const Way& way = ways[i];
    drawing::TorqueWay w;
    w.bar = length_typed(way.tool.wrench).length();
    w.bar_words = way.tool.wrench;
    if (!way.tool.extension.empty())
      w.extension = length_typed(way.tool.extension).length(), w.extension_words = way.tool.extension;
    w.multiplier = way.tool.multiplier;
    if (w.multiplier > 1) w.multiplier_words = figure_only(any_ratio(w.multiplier), screen.voice) + ":1";
    w.pull = Force::from_si(way.working->si("pull"));
    w.too_much = way.too_much;
    w.advised = i == advised;
    w.pull_words = shown(any(w.pull), screen.voice);
    out.push_back(std::move(w));
  }
  return drawing::torque_ways(out, one, tell(screen, Code{"bench.torque.one"}, {{"force", any(one)}}), kWays);
}

Json ways_table(const Subject& subject, const Screen& screen, const std::vector<Way>& ways, std::size_t chosen) {
  const drawing::TorqueWays pictures = drawn(subject, screen, ways);
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const Way& way = ways[i];
    const AnyQuantity pull = output_of(*way.working, "pull");
    TableRow row;
    row.cells = {{.text = way_name(screen, way), .bar = pictures.ways[i]},
                 {.text = shown(output_of(*way.working, "setting"), screen.voice),
                  .tone = "strong",
                  .detail = shown_other(output_of(*way.working, "setting"), screen.voice)},
                 {.text = tell(screen, way.too_much ? Code{"bench.torque.too_much"} : Code{"bench.torque.one_person"}),
                  .tone = way.too_much ? "out" : "in",
                  .detail = tell(screen, Code{"bench.torque.pull"},
                                 {{"pull", pull}, {"other", shown_other(pull, screen.voice)}})}};
    row.chosen = i == chosen;
    row.advised = i == advised_of(ways);
    row.action = action(tell(screen, Code{"bench.torque.this_way"}), do_go({.step = static_cast<int>(i) + 1}),
                        {.tone = i == advised_of(ways) ? "next" : "plain",
                         .says = tell(screen, Code{"bench.torque.take"}, {{"way", way_name(screen, way)}})});
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"bench.torque.ways"})},
                      {tell(screen, Code{"bench.torque.reads"})},
                      {tell(screen, Code{"bench.torque.holds"})}},
                     rows);
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
  const auto findings = findings_of_nut(subject, nut);
  const job::Shown* reached = shown_of(subject, Stage::torque, "torque-reached", {}, letter(nut.end));
  if (reached == nullptr || !reached->working->answer) return findings_block(screen, findings);
  const Working& working = *reached->working;
  return measured_block(screen, {.shown = *reached,
                                 .findings = findings,
                                 .value = output_of(working, "torque"),
                                 .expanded_si = output_of(working, "torque-u").si,
                                 .least = output_of(working, "least"),
                                 .greatest = output_of(working, "greatest")});
}

/// What it clamps with: a band up to proof, where the nut's strength is known.
void add_clamping(const Subject& subject, const Screen& screen, const Nut& nut, SheetParts& parts) {
  const WorkingPtr preload = working_of(subject, Stage::torque, "torque-preload", {}, letter(nut.end));
  if (preload == nullptr) return;
  const AnyQuantity least = output_of(*preload, "preload-least"), greatest = output_of(*preload, "preload-greatest");
  parts.right.push_back(facts_block({{.caption = tell(screen, Code{"bench.torque.clamps"}),
                                      .value = range_shown(screen, least, greatest),
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
                         {{"range", range_shown(screen, least, greatest)}, {"proof", *proof}})));
}

std::string order_text(const Subject& subject, const Screen& screen) {
  std::vector<std::string> nuts;
  for (const Nut* nut : in_order(subject.job.shaft)) nuts.push_back(letter(nut->end));
  if (nuts.size() < 2) return {};
  return tell(screen, Code{"bench.torque.order"}, {{"first", nuts[0]}, {"then", nuts[1]}});
}

Json target_facts(const Screen& screen, const Nut& nut) {
  const Torque least = (1 - nut.torque_tolerance) * nut.torque, greatest = (1 + nut.torque_tolerance) * nut.torque;
  Screen second = screen;
  second.voice.units = other(screen.voice.units);
  return facts_block({{.caption = tell(screen, Code{"bench.torque.target"}),
                       .value = shown(any(nut.torque), screen.voice),
                       .tone = "strong",
                       .other = shown_other(any(nut.torque), screen.voice)},
                      {.caption = tell(screen, Code{"bench.torque.within"}),
                       .value = range_shown(screen, any(least), any(greatest)),
                       .other = range_shown(second, any(least), any(greatest))}},
                     screen.voice);
}

SheetParts nut_sheet(const Subject& subject, const Screen& screen, const Spot& spot, const Nut& nut) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.torque.title"}, {{"nut", letter(nut.end)}, {"torque", any(nut.torque)}});
  parts.aside = order_text(subject, screen);
  const std::vector<Way> ways = ways_of(subject, nut, screen.voice.units);
  if (ways.empty()) return parts;
  const std::size_t chosen = chosen_of(ways, spot);
  parts.head.push_back(caution(screen, ways[chosen]));
  parts.head.push_back(target_facts(screen, nut));
  parts.head.push_back(ways_table(subject, screen, ways, chosen));
  parts.left.push_back(pull_keypad(subject, screen, nut, ways[chosen]));
  if (const job::NutPulled* pulled = told_pull(subject, nut); pulled != nullptr && !on_a_bar(pulled))
    parts.left.push_back(ratio_question(subject, screen, *pulled));
  parts.left.push_back(text_block(tell(screen, Code{"bench.torque.own_tool"}), "note"));
  if (Json answer = reached_answer(subject, screen, nut); !answer.is_null()) parts.right.push_back(std::move(answer));
  add_clamping(subject, screen, nut, parts);
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
  cell.sub = pull->shown.typed;
  cell.word = tell(screen, worst == Severity::note  ? Code{"bench.cell.done"}
                           : worst == Severity::out ? Code{"bench.cell.stop"}
                                                    : Code{"bench.cell.gauge"});
  return cell;
}

}  // namespace flatwise::view
