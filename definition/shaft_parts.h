// shaft_parts.h: how the parts of a shaft file are read. Internal to this folder.
#pragma once

#include "core/shaft/shaft.h"
#include "definition/tree.h"

namespace flatwise::definition {

inline constexpr std::size_t kMostStations = 10'000;  ///< Of a file; no shaft has a hundredth of it.

/// What is read of a shaft file, and where its parts stood.
struct ShaftFile {
  explicit ShaftFile(File& f) : file{f} {}

  File& file;
  ShaftSpec spec;
  std::vector<Section> rotor_sections;       ///< One a rotor, in order: its own table over [rotor].
  std::vector<Section> nut_sections;         ///< One a nut.
  std::vector<Section> station_sections;     ///< One a line of stack.order.
  std::vector<std::size_t> line_of_station;  ///< Index into station_sections.

  [[nodiscard]] Section section(std::string_view key);
};

/// [rotor] and its inner tables. `stated` is the clamped length of the rotor's line, where one is given.
[[nodiscard]] Rotor read_rotor(ShaftFile& to, const Section& rotor, std::optional<Length> stated);
/// A part number and a price; the price's currency must be that of all others.
[[nodiscard]] Priced read_priced(ShaftFile& to, const Section& section, std::string_view part_key = "part");
/// Fills stations, rotors and nuts from [stack], [between], [minutes] and [nut].
void read_stack(ShaftFile& to);
/// What carries the clamping force, as far as the table states it.
[[nodiscard]] Tube read_tube(const Section& section);
/// Data of the nut at one end.
[[nodiscard]] Nut read_nut(ShaftFile& to, End end, int nuts);

/// Limits by `tolerance`, or `above` and `below`; else `fallback` either side; else ISO 2768-1 medium by length.
struct ToleranceRule {
  Length nominal;
  std::optional<Length> fallback;  ///< [stack] tolerance, where given.
  Origin fallback_origin = {};
};
[[nodiscard]] Toleranced read_toleranced(const Section& section, const ToleranceRule& rule, Origin* origin = nullptr);

}  // namespace flatwise::definition
