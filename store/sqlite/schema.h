// schema.h: the tables, as a list of migrations from version 1. A version that was ever released is never edited: what
// changes later is a new entry at the end.
#pragma once

#include <span>

#include "store/sqlite/connection.h"

namespace flatwise::store_sqlite {

/// "Flat" in ASCII: says that a SQLite file is ours.
inline constexpr int kApplicationId = 0x466c6174;

/// Brings a store from version n to n + 1, where n is its place in the list (from 0: an empty file).
struct Migration {
  const char* sql;
};
[[nodiscard]] std::span<const Migration> migrations();
/// Version of a store that this program makes.
[[nodiscard]] int newest_version();

/// Runs what is missing of `list`, each in one transaction; safe where two programs do it at once. Throws as Connection does.
void migrate(Connection& connection, std::span<const Migration> list);

}  // namespace flatwise::store_sqlite
