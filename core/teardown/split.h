// split.h: what must come off to free some rotors, from which end, and what that costs.
//
//   const auto plan = least_cost(shaft, all_on(shaft), rotors, {.rate_per_hour = 72.0, .currency = "USD"});
//   plan->split.from_a   // stations that come off from end A, counted from there
//
// Parts come off from A, from B, or from both ends. Nothing passes an obstacle. The way back and the steps for the
// hands: steps.h. To ask many times about one shaft as it stands (a search), make a Reach once.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"

namespace flatwise::teardown {

/// What is where at this moment.
struct State {
  std::vector<bool> on_shaft;  ///< One a station.
  std::vector<bool> new_set;   ///< One a rotor: a set was fitted in this job and has not been pressed out again.
  bool in_frame = true;        ///< The shaft still hangs in the machine: guards, belts and hangers come first.
};

/// Everything on the shaft, nothing renewed, in the frame.
[[nodiscard]] State all_on(const Shaft& shaft);

/// State from the rotors that are not on the shaft now.
///
/// Model      Parts come off from the ends only, so the rotors still on stand in one row; all that lies beyond the
/// row's
///            outer rotors on a side where rotors are off is taken to be off too. With all rotors off everything but
///            obstacles, and what they hold, is off.
/// Refuses    A rotor number outside 1..N; a rotor said to be off while rotors on both sides of it are on.
[[nodiscard]] Result<State> with_rotors_off(const Shaft& shaft, std::span<const int> still_off,
                                            std::span<const int> new_set);

struct Prices {
  std::optional<double> rate_per_hour = {};  ///< Of work, in currency units.
  std::string currency = {};                 ///< Three letters; empty when none was given.
};

/// Which sets count as due when rotors leave the shaft.
enum class Renew {
  policy,       ///< As the definition's policy says: with renew_disturbed every rotor that leaves, else seals only.
  failed_only,  ///< Sets for the rotors asked for, seals for every rotor that leaves.
  disturbed,    ///< Sets and seals for every rotor that leaves.
};

/// Stations that come off, counted from each end.
struct Split {
  int from_a = 0, from_b = 0;
  friend bool operator==(const Split&, const Split&) = default;
};

/// What a split costs. `parts_price` holds the known prices only.
struct Cost {
  Split split;
  Time time;               ///< Off and on again.
  double parts_price = 0;  ///< In currency units.
  int parts = 0;           ///< Count of sets and seals made due.
  int stations = 0;        ///< Stations that come off now.
};

/// What taking one station off and putting it back costs.
struct StationCost {
  Time time;                        ///< Off and on.
  std::optional<double> price = 0;  ///< Of the parts made due; none: not known.
  int parts = 0;                    ///< Count of them.
  bool on_shaft = true;
  bool obstacle = false;
};
/// One a station, from the definition, the state and what is due.
[[nodiscard]] std::vector<StationCost> station_costs(const Shaft& shaft, const State& state, Renew renew,
                                                     std::span<const int> asked);

/// The cost of freeing stations of one shaft as it stands, priced once.
///
/// Model      cost = minutes (off and on) x rate + price of the parts made due. What is off already costs nothing; a
/// set
///            fitted in this job is not due again. Of the splits that free what is asked for the least is exact: for
///            sorted stations w1 < ... < wm only the m + 1 splits 'w1..wt from A, the rest from B' can be least, since
///            taking off more never costs less.
/// Accuracy   Exact but for the rounding of a sum (1 eps a station).
class Reach {
 public:
  Reach(std::span<const StationCost> stations, std::optional<double> rate_per_hour);
  /// `asked` matters for Renew::failed_only alone: the rotors that get sets.
  Reach(const Shaft& shaft, const State& state, const Prices& prices, Renew renew = Renew::policy,
        std::span<const int> asked = {});

  /// Least cost to free `stations` (indices, sorted; those off already cost nothing). None where obstacles forbid it.
  [[nodiscard]] std::optional<Cost> cheapest(std::span<const int> stations) const;
  /// All splits that can be least, the cheapest first.
  [[nodiscard]] std::vector<Cost> ranked(std::span<const int> stations) const;
  /// Money where the rate and every price that could matter are known, else none: then minutes, then parts, order.
  [[nodiscard]] std::optional<double> money(Time work, double parts_price) const;
  /// Negative when `x` is less work than `y`: by money where it is known, else by minutes, then parts. Nought: equal
  /// within rounding (1e-9 relative).
  [[nodiscard]] int compare(const Cost& x, const Cost& y) const;
  [[nodiscard]] bool knows_money() const { return knows_money_; }
  /// Index of the station that stops work from an end; none when nothing does.
  [[nodiscard]] std::optional<int> obstacle_from(End end) const;

 private:
  struct Sum {
    double seconds = 0, price = 0;
    int parts = 0, stations = 0;
  };
  [[nodiscard]] Cost cost_of(Split split) const;
  [[nodiscard]] bool before(const Cost& x, const Cost& y) const;
  std::vector<Sum> up_to_;  ///< [i]: stations 0..i-1 that are on the shaft.
  std::vector<bool> on_;
  int first_obstacle_ = 0, last_obstacle_ = -1;  ///< Size and -1 when there is none.
  double rate_ = 0;
  bool knows_money_ = false;
};

struct PartsDue {
  enum class Kind { adapter_set, seal } kind = Kind::adapter_set;
  std::string part_number;
  int count = 0;
  std::vector<int> rotors;
  std::optional<double> price_each;
};

struct RunnerUp {
  Split split;
  Time more_time;
  std::optional<double> more_money;
};

struct Plan {
  Split split;
  Time time_off, time_on;
  std::optional<double> work_price, parts_price,
      money;                  ///< None where the rate or a price of these parts is not known.
  std::vector<int> stations;  ///< That come off now, in order from end A.
  std::vector<int> rotors;    ///< Of these the rotors, by number.
  std::vector<PartsDue> due;
  std::optional<RunnerUp> runner_up;  ///< None where there is no other way.
  std::vector<Finding> findings;      ///< What is not known; what stands in the way at an end.
  [[nodiscard]] Time time() const { return time_off + time_on; }
};

/// The cheapest way to free some rotors.
///
/// Model      See Reach. Equal ways: fewer minutes, then fewer parts off, then from end A.
/// Inputs     rotors: numbers 1..N; those off already are free.
/// Returns    The plan with its runner-up. Rotors all free already: a plan with nothing in it.
/// Refuses    A rotor number out of range, a rate that is not finite or under nought, a rotor that obstacles hold from
/// both
///            ends (both named).
/// Source     common practice: every rotor that leaves the shaft gets a new adapter-and-bearing set; seals are always
/// new.
[[nodiscard]] Result<Plan> least_cost(const Shaft& shaft, const State& state, std::span<const int> rotors,
                                      const Prices& prices, Renew renew = Renew::policy);

/// From which end a shaft was opened in truth, whatever would have been cheapest.
enum class OpenedFrom { a, b, both };
struct Opening {
  OpenedFrom from = OpenedFrom::both;
  int rotors_from_a = 0;  ///< With both: rotors 1 to this one came off at end A. 0: the cheapest split of that kind.
  Split already = {};     ///< Off already, counted from each end: they are in the plan whichever end was said.
};
struct Wanted {
  std::span<const int> rotors;
  Renew renew = Renew::policy;
  Opening opening = {};
};
/// The plan for freeing rotors of a complete shaft from the ends that were said. No runner-up: nothing was chosen by its cost.
///
/// Refuses    As least_cost(); an obstacle in the way at an end that was said; a share of end A outside 1..N-1, or with one end
///            only; both ends without a share where fewer than two rotors are wanted.
[[nodiscard]] Result<Plan> opened_as(const Shaft& shaft, const State& state, const Wanted& wanted,
                                     const Prices& prices);

/// What makes a state or prices unusable for a shaft: sizes that are not the shaft's, a rate or price that is not
/// finite or under nought. None when all is well.
[[nodiscard]] std::optional<Problem> problem_with(const Shaft& shaft, const State& state, const Prices& prices);

/// Three ways side by side: sets for the failed rotors only, for everything disturbed, for all rotors that come off (those
/// that obstacles hold from both ends are named in a finding). Refuses what least_cost() refuses of the failed ones.
struct Ways {
  Plan failed_only, disturbed, all;
};
[[nodiscard]] Result<Ways> three_ways(const Shaft& shaft, const State& state, std::span<const int> failed,
                                      const Prices& prices);

}  // namespace flatwise::teardown
