#include "view/bearing_told.h"

#include <cmath>

#include "study/study.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

std::string told(Code code, const Args& args, const Voice& voice) { return say(code.id(), args, voice); }

std::string band(AnyQuantity least, AnyQuantity greatest, const Voice& voice) {
  return study::said(study::Cell{.value = least, .to = greatest}, voice);
}

/// Two figures: nobody knows a life better.
std::string count_text(double seasons, const Voice& voice) {
  return format_quantity(
      any_ratio(seasons),
      {.system = voice.units, .decimals = seasons < 10 ? 1 : 0, .unit = std::nullopt, .currency = voice.currency});
}

std::string seasons(const Working& turn, const Voice& voice) {
  return told(Code{"view.bearing.seasons"},
              {{"least", count_text(output_of(turn, "seasons-least").si, voice)},
               {"greatest", count_text(output_of(turn, "seasons-greatest").si, voice)},
               {"season", study::figure_text(*input_of(turn, "season-hours"), voice)}},
              voice);
}

double ground_of(const Working& turn) {
  const auto part = [&](std::string_view name) {
    const auto value = input_of(turn, name);
    return value ? value->si : 0.0;
  };
  return std::hypot(part("ground-up"), part("ground-drag"), part("ground-along"));
}

/// Without the ground's load a life is a figure that nobody should plan by: it is not said, and its working opens all the same.
FactRow life_row(const study::BearingTold& bearing, const Args& rotor, const Voice& voice) {
  const WorkingPtr& turn = bearing.turn;
  FactRow row{.caption = told(Code{"view.bearing.life"}, rotor, voice), .value = {}, .working = turn};
  if (bearing.ground) {
    row.value = band(output_of(*turn, "modified-least"), output_of(*turn, "modified-greatest"), voice);
    row.other = seasons(*turn, voice);
  } else {
    row.value = told(Code{"study.life_not_known"}, {}, voice);
    row.other = told(Code{"view.bearing.state_ground"}, {}, voice);
  }
  return row;
}

Json figures(const study::BearingTold& bearing, const Args& rotor, const Voice& voice) {
  const WorkingPtr& turn = bearing.turn;
  return facts_block({life_row(bearing, rotor, voice),
                      {.caption = told(Code{"view.bearing.stress"}, {}, voice),
                       .value = study::figure_text(output_of(*turn, "stress"), voice)},
                      {.caption = told(Code{"view.bearing.safety"}, {}, voice),
                       .value = shown(output_of(*turn, "static-safety"), voice)}},
                     voice);
}

/// What decides the figures and nobody measured: said beside them.
std::string assumptions(const study::BearingTold& bearing, const Voice& voice) {
  Args args;
  if (const std::vector<std::string> assumed = study::not_stated(bearing, voice); !assumed.empty())
    args.emplace_back("assumed", assumed);
  if (bearing.ground) args.emplace_back("ground", study::figure_text(any(newtons(ground_of(*bearing.turn))), voice));
  return told(Code{"view.bearing.assumed"}, args, voice);
}

}  // namespace

std::vector<Json> bearing_told(const Shaft& shaft, int rotor, const Voice& voice) {
  const Args args{{"rotor", rotor}};
  const Results<study::BearingTold> bearing = study::bearing_of(shaft, rotor);
  if (!bearing) {
    const Problem& first = bearing.error().front();
    return {text_block(told(Code{"view.bearing.no_answer"}, {{"rotor", rotor}, {"why", say(first, voice).read}}, voice),
                       "note")};
  }
  return {figures(*bearing, args, voice), text_block(assumptions(*bearing, voice), "note")};
}

}  // namespace flatwise::view
