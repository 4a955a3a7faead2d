// workshop_fuzz.cc: any bytes as a workshop file. Nothing may crash, and a refusal says what it refuses.
// Links: definition
// Seeds: tests/data/definition/workshop.toml demo/*.toml
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "definition/read.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto workshop = flatwise::definition::read_workshop(text, "workshop.toml");
  if (!workshop && workshop.error().empty()) std::abort();
  return 0;
}
