#include "study/study.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/dynamics/pattern_list.h"
#include "core/timing/map.h"
#include "core/units/guards.h"
#include "core/units/parse.h"
#include "job/arrange.h"

namespace flatwise::study {
namespace {

constexpr Force kMostGround = newtons(1e6);
constexpr Angle kMostAzimuth = degrees(30);

/// What was typed in a field of the study, inside its range; none where nothing was. A problem goes to the others.
std::optional<AnyQuantity> read(const std::optional<Typed>& typed, AnyQuantity most, std::string_view field,
                                std::vector<Problem>& problems) {
  if (!typed) return std::nullopt;
  const Result<Entered> entered = parse_quantity(typed->text, most.kind, std::string{field});
  std::optional<Problem> problem;
  if (!entered)
    problem = entered.error();
  else
    problem = outside(std::string{field}, entered->value, 0, most.si);
  if (!problem) return entered->value;
  problem->given = typed->text;
  problem->place = typed->place;
  problems.push_back(*std::move(problem));
  return std::nullopt;
}

Errors errors_of(const Order& order, std::vector<Problem>& problems) {
  Errors errors;
  if (const auto share = read(order.error_share, any_ratio(1), "error_share", problems))
    errors.are.share = share->si, errors.share_said = true;
  if (const auto azimuth = read(order.error_azimuth, any(kMostAzimuth), "error_azimuth", problems))
    errors.are.azimuth = radians(azimuth->si), errors.azimuth_said = true;
  return errors;
}

/// The definition with the ground under each rotor, as one more load on it.
Results<Shaft> with_ground(const Shaft& shaft, const std::optional<AnyQuantity>& ground) {
  if (!ground) return shaft;
  ShaftSpec spec = shaft.spec();
  spec.loads.push_back({.station = std::nullopt, .force = newtons(ground->si), .direction = Angle{}});
  return Shaft::make(std::move(spec));
}

std::vector<Message> notes_of(const Study& study) {
  std::vector<Message> notes;
  const Args errors{{"share", any_ratio(study.errors.are.share)}, {"azimuth", any(study.errors.are.azimuth)}};
  const bool said = study.errors.share_said || study.errors.azimuth_said;
  notes.push_back({said ? Code{"study.note_floor_said"} : Code{"study.note_floor"}, errors});
  if (dynamics::spinning_of(study.shaft) == dynamics::Spinning::held) notes.push_back({Code{"study.note_held"}, {}});
  if (!dynamics::planes_of(study.shaft).hangers) notes.push_back({Code{"study.note_planes"}, {}});
  const bool bearing = std::ranges::any_of(study.outcomes, [](const Outcome& o) { return o.bearing.has_value(); });
  const bool ground =
      std::ranges::any_of(study.outcomes, [](const Outcome& o) { return o.bearing && o.bearing->ground; });
  if (bearing) notes.push_back({Code{"study.note_bearing"}, {}});
  if (bearing && !ground) notes.push_back({Code{"study.note_no_ground"}, {}});
  const auto speed = [](const Way& way) { return way.shaft.spec().speed; };
  const auto lean = [](const Way& way) { return way.shaft.rotor(1).lean; };  // A way sets that of every rotor.
  if (std::ranges::any_of(study.ways, [&](const Way& w) { return speed(w) != speed(study.ways.front()); }))
    notes.push_back({Code{"study.note_speed"}, {}});
  if (std::ranges::any_of(study.ways, [&](const Way& w) { return lean(w) != lean(study.ways.front()); }))
    notes.push_back({Code{"study.note_lean"}, {}});
  return notes;
}

/// The same ways of another shaft.
std::optional<std::vector<Outcome>> outcomes_of(const Shaft& shaft, const std::optional<AnyQuantity>& ground,
                                                std::span<const TypedWay> typed, const Errors& errors) {
  const Results<Shaft> base = with_ground(shaft, ground);
  if (!base) return std::nullopt;
  const Results<std::vector<Way>> ways = read_ways(*base, typed);
  if (!ways) return std::nullopt;
  std::vector<Outcome> outcomes;
  for (const Way& way : *ways) {
    Results<Outcome> outcome = outcome_of(way, errors);
    if (!outcome) return std::nullopt;
    outcomes.push_back(*std::move(outcome));
  }
  return outcomes;
}

/// Half A of each rotor from rotor 1 on: two that agree in it are one arrangement, turned.
std::vector<int> offsets_of(const Pattern& pattern, const Shaft& shaft) {
  std::vector<int> offsets;
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor)
    offsets.push_back(timing::pattern_offset(pattern, shaft.flats(), rotor));
  return offsets;
}

struct Usual {
  Word name;
  Pattern pattern;
};

std::vector<Usual> usual_patterns(const Shaft& shaft, const dynamics::StatedErrors& errors) {
  const int n = shaft.flats();
  std::vector<Usual> out;
  const auto pattern = [&](Pattern::Rule rule, int step, std::vector<int> flats) {
    return Pattern{rule, step, std::move(flats), shaft.spec().pattern.first_flat};
  };
  if (n % 2 == 0) out.push_back({Word{"study.way.facing"}, pattern(Pattern::Rule::facing, 0, {})});
  if (n % 3 == 0) out.push_back({Word{"study.way.thirds"}, pattern(Pattern::Rule::step, n / 3, {})});
  if (const auto quiet = job::arrange(shaft, {.errors = errors}, 2))
    out.push_back({Word{"study.way.quiet"},
                   pattern(Pattern::Rule::listed, 0, dynamics::flats_of(quiet->rows.front().row.places))});
  out.push_back({Word{"study.way.defined"}, shaft.spec().pattern});
  return out;
}

}  // namespace

std::vector<TypedWay> usual_ways(const Shaft& shaft, const Voice& voice, const dynamics::StatedErrors& errors) {
  std::vector<TypedWay> ways;
  std::vector<std::vector<int>> seen;
  if (shaft.rotor_count() > 1)
    for (const Usual& usual : usual_patterns(shaft, errors)) {
      std::vector<int> offsets = offsets_of(usual.pattern, shaft);
      if (std::ranges::find(seen, offsets) != seen.end()) continue;
      seen.push_back(std::move(offsets));
      ways.push_back({.name = {word(usual.name.id, voice)}, .pattern = Typed{pattern_text(usual.pattern)}});
    }
  if (ways.size() >= kFewestWays) return ways;
  const AnyQuantity slower{0.9 * shaft.spec().speed.radians_per_second(), Kind::angular_speed};
  return {{.name = {word("study.way.defined", voice)}, .speed = Typed{defined_text(shaft, "speed")}},
          {.name = {word("study.way.slower", voice)}, .speed = Typed{format_quantity(slower)}}};
}

Results<Study> study(const Shaft& shaft, const Order& order, const Voice& voice) {
  std::vector<Problem> problems;
  const Errors errors = errors_of(order, problems);
  const auto ground = read(order.ground, any(kMostGround), "ground", problems);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  const Results<Shaft> base = with_ground(shaft, ground);
  if (!base) return tl::unexpected(base.error());
  const std::vector<TypedWay> typed = order.ways.empty() ? usual_ways(*base, voice, errors.are) : order.ways;
  Results<std::vector<Way>> ways = read_ways(*base, typed);
  if (!ways) return tl::unexpected(std::move(ways.error()));
  Study out{.name = order.name, .shaft = *base, .ways = *std::move(ways), .errors = errors};
  if (out.name.empty())
    out.name = say(Message{Code{"study.name_made"}, {{"shaft", shaft.spec().name}, {"ways", out.count()}}}, voice);
  for (std::size_t i = 0; i < out.ways.size(); ++i) {
    Results<Outcome> outcome = outcome_of(out.ways[i], errors);
    if (outcome) {
      out.outcomes.push_back(*std::move(outcome));
      continue;
    }
    for (Problem& problem : outcome.error()) {
      problem.field = "ways[" + std::to_string(i) + "]." + problem.field;
      problems.push_back(std::move(problem));
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  out.rows = rows_of(out.ways, out.outcomes);
  out.plots = plots_of(out.ways, out.outcomes);
  out.advice = advice_of(out.ways, out.outcomes);
  out.notes = notes_of(out);
  add_doubts(shaft, [&](const Shaft& s) { return outcomes_of(s, ground, typed, errors); }, out);
  return out;
}

}  // namespace flatwise::study
