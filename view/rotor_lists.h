// rotor_lists.h: rows of rotors in words, and which rotors a job is about.
#pragma once

#include <string>
#include <vector>

#include "view/bench_view.h"

namespace flatwise::view {

/// "rotors 1 to 4", "rotors 3 and 7", "rotor 3". In order, each once.
[[nodiscard]] std::string rotor_runs(const Screen& screen, const std::vector<int>& rotors);

/// Rotors that are to be opened: as decided; else the suspects that stand apart; empty where nothing points at one.
[[nodiscard]] std::vector<int> rotors_to_open(const Subject& subject);

}  // namespace flatwise::view
