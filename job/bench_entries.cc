#include "job/bench_entries.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <unordered_map>

#include "core/units/format.h"
#include "job/judge.h"

namespace flatwise::job {
namespace {

constexpr int kMostDirections = 360;

Entered typed(const Told<Entered>& told) {
  Entered entered = told.value;
  if (entered.typed.empty()) entered.typed = told.typed;
  return entered;
}
std::optional<Entered> typed(const std::optional<Told<Entered>>& told) {
  return told ? std::optional{typed(*told)} : std::nullopt;
}
/// An angle that a file assumed or gave, as text that reads back to it.
Entered typed(Angle angle) { return {any(angle), {}, format_exact(std::round(angle.degrees() * 1e9) / 1e9) + "°"}; }

/// Which of how many even steps of half a turn: four where they fit, else the fewest.
std::pair<int, int> step_of(Angle direction) {
  const double half_turns = direction.degrees() / 180 - std::floor(direction.degrees() / 180);
  const auto fits = [&](int n) { return std::abs(half_turns * n - std::round(half_turns * n)) < 1e-6 * n; };
  int n = 4;
  if (!fits(n))
    for (n = 1; n < kMostDirections && !fits(n);) ++n;
  return {static_cast<int>(std::lround(half_turns * n)) % n + 1, n};
}

class BenchEntries {
 public:
  BenchEntries(const Shaft& shaft, const Bench& bench) : shaft_{shaft}, bench_{bench} {}

  std::vector<EntryBody> run() {
    answers(Stage::booking_in);
    for (const PartLook& l : bench_.looks) out_.emplace_back(Looked{l.part, Stage::booking_in, l.sign, l.reply.value});
    for (const PlayReading& p : bench_.plays)
      out_.emplace_back(PlayRead{p.rotor, typed(p.swing), p.gauge, typed(p.radius),
                                 p.held ? std::optional{p.held->value} : std::nullopt, typed(p.push)});
    answers(Stage::finding);
    answers(Stage::plan);
    taken_off();
    spacers(Phase::teardown);
    answers(Stage::teardown);
    bores();
    answers(Stage::inspection);
    kit();
    answers(Stage::kit);
    presses();
    answers(Stage::press);
    for (const MarkRead& m : bench_.marks) out_.emplace_back(MarkSeen{m.rotor, m.half, m.flat.value});
    answers(Stage::timing);
    put_on();
    spacers(Phase::assembly);
    stack();
    answers(Stage::stack);
    for (const TorquePull& t : bench_.torques) pulled(t);
    answers(Stage::torque);
    for (const SecondPull& p : bench_.second_pulls) out_.emplace_back(NutPulledAgain{p.nut, typed(p.turned), p.gauge});
    for (const RunReading& r : bench_.runs) out_.emplace_back(RunRead{r.what, r.station, typed(r.value), r.gauge});
    answers(Stage::test_run);
    answers(Stage::release);
    return std::move(out_);
  }

 private:
  void answers(Stage stage) {
    std::set<std::string> said;
    for (const flatwise::Answered& a : bench_.answers) {
      const Answered body{a.question, a.number, a.reply.value};
      if (stage_of(body) == stage && said.insert(question_of(body)).second) out_.emplace_back(body);
    }
  }
  void taken_off() {
    if (bench_.opened) out_.emplace_back(OpenedBy{bench_.opened->from, bench_.opened->rotors_from_a});
    off_ = stations_off(shaft_, bench_);
    const std::size_t from_a = static_cast<std::size_t>(std::ranges::find(off_, false) - off_.begin());
    for (std::size_t i = 0; i < from_a; ++i) out_.emplace_back(TakenOff{static_cast<int>(i) + 1});
    for (std::size_t i = off_.size(); i > from_a; --i)
      if (off_[i - 1]) out_.emplace_back(TakenOff{static_cast<int>(i)});
  }
  void spacers(Phase phase) {
    for (const SpacerSeen& seen : bench_.spacers_seen)
      if (seen.phase == phase) out_.emplace_back(SpacersFound{phase, seen.station + 1, seen.count.value, seen.label});
  }
  /// What came off and is not off now, the last off first.
  void put_on() {
    Bench now;
    now.came_off = bench_.still_off;
    now.opened = bench_.opened;
    now.parts_off = bench_.parts_still_off;
    const std::vector<bool> still = stations_off(shaft_, now);
    std::vector<EntryBody> back;
    for (const EntryBody& body : out_)
      if (const auto* off = std::get_if<TakenOff>(&body))
        if (!still[static_cast<std::size_t>(off->station) - 1]) back.emplace_back(PutOn{off->station});
    out_.insert(out_.end(), back.rbegin(), back.rend());
  }
  void bores() {
    std::set<int> told;
    for (const BoreReading& b : bench_.bores) {
      if (told.insert(b.rotor).second) {
        if (b.part_temperature)
          out_.emplace_back(TemperatureRead{b.rotor, Measured::part, typed(*b.part_temperature), b.thermometer});
        if (b.gauge_temperature)
          out_.emplace_back(TemperatureRead{b.rotor, Measured::gauge, typed(*b.gauge_temperature), b.thermometer});
      }
      const auto [direction, directions] = step_of(b.direction);
      out_.emplace_back(BoreRead{b.rotor, b.plane, direction, directions, typed(b.diameter), b.gauge});
    }
  }
  void kit() {
    for (const int rotor : bench_.new_set) out_.emplace_back(SetRenewed{rotor, Reply::yes});
    // A file names the new sets; of a rotor that came off and is not among them it says that the old one goes back.
    for (const int rotor : bench_.came_off)
      if (std::ranges::find(bench_.new_set, rotor) == bench_.new_set.end())
        out_.emplace_back(SetRenewed{rotor, Reply::no});
    for (const Fitted& f : bench_.fitted) out_.emplace_back(FittedRead{f.rotor, f.designation.value});
    for (const LeanMarked& l : bench_.leans) out_.emplace_back(LeanRead{l.rotor, l.half, typed(l.angle)});
    std::unordered_map<int, int> rings;
    for (const ReusedRing& r : bench_.reused_rings)
      out_.emplace_back(RingSound{r.rotor, ++rings[r.rotor], r.sound.value});
    std::set<std::pair<int, std::string>> said;
    for (const Counted& c : bench_.counted) {
      if (!said.emplace(c.rotor, c.item).second) continue;
      out_.emplace_back(Laid{c.rotor, c.item, c.laid.value});
      if (c.left) out_.emplace_back(LeftOver{c.rotor, c.item, c.left->value});
    }
    for (const Counted& c : bench_.scrapped) out_.emplace_back(Scrapped{c.rotor, c.item, c.laid.value});
  }
  void presses() {
    for (std::size_t i = 0; i < bench_.presses.size(); ++i) {
      const PressReading& p = bench_.presses[i];
      out_.emplace_back(Pressed{p.rotor, typed(p.force), p.gauge});
      const auto later = bench_.presses.begin() + static_cast<std::ptrdiff_t>(i) + 1;
      const bool last = std::find_if(later, bench_.presses.end(),
                                     [&](const PressReading& q) { return q.rotor == p.rotor; }) == bench_.presses.end();
      if (last && p.ring) out_.emplace_back(RingPressedSeen{p.rotor, p.ring->value});
    }
    std::map<int, int> points;
    for (const PressPoint& p : bench_.press_points)
      out_.emplace_back(PressPointRead{p.rotor, ++points[p.rotor], typed(p.travel), typed(p.force), p.gauge});
  }
  void stack() {
    int position = 0;
    if (bench_.labels_back)
      for (const LabelBack& l : *bench_.labels_back) out_.emplace_back(LabelPutBack{++position, l.label});
    std::set<std::pair<int, std::optional<Half>>> said;
    for (const PartLength& p : bench_.part_lengths)
      if (said.emplace(p.station, p.half).second)
        out_.emplace_back(PartMeasured{p.station + 1, p.half, typed(p.length), p.gauge});
    for (const StackReading& s : bench_.stack) out_.emplace_back(StackRead{typed(s.length), s.gauge});
    for (const FeelerReading& f : bench_.feelers)
      out_.emplace_back(FeelerTried{f.joint, f.passed, typed(f.blade), f.gauge});
  }
  void pulled(const TorquePull& t) {
    NutPulled body{t.nut, t.with, typed(t.shown), t.gauge,        typed(t.tool_length), typed(t.extension),
                   {},    {},     t.multiplier,   typed(t.turned)};
    if (t.extension_angle.radians() != 0) body.extension_angle = typed(t.extension_angle);
    if (t.pull_angle != degrees(90)) body.pull_angle = typed(t.pull_angle);
    out_.emplace_back(std::move(body));
  }

  const Shaft& shaft_;
  const Bench& bench_;
  std::vector<bool> off_;
  std::vector<EntryBody> out_;
};

}  // namespace

std::vector<EntryBody> entries_of(const Shaft& shaft, const Bench& bench) { return BenchEntries{shaft, bench}.run(); }

std::vector<Entry> as_entries(std::span<const Entry> before, std::vector<EntryBody> bodies, const Author& author,
                              const std::function<Id(Instant)>& next_id) {
  std::set<Id> replaced;
  std::unordered_map<std::string, std::vector<Id>> live;
  for (const Entry& entry : before) replaced.insert(entry.corrects.begin(), entry.corrects.end());
  for (const Entry& entry : before)
    if (const std::string question = question_of(entry.body); !question.empty() && !replaced.contains(entry.id))
      live[question].push_back(entry.id);
  std::vector<Entry> out;
  Id follows = before.empty() ? Id{} : before.back().id;
  int number = before.empty() ? 0 : before.back().number;
  Instant at = author.at;
  for (EntryBody& body : bodies) {
    Entry entry{next_id(at), author.job, author.by, author.on, at, follows, {}, std::move(body), ++number, {}, {}};
    if (const std::string question = question_of(entry.body); !question.empty()) {
      entry.corrects = std::move(live[question]);
      live[question] = {entry.id};
    }
    follows = entry.id;
    at.ms += author.step_ms;
    out.push_back(std::move(entry));
  }
  return out;
}

}  // namespace flatwise::job
