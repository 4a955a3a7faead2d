// contract_test.cc: the contract of job::Store on SQLite, with and without a held snapshot.
#include <gtest/gtest.h>

#include <cctype>

#include "store/contract.h"
#include "store/sqlite/test_place.h"

namespace flatwise::store_sqlite {
namespace {

using Case = std::tuple<store_contract::Check, bool>;
class OnSqlite : public testing::TestWithParam<Case> {};

TEST_P(OnSqlite, keeps_the_contract) {
  const auto& [check, hold] = GetParam();
  FolderPlace place{{.hold_reads = hold}};
  store_contract::Report report;
  check.run(place, report);
  for (const std::string& broken : report.broken()) ADD_FAILURE() << broken;
}

INSTANTIATE_TEST_SUITE_P(Contract, OnSqlite,
                         testing::Combine(testing::ValuesIn(store_contract::checks()), testing::Bool()),
                         [](const auto& test) {
                           return std::string{std::get<0>(test.param).name} + (std::get<1>(test.param) ? "_held" : "");
                         });

}  // namespace
}  // namespace flatwise::store_sqlite
