#include "core/timing/frame.h"

#include <algorithm>
#include <string>
#include <utility>

namespace flatwise::timing {

int Frame::wanted(const Reference& reference, int number, Half half) const {
  const int offset = offsets[static_cast<std::size_t>(number) - 1];
  const int flat_a = turned_flat(reference.first_flat, reference.as_listed ? offset : -offset, flats);
  return half == Half::a ? flat_a : turned_flat(flat_a, flats / 2, flats);
}

std::vector<Reference> Frame::references() const {
  if (first_flat) return {{.first_flat = *first_flat, .as_listed = true}};
  std::vector<Reference> out;
  for (const bool as_listed : {true, false}) {
    if (!as_listed && !hand_free) continue;
    for (int flat = 1; flat <= flats; ++flat) out.push_back({.first_flat = flat, .as_listed = as_listed});
  }
  return out;
}

bool mirror_differs(const std::vector<int>& offsets, int flats) {
  return std::ranges::any_of(offsets, [&](int offset) { return 2 * offset % flats != 0; });
}

Frame frame_of(const Shaft& shaft) {
  const Pattern& pattern = shaft.spec().pattern;
  Frame frame{.flats = shaft.flats(), .offsets = {}, .first_flat = pattern.first_flat};
  for (int number = 1; number <= shaft.rotor_count(); ++number)
    frame.offsets.push_back(pattern_offset(pattern, frame.flats, number));
  frame.hand_free = hand_is_free(shaft) && mirror_differs(frame.offsets, frame.flats);
  return frame;
}

std::optional<int> out_by(const Frame& frame, const Reading& reading, const Reference& reference, int number,
                          Half half) {
  const auto& read = mark(marks_of(reading, number), half);
  if (!read) return std::nullopt;
  return flats_out(*read, frame.wanted(reference, number, half), frame.flats);
}

bool set_by_fixed(const Frame& frame, const Reading& reading, const Reference& reference) {
  for (int number = 1; number <= frame.rotors(); ++number) {
    if (!marks_of(reading, number).fixed) continue;
    for (const Half half : {Half::a, Half::b})
      if (out_by(frame, reading, reference, number, half) == 0) return true;
  }
  return false;
}

bool agrees(const Frame& frame, const Reading& reading, const Reference& reference, int number) {
  const auto a = out_by(frame, reading, reference, number, Half::a);
  const auto b = out_by(frame, reading, reference, number, Half::b);
  return (a || b) && a.value_or(0) == 0 && b.value_or(0) == 0;
}

namespace {

std::string field_of(int number, const char* what) { return "rotor " + std::to_string(number) + what; }

std::optional<Problem> bad_mark(const std::optional<int>& flat, int flats, std::string field) {
  if (!flat || (*flat >= 1 && *flat <= flats)) return std::nullopt;
  return Problem{Code{"timing.flat_range"},
                 std::move(field),
                 std::to_string(*flat),
                 {{"least", 1}, {"greatest", flats}},
                 std::nullopt};
}

std::optional<Problem> bad_rotor(const Shaft& shaft, const Reading& reading, int number) {
  const Marks& marks = marks_of(reading, number);
  if (auto problem = bad_mark(marks.a, shaft.flats(), field_of(number, ".half_a"))) return problem;
  if (auto problem = bad_mark(marks.b, shaft.flats(), field_of(number, ".half_b"))) return problem;
  if (!marks.fixed) return std::nullopt;
  const Args args{{"rotor", number}};
  if (!reading.state.on_shaft[static_cast<std::size_t>(shaft.station_of_rotor(number))])
    return Problem{Code{"timing.fixed_but_off"}, field_of(number, ".fixed"), {}, args, std::nullopt};
  if (reading.state.new_set[static_cast<std::size_t>(number) - 1])
    return Problem{Code{"timing.fixed_but_new_set"}, field_of(number, ".fixed"), {}, args, std::nullopt};
  return std::nullopt;
}

}  // namespace

std::optional<Problem> problem_with(const Shaft& shaft, const Reading& reading) {
  const int flats = shaft.flats();
  if (flats % 2 != 0)
    return Problem{Code{"timing.odd_flats"}, "flats", std::to_string(flats), {{"flats", flats}}, std::nullopt};
  if (reading.rotors.size() != static_cast<std::size_t>(shaft.rotor_count()))
    return Problem{Code{"timing.reading_size"},
                   "marks",
                   std::to_string(reading.rotors.size()),
                   {{"wanted", shaft.rotor_count()}},
                   std::nullopt};
  if (auto problem = teardown::problem_with(shaft, reading.state, reading.prices)) return problem;
  for (int number = 1; number <= shaft.rotor_count(); ++number)
    if (auto problem = bad_rotor(shaft, reading, number)) return problem;
  return std::nullopt;
}

}  // namespace flatwise::timing
