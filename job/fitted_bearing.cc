#include "job/fitted_bearing.h"

#include <algorithm>
#include <array>

#include "core/bearings/figures.h"
#include "core/fits/figures.h"
#include "job/figure_use.h"

namespace flatwise::job {
namespace {

template <std::size_t n, typename Enum>
std::string word_of(const std::array<std::string_view, n>& words, Enum value) {
  return std::string{words[static_cast<std::size_t>(value)]};
}

void append(std::vector<Input>& to, std::vector<Input> more) { std::ranges::move(more, std::back_inserter(to)); }

Input tolerance_input(const RotorOf& p) {
  return given("tolerance", word_of(kToleranceClasses, p.it.bearing.tolerance), p.from("bearing.tolerance"));
}

/// Middle and half width of a bore whose limits are known.
std::vector<Input> bore_between(const Limits& limits, const Origin& origin) {
  return {given("bore", any(0.5 * (limits.least + limits.greatest)), origin),
          given("bore-uncertainty", any(0.5 * (limits.greatest - limits.least)), origin)};
}

/// Interference of the inner ring on its seat, both within their limits.
Results<WorkingPtr> seat_fit(const RotorOf& p, const Limits& seat) {
  const auto ring =
      worked(fits::figures(), "ring-bore", {p.length("bore", p.it.bearing.bore, "bearing.d"), tolerance_input(p)});
  if (!ring) return ring;
  std::vector<Input> in = bore_between({metres((*ring)->si("least")), metres((*ring)->si("greatest"))},
                                       {OriginKind::computed, "ring-bore"});
  in.push_back(p.length("ring-least", seat.least, "seat"));
  in.push_back(p.length("ring-greatest", seat.greatest, "seat"));
  return worked(fits::figures(), "interference", std::move(in));
}

Results<std::vector<Input>> seat_inputs(const RotorOf& p, const Working& inside) {
  if (!p.it.seat) return std::vector<Input>{};
  const auto fit = seat_fit(p, *p.it.seat);
  if (!fit) return tl::unexpected(fit.error());
  const Length raceway = metres(inside.si("pitch-diameter") - inside.si("ball-diameter"));
  return std::vector<Input>{computed("seat-interference-least", "least", *fit),
                            computed("seat-interference-greatest", "greatest", *fit),
                            p.length("seat-diameter", p.it.bearing.bore, "bearing.d"),
                            p.length("seat-inside", p.across_flats, "profile.across_flats"),
                            given("inner-raceway", any(raceway), {OriginKind::computed, "d_m − D_w"})};
}

}  // namespace

RotorOf rotor_of(const Shaft& shaft, int rotor) {
  return {shaft.rotor(rotor), shaft.spec().profile.across_flats, [&shaft, rotor](std::string_view field) {
            return field.starts_with("profile.") ? shaft.origin(field) : rotor_origin(shaft, rotor, field);
          }};
}

FitInputs fit_of(const WorkingPtr& interference) {
  return {computed("interference-least", "least", interference),
          computed("interference-greatest", "greatest", interference)};
}

Results<WorkingPtr> bearing_inside(const RotorOf& p) {
  const BearingInside& known = p.it.bearing.inside;
  std::vector<Input> in{p.length("bearing-bore", p.it.bearing.bore, "bearing.d"),
                        p.length("bearing-outside", p.it.bearing.outside, "bearing.D")};
  if (known.ball_diameter) in.push_back(p.length("ball-diameter", *known.ball_diameter, "bearing.ball_diameter"));
  if (known.pitch_diameter) in.push_back(p.length("pitch-diameter", *known.pitch_diameter, "bearing.pitch_diameter"));
  if (known.balls) in.push_back(given("balls", any_count(*known.balls), p.from("bearing.balls")));
  if (known.groove_inner)
    in.push_back(given("inner-groove-share", any_ratio(*known.groove_inner), p.from("bearing.groove_inner")));
  if (known.groove_outer)
    in.push_back(given("outer-groove-share", any_ratio(*known.groove_outer), p.from("bearing.groove_outer")));
  return worked(bearings::figures(), "bearing-geometry", std::move(in));
}

std::vector<Input> inside_inputs(const WorkingPtr& inside) {
  std::vector<Input> in;
  for (const char* name : {"balls", "ball-diameter", "pitch-diameter", "inner-groove", "outer-groove"})
    in.push_back(computed(name, name, inside));
  return in;
}

std::vector<Input> rocked_inputs(const RotorOf& p, const WorkingPtr& inside) {
  const BearingInside& known = p.it.bearing.inside;
  std::vector<Input> in = inside_inputs(inside);
  if (known.balls) in.push_back(given("balls-from", std::string{"counted"}, p.from("bearing.balls")));
  if (known.ball_diameter) in.push_back(given("ball-doubt", any_ratio(0), p.from("bearing.ball_diameter")));
  if (known.groove_inner && known.groove_outer)
    in.push_back(given("groove-doubt", any_ratio(0), p.from("bearing.groove_inner")));
  return in;
}

Results<WorkingPtr> ring_outside(const RotorOf& p) {
  return worked(fits::figures(), "ring-outside",
                {p.length("outside", p.it.bearing.outside, "bearing.D"), tolerance_input(p)});
}

Results<WorkingPtr> fit_by_limits(const RotorOf& p) {
  const auto ring = ring_outside(p);
  if (!ring) return ring;
  std::vector<Input> in = bore_between(p.it.hub.bore, p.from("hub.bore"));
  in.push_back(computed("ring-least", "least", *ring));
  in.push_back(computed("ring-greatest", "greatest", *ring));
  return worked(fits::figures(), "interference", std::move(in));
}

std::vector<Input> joint_inputs(const RotorOf& p) {
  const Rotor& r = p.it;
  return {p.length("joint-diameter", r.bearing.outside, "bearing.D"),
          p.length("ring-inside", r.bearing.outer_ring_inside, "bearing.outer_ring_inside"),
          p.length("hub-outside", r.hub.outside, "hub.outside"),
          p.length("roughness-loss", r.hub.roughness_loss, "hub.roughness_loss"),
          given("hub-modulus", any(r.hub.material.youngs_modulus), p.from("hub.material")),
          given("hub-poisson", any_ratio(r.hub.material.poisson), p.from("hub.material"))};
}

Results<WorkingPtr> clearance_fitted(const RotorOf& p, const WorkingPtr& inside, FitInputs fit) {
  const auto group =
      worked(fits::figures(), "clearance-group",
             {p.length("bore", p.it.bearing.bore, "bearing.d"),
              given("group", word_of(kClearanceGroups, p.it.bearing.clearance), p.from("bearing.clearance"))});
  if (!group) return group;
  auto seat = seat_inputs(p, *inside);
  if (!seat) return tl::unexpected(std::move(seat.error()));
  std::vector<Input> in{computed("group-least", "least", *group), computed("group-greatest", "greatest", *group),
                        std::move(fit.least), std::move(fit.greatest)};
  append(in, joint_inputs(p));
  append(in, *std::move(seat));
  if (const auto& warmer = p.it.bearing.care.inner_warmer)
    in.push_back(given("warmer", any(*warmer), p.from("bearing.inner_warmer")));
  return worked(bearings::figures(), "fitted-clearance", std::move(in));
}

std::vector<Input> care_inputs(const RotorOf& p) {
  const BearingInside& known = p.it.bearing.inside;
  const BearingCare& care = p.it.bearing.care;
  std::vector<Input> in;
  if (known.dynamic_rating)
    in.push_back(given("dynamic-rating", any(*known.dynamic_rating), p.from("bearing.dynamic_rating")));
  if (known.static_rating)
    in.push_back(given("static-rating", any(*known.static_rating), p.from("bearing.static_rating")));
  if (care.viscosity) in.push_back(given("viscosity", any(*care.viscosity), p.from("bearing.viscosity")));
  if (care.cleanliness)
    in.push_back(given("cleanliness", word_of(kCleanlinesses, *care.cleanliness), p.from("bearing.cleanliness")));
  if (care.reliability) in.push_back(given("reliability", any_ratio(*care.reliability), p.from("bearing.reliability")));
  return in;
}

}  // namespace flatwise::job
