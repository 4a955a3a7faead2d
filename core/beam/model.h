// model.h: a shaft as a beam on hangers, with what turns on it: stretches of one section, hangers, bodies, places.
#pragma once

#include <optional>
#include <vector>

#include "core/beam/section.h"
#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::beam {

inline constexpr int kMostNodes = 20'000;
inline constexpr Length kOnePlace = micrometres(1);  ///< Places nearer than this are one.

/// A length of shaft of one section, from where the one before it ends.
struct Stretch {
  Length length;
  Section section;
};

struct Elastic {
  Pressure youngs_modulus;
  double poisson = 0.3;
  Density density;
};

/// What the shaft is held by. Stiffness is the same up and down as sideways.
struct Hanger {
  Length at;
  std::optional<Stiffness> stiffness =
      std::nullopt;      ///< None: it does not give at all (done exactly, no great number).
  bool clamped = false;  ///< The shaft cannot tilt in it. Bearings that align: false.
};

/// Something heavy on the shaft. Its spin s along its own axis is with_shaft times the shaft's speed, plus own_spin.
struct Body {
  Length at;  ///< The point its inertias are about: a rotor's wobble centre.
  Mass mass;
  Length mass_offset;  ///< Centroid from there along the axis, towards B.
  Inertia across;
  Inertia along;
  double with_shaft = 1;  ///< 1: turns with it (a pulley). 0: does not. Held, leaning by a: -(1 - cos a).
  AngularSpeed own_spin;  ///< Rolling over the ground: travel over rolling radius.
};

struct Beam {
  std::vector<Stretch> stretches;  ///< From end A.
  Elastic elastic;
  std::vector<Hanger> hangers;
  std::vector<Body> bodies;
  std::vector<Length> places;         ///< Where loads act or results are asked, beside the above.
  Length longest_element = Length{};  ///< Nought: a sixty-fourth of the shaft.
};

}  // namespace flatwise::beam
