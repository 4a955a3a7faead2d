#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "job/marks.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

constexpr std::string_view kVerdicts[] = {"right",    "half_a_out", "half_b_out", "indexed_wrong",
                                          "both_out", "unread",     "unsure"};

std::string_view name_of(timing::Verdict verdict) { return kVerdicts[static_cast<std::size_t>(verdict)]; }

std::string flat(const std::optional<int>& f) { return f ? std::to_string(*f) : "?"; }

struct Marks {
  timing::Reading reading;
  timing::Check check;
};
Result<Marks> marks_of(const Job& job) {
  Result<timing::Reading> reading = job::marks_reading(job.facts());
  if (!reading) return tl::unexpected(std::move(reading.error()));
  Result<timing::Check> check = timing::check(job.shaft, *reading);
  if (!check) return tl::unexpected(std::move(check.error()));
  return Marks{*std::move(reading), *std::move(check)};
}

wire::Json json_of(const Marks& marks) {
  wire::Json list = wire::Json::array();
  const auto number = [](const std::optional<int>& f) { return f ? wire::Json(*f) : wire::Json(nullptr); };
  for (const timing::RotorVerdict& v : marks.check.rotors) {
    const timing::Marks& read = marks.reading.rotors[static_cast<std::size_t>(v.rotor) - 1];
    list.push_back({{"rotor", v.rotor},
                    {"stayed", read.fixed},
                    {"read_a", number(read.a)},
                    {"read_b", number(read.b)},
                    {"wanted_a", number(v.wanted_a)},
                    {"wanted_b", number(v.wanted_b)},
                    {"out_a", number(v.flats_a)},
                    {"out_b", number(v.flats_b)},
                    {"verdict", name_of(v.verdict)}});
  }
  return list;
}

std::string table_of(const Context& context, const Marks& marks) {
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Table table{.head = {w("cli.head.rotor"), w("cli.head.state"), w("cli.head.read_a"), w("cli.head.wanted"),
                       w("cli.head.read_b"), w("cli.head.wanted"), ""},
              .rows = {},
              .right = "rlrrrrl"};
  for (const timing::RotorVerdict& v : marks.check.rotors) {
    const timing::Marks& read = marks.reading.rotors[static_cast<std::size_t>(v.rotor) - 1];
    table.rows.push_back({std::to_string(v.rotor), w(read.fixed ? "cli.stayed" : "cli.came_off"), flat(read.a),
                          flat(v.wanted_a), flat(read.b), flat(v.wanted_b),
                          w("verdict." + std::string{name_of(v.verdict)})});
  }
  return lay_out(table);
}

}  // namespace

Status judge_marks(const Context& context, const JobFiles& files) {
  const Results<Job> job = load_job(context, files);
  if (!job) return refuse(context, job.error());
  const Context own = speaking(context, *job);
  const job::StageReport report = job::judge(job->facts(), job::Stage::timing);
  const Result<Marks> marks = marks_of(*job);
  if (own.json) {
    wire::Json json = wire::to_json(report, own.voice);
    json["rotors"] = marks ? json_of(*marks) : wire::Json::array();
    *own.out << wire::dump(json);
  } else {
    *own.out << job_head(own, *job) << (marks ? table_of(own, *marks) + "\n" : std::string{}) << render(own, report);
  }
  return status_of(report.worst());
}

}  // namespace flatwise::cli
