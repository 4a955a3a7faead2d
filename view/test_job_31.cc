#include "view/test_job_31.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>

#include "job/bench_entries.h"
#include "tests/support/contract.h"
#include "wire/written.h"

namespace flatwise::view {
namespace {

/// With the yellow band before the test run answered, so that its sheet opens.
SampleJob run_allowed(SampleJob sample) {
  for (const job::Question& q : job::questions())
    if (q.stage == Stage::test_run && job::is_safety(q.id))
      sample.write(job::Answered{std::string{q.id}, 0, Reply::yes});
  return sample;
}

}  // namespace

SampleJob job_31(const std::string& file) {
  SampleJob sample;
  const auto shaft = definition::read_shaft(demo_file("long-nine.toml"), "shaft.toml");
  const auto workshop = definition::read_workshop(demo_file("workshop.toml"), "workshop.toml");
  const auto bench = definition::read_bench(demo_file(file), file, *shaft, *workshop);
  for (job::EntryBody& body : job::entries_of(*shaft, *bench)) sample.write(std::move(body));
  return sample;
}

Plain view_of(const Subject& subject, Stage stage, int station, UnitSystem units, End from, std::optional<int> step) {
  Screen screen = screen_of(units);
  screen.stage = stage;
  screen.station = station;
  screen.from = from;
  screen.step = step;
  const Plain json = Plain::parse(wire::text_of(bench_view(subject, screen)));
  const std::string name = std::string{job::stage_name(stage)} + "-" + std::to_string(station) +
                           (units == UnitSystem::inch ? "-in" : "-mm") + (from == End::a ? "-a" : "-b");
  EXPECT_EQ(tests::faults_against_contract("BenchView", json), "") << name;
  if (const char* folder = std::getenv("FLATWISE_LOOK"))
    std::ofstream{std::string{folder} + "/job31-" + name + ".json"} << json.dump(1);
  return json;
}

std::vector<Plain> blocks_of(const Plain& view, const std::string& kind) {
  std::vector<Plain> out;
  for (const char* column : {"head", "left", "right", "foot"})
    for (const Plain& block : view["sheet"][column])
      if (kind.empty() || block["block"] == kind) out.push_back(block);
  return out;
}
Plain first(const Plain& view, const std::string& kind) {
  const auto all = blocks_of(view, kind);
  return all.empty() ? Plain() : all.front();
}
bool says(const Plain& json, const std::string& text) { return json.dump().find(text) != std::string::npos; }
Plain cell(const Plain& view, int station) { return view["strip"]["stations"][static_cast<std::size_t>(station)]; }

void collect_ids(const Plain& json, std::set<std::string>& out) {
  if (json.is_object() && json.contains("item") && json.contains("id")) out.insert(json["id"].get<std::string>());
  if (json.is_structured())
    for (const Plain& item : json) collect_ids(item, out);
}

Job31::Job31() : sample_{run_allowed(job_31())}, subject_{sample_.subject()} {}

int Job31::labelled(const std::string& label) const {
  const auto& stations = sample_.shaft().stations();
  const auto it = std::ranges::find(stations, label, &Station::label);
  return static_cast<int>(it - stations.begin());
}

}  // namespace flatwise::view
