// chain.h: the chain of a job: every entry carries the hash of the one before it, so that nobody can change or take out one without
// all after it showing it.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "job/store.h"

namespace flatwise::record {

/// SHA-256 (FIPS 180-4) of bytes, 64 hex digits in lower case.
[[nodiscard]] std::string sha256(std::string_view bytes);

/// What is hashed of an entry: canonical JSON (record/canonical.h) of an object with the members at, before, body, by, corrects,
/// follows, id, job, kind, number and on, and received where it is known; the body as it is kept, times as in the API, empty ids
/// and hashes null.
[[nodiscard]] std::string chain_text(const job::EntryRow& row);
/// sha256(chain_text(row)): with its number and the hash before it, whatever stands in row.hash.
[[nodiscard]] std::string chain_hash(const job::EntryRow& row);

struct BrokenLink {
  int number = 0;  ///< Of the first entry that does not hold.
  enum class Why { number, before, hash } why = Why::hash;
};
/// All entries of one job in order; none when all holds: numbers from 1 without a gap, each `before` the hash of the one
/// before it, each hash that of its entry.
[[nodiscard]] std::optional<BrokenLink> verify_chain(std::span<const job::EntryRow> rows);

}  // namespace flatwise::record
