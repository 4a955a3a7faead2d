#include <algorithm>
#include <cmath>

#include "core/beam/figures_parts.h"
#include "core/beam/of_shaft.h"
#include "core/units/guards.h"

namespace flatwise::beam {

void add_near(const std::vector<AngularSpeed>& criticals, AngularSpeed running, Word whirl, std::vector<Finding>& to) {
  for (const NearSpeed& near : within_keep_off(criticals, running))
    to.push_back({Code{"beam.near_critical"},
                  Severity::out,
                  {{"running", any(running)},
                   {"critical", any(near.speed)},
                   {"whirl", whirl},
                   {"apart", any_ratio(std::abs(near.apart))},
                   {"limit", any_ratio(kKeepOff)}},
                  {},
                  Message{Code{"beam.keep_off"}, {}}});
  if (!criticals.empty() && running.radians_per_second() > (1 + kKeepOff) * criticals.front().radians_per_second())
    to.push_back({Code{"beam.above_critical"},
                  Severity::cannot_tell,
                  {{"running", any(running)}, {"critical", any(criticals.front())}, {"whirl", whirl}},
                  {},
                  Message{Code{"beam.keep_off"}, {}}});
}

void add_stressed(Pressure greatest, std::vector<Finding>& to) {
  // Yield of the weakest and of the strongest steel that bars of this trade are made of: EN 10025-2 S235; EN 10083-3 42CrMo4 quenched and
  // tempered, to 16 mm. From memory.
  constexpr Pressure kWeakest = megapascals(235), kStrongest = megapascals(900);
  if (greatest <= kWeakest) return;
  const bool none_bears = greatest > kStrongest;
  to.push_back({none_bears ? Code{"beam.no_bar_bears"} : Code{"beam.weak_bar_yields"},
                none_bears ? Severity::out : Severity::note,
                {{"stress", any(greatest)}, {"limit", any(none_bears ? kStrongest : kWeakest)}},
                {},
                Message{Code{"beam.ask_the_bar"}, {}}});
}

namespace {

/// A hanger that the turning load lifts each turn: it is knocked, and the model (which never lets go) is on the edge.
void add_lifted(const ShaftBending& b, std::vector<Finding>& to) {
  for (std::size_t i = 0; i < b.of.hangers.size(); ++i) {
    const Force rest = b.at_rest.reactions[i].size, turning = b.turning.reactions[i].size;
    if (turning <= rest) continue;
    to.push_back({Code{"beam.lifted"},
                  Severity::note,
                  {{"hanger", b.of.hangers[i].label}, {"turning", any(turning)}, {"rest", any(rest)}},
                  {Where::Part::station, b.of.hangers[i].station + 1},
                  std::nullopt});
  }
}

void add_worst_mistake(const ShaftBending& b, std::vector<Finding>& to) {
  if (b.effects.mistakes.empty()) return;
  for (const Mistake kind : {Mistake::half_out, Mistake::rotor_out}) {
    const auto worst = std::ranges::find(b.effects.mistakes, kind, &TimingEffect::mistake);
    if (worst == b.effects.mistakes.end()) continue;
    to.push_back({kind == Mistake::half_out ? Code{"beam.half_would"} : Code{"beam.rotor_would"},
                  Severity::note,
                  {{"rotor", worst->rotor},
                   {"flats", std::abs(worst->flats_out)},
                   {"greatest", any(worst->greatest)},
                   {"rise", any(worst->rise)},
                   {"hanger", b.of.hangers[static_cast<std::size_t>(worst->hanger)].label}},
                  {Where::Part::rotor, worst->rotor},
                  std::nullopt});
  }
}

}  // namespace

Result<ShaftBending> bending_of(const Shaft& shaft, std::span<const Angle> tilt) {
  ShaftBending out;
  out.of = beam_of(shaft, tilt);
  const AngularSpeed speed = shaft.spec().speed;
  const Result<Mesh> mesh = Mesh::make(out.of.beam);
  if (!mesh) return tl::unexpected(mesh.error());
  auto rest = bent_at_rest(*mesh, out.of.loads);
  auto turning = bent_turning(*mesh, out.of.turning, speed);
  auto effects = effects_of(*mesh, out.of.turning, speed, {shaft.rotor_count(), shaft.flats()});
  for (const auto* p :
       {rest ? nullptr : &rest.error(), turning ? nullptr : &turning.error(), effects ? nullptr : &effects.error()})
    if (p != nullptr) return tl::unexpected(*p);
  out.at_rest = *std::move(rest);
  out.turning = *std::move(turning);
  out.effects = *std::move(effects);
  const auto all = stresses(*mesh, out.at_rest, out.turning, out.of.torques).value();
  for (std::size_t i = 0; i < shaft.stations().size(); ++i) {
    const auto node = static_cast<std::size_t>(mesh->node_at(shaft.middle_of(static_cast<int>(i))).value());
    out.stresses.push_back(all[node]);
    out.rest_of_station.push_back(out.at_rest.line[node]);
    out.turning_of_station.push_back(out.turning.line[node]);
  }
  out.forward = critical_speeds(*mesh, Whirl::forward, kCriticalsTold).value();
  out.backward = critical_speeds(*mesh, Whirl::backward, kCriticalsTold).value();
  add_near(out.forward.speeds, speed, Word{"whirl.forward"}, out.findings);
  add_near(out.backward.speeds, speed, Word{"whirl.backward"}, out.findings);
  add_stressed(std::ranges::max_element(all, {}, &StressAt::equivalent)->equivalent, out.findings);
  add_lifted(out, out.findings);
  add_worst_mistake(out, out.findings);
  return out;
}

Result<std::vector<ResponsePoint>> response_of(const Shaft& shaft, const ShaftBeam& of, const SpeedRange& range) {
  if (auto p = outside("speeds", any_count(range.speeds), 2, kMostSpeeds)) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("from", any(range.from))) return tl::unexpected(*std::move(p));
  if (!(range.to > range.from))
    return tl::unexpected(
        Problem{Code{"beam.range"}, "to", {}, {{"from", any(range.from)}, {"to", any(range.to)}}, std::nullopt});
  const Result<Mesh> mesh = Mesh::make(of.beam);
  if (!mesh) return tl::unexpected(mesh.error());
  std::vector<AngularSpeed> speeds;
  const double from = range.from.radians_per_second(), to = range.to.radians_per_second();
  for (int i = 0; i < range.speeds; ++i)
    speeds.push_back(radians_per_second(from + (to - from) * i / (range.speeds - 1)));
  std::vector<Length> watched;
  for (int r = 1; r <= shaft.rotor_count(); ++r) watched.push_back(shaft.rotor_position(r));
  return response(*mesh, of.turning, {speeds, watched});
}

}  // namespace flatwise::beam
