#include "server/input.h"

#include <algorithm>

namespace flatwise::server {

std::optional<Reply> Input::refused(const Voice& voice) {
  reader_.refuse_others();
  if (problems_.empty()) return std::nullopt;
  return unreadable(std::move(problems_), voice);
}

wire::Json with_plain_line_ends(const wire::Json& body) {
  wire::Json plain = body;
  for (const std::string_view name : {kToml.name, kCopied.name}) {
    const auto it = plain.find(name);
    if (it == plain.end() || !it->is_string()) continue;
    std::string text;
    const auto& typed = it->get_ref<const std::string&>();
    for (std::size_t i = 0; i < typed.size(); ++i)
      if (typed[i] != '\r' || i + 1 == typed.size() || typed[i + 1] != '\n') text += typed[i];
    *it = std::move(text);
  }
  return plain;
}

Reply unreadable(std::vector<Problem> problems, const Voice& voice) {
  constexpr Code kShape[] = {Code{"record.not_json"},      Code{"record.too_deep"},      Code{"record.key_twice"},
                             Code{"record.field_missing"}, Code{"record.field_unknown"}, Code{"record.wrong_type"},
                             Code{"record.kind_unknown"}};
  const bool shape = std::ranges::any_of(
      problems, [&](const Problem& p) { return std::ranges::find(kShape, p.code) != std::end(kShape); });
  return problem_reply(shape ? 400 : 422, std::move(problems), voice);
}

}  // namespace flatwise::server
