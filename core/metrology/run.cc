#include "core/metrology/run.h"

#include <array>
#include <vector>

namespace flatwise::metrology {
namespace {

void add_parts(const InstrumentRead& read, std::vector<Component>& to) {
  to.push_back({from_k2(*read.calibration_si)});
  to.push_back({from_resolution(read.resolution_si)});
  if (read.scatter) to.push_back(*read.scatter);
}

}  // namespace

std::optional<Sized> sized_from(const InstrumentRead& read) {
  if (!read.calibration_si) return std::nullopt;
  std::vector<Component> parts;
  add_parts(read, parts);
  const Combined c = combine(parts);
  return Sized{read.value_si, c.u, c.dof};
}

std::optional<Sized> rise_above(const InstrumentRead& hanger, const InstrumentRead& room) {
  if (!hanger.calibration_si || !room.calibration_si) return std::nullopt;
  std::vector<Component> parts;
  add_parts(hanger, parts);
  add_parts(room, parts);
  const Combined c = combine(parts);
  return Sized{hanger.value_si - room.value_si, c.u, c.dof};
}

Zone vibration_zone(Speed rms, MachineGroup group, Support support) {
  using Boundaries = std::array<double, 3>;  // A/B, B/C, C/D in mm/s
  constexpr Boundaries kBoundaries[2][2] = {{{2.3, 4.5, 7.1}, {3.5, 7.1, 11.0}}, {{1.4, 2.8, 4.5}, {2.3, 4.5, 7.1}}};
  const Boundaries& at = kBoundaries[static_cast<int>(group)][static_cast<int>(support)];
  int zone = 0;
  constexpr double kOnIt = 1 + 1e-9;  // A typed boundary is on it, whatever a unit's factor leaves behind.
  while (zone < 3 && rms.si() * 1000 > kOnIt * at[static_cast<std::size_t>(zone)]) ++zone;
  return static_cast<Zone>(zone);
}

}  // namespace flatwise::metrology
