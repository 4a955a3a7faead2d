// Presses: the force read off the gauge against the band that the gauged bore and the ring's range promise, and which ring
// the tool bore on, which force cannot show.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "core/fits/figures.h"
#include "job/bores.h"
#include "job/figure_use.h"
#include "job/fitted_bearing.h"
#include "job/gauges.h"
#include "job/grip.h"
#include "job/press_path.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

void add(StageReport& report, int rotor, Code code, Severity severity, Code instruction, Args args = {}) {
  args.emplace_back("rotor", rotor);
  Message todo{instruction, args};
  report.findings.push_back({code, severity, std::move(args), at_rotor(rotor), std::move(todo)});
}

/// What the joint is, and what the hub bears and how far the ring goes in.
std::vector<Input> press_inputs(const Facts& facts, int rotor) {
  const RotorOf part = rotor_of(facts.shaft, rotor);
  std::vector<Input> in = joint_inputs(part);
  in.push_back(given("hub-yield", any(part.it.hub.material.yield), part.from("hub.material")));
  in.push_back(part.length("width", part.it.bearing.width, "bearing.B"));
  return in;
}

/// Rotors of one kind have one friction: its working is shown the first time only.
WorkingPtr shown_once(StageReport& report, int rotor, Results<Working> working) {
  if (!working) {
    std::ranges::move(working.error(), std::back_inserter(report.problems));
    return nullptr;
  }
  const auto same = [&](const Shown& s) {
    return s.working->figure == working->figure &&
           std::ranges::equal(s.working->outputs, working->outputs, {}, &Output::value, &Output::value);
  };
  if (const auto it = std::ranges::find_if(report.workings, same); it != report.workings.end()) return it->working;
  report.workings.push_back({at_rotor(rotor), {}, std::make_shared<const Working>(*std::move(working))});
  return report.workings.back().working;
}

/// Friction fitted from the shop's own presses: from eight of them on narrower than the books.
WorkingPtr shop_friction(const Facts& facts, int rotor, StageReport& report) {
  if (facts.workshop.presses.empty()) return nullptr;
  std::vector<Input> in;
  for (const ShopPress& press : facts.workshop.presses) {
    in.push_back(given("force", any(press.force)));
    in.push_back(given("interference", any(press.interference)));
    in.push_back(given("joint-diameter", any(press.joint_diameter)));
    in.push_back(given("width", any(press.width)));
  }
  for (Input& input : joint_inputs(rotor_of(facts.shaft, rotor)))
    if (input.name != "joint-diameter") in.push_back(std::move(input));
  return shown_once(report, rotor, use(fits::figures(), "shop-friction", std::move(in)));
}

std::vector<Input> with_friction(std::vector<Input> in, const WorkingPtr& friction) {
  if (friction == nullptr) return in;
  for (const std::string_view name : {"friction-least", "friction-greatest", "friction-from"})
    in.push_back(computed(name, name, friction));
  return in;
}

/// Interference over both planes: the loosest and the tightest of them bound the band.
struct Expected {
  WorkingPtr loosest, tightest;
};
std::optional<Expected> expected(const Facts& facts, int rotor, StageReport& report) {
  const auto ring = ring_outside(rotor_of(facts.shaft, rotor));
  if (!ring) {
    std::ranges::copy(ring.error(), std::back_inserter(report.problems));
    return std::nullopt;
  }
  const WorkingPtr& limits = *ring;
  Expected out;
  for (const PlaneMeasured& plane : planes_measured(facts, rotor)) {
    if (!plane.working || !possible(*plane.working)) continue;
    const auto bore = std::make_shared<const Working>(*plane.working);
    const WorkingPtr fit = show(report, at_rotor(rotor), std::string(1, plane.plane), fits::figures(), "interference",
                                {computed("bore", "mean", bore), computed("ring-least", "least", limits),
                                 computed("ring-greatest", "greatest", limits)});
    if (fit == nullptr) continue;
    take_findings(report, at_rotor(rotor), *fit, {{"rotor", rotor}, {"plane", std::string(1, plane.plane)}});
    if (out.loosest == nullptr || fit->si("least") < out.loosest->si("least")) out.loosest = fit;
    if (out.tightest == nullptr || fit->si("greatest") > out.tightest->si("greatest")) out.tightest = fit;
  }
  if (out.loosest == nullptr) return std::nullopt;
  return out;
}

WorkingPtr read_back(const Facts& facts, const PressReading& press, const WorkingPtr& band, const WorkingPtr& friction,
                     StageReport& report) {
  const Gauge* gauge = find_gauge(facts.workshop, press.gauge);
  CORE_CHECK(gauge != nullptr);
  const AnyQuantity force = press.force.value.value;
  std::vector<Input> in = with_friction(press_inputs(facts, press.rotor), friction);
  in.push_back(measured("force", force, text_of(press.force.place) + ", " + gauge->id, press.force.typed));
  in.push_back(gauge_input("force-uncertainty", {certified_si(*gauge, force.si), Kind::force}, *gauge));
  in.push_back(gauge_input("force-resolution", {gauge->resolution_si, Kind::force}, *gauge));
  in.push_back(computed("band-least", "force-least", band));
  in.push_back(computed("band-greatest", "force-greatest", band));
  const WorkingPtr back = show(report, at_rotor(press.rotor), {}, fits::figures(), "press-readback", std::move(in));
  if (back == nullptr) return nullptr;
  take_judged(report, at_rotor(press.rotor), *back, {gauge}, facts.bench.date, {{"rotor", press.rotor}});
  if (back->answer == Answer::out)
    offer_unit_slip(force, {0.5 * (band->si("force-least") + band->si("force-greatest")), Kind::force}, 0.4,
                    press.force.typed, at_rotor(press.rotor), report);
  return back;
}

/// The fit that the force proves, else the one that was gauged over both planes.
FitInputs fit_known(const Expected& gauged, const WorkingPtr& back) {
  if (back != nullptr)
    return {computed("interference-least", "interference-least", back),
            computed("interference-greatest", "interference-greatest", back)};
  return {computed("interference-least", "least", gauged.loosest),
          computed("interference-greatest", "greatest", gauged.tightest)};
}

void note(StageReport& report, int rotor, Finding finding) {
  finding.severity = Severity::note;
  finding.where = at_rotor(rotor);
  report.findings.push_back(std::move(finding));
}

/// What the fit means for bearing and hub. By rules of catalogues and ideal metals: advice, no verdict. Nothing is said where
/// the fit is beyond a figure's range: the force says so already.
void advise(const Facts& facts, int rotor, const FitInputs& fit, StageReport& report) {
  const auto put = [&](const WorkingPtr& made) { report.workings.push_back({at_rotor(rotor), {}, made}); };
  const RotorOf part = rotor_of(facts.shaft, rotor);
  if (const auto inside = bearing_inside(part))
    if (const auto left = clearance_fitted(part, *inside, fit)) {
      put(*left);
      if ((*left)->si("least") <= 0 && !(*left)->findings.empty()) note(report, rotor, (*left)->findings.front());
    }
  if (const auto creep = creep_load(facts.shaft, rotor, fit)) {
    const auto advice = std::make_shared<Working>(**creep);
    advice->answer.reset();  // A rule right to a factor of 1.5 judges nobody's work.
    put(advice);
    if ((*creep)->answer != Answer::in) {
      const AnyQuantity wanted{(*creep)->si("wanted"), Kind::length};
      note(report, rotor,
           {Code{"press.may_creep"}, Severity::note, {{"rotor", rotor}, {"wanted", wanted}}, {}, std::nullopt});
    }
  }
  if (const auto hub = hub_yielding(facts.shaft, rotor, fit); hub && !(*hub)->findings.empty()) {
    put(*hub);
    note(report, rotor, (*hub)->findings.front());
  }
}

/// Points of one press by their travel; of two at one travel the later one holds.
std::vector<const PressPoint*> points_of(const Facts& facts, int rotor) {
  std::map<double, const PressPoint*> by_travel;
  for (const PressPoint& p : facts.bench.press_points)
    if (p.rotor == rotor) by_travel[p.travel.value.value.si] = &p;
  std::vector<const PressPoint*> points;
  for (const auto& [travel, point] : by_travel) points.push_back(point);
  return points;
}

constexpr std::size_t kFewestPoints = 4;  // Two slopes, of the earlier half and of the later.

/// The force over the way in, held against the band and read back into the fit behind it.
void judge_curve(const Facts& facts, int rotor, const std::vector<Input>& path, StageReport& report) {
  const std::vector<const PressPoint*> points = points_of(facts, rotor);
  if (points.empty()) return;
  const auto gripped =
      std::ranges::count_if(points, [](const PressPoint* p) { return p->travel.value.value.si > kPressLead.si(); });
  if (gripped < static_cast<std::ptrdiff_t>(kFewestPoints)) {
    const Args args{
        {"rotor", rotor}, {"points", static_cast<int>(gripped)}, {"wanted", static_cast<int>(kFewestPoints)}};
    return report.findings.push_back({Code{"press.curve_few"}, Severity::note, args, at_rotor(rotor), std::nullopt});
  }
  std::vector<Input> in = path;
  double u = 0;
  std::vector<const Gauge*> gauges;
  for (const PressPoint* point : points) {
    in.push_back(measured("travel", point->travel.value.value, text_of(point->travel.place), point->travel.typed));
    in.push_back(measured("force", point->force.value.value, text_of(point->force.place), point->force.typed));
    const Gauge* gauge = find_gauge(facts.workshop, point->gauge);
    if (gauge == nullptr) continue;
    const double certified = certified_si(*gauge, point->force.value.value.si);
    // A rectangle as wide as the step, k = 2: U = step / sqrt(3).
    u = std::max(u, std::hypot(certified, gauge->resolution_si / std::numbers::sqrt3));
    if (std::ranges::find(gauges, gauge) == gauges.end()) gauges.push_back(gauge);
  }
  in.push_back(given("force-uncertainty", AnyQuantity{u, Kind::force}, {OriginKind::computed, "gauges of the points"}));
  const WorkingPtr read = show(report, at_rotor(rotor), {}, fits::figures(), "press-curve-read", std::move(in));
  if (read != nullptr) take_judged(report, at_rotor(rotor), *read, gauges, facts.bench.date, {{"rotor", rotor}});
}

void judge_ring(int rotor, const PressReading& press, StageReport& report) {
  const RingPressed ring = press.ring ? press.ring->value : RingPressed::not_seen;
  if (ring == RingPressed::inner)
    add(report, rotor, Code{"press.inner_ring"}, Severity::out, Code{"press.new_bearing"});
  if (ring == RingPressed::not_seen)
    add(report, rotor, Code{"press.ring_not_told"}, Severity::unanswered, Code{"press.say_which_ring"});
}

void judge_rotor(const Facts& facts, int rotor, StageReport& report) {
  const PressReading* press = nullptr;
  for (const PressReading& p : facts.bench.presses)
    if (p.rotor == rotor) press = &p;
  // What to expect is wanted before the press, so it is worked out without a reading too.
  if (press == nullptr)
    add(report, rotor, Code{"press.not_read"}, Severity::unanswered, Code{"press.read_force"});
  else
    judge_ring(rotor, *press, report);
  const auto fit = expected(facts, rotor, report);
  if (!fit) return;  // The bore is not measured: the inspection says so.
  const WorkingPtr friction = shop_friction(facts, rotor, report);
  if (friction != nullptr) take_findings(report, at_rotor(rotor), *friction);
  std::vector<Input> in = with_friction(press_inputs(facts, rotor), friction);
  in.push_back(computed("interference-least", "least", fit->loosest));
  in.push_back(computed("interference-greatest", "greatest", fit->tightest));
  const std::vector<Input> path = in;
  const WorkingPtr band = show(report, at_rotor(rotor), {}, fits::figures(), "press-force", std::move(in));
  if (band == nullptr) return;
  judge_curve(facts, rotor, path, report);
  const WorkingPtr back = press != nullptr ? read_back(facts, *press, band, friction, report) : nullptr;
  advise(facts, rotor, fit_known(*fit, back), report);
}

/// What is said of the band itself holds for the stage; once is enough.
void say_once(StageReport& report) {
  std::vector<Code> said;
  std::erase_if(report.findings, [&](const Finding& f) {
    const bool about_the_band = f.code == Code{"fits.band_hides"} || f.code == Code{"fits.friction_narrowed"} ||
                                f.code == Code{"fits.too_few_presses"};
    if (!about_the_band) return false;
    const bool again = std::ranges::find(said, f.code) != said.end();
    said.push_back(f.code);
    return again;
  });
  for (Finding& f : report.findings)
    if (std::ranges::find(said, f.code) != said.end()) f.where = {};
}

}  // namespace

void presses(const Facts& facts, StageReport& report) {
  for (const int rotor : facts.bench.came_off)
    if (std::ranges::find(facts.bench.new_set, rotor) != facts.bench.new_set.end()) judge_rotor(facts, rotor, report);
  say_once(report);
}

}  // namespace flatwise::job::rules
