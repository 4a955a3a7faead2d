// times.h: the server's clock. How instants and days are written: record/instant.h.
#pragma once

#include <string>

#include "job/entry.h"

namespace flatwise::server {

[[nodiscard]] job::Instant now();
[[nodiscard]] Day today();  ///< In UTC, as the record has it.
[[nodiscard]] job::Id fresh_id();
/// A moment in this machine's time zone: its day, and "14:20".
struct Local {
  Day day;
  std::string time;
};
[[nodiscard]] Local local(job::Instant at);
/// record::text_of(at) put behind what is in `out`, without a string of its own: for the lists that must be quick.
void add_instant(std::string& out, job::Instant at);

}  // namespace flatwise::server
