#include "tests/api/contract.h"

#include <algorithm>
#include <stdexcept>

#include "tests/support/contract.h"

namespace flatwise::api_test {
namespace {

using nlohmann::json;

std::string media_type(const std::string& content_type) { return content_type.substr(0, content_type.find(';')); }

Operation operation_of(const std::string& path, const std::string& method, const json& spec) {
  Operation op{.id = spec.at("operationId"), .method = method, .path = path};
  std::ranges::transform(op.method, op.method.begin(),
                         [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  op.takes_json = spec.contains("requestBody") && spec["requestBody"]["content"].contains("application/json");
  for (const auto& [status, response] : spec.at("responses").items()) op.statuses.push_back(std::stoi(status));
  return op;
}

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

Contract::Contract() : document_(tests::schema_file("api/openapi.json")) {  // In braces it would be an array.
  for (const auto& [path, methods] : document_.at("paths").items())
    for (const auto& [method, spec] : methods.items()) operations_.push_back(operation_of(path, method, spec));
}

const Operation& Contract::operation(const std::string& id) const {
  const auto it = std::ranges::find(operations_, id, &Operation::id);
  if (it == operations_.end()) throw std::runtime_error("no operation " + id);
  return *it;
}

std::string Contract::faults(const std::string& id, const Answer& answer) {
  const Operation& op = operation(id);
  const json& responses = document_["paths"][op.path][lower(op.method)]["responses"];
  const auto spec = responses.find(std::to_string(answer.status));
  if (spec == responses.end())
    return id + ": status " + std::to_string(answer.status) + " is not documented\n" + answer.body.substr(0, 400);
  tried_.emplace(id, answer.status);
  const json content = spec->value("content", json::object());
  const std::string type = media_type(answer.header("content-type"));
  if (content.empty()) return answer.body.empty() && type.empty() ? "" : id + ": content where there should be none\n";
  if (!content.contains(type)) return id + ": content type '" + type + "' is not documented\n";
  std::string out;
  const json headers = spec->value("headers", json::object());
  for (const auto& [name, header] : headers.items())
    if (answer.header(lower(name)).empty()) out += id + ": no header " + name + "\n";
  const json& schema = content[type].value("schema", json::object());
  if (!schema.contains("$ref")) return out;
  const json body = json::parse(answer.body, nullptr, false);
  if (body.is_discarded()) return out + id + ": no JSON: " + answer.body.substr(0, 200) + "\n";
  const std::string ref = schema["$ref"];
  return out + tests::faults_against_contract(ref.substr(ref.rfind('/') + 1), body);
}

std::vector<std::string> Contract::never_tried() const {
  std::vector<std::string> out;
  for (const Operation& op : operations_)
    for (const int status : op.statuses)
      if (!tried_.contains({op.id, status})) out.push_back(op.method + " " + op.path + " " + std::to_string(status));
  return out;
}

}  // namespace flatwise::api_test
