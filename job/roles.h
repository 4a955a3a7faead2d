// roles.h: who may sign, release and answer for what. Everything else anybody at the bench may enter.
#pragma once

#include <optional>

#include "job/entry.h"

namespace flatwise::job {

/// The role an entry wants when somebody of role `who` may not make it; none: they may. The lead may stand in at the bench; nobody
/// stands in for the lead or the owner. Common practice.
[[nodiscard]] std::optional<Role> lacks_role(Role who, const EntryBody& body);

/// The role that it takes to bring in a gauge or to note a calibration, when somebody of role `who` may not: every answer of the
/// bench rests on it, so the lead answers for it. Common practice.
[[nodiscard]] std::optional<Role> lacks_role_for_gauges(Role who);

/// The role that it takes to let another device in, when somebody of role `who` may not: who is let in writes into every record,
/// so lead or owner answers for it. Common practice.
[[nodiscard]] std::optional<Role> lacks_role_to_let_in(Role who);

/// The role that it takes to say who is at work here and who has left, when somebody of role `who` may not. Common practice.
[[nodiscard]] std::optional<Role> lacks_role_for_people(Role who);

}  // namespace flatwise::job
