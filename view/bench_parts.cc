#include "view/bench_parts.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "drawing/bars.h"

namespace flatwise::view {

bool rotor_came_off(const Subject& subject, int rotor) {
  const auto& off = subject.job.state.bench.came_off;
  return std::ranges::find(off, rotor) != off.end();
}

bool station_came_off(const Subject& subject, int station) {
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor > 0) return rotor_came_off(subject, rotor);
  const auto at = static_cast<std::size_t>(station);
  const auto& told = subject.job.state.came_off;
  if (at < told.size() && told[at]) return true;
  const std::vector<bool> off = job::stations_off(subject.job.shaft, subject.job.state.bench);
  return at < off.size() && off[at];
}

Json spacers_question(const Subject& subject, const Screen& screen, Phase phase, int station) {
  const auto& stations = subject.job.shaft.stations();
  const Station& place = stations[static_cast<std::size_t>(station)];
  if (place.kind != StationKind::spacer) return nullptr;
  const auto body = [&](int count, const std::string& label = {}) {
    return job::EntryBody{job::SpacersFound{phase, station + 1, count, label}};
  };
  std::vector<Option> options{{tell(screen, Code{"bench.spacers.one"}), body(1), {}},
                              {tell(screen, Code{"bench.spacers.two"}), body(2), "out"},
                              {tell(screen, Code{"bench.spacers.none"}), body(0), "out"}};
  // On the way back the labels are asked place by place.
  for (const Station& other : stations)
    if (phase == Phase::teardown && other.kind == StationKind::spacer && other.label != place.label)
      options.push_back(
          {tell(screen, Code{"bench.spacers.label"}, {{"label", other.label}}), body(1, other.label), {}});
  Ask ask{.label = tell(screen, Code{"bench.spacers.at"}, {{"label", place.label}})};
  if (phase == Phase::teardown) ask.detail = tell(screen, Code{"bench.spacers.labels"});
  return question(subject, screen, ask, options);
}

Json parts_off_alone(const Subject& subject, const Screen& screen, const std::vector<job::JobStep>& steps) {
  std::vector<Json> questions;
  const std::vector<bool>& off = subject.job.state.off;
  for (int number = 1; number <= static_cast<int>(off.size()); ++number) {
    const auto moves = [&](const job::JobStep& step) {
      return std::ranges::find(step.moves, number) != step.moves.end();
    };
    if (!off[static_cast<std::size_t>(number) - 1] || std::ranges::any_of(steps, moves)) continue;
    questions.push_back(question(subject, screen,
                                 {.label = capital(station_name(subject.job.shaft, number - 1, screen.voice))},
                                 {{tell(screen, Code{"bench.alone.off"}), job::TakenOff{number}, {}},
                                  {tell(screen, Code{"bench.alone.back"}), job::PutOn{number}, {}}}));
  }
  return questions.empty() ? Json() : asks_block("rows", std::move(questions), tell(screen, Code{"bench.alone.head"}));
}

const job::StageReport* report_of(const Subject& subject, job::Stage stage) {
  const auto& stages = subject.job.report.stages;
  const auto it = std::ranges::find(stages, stage, &job::StageReport::stage);
  return it == stages.end() ? nullptr : &*it;
}

const job::Shown* shown_of(const Subject& subject, job::Stage stage, std::string_view figure, Where where,
                           std::string_view about) {
  const job::StageReport* report = report_of(subject, stage);
  if (report == nullptr) return nullptr;
  for (const job::Shown& shown : report->workings)
    if (shown.working != nullptr && shown.working->figure == figure && shown.where == where &&
        (about.empty() || shown.about == about))
      return &shown;
  return nullptr;
}

WorkingPtr working_of(const Subject& subject, job::Stage stage, std::string_view figure, Where where,
                      std::string_view about) {
  const job::Shown* shown = shown_of(subject, stage, figure, where, about);
  return shown == nullptr ? nullptr : shown->working;
}

AnyQuantity output_of(const Working& working, std::string_view name) {
  const Output* output = working.output(name);
  CORE_CHECK(output != nullptr);
  return std::get<AnyQuantity>(output->value);
}

std::optional<AnyQuantity> input_of(const Working& working, std::string_view name) {
  const Input* input = working.input(name);
  const auto* value = input == nullptr ? nullptr : std::get_if<AnyQuantity>(&input->value);
  return value == nullptr ? std::nullopt : std::optional{*value};
}

std::vector<const Finding*> findings_like(const Subject& subject, job::Stage stage, Where where,
                                          std::string_view prefix) {
  std::vector<const Finding*> out = findings_at(subject, stage, where);
  std::erase_if(out, [&](const Finding* f) { return !f->code.id().starts_with(prefix); });
  return out;
}

Severity worst_of(const std::vector<const Finding*>& findings) {
  Severity worst = Severity::note;
  for (const Finding* f : findings) worst = std::max(worst, f->severity);
  return worst;
}

std::vector<std::string> sentences(const Screen& screen, const std::vector<const Finding*>& findings) {
  std::vector<std::string> out;
  for (const Finding* f : findings) {
    std::string text = say(Message{f->code, f->args}, screen.voice);  // The sheet names the part in its head.
    if (std::ranges::find(out, text) == out.end()) out.push_back(std::move(text));
  }
  return out;
}

std::string instruction(const Screen& screen, const std::vector<const Finding*>& findings) {
  for (const Finding* f : findings)
    if (f->instruction) return say(*f->instruction, screen.voice);
  return {};
}

namespace {

Code severity_word(Severity severity) {
  switch (severity) {
    case Severity::out:
      return Code{"answer.out"};
    case Severity::cannot_tell:
      return Code{"answer.cannot_tell"};
    case Severity::unanswered:
      return Code{"bench.open"};
    case Severity::note:
      break;
  }
  return Code{"bench.in_order"};
}

}  // namespace

Json findings_block(const Screen& screen, const std::vector<const Finding*>& findings) {
  if (findings.empty()) return nullptr;
  const Severity worst = worst_of(findings);
  return answer_block({.sign = worst == Severity::note ? "done" : sign_of(worst),
                       .word = tell(screen, severity_word(worst)),
                       .says = sentences(screen, findings),
                       .does = instruction(screen, findings)},
                      screen.voice);
}

std::vector<Json> stop_blocks(const Subject& subject, const Screen& screen, const StopIs& is) {
  constexpr std::size_t kSaid = 4;  // More is a list, and stands at the release.
  std::vector<const job::Block*> reasons = job::in_the_way(subject.standing, is.stage);
  if (is.only) std::erase_if(reasons, [&](const job::Block* b) { return b->where != *is.only; });
  if (reasons.empty()) return {};
  const job::Block& first = *reasons.front();
  const bool out = first.severity == Severity::out;
  AnswerIs block{.sign = out ? "stopped" : sign_of(first.severity), .word = out ? is.stop : is.wait};
  for (std::size_t i = 0; i < std::min(kSaid, reasons.size()); ++i)
    block.says.push_back(capital(say(reasons[i]->what, reasons[i]->where, screen.voice)));
  if (reasons.size() > kSaid)
    block.says.push_back(tell(screen, Code{"bench.stop.more"}, {{"count", static_cast<int>(reasons.size() - kSaid)}}));
  if (first.instruction) block.does = say(*first.instruction, first.where, screen.voice);
  const std::optional<int> at = station_of(subject.job.shaft, first.where);
  Args there{{"stage", Word{"stage." + std::string{job::stage_name(first.stage)}}}};
  if (at) there.emplace_back("part", station_name(subject.job.shaft, *at, screen.voice, true));
  std::vector<Json> keys{action(tell(screen, Code{"bench.stop.go"}, there),
                                do_go({.stage = first.stage, .station = at}), {.tone = "next"})};
  if (!is.all_the_same.empty()) keys.push_back(action(is.all_the_same, do_go(is.on)));
  return {answer_block(block, screen.voice), actions_block(std::move(keys))};
}

Json measured_block(const Screen& screen, const MeasuredIs& is) {
  constexpr double kBar = 92;
  const Answer answer = is.shown.counts().value_or(Answer::cannot_tell);
  const std::string answer_text = answer_word(answer, screen.voice);
  AnswerIs block{.sign = sign_of(answer),
                 .word = is.of.empty()
                             ? answer_text
                             : tell(screen, Code{"bench.answer_of"}, {{"of", is.of}, {"answer", answer_text}}),
                 .says = sentences(screen, is.findings),
                 .value = with_u(is.value, is.expanded_si, screen.voice),
                 .other = with_u(is.value, is.expanded_si, screen.voice, true),
                 .does = instruction(screen, is.findings),
                 .working = is.shown.working};
  if (is.least && is.greatest)
    block.bar = drawing::answer_bar({.least = is.least->si,
                                     .greatest = is.greatest->si,
                                     .value = is.value.si,
                                     .expanded = is.expanded_si,
                                     .answer = answer,
                                     .least_words = figure_only(*is.least, screen.voice),
                                     .greatest_words = figure_only(*is.greatest, screen.voice)},
                                    kBar);
  return answer_block(block, screen.voice);
}

void mark_cell(CellSays& cell, Severity worst, bool done) {
  cell.flag = flag_of(worst);
  if (worst == Severity::note && done) cell.flag = "done";
}

std::string tell_big(const Screen& screen, Code code, const Args& args) { return capital(tell(screen, code, args)); }

std::string answer_word(Answer answer, const Voice& voice) {
  const std::string_view sign = answer == Answer::cannot_tell ? "cannot_tell" : sign_of(answer);
  return word("answer." + std::string{sign}, voice);
}

std::string with_u(AnyQuantity value, double expanded_si, const Voice& voice, bool in_other) {
  return format_with_uncertainty(
      value, expanded_si,
      {.system = in_other ? other(voice.units) : voice.units, .decimals = {}, .unit = {}, .currency = voice.currency});
}

}  // namespace flatwise::view
