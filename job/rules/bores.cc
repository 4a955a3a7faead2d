// Hub bores of every rotor that came off: each plane in, out or cannot tell, the taper between them, and the gauge's date.
#include <algorithm>

#include "core/metrology/figures.h"
#include "job/bores.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

// A bore reading is offered as a unit slip when it lands within 3 % of the bore in the other unit.
constexpr double kSlipShare = 0.03;

void take_plane(const Facts& facts, int rotor, const PlaneMeasured& plane, const Working& working,
                StageReport& report) {
  take_judged(report, at_rotor(rotor), working, {find_gauge(facts.workshop, plane.first->thermometer)},
              facts.bench.date, {{"rotor", rotor}, {"plane", std::string(1, plane.plane)}});
}

bool same_temperatures(const BoreReading& a, const BoreReading& b) {
  const auto same = [](const std::optional<Told<Entered>>& x, const std::optional<Told<Entered>>& y) {
    return x.has_value() == y.has_value() && (!x || x->value.value == y->value.value);
  };
  return same(a.part_temperature, b.part_temperature) && same(a.gauge_temperature, b.gauge_temperature);
}

/// Each reading for itself: one of four may be in the other unit.
void offer_slip(const Facts& facts, int rotor, const PlaneMeasured& plane, StageReport& report) {
  const Length wanted = facts.shaft.rotor(rotor).hub.bore.least;
  for (const BoreReading& r : facts.bench.bores)
    if (r.rotor == rotor && r.plane == plane.plane)
      offer_unit_slip(r.diameter.value.value, any(wanted), kSlipShare, r.diameter.typed, at_rotor(rotor), report);
}

/// With one gauge, and its and the part's temperatures taken alike, what they get wrong cancels between the planes.
void judge_taper(const Facts& facts, int rotor, const std::vector<PlaneMeasured>& planes,
                 const std::vector<WorkingPtr>& shown, StageReport& report) {
  const Hub& hub = facts.shaft.rotor(rotor).hub;
  const bool same_gauge = planes[0].gauge == planes[1].gauge;
  std::vector<Input> in;
  for (const WorkingPtr& plane : shown) {
    in.push_back(computed("mean", "mean", plane));
    in.push_back(computed("own", "mean-own", plane));
  }
  const auto larger = [&](std::string_view name) {
    return shown[0]->si(name) > shown[1]->si(name) ? shown[0] : shown[1];
  };
  in.push_back(computed("gauge-u", "gauge-u", larger("gauge-u")));
  in.push_back(computed("temperature-u", "temperature-u", larger("temperature-u")));
  in.push_back(given("same-gauge", same_gauge ? "yes" : "no"));
  in.push_back(given("same-temperatures", same_temperatures(*planes[0].first, *planes[1].first) ? "yes" : "no"));
  in.push_back(given("limit", any(hub.taper_limit), rotor_origin(facts.shaft, rotor, "hub.taper")));
  const Gauge* dated = overdue(*planes[1].gauge, facts.bench.date) ? planes[1].gauge : planes[0].gauge;
  for (Input& date : gauge_date(*dated, facts.bench.date)) in.push_back(std::move(date));
  const WorkingPtr taper = show(report, at_rotor(rotor), {}, metrology::figures(), "bore-taper", std::move(in));
  if (taper != nullptr) take_findings(report, at_rotor(rotor), *taper, {{"rotor", rotor}});
}

void judge_rotor(const Facts& facts, int rotor, StageReport& report) {
  const std::vector<PlaneMeasured> planes = planes_measured(facts, rotor);
  std::vector<WorkingPtr> shown;
  for (const PlaneMeasured& plane : planes) {
    if (!plane.working) {
      std::ranges::copy(plane.working.error(), std::back_inserter(report.problems));
      offer_slip(facts, rotor, plane, report);
      continue;
    }
    shown.push_back(std::make_shared<const Working>(*plane.working));
    report.workings.push_back({at_rotor(rotor), std::string(1, plane.plane), shown.back()});
    take_plane(facts, rotor, plane, *shown.back(), report);
    if (shown.back()->answer != Answer::in) offer_slip(facts, rotor, plane, report);
  }
  for (const char wanted : {'A', 'B'}) {
    if (std::ranges::any_of(planes, [&](const PlaneMeasured& p) { return p.plane == wanted; })) continue;
    const Args args{{"rotor", rotor}, {"plane", std::string(1, wanted)}};
    report.findings.push_back({Code{"inspection.plane_not_measured"}, Severity::unanswered, args, at_rotor(rotor),
                               Message{Code{"inspection.measure_plane"}, args}});
  }
  const auto sound = [](const WorkingPtr& plane) { return possible(*plane); };
  if (shown.size() == 2 && std::ranges::all_of(shown, sound)) judge_taper(facts, rotor, planes, shown, report);
}

}  // namespace

void bores(const Facts& facts, StageReport& report) {
  for (const int rotor : facts.bench.came_off) judge_rotor(facts, rotor, report);
}

}  // namespace flatwise::job::rules
