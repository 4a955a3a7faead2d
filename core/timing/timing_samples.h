// timing_samples.h: invented shafts and readings for the tests of this folder. Header only; not part of the library.
#pragma once

#include <gtest/gtest.h>

#include <utility>
#include <vector>

#include "core/shaft/shaft_samples.h"
#include "core/timing/check.h"

namespace flatwise::timing {

inline Shaft made(ShaftSpec spec) {
  auto shaft = Shaft::make(std::move(spec));
  EXPECT_TRUE(shaft) << (shaft ? "" : shaft.error().front().code.id());
  return *std::move(shaft);
}

inline Pattern facing() { return {}; }
inline Pattern step(int flats) {
  Pattern p;
  p.rule = Pattern::Rule::step;
  p.step_flats = flats;
  return p;
}
inline Pattern listed(std::vector<int> flats) {
  Pattern p;
  p.rule = Pattern::Rule::listed;
  p.flats = std::move(flats);
  return p;
}

inline Shaft sample(int rotors, int flats, Pattern pattern, std::optional<int> first_flat = std::nullopt) {
  ShaftSpec spec = sample_shaft({.rotors = rotors, .flats = flats});
  spec.pattern = std::move(pattern);
  spec.pattern.first_flat = first_flat;
  return made(spec);
}

/// All marks as the map has them, everything on the shaft, nothing fixed.
inline Reading as_mapped(const Shaft& shaft, std::optional<Reference> reference = std::nullopt) {
  Reading r{.rotors = {}, .state = teardown::all_on(shaft), .prices = {.rate_per_hour = 60.0, .currency = "USD"}};
  const auto m = map(shaft, reference);
  EXPECT_TRUE(m);
  for (const RotorMarks& marks : m->rotors) r.rotors.push_back({.a = marks.flat_a, .b = marks.flat_b});
  return r;
}

inline std::optional<int>& mark_in(Reading& r, int rotor, Half half) {
  Marks& m = r.rotors[static_cast<std::size_t>(rotor) - 1];
  return half == Half::a ? m.a : m.b;
}
inline void turn_in(Reading& r, const Shaft& shaft, int rotor, Half half, int by) {
  auto& mark = mark_in(r, rotor, half);
  mark = turned_flat(*mark, by, shaft.flats());
}

inline bool has(const Check& check, Code code) {
  for (const Finding& f : check.findings)
    if (f.code == code) return true;
  return false;
}
inline const Finding* find(const Check& check, Code code) {
  for (const Finding& f : check.findings)
    if (f.code == code) return &f;
  return nullptr;
}

}  // namespace flatwise::timing
