#include "cli/load.h"

#include "cli/files.h"
#include "definition/read.h"
#include "job/questions.h"

namespace flatwise::cli {
namespace {

template <class T>
Results<T> one(Result<T> result) {
  if (result) return *std::move(result);
  return tl::unexpected(std::vector<Problem>{std::move(result.error())});
}

Problem no_shaft_named(const std::string& readings) {
  return {Code{"cli.no_shaft_named"}, "shaft", {}, {}, Place{readings, 0, 0, {}}};
}

}  // namespace

std::optional<Problem> stdin_twice(std::initializer_list<NamedPath> files) {
  bool taken = false;
  for (const NamedPath& file : files) {
    if (file.path != "-") continue;
    if (taken) return Problem{Code{"cli.stdin_twice"}, std::string{file.field}, "-", {}, std::nullopt};
    taken = true;
  }
  return std::nullopt;
}

Results<Shaft> load_shaft(const Context& context, const std::string& path) {
  const Results<std::string> text = one(read_text(context, path));
  if (!text) return tl::unexpected(text.error());
  return definition::read_shaft(*text, path);
}

Results<Workshop> load_workshop(const Context& context, const std::string& path) {
  if (path.empty()) return Workshop{};
  const Results<std::string> text = one(read_text(context, path));
  if (!text) return tl::unexpected(text.error());
  return definition::read_workshop(*text, path);
}

Results<Job> load_job(const Context& context, const JobFiles& files) {
  if (auto twice = stdin_twice({{"READINGS", files.readings},
                                {"--shaft", files.shaft.value_or("")},
                                {"--workshop", files.workshop.value_or("")}}))
    return tl::unexpected(std::vector<Problem>{*std::move(twice)});
  const Results<std::string> text = one(read_text(context, files.readings));
  if (!text) return tl::unexpected(text.error());
  const auto links = definition::read_links(*text, files.readings);
  if (!links) return tl::unexpected(links.error());
  std::string shaft_path = files.shaft.value_or(links->shaft.empty() ? "" : beside(files.readings, links->shaft));
  std::string workshop_path =
      files.workshop.value_or(links->workshop.empty() ? "" : beside(files.readings, links->workshop));
  if (shaft_path.empty()) return tl::unexpected(std::vector<Problem>{no_shaft_named(files.readings)});
  Results<Shaft> shaft = load_shaft(context, shaft_path);
  Results<Workshop> workshop = load_workshop(context, workshop_path);
  std::vector<Problem> problems;
  if (!shaft) problems = std::move(shaft.error());
  if (!workshop) problems.insert(problems.end(), workshop.error().begin(), workshop.error().end());
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  Results<Bench> bench = definition::read_bench(*text, files.readings, *shaft, *workshop, job::question_ids());
  if (!bench) return tl::unexpected(std::move(bench.error()));
  return Job{*std::move(shaft), *std::move(workshop), *std::move(bench)};
}

}  // namespace flatwise::cli
