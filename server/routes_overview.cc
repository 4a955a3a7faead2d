// The board, a machine with its history, and a definition as it is typed.
#include <nlohmann/json.hpp>

#include "desk/kept.h"
#include "server/input.h"
#include "server/people.h"
#include "server/times.h"
#include "view/board.h"
#include "view/machine_view.h"
#include "view/shaft_check.h"

namespace flatwise::server {
namespace {

struct Owner {
  std::string machine, customer;
};
Owner owner_of(job::Store& store, const job::Id& id) {
  Owner owner;
  const auto machine = store.machine(id);
  if (!machine) return owner;
  owner.machine = machine->name;
  if (const auto customers = store.customers())
    for (const job::Customer& c : *customers)
      if (c.id == machine->customer) owner.customer = c.name;
  return owner;
}

Voice with_currency(Voice voice, const Workshop& workshop) {
  voice.currency = workshop.currency;
  return voice;
}

/// The newest version of the shaft of a machine, read.
desk::Done<std::shared_ptr<const Shaft>> shaft_of(const Call& call, const job::Machine& machine) {
  const auto shafts = call.store.shafts();
  if (!shafts) return tl::unexpected(desk::Refusal{{}, shafts.error()});
  for (const job::ShaftVersion& v : *shafts) {
    if (v.shaft != machine.shaft) continue;
    auto read = call.shared.opened.definitions().read(v.toml, v.name);
    if (!read) return tl::unexpected(desk::Refusal{std::move(read.error()), std::nullopt});
    return *std::move(read);
  }
  return tl::unexpected(desk::Refusal{{}, job::StoreFault{job::StoreFault::Kind::missing, "shaft of the machine"}});
}

}  // namespace

Reply get_board(const Call& call) {
  const auto workshop = call.store.workshop();
  if (!workshop) return fault_reply(workshop.error(), "workshop");
  const auto rows = call.store.open_jobs();
  if (!rows) return fault_reply(rows.error(), "jobs");
  std::vector<std::shared_ptr<const desk::Opened>> opened;
  for (const job::JobRow& row : *rows) {
    auto one = call.shared.opened.get(call.store, row.id);
    if (!one) return refusal_reply(one.error(), "jobs", call.voice);
    opened.push_back(*std::move(one));
  }
  std::vector<view::BoardJob> jobs;
  jobs.reserve(opened.size());
  for (const auto& o : opened) {
    const Owner owner = owner_of(call.store, o->row.machine);
    jobs.push_back({*o->job, o->standing, o->row, owner.machine, owner.customer});
  }
  return json_reply(view::board_view(*workshop, jobs, today(), with_currency(call.voice, *workshop)));
}

Reply get_machine(const Call& call) {
  constexpr int kJobsShown = 200;
  const auto machine = call.store.machine(call.id());
  if (!machine) return fault_reply(machine.error(), "id");
  const auto workshop = call.store.workshop();
  if (!workshop) return fault_reply(workshop.error(), "workshop");
  const auto shaft = shaft_of(call, *machine);
  if (!shaft) return refusal_reply(shaft.error(), "shaft", call.voice);
  const auto hours = call.store.hours(machine->id);
  const auto lives = call.store.lives(machine->id);
  const auto jobs = call.store.jobs_of(machine->id, kJobsShown, std::nullopt);
  if (!hours) return fault_reply(hours.error(), "id");
  if (!lives) return fault_reply(lives.error(), "id");
  if (!jobs) return fault_reply(jobs.error(), "id");
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "people");
  const view::MachineSubject subject{.machine = *machine,
                                     .customer = owner_of(call.store, machine->id).customer,
                                     .shaft = **shaft,
                                     .workshop = *workshop,
                                     .hours = *hours,
                                     .lives = *lives,
                                     .jobs = *jobs,
                                     .people = names_of(*people)};
  return json_reply(view::machine_view(subject, with_currency(call.voice, *workshop)));
}

Reply check_shaft(const Call& call) {
  const wire::Json body = with_plain_line_ends(*call.body);
  Input input{body};
  std::string toml;
  std::optional<std::string> copied;
  input(kToml, toml);
  input(kCopied, copied);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  return json_reply(view::shaft_check(toml, copied.value_or(""), call.voice));
}

}  // namespace flatwise::server
