// test_table.h: reads the small CSV tables of tests/data. A table's notes name its source; where its tolerances differ
// they have a column of their own.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace flatwise {

using TestRow = std::map<std::string, std::string>;

/// Rows by column name. Lines that start with # are notes. No cell of ours holds a comma or a quote.
inline std::vector<TestRow> test_table(const std::string& name) {
  std::ifstream file{std::string{FLATWISE_SOURCE_DIR} + "/tests/data/" + name};
  std::vector<std::string> heads;
  std::vector<TestRow> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::vector<std::string> cells;
    std::istringstream cut{line};
    for (std::string cell; std::getline(cut, cell, ',');) cells.push_back(cell);
    if (heads.empty()) {
      heads = cells;
      continue;
    }
    TestRow row;
    for (std::size_t i = 0; i < heads.size(); ++i) row[heads[i]] = i < cells.size() ? cells[i] : "";
    rows.push_back(row);
  }
  EXPECT_FALSE(rows.empty()) << name << " has no rows";
  return rows;
}

inline double number(const TestRow& row, const std::string& column) { return std::stod(row.at(column)); }

/// All numbers of one cell.
inline std::vector<double> numbers(const TestRow& row, const std::string& column, char between = ' ') {
  std::istringstream cut{row.at(column)};
  std::vector<double> out;
  for (std::string one; std::getline(cut, one, between);)
    if (!one.empty()) out.push_back(std::stod(one));
  return out;
}

}  // namespace flatwise
