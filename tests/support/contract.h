// contract.h: whether JSON is what schemas/api/openapi.json promises under components/schemas.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace flatwise::tests {

/// A file under schemas/.
nlohmann::json schema_file(const std::string& path);
/// The contract with the files it refers to, as one document.
const nlohmann::json& contract_document();
/// Empty when `json` is a NAME of the contract; else why not, one line a fault.
std::string faults_against_contract(const std::string& name, const nlohmann::json& json);

}  // namespace flatwise::tests
