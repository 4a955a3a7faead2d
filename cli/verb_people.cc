// Who is at work here and who has left, at the shell.
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/data.h"
#include "cli/people.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "job/entry_says.h"
#include "job/person_name.h"
#include "job/roles.h"
#include "job/shop_rules.h"
#include "server/answers.h"
#include "server/people.h"
#include "server/rows.h"

namespace flatwise::cli {

Result<job::Person> find_person(job::Store& store, const std::string& name, const Named& named) {
  const std::string option{named.option};
  const auto people = store.people();
  if (!people) return tl::unexpected(server::fault_problem(people.error(), option, name));
  const std::string wanted = job::folded_name(name);
  std::vector<std::string> names;
  for (const job::Person& p : *people) {
    const bool offered = p.active || named.also_who_left;
    if (p.id == name || (offered && job::folded_name(p.name) == wanted)) return p;
    if (offered) names.push_back(p.name);
  }
  return tl::unexpected(Problem{Code{"cli.no_such_person"}, option, name, {{"words", names}}, std::nullopt});
}

namespace {

Status list_people(const Context& context, job::Store& store) {
  const auto people = store.people();
  if (!people) return refuse(context, server::fault_problem(people.error(), "--data"));
  wire::Json list = wire::Json::array();
  Table table{.head = {}, .rows = {}, .right = "lll"};
  for (const job::Person& p : *people) {
    list.push_back(server::person_json(p));
    table.rows.push_back({printable(p.name), word(job::role_word(p.role).id, context.voice),
                          p.active ? "" : word("cli.has_left", context.voice)});
  }
  *context.out << (context.json ? wire::dump(wire::Json{{"people", std::move(list)}}) : lay_out(table));
  return Status::in_order;
}

/// What keeps `by` from saying it, or the other from leaving.
std::vector<Problem> problems_of(const std::vector<job::Person>& people, const job::Person& who, const job::Person& by,
                                 bool leaves) {
  std::vector<Problem> problems;
  if (auto wrong = server::problem_of_sender(people, by.id, job::lacks_role_for_people)) {
    wrong->field = "--by";
    problems.push_back(*std::move(wrong));
  }
  if (auto wrong = leaves ? job::problem_of_leaving(people, who) : std::nullopt) {
    wrong->field = "NAME";
    problems.push_back(*std::move(wrong));
  }
  return problems;
}

}  // namespace

Status tell_people(const Context& context, const PeopleOptions& options) {
  auto store = open_data(data_folder(options.data));
  if (!store) return refuse(context, store.error());
  if (options.name.empty()) return list_people(context, **store);
  if (options.leaves == options.returns)
    return refuse(context, Problem{Code{"cli.leaves_or_returns"}, "NAME", options.name, {}, std::nullopt});
  const auto who = find_person(**store, options.name, {.option = "NAME", .also_who_left = true});
  if (!who) return refuse(context, who.error());
  const auto by = find_person(**store, options.by, {.option = "--by"});
  if (!by) return refuse(context, by.error());
  const auto people = (*store)->people();
  if (!people) return refuse(context, server::fault_problem(people.error(), "NAME"));
  if (const auto problems = problems_of(*people, *who, *by, options.leaves); !problems.empty())
    return refuse(context, problems);
  const auto kept = (*store)->set_at_work(who->id, options.returns);
  if (!kept && kept.error().kind == job::StoreFault::Kind::exists)
    return refuse(context, Problem{Code{"http.name_taken"}, "NAME", who->name, {}, std::nullopt});
  if (!kept) return refuse(context, server::fault_problem(kept.error(), "NAME", who->name));
  return list_people(context, **store);
}

}  // namespace flatwise::cli
