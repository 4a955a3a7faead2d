// Press. Found first: the blue tool on the outer ring, under the caution.
#include <algorithm>
#include <array>

#include "core/bearings/figures.h"
#include "core/fits/figures.h"
#include "core/units/parse.h"
#include "drawing/bench_pictures.h"
#include "job/figure_use.h"
#include "job/press_path.h"
#include "view/bench_parts.h"
#include "view/press_plot.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr double kRight = 104, kWrong = 60;

const PressReading* press_of(const Subject& subject, int rotor) {
  const auto& presses = subject.job.state.bench.presses;
  const auto it = std::ranges::find(presses, rotor, &PressReading::rotor);
  return it == presses.end() ? nullptr : &*it;
}

Json caution(const Screen& screen) {
  return caution_block(tell(screen, Code{"bench.press.before"}),
                       {tell(screen, Code{"bench.press.caution_1"}), tell(screen, Code{"bench.press.caution_2"})},
                       tell(screen, Code{"bench.rule"}));
}

void add_sections(const Subject& subject, const Screen& screen, const Spot& spot, int rotor, SheetParts& parts) {
  const Station& station = subject.job.shaft.stations()[static_cast<std::size_t>(spot.station)];
  const Rotor& part = subject.job.shaft.rotor(rotor);
  const drawing::ToolRing tool = drawing::tool_ring(part);
  const std::string range = range_words(any(tool.inside), any(tool.outside), screen.voice);
  drawing::PressSection right;
  right.tool_words = tell(screen, Code{"bench.press.tool"}, {{"range", range}});
  if (part.snap_rings != SnapRings::none) right.ring_words = tell(screen, Code{"bench.press.stop"});
  right.support_words = tell(screen, Code{"bench.press.support"});
  parts.left.push_back(drawing_block(drawing::press_section(station, part, right, kRight),
                                     tell(screen, Code{"bench.press.right_says"}, {{"range", range}}), {},
                                     {.caption = tell(screen, Code{"bench.press.right"})}));
  parts.right.push_back(drawing_block(drawing::press_section(station, part, {.on_outer = false}, kWrong),
                                      tell(screen, Code{"bench.press.wrong_says"}), {},
                                      {.caption = tell(screen, Code{"bench.press.wrong"})}));
}

WorkingPtr working_here(const Subject& subject, int rotor, std::string_view figure, std::string_view about = {}) {
  return working_of(subject, Stage::press, figure, job::at_rotor(rotor), about);
}

Json force_field(const Subject& subject, const Screen& screen, int rotor, const WorkingPtr& band) {
  job::Pressed body;
  body.rotor = rotor;
  FieldIs is;
  is.title = tell(screen, Code{"bench.press.force"});
  is.label = is.title;
  is.kind = "force";
  is.body = body;
  is.into = "force";
  is.gauge_into = "gauge";
  is.gauges = Gauge::Use::press_gauge;
  if (band != nullptr)
    is.hint = tell(
        screen, Code{"bench.press.expected_hint"},
        {{"range", range_words(output_of(*band, "force-least"), output_of(*band, "force-greatest"), screen.voice)}});
  return field(subject, screen, is);
}

constexpr int kCurveStep = 1, kForceStep = 2;  ///< Spot::step: the force over the way in is typed, or the greatest one.

/// One field a point: the travel is set, the force is typed.
std::vector<Json> curve_fields(const Subject& subject, const Screen& screen, int rotor) {
  const std::vector<std::string> stops = job::press_stops(subject.job.shaft.rotor(rotor), screen.voice.units);
  const int count = static_cast<int>(stops.size());
  std::vector<Json> fields;
  for (int point = 1; point <= count; ++point) {
    job::PressPointRead body;
    body.rotor = rotor;
    body.point = point;
    // A point that stands keeps the travel it was read at.
    const auto* live = subject.job.state.agreed<job::PressPointRead>(field_key(body));
    const std::string travel = live != nullptr ? live->travel.typed : stops[static_cast<std::size_t>(point) - 1];
    const Result<Entered> read = parse_quantity(travel, Kind::length, "travel");
    CORE_CHECK(read.has_value());
    body.travel = *read;
    FieldIs is;
    is.title = tell(screen, Code{"bench.press.curve_point"}, {{"rotor", rotor}, {"travel", travel}});
    is.label = tell(screen, Code{"bench.press.curve_field"}, {{"travel", travel}});
    is.kind = "force";
    is.body = body;
    is.into = "force";
    is.gauge_into = "gauge";
    is.gauges = Gauge::Use::press_gauge;
    is.hint = tell(screen, Code{"bench.press.curve_hint"});
    if (point < count) {
      ++body.point;
      is.next = field_key(body);
    }
    fields.push_back(field(subject, screen, is));
  }
  return fields;
}

bool typing_the_curve(const Spot& spot) { return spot.step && *spot.step == kCurveStep; }

Json curve_switch(const Screen& screen, const Spot& spot) {
  const bool open = typing_the_curve(spot);
  return actions_block({action(tell(screen, open ? Code{"bench.press.curve_close"} : Code{"bench.press.curve_type"}),
                               do_go({.step = open ? kForceStep : kCurveStep}))});
}

bool about_curve(const Finding* f) { return f->code.id().starts_with("fits.curve_"); }

/// What the force over the way in says: sign, sentences, and the fit behind it.
Json curve_answer(const Subject& subject, const Screen& screen, int rotor) {
  const job::Shown* read = shown_of(subject, Stage::press, "press-curve-read", job::at_rotor(rotor));
  if (read == nullptr || !read->working->answer) return nullptr;
  const auto findings = findings_like(subject, Stage::press, job::at_rotor(rotor), "fits.curve_");
  const Output* fit = read->working->output("interference");
  CORE_CHECK(fit != nullptr && fit->u.has_value());
  const Answer answer = read->counts().value_or(Answer::cannot_tell);
  const AnyQuantity tight = std::get<AnyQuantity>(fit->value);
  return answer_block({.sign = answer == Answer::in    ? "in"
                               : answer == Answer::out ? "out"
                                                       : "tell",
                       .word = answer_word(answer, screen.voice),
                       .says = sentences(screen, findings),
                       .value = tell(screen, Code{"bench.press.curve_tight"},
                                     {{"fit", with_u(tight, fit->u->expanded_si, screen.voice)}}),
                       .other = with_u(tight, fit->u->expanded_si, screen.voice, true),
                       .does = instruction(screen, findings),
                       .working = read->working},
                      screen.voice);
}

/// Before the force: the band. Nothing to press where the bore was not gauged.
Json band_facts(const Screen& screen, const WorkingPtr& band) {
  const AnyQuantity least = output_of(*band, "force-least"), greatest = output_of(*band, "force-greatest");
  return facts_block({{.caption = tell(screen, Code{"bench.press.expected"}),
                       .value = range_words(least, greatest, screen.voice),
                       .tone = "strong",
                       .other = range_other(least, greatest, screen.voice),
                       .working = band},
                      {.caption = tell(screen, Code{"bench.press.above"}),
                       .value = tell(screen, Code{"bench.press.stop_at"}, {{"force", greatest}}),
                       .tone = "out"}},
                     screen.voice);
}

Json force_answer(const Subject& subject, const Screen& screen, int rotor) {
  auto findings = findings_like(subject, Stage::press, job::at_rotor(rotor), "fits.");
  std::erase_if(findings,
                [](const Finding* f) { return about_curve(f) || f->code.id().starts_with("fits.hub_yielded"); });
  for (const Finding* f : findings_like(subject, Stage::press, job::at_rotor(rotor), "job.")) findings.push_back(f);
  const job::Shown* back = shown_of(subject, Stage::press, "press-readback", job::at_rotor(rotor));
  if (back == nullptr || !back->working->answer) return findings_block(screen, findings);
  const Working& working = *back->working;
  return measured_block(screen, {.shown = *back,
                                 .findings = findings,
                                 .value = input_of(working, "force").value(),
                                 .expanded_si = output_of(working, "force-expanded").si,
                                 .least = input_of(working, "band-least"),
                                 .greatest = input_of(working, "band-greatest"),
                                 .of = tell(screen, Code{"bench.press.force_word"})});
}

std::string first_finding(const Working& working, const Voice& voice) {
  return working.findings.empty() ? std::string{} : say(working.findings.front(), voice);
}

/// Whether the ring holds against the load and couple that turn against it: by a rule of catalogues, so advice and no verdict.
void add_creep(const Screen& screen, const WorkingPtr& creep, std::vector<FactRow>& rows) {
  if (creep == nullptr) return;
  const std::string finding = first_finding(*creep, screen.voice);
  rows.push_back(
      {.caption = tell(screen, Code{"bench.press.creep"}),
       .value = shown(output_of(*creep, "wanted"), screen.voice),
       .tone = finding.empty() ? "plain" : "tell",
       .other = finding.empty() ? finding : tell(screen, Code{"bench.press.creep_rule"}, {{"says", finding}}),
       .working = creep});
}

/// Only where the hub gives way: what stays of it.
void add_yielding(const Screen& screen, const WorkingPtr& hub, std::vector<FactRow>& rows) {
  if (hub == nullptr) return;
  rows.push_back({.caption = tell(screen, Code{"bench.press.hub"}),
                  .value = shown(output_of(*hub, "pressure"), screen.voice),
                  .tone = "tell",
                  .other = first_finding(*hub, screen.voice),
                  .working = hub});
}

void add_clearance(const Screen& screen, const WorkingPtr& left, std::vector<FactRow>& rows) {
  if (left == nullptr) return;
  const bool none = left->si("least") <= 0;
  rows.push_back({.caption = tell(screen, Code{"bench.press.clearance"}),
                  .value = range_words(output_of(*left, "least"), output_of(*left, "greatest"), screen.voice),
                  .tone = none ? "tell" : "plain",
                  .other = none ? first_finding(*left, screen.voice) : std::string{},
                  .working = left});
}

/// The fit that the force proves beside the fit that was gauged.
Json fit_facts(const Subject& subject, const Screen& screen, int rotor) {
  std::vector<FactRow> rows;
  if (const WorkingPtr back = working_here(subject, rotor, "press-readback"))
    rows.push_back({.caption = tell(screen, Code{"bench.press.by_force"}),
                    .value = range_words(output_of(*back, "interference-least"),
                                         output_of(*back, "interference-greatest"), screen.voice),
                    .working = back});
  for (const char plane : {'A', 'B'})
    if (const WorkingPtr fit = working_here(subject, rotor, "interference", std::string(1, plane)))
      rows.push_back({.caption = tell(screen, Code{"bench.press.by_gauge"}, {{"plane", std::string(1, plane)}}),
                      .value = range_words(output_of(*fit, "least"), output_of(*fit, "greatest"), screen.voice),
                      .working = fit});
  add_clearance(screen, working_here(subject, rotor, "fitted-clearance"), rows);
  add_creep(screen, working_here(subject, rotor, "creep-load"), rows);
  add_yielding(screen, working_here(subject, rotor, "hub-yielding"), rows);
  return rows.empty() ? Json() : facts_block(rows, screen.voice);
}

Json ring_question(const Subject& subject, const Screen& screen, int rotor) {
  const auto body = [&](RingPressed ring) { return job::EntryBody{job::RingPressedSeen{rotor, ring}}; };
  return question(
      subject, screen,
      {.label = tell(screen, Code{"bench.press.which"}), .detail = tell(screen, Code{"bench.press.which_why"})},
      {{word("ring.outer", screen.voice), body(RingPressed::outer), "in"},
       {word("ring.inner", screen.voice), body(RingPressed::inner), "out"},
       {word("reply.not_seen", screen.voice), body(RingPressed::not_seen), {}}});
}

/// Last: heating instead. Its caution stands before its figure.
void add_heating(const Subject& subject, const Screen& screen, int rotor, SheetParts& parts) {
  WorkingPtr tightest;
  for (const char plane : {'A', 'B'}) {
    const WorkingPtr fit = working_here(subject, rotor, "interference", std::string(1, plane));
    if (fit != nullptr && (tightest == nullptr || fit->si("greatest") > tightest->si("greatest"))) tightest = fit;
  }
  if (tightest == nullptr || tightest->si("greatest") <= 0) return;
  const Rotor& part = subject.job.shaft.rotor(rotor);
  const Results<Working> heat = job::use(
      fits::figures(), "heating",
      {given("joint-diameter", any(part.bearing.outside), job::rotor_origin(subject.job.shaft, rotor, "bearing.D")),
       computed("interference", "greatest", tightest), given("heated", std::string{"hub"}),
       given("heated-expansion", any_expansion(part.hub.material.expansion_per_kelvin),
             job::rotor_origin(subject.job.shaft, rotor, "hub.material")),
       given("room", any(subject.job.workshop.room)),
       given("limit", any(part.bearing.greatest_heating),
             job::rotor_origin(subject.job.shaft, rotor, "bearing.greatest_heating"))});
  if (!heat) return;
  const auto working = std::make_shared<const Working>(*heat);
  std::vector<std::string> lines;
  for (const Finding& f : working->findings) lines.push_back(say(f, screen.voice));
  if (!lines.empty())
    parts.foot.push_back(caution_block(tell(screen, Code{"bench.press.before_heat"}), std::move(lines)));
  parts.foot.push_back(facts_block(
      {{.caption = tell(screen, Code{"bench.press.heat"}),
        .value = shown(output_of(*working, "temperature"), screen.voice),
        .other = tell(screen, Code{"bench.press.never_above"}, {{"limit", any(part.bearing.greatest_heating)}}),
        .working = working}},
      screen.voice));
}

void add(Json& blocks, Json block) {
  if (!block.is_null()) blocks.push_back(std::move(block));
}

SheetParts rotor_sheet(const Subject& subject, const Screen& screen, const Spot& spot, int rotor) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.press.title"}, {{"rotor", rotor}});
  for (Json& block : stop_blocks(subject, screen,
                                 {.stage = Stage::press,
                                  .only = job::at_rotor(rotor),
                                  .stop = tell(screen, Code{"bench.press.stop_here"}, {{"rotor", rotor}}),
                                  .wait = tell(screen, Code{"bench.press.wait"}, {{"rotor", rotor}})}))
    parts.head.push_back(std::move(block));
  parts.head.push_back(caution(screen));
  add_sections(subject, screen, spot, rotor, parts);
  const WorkingPtr band = working_here(subject, rotor, "press-force");
  if (band != nullptr)
    parts.left.push_back(band_facts(screen, band));
  else
    parts.left.push_back(text_block(tell(screen, Code{"bench.press.no_band"}), "read", "tell"));
  parts.left.push_back(typing_the_curve(spot) ? keypad_block(curve_fields(subject, screen, rotor))
                                              : keypad_block({force_field(subject, screen, rotor, band)}));
  if (band != nullptr) parts.left.push_back(curve_switch(screen, spot));
  const PressReading* press = press_of(subject, rotor);
  if (press != nullptr) add(parts.right, force_answer(subject, screen, rotor));
  add(parts.right, curve_answer(subject, screen, rotor));
  add(parts.right, fit_facts(subject, screen, rotor));
  if (band != nullptr) add(parts.right, press_plot(subject, screen, rotor, *band));
  std::vector<Json> questions{ring_question(subject, screen, rotor)};
  for (Json& q : job_questions(subject, screen, Stage::press, job::AskedOf::rotor_that_came_off, rotor))
    questions.push_back(std::move(q));
  parts.right.push_back(asks_block("rows", std::move(questions), tell(screen, Code{"bench.press.cannot_show"})));
  auto findings = findings_like(subject, Stage::press, job::at_rotor(rotor), "press.");
  std::erase_if(findings, [](const Finding* f) { return f->code == Code{"press.may_creep"}; });  // Its row says so.
  add(parts.foot, findings_block(screen, findings));
  for (const Finding* f : findings_at(subject, Stage::press, {}))
    parts.foot.push_back(text_block(say(*f, screen.voice), "note"));
  add_heating(subject, screen, rotor, parts);
  return parts;
}

}  // namespace

SheetParts press_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const int rotor = rotor_at(subject.job.shaft, spot.station);
  if (rotor > 0 && rotor_came_off(subject, rotor)) return rotor_sheet(subject, screen, spot, rotor);
  SheetParts parts;
  parts.title = station_name(subject.job.shaft, spot.station, screen.voice);
  parts.left.push_back(text_block(tell(screen, Code{"bench.press.nothing"})));
  return parts;
}

CellSays press_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor == 0 || !rotor_came_off(subject, rotor)) return cell;
  const Severity worst = worst_of(findings_at(subject, Stage::press, job::at_rotor(rotor)));
  const bool pressed = press_of(subject, rotor) != nullptr;
  mark_cell(cell, worst, pressed);
  cell.word = tell(screen, worst == Severity::out           ? Code{"bench.cell.stop"}
                           : !pressed                       ? Code{"bench.cell.press"}
                           : worst == Severity::note        ? Code{"bench.cell.done"}
                           : worst == Severity::cannot_tell ? Code{"bench.cell.gauge"}
                                                            : Code{"bench.cell.say"});
  return cell;
}

}  // namespace flatwise::view
