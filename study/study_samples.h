// study_samples.h: an invented shaft of five rotors and ways of it, for tests. Header only; not part of the library.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "core/shaft/shaft_samples.h"
#include "study/study.h"

namespace flatwise::study {

inline Voice inch_voice() {
  Voice voice;
  voice.units = UnitSystem::inch;
  return voice;
}

/// Five like rotors, 160 mm apart, hangers 839 mm apart; 480 /min, rolling at 6 km/h on 230 mm.
inline Shaft five() {
  ShaftSpec spec = sample_shaft({.rotors = 5});
  spec.travel = Speed::from_si(6.0 / 3.6);
  spec.rolling_radius = millimetres(230);
  return *Shaft::make(std::move(spec));
}

inline TypedWay way(const std::string& name, const std::string& field, const std::string& value) {
  TypedWay out{.name = {name}};
  *field_of(out, field) = Typed{value};
  return out;
}
inline TypedWay stands(const std::string& name, const std::string& pattern) { return way(name, "pattern", pattern); }

inline Order three_ways() {
  return {.ways = {stands("Facing", "facing"), stands("Thirds", "step 2"), stands("The quiet one", "1 3 4 5 1")}};
}
inline Study done(const Order& order, const Shaft& shaft = five()) {
  Results<Study> s = study(shaft, order);
  EXPECT_TRUE(s.has_value()) << (s ? "" : say(s.error().front(), {}).read);
  return *std::move(s);
}
inline const Row& row(const Study& s, RowKey key) {
  for (const Row& r : s.rows)
    if (r.key == key) return r;
  ADD_FAILURE() << "no row " << name_of(key);
  return s.rows.front();
}
inline bool has_row(const Study& s, RowKey key) {
  return std::ranges::any_of(s.rows, [&](const Row& r) { return r.key == key; });
}
inline const PlotData& plot(const Study& s, PlotKey key) {
  for (const PlotData& p : s.plots)
    if (p.key == key) return p;
  ADD_FAILURE() << "no plot " << name_of(key);
  return s.plots.front();
}

}  // namespace flatwise::study
