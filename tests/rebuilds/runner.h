// runner.h: the one door between the truth model and the program: texts in, what was said out.
#pragma once

#include <string>

#include "tests/rebuilds/told.h"

namespace rebuilds {

/// A check that is broken on purpose: its findings are dropped, or said of another rotor, half, end or label.
struct Break {
  std::string what;  ///< A finding's code, or a question ("question.seals_new"); empty: nothing is broken.
  bool misplace = false;
};
/// "kit.wrong_bearing" or "timing.half_out:misplace".
[[nodiscard]] Break read_break(const std::string& text);

[[nodiscard]] AllTold ask_program(const Texts& texts);
[[nodiscard]] AllTold broken_by(const Break& broken, AllTold told);

}  // namespace rebuilds
