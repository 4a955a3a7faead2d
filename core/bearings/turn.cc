#include "core/bearings/turn.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/units/gravity.h"
#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

constexpr double kGolden = 0.6180339887498949;
constexpr int kPlaces = 120;  ///< Places looked at round each ring.
constexpr double kTurn = 2 * std::numbers::pi;

struct Vector {
  double x, y, z;
};
Vector operator+(const Vector& a, const Vector& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
Vector operator*(double k, const Vector& a) { return {k * a.x, k * a.y, k * a.z}; }
double dot(const Vector& a, const Vector& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
Vector cross(const Vector& a, const Vector& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

/// The leaning bearing's directions when the tilt stands at an angle from the ground: in the plane of the tilt, across it, along.
struct Frame {
  Vector tilt, across, along;
};
Frame frame_at(double angle, double lean) {
  const double c = std::cos(angle), s = std::sin(angle), cl = std::cos(lean), sl = std::sin(lean);
  return {{cl * c, cl * s, -sl}, {-s, c, 0}, {sl * c, sl * s, cl}};
}

/// What the rotor passes on to the inner ring. Space: x points at the ground, z along the shaft towards B.
RingLoad load_on_ring(const TurnTask& t, double angle) {
  const Frame f = frame_at(angle, t.rotor.lean.radians());
  const Vector down{1, 0, 0};
  // The tips' circle leans: the tip over the ground lies off the middle along the shaft.
  const Vector level = down + (-dot(down, f.along)) * f.along;
  const Vector tip = (t.rotor.tip_radius.si() / std::sqrt(dot(level, level))) * level;
  const Vector ground{-t.ground.up.si(), t.ground.drag.si(), t.ground.along.si()};
  const Vector weight = (t.rotor.mass.si() * kGravity) * down;
  const Vector out{std::cos(angle), std::sin(angle), 0};
  const Vector force = ground + weight + t.rotor.force.si() * out;
  const Vector couple =
      cross(tip, ground) + cross(t.rotor.mass_offset.si() * f.along, weight) + t.rotor.couple.si() * f.across;
  // The outer ring is pushed by these; the inner ring against it by their opposites. Nothing carries the couple about the axis.
  return {newtons(-dot(force, f.tilt)), newtons(-dot(force, f.across)), newtons(-dot(force, f.along)),
          newton_metres(-dot(couple, f.tilt)), newton_metres(-dot(couple, f.across))};
}

std::optional<Problem> cannot_turn(const TurnTask& t) {
  if (auto bad = outside("lean", any(t.rotor.lean), 0, std::numbers::pi / 4)) return bad;
  if (auto bad = outside("angles", any_count(t.angles), kFewestAngles, kMostAngles)) return bad;
  if (auto bad = negative("mass", any(t.rotor.mass))) return bad;
  if (t.rotor.tip_radius > 0.5 * t.at.bearing.pitch && std::isfinite(t.rotor.tip_radius.si())) return std::nullopt;
  return Problem{Code{"bearings.tips_inside"},
                 "tip_radius",
                 {},
                 {{"radius", any(t.rotor.tip_radius)}, {"pitch", any(0.5 * t.at.bearing.pitch)}},
                 std::nullopt};
}

/// Places round a ring, the first of them at `start`.
Round round_from(const Round& even, Angle start) {
  const double c = std::cos(start.radians()), s = std::sin(start.radians());
  Round turned{std::vector<double>(kPlaces), std::vector<double>(kPlaces)};
  for (std::size_t i = 0; i < kPlaces; ++i) {
    turned.cosine[i] = even.cosine[i] * c - even.sine[i] * s;
    turned.sine[i] = even.sine[i] * c + even.cosine[i] * s;
  }
  return turned;
}
Round evenly_round() {
  Round even;
  for (int i = 0; i < kPlaces; ++i) {
    even.cosine.push_back(std::cos(kTurn * i / kPlaces));
    even.sine.push_back(std::sin(kTurn * i / kPlaces));
  }
  return even;
}

/// Cubes of the load at the places of both rings, added up over the turn.
struct Places {
  Round even = evenly_round();
  std::vector<double> inner = std::vector<double>(kPlaces), outer = std::vector<double>(kPlaces);
};

void add_cubes(const LoadedBearing& b, const RingShift& shift, const Round& places, std::vector<double>& to) {
  std::array<Force, kPlaces> loads;
  loads_round(b, shift, places, loads);
  for (std::size_t i = 0; i < kPlaces; ++i) to[i] += loads[i].si() * loads[i].si() * loads[i].si();
}

/// The inner ring stands in the frame of the tilt; a held outer ring stands in space, which turns back in that frame.
void add(const LoadedBearing& b, const AtAngle& at, Places& places) {
  add_cubes(b, at.shift, places.even, places.inner);
  add_cubes(b, at.shift, round_from(places.even, Angle{} - at.shaft), places.outer);
}

double mean_to_ten_ninths(const std::vector<double>& cubes, int angles) {
  double sum = 0;
  for (const double cube : cubes) sum += std::pow(cube / angles, 10.0 / 9.0);
  return sum / static_cast<double>(cubes.size());
}

RingWear wear_of(const Places& places, OuterRing outer, int angles) {
  double cubes = 0;
  for (const double cube : places.outer) cubes += cube / angles / kPlaces;
  // As reference_life() takes it: the inner ring's to 9/10, the outer's as it is.
  return {std::pow(mean_to_ten_ninths(places.inner, angles), 0.9),
          outer == OuterRing::held ? mean_to_ten_ninths(places.outer, angles) : std::pow(cubes, 10.0 / 9.0)};
}

}  // namespace

Result<Turn> one_turn(const TurnTask& task) {
  if (auto bad = cannot_turn(task)) return tl::unexpected(*std::move(bad));
  Turn turn;
  Places places;
  const double pitch = kTurn / std::max(1, task.at.bearing.balls);
  double phase = 0;
  for (int k = 0; k < task.angles; ++k) {
    AtAngle at;
    at.shaft = radians(kTurn * k / task.angles);
    phase = std::fmod(phase + kGolden, 1.0);
    at.cage = radians(phase * pitch);
    const auto bearing = loaded_bearing(task.at, task.contacts, at.cage);
    if (!bearing) return tl::unexpected(bearing.error());
    at.load = load_on_ring(task, at.shaft.radians());
    const auto rest = rest_under(*bearing, at.load);
    if (!rest) return tl::unexpected(rest.error());
    at.shift = rest->shift;
    at.greatest = rest->greatest;
    at.stress = contact_stress(task.contacts.inner, rest->greatest);
    add(*bearing, at, places);
    turn.radial = std::max(turn.radial, newtons(std::hypot(at.load.x.si(), at.load.y.si())));
    turn.axial = std::max(turn.axial, newtons(std::abs(at.load.z.si())));
    turn.angles.push_back(at);
    if (at.greatest > turn.angles[static_cast<std::size_t>(turn.hardest)].greatest) turn.hardest = k;
  }
  turn.wear = wear_of(places, task.outer, task.angles);
  return turn;
}

AngularSpeed relative_speed(AngularSpeed shaft, Angle lean, AngularSpeed spin) {
  return radians_per_second(shaft.radians_per_second() * std::cos(lean.radians()) - spin.radians_per_second());
}

}  // namespace flatwise::bearings
