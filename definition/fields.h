// fields.h: every key of every file, once. This one description drives reading, 'did you mean', the JSON Schema, the
// reference pages, the starter's comments and editor completion.
//
// A file is a tree of tables. Each table has a kind ("shaft", "bearing", "station"); a field is a key of one kind of table.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/units/any_quantity.h"
#include "core/units/code.h"

namespace flatwise::definition {

/// The files we read. The kind of the whole file's table is "shaft_file", "readings_file", "workshop_file", "study_file".
enum class Document { shaft, readings, workshop, study };

/// What may stand behind a key; one or more.
namespace takes {
inline constexpr unsigned kQuantity = 1u << 0;  ///< A string: number and unit of the field's kind.
inline constexpr unsigned kText = 1u << 1;      ///< Any string of one line.
inline constexpr unsigned kWord = 1u << 2;      ///< One of the field's words.
inline constexpr unsigned kWhole = 1u << 3;     ///< A whole number.
inline constexpr unsigned kNumber = 1u << 4;    ///< A bare number or "%": ratios.
inline constexpr unsigned kFlag = 1u << 5;      ///< true or false.
inline constexpr unsigned kDay = 1u << 6;       ///< 2026-11-25.
inline constexpr unsigned kTable = 1u << 7;     ///< A table of kind `table`.
inline constexpr unsigned kTables = 1u << 8;    ///< An array of tables of kind `table`.
inline constexpr unsigned kList = 1u << 9;      ///< A list of what the other bits say (tables apart).
inline constexpr unsigned kOpenTable =
    1u << 10;  ///< A table with the shop's own keys: each value a table of kind `table`.
inline constexpr unsigned kAnswers = 1u << 11;  ///< The tree of answers: yes, no or not seen at its leaves.
inline constexpr unsigned kReading = 1u << 12;  ///< A quantity whose kind depends on another field: read by its table.
}  // namespace takes

struct Range {
  double least = -std::numeric_limits<double>::infinity();  ///< SI of the kind; counts and ratios as they are.
  double greatest = std::numeric_limits<double>::infinity();
  bool above_least = false;  ///< The least itself is not allowed.
};

/// One key of one kind of table.
struct Field {
  Code meaning;  ///< "definition.field.<table>.<key>": the short meaning; table and key are read off it.
  unsigned takes = takes::kText;
  Kind kind = Kind::count;
  Range range = {};
  bool required = false;
  std::string_view assumed = {};       ///< Default, as a person would type it; empty: none.
  std::string_view assumed_from = {};  ///< Why this default.
  std::span<const std::string_view> words = {};
  std::string_view table = {};    ///< Kind of the table(s) it holds.
  std::string_view example = {};  ///< As written in TOML.
  int change = 0;                 ///< 1 to 5: one of the five lines to change in a copied shaft.

  [[nodiscard]] constexpr std::string_view path() const { return meaning.id().substr(kPrefix.size()); }
  [[nodiscard]] constexpr std::string_view in() const { return path().substr(0, path().find('.')); }
  [[nodiscard]] constexpr std::string_view key() const { return path().substr(path().find('.') + 1); }
  [[nodiscard]] constexpr bool is(unsigned what) const { return (takes & what) != 0; }
  static constexpr std::string_view kPrefix = "definition.field.";
};

/// All fields of a document, table by table, in the order of its reference page.
[[nodiscard]] std::span<const Field> fields(Document document);
[[nodiscard]] std::string_view root_table(Document document);
/// A field by the kind of its table and its key; nullptr when there is none.
[[nodiscard]] const Field* find_field(Document document, std::string_view table, std::string_view key);
/// Whether a field is measured, so that it may carry a doubt ("11.6 kg ± 0.2 kg"): a quantity of a shaft that is neither a limit nor
/// a setting, a policy, a duration or a price.
[[nodiscard]] bool may_be_doubted(Document document, const Field& field);
/// All keys of a kind of table, in order.
[[nodiscard]] std::vector<std::string_view> keys_of(Document document, std::string_view table);

}  // namespace flatwise::definition
