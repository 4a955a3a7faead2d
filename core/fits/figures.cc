#include "core/fits/figures.h"

#include <algorithm>
#include <utility>

#include "core/fits/figures_parts.h"

namespace flatwise::fits {

std::vector<InputSpec> joint_inputs() {
  return {above_nought("joint-diameter", "d", Kind::length, 2),
          optional(from_nought("ring-inside", "d_i", Kind::length, 2)),
          optional(above_nought("bearing-bore", "d_b", Kind::length, 2)),
          above_nought("hub-outside", "D", Kind::length, 10),
          assumed(above_nought("ring-modulus", "E_i", Kind::pressure, 1e12), any(gigapascals(207)), "Shigley9"),
          assumed(from_nought("ring-poisson", "ν_i", Kind::ratio, 0.5), any_ratio(0.3), "Shigley9"),
          above_nought("hub-modulus", "E_o", Kind::pressure, 1e12),
          assumed(from_nought("hub-poisson", "ν_o", Kind::ratio, 0.5), any_ratio(0.3), kCommonPractice),
          above_nought("hub-yield", "Y", Kind::pressure, 1e10)};
}

std::vector<InputSpec> friction_inputs() {
  return {
      assumed(above_nought("friction-least", "µ1", Kind::ratio, 1), any_ratio(FrictionRange{}.least), "FrictionBooks"),
      assumed(above_nought("friction-greatest", "µ2", Kind::ratio, 1), any_ratio(FrictionRange{}.greatest),
              "FrictionBooks"),
      assumed(one_of("friction-from", "from", kFrictionFrom), std::string{"books"}, kCommonPractice)};
}

Elastic ring_from(const Given& in) {
  return {.youngs_modulus = pascals(in.si("ring-modulus")), .poisson = in.si("ring-poisson")};
}
Elastic hub_from(const Given& in) {
  return {.youngs_modulus = pascals(in.si("hub-modulus")), .poisson = in.si("hub-poisson")};
}
FrictionRange friction_from(const Given& in) {
  return {.least = in.si("friction-least"), .greatest = in.si("friction-greatest")};
}

Result<PressedJoint> joint_from(const Given& in, std::vector<Finding>& findings) {
  PressedJoint joint{.diameter = length_of(in, "joint-diameter"),
                     .ring_inside = Length{},
                     .hub_outside = length_of(in, "hub-outside"),
                     .ring = ring_from(in),
                     .hub = hub_from(in)};
  if (in.has("ring-inside")) {
    joint.ring_inside = length_of(in, "ring-inside");
  } else if (in.has("bearing-bore")) {
    const auto estimate = estimated_ring_inside(length_of(in, "bearing-bore"), joint.diameter);
    if (!estimate) return tl::unexpected(estimate.error());
    joint.ring_inside = *estimate;
    findings.push_back(
        {Code{"fits.ring_inside_estimated"}, Severity::note, {{"inside", any(*estimate)}}, {}, std::nullopt});
  } else {
    return tl::unexpected(Problem{Code{"fits.ring_inside_missing"}, "ring-inside", {}, {}, std::nullopt});
  }
  if (auto bad = check_joint(joint)) return tl::unexpected(*bad);
  return joint;
}

Finding band_hides(bool from_nought) {
  const Message help = from_nought ? Message{Code{"fits.measure_ring"}, {}}
                                   : Message{Code{"fits.record_presses"}, {{"presses", kPressesToNarrow}}};
  return {Code{"fits.band_hides"}, Severity::note, {{"from_nought", from_nought ? 1 : 2}}, {}, help};
}

tl::unexpected<Problem> as_input(Problem problem) {
  std::ranges::replace(problem.field, '_', '-');
  constexpr std::pair<std::string_view, std::string_view> kOther[] = {
      {"diameter", "joint-diameter"}, {"bore", "bearing-bore"},    {"interference", "interference-least"},
      {"friction", "friction-least"}, {"band", "band-least"},      {"pressure", "pressure-least"},
      {"shaft", "ring-least"},        {"hole", "bore-uncertainty"}};
  for (const auto& [kernel, figure] : kOther)
    if (problem.field == kernel) problem.field = figure;
  return tl::unexpected(std::move(problem));
}

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> all = [] {
    auto list = table_figures();
    for (auto* more : {&press_figures, &after_figures, &depth_figures, &curve_figures})
      for (auto& spec : more()) list.push_back(std::move(spec));
    return list;
  }();
  return all;
}

}  // namespace flatwise::fits
