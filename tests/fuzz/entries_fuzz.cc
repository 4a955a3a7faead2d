// entries_fuzz.cc: any bytes as entries that a client sends. Nothing may crash; a refusal says which field of which entry; what is
// accepted is written in one form only, and that form reads back as the same entries, also from the row they are stored in.
// Links: record
#include <cstdint>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "job/entry_fields.h"
#include "record/canonical.h"
#include "record/chain.h"
#include "record/entry_json.h"
#include "record/strict_json.h"

namespace {

using flatwise::job::Entry;
using flatwise::wire::Json;
namespace record = flatwise::record;

const flatwise::job::Id kJob{"019a0000-0000-7000-8000-000000000001"};

void demand(bool condition) {
  if (!condition) std::abort();
}

std::string canonical_of(const std::vector<Entry>& entries) {
  Json list = Json::array();
  for (const Entry& entry : entries) list.push_back(record::entry_in_json(entry));
  return record::canonical(Json{{"entries", std::move(list)}});
}

/// Where the text is an object at all, each problem names a field of it, or shows what stands in the one without a name.
void says_what_is_wrong(std::string_view text, const std::vector<flatwise::Problem>& problems) {
  demand(!problems.empty());
  const auto json = record::strict_json(text);
  const bool object = json && json->is_object();
  for (const auto& problem : problems)
    demand(!problem.code.id().empty() && (!object || !problem.field.empty() || !problem.given.empty()));
}

/// Whatever asks an entry what it is must have an answer for all that may be said.
void is_known(const Entry& entry) {
  demand(entry.job == kJob && !flatwise::job::kind_of(entry.body).empty());
  (void)flatwise::job::question_of(entry.body);
  (void)flatwise::job::stage_of(entry.body);
}

void body_reads_back(const Entry& entry) {
  const Json body = record::body_json(entry.body);
  const auto again = record::read_body(body, "body");
  demand(again.has_value());
  demand(flatwise::job::same_answer(*again, entry.body));
  demand(record::canonical(record::body_json(*again)) == record::canonical(body));
}

void row_reads_back(const Entry& entry) {
  const auto row = record::to_row(entry);
  const auto again = record::from_row(row);
  demand(again.has_value());
  demand(record::canonical(record::entry_json(*again)) == record::canonical(record::entry_json(entry)));
  demand(record::chain_hash(record::to_row(*again)) == record::chain_hash(row));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto entries = record::read_entries(text, kJob);
  if (!entries) {
    says_what_is_wrong(text, entries.error());
    return 0;
  }
  demand(!entries->empty() && entries->size() <= record::kMostEntries);
  const std::string once = canonical_of(*entries);
  const auto again = record::read_entries(once, kJob);
  demand(again.has_value() && canonical_of(*again) == once);
  for (const Entry& entry : *entries) {
    is_known(entry);
    body_reads_back(entry);
    row_reads_back(entry);
  }
  return 0;
}
