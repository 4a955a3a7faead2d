#include "view/suspects_table.h"

#include <nlohmann/json.hpp>

#include "view/blocks.h"
#include "view/rotor_lists.h"

namespace flatwise::view {

Json suspects_table(const Subject&, const Screen&, bool) { return nullptr; }

std::vector<int> rotors_to_open(const Subject& subject) {
  if (subject.job.state.way != nullptr) return subject.job.state.way->open;
  return {};
}

}  // namespace flatwise::view
