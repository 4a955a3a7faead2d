#include "job/plan.h"

#include <algorithm>

#include "core/teardown/figures.h"
#include "job/figure_use.h"

namespace flatwise::job {
namespace {

std::vector<Problem> problems_of(const Shaft& shaft, std::span<const int> rotors) {
  std::vector<Problem> out;
  if (rotors.empty()) out.push_back({Code{"plan.no_rotors"}, "open", {}, {{"greatest", shaft.rotor_count()}}, {}});
  for (std::size_t i = 0; i < rotors.size(); ++i) {
    const bool twice = std::ranges::count(rotors.first(i), rotors[i]) > 0;
    if (twice) out.push_back({Code{"plan.rotor_twice"}, "open", std::to_string(rotors[i]), {}, {}});
    if (rotors[i] < 1 || rotors[i] > shaft.rotor_count())
      out.push_back(
          {Code{"plan.no_such_rotor"}, "open", std::to_string(rotors[i]), {{"greatest", shaft.rotor_count()}}, {}});
  }
  return out;
}

/// Minutes a station and parts a kind, as inputs; without a rate there is no price to work out.
WorkingPtr working_of(const Shaft& shaft, const Workshop& workshop, const teardown::Plan& plan) {
  if (!workshop.rate_per_hour || plan.stations.empty()) return nullptr;
  std::vector<Input> inputs;
  for (const int i : plan.stations) {
    const Station& station = shaft.stations()[static_cast<std::size_t>(i)];
    const std::string at = "stations[" + std::to_string(i) + "]";
    inputs.push_back(given("off", any(station.minutes_off), shaft.origin(at + ".minutes_off")));
    inputs.push_back(given("on", any(station.minutes_on), shaft.origin(at + ".minutes_on")));
  }
  inputs.push_back(given("rate", AnyQuantity{*workshop.rate_per_hour / 3600, Kind::money_rate}));
  for (const teardown::PartsDue& due : plan.due)
    if (due.price_each)
      inputs.push_back(given("part", any_money(*due.price_each * due.count), {OriginKind::computed, due.part_number}));
  Results<Working> working = use(teardown::figures(), "removal-cost", std::move(inputs));
  return working ? std::make_shared<const Working>(*std::move(working)) : nullptr;
}

std::vector<Message> sentences(const Shaft& shaft, const teardown::Plan& plan) {
  const bool a = plan.split.from_a > 0, b = plan.split.from_b > 0;
  std::vector<std::int64_t> off(plan.rotors.begin(), plan.rotors.end());
  std::vector<Message> says;
  if (a && b)
    says.push_back({Code{"plan.from_both"}, {{"rotors", off}}});
  else if (a || b)
    says.push_back({Code{"plan.from_one"}, {{"end", Word{a ? "end.a" : "end.b"}}, {"rotors", off}}});
  std::vector<std::int64_t> stay;
  for (int r = 1; r <= shaft.rotor_count(); ++r)
    if (std::ranges::find(plan.rotors, r) == plan.rotors.end()) stay.push_back(r);
  if (!stay.empty()) says.push_back({Code{"plan.stay"}, {{"rotors", stay}}});
  if (plan.runner_up) {
    Args args{{"minutes", any(plan.runner_up->more_time)}};
    if (plan.runner_up->more_money) args.emplace_back("money", any_money(*plan.runner_up->more_money));
    says.push_back({Code{"plan.next_best"}, std::move(args)});
  }
  return says;
}

}  // namespace

std::vector<int> rotors_renewed(const teardown::Plan& plan) {
  std::vector<int> rotors;
  for (const teardown::PartsDue& due : plan.due)
    if (due.kind == teardown::PartsDue::Kind::adapter_set)
      rotors.insert(rotors.end(), due.rotors.begin(), due.rotors.end());
  std::ranges::sort(rotors);
  return rotors;
}

std::vector<teardown::RotorFlats> flats_back(const Shaft& shaft, const teardown::Plan& plan,
                                             std::optional<timing::Reference> reference) {
  std::vector<teardown::RotorFlats> flats;
  const bool others_set_it = timing::turn_is_free(shaft) && static_cast<int>(plan.rotors.size()) < shaft.rotor_count();
  if (!reference && others_set_it) return flats;
  const Result<timing::Map> map = timing::map(shaft, reference);
  if (!map) return flats;
  for (const int r : plan.rotors) {
    const timing::RotorMarks& m = map->rotors[static_cast<std::size_t>(r) - 1];
    flats.push_back({r, m.flat_a, m.flat_b});
  }
  return flats;
}

Results<teardown::Ways> ways_to_open(const Shaft& shaft, const Workshop& workshop, std::span<const int> rotors) {
  if (auto problems = problems_of(shaft, rotors); !problems.empty()) return tl::unexpected(std::move(problems));
  Result<teardown::Ways> ways =
      teardown::three_ways(shaft, teardown::all_on(shaft), rotors, {workshop.rate_per_hour, workshop.currency});
  if (!ways) return tl::unexpected(std::vector<Problem>{std::move(ways.error())});
  return *std::move(ways);
}

Results<PlanReport> offer(const Shaft& shaft, const Workshop& workshop, std::span<const int> rotors) {
  Results<teardown::Ways> ways = ways_to_open(shaft, workshop, rotors);
  if (!ways) return tl::unexpected(std::move(ways.error()));
  PlanReport report;
  report.ways.push_back({"failed_only", std::move(ways->failed_only), nullptr});
  report.ways.push_back({"disturbed", std::move(ways->disturbed), nullptr});
  report.ways.push_back({"all", std::move(ways->all), nullptr});
  for (Way& way : report.ways) way.working = working_of(shaft, workshop, way.plan);
  report.advised = shaft.spec().policies.renew_disturbed ? 1 : 0;
  report.says = sentences(shaft, report.ways[report.advised].plan);
  return report;
}

Results<PlanReport> plan(const Shaft& shaft, const Workshop& workshop, std::span<const int> rotors,
                         std::optional<timing::Reference> reference) {
  Results<PlanReport> report = offer(shaft, workshop, rotors);
  if (!report) return report;
  const teardown::Plan& advised = report->ways[report->advised].plan;
  report->steps = teardown::tear_down_steps(shaft, teardown::all_on(shaft), advised);
  report->back = teardown::assembly_steps(shaft, advised, flats_back(shaft, advised, std::move(reference)));
  return report;
}

}  // namespace flatwise::job
