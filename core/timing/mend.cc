#include "core/timing/mend.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "core/timing/frame.h"

namespace flatwise::timing {
namespace {

using teardown::Cost;
using teardown::Reach;

constexpr double kSameTime = 1e-6;  // Seconds: sums of the same minutes in another order.

struct Search {
  const Shaft& shaft;
  const Reading& reading;
  const Frame& frame;
  const Reach& reach;
};

/// Rotors with a half to turn, as stations; and how many halves.
struct Wrong {
  std::vector<int> stations;
  int halves = 0;
};

/// `unread_too`: the most it can be, every unread half taken as wrong.
Wrong wrong_by(const Search& s, const Reference& reference, bool unread_too) {
  Wrong out;
  for (int number = 1; number <= s.frame.rotors(); ++number) {
    int halves = 0;
    for (const Half half : {Half::a, Half::b})
      halves += out_by(s.frame, s.reading, reference, number, half).value_or(unread_too ? 1 : 0) != 0 ? 1 : 0;
    if (halves > 0) out.stations.push_back(s.shaft.station_of_rotor(number));
    out.halves += halves;
  }
  return out;
}

/// With the halves turned as well; none where a rotor cannot be reached.
std::optional<Cost> cost_of(const Search& s, const Wrong& wrong) {
  auto cost = s.reach.cheapest(wrong.stations);
  if (cost) cost->time = cost->time + wrong.halves * s.shaft.spec().policies.turn_a_half;
  return cost;
}

std::optional<End> reached_from(const Search& s, const Cost& off, int number) {
  const int station = s.shaft.station_of_rotor(number);
  if (!s.reading.state.on_shaft[static_cast<std::size_t>(station)]) return std::nullopt;
  return station < off.split.from_a ? End::a : End::b;
}

std::vector<Turn> turns_by(const Search& s, const Reference& reference, const Cost& off) {
  std::vector<Turn> out;
  const int half_turn = s.frame.flats / 2;
  for (int number = 1; number <= s.frame.rotors(); ++number) {
    for (const Half half : {Half::a, Half::b}) {
      const int flats = out_by(s.frame, s.reading, reference, number, half).value_or(0);
      if (flats == 0) continue;
      out.push_back({.rotor = number,
                     .half = half,
                     .from = *mark(marks_of(s.reading, number), half),
                     .to = s.frame.wanted(reference, number, half),
                     .by = flats == half_turn ? half_turn : -flats,
                     .reached_from = reached_from(s, off, number)});
    }
  }
  return out;
}

/// Fixed rotors that the reference is, wholly or by one half, the one of.
void name_fixed(Mend& mend, const Search& s) {
  for (int number = 1; number <= s.frame.rotors(); ++number) {
    if (!marks_of(s.reading, number).fixed) continue;
    const bool a = out_by(s.frame, s.reading, mend.reference, number, Half::a) == 0;
    const bool b = out_by(s.frame, s.reading, mend.reference, number, Half::b) == 0;
    if (agrees(s.frame, s.reading, mend.reference, number))
      mend.fixed_rotors.push_back(number);
    else if (a || b)
      mend.half_right.push_back(number);
  }
}

Mend mend_by(const Search& s, const Reference& reference) {
  const Wrong wrong = wrong_by(s, reference, false);
  const auto cost = cost_of(s, wrong);
  Mend mend;
  mend.reference = reference;
  mend.reachable = cost.has_value();
  mend.off = cost.value_or(Cost{});
  if (!cost) mend.off.time = wrong.halves * s.shaft.spec().policies.turn_a_half;
  mend.time = mend.off.time;
  mend.turns = turns_by(s, reference, mend.off);
  if (cost) mend.money = s.reach.money(mend.time, mend.off.parts_price);
  name_fixed(mend, s);
  return mend;
}

/// Nought: equal work, whatever is turned.
int compare_work(const Reach& reach, const Mend& x, const Mend& y) {
  if (x.reachable != y.reachable) return x.reachable ? -1 : 1;
  return reach.compare(x.off, y.off);
}

int total_flats(const Mend& m) {
  int flats = 0;
  for (const Turn& t : m.turns) flats += std::abs(t.by);
  return flats;
}

/// Half B before half A: half A gives the rotor its index, so where either will do half B is the one to turn.
bool earlier(const Turn& x, const Turn& y) {
  if (x.rotor != y.rotor) return x.rotor < y.rotor;
  if (x.half != y.half) return x.half == Half::b;
  return x.by > y.by;
}

/// The order of mends. Nothing in it knows a flat's number, so a turn of the whole shaft changes nothing.
bool before(const Reach& reach, const Mend& x, const Mend& y) {
  if (const int c = compare_work(reach, x, y); c != 0) return c < 0;
  if (std::abs(x.off.time.si() - y.off.time.si()) > kSameTime) return x.off.time < y.off.time;
  if (x.turns.size() != y.turns.size()) return x.turns.size() < y.turns.size();
  if (const int fx = total_flats(x), fy = total_flats(y); fx != fy) return fx < fy;
  return std::ranges::lexicographical_compare(x.turns, y.turns, earlier);
}

bool same_halves(const Mend& x, const Mend& y) {
  return std::ranges::equal(x.turns, y.turns,
                            [](const Turn& s, const Turn& t) { return s.rotor == t.rotor && s.half == t.half; });
}

int count_equal(const Reach& reach, const std::vector<Mend>& sorted) {
  std::vector<const Mend*> different;
  for (const Mend& m : sorted) {
    if (compare_work(reach, m, sorted.front()) != 0) continue;
    if (std::ranges::none_of(different, [&](const Mend* d) { return same_halves(*d, m); })) different.push_back(&m);
  }
  return static_cast<int>(different.size());
}

bool any_fixed(const Reading& reading) {
  return std::ranges::any_of(reading.rotors, [](const Marks& m) { return m.fixed; });
}

bool any_unread(const Reading& reading, bool of_fixed_only) {
  return std::ranges::any_of(reading.rotors,
                             [&](const Marks& m) { return (m.fixed || !of_fixed_only) && (!m.a || !m.b); });
}

/// References that may still be the least work when the unread halves are read: those whose least is not over the least of
/// what a surely allowed reference can cost at most.
std::vector<Mend> still_possible(const Search& s, const std::vector<Reference>& maybe,
                                 const std::vector<Reference>& sure) {
  std::optional<Cost> bound;
  for (const Reference& reference : sure) {
    const auto most = cost_of(s, wrong_by(s, reference, true));
    if (most && (!bound || s.reach.compare(*most, *bound) < 0)) bound = most;
  }
  std::vector<Mend> out;
  for (const Reference& reference : maybe) {
    Mend least = mend_by(s, reference);
    if (!bound || (least.reachable && s.reach.compare(least.off, *bound) <= 0)) out.push_back(std::move(least));
  }
  return out;
}

std::vector<Mend> least_ones(const Reach& reach, const std::vector<Mend>& sorted) {
  std::vector<Mend> out;
  for (const Mend& m : sorted)
    if (compare_work(reach, m, sorted.front()) == 0) out.push_back(m);
  return out;
}

/// References of fixed rotors that go against the definition's first flat.
std::vector<Mend> against_first_flat(const Search& s) {
  Frame free = s.frame;
  free.first_flat = std::nullopt;
  std::vector<Mend> out;
  for (const Reference& reference : free.references())
    if (reference.first_flat != *s.frame.first_flat && set_by_fixed(free, s.reading, reference))
      out.push_back(mend_by(s, reference));
  return out;
}

}  // namespace

Result<Mends> mends(const Shaft& shaft, const Reading& reading) {
  if (auto problem = problem_with(shaft, reading)) return tl::unexpected(std::move(*problem));
  const Frame frame = frame_of(shaft);
  const Reach reach{shaft, reading.state, reading.prices};
  const Search search{shaft, reading, frame, reach};
  const auto order = [&](const Mend& x, const Mend& y) { return before(reach, x, y); };
  const std::vector<Reference> all = frame.references();
  std::vector<Reference> sure = all;
  if (!frame.first_flat && any_fixed(reading))
    std::erase_if(sure, [&](const Reference& r) { return !set_by_fixed(frame, reading, r); });
  Mends out;
  for (const Reference& reference : sure.empty() ? all : sure) out.allowed.push_back(mend_by(search, reference));
  std::ranges::stable_sort(out.allowed, order);
  out.equal = count_equal(reach, out.allowed);
  if (any_unread(reading, false)) {
    // An unread half of a fixed rotor could set any reference.
    out.possible = still_possible(search, any_unread(reading, true) ? all : sure, sure);
  } else {
    out.possible = least_ones(reach, out.allowed);
  }
  if (!frame.first_flat) return out;
  out.others = against_first_flat(search);
  std::ranges::stable_sort(out.others, order);
  return out;
}

}  // namespace flatwise::timing
