// What the wobble does to a bearing: of the rotor whose bearing ends first, or of one that was named. The same as a study works out for
// each of its ways.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/doubts.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "view/shaft_bearing.h"

namespace flatwise::cli {
namespace {

/// Outputs of bearing-turn that say how long it lasts. Without the ground's load they count weight and couple alone: far too long to plan by.
bool says_life(std::string_view output) {
  constexpr std::string_view kLives[] = {"life",          "million-turns",    "modified-least", "modified-greatest",
                                         "seasons-least", "seasons-greatest", "reference-load"};
  return std::ranges::find(kLives, output) != std::end(kLives);
}

Table outputs_table(const Context& context, const view::ShaftBearing& told) {
  const study::BearingTold& bearing = told.bearing;
  const Working& working = *bearing.turn;
  Table table;
  if (!bearing.ground)
    table.rows.push_back(
        {"L", word("figure.bearing-turn.life", context.voice), word("study.life_not_known", context.voice)});
  for (const Output& out : working.outputs)
    if (const auto* value = std::get_if<AnyQuantity>(&out.value);
        value != nullptr && (bearing.ground || !says_life(out.name)))
      table.rows.push_back({out.symbol, word("figure." + working.figure + "." + out.name, context.voice),
                            with_doubt(context, *value, told.doubts, out.name)});
  return table;
}

std::string bearing_text(const Context& context, const Shaft& shaft, const view::ShaftBearing& told) {
  const study::BearingTold& bearing = told.bearing;
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  const Args args{{"part", view::rotor_label(shaft, bearing.rotor)}};
  const Code of = !told.first_to_end ? Code{"cli.bearing_named"}
                  : bearing.ground   ? Code{"cli.bearing_of"}
                                     : Code{"cli.bearing_of_no_ground"};
  out += wrap(say(Message{of, args}, context.voice), context.width) + "\n";
  Args assumed;
  if (std::vector<std::string> names = study::not_stated(bearing, context.voice); !names.empty())
    assumed.emplace_back("assumed", std::move(names));
  out += wrap(say(Message{Code{"cli.bearing_assumed"}, std::move(assumed)}, context.voice), context.width) + "\n\n";
  out += lay_out(outputs_table(context, told), "  ") + "\n" + doubts_text(context, told.doubts);
  for (const Finding& f : bearing.turn->findings)
    if (bearing.ground || f.code != Code{"bearings.influence"}) out += render(context, f);
  if (!bearing.ground) out += wrap(word("study.no_ground", context.voice), context.width) + "\n";
  for (const WorkingPtr& working : view::workings_of(bearing))
    if (context.why) out += "\n" + render(context, *working);
  return out;
}

Severity worst_of(const Working& working) {
  Severity worst = Severity::note;
  for (const Finding& f : working.findings) worst = std::max(worst, f.severity);
  return worst;
}

}  // namespace

Status tell_bearing(const Context& context, const BearingOptions& options) {
  const Results<Shaft> shaft = load_shaft(context, options.shaft_file);
  if (!shaft) return refuse(context, shaft.error());
  const Results<view::ShaftBearing> told = view::bearing_as_asked(*shaft, options.station);
  if (!told) return refuse(context, as_options(told.error(), {"station"}));
  *context.out << (context.json ? wire::dump(view::bearing_json(*shaft, *told, context.voice))
                                : bearing_text(context, *shaft, *told));
  return status_of(worst_of(*told->bearing.turn));
}

}  // namespace flatwise::cli
