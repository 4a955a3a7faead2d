// ways.h: one shaft done in several ways, as a person says them: a name, and what is other than in the definition.
//
//   const Results<std::vector<Way>> ways = read_ways(shaft, {{.name = {"Facing"}, .pattern = Typed{"facing"}},
//                                                            {.name = {"Thirds"}, .pattern = Typed{"step 2"}}});
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"

namespace flatwise::study {

inline constexpr int kFewestWays = 2, kMostWays = 6;
inline constexpr std::size_t kLongestName = 60;

/// What somebody typed, and where, when that was in a file.
struct Typed {
  std::string text;
  std::optional<Place> place = std::nullopt;
  friend bool operator==(const Typed& a, const Typed& b) { return a.text == b.text; }
};

/// One way as typed. What is not there stays as the definition has it.
struct TypedWay {
  Typed name;
  std::optional<Typed> pattern =
      std::nullopt;  ///< "facing", "step 2", or the flat of half A of every rotor: "1 3 4 5 1".
  std::optional<Typed> speed = std::nullopt;  ///< "540 /min"
  std::optional<Typed> lean = std::nullopt;   ///< "3°", of every rotor.
  std::optional<Typed> clearance =
      std::nullopt;                         ///< A group of new bearings, "C3", or what is there as it runs, "20 µm".
  std::optional<Typed> fit = std::nullopt;  ///< Of every hub, "100 N7", or the interference, "25 µm".
};
/// "pattern", "speed", "lean", "clearance", "fit".
[[nodiscard]] std::span<const std::string_view> way_fields();
[[nodiscard]] std::optional<Typed>* field_of(TypedWay& way, std::string_view name);  ///< nullptr: no such field.
[[nodiscard]] const std::optional<Typed>* field_of(const TypedWay& way, std::string_view name);

/// A way that can be done: the shaft with its changes made.
struct Way {
  TypedWay typed;
  Shaft shaft;
  std::optional<Length> clearance = std::nullopt;     ///< Said as it runs: not computed from group and fit.
  std::optional<Length> interference = std::nullopt;  ///< Said: not computed from the limits of hub and ring.
  std::vector<Message> changes = {};                  ///< Against the definition; empty where there is none.

  [[nodiscard]] const std::string& name() const { return typed.name.text; }
  [[nodiscard]] bool as_defined() const { return changes.empty(); }
  /// Neither lean nor speed is other than in the definition: they do the work.
  [[nodiscard]] bool works_as_defined() const;
};

/// Makes the ways of a shaft.
///
/// Refuses    Every problem at once, each with the field "ways[i].FIELD" (i from 0): fewer than two ways or more than six; a
///            name that is empty, longer than 60 letters or there twice; a way that says nothing but its name; two ways that come to
///            the same; a pattern, quantity, group or fit that cannot be read; a speed not above nought or over 6000 /min; a lean
///            outside 0.1° to 30°; flats that the profile does not have; what Shaft::make() refuses of the changed shaft.
[[nodiscard]] Results<std::vector<Way>> read_ways(const Shaft& shaft, std::span<const TypedWay> typed);

/// The arrangement of a shaft as a way says it: "facing", "step 2", "1 3 4 5 1".
[[nodiscard]] std::string pattern_text(const Pattern& pattern);
/// What the definition has of a field of a way, as it would be typed.
[[nodiscard]] std::string defined_text(const Shaft& shaft, std::string_view field);

}  // namespace flatwise::study
