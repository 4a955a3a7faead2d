#include "core/dynamics/pattern_simple.h"

#include <cstdlib>

namespace flatwise::dynamics {

int step_of(int before, int place, int positions) {
  const int way = ((place - before) % positions + positions) % positions;
  return 2 * way > positions ? way - positions : way;
}

Simplicity simplicity_of(std::span<const int> places, int positions) {
  Simplicity out;
  std::uint64_t seen = 0;
  bool in_turn = places.size() >= 5;
  std::vector<int> steps;
  for (std::size_t i = 1; i < places.size(); ++i) {
    const int step = step_of(places[i - 1], places[i], positions);
    steps.push_back(step);
    seen |= std::uint64_t{1} << (step + positions);
    out.turned += 2 * step != positions;
    out.way += std::abs(step);
    const std::size_t last = steps.size() - 1;
    out.phrases += last == 0 || steps[last - 1] != step;
    in_turn = in_turn && (last < 2 || steps[last - 2] == step);
  }
  for (; seen != 0; seen &= seen - 1) ++out.steps;
  if (in_turn && out.steps == 2) out.phrases = 2;
  return out;
}

Places some_arrangement(const PatternTask& task) {
  const int rotors = task.count(), n = task.positions;
  const auto may_stand = [&](int rotor, int place) {
    return !task.keeps(rotor) || *task.kept[static_cast<std::size_t>(rotor)] == place;
  };
  // From the last rotor back: from where the row can be gone on with to its end.
  std::vector<std::vector<bool>> open(static_cast<std::size_t>(rotors), std::vector<bool>(static_cast<std::size_t>(n)));
  const auto goes_on = [&](int rotor, int place) {
    if (rotor + 1 == rotors) return true;
    for (int next = 0; next < n; ++next)
      if (open[static_cast<std::size_t>(rotor) + 1][static_cast<std::size_t>(next)] &&
          task.may_follow(rotor + 1, place, next))
        return true;
    return false;
  };
  for (int rotor = rotors - 1; rotor >= 0; --rotor)
    for (int place = 0; place < n; ++place)
      open[static_cast<std::size_t>(rotor)][static_cast<std::size_t>(place)] =
          may_stand(rotor, place) && goes_on(rotor, place);
  Places places;
  for (int rotor = 0; rotor < rotors; ++rotor) {
    const int facing = rotor == 0 ? 0 : places.back() + n / 2;
    for (int on = 0; on < n; ++on) {
      const int place = (facing + on) % n;
      if (!open[static_cast<std::size_t>(rotor)][static_cast<std::size_t>(place)]) continue;
      if (rotor > 0 && !task.may_follow(rotor, places.back(), place)) continue;
      places.push_back(place);
      break;
    }
  }
  CORE_CHECK(static_cast<int>(places.size()) == rotors);
  return places;
}

SimpleScan::SimpleScan(const PatternTask& task, const PatternSums& sums, double limit, Offer offer)
    : task_{task}, sums_{sums}, limit_{limit}, offer_{std::move(offer)}, places_(task.rotors.size()) {}

int SimpleScan::levels() const { return task_.count() - 1; }

bool SimpleScan::level(int phrases, std::int64_t& rows) {
  rows_ = &rows;
  const int n = task_.positions;
  for (int step = 0; step < n; ++step) {
    if (phrases == 1) {
      if (!begin(step, step, 1)) return false;
      continue;
    }
    for (int other = 0; other < n; ++other)
      if (other != step && !begin(step, other, phrases)) return false;
  }
  return true;
}

/// Every arrangement of so many runs of the two steps, the first one first.
bool SimpleScan::begin(int step, int other, int phrases) {
  for (int place = 0; place < (task_.turn_is_free() ? 1 : task_.positions); ++place) {
    if (task_.keeps(0) && *task_.kept[0] != place) continue;
    At at = first(place);
    if (put(at, step)) run(at, step, other, phrases - 1);
    if (phrases == 2 && task_.count() >= 5) {
      places_[0] = place;
      in_turn(step, other);
    }
    if (*rows_ <= 0) return false;
  }
  return true;
}

SimpleScan::At SimpleScan::first(int place) {
  places_[0] = place;
  const Phasor at = sums_.directions()[static_cast<std::size_t>(place)];
  return {0, place, sums_.constant()[0] + sums_.own(0)[0] * at, sums_.constant()[1] + sums_.own(0)[1] * at};
}

bool SimpleScan::put(At& at, int step) {
  const int rotor = at.rotor + 1, place = (at.place + step) % task_.positions;
  if (task_.keeps(rotor) && *task_.kept[static_cast<std::size_t>(rotor)] != place) return false;
  if (!task_.may_follow(rotor, at.place, place)) return false;
  const Phasor direction = sums_.directions()[static_cast<std::size_t>(place)];
  at = {rotor, place, at.a + sums_.own(rotor)[0] * direction, at.b + sums_.own(rotor)[1] * direction};
  places_[static_cast<std::size_t>(rotor)] = place;
  return true;
}

/// `at` is the last rotor put; `more` runs are to follow, which need a rotor each.
void SimpleScan::run(const At& at, int step, int other, int more) {
  const int left = task_.count() - 1 - at.rotor;
  if (left == 0) return end(at);
  if (*rows_ <= 0) return;
  if (left > more) {
    At next = at;
    if (put(next, step)) run(next, step, other, more);
  }
  if (more == 0) return;
  At next = at;
  if (put(next, other)) run(next, other, step, more - 1);
}

void SimpleScan::in_turn(int step, int other) {
  At at = first(places_[0]);
  for (int i = 1; i < task_.count(); ++i)
    if (!put(at, i % 2 == 1 ? step : other)) return;
  end(at);
}

void SimpleScan::end(const At& at) {
  --*rows_;
  if (sums_.of(at.a, at.b) <= limit_ + sums_.rounding()) limit_ = offer_(places_);
}

}  // namespace flatwise::dynamics
