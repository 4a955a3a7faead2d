#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/dynamics/figures.h"
#include "core/dynamics/figures_parts.h"
#include "core/dynamics/resultants.h"
#include "core/dynamics/tine_gap.h"

namespace flatwise::dynamics {
namespace {

Problem uneven(std::string_view name, std::size_t count, std::size_t positions) {
  return {Code{"dynamics.values_uneven"},
          std::string{name},
          {},
          {{"count", static_cast<std::int64_t>(count)}, {"positions", static_cast<std::int64_t>(positions)}},
          std::nullopt};
}

/// One value a position, or one for all; nought where it was left out.
Result<std::vector<double>> one_a_position(const Given& in, std::string_view name, std::size_t positions) {
  if (auto values = one_each(in, name, positions, 0.0)) return *std::move(values);
  return tl::unexpected(uneven(name, in.all_si(name).size(), positions));
}

Result<std::vector<double>> azimuths_from(const Given& in, std::size_t positions) {
  const bool by_flat = in.has("flat");
  if (by_flat == in.has("azimuth") || by_flat != in.has("flats"))
    return tl::unexpected(Problem{Code{"dynamics.flat_or_azimuth"}, by_flat ? "flats" : "flat", {}, {}, std::nullopt});
  std::vector<double> values = in.all_si(by_flat ? "flat" : "azimuth");
  if (values.size() != positions) return tl::unexpected(uneven(by_flat ? "flat" : "azimuth", values.size(), positions));
  if (!by_flat) return values;
  const double flats = in.si("flats");
  if (flats != std::floor(flats))
    return tl::unexpected(
        Problem{Code{"dynamics.no_such_flat"}, "flats", {}, {{"flat", any_ratio(flats)}, {"flats", 24}}, std::nullopt});
  for (double& value : values) {
    if (value != std::floor(value) || value > flats)
      return tl::unexpected(Problem{Code{"dynamics.no_such_flat"},
                                    "flat",
                                    {},
                                    {{"flat", any_ratio(value)}, {"flats", static_cast<std::int64_t>(flats)}},
                                    std::nullopt});
    value = azimuth_of_flat(static_cast<int>(value), static_cast<int>(flats)).radians();
  }
  return values;
}

Computed resultants_said(const Resultants& r) {
  Computed out{.values = {any(r.couple.size), any(r.couple.azimuth), any(r.force.size), any(r.force.azimuth),
                          any(r.at_a.size), any(r.at_b.size), any(r.larger), any(r.root_sum_of_squares),
                          any(r.floor_rms), any(r.floor_worst)}};
  const bool leaves = r.larger > r.floor_worst;
  out.findings.push_back({leaves ? Code{"dynamics.leaves"} : Code{"dynamics.quiet"},
                          Severity::note,
                          {{"larger", any(r.larger)}, {"couple", any(r.couple.size)}, {"floor", any(r.floor_worst)}},
                          {},
                          std::nullopt});
  return out;
}

Result<Computed> compute_resultant(const Given& in) {
  const auto positions = in.all_si("position");
  const auto azimuths = azimuths_from(in, positions.size());
  const auto couples = one_a_position(in, "couple", positions.size());
  const auto forces = one_a_position(in, "force", positions.size());
  for (const auto* values : {&azimuths, &couples, &forces})
    if (!*values) return tl::unexpected(values->error());
  std::vector<RotatingSet> sets;
  for (std::size_t i = 0; i < positions.size(); ++i)
    sets.push_back(
        {metres(positions[i]), radians((*azimuths)[i]), Force::from_si((*forces)[i]), Torque::from_si((*couples)[i])});
  const Planes planes{metres(in.si("plane-a")), metres(in.si("plane-b"))};
  if (!(std::abs((planes.b - planes.a).si()) >= 1e-3))
    return tl::unexpected(Problem{
        Code{"dynamics.planes_together"}, "plane-b", {}, {{"a", any(planes.a)}, {"b", any(planes.b)}}, std::nullopt});
  return resultants_said(resultants(sets, planes, {in.si("error-share"), radians(in.si("error-azimuth"))}));
}

std::vector<InputSpec> resultant_inputs() {
  return {repeated(between("position", "z_i", Kind::length, -kMostLength, kMostLength)),
          optional(between("flats", "n", Kind::count, 3, 24)),
          optional(repeated(between("flat", "f_i", Kind::count, 1, 24))),
          optional(repeated(between("azimuth", "φ_i", Kind::angle, -kMostTurn, kMostTurn))),
          repeated(between("couple", "C_i", Kind::torque, -kMostCouple, kMostCouple)),
          optional(repeated(between("force", "F_i", Kind::force, -kMostForce, kMostForce))),
          between("plane-a", "z_a", Kind::length, -kMostLength, kMostLength),
          between("plane-b", "z_b", Kind::length, -kMostLength, kMostLength),
          assumed(from_nought("error-share", "e", Kind::ratio, 1), any_ratio(StatedErrors{}.share), kOwnRule),
          assumed(from_nought("error-azimuth", "e_φ", Kind::angle, 1), any(StatedErrors{}.azimuth), kOwnRule)};
}

FigureSpec make_resultant() {
  return {.name = "couple-resultant",
          .formula =
              "F = Σ F_i e^jφ_i, M = Σ (C_i + F_i (z_i − z_0)) e^jφ_i about the middle of the planes; "
              "F_b = Σ (C_i + F_i (z_i − z_a)) e^jφ_i/(z_b − z_a), F_a = F − F_b",
          .inputs = resultant_inputs(),
          .outputs = {{"left-couple", "|M|", Kind::torque},
                      {"couple-azimuth", "φ_M", Kind::angle},
                      {"left-force", "|F|", Kind::force},
                      {"force-azimuth", "φ_F", Kind::angle},
                      {"at-a", "|F_a|", Kind::force},
                      {"at-b", "|F_b|", Kind::force},
                      {"larger", "max (|F_a|, |F_b|)", Kind::force},
                      {"root-sum-of-squares", "√(|F_a|² + |F_b|²)", Kind::force},
                      {"floor-rms", "σ", Kind::force},
                      {"floor-worst", "w", Kind::force}},
          .sources = {"Euler", "Balance-planes"},
          .compute = compute_resultant,
          .example = {{"position=0.1 m", "position=0.3 m", "position=0.5 m", "flats=6", "flat=2", "flat=5", "flat=2",
                       "couple=10 N·m", "plane-a=0 m", "plane-b=0.6 m"},
                      "left-couple=10 N·m"}};
}

/// A field of a rotor: its own, or the one all rotors share.
Origin rotor_origin(const Shaft& shaft, int number, const std::string& field) {
  const std::string own = "rotors[" + std::to_string(number - 1) + "]." + field;
  return shaft.spec().origins.contains(own) ? shaft.origin(own) : shaft.origin("rotor." + field);
}

/// As rotating-couple wants it: the working behind one rotor's couple.
Result<WorkingPtr> couple_working(const Shaft& shaft, int number) {
  const Rotor& rotor = shaft.rotor(number);
  const ShaftSpec& spec = shaft.spec();
  const bool rolling = spinning_of(shaft) == Spinning::rolling;
  std::vector<Input> in{given("speed", any(spec.speed), shaft.origin("shaft.speed")),
                        given("lean", any(rotor.lean), rotor_origin(shaft, number, "lean")),
                        given("across", any(rotor.across), rotor_origin(shaft, number, "inertia.across")),
                        given("along", any(rotor.along), rotor_origin(shaft, number, "inertia.along"))};
  if (rolling) {
    in.push_back(given("spinning", "rolling"));
    in.push_back(given("travel", any(*spec.travel), shaft.origin("shaft.travel")));
    in.push_back(given("rolling-radius", any(*spec.rolling_radius), shaft.origin("shaft.rolling_radius")));
  } else {
    in.push_back(given("spinning", "held", {OriginKind::assumed, "no travel and rolling radius given"}));
  }
  Results<Working> working = evaluate(rotating_couple_figure(), std::move(in));
  if (!working) return tl::unexpected(working.error().front());
  return std::make_shared<const Working>(*std::move(working));
}

bool same_couple(const Rotor& a, const Rotor& b) {
  return a.lean == b.lean && a.across == b.across && a.along == b.along;
}

bool has_forces(std::span<const RotatingSet> sets) {
  return std::ranges::any_of(sets, [](const RotatingSet& s) { return s.force != Force{}; });
}

}  // namespace

const FigureSpec& couple_resultant_figure() {
  static const FigureSpec kFigure = make_resultant();
  return kFigure;
}

Result<Working> arrangement_working(const Shaft& shaft, std::span<const Angle> tilt,
                                    const std::optional<ErrorsGiven>& errors) {
  const std::vector<RotatingSet> sets = rotating_sets(shaft, tilt);
  const Planes planes = planes_of(shaft);
  std::vector<Input> in;
  WorkingPtr couple;
  const Input no_couple = given("couple", any(Torque{}), {OriginKind::given, "unbalance"});
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const int number = static_cast<int>(i) + 1;
    const bool rotor = number <= shaft.rotor_count();
    const std::string where = rotor ? "rotor " + std::to_string(number) : "unbalance";
    in.push_back(given("position", any(sets[i].position), {OriginKind::computed, where}));
    in.push_back(given("azimuth", any(sets[i].azimuth), {OriginKind::given, where}));
    if (has_forces(sets)) in.push_back(given("force", any(sets[i].force), {OriginKind::computed, where}));
    if (rotor && (number == 1 || !same_couple(shaft.rotor(number), shaft.rotor(number - 1)))) {
      auto next = couple_working(shaft, number);
      if (!next) return tl::unexpected(next.error());
      couple = *std::move(next);
    }
    in.push_back(rotor ? computed("couple", "couple", couple) : no_couple);
  }
  const Origin origin = planes.hangers ? Origin{OriginKind::computed, "middle of the outermost hangers"}
                                       : Origin{OriginKind::assumed, "fewer than two hangers: the ends of the shaft"};
  in.push_back(given("plane-a", any(planes.a), origin));
  in.push_back(given("plane-b", any(planes.b), origin));
  if (errors) {
    in.push_back(given("error-share", any_ratio(errors->errors.share), errors->share));
    in.push_back(given("error-azimuth", any(errors->errors.azimuth), errors->azimuth));
  }
  Results<Working> working = evaluate(couple_resultant_figure(), std::move(in));
  if (!working) return tl::unexpected(working.error().front());
  return *std::move(working);
}

Result<Working> least_gap_working(const Shaft& shaft, std::span<const Angle> tilt) {
  const std::vector<NeighbourGap> gaps = tine_gaps(shaft, tilt);
  if (gaps.empty()) return tl::unexpected(Problem{Code{"dynamics.one_rotor"}, "rotors", {}, {}, std::nullopt});
  const int first = std::ranges::min_element(gaps, {}, [](const NeighbourGap& g) { return g.gap.gap; })->rotor;
  const Rotor &a = shaft.rotor(first), &b = shaft.rotor(first + 1);
  const auto from = [&](int number, const char* field) { return rotor_origin(shaft, number, field); };
  const std::string pair = "rotors " + std::to_string(first) + " and " + std::to_string(first + 1);
  const auto at = [&](int number) { return tilt[static_cast<std::size_t>(number - 1)]; };
  Results<Working> working = evaluate(
      tine_gap_figure(),
      {given("pitch", any(shaft.rotor_position(first + 1) - shaft.rotor_position(first)), {OriginKind::computed, pair}),
       given("between", any(at(first + 1) - at(first)), {OriginKind::given, pair}),
       given("tip-radius", any(a.tip_radius), from(first, "tip_radius")),
       given("lean", any(a.lean), from(first, "lean")),
       given("tine-width", any(a.tine_width), from(first, "tine_width")),
       given("other-tip-radius", any(b.tip_radius), from(first + 1, "tip_radius")),
       given("other-lean", any(b.lean), from(first + 1, "lean")),
       given("other-tine-width", any(b.tine_width), from(first + 1, "tine_width"))});
  if (!working) return tl::unexpected(working.error().front());
  for (Finding& finding : working->findings) {
    finding.where = {Where::Part::rotor, first};
    const Args names{{"rotor", first}, {"next", first + 1}};
    finding.args.insert(finding.args.end(), names.begin(), names.end());
    if (finding.instruction)
      finding.instruction->args.insert(finding.instruction->args.end(), names.begin(), names.end());
  }
  return *std::move(working);
}

}  // namespace flatwise::dynamics
