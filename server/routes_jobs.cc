// Cards of jobs: read from their rows, not folded, written straight into the reply.
#include "server/routes.h"
#include "server/rows.h"

#include "record/instant.h"

namespace flatwise::server {
namespace {

constexpr int kMostJobs = 50;
constexpr std::size_t kCardBytes = 480;

Reply list_of(const std::vector<job::JobRow>& rows) {
  std::string out;
  out.reserve(16 + rows.size() * kCardBytes);
  out += "{\"jobs\":[";
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (i > 0) out += ',';
    add_job(out, rows[i]);
  }
  out += "]}";
  return json_reply(std::move(out));
}

}  // namespace

Reply get_job(const Call& call) {
  const auto row = call.store.job(call.id());
  if (!row) return fault_reply(row.error(), "id");
  std::string out;
  out.reserve(kCardBytes);
  add_job(out, *row);
  return tagged(json_reply(std::move(out)), '"' + row->head + '"', call.request.if_none_match);
}

Reply get_jobs(const Call& call) {
  const auto number = call.query.find("number");
  if (!number) {
    const auto rows = call.store.open_jobs();
    return rows ? list_of(*rows) : fault_reply(rows.error(), "jobs");
  }
  const auto row = call.store.job_by_number(std::string{*number});
  if (row) return list_of({*row});
  if (row.error().kind == job::StoreFault::Kind::missing) return list_of({});
  return fault_reply(row.error(), "number");
}

Reply get_machine_jobs(const Call& call) {
  std::optional<job::Instant> before;
  if (const auto text = call.query.find("before")) before = record::instant_of(*text);
  const auto rows = call.store.jobs_of(call.id(), call.query.whole("limit").value_or(kMostJobs), before);
  if (!rows) return fault_reply(rows.error(), "id");
  if (rows->empty())  // A machine without jobs, or none.
    if (const auto machine = call.store.machine(call.id()); !machine) return fault_reply(machine.error(), "id");
  return list_of(*rows);
}

}  // namespace flatwise::server
