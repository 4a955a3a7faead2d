#include "wire/json.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/figures/catalogue.h"

namespace flatwise::wire {
namespace {

constexpr std::array<std::string_view, 4> kSeverities{"note", "unanswered", "cannot_tell", "out"};
constexpr std::array<std::string_view, 3> kAnswers{"in", "out", "cannot_tell"};
constexpr std::array<std::string_view, 5> kOrigins{"given", "measured", "computed", "assumed", "published"};

struct ArgToJson {
  const Voice& voice;
  Json operator()(std::int64_t v) const { return v; }
  Json operator()(const AnyQuantity& v) const { return to_json(v, voice); }
  Json operator()(const std::string& v) const { return v; }
  Json operator()(const Word& v) const { return v.id; }
  Json operator()(const std::vector<std::int64_t>& v) const { return v; }
  Json operator()(const std::vector<std::string>& v) const { return v; }
  Json operator()(const std::vector<Word>& v) const {
    Json list = Json::array();
    for (const Word& w : v) list.push_back(w.id);
    return list;
  }
};

Json uncertainty_json(const Uncertainty& u, const AnyQuantity& value, const Voice& voice) {
  Json json;
  json[value_key(value.kind, "standard")] = u.standard_si;
  json[value_key(value.kind, "expanded")] = u.expanded_si;
  if (u.degrees_of_freedom) json["degrees_of_freedom"] = *u.degrees_of_freedom;
  if (std::isfinite(value.si) && std::isfinite(u.expanded_si) && u.expanded_si > 0)
    json["shown"] = format_with_uncertainty(
        value, u.expanded_si, {.system = voice.units, .decimals = {}, .unit = {}, .currency = voice.currency});
  return json;
}

void add_uncertainty(Json& to, const Value& value, const std::optional<Uncertainty>& u, const Voice& voice) {
  const auto* quantity = std::get_if<AnyQuantity>(&value);
  if (u && quantity != nullptr) to["uncertainty"] = uncertainty_json(*u, *quantity, voice);
}

Json where_json(const Where& where) {
  if (where.part == Where::Part::rotor) return {{"rotor", where.number}};
  if (where.part == Where::Part::station) return {{"station", where.number}};
  return "shaft";
}

Json input_json(const Input& input, const Voice& voice) {
  Json json{{"name", input.name}, {"symbol", input.symbol}, {"value", to_json(input.value, voice)}};
  json["origin"] = {{"kind", name_of(input.origin.kind)}, {"where", input.origin.where}};
  if (std::string said = source_words(input.origin, voice); said != input.origin.where)
    json["origin"]["where_say"] = std::move(said);
  if (!input.typed.empty()) json["typed"] = input.typed;
  add_uncertainty(json, input.value, input.u, voice);
  if (input.from != nullptr) json["from"] = to_json(*input.from, voice);
  return json;
}

Json range_json(const InputSpec& spec) {
  Json json = Json::object();
  if (std::isfinite(spec.least_si)) json[value_key(spec.kind, "least")] = spec.least_si;
  if (std::isfinite(spec.greatest_si)) json[value_key(spec.kind, "greatest")] = spec.greatest_si;
  if (spec.above_least) json["above_least"] = true;
  return json;
}

Json spec_input_json(const FigureSpec& figure, const InputSpec& spec, const Voice& voice) {
  Json json{{"name", spec.name}, {"symbol", spec.symbol}};
  json["meaning"] = say("figure." + std::string{figure.name} + "." + std::string{spec.name}, {}, voice);
  const bool quantity = spec.choices.empty() && !spec.text;
  json["kind"] = quantity ? kind_name(spec.kind) : std::string_view{spec.text ? "text" : "choice"};
  if (!spec.choices.empty()) json["choices"] = std::vector<std::string>(spec.choices.begin(), spec.choices.end());
  if (quantity) json["range"] = range_json(spec);
  json["repeated"] = spec.repeated;
  json["optional"] = spec.optional;
  if (spec.assumed) json["assumed"] = {{"value", to_json(*spec.assumed, voice)}, {"from", spec.assumed_from}};
  return json;
}

}  // namespace

std::string value_key(Kind kind, std::string_view stem) { return std::string{stem} + std::string{si_suffix(kind)}; }

std::string_view name_of(Severity severity) { return kSeverities[static_cast<std::size_t>(severity)]; }
std::string_view name_of(Answer answer) { return kAnswers[static_cast<std::size_t>(answer)]; }
std::string_view name_of(OriginKind kind) { return kOrigins[static_cast<std::size_t>(kind)]; }

Json to_json(const AnyQuantity& value, const Voice& voice) {
  Json json{{"kind", kind_name(value.kind)}};
  json[value_key(value.kind)] = value.kind == Kind::count ? Json(std::llround(value.si)) : Json(value.si);
  json["shown"] =
      format_quantity(value, {.system = voice.units, .decimals = {}, .unit = {}, .currency = voice.currency});
  return json;
}

Json to_json(const Value& value, const Voice& voice) {
  if (const auto* text = std::get_if<std::string>(&value)) return {{"kind", "word"}, {"value", *text}};
  return to_json(std::get<AnyQuantity>(value), voice);
}

Json to_json(const Args& args, const Voice& voice) {
  Json json = Json::object();
  for (const Arg& arg : args) json[std::string{arg.name}] = std::visit(ArgToJson{voice}, arg.value);
  return json;
}

Json to_json(const Finding& finding, const Voice& voice) {
  Json json{{"code", finding.code.id()}, {"severity", name_of(finding.severity)}, {"where", where_json(finding.where)}};
  json["args"] = to_json(finding.args, voice);
  json["says"] = say(finding, voice);
  if (finding.instruction) {
    json["do"] = {{"code", finding.instruction->code.id()}, {"args", to_json(finding.instruction->args, voice)}};
    json["do"]["says"] = say(*finding.instruction, voice);
  }
  return json;
}

Json to_json(const Problem& problem, const Voice& voice) {
  const SaidProblem said = say(problem, voice);
  Json json{{"code", problem.code.id()}, {"field", problem.field}, {"given", problem.given}};
  json["read"] = said.read;
  json["allowed"] = said.allowed;
  json["mend"] = said.mend;
  if (problem.place) {
    json["place"] = {{"file", problem.place->file}, {"line", problem.place->line}, {"column", problem.place->column}};
    if (!problem.place->quoted.empty()) json["place"]["quoted"] = problem.place->quoted;
  }
  return json;
}

Json to_json(const Working& working, const Voice& voice) {
  Json json{{"figure", working.figure}, {"title", say("figure." + working.figure, {}, voice)}};
  json["outputs"] = Json::array();
  for (const Output& out : working.outputs) {
    Json one{{"name", out.name}, {"symbol", out.symbol}, {"value", to_json(out.value, voice)}};
    add_uncertainty(one, out.value, out.u, voice);
    json["outputs"].push_back(std::move(one));
  }
  if (working.answer) json["answer"] = name_of(*working.answer);
  json["formula"] = working.formula;
  json["inputs"] = Json::array();
  for (const Input& input : working.inputs) json["inputs"].push_back(input_json(input, voice));
  json["sources"] = std::vector<std::string>(working.sources.begin(), working.sources.end());
  json["sources_say"] = Json::array();
  for (const std::string_view key : working.sources) json["sources_say"].push_back(source_words(key, voice));
  json["findings"] = Json::array();
  for (const Finding& f : working.findings) json["findings"].push_back(to_json(f, voice));
  return json;
}

Json to_json(const FigureSpec& spec, const Voice& voice) {
  const std::string key = "figure." + std::string{spec.name};
  const std::string section{section_of(spec)};
  Json json{{"name", spec.name}, {"title", say(key, {}, voice)}};
  json["section"] = {{"name", section}, {"title", say("section." + section, {}, voice)}};
  json["formula"] = spec.formula;
  json["inputs"] = Json::array();
  for (const InputSpec& in : spec.inputs) json["inputs"].push_back(spec_input_json(spec, in, voice));
  json["outputs"] = Json::array();
  for (const OutputSpec& out : spec.outputs)
    json["outputs"].push_back({{"name", out.name},
                               {"symbol", out.symbol},
                               {"meaning", say(key + "." + std::string{out.name}, {}, voice)},
                               {"kind", out.text ? std::string_view{"word"} : kind_name(out.kind)}});
  json["sources"] = std::vector<std::string>(spec.sources.begin(), spec.sources.end());
  json["limits"] = say(key + ".limits", {}, voice);
  json["example"] = {{"inputs", std::vector<std::string>(spec.example.inputs.begin(), spec.example.inputs.end())},
                     {"expected", spec.example.expected}};
  return json;
}

Json to_json(const job::StageReport& report, const Voice& voice) {
  Json json{{"stage", job::stage_name(report.stage)}, {"worst", name_of(report.worst())}};
  json["findings"] = Json::array();
  for (const Finding& f : report.findings) json["findings"].push_back(to_json(f, voice));
  json["workings"] = Json::array();
  for (const job::Shown& shown : report.workings) {
    Json one{{"where", where_json(shown.where)}, {"about", shown.about}};
    if (const auto answer = shown.counts()) one["answer"] = name_of(*answer);
    one["working"] = to_json(*shown.working, voice);
    json["workings"].push_back(std::move(one));
  }
  json["problems"] = problems_json(report.problems, voice)["problems"];
  return json;
}

Json to_json(const job::JobReport& report, const Voice& voice) {
  Json json{{"worst", name_of(report.worst())}};
  const Finding* first = report.first_open();
  json["next"] = first != nullptr ? to_json(*first, voice) : Json(nullptr);
  json["stages"] = Json::array();
  for (const job::StageReport& stage : report.stages) json["stages"].push_back(to_json(stage, voice));
  return json;
}

Json problems_json(std::span<const Problem> problems, const Voice& voice) {
  Json list = Json::array();
  for (const Problem& p : problems) list.push_back(to_json(p, voice));
  return {{"problems", std::move(list)}};
}

std::string problems_text(std::span<const Problem> problems, const Voice& voice) {
  return dump(problems_json(problems, voice));
}

std::string dump(const Json& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

}  // namespace flatwise::wire
