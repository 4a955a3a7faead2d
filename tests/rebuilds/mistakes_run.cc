// Mistakes of the test run: cut short, not read, a hanger that runs hot or shakes.
#include "tests/rebuilds/mistakes.h"
#include "tests/rebuilds/run.h"

namespace rebuilds {
namespace {

struct AtHanger {
  std::string label, place;
};
/// A hanger of the shaft; none where there is none, or its run is not judged.
std::optional<AtHanger> free_hanger(Rebuild& r, Random& random) {
  if (r.run.hangers.empty() || !r.drawing.run.rise) return std::nullopt;
  std::vector<AtHanger> all;
  for (std::size_t i = 0; i < r.drawing.parts.size(); ++i) {
    const Part& p = r.drawing.parts[i];
    if (p.kind == "hanger" && !has_claim(r, "run " + p.label))
      all.push_back({p.label, "station " + std::to_string(i + 1)});
  }
  if (all.empty()) return std::nullopt;
  const AtHanger& chosen = random.pick(all);
  r.claimed.push_back("run " + chosen.label);
  return chosen;
}

bool cut_short(Rebuild& r, Mistake& m, Random& random) {
  if (!r.drawing.run.shortest || !claim(r, "run time")) return false;
  r.run.seconds = std::floor(r.drawing.run.shortest->si / 60 * random.between(0.1, 0.95)) * 60;
  m.told = "it ran " + in_minutes(r.run.seconds, 0).text + " of " + r.drawing.run.shortest->text;
  m.names = {{{"job.run_too_short"}, {}, {}}};
  return true;
}

bool time_not_read(Rebuild& r, Mistake& m, Random&) {
  if (!r.drawing.run.shortest || !claim(r, "run time")) return false;
  m.names = {{{"job.run_time_not_read"}, {}, {}}};
  m.after = [](Rebuild& to, Mistake&, Random&) { to.sheet.run.ran.reset(); };
  return true;
}

bool room_not_read(Rebuild& r, Mistake& m, Random&) {
  // Without the room no hanger's heat is worked out: whoever else is about them would not be seen.
  const bool others = std::ranges::any_of(r.claimed, [](const std::string& c) { return c.starts_with("run hanger"); });
  if (!r.drawing.run.rise || r.run.hangers.empty() || others || has_claim(r, "overdue") || !claim(r, "run room"))
    return false;
  for (const auto& [label, ran] : r.run.hangers) r.claimed.push_back("run " + label);
  m.names = {{{"job.run_room_not_read"}, {}, {}}};
  m.after = [](Rebuild& to, Mistake&, Random&) { to.sheet.run.room.reset(); };
  return true;
}

bool hanger_not_read(Rebuild& r, Mistake& m, Random& random) {
  const auto at = free_hanger(r, random);
  if (!at) return false;
  const bool heat = random.chance(0.5);
  m.names = {{{heat ? "job.run_heat_not_read" : "job.run_vibration_not_read"}, at->place, {}}};
  m.after = [heat, label = at->label](Rebuild& to, Mistake&, Random&) {
    HangerSheet& sheet = to.sheet.run.hangers[label];
    (heat ? sheet.temperature : sheet.vibration).reset();
  };
  return true;
}

bool not_read(Rebuild& r, Mistake& m, Random& random) {
  const int which = random.whole(0, 3);
  const bool put = which == 0   ? time_not_read(r, m, random)
                   : which == 1 ? room_not_read(r, m, random)
                                : hanger_not_read(r, m, random);
  if (put) m.told = m.names.front().codes.front() + " " + m.names.front().place;
  return put;
}

/// Hot, or shaking: from just under the limit, where nobody can tell, to far beyond it.
bool hanger_wrong(Rebuild& r, Mistake& m, Random& random) {
  if (has_claim(r, "overdue") || has_claim(r, "run room")) return false;
  const auto at = free_hanger(r, random);
  if (!at) return false;
  r.claimed.emplace_back("gauge-limited");
  const bool hot = m.kind == Kind::run_hot;
  HangerRun& ran = r.run.hangers[at->label];
  const double limit = hot ? r.drawing.run.rise->si : r.drawing.run.vibration->si;
  (hot ? ran.rise : ran.vibration) = limit * random.between(1.0, hot ? 1.3 : 1.6);
  m.told = at->label + (hot ? " runs hot" : " shakes");
  m.out = {{{hot ? "metrology.rise_out" : "metrology.vibration_out"}, at->place, {}}};
  m.cannot_tell = {{{hot ? "metrology.rise_cannot_tell" : "metrology.vibration_cannot_tell"}, at->place, {}}};
  if (hot) {
    m.promised = rise_chance_above(r, ran.rise, rise_bound(r, 1));
    m.pass_allowed = 1 - rise_chance_above(r, ran.rise, rise_bound(r, -1));
    return true;
  }
  const Gauge& meter = r.shop.gauge("VM");
  const auto below = [&](double bound) {
    return chance_below(ran.vibration, ran.vibration * meter.calibration.si / 2, meter.resolution.si, bound);
  };
  m.promised = 1 - below(vibration_bound(r, 1));
  m.pass_allowed = below(vibration_bound(r, -1));
  return true;
}

}  // namespace

bool put_in_run(Rebuild& r, Mistake& m, Random& random) {
  if (m.kind == Kind::run_cut_short) return cut_short(r, m, random);
  return m.kind == Kind::run_not_read ? not_read(r, m, random) : hanger_wrong(r, m, random);
}

}  // namespace rebuilds
