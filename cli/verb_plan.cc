#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "core/teardown/steps.h"
#include "job/plan.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

std::string money_text(const Context& context, std::optional<double> money) {
  return money ? render_value(context, any_money(*money), {}) : "–";
}

std::string rotor_list(const std::vector<int>& rotors) {
  std::string out;
  for (const int r : rotors) out += (out.empty() ? "" : ", ") + std::to_string(r);
  return out.empty() ? "–" : out;
}

wire::Json way_json(const Context& context, const job::Way& way) {
  const teardown::Plan& plan = way.plan;
  wire::Json json{
      {"way", way.name}, {"from_a", plan.split.from_a}, {"from_b", plan.split.from_b}, {"rotors", plan.rotors}};
  json["off_s"] = plan.time_off.si();
  json["on_s"] = plan.time_on.si();
  json["price"] = plan.money ? wire::to_json(any_money(*plan.money), context.voice) : wire::Json(nullptr);
  json["parts"] = wire::Json::array();
  for (const teardown::PartsDue& due : plan.due)
    json["parts"].push_back({{"part", due.kind == teardown::PartsDue::Kind::adapter_set ? "set" : "seal"},
                             {"part_number", due.part_number},
                             {"count", due.count},
                             {"rotors", due.rotors}});
  if (plan.runner_up)
    json["runner_up"] = {{"from_a", plan.runner_up->split.from_a},
                         {"from_b", plan.runner_up->split.from_b},
                         {"more_s", plan.runner_up->more_time.si()}};
  json["findings"] = wire::Json::array();
  for (const Finding& f : plan.findings) json["findings"].push_back(wire::to_json(f, context.voice));
  if (way.working != nullptr) json["working"] = wire::to_json(*way.working, context.voice);
  return json;
}

wire::Json steps_json(const Context& context, const std::vector<teardown::Step>& steps) {
  wire::Json list = wire::Json::array();
  for (const teardown::Step& step : steps) {
    wire::Json one{{"says", say(step.what, context.voice)},
                   {"code", step.what.code.id()},
                   {"stop", step.stop},
                   {"before_you_go_on", step.before_you_go_on}};
    one["labels"] = wire::Json::array();
    for (const Message& label : step.labels) one["labels"].push_back(say(label, context.voice));
    one["tools"] = wire::Json::array();
    for (const Word& tool : step.tools) one["tools"].push_back(word(tool.id, context.voice));
    one["cautions"] = wire::Json::array();
    for (const Message& caution : step.cautions) one["cautions"].push_back(say(caution, context.voice));
    list.push_back(std::move(one));
  }
  return list;
}

Table ways_table(const Context& context, const job::PlanReport& report) {
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Table table{.head = {"", w("cli.head.comes_off"), w("cli.head.time"), w("cli.head.sets"), w("cli.head.seals"),
                       w("cli.head.price")},
              .rows = {},
              .right = "llrrrr"};
  for (const job::Way& way : report.ways) {
    int sets = 0, seals = 0;
    for (const teardown::PartsDue& due : way.plan.due)
      (due.kind == teardown::PartsDue::Kind::adapter_set ? sets : seals) += due.count;
    table.rows.push_back({w("way." + std::string{way.name}), rotor_list(way.plan.rotors),
                          render_value(context, any(way.plan.time()), {}), std::to_string(sets), std::to_string(seals),
                          money_text(context, way.plan.money)});
  }
  return table;
}

std::string steps_text(const Context& context, const std::vector<teardown::Step>& steps) {
  std::string out;
  int number = 0;
  for (const teardown::Step& step : steps) {
    for (const Message& caution : step.cautions)
      out += "     " +
             toned("⚠ " + wrap(say(caution, context.voice), context.width - 7, "       "), Tone::tell, context.colour) +
             "\n";
    std::string line = wrap(printable(say(step.what, context.voice)), context.width - 5, "     ");
    std::string aside;
    for (const Word& tool : step.tools) aside += (aside.empty() ? "" : ", ") + word(tool.id, context.voice);
    for (const Message& label : step.labels)
      aside += (aside.empty() ? "" : "; ") +
               say(Message{Code{"cli.label"}, {{"label", say(label, context.voice)}}}, context.voice);
    if (!step.stop) ++number;
    const std::string count = step.stop ? "    " : std::string(number < 10 ? "  " : " ") + std::to_string(number) + " ";
    out += count + " " + toned(line, step.stop ? Tone::strong : Tone::plain, context.colour) +
           (aside.empty() ? "" : "  [" + printable(aside) + "]") + "\n";
  }
  return out;
}

std::string plan_text(const Context& context, const Shaft& shaft, const job::PlanReport& report, bool with_steps) {
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  out += lay_out(ways_table(context, report)) + "\n";
  for (const Message& m : report.says) out += wrap(printable(say(m, context.voice)), context.width) + "\n";
  std::vector<std::string> said;  // What holds for all ways is said once.
  for (const job::Way& way : report.ways)
    for (const Finding& f : way.plan.findings)
      if (std::string text = render(context, f); std::ranges::find(said, text) == said.end())
        said.push_back(std::move(text));
  for (const std::string& text : said) out += text;
  if (context.why)
    for (const job::Way& way : report.ways)
      if (way.working != nullptr)
        out += "\n  " + word("way." + std::string{way.name}, context.voice) + "\n" + render(context, *way.working);
  if (with_steps) out += "\n" + steps_text(context, report.steps);
  return out;
}

}  // namespace

Status plan_teardown(const Context& context, const PlanOptions& options) {
  if (auto twice = stdin_twice({{"SHAFT", options.shaft_file}, {"--workshop", options.workshop_file}}))
    return refuse(context, *std::move(twice));
  Results<Shaft> shaft = load_shaft(context, options.shaft_file);
  Results<Workshop> workshop = load_workshop(context, options.workshop_file);
  if (!shaft) return refuse(context, shaft.error());
  if (!workshop) return refuse(context, workshop.error());
  Context own = context;
  own.voice.currency = workshop->currency;
  const Results<job::PlanReport> report = job::plan(*shaft, *workshop, options.rotors);
  if (!report) return refuse(own, report.error());
  if (!own.json) {
    *own.out << plan_text(own, *shaft, *report, options.steps);
    return Status::in_order;
  }
  wire::Json json{{"shaft", shaft->spec().name}, {"ways", wire::Json::array()}};
  for (const job::Way& way : report->ways) json["ways"].push_back(way_json(own, way));
  json["says"] = wire::Json::array();
  for (const Message& m : report->says) json["says"].push_back(say(m, own.voice));
  json["steps"] = steps_json(own, report->steps);
  *own.out << wire::dump(json);
  return Status::in_order;
}

}  // namespace flatwise::cli
