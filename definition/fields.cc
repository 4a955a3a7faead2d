#include "definition/fields.h"

#include "core/units/problem.h"
#include "definition/field_lists.h"

namespace flatwise::definition {

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

std::vector<std::string_view> keys_of(Document document, std::string_view table) {
  std::vector<std::string_view> keys;
  for (const Field& field : fields(document))
    if (field.in() == table) keys.push_back(field.key());
  return keys;
}

}  // namespace flatwise::definition
