// The shaft as a beam: what its hangers feel when it bends, and its critical speeds.
#include <algorithm>

#include "study/outcome.h"

namespace flatwise::study {

void add_bending(const Way& way, Outcome& to) {
  const AngularSpeed speed = way.shaft.spec().speed;
  Bent out{.of = beam::beam_of(way.shaft, to.arranged.tilt), .hanger = {}};
  const Result<beam::Mesh> mesh = beam::Mesh::make(out.of.beam);
  if (!mesh) return to.bent_problems.push_back(mesh.error());
  const auto turning = beam::bent_turning(*mesh, out.of.turning, speed);
  if (!turning) return to.bent_problems.push_back(turning.error());
  for (const beam::Reaction& reaction : turning->reactions) out.hanger = std::max(out.hanger, reaction.size);
  for (const beam::Whirl whirl : {beam::Whirl::forward, beam::Whirl::backward}) {
    const auto criticals = beam::critical_speeds(*mesh, whirl, beam::kCriticalsTold);
    if (!criticals) return to.bent_problems.push_back(criticals.error());
    if (whirl == beam::Whirl::forward && !criticals->speeds.empty()) out.forward = criticals->speeds.front();
    for (const beam::NearSpeed& near : beam::within_keep_off(criticals->speeds, speed))
      if (!out.nearest) out.nearest = near.speed;
  }
  to.bent = std::move(out);
}

}  // namespace flatwise::study
