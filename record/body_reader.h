// body_reader.h: the fields of one JSON object read into members, all problems gathered. Internal to this folder.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "job/entry_fields.h"
#include "wire/json.h"

namespace flatwise::record {

class FieldReader {
 public:
  FieldReader(const wire::Json& object, std::string path, std::vector<Problem>& problems)
      : object_{object}, path_{std::move(path)}, problems_{problems} {}

  /// A member of a body by its field.
  template <class T>
  void operator()(const job::FieldSpec& spec, T& member) {
    if (const wire::Json* json = required(spec)) read(spec, *json, member);
  }
  template <class T>
  void operator()(const job::FieldSpec& spec, std::optional<T>& member) {
    known_.push_back(spec.name);
    const auto it = object_.find(spec.name);
    if (it != object_.end()) read(spec, *it, member.emplace());
  }
  /// Marks a field as known that is read elsewhere.
  void knows(std::string_view name) { known_.push_back(name); }
  /// Names every field that nobody asked for. Call it last.
  void refuse_others();
  [[nodiscard]] std::string path(std::string_view name) const {
    return path_.empty() ? std::string{name} : path_ + "." + std::string{name};
  }

 private:
  const wire::Json* required(const job::FieldSpec& spec);
  void read(const job::FieldSpec& spec, const wire::Json& json, int& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, double& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, bool& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, char& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, std::string& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, Entered& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, Day& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, Where& member);
  void read(const job::FieldSpec& spec, const wire::Json& json, std::vector<int>& member);
  /// A list of texts, each as the spec has it; at most `spec.greatest` of them.
  void read(const job::FieldSpec& spec, const wire::Json& json, std::vector<std::string>& member);
  template <class E>
    requires std::is_enum_v<E>
  void read(const job::FieldSpec& spec, const wire::Json& json, E& member) {
    if (const auto at = choice(spec, json)) member = static_cast<E>(*at);
  }
  std::optional<std::size_t> choice(const job::FieldSpec& spec, const wire::Json& json);
  [[nodiscard]] bool whole(const job::FieldSpec& spec, const wire::Json& json, const std::string& path, int& member);
  [[nodiscard]] bool text(const job::FieldSpec& spec, const wire::Json& json, const std::string& path);
  void wrong_type(const job::FieldSpec& spec, const wire::Json& json, Word wanted, std::string path);

  void too_many(const job::FieldSpec& spec, const wire::Json& json, std::size_t most);
  [[nodiscard]] std::string path_at(const job::FieldSpec& spec, std::size_t i) const;

  const wire::Json& object_;
  std::string path_;
  std::vector<Problem>& problems_;
  std::vector<std::string_view> known_, failed_;
};

/// A value as it can be shown in a problem: JSON text, cut where it is long.
[[nodiscard]] std::string shown(const wire::Json& json);

}  // namespace flatwise::record
