// contract.h: schemas/api/openapi.json as a judge: is an answer one that the contract has for that operation?
#pragma once

#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "tests/api/http_client.h"

namespace flatwise::api_test {

struct Operation {
  std::string id, method, path;
  bool takes_json = false;
  std::vector<int> statuses = {};
};

class Contract {
 public:
  Contract();
  [[nodiscard]] const std::vector<Operation>& operations() const { return operations_; }
  [[nodiscard]] const Operation& operation(const std::string& id) const;
  /// What is wrong with an answer, one line a fault; empty when it is one of the operation's. Counts it as tried.
  [[nodiscard]] std::string faults(const std::string& operation, const Answer& answer);
  /// "GET /api/jobs/{id} 404": documented and never seen.
  [[nodiscard]] std::vector<std::string> never_tried() const;

 private:
  nlohmann::json document_;
  std::vector<Operation> operations_;
  std::set<std::pair<std::string, int>> tried_;
};

}  // namespace flatwise::api_test
