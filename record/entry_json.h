// entry_json.h: entries to JSON and back, by the one list of fields in job/entry_fields.h. Quantities travel as typed text.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "job/store.h"
#include "wire/json.h"

namespace flatwise::record {

inline constexpr std::size_t kMostEntries = 256;  ///< In one call.
inline constexpr std::size_t kMostCorrects = 64;  ///< Entries that one may point at.

/// Entries as a client sends them: {"entries": [{"id", "by", "on", "at", "follows", "corrects", "body"}, ...]}.
///
/// Refuses    What strict_json() refuses; otherwise every unknown, missing or impossible field at once, each with its path
///            ("entries[2].body.diameter"): an entry's own id that is not of version 7, wrong type, a quantity without its unit
///            or out of range, text too long or with control characters, ids, times, days and choices that are none; the same
///            id twice.
[[nodiscard]] Results<std::vector<job::Entry>> read_entries(std::string_view text, const job::Id& job);
[[nodiscard]] Results<std::vector<job::Entry>> entries_from(const wire::Json& json, const job::Id& job);
/// One body: {"kind": "mark_seen", "rotor": 4, ...}. `path` stands before the fields' names.
[[nodiscard]] Results<job::EntryBody> read_body(const wire::Json& json, const std::string& path);

[[nodiscard]] wire::Json body_json(const job::EntryBody& body);
/// As a client sends it.
[[nodiscard]] wire::Json entry_in_json(const job::Entry& entry);
/// With what was given when it was stored: number, before, hash.
[[nodiscard]] wire::Json entry_json(const job::Entry& entry);

/// To the row and back. A row that cannot be read was not written by us: its problems say what is wrong with it.
[[nodiscard]] job::EntryRow to_row(const job::Entry& entry);
[[nodiscard]] Results<job::Entry> from_row(const job::EntryRow& row);

}  // namespace flatwise::record
