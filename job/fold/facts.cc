#include "job/fold/facts.h"

#include <algorithm>

#include "job/entry_fields.h"
#include "job/gauges.h"

namespace flatwise::job::fold_detail {
namespace {

/// Puts the agreed answers of a job, in the order of their questions' first entries, into a bench.
class Filler {
 public:
  Filler(const Shaft& shaft, const Workshop& workshop, JobState& state)
      : shaft_{shaft}, workshop_{workshop}, state_{state}, bench_{state.bench} {}

  void fill() {
    for (const Entry* entry : agreed_in_order()) {
      entry_ = entry;
      std::visit(*this, entry->body);
    }
    put_temperatures();
    put_rings_pressed();
    put_left();
    put_labels();
    put_off();
  }

  void operator()(const BookedIn& b) {
    bench_.job = b.number;
    if (b.hour_meter) bench_.hour_meter = told(*b.hour_meter);
    bench_.date = std::max(bench_.date, day_of(latest(*entry_)));
  }
  void operator()(const Answered& b) {
    bench_.answers.push_back({b.question, b.number, b.number == 0 ? std::string{} : std::to_string(b.number),
                              told(b.reply, fields::kReplies[static_cast<std::size_t>(b.reply)])});
  }
  void operator()(const BoreRead& b) {
    if (!rotor_there(b.rotor) || !gauge_there(b.gauge) || b.directions < 1) return;
    read_today();
    BoreReading reading;
    reading.rotor = b.rotor;
    reading.plane = b.plane;
    reading.direction = degrees((b.direction - 1) * 180.0 / b.directions);
    reading.diameter = told(b.diameter);
    reading.gauge = b.gauge;
    bench_.bores.push_back(std::move(reading));
  }
  void operator()(const TemperatureRead& b) {
    read_today();
    temperatures_.emplace_back(b, told(b.temperature));
  }
  void operator()(const SetRenewed& b) {
    if (!rotor_there(b.rotor) || b.reply == Reply::not_seen) return;
    (b.reply == Reply::yes ? bench_.new_set : bench_.kept_set).push_back(b.rotor);
  }
  void operator()(const FittedRead& b) {
    if (rotor_there(b.rotor)) bench_.fitted.push_back({b.rotor, told(b.designation, b.designation)});
  }
  void operator()(const LeanRead& b) {
    if (rotor_there(b.rotor)) bench_.leans.push_back({b.rotor, b.half, told(b.angle)});
  }
  void operator()(const RingSound& b) {
    if (rotor_there(b.rotor))
      bench_.reused_rings.push_back({b.rotor, told(b.sound, fields::kReplies[static_cast<std::size_t>(b.sound)])});
  }
  void operator()(const Laid& b) {
    if (rotor_there(b.rotor)) bench_.counted.push_back({b.rotor, b.item, told(b.count), std::nullopt});
  }
  void operator()(const LeftOver& b) { left_.push_back({b.rotor, b.item, told(b.count), std::nullopt}); }
  void operator()(const Scrapped& b) { bench_.scrapped.push_back({b.rotor, b.item, told(b.count), std::nullopt}); }
  void operator()(const Pressed& b) {
    if (!rotor_there(b.rotor) || !gauge_there(b.gauge)) return;
    read_today();
    bench_.presses.push_back({b.rotor, told(b.force), b.gauge, std::nullopt});
  }
  void operator()(const PressPointRead& b) {
    if (!rotor_there(b.rotor) || !gauge_there(b.gauge)) return;
    read_today();
    bench_.press_points.push_back({b.rotor, told(b.travel), told(b.force), b.gauge});
  }
  void operator()(const RingPressedSeen& b) {
    rings_.emplace_back(b.rotor, told(b.ring, fields::kRings[static_cast<std::size_t>(b.ring)]));
  }
  void operator()(const MarkSeen& b) {
    if (rotor_there(b.rotor) && b.flat >= 1 && b.flat <= shaft_.flats())
      bench_.marks.push_back({b.rotor, b.half, told(b.flat)});
  }
  void operator()(const LabelPutBack& b) { labels_.emplace_back(b.position, LabelBack{b.label, place()}); }
  void operator()(const StackRead& b) {
    if (!gauge_there(b.gauge)) return;
    read_today();
    bench_.stack.push_back({told(b.length), b.gauge});
  }
  void operator()(const FeelerTried& b) {
    read_today();
    FeelerReading reading{b.joint, b.passed, std::nullopt, b.gauge, place()};
    if (b.blade) reading.blade = told(*b.blade);
    bench_.feelers.push_back(std::move(reading));
  }
  void operator()(const PartMeasured& b) {
    if (!station_there(b.station)) return;
    read_today();
    bench_.part_lengths.push_back({b.station - 1, b.half, told(b.length), b.gauge});
  }
  void operator()(const NutPulled& b) {
    read_today();
    TorquePull pull;
    pull.nut = b.nut;
    pull.with = b.with;
    pull.shown = told(b.shown);
    pull.gauge = b.gauge;
    if (b.tool_length) pull.tool_length = told(*b.tool_length);
    if (b.extension) pull.extension = told(*b.extension);
    if (b.extension_angle) pull.extension_angle = radians(b.extension_angle->value.si);
    if (b.pull_angle) pull.pull_angle = radians(b.pull_angle->value.si);
    pull.multiplier = b.multiplier;
    if (b.turned) pull.turned = told(*b.turned);
    bench_.torques.push_back(std::move(pull));
  }
  void operator()(const NutPulledAgain& b) {
    read_today();
    bench_.second_pulls.push_back({b.nut, told(b.turned), b.gauge});
  }
  void operator()(const Looked& b) {
    if (b.stage > Stage::finding) return;  // What is found later ranks no suspects.
    bench_.looks.push_back({b.part, b.sign, told(b.reply, fields::kReplies[static_cast<std::size_t>(b.reply)])});
  }
  void operator()(const PlayRead& b) {
    if (!rotor_there(b.rotor)) return;
    read_today();
    PlayReading play{b.rotor, told(b.swing), b.gauge, std::nullopt};
    if (b.radius) play.radius = told(*b.radius);
    if (b.held) play.held = told(*b.held, fields::kHeld[static_cast<std::size_t>(*b.held)]);
    if (b.push) play.push = told(*b.push);
    bench_.plays.push_back(std::move(play));
  }
  void operator()(const RunRead& b) {
    if (b.station != 0 && !station_there(b.station)) return;
    read_today();
    bench_.runs.push_back({b.what, b.station, told(b.value), b.gauge});
  }
  void operator()(const OpenedBy& b) { bench_.opened = Opened{b.from, b.rotors_from_a, place()}; }
  void operator()(const SpacersFound& b) {
    if (station_there(b.station)) bench_.spacers_seen.push_back({b.phase, b.station - 1, told(b.count), b.label});
  }
  void operator()(const WayChosen& /*b*/) { bench_.led = true; }
  // What the rules of the bench do not look at: it stays in state.live, or was folded before.
  void operator()(const PhotoTaken& /*b*/) {}
  void operator()(const NoteWritten& /*b*/) {}
  void operator()(const CustomerSaid& /*b*/) {}
  void operator()(const Ordered& /*b*/) {}
  void operator()(const Received& /*b*/) {}
  void operator()(const StepDone& /*b*/) {}
  void operator()(const TakenOff& /*b*/) {}
  void operator()(const PutOn& /*b*/) {}
  void operator()(const ToolTaken& /*b*/) {}
  void operator()(const SecondLook& /*b*/) {}
  void operator()(const GaugeAccepted& /*b*/) {}
  void operator()(const Signed& /*b*/) {}
  void operator()(const Released& /*b*/) {}
  void operator()(const Withdrawn& /*b*/) {}

 private:
  /// Readings come in the order of part, plane and direction whatever order they were stored in: the questions' keys, but with
  /// numbers as numbers.
  std::vector<const Entry*> agreed_in_order() const {
    std::vector<const Entry*> out;
    for (const auto& [question, answers] : state_.live)
      if (answers.agreed) out.push_back(&answers.first());
    std::ranges::stable_sort(out, {}, [](const Entry* e) { return std::visit(Order{e->body.index()}, e->body); });
    return out;
  }
  using Sorted = std::tuple<std::size_t, int, int, double>;
  struct Order {
    std::size_t kind;
    Sorted operator()(const BoreRead& b) const { return {kind, b.rotor, b.plane, (b.direction - 1.0) / b.directions}; }
    Sorted operator()(const Answered& b) const { return {kind, b.number, 0, 0}; }
    Sorted operator()(const Looked& b) const { return {kind, b.part.number, static_cast<int>(b.sign), 0}; }
    Sorted operator()(const RunRead& b) const { return {kind, b.station, static_cast<int>(b.what), 0}; }
    Sorted operator()(const SpacersFound& b) const { return {kind, static_cast<int>(b.phase), b.station, 0}; }
    Sorted operator()(const PressPointRead& b) const { return {kind, b.rotor, b.point, 0}; }
    Sorted operator()(const RingSound& b) const { return {kind, b.rotor, b.ring, 0}; }
    Sorted operator()(const LabelPutBack& b) const { return {kind, b.position, 0, 0}; }
    Sorted operator()(const FeelerTried& b) const { return {kind, b.joint, 0, 0}; }
    Sorted operator()(const PartMeasured& b) const { return {kind, b.station, b.half == Half::b ? 1 : 0, 0}; }
    template <class B>
      requires requires(const B& b) {
        b.half;
        b.rotor;
      }
    Sorted operator()(const B& b) const {
      return {kind, b.rotor, b.half == Half::b ? 1 : 0, 0};
    }
    template <class B>
    Sorted operator()(const B& b) const {
      if constexpr (requires { b.rotor; }) return {kind, b.rotor, 0, 0};
      return {kind, 0, 0, 0};
    }
  };

  Place place() const { return {"entry " + std::to_string(entry_->number), 0, 0, {}}; }
  template <class T>
  Told<T> told(T value, std::string_view typed) const {
    return {std::move(value), std::string{typed}, place()};
  }
  Told<int> told(int value) const { return told(value, std::to_string(value)); }
  Told<Entered> told(const Entered& value) const { return told(value, value.typed); }

  [[nodiscard]] bool rotor_there(int rotor) const { return rotor >= 1 && rotor <= shaft_.rotor_count(); }
  [[nodiscard]] bool station_there(int station) const {
    return station >= 1 && station <= static_cast<int>(shaft_.stations().size());
  }
  [[nodiscard]] bool gauge_there(const std::string& id) const { return find_gauge(workshop_, id) != nullptr; }
  /// Gauges are judged against the last day on which one was read.
  void read_today() { bench_.date = std::max(bench_.date, day_of(latest(*entry_))); }

  void put_temperatures() {
    for (BoreReading& reading : bench_.bores)
      for (const auto& [b, temperature] : temperatures_) {
        if (b.rotor != reading.rotor) continue;
        (b.what == Measured::part ? reading.part_temperature : reading.gauge_temperature) = temperature;
        if (b.what == Measured::part || reading.thermometer.empty()) reading.thermometer = b.thermometer;
      }
  }
  void put_rings_pressed() {
    for (PressReading& press : bench_.presses)
      for (const auto& [rotor, ring] : rings_)
        if (rotor == press.rotor) press.ring = ring;
  }
  void put_left() {
    for (const Counted& left : left_)
      for (Counted& counted : bench_.counted)
        if (counted.rotor == left.rotor && counted.item == left.item) counted.left = left.laid;
  }
  void put_labels() {
    if (labels_.empty()) return;
    bench_.labels_back.emplace();
    for (auto& [position, label] : labels_) bench_.labels_back->push_back(label);
  }
  void put_off() {
    for (int rotor = 1; rotor <= shaft_.rotor_count(); ++rotor) {
      const auto at = static_cast<std::size_t>(shaft_.station_of_rotor(rotor));
      if (state_.came_off[at]) bench_.came_off.push_back(rotor);
      if (state_.off[at]) bench_.still_off.push_back(rotor);
    }
    for (std::size_t i = 0; i < shaft_.stations().size(); ++i) {
      if (shaft_.stations()[i].kind == StationKind::rotor) continue;
      if (state_.came_off[i]) bench_.parts_off.push_back(static_cast<int>(i) + 1);
      if (state_.off[i]) bench_.parts_still_off.push_back(static_cast<int>(i) + 1);
    }
  }

  const Shaft& shaft_;
  const Workshop& workshop_;
  JobState& state_;
  Bench& bench_;
  const Entry* entry_ = nullptr;
  std::vector<std::pair<TemperatureRead, Told<Entered>>> temperatures_;
  std::vector<std::pair<int, Told<RingPressed>>> rings_;
  std::vector<Counted> left_;
  std::vector<std::pair<int, LabelBack>> labels_;
};

}  // namespace

void fill_bench(const Shaft& shaft, const Workshop& workshop, JobState& state) {
  Filler{shaft, workshop, state}.fill();
}

}  // namespace flatwise::job::fold_detail
