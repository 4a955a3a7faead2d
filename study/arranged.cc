// What the arrangement of the rotors leaves, and how near their tines come.
#include <algorithm>
#include <cmath>

#include "core/dynamics/figures.h"
#include "core/dynamics/tine_gap.h"
#include "core/timing/map.h"
#include "study/outcome.h"

namespace flatwise::study {
namespace {

/// The couple of each set about the middle of the planes: its own, and its force's by its arm.
std::vector<Torque> couples_of(std::span<const dynamics::RotatingSet> sets, const dynamics::Planes& planes,
                               int rotors) {
  const Length middle = 0.5 * (planes.a + planes.b);
  std::vector<Torque> couples;
  for (int i = 0; i < rotors; ++i) {
    const dynamics::RotatingSet& set = sets[static_cast<std::size_t>(i)];
    couples.push_back(set.couple + set.force * (set.position - middle));
  }
  return couples;
}

/// As the floor of the planes is made: each rotor's share and azimuth off by its own rectangular error.
Torque floor_of(std::span<const Torque> couples, const dynamics::StatedErrors& errors) {
  double squares = 0;
  for (const Torque couple : couples) squares += couple.si() * couple.si();
  const double azimuth = errors.azimuth.radians();
  return newton_metres(std::sqrt(squares * (errors.share * errors.share + azimuth * azimuth) / 3));
}

}  // namespace

Result<Arranged> arranged(const Way& way) {
  const Shaft& shaft = way.shaft;
  const Result<timing::Map> map = timing::map(shaft);
  if (!map) return tl::unexpected(map.error());
  Arranged out;
  dynamics::Places places;
  for (const timing::RotorMarks& rotor : map->rotors) {
    out.flats.push_back(rotor.flat_a);
    out.tilt.push_back(azimuth_of_flat(rotor.flat_a, shaft.flats()));
    places.push_back(rotor.flat_a - 1);
  }
  Result<Working> couple = dynamics::arrangement_working(shaft, out.tilt);
  if (!couple) return tl::unexpected(couple.error());
  out.couple = std::make_shared<const Working>(*std::move(couple));
  const std::vector<dynamics::RotatingSet> sets = dynamics::rotating_sets(shaft, out.tilt);
  const dynamics::Planes planes = dynamics::planes_of(shaft);
  out.left = dynamics::resultants(sets, planes);
  out.couples = couples_of(sets, planes, shaft.rotor_count());
  out.couple_floor = floor_of(out.couples, {});
  if (shaft.rotor_count() < 2) return out;
  out.simplicity = dynamics::simplicity_of(places, shaft.flats());
  Result<Working> gap = dynamics::least_gap_working(shaft, out.tilt);
  if (!gap) return tl::unexpected(gap.error());
  out.gap = std::make_shared<const Working>(*std::move(gap));
  const auto gaps = dynamics::tine_gaps(shaft, out.tilt);
  out.gap_after = std::ranges::min_element(gaps, {}, [](const auto& g) { return g.gap.gap; })->rotor;
  return out;
}

Results<Outcome> outcome_of(const Way& way) {
  Result<Arranged> stands = arranged(way);
  if (!stands) return tl::unexpected(std::vector{stands.error()});
  Outcome out{.arranged = *std::move(stands)};
  add_press(way, out);
  add_bearing(way, out);
  add_bending(way, out);
  return out;
}

}  // namespace flatwise::study
