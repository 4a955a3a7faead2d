// Speed of what the bench screen stands on: the fold, a job judged anew, each stage's screen, entries read from JSON.
//
//   build/release/bench/bench_view [PART OF A NAME [HOW MANY ROUNDS]]      see docs/speed.md
//
// Links: view view_samples record definition job
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

#include "bench/measure.h"
#include "record/entry_json.h"
#include "record/strict_json.h"
#include "view/bench_view.h"
#include "view/view_samples.h"
#include "wire/written.h"

namespace flatwise::bench {
namespace {

using view::SampleJob;

std::string shaft_text(int rotors) {
  std::string toml = view::demo_file("long-nine.toml");
  const std::string nine = "repeat = 5";
  return toml.replace(toml.find(nine), nine.size(), "repeat = " + std::to_string(rotors - 4));
}

/// Play read everywhere, rotor 4 worn, way and customer's yes, parts off as far as rotor 4, all marks read and one of them wrong.
void half_done(SampleJob& sample) {
  const int count = sample.shaft().rotor_count();
  sample.answer(job::Stage::booking_in);
  for (int r = 1; r <= count; ++r) sample.play(r, r == 4 ? "1.47 mm" : "0.033 in");
  sample.write(job::Looked{job::at_rotor(4), job::Stage::booking_in, Sign::noisy, Reply::yes});
  sample.write(job::WayChosen{{4}, "disturbed"}, 2);
  sample.write(job::CustomerSaid{Reply::yes, "Lower fields", "by telephone", {}}, 2);
  sample.take_off(4);
  for (int r = 1; r <= count; ++r) sample.marks(r, r % 2 == 1 ? 1 : 4, r == 4 ? 2 : r % 2 == 1 ? 4 : 1);
}

/// The same marks read over and over, each time in place of the time before: a job as long as none will be.
std::vector<job::Entry> long_job(const job::OpenJob& job, std::size_t length) {
  std::vector<job::Entry> entries = job.entries;
  const int count = job.shaft.rotor_count();
  std::vector<job::Id> last(static_cast<std::size_t>(2 * count));
  for (std::size_t i = 0; entries.size() < length; ++i) {
    const std::size_t at = i % last.size();
    job::Entry e = entries.back();
    e.number += 1;
    e.id = view::sample_id(e.number);
    e.follows = entries.back().id;
    e.corrects = last[at].empty() ? std::vector<job::Id>{} : std::vector{last[at]};
    const Half half = at % 2 == 0 ? Half::a : Half::b;
    e.body =
        job::MarkSeen{static_cast<int>(at / 2) + 1, half, static_cast<int>(i / last.size()) % job.shaft.flats() + 1};
    last[at] = e.id;
    entries.push_back(std::move(e));
  }
  return entries;
}

std::string sent(const job::OpenJob& job, std::size_t most) {
  wire::Json list = wire::Json::array();
  for (std::size_t i = 0; i < std::min(most, job.entries.size()); ++i)
    list.push_back(record::entry_in_json(job.entries[i]));
  return wire::Json{{"entries", std::move(list)}}.dump();
}

void add_screens(std::vector<Case>& cases, const view::Subject& subject, double target) {
  const std::string rotors = std::to_string(subject.job.shaft.rotor_count()) + " rotors, ";
  for (int s = 0; s < job::kStageCount; ++s) {
    view::Screen screen = view::screen_of(UnitSystem::metric);
    screen.stage = static_cast<job::Stage>(s);
    const std::string name = "screen of " + rotors + std::string{job::stage_name(*screen.stage)};
    cases.push_back({name, target, [&subject, screen] {
                       if (wire::text_of(view::bench_view(subject, screen)).empty()) stop("an empty screen");
                     }});
  }
}

int run(const std::string& only, int rounds) {
  SampleJob nine_job{shaft_text(9)}, many_job{shaft_text(24)};
  half_done(nine_job);
  half_done(many_job);
  const view::Subject &nine = nine_job.subject(), &many = many_job.subject();
  const std::vector<job::Entry> entries = long_job(nine.job, 10'000);
  const std::string text = sent(many.job, record::kMostEntries);
  const std::string plain = "peer: the same text by the JSON library as it is";
  std::vector<Case> cases{{"fold of 10,000 entries, 9 rotors", 0,
                           [&] {
                             if (job::fold(nine.job.shaft, nine.job.workshop, entries).live.empty())
                               stop("nothing folded");
                           }},
                          {"fold of a job half done, 24 rotors", 0,
                           [&] { const auto made = job::fold(many.job.shaft, many.job.workshop, many.job.entries); }},
                          {"the same judged: all stages", 0,
                           [&] { const auto made = job::judge_through(many.job.facts(), job::Stage::release); }},
                          {"the same: what to do next", 0, [&] { const auto made = job::standing(many.job); }},
                          {"entries read and checked, " + std::to_string(text.size()) + " bytes", 0,
                           [&] { got(record::read_entries(text, many.row.id), "entries"); }, plain},
                          {"only their JSON, strictly", 0, [&] { got(record::strict_json(text), "JSON"); }, plain},
                          {plain, 0, [&] {
                             if (nlohmann::json::parse(text).empty()) stop("no JSON");
                           }}};
  add_screens(cases, nine, 5);
  add_screens(cases, many, 5);
  std::erase_if(cases, [&](const Case& c) { return c.name.find(only) == std::string::npos; });
  measure(cases, rounds);
  print(cases);
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main(int argc, char** argv) {
  return flatwise::bench::run(argc > 1 ? argv[1] : "", argc > 2 ? std::atoi(argv[2]) : 51);
}
