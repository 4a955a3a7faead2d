#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/describe.h"
#include "cli/files.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "paper/compose.h"
#include "paper/render.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

constexpr double kDotsPerInch = 150;
struct Written {
  std::string sheet, file;
};

Problem one(Problem problem) { return problem; }

/// The pages of a sheet as files: one PDF, or one SVG or PNG a page.
Results<std::vector<Written>> write_sheet(const paper::Composed& sheet, const SheetOptions& options) {
  std::vector<Written> files;
  const auto put = [&](const std::string& name, const Result<std::string>& bytes) -> std::optional<Problem> {
    if (!bytes) return one(bytes.error());
    const std::string path = options.folder + "/" + name + "." + options.format;
    if (const auto written = write_file(path, *bytes); !written) return one(written.error());
    files.push_back({sheet.name, path});
    return std::nullopt;
  };
  std::optional<Problem> problem;
  if (options.format == "pdf") problem = put(sheet.name, paper::render_pdf(sheet.pages, {sheet.title, kCreated}));
  for (std::size_t i = 0; options.format != "pdf" && i < sheet.pages.size() && !problem; ++i) {
    const std::string name = sheet.name + (sheet.pages.size() > 1 ? "-" + std::to_string(i + 1) : "");
    problem = put(name, options.format == "svg" ? paper::render_svg(sheet.pages[i])
                                                : paper::render_png(sheet.pages[i], kDotsPerInch));
  }
  if (problem) return tl::unexpected(std::vector<Problem>{*std::move(problem)});
  return files;
}

/// Shaft, workshop and, where there are any, readings.
struct Material {
  std::optional<Shaft> shaft;
  Workshop workshop;
  std::optional<Bench> bench;
};

Results<Material> load(const Context& context, const SheetOptions& options) {
  Material m;
  if (!options.files.readings.empty()) {
    Results<Job> job = load_job(context, options.files);
    if (!job) return tl::unexpected(std::move(job.error()));
    m.shaft = std::move(job->shaft);
    m.workshop = std::move(job->workshop);
    m.bench = std::move(job->bench);
    return m;
  }
  if (!options.files.shaft)
    return tl::unexpected(std::vector<Problem>{{Code{"cli.no_shaft_or_readings"}, "READINGS", {}, {}, std::nullopt}});
  if (auto twice =
          stdin_twice({{"--shaft", *options.files.shaft}, {"--workshop", options.files.workshop.value_or("")}}))
    return tl::unexpected(std::vector<Problem>{*std::move(twice)});
  Results<Shaft> shaft = load_shaft(context, *options.files.shaft);
  if (!shaft) return tl::unexpected(std::move(shaft.error()));
  Results<Workshop> workshop = load_workshop(context, options.files.workshop.value_or(""));
  if (!workshop) return tl::unexpected(std::move(workshop.error()));
  m.shaft = *std::move(shaft);
  m.workshop = *std::move(workshop);
  return m;
}

paper::SheetOrder order_of(const Context& context, const SheetOptions& options, const Material& m) {
  paper::SheetOrder order{.shaft = &*m.shaft,
                          .workshop = &m.workshop,
                          .bench = m.bench ? &*m.bench : nullptr,
                          .rotors = options.rotors,
                          .names = options.sheets,
                          .head = {}};
  if (order.rotors.empty() && m.bench) order.rotors = m.bench->came_off;
  order.head.shaft = m.shaft->spec().name;
  order.head.workshop = m.workshop.name;
  order.head.invented = m.shaft->spec().invented || m.workshop.invented;
  order.head.printed = options.printed;
  order.head.from = m.bench ? options.files.readings : *options.files.shaft;
  order.head.job = m.bench ? m.bench->job : "";
  order.head.paper = options.paper == "letter" ? paper::Paper::letter : paper::Paper::a4;
  order.head.voice = context.voice;
  order.head.voice.currency = m.workshop.currency;
  return order;
}

}  // namespace

std::vector<std::string> sheet_names() { return paper::sheet_names(); }

Status write_sheets(const Context& context, const SheetOptions& options) {
  const Results<Material> material = load(context, options);
  if (!material) return refuse(context, material.error());
  const auto measure = paper::make_measure();
  if (!measure) return refuse(context, measure.error());
  const auto sheets = paper::compose(order_of(context, options, *material), **measure);
  if (!sheets) return refuse(context, sheets.error());
  wire::Json list = wire::Json::array();
  for (const paper::Composed& sheet : *sheets) {
    const auto files = write_sheet(sheet, options);
    if (!files) return refuse(context, files.error());
    for (const Written& w : *files) {
      list.push_back({{"sheet", w.sheet}, {"file", w.file}});
      if (!context.json) *context.out << printable(w.file) << "\n";
    }
  }
  if (context.json) *context.out << wire::dump(wire::Json{{"sheets", std::move(list)}});
  return Status::in_order;
}

}  // namespace flatwise::cli
