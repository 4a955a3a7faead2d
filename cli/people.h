// people.h: somebody at the shell, by name or id.
#pragma once

#include <string>

#include "core/units/problem.h"
#include "job/store.h"

namespace flatwise::cli {

/// Who is meant.
struct Named {
  std::string_view option;     ///< Where the name was typed: "--by".
  bool also_who_left = false;  ///< By name too; by id anybody is found.
};
/// The person by name, however its letters are, or by id.
///
/// Refuses    A name that nobody has, with those there are.
[[nodiscard]] Result<job::Person> find_person(job::Store& store, const std::string& name, const Named& named);

}  // namespace flatwise::cli
