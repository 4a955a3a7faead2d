#include "wire/written.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace flatwise::wire {
namespace {

// A subtype of our own: bytes of any other kind are nothing that we write.
constexpr std::uint64_t kWritten = 0x4a534f4e;

/// Nothing in it that must be escaped or looked at as UTF-8.
bool is_plain(std::string_view text) {
  return std::ranges::all_of(text, [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x20 && byte < 0x7f && c != '"' && c != '\\';
  });
}

void add(std::string& out, const Json& json);

void add_members(std::string& out, const Json::object_t& members) {
  char before = '{';
  if (members.empty()) out += before;
  for (const auto& [name, value] : members) {
    out += before;
    add_text(out, name);
    out += ':';
    add(out, value);
    before = ',';
  }
  out += '}';
}

void add_list(std::string& out, const Json::array_t& list) {
  char before = '[';
  if (list.empty()) out += before;
  for (const Json& value : list) {
    out += before;
    add(out, value);
    before = ',';
  }
  out += ']';
}

void add(std::string& out, const Json& json) {
  switch (json.type()) {
    case Json::value_t::object:
      return add_members(out, json.get_ref<const Json::object_t&>());
    case Json::value_t::array:
      return add_list(out, json.get_ref<const Json::array_t&>());
    case Json::value_t::string:
      return add_text(out, json.get_ref<const std::string&>());
    case Json::value_t::binary: {
      const Json::binary_t& bytes = json.get_binary();
      CORE_CHECK(bytes.has_subtype() && bytes.subtype() == kWritten);
      out.append(bytes.begin(), bytes.end());
      return;
    }
    default:
      out += json.dump();
  }
}

}  // namespace

Json written(std::string_view json) { return Json::binary({json.begin(), json.end()}, kWritten); }

void add_text(std::string& out, std::string_view text) {
  if (is_plain(text))
    ((out += '"') += text) += '"';
  else
    out += Json(std::string{text}).dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string text_of(const Json& json) {
  std::string out;
  add(out, json);
  return out;
}

}  // namespace flatwise::wire
