// rebuild_entries SEED...: simulated rebuilds as a mechanic at a page needs them, one JSON a line: the shaft and the workshop as
// files, what was put in, the entries that say what the readings file says, and all that is said of that file.
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>

#include "job/bench_entries.h"
#include "job/judge.h"
#include "record/entry_json.h"
#include "tests/rebuilds/files.h"
#include "view/blocks.h"
#include "wire/json.h"

namespace {

using flatwise::wire::Json;
namespace job = flatwise::job;

/// A body with the place where a page asks for it.
Json placed(const flatwise::Shaft& shaft, const job::EntryBody& body) {
  Json json{{"stage", job::stage_name(job::stage_of(body))}, {"body", flatwise::record::body_json(body)}};
  json["station"] = nullptr;
  if (const auto at = flatwise::view::station_of(shaft, flatwise::view::part_of(shaft, body))) json["station"] = *at;
  return json;
}

/// What was put in, and whether the program's answer to the files catches and names it: what is promised of the page too.
Json mistakes_of(const rebuilds::Rebuild& rebuild) {
  const rebuilds::Outcome outcome = rebuilds::compare(rebuild, rebuilds::said_of(rebuild));
  Json all = Json::array();
  for (std::size_t i = 0; i < rebuild.mistakes.size(); ++i) {
    const rebuilds::Mistake& m = rebuild.mistakes[i];
    const rebuilds::MistakeOutcome& o = outcome.mistakes[i];
    all.push_back({{"kind", rebuilds::row_of(m.kind).name},
                   {"told", m.told},
                   {"promised", m.promised},
                   {"caught", o.caught},
                   {"named", o.named},
                   {"cannot_tell", o.cannot_tell}});
  }
  return all;
}

/// The findings of every stage, in the order of the report.
Json findings_of(const rebuilds::Files& files) {
  flatwise::Voice voice;
  voice.currency = files.workshop.currency;
  const auto report = job::judge_through({files.shaft, files.workshop, files.bench}, job::Stage::release);
  const Json json = flatwise::wire::to_json(report, voice);
  Json all = Json::array();
  for (const Json& stage : json["stages"]) all.push_back({{"stage", stage["stage"]}, {"findings", stage["findings"]}});
  return all;
}

bool print(unsigned long long seed) {
  const rebuilds::Rebuild rebuild = rebuilds::make_rebuild(seed);
  const auto files = rebuilds::files_of(rebuild);
  if (!files) return false;
  Json entries = Json::array();
  for (const job::EntryBody& body : job::entries_of(files->shaft, files->bench))
    entries.push_back(placed(files->shaft, body));
  const Json line{{"seed", seed},
                  {"shaft", files->texts.shaft},
                  {"workshop", files->texts.workshop},
                  {"date", rebuild.sheet.date},
                  {"came_off", files->bench.came_off},
                  {"refused", files->refused},
                  {"mistakes", mistakes_of(rebuild)},
                  {"entries", std::move(entries)},
                  {"stages", findings_of(*files)}};
  std::printf("%s\n", line.dump().c_str());
  return true;
}

}  // namespace

int main(int count, char** args) {
  if (count < 2) {
    std::fputs("rebuild_entries SEED...\n", stderr);
    return 2;
  }
  for (int i = 1; i < count; ++i)
    if (!print(std::strtoull(args[i], nullptr, 10))) {
      std::fprintf(stderr, "rebuild %s cannot be read\n", args[i]);
      return 1;
    }
  return 0;
}
