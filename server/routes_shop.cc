// The workshop: people, customers. Its gauges: routes_gauges.cc; its parts: routes_stock.cc.
#include <nlohmann/json.hpp>

#include "record/instant.h"
#include "server/input.h"
#include "server/live.h"
#include "server/routes.h"
#include "server/rows.h"
#include "server/times.h"

namespace flatwise::server {
namespace {

using wire::Json;
namespace fields = job::fields;

Json gauges_json(const Workshop& workshop) {
  Json list = Json::array();
  for (const Gauge& g : workshop.gauges) {
    const std::string use{fields::kUses[static_cast<std::size_t>(g.use)]};
    list.push_back({{"id", g.id},
                    {"use", use},
                    {"label", word("gauge_use." + use, {})},
                    {"calibrated_until", record::text_of(g.calibrated_until)},
                    {"overdue", g.calibrated_until < today()}});
  }
  return list;
}

/// The open job on an invented machine that is furthest on: the one half done, where there is one.
Json demo_job(job::Store& store) {
  const auto machines = store.machines();
  const auto open = store.open_jobs();
  if (!machines || !open) return nullptr;
  const job::JobRow* furthest = nullptr;
  for (const job::JobRow& row : *open) {
    const bool invented =
        std::ranges::any_of(*machines, [&](const job::Machine& m) { return m.id == row.machine && m.invented; });
    if (invented && (furthest == nullptr || row.entries > furthest->entries)) furthest = &row;
  }
  return furthest == nullptr ? Json() : Json(furthest->id);
}

bool has_own_shafts(job::Store& store) {
  const auto machines = store.machines();
  if (!machines) return false;
  return std::ranges::any_of(*machines, [](const job::Machine& m) { return !m.invented; });
}

Json people_json(const std::vector<job::Person>& people) {
  Json list = Json::array();
  for (const job::Person& p : people) list.push_back(person_json(p));
  return list;
}

}  // namespace

Reply get_workshop(const Call& call) {
  const auto workshop = call.store.workshop();
  if (!workshop) return fault_reply(workshop.error(), "workshop");
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "people");
  Json json{{"name", workshop->name}, {"invented", workshop->invented}, {"people", people_json(*people)}};
  json["gauges"] = gauges_json(*workshop);
  json["own_shafts"] = has_own_shafts(call.store);
  json["demo_job"] = demo_job(call.store);
  if (!workshop->currency.empty()) json["currency"] = workshop->currency;
  return json_reply(json);
}

Reply get_people(const Call& call) {
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "people");
  return json_reply(Json{{"people", people_json(*people)}});
}

Reply post_person(const Call& call) {
  Input input{call};
  job::Person person;
  std::optional<bool> active;
  input(id_field("id"), person.id);
  input(fields::text("name", 1, 80), person.name);
  input(fields::word("role", fields::kRoles), person.role);
  input({.name = "active"}, active);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  person.active = active.value_or(true);
  if (const auto kept = call.store.put_person(person); !kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return json_reply(person_json(person), 201);
}

Reply get_customers(const Call& call) {
  const auto customers = call.store.customers();
  if (!customers) return fault_reply(customers.error(), "customers");
  Json list = Json::array();
  for (const job::Customer& c : *customers) list.push_back(customer_json(c));
  return json_reply(Json{{"customers", std::move(list)}});
}

Reply post_customer(const Call& call) {
  Input input{call};
  job::Customer customer;
  std::optional<std::string> reach;
  input(id_field("id"), customer.id);
  input(fields::text("name", 1, 120), customer.name);
  input(fields::text("reach", 0, 400), reach);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  customer.reach = reach.value_or("");
  if (const auto kept = call.store.put_customer(customer); !kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return json_reply(customer_json(customer), 201);
}

}  // namespace flatwise::server
