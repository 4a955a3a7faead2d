#include "core/timing/map.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/timing/frame.h"

namespace flatwise::timing {
namespace {

std::optional<Problem> bad_reference(const Shaft& shaft, const Reference& reference) {
  const int flats = shaft.flats();
  const std::string given = std::to_string(reference.first_flat);
  if (reference.first_flat < 1 || reference.first_flat > flats)
    return Problem{Code{"timing.flat_range"}, "first_flat", given, {{"least", 1}, {"greatest", flats}}, std::nullopt};
  const auto& fixed = shaft.spec().pattern.first_flat;
  if (fixed && reference.first_flat != *fixed)
    return Problem{Code{"timing.first_flat_fixed"}, "first_flat", given, {{"flat", *fixed}}, std::nullopt};
  if (!reference.as_listed && !hand_is_free(shaft))
    return Problem{Code{"timing.hand_fixed"}, "hand", {}, {}, std::nullopt};
  return std::nullopt;
}

Message odd_or_even(bool odd, const RotorMarks& m) {
  const Args args{{"flat_a", m.flat_a}, {"flat_b", m.flat_b}};
  return odd ? Message{Code{"timing.rule_odd"}, args} : Message{Code{"timing.rule_even"}, args};
}

/// Rotors on the same flat in one line; where no two are alike that is a line a rotor.
std::vector<Message> groups(const std::vector<RotorMarks>& rotors) {
  std::vector<Message> out;
  std::vector<int> said;
  for (const RotorMarks& m : rotors) {
    if (std::ranges::find(said, m.flat_a) != said.end()) continue;
    said.push_back(m.flat_a);
    std::vector<std::int64_t> alike;
    for (const RotorMarks& other : rotors)
      if (other.flat_a == m.flat_a) alike.push_back(other.rotor);
    const int count = static_cast<int>(alike.size());
    out.push_back({Code{"timing.rule_group"},
                   {{"rotors", std::move(alike)}, {"count", count}, {"flat_a", m.flat_a}, {"flat_b", m.flat_b}}});
  }
  return out;
}

std::vector<Message> rule_in_words(const Frame& frame, const std::vector<RotorMarks>& rotors) {
  bool facing = rotors.size() > 1;
  for (std::size_t i = 0; i < rotors.size(); ++i)
    facing = facing && frame.offsets[i] == (i % 2 == 0 ? 0 : frame.flats / 2);
  if (!facing) return groups(rotors);
  return {odd_or_even(true, rotors[0]), odd_or_even(false, rotors[1])};
}

}  // namespace

int pattern_offset(const Pattern& pattern, int flats, int number) {
  const int before = number - 1;
  if (pattern.rule == Pattern::Rule::facing) return before % 2 * (flats / 2);
  if (pattern.rule == Pattern::Rule::step) return before % flats * pattern.step_flats % flats;
  return (pattern.flats[static_cast<std::size_t>(before)] - pattern.flats.front() + flats) % flats;
}

int wanted_flat(const Pattern& pattern, int flats, const Reference& reference, int number, Half half) {
  const int offset = pattern_offset(pattern, flats, number);
  const int flat_a = turned_flat(reference.first_flat, reference.as_listed ? offset : -offset, flats);
  return half == Half::a ? flat_a : turned_flat(flat_a, flats / 2, flats);
}

bool turn_is_free(const Shaft& shaft) { return !shaft.spec().pattern.first_flat; }

bool hand_is_free(const Shaft& shaft) {
  return turn_is_free(shaft) && shaft.spec().pattern.rule == Pattern::Rule::step;
}

Result<Map> map(const Shaft& shaft, std::optional<Reference> reference) {
  const Pattern& pattern = shaft.spec().pattern;
  const int flats = shaft.flats();
  if (flats % 2 != 0)
    return tl::unexpected(
        Problem{Code{"timing.odd_flats"}, "flats", std::to_string(flats), {{"flats", flats}}, std::nullopt});
  if (!reference) {
    const int listed = pattern.rule == Pattern::Rule::listed ? pattern.flats.front() : 1;
    reference = Reference{.first_flat = pattern.first_flat.value_or(listed), .as_listed = true};
  }
  if (auto problem = bad_reference(shaft, *reference)) return tl::unexpected(std::move(*problem));
  const Frame frame = frame_of(shaft);
  Map out{.reference = *reference,
          .turn_free = turn_is_free(shaft),
          .hand_free = frame.hand_free,
          .rotors = {},
          .rule = {}};
  for (int number = 1; number <= frame.rotors(); ++number) {
    const int a = frame.wanted(*reference, number, Half::a), b = frame.wanted(*reference, number, Half::b);
    out.rotors.push_back({.rotor = number,
                          .flat_a = a,
                          .flat_b = b,
                          .place_a_from_b = place_seen_from(End::b, a, flats),
                          .place_b_from_b = place_seen_from(End::b, b, flats)});
  }
  out.rule = rule_in_words(frame, out.rotors);
  return out;
}

std::vector<Angle> tilt_azimuths(const Map& map, int flats) {
  std::vector<Angle> tilt;
  for (const RotorMarks& rotor : map.rotors) tilt.push_back(azimuth_of_flat(rotor.flat_a, flats));
  return tilt;
}

}  // namespace flatwise::timing
