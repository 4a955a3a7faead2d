// Tear-down: one step at a time. The eye finds first the caution, then the verb.
#include <algorithm>

#include "job/steps.h"
#include "view/bench_parts.h"
#include "view/blocks.h"
#include "view/rails.h"
#include "view/stage_sheets.h"
#include "view/teardown_steps.h"
#include "view/torque_tools.h"

namespace flatwise::view {
namespace {

using job::JobStep;

std::optional<int> station_of_step(const Shaft& shaft, const JobStep& step) {
  if (!step.moves.empty()) return with_a_cell(shaft, step.moves.back() - 1);
  if (step.step.stations.empty()) return std::nullopt;
  return with_a_cell(shaft, step.step.stations.front());
}

// The shaft above points at what the step moves.
GoTo go_to_step(const Subject& subject, const std::vector<JobStep>& steps, int at) {
  return {.stage = job::Stage::teardown,
          .station = station_of_step(subject.job.shaft, steps[static_cast<std::size_t>(at)]),
          .step = at + 1};
}

Json caution_json(const Screen& screen, const teardown::Step& step) {
  std::vector<std::string> lines;
  for (const Message& caution : step.cautions) lines.push_back(say(caution, screen.voice));
  return caution_block(before_words(screen, step), std::move(lines), tell(screen, Code{"view.band.rule"}));
}

// What a step moves, as the parts are labelled.
std::vector<std::string> parts_moved(const Subject& subject, const JobStep& step) {
  std::vector<std::string> parts;
  for (const int station : step.moves) parts.push_back(station_name(subject.job.shaft, station - 1, {}, true));
  return parts;
}

/// The answer a step has, with the key that takes it back together with what it moved.
Json answered_json(const Subject& subject, const Screen& screen, const JobStep& step) {
  if (step.answer == nullptr) return nullptr;
  Json json = yes_no(subject, screen, {.label = tell(screen, Code{"view.teardown.was_it_done"})},
                     [&](Reply reply) { return job::EntryBody{job::StepDone{job::Phase::teardown, step.key, reply}}; });
  std::vector<job::Id> ids;
  for (const job::EntryBody& body : job::entries_of_step(step, job::Phase::teardown))
    for (const job::Id& id : job::live_answers_to(subject.job.state, body)) ids.push_back(id);
  json["undo"] = {{"corrects", ids}, {"body", body_json(job::Withdrawn{})}};
  return json;
}

/// The nut that a step cracks loose; nullptr for every other step.
const Nut* nut_to_crack(const Subject& subject, const teardown::Step& step) {
  if (step.what.code != Code{"teardown.crack_nut"} && step.what.code != Code{"teardown.slacken_nut"}) return nullptr;
  const auto& nuts = subject.job.shaft.spec().nuts;
  const auto it = std::ranges::find_if(nuts, [&](const Nut& nut) {
    return step.what.args.front() == Arg("end", Word{nut.end == End::a ? "end.a" : "end.b"});
  });
  return it == nuts.end() ? nullptr : &*it;
}

/// It does not turn: said as the step answered no, which stops the job, with what to do about it.
void add_stuck(const Subject& subject, const Screen& screen, const JobStep& step, SheetParts& parts) {
  if (step.done() || nut_to_crack(subject, step.step) == nullptr) return;
  parts.left.push_back(text_block(tell(screen, Code{"view.teardown.stuck_do"}), "note"));
  parts.left.push_back(
      actions_block({action(tell(screen, Code{"view.teardown.stuck"}),
                            do_record({draft(subject, job::StepDone{job::Phase::teardown, step.key, Reply::no})}))}));
}

Json step_json(const Subject& subject, const Screen& screen, const std::vector<JobStep>& steps, int at) {
  const JobStep& step = steps[static_cast<std::size_t>(at)];
  StepIs is{.number = at + 1, .of = static_cast<int>(steps.size()), .says = say(step.step.what, screen.voice)};
  if (!step.step.cautions.empty()) is.cautions.push_back(caution_json(screen, step.step));
  for (const Word& tool : step.step.tools) is.tools.push_back(word(tool.id, screen.voice));
  for (const Message& label : step.step.labels) is.labels.push_back(say(label, screen.voice));
  is.stop = step.step.stop;
  if (step.step.note) is.note = say(*step.step.note, screen.voice);
  if (const Nut* nut = nut_to_crack(subject, step.step)) {
    Crack crack = crack_of(subject, screen, *nut);
    is.drawing = std::move(crack.drawing);
    is.note = std::move(crack.says);
  }
  is.question = answered_json(subject, screen, step);
  const bool last = at + 1 == static_cast<int>(steps.size());
  const GoTo on = go_to_step(subject, steps, last ? at : at + 1);
  is.action = step.done() ? (last ? Json() : action(tell(screen, Code{"view.teardown.next"}), do_go(on)))
                          : done_action(subject, screen, steps, at);
  if (at > 0) is.back = action(tell(screen, Code{"view.teardown.back"}), do_go(go_to_step(subject, steps, at - 1)));
  return step_block(is);
}

/// All steps in short, each with a key to look at it.
Json list_json(const Subject& subject, const Screen& screen, const std::vector<JobStep>& steps, int at) {
  std::vector<TableRow> rows;
  for (int i = 0; i < static_cast<int>(steps.size()); ++i) {
    const JobStep& step = steps[static_cast<std::size_t>(i)];
    TableRow row{.cells = {{.text = std::to_string(i + 1)}, {.text = say(step.step.what, screen.voice)}, {}},
                 .chosen = i == at,
                 .action = action(tell(screen, Code{"view.teardown.look"}), do_go(go_to_step(subject, steps, i)),
                                  {.says = tell(screen, Code{"view.teardown.look_at"}, {{"number", i + 1}})})};
    if (step.step.stop) row.cells[1].tone = "strong";
    if (step.done())
      row.cells[2] = {.text = tell(screen, Code{"view.teardown.done_word"}), .tone = "in", .flag = "done"};
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"view.teardown.step"})}, {}, {}}, rows,
                     tell(screen, Code{"view.teardown.all"}));
}

// ---- Said by hand: from which end, what else came off, how the spacers lay.

using teardown::OpenedFrom;

/// From which end it was opened, where that is not what the plan says.
std::vector<Json> opened_blocks(const Subject& subject, const Screen& screen) {
  const std::optional<Opened>& said = subject.job.state.bench.opened;
  const int share = said && said->from == OpenedFrom::both ? said->rotors_from_a : 0;
  std::vector<Json> blocks;
  blocks.push_back(asks_block(
      "chips",
      {question(subject, screen, {.label = tell(screen, Code{"view.teardown.opened"})},
                {{tell(screen, Code{"view.teardown.from_a"}), job::OpenedBy{OpenedFrom::a, 0}, {}},
                 {tell(screen, Code{"view.teardown.from_b"}), job::OpenedBy{OpenedFrom::b, 0}, {}},
                 {tell(screen, Code{"view.teardown.from_both"}), job::OpenedBy{OpenedFrom::both, share}, {}}})},
      tell(screen, Code{"view.teardown.by_hand"})));
  if (!said || said->from != OpenedFrom::both) return blocks;
  std::vector<Option> shares;
  for (int rotor = 1; rotor < subject.job.shaft.rotor_count(); ++rotor)
    shares.push_back({std::to_string(rotor), job::OpenedBy{OpenedFrom::both, rotor}, {}});
  if (shares.empty()) return blocks;
  blocks.push_back(
      asks_block("chips", {question(subject, screen, {.label = tell(screen, Code{"view.teardown.share"})}, shares)}));
  return blocks;
}

/// Why the plan does not go as it was said; empty where it does.
std::string opening_refused(const Subject& subject, const Screen& screen) {
  const job::JobState& state = subject.job.state;
  if (!state.bench.opened) return {};
  const auto plan = job::plan_opened(subject.job.shaft, subject.job.workshop, state, *state.bench.opened);
  if (!plan || *plan) return {};
  return tell(screen, Code{"view.teardown.does_not_go"}, {{"why", say(plan->error(), screen.voice).allowed}});
}

/// A part that no step takes off came off by itself: tapped on the shaft, it is asked about.
Json alone_question(const Subject& subject, const Screen& screen, int station) {
  const Station& part = subject.job.shaft.stations()[static_cast<std::size_t>(station)];
  const int number = station + 1;
  const auto& steps = teardown_steps(subject);
  const bool in_a_step =
      std::ranges::any_of(steps, [&](const JobStep& s) { return std::ranges::find(s.moves, number) != s.moves.end(); });
  if (in_a_step || part.obstacle || part.kind == StationKind::rotor) return nullptr;
  std::vector<Option> options{{tell(screen, Code{"bench.alone.off"}), job::TakenOff{number}, {}}};
  if (subject.job.state.came_off[static_cast<std::size_t>(station)])
    options.push_back({tell(screen, Code{"bench.alone.back"}), job::PutOn{number}, {}});
  return question(subject, screen,
                  {.label = tell(screen, Code{"view.teardown.alone"},
                                 {{"part", capital(station_name(subject.job.shaft, station, screen.voice))}})},
                  options);
}

/// Of the part that is chosen, and of the spacers that the step moves.
Json found_block(const Subject& subject, const Screen& screen, const Spot& spot, const JobStep* step) {
  std::vector<int> places{spot.station};
  if (step != nullptr)
    for (const int number : step->moves)
      if (number - 1 != spot.station) places.push_back(number - 1);
  std::vector<Json> questions;
  if (Json alone = alone_question(subject, screen, spot.station); !alone.is_null())
    questions.push_back(std::move(alone));
  for (const int place : places)
    if (Json counted = spacers_question(subject, screen, job::Phase::teardown, place); !counted.is_null())
      questions.push_back(std::move(counted));
  return questions.empty() ? Json()
                           : asks_block("chips", std::move(questions), tell(screen, Code{"view.teardown.found"}));
}

SheetParts nothing_planned(const Screen& screen) {
  SheetParts parts{.title = tell(screen, Code{"view.teardown.title"})};
  parts.head.push_back(text_block(tell(screen, Code{"view.teardown.no_way"})));
  parts.head.push_back(actions_block(
      {action(tell(screen, Code{"view.teardown.to_plan"}), do_go({.stage = job::Stage::plan}), {.tone = "next"})}));
  return parts;
}

/// What is said by hand stands beside the step: what was found at it, and how the shaft was opened.
void add_found(const Subject& subject, const Screen& screen, const Spot& spot, const JobStep* step, SheetParts& parts) {
  if (Json found = found_block(subject, screen, spot, step); !found.is_null()) parts.right.push_back(std::move(found));
  if (Json findings = findings_block(
          screen, findings_like(subject, job::Stage::teardown, where_of(subject.job.shaft, spot.station), "teardown."));
      !findings.is_null())
    parts.right.push_back(std::move(findings));
  if (Json alone = parts_off_alone(subject, screen, teardown_steps(subject)); !alone.is_null())
    parts.right.push_back(std::move(alone));
  if (const std::string why = opening_refused(subject, screen); !why.empty())
    parts.right.push_back(text_block(why, "read", "out"));
  for (Json& block : opened_blocks(subject, screen)) parts.right.push_back(std::move(block));
}

}  // namespace

const std::vector<JobStep>& teardown_steps(const Subject& subject) {
  static const std::vector<JobStep> kNone;
  return subject.standing.way ? subject.standing.way->off : kNone;
}

int first_not_done(const std::vector<JobStep>& steps) {
  const auto it = std::ranges::find_if(steps, [](const JobStep& step) { return !step.done(); });
  return static_cast<int>(it - steps.begin());
}

std::optional<int> station_in_hand(const Subject& subject, std::optional<int> step) {
  const std::vector<JobStep>& steps = teardown_steps(subject);
  const int at = step.value_or(first_not_done(steps) + 1) - 1;
  if (at < 0 || at >= static_cast<int>(steps.size())) return std::nullopt;
  return station_of_step(subject.job.shaft, steps[static_cast<std::size_t>(at)]);
}

std::string stop_words(const Subject& subject, const Screen& screen, const std::vector<JobStep>& steps) {
  std::string last;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (!steps[i].moves.empty()) last = station_name(subject.job.shaft, steps[i].moves.back() - 1, screen.voice, true);
    if (steps[i].step.stop)
      return tell(screen, Code{"view.teardown.stop_point"}, {{"step", static_cast<int>(i) + 1}, {"part", last}});
  }
  return {};
}

std::string before_words(const Screen& screen, const teardown::Step& step) {
  const auto about = [&](std::string_view code) {
    return std::ranges::any_of(step.cautions, [&](const Message& m) { return m.code.id() == code; });
  };
  if (about("teardown.caution_bar")) return tell(screen, Code{"view.teardown.before_pull"});
  if (about("teardown.caution_lift")) return tell(screen, Code{"view.teardown.before_lift"});
  if (about("teardown.caution_belts")) return tell(screen, Code{"view.teardown.before_belts"});
  if (about("teardown.caution_rotor") || about("teardown.caution_rotor_on"))
    return tell(screen, Code{"view.teardown.before_rotor"});
  return tell(screen, Code{"view.teardown.before"});
}

Json done_action(const Subject& subject, const Screen& screen, const std::vector<JobStep>& steps, int at) {
  const JobStep& step = steps[static_cast<std::size_t>(at)];
  std::vector<Json> drafts;
  for (const job::EntryBody& body : job::entries_of_step(step, job::Phase::teardown))
    drafts.push_back(draft(subject, body));
  const int next = std::min(at + 1, static_cast<int>(steps.size()) - 1);
  const std::vector<std::string> parts = parts_moved(subject, step);
  const Code label = parts.empty() ? Code{"view.teardown.done"} : Code{"view.teardown.done_off"};
  return action(tell(screen, label), do_record(std::move(drafts), go_to_step(subject, steps, next)),
                {.tone = "next",
                 .says = tell(screen, Code{"view.teardown.done_says"},
                              {{"what", say(step.step.what, screen.voice)}, {"parts", parts}})});
}

const job::JobStep* way_back_step(const Subject& subject) {
  const job::NextStep& next = subject.standing.next;
  if (next.stage != job::Stage::stack || !subject.standing.way) return nullptr;
  for (const job::JobStep& step : subject.standing.way->back)
    if (!step.done() && step.step.what == next.does) return &step;
  return nullptr;
}

Json put_on_action(const Subject& subject, const Screen& screen, const job::JobStep& step,
                   const std::optional<GoTo>& then) {
  if (step.done() || step.step.before_you_go_on) return nullptr;
  std::vector<Json> drafts;
  for (const job::EntryBody& body : job::entries_of_step(step, job::Phase::assembly))
    drafts.push_back(draft(subject, body));
  return action(tell(screen, Code{"bench.stack.done"}), do_record(std::move(drafts), then), {.tone = "next"});
}

SheetParts teardown_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const std::vector<JobStep>& steps = teardown_steps(subject);
  if (steps.empty()) {
    // A job without a plan can be about a hanger or a spacer alone.
    SheetParts parts = nothing_planned(screen);
    add_found(subject, screen, spot, nullptr, parts);
    return parts;
  }
  const int count = static_cast<int>(steps.size());
  const int first = first_not_done(steps);
  const int at = std::clamp(spot.step.value_or(first + 1) - 1, 0, count - 1);
  SheetParts parts{.title = tell(screen, Code{"view.teardown.step_of"}, {{"step", at + 1}, {"of", count}}),
                   .aside = stop_words(subject, screen, steps)};
  parts.left.push_back(step_json(subject, screen, steps, at));
  add_stuck(subject, screen, steps[static_cast<std::size_t>(at)], parts);
  // The timing map it tells to write on is a sheet of its own: marks are read there, one rotor after the other.
  if (steps[static_cast<std::size_t>(at)].step.what.code == Code{"teardown.read_marks"})
    parts.left.push_back(actions_block(
        {action(tell(screen, Code{"view.teardown.to_marks"}),
                do_go({.stage = job::Stage::timing, .station = subject.job.shaft.station_of_rotor(1)}))}));
  if (first == count) parts.right.push_back(text_block(tell(screen, Code{"view.teardown.all_done"}), "read", "in"));
  std::vector<Json> questions = job_questions(subject, screen, job::Stage::teardown, job::AskedOf::shaft, 0);
  if (!questions.empty())
    parts.right.push_back(asks_block("rows", std::move(questions), tell(screen, Code{"view.before_you_go_on"})));
  const JobStep& now = steps[static_cast<std::size_t>(at)];
  add_found(subject, screen, spot, &now, parts);
  parts.foot.push_back(list_json(subject, screen, steps, at));
  return parts;
}

CellSays teardown_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  const auto at = static_cast<std::size_t>(station);
  const bool off = at < subject.job.state.off.size() && subject.job.state.off[at];
  const job::WayChosen* way = subject.job.state.way;
  const bool open = rotor > 0 && way != nullptr && std::ranges::find(way->open, rotor) != way->open.end();
  if (off && rotor > 0 && way != nullptr) cell.renew = way->way != "failed_only" || open;
  if (open && !off) {
    cell.word = tell(screen, Code{"view.cell.open"});
    cell.tone = "strong";
  }
  return cell;
}

}  // namespace flatwise::view
