// Turns: how far each nut should go from snug, whether it did, and what it went on the second pull after the run. Stands after the
// torque of the nuts, whose workings it reads.
#include <algorithm>

#include "core/fasteners/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"
#include "job/turns.h"

namespace flatwise::job::rules {
namespace {

WorkingPtr shown_before(const StageReport& report, std::string_view figure, End nut) {
  for (const Shown& shown : report.workings)
    if (shown.working->figure == figure && shown.about == letter_of(nut)) return shown.working;
  return nullptr;
}

template <class Pull>
const Pull* last_of(const std::vector<Pull>& pulls, End nut) {
  const Pull* last = nullptr;
  for (const Pull& pull : pulls)
    if (pull.nut == nut) last = &pull;
  return last;
}

const Nut* other_than(const Shaft& shaft, const Nut& nut) {
  for (const Nut& other : shaft.spec().nuts)
    if (other.end != nut.end) return &other;
  return nullptr;
}

/// Somebody told an angle, and the definition does not say what it is to be held against.
void cannot_hold(const TurnOfNut& turn, const Nut& nut, StageReport& report) {
  const Args args{{"nut", word_of_end(nut.end)}, {"keys", turn.wanted}};
  report.findings.push_back(
      {Code{"torque.turn_needs"}, Severity::cannot_tell, args, {}, Message{Code{"torque.give_in_definition"}, args}});
}

/// What is to be expected, for whoever has not opened the working.
void say_expected(const Nut& nut, const TurnOfNut& turn, StageReport& report) {
  const auto angle = [&](std::string_view name) { return any(radians(turn.expected->si(name))); };
  report.findings.push_back({Code{"torque.turn_to_expect"},
                             Severity::note,
                             {{"nut", word_of_end(nut.end)},
                              {"least", angle("turn-least")},
                              {"greatest", angle("turn-greatest")},
                              {"snug", any(*nut.snug)},
                              {"loss", any(Force::from_si(turn.settled->si("loss")))},
                              {"most", any(most_by_settling(*turn.settled))}},
                             {},
                             std::nullopt});
}

/// What it clamps with by the angle: friction decides only the part at snug.
void show_by_angle(const Facts& facts, const Nut& nut, const TurnOfNut& turn, StageReport& report) {
  const WorkingPtr snug = preload_at_snug(facts.shaft, nut),
                   by_torque = shown_before(report, "torque-preload", nut.end);
  const Input* turned = turn.expected->input("turned");
  if (turn.after_other || snug == nullptr || turned == nullptr) return;
  std::vector<Input> in{given("pitch", any(nut.thread.pitch), nut_origin(facts.shaft, nut.end, "thread")),
                        *turned,
                        computed("snug-least", "preload-least", snug),
                        computed("snug-greatest", "preload-greatest", snug),
                        computed("shaft-stiffness", "shaft-stiffness", turn.springs),
                        computed("stack-stiffness", "stack-stiffness", turn.springs)};
  if (by_torque != nullptr)
    if (const Input* proof = by_torque->input("proof-load")) in.push_back(*proof);
  Results<Working> working = use(fasteners::figures(), "angle-turn", std::move(in));
  if (!working) return;  // A turn within its own uncertainty: the band has said what there is to say.
  const auto by_angle = std::make_shared<const Working>(*std::move(working));
  report.workings.push_back({{}, letter_of(nut.end), by_angle});
  take_findings(report, {}, *by_angle, {{"nut", word_of_end(nut.end)}});
}

void judge_second(const Facts& facts, const Nut& nut, const TurnOfNut& turn, StageReport& report) {
  const SecondPull* pull = last_of(facts.bench.second_pulls, nut.end);
  if (pull == nullptr) return;
  if (turn.settled == nullptr) return cannot_hold(turn, nut, report);
  const WorkingPtr judged =
      show(report, {}, letter_of(nut.end), fasteners::figures(), "second-pull",
           {measured("turned", pull->turned.value.value, text_of(pull->turned.place), pull->turned.typed),
            computed("expected", "turn", turn.settled)});
  if (judged != nullptr)
    take_judged(report, {}, *judged, {find_gauge(facts.workshop, pull->gauge)}, facts.bench.date,
                {{"nut", word_of_end(nut.end)}});
}

void turn_of_nut(const Facts& facts, const Nut& nut, StageReport& report) {
  const TorquePull* pull = last_of(facts.bench.torques, nut.end);
  const Nut* other = other_than(facts.shaft, nut);
  PulledSoFar so_far{.reached = shown_before(report, "torque-reached", nut.end),
                     .preload = shown_before(report, "torque-preload", nut.end)};
  if (other != nullptr) so_far.other_preload = shown_before(report, "torque-preload", other->end);
  if (pull != nullptr && pull->turned) so_far.turned = &*pull->turned;
  const TurnOfNut turn = turn_of(facts.shaft, nut, so_far);
  for (const WorkingPtr& working : {turn.springs, turn.expected, turn.settled})
    if (working != nullptr) report.workings.push_back({{}, letter_of(nut.end), working});
  if (so_far.turned != nullptr && turn.expected == nullptr) cannot_hold(turn, nut, report);
  if (turn.expected != nullptr && turn.settled != nullptr) say_expected(nut, turn, report);
  if (turn.expected != nullptr && turn.judged) {
    take_judged(report, {}, *turn.expected, {find_gauge(facts.workshop, pull->gauge)}, facts.bench.date,
                {{"nut", word_of_end(nut.end)}});
    show_by_angle(facts, nut, turn, report);
  }
  judge_second(facts, nut, turn, report);
}

}  // namespace

void turns(const Facts& facts, StageReport& report) {
  for (const Nut& nut : facts.shaft.spec().nuts) turn_of_nut(facts, nut, report);
}

}  // namespace flatwise::job::rules
