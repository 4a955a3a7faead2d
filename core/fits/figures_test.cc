#include "core/fits/figures.h"

#include <gtest/gtest.h>
#include <algorithm>
#include <cmath>
#include <string>

#include "core/units/parse.h"
#include "tests/support/figures.h"

namespace flatwise::fits {
namespace {

const FigureSpec& spec_of(std::string_view name) { return figure_named(figures(), name); }

// The example's inputs with one of them changed: "hub-yield=20 MPa".
Results<Working> example_with(std::string_view figure, const std::vector<std::string_view>& changes) {
  return flatwise::example_with(spec_of(figure), changes);
}
Results<Working> example_without(std::string_view figure, std::string_view name) {
  const auto& spec = spec_of(figure);
  auto inputs = inputs_of(spec, spec.example.inputs);
  std::erase_if(inputs, [&](const Input& i) { return i.name == name; });
  return evaluate(spec, inputs);
}

// What the finding of a code says to do; empty when there is none.
std::string advice(const Results<Working>& working, std::string_view code) {
  const auto it = std::ranges::find_if(working->findings, [&](const Finding& f) { return f.code.id() == code; });
  return it == working->findings.end() || !it->instruction ? "" : std::string{it->instruction->code.id()};
}
std::string problem_of(const Results<Working>& working) {
  return working ? "none" : std::string{working.error().at(0).code.id()} + " " + working.error().at(0).field;
}

// Half a unit in the last digit of "5.608 MPa", in SI.
double half_digit(std::string text, Kind kind) {
  const auto end = std::min(text.find_first_not_of("0123456789."), text.size());
  const auto point = text.find('.');
  const auto places = point == std::string::npos ? 0 : end - point - 1;
  const auto one = parse_quantity("1" + text.substr(end), kind, "unit").value().value.si;
  const auto nought = parse_quantity("0" + text.substr(end), kind, "unit").value().value.si;
  return 0.5 * std::pow(10.0, -static_cast<double>(places)) * (one - nought);
}

// Source: each example's own numbers, by hand in docs/worked/W1 to W5 and from the published tables.
// Tolerance: half a unit in the last digit written.
TEST(FitFigures, ExamplesGiveWhatTheySay) {
  EXPECT_EQ(figures().size(), 17U);
  for (const FigureSpec& spec : figures()) {
    EXPECT_FALSE(spec.sources.empty()) << spec.name;
    const auto working = evaluate(spec, inputs_of(spec, spec.example.inputs));
    ASSERT_TRUE(working) << spec.name << ": " << problem_of(working);
    const std::string name{spec.example.expected.substr(0, spec.example.expected.find('='))};
    const std::string value{spec.example.expected.substr(spec.example.expected.find('=') + 1)};
    EXPECT_EQ(name, spec.outputs.front().name) << spec.name;
    const Kind kind = spec.outputs.front().kind;
    const double expected = parse_quantity(value, kind, name).value().value.si;
    EXPECT_NEAR(working->si(name), expected, half_digit(value, kind) * (1 + 1e-6)) << spec.name;
    EXPECT_EQ(working->outputs.size(), spec.outputs.size());
  }
}

TEST(FitLimits, RefusesACodeInTheTradesWords) {
  EXPECT_EQ(problem_of(example_with("fit-limits", {"class=Q7"})), "fits.letter_unknown class");
  EXPECT_EQ(problem_of(example_with("fit-limits", {"nominal=501 mm"})), "figure.input_range nominal");
}

TEST(RingOutside, AssumesTheNormalClassAndSaysSo) {
  const auto working = evaluate(spec_of("ring-outside"), {given("outside", any(millimetres(90)))});
  EXPECT_EQ(working->input("tolerance")->origin.kind, OriginKind::assumed);
}

// Source: by hand: 119.985 - 119.974 = 11 um; 120 - 119.966 = 34 um.
// Tolerance: 1e-13 m, the double's digits at 0.12 m.
TEST(InterferenceFigure, WantsTheUncertaintyOfTheBoreOrTakesItFromTheReading) {
  EXPECT_EQ(problem_of(example_without("interference", "bore-uncertainty")),
            "fits.bore_uncertainty_missing bore-uncertainty");
  auto inputs = inputs_of(spec_of("interference"), {"ring-least=119.985 mm", "ring-greatest=120 mm"});
  Input bore = given("bore", any(millimetres(119.970)));
  bore.u = Uncertainty{.standard_si = 2e-6, .degrees_of_freedom = std::nullopt, .expanded_si = 4e-6};
  inputs.push_back(bore);
  const auto working = evaluate(spec_of("interference"), inputs);
  ASSERT_TRUE(working);
  EXPECT_NEAR(working->si("least"), 11e-6, 1e-13);
  EXPECT_NEAR(working->si("greatest"), 34e-6, 1e-13);
  EXPECT_TRUE(working->findings.empty());
}

TEST(InterferenceFigure, SaysLooseAndMayBeLoose) {
  EXPECT_TRUE(says(example_with("interference", {"bore=120.010 mm"}), "fits.ring_loose"));
  EXPECT_TRUE(says(example_with("interference", {"bore=119.985 mm"}), "fits.ring_may_be_loose"));
}

// Source: (4 * 120 + 55) / 5 = 107 mm, the ring of docs/worked/W1-ring-in-hub.md: 5.608174 MPa.
// Tolerance: 1e-6 relative, the digits written.
TEST(PressPressure, EstimatesTheRingAndSaysSoAndFlagsYield) {
  const auto& spec = spec_of("press-pressure");
  auto inputs = inputs_of(spec, spec.example.inputs);
  std::erase_if(inputs, [](const Input& i) { return i.name == "ring-inside"; });
  EXPECT_EQ(problem_of(evaluate(spec, inputs)), "fits.ring_inside_missing ring-inside");
  inputs.push_back(given("bearing-bore", any(millimetres(55))));
  const auto estimated = evaluate(spec, inputs);
  EXPECT_TRUE(says(estimated, "fits.ring_inside_estimated"));
  EXPECT_NEAR(estimated->si("pressure"), 5.608174e6, 5.7);
  EXPECT_TRUE(says(example_with("press-pressure", {"hub-yield=20.18 MPa"}), "fits.hub_yields"));
  EXPECT_FALSE(says(example_with("press-pressure", {"hub-yield=20.20 MPa"}), "fits.hub_yields"));
  EXPECT_TRUE(says(example_with("press-force", {"hub-yield=20 MPa"}), "fits.hub_yields"));
  EXPECT_EQ(advice(example_with("press-readback", {"hub-yield=10 MPa"}), "fits.readback_yields"),
            "fits.use_hub_yielding");
  EXPECT_EQ(problem_of(example_with("press-pressure", {"ring-inside=120 mm"})), "fits.not_inside ring-inside");
}

TEST(PressForceFigure, SaysWhatItsBandHides) {
  EXPECT_EQ(advice(example_with("press-force", {}), "fits.band_hides"), "fits.record_presses");
  const std::vector<std::string_view> shop{"friction-least=0.10", "friction-greatest=0.12", "friction-from=shop"};
  EXPECT_FALSE(says(example_with("press-force", shop), "fits.band_hides"));
  auto from_nought = shop;
  from_nought.push_back("interference-least=-5 µm");
  EXPECT_EQ(advice(example_with("press-force", from_nought), "fits.band_hides"), "fits.measure_ring");
  EXPECT_TRUE(says(example_with("press-force", {"interference-least=-9 µm", "interference-greatest=0 µm"}),
                   "fits.nothing_to_press"));
  EXPECT_EQ(problem_of(example_with("press-force", {"interference-least=60 µm"})),
            "fits.range_reversed interference-least");
}

// Source: 2000 lbf = 8896.443230521 N and 9806.65 N by definition.
// Tolerance: 1e-12 relative.
TEST(PressForceFigure, GivesBothTons) {
  const auto working = example_with("press-force", {});
  const double force = working->si("force-greatest");
  EXPECT_NEAR(working->si("tonnage") * 8896.443230521, force, 1e-12 * force);
  EXPECT_NEAR(working->si("tonnes-force") * 9806.65, force, 1e-12 * force);
}

TEST(ShopFrictionFigure, RefusesToNarrowUnderEightAndSaysHowManyAreMissing) {
  const auto& spec = spec_of("shop-friction");
  auto inputs = inputs_of(spec, spec.example.inputs);
  EXPECT_TRUE(says(evaluate(spec, inputs), "fits.friction_narrowed"));
  inputs.erase(inputs.begin());
  const auto seven = evaluate(spec, inputs);
  ASSERT_TRUE(says(seven, "fits.too_few_presses"));
  EXPECT_EQ(seven->si("missing"), 1.0);
  EXPECT_EQ(seven->si("friction-least"), 0.08);
  EXPECT_EQ(std::get<std::string>(seven->output("friction-from")->value), "books");
  std::erase_if(inputs, [](const Input& i) { return i.name == "force"; });
  EXPECT_EQ(problem_of(evaluate(spec, inputs)), "fits.presses_uneven interference");
  std::erase_if(inputs, [](const Input& i) {
    return i.name != "roughness-loss" && i.name != "hub-modulus" && i.name != "hub-poisson";
  });
  EXPECT_EQ(evaluate(spec, inputs)->si("missing"), 8.0);
}

TEST(PressReadback, AnswersAndSaysWhereToLook) {
  EXPECT_EQ(example_with("press-readback", {})->answer, Answer::in);
  const auto low = example_with("press-readback", {"force=500 N"});
  EXPECT_EQ(low->answer, Answer::out);
  EXPECT_TRUE(says(low, "fits.force_low"));
  EXPECT_TRUE(says(example_with("press-readback", {"force=12 kN"}), "fits.force_high"));
  EXPECT_EQ(example_with("press-readback", {"force=1 kN"})->answer, Answer::cannot_tell);
  EXPECT_TRUE(says(example_with("press-readback", {"force=9.4 kN"}), "fits.force_near_high"));
  EXPECT_TRUE(says(example_with("press-readback", {"force-uncertainty=8 kN"}), "fits.force_near_both"));
  const auto from_nought = example_with("press-readback", {"force=0 N", "band-least=0 N", "friction-from=shop"});
  EXPECT_EQ(from_nought->answer, Answer::in);
  EXPECT_TRUE(says(from_nought, "fits.band_hides"));
}

TEST(HeatingFigure, NeverOverTheBearingsLimitWithoutSayingSo) {
  EXPECT_FALSE(says(example_with("heating", {}), "fits.heat_too_hot"));
  EXPECT_TRUE(says(example_with("heating", {}), "fits.heat_caution"));
  const auto hot = example_with("heating", {"interference=90 µm"});
  ASSERT_TRUE(says(hot, "fits.heat_too_hot"));
  EXPECT_EQ(hot->findings.front().code.id(), "fits.heat_caution");  // Before the step, not after it.
  EXPECT_EQ(advice(hot, "fits.heat_too_hot"), "fits.cool_bearing");
  const auto far = example_with("heating", {"interference=200 µm"});
  EXPECT_EQ(advice(far, "fits.heat_too_hot"), "fits.press_instead");
  const auto seat = example_with("heating", {"interference=90 µm", "heated=bearing"});
  EXPECT_EQ(advice(seat, "fits.heat_too_hot"), "fits.cool_seat");
}

TEST(RingCreepFigure, AnswersWithTheRangeOfFriction) {
  EXPECT_EQ(example_with("ring-creep", {})->answer, Answer::in);
  EXPECT_TRUE(says(example_with("ring-creep", {"couple=300 N·m"}), "fits.ring_may_creep"));
  EXPECT_TRUE(says(example_with("ring-creep", {"couple=600 N·m"}), "fits.ring_creeps"));
}

TEST(HubYielding, SaysWhatStaysAndWhatCracks) {
  EXPECT_TRUE(says(example_with("hub-yielding", {}), "fits.hub_yielded_partly"));
  EXPECT_TRUE(says(example_with("hub-yielding", {"interference=500 µm"}), "fits.hub_yielded_through"));
  EXPECT_FALSE(says(example_with("hub-yielding", {"interference=50 µm"}), "fits.hub_yielded_partly"));
  const std::vector<std::string_view> iron{"hub-modulus=110 GPa", "hub-yield=195 MPa", "hub-fails=cracks"};
  auto much = iron;
  much.push_back("interference=700 µm");
  EXPECT_TRUE(says(example_with("hub-yielding", much), "fits.hub_cracks"));
  much.back() = "interference=400 µm";
  EXPECT_TRUE(says(example_with("hub-yielding", much), "fits.hub_near_crack"));
  much.back() = "interference=100 µm";
  EXPECT_TRUE(example_with("hub-yielding", much)->findings.empty());
}

TEST(RingOnHalf, SaysWhenTheHalfWillNotSlide) {
  EXPECT_TRUE(example_with("ring-on-half", {})->findings.empty());
  EXPECT_TRUE(says(example_with("ring-on-half", {"shaft-clearance=5 µm"}), "fits.half_grips_shaft"));
  EXPECT_EQ(problem_of(example_with("ring-on-half", {"seat=80 mm"})), "fits.not_inside seat");
}

TEST(CreepLoadFigure, HasThreeAnswers) {
  EXPECT_EQ(example_with("creep-load", {})->answer, Answer::in);
  EXPECT_TRUE(says(example_with("creep-load", {"interference-least=5 µm"}), "fits.load_may_roll_ring"));
  const auto loose = example_with("creep-load", {"interference-least=0 µm", "interference-greatest=10 µm"});
  EXPECT_TRUE(says(loose, "fits.load_rolls_ring"));
  EXPECT_EQ(problem_of(example_with("creep-load", {"interference-least=40 µm"})),
            "fits.range_reversed interference-least");
}

TEST(PressCurveRead, SaysWhatItSawAndRefusesHalfAPoint) {
  const auto read = example_with("press-curve-read", {});
  EXPECT_TRUE(says(read, "fits.curve_inside"));
  EXPECT_GT(read->output("interference")->u->expanded_si, 10e-6);
  EXPECT_TRUE(
      says(example_with("press-curve-read", {"interference-least=45 µm", "friction-least=0.12"}), "fits.curve_below"));
  EXPECT_TRUE(says(example_with("press-curve-read", {"width=40 mm"}), "fits.curve_not_home"));
  auto inputs = inputs_of(spec_of("press-curve-read"), spec_of("press-curve-read").example.inputs);
  inputs.erase(inputs.begin());
  EXPECT_EQ(problem_of(evaluate(spec_of("press-curve-read"), inputs)), "fits.curve_uneven force");
}

}  // namespace
}  // namespace flatwise::fits
