// problem.h: a person or a device gave something unusable. Not a finding (working/working.h: the sum worked, the
// answer is bad) and not a bug (CORE_CHECK).
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/units/code.h"

namespace flatwise {

/// Where a value stood. Line and column count from 1; 0 means the whole file.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  std::string quoted;  ///< The line as written, without its end; empty when there is none to show.
};

/// Named field, value as given, and what is allowed. The dictionary has three sentences a code: `code` (what was
/// read), `code.allowed` and `code.mend`, all filled from `args`, which always can use {field} and {given} too.
struct Problem {
  Code code;
  std::string field;  ///< Path of the field ("rotor.bearing.d", "stack[4].spacer") or the input's name.
  std::string given;  ///< As typed; empty when it is missing.
  Args args;
  std::optional<Place> place;
};

/// A problem as one sentence of its code: what was asked for and what was given stand beside its own figures.
[[nodiscard]] Message message_of(const Problem& problem);

template <class T>
using Result = tl::expected<T, Problem>;
/// Many problems at once: readers of files give all they find, never only the first.
template <class T>
using Results = tl::expected<T, std::vector<Problem>>;

/// A broken invariant: a bug of ours, never reachable by input. Throws std::logic_error where exceptions exist,
/// traps where they do not (WebAssembly).
[[noreturn]] void core_check_failed(const char* condition, const char* file, int line);

}  // namespace flatwise

#define CORE_CHECK(condition)                                                        \
  do {                                                                               \
    if (!(condition)) ::flatwise::core_check_failed(#condition, __FILE__, __LINE__); \
  } while (false)
