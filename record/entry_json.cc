#include "record/entry_json.h"

#include <algorithm>
#include <set>

#include "core/units/near.h"
#include "core/units/typed.h"
#include "record/body_reader.h"
#include "record/canonical.h"
#include "record/instant.h"
#include "record/strict_json.h"
#include "record/uuid.h"

namespace flatwise::record {
namespace {

using job::EntryBody;
using job::FieldSpec;
using wire::Json;
namespace fields = job::fields;

// ---- Writing ------------------------------------------------------------------------------------------------------------

Json value_of(const FieldSpec& /*spec*/, int value) { return value; }
Json value_of(const FieldSpec& /*spec*/, bool value) { return value; }
Json value_of(const FieldSpec& /*spec*/, char value) { return std::string(1, value); }
Json value_of(const FieldSpec& /*spec*/, const std::string& value) { return value; }
Json value_of(const FieldSpec& /*spec*/, const Day& value) { return text_of(value); }
Json value_of(const FieldSpec& /*spec*/, const std::vector<int>& value) { return value; }
Json value_of(const FieldSpec& /*spec*/, double value) { return value; }
Json value_of(const FieldSpec& /*spec*/, const Where& value) {
  return Json{{"part", fields::kParts[static_cast<std::size_t>(value.part)]}, {"number", value.number}};
}
Json value_of(const FieldSpec& /*spec*/, const Entered& value) {
  CORE_CHECK(!value.typed.empty());  // What nobody typed is no entry.
  return value.typed;
}
template <class E>
  requires std::is_enum_v<E>
Json value_of(const FieldSpec& spec, E value) {
  return spec.words[static_cast<std::size_t>(value)];
}

struct Writer {
  Json& json;
  template <class T>
  void operator()(const FieldSpec& spec, const T& member) {
    json[std::string{spec.name}] = value_of(spec, member);
  }
  template <class T>
  void operator()(const FieldSpec& spec, const std::optional<T>& member) {
    if (member) (*this)(spec, *member);
  }
};

// ---- Reading ------------------------------------------------------------------------------------------------------------

std::vector<std::string_view> kinds() {
  std::vector<std::string_view> names;
  job::each_kind([&](const auto& body) { names.push_back(job::kind_of(body)); });
  return names;
}

std::optional<EntryBody> empty_body(std::string_view kind) {
  std::optional<EntryBody> found;
  job::each_kind([&](auto body) {
    if (job::kind_of(body) == kind) found = std::move(body);
  });
  return found;
}

std::optional<EntryBody> body_of(const Json& json, const std::string& path, std::vector<Problem>& problems) {
  if (!json.is_object()) {
    problems.push_back(
        Problem{Code{"record.wrong_type"}, path, shown(json), {{"wanted", Word{"kind.object"}}}, std::nullopt});
    return std::nullopt;
  }
  FieldReader reader{json, path, problems};
  std::string kind;
  reader(fields::text("kind", 1, 64), kind);
  if (kind.empty()) return std::nullopt;  // Its problem is told; which fields there should be is not known.
  std::optional<EntryBody> body = empty_body(kind);
  if (!body) {
    const std::vector<std::string_view> names = kinds();
    Args args{{"choices", std::vector<std::string>{names.begin(), names.end()}}};
    if (const auto near = nearest(kind, names); !near.empty()) args.emplace_back("near", std::string{near});
    problems.push_back(Problem{Code{"record.kind_unknown"}, reader.path("kind"), showable(kind), args, std::nullopt});
    return std::nullopt;
  }
  const std::size_t before = problems.size();
  std::visit([&](auto& b) { job::each_field(b, reader); }, *body);
  reader.refuse_others();
  if (problems.size() > before) return std::nullopt;
  return body;
}

/// What stands round a body.
class EntryReader {
 public:
  EntryReader(const Json& json, std::string path, std::vector<Problem>& problems)
      : json_{json}, path_{std::move(path)}, problems_{problems}, fields_{json, path_, problems} {}

  std::optional<job::Entry> read() {
    const std::size_t before = problems_.size();
    job::Entry entry;
    read_own_id(entry);
    fields_(id("by"), entry.by);
    fields_(fields::text("on", 1, 64), entry.on);
    read_at(entry);
    read_follows(entry);
    read_corrects(entry);
    fields_.knows("body");
    fields_.refuse_others();
    const auto it = json_.find("body");
    if (it == json_.end())
      problems_.push_back(Problem{Code{"record.field_missing"}, fields_.path("body"), {}, {}, std::nullopt});
    else if (std::optional<EntryBody> body = body_of(*it, fields_.path("body"), problems_))
      entry.body = *std::move(body);
    if (problems_.size() > before) return std::nullopt;
    return entry;
  }

 private:
  static FieldSpec id(std::string_view name) { return fields::of_form(fields::text(name, 36, 36), job::TextForm::id); }

  /// It is made by the client. Of version 7: entries are kept and looked for by it, and it begins with the time.
  void read_own_id(job::Entry& entry) {
    const std::size_t before = problems_.size();
    fields_(id("id"), entry.id);
    if (problems_.size() == before && !is_uuid7(entry.id))
      problems_.push_back(Problem{Code{"record.not_version_7"}, fields_.path("id"), entry.id, {}, std::nullopt});
  }
  void read_at(job::Entry& entry) {
    const std::size_t before = problems_.size();
    std::string text;
    fields_(fields::text("at", 0, 64), text);
    if (problems_.size() > before) return;
    if (const auto at = instant_of(text))
      entry.at = *at;
    else
      problems_.push_back(Problem{Code{"record.not_an_instant"}, fields_.path("at"), showable(text), {}, std::nullopt});
  }
  void read_follows(job::Entry& entry) {
    const auto it = json_.find("follows");
    if (it != json_.end() && it->is_null())
      fields_.knows("follows");
    else
      fields_(id("follows"), entry.follows);
  }
  void read_corrects(job::Entry& entry) {
    fields_.knows("corrects");
    const std::string at = fields_.path("corrects");
    const auto it = json_.find("corrects");
    if (it == json_.end()) return problems_.push_back(Problem{Code{"record.field_missing"}, at, {}, {}, std::nullopt});
    if (!it->is_array())
      return problems_.push_back(
          Problem{Code{"record.wrong_type"}, at, shown(*it), {{"wanted", Word{"kind.list"}}}, std::nullopt});
    if (it->size() > kMostCorrects)
      return problems_.push_back(Problem{Code{"record.too_many"},
                                         at,
                                         std::to_string(it->size()),
                                         {{"most", static_cast<std::int64_t>(kMostCorrects)}},
                                         std::nullopt});
    for (std::size_t i = 0; i < it->size(); ++i) {
      const Json& item = (*it)[i];
      if (item.is_string() && is_uuid(item.get_ref<const std::string&>()))
        entry.corrects.push_back(item.get<std::string>());
      else
        problems_.push_back(
            Problem{Code{"record.not_an_id"}, at + "[" + std::to_string(i) + "]", shown(item), {}, std::nullopt});
    }
  }

  const Json& json_;
  std::string path_;
  std::vector<Problem>& problems_;
  FieldReader fields_;
};

/// The list in a call; nullptr with its problem where there is none.
const Json* list_of(const Json& json, std::vector<Problem>& problems) {
  const auto wrong = [&](std::string field, const Json& given, const char* wanted) -> const Json* {
    problems.push_back(
        Problem{Code{"record.wrong_type"}, std::move(field), shown(given), {{"wanted", Word{wanted}}}, std::nullopt});
    return nullptr;
  };
  if (!json.is_object()) return wrong({}, json, "kind.object");
  FieldReader reader{json, {}, problems};
  reader.knows("entries");
  reader.refuse_others();
  const auto it = json.find("entries");
  if (it == json.end()) {
    problems.push_back(Problem{Code{"record.field_missing"}, "entries", {}, {}, std::nullopt});
    return nullptr;
  }
  if (!it->is_array()) return wrong("entries", *it, "kind.list");
  if (!it->empty() && it->size() <= kMostEntries) return &*it;
  problems.push_back(it->empty() ? Problem{Code{"record.empty_text"}, "entries", {}, {}, std::nullopt}
                                 : Problem{Code{"record.too_many"},
                                           "entries",
                                           std::to_string(it->size()),
                                           {{"most", static_cast<std::int64_t>(kMostEntries)}},
                                           std::nullopt});
  return nullptr;
}

}  // namespace

Json body_json(const EntryBody& body) {
  Json json = Json::object();
  json["kind"] = job::kind_of(body);
  std::visit([&](const auto& b) { job::each_field(b, Writer{json}); }, body);
  return json;
}

Json entry_in_json(const job::Entry& entry) {
  Json json = Json::object();
  json["id"] = entry.id;
  json["by"] = entry.by;
  json["on"] = entry.on;
  json["at"] = text_of(entry.at);
  json["follows"] = nullptr;
  if (!entry.follows.empty()) json["follows"] = entry.follows;
  json["corrects"] = Json::array();
  for (const job::Id& id : entry.corrects) json["corrects"].push_back(id);
  json["body"] = body_json(entry.body);
  return json;
}

Json entry_json(const job::Entry& entry) {
  Json json = entry_in_json(entry);
  json["number"] = entry.number;
  json["before"] = nullptr;
  if (!entry.before.empty()) json["before"] = entry.before;
  json["hash"] = entry.hash;
  if (entry.received.ms != 0) json["received"] = text_of(entry.received);
  return json;
}

Results<EntryBody> read_body(const Json& json, const std::string& path) {
  std::vector<Problem> problems;
  std::optional<EntryBody> body = body_of(json, path, problems);
  if (!body) return tl::unexpected(std::move(problems));
  return *std::move(body);
}

Results<std::vector<job::Entry>> entries_from(const Json& json, const job::Id& job) {
  std::vector<Problem> problems;
  std::vector<job::Entry> entries;
  std::set<job::Id> ids;
  const Json* list = list_of(json, problems);
  for (std::size_t i = 0; list != nullptr && i < list->size(); ++i) {
    const std::string path = "entries[" + std::to_string(i) + "]";
    if (!(*list)[i].is_object()) {
      problems.push_back(
          Problem{Code{"record.wrong_type"}, path, shown((*list)[i]), {{"wanted", Word{"kind.object"}}}, std::nullopt});
      continue;
    }
    std::optional<job::Entry> entry = EntryReader{(*list)[i], path, problems}.read();
    if (!entry) continue;
    if (!ids.insert(entry->id).second)
      problems.push_back(Problem{Code{"record.id_twice"}, path + ".id", entry->id, {}, std::nullopt});
    entry->job = job;
    entries.push_back(*std::move(entry));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return entries;
}

Results<std::vector<job::Entry>> read_entries(std::string_view text, const job::Id& job) {
  Result<Json> json = strict_json(text);
  if (!json) return tl::unexpected(std::vector<Problem>{std::move(json.error())});
  return entries_from(*json, job);
}

job::EntryRow to_row(const job::Entry& entry) {
  return {entry.id,
          entry.job,
          entry.by,
          entry.on,
          entry.at,
          entry.follows,
          entry.corrects,
          std::string{job::kind_of(entry.body)},
          canonical(body_json(entry.body)),
          entry.number,
          entry.before,
          entry.hash,
          entry.received};
}

Results<job::Entry> from_row(const job::EntryRow& row) {
  Result<Json> json = strict_json(row.body);
  if (!json) return tl::unexpected(std::vector<Problem>{std::move(json.error())});
  Results<EntryBody> body = read_body(*json, "body");
  if (!body) return tl::unexpected(std::move(body.error()));
  return job::Entry{row.id,       row.job,          row.by,     row.on,     row.at,   row.follows,
                    row.corrects, *std::move(body), row.number, row.before, row.hash, row.received};
}

}  // namespace flatwise::record
