// shaft_bend.h: a whole shaft as a beam, as it is told to programs. One function behind the shell's `bend` and the API's
// /api/shafts/{id}/bend.
#pragma once

#include <string>
#include <vector>

#include "core/beam/of_shaft.h"
#include "core/doubt/of_shaft.h"
#include "wire/json.h"

namespace flatwise::view {

/// All that is told of one shaft that bends.
struct ShaftBend {
  beam::ShaftBending bending;
  std::vector<Working> workings;
  std::vector<doubt::ToldDoubt> doubts;  ///< As job::bending_doubts().
};

/// Refuses    As timing::map() and beam::bending_of(); without hangers that hold it: by the stack's order and the line where that begins.
[[nodiscard]] Results<ShaftBend> bend_of(const Shaft& shaft);

/// schemas/output/bend.schema.json.
[[nodiscard]] wire::Json bend_json(const Shaft& shaft, const ShaftBend& bend, const Voice& voice);

/// The speeds of a response, as typed; empty: from a tenth of the shaft's speed to twice it, at 200.
struct ResponseAsked {
  std::string from, to;
  int speeds = 200;
};
/// Response over speed as CSV for programs: a full stop, no unit in the cells, the unit in the head.
///
/// Refuses    What cannot be read, named from or to; then as beam::response_of().
[[nodiscard]] Result<std::string> response_csv(const Shaft& shaft, const ShaftBend& bend, const ResponseAsked& asked);

}  // namespace flatwise::view
