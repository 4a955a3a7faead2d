// pattern_task.h: what is to be arranged: rotors on n index positions, what they press the shaft with, which of them stay as
// they are, and how far neighbours may stand apart.
//
//   const auto task = pattern_task(shaft, {.least_gap = millimetres(5)});
//   const auto found = find_pattern(*task);                              // pattern_search.h
#pragma once

#include <array>
#include <complex>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/dynamics/resultants.h"
#include "core/shaft/shaft.h"

namespace flatwise::dynamics {

/// Index positions of the rotors from end A, 0 .. n - 1: position p is flat p + 1.
using Places = std::vector<int>;

/// By what an arrangement is judged.
enum class Judged {
  larger_plane,  ///< The larger of the forces in the two planes: static and couple unbalance together.
  both_planes,   ///< Their root sum of squares.
  couple,        ///< The couple about the middle of the planes alone.
};

/// What the rotors turn one hanger with: a reaction is linear in the phasors, so a number a rotor says all of it.
struct HangerRow {
  std::string label;                  ///< Of the hanger.
  std::vector<double> rotors_n = {};  ///< By each rotor alone, N at its own azimuth; minus where it comes out opposite.
  std::complex<double> fixed_n = {};  ///< By the unbalances together, at their azimuths.
};

struct PatternTask {
  int positions = 6;                    ///< n, 2 to 24.
  std::vector<RotatingSet> rotors;      ///< From end A; their azimuths are what is looked for and not read.
  std::vector<RotatingSet> unbalances;  ///< Of pulleys and shaft, at their azimuths.
  Planes planes;
  Judged judged = Judged::larger_plane;
  StatedErrors errors;
  std::vector<std::optional<int>> kept = {};  ///< Positions of rotors that stay; empty: none stays.
  /// One a pair of neighbours: bit k set where they may stand k positions apart, the shorter way. Empty: all may.
  std::vector<std::uint32_t> apart = {};
  /// Among arrangements that leave less than can be measured, those that press the hangers least come first. Empty: not asked for.
  std::vector<HangerRow> hangers = {};

  [[nodiscard]] int count() const { return static_cast<int>(rotors.size()); }
  [[nodiscard]] bool keeps(int rotor) const;  ///< rotor from 0.
  /// A turn and the hand of the whole row are free: nothing stays and nothing else is out of balance.
  [[nodiscard]] bool turn_is_free() const;
  /// Rotors that stay do so, and neighbours stand apart as they may.
  [[nodiscard]] bool allows(std::span<const int> places) const;
  /// Neighbour pair between rotor - 1 and rotor (from 0).
  [[nodiscard]] bool may_follow(int rotor, int place_before, int place) const;
};

/// What makes a task unusable; none when all is well.
///
/// Refuses    Positions outside 2 to 24; fewer than 2 or more than 240 rotors; forces, couples, places not finite; planes
///            under a millimetre apart; kept, apart or a hanger's numbers not one a rotor or pair, or not finite; a kept position that is not there; errors
///            outside 0 to 1; rotors that press with nothing at all; a pair that may stand no way apart; kept rotors that no
///            arrangement between them can join.
[[nodiscard]] std::optional<Problem> problem_with(const PatternTask& task);

struct Stays {
  int rotor = 1;  ///< From end A, from 1.
  int flat = 1;   ///< Of half A.
};
struct PatternWish {
  Judged judged = Judged::larger_plane;
  StatedErrors errors = {};
  Length least_gap = {};  ///< Between the tines of neighbours. Nought: they only must not strike.
  std::vector<Stays> stays = {};
  std::vector<HangerRow> hangers = {};  ///< As core/beam has them of this shaft.
};
/// The task of a whole shaft: resultants() of its rotors, tine_gap() of its neighbours.
///
/// Refuses    As problem_with(); a shaft that stands still; a negative gap; rotors that are not there or named twice; neighbours with no gap left
///            however they stand.
[[nodiscard]] Result<PatternTask> pattern_task(const Shaft& shaft, const PatternWish& wish = {});

/// The numbers of a task: each rotor's share in the planes, summed for one arrangement after the other.
class PatternSums {
 public:
  using Phasor = std::complex<double>;
  explicit PatternSums(const PatternTask& task);  ///< Task without problem.

  [[nodiscard]] int count() const { return static_cast<int>(own_.size()); }
  [[nodiscard]] int positions() const { return static_cast<int>(directions_.size()); }
  /// What the arrangement leaves, N (N m where the couple judges); exactly nought within rounding().
  [[nodiscard]] double of(std::span<const int> places) const;
  /// The same from the two sums.
  [[nodiscard]] double of(Phasor a, Phasor b) const;
  /// Two arrangements this near are the same as far as doubles can say: 32 eps of the sum of all sizes.
  [[nodiscard]] double rounding() const { return rounding_; }
  [[nodiscard]] double floor_rms() const { return floor_rms_; }
  [[nodiscard]] double floor_worst() const { return floor_worst_; }
  [[nodiscard]] Judged judged() const { return judged_; }
  /// Share of a rotor in plane A and plane B; its couple and nought where the couple judges. Signed.
  [[nodiscard]] const std::array<double, 2>& own(int rotor) const { return own_[static_cast<std::size_t>(rotor)]; }
  [[nodiscard]] const std::array<Phasor, 2>& constant() const { return constant_; }  ///< Unbalances.
  [[nodiscard]] const std::vector<Phasor>& directions() const { return directions_; }
  /// Same share in both planes, so that they may change places.
  [[nodiscard]] bool alike(int rotor, int other) const { return own(rotor) == own(other); }

 private:
  std::vector<Phasor> directions_;
  std::vector<std::array<double, 2>> own_;
  std::array<Phasor, 2> constant_{};
  Judged judged_;
  double rounding_ = 0, floor_rms_ = 0, floor_worst_ = 0;
};

/// Places as the shop counts them: flat of half A of each rotor.
[[nodiscard]] std::vector<int> flats_of(std::span<const int> places);
/// Tilt azimuths of an arrangement.
[[nodiscard]] std::vector<Angle> tilt_of(std::span<const int> places, int positions);

}  // namespace flatwise::dynamics
