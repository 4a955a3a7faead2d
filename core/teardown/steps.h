// steps.h: a plan as steps for the hands: the tear-down, and the way back. Codes and arguments; words/ makes the
// sentences.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/teardown/split.h"
#include "core/units/code.h"

namespace flatwise::teardown {

struct Step {
  Message what;                        ///< The verb and the part.
  std::optional<Message> note = {};    ///< Said beside it in small.
  std::vector<Word> tools = {};        ///< "tool.puller"; empty when hands will do.
  std::vector<Message> labels = {};    ///< What to write on the parts: "S2", "rotor 4", "tray A".
  std::vector<Message> cautions = {};  ///< To be read before the step.
  bool stop = false;                   ///< The stop point: nothing more comes off.
  bool before_you_go_on = false;       ///< Must be answered before the next step.
  bool after_torque = false;           ///< Waits until the nuts are pulled: a bar must reach them.
  std::vector<int> stations = {};      ///< Indices; empty where the step is about the whole shaft.
};

/// The tear-down in the order of the hands: read the marks, make it safe, crack the nut in the frame, lift out, unstack
/// from end A and then from end B as far as the plan says, stop, tie back what stays, clean, lay out, count,
/// photograph, enter.
///
/// Model      A shaft out of its frame skips guard, belts, stands and hangers. Parts come off in the order they stand; a
///            spacer and the rotor behind it are one step after the first rotor. The weight said is that of the rotors
///            on the shaft: the definition has no other masses, and the caution says so.
[[nodiscard]] std::vector<Step> tear_down_steps(const Shaft& shaft, const State& state, const Plan& plan);

/// Flats that a rotor goes back on, where the timing is known.
struct RotorFlats {
  int rotor = 0, flat_a = 0, flat_b = 0;
};
/// The way back: the last part off goes on first; parts that a station is about to hide (fit_before) stand before it as
/// questions. The nut is run up by hand, the trays are counted, the shaft goes back into its frame: lift, hangers, stands, belts, guard.
/// Torque has its own order; what waits for it is marked (after_torque) and stands last.
///
/// Model      The shaft came out of its frame, as tear_down_steps() has it from all_on().
[[nodiscard]] std::vector<Step> assembly_steps(const Shaft& shaft, const Plan& plan,
                                               std::span<const RotorFlats> flats = {});

/// A part that must be in before the station that hides it goes back on.
struct Captive {
  int station = 0;
  std::string name;
  int count = 0;
};
/// Those of the stations that a plan takes off, in the order they are met on the way back.
[[nodiscard]] std::vector<Captive> captive_parts(const Shaft& shaft, const Plan& plan);

}  // namespace flatwise::teardown
