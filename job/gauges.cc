#include "job/gauges.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "job/figure_use.h"

namespace flatwise::job {
namespace {

/// How many of the smaller unit make one of the other, by kind: where a figure lands when the units are mixed.
double slip_factor(Kind kind) {
  if (kind == Kind::length) return 25.4;                // mm in an inch
  if (kind == Kind::torque) return 1.3558179483314004;  // N·m in a ft·lbf
  if (kind == Kind::force) return 4.4482216152605;      // N in a lbf
  return 1.0;
}

Word would_be_word(Answer answer) {
  constexpr std::array<const char*, 3> kWords{"answer.in", "answer.out", "answer.cannot_tell"};
  return Word{kWords[static_cast<std::size_t>(answer)]};
}

}  // namespace

const Gauge* find_gauge(const Workshop& workshop, std::string_view id) {
  const auto it = std::ranges::find_if(workshop.gauges, [&](const Gauge& g) { return g.id == id; });
  return it == workshop.gauges.end() ? nullptr : &*it;
}

Kind shows(Gauge::Use use) {
  switch (use) {
    case Gauge::Use::thermometer:
      return Kind::temperature;
    case Gauge::Use::wrench:
      return Kind::torque;
    case Gauge::Use::press_gauge:
      return Kind::force;
    case Gauge::Use::vibration_meter:
      return Kind::speed;
    default:
      return Kind::length;
  }
}

Kind step_of_scale(Gauge::Use use) { return difference_kind(shows(use)); }

void certify_for(Gauge& gauge, Day day) {
  if (gauge.certificates.empty()) return;
  const Certificate* holds = &gauge.certificates.front();
  for (const Certificate& c : gauge.certificates)
    if (!c.from || *c.from <= day) holds = &c;
  gauge.calibrated_until = holds->until;
  gauge.calibration_expanded_si = holds->expanded_si;
}

bool overdue(const Gauge& gauge, Day day) { return gauge.calibrated_until < day && !gauge.accepted_overdue_by; }

Answer answer_with(const Gauge& gauge, Day day, Answer would_be, Where where, StageReport& report) {
  if (!(gauge.calibrated_until < day)) return would_be;
  Args args{{"gauge", gauge.id}, {"until", text_of(gauge.calibrated_until)}, {"would_be", would_be_word(would_be)}};
  if (gauge.accepted_overdue_by) {
    args.emplace_back("by", *gauge.accepted_overdue_by);
    report.findings.push_back({Code{"job.gauge_accepted"}, Severity::note, std::move(args), where, std::nullopt});
    return would_be;
  }
  report.findings.push_back(
      {Code{"job.gauge_overdue"}, Severity::cannot_tell, args, where, Message{Code{"job.accept_gauge"}, args}});
  return Answer::cannot_tell;
}

void take_judged(StageReport& report, Where where, const Working& working, std::initializer_list<const Gauge*> gauges,
                 Day day, const Args& more) {
  take_judged(report, where, working, std::span<const Gauge* const>{gauges.begin(), gauges.size()}, day, more);
}

void take_judged(StageReport& report, Where where, const Working& working, std::span<const Gauge* const> gauges,
                 Day day, const Args& more) {
  const std::size_t before = report.findings.size();
  take_findings(report, where, working, more);
  const std::size_t after = report.findings.size();
  const Answer would_be = working.answer.value_or(Answer::cannot_tell);
  bool trusted = true;
  for (const Gauge* gauge : gauges) {
    if (gauge == nullptr) continue;
    trusted = trusted && !overdue(*gauge, day);
    (void)answer_with(*gauge, day, would_be, where, report);
  }
  for (Shown& shown : report.workings)
    if (shown.working.get() == &working && working.answer) shown.answer = trusted ? would_be : Answer::cannot_tell;
  if (trusted) return;
  for (std::size_t i = before; i < report.findings.size(); ++i)
    report.findings[i].severity = std::min(report.findings[i].severity, Severity::cannot_tell);
  // A good word of readings that decide nothing must not stand beside 'cannot tell': the gauge's finding says what it would
  // have been.
  const auto at = [&](std::size_t i) { return report.findings.begin() + static_cast<std::ptrdiff_t>(i); };
  if (would_be == Answer::in) report.findings.erase(at(before), at(after));
}

std::vector<Input> gauge_date(const Gauge& gauge, Day day) {
  const bool past = gauge.calibrated_until < day;
  const char* standing = !past ? "in_date" : gauge.accepted_overdue_by ? "accepted" : "overdue";
  return {given("gauge-date", standing, {OriginKind::computed, text_of(gauge.calibrated_until)})};
}

Input gauge_input(std::string_view name, AnyQuantity value, const Gauge& gauge) {
  return given(name, value,
               {OriginKind::given, gauge.id + (gauge.place.file.empty() ? "" : ", " + text_of(gauge.place))});
}

double certified_si(const Gauge& gauge, double reading_si) {
  return gauge.calibration_expanded_si * (gauge.relative ? reading_si : 1);
}

Input relative_calibration(const Gauge& gauge, double reading_si) {
  const double share = gauge.relative ? gauge.calibration_expanded_si : gauge.calibration_expanded_si / reading_si;
  return gauge_input("calibration", any_ratio(share), gauge);
}

std::string text_of(const Place& place) {
  return place.line > 0 ? place.file + ":" + std::to_string(place.line) : place.file;
}

std::string text_of(Day day) {
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return std::to_string(day.year) + "-" + two(day.month) + "-" + two(day.day);
}

void offer_unit_slip(AnyQuantity read, AnyQuantity wanted, double share, std::string_view typed, Where where,
                     StageReport& report) {
  const double factor = slip_factor(read.kind);
  if (factor == 1.0 || !(read.si > 0) || !(wanted.si > 0)) return;
  for (const double ratio : {factor, 1.0 / factor}) {
    if (std::abs(read.si * ratio / wanted.si - 1.0) > share) continue;
    report.findings.push_back({Code{"job.units_mixed"},
                               Severity::note,
                               {{"typed", std::string{typed}}, {"wanted", wanted}},
                               where,
                               Message{Code{"job.check_unit"}, {{"typed", std::string{typed}}}}});
  }
}

}  // namespace flatwise::job
