// quantity_fuzz.cc: any bytes as the text of a quantity of any kind. Nothing may crash; what is accepted is finite, and
// a length shown exactly reads back as the same nanometres, and whatever is shown reads back near to what it was.
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

/// What is shown reads back, and is then shown the same again. Numbers with a power of ten, the hair above absolute zero
/// that rounds below it, and sizes on the border of two units are left out.
void shows_the_same_again(const flatwise::Entered& entered) {
  const double size = std::fabs(entered.value.si);
  if (size > 1e6 || size < 1e-3 || entered.value.kind == flatwise::Kind::temperature) return;
  for (const auto system : {flatwise::UnitSystem::metric, flatwise::UnitSystem::inch}) {
    const flatwise::Shown shown{.system = system, .decimals = {}, .unit = {}, .currency = "EUR"};
    const std::string first = flatwise::format_quantity(entered.value, shown);
    if (first.find('e') != std::string::npos) continue;
    const auto again = flatwise::parse_quantity(first, entered.value.kind, "again");
    demand(again.has_value());
    demand(std::fabs(again->value.si - entered.value.si) <= 0.06 * size + 0.06);  // One decimal at the coarsest.
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
  shows_the_same_again(*entered);
  return 0;
}
