// input.h: the fields of a body that is no entry, by the same reader as entries have.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "record/body_reader.h"
#include "server/routes.h"

namespace flatwise::server {

/// Reads one object; every problem is gathered.
class Input {
 public:
  explicit Input(const Call& call) : Input{*call.body} {}
  explicit Input(const wire::Json& body) : reader_{body, {}, problems_} {}
  template <class T>
  void operator()(const job::FieldSpec& spec, T& member) {
    reader_(spec, member);
  }
  /// What is wrong with it, as a reply; fields that nobody asked for are. To be called last.
  [[nodiscard]] std::optional<Reply> refused(const Voice& voice);

 private:
  std::vector<Problem> problems_;
  record::FieldReader reader_;
};

/// 400 where the form is not that of the contract (a field missing, unknown or of another type); 422 where all was read and
/// only a value or its unit is not possible.
[[nodiscard]] Reply unreadable(std::vector<Problem> problems, const Voice& voice);

/// The definition of a shaft in a body, as typed; line ends may be those of any system.
inline constexpr job::FieldSpec kToml = job::fields::text("toml", 0, 1 << 20);
inline constexpr job::FieldSpec kCopied = job::fields::text("copied", 0, 1 << 20);
[[nodiscard]] wire::Json with_plain_line_ends(const wire::Json& body);

[[nodiscard]] constexpr job::FieldSpec id_field(std::string_view name) {
  return job::fields::of_form(job::fields::text(name, 36, 36), job::TextForm::id);
}

}  // namespace flatwise::server
