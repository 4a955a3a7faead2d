#include "core/beam/hanger_rows.h"

#include <complex>

#include "core/beam/of_shaft.h"

namespace flatwise::beam {

Result<std::vector<dynamics::HangerRow>> hanger_rows(const Shaft& shaft) {
  const auto rotors = static_cast<std::size_t>(shaft.rotor_count());
  const std::vector<Angle> towards_flat_1(rotors);
  const ShaftBeam of = beam_of(shaft, towards_flat_1);
  CORE_CHECK(of.turning.size() == rotors + shaft.spec().unbalances.size());  // A Shaft's rotors have a mass.
  const Result<Mesh> mesh = Mesh::make(of.beam);
  if (!mesh) return tl::unexpected(mesh.error());
  const auto effects = effects_of(*mesh, of.turning, shaft.spec().speed, {0, shaft.flats()});
  if (!effects) return tl::unexpected(effects.error());
  std::vector<dynamics::HangerRow> rows;
  for (std::size_t h = 0; h < of.hangers.size(); ++h) {
    dynamics::HangerRow& row = rows.emplace_back();
    row.label = of.hangers[h].label;
    for (std::size_t i = 0; i < effects->shares.size(); ++i) {
      const Share& share = effects->shares[i][h];
      const Phasor force = std::polar(share.size.si(), share.direction.radians());
      if (i < rotors)
        row.rotors_n.push_back(force.real());
      else
        row.fixed_n += force;
    }
  }
  return rows;
}

}  // namespace flatwise::beam
