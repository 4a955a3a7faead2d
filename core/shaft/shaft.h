// shaft.h: what a shaft is made of, from end A to end B. Plain values; Shaft checks them once when it is made.
//
// Frames (docs/vocabulary.md): z runs from end A to end B. Flats count 1..n clockwise seen from end A looking towards B;
// azimuth of flat f is 2 pi (f - 1) / n.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/problem.h"
#include "core/units/quantity.h"
#include "core/working/working.h"

namespace flatwise {

enum class End { a, b };
enum class Half { a, b };  ///< The adapter half on the A side or on the B side of a rotor.

struct Profile {
  int flats = 6;  ///< Equal flats, or index positions of a spline or keyed hub. 3 to 24; even where pairs lean.
  Length across_flats;
  friend bool operator==(const Profile&, const Profile&) = default;
};

/// How the rotors are indexed along the shaft: the tilt azimuth of each from the one before it.
struct Pattern {
  enum class Rule {
    facing,  ///< Facing marks of neighbours on the same flat: each rotor half a turn from the one before.
    step,    ///< Each rotor `step_flats` flats clockwise (seen from A) from the one before. Hand is free.
    listed,  ///< The flat of half A of each rotor, listed. Hand is fixed.
  };
  Rule rule = Rule::facing;
  int step_flats = 0;
  std::vector<int> flats = {};  ///< Rule listed: one a rotor, 1..n.
  std::optional<int> first_flat =
      std::nullopt;  ///< Flat of half A of rotor 1, where something else on the shaft fixes it.
};

/// Length with its own limits: nominal - below to nominal + above.
struct Toleranced {
  Length nominal;
  Length above;
  Length below;
};
struct Limits {
  Length least;
  Length greatest;
  friend bool operator==(const Limits&, const Limits&) = default;
};

struct Material {
  std::string name;  ///< Dictionary word "material.<name>" where we know it, else the shop's own word.
  Pressure youngs_modulus;
  double poisson = 0.3;
  Pressure yield;
  double expansion_per_kelvin = 0.0;
  double expansion_relative_half_width = 0.1;  ///< Rectangular; default assumed.
  friend bool operator==(const Material&, const Material&) = default;
};

enum class ClearanceGroup { c2, cn, c3, c4, c5 };  ///< ISO 5753-1.
enum class ToleranceClass { normal, p6, p5 };      ///< ISO 492.
// As they are written, in files and in figures: by the order of the enum.
inline constexpr std::array<std::string_view, 5> kClearanceGroups{"C2", "CN", "C3", "C4", "C5"};
inline constexpr std::array<std::string_view, 3> kToleranceClasses{"normal", "P6", "P5"};

/// Of the lubricant as it runs: the classes of ISO 281 from high to severe.
enum class Cleanliness { high, normal, slight, typical, severe };
inline constexpr std::array<std::string_view, 5> kCleanlinesses{"high", "normal", "slight", "typical", "severe"};

/// The inside of a bearing as it was counted, measured or read in its maker's catalogue. What is not there is estimated from the
/// boundary dimensions, or worked out by ISO 281 and ISO 76.
struct BearingInside {
  std::optional<int> balls = std::nullopt;
  std::optional<Length> ball_diameter = std::nullopt;
  std::optional<Length> pitch_diameter = std::nullopt;
  std::optional<double> groove_inner = std::nullopt;  ///< Radius of the groove, as a share of the ball's diameter.
  std::optional<double> groove_outer = std::nullopt;
  std::optional<Force> dynamic_rating = std::nullopt;  ///< C
  std::optional<Force> static_rating = std::nullopt;   ///< C0
  friend bool operator==(const BearingInside&, const BearingInside&) = default;
};

/// How a bearing is oiled, how clean it stays and how many are to outlive the life that is said. What is not there is assumed.
struct BearingCare {
  std::optional<Viscosity> viscosity = std::nullopt;  ///< Of the oil, or the grease's base oil, as warm as it runs.
  std::optional<Cleanliness> cleanliness = std::nullopt;
  std::optional<double> reliability = std::nullopt;            ///< 0.9 to 0.9995.
  std::optional<TemperatureRise> inner_warmer = std::nullopt;  ///< Inner ring and balls over the outer ring.
  friend bool operator==(const BearingCare&, const BearingCare&) = default;
};

struct Bearing {
  std::string designation;  ///< The shop's word for what must be fitted; compared with what was fitted.
  Length bore;
  Length outside;
  Length width;
  ClearanceGroup clearance = ClearanceGroup::cn;
  ToleranceClass tolerance = ToleranceClass::normal;
  Angle permissible_misalignment = arc_minutes(10);  ///< Default assumed.
  Temperature greatest_heating = celsius(110);       ///< Default assumed.
  Length
      outer_ring_inside;  ///< Raceway-side diameter of the outer ring for the thick-ring formula; estimated if not given.
  BearingInside inside = {};
  BearingCare care = {};
  friend bool operator==(const Bearing&, const Bearing&) = default;
};

struct Hub {
  Limits bore;            ///< At 20 °C.
  std::string fit_code;   ///< "100 N7" when the limits came from one, else empty.
  Length outside;         ///< Diameter that carries the hoop stress.
  Length ovality_limit;   ///< On diameter. Default half the size tolerance, assumed.
  Length taper_limit;     ///< Between the planes, on diameter. Default half the size tolerance, assumed.
  Length roughness_loss;  ///< Interference lost by flattening, on diameter.
  Material material;
  friend bool operator==(const Hub&, const Hub&) = default;
};

enum class SnapRings { none, one, two };

struct Priced {
  std::string part_number;
  std::optional<double> price;  ///< In the shop's currency units.
};

struct Rotor {
  Mass mass;
  Inertia across;      ///< Transverse inertia about the wobble centre.
  Inertia along;       ///< Polar inertia.
  Length mass_offset;  ///< Centroid from the wobble centre along the rotor axis, positive towards B.
  Length tip_radius;
  Length tine_width;
  int tines = 8;     ///< For the drawing.
  Angle lean;        ///< Bore inclination of the adapter halves.
  std::string mark;  ///< Form of the timing mark ("notch", "punch", ...), in the shop's words.
  Toleranced half;   ///< Clamped length of one adapter half.
  std::optional<Limits> seat =
      std::nullopt;            ///< Of the halves, for the inner ring, at 20 °C. None: its fit is not known.
  std::string seat_code = {};  ///< "55 k6" when the limits came from one.
  Bearing bearing;
  Hub hub;
  SnapRings snap_rings = SnapRings::two;
  int seals = 2;
  Priced adapter_set;  ///< Both halves and the bearing, sold and fitted as one set.
  Priced seal;
  Priced snap_ring;
};

/// Roughness of faces and thread, by their peak-to-valley height Rz.
enum class Faces { smooth, turned, rough };  ///< Under 10 um, 10 to 40 um, 40 to 160 um.

/// The tube of a part that carries the clamping force: not its housing, its tines or its grooves.
struct Tube {
  std::optional<Length> outside = std::nullopt;
  std::optional<Length> bore =
      std::nullopt;  ///< Round. None: the profile's own section is what is missing in the middle.
  std::optional<Pressure> youngs_modulus = std::nullopt;
};

enum class StationKind { nut, washer, spacer, rotor, hanger, pulley, shoulder, other };

/// Lower-case name of a kind ("hanger"); its word is "station.<name>".
[[nodiscard]] std::string_view name_of(StationKind kind);

/// Something that must go in before a station, because the station then hides it.
struct CaptivePart {
  std::string name;  ///< "flange bolts"
  int count = 1;
};

struct Station {
  StationKind kind = StationKind::spacer;
  std::string own_kind;  ///< StationKind::other: the shop's word.
  int number = 0;        ///< Counts its kind from end A, from 1; 0 for kinds that stand once.
  std::string label;     ///< What is written on its label and said: "S3", "4", "hanger A", "pulley".
  Toleranced length;     ///< Along the shaft, clamped; a nut's is drawn but not in the stack.
  Length outside;        ///< Outer diameter, for the drawing.
  Time minutes_off;
  Time minutes_on;
  bool obstacle = false;  ///< Nothing passes it and it does not come off.
  std::vector<CaptivePart> fit_before;
  Priced part;
  int rotor = -1;                                     ///< StationKind::rotor: index into ShaftSpec::rotors.
  int nut = -1;                                       ///< StationKind::nut: index into ShaftSpec::nuts.
  std::optional<Stiffness> stiffness = std::nullopt;  ///< Of a hanger, across the shaft. Not there: it does not give.
  std::optional<Mass> mass = std::nullopt;            ///< What turns with the shaft there; not a rotor's.
  Tube clamped = {};                                  ///< What it states of its own; the rest is ShaftSpec::clamped's.
};

struct Thread {
  std::string designation;  ///< "1 1/2-6 UNC", "M36x3"
  Length major;
  Length pitch;
};
enum class Lubrication { dry, oiled, greased, moly, zinc };

struct Nut {
  End end = End::a;
  Torque torque;
  double torque_tolerance = 0.10;  ///< Either side, relative. Default assumed.
  Thread thread;
  Lubrication lubrication = Lubrication::oiled;
  double nut_factor_least = 0.0;  ///< K; from the definition, or the published range for the lubrication.
  double nut_factor_greatest = 0.0;
  std::string strength_class;                 ///< "grade 8", "10.9"; empty when not given.
  int order = 1;                              ///< Which nut is pulled first.
  std::optional<Torque> snug = std::nullopt;  ///< At which every joint is home: the angle is counted from there.
};

/// Unbalance that is not a rotor's: a pulley's or the shaft's own.
struct FixedUnbalance {
  int station = 0;  ///< Index of the station it sits at.
  Unbalance amount;
  int flat = 1;
};

/// The bar that all sits on, as it bends and twists.
struct Bar {
  Pressure youngs_modulus = gigapascals(207);  ///< Steel; default assumed.
  double poisson = 0.29;                       ///< Default assumed.
  Density density = Density::from_si(7850);    ///< Default assumed.
  std::optional<Torque> drive_torque = std::nullopt;
};

/// What the nuts clamp. Without an outside diameter nothing is said of turn and settling.
struct Clamped {
  Tube tube = {};  ///< Of every part that does not state its own. Steel where no modulus is given, assumed.
  Faces faces = Faces::turned;  ///< Default assumed.
};
inline constexpr Pressure kSteelModulus = gigapascals(207);

/// Force that does not turn with the shaft: belt pull, soil. Directions count clockwise from straight up, seen from end A.
struct FixedLoad {
  std::optional<int> station = std::nullopt;  ///< Index; none: at every rotor.
  Force force;
  Angle direction = degrees(180);  ///< Default assumed: down.
  Force along = {};                ///< Along the shaft, positive towards B.
};

struct Policies {
  bool renew_disturbed =
      true;  ///< Every rotor that left the shaft gets a new adapter-and-bearing set. Common practice.
  enum class DecisionRule { guard_u, one_sided } decision = DecisionRule::guard_u;  ///< ISO 14253-1.
  Time look_at_a_mark = minutes(1);                                                 ///< Default assumed.
  Time turn_a_half = minutes(5);  ///< Default assumed: a rotor in hand, one half drawn, turned and put home.
  TemperatureRise furthest_from_20 = kelvins(15);  ///< Beyond it a reading cannot tell until the part has cooled.
  Length open_joint_step = millimetres(1.5);       ///< What a joint adds when it is not home.
  Length least_open_gap = micrometres(750);        ///< Least gap that matters. Default half the step, assumed.
  Force one_person_pull = newtons(400);            ///< Default assumed.
};

/// What the test run is judged by. What is not there is not judged, and not asked for.
struct TestRun {
  std::optional<Time> shortest = std::nullopt;                  ///< How long it has to run.
  std::optional<TemperatureRise> greatest_rise = std::nullopt;  ///< Of a hanger above the room.
  std::optional<Speed> greatest_vibration = std::nullopt;       ///< Of a hanger's housing, rms.
};

/// When the shaft is to be looked at again, counted from the job. What is not there is not said.
struct Service {
  std::optional<Time> every = std::nullopt;  ///< Hours on the meter from job to job.
  std::optional<int> seasons = std::nullopt;
  std::optional<Time> nuts_again = std::nullopt;  ///< Running hours after which the nuts are checked once more.
};

struct ShaftSpec;
/// A field that is not exactly known, and the shaft as it would be with that field one standard uncertainty to either side.
struct FieldDoubt {
  std::string meaning;  ///< Word of the key: "definition.field.rotor.mass".
  AnyQuantity value;
  Uncertainty u;
  bool anywhere = false;  ///< Anywhere between two ends, the middle no likelier; else about its middle.
  std::shared_ptr<const ShaftSpec> above = nullptr, below = nullptr;
};

struct ShaftSpec {
  std::string name;
  bool invented = false;  ///< Demo data: said on every sheet.
  Profile profile;
  End drive_end = End::b;
  AngularSpeed speed;
  std::optional<Speed> travel;  ///< Over the ground; rotors roll at travel / rolling radius.
  std::optional<Length> rolling_radius;
  Pattern pattern;
  std::vector<Station> stations;  ///< From end A to end B.
  std::vector<Rotor> rotors;      ///< One a rotor station, in order.
  std::vector<Nut> nuts;          ///< One a nut station, in order.
  std::vector<FixedUnbalance> unbalances;
  Bar bar = {};
  Clamped clamped = {};
  std::vector<FixedLoad> loads = {};
  Policies policies;
  TestRun test_run = {};
  Service service = {};
  std::string currency = {};  ///< Three letters: of every price above; empty where there is none.
  std::map<std::string, Origin, std::less<>> origins;  ///< By field path; what is not here was given.
  std::map<std::string, FieldDoubt, std::less<>> doubts =
      {};  ///< By path in the file; what is not here is exactly known.
};

/// Where a station's middle lies, and what stands between two rotors.
class Shaft {
 public:
  /// Checks what one field alone cannot show: rotors and pattern agree, flats are even where pairs lean, listed flats
  /// exist, every rotor and nut station has its data, lengths are positive, a bearing fits its hub, unbalance needs a
  /// first flat, at most 100,000 stations and 240 rotors. Gives every problem at once.
  [[nodiscard]] static Results<Shaft> make(ShaftSpec spec);

  [[nodiscard]] const ShaftSpec& spec() const { return spec_; }
  [[nodiscard]] int flats() const { return spec_.profile.flats; }
  [[nodiscard]] int rotor_count() const { return static_cast<int>(spec_.rotors.size()); }
  [[nodiscard]] const std::vector<Station>& stations() const { return spec_.stations; }
  [[nodiscard]] const Rotor& rotor(int number) const;    ///< number 1..N.
  [[nodiscard]] int station_of_rotor(int number) const;  ///< Index into stations().
  [[nodiscard]] Length start_of(int station) const { return starts_[static_cast<std::size_t>(station)]; }
  [[nodiscard]] Length middle_of(int station) const;
  [[nodiscard]] Length total_length() const;  ///< All stations, nuts too: what is drawn.
  [[nodiscard]] Length rotor_position(int number) const { return middle_of(station_of_rotor(number)); }
  /// Origin of a field: as recorded, or given when nothing was recorded.
  [[nodiscard]] Origin origin(std::string_view field) const;

 private:
  explicit Shaft(ShaftSpec spec);
  ShaftSpec spec_;
  std::vector<Length> starts_;
  std::vector<int> rotor_stations_;
};

/// Azimuth of flat f (1..n) on a profile of n flats.
[[nodiscard]] Angle azimuth_of_flat(int flat, int flats);
/// Flat brought back into 1..n after adding whole flats.
[[nodiscard]] int turned_flat(int flat, int by, int flats);
/// Flats by which `read` lies clockwise (seen from A) of `wanted`, the shorter way: -n/2+1 .. n/2.
[[nodiscard]] int flats_out(int read, int wanted, int flats);
/// Flat number at the same place of a drawing seen from end B, where clockwise is the other way round; flat 1 stays up.
[[nodiscard]] int place_seen_from(End end, int flat, int flats);

}  // namespace flatwise
