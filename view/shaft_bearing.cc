#include "view/shaft_bearing.h"

#include <nlohmann/json.hpp>

#include "core/units/near.h"

namespace flatwise::view {
namespace {

/// None at all where the bearing cannot be worked out there: whoever asks fills up.
std::vector<doubt::NamedFigure> figures_of(const Shaft& shaft, int rotor) {
  const Results<study::BearingTold> bearing = study::bearing_of(shaft, rotor);
  if (!bearing) return {};
  std::vector<doubt::NamedFigure> figures;
  for (const Output& output : bearing->turn->outputs) {
    const bool told = output.name == "stress" || output.name == "greatest" || output.name == "static-safety" ||
                      (output.name == "life" && bearing->ground);
    if (!told) continue;
    figures.push_back({.key = output.name,
                       .name = Word{"figure.bearing-turn." + output.name},
                       .value = std::get<AnyQuantity>(output.value)});
  }
  return figures;
}

std::vector<doubt::ToldDoubt> doubts_of(const Shaft& shaft, int rotor) {
  return doubt::told_of_shaft(shaft, [rotor](const Shaft& s) { return figures_of(s, rotor); });
}

Results<ShaftBearing> first_to_end(const Shaft& shaft) {
  const Results<study::Outcome> outcome = study::outcome_of({.typed = {}, .shaft = shaft});
  if (!outcome) return tl::unexpected(outcome.error());
  if (!outcome->bearing || outcome->bearing->turn == nullptr)
    return tl::unexpected(outcome->bearing_problems.empty() ? outcome->press_problems : outcome->bearing_problems);
  const study::Beared& b = *outcome->bearing;
  return ShaftBearing{{b.rotor, b.geometry, b.fitted, b.play, b.turn, b.ground}, true, doubts_of(shaft, b.rotor)};
}

Problem no_such_station(const std::string& typed, const std::vector<std::string>& labels) {
  Args args{{"words", labels}};
  const std::vector<std::string_view> known(labels.begin(), labels.end());
  if (const std::string_view near = nearest(typed, known); !near.empty()) args.emplace_back("near", std::string{near});
  return {Code{"definition.not_a_choice"}, "station", typed, std::move(args), std::nullopt};
}

}  // namespace

Results<ShaftBearing> bearing_as_asked(const Shaft& shaft, const std::optional<std::string>& station) {
  if (!station) return first_to_end(shaft);
  std::vector<std::string> labels;
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor) {
    labels.push_back(rotor_label(shaft, rotor));
    if (labels.back() != *station) continue;
    const Results<study::BearingTold> bearing = study::bearing_of(shaft, rotor);
    if (!bearing) return tl::unexpected(bearing.error());
    return ShaftBearing{*bearing, false, doubts_of(shaft, rotor)};
  }
  return tl::unexpected(std::vector{no_such_station(*station, labels)});
}

std::string rotor_label(const Shaft& shaft, int rotor) {
  return shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(rotor))].label;
}

std::vector<WorkingPtr> workings_of(const study::BearingTold& bearing) {
  std::vector<WorkingPtr> out{bearing.geometry, bearing.fitted, bearing.play, bearing.turn};
  std::erase(out, nullptr);
  return out;
}

wire::Json bearing_json(const Shaft& shaft, const ShaftBearing& told, const Voice& voice) {
  const study::BearingTold& bearing = told.bearing;
  wire::Json json{{"shaft", shaft.spec().name}, {"rotor", bearing.rotor}, {"part", rotor_label(shaft, bearing.rotor)}};
  json["first_to_end"] = told.first_to_end;
  json["assumed"] = study::not_stated(bearing, voice);
  json["ground"] = bearing.ground;
  if (!bearing.ground) json["caution"] = word("study.no_ground", voice);
  json["workings"] = wire::Json::array();
  for (const WorkingPtr& working : workings_of(bearing)) json["workings"].push_back(wire::to_json(*working, voice));
  wire::add_doubts(json, told.doubts, voice);
  return json;
}

}  // namespace flatwise::view
