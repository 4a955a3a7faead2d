// history_test.cc: the invented record in demo/history/ is true to itself, to the demo's shafts and to job 31.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <regex>
#include <set>
#include <sstream>

#include "tests/end_to_end/process.h"
#include "tests/end_to_end/schema.h"

namespace flatwise::end_to_end {
namespace {

using Row = std::map<std::string, std::string>;
using Rows = std::vector<Row>;

Rows rows_of(const std::string& csv) {
  Rows rows;
  std::vector<std::string> head;
  for (const std::string& line : lines_of(csv)) {
    std::vector<std::string> cells(1);
    for (const char c : line) {
      if (c == ',')
        cells.emplace_back();
      else
        cells.back() += c;
    }
    if (head.empty()) {
      head = cells;
      continue;
    }
    if (cells.size() != head.size()) throw std::runtime_error("columns: " + line);
    Row row;
    for (std::size_t i = 0; i < head.size(); ++i) row[head[i]] = cells[i];
    rows.push_back(std::move(row));
  }
  return rows;
}

std::set<int> numbers(const std::string& list) {
  std::istringstream in{list};
  std::set<int> out;
  for (int n = 0; in >> n;) out.insert(n);
  return out;
}

struct Record {
  Rows jobs, hours, bearings;
  std::map<std::string, int> rotors;  ///< Of each shaft.
};

Record record() {
  Record r{rows_of(ours("demo/history/jobs.csv")),
           rows_of(ours("demo/history/hours.csv")),
           rows_of(ours("demo/history/bearings.csv")),
           {}};
  for (const char* shaft : {"long-nine", "short-three", "five", "square-four"})
    r.rotors[shaft] =
        parsed(flatwise({"define", "check", std::string{"demo/"} + shaft + ".toml", "--json"}).out)["rotors"];
  return r;
}

double hours_of(const Row& row, const char* column) { return std::stod(row.at(column)); }
/// Hours in the files have one decimal; sums of two such differ by rounding of the third at most.
bool same(double x, double y) { return std::abs(x - y) < 0.051; }

using Faults = std::vector<std::string>;

void meters(const Record& r, Faults& faults) {
  std::map<std::string, Row> last;
  for (const Row& row : r.hours) {
    const Row& before = last[row.at("shaft")];
    if (!before.empty() && row.at("date") <= before.at("date"))
      faults.push_back("hours: not in order at " + row.at("date"));
    if (!before.empty() && hours_of(row, "hour_meter_h") < hours_of(before, "hour_meter_h"))
      faults.push_back("hours: meter went back at " + row.at("date"));
    if (!r.rotors.contains(row.at("shaft"))) faults.push_back("hours: no shaft " + row.at("shaft"));
    last[row.at("shaft")] = row;
  }
  if (last.size() != r.rotors.size()) faults.push_back("hours: a shaft is missing");
}

/// The meter as read on that day; NaN when it was not.
double meter(const Record& r, const std::string& shaft, const std::string& date) {
  for (const Row& row : r.hours)
    if (row.at("shaft") == shaft && row.at("date") == date) return hours_of(row, "hour_meter_h");
  return NAN;
}

double last_meter(const Record& r, const std::string& shaft) {
  double last = NAN;
  for (const Row& row : r.hours)
    if (row.at("shaft") == shaft) last = hours_of(row, "hour_meter_h");
  return last;
}

void jobs(const Record& r, Faults& faults) {
  int before = 0;
  for (const Row& job : r.jobs) {
    const std::string name = "job " + job.at("job") + ": ";
    const int number = std::stoi(job.at("job"));
    if (before != 0 && number != before + 1) faults.push_back(name + "numbers do not run on");
    before = number;
    if (!same(meter(r, job.at("shaft"), job.at("date_in")), hours_of(job, "hour_meter_h")))
      faults.push_back(name + "meter is not in hours.csv");
    if (job.at("date_out") < job.at("date_in")) faults.push_back(name + "out before in");
    const std::set<int> off = numbers(job.at("came_off")), failed = numbers(job.at("failed"));
    const int count = r.rotors.at(job.at("shaft"));
    if (failed.empty() || !std::ranges::includes(off, failed)) faults.push_back(name + "failed ones did not come off");
    if (off != numbers(job.at("new_set"))) faults.push_back(name + "new sets are not for those that came off");
    int from_a = 0, from_b = 0;  // What comes off comes off from the ends.
    while (off.contains(from_a + 1)) ++from_a;
    while (from_a < count && off.contains(count - from_b)) ++from_b;
    if (from_a + from_b != static_cast<int>(off.size())) faults.push_back(name + "rotors came off from the middle");
  }
}

const Row* job_of(const Record& r, const std::string& number) {
  const auto found = std::ranges::find_if(r.jobs, [&](const Row& j) { return j.at("job") == number; });
  return found == r.jobs.end() ? nullptr : &*found;
}

void one_bearing(const Record& r, const Row& b, Faults& faults) {
  const std::string name = b.at("bearing") + ": ";
  const double from = hours_of(b, "entry_meter_h"), to = hours_of(b, "exit_meter_h");
  if (!same(hours_of(b, "exit_age_h") - hours_of(b, "entry_age_h"), to - from))
    faults.push_back(name + "age and meter differ");
  if (hours_of(b, "entry_age_h") < 0 || to < from) faults.push_back(name + "hours under nought");
  if (!same(meter(r, b.at("shaft"), b.at("entry_date")), from))
    faults.push_back(name + "entry meter is not in hours.csv");
  if (!b.at("fitted_in_job").empty() && hours_of(b, "entry_age_h") != 0)
    faults.push_back(name + "fitted new, but not of age nought");
  const bool out = !b.at("out_in_job").empty();
  const bool failed = b.at("outcome") == "failed";
  if (out == (b.at("outcome") == "running")) faults.push_back(name + "outcome and job differ");
  if (!out && !same(to, last_meter(r, b.at("shaft")))) faults.push_back(name + "runs, but not to the last meter");
  if (failed == b.at("last_known_sound_age_h").empty()) faults.push_back(name + "last known sound age");
  if (failed && hours_of(b, "last_known_sound_age_h") > hours_of(b, "exit_age_h"))
    faults.push_back(name + "sound after it failed");
  if (failed && hours_of(b, "last_known_sound_age_h") < hours_of(b, "entry_age_h"))
    faults.push_back(name + "sound before the record");
  const Row* job = out ? job_of(r, b.at("out_in_job")) : nullptr;
  if (out && job == nullptr) return faults.push_back(name + "no such job");
  if (!out) return;
  const int rotor = std::stoi(b.at("rotor"));
  if (job->at("shaft") != b.at("shaft") || job->at("date_in") != b.at("exit_date"))
    faults.push_back(name + "not of that job");
  if (!numbers(job->at("came_off")).contains(rotor)) faults.push_back(name + "did not come off in that job");
  if (numbers(job->at("failed")).contains(rotor) != failed)
    faults.push_back(name + "job and bearing tell it differently");
}

/// In each place one bearing follows the other, from the record's beginning to its end.
void places(const Record& r, Faults& faults) {
  std::map<std::pair<std::string, int>, Rows> by_place;
  for (const Row& b : r.bearings) by_place[{b.at("shaft"), std::stoi(b.at("rotor"))}].push_back(b);
  std::size_t places = 0;
  for (const auto& [shaft, count] : r.rotors) places += static_cast<std::size_t>(count);
  if (by_place.size() != places) faults.push_back("bearings: a place is missing");
  for (const auto& [place, row] : by_place) {
    const std::string name = place.first + " " + std::to_string(place.second) + ": ";
    if (!row.front().at("fitted_in_job").empty())
      faults.push_back(name + "the first was not there when the record began");
    if (row.back().at("outcome") != "running") faults.push_back(name + "empty at the end");
    for (std::size_t i = 1; i < row.size(); ++i)
      if (row[i].at("fitted_in_job") != row[i - 1].at("out_in_job") ||
          row[i].at("entry_meter_h") != row[i - 1].at("exit_meter_h"))
        faults.push_back(name + "a gap");
  }
  std::size_t fitted = 0, renewed = 0;
  for (const Row& b : r.bearings) fitted += b.at("fitted_in_job").empty() ? 0U : 1U;
  for (const Row& job : r.jobs) renewed += numbers(job.at("new_set")).size();
  if (fitted != renewed) faults.push_back("new sets and bearings fitted differ");
}

Faults faults_of(const Record& r) {
  Faults faults;
  meters(r, faults);
  jobs(r, faults);
  for (const Row& b : r.bearings) one_bearing(r, b, faults);
  places(r, faults);
  return faults;
}

TEST(History, IsTrueToItselfAndToTheShafts) {
  const Record r = record();
  EXPECT_EQ(faults_of(r), Faults{});
  EXPECT_GT(r.bearings.size(), 40U);
  std::map<std::string, int> outcomes;
  for (const Row& b : r.bearings) ++outcomes[b.at("outcome")];
  for (const char* outcome : {"failed", "sound", "running"}) EXPECT_GT(outcomes[outcome], 9) << outcome;
}

TEST(History, EndsInJob31AsTheDemoHasIt) {
  const Record r = record();
  const std::string readings = ours("demo/job-31.toml");
  const Row& job = r.jobs.back();
  EXPECT_EQ(job.at("job"), "31");
  EXPECT_EQ(job.at("shaft"), "long-nine");
  EXPECT_NE(readings.find("date = " + job.at("date_in")), std::string::npos);
  EXPECT_NE(readings.find("came_off = [" + std::regex_replace(job.at("came_off"), std::regex{" "}, ", ") + "]"),
            std::string::npos);
}

TEST(History, SaysThatItIsInvented) {
  EXPECT_NE(ours("demo/history/README.md").find("Invented"), std::string::npos);
  EXPECT_NE(ours("demo/README.md").find("Invented"), std::string::npos);
}

// --- The checks above bite ---------------------------------------------------------------------------------------------

TEST(History, ChecksFindWhatIsPlanted) {
  const Record good = record();
  const auto found = [&](const std::function<void(Record&)>& plant) {
    Record bad = good;
    plant(bad);
    return !faults_of(bad).empty();
  };
  EXPECT_TRUE(found([](Record& r) { r.hours[5]["hour_meter_h"] = "1.0"; }));
  EXPECT_TRUE(found([](Record& r) { r.hours.erase(r.hours.begin() + 8); }));
  EXPECT_TRUE(found([](Record& r) { r.jobs[0]["came_off"] = "2 3"; }));
  EXPECT_TRUE(found([](Record& r) { r.jobs[0]["job"] = "7"; }));
  EXPECT_TRUE(found([](Record& r) { r.jobs[0]["failed"] = "1"; }));
  EXPECT_TRUE(found([](Record& r) { r.bearings[0]["entry_age_h"] = "1.0"; }));
  EXPECT_TRUE(found([](Record& r) { r.bearings[0]["outcome"] = "running"; }));
  EXPECT_TRUE(found([](Record& r) { r.bearings.pop_back(); }));
  EXPECT_TRUE(found([](Record& r) { r.bearings[1]["fitted_in_job"] = "22"; }));
  EXPECT_TRUE(found([](Record& r) { r.bearings[2]["last_known_sound_age_h"] = "9999"; }));
}

}  // namespace
}  // namespace flatwise::end_to_end
