// bench.h: what the workshop has, and what was read and answered at the bench for one shaft. Plain facts, each with the
// place it came from; nothing here is judged. Today it is read from a readings file; the record folds its entries into
// the same struct.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/teardown/split.h"
#include "core/units/any_quantity.h"
#include "core/units/problem.h"

namespace flatwise {

/// A calendar day, ISO 8601, proleptic Gregorian. Comparable; no clock, no zone.
struct Day {
  int year = 0, month = 0, day = 0;
  friend auto operator<=>(const Day&, const Day&) = default;
};

/// A fact somebody told: the value, what was typed, and where.
template <class T>
struct Told {
  T value{};
  std::string typed;
  Place place;
};

/// One certificate of a gauge: in force from its day until it runs out.
struct Certificate {
  std::optional<Day> from;  ///< None: it came with the gauge, and its day was not noted.
  Day until;
  double expanded_si = 0;  ///< As Gauge::calibration_expanded_si.
};

struct Gauge {
  std::string id;
  enum class Use {
    bore_gauge,
    thermometer,
    length,
    feeler,
    wrench,
    press_gauge,
    vibration_meter
  } use = Use::bore_gauge;
  Kind kind = Kind::length;            ///< What it shows.
  double calibration_expanded_si = 0;  ///< U of its certificate, k = 2. Relative (ratio) when `relative`.
  bool relative = false;               ///< calibration_expanded is a share of the reading (wrenches and the like).
  double resolution_si = 0;
  std::optional<double> repeatability_si;  ///< Standard deviation of one reading, from its own study.
  int repeatability_readings = 0;          ///< Readings in that study; degrees of freedom are one less.
  double expansion_per_kelvin = 11.5e-6;   ///< Of the gauge; default steel, assumed.
  std::optional<Length> setting_ring;      ///< Ring the gauge is set with, and its U (k = 2).
  Length setting_ring_expanded;
  std::optional<Length> least_readable, greatest_readable;
  Day calibrated_until;
  std::vector<Certificate> certificates;  ///< All that hold, in the order noted; empty: only the one above is known.
  std::optional<std::string> accepted_overdue_by;  ///< Somebody responsible accepted it although overdue, by name.
  Place place;
};

/// Finished presses of the shop with measured bores: what its own friction is fitted from.
struct ShopPress {
  Length interference;
  Length joint_diameter, width;
  Force force;
};

struct StockItem {
  std::string part_number;
  std::string name;
  int on_shelf = 0, on_order = 0;
  int least = 0;  ///< What should always lie there; nought: nobody said.
};

struct Workshop {
  std::string name;
  bool invented = false;
  std::string currency;                 ///< Three letters.
  std::optional<double> rate_per_hour;  ///< In currency units.
  Temperature room = celsius(20);       ///< Used where a temperature was not taken, rectangular +- 5 K, assumed.
  TemperatureRise room_half_width = kelvins(5);
  std::vector<Gauge> gauges;
  std::vector<ShopPress> presses;
  std::vector<StockItem> stock;
  std::map<std::string, Origin, std::less<>> origins;  ///< "workshop.room", "gauge.<id>.expansion", ...; else given.
};

enum class Reply { yes, no, not_seen };
enum class RingPressed { outer, inner, not_seen };

struct MarkRead {
  int rotor = 0;
  Half half = Half::a;
  Told<int> flat;
};
struct BoreReading {
  int rotor = 0;
  char plane = 'A';  ///< 'A' or 'B': the planes at the bearing's edges.
  Angle direction;   ///< Round the bore; the same angle + 180° is the same diameter.
  Told<Entered> diameter;
  std::string gauge;
  std::optional<Told<Entered>> part_temperature, gauge_temperature;
  std::string thermometer;  ///< Gauge id, when a temperature was taken with one that has a certificate.
};
struct StackReading {
  Told<Entered> length;
  std::string gauge;
};
struct FeelerReading {
  int joint = 0;
  bool passed = false;
  std::optional<Told<Entered>> blade;
  std::string gauge;
  Place place;
};
struct PartLength {
  int station = 0;
  std::optional<Half> half;
  Told<Entered> length;
  std::string gauge;
};
struct PressReading {
  int rotor = 0;
  Told<Entered> force;
  std::string gauge;
  std::optional<Told<RingPressed>> ring;
};
/// One point of the force over the ring's way in.
struct PressPoint {
  int rotor = 0;
  Told<Entered> travel, force;
  std::string gauge;
};
struct TorquePull {
  End nut = End::a;
  enum class With { wrench, bar } with = With::wrench;
  Told<Entered> shown;  ///< Wrench: the setting or reading. Bar: the pull at its end.
  std::string gauge;
  std::optional<Told<Entered>> tool_length;  ///< Nut to the middle of the grip (bar), drive to grip (wrench).
  std::optional<Told<Entered>> extension;    ///< E, along the wrench when its angle is nought.
  Angle extension_angle;
  Angle pull_angle = degrees(90);
  double multiplier = 1.0;
  std::optional<Told<Entered>> turned;  ///< From snug to this reading.
};
/// The second pull, after the run.
struct SecondPull {
  End nut = End::a;
  Told<Entered> turned;  ///< Till the same torque was reached again.
  std::string gauge;
};
struct LabelBack {
  std::string label;
  Place place;
};  ///< In order from end A as put back; "" where a spacer had none.
struct Fitted {
  int rotor = 0;
  Told<std::string> designation;
};
struct LeanMarked {
  int rotor = 0;
  Half half = Half::a;
  Told<Entered> angle;
};
struct ReusedRing {
  int rotor = 0;
  Told<Reply> sound;
};
/// Count-out of one kind of part on one tray: how many were laid on it before the press, how many are left on it after.
/// `item` is a key of job/kit.h ("set", "seal", "snap_ring").
struct Counted {
  int rotor = 0;
  std::string item;
  Told<int> laid;
  std::optional<Told<int>> left;
};

/// What hand, eye and ear find at a part.
enum class Sign { rough, hot, grease_out, noisy, sound };
/// One sign looked for at a part: there (yes), not there (no), or not looked at.
struct PartLook {
  Where part;
  Sign sign = Sign::rough;
  Told<Reply> reply;
};
/// What bore the rotor while it was rocked: sling or hands, or its bearing.
enum class Held { carried, hanging };
/// Whole swing of a dial at a tine, pushed and pulled, how far from the axis the dial stood, and how the rotor was held.
struct PlayReading {
  int rotor = 0;
  Told<Entered> swing;
  std::string gauge;
  std::optional<Told<Entered>> radius;               ///< None: at the tine tips.
  std::optional<Told<Held>> held = std::nullopt;     ///< None: taken as carried.
  std::optional<Told<Entered>> push = std::nullopt;  ///< At the dial, one way and the other; only of one that hung.
};
/// What was read on the test run. Vibration is the rms speed of the bearing's housing.
enum class RunQuantity { room, hanger, vibration, minutes };
struct RunReading {
  RunQuantity what = RunQuantity::hanger;
  int station = 0;  ///< Of the hanger, index + 1; 0 for the room and the whole run.
  Told<Entered> value;
  std::string gauge;
};

/// A 'before you go on' question with its answer. Ids are those of job/questions.h, with the rotor or station they are for.
struct Answered {
  std::string question;
  int number = 0;
  std::string about;
  Told<Reply> reply;
};

/// Spacers seen lying at the place of one: as it came apart, or as it went back.
enum class Phase { teardown, assembly };
struct SpacerSeen {
  Phase phase = Phase::teardown;
  int station = 0;    ///< Index.
  Told<int> count;    ///< Nought: it is missing. Two or more: doubled.
  std::string label;  ///< Read on it where it is not the one that belongs there.
};
/// From which end the shaft was opened, as somebody said.
struct Opened {
  teardown::OpenedFrom from = teardown::OpenedFrom::both;
  int rotors_from_a = 0;  ///< With both: rotors 1 to this one. 0: nobody counted.
  Place place;
};

struct Bench {
  std::string job;
  Day date;  ///< Day of the readings: gauges are judged against it.
  std::string file;
  std::optional<Told<Entered>> hour_meter;  ///< Of the machine, at the booking in.
  std::vector<int> came_off;                ///< Rotors that left the shaft, by number.
  std::vector<int> still_off;               ///< Of these, not back on the shaft at this moment.
  std::optional<Opened> opened;             ///< None: nobody said; told by the rotors alone.
  std::vector<int> parts_off;               ///< Stations (index + 1) of other parts said to have come off, one by one.
  std::vector<int> parts_still_off;         ///< Of these, not back on the shaft at this moment.
  std::vector<SpacerSeen> spacers_seen;
  std::vector<int> new_set;   ///< Rotors that got a new adapter-and-bearing set in this job.
  std::vector<int> kept_set;  ///< Rotors of which somebody said that they keep the old one. A readings file cannot.
  std::vector<MarkRead> marks;
  std::vector<BoreReading> bores;
  std::vector<PartLength> part_lengths;
  std::vector<StackReading> stack;
  std::vector<FeelerReading> feelers;
  std::vector<PressReading> presses;
  std::vector<PressPoint> press_points;  ///< In the order they were read.
  std::vector<TorquePull> torques;
  std::vector<SecondPull> second_pulls;
  std::optional<std::vector<LabelBack>> labels_back;  ///< None: nobody noted the order.
  std::vector<Fitted> fitted;
  std::vector<LeanMarked> leans;
  std::vector<ReusedRing> reused_rings;
  std::vector<Counted> counted;
  std::vector<Counted> scrapped;  ///< Old pieces in the scrap box: `laid` is how many lie there.
  std::vector<Answered> answers;
  bool led =
      false;  ///< The record led the job since somebody chose in it what to open: more is asked than of a readings file.
  std::vector<PlayReading> plays;
  std::vector<PartLook> looks;
  std::vector<RunReading> runs;
};

}  // namespace flatwise
