// schema.h: the JSON Schema of the bodies of entries, from the one list of fields: schemas/api/entry-bodies.json, which the contract
// of the API refers to.
#pragma once

#include <string>

#include "words/words.h"

namespace flatwise::record {

/// JSON Schema 2020-12: one object a kind, told apart by `kind`; no other members. Ranges of quantities and all that hangs on two
/// fields only the reader checks.
[[nodiscard]] std::string entry_bodies_schema(const Voice& voice);

}  // namespace flatwise::record
