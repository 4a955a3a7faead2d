#include "core/stack/figures.h"

#include <algorithm>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

#include "core/stack/joints.h"
#include "core/stack/sample.h"
#include "core/stack/seat.h"
#include "core/stack/sum.h"
#include "core/working/input_specs.h"

namespace flatwise::stack {
namespace {

constexpr double kMostLength = 100;  // m

InputSpec length_input(std::string_view name, std::string_view symbol) {
  return above_nought(name, symbol, Kind::length, kMostLength);
}
InputSpec length_or_nought(std::string_view name, std::string_view symbol) {
  return from_nought(name, symbol, Kind::length, kMostLength);
}
InputSpec gap_input() { return assumed(length_input("least-gap", "g"), any(micrometres(750)), kOwnRule); }
InputSpec chance_input(std::string_view name, std::string_view symbol, double chance) {
  return assumed(from_nought(name, symbol, Kind::ratio, 1), any_ratio(chance), kOwnRule);
}
InputSpec many(InputSpec spec) { return optional(repeated(std::move(spec))); }
std::vector<InputSpec> part_inputs() {
  return {many(length_input("length", "l")), many(length_or_nought("above", "t+")),
          many(length_or_nought("below", "t-")), many(length_input("measured-part", "l_m")),
          many(length_or_nought("measured-part-u", "U_m"))};
}

/// One value a part, or one for all; none where it was left out.
Result<std::vector<double>> one_a_part(const Given& in, std::string_view name, std::size_t parts) {
  if (auto values = one_each(in, name, parts, 0.0)) return *std::move(values);
  return tl::unexpected(Problem{
      Code{"stack.values_uneven"},
      std::string{name},
      {},
      {{"count", static_cast<std::int64_t>(in.all_si(name).size())}, {"parts", static_cast<std::int64_t>(parts)}},
      std::nullopt});
}

Result<std::vector<StackPart>> parts_from(const Given& in) {
  const auto lengths = in.all_si("length"), measured = in.all_si("measured-part");
  const auto above = one_a_part(in, "above", lengths.size()), below = one_a_part(in, "below", lengths.size());
  const auto u = one_a_part(in, "measured-part-u", measured.size());
  for (const auto* values : {&above, &below, &u})
    if (!*values) return tl::unexpected(values->error());
  if (!measured.empty() && !in.has("measured-part-u"))
    return tl::unexpected(Problem{Code{"stack.u_missing"}, "measured-part-u", {}, {}, std::nullopt});
  std::vector<StackPart> parts;
  for (std::size_t i = 0; i < lengths.size(); ++i)
    parts.push_back({.nominal = metres(lengths[i]), .above = metres((*above)[i]), .below = metres((*below)[i])});
  for (std::size_t i = 0; i < measured.size(); ++i)
    parts.push_back({.nominal = metres(measured[i]), .standard_uncertainty = metres((*u)[i] / 2)});
  return parts;
}

Result<Computed> compute_length(const Given& in) {
  const auto parts = parts_from(in);
  if (!parts) return tl::unexpected(parts.error());
  const auto stack = StackLength::of(*parts);
  if (!stack) return tl::unexpected(stack.error());
  const Band band = stack->band(), worst = stack->worst_case();
  return Computed{.values = {any(stack->nominal()), any(band.least), any(band.greatest), any(worst.least),
                             any(worst.greatest), any(stack->root_sum_of_squares())}};
}

FigureSpec length_figure() {
  return {.name = "stack-length",
          .formula = "L = Σ l; 2.5 % and 97.5 % of the sum of rectangles l − t- … l + t+ and normals l_m, U_m/2",
          .inputs = part_inputs(),
          .outputs = {{"nominal", "L", Kind::length},
                      {"band-least", "a", Kind::length},
                      {"band-greatest", "b", Kind::length},
                      {"worst-least", "Σ (l − t-)", Kind::length},
                      {"worst-greatest", "Σ (l + t+)", Kind::length},
                      {"root-sum-of-squares", "√Σ t²", Kind::length}},
          .sources = {"Feller", "Stack-up"},
          .compute = compute_length,
          .example = {{"length=100 mm", "length=50 mm", "length=30 mm", "length=50 mm", "above=0.1 mm", "below=0.1 mm"},
                      "nominal=230 mm"}};
}

std::string state_name(Seat seat) {
  constexpr const char* kNames[] = {"contradiction", "not_seated", "seated", "cannot_tell"};
  return kNames[static_cast<int>(seat)];
}

Finding seat_finding(const SeatReading& r, const SeatJudged& judged) {
  Args args{{"measured", any(r.measured)},
            {"u", any(r.expanded)},
            {"least", any(r.seated.least)},
            {"greatest", any(r.seated.greatest)}};
  switch (judged.seat) {
    case Seat::contradiction:
      args.emplace_back("by", any(r.seated.least - r.measured));
      return {
          Code{"stack.contradiction"}, Severity::out, std::move(args), {}, Message{Code{"stack.measure_again"}, {}}};
    case Seat::not_seated:
      args.emplace_back("by", any(r.measured - r.seated.greatest));
      return {Code{"stack.not_seated"}, Severity::out, std::move(args), {}, Message{Code{"stack.find_the_joint"}, {}}};
    case Seat::seated:
      return {Code{"stack.seated"}, Severity::note, std::move(args), {}, std::nullopt};
    case Seat::cannot_tell:
      break;
  }
  args.emplace_back("gap", any(r.least_gap));
  std::optional<Message> mend = Message{Code{"stack.measure_the_parts"}, {}};
  if (judged.expanded_wanted) mend = Message{Code{"stack.finer_gauge"}, {{"u", any(*judged.expanded_wanted)}}};
  return {Code{"stack.cannot_tell"}, Severity::cannot_tell, std::move(args), {}, std::move(mend)};
}

Result<Computed> compute_seated(const Given& in) {
  const SeatReading reading{metres(in.si("measured")),
                            metres(in.si("measured-u")),
                            {metres(in.si("band-least")), metres(in.si("band-greatest"))},
                            metres(in.si("least-gap"))};
  const auto judged = judge_seat(reading);
  if (!judged) return tl::unexpected(judged.error());
  Computed out{.values = {state_name(judged->seat),
                          any(reading.measured - 0.5 * (reading.seated.least + reading.seated.greatest)),
                          any(reading.seated.least + reading.least_gap)}};
  out.findings.push_back(seat_finding(reading, *judged));
  out.answer = judged->seat == Seat::seated        ? Answer::in
               : judged->seat == Seat::cannot_tell ? Answer::cannot_tell
                                                   : Answer::out;
  return out;
}

FigureSpec seated_figure() {
  return {.name = "seated",
          .formula = "y + U < a contradiction; y − U > b not seated; y + U < a + g seated; else cannot tell",
          .inputs = {length_input("measured", "y"), length_or_nought("measured-u", "U"),
                     length_input("band-least", "a"), length_input("band-greatest", "b"), gap_input()},
          .outputs = {{"state", "", Kind::ratio, true},
                      {"longer", "y − (a + b)/2", Kind::length},
                      {"open-from", "a + g", Kind::length}},
          .sources = {"Seating"},
          .compute = compute_seated,
          .example = {{"measured=65.95 in", "measured-u=0.03 in", "band-least=65.886 in", "band-greatest=65.926 in",
                       "least-gap=0.06 in"},
                      "state=cannot_tell"}};
}

Result<std::vector<Joint>> joints_from(const Given& in, std::size_t parts) {
  std::vector<Joint> joints(parts - 1, Joint{in.si("chance-open"), Feeler::not_tried});
  const auto each = [&](std::string_view name, auto&& set) -> std::optional<Problem> {
    for (const double number : in.all_si(name)) {
      const auto joint = static_cast<std::int64_t>(number);
      if (static_cast<double>(joint) != number || joint < 1 || joint > static_cast<std::int64_t>(joints.size()))
        return Problem{Code{"stack.no_such_joint"},
                       std::string{name},
                       {},
                       {{"joint", any_ratio(number)}, {"joints", static_cast<std::int64_t>(joints.size())}},
                       std::nullopt};
      if (auto p = set(joints[static_cast<std::size_t>(joint - 1)], joint)) return p;
    }
    return std::nullopt;
  };
  const auto felt = [&](Feeler feeler, std::string_view name) {
    return each(name, [&](Joint& j, std::int64_t number) -> std::optional<Problem> {
      if (j.feeler != Feeler::not_tried)
        return Problem{Code{"stack.feeler_twice"}, std::string{name}, {}, {{"joint", number}}, std::nullopt};
      j.feeler = feeler;
      return std::nullopt;
    });
  };
  const double changed = in.si("chance-changed");
  auto problem = each("joint-changed", [&](Joint& j, std::int64_t) -> std::optional<Problem> {
    j.prior_open = changed;
    return std::nullopt;
  });
  if (!problem) problem = felt(Feeler::went_in, "feeler-in");
  if (!problem) problem = felt(Feeler::did_not, "feeler-not");
  if (problem) return tl::unexpected(*std::move(problem));
  return joints;
}

constexpr double kWorthSaying = 0.02;
constexpr std::size_t kMostSaid = 6;
constexpr double kAlike = 1e-9;  ///< Relative: joints of one chance differ by rounding only.

std::vector<Finding> joint_findings(const JointChances& chances, const std::vector<std::size_t>& order) {
  std::vector<Finding> out;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const double chance = chances.open[order[i]];
    if (i > 0 && chance < kWorthSaying) break;
    // Those as likely as the last one said are said too: left out, they would look closed.
    if (i >= kMostSaid && chance < (1 - kAlike) * chances.open[order[kMostSaid - 1]]) break;
    const auto joint = static_cast<std::int64_t>(order[i] + 1);
    out.push_back({Code{"stack.joint_chance"},
                   Severity::note,
                   {{"joint", joint}, {"chance", any_ratio(chance)}, {"gap", any(chances.gap[order[i]].mean)}},
                   {},
                   std::nullopt});
    if (i == 0) out.back().instruction = Message{Code{"stack.look_first"}, {{"joint", joint}}};
  }
  return out;
}

Result<std::optional<MeasuredStack>> measured_from(const Given& in) {
  if (in.has("measured") != in.has("measured-u"))
    return tl::unexpected(
        Problem{Code{"stack.u_missing"}, in.has("measured") ? "measured-u" : "measured", {}, {}, std::nullopt});
  if (!in.has("measured")) return std::optional<MeasuredStack>{};
  return MeasuredStack{metres(in.si("measured")), metres(in.si("measured-u") / 2)};
}

Computed chances_said(const JointChances& chances, const std::optional<MeasuredStack>& measured) {
  std::vector<std::size_t> order(chances.open.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, std::greater{}, [&](std::size_t j) { return chances.open[j]; });
  Computed out{.values = {any_count(static_cast<std::int64_t>(order[0] + 1)), any_ratio(chances.open[order[0]]),
                          any_ratio(chances.all_home), any(chances.gap[order[0]].mean),
                          any(chances.gap[order[0]].deviation)}};
  if (chances.explained) {
    out.findings = joint_findings(chances, order);
    return out;
  }
  Args args;
  if (measured) args.emplace_back("measured", any(measured->length));
  out.findings.push_back(
      {Code{"stack.no_story"}, Severity::out, std::move(args), {}, Message{Code{"stack.measure_again"}, {}}});
  return out;
}

Result<Computed> compute_open_joint(const Given& in) {
  const auto parts = parts_from(in);
  if (!parts) return tl::unexpected(parts.error());
  if (parts->size() < 2)
    return tl::unexpected(Problem{Code{"stack.joint_count"}, "length", {}, {{"count", 0}}, std::nullopt});
  const auto stack = StackLength::of(*parts);
  if (!stack) return tl::unexpected(stack.error());
  const auto joints = joints_from(in, parts->size());
  if (!joints) return tl::unexpected(joints.error());
  const auto measured = measured_from(in);
  if (!measured) return tl::unexpected(measured.error());
  const JointHabits habits{metres(in.si("step")), metres(in.si("least-gap")), in.si("partly"), in.si("feeler-misses"),
                           in.si("feeler-misleads")};
  const auto chances = joint_chances(*joints, habits, *stack, *measured);
  if (!chances) return tl::unexpected(chances.error());
  return chances_said(*chances, *measured);
}

FigureSpec open_joint_figure() {
  const auto number = [](std::string_view name) { return many(between(name, "j", Kind::count, 1, 2000)); };
  return {.name = "open-joint",
          .formula = "P(joint open | y, feelers) by Bayes over how many joints are open",
          .inputs = joined({part_inputs(),
                            {optional(length_input("measured", "y")), optional(length_input("measured-u", "U")),
                             assumed(length_input("step", "s"), any(millimetres(1.5)), kOwnRule), gap_input(),
                             number("joint-changed"), number("feeler-in"), number("feeler-not"),
                             chance_input("chance-open", "p", 0.01), chance_input("chance-changed", "p_c", 0.03),
                             chance_input("partly", "q", 0.5), chance_input("feeler-misses", "m", 0.1),
                             chance_input("feeler-misleads", "f", 0.001)}}),
          .outputs = {{"joint", "j", Kind::count},
                      {"chance", "P_j", Kind::ratio},
                      {"all-home", "P_0", Kind::ratio},
                      {"gap", "g_j", Kind::length},
                      {"gap-deviation", "s_g", Kind::length}},
          .sources = {"Bayes", "Seating"},
          .compute = compute_open_joint,
          .example = {{"length=100 mm", "length=50 mm", "length=100 mm", "above=0.1 mm", "below=0.1 mm",
                       "measured=250.9 mm", "measured-u=0.5 mm", "feeler-not=1"},
                      "joint=2"}};
}

std::string kind_of(SlipKind kind) {
  constexpr const char* kNames[] = {"missing", "doubled", "exchanged"};
  return kNames[static_cast<int>(kind)];
}
std::vector<std::int64_t> counted_from_one(const std::vector<int>& indices) {
  std::vector<std::int64_t> out;
  for (const int i : indices) out.push_back(i + 1);
  return out;
}

Finding slip_finding(const Slip& slip) {
  Args args{{"parts", counted_from_one(slip.parts)}, {"change", any(slip.change)}};
  switch (slip.kind) {
    case SlipKind::missing:
      return {Code{"stack.may_be_missing"}, Severity::note, std::move(args), {}, std::nullopt};
    case SlipKind::doubled:
      return {Code{"stack.may_be_doubled"}, Severity::note, std::move(args), {}, std::nullopt};
    case SlipKind::exchanged:
      args.emplace_back("instead", counted_from_one(slip.instead));
      break;
  }
  return {Code{"stack.may_be_exchanged"}, Severity::note, std::move(args), {}, std::nullopt};
}

Result<Computed> compute_slip(const Given& in) {
  std::vector<StackPart> parts;
  for (const double length_m : in.all_si("length")) parts.push_back({.nominal = metres(length_m)});
  const auto slips = explain(metres(in.si("difference")), metres(in.si("within")), parts);
  if (!slips) return tl::unexpected(slips.error());
  Computed out;
  if (slips->empty()) {
    out.values = {std::string{"none"}, any_count(0)};
    out.findings.push_back({Code{"stack.no_slip"}, Severity::note, {}, {}, std::nullopt});
    return out;
  }
  out.values = {kind_of(slips->front().kind), any_count(static_cast<std::int64_t>(slips->size()))};
  for (std::size_t i = 0; i < std::min(slips->size(), kMostSaid); ++i)
    out.findings.push_back(slip_finding((*slips)[i]));
  return out;
}

constexpr double kMostDrawn = 1e8;
constexpr double kErrorsToAgree = 4;  // Standard errors; by chance alone in 1 of 16,000.

Result<Computed> compute_drawn(const Given& in) {
  const auto parts = parts_from(in);
  if (!parts) return tl::unexpected(parts.error());
  const auto exact = StackLength::of(*parts);
  if (!exact) return tl::unexpected(exact.error());
  const auto drawn = SampledLength::of(*parts, {.seed = static_cast<std::uint64_t>(in.si("seed")),
                                                .first = 0,
                                                .count = static_cast<std::uint64_t>(in.si("samples"))});
  if (!drawn) return tl::unexpected(drawn.error());
  const Length least = drawn->quantile(0.025), greatest = drawn->quantile(0.975);
  const Length error = std::max(drawn->standard_error(0.025), drawn->standard_error(0.975));
  const Band band = exact->band();
  const Length off = std::max(std::max(least - band.least, band.least - least),
                              std::max(greatest - band.greatest, band.greatest - greatest));
  Computed out{
      .values = {any(least), any(greatest), any(error), any(off), any(drawn->mean()), any(drawn->deviation())}};
  const bool agree = off <= kErrorsToAgree * error + 1e-9 * (band.greatest - band.least);
  const Args args{{"off", any(off)}, {"error", any(error)}};
  out.findings.push_back({agree ? Code{"stack.drawn_agrees"} : Code{"stack.drawn_differs"},
                          agree ? Severity::note : Severity::cannot_tell,
                          args,
                          {},
                          agree ? std::nullopt : std::optional{Message{Code{"stack.draw_more"}, {}}}});
  return out;
}

FigureSpec drawn_figure() {
  return {.name = "stack-drawn",
          .formula = "many stacks drawn part by part; 2.5 % and 97.5 % of them beside the exact sum (stack-length)",
          .inputs =
              joined({part_inputs(),
                      {assumed(between("samples", "n", Kind::count, 1000, kMostDrawn), any_count(1'000'000), kOwnRule),
                       assumed(between("seed", "", Kind::count, 0, 1e15), any_count(1), kOwnRule)}}),
          .outputs = {{"band-least", "a", Kind::length},
                      {"band-greatest", "b", Kind::length},
                      {"standard-error", "s", Kind::length},
                      {"off", "largest difference from the exact", Kind::length},
                      {"mean", "mean", Kind::length},
                      {"deviation", "standard deviation", Kind::length}},
          .sources = {"Philox", "BoxMuller"},
          .compute = compute_drawn,
          .example = {{"length=100 mm", "length=50 mm", "length=30 mm", "length=50 mm", "above=0.1 mm", "below=0.1 mm"},
                      "band-least=229.776 mm"}};
}

FigureSpec slip_figure() {
  return {.name = "stack-slip",
          .formula = "missing −l, doubled +l, exchanged l' − l, within of the difference",
          .inputs = {repeated(length_input("length", "l")),
                     between("difference", "y − L", Kind::length, -kMostLength, kMostLength),
                     length_or_nought("within", "w")},
          .outputs = {{"slip", "", Kind::ratio, true}, {"stories", "n", Kind::count}},
          .sources = {"common practice"},
          .compute = compute_slip,
          .example = {{"length=100 mm", "length=50 mm", "length=30 mm", "difference=-49.8 mm", "within=0.5 mm"},
                      "slip=missing"}};
}

}  // namespace

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kFigures{length_figure(), seated_figure(), open_joint_figure(), slip_figure(),
                                                drawn_figure()};
  return kFigures;
}

}  // namespace flatwise::stack
