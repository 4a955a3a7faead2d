// The bearing of the rotor whose bearing ends first: what the wobble does to it. The same as a study works out for each of its ways.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "study/outcome.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

/// In the order they follow from each other; those that could not be worked out are left out.
std::vector<WorkingPtr> workings_of(const study::Beared& bearing) {
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

std::string bearing_text(const Context& context, const Shaft& shaft, const study::Beared& bearing) {
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  out += wrap(say(Message{Code{"cli.bearing_of"}, {{"rotor", bearing.rotor}}}, context.voice), context.width) + "\n";
  out += wrap(word("cli.bearing_assumed", context.voice), context.width) + "\n\n";
  out += lay_out(outputs_table(context, *bearing.turn), "  ") + "\n";
  for (const Finding& f : bearing.turn->findings) out += render(context, f);
  for (const WorkingPtr& working : workings_of(bearing))
    if (context.why) out += "\n" + render(context, *working);
  return out;
}

wire::Json bearing_json(const Context& context, const Shaft& shaft, const study::Beared& bearing) {
  wire::Json json{{"shaft", shaft.spec().name}, {"rotor", bearing.rotor}, {"part", label_of(shaft, bearing.rotor)}};
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

}  // namespace

Status tell_bearing(const Context& context, const std::string& shaft_file) {
  const Results<Shaft> shaft = load_shaft(context, shaft_file);
  if (!shaft) return refuse(context, shaft.error());
  const Results<study::Outcome> outcome = study::outcome_of({.typed = {}, .shaft = *shaft});
  if (!outcome) return refuse(context, outcome.error());
  if (!outcome->bearing || outcome->bearing->turn == nullptr)
    return refuse(context, outcome->bearing_problems.empty() ? outcome->press_problems : outcome->bearing_problems);
  *context.out << (context.json ? wire::dump(bearing_json(context, *shaft, *outcome->bearing))
                                : bearing_text(context, *shaft, *outcome->bearing));
  return status_of(worst_of(*outcome->bearing->turn));
}

}  // namespace flatwise::cli
