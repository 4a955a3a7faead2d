// context.h: what every verb of the command line gets: how to speak, where to write, and what the exit status means.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "core/working/working.h"
#include "words/words.h"

namespace flatwise::cli {

/// 0 answered and in order; 1 answered and something is out, open or cannot be told; 2 the input was bad.
enum class Status { in_order = 0, not_in_order = 1, bad_input = 2 };

struct Context {
  Voice voice;
  bool json = false;      ///< For programs.
  bool why = false;       ///< Show the working of every figure.
  bool colour = false;    ///< Only on a terminal.
  bool progress = false;  ///< Only when the error stream is a terminal.
  int width = 100;        ///< Columns of the table.
  std::ostream* out = nullptr;
  std::ostream* err = nullptr;
  std::istream* in = nullptr;
};

[[nodiscard]] inline Status status_of(Severity worst) {
  return worst == Severity::note ? Status::in_order : Status::not_in_order;
}
/// Prints problems (text on the error stream, or JSON on the output) and gives bad_input.
Status refuse(const Context& context, const std::vector<Problem>& problems);
Status refuse(const Context& context, Problem problem);
/// Problems whose field is one of `names`, said as the option that was typed: "stay" as "--stay".
[[nodiscard]] std::vector<Problem> as_options(std::vector<Problem> problems, const std::vector<std::string>& names);

}  // namespace flatwise::cli
