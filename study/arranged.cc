// What the arrangement of the rotors leaves, and how near their tines come.
#include <algorithm>
#include <cmath>

#include "core/dynamics/figures.h"
#include "core/dynamics/tine_gap.h"
#include "core/timing/map.h"
#include "core/working/input_specs.h"
#include "study/outcome.h"

namespace flatwise::study {
namespace {

/// As the floor of the planes is made: each rotor's share and azimuth off by its own rectangular error.
Torque floor_of(std::span<const Torque> couples, const dynamics::StatedErrors& errors) {
  double squares = 0;
  for (const Torque couple : couples) squares += couple.si() * couple.si();
  const double azimuth = errors.azimuth.radians();
  return newton_metres(std::sqrt(squares * (errors.share * errors.share + azimuth * azimuth) / 3));
}

dynamics::ErrorsGiven given_to_the_figure(const Errors& errors) {
  const auto from = [](bool said) {
    return said ? Origin{OriginKind::given, "study"} : Origin{OriginKind::assumed, std::string{kOwnRule}};
  };
  return {errors.are, from(errors.share_said), from(errors.azimuth_said)};
}

}  // namespace

Result<Arranged> arranged(const Way& way, const Errors& errors) {
  const Shaft& shaft = way.shaft;
  const Result<timing::Map> map = timing::map(shaft);
  if (!map) return tl::unexpected(map.error());
  Arranged out;
  out.tilt = timing::tilt_azimuths(*map, shaft.flats());
  dynamics::Places places;
  for (const timing::RotorMarks& rotor : map->rotors) {
    out.flats.push_back(rotor.flat_a);
    places.push_back(rotor.flat_a - 1);
  }
  Result<Working> couple = dynamics::arrangement_working(shaft, out.tilt, given_to_the_figure(errors));
  if (!couple) return tl::unexpected(couple.error());
  out.couple = std::make_shared<const Working>(*std::move(couple));
  const std::vector<dynamics::RotatingSet> sets = dynamics::rotating_sets(shaft, out.tilt);
  const dynamics::Planes planes = dynamics::planes_of(shaft);
  out.errors = errors.are;
  out.left = dynamics::resultants(sets, planes, errors.are);
  out.couples = dynamics::couples_about_middle(sets, planes, shaft.rotor_count());
  out.couple_floor = floor_of(out.couples, errors.are);
  if (shaft.rotor_count() < 2) return out;
  out.simplicity = dynamics::simplicity_of(places, shaft.flats());
  Result<Working> gap = dynamics::least_gap_working(shaft, out.tilt);
  if (!gap) return tl::unexpected(gap.error());
  out.gap = std::make_shared<const Working>(*std::move(gap));
  const auto gaps = dynamics::tine_gaps(shaft, out.tilt);
  out.gap_after = std::ranges::min_element(gaps, {}, [](const auto& g) { return g.gap.gap; })->rotor;
  return out;
}

Results<Outcome> outcome_of(const Way& way, const Errors& errors) {
  Result<Arranged> stands = arranged(way, errors);
  if (!stands) return tl::unexpected(std::vector{stands.error()});
  Outcome out{.arranged = *std::move(stands)};
  add_press(way, out);
  add_bearing(way, out);
  add_bending(way, out);
  return out;
}

}  // namespace flatwise::study
