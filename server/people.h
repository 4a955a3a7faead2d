// people.h: whose name stands under what is sent, and whether they may.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "server/routes.h"

namespace flatwise::server {

/// The problem with a sender: nobody of that id at work here, or a role that may not (`wanted` names the one who may).
[[nodiscard]] std::optional<Problem> problem_of_sender(const std::vector<job::Person>& people, const job::Id& by,
                                                       std::optional<job::Role> (*lacks)(job::Role) = nullptr);

/// Their names by id.
[[nodiscard]] std::map<job::Id, std::string> names_of(const std::vector<job::Person>& people);

/// What to say where a name is nothing but space.
[[nodiscard]] std::optional<Reply> no_name(const Call& call, const std::string& name);

}  // namespace flatwise::server
