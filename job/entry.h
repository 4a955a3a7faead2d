// entry.h: what people confirmed about a job, one entry each, never changed afterwards. One struct a kind; a new kind breaks
// the build in every place that must know it (job/entry_fields.h lists the fields once for reading, writing and the schema).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/units/any_quantity.h"
#include "core/working/working.h"
#include "job/bench.h"
#include "job/questions.h"

namespace flatwise::job {

/// RFC 9562 UUID in lower case, version 7 where we make it: sorts by the time it was made.
using Id = std::string;
/// Milliseconds since 1970-01-01T00:00Z, as the device's clock had it.
struct Instant {
  std::int64_t ms = 0;
  friend auto operator<=>(const Instant&, const Instant&) = default;
};
[[nodiscard]] Day day_of(Instant at);  ///< In UTC, as the record has it.

enum class Role { bench, lead, owner };

/// Booked in: the first entry of every job.
struct BookedIn {
  std::string number;  ///< As the workshop counts its jobs: "31".
  Id machine;
  Id shaft;               ///< Version of the definition that the job goes by.
  std::string complaint;  ///< In the customer's words.
  std::optional<Entered> hour_meter;
  std::optional<Day> due;
};
/// A 'before you go on' question answered (job/questions.h).
struct Answered {
  std::string question;
  int number = 0;  ///< Of the rotor, nut or station it is asked of; 0: the shaft.
  Reply reply = Reply::yes;
};
/// What hand, eye and ear find at a part.
using flatwise::Sign;
struct Looked {
  Where part;
  Stage stage = Stage::booking_in;
  Sign sign = Sign::rough;
  Reply reply = Reply::yes;
};
/// Whole swing of a dial at a tine, pushed and pulled.
using flatwise::Held;
struct PlayRead {
  int rotor = 0;
  Entered swing;
  std::string gauge;
  std::optional<Entered> radius;               ///< Dial from the axis.
  std::optional<Held> held = std::nullopt;     ///< None: nobody told; taken as carried.
  std::optional<Entered> push = std::nullopt;  ///< At the dial, one way and the other, where it hung.
};
struct PhotoTaken {
  Where part;
  Stage stage = Stage::booking_in;
  std::string blob;  ///< SHA-256 of the bytes, hex.
  std::string type;  ///< "image/jpeg"
  std::string says;
};
struct NoteWritten {
  Where part;
  Stage stage = Stage::booking_in;
  std::string text;
};
/// What to open and what to renew: one of the three ways.
struct WayChosen {
  std::vector<int> open;
  std::string way;  ///< "failed_only", "disturbed", "all".
};
struct CustomerSaid {
  Reply reply = Reply::yes;
  std::string who, how;          ///< "by telephone"
  std::optional<Entered> price;  ///< What was agreed.
};
struct Ordered {
  std::string part_number;
  int count = 0;
  std::optional<Day> expected;
};
struct Received {
  std::string part_number;
  int count = 0;
};
/// One step of the tear-down or of the way back done.
using flatwise::Phase;
struct StepDone {
  Phase phase = Phase::teardown;
  std::string step;  ///< Key of the step: job/steps.h.
  Reply reply = Reply::yes;
};
struct TakenOff {
  int station = 0;  ///< Index + 1.
};
struct PutOn {
  int station = 0;
};
/// From which end the shaft was opened, said by hand where it differs from the plan.
struct OpenedBy {
  teardown::OpenedFrom from = teardown::OpenedFrom::both;
  int rotors_from_a = 0;  ///< With both: rotors 1 to this one came off at end A; 0: as it is cheapest.
};
/// Spacers that lie at the place of one: none, two, or another one's.
struct SpacersFound {
  Phase phase = Phase::teardown;
  int station = 0;  ///< The place, index + 1.
  int count = 1;
  std::string label;  ///< Read on it; empty: the one that belongs there.
};
struct BoreRead {
  int rotor = 0;
  char plane = 'A';
  int direction = 1;   ///< 1 .. directions, clockwise seen from end A, the first at the stamped tine.
  int directions = 4;  ///< Evenly spread over half a turn.
  Entered diameter;
  std::string gauge;
};
/// Temperature of the part or of the gauge while a rotor's bore was read.
enum class Measured { part, gauge };
struct TemperatureRead {
  int rotor = 0;
  Measured what = Measured::part;
  Entered temperature;
  std::string thermometer;
};
struct SetRenewed {
  int rotor = 0;
  Reply reply = Reply::yes;
};
struct FittedRead {
  int rotor = 0;
  std::string designation;
};
struct LeanRead {
  int rotor = 0;
  Half half = Half::a;
  Entered angle;
};
struct RingSound {
  int rotor = 0;
  int ring = 1;  ///< 1 the ring on the A side, 2 on the B side.
  Reply sound = Reply::yes;
};
/// Pieces of one kind laid on a rotor's tray before the press, and left on it after. `item` as in job/kit.h.
struct Laid {
  int rotor = 0;
  std::string item;
  int count = 0;
};
struct LeftOver {
  int rotor = 0;
  std::string item;
  int count = 0;
};
/// Old pieces of one kind, out of this rotor, that lie in the scrap box: none of them can go back in by mistake.
struct Scrapped {
  int rotor = 0;
  std::string item;
  int count = 0;
};
struct Pressed {
  int rotor = 0;
  Entered force;
  std::string gauge;
};
/// One point of the force over the ring's way in.
struct PressPointRead {
  int rotor = 0;
  int point = 1;   ///< 1, 2, 3, ... as they were read.
  Entered travel;  ///< From where the ring's edge met the hub's.
  Entered force;
  std::string gauge;
};
struct RingPressedSeen {
  int rotor = 0;
  RingPressed ring = RingPressed::outer;
};
struct MarkSeen {
  int rotor = 0;
  Half half = Half::a;
  int flat = 0;
};
struct LabelPutBack {
  int position = 0;   ///< 1 for the first spacer from end A.
  std::string label;  ///< Empty: it had none.
};
struct StackRead {
  Entered length;
  std::string gauge;
};
struct FeelerTried {
  int joint = 0;
  bool passed = false;
  std::optional<Entered> blade;
  std::string gauge;
};
struct PartMeasured {
  int station = 0;
  std::optional<Half> half;
  Entered length;
  std::string gauge;
};
struct NutPulled {
  End nut = End::a;
  TorquePull::With with = TorquePull::With::wrench;
  Entered shown;
  std::string gauge;
  std::optional<Entered> tool_length, extension, extension_angle, pull_angle;
  double multiplier = 1.0;
  std::optional<Entered> turned = std::nullopt;  ///< From snug to this reading, as seen at nut and shaft.
};
/// The tool at hand for a nut, before the pull: what the sheet reckons with, and what the reading then keeps.
struct ToolTaken {
  End nut = End::a;
  Entered length;                           ///< Nut to the middle of the grip.
  std::optional<Entered> extension, ratio;  ///< Ratio of a multiplier, a plain number.
};
/// The second pull, after the run: how far the nut went till the same torque was reached again.
struct NutPulledAgain {
  End nut = End::a;
  Entered turned;
  std::string gauge;  ///< The wrench; a bar may come without one.
};
using flatwise::RunQuantity;
struct RunRead {
  RunQuantity what = RunQuantity::hanger;
  int station = 0;  ///< Of the hanger, index + 1; 0 for the room and the whole run.
  Entered value;
  std::string gauge;
};
/// Somebody who did not set it looked again at a rotor's marks.
struct SecondLook {
  int rotor = 0;
  Reply right = Reply::yes;
};
struct GaugeAccepted {
  std::string gauge;
  std::string reason;
};
/// Signed for what the record held up to the entry that this one follows.
struct Signed {
  Role as = Role::bench;
};
struct Released {
  bool forced = false;
  std::string reason;  ///< Needed where forced; printed on the record.
};
/// Takes back the entries it points at; the question is open again.
struct Withdrawn {
  std::string reason;
};

using EntryBody =
    std::variant<BookedIn, Answered, Looked, PlayRead, PhotoTaken, NoteWritten, WayChosen, CustomerSaid, Ordered,
                 Received, StepDone, TakenOff, PutOn, BoreRead, TemperatureRead, SetRenewed, FittedRead, LeanRead,
                 RingSound, Laid, LeftOver, Scrapped, Pressed, RingPressedSeen, MarkSeen, LabelPutBack, StackRead,
                 FeelerTried, PartMeasured, NutPulled, RunRead, SecondLook, GaugeAccepted, Signed, Released, Withdrawn,
                 OpenedBy, SpacersFound, NutPulledAgain, PressPointRead, ToolTaken>;

struct Entry {
  Id id;  ///< Made by the device: sent twice, stored once.
  Id job;
  Id by;                     ///< The person.
  std::string on;            ///< The device.
  Instant at;                ///< By the device's clock.
  Id follows;                ///< The last entry of the job that its author had seen; empty for the first.
  std::vector<Id> corrects;  ///< Entries of the same question that this one replaces. Both stay and both print.
  EntryBody body;
  // Given when it is stored:
  int number = 0;      ///< 1, 2, 3, ... in the job.
  std::string before;  ///< Hash of the entry before it, hex; empty for the first.
  std::string hash;    ///< Over all of the above, and of below where it is known (record/chain.h).
  Instant received{};  ///< By the clock of who took it in; 0: not known.
};
/// The latest moment at which it can have been written: a clock that is behind must not make a gauge good that was past its date.
[[nodiscard]] constexpr Instant latest(const Entry& entry) {
  return entry.at < entry.received ? entry.received : entry.at;
}
/// By how much the device's clock may be behind before it is told. A tablet that was out of reach over a weekend is in order.
inline constexpr std::int64_t kClockOffMs = 7LL * 24 * 3600 * 1000;
[[nodiscard]] constexpr bool clock_was_off(const Entry& entry) {
  return entry.received.ms != 0 && entry.received.ms - entry.at.ms > kClockOffMs;
}

/// The question an entry answers, as a key: "mark_seen/4/b", "bore_read/3/A/2", "answered/guards_on/0". Entries with one key answer
/// the same question. TakenOff and PutOn answer one: "on_shaft/5"; the later of two in one chain of corrections holds.
/// Empty for what only adds up (photos, notes, orders) and for Withdrawn.
[[nodiscard]] std::string question_of(const EntryBody& body);
/// Stable name of a kind: "mark_seen".
[[nodiscard]] std::string_view kind_of(const EntryBody& body);
/// The stage whose sheet shows it.
[[nodiscard]] Stage stage_of(const EntryBody& body);

}  // namespace flatwise::job
