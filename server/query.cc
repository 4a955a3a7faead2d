#include "server/query.h"

#include <algorithm>
#include <charconv>

#include "core/units/near.h"
#include "record/instant.h"
#include "record/uuid.h"

namespace flatwise::server {
namespace {

bool is_hex(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); }

int hex_value(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t end = text.find(at);
    parts.emplace_back(text.substr(0, end));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

Problem unknown_name(std::string_view name, const QueryRule* rules, std::size_t count) {
  std::vector<std::string> known;
  std::vector<std::string_view> views;
  for (std::size_t i = 0; i < count; ++i) {
    known.emplace_back(rules[i].name);
    views.push_back(rules[i].name);
  }
  if (known.empty()) return {Code{"http.no_query"}, std::string{name}, std::string{name}, {}, std::nullopt};
  Args args{{"words", known}};
  if (const std::string_view near = nearest(name, views); !near.empty()) args.emplace_back("near", std::string{near});
  return {Code{"http.query_unknown"}, std::string{name}, std::string{name}, std::move(args), std::nullopt};
}

std::optional<long> whole_of(std::string_view text) {
  long value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (text.empty() || read.ec != std::errc{} || read.ptr != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<Problem> wrong_value(const QueryRule& rule, const std::string& value) {
  const auto problem = [&](Code code, Args args) {
    return Problem{std::move(code), std::string{rule.name}, value, std::move(args), std::nullopt};
  };
  switch (rule.kind) {
    case QueryRule::Kind::choice: {
      const std::vector<std::string> words = split(rule.choices, '|');
      if (std::ranges::find(words, value) != words.end()) return std::nullopt;
      return problem(Code{"record.not_a_choice"}, {{"choices", words}});
    }
    case QueryRule::Kind::number: {
      const auto n = whole_of(value);
      if (n && *n >= rule.least && *n <= rule.greatest) return std::nullopt;
      return problem(Code{"http.not_a_number"}, {{"least", rule.least}, {"greatest", rule.greatest}});
    }
    case QueryRule::Kind::id:
      return record::is_uuid(value) ? std::nullopt : std::optional{problem(Code{"record.not_an_id"}, {})};
    case QueryRule::Kind::instant:
      return record::instant_of(value) ? std::nullopt : std::optional{problem(Code{"record.not_an_instant"}, {})};
    case QueryRule::Kind::text:
      break;
  }
  if (value.size() <= static_cast<std::size_t>(rule.greatest)) return std::nullopt;
  return problem(Code{"http.too_long"}, {{"greatest", rule.greatest}});
}

}  // namespace

std::optional<std::string_view> Query::find(std::string_view name) const {
  for (const auto& [known, value] : values_)
    if (known == name) return value;
  return std::nullopt;
}

std::optional<int> Query::whole(std::string_view name) const {
  const auto text = find(name);
  if (!text) return std::nullopt;
  const auto value = whole_of(*text);
  return value ? std::optional{static_cast<int>(*value)} : std::nullopt;
}

std::optional<std::string> decoded(std::string_view text, bool plus_is_space) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '+' && plus_is_space) {
      out += ' ';
    } else if (text[i] != '%') {
      out += text[i];
    } else {
      const int high = i + 1 < text.size() ? hex_value(text[i + 1]) : -1;
      const int low = i + 2 < text.size() ? hex_value(text[i + 2]) : -1;
      if (high < 0 || low < 0) return std::nullopt;
      out += static_cast<char>(high * 16 + low);
      i += 2;
    }
  }
  if (!is_utf8(out) || out.find('\0') != std::string::npos) return std::nullopt;
  return out;
}

Result<Query> read_query(std::string_view text, const QueryRule* rules, std::size_t count) {
  Query query;
  while (!text.empty()) {
    const std::string_view pair = text.substr(0, text.find('&'));
    text.remove_prefix(std::min(text.size(), pair.size() + 1));
    if (pair.empty()) continue;
    const std::size_t equals = pair.find('=');
    const auto name = decoded(pair.substr(0, equals));
    const auto value = decoded(equals == std::string_view::npos ? std::string_view{} : pair.substr(equals + 1));
    if (!name || !value)
      return tl::unexpected(Problem{Code{"http.escape"}, "query", is_utf8(pair) ? std::string{pair} : "", {}, {}});
    const QueryRule* rule = std::find_if(rules, rules + count, [&](const QueryRule& r) { return r.name == *name; });
    if (rule == rules + count) return tl::unexpected(unknown_name(*name, rules, count));
    if (query.find(*name)) return tl::unexpected(Problem{Code{"record.key_twice"}, *name, *value, {}, std::nullopt});
    if (auto wrong = wrong_value(*rule, *value)) return tl::unexpected(*std::move(wrong));
    query.add(*name, *value);
  }
  return query;
}

bool is_hash(std::string_view text) { return text.size() == 64 && std::ranges::all_of(text, is_hex); }

bool is_utf8(std::string_view text) {
  // Well-formed sequences as in the Unicode standard, table 3-7.
  for (std::size_t i = 0; i < text.size();) {
    const auto byte = [&](std::size_t at) { return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U; };
    const unsigned first = byte(i);
    const unsigned more = first < 0x80   ? 0
                          : first < 0xC2 ? 9
                          : first < 0xE0 ? 1
                          : first < 0xF0 ? 2
                          : first < 0xF5 ? 3
                                         : 9;
    if (more == 9) return false;
    const unsigned least = first == 0xE0 ? 0xA0 : first == 0xF0 ? 0x90 : 0x80;
    const unsigned greatest = first == 0xED ? 0x9F : first == 0xF4 ? 0x8F : 0xBF;
    for (unsigned k = 1; k <= more; ++k)
      if (byte(i + k) < (k == 1 ? least : 0x80U) || byte(i + k) > (k == 1 ? greatest : 0xBFU)) return false;
    i += more + 1;
  }
  return true;
}

}  // namespace flatwise::server
