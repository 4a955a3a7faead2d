#include "core/teardown/split.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "core/shaft/shaft_samples.h"
#include "core/teardown/figures.h"

namespace flatwise::teardown {
namespace {

Shaft made(ShaftSpec spec) {
  auto shaft = Shaft::make(std::move(spec));
  EXPECT_TRUE(shaft) << (shaft ? "" : shaft.error().front().code.id());
  return *std::move(shaft);
}

const Prices kPriced{.rate_per_hour = 60.0, .currency = "USD"};

// Source: by hand from the sample's own figures: nut 6+8, washer 1+1, hanger 10+12, spacer 1+1, rotor 4+5 minutes; a set
// 148 and two seals 6.50 a rotor; 60 an hour is 1 a minute.
// Tolerance: 1e-9 relative, rounding of the sums.
TEST(LeastCost, FreesRotorTwoFromTheNearerEnd) {
  const Shaft shaft = made(sample_shaft());
  const std::vector<int> wanted{2};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, kPriced);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->split, (Split{.from_a = 7, .from_b = 0}));
  EXPECT_NEAR(plan->time().si() / 60, 14 + 2 + 22 + 2 * (2 + 9), 1e-9);
  ASSERT_TRUE(plan->money);
  EXPECT_NEAR(*plan->money, 60 + 2 * 161, 1e-7);
  EXPECT_EQ(plan->rotors, (std::vector<int>{1, 2}));
  ASSERT_EQ(plan->due.size(), 2U);
  EXPECT_EQ(plan->due[0].part_number, "TH-SET-5");
  EXPECT_EQ(plan->due[0].count, 2);
  EXPECT_EQ(plan->due[1].count, 4);
  // The other way: eight rotors, their spacers, spacer S10, hanger, pulley, washer, nut from end B.
  ASSERT_TRUE(plan->runner_up);
  EXPECT_EQ(plan->runner_up->split.from_b, 20);
  EXPECT_NEAR(plan->runner_up->more_time.si() / 60, 8 * 9 + 8 * 2 + 22 + 27 + 2 + 14 - 60, 1e-9);
}

TEST(LeastCost, GoesFromBothEndsWhenTheMiddleCanStay) {
  const Shaft shaft = made(sample_shaft());
  const std::vector<int> wanted{1, 9};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, kPriced);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->rotors, (std::vector<int>{1, 9}));
  EXPECT_GT(plan->split.from_a, 0);
  EXPECT_GT(plan->split.from_b, 0);
}

TEST(OpenedAs, FollowsTheEndThatWasSaid) {
  const Shaft shaft = made(sample_shaft());
  const std::vector<int> wanted{2};
  const int size = static_cast<int>(shaft.stations().size());
  const auto as = [&](Opening opening) {
    return opened_as(shaft, all_on(shaft), {wanted, Renew::disturbed, opening}, kPriced);
  };
  const auto a = as({OpenedFrom::a, 0, {}}), b = as({OpenedFrom::b, 0, {}}), both = as({OpenedFrom::both, 3, {}});
  ASSERT_TRUE(a && b && both);
  // The same as the cheapest way where that is from end A.
  EXPECT_EQ(a->split, least_cost(shaft, all_on(shaft), wanted, kPriced)->split);
  EXPECT_EQ(b->split, (Split{0, size - shaft.station_of_rotor(2)}));
  EXPECT_EQ(b->rotors, (std::vector<int>{2, 3, 4, 5, 6, 7, 8, 9}));
  EXPECT_EQ(both->split, (Split{shaft.station_of_rotor(3) + 1, 0})) << "all that is wanted lies in end A's share";
  // What was off before stays in the plan, once.
  const auto after = as({OpenedFrom::b, 0, {2, 0}});
  ASSERT_TRUE(after);
  EXPECT_EQ(after->split.from_a, 2);
  EXPECT_EQ(after->stations.size(), b->stations.size() + 2);
  const auto over = as({OpenedFrom::a, 0, {0, size}});
  ASSERT_TRUE(over);
  EXPECT_EQ(over->stations.size(), static_cast<std::size_t>(size));
  EXPECT_EQ(over->split.from_a + over->split.from_b, size);
}

TEST(OpenedAs, RefusesWhatCannotBe) {
  ShaftSpec spec = sample_shaft();
  const std::vector<int> one{2}, two{1, 9};
  const Shaft shaft = made(spec);
  const auto code = [&](const Shaft& of, const std::vector<int>& rotors, Opening opening) {
    const auto plan = opened_as(of, all_on(of), {rotors, Renew::disturbed, opening}, kPriced);
    return plan ? std::string{} : std::string{plan.error().code.id()};
  };
  EXPECT_EQ(code(shaft, one, {OpenedFrom::both, 0, {}}), "teardown.no_such_share");
  EXPECT_EQ(code(shaft, one, {OpenedFrom::both, 9, {}}), "teardown.no_such_share");
  EXPECT_EQ(code(shaft, one, {OpenedFrom::a, 2, {}}), "teardown.no_such_share");
  EXPECT_EQ(code(shaft, two, {OpenedFrom::both, 0, {}}), "");
  spec.stations[spec.stations.size() - 3].obstacle = true;  // The pulley.
  const Shaft closed = made(spec);
  EXPECT_EQ(code(closed, one, {OpenedFrom::b, 0, {}}), "teardown.held_at_end");
  EXPECT_EQ(code(closed, one, {OpenedFrom::a, 0, {}}), "");
}

TEST(LeastCost, NamesTheObstacleThatClosesAnEnd) {
  ShaftSpec spec = sample_shaft();
  const int pulley = static_cast<int>(spec.stations.size()) - 3;
  spec.stations[static_cast<std::size_t>(pulley)].obstacle = true;
  const Shaft shaft = made(spec);
  const std::vector<int> wanted{9};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, kPriced);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->split.from_b, 0);
  EXPECT_EQ(plan->rotors.size(), 9U);
  EXPECT_FALSE(plan->runner_up);
  ASSERT_EQ(plan->findings.size(), 1U);
  EXPECT_EQ(plan->findings[0].code, Code{"teardown.obstacle"});
  EXPECT_EQ(plan->findings[0].args[0], Arg("station", "pulley"));
}

TEST(LeastCost, RefusesARotorHeldAtBothEnds) {
  ShaftSpec spec = sample_shaft();
  spec.stations[2].obstacle = true;
  spec.stations[spec.stations.size() - 3].obstacle = true;
  const Shaft shaft = made(spec);
  const std::vector<int> wanted{4};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, kPriced);
  ASSERT_FALSE(plan);
  EXPECT_EQ(plan.error().code, Code{"teardown.held_at_both_ends"});
  EXPECT_EQ(plan.error().args[2], Arg("from_a", "hanger A"));
  EXPECT_EQ(plan.error().args[3], Arg("from_b", "pulley"));
  spec.stations[static_cast<std::size_t>(shaft.station_of_rotor(4))].obstacle = true;
  EXPECT_FALSE(least_cost(made(spec), all_on(shaft), wanted, kPriced));
}

TEST(LeastCost, ASetFittedInThisJobIsNotDueAgain) {
  const Shaft shaft = made(sample_shaft());
  State state = all_on(shaft);
  state.new_set[0] = true;
  const std::vector<int> wanted{2};
  const auto plan = least_cost(shaft, state, wanted, kPriced);
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->due.size(), 2U);
  EXPECT_EQ(plan->due[0].rotors, std::vector<int>{2});
  EXPECT_EQ(plan->due[1].rotors, std::vector<int>{2});
}

TEST(LeastCost, WithThePolicyOffOnlySealsAreDue) {
  ShaftSpec spec = sample_shaft();
  spec.policies.renew_disturbed = false;
  const Shaft shaft = made(spec);
  const std::vector<int> wanted{2};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, kPriced);
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->due.size(), 1U);
  EXPECT_EQ(plan->due[0].kind, PartsDue::Kind::seal);
  EXPECT_EQ(plan->due[0].count, 4);
}

TEST(LeastCost, WithoutARateItOrdersByTimeAndSaysSo) {
  const Shaft shaft = made(sample_shaft());
  const std::vector<int> wanted{2};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, {});
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->split.from_a, 7);
  EXPECT_FALSE(plan->money);
  ASSERT_TRUE(plan->parts_price);
  ASSERT_EQ(plan->findings.size(), 2U);
  EXPECT_EQ(plan->findings[0].code, Code{"teardown.rate_unknown"});
  EXPECT_EQ(plan->findings[1].code, Code{"teardown.ordered_by_time"});
}

TEST(LeastCost, APriceNotKnownIsNamedAndLeavesTheTotalOpen) {
  ShaftSpec spec = sample_shaft();
  spec.rotors[1].adapter_set = {"TH-SET-X", std::nullopt};
  const Shaft shaft = made(spec);
  const std::vector<int> wanted{2};
  const auto plan = least_cost(shaft, all_on(shaft), wanted, kPriced);
  ASSERT_TRUE(plan);
  EXPECT_FALSE(plan->money);
  EXPECT_TRUE(plan->work_price);
  EXPECT_EQ(plan->findings.front().code, Code{"teardown.price_unknown"});
  EXPECT_EQ(plan->findings.front().args.front(), Arg("part", "TH-SET-X"));
}

TEST(LeastCost, RefusesBadRatesPricesNumbersAndStates) {
  ShaftSpec spec = sample_shaft();
  const Shaft shaft = made(spec);
  const State state = all_on(shaft);
  const std::vector<int> one{1}, ten{10};
  for (const double bad : {-1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    const auto plan = least_cost(shaft, state, one, {.rate_per_hour = bad, .currency = {}});
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.error().field, "rate");
  }
  EXPECT_EQ(least_cost(shaft, state, ten, kPriced).error().code, Code{"teardown.rotor_range"});
  EXPECT_EQ(least_cost(shaft, {}, one, kPriced).error().code, Code{"teardown.state_size"});
  spec.rotors[0].seal.price = -2;
  EXPECT_EQ(least_cost(made(spec), state, one, kPriced).error().code, Code{"teardown.price"});
}

TEST(ThreeWays, RenewFailedDisturbedOrAll) {
  const Shaft shaft = made(sample_shaft());
  const std::vector<int> failed{3};
  const auto ways = three_ways(shaft, all_on(shaft), failed, kPriced);
  ASSERT_TRUE(ways);
  EXPECT_EQ(ways->failed_only.due[0].rotors, std::vector<int>{3});
  EXPECT_EQ(ways->failed_only.due[1].rotors, (std::vector<int>{1, 2, 3}));
  EXPECT_EQ(ways->disturbed.due[0].rotors, (std::vector<int>{1, 2, 3}));
  EXPECT_EQ(ways->all.due[0].count, 9);
  EXPECT_LT(*ways->failed_only.money, *ways->disturbed.money);
  EXPECT_LT(*ways->disturbed.money, *ways->all.money);
}

TEST(ThreeWays, AHeldRotorDoesNotSpoilTheOthers) {
  ShaftSpec spec = sample_shaft();
  spec.stations[static_cast<std::size_t>(made(spec).station_of_rotor(5))].obstacle = true;
  const Shaft shaft = made(spec);
  const std::vector<int> failed{1}, held{5};
  const auto ways = three_ways(shaft, all_on(shaft), failed, kPriced);
  ASSERT_TRUE(ways);
  EXPECT_EQ(ways->all.rotors, (std::vector<int>{1, 2, 3, 4, 6, 7, 8, 9}));
  EXPECT_TRUE(std::ranges::any_of(ways->all.findings, [](const Finding& f) {
    return f.code == Code{"teardown.held_stay"} && f.args[0] == Arg("rotors", std::vector<std::int64_t>{5});
  }));
  EXPECT_FALSE(three_ways(shaft, all_on(shaft), held, kPriced));
}

TEST(StateFromRotorsOff, TakesWhatLiesBeyondAsOff) {
  const Shaft shaft = made(sample_shaft());
  const std::vector<int> off{1, 2}, fitted{2};
  const auto state = with_rotors_off(shaft, off, fitted);
  ASSERT_TRUE(state);
  EXPECT_FALSE(state->on_shaft[0]);
  EXPECT_FALSE(state->on_shaft[static_cast<std::size_t>(shaft.station_of_rotor(3)) - 1]);
  EXPECT_TRUE(state->on_shaft[static_cast<std::size_t>(shaft.station_of_rotor(3))]);
  EXPECT_TRUE(state->on_shaft.back());
  EXPECT_TRUE(state->new_set[1]);
  EXPECT_FALSE(state->in_frame);
  const std::vector<int> wanted{3};
  const auto plan = least_cost(shaft, *state, wanted, kPriced);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->rotors, std::vector<int>{3});
  EXPECT_EQ(plan->stations.size(), 1U);
}

TEST(StateFromRotorsOff, RefusesWhatHandsCannotDo) {
  ShaftSpec spec = sample_shaft();
  const Shaft shaft = made(spec);
  const std::vector<int> between{4}, beyond{12}, one{1}, last{9}, none{};
  EXPECT_EQ(with_rotors_off(shaft, between, none).error().code, Code{"teardown.off_between"});
  EXPECT_EQ(with_rotors_off(shaft, beyond, none).error().code, Code{"teardown.rotor_range"});
  spec.stations[0].obstacle = true;
  EXPECT_EQ(with_rotors_off(made(spec), one, none).error().code, Code{"teardown.off_past_obstacle"});
  EXPECT_TRUE(with_rotors_off(made(spec), last, none));
}

// --- the least against all splits, tried one by one ------------------------------------------------------------------

struct Trial {
  Shaft shaft;
  State state;
  Prices prices;
  std::vector<int> wanted;
};

Trial random_trial(unsigned seed) {
  std::mt19937 random{seed};
  const auto upto = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n + 1)); };
  ShaftSpec spec = sample_shaft({.rotors = 1 + upto(6), .pulley = upto(1) == 1});
  for (Station& s : spec.stations) {
    s.minutes_off = minutes(upto(20));
    s.minutes_on = minutes(upto(20));
    s.obstacle = upto(15) == 0;
  }
  for (Rotor& r : spec.rotors) {
    r.adapter_set.price = upto(200);
    r.seal.price = upto(9);
  }
  spec.policies.renew_disturbed = upto(3) > 0;
  Trial t{made(spec), {}, {.rate_per_hour = upto(100), .currency = {}}, {}};
  if (upto(4) == 0) t.prices.rate_per_hour = std::nullopt;
  t.state = all_on(t.shaft);
  for (std::size_t i = 0; i < t.state.on_shaft.size(); ++i) t.state.on_shaft[i] = upto(4) > 0;
  for (std::size_t i = 0; i < t.state.new_set.size(); ++i) t.state.new_set[i] = upto(3) == 0;
  for (int number = 1; number <= t.shaft.rotor_count(); ++number)
    if (upto(2) == 0) t.wanted.push_back(number);
  return t;
}

/// (money or minutes, parts) of one split worked out station by station; none where it is impossible or frees too little.
std::optional<std::pair<double, int>> by_hand(const Trial& t, int from_a, int from_b) {
  const auto& stations = t.shaft.stations();
  const int size = static_cast<int>(stations.size());
  double time = 0, price = 0;
  int parts = 0;
  for (int i = 0; i < size; ++i) {
    const Station& s = stations[static_cast<std::size_t>(i)];
    const bool off = i < from_a || i >= size - from_b;
    const bool on_now = t.state.on_shaft[static_cast<std::size_t>(i)];
    const bool asked = s.rotor >= 0 && std::ranges::count(t.wanted, s.rotor + 1) > 0;
    if (asked && on_now && !off) return std::nullopt;
    if (off && s.obstacle) return std::nullopt;
    if (!off || !on_now) continue;
    time += (s.minutes_off + s.minutes_on).si() / 60;
    if (s.rotor < 0 || t.state.new_set[static_cast<std::size_t>(s.rotor)]) continue;
    const Rotor& r = t.shaft.rotor(s.rotor + 1);
    const bool set = t.shaft.spec().policies.renew_disturbed;
    price += (set ? *r.adapter_set.price : 0) + r.seals * *r.seal.price;
    parts += (set ? 1 : 0) + r.seals;
  }
  if (!t.prices.rate_per_hour) return std::pair{time, parts};
  return std::pair{time / 60 * *t.prices.rate_per_hour + price, 0};
}

std::optional<std::pair<double, int>> least_by_hand(const Trial& t, bool one_end_only) {
  const int size = static_cast<int>(t.shaft.stations().size());
  std::optional<std::pair<double, int>> least;
  for (int a = 0; a <= size; ++a) {
    for (int b = 0; a + b <= size; ++b) {
      if (one_end_only && a > 0 && b > 0) continue;
      const auto cost = by_hand(t, a, b);
      if (!cost) continue;
      const bool less = !least || cost->first < least->first - 1e-9 ||
                        (cost->first < least->first + 1e-9 && cost->second < least->second);
      if (less) least = cost;
    }
  }
  return least;
}

// Source: every split of the stations, summed station by station (independent of the sums the code keeps).
// Tolerance: 1e-6 currency units or minutes; the sums round at about 1e-12.
TEST(LeastCost, IsTheLeastOfAllSplits) {
  int impossible = 0, both_ends = 0;
  for (unsigned seed = 1; seed <= 3000; ++seed) {
    const Trial t = random_trial(seed);
    const auto plan = least_cost(t.shaft, t.state, t.wanted, t.prices);
    const auto least = least_by_hand(t, false);
    ASSERT_EQ(plan.has_value(), least.has_value()) << seed;
    if (!plan) {
      ++impossible;
      continue;
    }
    const auto told = by_hand(t, plan->split.from_a, plan->split.from_b);
    ASSERT_TRUE(told) << seed;
    ASSERT_NEAR(told->first, least->first, 1e-6) << seed;
    ASSERT_EQ(told->second, least->second) << seed;
    ASSERT_NEAR(t.prices.rate_per_hour ? *plan->money : plan->time().si() / 60, least->first, 1e-6) << seed;
    both_ends += plan->split.from_a > 0 && plan->split.from_b > 0 ? 1 : 0;
  }
  EXPECT_GT(impossible, 20);
  EXPECT_GT(both_ends, 100);
}

/// The comparison above bites: a search that never opens both ends is found out.
TEST(LeastCost, ASearchFromOneEndOnlyIsFoundOut) {
  int caught = 0;
  for (unsigned seed = 1; seed <= 1000; ++seed) {
    const Trial t = random_trial(seed);
    const auto all = least_by_hand(t, false), one = least_by_hand(t, true);
    caught += all && (!one || one->first > all->first + 1e-6) ? 1 : 0;
  }
  EXPECT_GT(caught, 10);
}

TEST(RunnerUp, IsTheSecondBestAndNeverTheSameStations) {
  for (unsigned seed = 1; seed <= 500; ++seed) {
    const Trial t = random_trial(seed);
    const auto plan = least_cost(t.shaft, t.state, t.wanted, t.prices);
    if (!plan || !plan->runner_up) continue;
    EXPECT_NE(plan->runner_up->split, plan->split) << seed;
    if (t.prices.rate_per_hour) {
      EXPECT_GE(*plan->runner_up->more_money, -1e-6) << seed;
    }
    EXPECT_TRUE(by_hand(t, plan->runner_up->split.from_a, plan->runner_up->split.from_b)) << seed;
  }
}

double output_of(const FigureSpec& spec, std::vector<Input> inputs, std::string_view name) {
  const auto working = evaluate(spec, std::move(inputs));
  EXPECT_TRUE(working) << (working ? "" : working.error().front().code.id());
  return working ? working->si(name) : std::nan("");
}

// Source: by hand: (6 + 10 + 8 + 12) min at 60 an hour, and 148 + 13.
// Tolerance: 1e-9, rounding.
TEST(Figures, RemovalCostAddsWorkAndParts) {
  const FigureSpec& spec = figures()[0];
  const auto time = [](double m) { return any(minutes(m)); };
  const std::vector<Input> inputs{given("off", time(6)),
                                  given("off", time(10)),
                                  given("on", time(8)),
                                  given("on", time(12)),
                                  given("rate", AnyQuantity{60.0 / 3600, Kind::money_rate}),
                                  given("part", any_money(148)),
                                  given("part", any_money(13))};
  EXPECT_NEAR(output_of(spec, inputs, "cost"), 197, 1e-9);
  EXPECT_NEAR(output_of(spec, inputs, "time"), 36 * 60, 1e-9);
}

// Source: by hand: from A 14 + 18 min, from B 24 + 30 min, at 1 a minute.
// Tolerance: 1e-9, rounding.
TEST(Figures, LeastRemovalTakesTheCheaperEnd) {
  const FigureSpec& spec = figures()[1];
  std::vector<Input> inputs{given("rate", AnyQuantity{60.0 / 3600, Kind::money_rate}), given("wanted", any_count(3))};
  for (const double m : {6.0, 4.0, 4.0, 20.0}) inputs.push_back(given("off", any(minutes(m))));
  for (const double m : {8.0, 5.0, 5.0, 25.0}) inputs.push_back(given("on", any(minutes(m))));
  EXPECT_NEAR(output_of(spec, inputs, "cost"), 32, 1e-9);
  EXPECT_EQ(output_of(spec, inputs, "from-a"), 3);
  inputs.push_back(given("obstacle", any_count(1)));
  EXPECT_NEAR(output_of(spec, inputs, "cost"), 54, 1e-9);
  EXPECT_EQ(output_of(spec, inputs, "from-b"), 2);
  inputs.push_back(given("obstacle", any_count(4)));
  EXPECT_FALSE(evaluate(spec, inputs));
}

}  // namespace
}  // namespace flatwise::teardown
