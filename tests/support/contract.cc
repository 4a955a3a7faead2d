// Compiled once for all tests: the schema library and the JSON library are slow to compile.
#include "tests/support/contract.h"

#include <fstream>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace flatwise::tests {
nlohmann::json schema_file(const std::string& path) {
  std::ifstream in{std::string{FLATWISE_SOURCE_DIR} + "/schemas/" + path};
  return nlohmann::json::parse(in);
}

namespace {

/// Points references into the shared definitions, and past schemas that are only another's name.
void turn_references(nlohmann::json& json) {
  if (json.is_array())
    for (auto& item : json) turn_references(item);
  if (!json.is_object()) return;
  if (json.contains("$ref")) {
    const std::string ref = json["$ref"];
    const std::string common = "common.schema.json#";
    if (ref.starts_with(common)) json["$ref"] = ref.substr(common.size() - 1);
    if (ref == "figure-spec.schema.json") json["$ref"] = "#/components/schemas/FigureSpec";
    if (ref == "#/components/schemas/Working") json["$ref"] = "#/definitions/working";
  }
  for (auto& item : json) turn_references(item);
}

}  // namespace

const nlohmann::json& contract_document() {
  static const nlohmann::json kDocument = [] {
    nlohmann::json document;
    document["components"] = schema_file("api/openapi.json").at("components");
    document["definitions"] = schema_file("output/common.schema.json").at("definitions");
    nlohmann::json& schemas = document["components"]["schemas"];
    schemas["EntryBody"] = schema_file("api/entry-bodies.json");
    schemas["JobReport"] = schema_file("output/job-report.schema.json");
    schemas["Figures"] = schema_file("output/figures.schema.json");
    schemas["FigureSpec"] = schema_file("output/figure-spec.schema.json");
    schemas["PatternReport"] = schema_file("output/pattern.schema.json");
    schemas["BendReport"] = schema_file("output/bend.schema.json");
    schemas["BearingReport"] = schema_file("output/bearing.schema.json");
    schemas.erase("Working");
    for (const char* name :
         {"EntryBody", "JobReport", "Figures", "FigureSpec", "PatternReport", "BendReport", "BearingReport"})
      schemas[name].erase("$schema");
    turn_references(document);
    return document;
  }();
  return kDocument;
}

namespace {

/// A schema of the contract by name, with all it refers to. Parsed once a name.
const valijson::Schema& contract_schema(const std::string& name) {
  using Adapter = valijson::adapters::NlohmannJsonAdapter;
  static std::map<std::string, std::unique_ptr<valijson::Schema>> known;
  std::unique_ptr<valijson::Schema>& schema = known[name];
  if (schema) return *schema;
  schema = std::make_unique<valijson::Schema>();
  nlohmann::json root = contract_document();
  root["$ref"] = name == "Working" ? "#/definitions/working" : "#/components/schemas/" + name;
  valijson::SchemaParser{}.populateSchema(Adapter{root}, *schema);
  return *schema;
}

}  // namespace

std::string faults_against_contract(const std::string& name, const nlohmann::json& json) {
  using Adapter = valijson::adapters::NlohmannJsonAdapter;
  const valijson::Schema& schema = contract_schema(name);
  // What is in order needs no account of every choice that was not taken: that costs ten times as much.
  if (valijson::Validator{}.validate(schema, Adapter{json}, nullptr)) return {};
  valijson::ValidationResults results;
  valijson::Validator{}.validate(schema, Adapter{json}, &results);
  std::string out;
  for (valijson::ValidationResults::Error error; results.popError(error);) {
    for (const std::string& step : error.context) out += step;
    out += ": " + error.description + "\n";
  }
  return out.empty() ? "not valid\n" : out;
}

}  // namespace flatwise::tests
