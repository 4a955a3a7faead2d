// definition_fuzz.cc: any bytes as a shaft file. Nothing may crash; a refusal names its file and a place that is in the
// text; what is accepted is accepted again.
// Links: definition
// Seeds: tests/data/definition/nine.toml demo/*.toml demo/*/*.toml
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "definition/read.h"

namespace {

void demand(bool condition) {
  if (!condition) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto shaft = flatwise::definition::read_shaft(text, "shaft.toml");
  if (shaft) {
    demand(flatwise::definition::read_shaft(text, "shaft.toml").has_value());
    return 0;
  }
  demand(!shaft.error().empty());
  const auto lines = static_cast<int>(std::ranges::count(text, '\n')) + 1;
  for (const auto& problem : shaft.error()) {
    if (problem.place) demand(problem.place->file == "shaft.toml" && problem.place->line <= lines);
  }
  return 0;
}
