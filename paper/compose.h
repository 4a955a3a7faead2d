// compose.h: which sheets a job has use for, filled from the shaft, the plan and what was read: the one place where a
// sheet meets its data, for shell and server alike.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/shaft/shaft.h"
#include "job/bench.h"
#include "paper/hand_over.h"
#include "paper/sheets.h"

namespace flatwise::paper {

struct Composed {
  std::string name;  ///< "timing-map"; also the file's name.
  std::string title;
  Pages pages;
};

/// What sheets are for.
struct SheetOrder {
  const Shaft* shaft = nullptr;
  const Workshop* workshop = nullptr;
  const Bench* bench = nullptr;    ///< nullptr: nothing read yet.
  std::vector<int> rotors;         ///< To open; with a bench what came off.
  std::vector<std::string> names;  ///< Out of sheet_names(); empty: all.
  Head head;
  std::optional<HandOverOrder> record{};  ///< For the hand-over record; its head is this one's.
};
/// Names of all sheets, in the order of the bench.
[[nodiscard]] const std::vector<std::string>& sheet_names();
/// Refuses    Rotors that cannot be opened; every sheet but the timing map and the hand-over record needs rotors; the
///            hand-over record needs the record.
[[nodiscard]] Results<std::vector<Composed>> compose(const SheetOrder& order, const TextMeasure& measure);

}  // namespace flatwise::paper
