#include <algorithm>
#include <cmath>

#include "core/doubt/parts.h"
#include "core/metrology/uncertainty.h"

namespace flatwise::doubt {
namespace {

double standard_of(const Point& point, std::size_t doubted) {
  return point.inputs[point.doubted[doubted]].u->standard_si;
}

/// Half of f(x + u) - f(x - u); where one side does not hold, the other side's whole step.
Row moves_of(const Point& point, const Row& middle, std::size_t which) {
  std::vector<double> at(point.doubted.size());
  for (std::size_t i = 0; i < at.size(); ++i) at[i] = middle_of(point, i);
  const double centre = at[which], u = standard_of(point, which);
  at[which] = centre + u;
  const auto above = values_at(point, at);
  at[which] = centre - u;
  const auto below = values_at(point, at);
  Row moved(middle.size(), 0.0);
  for (std::size_t i = 0; i < moved.size(); ++i) {
    if (above && below)
      moved[i] = ((*above)[i] - (*below)[i]) / 2;
    else if (above)
      moved[i] = (*above)[i] - middle[i];
    else if (below)
      moved[i] = middle[i] - (*below)[i];
  }
  return moved;
}

metrology::Combined combined(const Point& point, const Row& moved, std::optional<std::size_t> changed, double factor) {
  std::vector<metrology::Component> parts;
  for (std::size_t i = 0; i < moved.size(); ++i) {
    const auto& u = *point.inputs[point.doubted[i]].u;
    const double share = changed == i ? factor : 1.0;
    parts.push_back(
        {.u = share * std::abs(moved[i]), .sensitivity = 1, .dof = u.degrees_of_freedom.value_or(metrology::kEndless)});
  }
  return metrology::combine(parts);
}

}  // namespace

std::vector<Row> moves(const Point& point, const Row& middle) {
  std::vector<Row> by_output(middle.size(), Row(point.doubted.size()));
  for (std::size_t i = 0; i < point.doubted.size(); ++i) {
    const Row moved = moves_of(point, middle, i);
    for (std::size_t o = 0; o < middle.size(); ++o) by_output[o][i] = moved[o];
  }
  return by_output;
}

DoubtedOutput linear(const Point& point, std::size_t output, const Row& moved) {
  const metrology::Combined whole = combined(point, moved, std::nullopt, 1);
  DoubtedOutput out{.output = output, .linear = metrology::expand(whole), .shares = {}, .drawn = {}};
  for (std::size_t i = 0; i < moved.size(); ++i) {
    if (moved[i] == 0) continue;
    out.shares.push_back({.input = point.doubted[i],
                          .moves_si = moved[i],
                          .part = moved[i] * moved[i] / (whole.u * whole.u),
                          .without_si = metrology::expand(combined(point, moved, i, 0)).expanded_si,
                          .halved_si = metrology::expand(combined(point, moved, i, 0.5)).expanded_si});
  }
  std::ranges::stable_sort(out.shares, std::ranges::greater{}, &Share::part);
  return out;
}

}  // namespace flatwise::doubt
