// readings_fuzz.cc: any bytes as a readings file of a good shaft in a good workshop. Nothing may crash; what is accepted
// names only rotors that the shaft has.
// Links: definition
// Seeds: tests/data/definition/readings.toml demo/*.toml demo/*/*.toml
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

#include "definition/read.h"

namespace {

void demand(bool condition) {
  if (!condition) std::abort();
}

std::string file(const char* name) {
  std::ifstream in{std::string{FLATWISE_SOURCE_DIR "/tests/data/definition/"} + name, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

const flatwise::Shaft& shaft() {
  static const auto read = flatwise::definition::read_shaft(file("nine.toml"), "nine.toml");
  demand(read.has_value());
  return *read;
}
const flatwise::Workshop& workshop() {
  static const auto read = flatwise::definition::read_workshop(file("workshop.toml"), "workshop.toml");
  demand(read.has_value());
  return *read;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto links = flatwise::definition::read_links(text, "readings.toml");
  if (!links) demand(!links.error().empty());
  const auto bench = flatwise::definition::read_bench(text, "readings.toml", shaft(), workshop());
  if (!bench) {
    demand(!bench.error().empty());
    return 0;
  }
  const auto rotors = shaft().rotor_count();
  for (const auto& mark : bench->marks) demand(mark.rotor >= 1 && mark.rotor <= rotors);
  for (const auto& bore : bench->bores) demand(bore.rotor >= 1 && bore.rotor <= rotors);
  return 0;
}
