// contract.h: whether JSON is what schemas/api/openapi.json promises under components/schemas.
#pragma once

#include <fstream>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace flatwise::tests {

inline nlohmann::json schema_file(const std::string& path) {
  std::ifstream in{std::string{FLATWISE_SOURCE_DIR} + "/schemas/" + path};
  return nlohmann::json::parse(in);
}

/// A schema of the contract by name, with all it refers to. Parsed once a name.
inline const valijson::Schema& contract_schema(const std::string& name) {
  using Adapter = valijson::adapters::NlohmannJsonAdapter;
  static const nlohmann::json api = schema_file("api/openapi.json");
  static std::map<std::string, std::unique_ptr<valijson::Schema>> known;
  std::unique_ptr<valijson::Schema>& schema = known[name];
  if (schema) return *schema;
  schema = std::make_unique<valijson::Schema>();
  const nlohmann::json root{{"$ref", "#/components/schemas/" + name}, {"components", api.at("components")}};
  valijson::SchemaParser{}.populateSchema(
      Adapter{root}, *schema,
      [](const std::string& uri) {
        const std::string file = uri.substr(uri.rfind('/') + 1);
        return new nlohmann::json(schema_file((file == "entry-bodies.json" ? "api/" : "output/") + file));
      },
      [](const nlohmann::json* fetched) { delete fetched; });
  return *schema;
}

/// Empty when `json` is a NAME of the contract; else why not, one line a fault.
inline std::string faults_against_contract(const std::string& name, const nlohmann::json& json) {
  valijson::ValidationResults results;
  using Adapter = valijson::adapters::NlohmannJsonAdapter;
  if (valijson::Validator{}.validate(contract_schema(name), Adapter{json}, &results)) return {};
  std::string out;
  for (valijson::ValidationResults::Error error; results.popError(error);) {
    for (const std::string& step : error.context) out += step;
    out += ": " + error.description + "\n";
  }
  return out.empty() ? "not valid\n" : out;
}

}  // namespace flatwise::tests
