#include "core/doubt/of_shaft.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/doubt/parts.h"
#include "core/draws/draws.h"
#include "core/metrology/uncertainty.h"
#include "core/working/measure_better.h"

namespace flatwise::doubt {
namespace {

constexpr double kAlike = 0.1;  // Two steps that differ by less of the greater one are those of a straight line.
constexpr double kWorthNaming = 0.005;  // A share that would be said as 0 %.
constexpr int kDraws = 20000;           // Arithmetic only: the figure itself is not worked out again.
constexpr std::uint64_t kSeed = 1;

/// What one figure does when one field goes up and down by its standard uncertainty.
struct Steps {
  double up = 0, down = 0;  ///< From the middle; down is what it does on the way down.
  bool one_sided = false;

  [[nodiscard]] double square() const { return (up * up + down * down) / 2; }
  [[nodiscard]] bool straight() const { return std::abs(up + down) <= kAlike * std::max(std::abs(up), std::abs(down)); }
};

std::vector<double> at(const std::shared_ptr<const ShaftSpec>& spec, const FiguresOf& figures, std::size_t count) {
  std::vector<double> none(count, std::nan(""));
  if (spec == nullptr) return none;
  const Results<Shaft> shaft = Shaft::make(*spec);
  if (!shaft) return none;
  std::vector<double> values = figures(*shaft);
  CORE_CHECK(values.size() == count);
  return values;
}

/// Where one side does not hold the other side's step goes for both.
Steps steps_of(double middle, double above, double below) {
  Steps steps{.up = above - middle, .down = below - middle};
  if (std::isfinite(steps.up) && std::isfinite(steps.down)) return steps;
  steps.one_sided = true;
  if (!std::isfinite(steps.up)) steps.up = std::isfinite(steps.down) ? -steps.down : 0;
  if (!std::isfinite(steps.down)) steps.down = -steps.up;
  return steps;
}

/// What rounding and a solver's last digits do to the figure is no doubt of it.
void forget_rounding(double middle, Steps& steps) {
  const double rounding = 1e-9 * std::abs(middle);
  if (std::abs(steps.up) <= rounding) steps.up = 0;
  if (std::abs(steps.down) <= rounding) steps.down = 0;
}

Drawn drawn_of(double middle, const std::vector<Steps>& steps, const std::vector<const FieldDoubt*>& fields) {
  draws::Stream stream{kSeed, 0};
  std::vector<double> values(kDraws, middle);
  for (double& value : values)
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const double z = fields[i]->anywhere ? std::numbers::sqrt3 * (2 * stream.uniform() - 1) : stream.normal();
      value += z > 0 ? steps[i].up * z : -steps[i].down * z;
    }
  return summary(values);
}

double expanded(double square) { return metrology::expand(metrology::Combined{std::sqrt(square)}).expanded_si; }

std::optional<FigureDoubt> doubt_of(double middle, const std::vector<Steps>& steps,
                                    const std::vector<std::string>& paths,
                                    const std::vector<const FieldDoubt*>& fields) {
  double whole = 0;
  for (const Steps& s : steps) whole += s.square();
  if (!std::isfinite(middle) || !(whole > 0)) return std::nullopt;
  FigureDoubt out{.u = {std::sqrt(whole), std::nullopt, expanded(whole)}, .shares = {}, .drawn = {}};
  bool plain = true;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const double mine = steps[i].square();
    out.one_sided = out.one_sided || steps[i].one_sided;
    if (!(mine > 0)) continue;
    plain = plain && steps[i].straight() && !fields[i]->anywhere;
    out.shares.push_back({.field = paths[i],
                          .meaning = fields[i]->meaning,
                          .moves_si = (steps[i].up - steps[i].down) / 2,
                          .part = mine / whole,
                          .halved_si = expanded(whole - 0.75 * mine)});
  }
  std::ranges::stable_sort(out.shares, std::ranges::greater{}, &FieldShare::part);
  if (plain) return out;
  out.drawn = drawn_of(middle, steps, fields);
  const double told = (out.drawn->high_si - out.drawn->low_si) / 2;
  for (FieldShare& share : out.shares) share.halved_si *= told / out.u.expanded_si;
  out.u = {out.drawn->standard_si, std::nullopt, told};
  return out;
}

/// With the figures of the shaft as defined worked out already.
std::vector<std::optional<FigureDoubt>> around(const std::vector<double>& middle, const Shaft& shaft,
                                               const FiguresOf& figures) {
  const auto& doubts = shaft.spec().doubts;
  std::vector<std::string> paths;
  std::vector<const FieldDoubt*> fields;
  std::vector<std::vector<Steps>> steps(middle.size());  // By figure, then by field.
  for (const auto& [path, field] : doubts) {
    paths.push_back(path);
    fields.push_back(&field);
    const auto above = at(field.above, figures, middle.size()), below = at(field.below, figures, middle.size());
    for (std::size_t f = 0; f < middle.size(); ++f) {
      steps[f].push_back(steps_of(middle[f], above[f], below[f]));
      forget_rounding(middle[f], steps[f].back());
    }
  }
  std::vector<std::optional<FigureDoubt>> out;
  for (std::size_t f = 0; f < middle.size(); ++f) out.push_back(doubt_of(middle[f], steps[f], paths, fields));
  return out;
}

std::vector<double> values_of(const std::vector<NamedFigure>& figures) {
  std::vector<double> values;
  for (const NamedFigure& figure : figures) values.push_back(figure.value.si);
  return values;
}

}  // namespace

std::vector<std::optional<FigureDoubt>> of_shaft(const Shaft& shaft, const FiguresOf& figures) {
  if (shaft.spec().doubts.empty()) return {};
  return around(figures(shaft), shaft, figures);
}

std::vector<ToldDoubt> told_of_shaft(const Shaft& shaft,
                                     const std::function<std::vector<NamedFigure>(const Shaft& shaft)>& figures) {
  if (shaft.spec().doubts.empty()) return {};
  const std::vector<NamedFigure> named = figures(shaft);
  const auto doubts = around(values_of(named), shaft, [&](const Shaft& s) {
    std::vector<double> values = values_of(figures(s));
    values.resize(named.size(), std::nan(""));
    return values;
  });
  std::vector<ToldDoubt> told;
  for (std::size_t i = 0; i < named.size(); ++i)
    if (doubts[i]) told.push_back({named[i], *doubts[i]});
  return told;
}

std::optional<Message> measure_better(const ToldDoubt& told) {
  const FieldShare& most = told.doubt.shares.front();
  const Kind kind = difference_kind(told.figure.value.kind);
  return flatwise::measure_better({.input = Word{most.meaning},
                                   .field = most.field,
                                   .part = most.part,
                                   .now = AnyQuantity{told.doubt.u.expanded_si, kind},
                                   .halved = AnyQuantity{most.halved_si, kind}});
}

std::vector<Message> says(const ToldDoubt& told) {
  const auto& [figure, doubt] = told;
  Args args{{"figure", figure.name},
            {"value", figure.value},
            {"u", AnyQuantity{doubt.u.expanded_si, difference_kind(figure.value.kind)}}};
  if (!figure.of.empty()) args.emplace_back("of", figure.of);
  constexpr const char* kNames[][2] = {{"first", "first_part"}, {"second", "second_part"}, {"third", "third_part"}};
  for (std::size_t i = 0; i < std::min(std::size(kNames), doubt.shares.size()); ++i) {
    if (doubt.shares[i].part < kWorthNaming) break;
    args.emplace_back(kNames[i][0], doubt.shares[i].field);
    args.emplace_back(kNames[i][1], any_ratio(doubt.shares[i].part));
  }
  std::vector<Message> out{{Code{"doubt.told"}, std::move(args)}};
  if (doubt.drawn)
    out.push_back({Code{"doubt.not_linear"},
                   {{"output", figure.name},
                    {"low", AnyQuantity{doubt.drawn->low_si, figure.value.kind}},
                    {"high", AnyQuantity{doubt.drawn->high_si, figure.value.kind}}}});
  if (doubt.one_sided) out.push_back({Code{"doubt.one_sided"}, {{"output", figure.name}}});
  if (auto better = measure_better(told)) out.push_back(*std::move(better));
  return out;
}

}  // namespace flatwise::doubt
