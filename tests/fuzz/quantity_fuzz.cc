// quantity_fuzz.cc: any bytes as the text of a quantity of any kind. Nothing may crash; what is accepted is finite, and
// a length shown exactly reads back as the same nanometres.
// Links: units
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/units/format.h"
#include "core/units/parse.h"

namespace {

void demand(bool condition) {
  if (!condition) std::abort();
}

void read_back_length(const flatwise::Entered& entered) {
  for (const auto system : {flatwise::UnitSystem::metric, flatwise::UnitSystem::inch}) {
    const std::string shown = flatwise::format_exact_length(*entered.nm, system);
    const auto again = flatwise::parse_quantity(shown, flatwise::Kind::length, "again");
    // More digits than a person may type are refused, never misread.
    if (again) demand(again->nm == entered.nm);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const auto kind = static_cast<flatwise::Kind>(data[0] % flatwise::kKindCount);
  const std::string_view text{reinterpret_cast<const char*>(data) + 1, size - 1};
  const auto entered = flatwise::parse_quantity(text, kind, "field");
  if (!entered) {
    demand(entered.error().field == "field");
    return 0;
  }
  demand(std::isfinite(entered->value.si) && entered->value.kind == kind);
  demand(!flatwise::format_quantity(entered->value).empty());
  if (entered->nm) read_back_length(*entered);
  return 0;
}
