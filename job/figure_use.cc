#include "job/figure_use.h"

#include <algorithm>

namespace flatwise::job {

Results<Working> use(std::span<const FigureSpec> figures, std::string_view name, std::vector<Input> inputs) {
  const auto it = std::ranges::find_if(figures, [&](const FigureSpec& f) { return f.name == name; });
  CORE_CHECK(it != figures.end());
  return evaluate(*it, std::move(inputs));
}

Results<WorkingPtr> worked(std::span<const FigureSpec> figures, std::string_view name, std::vector<Input> inputs) {
  Results<Working> working = use(figures, name, std::move(inputs));
  if (!working) return tl::unexpected(std::move(working.error()));
  return std::make_shared<const Working>(*std::move(working));
}

WorkingPtr show(StageReport& report, Where where, std::string about, std::span<const FigureSpec> figures,
                std::string_view name, std::vector<Input> inputs) {
  Results<Working> working = use(figures, name, std::move(inputs));
  if (!working) {
    std::ranges::move(working.error(), std::back_inserter(report.problems));
    return nullptr;
  }
  auto shown = std::make_shared<const Working>(*std::move(working));
  report.workings.push_back({where, std::move(about), shown});
  return shown;
}

Input computed_input(std::string_view name, AnyQuantity value, std::string_view by) {
  return given(name, value, {OriginKind::computed, std::string{by}});
}

void take_findings(StageReport& report, Where where, const Working& working, const Args& more) {
  for (Finding finding : working.findings) {
    // Wanted where the doubt decides. Elsewhere its working says so: a report of eighteen bores would not be read.
    if (finding.code == Code{"doubt.measure_first"} && working.answer != Answer::cannot_tell) continue;
    if (finding.where == Where{}) finding.where = where;
    const auto add = [&](Args& args) {
      for (const Arg& arg : more)
        if (std::ranges::find(args, arg.name, &Arg::name) == args.end()) args.push_back(arg);
    };
    add(finding.args);
    if (finding.instruction) add(finding.instruction->args);
    report.findings.push_back(std::move(finding));
  }
}

}  // namespace flatwise::job
