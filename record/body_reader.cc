#include "record/body_reader.h"

#include <algorithm>

#include "core/units/guards.h"
#include "core/units/near.h"
#include "core/units/parse.h"
#include "core/units/typed.h"
#include "record/instant.h"
#include "record/uuid.h"

namespace flatwise::record {

using job::FieldSpec;
using job::TextForm;
using wire::Json;

namespace {

constexpr std::size_t kMostShown = 80;  // Characters of a wrong value that a problem repeats.
constexpr int kLongText = 200;          // Texts that may be longer than this may have lines.
constexpr int kLongestQuantity = 64;

/// Characters of a text, not bytes.
int length_of(std::string_view utf8) {
  return static_cast<int>(
      std::ranges::count_if(utf8, [](char c) { return (static_cast<unsigned char>(c) & 0xc0u) != 0x80u; }));
}

bool has_control(std::string_view text, bool lines) {
  return std::ranges::any_of(text, [&](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte == 0x7f || (byte < 0x20 && !(lines && (c == '\n' || c == '\t')));
  });
}

bool is_hash(std::string_view text) {
  return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

}  // namespace

std::string shown(const Json& json) {
  std::string text =
      json.is_string() ? json.get<std::string>() : json.dump(-1, ' ', false, Json::error_handler_t::replace);
  if (text.size() > kMostShown) {
    std::size_t end = kMostShown;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0u) == 0x80u) --end;
    text = text.substr(0, end) + "…";
  }
  return showable(text);
}

const Json* FieldReader::required(const FieldSpec& spec) {
  known_.push_back(spec.name);
  const auto it = object_.find(spec.name);
  if (it != object_.end()) return &*it;
  failed_.push_back(spec.name);
  problems_.push_back(Problem{Code{"record.field_missing"}, path(spec.name), {}, {}, std::nullopt});
  return nullptr;
}

void FieldReader::refuse_others() {
  for (auto it = object_.begin(); it != object_.end(); ++it) {
    if (std::ranges::find(known_, it.key()) != known_.end()) continue;
    Args args{{"names", std::vector<std::string>{known_.begin(), known_.end()}}};
    if (const auto near = nearest(it.key(), known_); !near.empty()) args.emplace_back("near", std::string{near});
    problems_.push_back(Problem{Code{"record.field_unknown"}, path(showable(it.key())), shown(it.value()),
                                std::move(args), std::nullopt});
  }
}

void FieldReader::wrong_type(const FieldSpec& spec, const Json& json, Word wanted, std::string at) {
  failed_.push_back(spec.name);
  problems_.push_back(
      Problem{Code{"record.wrong_type"}, std::move(at), shown(json), {{"wanted", std::move(wanted)}}, std::nullopt});
}

std::string FieldReader::path_at(const FieldSpec& spec, std::size_t i) const {
  return path(spec.name) + "[" + std::to_string(i) + "]";
}

void FieldReader::too_many(const FieldSpec& spec, const Json& json, std::size_t most) {
  problems_.push_back(Problem{Code{"record.too_many"},
                              path(spec.name),
                              std::to_string(json.size()),
                              {{"most", static_cast<std::int64_t>(most)}},
                              std::nullopt});
}

bool FieldReader::whole(const FieldSpec& spec, const Json& json, const std::string& at, int& member) {
  if (!json.is_number_integer()) {
    wrong_type(spec, json, Word{"kind.count"}, at);
    return false;
  }
  const auto value = json.is_number_unsigned() && json.get<std::uint64_t>() > 1'000'000'000U ? 1'000'000'000
                                                                                             : json.get<std::int64_t>();
  if (static_cast<double>(value) < spec.least || static_cast<double>(value) > spec.greatest) {
    problems_.push_back(Problem{Code{"record.out_of_range"},
                                at,
                                shown(json),
                                {{"least", any_count(static_cast<std::int64_t>(spec.least))},
                                 {"greatest", any_count(static_cast<std::int64_t>(spec.greatest))}},
                                std::nullopt});
    return false;
  }
  member = static_cast<int>(value);
  return true;
}

void FieldReader::read(const FieldSpec& spec, const Json& json, int& member) {
  (void)whole(spec, json, path(spec.name), member);
}

void FieldReader::read(const FieldSpec& spec, const Json& json, double& member) {
  if (!json.is_number()) return wrong_type(spec, json, Word{"kind.ratio"}, path(spec.name));
  const auto value = json.get<double>();
  if (auto problem = outside(path(spec.name), any_ratio(value), spec.least, spec.greatest)) {
    problem->given = shown(json);
    problems_.push_back(*std::move(problem));
    return;
  }
  member = value;
}

void FieldReader::read(const FieldSpec& spec, const Json& json, bool& member) {
  if (!json.is_boolean()) return wrong_type(spec, json, Word{"kind.flag"}, path(spec.name));
  member = json.get<bool>();
}

bool FieldReader::text(const FieldSpec& spec, const Json& json, const std::string& at) {
  if (!json.is_string()) {
    wrong_type(spec, json, Word{"kind.text"}, at);
    return false;
  }
  const auto& value = json.get_ref<const std::string&>();
  const int length = length_of(value);
  if (length > spec.greatest_length)
    problems_.push_back(Problem{
        Code{"record.too_long"}, at, shown(json), {{"length", length}, {"most", spec.greatest_length}}, std::nullopt});
  else if (length < spec.least_length && spec.form == TextForm::free)
    problems_.push_back(Problem{Code{"record.empty_text"}, at, {}, {}, std::nullopt});
  else if (has_control(value, spec.greatest_length > kLongText))
    problems_.push_back(Problem{Code{"record.control_character"}, at, shown(json), {}, std::nullopt});
  else if (spec.form == TextForm::id && !is_uuid(value))
    problems_.push_back(Problem{Code{"record.not_an_id"}, at, shown(json), {}, std::nullopt});
  else if (spec.form == TextForm::hash && !is_hash(value))
    problems_.push_back(Problem{Code{"record.not_a_hash"}, at, shown(json), {}, std::nullopt});
  else
    return true;
  return false;
}

std::optional<std::size_t> FieldReader::choice(const FieldSpec& spec, const Json& json) {
  if (!json.is_string()) {
    wrong_type(spec, json, Word{"kind.text"}, path(spec.name));
    return std::nullopt;
  }
  const auto it = std::ranges::find(spec.words, json.get_ref<const std::string&>());
  if (it != spec.words.end()) return static_cast<std::size_t>(it - spec.words.begin());
  failed_.push_back(spec.name);
  problems_.push_back(Problem{Code{"record.not_a_choice"},
                              path(spec.name),
                              shown(json),
                              {{"choices", std::vector<std::string>{spec.words.begin(), spec.words.end()}}},
                              std::nullopt});
  return std::nullopt;
}

void FieldReader::read(const FieldSpec& spec, const Json& json, char& member) {
  if (const auto at = choice(spec, json)) member = spec.words[*at].front();
}

void FieldReader::read(const FieldSpec& spec, const Json& json, std::string& member) {
  if (!spec.words.empty()) {
    if (const auto at = choice(spec, json)) member = spec.words[*at];
  } else if (text(spec, json, path(spec.name))) {
    member = json.get<std::string>();
  }
}

void FieldReader::read(const FieldSpec& spec, const Json& json, Entered& member) {
  if (!spec.hangs_on.empty() && std::ranges::find(failed_, spec.hangs_on) != failed_.end()) return;
  const std::string at = path(spec.name);
  if (!json.is_string()) return wrong_type(spec, json, Word{"kind." + std::string{kind_name(spec.kind)}}, at);
  FieldSpec as_text = spec;
  as_text.greatest_length = kLongestQuantity;
  if (!text(as_text, json, at)) return;
  Result<Entered> read = parse_quantity(json.get_ref<const std::string&>(), spec.kind, at);
  if (!read) return problems_.push_back(std::move(read.error()));
  if (auto problem = outside(at, read->value, spec.least, spec.greatest)) {
    problem->given = shown(json);
    return problems_.push_back(*std::move(problem));
  }
  member = *std::move(read);
  member.typed = json.get<std::string>();
}

void FieldReader::read(const FieldSpec& spec, const Json& json, Day& member) {
  if (!json.is_string()) return wrong_type(spec, json, Word{"kind.text"}, path(spec.name));
  if (const auto day = day_of(json.get_ref<const std::string&>()))
    member = *day;
  else
    problems_.push_back(Problem{Code{"record.not_a_day"}, path(spec.name), shown(json), {}, std::nullopt});
}

void FieldReader::read(const FieldSpec& spec, const Json& json, Where& member) {
  if (!json.is_object()) return wrong_type(spec, json, Word{"kind.object"}, path(spec.name));
  FieldReader inner{json, path(spec.name), problems_};
  inner(job::fields::word("part", job::fields::kParts), member.part);
  inner(job::fields::whole("number", 0, spec.greatest), member.number);
  inner.refuse_others();
}

void FieldReader::read(const FieldSpec& spec, const Json& json, std::vector<int>& member) {
  constexpr std::size_t kMost = 240;
  if (!json.is_array()) return wrong_type(spec, json, Word{"kind.list"}, path(spec.name));
  if (json.empty())
    return problems_.push_back(Problem{Code{"record.empty_text"}, path(spec.name), {}, {}, std::nullopt});
  for (std::size_t i = 0; i < std::min(json.size(), kMost); ++i) {
    int value = 0;
    if (whole(spec, json[i], path_at(spec, i), value)) member.push_back(value);
  }
  if (json.size() > kMost) too_many(spec, json, kMost);
}

void FieldReader::read(const FieldSpec& spec, const Json& json, std::vector<std::string>& member) {
  const auto most = static_cast<std::size_t>(spec.greatest);
  if (!json.is_array()) return wrong_type(spec, json, Word{"kind.list"}, path(spec.name));
  if (json.size() > most) return too_many(spec, json, most);
  for (std::size_t i = 0; i < json.size(); ++i)
    if (text(spec, json[i], path_at(spec, i))) member.push_back(json[i].get<std::string>());
}

}  // namespace flatwise::record
