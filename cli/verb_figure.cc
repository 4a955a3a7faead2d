#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "core/doubt/doubt.h"
#include "core/figures/catalogue.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

std::string key(const FigureSpec& figure) { return "figure." + std::string{figure.name}; }

std::string range_text(const Context& context, const InputSpec& spec) {
  if (!spec.choices.empty()) {
    std::string out;
    for (const std::string_view c : spec.choices) out += (out.empty() ? "" : " | ") + std::string{c};
    return out;
  }
  if (spec.text) return word("cli.text", context.voice);
  const auto shown = [&](double si) { return render_value(context, AnyQuantity{si, spec.kind}, {}); };
  std::string out = word("kind." + std::string{kind_name(spec.kind)}, context.voice);
  if (std::isfinite(spec.least_si)) out += (spec.above_least ? " > " : " ≥ ") + shown(spec.least_si);
  if (std::isfinite(spec.greatest_si)) out += " ≤ " + shown(spec.greatest_si);
  return out;
}

std::string need_text(const Context& context, const InputSpec& spec) {
  std::string out;
  if (spec.repeated) out = word("cli.repeated", context.voice);
  if (spec.optional) out += (out.empty() ? "" : ", ") + word("cli.optional", context.voice);
  if (spec.assumed) {
    out +=
        (out.empty() ? "" : ", ") + word("cli.assumed", context.voice) + " " + render_value(context, *spec.assumed, {});
    if (!spec.assumed_from.empty()) out += " (" + std::string{spec.assumed_from} + ")";
  }
  return out;
}

std::string describe(const Context& context, const FigureSpec& figure) {
  std::string out =
      toned(std::string{figure.name}, Tone::strong, context.colour) + "  " + word(key(figure), context.voice) + "\n";
  out += "  " + std::string{figure.formula} + "\n\n";
  Table inputs;
  for (const InputSpec& s : figure.inputs)
    inputs.rows.push_back({std::string{s.name}, std::string{s.symbol},
                           word(key(figure) + "." + std::string{s.name}, context.voice), range_text(context, s),
                           need_text(context, s)});
  Table outputs;
  for (const OutputSpec& o : figure.outputs)
    outputs.rows.push_back(
        {std::string{o.name}, std::string{o.symbol}, word(key(figure) + "." + std::string{o.name}, context.voice)});
  out += "  " + word("cli.inputs", context.voice) + "\n" + lay_out(inputs, "    ");
  out += "  " + word("cli.outputs", context.voice) + "\n" + lay_out(outputs, "    ");
  out += "  " + wrap(word(key(figure) + ".limits", context.voice), context.width - 2, "  ") + "\n\n  flatwise figure " +
         std::string{figure.name};
  for (const std::string_view in : figure.example.inputs) out += " '" + std::string{in} + "'";
  return out + "\n";
}

Status describe_to(const Context& context, const FigureSpec& figure) {
  *context.out << (context.json ? wire::dump(wire::to_json(figure, context.voice)) : describe(context, figure));
  return Status::in_order;
}

std::string markdown_cell(std::string text) {
  for (std::size_t i = 0; (i = text.find('|', i)) != std::string::npos; i += 2) text.replace(i, 1, "\\|");
  return text;
}

std::string reference_of(const Context& context, const FigureSpec& figure) {
  std::string out = "## " + std::string{figure.name} + "\n\n" + word(key(figure), context.voice) + ": `" +
                    std::string{figure.formula} + "`\n\n";
  out += "| in | symbol | meaning | range | |\n|---|---|---|---|---|\n";
  for (const InputSpec& s : figure.inputs)
    out += "| `" + std::string{s.name} + "` | " + markdown_cell(std::string{s.symbol}) + " | " +
           markdown_cell(word(key(figure) + "." + std::string{s.name}, context.voice)) + " | " +
           markdown_cell(range_text(context, s)) + " | " + markdown_cell(need_text(context, s)) + " |\n";
  out += "\n| out | symbol | meaning |\n|---|---|---|\n";
  for (const OutputSpec& o : figure.outputs)
    out += "| `" + std::string{o.name} + "` | " + markdown_cell(std::string{o.symbol}) + " | " +
           markdown_cell(word(key(figure) + "." + std::string{o.name}, context.voice)) + " |\n";
  out += "\n" + word(key(figure) + ".limits", context.voice) + "\n\n" + word("cli.sources", context.voice) + " ";
  for (std::size_t i = 0; i < figure.sources.size(); ++i) out += (i ? ", " : "") + std::string{figure.sources[i]};
  out += "\n\n```\nflatwise figure " + std::string{figure.name};
  for (const std::string_view in : figure.example.inputs) out += " '" + std::string{in} + "'";
  return out + "\n" + std::string{figure.example.expected} + "\n```\n\n";
}

Problem unknown_figure(const std::string& name) {
  return {
      Code{"figure.unknown"}, "figure", printable(name), {{"near", std::string{nearest_figure(name)}}}, std::nullopt};
}

Severity worst_of(const Working& working) {
  Severity worst = Severity::note;
  for (const Finding& f : working.findings) worst = std::max(worst, f.severity);
  if (working.answer == Answer::out) worst = Severity::out;
  if (working.answer == Answer::cannot_tell) worst = std::max(worst, Severity::cannot_tell);
  return worst;
}

/// Where the doubt of each result comes from: one line an input, the greatest first.
std::string shares_text(const Context& context, const doubt::Doubted& doubted) {
  std::string out;
  for (const doubt::DoubtedOutput& one : doubted.outputs) {
    const Working& working = doubted.working;
    const Output& output = working.outputs[one.output];
    const Kind kind = std::get<AnyQuantity>(output.value).kind;
    const Kind of_doubt = difference_kind(kind);
    Table table;
    for (const doubt::Share& share : one.shares)
      table.rows.push_back({working.inputs[share.input].symbol, working.inputs[share.input].name,
                            render_value(context, any_ratio(share.part), {}),
                            say(Message{Code{"cli.doubt_without"}, {{"left", AnyQuantity{share.without_si, of_doubt}}}},
                                context.voice)});
    out += "\n    " +
           say(Message{Code{"cli.doubt_of"}, {{"output", Word{"figure." + working.figure + "." + output.name}}}},
               context.voice) +
           "\n" + lay_out(table, "      ");
  }
  return out;
}

}  // namespace

Status list_figures(const Context& context) {
  if (context.json) {
    wire::Json list = wire::Json::array();
    for (const FigureSpec* f : catalogue()) list.push_back(wire::to_json(*f, context.voice));
    *context.out << wire::dump(wire::Json{{"figures", std::move(list)}});
    return Status::in_order;
  }
  Table table;
  for (const FigureSpec* f : catalogue()) table.rows.push_back({std::string{f->name}, word(key(*f), context.voice)});
  *context.out << lay_out(table);
  return Status::in_order;
}

Status one_figure(const Context& context, const std::string& name, const std::vector<std::string>& texts) {
  const FigureSpec* figure = find_figure(name);
  if (figure == nullptr) return refuse(context, unknown_figure(name));
  if (texts.empty() && !std::ranges::all_of(figure->inputs, [](const InputSpec& s) { return s.assumed || s.optional; }))
    return describe_to(context, *figure);
  const Results<doubt::Doubted> answer = doubt::ask_with_doubt(*figure, texts);
  if (!answer && texts.empty()) return describe_to(context, *figure);  // Not one alone is needed, but some are.
  if (!answer) return refuse(context, answer.error());
  if (context.json)
    *context.out << wire::dump(wire::to_json(*answer, context.voice));
  else
    *context.out << render(context, answer->working) << shares_text(context, *answer);
  return status_of(worst_of(answer->working));
}

Status figure_reference(const Context& context) {
  *context.out << "<!-- Made by `flatwise figure --reference`; a test keeps it true. -->\n\n# "
               << word("cli.figures_title", context.voice) << "\n\n";
  for (const FigureSpec* f : catalogue()) *context.out << reference_of(context, *f);
  return Status::in_order;
}

}  // namespace flatwise::cli
