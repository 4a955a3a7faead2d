// names.h: how a choice stands in a column: by its name, in the order of its enum.
#pragma once

#include <algorithm>
#include <string>

#include "store/sqlite/connection.h"

namespace flatwise::store_sqlite {

template <class Names>
int place_in(const Names& names, const std::string& name) {
  const auto it = std::ranges::find(names, name);
  if (it == names.end()) refuse(StoreFault::Kind::damaged, "no such word: " + name);
  return static_cast<int>(it - names.begin());
}

}  // namespace flatwise::store_sqlite
