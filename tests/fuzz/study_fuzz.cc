// study_fuzz.cc: any bytes as a study file of a good shaft. Nothing may crash; a refusal names a place that is in the text, if any; ways
// that are accepted are two to six, with names, and their shafts have the rotors of the shaft.
// Links: definition study
// Seeds: demo/five-three-ways.toml demo/five-bearings.toml
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

#include "definition/read.h"
#include "study/ways.h"

namespace {

using flatwise::study::Way;

void demand(bool condition) {
  if (!condition) std::abort();
}

const flatwise::Shaft& five() {
  static const auto read = [] {
    std::ifstream in{FLATWISE_SOURCE_DIR "/demo/five.toml", std::ios::binary};
    return flatwise::definition::read_shaft(std::string{std::istreambuf_iterator<char>{in}, {}}, "five.toml");
  }();
  demand(read.has_value());
  return *read;
}

void demand_good(const std::vector<Way>& ways) {
  demand(ways.size() >= flatwise::study::kFewestWays && ways.size() <= flatwise::study::kMostWays);
  for (const Way& way : ways) demand(!way.name().empty() && way.shaft.rotor_count() == five().rotor_count());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto file = flatwise::definition::read_study(text, "study.toml");
  const auto lines = static_cast<int>(std::ranges::count(text, '\n')) + 1;
  const auto in_the_text = [&](const std::vector<flatwise::Problem>& problems) {
    demand(!problems.empty());
    for (const auto& problem : problems)
      if (problem.place) demand(problem.place->file == "study.toml" && problem.place->line <= lines);
  };
  if (!file) {
    in_the_text(file.error());
    return 0;
  }
  const auto ways = flatwise::study::read_ways(five(), file->order.ways);
  if (ways)
    demand_good(*ways);
  else
    in_the_text(ways.error());
  return 0;
}
