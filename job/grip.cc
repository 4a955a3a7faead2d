#include "job/grip.h"

#include <cmath>

#include "core/dynamics/resultants.h"
#include "core/fits/figures.h"
#include "job/figure_use.h"

namespace flatwise::job {
namespace {

/// What is left of an interference once the roughness is flattened.
Input flattened(const Input& interference, Length loss) {
  const Length left = metres(std::get<AnyQuantity>(interference.value).si) - loss;
  return computed_input(interference.name, any(left), "δ − loss");
}

Torque couple_on(const Shaft& shaft, int rotor) {
  const std::vector<Angle> straight(static_cast<std::size_t>(shaft.rotor_count()));
  const auto set = dynamics::rotating_sets(shaft, straight)[static_cast<std::size_t>(rotor - 1)];
  return newton_metres(std::abs(set.couple.si()));
}

}  // namespace

bearings::GroundLoad ground_on(const Shaft& shaft, int rotor) {
  bearings::GroundLoad ground;
  for (const FixedLoad& load : shaft.spec().loads) {
    if (load.station && *load.station != shaft.station_of_rotor(rotor)) continue;
    ground.up = ground.up + load.force * std::cos(load.direction.radians());
    ground.drag = ground.drag + load.force * std::sin(load.direction.radians());
    ground.along = ground.along + load.along;
  }
  return ground;
}

Results<WorkingPtr> creep_load(const Shaft& shaft, int rotor, const FitInputs& fit) {
  const RotorOf part = rotor_of(shaft, rotor);
  const bearings::GroundLoad ground = ground_on(shaft, rotor);
  const Force radial = newtons(std::hypot(ground.up.si(), ground.drag.si()));
  const Origin from_ground = radial > Force{} ? shaft.origin("load[1].force")
                                              : Origin{OriginKind::assumed, "no load from the ground is defined"};
  return worked(
      fits::figures(), "creep-load",
      {part.length("joint-diameter", part.it.bearing.outside, "bearing.D"),
       part.length("width", part.it.bearing.width, "bearing.B"), given("radial", any(radial), from_ground),
       computed_input("couple", any(couple_on(shaft, rotor)), "rotating-couple"),
       flattened(fit.least, part.it.hub.roughness_loss), flattened(fit.greatest, part.it.hub.roughness_loss)});
}

Results<WorkingPtr> hub_yielding(const Shaft& shaft, int rotor, const FitInputs& fit) {
  const RotorOf part = rotor_of(shaft, rotor);
  Input greatest = fit.greatest;
  greatest.name = "interference";
  greatest.symbol.clear();
  std::vector<Input> in = joint_inputs(part);
  in.push_back(std::move(greatest));
  in.push_back(given("hub-yield", any(part.it.hub.material.yield), part.from("hub.material")));
  return worked(fits::figures(), "hub-yielding", std::move(in));
}

}  // namespace flatwise::job
