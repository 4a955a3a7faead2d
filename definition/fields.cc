#include "definition/fields.h"

#include <algorithm>
#include <array>

#include "core/units/problem.h"
#include "definition/field_lists.h"

namespace flatwise::definition {
namespace {

// Tables of what is decided, not measured, and keys of limits and settings in the others.
constexpr std::array<std::string_view, 9> kDecided{"nut",     "one_nut", "policy", "test_run", "service",
                                                   "minutes", "off_on",  "stack",  "priced"};
constexpr std::array<std::string_view, 9> kSettings{
    "tolerance",           "above", "below", "ovality", "taper", "misalignment", "reliability", "greatest_heating",
    "expansion_half_width"};

}  // namespace

std::span<const Field> fields(Document document) {
  switch (document) {
    case Document::shaft:
      return shaft_fields();
    case Document::readings:
      return readings_fields();
    case Document::workshop:
      return workshop_fields();
    case Document::study:
      return study_fields();
  }
  core_check_failed("a document of the four", __FILE__, __LINE__);
}

std::string_view root_table(Document document) { return fields(document).front().in(); }

const Field* find_field(Document document, std::string_view table, std::string_view key) {
  for (const Field& field : fields(document))
    if (field.key() == key && field.in() == table) return &field;
  return nullptr;
}

bool may_be_doubted(Document document, const Field& field) {
  if (document != Document::shaft || !field.is(takes::kQuantity | takes::kNumber)) return false;
  if (field.kind == Kind::count || field.kind == Kind::time || field.kind == Kind::money) return false;
  if (std::ranges::find(kDecided, field.in()) != kDecided.end()) return false;
  const std::string_view key = field.key();
  return std::ranges::find(kSettings, key) == kSettings.end() && !key.ends_with("least") && !key.ends_with("greatest");
}

std::vector<std::string_view> keys_of(Document document, std::string_view table) {
  std::vector<std::string_view> keys;
  for (const Field& field : fields(document))
    if (field.in() == table) keys.push_back(field.key());
  return keys;
}

}  // namespace flatwise::definition
