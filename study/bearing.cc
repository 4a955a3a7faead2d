// The press of a hub, the clearance it leaves, and the bearing through a turn of the shaft: of the rotor whose bearing ends first.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/bearings/figures.h"
#include "core/fits/figures.h"
#include "core/working/place_of.h"
#include "job/figure_use.h"
#include "job/fitted_bearing.h"
#include "job/grip.h"
#include "study/outcome.h"

namespace flatwise::study {
namespace {

/// One rotor of a way, and where its values come from.
struct Part {
  const Way& way;
  int rotor = 1;
  std::vector<Problem>& problems;

  [[nodiscard]] const Rotor& it() const { return way.shaft.rotor(rotor); }
  /// A field that the way changes comes from the way.
  [[nodiscard]] Origin from(std::string_view field) const {
    const bool changed = (field == "lean" && way.typed.lean) || (field == "bearing.clearance" && way.typed.clearance) ||
                         (field == "hub.bore" && way.typed.fit);
    if (changed) return {OriginKind::given, way.name()};
    if (field.starts_with("profile.")) return way.shaft.origin(field);
    return job::rotor_origin(way.shaft, rotor, field);
  }
  [[nodiscard]] job::RotorOf of() const {
    return {it(), way.shaft.spec().profile.across_flats, [this](std::string_view field) { return from(field); }};
  }
  [[nodiscard]] Origin from_shaft(std::string_view field) const {
    if (field == "shaft.speed" && way.typed.speed) return {OriginKind::given, way.name()};
    return way.shaft.origin(field);
  }
  [[nodiscard]] Input length(std::string_view name, Length value, std::string_view field) const {
    return given(name, any(value), from(field));
  }
  WorkingPtr figure(std::span<const FigureSpec> figures, std::string_view name, std::vector<Input> inputs) {
    return taken(job::worked(figures, name, std::move(inputs)));
  }
  /// What was worked out; none, and why among the problems, where it was refused.
  WorkingPtr taken(Results<WorkingPtr> worked) {
    if (worked) return *std::move(worked);
    std::ranges::move(worked.error(), std::back_inserter(problems));
    return nullptr;
  }
};

/// The key of the definition behind an input of the turn.
struct Behind {
  std::string_view input, key;
};
constexpr Behind kBehind[] = {{"ground-up", "load[1].force"},
                              {"ground-drag", "load[1].force"},
                              {"ground-along", "load[1].along"},
                              {"tip-radius", "rotor.tip_radius"},
                              {"lean", "rotor.lean"},
                              {"speed", "shaft.speed"},
                              {"rolling-speed", "shaft.travel"},
                              {"mass", "rotor.mass"},
                              {"rotating-couple", "rotor.inertia.across"},
                              {"viscosity", "rotor.bearing.viscosity"}};

/// What is wrong with the turn is wrong with what the definition says.
Problem of_definition(const Part& p, Problem problem) {
  const std::string input = bearings::turn_input_behind(problem.field);
  const auto behind = std::ranges::find(kBehind, input, &Behind::input);
  if (behind == std::end(kBehind)) return problem;
  const bool pushed =
      std::ranges::any_of(p.way.shaft.spec().loads, [](const FixedLoad& l) { return l.along != Force{}; });
  // Leaning, a load across the shaft presses along the bearing too.
  const std::string_view key = input == "ground-along" && !pushed ? "load[1].force" : behind->key;
  problem.place = place_of(key.starts_with("rotor.") ? p.from(key.substr(6)) : p.from_shaft(key));
  problem.field = key.starts_with("load") ? "load." + std::string{key.substr(key.find('.') + 1)} : std::string{key};
  return problem;
}

job::FitInputs fit_of(const Part& p, const PressedIn& press) {
  if (press.interference_working != nullptr) return job::fit_of(press.interference_working);
  const Origin said{OriginKind::given, p.way.name()};
  return {given("interference-least", any(press.interference.least), said),
          given("interference-greatest", any(press.interference.greatest), said)};
}

std::vector<Input> joined(std::vector<Input> a, std::vector<Input> b) {
  std::ranges::move(b, std::back_inserter(a));
  return a;
}

constexpr Length kLead = millimetres(2);  // As the figure press-curve assumes it; common practice.

fits::PressPath path_of(const Rotor& r, const Limits& interference) {
  const fits::Elastic ring{gigapascals(207), 0.3};  // As the figures take the ring: bearing steel.
  return {.pressing = {.joint = {.diameter = r.bearing.outside,
                                 .ring_inside = r.bearing.outer_ring_inside,
                                 .hub_outside = r.hub.outside,
                                 .ring = ring,
                                 .hub = {r.hub.material.youngs_modulus, r.hub.material.poisson}},
                       .width = r.bearing.width,
                       .roughness_loss = r.hub.roughness_loss,
                       .interference = interference,
                       .friction = {},
                       .hub_yield = r.hub.material.yield},
          .lead = kLead};
}

// --- The bearing -------------------------------------------------------------------------------------------------------

struct Inside {
  WorkingPtr geometry, ratings;
  bearings::BallBearing bearing;
  bearings::PointContacts contacts;
};

std::optional<Inside> inside_of(Part& p) {
  Inside out;
  out.geometry = p.taken(job::bearing_inside(p.of()));
  if (out.geometry == nullptr) return std::nullopt;
  const auto length = [&](std::string_view name) { return metres(out.geometry->si(name)); };
  out.bearing = {static_cast<int>(std::lround(out.geometry->si("balls"))), length("ball-diameter"),
                 length("pitch-diameter"), length("inner-groove"), length("outer-groove")};
  const auto contacts = bearings::point_contacts(out.bearing, bearings::kBearingSteel);
  if (!contacts) return p.problems.push_back(contacts.error()), std::nullopt;
  out.contacts = *contacts;
  return out;
}

/// What the definition states of oil and dirt; the rest as the figure bearing-turn assumes it.
bearings::Lubrication lubrication_of(const BearingCare& care) {
  bearings::Lubrication oil;
  oil.viscosity = care.viscosity;
  if (care.cleanliness) oil.cleanliness = *care.cleanliness;
  return oil;
}

bearings::TurnLifeTask task_of(const Part& p, const Inside& inside, const bearings::Ratings& ratings,
                               Length clearance) {
  const Shaft& shaft = p.way.shaft;
  const dynamics::RotatingSet set = dynamics::rotating_sets(
      shaft, std::vector<Angle>(static_cast<std::size_t>(shaft.rotor_count())))[static_cast<std::size_t>(p.rotor - 1)];
  const Rotor& r = p.it();
  const bool held = dynamics::spinning_of(shaft) == dynamics::Spinning::held;
  return {.turn = {.at = {inside.bearing, clearance},
                   .contacts = inside.contacts,
                   .rotor = {.lean = r.lean,
                             .mass = r.mass,
                             .mass_offset = r.mass_offset,
                             .force = set.force,
                             .couple = set.couple,
                             .tip_radius = r.tip_radius},
                   .ground = job::ground_on(shaft, p.rotor),
                   .outer = held ? bearings::OuterRing::held : bearings::OuterRing::turns},
          .ratings = ratings,
          .shaft = shaft.spec().speed,
          .spin = dynamics::spin_of(shaft, p.rotor),
          .lubrication = lubrication_of(r.bearing.care),
          .reliability = r.bearing.care.reliability.value_or(0.9)};
}

WorkingPtr turn_working(Part& p, const Inside& inside, const Beared& at) {
  const bearings::TurnTask& turn = at.task.turn;
  const bool held = turn.outer == bearings::OuterRing::held;
  const Origin middle{OriginKind::computed, "middle of the clearance"};
  const Origin sets{OriginKind::computed, "rotating-couple"};
  std::vector<Input> in = joined(job::inside_inputs(inside.geometry), job::care_inputs(p.of()));
  in.push_back(given("clearance", any(turn.at.clearance),
                     at.fitted != nullptr ? middle : Origin{OriginKind::given, p.way.name()}));
  in.push_back(given("lean", any(turn.rotor.lean), p.from("lean")));
  in.push_back(given("speed", any(at.task.shaft), p.from_shaft("shaft.speed")));
  in.push_back(given("spinning", std::string{held ? "held" : "rolling"}, p.way.shaft.origin("shaft.travel")));
  if (!held) in.push_back(given("rolling-speed", any(at.task.spin), {OriginKind::computed, "travel / rolling radius"}));
  in.push_back(p.length("tip-radius", turn.rotor.tip_radius, "tip_radius"));
  in.push_back(given("mass", any(turn.rotor.mass), p.from("mass")));
  in.push_back(given("mass-offset", any(turn.rotor.mass_offset), p.from("mass_offset")));
  in.push_back(given("rotating-force", any(turn.rotor.force), sets));
  in.push_back(given("rotating-couple", any(turn.rotor.couple), sets));
  in.push_back(given("ground-up", any(turn.ground.up), p.way.shaft.origin("load[1].force")));
  in.push_back(given("ground-drag", any(turn.ground.drag), p.way.shaft.origin("load[1].force")));
  if (turn.ground.along != Force{})
    in.push_back(given("ground-along", any(turn.ground.along), p.way.shaft.origin("load[1].along")));
  const std::size_t told = p.problems.size();
  WorkingPtr working = p.figure(bearings::figures(), "bearing-turn", std::move(in));
  for (std::size_t i = told; i < p.problems.size(); ++i) p.problems[i] = of_definition(p, std::move(p.problems[i]));
  return working;
}

WorkingPtr play_working(Part& p, const Inside& inside, const Beared& at) {
  std::vector<Input> in = job::rocked_inputs(p.of(), inside.geometry);
  const Origin said{OriginKind::given, p.way.name()};
  if (at.fitted != nullptr) {
    in.push_back(computed("clearance-least", "least", at.fitted));
    in.push_back(computed("clearance-greatest", "greatest", at.fitted));
  } else {
    in.push_back(given("clearance-least", any(at.clearance.least), said));
    in.push_back(given("clearance-greatest", any(at.clearance.greatest), said));
  }
  in.push_back(p.length("radius", p.it().tip_radius, "tip_radius"));
  return p.figure(bearings::figures(), "rim-play", std::move(in));
}

/// Whether all that press, clearance, load and life are worked out from is alike.
bool same_bearing(const Shaft& shaft, int a, int b) {
  const Rotor &p = shaft.rotor(a), &q = shaft.rotor(b);
  const auto ground_a = job::ground_on(shaft, a), ground_b = job::ground_on(shaft, b);
  return p.lean == q.lean && p.mass == q.mass && p.across == q.across && p.along == q.along &&
         p.mass_offset == q.mass_offset && p.tip_radius == q.tip_radius && p.bearing == q.bearing && p.hub == q.hub &&
         p.seat == q.seat && ground_a.up == ground_b.up && ground_a.drag == ground_b.drag &&
         ground_a.along == ground_b.along;
}

std::optional<PressedIn> pressed_in(Part& p) {
  PressedIn out{.interference = {}, .interference_working = nullptr, .force = nullptr, .path = {}};
  if (p.way.interference) {
    out.interference = {*p.way.interference, *p.way.interference};
  } else {
    out.interference_working = p.taken(job::fit_by_limits(p.of()));
    if (out.interference_working == nullptr) return std::nullopt;
    out.interference = {metres(out.interference_working->si("least")),
                        metres(out.interference_working->si("greatest"))};
  }
  out.path = path_of(p.it(), out.interference);
  const job::FitInputs fit = fit_of(p, out);
  const std::vector<Input> more{p.length("width", p.it().bearing.width, "bearing.B"),
                                given("hub-yield", any(p.it().hub.material.yield), p.from("hub.material"))};
  out.force = p.figure(fits::figures(), "press-force",
                       joined(joined({fit.least, fit.greatest}, job::joint_inputs(p.of())), more));
  if (out.force == nullptr) return std::nullopt;
  return out;
}

/// What the bearing of one rotor takes and has inside, all but its life; none, and the reason among the problems, where it cannot be
/// worked out.
std::optional<Beared> before_life(Part& p, const Inside& inside, const PressedIn& press) {
  Beared out;
  out.rotor = p.rotor;
  out.geometry = inside.geometry;
  out.inside = inside.bearing;
  if (p.way.clearance) {
    out.clearance = {*p.way.clearance, *p.way.clearance};
  } else {
    out.fitted = p.taken(job::clearance_fitted(p.of(), inside.geometry, fit_of(p, press)));
    if (out.fitted == nullptr) return std::nullopt;
    out.clearance = {metres(out.fitted->si("least")), metres(out.fitted->si("greatest"))};
  }
  const BearingInside& stated = p.it().bearing.inside;
  const auto ratings = bearings::ratings_of(inside.bearing, stated.dynamic_rating, stated.static_rating);
  if (!ratings) return p.problems.push_back(ratings.error()), std::nullopt;
  out.task = task_of(p, inside, *ratings, out.middle());
  const bearings::GroundLoad& ground = out.task.turn.ground;
  out.ground = ground.up != Force{} || ground.drag != Force{} || ground.along != Force{};
  return out;
}

std::optional<Beared> beared(Part& p, const PressedIn& press) {
  const auto inside = inside_of(p);
  if (!inside) return std::nullopt;
  std::optional<Beared> out = before_life(p, *inside, press);
  if (!out) return std::nullopt;
  auto life = bearings::turn_life(out->task);
  if (!life) return p.problems.push_back(of_definition(p, life.error())), std::nullopt;
  out->life = *std::move(life);
  return out;
}

}  // namespace

void add_press(const Way& way, Outcome& to) {
  Part part{way, 1, to.press_problems};
  to.press = pressed_in(part);
}

void add_bearing(const Way& way, Outcome& to) {
  for (int rotor = 1; rotor <= way.shaft.rotor_count(); ++rotor) {
    if (rotor > 1 && same_bearing(way.shaft, rotor, rotor - 1)) continue;
    Part part{way, rotor, to.bearing_problems};
    const std::optional<PressedIn> press = rotor == 1 ? to.press : pressed_in(part);
    if (!press) return;  // Its problem is told already.
    std::optional<Beared> bearing = beared(part, *press);
    if (!bearing) return to.bearing.reset();
    if (!to.bearing || bearing->life.basic < to.bearing->life.basic) {
      to.bearing = std::move(bearing);
      to.press = press;
    }
  }
  if (!to.bearing) return;
  Part part{way, to.bearing->rotor, to.bearing_problems};
  const auto inside = inside_of(part);
  CORE_CHECK(inside.has_value());
  to.bearing->turn = turn_working(part, *inside, *to.bearing);
  std::vector<Problem> silent;  // A bearing without clearance has no play to read: no problem of the way.
  Part quiet{way, to.bearing->rotor, silent};
  to.bearing->play = to.bearing->clearance.greatest > Length{} ? play_working(quiet, *inside, *to.bearing) : nullptr;
}

Results<BearingTold> bearing_of(const Shaft& shaft, int rotor) {
  CORE_CHECK(rotor >= 1 && rotor <= shaft.rotor_count());
  const Way as_defined{.typed = {}, .shaft = shaft};
  std::vector<Problem> problems;
  Part part{as_defined, rotor, problems};
  const std::optional<PressedIn> press = pressed_in(part);
  const std::optional<Inside> inside = press ? inside_of(part) : std::nullopt;
  const std::optional<Beared> bearing = inside ? before_life(part, *inside, *press) : std::nullopt;
  const WorkingPtr turn = bearing ? turn_working(part, *inside, *bearing) : nullptr;
  if (turn == nullptr) return tl::unexpected(std::move(problems));
  std::vector<Problem> silent;  // As above.
  Part quiet{as_defined, rotor, silent};
  return BearingTold{.rotor = rotor,
                     .geometry = inside->geometry,
                     .fitted = bearing->fitted,
                     .play = bearing->clearance.greatest > Length{} ? play_working(quiet, *inside, *bearing) : nullptr,
                     .turn = turn,
                     .ground = bearing->ground};
}

}  // namespace flatwise::study
