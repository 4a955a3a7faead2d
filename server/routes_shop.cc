// The workshop: people, customers. Its gauges: routes_gauges.cc; its parts: routes_stock.cc.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "job/person_name.h"
#include "job/roles.h"
#include "job/shop_rules.h"
#include "record/instant.h"
#include "server/input.h"
#include "server/live.h"
#include "server/people.h"
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

bool is_there(job::Store& store, const job::Id& person) {
  const auto people = store.people();
  return people && std::ranges::find(*people, person, &job::Person::id) != people->end();
}

}  // namespace

std::optional<Reply> no_name(const Call& call, const std::string& name) {
  if (!job::folded_name(name).empty()) return std::nullopt;
  return problem_reply(422, problem_of(Code{"http.no_name"}, "name", name), call.voice);
}

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
  if (auto blank = no_name(call, person.name)) return *std::move(blank);
  const auto kept = call.store.put_person(person);
  if (!kept && kept.error().kind == job::StoreFault::Kind::exists && !is_there(call.store, person.id))
    return problem_reply(409, problem_of(Code{"http.name_taken"}, "name", person.name), call.voice);
  if (!kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return json_reply(person_json(person), 201);
}

/// Nobody is deleted: what he signed stays his. He is not offered at sign-on any more, and nothing is taken from him.
Reply post_at_work(const Call& call) {
  Input input{call};
  job::Id by;
  bool active = true;
  input(id_field("by"), by);
  input({.name = "active"}, active);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "people");
  const auto it = std::ranges::find(*people, call.id(), &job::Person::id);
  if (it == people->end()) return fault_reply({job::StoreFault::Kind::missing, "person " + call.id()}, "id");
  std::vector<Problem> problems;
  if (auto wrong = problem_of_sender(*people, by, job::lacks_role_for_people)) problems.push_back(*std::move(wrong));
  if (!active)
    if (auto wrong = job::problem_of_leaving(*people, *it)) problems.push_back(*std::move(wrong));
  if (!problems.empty()) return problem_reply(422, std::move(problems), call.voice);
  const auto kept = call.store.set_at_work(it->id, active);
  if (!kept && kept.error().kind == job::StoreFault::Kind::exists)
    return problem_reply(409, problem_of(Code{"http.name_taken"}, "name", it->name), call.voice);
  if (!kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  job::Person now_so = *it;
  now_so.active = active;
  return json_reply(person_json(now_so));
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
  if (auto blank = no_name(call, customer.name)) return *std::move(blank);
  if (const auto kept = call.store.put_customer(customer); !kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return json_reply(customer_json(customer), 201);
}

}  // namespace flatwise::server
