// Which way is best: what must not be first, then what can be measured, then what is simple.
#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "core/units/format.h"
#include "job/arrange.h"
#include "study/study.h"

namespace flatwise::study {
namespace {

using Ways = std::vector<Way>;
using Outcomes = std::vector<Outcome>;

constexpr double kLifeApart = 0.9;  ///< A life less than a tenth shorter is no reason: nobody could tell.
constexpr double kGapApart = 0.98;

/// Whether all rotors lean and turn alike in both: then both do the same work.
bool same_work(const Way& a, const Way& b) {
  return a.shaft.spec().speed == b.shaft.spec().speed &&
         std::ranges::equal(a.shaft.spec().rotors, b.shaft.spec().rotors, {}, &Rotor::lean, &Rotor::lean);
}

/// Ways still in the running, and the first question that put some of them out.
class Running {
 public:
  Running(const Ways& ways, const Outcomes& outcomes) : ways_{ways}, outcomes_{outcomes} {
    for (std::size_t i = 0; i < ways.size(); ++i) left_.push_back(i);
  }
  [[nodiscard]] const std::vector<std::size_t>& left() const { return left_; }
  [[nodiscard]] const std::optional<Message>& because() const { return because_ ? because_ : aside_; }

  /// Keeps those that pass, where any does and any does not.
  void ask(const std::function<bool(std::size_t)>& passes, const std::function<Message(std::size_t out)>& because) {
    std::vector<std::size_t> kept, out;
    for (const std::size_t way : left_) (passes(way) ? kept : out).push_back(way);
    if (kept.empty() || out.empty()) return;
    left_ = kept;
    if (!because_) because_ = because(out.front());
  }
  /// The same, but it is the reason only where no question after it is one.
  void set_aside(const std::function<bool(std::size_t)>& passes,
                 const std::function<Message(std::size_t out)>& because) {
    const std::optional<Message> before = std::exchange(because_, std::nullopt);
    ask(passes, because);
    aside_ = std::exchange(because_, before);
  }
  [[nodiscard]] double least(const std::function<double(const Outcome&)>& of) const {
    double least = of(outcomes_[left_.front()]);
    for (const std::size_t way : left_) least = std::min(least, of(outcomes_[way]));
    return least;
  }
  [[nodiscard]] const std::string& name(std::size_t way) const { return ways_[way].name(); }

 private:
  const Ways& ways_;
  const Outcomes& outcomes_;
  std::vector<std::size_t> left_;
  std::optional<Message> because_, aside_;
};

/// Less lean or speed is less of everything, the work too: among ways that work otherwise load, gap and life choose nothing. What the
/// definition does is kept; false where it is out of the running and the others differ in work.
bool ask_work(Running& running, const Ways& ways) {
  running.set_aside(
      [&](std::size_t way) { return ways[way].works_as_defined(); },
      [&](std::size_t out) { return Message{Code{"study.because_work"}, {{"other", running.name(out)}}}; });
  const Way& first = ways[running.left().front()];
  return std::ranges::all_of(running.left(), [&](std::size_t way) { return same_work(ways[way], first); });
}

double hanger(const Outcome& o) { return o.arranged.quiet() ? 0.0 : o.arranged.left.larger.si(); }
double life(const Outcome& o) { return o.bearing ? o.bearing->life_said().value_or(Time{}).si() : 0.0; }
double gap(const Outcome& o) { return o.arranged.gap ? o.arranged.gap->si("gap") : 0.0; }

void ask_hanger(Running& running, const Outcomes& outcomes) {
  const double least = running.least(hanger);
  running.ask(
      [&](std::size_t way) { return hanger(outcomes[way]) <= least + outcomes[way].arranged.left.floor_rms.si(); },
      [&](std::size_t out) {
        const AnyQuantity other = any(outcomes[out].arranged.left.larger);
        if (least == 0) return Message{Code{"study.because_quiet"}, {{"other", running.name(out)}, {"left", other}}};
        return Message{Code{"study.because_less"},
                       {{"least", AnyQuantity{least, Kind::force}}, {"other", running.name(out)}, {"left", other}}};
      });
}

void ask_fit(Running& running, const Outcomes& outcomes) {
  running.ask(
      [&](std::size_t way) { return outcomes[way].press && outcomes[way].press->interference.least > Length{}; },
      [&](std::size_t out) { return Message{Code{"study.because_holds"}, {{"other", running.name(out)}}}; });
  running.ask(
      [&](std::size_t way) { return outcomes[way].bearing && outcomes[way].bearing->clearance.least > Length{}; },
      [&](std::size_t out) { return Message{Code{"study.because_free"}, {{"other", running.name(out)}}}; });
}

void ask_life(Running& running, const Outcomes& outcomes) {
  double most = 0;
  for (const std::size_t way : running.left()) most = std::max(most, life(outcomes[way]));
  running.ask([&](std::size_t way) { return life(outcomes[way]) >= kLifeApart * most; },
              [&](std::size_t out) {
                return Message{Code{"study.because_life"},
                               {{"life", AnyQuantity{most, Kind::time}},
                                {"other", running.name(out)},
                                {"shorter", AnyQuantity{life(outcomes[out]), Kind::time}}}};
              });
}

void ask_build(Running& running, const Outcomes& outcomes) {
  double widest = 0;
  for (const std::size_t way : running.left()) widest = std::max(widest, gap(outcomes[way]));
  running.ask([&](std::size_t way) { return gap(outcomes[way]) >= kGapApart * widest; },
              [&](std::size_t out) {
                return Message{Code{"study.because_gap"},
                               {{"gap", AnyQuantity{widest, Kind::length}}, {"other", running.name(out)}}};
              });
  const double steps = running.least([](const Outcome& o) { return static_cast<double>(o.arranged.simplicity.steps); });
  running.ask([&](std::size_t way) { return outcomes[way].arranged.simplicity.steps <= steps; },
              [&](std::size_t out) { return Message{Code{"study.because_simple"}, {{"other", running.name(out)}}}; });
}

/// What goes into the definition. Keys and values of that file, not sentences.
std::string lines_of(const Way& way, const Outcome& o) {
  std::string lines;
  const auto add = [&](const std::string& line) { lines += (lines.empty() ? "" : "\n") + line; };
  const auto quoted = [](const std::string& text) { return '"' + text + '"'; };
  const auto changes = [&](std::string_view field) { return field_of(way.typed, field)->has_value(); };
  if (changes("pattern") && o.arranged.flats.size() > 1) {
    dynamics::Places places;
    for (const int flat : o.arranged.flats) places.push_back(flat - 1);
    add(job::definition_lines(way.shaft, places, !way.shaft.spec().pattern.first_flat));
  }
  if (changes("speed")) add("speed = " + quoted(defined_text(way.shaft, "speed")));
  if (changes("lean")) add("rotor.lean = " + quoted(defined_text(way.shaft, "lean")));
  if (changes("clearance") && !way.clearance)
    add("rotor.bearing.clearance = " + quoted(defined_text(way.shaft, "clearance")));
  if (changes("fit") && !way.interference) add("rotor.hub.fit = " + quoted(defined_text(way.shaft, "fit")));
  return lines;
}

}  // namespace

std::optional<Message> must_not_be(const Outcome& o) {
  if (o.arranged.strikes())
    return Message{Code{"study.bad_strikes"}, {{"rotor", o.arranged.gap_after}, {"next", o.arranged.gap_after + 1}}};
  if (o.press && o.press->interference.greatest <= Length{}) return Message{Code{"study.bad_loose"}, {}};
  if (!o.bearing_problems.empty() && !o.bearing) return Message{Code{"study.bad_bearing"}, {}};
  if (o.bearing && o.bearing->middle() <= Length{}) return Message{Code{"study.bad_binds"}, {}};
  if (o.bent && o.bent->nearest) return Message{Code{"study.bad_critical"}, {{"critical", any(*o.bent->nearest)}}};
  return std::nullopt;
}

Advice advice_of(const Ways& ways, const Outcomes& outcomes) {
  Running running{ways, outcomes};
  std::vector<std::optional<Message>> bad;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    bad.push_back(must_not_be(outcomes[i]));
    if (bad.back()) bad.back()->args.emplace_back("other", ways[i].name());
  }
  if (std::ranges::all_of(bad, [](const auto& b) { return b.has_value(); }))
    return {.way = std::nullopt, .because = *bad.front(), .lines = {}};
  running.ask([&](std::size_t way) { return !bad[way]; }, [&](std::size_t out) { return *bad[out]; });
  if (!ask_work(running, ways)) return {.way = std::nullopt, .because = {Code{"study.because_work_open"}, {}}};
  if (dynamics::planes_of(ways.front().shaft).hangers) ask_hanger(running, outcomes);  // Else nothing holds it there.
  ask_fit(running, outcomes);
  ask_life(running, outcomes);
  ask_build(running, outcomes);
  running.ask([&](std::size_t way) { return ways[way].as_defined(); },
              [](std::size_t) { return Message{Code{"study.because_defined"}, {}}; });
  if (running.left().size() != 1) return {};
  const std::size_t best = running.left().front();
  Advice out{.way = static_cast<int>(best),
             .because = running.because().value_or(Message{Code{"study.because_alike"}, {}})};
  if (!ways[best].as_defined()) out.lines = lines_of(ways[best], outcomes[best]);
  return out;
}

}  // namespace flatwise::study
