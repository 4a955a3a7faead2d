#include "job/former_run.h"

#include <algorithm>

namespace flatwise::job {

std::optional<AnyQuantity> FormerRun::at(std::string_view figure, std::string_view part) const {
  const auto it = std::ranges::find_if(values, [&](const Value& v) { return v.figure == figure && v.part == part; });
  return it == values.end() ? std::nullopt : std::optional{it->value};
}

std::optional<FormerRun> former_run(std::string number, const JobReport& report) {
  const auto stage = std::ranges::find(report.stages, Stage::test_run, &StageReport::stage);
  if (stage == report.stages.end()) return std::nullopt;
  FormerRun run{std::move(number), stage->worst() == Severity::note, {}};
  for (const Shown& shown : stage->workings) {
    if (shown.working->figure != "run-rise" && shown.working->figure != "run-vibration") continue;
    run.values.push_back(
        {shown.working->figure, shown.about, std::get<AnyQuantity>(shown.working->outputs.front().value)});
    run.good = run.good && shown.counts() == Answer::in;
  }
  return run.values.empty() ? std::nullopt : std::optional{std::move(run)};
}

}  // namespace flatwise::job
