#include <filesystem>
#include <ostream>

#include "cli/data.h"
#include "cli/files.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "desk/demo.h"

namespace flatwise::cli {
namespace {

namespace fs = std::filesystem;

void heading(const Context& context, std::string_view id) {
  *context.out << "\n" << toned(word(id, context.voice), Tone::strong, context.colour) << "\n\n";
}

/// The folder of the demo; where there is none, one is written beside what the demo makes, from the files that the program brings.
Result<std::string> demo_here(const std::string& told, const std::string& out_folder) {
  if (std::string there = demo_at(told); !there.empty()) return there;
  const std::string folder = out_folder + "/demo";
  for (const auto& [name, text] : desk::demo_built_in())
    if (auto written = write_file(folder + "/" + name, text); !written)
      return tl::unexpected(std::move(written.error()));
  return folder;
}

}  // namespace

Status demo(const Context& context, const std::string& demo_folder, const std::string& out_folder) {
  const Result<std::string> found = demo_here(demo_folder, out_folder);
  if (!found) return refuse(context, found.error());
  const std::string& folder = *found;
  const std::string shaft = folder + "/long-nine.toml", job = folder + "/job-31.toml",
                    workshop = folder + "/workshop.toml";
  std::error_code ignored;
  if (!fs::exists(job, ignored))
    return refuse(context, Problem{Code{"cli.demo_missing"}, "demo", folder, {}, std::nullopt});
  heading(context, "cli.demo.map");
  Status worst = map_marks(context, {.shaft_file = shaft, .first_flat = {}});
  if (worst == Status::bad_input) return worst;
  heading(context, "cli.demo.plan");
  if (plan_teardown(context, {.shaft_file = shaft, .workshop_file = workshop, .rotors = {4}}) == Status::bad_input)
    return Status::bad_input;
  heading(context, "cli.demo.check");
  if (judge_all(context, {job, std::nullopt, std::nullopt}, job::Stage::release) == Status::bad_input)
    return Status::bad_input;
  heading(context, "cli.demo.sheets");
  SheetOptions sheets;
  sheets.files = {job, std::nullopt, std::nullopt};
  sheets.folder = out_folder;
  if (write_sheets(context, sheets) == Status::bad_input) return Status::bad_input;
  heading(context, "cli.demo.own");
  *context.out << say(Message{Code{"cli.demo.begin"}, {{"job", job}}}, context.voice) << "\n";
  return Status::in_order;  // The demo did what it should, mistakes and all.
}

}  // namespace flatwise::cli
