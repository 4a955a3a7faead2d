// former_run.h: what an earlier test run of the machine read, to hold the next one against. Nothing is judged by it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/any_quantity.h"
#include "job/judge.h"

namespace flatwise::job {

struct FormerRun {
  std::string job;    ///< Number of the job.
  bool good = false;  ///< All that was read was in, and nothing was left open. Without limits nobody can say so.
  struct Value {
    std::string figure,
        part;  ///< "run-rise", "run-vibration"; the hanger by its label: the shaft may be another version.
    AnyQuantity value;
  };
  std::vector<Value> values;

  [[nodiscard]] std::optional<AnyQuantity> at(std::string_view figure, std::string_view part) const;
};
/// The run of a job that was released; nullopt where nothing was read in it.
[[nodiscard]] std::optional<FormerRun> former_run(std::string number, const JobReport& report);

}  // namespace flatwise::job
