// Machines, their hours, and the definitions of shafts.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

#include "definition/read.h"
#include "job/hours.h"
#include "job/person_name.h"
#include "record/instant.h"
#include "server/input.h"
#include "server/live.h"
#include "server/people.h"
#include "server/rows.h"
#include "server/times.h"
#include "view/board.h"

namespace flatwise::server {
namespace {

using wire::Json;
namespace fields = job::fields;

Json shaft_json(const job::ShaftVersion& shaft) {
  Json json{{"id", shaft.id},     {"shaft", shaft.shaft}, {"version", shaft.version},
            {"name", shaft.name}, {"toml", shaft.toml},   {"by", shaft.by}};
  json["at"] = record::text_of(shaft.at);
  return json;
}

/// What a body names and is not there: its field.
Reply names_nothing(const Call& call, std::string field, const job::Id& given) {
  return problem_reply(422, problem_of(Code{"http.not_there"}, std::move(field), given), call.voice);
}

}  // namespace

Reply get_machines(const Call& call) {
  const auto machines = call.store.machines();
  if (!machines) return fault_reply(machines.error(), "machines");
  Json list = Json::array();
  for (const job::Machine& m : *machines) list.push_back(machine_json(m));
  return json_reply(Json{{"machines", std::move(list)}});
}

Reply post_machine(const Call& call) {
  Input input{call};
  job::Machine machine;
  std::optional<bool> invented;
  input(id_field("id"), machine.id);
  input(id_field("customer"), machine.customer);
  input(fields::text("name", 1, 120), machine.name);
  input(id_field("shaft"), machine.shaft);
  input({.name = "invented"}, invented);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  machine.invented = invented.value_or(false);
  if (auto blank = no_name(call, machine.name)) return *std::move(blank);
  const auto customers = call.store.customers();
  const auto shafts = call.store.shafts();
  if (!customers || !shafts) return fault_reply(customers ? shafts.error() : customers.error(), "machine");
  if (std::ranges::find(*customers, machine.customer, &job::Customer::id) == customers->end())
    return names_nothing(call, "customer", machine.customer);
  if (std::ranges::find(*shafts, machine.shaft, &job::ShaftVersion::shaft) == shafts->end())
    return names_nothing(call, "shaft", machine.shaft);
  if (const auto kept = call.store.put_machine(machine); !kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return json_reply(machine_json(machine), 201);
}

namespace {

/// A reading with what was sent beside it.
struct HoursSent {
  job::HourReading reading;
  Entered hours;
  bool anyway = false;  ///< The meter reads so all the same, and the note says why.
};

std::optional<Reply> read_hours(const Call& call, HoursSent& sent) {
  constexpr double kHour = 3600, kMostHours = 1e6;
  Input input{call};
  std::optional<std::string> note, corrects;
  std::optional<bool> anyway;
  input(id_field("id"), sent.reading.id);
  input(id_field("by"), sent.reading.by);
  input({.name = "day"}, sent.reading.day);
  input(fields::quantity("hours", Kind::time, 0, kMostHours * kHour), sent.hours);
  input(fields::text("note", 0, 400), note);
  input(id_field("corrects"), corrects);
  input({.name = "anyway"}, anyway);
  if (auto refused = input.refused(call.voice)) return refused;
  sent.reading.machine = call.id();
  sent.reading.hours = sent.hours.value.si / kHour;
  sent.reading.note = note.value_or("");
  sent.reading.corrects = corrects.value_or("");
  sent.reading.at = call.shared.now();
  sent.anyway = anyway.value_or(false);
  return std::nullopt;
}

Json hours_json(const HoursSent& sent) {
  Json json{{"id", sent.reading.id},
            {"by", sent.reading.by},
            {"day", record::text_of(sent.reading.day)},
            {"hours", sent.hours.typed}};
  if (!sent.reading.note.empty()) json["note"] = sent.reading.note;
  if (!sent.reading.corrects.empty()) json["corrects"] = sent.reading.corrects;
  if (sent.anyway) json["anyway"] = true;
  return json;
}

}  // namespace

Reply post_hours(const Call& call) {
  HoursSent sent;
  if (auto refused = read_hours(call, sent)) return *std::move(refused);
  const auto machine = call.store.machine(call.id());
  if (!machine) return fault_reply(machine.error(), "id");
  const auto people = call.store.people();
  const auto noted = call.store.hours(call.id());
  if (!people || !noted) return fault_reply(people ? noted.error() : people.error(), "hours");
  const bool again = std::ranges::find(*noted, sent.reading.id, &job::HourReading::id) != noted->end();
  std::vector<Problem> problems;
  if (auto wrong = problem_of_sender(*people, sent.reading.by)) problems.push_back(*std::move(wrong));
  if (sent.anyway && job::folded_name(sent.reading.note).empty())
    problems.push_back(problem_of(Code{"shop.hours_need_note"}, "note", sent.reading.note));
  for (Problem& p : job::problems_of(sent.reading, *noted, {day_of(call.shared.now()), sent.anyway}))
    problems.push_back(std::move(p));
  if (!again && !problems.empty()) return problem_reply(422, std::move(problems), call.voice);
  if (const auto kept = call.store.put_hours(sent.reading); !kept) return fault_reply(kept.error(), "id");
  call.shared.live.poke();
  return json_reply(hours_json(sent), 201);
}

Reply get_shafts(const Call& call) {
  const auto shafts = call.store.shafts();
  if (!shafts) return fault_reply(shafts.error(), "shafts");
  Json list = Json::array();
  std::vector<Shaft> drawn;
  std::vector<std::size_t> at;
  for (const job::ShaftVersion& s : *shafts) {
    if (auto shaft = definition::read_shaft(s.toml, "shaft.toml")) {
      at.push_back(list.size());
      drawn.push_back(*std::move(shaft));
    }
    list.push_back(shaft_json(s));
  }
  const std::vector<Json> strips = view::strips_at_one_scale(drawn);
  for (std::size_t i = 0; i < strips.size(); ++i) list[at[i]]["strip"] = strips[i];
  return json_reply(Json{{"shafts", std::move(list)}});
}

Reply get_shaft(const Call& call) {
  const auto shaft = call.store.shaft_version(call.id());
  return shaft ? json_reply(shaft_json(*shaft)) : fault_reply(shaft.error(), "id");
}

Reply post_shaft(const Call& call) {
  const Json body = with_plain_line_ends(*call.body);
  Input input{body};
  job::ShaftVersion version;
  int seen = 0;
  input(id_field("id"), version.id);
  input(id_field("shaft"), version.shaft);
  input(id_field("by"), version.by);
  input(fields::whole("seen", 0, 1'000'000'000), seen);
  input(kToml, version.toml);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const auto shaft = definition::read_shaft(version.toml, "shaft.toml");
  if (!shaft) return problem_reply(422, shaft.error(), call.voice);
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "by");
  if (std::ranges::find(*people, version.by, &job::Person::id) == people->end())
    return names_nothing(call, "by", version.by);
  version.name = shaft->spec().name;
  version.at = now();
  const auto kept = call.store.put_shaft(version, seen);
  if (!kept) return fault_reply(kept.error(), "shaft");
  call.shared.live.poke();
  return json_reply(shaft_json(*kept), 201);
}

}  // namespace flatwise::server
