#include "core/teardown/hands.h"

#include <algorithm>

namespace flatwise::teardown {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

Message tray_label(End end) { return {Code{"teardown.label_tray"}, {{"end", end_word(end)}}}; }
Message part_label(const Station& s) { return {Code{"teardown.label_part"}, {{"part", s.label}}}; }
Message rotor_label(int rotor) { return {Code{"teardown.label_rotor"}, {{"rotor", rotor}}}; }

Step take_off(const Station& s, int index, End end) {
  Step step{.what = {Code{"teardown.take_off"}, {{"part", s.label}}}, .labels = {tray_label(end)}, .stations = {index}};
  switch (s.kind) {
    case StationKind::nut:
      step.what = {Code{"teardown.spin_off_nut"}, {{"end", end_word(end)}}};
      break;
    case StationKind::spacer:
      step.what = {Code{"teardown.slide_off_spacer"}, {{"part", s.label}}};
      step.labels = {part_label(s)};
      break;
    case StationKind::rotor:
      step.what = {Code{"teardown.draw_rotor"}, {{"rotor", s.rotor + 1}}};
      step.tools = {Word{"tool.puller"}};
      step.labels = {rotor_label(s.rotor + 1)};
      break;
    case StationKind::hanger:
    case StationKind::pulley:
      step.what = {Code{"teardown.draw"}, {{"part", s.label}}};
      step.tools = {Word{"tool.puller"}};
      break;
    case StationKind::washer:
    case StationKind::shoulder:
    case StationKind::other:
      break;
  }
  return step;
}

/// Nut with the washer behind it, spacer with the rotor behind it: one reach of the hand.
bool joined(const Station& first, const Station& second, bool rotor_seen) {
  if (first.kind == StationKind::nut) return second.kind == StationKind::washer;
  return rotor_seen && first.kind == StationKind::spacer && second.kind == StationKind::rotor;
}

Step take_off_both(const Station& first, const Station& second, std::vector<int> stations, End end) {
  Step step{.what = {Code{"teardown.spin_off_nut_and_washer"}, {{"end", end_word(end)}}},
            .labels = {tray_label(end)},
            .stations = std::move(stations)};
  if (first.kind == StationKind::nut) return step;
  step.what = {Code{"teardown.slide_spacer_draw_rotor"}, {{"part", first.label}, {"rotor", second.rotor + 1}}};
  step.tools = {Word{"tool.puller"}};
  step.labels = {part_label(first), rotor_label(second.rotor + 1)};
  return step;
}

}  // namespace

Word end_word(End end) { return end == End::a ? Word{"end.a"} : Word{"end.b"}; }

std::vector<int> off_from(const Shaft& shaft, const Plan& plan, End end) {
  const int size = static_cast<int>(shaft.stations().size());
  std::vector<int> out;
  for (const int i : plan.stations)
    if (end == End::a ? i < plan.split.from_a : i >= size - plan.split.from_b) out.push_back(i);
  if (end == End::b) std::ranges::reverse(out);
  return out;
}

Mass heaviest(const Shaft& shaft, const Plan& plan) {
  Mass most;
  for (const int number : plan.rotors) most = std::max(most, shaft.rotor(number).mass);
  return most;
}

Message lift_caution(const Shaft& shaft, const State& state) {
  Mass rotors;
  int count = 0;
  for (int number = 1; number <= shaft.rotor_count(); ++number) {
    if (!state.on_shaft[at(shaft.station_of_rotor(number))]) continue;
    rotors = rotors + shaft.rotor(number).mass;
    ++count;
  }
  return {Code{"teardown.caution_lift"}, {{"rotors", count}, {"mass", any(rotors)}}};
}

bool has_hangers(const Shaft& shaft) {
  return std::ranges::any_of(shaft.stations(), [](const Station& s) { return s.kind == StationKind::hanger; });
}

void unstack(std::vector<Step>& steps, const Shaft& shaft, const Plan& plan, End end) {
  const std::vector<int> order = off_from(shaft, plan, end);
  bool rotor_seen = false;
  for (std::size_t k = 0; k < order.size(); ++k) {
    const Station& s = shaft.stations()[at(order[k])];
    const Station* next = k + 1 < order.size() ? &shaft.stations()[at(order[k + 1])] : nullptr;
    if (next != nullptr && joined(s, *next, rotor_seen)) {
      steps.push_back(take_off_both(s, *next, {order[k], order[k + 1]}, end));
      ++k;
      continue;
    }
    steps.push_back(take_off(s, order[k], end));
    if (s.kind != StationKind::rotor || rotor_seen) continue;
    rotor_seen = true;
    steps.back().cautions.push_back({Code{"teardown.caution_rotor"}, {{"mass", any(heaviest(shaft, plan))}}});
  }
}

}  // namespace flatwise::teardown
