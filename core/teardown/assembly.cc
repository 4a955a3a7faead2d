// The way back: the last part off goes on first, and nothing is hidden before what it hides is in.
#include <algorithm>
#include <utility>

#include "core/teardown/hands.h"
#include "core/teardown/steps.h"

namespace flatwise::teardown {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

Step put_on(const Station& s, int index, End end, std::span<const RotorFlats> flats) {
  Step step{.what = {Code{"teardown.put_on"}, {{"part", s.label}}}, .stations = {index}};
  if (s.kind == StationKind::nut) {
    step.what = {Code{"teardown.run_up_nut"}, {{"end", end_word(end)}}};
    step.note = Message{Code{"teardown.torque_later"}, {}};
  } else if (s.kind == StationKind::spacer) {
    step.what = {Code{"teardown.slide_on_spacer"}, {{"part", s.label}}};
  } else if (s.kind == StationKind::rotor) {
    const int rotor = s.rotor + 1;
    const auto known = std::ranges::find(flats, rotor, &RotorFlats::rotor);
    step.what = known == flats.end()
                    ? Message{Code{"teardown.put_rotor_on"}, {{"rotor", rotor}}}
                    : Message{Code{"teardown.put_rotor_on_flats"},
                              {{"rotor", rotor}, {"flat_a", known->flat_a}, {"flat_b", known->flat_b}}};
  }
  return step;
}

void restack(std::vector<Step>& steps, const Shaft& shaft, const Plan& plan, End end,
             std::span<const RotorFlats> flats) {
  std::vector<int> order = off_from(shaft, plan, end);
  std::ranges::reverse(order);
  int rotors_left = static_cast<int>(
      std::ranges::count_if(order, [&](int i) { return shaft.stations()[at(i)].kind == StationKind::rotor; }));
  bool first_rotor = true;
  for (const int i : order) {
    const Station& s = shaft.stations()[at(i)];
    for (const CaptivePart& part : s.fit_before)
      steps.push_back(
          {.what = {Code{"teardown.fit_before"}, {{"part", part.name}, {"count", part.count}, {"station", s.label}}},
           .before_you_go_on = true,
           .stations = {i}});
    steps.push_back(put_on(s, i, end, flats));
    if (s.kind != StationKind::rotor) continue;
    if (std::exchange(first_rotor, false))
      steps.back().cautions.push_back({Code{"teardown.caution_rotor_on"}, {{"mass", any(heaviest(shaft, plan))}}});
    if (--rotors_left > 0) continue;
    // It slides together wrongly timed as well: the last moment at which a look costs nothing.
    steps.push_back(
        {.what = {Code{"teardown.read_marks_again"}, {}}, .tools = {Word{"tool.lamp"}}, .before_you_go_on = true});
  }
}

/// What make_ready() of the tear-down undid, backwards: the shaft is torqued in the frame, as it was cracked there.
void back_into_frame(std::vector<Step>& steps, const Shaft& shaft) {
  steps.push_back(
      {.what = has_hangers(shaft) ? Message{Code{"teardown.lift_in"}, {}} : Message{Code{"teardown.lift_in_plain"}, {}},
       .tools = {Word{"tool.slings"}},
       .cautions = {lift_caution(shaft, all_on(shaft))}});
  steps.push_back({.what = {Code{"teardown.stands_away"}, {}}});
  steps.push_back({.what = {Code{"teardown.belts_on"}, {}},
                   .note = Message{Code{"teardown.belts_as_manual"}, {}},
                   .cautions = {{Code{"teardown.caution_belts"}, {}}}});
  steps.push_back({.what = {Code{"teardown.guard_on"}, {{"end", end_word(shaft.spec().drive_end)}}},
                   .note = Message{Code{"teardown.guard_after_torque"}, {}},
                   .before_you_go_on = true,
                   .after_torque = true});
}

}  // namespace

std::vector<Step> assembly_steps(const Shaft& shaft, const Plan& plan, std::span<const RotorFlats> flats) {
  std::vector<Step> steps;
  if (plan.stations.empty()) return steps;
  steps.push_back({.what = {Code{"teardown.lay_out_again"}, {}}, .cautions = {{Code{"teardown.caution_manual"}, {}}}});
  if (static_cast<int>(plan.rotors.size()) < shaft.rotor_count())
    steps.push_back({.what = {Code{"teardown.strap_off"}, {}}});
  for (const End end : {End::a, End::b}) restack(steps, shaft, plan, end, flats);
  steps.push_back({.what = {Code{"teardown.nothing_left"}, {}}, .before_you_go_on = true});
  back_into_frame(steps, shaft);
  return steps;
}

std::vector<Captive> captive_parts(const Shaft& shaft, const Plan& plan) {
  std::vector<Captive> out;
  for (const End end : {End::a, End::b}) {
    std::vector<int> order = off_from(shaft, plan, end);
    std::ranges::reverse(order);
    for (const int i : order)
      for (const CaptivePart& part : shaft.stations()[at(i)].fit_before) out.push_back({i, part.name, part.count});
  }
  return out;
}

}  // namespace flatwise::teardown
