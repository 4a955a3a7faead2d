// roles.h: who may sign, release and answer for what. Everything else anybody at the bench may enter.
#pragma once

#include <optional>

#include "job/entry.h"

namespace flatwise::job {

/// The role an entry wants when somebody of role `who` may not make it; none: they may. The lead may stand in at the bench; nobody
/// stands in for the lead or the owner. Common practice.
[[nodiscard]] std::optional<Role> lacks_role(Role who, const EntryBody& body);

}  // namespace flatwise::job
