#include "job/turns.h"

#include "core/fasteners/clamped.h"
#include "core/fasteners/figures.h"
#include "core/fasteners/turn.h"
#include "core/working/input_specs.h"
#include "job/figure_use.h"
#include "job/gauges.h"

namespace flatwise::job {
namespace {

constexpr double kSnugShare = fasteners::TurnAsked{}.snug_u;

WorkingPtr worked(std::string_view figure, std::vector<Input> inputs) {
  Results<Working> working = use(fasteners::figures(), figure, std::move(inputs));
  return working ? std::make_shared<const Working>(*std::move(working)) : nullptr;
}

std::vector<Input> thread_inputs(const Shaft& shaft, const Nut& nut) {
  return {given("diameter", any(nut.thread.major), nut_origin(shaft, nut.end, "thread")),
          given("nut-factor-least", any_ratio(nut.nut_factor_least), nut_origin(shaft, nut.end, "nut_factor_least")),
          given("nut-factor-greatest", any_ratio(nut.nut_factor_greatest),
                nut_origin(shaft, nut.end, "nut_factor_greatest"))};
}
Input pitch_input(const Shaft& shaft, const Nut& nut) {
  return given("pitch", any(nut.thread.pitch), nut_origin(shaft, nut.end, "thread"));
}

void append(std::vector<Input>& to, std::vector<Input> more) { std::ranges::move(more, std::back_inserter(to)); }

Origin part_origin(const Shaft& shaft, int station) {
  const std::string own = "stations[" + std::to_string(station) + "].clamped";
  return shaft.origin(shaft.spec().origins.contains(own) ? own : "clamped.outside");
}

WorkingPtr springs_of(const Shaft& shaft, const fasteners::ClampedRun& run) {
  const ShaftSpec& spec = shaft.spec();
  std::vector<Input> in{given("flats", any_count(spec.profile.flats), shaft.origin("shaft.flats")),
                        given("across", any(spec.profile.across_flats), shaft.origin("shaft.across")),
                        given("youngs-modulus", any(spec.bar.youngs_modulus), shaft.origin("bar.youngs_modulus"))};
  for (const fasteners::ClampedPart& part : run.parts) {
    const Origin origin = part_origin(shaft, part.station);
    in.push_back(given("length", any(part.length), shaft.origin("stack")));
    in.push_back(given("outside", any(part.outside), origin));
    // Nought stands for the profile of the shaft.
    in.push_back(given("bore", any(part.bore.value_or(Length{})), part.bore ? origin : shaft.origin("shaft.across")));
    in.push_back(given("part-modulus", any(part.youngs_modulus),
                       shaft.stations()[static_cast<std::size_t>(part.station)].clamped.youngs_modulus
                           ? origin
                           : shaft.origin("clamped.youngs_modulus")));
  }
  return worked("clamped-stiffness", std::move(in));
}

/// A reading so low that the nut never came past snug says nothing of the turn.
bool past_snug(const Working& reached, const Nut& nut) {
  return reached.si("torque") - reached.si("torque-u") > nut.snug->si();
}

WorkingPtr expected_of(const Shaft& shaft, const Nut& nut, const PulledSoFar& so_far, TurnOfNut& out) {
  const bool read = so_far.reached != nullptr && past_snug(*so_far.reached, nut);
  std::vector<Input> in;
  if (read) {
    in = {computed("torque", "torque", so_far.reached), computed("torque-u", "torque-u", so_far.reached)};
  } else {
    in = {given("torque", any(nut.torque), nut_origin(shaft, nut.end, "torque")),
          given("torque-u", any(nut.torque_tolerance * nut.torque), nut_origin(shaft, nut.end, "tolerance"))};
  }
  in.push_back(given("snug", any(*nut.snug), nut_origin(shaft, nut.end, "snug")));
  append(in, thread_inputs(shaft, nut));
  in.push_back(pitch_input(shaft, nut));
  in.push_back(computed("shaft-stiffness", "shaft-stiffness", out.springs));
  in.push_back(computed("stack-stiffness", "stack-stiffness", out.springs));
  if (out.after_other && so_far.other_preload != nullptr) {
    in.push_back(computed("before-least", "preload-least", so_far.other_preload));
    in.push_back(computed("before-greatest", "preload-greatest", so_far.other_preload));
  }
  out.judged = so_far.turned != nullptr && (read || so_far.reached == nullptr);
  if (out.judged)
    in.push_back(measured("turned", so_far.turned->value.value, text_of(so_far.turned->place), so_far.turned->typed));
  return worked("turn-expected", std::move(in));
}

WorkingPtr settled_of(const Shaft& shaft, const Nut& nut, const fasteners::ClampedRun& run, const WorkingPtr& springs,
                      const WorkingPtr& preload) {
  constexpr std::string_view kFaces[] = {"smooth", "turned", "rough"};
  const Clamped& clamped = shaft.spec().clamped;
  return worked(
      "settling",
      {given("faces", std::string{kFaces[static_cast<std::size_t>(clamped.faces)]}, shaft.origin("clamped.faces")),
       given("joints", any_count(run.joints), shaft.origin("stack")),
       given("nut-faces", any_count(run.nut_faces), shaft.origin("stack")),
       given("threads", any_count(run.threads), shaft.origin("stack")), pitch_input(shaft, nut),
       computed("preload", "preload-least", preload), computed("shaft-stiffness", "shaft-stiffness", springs),
       computed("stack-stiffness", "stack-stiffness", springs)});
}

WorkingPtr preload_of(const Shaft& shaft, const Nut& nut, Torque torque, Torque torque_u, std::string_view field) {
  std::vector<Input> in{given("torque", any(torque), nut_origin(shaft, nut.end, field)),
                        given("torque-u", any(torque_u),
                              field == "torque" ? nut_origin(shaft, nut.end, "tolerance")
                                                : Origin{OriginKind::assumed, std::string{kCommonPractice}})};
  append(in, thread_inputs(shaft, nut));
  return worked("torque-preload", std::move(in));
}

}  // namespace

WorkingPtr preload_at_target(const Shaft& shaft, const Nut& nut) {
  return preload_of(shaft, nut, nut.torque, nut.torque_tolerance * nut.torque, "torque");
}
WorkingPtr preload_at_snug(const Shaft& shaft, const Nut& nut) {
  return nut.snug ? preload_of(shaft, nut, *nut.snug, kSnugShare * *nut.snug, "snug") : nullptr;
}

Angle most_by_settling(const Working& settled) {
  return radians((1 + fasteners::Repulled{}.spread) * settled.si("turn"));
}

TurnOfNut turn_of(const Shaft& shaft, const Nut& nut, const PulledSoFar& so_far) {
  const fasteners::ClampedRun run = fasteners::clamped_by(shaft, nut);
  TurnOfNut out;
  out.untold = run.untold;
  if (!run.untold.empty()) out.wanted.emplace_back("clamped.outside");
  if (!nut.snug) out.wanted.emplace_back("nut.snug");
  if (!out.wanted.empty() || run.parts.empty()) return out;
  out.springs = springs_of(shaft, run);
  if (out.springs == nullptr) return out;
  out.after_other = run.other != nullptr && run.other->order < nut.order;
  PulledSoFar with_other = so_far;
  if (out.after_other && with_other.other_preload == nullptr)
    with_other.other_preload = preload_at_target(shaft, *run.other);
  out.expected = expected_of(shaft, nut, with_other, out);
  const WorkingPtr preload = so_far.preload != nullptr ? so_far.preload : preload_at_target(shaft, nut);
  if (preload != nullptr) out.settled = settled_of(shaft, nut, run, out.springs, preload);
  return out;
}

}  // namespace flatwise::job
