// The least work against every way there is: all final marks of all halves, all splits of the stations.
#include "core/timing/mend.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "core/timing/timing_samples.h"

namespace flatwise::timing {
namespace {

using Flats = std::vector<int>;  // Half A of rotor 1, half B of rotor 1, half A of rotor 2, ...

struct Trial {
  Shaft shaft;
  Reading reading;
  Flats read;
};

Pattern random_pattern(std::mt19937& random, int rotors, int flats) {
  const auto upto = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n + 1)); };
  Pattern p;
  const int kind = upto(2);
  if (kind == 1) p = step(1 + upto(flats - 2));
  if (kind == 2) {
    std::vector<int> list;
    for (int i = 0; i < rotors; ++i) list.push_back(1 + upto(flats - 1));
    p = listed(list);
  }
  if (upto(3) == 0) p.first_flat = kind == 2 ? p.flats.front() : 1 + upto(flats - 1);
  return p;
}

/// Mostly right, some halves out: with marks at random every reference is as bad as the next.
void random_marks(Trial& t, std::mt19937& random) {
  const auto upto = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n + 1)); };
  const int flats = t.shaft.flats();
  const bool wild = upto(3) == 0;
  const auto m = map(t.shaft);
  const int turn = t.shaft.spec().pattern.first_flat && upto(1) == 0 ? 0 : upto(flats - 1);
  for (const RotorMarks& marks : m->rotors) {
    Marks read{.a = turned_flat(marks.flat_a, turn, flats), .b = turned_flat(marks.flat_b, turn, flats)};
    for (auto* half : {&read.a, &read.b})
      if (wild || upto(3) == 0) *half = 1 + upto(flats - 1);
    const auto station = static_cast<std::size_t>(t.shaft.station_of_rotor(marks.rotor));
    const auto index = static_cast<std::size_t>(marks.rotor) - 1;
    read.fixed = upto(2) == 0 && t.reading.state.on_shaft[station] && !t.reading.state.new_set[index];
    t.reading.rotors.push_back(read);
    t.read.insert(t.read.end(), {*read.a, *read.b});
  }
}

Trial random_trial(unsigned seed, int rotors, int flats) {
  std::mt19937 random{seed * 1000 + static_cast<unsigned>(rotors * 10 + flats)};
  const auto upto = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n + 1)); };
  ShaftSpec spec = sample_shaft({.rotors = rotors, .flats = flats, .pulley = upto(1) == 1});
  spec.pattern = random_pattern(random, rotors, flats);
  for (Station& s : spec.stations) {
    s.minutes_off = minutes(upto(12));
    s.minutes_on = minutes(upto(12));
    s.obstacle = upto(25) == 0;
  }
  for (Rotor& r : spec.rotors) r.adapter_set.price = upto(60);
  spec.policies.renew_disturbed = upto(3) > 0;
  spec.policies.turn_a_half = minutes(upto(9));
  Trial t{made(spec), {}, {}};
  t.reading.state = teardown::all_on(t.shaft);
  t.reading.prices.rate_per_hour = upto(5) == 0 ? std::nullopt : std::optional<double>(10 + upto(90));
  for (std::size_t i = 0; i < t.reading.state.on_shaft.size(); ++i) t.reading.state.on_shaft[i] = upto(4) > 0;
  for (std::size_t i = 0; i < t.reading.state.new_set.size(); ++i) t.reading.state.new_set[i] = upto(3) == 0;
  random_marks(t, random);
  return t;
}

// --- what a right shaft is, said anew --------------------------------------------------------------------------------

int steps_between(int from, int to, int flats) { return ((to - from) % flats + flats) % flats; }

/// `hand` +1 or -1: the pattern as written, or the other way round.
bool follows(const Pattern& p, const Flats& marks, int flats, int hand) {
  for (std::size_t i = 0; i + 2 < marks.size(); i += 2) {
    const int step = steps_between(marks[i], marks[i + 2], flats);
    if (p.rule == Pattern::Rule::facing && marks[i + 1] != marks[i + 2]) return false;  // Facing marks on one flat.
    if (p.rule == Pattern::Rule::step && step != steps_between(0, hand * p.step_flats, flats)) return false;
    if (p.rule == Pattern::Rule::listed && step != steps_between(p.flats[i / 2], p.flats[i / 2 + 1], flats))
      return false;
  }
  return true;
}

bool right_shaft(const Trial& t, const Flats& marks) {
  const Pattern& p = t.shaft.spec().pattern;
  const int flats = t.shaft.flats();
  for (std::size_t i = 0; i < marks.size(); i += 2)
    if (steps_between(marks[i], marks[i + 1], flats) != flats / 2) return false;
  if (p.first_flat) return marks.front() == *p.first_flat && follows(p, marks, flats, 1);
  if (follows(p, marks, flats, 1)) return true;
  return p.rule == Pattern::Rule::step && follows(p, marks, flats, -1);
}

/// With fixed rotors, and no first flat, one fixed half must keep its mark.
bool reference_allowed(const Trial& t, const Flats& marks) {
  if (t.shaft.spec().pattern.first_flat) return true;
  bool any_fixed = false;
  for (std::size_t i = 0; i < t.reading.rotors.size(); ++i) {
    if (!t.reading.rotors[i].fixed) continue;
    any_fixed = true;
    if (marks[2 * i] == t.read[2 * i] || marks[2 * i + 1] == t.read[2 * i + 1]) return true;
  }
  return !any_fixed;
}

struct Work {
  double main = 0;  ///< Money, or minutes where no rate is known.
  int parts = 0;    ///< Counts only where no rate is known.
};

bool less(const Work& x, const Work& y) {
  return x.main < y.main - 1e-7 || (x.main < y.main + 1e-7 && x.parts < y.parts);
}

std::optional<Work> work_of_split(const Trial& t, const std::set<int>& rotors, int halves, int from_a, int from_b) {
  const auto& stations = t.shaft.stations();
  const int size = static_cast<int>(stations.size());
  double time = halves * t.shaft.spec().policies.turn_a_half.si() / 60, price = 0;
  int parts = 0;
  for (int i = 0; i < size; ++i) {
    const Station& s = stations[static_cast<std::size_t>(i)];
    const bool off = i < from_a || i >= size - from_b;
    const bool on_now = t.reading.state.on_shaft[static_cast<std::size_t>(i)];
    if (off && s.obstacle) return std::nullopt;
    if (!off && on_now && s.rotor >= 0 && rotors.contains(s.rotor + 1)) return std::nullopt;
    if (!off || !on_now) continue;
    time += (s.minutes_off + s.minutes_on).si() / 60;
    if (s.rotor < 0 || t.reading.state.new_set[static_cast<std::size_t>(s.rotor)]) continue;
    const Rotor& r = t.shaft.rotor(s.rotor + 1);
    const bool set = t.shaft.spec().policies.renew_disturbed;
    price += (set ? *r.adapter_set.price : 0) + r.seals * *r.seal.price;
    parts += (set ? 1 : 0) + r.seals;
  }
  if (!t.reading.prices.rate_per_hour) return Work{time, parts};
  return Work{time / 60 * *t.reading.prices.rate_per_hour + price, 0};
}

std::optional<Work> least_work_of(const Trial& t, const std::set<int>& halves) {
  std::set<int> rotors;
  for (const int half : halves) rotors.insert(half / 2 + 1);
  const int size = static_cast<int>(t.shaft.stations().size());
  std::optional<Work> least;
  for (int a = 0; a <= size; ++a) {
    for (int b = 0; a + b <= size; ++b) {
      const auto work = work_of_split(t, rotors, static_cast<int>(halves.size()), a, b);
      if (work && (!least || less(*work, *least))) least = work;
    }
  }
  return least;
}

struct Least {
  std::optional<Work> work;
  std::set<std::set<int>> sets;  ///< Halves to turn, of all ways that are the least.
};

void consider(Least& least, const Trial& t, const Flats& marks, std::set<std::set<int>>& seen) {
  if (!right_shaft(t, marks) || !reference_allowed(t, marks)) return;
  std::set<int> turned;
  for (std::size_t i = 0; i < marks.size(); ++i)
    if (marks[i] != t.read[i]) turned.insert(static_cast<int>(i));
  if (!seen.insert(turned).second) return;
  const auto work = least_work_of(t, turned);
  if (!work) return;
  if (!least.work || less(*work, *least.work)) least.sets.clear();
  if (!least.work || !less(*least.work, *work)) {
    least.work = work;
    least.sets.insert(turned);
  }
}

/// Every final assignment. `pairs_only` leaves out those whose pairs are wrong before asking: for the larger shafts.
Least try_all(const Trial& t, bool pairs_only) {
  const int flats = t.shaft.flats();
  const std::size_t digits = pairs_only ? t.read.size() / 2 : t.read.size();
  std::vector<int> count(digits, 0);
  std::set<std::set<int>> seen;
  Least least;
  while (true) {
    Flats marks;
    for (const int c : count) {
      marks.push_back(c + 1);
      if (pairs_only) marks.push_back((c + flats / 2) % flats + 1);
    }
    consider(least, t, marks, seen);
    std::size_t at = 0;
    while (at < digits && ++count[at] == flats) count[at++] = 0;
    if (at == digits) return least;
  }
}

Work told_work(const Trial& t, const Mend& m) {
  if (t.reading.prices.rate_per_hour) return {*m.money, 0};
  return {m.time.si() / 60, m.off.parts};
}

struct Size {
  int rotors, flats;
  bool pairs_only;
  unsigned trials;
};

class LeastWork : public testing::TestWithParam<Size> {};

// Source: every final assignment of marks that makes a right shaft, with every split of the stations, counted up by hand in
// this file (shares no code with the search).
// Tolerance: 1e-6 currency units or minutes; sums round at about 1e-12.
TEST_P(LeastWork, IsTheLeastOfAllWaysAndCountsTheEqualOnes) {
  const Size size = GetParam();
  for (unsigned seed = 1; seed <= size.trials; ++seed) {
    const Trial t = random_trial(seed, size.rotors, size.flats);
    const Least least = try_all(t, size.pairs_only);
    const auto checked = check(t.shaft, t.reading);
    ASSERT_TRUE(checked) << seed;
    ASSERT_EQ(checked->plan.reachable, least.work.has_value()) << seed;
    if (!least.work) continue;
    const Work told = told_work(t, checked->plan);
    ASSERT_NEAR(told.main, least.work->main, 1e-6) << seed;
    ASSERT_EQ(told.parts, least.work->parts) << seed;
    ASSERT_EQ(checked->equal_plans, static_cast<int>(least.sets.size())) << seed;
    std::set<int> halves;
    Flats after = t.read;
    for (const Turn& turn : checked->plan.turns) {
      const int half = 2 * (turn.rotor - 1) + (turn.half == Half::b ? 1 : 0);
      halves.insert(half);
      ASSERT_EQ(after[static_cast<std::size_t>(half)], turn.from) << seed;
      ASSERT_EQ(turned_flat(turn.from, turn.by, size.flats), turn.to) << seed;
      after[static_cast<std::size_t>(half)] = turn.to;
    }
    ASSERT_TRUE(least.sets.contains(halves)) << seed;
    ASSERT_TRUE(right_shaft(t, after)) << seed;
    ASSERT_EQ(checked->answer, t.read == after ? Answer::in : Answer::out) << seed;
  }
}

INSTANTIATE_TEST_SUITE_P(SmallShafts, LeastWork,
                         testing::Values(Size{1, 4, false, 300}, Size{1, 6, false, 300}, Size{1, 8, false, 300},
                                         Size{2, 4, false, 200}, Size{2, 6, false, 200}, Size{2, 8, false, 100},
                                         Size{3, 4, false, 100}, Size{3, 6, false, 40}, Size{3, 8, true, 100},
                                         Size{4, 4, true, 100}, Size{4, 6, true, 100}, Size{4, 8, true, 60}));

/// The comparison bites: taking rotor 1's half A as the reference is what a hurried person does, and it costs more.
TEST(LeastWorkBites, RotorOneAsReferenceIsFoundOut) {
  int dearer = 0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    const Trial t = random_trial(seed, 3, 6);
    const auto all = mends(t.shaft, t.reading);
    ASSERT_TRUE(all);
    const Least least = try_all(t, true);
    if (!least.work) continue;
    for (const Mend& m : all->allowed) {
      const bool hurried = m.reference.first_flat == *t.reading.rotors[0].a && m.reference.as_listed && m.reachable;
      if (hurried && less(*least.work, told_work(t, m))) ++dearer;
    }
  }
  EXPECT_GT(dearer, 10);
}

}  // namespace
}  // namespace flatwise::timing
