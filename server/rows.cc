#include "server/rows.h"

#include <nlohmann/json.hpp>

#include "record/instant.h"
#include "server/json_text.h"
#include "server/times.h"

namespace flatwise::server {

using wire::Json;

void add_job(std::string& out, const job::JobRow& row) {
  out += "{\"id\":";
  quote(out, row.id);
  out += ",\"number\":";
  quote(out, row.number);
  out += ",\"machine\":";
  quote(out, row.machine);
  out += ",\"shaft_version\":";
  quote(out, row.shaft_version);
  ((out += ",\"stage\":\"") += job::stage_name(row.present)) += "\",\"waiting\":";
  quote(out, row.waiting);
  out += ",\"booked\":\"";
  add_instant(out, row.booked);
  out += "\",\"changed\":\"";
  add_instant(out, row.changed);
  out += row.released ? "\",\"released\":true,\"entries\":" : "\",\"released\":false,\"entries\":";
  number(out, row.entries);
  out += ",\"head\":";
  quote(out, row.head);
  if (row.due) ((out += ",\"due\":\"") += record::text_of(*row.due)) += '"';
  out += '}';
}

std::string_view name_of(job::Role role) {
  switch (role) {
    case job::Role::lead:
      return "lead";
    case job::Role::owner:
      return "owner";
    case job::Role::bench:
      break;
  }
  return "bench";
}

Json person_json(const job::Person& person) {
  return {{"id", person.id}, {"name", person.name}, {"role", name_of(person.role)}, {"active", person.active}};
}

Json customer_json(const job::Customer& customer) {
  return {{"id", customer.id}, {"name", customer.name}, {"reach", customer.reach}};
}

Json machine_json(const job::Machine& machine) {
  return {{"id", machine.id},
          {"customer", machine.customer},
          {"name", machine.name},
          {"shaft", machine.shaft},
          {"invented", machine.invented}};
}

}  // namespace flatwise::server
