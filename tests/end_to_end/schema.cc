#include "tests/end_to_end/schema.h"

#include <memory>
#include <stdexcept>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "tests/end_to_end/process.h"

namespace flatwise::end_to_end {
namespace {

using Adapter = valijson::adapters::NlohmannJsonAdapter;

nlohmann::json document(const std::string& file) { return nlohmann::json::parse(ours("schemas/output/" + file)); }

/// A schema with those that it refers to; parsed once a name, since one test program checks hundreds of outputs.
const valijson::Schema& schema_of(const std::string& name) {
  static std::map<std::string, std::unique_ptr<valijson::Schema>> known;
  std::unique_ptr<valijson::Schema>& schema = known[name];
  if (schema) return *schema;
  schema = std::make_unique<valijson::Schema>();
  const nlohmann::json json = document(name + ".schema.json");
  valijson::SchemaParser{}.populateSchema(
      Adapter{json}, *schema, [](const std::string& file) { return new nlohmann::json(document(file)); },
      [](const nlohmann::json* fetched) { delete fetched; });
  return *schema;
}

}  // namespace

std::string faults_against(const std::string& schema, const nlohmann::json& json) {
  valijson::ValidationResults results;
  if (valijson::Validator{}.validate(schema_of(schema), Adapter{json}, &results)) return {};
  std::string out;
  for (valijson::ValidationResults::Error error; results.popError(error);) {
    for (const std::string& step : error.context) out += step;
    out += ": " + error.description + "\n";
  }
  return out.empty() ? "not valid\n" : out;
}

nlohmann::json parsed(const std::string& text) {
  nlohmann::json json = nlohmann::json::parse(text, nullptr, false);
  if (json.is_discarded()) throw std::runtime_error("not JSON: " + text.substr(0, 400));
  return json;
}

}  // namespace flatwise::end_to_end
