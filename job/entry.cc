// What an entry is: its kind, its stage, the question it answers, and whether two of them say the same.
#include "job/entry.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <type_traits>

#include "job/entry_fields.h"

namespace flatwise::job {
namespace {

// In the order of EntryBody; a kind more breaks the build at the assertion below.
constexpr std::array<std::string_view, 41> kKinds{
    "booked_in",  "answered",       "looked",           "play_read",        "photo_taken",   "note_written",
    "way_chosen", "customer_said",  "ordered",          "received",         "step_done",     "taken_off",
    "put_on",     "bore_read",      "temperature_read", "set_renewed",      "fitted_read",   "lean_read",
    "ring_sound", "laid",           "left_over",        "scrapped",         "pressed",       "ring_pressed_seen",
    "mark_seen",  "label_put_back", "stack_read",       "feeler_tried",     "part_measured", "nut_pulled",
    "run_read",   "second_look",    "gauge_accepted",   "signed",           "released",      "withdrawn",
    "opened_by",  "spacers_found",  "nut_pulled_again", "press_point_read", "tool_taken"};
static_assert(kKinds.size() == std::variant_size_v<EntryBody>);

std::string text(std::string_view part) { return std::string{part}; }
std::string text(int part) { return std::to_string(part); }
template <class... Parts>
std::string key(const Parts&... parts) {
  return (std::string{} + ... + ("/" + text(parts)));
}
std::string_view name(Half half) { return half == Half::a ? "a" : "b"; }
std::string_view name(End end) { return end == End::a ? "a" : "b"; }
template <class Words, class E>
std::string_view name(const Words& words, E value) {
  return words[static_cast<std::size_t>(value)];
}

/// What tells one question of a kind from the next; the kind itself stands before it. None: it only adds up.
struct QuestionOf {
  using Key = std::optional<std::string>;
  Key operator()(const BookedIn& /*b*/) const { return ""; }
  Key operator()(const Answered& b) const { return key(b.question, b.number); }
  Key operator()(const Looked& b) const {
    return key(name(fields::kStages, b.stage), name(fields::kParts, b.part.part), b.part.number,
               name(fields::kSigns, b.sign));
  }
  Key operator()(const PlayRead& b) const { return key(b.rotor); }
  Key operator()(const PhotoTaken& /*b*/) const { return {}; }
  Key operator()(const NoteWritten& /*b*/) const { return {}; }
  Key operator()(const WayChosen& /*b*/) const { return ""; }
  Key operator()(const CustomerSaid& /*b*/) const { return ""; }
  Key operator()(const Ordered& /*b*/) const { return {}; }
  Key operator()(const Received& /*b*/) const { return {}; }
  Key operator()(const StepDone& b) const { return key(name(fields::kPhases, b.phase), b.step); }
  Key operator()(const BoreRead& b) const {
    const std::string at = key(b.rotor, std::string(1, b.plane), b.direction);
    return b.directions == 4 ? at : at + "of" + std::to_string(b.directions);
  }
  Key operator()(const TemperatureRead& b) const { return key(b.rotor, name(fields::kMeasured, b.what)); }
  Key operator()(const SetRenewed& b) const { return key(b.rotor); }
  Key operator()(const FittedRead& b) const { return key(b.rotor); }
  Key operator()(const LeanRead& b) const { return key(b.rotor, name(b.half)); }
  Key operator()(const RingSound& b) const { return key(b.rotor, b.ring); }
  Key operator()(const Laid& b) const { return key(b.rotor, b.item); }
  Key operator()(const LeftOver& b) const { return key(b.rotor, b.item); }
  Key operator()(const Scrapped& b) const { return key(b.rotor, b.item); }
  Key operator()(const Pressed& b) const { return key(b.rotor); }
  Key operator()(const PressPointRead& b) const { return key(b.rotor, b.point); }
  Key operator()(const RingPressedSeen& b) const { return key(b.rotor); }
  Key operator()(const MarkSeen& b) const { return key(b.rotor, name(b.half)); }
  Key operator()(const LabelPutBack& b) const { return key(b.position); }
  Key operator()(const StackRead& /*b*/) const { return ""; }
  Key operator()(const FeelerTried& b) const { return key(b.joint); }
  Key operator()(const PartMeasured& b) const { return b.half ? key(b.station, name(*b.half)) : key(b.station); }
  Key operator()(const NutPulled& b) const { return key(name(b.nut)); }
  Key operator()(const ToolTaken& b) const { return key(name(b.nut)); }
  Key operator()(const NutPulledAgain& b) const { return key(name(b.nut)); }
  Key operator()(const RunRead& b) const { return key(name(fields::kRun, b.what), b.station); }
  Key operator()(const SecondLook& b) const { return key(b.rotor); }
  Key operator()(const GaugeAccepted& b) const { return key(b.gauge); }
  Key operator()(const Signed& b) const { return key(name(fields::kRoles, b.as)); }
  Key operator()(const Released& /*b*/) const { return ""; }
  Key operator()(const Withdrawn& /*b*/) const { return {}; }
  Key operator()(const OpenedBy& /*b*/) const { return ""; }
  Key operator()(const SpacersFound& b) const { return key(name(fields::kPhases, b.phase), b.station); }
  // Handled before: one question for both, "is it on the shaft?".
  Key operator()(const TakenOff& /*b*/) const { return {}; }
  Key operator()(const PutOn& /*b*/) const { return {}; }
};

constexpr Stage kStageOfKind[] = {
    Stage::booking_in, Stage::booking_in, Stage::booking_in, Stage::booking_in, Stage::booking_in, Stage::booking_in,
    Stage::plan,       Stage::plan,       Stage::kit,        Stage::kit,        Stage::teardown,   Stage::teardown,
    Stage::stack,      Stage::inspection, Stage::inspection, Stage::kit,        Stage::kit,        Stage::kit,
    Stage::kit,        Stage::kit,        Stage::kit,        Stage::kit,        Stage::press,      Stage::press,
    Stage::timing,     Stage::stack,      Stage::stack,      Stage::stack,      Stage::stack,      Stage::torque,
    Stage::test_run,   Stage::timing,     Stage::inspection, Stage::release,    Stage::release,    Stage::release,
    Stage::teardown,   Stage::teardown,   Stage::torque,     Stage::press,      Stage::torque};
static_assert(std::size(kStageOfKind) == std::variant_size_v<EntryBody>);

bool same(const Entered& a, const Entered& b) { return a.value == b.value && a.nm == b.nm; }
template <class T>
bool same(const T& a, const T& b) {
  return a == b;
}
template <class T>
bool same(const std::optional<T>& a, const std::optional<T>& b) {
  return a.has_value() == b.has_value() && (!a || same(*a, *b));
}
bool same(std::vector<int> a, std::vector<int> b) {  // Which rotors, in whatever order they were tapped.
  std::ranges::sort(a);
  std::ranges::sort(b);
  return a == b;
}

/// Pointers to the members of one body, in order, so that another of the same kind can be held against them.
template <class Body>
bool same_fields(const Body& a, const Body& b) {
  std::vector<const void*> members;
  each_field(a, [&](const FieldSpec& /*spec*/, const auto& member) { members.push_back(&member); });
  std::size_t i = 0;
  bool all = true;
  each_field(b, [&](const FieldSpec& spec, const auto& member) {
    using Member = std::remove_cvref_t<decltype(member)>;
    const auto& other = *static_cast<const Member*>(members[i++]);
    if (spec.answers) all = all && same(other, member);
  });
  return all;
}

}  // namespace

Day day_of(Instant at) {
  using namespace std::chrono;
  const year_month_day day{floor<days>(sys_time<milliseconds>{milliseconds{at.ms}})};
  return {static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
          static_cast<int>(static_cast<unsigned>(day.day()))};
}

std::string_view kind_of(const EntryBody& body) { return kKinds[body.index()]; }

std::string question_of(const EntryBody& body) {
  if (const auto* off = std::get_if<TakenOff>(&body)) return "on_shaft" + key(off->station);
  if (const auto* on = std::get_if<PutOn>(&body)) return "on_shaft" + key(on->station);
  const std::optional<std::string> rest = std::visit(QuestionOf{}, body);
  return rest ? std::string{kind_of(body)} + *rest : std::string{};
}

Stage stage_of(const EntryBody& body) {
  if (const auto* looked = std::get_if<Looked>(&body)) return looked->stage;
  if (const auto* photo = std::get_if<PhotoTaken>(&body)) return photo->stage;
  if (const auto* note = std::get_if<NoteWritten>(&body)) return note->stage;
  if (const auto* step = std::get_if<StepDone>(&body))
    return step->phase == Phase::teardown ? Stage::teardown : Stage::stack;
  if (const auto* found = std::get_if<SpacersFound>(&body))
    return found->phase == Phase::teardown ? Stage::teardown : Stage::stack;
  if (const auto* answered = std::get_if<Answered>(&body))
    if (const auto it = std::ranges::find(questions(), answered->question, &Question::id); it != questions().end())
      return it->stage;
  return kStageOfKind[body.index()];
}

bool same_answer(const EntryBody& a, const EntryBody& b) {
  if (a.index() != b.index()) return false;
  return std::visit(
      [&](const auto& first) { return same_fields(first, std::get<std::remove_cvref_t<decltype(first)>>(b)); }, a);
}

}  // namespace flatwise::job
