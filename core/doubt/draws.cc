// Propagation of distributions: all doubtful inputs drawn together, batch after batch, until nothing moves any more.
#include "core/draws/draws.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/doubt/parts.h"
#include "core/metrology/uncertainty.h"

namespace flatwise::doubt {
namespace {

constexpr int kBatch = 10000;    // JCGM 101, 7.9.4 b.
constexpr int kFewest = 100;     // JCGM 101, 7.2.3: with so few, mean and deviation of a normal, and no more.
constexpr int kMostDof = 200;    // Beyond it a t differs from a normal by less than the draws settle to.
constexpr double kTail = 0.025;  // Each side of a 95 % interval.

/// A t with these degrees of freedom, scaled as JCGM 101 6.4.9 has it: normal over the root of chi square by its count.
double drawn_t(draws::Stream& stream, int dof) {
  double chi_square = 0;
  const double x = stream.normal();
  for (int i = 0; i < dof; ++i) {
    const double z = stream.normal();
    chi_square += z * z;
  }
  return x / std::sqrt(chi_square / dof);
}

double drawn_input(draws::Stream& stream, const Input& input, Shape shape) {
  const double middle = std::get<AnyQuantity>(input.value).si, u = input.u->standard_si;
  if (shape == Shape::rectangular) return middle + std::numbers::sqrt3 * u * (2 * stream.uniform() - 1);
  const auto dof = input.u->degrees_of_freedom;
  if (dof && *dof < kMostDof) return middle + u * drawn_t(stream, std::max(1, static_cast<int>(std::floor(*dof))));
  return middle + u * stream.normal();
}

/// One batch: a column of values for each output. Draws where the figure does not hold are counted and left out.
struct Batch {
  std::vector<std::vector<double>> columns;
  int refused = 0;
};
Batch run_batch(const Point& point, draws::Stream& stream, int size) {
  Batch batch{.columns = std::vector<std::vector<double>>(point.places.size())};
  for (auto& column : batch.columns) column.reserve(static_cast<std::size_t>(size));
  std::vector<double> at(point.doubted.size());
  for (int i = 0; i < size; ++i) {
    for (std::size_t k = 0; k < at.size(); ++k)
      at[k] = drawn_input(stream, point.inputs[point.doubted[k]], point.shapes[k]);
    const auto values = values_at(point, at);
    if (!values) {
      ++batch.refused;
      continue;
    }
    for (std::size_t o = 0; o < values->size(); ++o) batch.columns[o].push_back((*values)[o]);
  }
  return batch;
}

/// Mean over the batches and the standard deviation of that mean.
struct Averaged {
  double mean = 0, doubt = 0;
};
template <class Read>
Averaged averaged(const std::vector<Drawn>& batches, Read read) {
  const auto count = static_cast<double>(batches.size());
  double sum = 0, squares = 0;
  for (const Drawn& b : batches) sum += read(b);
  const double mean = sum / count;
  for (const Drawn& b : batches) squares += (read(b) - mean) * (read(b) - mean);
  return {mean, count > 1 ? std::sqrt(squares / (count * (count - 1))) : HUGE_VAL};
}

struct Settled {
  Drawn drawn;
  bool settled = false;
};
Settled settled_over(const std::vector<Drawn>& batches, int digits) {
  const Averaged all[] = {averaged(batches, [](const Drawn& d) { return d.mean_si; }),
                          averaged(batches, [](const Drawn& d) { return d.standard_si; }),
                          averaged(batches, [](const Drawn& d) { return d.low_si; }),
                          averaged(batches, [](const Drawn& d) { return d.high_si; })};
  const Drawn drawn{all[0].mean, all[1].mean, all[2].mean, all[3].mean};
  const double tolerance = tolerance_of(drawn, digits);
  return {drawn, std::ranges::all_of(all, [&](const Averaged& a) { return 2 * a.doubt <= tolerance; })};
}

/// Too few draws to find the ends of an interval among them: a normal of their mean and deviation stands in for it.
Draws few_draws(const Point& point, const Options& options) {
  Draws out;
  out.few = true;
  draws::Stream stream{options.seed, 0};
  Batch batch = run_batch(point, stream, options.most_draws);
  out.count = options.most_draws;
  out.refused = batch.refused;
  if (out.refused > 0) return out;
  const double reach = metrology::coverage_factor(metrology::kEndless);
  for (std::vector<double>& column : batch.columns) {
    Drawn one = summary(column);
    one.low_si = one.mean_si - reach * one.standard_si;
    one.high_si = one.mean_si + reach * one.standard_si;
    out.drawn.push_back(one);
  }
  return out;
}

}  // namespace

Drawn summary(std::vector<double>& values) {
  std::ranges::sort(values);
  const auto count = static_cast<double>(values.size());
  double sum = 0, squares = 0;
  for (const double v : values) sum += v;
  const double mean = sum / count;
  for (const double v : values) squares += (v - mean) * (v - mean);
  const auto at = [&](double share) {
    const auto place = static_cast<std::size_t>(std::floor(share * count + 0.5));
    return values[std::min(place, values.size() - 1)];
  };
  return {mean, std::sqrt(squares / (count - 1)), at(kTail), at(1 - kTail)};
}

double tolerance_of(const Drawn& drawn, int digits) {
  const double rounding = 1e-12 * std::abs(drawn.mean_si);
  if (!(drawn.standard_si > rounding)) return rounding;
  return 0.5 * std::pow(10.0, std::floor(std::log10(drawn.standard_si)) - (digits - 1));
}

Draws draw(const Point& point, const Options& options) {
  if (options.most_draws >= kFewest && options.most_draws < kBatch) return few_draws(point, options);
  Draws out;
  draws::Stream stream{options.seed, 0};
  std::vector<std::vector<Drawn>> batches(point.places.size());
  while (!out.settled && out.count + kBatch <= options.most_draws) {
    Batch batch = run_batch(point, stream, kBatch);
    out.count += kBatch;
    out.refused += batch.refused;
    if (out.refused > 0) return out;
    out.drawn.clear();
    out.settled = true;
    for (std::size_t o = 0; o < batches.size(); ++o) {
      batches[o].push_back(summary(batch.columns[o]));
      const Settled now = settled_over(batches[o], options.digits);
      out.drawn.push_back(now.drawn);
      out.settled = out.settled && now.settled;
    }
  }
  return out;
}

}  // namespace flatwise::doubt
