// torque_tools.h: on the torque sheet, the ways to pull a nut: common tools, and the one that is really at hand. Inside view/ only.
#pragma once

#include "view/bench_parts.h"

namespace flatwise::view {

inline constexpr double kMultiplier = 4;  ///< The commonest ratio of a hand multiplier.

/// A tool as it is typed and drawn.
struct Tool {
  std::string wrench, extension;  ///< Extension empty: straight on.
  double multiplier = 1;
  bool own = false;  ///< Told at the bench, not one of the common ones.
};
/// One way to pull a nut, worked out by the figure of the wrench.
struct Way {
  Tool tool;
  WorkingPtr working;
  bool too_much = false;  ///< For one person, by the definition's policy.
};

/// A length that parses: one of the common tools, or one that the record has.
[[nodiscard]] Entered length_typed(const std::string& text);
/// The common tools, round in the units the bench works in, then the one that was told.
[[nodiscard]] std::vector<Way> ways_of(const Subject& subject, const Nut& nut, UnitSystem units);
/// The way the eye is on; else the tool that was told; else the first that one person can hold.
[[nodiscard]] std::size_t chosen_of(const std::vector<Way>& ways, const Spot& spot);
/// How hard a nut that was pulled to its torque is cracked loose with a bar: the bar to scale with the force at the grip, the same in
/// words with what one person can hold and the way that spares him. Without a way: no drawing, no words.
struct Crack {
  Json drawing;
  std::string says;
};
[[nodiscard]] Crack crack_of(const Subject& subject, const Screen& screen, const Nut& nut);
[[nodiscard]] std::string way_name(const Screen& screen, const Way& way);
[[nodiscard]] Json ways_table(const Subject& subject, const Screen& screen, const std::vector<Way>& ways,
                              std::size_t chosen);
/// Length, extension and ratio of the tool at hand, typed before the pull. `way`: where the length comes from while only a ratio is
/// told.
[[nodiscard]] std::vector<Json> own_tool_fields(const Subject& subject, const Screen& screen, const Nut& nut,
                                                const Way& way);
/// Why the tool that was told cannot be reckoned with; empty where it can, or none was told.
[[nodiscard]] std::string own_tool_refused(const Subject& subject, const Screen& screen, const Nut& nut);

}  // namespace flatwise::view
