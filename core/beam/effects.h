// effects.h: whose fault it is: what each rotor does to each hanger, and what each timing mistake would do.
#pragma once

#include <span>
#include <vector>

#include "core/beam/bending.h"

namespace flatwise::beam {

/// What one rotor alone turns a hanger with.
struct Share {
  int hanger = 0;
  Force size;
  Angle direction;
};

enum class Mistake { half_out, rotor_out };
/// A rotor whose half A, or which as a whole, sits some flats from where it should.
struct TimingEffect {
  int rotor = 0;
  Mistake mistake = Mistake::half_out;
  int flats_out = 0;
  Force greatest;  ///< Greatest turning reaction of any hanger with the mistake.
  int hanger = 0;  ///< Which.
  Force rise;      ///< Greatest rise of any hanger's turning reaction; may be below nought.
};

struct Effects {
  std::vector<Force> as_built;             ///< Turning reaction of each hanger.
  std::vector<std::vector<Share>> shares;  ///< One a turning load, one a hanger.
  std::vector<TimingEffect> mistakes;      ///< Worst first, by the rise.
};

/// Which of the loads sit on flats.
struct Indexed {
  int rotors = 0;  ///< The first so many.
  int flats = 6;
};
/// Effects of loads that turn, the first `rotors` of which are rotors on a profile of `flats`.
///
/// Model      Linear: the reaction is the sum of the shares. A rotor indexed k flats wrong has its share turned by them. A
///            half k flats out leaves no common axis; the mean of the halves stands for it: the share turned by half the
///            angle and shrunk by its cosine (as core/dynamics has it).
/// Refuses    As bent_turning().
[[nodiscard]] Result<Effects> effects_of(const Mesh& mesh, std::span<const Turning> turning, AngularSpeed speed,
                                         const Indexed& indexed);

}  // namespace flatwise::beam
