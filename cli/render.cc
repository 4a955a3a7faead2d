#include "cli/render.h"

#include <algorithm>
#include <ostream>

#include "cli/text.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

std::string w(const Context& context, std::string_view id) { return word(id, context.voice); }

Tone tone_of(Severity severity) {
  if (severity == Severity::out) return Tone::out;
  return severity == Severity::note ? Tone::plain : Tone::tell;
}

std::string answer_text(const Context& context, std::optional<Answer> answer) {
  if (!answer) return {};
  const Tone tone = *answer == Answer::in ? Tone::in : *answer == Answer::out ? Tone::out : Tone::tell;
  return toned(w(context, "answer." + std::string{wire::name_of(*answer)}), tone, context.colour);
}

std::string origin_text(const Context& context, const Origin& origin) {
  std::string text = w(context, "origin." + std::string{wire::name_of(origin.kind)});
  // A line stays "shaft.toml:31": terminals open it. A source is told in its words.
  if (!origin.where.empty()) text += ", " + printable(source_words(origin, context.voice));
  return text;
}

Table input_table(const Context& context, const Working& working) {
  Table table;
  for (const Input& input : working.inputs) {
    std::string value = render_value(context, input.value, input.u);
    if (!input.typed.empty()) value += "  (" + printable(input.typed) + ")";
    table.rows.push_back({input.symbol, input.name, std::move(value), origin_text(context, input.origin)});
  }
  return table;
}

void render_findings(const Context& context, std::vector<Finding> findings, std::string& out) {
  std::ranges::stable_sort(findings, std::ranges::greater{}, &Finding::severity);
  for (const Finding& f : findings) out += render(context, f);
}

}  // namespace

Status refuse(const Context& context, const std::vector<Problem>& problems) {
  if (context.json) {
    *context.out << wire::problems_text(problems, context.voice);
    return Status::bad_input;
  }
  for (const Problem& p : problems) *context.err << render(context, p);
  return Status::bad_input;
}

Status refuse(const Context& context, Problem problem) {
  return refuse(context, std::vector<Problem>{std::move(problem)});
}

std::vector<Problem> as_options(std::vector<Problem> problems, const std::vector<std::string>& names) {
  for (Problem& problem : problems)
    if (std::ranges::find(names, problem.field) != names.end()) problem.field.insert(0, "--");
  return problems;
}

std::string severity_tag(const Context& context, Severity severity) {
  return toned(w(context, "severity." + std::string{wire::name_of(severity)}), tone_of(severity), context.colour);
}

std::string where_text(const Context& context, const Where& where) {
  if (where.part == Where::Part::rotor)
    return say(Message{Code{"cli.rotor"}, {{"rotor", where.number}}}, context.voice);
  if (where.part == Where::Part::station)
    return say(Message{Code{"cli.station"}, {{"station", where.number}}}, context.voice);
  return {};
}

std::string render_value(const Context& context, const Value& value, const std::optional<Uncertainty>& u) {
  if (const auto* text = std::get_if<std::string>(&value)) return printable(*text);
  const auto& quantity = std::get<AnyQuantity>(value);
  const flatwise::Shown shown{
      .system = context.voice.units, .decimals = {}, .unit = {}, .currency = context.voice.currency};
  if (u && u->expanded_si > 0) return format_with_uncertainty(quantity, u->expanded_si, shown);
  return format_quantity(quantity, shown);
}

std::string render(const Context& context, const Finding& finding) {
  const std::string tag = severity_tag(context, finding.severity);
  const std::string gap(static_cast<std::size_t>(std::max(1, 13 - columns(tag))), ' ');
  const std::string indent(15, ' ');
  std::string out = "  " + tag + gap + wrap(printable(say(finding, context.voice)), context.width - 15, indent) + "\n";
  if (finding.instruction)
    out += indent + toned("→ ", Tone::strong, context.colour) +
           wrap(printable(say(*finding.instruction, context.voice)), context.width - 17, indent + "  ") + "\n";
  return out;
}

std::string render(const Context& context, const Working& working) {
  std::string out = "  = " + toned(w(context, "figure." + working.figure), Tone::strong, context.colour);
  if (working.answer) out += "  " + answer_text(context, working.answer);
  out += "\n";
  Table results;
  for (const Output& o : working.outputs)
    results.rows.push_back(
        {o.symbol, w(context, "figure." + working.figure + "." + o.name), render_value(context, o.value, o.u)});
  out += lay_out(results, "      ");
  out += "      " + wrap(working.formula, context.width - 6, "        ") + "\n";
  out += lay_out(input_table(context, working), "      ");
  const Args source{{"source", sources_words(working.sources, context.voice)}};
  out += "      " + wrap(say(Message{Code{"cli.source"}, source}, context.voice), context.width - 6, "        ") + "\n";
  out += "      " + wrap(w(context, "figure." + working.figure + ".limits"), context.width - 6, "      ") + "\n";
  for (const Finding& f : working.findings) out += "    " + render(context, f);
  for (const Input& input : working.inputs)
    if (input.from != nullptr) out += "\n" + render(context, *input.from);
  return out;
}

std::vector<std::string> summary_row(const Context& context, const job::Shown& shown) {
  const Working& working = *shown.working;
  std::string value;
  if (!working.outputs.empty()) value = render_value(context, working.outputs[0].value, working.outputs[0].u);
  return {where_text(context, shown.where), printable(shown.about), w(context, "figure." + working.figure), value,
          answer_text(context, shown.counts())};
}

std::string render(const Context& context, const Problem& problem) {
  const SaidProblem said = say(problem, context.voice);
  std::string out;
  if (problem.place && !problem.place->file.empty()) {
    out += printable(problem.place->file);
    if (problem.place->line > 0)
      out += ":" + std::to_string(problem.place->line) + ":" + std::to_string(problem.place->column);
    out += ": ";
  }
  out += toned(printable(problem.field), Tone::strong, context.colour) + "\n";
  if (problem.place && !problem.place->quoted.empty()) {
    const std::string number = std::to_string(problem.place->line);
    const auto before = static_cast<std::size_t>(std::max(0, problem.place->column - 1));
    const std::string shown = printable(std::string_view{problem.place->quoted}.substr(0, 200));
    const int caret = columns(
        printable(std::string_view{problem.place->quoted}.substr(0, std::min(before, problem.place->quoted.size()))));
    out += "  " + number + " │ " + shown + "\n";
    if (before < 200)
      out += std::string(number.size() + 2, ' ') + " │ " + std::string(static_cast<std::size_t>(caret), ' ') + "^\n";
  }
  Table parts{
      .head = {},
      .rows = {{w(context, "cli.read"), printable(said.read)}, {w(context, "cli.allowed"), printable(said.allowed)}},
      .right = {}};
  if (!said.mend.empty()) parts.rows.push_back({w(context, "cli.mend"), printable(said.mend)});
  return out + lay_out(parts, "  ");
}

std::string render(const Context& context, const job::StageReport& report) {
  const std::string name = w(context, "stage." + std::string{job::stage_name(report.stage)});
  const bool right = report.worst() == Severity::note;
  const std::string state =
      right ? toned(w(context, "cli.in_order"), Tone::in, context.colour) : severity_tag(context, report.worst());
  std::string out = toned(name, Tone::strong, context.colour) + ": " + state + "\n";
  const std::string caution = "caution." + std::string{job::stage_name(report.stage)};
  if (!right && has_words(caution))
    out += "  " + toned("⚠ " + wrap(w(context, caution), context.width - 4, "    "), Tone::tell, context.colour) + "\n";
  render_findings(context, report.findings, out);
  for (const Problem& p : report.problems) out += render(context, p);
  if (report.workings.empty()) return out;
  if (context.why) {
    for (const job::Shown& shown : report.workings) {
      const std::string head =
          where_text(context, shown.where) + (shown.about.empty() ? "" : " " + printable(shown.about));
      out += "\n" + (head.empty() ? std::string{} : "  " + head + "\n") + render(context, *shown.working);
    }
    return out;
  }
  Table table;
  for (const job::Shown& shown : report.workings) table.rows.push_back(summary_row(context, shown));
  return out + lay_out(table);
}

std::string render(const Context& context, const job::JobReport& report) {
  std::string out;
  for (const job::StageReport& stage : report.stages) out += render(context, stage) + "\n";
  const Finding* first = report.first_open();
  out += toned(w(context, "cli.next"), Tone::strong, context.colour) + " ";
  if (first == nullptr) return out + w(context, "cli.nothing_open") + "\n";
  const Message what = first->instruction ? *first->instruction : Message{first->code, first->args};
  return out + wrap(printable(say(what, context.voice)), context.width - 6, "      ") + "\n";
}

}  // namespace flatwise::cli
