#include "job/next/parts.h"

#include <algorithm>
#include <map>

#include "job/kit.h"
#include "job/seen.h"

namespace flatwise::job::standing_parts {
namespace {

bool contains(const std::vector<int>& list, int value) { return std::ranges::find(list, value) != list.end(); }

int station_of_nut(const Shaft& shaft, End end) {
  const auto& stations = shaft.stations();
  for (std::size_t i = 0; i < stations.size(); ++i)
    if (stations[i].nut >= 0 && shaft.spec().nuts[static_cast<std::size_t>(stations[i].nut)].end == end)
      return static_cast<int>(i);
  return -1;
}

/// Of a question: its number is that of the rotor, of the nut's end or of the station, as the question is asked.
Where where_of_answer(const Shaft& shaft, const Answered& answer) {
  const auto all = questions();
  const auto it = std::ranges::find(all, std::string_view{answer.question}, &Question::id);
  if (it == all.end() || answer.number <= 0) return {};
  switch (it->of) {
    case AskedOf::rotor_that_came_off:
      return at_rotor(answer.number);
    case AskedOf::captive_station:
      return {Where::Part::station, answer.number};
    case AskedOf::nut:
      return at_station(station_of_nut(shaft, answer.number == 1 ? End::a : End::b));
    case AskedOf::shaft:
      break;
  }
  return {};
}

void take_customer(const JobState& state, Course& course) {
  const CustomerSaid* said = customer_on_way(state);
  course.customer_yes = said != nullptr && said->reply == Reply::yes;
  course.customer_no = said != nullptr && said->reply == Reply::no;
}

void take_play(const Facts& facts, Course& course) {
  for (int r = 1; r <= facts.shaft.rotor_count(); ++r)
    if (std::ranges::none_of(facts.bench.plays, [&](const PlayReading& p) { return p.rotor == r; }))
      course.not_played.push_back(r);
}

/// The rotors that the way chosen takes off at least: those asked for, or all that no obstacle holds.
const std::vector<int>& rotors_of(const Course& course, const WayChosen& way) {
  return way.way == "all" && course.way ? course.way->plan.rotors : way.open;
}

void take_way(const Facts& facts, const JobState& state, Course& course) {
  course.way_chosen = state.way != nullptr;
  if (!course.way_chosen) return;
  for (const int r : rotors_of(course, *state.way))
    if (!contains(facts.bench.came_off, r)) course.to_come_off.push_back(r);
}

void take_off(const Facts& facts, const JobState& state, Course& course) {
  const auto& stations = facts.shaft.stations();
  for (std::size_t i = 0; i < stations.size() && i < state.off.size(); ++i)
    if (state.off[i]) course.stations_off.push_back(stations[i].label);
}

/// Ordered and not all there yet.
void take_orders(const JobState& state, std::vector<std::string>& missing) {
  for (const auto& [number, count] : parts_due(state))
    if (count > 0 && std::ranges::find(missing, number) == missing.end()) missing.push_back(number);
}

void take_parts(const Facts& facts, const JobState& state, Course& course) {
  std::vector<int> rotors = facts.bench.came_off;
  for (const int r : course.to_come_off) rotors.push_back(r);
  course.wanted = parts_wanted(kit(facts.shaft, rotors, facts.bench.reused_rings), facts.workshop, facts.bench.counted);
  for (const PartWanted& part : course.wanted)
    if (part.short_of()) course.parts_missing.push_back(part.part.part_number);
  take_orders(state, course.parts_missing);
}

}  // namespace

Where where_of(const Shaft& shaft, const EntryBody& body) {
  return std::visit(
      [&](const auto& b) -> Where {
        using Body = std::decay_t<decltype(b)>;
        if constexpr (std::is_same_v<Body, Answered>)
          return where_of_answer(shaft, b);
        else if constexpr (requires { b.part.number; })
          return b.part;
        else if constexpr (requires { b.rotor; })
          return at_rotor(b.rotor);
        else if constexpr (requires { b.station; })
          return {b.station > 0 ? Where::Part::station : Where::Part::shaft, b.station};
        else if constexpr (std::is_same_v<Body, NutPulled> || std::is_same_v<Body, NutPulledAgain> ||
                           std::is_same_v<Body, ToolTaken>)
          return at_station(station_of_nut(shaft, b.nut));
        else
          return {};
      },
      body);
}

Where where_of_nut(const Shaft& shaft, End end) {
  const int station = station_of_nut(shaft, end);
  return station < 0 ? Where{} : at_station(station);
}

Course course_of(const Facts& facts, const JobState& state) {
  Course course;
  course.way = chosen_way(facts.shaft, facts.workshop, state);
  // A job without a plan can be about a hanger or a spacer alone; in one with a plan the first rotor counts.
  course.opened = !facts.bench.came_off.empty() || (state.way == nullptr && !facts.bench.parts_off.empty());
  take_way(facts, state, course);
  take_customer(state, course);
  take_play(facts, course);
  take_off(facts, state, course);
  take_parts(facts, state, course);
  return course;
}

namespace {

/// A step that moved something is done in fact once all of it has moved.
bool done_in_fact(const JobState& state, Phase phase, const JobStep& step) {
  if (step.moves.empty()) return false;
  return std::ranges::all_of(step.moves, [&](int station) {
    const auto i = static_cast<std::size_t>(station) - 1;
    return phase == Phase::teardown ? i < state.came_off.size() && state.came_off[i]
                                    : i < state.off.size() && !state.off[i];
  });
}

}  // namespace

PhaseSteps steps_of(const Course& course, const JobState& state, Phase phase) {
  PhaseSteps out;
  if (!course.way) return out;
  const std::vector<JobStep>& steps = course.way->steps(phase);
  out.kept = std::ranges::any_of(steps, [](const JobStep& s) { return s.answer != nullptr; });
  for (const JobStep& step : steps) {
    if (step.done() || done_in_fact(state, phase, step)) continue;
    const bool agreed = step.answer != nullptr && step.answer->agreed;
    (agreed ? out.refused : out.left).push_back(&step);
  }
  return out;
}

}  // namespace flatwise::job::standing_parts
