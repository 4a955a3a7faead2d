#include "definition/json_text.h"

#include "core/units/format.h"

namespace flatwise::definition {
namespace {
constexpr std::size_t kLineWidth = 110;
}

JsonText JsonText::text(std::string_view value) {
  constexpr std::string_view kHex = "0123456789abcdef";
  std::string out = "\"";
  for (const char c : value) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') out += '\\';
    if (byte < 0x20)
      out += std::string{"\\u00"} + kHex[byte >> 4u] + kHex[byte & 15u];
    else
      out += c;
  }
  return raw(out + "\"");
}

JsonText JsonText::number(double value) { return raw(format_exact(value)); }

JsonText& JsonText::add(std::string_view key, JsonText value) {
  items_.emplace_back(text(key).raw_ + ": ", std::move(value));
  return *this;
}

JsonText& JsonText::add(JsonText value) {
  items_.emplace_back(std::string{}, std::move(value));
  return *this;
}

JsonText& JsonText::merge(JsonText other) {
  for (auto& item : other.items_) items_.push_back(std::move(item));
  return *this;
}

std::string JsonText::flat() const {
  if (bracket_ == 0) return raw_;
  std::string out(1, bracket_);
  for (const auto& [key, value] : items_) out += (out.size() > 1 ? ", " : "") + key + value.flat();
  return out + (bracket_ == '{' ? '}' : ']');
}

// On one line where it fits, else one item a line.
std::string JsonText::dump(int indent) const {
  const std::string one_line = flat();
  if (bracket_ == 0 || one_line.size() + static_cast<std::size_t>(indent) <= kLineWidth) return one_line;
  std::string out(1, bracket_);
  bool first = true;
  for (const auto& [key, value] : items_) {
    out +=
        (first ? "\n" : ",\n") + std::string(static_cast<std::size_t>(indent) + 2, ' ') + key + value.dump(indent + 2);
    first = false;
  }
  return out + "\n" + std::string(static_cast<std::size_t>(indent), ' ') + (bracket_ == '{' ? '}' : ']');
}

}  // namespace flatwise::definition
