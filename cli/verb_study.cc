#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/files.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "definition/read.h"
#include "paper/render.h"
#include "paper/study_sheet.h"
#include "study/pictures.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

using study::Study;

tl::unexpected<std::vector<Problem>> failed(Problem problem) {
  return tl::unexpected(std::vector<Problem>{std::move(problem)});
}

/// "Thirds: pattern=step 2; speed=400 /min".
Result<study::TypedWay> way_of(const std::string& typed) {
  const auto trimmed = [](std::string_view text) {
    const auto from = text.find_first_not_of(' ');
    if (from == std::string_view::npos) return std::string{};
    return std::string{text.substr(from, text.find_last_not_of(' ') - from + 1)};
  };
  const Problem form{Code{"cli.way_form"}, "--way", typed, {}, std::nullopt};
  const std::size_t colon = typed.find(':');
  if (colon == std::string::npos) return tl::unexpected(form);
  study::TypedWay way{.name = {trimmed(std::string_view{typed}.substr(0, colon))}};
  std::string_view rest = std::string_view{typed}.substr(colon + 1);
  while (!trimmed(rest).empty()) {
    const std::string_view one = rest.substr(0, rest.find(';'));
    rest.remove_prefix(std::min(rest.size(), one.size() + 1));
    const std::size_t equals = one.find('=');
    auto* field = equals == std::string_view::npos ? nullptr : study::field_of(way, trimmed(one.substr(0, equals)));
    if (field == nullptr || field->has_value()) return tl::unexpected(form);
    *field = study::Typed{trimmed(one.substr(equals + 1))};
  }
  return way;
}

/// The file is a study or a shaft; options go before what a study file says.
struct Asked {
  Shaft shaft;
  study::Order order;
};
Results<Asked> asked_of(const Context& context, const StudyOptions& options) {
  const Result<std::string> text = read_text(context, options.file);
  if (!text) return failed(text.error());
  study::Order order;
  std::string shaft_text = *text, shaft_path = options.file;
  const bool is_study = text->find("[study]") != std::string::npos;
  if (is_study) {
    auto file = definition::read_study(*text, options.file);
    if (!file) return tl::unexpected(std::move(file.error()));
    order = std::move(file->order);
    shaft_path = beside(options.file, file->shaft);
    const Result<std::string> shaft = read_text(context, shaft_path);
    if (!shaft) return failed(shaft.error());
    shaft_text = *shaft;
  }
  std::vector<Problem> problems;
  if (!options.ways.empty()) order.ways.clear();
  for (const std::string& typed : options.ways) {
    Result<study::TypedWay> way = way_of(typed);
    if (way)
      order.ways.push_back(*std::move(way));
    else
      problems.push_back(way.error());
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  if (!options.name.empty()) order.name = options.name;
  if (!options.ground.empty()) order.ground = study::Typed{options.ground};
  if (!options.error_share.empty()) order.error_share = study::Typed{options.error_share};
  if (!options.error_azimuth.empty()) order.error_azimuth = study::Typed{options.error_azimuth};
  Results<Shaft> shaft = definition::read_shaft(shaft_text, shaft_path);
  if (!shaft) return tl::unexpected(std::move(shaft.error()));
  return Asked{*std::move(shaft), std::move(order)};
}

// --- As text -----------------------------------------------------------------------------------------------------------

std::string label_of(const study::Row& row, const Voice& voice) { return word(study::word_of(row), voice); }

std::string cell_text(const study::Cell& cell, const Voice& voice) {
  const std::string says = study::said(cell, voice);
  return cell.detail ? says + " (" + study::said(*cell.detail, voice) + ")" : says;
}

std::string table_text(const Context& context, const Study& s) {
  Table table{.head = {""}, .rows = {}, .right = {}};
  table.right = std::string(1 + s.ways.size(), 'l');
  for (int way = 0; way < s.count(); ++way)
    table.head.push_back(printable(s.ways[static_cast<std::size_t>(way)].name()) + (s.is_best(way) ? " *" : ""));
  for (const study::Row& row : s.rows) {
    if (row.key == study::RowKey::words) continue;
    table.rows.push_back({label_of(row, context.voice)});
    for (const study::Cell& cell : row.cells) table.rows.back().push_back(cell_text(cell, context.voice));
  }
  return lay_out(table);
}

std::string study_text(const Context& context, const Study& s) {
  std::string out = toned(printable(s.name), Tone::strong, context.colour) + "\n";
  if (s.shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  out += table_text(context, s) + "\n";
  for (std::size_t i = 0; i < s.ways.size(); ++i)
    out +=
        wrap(printable(s.ways[i].name()) + ": " + study::said(s.rows.back().cells[i], context.voice), context.width) +
        "\n";
  const study::AdviceSaid advice = study::said(s, context.voice);
  out += "\n" + toned(wrap(advice.does, context.width), Tone::strong, context.colour) + "\n";
  out += wrap(advice.because, context.width) + "\n" + wrap(advice.waits, context.width) + "\n";
  if (!s.advice.lines.empty()) out += "\n" + word("cli.study_lines", context.voice) + "\n\n" + s.advice.lines + "\n";
  out += "\n";
  for (const Message& note : s.notes) out += wrap(study::said(note, context.voice), context.width) + "\n";
  if (!context.why) return out;
  for (const study::Row& row : s.rows)
    for (const study::Cell& cell : row.cells)
      if (cell.working) out += "\n" + render(context, *cell.working);
  return out;
}

// --- As JSON -----------------------------------------------------------------------------------------------------------

wire::Json cell_json(const Context& context, const study::Cell& cell) {
  wire::Json json{{"says", study::said(cell, context.voice)}};
  if (cell.value) json["value"] = wire::to_json(*cell.value, context.voice);
  if (cell.to) json["to"] = wire::to_json(*cell.to, context.voice);
  if (cell.detail) json["detail"] = study::said(*cell.detail, context.voice);
  if (cell.working && context.why) json["working"] = wire::to_json(*cell.working, context.voice);
  if (cell.bad) json["bad"] = true;
  return json;
}

wire::Json ways_json(const Context& context, const Study& s) {
  wire::Json ways = wire::Json::array();
  for (int i = 0; i < s.count(); ++i) {
    const study::Way& way = s.ways[static_cast<std::size_t>(i)];
    wire::Json changes = wire::Json::array();
    for (const Message& change : way.changes) changes.push_back(study::said(change, context.voice));
    ways.push_back({{"name", way.name()},
                    {"changes", std::move(changes)},
                    {"defined", way.as_defined()},
                    {"advised", s.is_best(i)},
                    {"flats", s.outcomes[static_cast<std::size_t>(i)].arranged.flats}});
  }
  return ways;
}

wire::Json rows_json(const Context& context, const Study& s) {
  wire::Json rows = wire::Json::array();
  for (const study::Row& row : s.rows) {
    wire::Json cells = wire::Json::array();
    for (const study::Cell& cell : row.cells) cells.push_back(cell_json(context, cell));
    rows.push_back(
        {{"key", study::name_of(row.key)}, {"label", label_of(row, context.voice)}, {"cells", std::move(cells)}});
  }
  return rows;
}

wire::Json study_json(const Context& context, const Study& s) {
  wire::Json json{{"study", s.name}, {"shaft", s.shaft.spec().name}, {"invented", s.shaft.spec().invented}};
  json["ways"] = ways_json(context, s);
  json["rows"] = rows_json(context, s);
  json["plots"] = wire::Json::array();
  for (const study::PlotData& plot : s.plots)
    json["plots"].push_back({{"key", study::name_of(plot.key)},
                             {"title", study::title_of(plot.key, context.voice)},
                             {"question", study::question_of(plot.key, context.voice)},
                             {"differs", plot.differs}});
  const study::AdviceSaid advice = study::said(s, context.voice);
  json["advice"] = {{"way", s.advice.way ? wire::Json(*s.advice.way) : wire::Json(nullptr)},
                    {"does", advice.does},
                    {"because", advice.because},
                    {"waits", advice.waits},
                    {"lines", s.advice.lines}};
  json["notes"] = wire::Json::array();
  for (const Message& note : s.notes) json["notes"].push_back(study::said(note, context.voice));
  wire::add_doubts(json, s.doubts, context.voice);
  return json;
}

// --- As files ----------------------------------------------------------------------------------------------------------

std::optional<Problem> put(const std::string& path, const Result<std::string>& bytes) {
  if (!bytes) return bytes.error();
  const auto written = write_file(path, *bytes);
  return written ? std::nullopt : std::optional{written.error()};
}

std::optional<Problem> write_plots(const Context& context, const StudyOptions& options, const Study& s) {
  for (const study::PlotData& plot : s.plots) {
    const std::string name = "/" + std::string{study::name_of(plot.key)};
    if (!options.csv.empty())
      if (auto problem = put(options.csv + name + ".csv", study::csv_of(s, plot))) return problem;
    if (options.svg.empty()) continue;
    const auto svg = paper::render_svg(study::picture_of(s, plot, context.voice));
    if (auto problem = put(options.svg + name + ".svg", svg)) return problem;
  }
  if (options.csv.empty()) return std::nullopt;
  return put(options.csv + "/study.csv", study::csv_of(s, context.voice));
}

std::optional<Problem> write_pdf(const Context& context, const StudyOptions& options, const Study& s) {
  if (options.pdf.empty()) return std::nullopt;
  const auto measure = paper::make_measure();
  if (!measure) return measure.error();
  paper::Head head;
  head.shaft = s.shaft.spec().name;
  head.invented = s.shaft.spec().invented;
  head.from = options.file;
  head.printed = options.printed;
  head.paper = options.paper == "letter" ? paper::Paper::letter : paper::Paper::a4;
  head.voice = context.voice;
  const paper::Pages pages = paper::study_sheet({.head = head, .study = &s}, **measure);
  return put(options.pdf, paper::render_pdf(pages, {s.name, kCreated}));
}

}  // namespace

Status study_ways(const Context& context, const StudyOptions& options) {
  const Results<Asked> asked = asked_of(context, options);
  if (!asked) return refuse(context, asked.error());
  const Results<Study> s = study::study(asked->shaft, asked->order, context.voice);
  if (!s) return refuse(context, s.error());
  if (const auto problem = write_plots(context, options, *s)) return refuse(context, *problem);
  if (const auto problem = write_pdf(context, options, *s)) return refuse(context, *problem);
  *context.out << (context.json ? wire::dump(study_json(context, *s)) : study_text(context, *s));
  return Status::in_order;
}

}  // namespace flatwise::cli
