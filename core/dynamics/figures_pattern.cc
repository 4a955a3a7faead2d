// The figures of the search: the arrangement that leaves the least couple, and the least force in two planes.
#include <string>
#include <utility>
#include <vector>

#include "core/dynamics/figures_parts.h"
#include "core/dynamics/pattern_explain.h"
#include "core/dynamics/pattern_list.h"

namespace flatwise::dynamics {
namespace {

constexpr std::string_view kJudges[] = {"larger-plane", "both-planes"};

std::string flats_text(const Places& places) {
  std::string out;
  for (const int flat : flats_of(places)) out += (out.empty() ? "" : " ") + std::to_string(flat);
  return out;
}

std::string proof_text(Proof proof) {
  return proof == Proof::nought        ? "nought"
         : proof == Proof::complete    ? "complete"
         : proof == Proof::under_floor ? "under-floor"
                                       : "none";
}

Computed list_said(const PatternTask& task, const PatternList& list) {
  const PatternRow &first = list.rows.front(), &next = list.rows[list.rows.size() > 1 ? 1 : 0];
  const auto size = [&](double si) { return left_of(task, si); };
  Computed out{.values = {size(first.left_si), flats_text(first.places), size(first.worst_si), size(list.least.left_si),
                          flats_text(list.least.places), size(next.left_si), flats_text(next.places),
                          size(list.floor_rms), size(list.floor_worst), proof_text(list.proof)}};
  for (Message& m : explain(task, list))
    out.findings.push_back({m.code, Severity::note, std::move(m.args), {}, std::nullopt});
  return out;
}

std::vector<OutputSpec> list_outputs(Kind kind) {
  return {{"left", "r", kind},
          {"arrangement", "f_i", Kind::ratio, true},
          {"worst", "r_w", kind},
          {"least", "r_min", kind},
          {"least-arrangement", "f_i,min", Kind::ratio, true},
          {"next", "r_2", kind},
          {"next-arrangement", "f_i,2", Kind::ratio, true},
          {"floor-rms", "σ", kind},
          {"floor-worst", "w", kind},
          {"proof", "proof", Kind::ratio, true}};
}

Result<Computed> listed(PatternTask task, const Given& in) {
  task.positions = static_cast<int>(in.si("positions"));
  task.errors = {in.si("error-share"), radians(in.si("error-azimuth"))};
  if (in.si("positions") != task.positions)
    return tl::unexpected(
        Problem{Code{"pattern.not_whole"}, "positions", {}, {{"value", any_ratio(in.si("positions"))}}, std::nullopt});
  const auto list = list_patterns(task);
  if (!list) return tl::unexpected(list.error());
  return list_said(task, *list);
}

Problem uneven(std::string_view name, std::size_t count, std::size_t wanted) {
  return {Code{"pattern.list_length"},
          std::string{name},
          {},
          {{"given", static_cast<std::int64_t>(count)}, {"wanted", static_cast<std::int64_t>(wanted)}},
          std::nullopt};
}

Result<Computed> compute_couple(const Given& in) {
  std::vector<double> couples = in.all_si("couple");
  if (in.has("rotors")) {
    const auto rotors = static_cast<std::size_t>(in.si("rotors"));
    if (static_cast<double>(rotors) != in.si("rotors"))
      return tl::unexpected(
          Problem{Code{"pattern.not_whole"}, "rotors", {}, {{"value", any_ratio(in.si("rotors"))}}, std::nullopt});
    if (couples.size() == 1) couples = std::vector<double>(rotors, couples.front());
    if (couples.size() != rotors) return tl::unexpected(uneven("couple", couples.size(), rotors));
  }
  PatternTask task{
      .rotors = {}, .unbalances = {}, .planes = {metres(0), metres(1)}, .judged = Judged::couple, .errors = {}};
  for (const double couple : couples) task.rotors.push_back({metres(0.5), Angle{}, Force{}, Torque::from_si(couple)});
  return listed(std::move(task), in);
}

Result<Computed> compute_force(const Given& in) {
  const auto positions = in.all_si("position");
  const auto couples = one_each(in, "couple", positions.size(), 0.0);
  const auto forces = one_each(in, "force", positions.size(), 0.0);
  if (!couples) return tl::unexpected(uneven("couple", in.all_si("couple").size(), positions.size()));
  if (!forces) return tl::unexpected(uneven("force", in.all_si("force").size(), positions.size()));
  PatternTask task{.rotors = {},
                   .unbalances = {},
                   .planes = {metres(in.si("plane-a")), metres(in.si("plane-b"))},
                   .judged = in.text("judged") == "both-planes" ? Judged::both_planes : Judged::larger_plane,
                   .errors = {}};
  for (std::size_t i = 0; i < positions.size(); ++i)
    task.rotors.push_back(
        {metres(positions[i]), Angle{}, Force::from_si((*forces)[i]), Torque::from_si((*couples)[i])});
  return listed(std::move(task), in);
}

std::vector<InputSpec> error_inputs() {
  return {assumed(from_nought("error-share", "e", Kind::ratio, 1), any_ratio(StatedErrors{}.share), kOwnRule),
          assumed(from_nought("error-azimuth", "e_φ", Kind::angle, 1), any(StatedErrors{}.azimuth), kOwnRule)};
}

FigureSpec make_couple() {
  return {.name = "least-couple-pattern",
          .formula = "least |Σ C_i e^jφ_i| over φ_i = 2π(f_i − 1)/n, f_i = 1 … n",
          .inputs = joined(
              {{between("positions", "n", Kind::count, 2, 24), optional(between("rotors", "N", Kind::count, 2, 240)),
                repeated(between("couple", "C_i", Kind::torque, -kMostCouple, kMostCouple))},
               error_inputs()}),
          .outputs = list_outputs(Kind::torque),
          .sources = {"Euler", "Halves", "Lam-Leung"},
          .compute = compute_couple,
          .example = {{"positions=6", "rotors=5", "couple=13.57 N·m"}, "left=0 N·m"}};
}

FigureSpec make_force() {
  return {.name = "least-force-pattern",
          .formula =
              "least max (|F_a|, |F_b|) or √(|F_a|² + |F_b|²) over φ_i = 2π(f_i − 1)/n, f_i = 1 … n; "
              "F_b = Σ (C_i + F_i (z_i − z_a)) e^jφ_i/(z_b − z_a), F_a = Σ F_i e^jφ_i − F_b",
          .inputs = joined({{between("positions", "n", Kind::count, 2, 24),
                             repeated(between("position", "z_i", Kind::length, -kMostLength, kMostLength)),
                             repeated(between("couple", "C_i", Kind::torque, -kMostCouple, kMostCouple)),
                             optional(repeated(between("force", "F_i", Kind::force, -kMostForce, kMostForce))),
                             between("plane-a", "z_a", Kind::length, -kMostLength, kMostLength),
                             between("plane-b", "z_b", Kind::length, -kMostLength, kMostLength),
                             assumed(one_of("judged", "r", kJudges), std::string{kJudges[0]}, kOwnRule)},
                            error_inputs()}),
          .outputs = list_outputs(Kind::force),
          .sources = {"Euler", "Balance-planes", "Halves"},
          .compute = compute_force,
          .example = {{"positions=6", "position=0.1 m", "position=0.3 m", "position=0.5 m", "couple=10 N·m",
                       "couple=11 N·m", "couple=12 N·m", "force=4 N", "plane-a=0 m", "plane-b=0.6 m"},
                      "left=5.196 N"}};
}

}  // namespace

const FigureSpec& least_couple_figure() {
  static const FigureSpec kFigure = make_couple();
  return kFigure;
}
const FigureSpec& least_force_figure() {
  static const FigureSpec kFigure = make_force();
  return kFigure;
}

}  // namespace flatwise::dynamics
