// tree.h: a parsed file with its places, checked against the field table; and how its values are taken out of it.
// Internal to this folder: the only header that shows the TOML library.
#pragma once

#define TOML_EXCEPTIONS 0
// Version 3.3 asserts on "[[[", which people may write; without the assertion it says what is wrong.
#define TOML_ASSERT(condition) static_cast<void>(0)
#include <toml++/toml.h>

#include <initializer_list>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/working/working.h"
#include "definition/fields.h"
#include "definition/text.h"

namespace flatwise::definition {

using Origins = std::map<std::string, Origin, std::less<>>;

/// One file being read: its tree, and every problem found so far.
class File {
 public:
  File(Document document, std::string_view bytes, std::string_view file);

  /// Parses, then checks every table and value against the field table. False: there is no tree to read from.
  [[nodiscard]] bool parse();

  [[nodiscard]] Document document() const { return document_; }
  [[nodiscard]] const toml::table& root() const { return root_; }
  [[nodiscard]] bool sound() const { return problems_.empty(); }
  [[nodiscard]] std::vector<Problem> take_problems();

  [[nodiscard]] Place place(const toml::node& node) const;
  [[nodiscard]] Place place(const toml::key& key) const;
  [[nodiscard]] Place whole() const { return text_.whole(); }
  /// A value as it stands in the file (strings without their quotes).
  [[nodiscard]] std::string typed(const toml::node& node) const;
  [[nodiscard]] Origin given_at(const toml::node& node) const;

  void add(Code code, std::string field, std::string given, Args args, Place where);
  /// A problem of another reader (units, fits, threads), with its place.
  void add(Problem problem, std::string field, const toml::node& at);

  /// A quantity where the field wants one; the problem otherwise.
  [[nodiscard]] Result<Entered> quantity(const toml::node& node, const Field& field, const std::string& path) const;
  [[nodiscard]] Result<Entered> quantity(const toml::node& node, Kind kind, Range range, const std::string& path) const;

 private:
  void add_syntax_error(const toml::parse_error& error);
  void check_table(const toml::table& table, std::string_view kind, const std::string& path, bool all_optional);
  void check_unknown(const toml::table& table, std::string_view kind, const std::string& path);
  void check_missing(const toml::table& table, std::string_view kind, const std::string& path);
  void check_value(const toml::node& node, const Field& field, const std::string& path, bool all_optional);
  void check_tables(const toml::node& node, const Field& field, const std::string& path, bool all_optional);
  void check_scalar(const toml::node& node, const Field& field, const std::string& path);
  void check_text(const toml::node& node, const Field& field, const std::string& path);
  void check_number(const toml::node& node, const Field& field, const std::string& path);
  void check_answers(const toml::node& node, const Field& field, const std::string& path);
  void check_items(const toml::array& list, const Field& field, const std::string& path, bool all_optional);
  void not_a_choice(const toml::node& node, const Field& field, const std::string& path);
  void wrong_type(const toml::node& node, const Field& field, const std::string& path, bool item = false);

  Document document_;
  Text text_;
  toml::table root_;
  std::vector<Problem> problems_;
  std::size_t left_out_ = 0;
};

/// A table of a known kind, seen through the tables it overrides: the first that has a key gives its value. What none
/// has is assumed from the field table, and every value's origin is noted.
class Section {
 public:
  Section(File& file, std::string_view kind, const toml::table* table, std::string path);
  /// The same kind of table, with this one laid over it.
  [[nodiscard]] Section over(const Section& below) const;
  /// Only the uppermost table that has any of these keys; the uppermost of all when none has.
  [[nodiscard]] Section first_with(std::initializer_list<std::string_view> keys) const;
  Section& note_in(Origins* origins, std::string prefix);

  [[nodiscard]] bool has(std::string_view key) const { return node(key) != nullptr; }
  [[nodiscard]] const toml::node* node(std::string_view key) const;
  [[nodiscard]] const toml::table* table() const { return layers_.empty() ? nullptr : layers_.front().table; }
  [[nodiscard]] Place place() const;
  [[nodiscard]] Place place(std::string_view key) const;  ///< Of the value; of the table when the key is not there.
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string path(std::string_view key) const;  ///< In the table that has it, or the uppermost.
  [[nodiscard]] File& file() const { return *file_; }
  [[nodiscard]] const Field& field(std::string_view key) const;

  /// None when it is neither given nor assumed, or was unusable (and has its problem already).
  [[nodiscard]] std::optional<Entered> quantity(std::string_view key) const;
  [[nodiscard]] Length length(std::string_view key) const;
  [[nodiscard]] double si(std::string_view key) const;  ///< Quantity or number; nought when there is none.
  [[nodiscard]] std::int64_t whole(std::string_view key) const;
  [[nodiscard]] bool flag(std::string_view key) const;
  [[nodiscard]] std::string text(std::string_view key) const;
  /// Index of the given word among the field's words.
  [[nodiscard]] std::size_t word(std::string_view key) const;
  [[nodiscard]] Section table(std::string_view key) const;
  /// The tables under a key, one or many.
  [[nodiscard]] std::vector<Section> tables(std::string_view key) const;

  void note(std::string_view key, Origin origin) const;
  void problem(Code code, std::string_view key, Args args) const;

 private:
  struct Layer {
    const toml::table* table;
    std::string path;
  };
  [[nodiscard]] const Layer* layer_with(std::string_view key) const;
  [[nodiscard]] const toml::node* noted(std::string_view key) const;

  File* file_;
  std::string_view kind_;
  std::vector<Layer> layers_;  ///< The uppermost first.
  std::string path_;
  Origins* origins_ = nullptr;
  std::string prefix_;
};

/// The name that was meant: one that differs by small and capital letters only, else the nearest. None for names of one
/// or two letters and for those that differ in digits only ("C6", "S8", "BG-2"): another number is another thing.
[[nodiscard]] std::string_view meant(std::string_view typed, std::span<const std::string_view> names);
/// Index of a text among words; none when it is not one of them.
[[nodiscard]] std::optional<std::size_t> index_of(std::string_view text, std::span<const std::string_view> words);
/// A flag or number as written in TOML to its value, for assumed values of the field table.
[[nodiscard]] double assumed_number(std::string_view text);

}  // namespace flatwise::definition
