#include "core/teardown/figures.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/teardown/split.h"
#include "core/working/input_specs.h"

namespace flatwise::teardown {
namespace {

constexpr double kMostStations = 100'000;
constexpr double kMostHours_s = 3.6e9;  // A million hours: no meter counts so far.
constexpr double kEndless = std::numeric_limits<double>::infinity();

InputSpec times(std::string_view name, std::string_view symbol) {
  return repeated(from_nought(name, symbol, Kind::time, kEndless));
}
InputSpec rate_input() { return from_nought("rate", "r", Kind::money_rate, kEndless); }
InputSpec part_prices() { return optional(repeated(from_nought("part", "p", Kind::money, kEndless))); }

double sum(const std::vector<double>& values) {
  double total = 0;
  for (const double v : values) total += v;
  return total;
}

Problem wrong_count(const char* field, std::size_t given, std::size_t wanted) {
  return {Code{"teardown.count_differs"},
          field,
          std::to_string(given),
          {{"wanted", static_cast<std::int64_t>(wanted)}},
          std::nullopt};
}

Result<Computed> removal_cost(const Given& in) {
  const double work = sum(in.all_si("off")) + sum(in.all_si("on"));
  const double cost = work * in.si("rate") + sum(in.all_si("part"));
  return Computed{.values = {any_money(cost), any(seconds(work))}};
}

FigureSpec removal_cost_spec() {
  return {.name = "removal-cost",
          .formula = "K = (Σ t_off + Σ t_on) r + Σ p",
          .inputs = {times("off", "t_off"), times("on", "t_on"), rate_input(), part_prices()},
          .outputs = {{.name = "cost", .symbol = "K", .kind = Kind::money},
                      {.name = "time", .symbol = "t", .kind = Kind::time}},
          .sources = {"common practice"},
          .compute = removal_cost,
          .example = {.inputs = {"off=6 min", "off=10 min", "on=8 min", "on=12 min", "rate=60 USD/h", "part=148 USD",
                                 "part=13 USD"},
                      .expected = "cost=197 USD"}};
}

/// Station numbers count from 1 at end A.
Result<std::vector<int>> station_indices(const Given& in, const char* name, std::size_t stations) {
  std::vector<int> out;
  for (const double v : in.all_si(name)) {
    if (v > static_cast<double>(stations) || v != std::floor(v))
      return tl::unexpected(Problem{Code{"teardown.station_range"},
                                    name,
                                    std::to_string(static_cast<std::int64_t>(v)),
                                    {{"least", 1}, {"greatest", static_cast<std::int64_t>(stations)}},
                                    std::nullopt});
    out.push_back(static_cast<int>(v) - 1);
  }
  std::ranges::sort(out);
  return out;
}

Result<std::vector<StationCost>> rows(const Given& in) {
  const auto off = in.all_si("off"), on = in.all_si("on"), due = in.all_si("part");
  if (on.size() != off.size()) return tl::unexpected(wrong_count("on", on.size(), off.size()));
  if (!due.empty() && due.size() != off.size()) return tl::unexpected(wrong_count("part", due.size(), off.size()));
  std::vector<StationCost> out(off.size());
  for (std::size_t i = 0; i < off.size(); ++i)
    out[i] = {.time = seconds(off[i] + on[i]), .price = due.empty() ? 0.0 : due[i]};
  const auto obstacles = station_indices(in, "obstacle", off.size());
  if (!obstacles) return tl::unexpected(obstacles.error());
  for (const int i : *obstacles) out[static_cast<std::size_t>(i)].obstacle = true;
  return out;
}

Result<Computed> least_removal(const Given& in) {
  const auto stations = rows(in);
  if (!stations) return tl::unexpected(stations.error());
  const auto wanted = station_indices(in, "wanted", stations->size());
  if (!wanted) return tl::unexpected(wanted.error());
  const Reach reach{*stations, in.si("rate") * 3600.0};
  const auto best = reach.cheapest(*wanted);
  if (!best) return tl::unexpected(Problem{Code{"teardown.wanted_held"}, "wanted", {}, {}, std::nullopt});
  return Computed{.values = {any_money(*reach.money(best->time, best->parts_price)), any(best->time),
                             any_count(best->split.from_a), any_count(best->split.from_b)}};
}

FigureSpec least_removal_spec() {
  return {.name = "least-removal",
          .formula = "K = least over splits (from A, from B) of Σ (t_off + t_on) r + Σ p",
          .inputs = {times("off", "t_off"), times("on", "t_on"), rate_input(),
                     repeated(between("wanted", "w", Kind::count, 1, kMostStations)), part_prices(),
                     optional(repeated(between("obstacle", "o", Kind::count, 1, kMostStations)))},
          .outputs = {{.name = "cost", .symbol = "K", .kind = Kind::money},
                      {.name = "time", .symbol = "t", .kind = Kind::time},
                      {.name = "from-a", .symbol = "a", .kind = Kind::count},
                      {.name = "from-b", .symbol = "b", .kind = Kind::count}},
          .sources = {"common practice"},
          .compute = least_removal,
          .example = {.inputs = {"off=6 min", "off=4 min", "off=4 min", "off=20 min", "on=8 min", "on=5 min",
                                 "on=5 min", "on=25 min", "rate=60 USD/h", "wanted=3"},
                      .expected = "cost=32 USD"}};
}

Result<Computed> next_due(const Given& in) {
  return Computed{.values = {any(seconds(in.si("meter") + in.si("every")))}};
}

FigureSpec next_due_spec() {
  return {.name = "next-due",
          .formula = "h_due = h + Δh",
          .inputs = {from_nought("meter", "h", Kind::time, kMostHours_s),
                     above_nought("every", "Δh", Kind::time, kMostHours_s)},
          .outputs = {{.name = "due-at", .symbol = "h_due", .kind = Kind::time}},
          .sources = {"common practice"},
          .compute = next_due,
          .example = {.inputs = {"meter=2430 h", "every=400 h"}, .expected = "due-at=2830 h"}};
}

}  // namespace

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kAll = {removal_cost_spec(), least_removal_spec(), next_due_spec()};
  return kAll;
}

}  // namespace flatwise::teardown
