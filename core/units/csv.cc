#include "core/units/csv.h"

namespace flatwise {

std::string csv_text(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string{"\"\""} : std::string{c};
  return out + "\"";
}

}  // namespace flatwise
