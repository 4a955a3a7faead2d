// load.h: files named on the command line to checked values, with every problem of every file.
#pragma once

#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "cli/context.h"
#include "core/shaft/shaft.h"
#include "job/bench.h"
#include "job/judge.h"

namespace flatwise::cli {

struct NamedPath {
  std::string_view field, path;
};
/// The standard input can be read once: a problem naming the second file that is to come from it.
[[nodiscard]] std::optional<Problem> stdin_twice(std::initializer_list<NamedPath> files);

[[nodiscard]] Results<Shaft> load_shaft(const Context& context, const std::string& path);
/// An empty path gives a workshop with nothing in it: no prices, no gauges, room at 20 °C, all assumed.
[[nodiscard]] Results<Workshop> load_workshop(const Context& context, const std::string& path);

/// One job: the readings with the shaft and the workshop they name.
struct Job {
  Shaft shaft;
  Workshop workshop;
  Bench bench;
  [[nodiscard]] job::Facts facts() const { return {shaft, workshop, bench}; }
};
struct JobFiles {
  std::string readings;              ///< "-" for the standard input.
  std::optional<std::string> shaft;  ///< Instead of the one the readings name.
  std::optional<std::string> workshop;
};
[[nodiscard]] Results<Job> load_job(const Context& context, const JobFiles& files);

}  // namespace flatwise::cli
