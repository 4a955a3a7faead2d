// pattern_simple.h: how simple an arrangement is to say and to build, and the simple ones from the simplest on.
#pragma once

#include <compare>
#include <cstdint>
#include <functional>

#include "core/dynamics/pattern_task.h"

namespace flatwise::dynamics {

/// Less is simpler: compared from the first member on.
struct Simplicity {
  int steps = 0;    ///< Different steps from rotor to rotor. Facing throughout, or one step throughout: 1.
  int phrases = 0;  ///< Runs of one step after another; two steps taken in turn all along are two.
  int turned = 0;   ///< Steps that are not facing.
  int way = 0;      ///< Sum of the steps, the shorter way.
  friend auto operator<=>(const Simplicity&, const Simplicity&) = default;
};
[[nodiscard]] Simplicity simplicity_of(std::span<const int> places, int positions);
/// Step from one position to the next, the shorter way: -n/2 + 1 .. n/2, clockwise seen from end A.
[[nodiscard]] int step_of(int before, int place, int positions);

/// An arrangement that the task allows, facing where it may be; task without problem.
[[nodiscard]] Places some_arrangement(const PatternTask& task);

/// The arrangements of at most two different steps, level by level: one step throughout; two runs, or two steps in turn; three
/// runs of two steps, and so on. Nothing simpler is left out by a level that was gone through to its end.
class SimpleScan {
 public:
  /// Takes an arrangement that leaves no more than the limit so far, and gives the limit from now on.
  using Offer = std::function<double(const Places&)>;
  SimpleScan(const PatternTask& task, const PatternSums& sums, double limit, Offer offer);

  /// All of one level, from 1. False: `rows` were looked at and more are left (never in the middle of a promise: the level is
  /// then not complete).
  bool level(int phrases, std::int64_t& rows);
  /// The last level that has any.
  [[nodiscard]] int levels() const;

 private:
  using Phasor = PatternSums::Phasor;
  struct At {
    int rotor, place;
    Phasor a, b;
  };
  bool begin(int step, int other, int phrases);
  void run(const At& at, int step, int other, int more);
  void in_turn(int step, int other);
  [[nodiscard]] bool put(At& at, int step);  ///< The next rotor a step on; false where it may not stand there.
  [[nodiscard]] At first(int place);
  void end(const At& at);

  const PatternTask& task_;
  const PatternSums& sums_;
  double limit_;
  Offer offer_;
  Places places_;
  std::int64_t* rows_ = nullptr;
};

}  // namespace flatwise::dynamics
