#include "job/roles.h"

namespace flatwise::job {
namespace {

/// The role that answers for an entry; none: anybody.
std::optional<Role> wanted(const EntryBody& body) {
  if (const auto* s = std::get_if<Signed>(&body)) return s->as;
  if (std::holds_alternative<Released>(body) || std::holds_alternative<GaugeAccepted>(body)) return Role::lead;
  return std::nullopt;
}

}  // namespace

std::optional<Role> lacks_role(Role who, const EntryBody& body) {
  const std::optional<Role> role = wanted(body);
  if (!role || *role == who) return std::nullopt;
  if (*role == Role::bench && who == Role::lead) return std::nullopt;
  return role;
}

std::optional<Role> lacks_role_for_gauges(Role who) {
  return who == Role::lead ? std::nullopt : std::optional{Role::lead};
}

std::optional<Role> lacks_role_to_let_in(Role who) {
  return who == Role::bench ? std::optional{Role::lead} : std::nullopt;
}

std::optional<Role> lacks_role_for_people(Role who) { return lacks_role_to_let_in(who); }

}  // namespace flatwise::job
