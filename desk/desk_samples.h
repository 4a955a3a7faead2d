// desk_samples.h: the demo's store in a folder of its own, for the tests here.
#pragma once

#include <memory>

#include "desk/demo.h"
#include "store/sqlite/test_place.h"

namespace flatwise::desk {

/// What was not done, as text.
inline std::string told(const Refusal& refusal) {
  std::string out = refusal.fault ? "fault " + refusal.fault->detail : "";
  for (const Problem& p : refusal.problems) out += std::string{p.code.id()} + " " + p.field + " <" + p.given + ">; ";
  return out;
}

}  // namespace flatwise::desk
