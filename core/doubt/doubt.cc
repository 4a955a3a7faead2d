#include "core/doubt/doubt.h"

#include <algorithm>
#include <cmath>

#include "core/doubt/parts.h"
#include "core/figures/effort.h"
#include "core/working/measure_better.h"

namespace flatwise::doubt {
namespace {

std::optional<Problem> cannot_be_doubted(const Working& working, const std::vector<DoubtfulInput>& inputs) {
  if (std::ranges::none_of(inputs, [](const DoubtfulInput& in) { return in.input.u.has_value(); })) return std::nullopt;
  for (const DoubtfulInput& in : inputs) {
    if (!in.input.u) continue;
    const auto* value = std::get_if<AnyQuantity>(&in.input.value);
    if (value == nullptr || value->kind == Kind::count)
      return Problem{Code{"doubt.not_a_quantity"}, in.input.name, in.input.typed, {}, std::nullopt};
    if (!(in.input.u->standard_si > 0) || !std::isfinite(in.input.u->standard_si))
      return Problem{Code{"doubt.not_above_nought"}, in.input.name, in.input.typed, {}, std::nullopt};
  }
  if (std::ranges::any_of(working.outputs, [](const Output& o) { return o.u.has_value(); }))
    return Problem{Code{"doubt.has_its_own"}, working.figure, {}, {}, std::nullopt};
  return std::nullopt;
}

/// The middle, and each doubtful input to either side.
std::optional<Problem> too_long(const FigureSpec& spec, const std::vector<DoubtfulInput>& inputs, double one_us,
                                const Options& options) {
  const auto doubted = std::ranges::count_if(inputs, [](const DoubtfulInput& in) { return in.input.u.has_value(); });
  const double whole_us = one_us * static_cast<double>(1 + 2 * doubted);
  if (!(whole_us > options.longest_us)) return std::nullopt;
  return Problem{Code{"doubt.too_long"},
                 std::string{spec.name},
                 {},
                 {{"runs", static_cast<std::int64_t>(1 + 2 * doubted)},
                  {"takes", AnyQuantity{whole_us * 1e-6, Kind::time}},
                  {"most", AnyQuantity{options.longest_us * 1e-6, Kind::time}}},
                 std::nullopt};
}

/// As many draws as fit in the time for them.
Options within_time(const Options& options, double one_us) {
  constexpr double kDrawnUs = 1e6;
  Options within = options;
  if (kDrawnUs / one_us < options.most_draws) within.most_draws = static_cast<int>(kDrawnUs / one_us);
  return within;
}

/// Which input stands where after evaluate() has put them in order. Inputs of one name keep their order.
Point point_of(const FigureSpec& spec, const Working& working, const std::vector<DoubtfulInput>& inputs) {
  Point point{.spec = spec, .inputs = working.inputs, .doubted = {}, .shapes = {}, .places = {}};
  std::vector<bool> taken(inputs.size(), false);
  for (std::size_t i = 0; i < point.inputs.size(); ++i) {
    for (std::size_t k = 0; k < inputs.size(); ++k) {
      if (taken[k] || inputs[k].input.name != point.inputs[i].name) continue;
      taken[k] = true;
      if (inputs[k].input.u) {
        point.doubted.push_back(i);
        point.shapes.push_back(inputs[k].shape);
      }
      break;
    }
  }
  for (std::size_t o = 0; o < working.outputs.size(); ++o)
    if (std::holds_alternative<AnyQuantity>(working.outputs[o].value)) point.places.push_back(o);
  return point;
}

Row quantities_of(const Working& working, const std::vector<std::size_t>& places) {
  Row row;
  for (const std::size_t o : places) row.push_back(std::get<AnyQuantity>(working.outputs[o].value).si);
  return row;
}

/// How far the ends of a normal of so few draws may be off by chance, twice its standard deviation.
double chance_of(const Drawn& drawn, const Draws& draws) {
  if (!draws.few) return 0;
  const double reach = (drawn.high_si - drawn.low_si) / 2, count = draws.count;
  return 2 * std::sqrt((drawn.standard_si * drawn.standard_si + reach * reach / 2) / count);
}

bool ends_agree(const DoubtedOutput& out, double middle, double tolerance) {
  return std::abs(middle - out.linear.expanded_si - out.drawn->low_si) <= tolerance &&
         std::abs(middle + out.linear.expanded_si - out.drawn->high_si) <= tolerance;
}

/// What stands at the output: the linear U where the draws confirm it, else half of the drawn interval.
Uncertainty told(const DoubtedOutput& out) {
  if (!out.drawn || out.linear_holds) return out.linear;
  return {out.drawn->standard_si, std::nullopt, (out.drawn->high_si - out.drawn->low_si) / 2};
}

void say_what_to_measure(const Working& working, const DoubtedOutput& main, std::vector<Finding>& findings) {
  if (main.shares.empty()) return;
  const Share& most = main.shares.front();
  const Kind of_doubt = difference_kind(std::get<AnyQuantity>(working.outputs[main.output].value).kind);
  auto finding =
      measure_better_finding({.input = Word{"figure." + working.figure + "." + working.inputs[most.input].name},
                              .part = most.part,
                              .now = AnyQuantity{main.linear.expanded_si, of_doubt},
                              .halved = AnyQuantity{most.halved_si, of_doubt}});
  if (finding) findings.push_back(*std::move(finding));
}

void say_how_the_draws_went(const Doubted& doubted, const Draws& draws, std::vector<Finding>& findings) {
  const auto note = [&](Code code, Args args) {
    findings.push_back({code, Severity::note, std::move(args), {}, std::nullopt});
  };
  if (draws.refused > 0) {
    note(Code{"doubt.leaves_the_range"}, {{"refused", draws.refused}, {"draws", draws.count}});
    return;
  }
  if (draws.count == 0) return;
  if (!draws.settled) note(draws.few ? Code{"doubt.few_draws"} : Code{"doubt.not_settled"}, {{"draws", draws.count}});
  for (const DoubtedOutput& out : doubted.outputs) {
    if (out.linear_holds) continue;
    const Output& shown = doubted.working.outputs[out.output];
    const Kind kind = std::get<AnyQuantity>(shown.value).kind;
    note(Code{"doubt.not_linear"}, {{"output", Word{"figure." + doubted.working.figure + "." + shown.name}},
                                    {"low", AnyQuantity{out.drawn->low_si, kind}},
                                    {"high", AnyQuantity{out.drawn->high_si, kind}}});
  }
}

}  // namespace

double middle_of(const Point& point, std::size_t doubted) {
  return std::get<AnyQuantity>(point.inputs[point.doubted[doubted]].value).si;
}

std::optional<Row> values_at(const Point& point, std::span<const double> doubted_si) {
  std::vector<Input> inputs = point.inputs;
  for (std::size_t i = 0; i < doubted_si.size(); ++i)
    std::get<AnyQuantity>(inputs[point.doubted[i]].value).si = doubted_si[i];
  const Results<Working> working = evaluate(point.spec, std::move(inputs));
  if (!working) return std::nullopt;
  return quantities_of(*working, point.places);
}

Results<Doubted> with_doubt(const FigureSpec& spec, std::vector<DoubtfulInput> inputs, const Options& options) {
  CORE_CHECK(options.digits == 1 || options.digits == 2);
  std::vector<Input> plain;
  for (const DoubtfulInput& in : inputs) plain.push_back(in.input);
  const double one_us = takes_us(spec, plain);
  if (auto problem = too_long(spec, inputs, one_us, options))
    return tl::unexpected(std::vector<Problem>{*std::move(problem)});
  Results<Working> working = evaluate(spec, std::move(plain));
  if (!working) return tl::unexpected(working.error());
  if (auto problem = cannot_be_doubted(*working, inputs))
    return tl::unexpected(std::vector<Problem>{*std::move(problem)});
  const Point point = point_of(spec, *working, inputs);
  Doubted out{.working = *std::move(working), .outputs = {}};
  if (point.doubted.empty()) return out;

  const Row middle = quantities_of(out.working, point.places);
  const std::vector<Row> moved = moves(point, middle);
  const Draws drawn = draw(point, within_time(options, one_us));
  out.draws = drawn.count;
  for (std::size_t i = 0; i < point.places.size(); ++i) {
    DoubtedOutput one = linear(point, point.places[i], moved[i]);
    if (!drawn.drawn.empty()) {
      one.drawn = drawn.drawn[i];
      one.linear_holds =
          ends_agree(one, middle[i], tolerance_of(*one.drawn, options.digits) + chance_of(*one.drawn, drawn));
    }
    out.working.outputs[one.output].u = told(one);
    out.outputs.push_back(std::move(one));
  }
  if (!out.outputs.empty()) say_what_to_measure(out.working, out.outputs.front(), out.working.findings);
  if (drawn.count == 0 && options.most_draws > 0)
    out.working.findings.push_back({Code{"doubt.first_order_only"}, Severity::note, {}, {}, std::nullopt});
  say_how_the_draws_went(out, drawn, out.working.findings);
  return out;
}

}  // namespace flatwise::doubt
