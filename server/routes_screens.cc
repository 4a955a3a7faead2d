// Screens and papers of a job: opened once, shown as the views and sheets have it.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "desk/kept.h"
#include "job/hours.h"
#include "paper/compose.h"
#include "paper/render.h"
#include "record/instant.h"
#include "server/people.h"
#include "server/routes.h"
#include "server/times.h"
#include "view/bench_view.h"
#include "view/blocks.h"

namespace flatwise::server {
namespace {

using wire::Json;

std::optional<job::Stage> stage_of_name(std::optional<std::string_view> name) {
  for (int s = 0; name && s < job::kStageCount; ++s)
    if (job::stage_name(static_cast<job::Stage>(s)) == *name) return static_cast<job::Stage>(s);
  return std::nullopt;
}

/// Names round a job; an empty one where the store cannot say.
struct Names {
  std::map<job::Id, std::string> people;
  std::map<job::Id, job::Role> roles;
  std::string machine, customer;
};
Names names_round(job::Store& store, const job::Id& machine) {
  Names names;
  if (const auto people = store.people()) {
    names.people = names_of(*people);
    for (const job::Person& p : *people) names.roles[p.id] = p.role;
  }
  const auto row = store.machine(machine);
  if (!row) return names;
  names.machine = row->name;
  if (const auto customers = store.customers())
    for (const job::Customer& c : *customers)
      if (c.id == row->customer) names.customer = c.name;
  return names;
}

/// What the machine's meter showed last; none where nobody read it.
std::optional<double> hours_of(job::Store& store, const job::Id& machine) {
  const auto hours = store.hours(machine);
  if (!hours) return std::nullopt;
  const auto last = job::last_hours(*hours);
  return last ? std::optional{last->hours} : std::nullopt;
}

Voice speaking(const Call& call, const desk::Opened& opened) {
  Voice voice = call.voice;
  voice.currency = opened.job->workshop.currency;
  return voice;
}

view::Screen screen_of(const Call& call, const desk::Opened& opened) {
  view::Screen screen;
  screen.stage = stage_of_name(call.query.find("stage"));
  screen.station = call.query.whole("station");
  if (call.query.find("from") == "b") screen.from = End::b;
  screen.step = call.query.whole("step");
  screen.by = std::string{call.query.find("by").value_or("")};
  screen.voice = speaking(call, opened);
  screen.today = today();
  return screen;
}

std::optional<Problem> no_such_station(const Call& call, const desk::Opened& opened) {
  const auto station = call.query.whole("station");
  const std::size_t count = opened.job->shaft.stations().size();
  if (!station || static_cast<std::size_t>(*station) < count) return std::nullopt;
  return problem_of(Code{"http.not_a_number"}, "station", std::to_string(*station),
                    {{"least", 0}, {"greatest", static_cast<std::int64_t>(count) - 1}});
}

/// The runs of the machine's jobs before this one, for the screen that holds the run against them. What the store cannot say now
/// is left out: it is for comparison only.
std::vector<job::FormerRun> former_runs(const Call& call, const job::JobRow& row) {
  constexpr int kLooked = 5;
  std::vector<job::FormerRun> runs;
  const auto rows = call.store.jobs_of(row.machine, kLooked, row.booked);
  if (!rows) return runs;
  for (const job::JobRow& former : *rows) {
    if (!former.released) continue;
    const auto opened = call.shared.opened.get(call.store, former.id);
    if (!opened) continue;
    if (auto run = job::former_run(former.number, (*opened)->job->report)) runs.push_back(*std::move(run));
    if (!runs.empty() && runs.back().good) break;
  }
  return runs;
}

}  // namespace

Reply get_bench(const Call& call) {
  const auto opened = call.shared.opened.get(call.store, call.id());
  if (!opened) return refusal_reply(opened.error(), "id", call.voice);
  if (auto wrong = no_such_station(call, **opened)) return problem_reply(400, *std::move(wrong), call.voice);
  const desk::Opened& o = **opened;
  const Names names = names_round(call.store, o.row.machine);
  const auto lives = call.store.lives(o.row.machine);
  if (!lives) return fault_reply(lives.error(), "id");
  const view::Screen screen = screen_of(call, o);
  const bool runs = screen.stage.value_or(o.standing.present) == job::Stage::test_run;
  const view::Subject subject{.job = *o.job,
                              .standing = o.standing,
                              .row = o.row,
                              .people = names.people,
                              .machine = names.machine,
                              .customer = names.customer,
                              .lives = *lives,
                              .hours = hours_of(call.store, o.row.machine),
                              .former_runs = runs ? former_runs(call, o.row) : std::vector<job::FormerRun>{},
                              .roles = names.roles};
  Reply reply = json_reply(view::bench_view(subject, screen));
  const std::string tag = tag_of(reply.body);
  return tagged(std::move(reply), tag, call.request.if_none_match);
}

Reply get_report(const Call& call) {
  const auto opened = call.shared.opened.get(call.store, call.id());
  if (!opened) return refusal_reply(opened.error(), "id", call.voice);
  return json_reply(wire::to_json((*opened)->job->report, speaking(call, **opened)));
}

namespace {

constexpr double kDotsPerInch = 150;

paper::SheetOrder order_of(const Call& call, const desk::Opened& o, const std::string& name) {
  const job::OpenJob& job = *o.job;
  paper::SheetOrder order{.shaft = &job.shaft,
                          .workshop = &job.workshop,
                          .bench = &job.state.bench,
                          .rotors = job::rotors_opened(job.state),
                          .names = {name},
                          .head = {}};
  order.head.shaft = job.shaft.spec().name;
  order.head.workshop = job.workshop.name;
  order.head.invented = job.shaft.spec().invented || job.workshop.invented;
  order.head.printed = when_text(now(), call.voice);
  order.head.from = say(Code{"http.from_entry"}.id(), {{"number", o.row.entries}}, call.voice);
  order.head.job = o.row.number;
  order.head.paper = call.query.find("paper") == "letter" ? paper::Paper::letter : paper::Paper::a4;
  order.head.voice = speaking(call, o);
  Names names = names_round(call.store, o.row.machine);
  order.record = paper::HandOverOrder{.job = &job,
                                      .standing = &o.standing,
                                      .people = std::move(names.people),
                                      .machine = std::move(names.machine),
                                      .customer = std::move(names.customer),
                                      .head = {},
                                      .when = [voice = call.voice](job::Instant at) { return when_text(at, voice); }};
  return order;
}

Reply rendered(const Call& call, const paper::Composed& sheet, const std::string& created) {
  const std::string_view format = call.query.find("format").value_or("pdf");
  if (format == "pdf") return bytes_reply("application/pdf", paper::render_pdf(sheet.pages, {sheet.title, created}));
  const auto page = static_cast<std::size_t>(call.query.whole("page").value_or(1));
  if (page > sheet.pages.size())
    return problem_reply(404, problem_of(Code{"http.no_such_page"}, "page", std::to_string(page),
                                         {{"pages", static_cast<std::int64_t>(sheet.pages.size())}}));
  if (format == "svg") return bytes_reply("image/svg+xml", paper::render_svg(sheet.pages[page - 1]));
  return bytes_reply("image/png", paper::render_png(sheet.pages[page - 1], kDotsPerInch));
}

}  // namespace

Reply get_sheet(const Call& call) {
  const std::string name = decoded(call.request.captured[1], false).value_or("");
  const auto& names = paper::sheet_names();
  if (std::ranges::find(names, name) == names.end())
    return problem_reply(404, problem_of(Code{"http.no_such_sheet"}, "name", name, {{"words", names}}), call.voice);
  const auto opened = call.shared.opened.get(call.store, call.id());
  if (!opened) return refusal_reply(opened.error(), "id", call.voice);
  const auto measure = paper::make_measure();
  if (!measure) return problem_reply(503, measure.error(), call.voice);
  const auto sheets = paper::compose(order_of(call, **opened, name), **measure);
  if (!sheets) return problem_reply(404, sheets.error(), call.voice);  // The job has no use for it yet.
  if (sheets->empty()) return problem_reply(404, problem_of(Code{"http.sheet_not_yet"}, "name", name), call.voice);
  return rendered(call, sheets->front(), record::text_of(now()));
}

}  // namespace flatwise::server
