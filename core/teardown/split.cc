#include "core/teardown/split.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace flatwise::teardown {
namespace {

constexpr double kEqual = 1e-9;  // Relative: sums of the same terms in another order differ by rounding only.

std::size_t at(int index) { return static_cast<std::size_t>(index); }

Problem refuse(Code code, std::string field, std::string given, Args args) {
  return {code, std::move(field), std::move(given), std::move(args), std::nullopt};
}

int order(double x, double y) {
  const double slack = kEqual * std::max({1.0, std::abs(x), std::abs(y)});
  if (x < y - slack) return -1;
  return x > y + slack ? 1 : 0;
}

/// What one rotor makes due when it leaves the shaft.
struct Due {
  bool set = false;
  int seals = 0;
};

Due due_when_it_leaves(const Shaft& shaft, const State& state, int number, Renew renew, std::span<const int> asked) {
  // A set fitted in this job came with its seals, and neither is touched while the set is not pressed out.
  if (state.new_set[at(number - 1)]) return {};
  const bool wanted = std::ranges::find(asked, number) != asked.end();
  const bool by_policy = renew == Renew::policy && shaft.spec().policies.renew_disturbed;
  return {.set = by_policy || renew == Renew::disturbed || (renew == Renew::failed_only && wanted),
          .seals = shaft.rotor(number).seals};
}

/// Number of the rotor at a station; none for other kinds.
std::optional<int> rotor_at(const Shaft& shaft, int station) {
  const Station& s = shaft.stations()[at(station)];
  if (s.kind != StationKind::rotor) return std::nullopt;
  return s.rotor + 1;
}

void add_due(std::vector<PartsDue>& to, PartsDue::Kind kind, const Priced& part, int count, int rotor) {
  const auto same = [&](const PartsDue& d) {
    return d.kind == kind && d.part_number == part.part_number && d.price_each == part.price;
  };
  auto it = std::ranges::find_if(to, same);
  if (it == to.end()) it = to.insert(to.end(), {kind, part.part_number, 0, {}, part.price});
  it->count += count;
  it->rotors.push_back(rotor);
}

bool comes_off(Split split, int station, int stations) {
  return station < split.from_a || station >= stations - split.from_b;
}

}  // namespace

std::vector<StationCost> station_costs(const Shaft& shaft, const State& state, Renew renew,
                                       std::span<const int> asked) {
  const std::size_t count = shaft.stations().size();
  CORE_CHECK(state.on_shaft.size() == count && state.new_set.size() == at(shaft.rotor_count()));
  std::vector<StationCost> out(count);
  for (std::size_t i = 0; i < count; ++i) {
    const Station& s = shaft.stations()[i];
    out[i] = {.time = s.minutes_off + s.minutes_on, .on_shaft = state.on_shaft[i], .obstacle = s.obstacle};
    if (s.kind != StationKind::rotor) continue;
    const Rotor& r = shaft.rotor(s.rotor + 1);
    const Due due = due_when_it_leaves(shaft, state, s.rotor + 1, renew, asked);
    out[i].parts = (due.set ? 1 : 0) + due.seals;
    if ((due.set && !r.adapter_set.price) || (due.seals > 0 && !r.seal.price))
      out[i].price = std::nullopt;
    else
      out[i].price = (due.set ? r.adapter_set.price.value_or(0) : 0) + due.seals * r.seal.price.value_or(0);
  }
  return out;
}

Reach::Reach(std::span<const StationCost> stations, std::optional<double> rate_per_hour)
    : up_to_(stations.size() + 1),
      on_(stations.size()),
      first_obstacle_{static_cast<int>(stations.size())},
      rate_{rate_per_hour.value_or(0)},
      knows_money_{rate_per_hour.has_value()} {
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const StationCost& s = stations[i];
    const int index = static_cast<int>(i);
    if (s.obstacle) first_obstacle_ = std::min(first_obstacle_, index), last_obstacle_ = index;
    on_[i] = s.on_shaft;
    Sum& sum = up_to_[i + 1] = up_to_[i];
    if (!s.on_shaft) continue;
    knows_money_ = knows_money_ && s.price.has_value();
    sum.seconds += s.time.si();
    sum.price += s.price.value_or(0);
    sum.parts += s.parts;
    ++sum.stations;
  }
}

Reach::Reach(const Shaft& shaft, const State& state, const Prices& prices, Renew renew, std::span<const int> asked)
    : Reach{station_costs(shaft, state, renew, asked), prices.rate_per_hour} {}

Cost Reach::cost_of(Split split) const {
  const Sum& a = up_to_[at(split.from_a)];
  const Sum& whole = up_to_.back();
  const Sum& b = up_to_[up_to_.size() - 1 - at(split.from_b)];
  return {.split = split,
          .time = seconds(a.seconds + whole.seconds - b.seconds),
          .parts_price = a.price + whole.price - b.price,
          .parts = a.parts + whole.parts - b.parts,
          .stations = a.stations + whole.stations - b.stations};
}

std::optional<double> Reach::money(Time work, double parts_price) const {
  if (!knows_money_) return std::nullopt;
  return rate_ * (work.si() / 3600.0) + parts_price;
}

int Reach::compare(const Cost& x, const Cost& y) const {
  if (knows_money_) return order(*money(x.time, x.parts_price), *money(y.time, y.parts_price));
  const int by_time = order(x.time.si(), y.time.si());
  return by_time != 0 ? by_time : x.parts - y.parts;
}

bool Reach::before(const Cost& x, const Cost& y) const {
  if (const int c = compare(x, y); c != 0) return c < 0;
  if (const int c = order(x.time.si(), y.time.si()); c != 0) return c < 0;
  if (x.stations != y.stations) return x.stations < y.stations;
  return x.split.from_b < y.split.from_b;
}

std::optional<int> Reach::obstacle_from(End end) const {
  if (last_obstacle_ < 0) return std::nullopt;
  return end == End::a ? first_obstacle_ : last_obstacle_;
}

std::optional<Cost> Reach::cheapest(std::span<const int> stations) const {
  const int count = static_cast<int>(on_.size());
  std::optional<Cost> best;
  int done_from_a = 0;
  const auto consider = [&](int from_b) {
    if (done_from_a > first_obstacle_ || count - from_b <= last_obstacle_) return;
    const Cost cost = cost_of({done_from_a, from_b});
    if (!best || before(cost, *best)) best = cost;
  };
  for (const int station : stations) {
    if (!on_[at(station)]) continue;
    consider(count - station);
    done_from_a = station + 1;
  }
  consider(0);
  return best;
}

std::vector<Cost> Reach::ranked(std::span<const int> stations) const {
  const int count = static_cast<int>(on_.size());
  std::vector<Cost> out;
  int done_from_a = 0;
  const auto consider = [&](int from_b) {
    if (done_from_a <= first_obstacle_ && count - from_b > last_obstacle_)
      out.push_back(cost_of({done_from_a, from_b}));
  };
  for (const int station : stations) {
    if (!on_[at(station)]) continue;
    consider(count - station);
    done_from_a = station + 1;
  }
  consider(0);
  std::ranges::stable_sort(out, [&](const Cost& x, const Cost& y) { return before(x, y); });
  return out;
}

namespace {

/// Rotors to their stations, sorted, each once.
Result<std::vector<int>> stations_of(const Shaft& shaft, std::span<const int> rotors) {
  std::vector<int> out;
  for (const int number : rotors) {
    if (number < 1 || number > shaft.rotor_count())
      return tl::unexpected(refuse(Code{"teardown.rotor_range"}, "rotor", std::to_string(number),
                                   {{"least", 1}, {"greatest", shaft.rotor_count()}}));
    out.push_back(shaft.station_of_rotor(number));
  }
  std::ranges::sort(out);
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

Problem held(const Shaft& shaft, const State& state, const Reach& reach, std::span<const int> stations) {
  const int a = *reach.obstacle_from(End::a), b = *reach.obstacle_from(End::b);
  std::vector<std::int64_t> rotors;
  for (const int station : stations)
    if (state.on_shaft[at(station)] && station >= a && station <= b) rotors.push_back(*rotor_at(shaft, station));
  // Between two obstacles, or on the two sides of one that each side alone would let off: the first cannot happen
  // without a rotor in between.
  CORE_CHECK(!rotors.empty());
  return refuse(Code{"teardown.held_at_both_ends"}, "rotor", {},
                {{"rotors", rotors},
                 {"count", static_cast<int>(rotors.size())},
                 {"from_a", shaft.stations()[at(a)].label},
                 {"from_b", shaft.stations()[at(b)].label}});
}

void list_what_comes_off(Plan& plan, const Shaft& shaft, const State& state, Renew renew, std::span<const int> asked) {
  const int count = static_cast<int>(shaft.stations().size());
  for (int i = 0; i < count; ++i) {
    if (!state.on_shaft[at(i)] || !comes_off(plan.split, i, count)) continue;
    const Station& s = shaft.stations()[at(i)];
    plan.stations.push_back(i);
    plan.time_off = plan.time_off + s.minutes_off;
    plan.time_on = plan.time_on + s.minutes_on;
    if (s.kind != StationKind::rotor) continue;
    const int number = s.rotor + 1;
    plan.rotors.push_back(number);
    const Due due = due_when_it_leaves(shaft, state, number, renew, asked);
    if (due.set) add_due(plan.due, PartsDue::Kind::adapter_set, shaft.rotor(number).adapter_set, 1, number);
    if (due.seals > 0) add_due(plan.due, PartsDue::Kind::seal, shaft.rotor(number).seal, due.seals, number);
  }
  std::ranges::stable_sort(plan.due, {}, &PartsDue::kind);
}

void price(Plan& plan, const Prices& prices) {
  double parts = 0;
  std::vector<std::string> unknown;
  for (const PartsDue& d : plan.due) {
    parts += d.count * d.price_each.value_or(0);
    if (!d.price_each) unknown.push_back(d.part_number);
  }
  if (unknown.empty()) plan.parts_price = parts;
  if (prices.rate_per_hour) plan.work_price = *prices.rate_per_hour * (plan.time().si() / 3600.0);
  if (plan.parts_price && plan.work_price) plan.money = *plan.parts_price + *plan.work_price;
  if (!prices.rate_per_hour)
    plan.findings.push_back({Code{"teardown.rate_unknown"}, Severity::note, {}, {}, std::nullopt});
  for (const std::string& part : unknown) {
    const Args args = part.empty() ? Args{} : Args{{"part", part}};
    plan.findings.push_back({Code{"teardown.price_unknown"}, Severity::note, args, {}, std::nullopt});
  }
}

void add_runner_up(Plan& plan, const Reach& reach, const std::vector<Cost>& ranked, int on_shaft) {
  for (const Cost& other : ranked) {
    // Two splits that both strip the shaft bare are one way told twice.
    const bool same = other.split == plan.split || (other.stations == on_shaft && ranked.front().stations == on_shaft);
    if (same) continue;
    plan.runner_up = RunnerUp{.split = other.split, .more_time = other.time - ranked.front().time, .more_money = {}};
    const auto least = reach.money(ranked.front().time, ranked.front().parts_price);
    const auto next = reach.money(other.time, other.parts_price);
    if (least && next) plan.runner_up->more_money = *next - *least;
    return;
  }
}

/// An obstacle that leaves one end only for something asked for is worth saying.
void say_obstacles(Plan& plan, const Shaft& shaft, const State& state, const Reach& reach,
                   std::span<const int> stations) {
  for (const End end : {End::a, End::b}) {
    const auto obstacle = reach.obstacle_from(end);
    if (!obstacle) continue;
    const bool stops = std::ranges::any_of(
        stations, [&](int s) { return state.on_shaft[at(s)] && (end == End::a ? s > *obstacle : s < *obstacle); });
    if (!stops) continue;
    plan.findings.push_back(
        {Code{"teardown.obstacle"},
         Severity::note,
         {{"station", shaft.stations()[at(*obstacle)].label}, {"end", end == End::a ? Word{"end.a"} : Word{"end.b"}}},
         {Where::Part::station, *obstacle + 1},
         std::nullopt});
  }
}

/// Every rotor but those that obstacles hold from both ends.
struct ComesOff {
  std::vector<int> rotors;
  std::vector<std::int64_t> held;
};

ComesOff all_that_come_off(const Shaft& shaft, const State& state) {
  const Reach reach{shaft, state, {}};
  ComesOff out;
  for (int number = 1; number <= shaft.rotor_count(); ++number) {
    const int station = shaft.station_of_rotor(number);
    if (reach.cheapest({&station, 1}))
      out.rotors.push_back(number);
    else
      out.held.push_back(number);
  }
  return out;
}

/// The split that was said, for sorted stations; none where the shares are no split of this shaft.
std::optional<Split> said_split(const Shaft& shaft, const Opening& opening, std::span<const int> stations) {
  const int size = static_cast<int>(shaft.stations().size()), k = opening.rotors_from_a;
  if (opening.from == OpenedFrom::a && k == 0) return Split{stations.empty() ? 0 : stations.back() + 1, 0};
  if (opening.from == OpenedFrom::b && k == 0) return Split{0, stations.empty() ? 0 : size - stations.front()};
  if (opening.from != OpenedFrom::both || k < 1 || k >= shaft.rotor_count()) return std::nullopt;
  Split split{shaft.station_of_rotor(k) + 1, 0};
  for (const int station : stations)
    if (station >= split.from_a) split.from_b = std::max(split.from_b, size - station);
  return split;
}

/// The cheapest split that opens both ends.
std::optional<Split> cheapest_of_both(const Reach& reach, std::span<const int> stations) {
  for (const Cost& cost : reach.ranked(stations))
    if (cost.split.from_a > 0 && cost.split.from_b > 0) return cost.split;
  return std::nullopt;
}

std::optional<Problem> held_at_end(const Shaft& shaft, const Reach& reach, Split split) {
  const int size = static_cast<int>(shaft.stations().size());
  for (const End end : {End::a, End::b}) {
    const auto obstacle = reach.obstacle_from(end);
    if (!obstacle || (end == End::a ? split.from_a <= *obstacle : size - split.from_b > *obstacle)) continue;
    return refuse(
        Code{"teardown.held_at_end"}, "from", {},
        {{"end", end == End::a ? Word{"end.a"} : Word{"end.b"}}, {"station", shaft.stations()[at(*obstacle)].label}});
  }
  return std::nullopt;
}

}  // namespace

Result<Plan> opened_as(const Shaft& shaft, const State& state, const Wanted& wanted, const Prices& prices) {
  if (auto problem = problem_with(shaft, state, prices)) return tl::unexpected(std::move(*problem));
  const auto stations = stations_of(shaft, wanted.rotors);
  if (!stations) return tl::unexpected(stations.error());
  const Opening& said = wanted.opening;
  const Reach reach{shaft, state, prices, wanted.renew, wanted.rotors};
  const bool cheapest = said.from == OpenedFrom::both && said.rotors_from_a == 0;
  const auto split = cheapest ? cheapest_of_both(reach, *stations) : said_split(shaft, said, *stations);
  if (!split)
    return tl::unexpected(refuse(Code{"teardown.no_such_share"}, "rotors_from_a", std::to_string(said.rotors_from_a),
                                 {{"greatest", std::max(1, shaft.rotor_count() - 1)}}));
  if (auto problem = held_at_end(shaft, reach, *split)) return tl::unexpected(std::move(*problem));
  const int size = static_cast<int>(shaft.stations().size());
  Plan plan;
  plan.split.from_a = std::clamp(std::max(split->from_a, said.already.from_a), 0, size);
  plan.split.from_b = std::clamp(std::max(split->from_b, said.already.from_b), 0, size - plan.split.from_a);
  list_what_comes_off(plan, shaft, state, wanted.renew, wanted.rotors);
  price(plan, prices);
  return plan;
}

Result<Plan> least_cost(const Shaft& shaft, const State& state, std::span<const int> rotors, const Prices& prices,
                        Renew renew) {
  if (auto problem = problem_with(shaft, state, prices)) return tl::unexpected(std::move(*problem));
  const auto stations = stations_of(shaft, rotors);
  if (!stations) return tl::unexpected(stations.error());
  const Reach reach{shaft, state, prices, renew, rotors};
  const auto ranked = reach.ranked(*stations);
  if (ranked.empty()) return tl::unexpected(held(shaft, state, reach, *stations));
  Plan plan;
  plan.split = ranked.front().split;
  list_what_comes_off(plan, shaft, state, renew, rotors);
  price(plan, prices);
  if (!reach.knows_money() && !plan.stations.empty())
    plan.findings.push_back({Code{"teardown.ordered_by_time"}, Severity::note, {}, {}, std::nullopt});
  add_runner_up(plan, reach, ranked, static_cast<int>(std::ranges::count(state.on_shaft, true)));
  say_obstacles(plan, shaft, state, reach, *stations);
  return plan;
}

Result<Ways> three_ways(const Shaft& shaft, const State& state, std::span<const int> failed, const Prices& prices) {
  auto only = least_cost(shaft, state, failed, prices, Renew::failed_only);
  if (!only) return tl::unexpected(only.error());
  auto disturbed = least_cost(shaft, state, failed, prices, Renew::disturbed);
  if (!disturbed) return tl::unexpected(disturbed.error());
  const ComesOff every = all_that_come_off(shaft, state);
  auto all = least_cost(shaft, state, every.rotors, prices, Renew::disturbed);
  if (!all) return tl::unexpected(all.error());
  if (!every.held.empty())
    all->findings.push_back({Code{"teardown.held_stay"},
                             Severity::note,
                             {{"rotors", every.held}, {"count", static_cast<int>(every.held.size())}},
                             {},
                             std::nullopt});
  return Ways{*std::move(only), *std::move(disturbed), *std::move(all)};
}

}  // namespace flatwise::teardown
