// Stack. Found first: what must be answered before going on; after the length is read, the answer and the joint to look at.
#include <algorithm>
#include <functional>

#include "core/timing/check.h"
#include "drawing/bars.h"
#include "job/marks.h"
#include "job/steps.h"
#include "view/bench_parts.h"
#include "view/teardown_steps.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr double kWide = 108, kBars = 108;  // On a telephone no wider than its column.

void add(Json& blocks, Json block) {
  if (!block.is_null()) blocks.push_back(std::move(block));
}

// ---- Before you go on.

/// Spacers that came off, from end A.
std::vector<const Station*> spacers_off(const Subject& subject) {
  std::vector<const Station*> out;
  const auto& stations = subject.job.shaft.stations();
  for (std::size_t i = 0; i < stations.size(); ++i)
    if (stations[i].kind == StationKind::spacer && station_came_off(subject, static_cast<int>(i)))
      out.push_back(&stations[i]);
  return out;
}

Json captive_questions(const Subject& subject, const Screen& screen) {
  std::vector<Json> questions;
  const auto& stations = subject.job.shaft.stations();
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const int number = static_cast<int>(i) + 1;
    for (Json& q : job_questions(subject, screen, Stage::stack, job::AskedOf::captive_station, number)) {
      std::vector<std::string> parts;
      for (const CaptivePart& part : stations[i].fit_before)
        parts.push_back(tell(screen, Code{"bench.stack.captive_part"}, {{"part", part.name}, {"count", part.count}}));
      q["label"] = tell_big(screen, Code{"bench.stack.captive"}, {{"parts", parts}});
      q["detail"] = tell_big(screen, Code{"bench.stack.captive_why"},
                             {{"part", station_name(subject.job.shaft, static_cast<int>(i), screen.voice, true)}});
      questions.push_back(std::move(q));
    }
  }
  return questions.empty() ? Json()
                           : asks_block("rows", std::move(questions), tell(screen, Code{"bench.stack.before"}));
}

/// Which label stands on which place, by taps.
Json label_questions(const Subject& subject, const Screen& screen) {
  const std::vector<const Station*> spacers = spacers_off(subject);
  std::vector<Json> questions;
  for (const Station* place : spacers) {
    std::vector<Option> options;
    for (const Station* label : spacers)
      options.push_back({label->label, job::LabelPutBack{place->number, label->label}, {}});
    options.push_back({tell(screen, Code{"bench.stack.no_label"}), job::LabelPutBack{place->number, {}}, {}});
    questions.push_back(question(
        subject, screen, {.label = tell(screen, Code{"bench.stack.place"}, {{"label", place->label}})}, options));
  }
  return questions.empty() ? Json()
                           : asks_block("chips", std::move(questions), tell(screen, Code{"bench.stack.labels"}));
}

/// Two spacers at one place, or none, are told where the place is tapped on the shaft.
Json counts_block(const Subject& subject, const Screen& screen, const Spot& spot) {
  Json counted = spacers_question(subject, screen, job::Phase::assembly, spot.station);
  if (!counted.is_null()) return asks_block("chips", {std::move(counted)}, tell(screen, Code{"bench.spacers.head"}));
  return spacers_off(subject).empty() ? Json() : text_block(tell(screen, Code{"bench.spacers.tap"}));
}

// ---- The way back, one step at a time.

std::optional<timing::Reference> reference_of(const Subject& subject) {
  const auto reading = job::marks_reading(subject.job.facts());
  if (!reading) return std::nullopt;
  const auto check = timing::check(subject.job.shaft, *reading);
  if (!check || check->unread_halves > 0) return std::nullopt;
  return check->plan.reference;
}

Json caution_of(const Screen& screen, const teardown::Step& step, const Message& message) {
  return caution_block(before_words(screen, step), {say(message, screen.voice)}, tell(screen, Code{"bench.rule"}));
}

Json step_of(const Subject& subject, const Screen& screen, const Spot& spot, const std::vector<job::JobStep>& steps) {
  if (steps.empty()) return nullptr;
  const int count = static_cast<int>(steps.size());
  int at = 0;
  while (at + 1 < count && steps[static_cast<std::size_t>(at)].done()) ++at;
  if (spot.step && *spot.step >= 1 && *spot.step <= count) at = *spot.step - 1;
  const job::JobStep& now = steps[static_cast<std::size_t>(at)];
  StepIs is;
  is.number = at + 1;
  is.of = count;
  is.says = say(now.step.what, screen.voice);
  if (now.step.note) is.note = say(*now.step.note, screen.voice);
  for (const Word& tool : now.step.tools) is.tools.push_back(word(tool.id, screen.voice));
  for (const Message& label : now.step.labels) is.labels.push_back(say(label, screen.voice));
  for (const Message& message : now.step.cautions) is.cautions.push_back(caution_of(screen, now.step, message));
  is.stop = now.step.stop;
  if (now.step.before_you_go_on) {
    is.question = yes_no(subject, screen, {.label = is.says}, [&](Reply reply) {
      return job::EntryBody{job::StepDone{job::Phase::assembly, now.key, reply}};
    });
    if (now.done() && at + 1 < count)
      is.action = action(tell(screen, Code{"bench.stack.next"}), do_go({.step = at + 2}), {.tone = "next"});
  } else if (!now.done()) {
    is.action =
        put_on_action(subject, screen, now, at + 1 < count ? std::optional{GoTo{.step = at + 2}} : std::nullopt);
  } else if (at + 1 < count) {
    is.action = action(tell(screen, Code{"bench.stack.next"}), do_go({.step = at + 2}));
  }
  if (at > 0) is.back = action(tell(screen, Code{"bench.stack.back"}), do_go({.step = at}));
  return step_block(is);
}

// ---- The length.

Json length_keypad(const Subject& subject, const Screen& screen) {
  FieldIs is;
  is.title = tell(screen, Code{"bench.stack.length"});
  is.label = is.title;
  is.body = job::StackRead{};
  is.into = "length";
  is.gauge_into = "gauge";
  is.gauges = Gauge::Use::length;
  is.hint = tell(screen, Code{"bench.stack.by_hand"});
  return keypad_block({field(subject, screen, is)});
}

Code state_word(const std::string& state) {
  if (state == "seated") return Code{"bench.stack.seated"};
  if (state == "not_seated") return Code{"bench.stack.not_seated"};
  if (state == "contradiction") return Code{"bench.stack.contradiction"};
  return Code{"answer.cannot_tell"};
}

drawing::DisplayList scale_of(const Subject& subject, const Screen& screen, const Working& seated, Answer answer) {
  const AnyQuantity least = input_of(seated, "band-least").value(),
                    greatest = input_of(seated, "band-greatest").value();
  const AnyQuantity open = output_of(seated, "open-from"), read = input_of(seated, "measured").value();
  const double middle = (least.si + greatest.si) / 2;
  return drawing::length_scale({.least = least.si,
                                .greatest = greatest.si,
                                .open_from = open.si,
                                .one_open = middle + subject.job.shaft.spec().policies.open_joint_step.si(),
                                .value = read.si,
                                .expanded = input_of(seated, "measured-u").value().si,
                                .answer = answer,
                                .least_words = figure_only(least, screen.voice),
                                .greatest_words = figure_only(greatest, screen.voice),
                                .open_words = figure_only(open, screen.voice),
                                .contradiction = tell(screen, Code{"bench.stack.range_short"}),
                                .seated = tell(screen, Code{"bench.stack.range_seated"}),
                                .one_joint = tell(screen, Code{"bench.stack.range_open"})},
                               kWide);
}

Json length_answer(const Subject& subject, const Screen& screen) {
  const job::Shown* shown = shown_of(subject, Stage::stack, "seated", {});
  const auto of_the_count = [](const Finding* f) {
    return f->instruction && (f->instruction->code == Code{"stack.count_first"} ||
                              f->instruction->code == Code{"stack.count_the_spacers"});
  };
  auto findings = findings_like(subject, Stage::stack, {}, "stack.");
  std::erase_if(findings, [](const Finding* f) {
    return f->code == Code{"stack.joint_chance"} || f->code.id().find("spacer") != std::string_view::npos ||
           f->code.id().find("label") != std::string_view::npos || f->code == Code{"stack.order_not_noted"};
  });
  for (const Finding* f : findings_like(subject, Stage::stack, {}, "job.gauge")) findings.push_back(f);
  // While the count of the spacers is wrong the length says nothing about the joints: that is told and done first.
  std::ranges::stable_partition(findings, of_the_count);
  if (shown == nullptr || !shown->counts()) return findings_block(screen, findings);
  const WorkingPtr& seated = shown->working;
  const Answer answer = *shown->counts();
  const AnyQuantity read = input_of(*seated, "measured").value();
  const double u = input_of(*seated, "measured-u").value().si;
  const auto* state = std::get_if<std::string>(&seated->output("state")->value);
  return answer_block(
      {.sign = sign_of(answer),
       .word = answer == Answer::cannot_tell ? answer_word(answer, screen.voice) : tell(screen, state_word(*state)),
       .says = sentences(screen, findings),
       .value = with_u(read, u, screen.voice),
       .other = with_u(read, u, screen.voice, true),
       .bar = scale_of(subject, screen, *seated, answer),
       .does = instruction(screen, findings),
       .working = seated},
      screen.voice);
}

/// The worst case is told beside the band that decides.
Json worst_case(const Subject& subject, const Screen& screen) {
  const WorkingPtr length = working_of(subject, Stage::stack, "stack-length", {});
  if (length == nullptr) return nullptr;
  return facts_block(
      {{.caption = tell(screen, Code{"bench.stack.worst"}),
        .value = range_words(output_of(*length, "worst-least"), output_of(*length, "worst-greatest"), screen.voice),
        .working = length}},
      screen.voice);
}

// ---- Chances, joint by joint.

struct Joint {
  int number = 0;
  double chance = 0;
  std::string left, right;
};
std::vector<Joint> joints_said(const Subject& subject) {
  std::vector<Joint> out;
  for (const Finding* f : findings_like(subject, Stage::stack, {}, "stack.joint_chance")) {
    Joint joint;
    for (const Arg& a : f->args) {
      if (a.name == "joint") joint.number = static_cast<int>(std::get<std::int64_t>(a.value));
      if (a.name == "chance") joint.chance = std::get<AnyQuantity>(a.value).si;
      if (a.name == "left") joint.left = std::get<std::string>(a.value);
      if (a.name == "right") joint.right = std::get<std::string>(a.value);
    }
    out.push_back(std::move(joint));
  }
  return out;
}

/// How many are as likely as the first: which of them to try first is then nobody's knowledge.
int as_likely(const std::vector<Joint>& joints) {
  return static_cast<int>(
      std::ranges::count_if(joints, [&](const Joint& j) { return j.chance >= (1 - 1e-6) * joints.front().chance; }));
}

/// Where the joints lie along the shaft, in metres: between the clamped parts, a rotor being its two halves.
std::vector<double> joint_places(const Shaft& shaft) {
  std::vector<double> out;
  const auto& stations = shaft.stations();
  for (std::size_t i = 0; i < stations.size(); ++i) {
    if (stations[i].kind == StationKind::nut) continue;
    const int at = static_cast<int>(i);
    if (stations[i].kind == StationKind::rotor) out.push_back(shaft.middle_of(at).si());
    const bool more = i + 1 < stations.size() && stations[i + 1].kind != StationKind::nut;
    if (more) out.push_back(shaft.start_of(at).si() + stations[i].length.nominal.si());
  }
  return out;
}

Json chances_block(const Subject& subject, const Screen& screen, const std::vector<Joint>& joints) {
  const Shaft& shaft = subject.job.shaft;
  const std::vector<double> places = joint_places(shaft);
  drawing::ChanceBars bars{.from = 0, .to = shaft.total_length().si(), .joints = {}, .names = {}};
  for (const Joint& joint : joints) {
    if (joint.number < 1 || static_cast<std::size_t>(joint.number) > places.size()) continue;
    drawing::JointChance bar;
    bar.joint = joint.number;
    bar.at = places[static_cast<std::size_t>(joint.number) - 1];
    bar.chance = joint.chance;
    bar.first = &joint - joints.data() < as_likely(joints);
    bar.words = &joint == &joints.front() ? tell(screen, Code{"bench.percent"}, {{"chance", any_ratio(joint.chance)}})
                                          : std::string{};
    bars.joints.push_back(std::move(bar));
  }
  for (int r = 1; r <= shaft.rotor_count(); ++r)
    bars.names.push_back({shaft.rotor_position(r).si(), std::to_string(r)});
  const Joint& first = joints.front();
  return drawing_block(drawing::chance_bars(bars, kBars),
                       tell(screen, Code{"bench.stack.chances_says"},
                            {{"left", first.left}, {"right", first.right}, {"chance", any_ratio(first.chance)}}),
                       {}, {.caption = tell(screen, Code{"bench.stack.chances"}), .wide = true});
}

std::string feeler_gauge(const Subject& subject) {
  for (const Gauge& gauge : subject.job.workshop.gauges)
    if (gauge.use == Gauge::Use::feeler) return gauge.id;
  return {};
}

Json feeler_questions(const Subject& subject, const Screen& screen, const std::vector<Joint>& joints) {
  const std::string gauge = feeler_gauge(subject);
  std::vector<Json> questions;
  for (const Joint& joint : joints) {
    const auto body = [&](bool passed) {
      return job::EntryBody{job::FeelerTried{joint.number, passed, std::nullopt, gauge}};
    };
    questions.push_back(
        question(subject, screen,
                 {.label = tell_big(screen, Code{"bench.stack.feeler"}, {{"left", joint.left}, {"right", joint.right}}),
                  .detail = tell(screen, Code{"bench.percent_open"}, {{"chance", any_ratio(joint.chance)}})},
                 {{tell(screen, Code{"bench.stack.goes_in"}), body(true), "out"},
                  {tell(screen, Code{"bench.stack.does_not"}), body(false), {}}}));
  }
  return asks_block("rows", std::move(questions), tell(screen, Code{"bench.stack.feelers"}));
}

void add_chances(const Subject& subject, const Screen& screen, SheetParts& parts) {
  const std::vector<Joint> joints = joints_said(subject);
  const WorkingPtr open = working_of(subject, Stage::stack, "open-joint", {});
  if (joints.empty() || open == nullptr) return;
  parts.foot.push_back(chances_block(subject, screen, joints));
  const int alike = as_likely(joints);
  parts.foot.push_back(text_block(alike == 1 ? tell(screen, Code{"bench.stack.look_first"},
                                                    {{"left", joints.front().left}, {"right", joints.front().right}})
                                             : tell(screen, Code{"bench.stack.look_at_all"},
                                                    {{"count", alike}, {"chance", any_ratio(joints.front().chance)}}),
                                  "head", "next"));
  parts.foot.push_back(
      facts_block({{.caption = tell(screen, Code{"bench.stack.all_home"}),
                    .value = tell(screen, Code{"bench.percent"}, {{"chance", output_of(*open, "all-home")}}),
                    .tone = "strong",
                    .other = tell(screen, Code{"bench.stack.rests_on"}),
                    .working = open}},
                  screen.voice));
  parts.foot.push_back(feeler_questions(subject, screen, joints));
}

bool about_order(const Finding& f) {
  const std::string_view id = f.code.id();
  return id.find("spacer") != std::string_view::npos || id.find("label") != std::string_view::npos ||
         id == "stack.order_not_noted" || id.starts_with("job.");
}

/// What was counted at the places of spacers, wherever they are.
std::vector<const Finding*> spacers_counted(const Subject& subject, Stage stage) {
  std::vector<const Finding*> out;
  if (const job::StageReport* report = report_of(subject, stage))
    for (const Finding& f : report->findings)
      if (f.where != Where{} && f.code.id().find("spacer") != std::string_view::npos) out.push_back(&f);
  return out;
}

/// The labels say that another spacer stands at this place.
bool stands_wrong(const Subject& subject, const std::string& place) {
  return std::ranges::any_of(findings_at(subject, Stage::stack, {}), [&](const Finding* f) {
    const auto wanted = std::ranges::find(f->args, std::string_view{"wanted"}, &Arg::name);
    if (f->severity != Severity::out || wanted == f->args.end()) return false;
    const auto* places = std::get_if<std::vector<std::string>>(&wanted->value);
    return places != nullptr && std::ranges::find(*places, place) != places->end();
  });
}

}  // namespace

SheetParts stack_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.stack.title"});
  parts.aside = tell(screen, Code{"bench.stack.aside"});
  if (std::ranges::none_of(job::stations_off(subject.job.shaft, subject.job.state.bench), std::identity{})) {
    parts.left.push_back(text_block(tell(screen, Code{"bench.stack.nothing"})));
    return parts;
  }
  add(parts.head, captive_questions(subject, screen));
  const std::vector<job::JobStep> steps = job::job_steps(subject.job.shaft, subject.job.workshop, subject.job.state,
                                                         job::Phase::assembly, reference_of(subject));
  add(parts.left, step_of(subject, screen, spot, steps));
  add(parts.left, parts_off_alone(subject, screen, steps));
  add(parts.left, label_questions(subject, screen));
  add(parts.left, counts_block(subject, screen, spot));
  auto order = findings_at(subject, Stage::stack, {});
  std::erase_if(order, [](const Finding* f) { return !about_order(*f) || f->code.id().starts_with("job.gauge"); });
  for (const Finding* f : spacers_counted(subject, Stage::stack)) order.push_back(f);
  for (const Finding* f : spacers_counted(subject, Stage::teardown))
    parts.left.push_back(text_block(say(*f, screen.voice), "note"));
  add(parts.left, findings_block(screen, order));
  parts.right.push_back(length_keypad(subject, screen));
  // The scale of lengths goes across the whole sheet, the chances straight below it.
  add(parts.foot, length_answer(subject, screen));
  add(parts.foot, worst_case(subject, screen));
  add_chances(subject, screen, parts);
  return parts;
}

CellSays stack_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  if (!station_came_off(subject, station)) return cell;
  const auto at = static_cast<std::size_t>(station);
  const bool off = at < subject.job.state.off.size() && subject.job.state.off[at];
  const std::string& label = subject.job.shaft.stations()[at].label;
  const Severity worst = stands_wrong(subject, label)
                             ? Severity::out
                             : worst_of(findings_at(subject, Stage::stack, where_of(subject.job.shaft, station)));
  if (worst != Severity::note) {
    cell.flag = flag_of(worst);
    cell.word = tell(screen, worst == Severity::out ? Code{"bench.cell.stop"} : Code{"bench.cell.ask"});
  } else if (!off) {
    cell.word = tell(screen, Code{"bench.cell.back"});
  }
  // The first joint to look at: its two parts are flagged on the strip too.
  const std::vector<Joint> joints = joints_said(subject);
  const auto is = [&](const std::string& part) { return part == label || part == label + "A" || part == label + "B"; };
  if (!joints.empty() && as_likely(joints) == 1 && worst == Severity::note &&
      (is(joints.front().left) || is(joints.front().right))) {
    cell.word = tell(screen, Code{"bench.cell.look"});
    cell.flag = "unknown";
  }
  return cell;
}

}  // namespace flatwise::view
