#include "core/timing/figures.h"

#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "core/shaft/shaft.h"
#include "core/timing/map.h"
#include "core/timing/pairing.h"
#include "core/units/rounding.h"
#include "core/working/input_specs.h"

namespace flatwise::timing {
namespace {

constexpr double kMostFlats = 24, kMostRotors = 240;
constexpr std::string_view kPatterns[] = {"facing", "step", "listed"};
constexpr std::string_view kEnds[] = {"A", "B"};

InputSpec flats_input() { return between("flats", "n", Kind::count, 4, kMostFlats); }
InputSpec flat_input(std::string_view name, std::string_view symbol) {
  return between(name, symbol, Kind::count, 1, kMostFlats);
}
OutputSpec flat_output(std::string_view name, std::string_view symbol) {
  return {.name = name, .symbol = symbol, .kind = Kind::count};
}

/// The specs' ranges keep every count small enough for an int.
std::optional<Problem> not_whole(const Given& in) {
  for (const Input& input : in.inputs()) {
    const auto* q = std::get_if<AnyQuantity>(&input.value);
    if (q != nullptr && q->kind == Kind::count && q->si != std::floor(q->si))
      return Problem{Code{"timing.not_whole"}, input.name, input.typed, {{"value", *q}}, std::nullopt};
  }
  return std::nullopt;
}

int whole(const Given& in, std::string_view name) { return static_cast<int>(in.si(name)); }

// --- pairing-error ---------------------------------------------------------------------------------------------------

Result<Computed> compute_pairing(const Given& in) {
  if (auto problem = not_whole(in)) return tl::unexpected(std::move(*problem));
  const int flats = whole(in, "flats");
  const auto error = pairing_error({.flat_a = whole(in, "flat-a"), .flat_b = whole(in, "flat-b")}, flats);
  if (!error) return tl::unexpected(error.error());
  Computed out{.values = {any_count(*error), any(radians(2 * std::numbers::pi * *error / flats))}};
  out.answer = *error == 0 ? Answer::in : Answer::out;
  return out;
}

FigureSpec pairing_spec() {
  return {.name = "pairing-error",
          .formula = "k = f_B − f_A − n/2, brought to −n/2 + 1 … n/2; δ = 2π k/n",
          .inputs = {flat_input("flat-a", "f_A"), flat_input("flat-b", "f_B"), flats_input()},
          .outputs = {flat_output("flats-out", "k"), {.name = "angle", .symbol = "δ", .kind = Kind::angle}},
          .sources = {"common practice"},
          .compute = compute_pairing,
          .example = {.inputs = {"flat-a=4", "flat-b=2", "flats=6"}, .expected = "flats-out=1"}};
}

// --- kink ------------------------------------------------------------------------------------------------------------

Result<Computed> compute_kink(const Given& in) {
  if (auto problem = not_whole(in)) return tl::unexpected(std::move(*problem));
  const auto bent = kink({.lean = radians(in.si("lean")),
                          .flats_out = whole(in, "flats-out"),
                          .flats = whole(in, "flats"),
                          .permissible = radians(in.si("misalignment"))});
  if (!bent) return tl::unexpected(bent.error());
  Computed out{.values = {any(bent->angle), any_ratio(bent->times)}};
  out.answer = bent->times <= 1 ? Answer::in : Answer::out;
  if (bent->times > 1)
    out.findings.push_back({Code{"timing.kink_locks"},
                            Severity::out,
                            {{"kink", any(bent->angle)}, {"times", any_ratio(to_two_figures(bent->times))}},
                            {},
                            std::nullopt});
  return out;
}

FigureSpec kink_spec() {
  return {.name = "kink",
          .formula = "sin(γ/2) = sin α · |sin(δ/2)|; δ = 2π k/n; times = γ/γ_max",
          .inputs = {from_nought("lean", "α", Kind::angle, std::numbers::pi / 6),
                     between("flats-out", "k", Kind::count, -kMostFlats, kMostFlats), flats_input(),
                     assumed(above_nought("misalignment", "γ_max", Kind::angle, std::numbers::pi / 6),
                             any(arc_minutes(10)), "Misalignment")},
          .outputs = {{.name = "kink", .symbol = "γ", .kind = Kind::angle},
                      {.name = "ratio", .symbol = "times", .kind = Kind::ratio}},
          .sources = {"Spherical-cosines", "Misalignment"},
          .compute = compute_kink,
          .example = {.inputs = {"lean=5°", "flats-out=1", "flats=6"}, .expected = "kink=5.0°"}};
}

// --- timing-map ------------------------------------------------------------------------------------------------------

Problem missing(const char* field, std::size_t given, int wanted) {
  return {Code{"timing.pattern_needs"}, field, std::to_string(given), {{"wanted", wanted}}, std::nullopt};
}

Result<Pattern> pattern_given(const Given& in) {
  Pattern pattern;
  const int rotors = whole(in, "rotors");
  const std::string& rule = in.text("pattern");
  if (rule == "step") {
    pattern.rule = Pattern::Rule::step;
    if (!in.has("step")) return tl::unexpected(missing("step", 0, 1));
    pattern.step_flats = whole(in, "step");
  }
  if (rule != "listed") return pattern;
  pattern.rule = Pattern::Rule::listed;
  if (in.has("listed"))
    for (const double flat : in.all_si("listed")) pattern.flats.push_back(static_cast<int>(flat));
  if (pattern.flats.size() != static_cast<std::size_t>(rotors))
    return tl::unexpected(missing("listed", pattern.flats.size(), rotors));
  return pattern;
}

std::optional<Problem> over(const Given& in, std::string_view name, int greatest) {
  for (const double v : in.has(name) ? in.all_si(name) : std::vector<double>{}) {
    if (v > greatest)
      return Problem{Code{"timing.number_range"},
                     std::string{name},
                     std::to_string(static_cast<int>(v)),
                     {{"least", 1}, {"greatest", greatest}},
                     std::nullopt};
  }
  return std::nullopt;
}

std::optional<Problem> bad_map_input(const Given& in) {
  if (auto problem = not_whole(in)) return problem;
  const int flats = whole(in, "flats");
  if (flats % 2 != 0)
    return Problem{Code{"timing.odd_flats"}, "flats", std::to_string(flats), {{"flats", flats}}, std::nullopt};
  if (auto problem = over(in, "rotor", whole(in, "rotors"))) return problem;
  if (auto problem = over(in, "step", flats - 1)) return problem;
  if (auto problem = over(in, "listed", flats)) return problem;
  return over(in, "first-flat", flats);
}

Result<Computed> compute_map(const Given& in) {
  if (auto problem = bad_map_input(in)) return tl::unexpected(std::move(*problem));
  const auto pattern = pattern_given(in);
  if (!pattern) return tl::unexpected(pattern.error());
  const Reference reference{.first_flat = whole(in, "first-flat"), .as_listed = true};
  const int flats = whole(in, "flats"), rotor = whole(in, "rotor");
  return Computed{.values = {any_count(wanted_flat(*pattern, flats, reference, rotor, Half::a)),
                             any_count(wanted_flat(*pattern, flats, reference, rotor, Half::b))}};
}

FigureSpec map_spec() {
  return {.name = "timing-map",
          .formula = "f_A = f_1 + offset of the pattern; facing: n/2 a rotor, step: k a rotor; f_B = f_A + n/2",
          .inputs = {between("rotors", "N", Kind::count, 1, kMostRotors), flats_input(),
                     one_of("pattern", "", kPatterns), optional(between("step", "k", Kind::count, 1, kMostFlats - 1)),
                     optional(repeated(flat_input("listed", "f_i"))),
                     assumed(flat_input("first-flat", "f_1"), any_count(1), kCommonPractice),
                     between("rotor", "i", Kind::count, 1, kMostRotors)},
          .outputs = {flat_output("flat-a", "f_A"), flat_output("flat-b", "f_B")},
          .sources = {"common practice"},
          .compute = compute_map,
          .example = {.inputs = {"rotors=3", "flats=6", "pattern=step", "step=2", "rotor=2"}, .expected = "flat-a=3"}};
}

// --- mark-seen-from --------------------------------------------------------------------------------------------------

Result<Computed> compute_seen(const Given& in) {
  if (auto problem = not_whole(in)) return tl::unexpected(std::move(*problem));
  const int flats = whole(in, "flats");
  if (auto problem = over(in, "flat", flats)) return tl::unexpected(std::move(*problem));
  const End end = in.text("end") == "A" ? End::a : End::b;
  return Computed{.values = {any_count(place_seen_from(end, whole(in, "flat"), flats))}};
}

FigureSpec seen_spec() {
  InputSpec flats = flats_input();
  flats.least_si = 3;
  return {.name = "mark-seen-from",
          .formula = "from A: p = f; from B: p = 2 − f, brought to 1 … n",
          .inputs = {flat_input("flat", "f"), std::move(flats), one_of("end", "", kEnds)},
          .outputs = {flat_output("place", "p")},
          .sources = {"common practice"},
          .compute = compute_seen,
          .example = {.inputs = {"flat=2", "flats=6", "end=B"}, .expected = "place=6"}};
}

}  // namespace

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kAll = {pairing_spec(), kink_spec(), map_spec(), seen_spec()};
  return kAll;
}

}  // namespace flatwise::timing
