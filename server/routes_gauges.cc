// Gauges: their dates, one more of them, a calibration noted. What was noted is never changed.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/units/guards.h"
#include "core/units/parse.h"
#include "job/gauges.h"
#include "job/roles.h"
#include "job/shop_rules.h"
#include "record/instant.h"
#include "server/input.h"
#include "server/live.h"
#include "server/people.h"
#include "server/times.h"
#include "view/shop.h"

namespace flatwise::server {
namespace {

using wire::Json;
namespace fields = job::fields;
using Problems = std::vector<Problem>;

constexpr job::FieldSpec kName = fields::text("gauge", 1, 64), kExpanded = fields::text("expanded", 1, 64),
                         kWho = fields::text("who", 1, 120), kCertificate = fields::text("certificate", 0, 500);
constexpr double kGreatestShare = 0.5;

/// More than any gauge of a bench has, by what a step of its scale is.
double greatest_step(Kind kind) {
  switch (kind) {
    case Kind::torque:
      return 1e3;
    case Kind::force:
      return 1e5;
    case Kind::temperature_rise:
      return 20;
    case Kind::speed:
      return 0.1;
    default:
      return 0.01;
  }
}

/// A typed step of a gauge's scale; a fault is put to the problems.
double step_of(const std::string& typed, Gauge::Use use, std::string_view field, Problems& problems) {
  const Kind kind = job::step_of_scale(use);
  Result<Entered> read = parse_quantity(typed, kind, field);
  if (!read) {
    problems.push_back(std::move(read.error()));
    return 0;
  }
  if (auto wrong = outside(field, read->value, 0, greatest_step(kind))) {
    wrong->given = typed;
    problems.push_back(*std::move(wrong));
  }
  return read->value.si;
}

/// U of a certificate: "2 µm", or "4 %" of the reading.
void read_expanded(const std::string& typed, Gauge& gauge, Problems& problems) {
  gauge.relative = typed.ends_with('%');
  if (!gauge.relative) {
    gauge.calibration_expanded_si = step_of(typed, gauge.use, "expanded", problems);
    return;
  }
  if (gauge.use == Gauge::Use::thermometer) {
    problems.push_back(problem_of(Code{"http.share_of_temperature"}, "expanded", typed));
    return;
  }
  Result<Entered> read = parse_quantity(typed, Kind::ratio, "expanded");
  if (!read) {
    problems.push_back(std::move(read.error()));
  } else if (auto wrong = outside("expanded", read->value, 0, kGreatestShare)) {
    wrong->given = typed;
    problems.push_back(*std::move(wrong));
  } else {
    gauge.calibration_expanded_si = read->value.si;
  }
}

void add(Problems more, Problems& problems) { std::ranges::move(more, std::back_inserter(problems)); }

struct Shop {
  Workshop workshop;
  std::vector<job::Calibration> noted;
  std::vector<job::Person> people;
  [[nodiscard]] view::GaugesSubject subject() const { return {workshop, noted, people, today()}; }
};
job::Stored<Shop> shop_of(job::Store& store) {
  auto workshop = store.workshop();
  if (!workshop) return tl::unexpected{workshop.error()};
  auto noted = store.calibrations();
  if (!noted) return tl::unexpected{noted.error()};
  auto people = store.people();
  if (!people) return tl::unexpected{people.error()};
  return Shop{*std::move(workshop), *std::move(noted), *std::move(people)};
}

Reply card_reply(const Call& call, const std::string& gauge) {
  const auto shop = shop_of(call.store);
  if (!shop) return fault_reply(shop.error(), "gauge");
  return json_reply(view::gauge_card(shop->subject(), gauge, call.voice), 201);
}

/// What a gauge may have besides: all of them lengths, and each pair whole or not at all.
struct Besides {
  std::optional<Entered> least, greatest, setting_ring, setting_ring_expanded;
  std::optional<std::string> repeatability;
  std::optional<int> readings;
};
void read_besides(Input& input, Besides& b) {
  constexpr double kLongest = 10, kRingExpanded = 1e-3, kMostReadings = 1000;
  input(fields::quantity("least", Kind::length, 0, kLongest), b.least);
  input(fields::quantity("greatest", Kind::length, 0, kLongest), b.greatest);
  input(fields::quantity("setting_ring", Kind::length, 1e-3, kLongest), b.setting_ring);
  input(fields::quantity("setting_ring_expanded", Kind::length, 0, kRingExpanded), b.setting_ring_expanded);
  input(fields::text("repeatability", 1, 64), b.repeatability);
  input(fields::whole("repeatability_readings", 2, kMostReadings), b.readings);
}
void need_both(bool one, bool other, std::string_view name, std::string_view also, Problems& problems) {
  if (one == other) return;
  problems.push_back(problem_of(Code{"http.needs_also"}, std::string{one ? also : name}, {},
                                {{"also", std::string{one ? name : also}}}));
}
void take_besides(const Besides& b, Gauge& gauge, Problems& problems) {
  const auto length = [](const std::optional<Entered>& e) {
    return e ? std::optional{Length::from_si(e->value.si)} : std::nullopt;
  };
  need_both(b.setting_ring.has_value(), b.setting_ring_expanded.has_value(), "setting_ring", "setting_ring_expanded",
            problems);
  need_both(b.repeatability.has_value(), b.readings.has_value(), "repeatability", "repeatability_readings", problems);
  gauge.least_readable = length(b.least);
  gauge.greatest_readable = length(b.greatest);
  gauge.setting_ring = length(b.setting_ring);
  gauge.setting_ring_expanded = length(b.setting_ring_expanded).value_or(Length{});
  if (b.repeatability) gauge.repeatability_si = step_of(*b.repeatability, gauge.use, "repeatability", problems);
  gauge.repeatability_readings = b.readings.value_or(0);
  if (gauge.least_readable && gauge.greatest_readable && *gauge.least_readable > *gauge.greatest_readable)
    problems.push_back(
        problem_of(Code{"http.limits_crossed"}, "least", b.least->typed, {{"greatest", b.greatest->typed}}));
}

bool same(const Gauge& a, const Gauge& b) {
  return a.use == b.use && a.resolution_si == b.resolution_si && a.relative == b.relative &&
         a.least_readable == b.least_readable && a.greatest_readable == b.greatest_readable &&
         a.setting_ring == b.setting_ring && a.setting_ring_expanded == b.setting_ring_expanded &&
         a.repeatability_si == b.repeatability_si && a.repeatability_readings == b.repeatability_readings;
}

/// Sent once more: that gauge came in with that very calibration.
bool sent_again(const Shop& shop, const Gauge& gauge, const job::Calibration& first) {
  const Gauge* there = job::find_gauge(shop.workshop, gauge.id);
  const auto noted = std::ranges::find(shop.noted, first.id, &job::Calibration::id);
  return there != nullptr && noted != shop.noted.end() && noted->gauge == gauge.id && noted->day == first.day &&
         noted->until == first.until && noted->expanded_si == first.expanded_si && noted->who == first.who &&
         noted->certificate == first.certificate && noted->by == first.by && same(*there, gauge);
}

}  // namespace

Reply get_gauges(const Call& call) {
  const auto shop = shop_of(call.store);
  if (!shop) return fault_reply(shop.error(), "gauges");
  return json_reply(view::gauges_view(shop->subject(), call.voice));
}

Reply post_gauge(const Call& call) {
  Input input{call};
  Gauge gauge;
  job::Calibration first;
  std::string resolution, expanded;
  Besides besides;
  input(id_field("id"), first.id);
  input(id_field("by"), first.by);
  input(kName, gauge.id);
  input(fields::word("use", fields::kUses), gauge.use);
  input(fields::text("resolution", 1, 64), resolution);
  input(kExpanded, expanded);
  input({.name = "day"}, first.day.emplace());
  input({.name = "until"}, first.until);
  input(kWho, first.who);
  input(kCertificate, first.certificate);
  read_besides(input, besides);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const auto shop = shop_of(call.store);
  if (!shop) return fault_reply(shop.error(), "gauge");
  Problems problems;
  if (auto wrong = problem_of_sender(shop->people, first.by, job::lacks_role_for_gauges))
    problems.push_back(*std::move(wrong));
  gauge.kind = job::shows(gauge.use);
  gauge.resolution_si = step_of(resolution, gauge.use, "resolution", problems);
  read_expanded(expanded, gauge, problems);
  take_besides(besides, gauge, problems);
  gauge.calibrated_until = first.until;
  first.gauge = gauge.id;
  first.expanded_si = gauge.calibration_expanded_si;
  first.at = now();
  add(job::problems_of(first, {}, today()), problems);
  if (!problems.empty()) return problem_reply(422, std::move(problems), call.voice);
  if (sent_again(*shop, gauge, first)) return card_reply(call, gauge.id);
  if (const auto kept = call.store.add_gauge(gauge, first); !kept) return fault_reply(kept.error(), "gauge");
  call.shared.live.poke();
  return card_reply(call, gauge.id);
}

Reply post_calibration(const Call& call) {
  Input input{call};
  job::Calibration c;
  std::string expanded;
  std::optional<std::string> corrects;
  input(id_field("id"), c.id);
  input(id_field("by"), c.by);
  input(kName, c.gauge);
  input({.name = "day"}, c.day.emplace());
  input({.name = "until"}, c.until);
  input(kExpanded, expanded);
  input(kWho, c.who);
  input(kCertificate, c.certificate);
  input(id_field("corrects"), corrects);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  c.corrects = corrects.value_or("");
  const auto shop = shop_of(call.store);
  if (!shop) return fault_reply(shop.error(), "gauge");
  const Gauge* there = job::find_gauge(shop->workshop, c.gauge);
  if (there == nullptr) return problem_reply(422, problem_of(Code{"http.not_there"}, "gauge", c.gauge), call.voice);
  Problems problems;
  if (auto wrong = problem_of_sender(shop->people, c.by, job::lacks_role_for_gauges))
    problems.push_back(*std::move(wrong));
  Gauge gauge = *there;
  read_expanded(expanded, gauge, problems);
  if (problems.empty() && gauge.relative != there->relative)
    problems.push_back(problem_of(Code{"http.other_scale"}, "expanded", expanded));
  c.expanded_si = gauge.calibration_expanded_si;
  c.at = now();
  add(job::problems_of(c, shop->noted, today()), problems);
  if (!problems.empty()) return problem_reply(422, std::move(problems), call.voice);
  if (const auto kept = call.store.put_calibration(c); !kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return card_reply(call, c.gauge);
}

}  // namespace flatwise::server
