// entry_fields.h: the fields of every kind of entry, named once: for reading and writing JSON, for the schema, for telling whether
// two entries say the same, and for the ranges that no value may leave.
//
//   each_field(body, [&](const FieldSpec& spec, auto& member) { ... });
//
// The members are handed over in the order of the struct; a field whose kind another one decides stands after it.
#pragma once

#include <array>
#include <concepts>
#include <numbers>
#include <span>
#include <string_view>
#include <type_traits>
#include <utility>

#include "job/entry.h"

namespace flatwise::job {

enum class TextForm { free, id, hash };  ///< hash: SHA-256, 64 hex digits in lower case.

struct FieldSpec {
  std::string_view name;                         ///< As in JSON; its meaning is the word "record.field.<name>".
  Kind kind = Kind::count;                       ///< Of a quantity.
  double least = 0, greatest = 0;                ///< Of a number, or of a quantity in SI.
  int least_length = 0, greatest_length = 0;     ///< Of a text, in characters.
  std::span<const std::string_view> words = {};  ///< Of a choice, in the order of its enum.
  TextForm form = TextForm::free;
  bool answers = true;             ///< Part of what is answered; false: only said beside it (a reason, a name).
  std::string_view hangs_on = {};  ///< Field that decides the kind of this quantity.
};

namespace fields {

using Words = std::string_view;
inline constexpr std::array<Words, 3> kReplies{"yes", "no", "not_seen"};
inline constexpr std::array<Words, 2> kHeld{"carried", "hanging"};
inline constexpr std::array<Words, 5> kSigns{"rough", "hot", "grease_out", "noisy", "sound"};
inline constexpr std::array<Words, 12> kStages{"booking_in", "finding", "plan",  "teardown", "inspection", "kit",
                                               "press",      "timing",  "stack", "torque",   "test_run",   "release"};
inline constexpr std::array<Words, 3> kParts{"shaft", "station", "rotor"};
inline constexpr std::array<Words, 3> kWays{"failed_only", "disturbed", "all"};
inline constexpr std::array<Words, 2> kPhases{"teardown", "assembly"};
inline constexpr std::array<Words, 2> kPlanes{"A", "B"};
inline constexpr std::array<Words, 2> kMeasured{"part", "gauge"};
inline constexpr std::array<Words, 2> kHalves{"a", "b"};
inline constexpr std::array<Words, 2> kEnds{"a", "b"};
inline constexpr std::array<Words, 3> kOpenedFrom{"a", "b", "both"};
inline constexpr std::array<Words, 3> kItems{"set", "seal", "snap_ring"};
inline constexpr std::array<Words, 3> kRings{"outer", "inner", "not_seen"};
inline constexpr std::array<Words, 2> kTools{"wrench", "bar"};
inline constexpr std::array<Words, 4> kRun{"room", "hanger", "vibration", "minutes"};
inline constexpr std::array<Words, 3> kRoles{"bench", "lead", "owner"};
/// In the order of MoveReason; "job" is the record's own and is not sent.
inline constexpr std::array<Words, 5> kMoveReasons{"counted", "job", "ordered", "received", "scrapped"};
inline constexpr std::array<Words, 7> kUses{"bore_gauge", "thermometer", "length",         "feeler",
                                            "wrench",     "press_gauge", "vibration_meter"};
inline constexpr std::array<Words, 3> kPhotos{"image/jpeg", "image/png", "image/webp"};

constexpr FieldSpec whole(Words name, double least, double greatest) {
  return {.name = name, .least = least, .greatest = greatest};
}
constexpr FieldSpec quantity(Words name, Kind kind, double least, double greatest) {
  return {.name = name, .kind = kind, .least = least, .greatest = greatest};
}
constexpr FieldSpec text(Words name, int least, int greatest) {
  return {.name = name, .least_length = least, .greatest_length = greatest};
}
constexpr FieldSpec word(Words name, std::span<const Words> words) {
  return {.name = name, .greatest_length = 32, .words = words};
}
constexpr FieldSpec beside(FieldSpec spec) { return spec.answers = false, spec; }
constexpr FieldSpec of_form(FieldSpec spec, TextForm form) { return spec.form = form, spec; }

inline constexpr double kDegree = std::numbers::pi / 180;
inline constexpr FieldSpec kRotor = whole("rotor", 1, 240), kStation = whole("station", 1, 100'000),
                           kHalf = word("half", kHalves), kReply = word("reply", kReplies),
                           kStage = word("stage", kStages), kPart = {.name = "part", .greatest = 100'000},
                           kGauge = text("gauge", 1, 64), kMayGauge = text("gauge", 0, 64),
                           kReason = beside(text("reason", 1, 500)), kItem = word("item", kItems),
                           kPieces = whole("count", 0, 1000), kLength = quantity("length", Kind::length, 1e-6, 50),
                           kTurned = quantity("turned", Kind::angle, 0, 1800 * kDegree),
                           kPartNumber = text("part_number", 1, 64), kDay = {.name = "day"};

template <class B, class Body>
concept Of = std::same_as<std::remove_const_t<B>, Body>;

template <class V, Of<BookedIn> B>
void each(B& b, V&& v) {
  v(text("number", 1, 32), b.number);
  v(of_form(text("machine", 36, 36), TextForm::id), b.machine);
  v(of_form(text("shaft", 36, 36), TextForm::id), b.shaft);
  v(text("complaint", 0, 2000), b.complaint);
  v(quantity("hour_meter", Kind::time, 0, 3.6e9), b.hour_meter);
  v(FieldSpec{.name = "due"}, b.due);
}
template <class V, Of<Answered> B>
void each(B& b, V&& v) {
  v(text("question", 1, 64), b.question);
  v(whole("number", 0, 100'000), b.number);
  v(kReply, b.reply);
}
template <class V, Of<Looked> B>
void each(B& b, V&& v) {
  v(kPart, b.part);
  v(kStage, b.stage);
  v(word("sign", kSigns), b.sign);
  v(kReply, b.reply);
}
template <class V, Of<PlayRead> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(quantity("swing", Kind::length, 0, 0.1), b.swing);
  v(kMayGauge, b.gauge);
  v(quantity("radius", Kind::length, 0.01, 5), b.radius);
  v(word("held", kHeld), b.held);
  v(quantity("push", Kind::force, 0, 1e4), b.push);
}
template <class V, Of<PhotoTaken> B>
void each(B& b, V&& v) {
  v(kPart, b.part);
  v(kStage, b.stage);
  v(of_form(text("blob", 64, 64), TextForm::hash), b.blob);
  v(word("type", kPhotos), b.type);
  v(beside(text("says", 0, 500)), b.says);
}
template <class V, Of<NoteWritten> B>
void each(B& b, V&& v) {
  v(kPart, b.part);
  v(kStage, b.stage);
  v(text("text", 1, 4000), b.text);
}
template <class V, Of<WayChosen> B>
void each(B& b, V&& v) {
  v(whole("open", 1, 240), b.open);
  v(word("way", kWays), b.way);
}
template <class V, Of<CustomerSaid> B>
void each(B& b, V&& v) {
  v(kReply, b.reply);
  v(beside(text("who", 0, 120)), b.who);
  v(beside(text("how", 0, 120)), b.how);
  v(quantity("price", Kind::money, 0, 1e9), b.price);
}
template <class V, Of<Ordered> B>
void each(B& b, V&& v) {
  v(kPartNumber, b.part_number);
  v(whole("count", 1, 1000), b.count);
  v(FieldSpec{.name = "expected"}, b.expected);
}
template <class V, Of<Received> B>
void each(B& b, V&& v) {
  v(kPartNumber, b.part_number);
  v(whole("count", 1, 1000), b.count);
}
template <class V, Of<StepDone> B>
void each(B& b, V&& v) {
  v(word("phase", kPhases), b.phase);
  v(text("step", 1, 200), b.step);
  v(kReply, b.reply);
}
template <class V, class B>
  requires Of<B, TakenOff> || Of<B, PutOn>
void each(B& b, V&& v) {
  v(kStation, b.station);
}
template <class V, Of<OpenedBy> B>
void each(B& b, V&& v) {
  v(word("from", kOpenedFrom), b.from);
  v(whole("rotors_from_a", 0, 240), b.rotors_from_a);
}
template <class V, Of<SpacersFound> B>
void each(B& b, V&& v) {
  v(word("phase", kPhases), b.phase);
  v(kStation, b.station);
  v(whole("count", 0, 20), b.count);
  v(text("label", 0, 64), b.label);
}
template <class V, Of<BoreRead> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(word("plane", kPlanes), b.plane);
  v(whole("direction", 1, 360), b.direction);
  v(whole("directions", 1, 360), b.directions);
  v(quantity("diameter", Kind::length, 1e-6, 50), b.diameter);
  v(kGauge, b.gauge);
}
template <class V, Of<TemperatureRead> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(word("what", kMeasured), b.what);
  v(quantity("temperature", Kind::temperature, 223.15, 573.15), b.temperature);
  v(text("thermometer", 0, 64), b.thermometer);
}
template <class V, Of<SetRenewed> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(kReply, b.reply);
}
template <class V, Of<FittedRead> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(text("designation", 1, 64), b.designation);
}
template <class V, Of<LeanRead> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(kHalf, b.half);
  v(quantity("angle", Kind::angle, 0, 30 * kDegree), b.angle);
}
template <class V, Of<RingSound> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(whole("ring", 1, 2), b.ring);
  v(word("sound", kReplies), b.sound);
}
template <class V, class B>
  requires Of<B, Laid> || Of<B, LeftOver> || Of<B, Scrapped>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(kItem, b.item);
  v(kPieces, b.count);
}
template <class V, Of<Pressed> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(quantity("force", Kind::force, 0, 5e6), b.force);
  v(kGauge, b.gauge);
}
template <class V, Of<PressPointRead> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(whole("point", 1, 40), b.point);
  v(quantity("travel", Kind::length, 0, 2), b.travel);
  v(quantity("force", Kind::force, 0, 5e6), b.force);
  v(kGauge, b.gauge);
}
template <class V, Of<RingPressedSeen> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(word("ring", kRings), b.ring);
}
template <class V, Of<MarkSeen> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(kHalf, b.half);
  v(whole("flat", 1, 24), b.flat);
}
template <class V, Of<LabelPutBack> B>
void each(B& b, V&& v) {
  v(whole("position", 1, 1000), b.position);
  v(text("label", 0, 64), b.label);
}
template <class V, Of<StackRead> B>
void each(B& b, V&& v) {
  v(kLength, b.length);
  v(kGauge, b.gauge);
}
template <class V, Of<FeelerTried> B>
void each(B& b, V&& v) {
  v(whole("joint", 1, 1000), b.joint);
  v(FieldSpec{.name = "passed"}, b.passed);
  v(quantity("blade", Kind::length, 1e-6, 0.01), b.blade);
  v(kGauge, b.gauge);
}
template <class V, Of<PartMeasured> B>
void each(B& b, V&& v) {
  v(kStation, b.station);
  v(kHalf, b.half);
  v(kLength, b.length);
  v(kGauge, b.gauge);
}
template <class V, Of<NutPulled> B>
void each(B& b, V&& v) {
  v(word("nut", kEnds), b.nut);
  v(word("with", kTools), b.with);
  const bool bar = b.with == TorquePull::With::bar;
  FieldSpec shown = quantity("shown", bar ? Kind::force : Kind::torque, 0, bar ? 1e4 : 2e4);
  shown.hangs_on = "with";
  v(shown, b.shown);
  v(kMayGauge, b.gauge);
  v(quantity("tool_length", Kind::length, 0.01, 10), b.tool_length);
  v(quantity("extension", Kind::length, 0, 3), b.extension);
  v(quantity("extension_angle", Kind::angle, -180 * kDegree, 180 * kDegree), b.extension_angle);
  v(quantity("pull_angle", Kind::angle, 1 * kDegree, 179 * kDegree), b.pull_angle);
  v(whole("multiplier", 1, 200), b.multiplier);
  v(kTurned, b.turned);
}
template <class V, Of<ToolTaken> B>
void each(B& b, V&& v) {
  v(word("nut", kEnds), b.nut);
  v(quantity("length", Kind::length, 0.01, 10), b.length);
  v(quantity("extension", Kind::length, 0, 3), b.extension);
  v(quantity("ratio", Kind::ratio, 1, 200), b.ratio);
}
template <class V, Of<NutPulledAgain> B>
void each(B& b, V&& v) {
  v(word("nut", kEnds), b.nut);
  v(kTurned, b.turned);
  v(kMayGauge, b.gauge);
}
/// Temperatures; mean vibration speed; how long it ran.
inline FieldSpec run_value(RunQuantity what) {
  FieldSpec spec = quantity("value", Kind::temperature, 223.15, 573.15);
  if (what == RunQuantity::vibration) spec = quantity("value", Kind::speed, 0, 1);
  if (what == RunQuantity::minutes) spec = quantity("value", Kind::time, 0, 360'000);
  spec.hangs_on = "what";
  return spec;
}
template <class V, Of<RunRead> B>
void each(B& b, V&& v) {
  v(word("what", kRun), b.what);
  v(whole("station", 0, 100'000), b.station);
  v(run_value(b.what), b.value);
  v(kMayGauge, b.gauge);
}
template <class V, Of<SecondLook> B>
void each(B& b, V&& v) {
  v(kRotor, b.rotor);
  v(word("right", kReplies), b.right);
}
template <class V, Of<GaugeAccepted> B>
void each(B& b, V&& v) {
  v(kGauge, b.gauge);
  v(kReason, b.reason);
}
template <class V, Of<Signed> B>
void each(B& b, V&& v) {
  v(word("as", kRoles), b.as);
}
template <class V, Of<Released> B>
void each(B& b, V&& v) {
  v(FieldSpec{.name = "forced"}, b.forced);
  v(beside(text("reason", 0, 500)), b.reason);
}
template <class V, Of<Withdrawn> B>
void each(B& b, V&& v) {
  v(beside(text("reason", 0, 500)), b.reason);
}

}  // namespace fields

/// Calls `visit(spec, member)` for each field of a body.
template <class Body, class Visit>
void each_field(Body& body, Visit&& visit) {
  fields::each(body, std::forward<Visit>(visit));
}

/// Calls `visit(name, Body{})` for each kind there is, in the order of the variant; name as in kind_of().
template <class Visit, std::size_t... I>
void each_kind(Visit&& visit, std::index_sequence<I...> /*all*/) {
  (visit(std::variant_alternative_t<I, EntryBody>{}), ...);
}
template <class Visit>
void each_kind(Visit&& visit) {
  each_kind(std::forward<Visit>(visit), std::make_index_sequence<std::variant_size_v<EntryBody>>{});
}

/// Whether two entries of one question say the same: by value, not by how it was typed ("1.5 in" is "38.1 mm"); reasons and names
/// said beside the answer do not count. Different kinds never do.
[[nodiscard]] bool same_answer(const EntryBody& a, const EntryBody& b);

}  // namespace flatwise::job
