// The catalogue, and one figure worked out: the same JSON as the shell's `figure --json`.
#include <nlohmann/json.hpp>

#include "core/doubt/doubt.h"
#include "core/figures/catalogue.h"
#include "server/input.h"
#include "server/routes.h"

namespace flatwise::server {
namespace {

constexpr double kMostInputs =
    1000;  // As many as the greatest pattern asks for: three for each of 240 rotors, and some more.
constexpr int kLongestInput = 200;
constexpr double kLongestUs = 2e6;  // A thread of the pool is kept that long by one question; the shell takes its time.

struct Written {
  std::string json, tag;
};
/// It is the same for the whole life of the program.
const Written& catalogue_in(UnitSystem units) {
  const auto written = [](UnitSystem in) {
    Voice voice;
    voice.units = in;
    wire::Json list = wire::Json::array();
    for (const FigureSpec* spec : catalogue()) list.push_back(wire::to_json(*spec, voice));
    std::string text = wire::Json{{"figures", std::move(list)}}.dump();
    std::string tag = tag_of(text);
    return Written{std::move(text), std::move(tag)};
  };
  static const Written kMetric = written(UnitSystem::metric), kInch = written(UnitSystem::inch);
  return units == UnitSystem::inch ? kInch : kMetric;
}

job::FieldSpec inputs_field() {
  job::FieldSpec spec = job::fields::text("inputs", 1, kLongestInput);
  spec.greatest = kMostInputs;
  return spec;
}

}  // namespace

Reply get_figures(const Call& call) {
  const Written& written = catalogue_in(call.voice.units);
  return tagged(json_reply(written.json), written.tag, call.request.if_none_match);
}

Reply post_figure(const Call& call) {
  const std::string name = decoded(call.request.captured[0], false).value_or("");
  const FigureSpec* spec = find_figure(name);
  if (spec == nullptr)
    return problem_reply(
        404, problem_of(Code{"figure.unknown"}, "figure", name, {{"near", std::string{nearest_figure(name)}}}),
        call.voice);
  Input input{call};
  std::vector<std::string> texts;
  input(inputs_field(), texts);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const Results<doubt::Doubted> answer = doubt::ask_with_doubt(*spec, texts, {.longest_us = kLongestUs});
  if (!answer) return problem_reply(422, answer.error(), call.voice);
  return json_reply(wire::to_json(*answer, call.voice));
}

}  // namespace flatwise::server
