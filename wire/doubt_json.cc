// What doubtful inputs make of a figure, as JSON.
#include <nlohmann/json.hpp>

#include "wire/json.h"

namespace flatwise::wire {
namespace {

Json share_json(const doubt::Share& share, const Working& working, Kind kind) {
  const Kind of_doubt = difference_kind(kind);
  Json json{{"input", working.inputs[share.input].name}, {"place", share.input}, {"part", share.part}};
  json[value_key(of_doubt, "moves")] = share.moves_si;
  json[value_key(of_doubt, "without")] = share.without_si;
  json[value_key(of_doubt, "halved")] = share.halved_si;
  return json;
}

Json drawn_json(const doubt::Drawn& drawn, Kind kind) {
  Json json;
  json[value_key(kind, "mean")] = drawn.mean_si;
  json[value_key(difference_kind(kind), "standard")] = drawn.standard_si;
  json[value_key(kind, "low")] = drawn.low_si;
  json[value_key(kind, "high")] = drawn.high_si;
  return json;
}

Json output_json(const doubt::DoubtedOutput& out, const Working& working) {
  const Output& shown = working.outputs[out.output];
  const Kind kind = std::get<AnyQuantity>(shown.value).kind;
  Json json{{"output", shown.name}, {"linear_holds", out.linear_holds}};
  json["linear"][value_key(difference_kind(kind), "standard")] = out.linear.standard_si;
  json["linear"][value_key(difference_kind(kind), "expanded")] = out.linear.expanded_si;
  if (out.linear.degrees_of_freedom) json["linear"]["degrees_of_freedom"] = *out.linear.degrees_of_freedom;
  if (out.drawn) json["drawn"] = drawn_json(*out.drawn, kind);
  json["shares"] = Json::array();
  for (const doubt::Share& share : out.shares) json["shares"].push_back(share_json(share, working, kind));
  return json;
}

Json field_share_json(const doubt::FieldShare& share, Kind of_doubt) {
  Json json{{"field", share.field}, {"part", share.part}};
  json[value_key(of_doubt, "moves")] = share.moves_si;
  json[value_key(of_doubt, "halved")] = share.halved_si;
  return json;
}

}  // namespace

Json to_json(const doubt::ToldDoubt& told, const Voice& voice) {
  const auto& [figure, doubt] = told;
  const Kind of_doubt = difference_kind(figure.value.kind);
  Json json{{"figure", figure.key}, {"name", word(figure.name.id, voice)}, {"value", to_json(figure.value, voice)}};
  if (!figure.of.empty()) json["of"] = figure.of;
  json[value_key(of_doubt, "standard")] = doubt.u.standard_si;
  json[value_key(of_doubt, "expanded")] = doubt.u.expanded_si;
  if (doubt.drawn) {
    json[value_key(figure.value.kind, "low")] = doubt.drawn->low_si;
    json[value_key(figure.value.kind, "high")] = doubt.drawn->high_si;
  }
  json["shares"] = Json::array();
  for (const doubt::FieldShare& share : doubt.shares) json["shares"].push_back(field_share_json(share, of_doubt));
  json["says"] = Json::array();
  for (const Message& message : doubt::says(told)) json["says"].push_back(say(message, voice));
  return json;
}

void add_doubts(Json& json, std::span<const doubt::ToldDoubt> told, const Voice& voice) {
  if (told.empty()) return;
  json["doubts"] = Json::array();
  for (const doubt::ToldDoubt& one : told) json["doubts"].push_back(to_json(one, voice));
}

Json to_json(const doubt::Doubted& doubted, const Voice& voice) {
  Json json = to_json(doubted.working, voice);
  if (doubted.outputs.empty()) return json;
  json["doubt"] = Json::array();
  for (const doubt::DoubtedOutput& out : doubted.outputs) json["doubt"].push_back(output_json(out, doubted.working));
  json["draws"] = doubted.draws;
  return json;
}

}  // namespace flatwise::wire
