// truth.h: one rebuild as it really is: the shaft as drawn, the workshop's gauges with the errors nobody knows, every part
// on the bench, and what the mechanic wrote down. The truth model stands alone: nothing here, nor in any file that only
// includes this folder's truth files, may use the program that is being tested.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "tests/rebuilds/physics.h"
#include "tests/rebuilds/random.h"
#include "tests/rebuilds/typed.h"

namespace rebuilds {

struct Gauge {
  std::string id, use;
  Typed calibration;  ///< U of the certificate, k = 2; a share where `relative`.
  Typed resolution;
  bool relative = false;
  bool inches = false;  ///< Its scale is in inches, pounds or foot-pounds.
  std::optional<Typed> repeatability;
  int study = 0;
  std::optional<Typed> ring, ring_calibration, expansion;
  std::string until, accepted_by;
  // What nobody knows.
  double error = 0;  ///< Of this gauge, SI; or share of the reading.
  double true_expansion = 11.5e-6;
};

struct OwnPress {
  Typed interference, diameter, width, force;
};

struct Shop {
  std::string currency = "EUR";
  Typed room, half_width;
  std::optional<int> rate;
  std::vector<Gauge> gauges;
  std::vector<OwnPress> presses;
  double friction = 0.13,
         friction_sigma = 0;  ///< True friction of the shop's presses; sigma 0: even over the book's range.

  [[nodiscard]] const Gauge& gauge(const std::string& id) const;
  [[nodiscard]] Gauge& gauge(const std::string& id);
};

struct Material {
  std::string name, text;  ///< Text: its table in the file; empty for one the program knows.
  double modulus = 0, poisson = 0, expansion = 0;
};

struct Part {
  std::string kind, label;
  Typed length, tolerance;
  int rotor = 0;
  std::vector<std::pair<std::string, int>> fit_before;
  bool obstacle = false;
  double true_length = 0;  ///< Both halves of a rotor.
};

enum class Rule { facing, step, listed };

struct Nut {
  char end = 'A';
  Typed torque;
  double tolerance = 0.1;
};

/// What the definition asks of the test run; what is not there is not judged.
struct RunLimits {
  std::optional<Typed> shortest, rise, vibration;
};

/// The shaft as drawn.
struct Drawing {
  int flats = 6, rotors = 0;
  Typed across;
  Rule rule = Rule::facing;
  int step = 0;
  std::vector<int> listed;
  std::optional<int> first_flat;
  std::vector<Part> parts;
  std::vector<Nut> nuts;
  std::vector<Typed> lean;  ///< One a rotor; the first that most have stands in [rotor].
  Typed half_length, half_tolerance;
  std::string designation, tolerance_class;
  Typed d, D, B, ring_inside;
  double ring_least = 0, ring_greatest = 0;
  std::string fit;  ///< Empty: limits given.
  Typed bore_least, bore_greatest, hub_outside, loss;
  std::optional<Typed> ovality, taper;
  double ovality_limit = 0, taper_limit = 0;
  Material material;
  int rings = 2, seals = 2;
  bool renew = true, one_sided = false, unbalance = false;
  Typed open_step, least_gap;
  bool least_gap_given = false;
  RunLimits run;

  [[nodiscard]] Joint joint() const;
  [[nodiscard]] int part_of_rotor(int number) const;
};

/// A bore at one plane, at 20 °C.
struct Plane {
  double mean = 0, oval = 0, greatest_at = 0;
};

struct Rotor {
  int number = 0;
  bool off = false, new_set = false;
  int mark_a = 0, mark_b = 0;
  Plane planes[2];
  double part_c = 20, gauge_c = 20;
  bool part_taken = true, gauge_taken = true;
  double ring_outside = 0, friction = 0, force = 0;
  double expansion = 0;
};

/// The test run as it really was.
struct HangerRun {
  double rise = 0, vibration = 0;
};
struct Run {
  bool read = false;  ///< There was one, and somebody wrote it down.
  double seconds = 0, room_c = 20;
  std::map<std::string, HangerRun> hangers;  ///< By label.
};

// --- what the mechanic wrote down ---

struct Counted {
  int laid = 0;
  std::optional<int> left = 0;
};
struct RotorSheet {
  std::optional<int> mark_a, mark_b;
  bool mark_a_unread = false, mark_b_unread = false;  ///< Written "not read".
  std::vector<std::string> bore[2];
  std::string part, gauge_at, thermometer;
  std::optional<std::string> force, ring, fitted, lean_a, lean_b;
  std::vector<std::string> rings_sound;
  std::map<std::string, Counted> counted;
};
struct TorqueSheet {
  char nut = 'A';
  bool bar = false;
  Typed shown;
  std::string gauge;
  std::optional<Typed> length, extension;
};
struct Felt {
  int joint = 0;
  bool passed = false;
};
struct HangerSheet {
  std::optional<Typed> temperature, vibration;
};
struct RunSheet {
  std::optional<Typed> ran, room;
  std::map<std::string, HangerSheet> hangers;
};
struct Sheet {
  std::string date;
  std::vector<int> came_off, still_off, new_set;
  std::optional<std::vector<std::string>> labels_back;
  std::map<int, RotorSheet> rotors;
  std::map<std::string, Typed> parts_measured;  ///< By label.
  std::optional<Typed> stack;
  std::vector<Felt> feelers;
  std::vector<TorqueSheet> torques;
  RunSheet run;
  std::map<std::string, std::map<std::string, std::string>> answers;  ///< Question, about ("" for the shaft), reply.
};

// --- mistakes ---

/// What names a mistake: any finding with one of the codes, at the place, with these arguments.
struct Named {
  std::vector<std::string> codes;
  std::string place;  ///< "rotor 3", "station 5"; empty: anywhere.
  std::vector<std::pair<std::string, std::string>> args;
  std::string todo = {};  ///< Code of the instruction that must come with it; a note will do then.
};

enum class Kind {
  mark_not_read,
  reading_left_out,
  seal_forgotten,
  ring_forgotten,
  grease_forgotten,
  captive_forgotten,
  safety_forgotten,
  label_forgotten,
  recheck_forgotten,
  no_new_set,
  spacer_missing,
  spacer_without_label,
  nut_not_torqued,
  half_out,
  indexed_wrong,
  halves_swapped,
  other_pattern,
  mirrored,
  fixed_contradict,
  spacers_exchanged,
  spacer_doubled,
  inner_ring,
  short_bar,
  joint_open,
  joint_partly_home,
  press_low,
  press_high,
  torque_off,
  wrong_bearing,
  wrong_lean,
  unsound_ring,
  bore_worn,
  bore_oval,
  bore_tapered,
  hot_part,
  gauge_overdue,
  mixed_units,
  run_cut_short,
  run_not_read,
  run_hot,
  run_shakes,
};
inline constexpr int kKinds = static_cast<int>(Kind::run_shakes) + 1;
inline constexpr int kKindsOfRun = 4;  ///< The last of them.

enum class Class { left_out, fitted_wrongly, wrong_part, other };
struct KindRow {
  Kind kind;
  const char* name;  ///< For --break.
  const char* words;
  Class in;
};
[[nodiscard]] const KindRow& row_of(Kind kind);

struct Rebuild;
struct Mistake {
  Kind kind = Kind::half_out;
  std::string told;                     ///< In words, for people who look at one rebuild.
  bool timing = false;                  ///< Named by the marks as a whole (timing_truth.h), not by `names`.
  std::vector<Named> names;             ///< All of these must be there.
  double promised = 1;                  ///< Chance that it is called out. Under 1: gauge-limited.
  double pass_allowed = 0;              ///< Chance of "in" that the uncertainty allows.
  std::vector<Named> out, cannot_tell;  ///< Gauge-limited: any of these.
  std::vector<std::string>
      not_out;              ///< Place, and beginnings of codes that must not be 'out' there: nothing sound to judge by.
  std::string other_plane;  ///< ... of this plane they may: its readings are sound.
  std::function<void(Rebuild&, Mistake&, Random&)> after;  ///< Done to the sheet once everything was read.
  std::vector<std::pair<int, char>> halves;  ///< Timing: the halves that were put wrong, rotor and 'a' or 'b'.
  std::string typed, right;                  ///< Wrong unit: as typed, and as it should have been.
  int step = 0;                              ///< Timing: built in steps of so many flats, the shorter way.

  [[nodiscard]] bool discrete() const { return promised >= 1 - 1e-6; }
};

/// A decision of a gauge about something sound, and the chance that it is called out all the same.
struct SoundDecision {
  const char* about;
  double chance_out = 0;
};

struct Rebuild {
  unsigned long long seed = 0;
  Drawing drawing;
  Shop shop;
  std::vector<Rotor> rotors;  ///< Index 0 is rotor 1.
  int from_a = 0, from_b = 0;
  std::vector<bool> part_off;
  double gap = 0;               ///< Of joints not home.
  int open_joint = 0;           ///< Which, counted from end A; a rotor is two parts.
  double true_stack_extra = 0;  ///< Parts missing (-) or too many (+).
  Run run;
  std::vector<std::string> labels;  ///< Spacers as really put back, from end A.
  std::vector<Mistake> mistakes;
  std::vector<std::string> claimed;  ///< Places a mistake has to itself.
  std::vector<SoundDecision> sound;
  Sheet sheet;

  [[nodiscard]] Rotor& rotor(int number) { return rotors[static_cast<std::size_t>(number) - 1]; }
  [[nodiscard]] const Rotor& rotor(int number) const { return rotors[static_cast<std::size_t>(number) - 1]; }
  [[nodiscard]] std::vector<int> off() const;
  [[nodiscard]] std::vector<int> fixed() const;
};

/// The whole of a rebuild with `wanted` mistakes; fewer where the shaft has no room for more. `first` is put in if it can be.
[[nodiscard]] Rebuild make_rebuild(unsigned long long seed);

// The steps of make_rebuild, in order.
void draw_shaft(Rebuild& to, Random& random);
void draw_shop(Rebuild& to, Random& random);
void build_right(Rebuild& to, Random& random);
/// Puts in a mistake of the kind. False: not on this shaft, or no room left.
bool put_mistake(Rebuild& to, Kind kind, Random& random);
void read_everything(Rebuild& to, Random& random);
/// Chances of false alarms of everything sound (once everything is read).
void weigh_sound(Rebuild& to);

struct Texts {
  std::string shaft, workshop, readings;
};
[[nodiscard]] Texts write(const Rebuild& rebuild, Random& random);

}  // namespace rebuilds
