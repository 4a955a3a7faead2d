// outcome.h: all that one way comes to: what is left of force and couple, the tines, the bearing of its hardest pressed rotor, the
// press, the shaft's own speeds. Each figure with its working; what cannot be worked out has its problem instead.
#pragma once

#include <optional>
#include <vector>

#include "core/beam/of_shaft.h"
#include "core/bearings/turn_life.h"
#include "core/dynamics/pattern_simple.h"
#include "core/dynamics/resultants.h"
#include "core/fits/press_curve.h"
#include "study/ways.h"
#include "words/words.h"

namespace flatwise::study {

/// How far each rotor may be from what is said, and whether the study says so itself.
struct Errors {
  dynamics::StatedErrors are;
  bool share_said = false, azimuth_said = false;
};

/// How the rotors stand and what that leaves.
struct Arranged {
  std::vector<Angle> tilt;      ///< One a rotor.
  std::vector<int> flats;       ///< Of half A, one a rotor.
  std::vector<Torque> couples;  ///< Of each rotor about the middle of the planes, signed, with its force's share.
  dynamics::Resultants left;
  dynamics::StatedErrors errors;    ///< By which the floors are made.
  Torque couple_floor;              ///< Root mean square of what the stated errors leave of couple.
  dynamics::Simplicity simplicity;  ///< Of a row of two rotors or more.
  WorkingPtr couple;                ///< couple-resultant, with one rotor's couple behind it.
  WorkingPtr gap;                   ///< tine-gap of the neighbours that come nearest; none for one rotor.
  int gap_after = 0;                ///< Between this rotor and the next.
  [[nodiscard]] bool quiet() const { return left.larger <= left.floor_rms; }
  [[nodiscard]] bool strikes() const { return gap != nullptr && gap->si("gap") < 0; }
};

/// The bearing of one rotor.
struct Beared {
  int rotor = 1;
  bearings::BallBearing inside;  ///< As the definition states it; what it does not, estimated.
  Limits clearance;              ///< As it runs; both alike where the way says it.
  bearings::TurnLifeTask task;   ///< At the middle of the clearance.
  bearings::TurnLife life;
  std::optional<double> factor{};  ///< Of the rim's play; see bearings::tilt_factor_about().
  WorkingPtr geometry, fitted, play,
      turn;  ///< Figures bearing-geometry, fitted-clearance (none where said), rim-play, bearing-turn.
  /// The ground presses on its rotor: without that a life would count weight and couple alone, far too long to plan by.
  bool ground = false;
  [[nodiscard]] Length middle() const { return 0.5 * (clearance.least + clearance.greatest); }
  [[nodiscard]] std::optional<Time> life_said() const { return ground ? std::optional{life.basic} : std::nullopt; }
};

/// The press of the same rotor.
struct PressedIn {
  Limits interference;
  WorkingPtr interference_working;  ///< None where the way says it.
  WorkingPtr force;                 ///< Figure press-force.
  fits::PressPath path;
};

/// The shaft as a beam.
struct Bent {
  beam::ShaftBeam of;
  Force hanger;                           ///< Greatest turning reaction at the way's speed.
  std::optional<AngularSpeed> forward{};  ///< Lowest critical speed.
  std::optional<AngularSpeed> nearest{};  ///< One within a quarter of the speed, either whirl.
};

struct Outcome {
  Arranged arranged;
  std::optional<Beared> bearing{};
  std::optional<PressedIn> press{};
  std::optional<Bent> bent{};
  std::vector<Problem> bearing_problems{}, press_problems{}, bent_problems{};
};

/// Refuses    A shaft that stands still, has no rotor, or whose couple cannot be worked out. Bearing, press and beam that cannot be are
///            told in the outcome, and the rest of it stands.
[[nodiscard]] Results<Outcome> outcome_of(const Way& way, const Errors& errors = {});

/// What the wobble does to the bearing of one rotor, as its shaft is defined: the workings alone, in the order they follow from each
/// other.
struct BearingTold {
  int rotor = 1;
  WorkingPtr geometry, fitted;
  WorkingPtr play;      ///< None where no clearance is left.
  WorkingPtr turn;      ///< Figure bearing-turn: never none.
  bool ground = false;  ///< As Beared::ground.
};
/// The same as a study has of a way as defined, of any rotor.
///
/// Inputs     rotor from 1 to the shaft's count.
/// Refuses    What keeps press, clearance or life from being worked out, each by the figure that refused.
[[nodiscard]] Results<BearingTold> bearing_of(const Shaft& shaft, int rotor);

/// What of this bearing nobody stated, in words that go into one sentence: the balls, the grooves, the ratings, the oil, the dirt, the
/// pull of the seat, the warmth. Empty where all is known.
[[nodiscard]] std::vector<std::string> not_stated(const BearingTold& bearing, const Voice& voice);

// Parts of it, each in its own file.
[[nodiscard]] Result<Arranged> arranged(const Way& way, const Errors& errors);
void add_bearing(const Way& way, Outcome& to);
void add_press(const Way& way, Outcome& to);
void add_bending(const Way& way, Outcome& to);

}  // namespace flatwise::study
