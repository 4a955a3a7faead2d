#include "core/beam/of_shaft.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/dynamics/resultants.h"

namespace flatwise::beam {
namespace {

constexpr double kSleeveDensity = 7850;  // kg/m³, of parts that are not the bar; steel, assumed.

/// A sleeve of steel as drawn, on a bar of this section, turning with it.
Body sleeve_of(const Station& st, Length at, double bar_m2) {
  const double outside_m2 = std::numbers::pi / 4 * st.outside.si() * st.outside.si();
  const double long_m = st.length.nominal.si();
  const double ring_m2 = std::max(0.0, outside_m2 - bar_m2);
  Body b;
  b.at = at;
  b.mass = st.mass.value_or(kilograms(kSleeveDensity * ring_m2 * long_m));
  // Radii by areas: R² + r² is the sum of both over pi. A stated mass has the drawn sleeve's shape.
  const double radii_m2 = (std::max(outside_m2, bar_m2) + bar_m2) / std::numbers::pi;
  b.along = Inertia::from_si(b.mass.si() * radii_m2 / 2);
  b.across = Inertia::from_si(b.mass.si() * (3 * radii_m2 + long_m * long_m) / 12);
  return b;
}

Body rotor_body(const Shaft& shaft, int number) {
  const Rotor& r = shaft.rotor(number);
  Body b{shaft.rotor_position(number), r.mass, r.mass_offset, r.across, r.along, 0, {}};
  if (dynamics::spinning_of(shaft) == dynamics::Spinning::rolling)
    b.own_spin = dynamics::spin_of(shaft, number);
  else
    b.with_shaft = -(1 - std::cos(r.lean.radians()));
  return b;
}

bool is_sleeve(const Station& st) { return st.kind != StationKind::rotor && st.kind != StationKind::hanger; }

void add_stations(const Shaft& shaft, std::span<const Angle> tilt, ShaftBeam& out) {
  const double bar_m2 = out.beam.stretches.front().section.area.si();
  for (std::size_t i = 0; i < shaft.stations().size(); ++i) {
    const Station& st = shaft.stations()[i];
    const auto index = static_cast<int>(i);
    const Length at = shaft.middle_of(index);
    out.beam.places.push_back(at);
    const Named named{st.label, index};
    if (st.kind == StationKind::hanger) {
      out.beam.hangers.push_back({at, st.stiffness, false});
      out.hangers.push_back(named);
    }
    const bool rotor = st.kind == StationKind::rotor;
    Body body = rotor ? rotor_body(shaft, st.rotor + 1) : sleeve_of(st, at, bar_m2);
    if (!rotor && !is_sleeve(st) && !st.mass)
      continue;  // A hanger stands still, unless something of it is said to turn.
    if (!(body.mass.si() > 0)) continue;
    out.beam.bodies.push_back(body);
    out.bodies.push_back(named);
    out.leans.push_back(rotor ? shaft.rotor(st.rotor + 1).lean : Angle{});
    out.azimuths.push_back(rotor ? tilt[static_cast<std::size_t>(st.rotor)] : Angle{});
    if (rotor) out.turning.push_back(turning_of(body, out.leans.back(), out.azimuths.back()));
  }
}

void add_loads(const Shaft& shaft, ShaftBeam& out) {
  for (const FixedLoad& l : shaft.spec().loads) {
    if (l.station) out.loads.push_back({shaft.middle_of(*l.station), l.force, l.direction});
    for (int r = 1; !l.station && r <= shaft.rotor_count(); ++r)
      out.loads.push_back({shaft.rotor_position(r), l.force, l.direction});
  }
  for (const FixedUnbalance& u : shaft.spec().unbalances)
    out.turning.push_back({shaft.middle_of(u.station), azimuth_of_flat(u.flat, shaft.flats()), u.amount});
}

/// Where the drive comes in: the pulley nearest the drive end, else that end itself.
Length drive_of(const Shaft& shaft) {
  const bool at_b = shaft.spec().drive_end == End::b;
  std::optional<Length> best;
  for (std::size_t i = 0; i < shaft.stations().size(); ++i)
    if (shaft.stations()[i].kind == StationKind::pulley && (at_b || !best)) best = shaft.middle_of(static_cast<int>(i));
  return best.value_or(at_b ? shaft.total_length() : Length{});
}

void add_torques(const Shaft& shaft, ShaftBeam& out) {
  if (!shaft.spec().bar.drive_torque) return;
  const Torque drive = *shaft.spec().bar.drive_torque;
  out.torques.push_back({drive_of(shaft), drive});
  for (int r = 1; r <= shaft.rotor_count(); ++r)
    out.torques.push_back({shaft.rotor_position(r), -(drive / static_cast<double>(shaft.rotor_count()))});
}

Finding note(Code code, Args args) { return {code, Severity::note, std::move(args), {}, std::nullopt}; }

bool is_assumed(const Shaft& shaft, std::string_view field) { return shaft.origin(field).kind == OriginKind::assumed; }

void say_taken(const Shaft& shaft, ShaftBeam& out) {
  const Bar& bar = shaft.spec().bar;
  if (is_assumed(shaft, "bar.youngs_modulus") || is_assumed(shaft, "bar.density"))
    out.taken.push_back(
        note(Code{"beam.assumed_bar"}, {{"modulus", any(bar.youngs_modulus)}, {"density", any(bar.density)}}));
  std::vector<std::string> rigid;
  for (std::size_t i = 0; i < out.hangers.size(); ++i)
    if (!out.beam.hangers[i].stiffness) rigid.push_back(out.hangers[i].label);
  if (!rigid.empty()) out.taken.push_back(note(Code{"beam.assumed_rigid"}, {{"hangers", std::move(rigid)}}));
  double sleeves = 0;
  for (std::size_t i = 0; i < out.bodies.size(); ++i)
    if (const Station& st = shaft.stations()[static_cast<std::size_t>(out.bodies[i].station)];
        is_sleeve(st) && !st.mass)
      sleeves += out.beam.bodies[i].mass.si();
  if (sleeves > 0) out.taken.push_back(note(Code{"beam.assumed_sleeves"}, {{"mass", any(kilograms(sleeves))}}));
  if (dynamics::spinning_of(shaft) == dynamics::Spinning::held)
    out.taken.push_back(note(Code{"beam.assumed_held"}, {}));
  if (shaft.spec().loads.empty()) out.taken.push_back(note(Code{"beam.no_loads"}, {}));
  if (!bar.drive_torque) out.taken.push_back(note(Code{"beam.no_torque"}, {}));
}

}  // namespace

ShaftBeam beam_of(const Shaft& shaft, std::span<const Angle> tilt) {
  CORE_CHECK(static_cast<int>(tilt.size()) == shaft.rotor_count());
  const ShaftSpec& spec = shaft.spec();
  ShaftBeam out;
  const Result<Section> section = polygon_section(spec.profile.flats, spec.profile.across_flats);
  CORE_CHECK(section.has_value());  // A Shaft's profile was checked when it was made.
  out.beam.stretches = {{shaft.total_length(), *section}};
  out.beam.elastic = {spec.bar.youngs_modulus, spec.bar.poisson, spec.bar.density};
  add_stations(shaft, tilt, out);
  add_loads(shaft, out);
  add_torques(shaft, out);
  for (const TorqueAt& t : out.torques) out.beam.places.push_back(t.at);
  say_taken(shaft, out);
  return out;
}

}  // namespace flatwise::beam
