#include "core/shaft/shaft.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace flatwise {
namespace {

constexpr std::size_t kMostStations = 100'000;
constexpr std::size_t kMostRotors = 240;

using Problems = std::vector<Problem>;

void refuse(Problems& to, Code code, std::string field, std::string given, Args args) {
  to.push_back({code, std::move(field), std::move(given), std::move(args), std::nullopt});
}

bool positive(double v) { return v > 0 && std::isfinite(v); }
bool not_negative(double v) { return v >= 0 && std::isfinite(v); }

void check_profile(const ShaftSpec& s, Problems& out) {
  if (s.profile.flats < 3 || s.profile.flats > 24)
    refuse(out, Code{"shaft.flats_range"}, "shaft.flats", std::to_string(s.profile.flats),
           {{"least", 3}, {"greatest", 24}});
  if (!positive(s.profile.across_flats.si()))
    refuse(out, Code{"shaft.not_positive"}, "shaft.across", {}, {{"value", any(s.profile.across_flats)}});
  if (!not_negative(s.speed.radians_per_second()))
    refuse(out, Code{"shaft.negative"}, "shaft.speed", {}, {{"value", any(s.speed)}});
  bool leans = false;
  for (const Rotor& r : s.rotors) leans = leans || r.lean.radians() != 0;
  if (s.profile.flats % 2 != 0 && leans)
    refuse(out, Code{"shaft.odd_flats"}, "shaft.flats", std::to_string(s.profile.flats), {{"flats", s.profile.flats}});
}

void check_flat(int flat, int flats, const std::string& field, Problems& out) {
  if (flat < 1 || flat > flats)
    refuse(out, Code{"shaft.flat_range"}, field, std::to_string(flat), {{"least", 1}, {"greatest", flats}});
}

void check_pattern(const ShaftSpec& s, Problems& out) {
  const Pattern& p = s.pattern;
  const int n = s.profile.flats;
  if (p.rule == Pattern::Rule::facing && n % 2 != 0)
    refuse(out, Code{"shaft.facing_odd_flats"}, "shaft.pattern", "facing", {{"flats", n}});
  if (p.rule == Pattern::Rule::step && (p.step_flats < 1 || p.step_flats >= n))
    refuse(out, Code{"shaft.step_range"}, "shaft.pattern.step", std::to_string(p.step_flats),
           {{"least", 1}, {"greatest", n - 1}});
  if (p.rule == Pattern::Rule::listed) {
    if (p.flats.size() != s.rotors.size())
      refuse(out, Code{"shaft.list_length"}, "shaft.pattern.flats", std::to_string(p.flats.size()),
             {{"listed", static_cast<std::int64_t>(p.flats.size())},
              {"rotors", static_cast<std::int64_t>(s.rotors.size())}});
    for (const int flat : p.flats) check_flat(flat, n, "shaft.pattern.flats", out);
  }
  if (p.first_flat) check_flat(*p.first_flat, n, "shaft.first_flat", out);
  if (p.first_flat && p.rule == Pattern::Rule::listed && !p.flats.empty() && p.flats.front() != *p.first_flat)
    refuse(out, Code{"shaft.first_flat_differs"}, "shaft.first_flat", std::to_string(*p.first_flat),
           {{"listed", p.flats.front()}});
  if (!s.unbalances.empty() && !p.first_flat)
    refuse(out, Code{"shaft.unbalance_needs_flat"}, "shaft.first_flat", {}, {});
}

void check_toleranced(const Toleranced& t, const std::string& field, Problems& out) {
  if (!positive(t.nominal.si())) return refuse(out, Code{"shaft.not_positive"}, field, {}, {{"value", any(t.nominal)}});
  if (!not_negative(t.above.si())) refuse(out, Code{"shaft.negative"}, field + ".above", {}, {{"value", any(t.above)}});
  if (!not_negative(t.below.si())) refuse(out, Code{"shaft.negative"}, field + ".below", {}, {{"value", any(t.below)}});
  if (!(t.below < t.nominal))
    refuse(out, Code{"shaft.tolerance_too_wide"}, field + ".below", {},
           {{"value", any(t.below)}, {"greatest", any(t.nominal)}});
}

void check_bearing(const Rotor& r, const std::string& at, Problems& out) {
  const Bearing& b = r.bearing;
  if (!positive(b.bore.si())) refuse(out, Code{"shaft.not_positive"}, at + ".bearing.d", {}, {{"value", any(b.bore)}});
  if (!positive(b.width.si()))
    refuse(out, Code{"shaft.not_positive"}, at + ".bearing.B", {}, {{"value", any(b.width)}});
  if (!(b.outside > b.bore))
    refuse(out, Code{"shaft.ring_sizes"}, at + ".bearing.D", {}, {{"value", any(b.outside)}, {"least", any(b.bore)}});
  const Hub& h = r.hub;
  if (!positive(h.bore.least.si()) || !(h.bore.greatest > h.bore.least))
    return refuse(out, Code{"shaft.bore_limits"}, at + ".hub", {},
                  {{"least", any(h.bore.least)}, {"greatest", any(h.bore.greatest)}});
  if (!(h.outside > h.bore.greatest))
    refuse(out, Code{"shaft.hub_thin"}, at + ".hub.outside", {},
           {{"value", any(h.outside)}, {"least", any(h.bore.greatest)}});
  // A bearing that is a millimetre off its hub is a slip of the pen, not a fit.
  const double gap = b.outside.si() - h.bore.least.si();
  if (std::isfinite(gap) && std::abs(gap) > 1e-3)
    refuse(out, Code{"shaft.bearing_not_hub"}, at + ".bearing.D", {},
           {{"value", any(b.outside)}, {"bore", any(h.bore.least)}});
}

/// Across counts about the wobble centre, so the mass at its offset is in it; of what is left about the centroid, no body has a polar inertia
/// over the sum of its two transverse ones (perpendicular axes, with equality for a plate).
void check_inertia(const Rotor& r, const std::string& at, Problems& out) {
  if (!not_negative(r.across.si()))
    refuse(out, Code{"shaft.negative"}, at + ".inertia.across", {}, {{"value", any(r.across)}});
  if (!not_negative(r.along.si()))
    refuse(out, Code{"shaft.negative"}, at + ".inertia.along", {}, {{"value", any(r.along)}});
  const Inertia of_offset = r.mass * r.mass_offset * r.mass_offset;
  if (of_offset.si() != 0 && !(r.across.si() >= of_offset.si() * (1 - 1e-9)))
    return refuse(
        out, Code{"shaft.inertia_under_offset"}, at + ".inertia.across", {},
        {{"value", any(r.across)}, {"least", any(of_offset)}, {"mass", any(r.mass)}, {"offset", any(r.mass_offset)}});
  const Inertia most = 2 * (r.across - of_offset);
  if (r.along.si() > most.si() + 2e-9 * r.across.si())
    refuse(out, Code{"shaft.inertia_impossible"}, at + ".inertia.along", {},
           {{"value", any(r.along)}, {"greatest", any(most)}});
}

void check_rotor(const Rotor& r, int number, Problems& out) {
  const std::string at = "rotor " + std::to_string(number);
  // "30 deg" read to the nearest double is the last digit over what 30 times a degree is rounded to.
  if (!(r.lean.radians() >= 0 && r.lean.degrees() <= 30 * (1 + 1e-12)))
    refuse(out, Code{"shaft.lean_range"}, at + ".lean", {},
           {{"value", any(r.lean)}, {"least", any(degrees(0))}, {"greatest", any(degrees(30))}});
  if (!positive(r.tip_radius.si()))
    refuse(out, Code{"shaft.not_positive"}, at + ".tip_radius", {}, {{"value", any(r.tip_radius)}});
  if (!not_negative(r.tine_width.si()))
    refuse(out, Code{"shaft.negative"}, at + ".tine_width", {}, {{"value", any(r.tine_width)}});
  if (!positive(r.mass.si())) refuse(out, Code{"shaft.not_positive"}, at + ".mass", {}, {{"value", any(r.mass)}});
  check_inertia(r, at, out);
  check_toleranced(r.half, at + ".half", out);
  check_bearing(r, at, out);
}

void check_nut(const Nut& n, int index, Problems& out) {
  const std::string at = "nut " + std::to_string(index + 1);
  if (!positive(n.torque.si())) refuse(out, Code{"shaft.not_positive"}, at + ".torque", {}, {{"value", any(n.torque)}});
  if (!(n.torque_tolerance > 0 && n.torque_tolerance < 1))
    refuse(out, Code{"shaft.tolerance_share"}, at + ".tolerance", {}, {{"value", any_ratio(n.torque_tolerance)}});
  if (!n.snug) return;
  if (!positive(n.snug->si()) || *n.snug >= n.torque)
    refuse(out, Code{"shaft.snug_torque"}, at + ".snug", {}, {{"value", any(*n.snug)}, {"greatest", any(n.torque)}});
}

/// A tube has a wall, and its bore goes over the profile.
void check_tube(const ShaftSpec& s, const Tube& own, const std::string& at, Problems& out) {
  const Length across = s.profile.across_flats;
  if (own.bore && !(*own.bore >= across))
    refuse(out, Code{"shaft.tube_bore"}, at + ".bore", {}, {{"value", any(*own.bore)}, {"least", any(across)}});
  const Length bore = own.bore ? *own.bore : s.clamped.tube.bore.value_or(across);
  const std::optional<Length>& outside = own.outside ? own.outside : s.clamped.tube.outside;
  if (outside && !(*outside > bore))
    refuse(out, Code{"shaft.tube_thin"}, at + (own.outside ? ".outside" : ".bore"), {},
           {{"value", any(*outside)}, {"least", any(bore)}});
  if (own.youngs_modulus && !positive(own.youngs_modulus->si()))
    refuse(out, Code{"shaft.not_positive"}, at + ".youngs_modulus", {}, {{"value", any(*own.youngs_modulus)}});
}

void check_clamped(const ShaftSpec& s, Problems& out) {
  check_tube(s, s.clamped.tube, "clamped", out);
  for (std::size_t i = 0; i < s.stations.size(); ++i) {
    const Tube& own = s.stations[i].clamped;
    if (own.outside || own.bore || own.youngs_modulus)
      check_tube(s, own, "stack[" + std::to_string(i) + "].clamped", out);
  }
}

/// A limit of nought would refuse every run, an interval of nought would be due at once.
template <class Q>
void check_above_nought(const std::optional<Q>& value, const char* field, Problems& out) {
  if (value && !positive(any(*value).si)) refuse(out, Code{"shaft.not_positive"}, field, {}, {{"value", any(*value)}});
}

void check_bending(const ShaftSpec& s, Problems& out) {
  check_above_nought(std::optional{s.bar.youngs_modulus}, "bar.youngs_modulus", out);
  check_above_nought(std::optional{s.bar.density}, "bar.density", out);
  check_above_nought(s.bar.drive_torque, "bar.drive_torque", out);
  for (std::size_t i = 0; i < s.stations.size(); ++i) {
    const std::string at = "stack[" + std::to_string(i) + "]";
    check_above_nought(s.stations[i].stiffness, (at + ".stiffness").c_str(), out);
    if (s.stations[i].mass && !not_negative(s.stations[i].mass->si()))
      refuse(out, Code{"shaft.negative"}, at + ".mass", {}, {{"value", any(*s.stations[i].mass)}});
  }
  for (const FixedLoad& l : s.loads)
    CORE_CHECK(!l.station || (*l.station >= 0 && static_cast<std::size_t>(*l.station) < s.stations.size()));
}

void check_run_and_service(const ShaftSpec& s, Problems& out) {
  check_above_nought(s.test_run.shortest, "test_run.shortest", out);
  check_above_nought(s.test_run.greatest_rise, "test_run.greatest_rise", out);
  check_above_nought(s.test_run.greatest_vibration, "test_run.greatest_vibration", out);
  check_above_nought(s.service.every, "service.every", out);
  check_above_nought(s.service.nuts_again, "service.nuts_again", out);
  if (s.service.seasons && *s.service.seasons < 1)
    refuse(out, Code{"shaft.not_positive"}, "service.seasons", std::to_string(*s.service.seasons),
           {{"value", any_count(*s.service.seasons)}});
}

void check_stations(const ShaftSpec& s, Problems& out) {
  std::size_t rotors = 0, nuts = 0;
  for (std::size_t i = 0; i < s.stations.size(); ++i) {
    const Station& st = s.stations[i];
    const std::string at = "stack[" + std::to_string(i) + "]";
    check_toleranced(st.length, at, out);
    if (!not_negative(st.minutes_off.si()))
      refuse(out, Code{"shaft.negative"}, at + ".off", {}, {{"value", any(st.minutes_off)}});
    if (!not_negative(st.minutes_on.si()))
      refuse(out, Code{"shaft.negative"}, at + ".on", {}, {{"value", any(st.minutes_on)}});
    if (st.kind == StationKind::rotor) CORE_CHECK(st.rotor == static_cast<int>(rotors++));
    if (st.kind == StationKind::nut) CORE_CHECK(st.nut == static_cast<int>(nuts++));
  }
  CORE_CHECK(rotors == s.rotors.size() && nuts == s.nuts.size());
}

Problems all_problems(const ShaftSpec& s) {
  Problems out;
  if (s.stations.size() > kMostStations) {
    refuse(out, Code{"shaft.too_many_stations"}, "stack.order", std::to_string(s.stations.size()),
           {{"greatest", static_cast<std::int64_t>(kMostStations)}});
    return out;
  }
  if (s.rotors.empty() || s.rotors.size() > kMostRotors)
    refuse(out, Code{"shaft.rotor_count"}, "stack.order", std::to_string(s.rotors.size()),
           {{"least", 1}, {"greatest", static_cast<std::int64_t>(kMostRotors)}});
  check_profile(s, out);
  check_pattern(s, out);
  check_stations(s, out);
  for (std::size_t i = 0; i < s.rotors.size(); ++i) check_rotor(s.rotors[i], static_cast<int>(i) + 1, out);
  for (std::size_t i = 0; i < s.nuts.size(); ++i) check_nut(s.nuts[i], static_cast<int>(i), out);
  check_run_and_service(s, out);
  check_bending(s, out);
  check_clamped(s, out);
  for (const FixedUnbalance& u : s.unbalances) {
    check_flat(u.flat, s.profile.flats, "unbalance.flat", out);
    CORE_CHECK(u.station >= 0 && static_cast<std::size_t>(u.station) < s.stations.size());
  }
  return out;
}

}  // namespace

std::string_view name_of(StationKind kind) {
  constexpr std::string_view kNames[] = {"nut", "washer", "spacer", "rotor", "hanger", "pulley", "shoulder", "other"};
  return kNames[static_cast<std::size_t>(kind)];
}

Results<Shaft> Shaft::make(ShaftSpec spec) {
  Problems problems = all_problems(spec);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return Shaft{std::move(spec)};
}

Shaft::Shaft(ShaftSpec spec) : spec_{std::move(spec)} {
  Length at;
  starts_.reserve(spec_.stations.size() + 1);
  for (std::size_t i = 0; i < spec_.stations.size(); ++i) {
    starts_.push_back(at);
    at = at + spec_.stations[i].length.nominal;
    if (spec_.stations[i].kind == StationKind::rotor) rotor_stations_.push_back(static_cast<int>(i));
  }
  starts_.push_back(at);
}

const Rotor& Shaft::rotor(int number) const {
  CORE_CHECK(number >= 1 && number <= rotor_count());
  return spec_.rotors[static_cast<std::size_t>(number) - 1];
}

int Shaft::station_of_rotor(int number) const {
  CORE_CHECK(number >= 1 && number <= rotor_count());
  return rotor_stations_[static_cast<std::size_t>(number) - 1];
}

Length Shaft::middle_of(int station) const {
  CORE_CHECK(station >= 0 && static_cast<std::size_t>(station) < spec_.stations.size());
  const auto i = static_cast<std::size_t>(station);
  return starts_[i] + spec_.stations[i].length.nominal / 2.0;
}

Length Shaft::total_length() const { return starts_.back(); }

Origin Shaft::origin(std::string_view field) const {
  const auto it = spec_.origins.find(field);
  return it == spec_.origins.end() ? Origin{OriginKind::given, std::string{field}} : it->second;
}

Angle azimuth_of_flat(int flat, int flats) { return radians(2 * std::numbers::pi * (flat - 1) / flats); }

int turned_flat(int flat, int by, int flats) { return ((flat - 1 + by) % flats + flats) % flats + 1; }

int flats_out(int read, int wanted, int flats) {
  const int clockwise = ((read - wanted) % flats + flats) % flats;
  return 2 * clockwise > flats ? clockwise - flats : clockwise;
}

int place_seen_from(End end, int flat, int flats) { return end == End::a ? flat : turned_flat(1, 1 - flat, flats); }

}  // namespace flatwise
