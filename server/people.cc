#include "server/people.h"

#include <algorithm>

#include "server/rows.h"

namespace flatwise::server {

std::optional<Problem> problem_of_sender(const std::vector<job::Person>& people, const job::Id& by,
                                         std::optional<job::Role> (*lacks)(job::Role)) {
  const auto it = std::ranges::find(people, by, &job::Person::id);
  if (it == people.end() || !it->active) return problem_of(Code{"record.no_such_person"}, "by", by);
  if (lacks == nullptr) return std::nullopt;
  const auto role = lacks(it->role);
  if (!role) return std::nullopt;
  return problem_of(Code{"record.wrong_role"}, "by", it->name, {{"role", Word{"role." + std::string{name_of(*role)}}}});
}

std::map<job::Id, std::string> names_of(const std::vector<job::Person>& people) {
  std::map<job::Id, std::string> names;
  for (const job::Person& p : people) names[p.id] = p.name;
  return names;
}

}  // namespace flatwise::server
