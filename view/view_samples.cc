#include "view/view_samples.h"

#include <cstdio>
#include <fstream>
#include <sstream>
#include <utility>

#include "core/units/parse.h"
#include "job/kit.h"

namespace flatwise::view {

std::string demo_file(const std::string& name) {
  std::ifstream in{std::string{FLATWISE_SOURCE_DIR} + "/demo/" + name};
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string sample_id(int number) {
  char text[48];
  std::snprintf(text, sizeof text, "00000000-0000-7000-8000-%012d", number);
  return text;
}

Entered typed(const std::string& text, Kind kind) { return *parse_quantity(text, kind, "sample"); }

SampleJob::SampleJob(const std::string& shaft_toml)
    : shaft_{*definition::read_shaft(shaft_toml, "shaft.toml")},
      workshop_{*definition::read_workshop(demo_file("workshop.toml"), "workshop.toml")} {
  people_[sample_id(900'001)] = "Bench";
  people_[sample_id(900'002)] = "Lead";
  write(job::BookedIn{"31", sample_id(800'001), sample_id(800'002), "Rotor 4 hot and noisy",
                      typed("2421.2 h", Kind::time), Day{2026, 2, 12}},
        2);
}

job::Id SampleJob::write(job::EntryBody body, int person, std::vector<job::Id> corrects) {
  job::Entry e;
  e.number = static_cast<int>(entries_.size()) + 1;
  e.id = sample_id(e.number);
  e.job = sample_id(700'001);
  e.by = sample_id(900'000 + person);
  e.on = "tablet 1";
  e.at = {1'770'105'600'000 + 60'000 * e.number};
  e.follows = entries_.empty() ? "" : entries_.back().id;
  e.corrects = std::move(corrects);
  e.body = std::move(body);
  e.hash = std::string(64, 'a');
  entries_.push_back(std::move(e));
  return entries_.back().id;
}

void SampleJob::answer(job::Stage stage, Reply reply) {
  const job::JobState state = job::fold(shaft_, workshop_, entries_);
  for (const job::Asked& a : job::asked(shaft_, state.bench))
    if (a.question->stage == stage) write(job::Answered{std::string{a.question->id}, a.number, reply});
}

void SampleJob::play(int rotor, const std::string& swing) {
  write(job::PlayRead{rotor, typed(swing, Kind::length), "TAPE-2", {}});
}

void SampleJob::marks(int rotor, int a, int b) {
  write(job::MarkSeen{rotor, Half::a, a});
  write(job::MarkSeen{rotor, Half::b, b});
}

void SampleJob::take_off(int rotor) {
  for (int s = 0; s <= shaft_.station_of_rotor(rotor); ++s) write(job::TakenOff{s + 1});
}

const Subject& SampleJob::subject() {
  job_ =
      std::make_unique<job::OpenJob>(job::OpenJob{std::make_shared<const Shaft>(shaft_), workshop_, entries_, {}, {}});
  job_->state = job::fold(job_->shaft, job_->workshop, job_->entries);
  job_->report = job::judge_through(job_->facts(), job::Stage::release);
  standing_ = std::make_unique<job::Standing>(job::standing(*job_));
  row_.id = sample_id(700'001);
  row_.machine = sample_id(800'001);
  row_.shaft_version = sample_id(800'002);
  row_.number = "31";
  row_.present = standing_->present;
  row_.entries = static_cast<int>(entries_.size());
  row_.head = std::string(64, 'a');
  row_.due = Day{2026, 2, 12};
  subject_ = std::make_unique<Subject>(Subject{*job_, *standing_, row_, people_, "Looseners 2", "Lower fields"});
  return *subject_;
}

Screen screen_of(UnitSystem units) {
  return {.stage = {},
          .station = {},
          .from = End::a,
          .step = {},
          .by = sample_id(900'001),
          .voice = {.language = Language::english, .units = units, .currency = "GBP"},
          .today = {2026, 2, 3}};
}

}  // namespace flatwise::view
