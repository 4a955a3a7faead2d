#include "record/schema.h"

#include <nlohmann/json.hpp>
#include <type_traits>

#include "core/units/parse.h"
#include "job/entry_fields.h"
#include "wire/json.h"

namespace flatwise::record {
namespace {

using job::FieldSpec;
using wire::Json;

Json choice(const FieldSpec& spec) {
  Json json{{"type", "string"}, {"enum", Json::array()}};
  for (const std::string_view word : spec.words) json["enum"].push_back(word);
  return json;
}
Json whole(const FieldSpec& spec) {
  return {{"type", "integer"},
          {"minimum", static_cast<std::int64_t>(spec.least)},
          {"maximum", static_cast<std::int64_t>(spec.greatest)}};
}

/// The shape of one member; chosen by its type.
class Shape {
 public:
  explicit Shape(const FieldSpec& spec) : spec_{spec} {}

  Json operator()(const int* /*type*/) const { return whole(spec_); }
  Json operator()(const double* /*type*/) const {
    return {{"type", "number"}, {"minimum", spec_.least}, {"maximum", spec_.greatest}};
  }
  Json operator()(const bool* /*type*/) const { return {{"type", "boolean"}}; }
  Json operator()(const char* /*type*/) const { return choice(spec_); }
  Json operator()(const std::string* /*type*/) const {
    if (!spec_.words.empty()) return choice(spec_);
    if (spec_.form == job::TextForm::id) return {{"type", "string"}, {"pattern", kId}};
    if (spec_.form == job::TextForm::hash) return {{"type", "string"}, {"pattern", "^[0-9a-f]{64}$"}};
    return {{"type", "string"}, {"minLength", spec_.least_length}, {"maxLength", spec_.greatest_length}};
  }
  Json operator()(const Entered* /*type*/) const {
    Json json{{"type", "string"}, {"minLength", 1}, {"maxLength", 64}};
    if (!spec_.hangs_on.empty()) return json;  // Its kind, and so its forms, are not the same each time.
    json["examples"] = accepted_forms(spec_.kind);
    return json;
  }
  Json operator()(const Day* /*type*/) const { return {{"type", "string"}, {"pattern", "^\\d{4}-\\d\\d-\\d\\d$"}}; }
  Json operator()(const std::vector<int>* /*type*/) const {
    return {{"type", "array"}, {"items", whole(spec_)}, {"minItems", 1}, {"maxItems", 240}};
  }
  Json operator()(const Where* /*type*/) const {
    const FieldSpec part = job::fields::word("part", job::fields::kParts);
    return {
        {"type", "object"},
        {"additionalProperties", false},
        {"required", Json::array({"part", "number"})},
        {"properties", {{"part", choice(part)}, {"number", whole(job::fields::whole("number", 0, spec_.greatest))}}}};
  }
  template <class E>
    requires std::is_enum_v<E>
  Json operator()(const E* /*type*/) const {
    return choice(spec_);
  }

 private:
  static constexpr const char* kId = "^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$";
  const FieldSpec& spec_;
};

/// Gathers the members of one kind.
class Members {
 public:
  explicit Members(const Voice& voice) : voice_{voice} {}

  template <class T>
  void operator()(const FieldSpec& spec, const T& /*member*/) {
    required.push_back(spec.name);
    add(spec, static_cast<const T*>(nullptr));
  }
  template <class T>
  void operator()(const FieldSpec& spec, const std::optional<T>& /*member*/) {
    add(spec, static_cast<const T*>(nullptr));
  }

  Json required = Json::array({"kind"}), properties = Json::object();

 private:
  template <class T>
  void add(const FieldSpec& spec, const T* type) {
    const std::string name{spec.name};
    Json shape = Shape{spec}(type);
    shape["description"] = word("record.field." + name, voice_);
    properties[name] = std::move(shape);
  }
  const Voice& voice_;
};

}  // namespace

std::string entry_bodies_schema(const Voice& voice) {
  Json kinds = Json::array();
  job::each_kind([&](const auto& body) {
    const std::string kind{job::kind_of(body)};
    Members members{voice};
    members.properties["kind"] = Json{{"const", kind}};
    job::each_field(body, members);
    kinds.push_back(Json{{"title", kind},
                         {"description", word("record.kind." + kind, voice)},
                         {"type", "object"},
                         {"additionalProperties", false},
                         {"required", members.required},
                         {"properties", members.properties}});
  });
  const Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                    {"title", "EntryBody"},
                    {"description", word("record.bodies", voice)},
                    {"oneOf", std::move(kinds)}};
  return schema.dump(1) + "\n";
}

}  // namespace flatwise::record
