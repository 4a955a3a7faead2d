#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <istream>
#include <map>
#include <ostream>

#include <nlohmann/json.hpp>
#include "cli/files.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "definition/describe.h"
#include "definition/starter.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

definition::Say sayer(const Context& context) {
  return [voice = context.voice](std::string_view code, const Args& args) { return say(code, args, voice); };
}

/// "stations[7].outside" as "stations[…].outside": what is assumed alike of many parts is one line.
std::string alike(std::string field) {
  const std::size_t open = field.find('['), close = field.find(']');
  if (open == std::string::npos || close == std::string::npos) return field;
  return field.replace(open + 1, close - open - 1, "…");
}

std::string assumed_text(const Context& context, const Shaft& shaft) {
  std::map<std::pair<std::string, std::string>, int> assumed;
  for (const auto& [field, origin] : shaft.spec().origins)
    if (origin.kind == OriginKind::assumed) ++assumed[{alike(field), origin.where}];
  Table table;
  for (const auto& [what, times] : assumed) {
    std::string why = printable(what.second);
    if (times > 1) why += say(Message{Code{"cli.times"}, {{"times", times}}}, context.voice);
    table.rows.push_back({what.first, std::move(why)});
  }
  if (table.rows.empty()) return {};
  return word("cli.assumed_not_given", context.voice) + "\n" + lay_out(table);
}

/// A shaft that nothing holds is still one to take apart; forces and bending cannot be told of it.
std::string without_hangers(const Context& context, const Shaft& shaft) {
  const auto hangers = std::ranges::count(shaft.stations(), StationKind::hanger, &Station::kind);
  if (hangers >= 2) return {};
  return wrap(
             say(Message{Code{"cli.no_two_hangers"}, {{"hangers", static_cast<std::int64_t>(hangers)}}}, context.voice),
             context.width) +
         "\n";
}

wire::Json shaft_json(const Shaft& shaft) {
  wire::Json json{{"shaft", shaft.spec().name},
                  {"flats", shaft.flats()},
                  {"rotors", shaft.rotor_count()},
                  {"stations", shaft.stations().size()}};
  json["length_m"] = shaft.total_length().si();
  json["assumed"] = wire::Json::array();
  for (const auto& [field, origin] : shaft.spec().origins)
    if (origin.kind == OriginKind::assumed) json["assumed"].push_back({{"field", field}, {"from", origin.where}});
  json["problems"] = wire::Json::array();
  return json;
}

/// One line asked on a terminal; an empty answer leaves the starter's own.
void ask(const Context& context, std::string_view question, std::string& into) {
  if (!into.empty()) return;
  *context.err << word("cli.help." + std::string{question}, context.voice) << " " << std::flush;
  std::getline(*context.in, into);
}

bool asked_nothing(const NewShaft& o) {
  return o.name.empty() && o.flats.empty() && o.across.empty() && o.rotors.empty() && o.lean.empty() &&
         o.pattern.empty() && o.bearing.empty();
}

void ask_all(const Context& context, NewShaft& options) {
  ask(context, "new_name", options.name);
  ask(context, "new_flats", options.flats);
  ask(context, "new_across", options.across);
  ask(context, "new_rotors", options.rotors);
  ask(context, "new_lean", options.lean);
  ask(context, "new_pattern", options.pattern);
  ask(context, "new_bearing", options.bearing);
}

}  // namespace

Status define_check(const Context& context, const std::string& shaft_file) {
  const Results<Shaft> shaft = load_shaft(context, shaft_file);
  if (!shaft) return refuse(context, shaft.error());
  if (context.json) {
    *context.out << wire::dump(shaft_json(*shaft));
    return Status::in_order;
  }
  const Args args{{"name", shaft->spec().name},
                  {"rotors", shaft->rotor_count()},
                  {"flats", shaft->flats()},
                  {"stations", static_cast<std::int64_t>(shaft->stations().size())},
                  {"length", any(shaft->total_length())}};
  *context.out << printable(say(Message{Code{"cli.shaft_sound"}, args}, context.voice)) << "\n"
               << without_hangers(context, *shaft) << assumed_text(context, *shaft);
  return Status::in_order;
}

Status define_new(const Context& context, NewShaft options) {
  if (asked_nothing(options) && ::isatty(STDIN_FILENO) == 1 && context.progress) ask_all(context, options);
  std::error_code ignored;
  if (!options.out.empty() && !options.force && std::filesystem::exists(options.out, ignored))
    return refuse(context, Problem{Code{"cli.file_exists"}, "out", options.out, {}, std::nullopt});
  const auto text = definition::starter({.name = options.name,
                                         .flats = options.flats,
                                         .across = options.across,
                                         .rotors = options.rotors,
                                         .lean = options.lean,
                                         .pattern = options.pattern,
                                         .bearing = options.bearing},
                                        sayer(context));
  if (!text) return refuse(context, text.error());
  if (options.out.empty()) {
    *context.out << *text;
    return Status::in_order;
  }
  if (const auto written = write_file(options.out, *text); !written) return refuse(context, written.error());
  *context.out << say(Message{Code{"cli.shaft_written"}, {{"file", options.out}}}, context.voice) << "\n";
  return Status::in_order;
}

Status define_reference(const Context& context, const std::string& folder) {
  for (const definition::Page& page : definition::reference_pages(sayer(context))) {
    const std::string path = (std::filesystem::path{folder} / page.path).string();
    if (const auto written = write_file(path, page.text); !written) return refuse(context, written.error());
    *context.out << path << "\n";
  }
  return Status::in_order;
}

}  // namespace flatwise::cli
