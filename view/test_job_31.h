// test_job_31.h: the demo's job 31 with its six mistakes, and how its sheets are read. For the tests of the bench sheets.
#pragma once

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "view/blocks.h"
#include "view/view_samples.h"

namespace flatwise::view {

using job::Stage;
using Plain = nlohmann::json;

/// A job on the long nine as its file has it, entry by entry.
SampleJob job_31(const std::string& file = "job-31.toml");

/// A screen as the page gets it, held against the contract.
Plain view_of(const Subject& subject, Stage stage, int station, UnitSystem units = UnitSystem::inch, End from = End::a,
              std::optional<int> step = {});
/// The blocks of a sheet in the order of the eye; of one kind, or of all.
std::vector<Plain> blocks_of(const Plain& view, const std::string& kind = {});
Plain first(const Plain& view, const std::string& kind);
bool says(const Plain& json, const std::string& text);
Plain cell(const Plain& view, int station);
/// The marks of every item of a picture that can be tapped.
void collect_ids(const Plain& json, std::set<std::string>& out);

class Job31 : public testing::Test {
 protected:
  Job31();
  [[nodiscard]] int at_rotor(int number) const { return sample_.shaft().station_of_rotor(number); }
  [[nodiscard]] int labelled(const std::string& label) const;
  SampleJob sample_;
  const Subject& subject_;
};

}  // namespace flatwise::view
