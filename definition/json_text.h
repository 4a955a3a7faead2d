// json_text.h: just enough to write JSON in a fixed order. Internal to this folder.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace flatwise::definition {

class JsonText {
 public:
  static JsonText raw(std::string text) { return JsonText{std::move(text)}; }
  static JsonText text(std::string_view value);
  static JsonText number(double value);
  static JsonText flag(bool value) { return JsonText{value ? "true" : "false"}; }
  static JsonText object() { return JsonText{'{'}; }
  static JsonText list() { return JsonText{'['}; }

  JsonText& add(std::string_view key, JsonText value);  ///< To an object.
  JsonText& add(JsonText value);                        ///< To a list.
  JsonText& merge(JsonText other);                      ///< All members of another object.
  [[nodiscard]] bool empty() const { return items_.empty(); }
  [[nodiscard]] std::string dump(int indent = 0) const;

 private:
  explicit JsonText(std::string raw) : raw_{std::move(raw)} {}
  explicit JsonText(char bracket) : bracket_{bracket} {}
  [[nodiscard]] std::string flat() const;

  std::string raw_;
  char bracket_ = 0;
  std::vector<std::pair<std::string, JsonText>> items_;
};

}  // namespace flatwise::definition
