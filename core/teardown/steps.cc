#include "core/teardown/steps.h"

#include <algorithm>
#include <utility>

#include "core/teardown/hands.h"

namespace flatwise::teardown {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

const Station& station_at(const Shaft& shaft, int index) { return shaft.stations()[at(index)]; }

bool takes_off(const Shaft& shaft, const Plan& plan, StationKind kind, End end) {
  const int size = static_cast<int>(shaft.stations().size());
  return std::ranges::any_of(plan.stations, [&](int i) {
    const bool from_end = end == End::a ? i < plan.split.from_a : i >= size - plan.split.from_b;
    return from_end && station_at(shaft, i).kind == kind;
  });
}

bool nut_on(const Shaft& shaft, const State& state, End end) {
  for (std::size_t i = 0; i < state.on_shaft.size(); ++i) {
    const Station& s = shaft.stations()[i];
    if (state.on_shaft[i] && s.kind == StationKind::nut && shaft.spec().nuts[at(s.nut)].end == end) return true;
  }
  return false;
}

/// Rotors to stand the shaft under: about a quarter in from each end, the same from A as from B.
std::vector<std::int64_t> stands(const Shaft& shaft) {
  const int count = shaft.rotor_count();
  const int near_a = (count + 3) / 4;
  const int near_b = count + 1 - near_a;
  if (near_a == near_b) return {near_a};
  return {near_a, near_b};
}

void crack_nuts(std::vector<Step>& steps, const Shaft& shaft, const State& state, const Plan& plan) {
  for (const End end : {End::a, End::b}) {
    if (nut_on(shaft, state, end) && !takes_off(shaft, plan, StationKind::nut, end))
      steps.push_back({.what = {Code{"teardown.look_at_nut"}, {{"end", end_word(end)}}}});
  }
  for (const End end : {End::a, End::b}) {
    if (!takes_off(shaft, plan, StationKind::nut, end)) continue;
    const Args args{{"end", end_word(end)}};
    steps.push_back({.what = state.in_frame ? Message{Code{"teardown.crack_nut"}, args}
                                            : Message{Code{"teardown.slacken_nut"}, args},
                     .tools = {Word{"tool.socket"}, Word{"tool.long_bar"}},
                     .cautions = {{Code{"teardown.caution_bar"}, {}}}});
  }
}

void make_ready(std::vector<Step>& steps, const Shaft& shaft, const State& state, const Plan& plan) {
  steps.push_back({.what = {Code{"teardown.read_marks"}, {}}, .tools = {Word{"tool.lamp"}, Word{"tool.brush"}}});
  if (state.in_frame) {
    const std::vector<std::int64_t> under = stands(shaft);
    const Word drive = end_word(shaft.spec().drive_end);
    steps.push_back({.what = {Code{"teardown.guard_off"}, {{"end", drive}}}});
    steps.push_back({.what = {Code{"teardown.belts_off"}, {}}, .cautions = {{Code{"teardown.caution_belts"}, {}}}});
    steps.push_back(
        {.what = {Code{"teardown.stand_under"}, {{"rotors", under}, {"count", static_cast<int>(under.size())}}},
         .tools = {Word{"tool.stands"}}});
  }
  crack_nuts(steps, shaft, state, plan);
  if (state.in_frame) {
    steps.push_back({.what = has_hangers(shaft) ? Message{Code{"teardown.lift_out"}, {}}
                                                : Message{Code{"teardown.lift_out_plain"}, {}},
                     .tools = {Word{"tool.slings"}},
                     .cautions = {lift_caution(shaft, state)}});
  }
  steps.front().cautions.insert(steps.front().cautions.begin(), {Code{"teardown.caution_isolate"}, {}});
}

/// Rotors that stay, in order.
std::vector<std::int64_t> staying(const Shaft& shaft, const State& state, const Plan& plan) {
  std::vector<std::int64_t> out;
  for (int number = 1; number <= shaft.rotor_count(); ++number) {
    if (state.on_shaft[at(shaft.station_of_rotor(number))] &&
        std::ranges::find(plan.rotors, number) == plan.rotors.end())
      out.push_back(number);
  }
  return out;
}

Step stop_step(const std::vector<std::int64_t>& stay) {
  Step stop{.what = {Code{"teardown.stop_bare"}, {}}, .stop = true};
  if (stay.empty()) return stop;
  const bool row = stay.size() > 2;  // Rotors that stay always stand in one row.
  stop.what = row ? Message{Code{"teardown.stop_row"}, {{"first", stay.front()}, {"last", stay.back()}}}
                  : Message{Code{"teardown.stop_rotors"}, {{"rotors", stay}, {"count", static_cast<int>(stay.size())}}};
  stop.note = Message{Code{"teardown.sets_reference"}, {{"rotors", stay}, {"count", static_cast<int>(stay.size())}}};
  return stop;
}

/// What is now outermost at an opened end: spacers and the first rotor that stays. They must not creep.
void tie_back(std::vector<Step>& steps, const Shaft& shaft, const State& state, const Plan& plan, End end) {
  const int size = static_cast<int>(shaft.stations().size());
  const int opened = end == End::a ? plan.split.from_a : plan.split.from_b;
  if (opened == 0) return;
  std::vector<std::string> parts;
  std::vector<int> stations;
  for (int k = opened; k < size; ++k) {
    const int i = end == End::a ? k : size - 1 - k;
    if (!state.on_shaft[at(i)]) continue;
    stations.push_back(i);
    const Station& s = station_at(shaft, i);
    if (s.kind != StationKind::rotor) {
      parts.push_back(s.label);
      continue;
    }
    const int rotor = s.rotor + 1;
    const Message what = parts.empty() ? Message{Code{"teardown.tie_back"}, {{"rotor", rotor}}}
                                       : Message{Code{"teardown.tie_back_with"}, {{"rotor", rotor}, {"parts", parts}}};
    steps.push_back({.what = what, .tools = {Word{"tool.strap"}}, .stations = stations});
    return;
  }
}

Step count_step(const Shaft& shaft, const Plan& plan) {
  const auto count = [&](StationKind kind) {
    return static_cast<int>(
        std::ranges::count_if(plan.stations, [&](int i) { return station_at(shaft, i).kind == kind; }));
  };
  Args args{{"parts", static_cast<int>(plan.stations.size())}};
  const auto add = [&](const char* name, int n) {
    if (n > 0) args.emplace_back(name, n);
  };
  const int rotors = count(StationKind::rotor);
  add("rotors", rotors);
  add("halves", 2 * rotors);
  add("spacers", count(StationKind::spacer));
  add("hangers", count(StationKind::hanger));
  add("washers", count(StationKind::washer));
  add("nuts", count(StationKind::nut));
  add("pulleys", count(StationKind::pulley));
  add("others", count(StationKind::shoulder) + count(StationKind::other));
  return {.what = {Code{"teardown.count"}, std::move(args)}, .before_you_go_on = true};
}

void finish(std::vector<Step>& steps, const Shaft& shaft, const Plan& plan) {
  steps.push_back({.what = {Code{"teardown.clean_and_lay_out"}, {}}});
  steps.push_back(count_step(shaft, plan));
  steps.push_back({.what = {Code{"teardown.photograph"}, {}}, .tools = {Word{"tool.tablet"}}});
  steps.push_back({.what = {Code{"teardown.enter_what_was_found"}, {}}, .tools = {Word{"tool.tablet"}}});
}

}  // namespace

std::vector<Step> tear_down_steps(const Shaft& shaft, const State& state, const Plan& plan) {
  std::vector<Step> steps;
  if (plan.stations.empty()) return steps;
  make_ready(steps, shaft, state, plan);
  for (const End end : {End::a, End::b}) unstack(steps, shaft, plan, end);
  const auto stay = staying(shaft, state, plan);
  steps.push_back(stop_step(stay));
  if (!stay.empty())
    for (const End end : {End::a, End::b}) tie_back(steps, shaft, state, plan, end);
  finish(steps, shaft, plan);
  return steps;
}

}  // namespace flatwise::teardown
