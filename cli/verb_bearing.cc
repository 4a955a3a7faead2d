// What the wobble does to a bearing: of the rotor whose bearing ends first, or of one that was named. The same as a study works out for
// each of its ways.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/checks.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "study/outcome.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

/// In the order they follow from each other; those that could not be worked out are left out.
std::vector<WorkingPtr> workings_of(const study::BearingTold& bearing) {
  std::vector<WorkingPtr> out{bearing.geometry, bearing.fitted, bearing.play, bearing.turn};
  std::erase(out, nullptr);
  return out;
}

std::string label_of(const Shaft& shaft, int rotor) {
  return shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(rotor))].label;
}

Table outputs_table(const Context& context, const Working& working) {
  Table table;
  for (const Output& out : working.outputs)
    if (const auto* value = std::get_if<AnyQuantity>(&out.value))
      table.rows.push_back({out.symbol, word("figure." + working.figure + "." + out.name, context.voice),
                            render_value(context, *value, {})});
  return table;
}

/// The bearing that is told, and whether nobody named it.
struct Told {
  study::BearingTold bearing;
  bool first_to_end = false;
};

std::string bearing_text(const Context& context, const Shaft& shaft, const Told& told) {
  const study::BearingTold& bearing = told.bearing;
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  const Args args{{"part", label_of(shaft, bearing.rotor)}};
  out += wrap(say(Message{told.first_to_end ? Code{"cli.bearing_of"} : Code{"cli.bearing_named"}, args}, context.voice),
              context.width) +
         "\n";
  out += wrap(word("cli.bearing_assumed", context.voice), context.width) + "\n\n";
  out += lay_out(outputs_table(context, *bearing.turn), "  ") + "\n";
  for (const Finding& f : bearing.turn->findings) out += render(context, f);
  if (!bearing.ground) out += wrap(word("cli.bearing_no_ground", context.voice), context.width) + "\n";
  for (const WorkingPtr& working : workings_of(bearing))
    if (context.why) out += "\n" + render(context, *working);
  return out;
}

wire::Json bearing_json(const Context& context, const Shaft& shaft, const Told& told) {
  const study::BearingTold& bearing = told.bearing;
  wire::Json json{{"shaft", shaft.spec().name}, {"rotor", bearing.rotor}, {"part", label_of(shaft, bearing.rotor)}};
  json["first_to_end"] = told.first_to_end;
  json["geometry_assumed"] = true;
  json["workings"] = wire::Json::array();
  for (const WorkingPtr& working : workings_of(bearing))
    json["workings"].push_back(wire::to_json(*working, context.voice));
  return json;
}

Severity worst_of(const Working& working) {
  Severity worst = Severity::note;
  for (const Finding& f : working.findings) worst = std::max(worst, f.severity);
  return worst;
}

Results<Told> first_to_end(const Shaft& shaft) {
  const Results<study::Outcome> outcome = study::outcome_of({.typed = {}, .shaft = shaft});
  if (!outcome) return tl::unexpected(outcome.error());
  if (!outcome->bearing || outcome->bearing->turn == nullptr)
    return tl::unexpected(outcome->bearing_problems.empty() ? outcome->press_problems : outcome->bearing_problems);
  const study::Beared& b = *outcome->bearing;
  return Told{{b.rotor, b.geometry, b.fitted, b.play, b.turn, b.ground}, true};
}

/// The rotor whose station is called so.
Results<Told> named(const Shaft& shaft, const std::string& station) {
  std::vector<std::string> labels;
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor) {
    labels.push_back(label_of(shaft, rotor));
    if (labels.back() != station) continue;
    const Results<study::BearingTold> bearing = study::bearing_of(shaft, rotor);
    if (!bearing) return tl::unexpected(bearing.error());
    return Told{*bearing, false};
  }
  Problem problem = not_a_choice(station, labels);
  problem.field = "--station";
  return tl::unexpected(std::vector{std::move(problem)});
}

}  // namespace

Status tell_bearing(const Context& context, const BearingOptions& options) {
  const Results<Shaft> shaft = load_shaft(context, options.shaft_file);
  if (!shaft) return refuse(context, shaft.error());
  const Results<Told> told = options.station ? named(*shaft, *options.station) : first_to_end(*shaft);
  if (!told) return refuse(context, told.error());
  *context.out << (context.json ? wire::dump(bearing_json(context, *shaft, *told))
                                : bearing_text(context, *shaft, *told));
  return status_of(worst_of(*told->bearing.turn));
}

}  // namespace flatwise::cli
