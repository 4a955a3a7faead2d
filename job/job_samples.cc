#include "job/job_samples.h"

#include <utility>

#include "job/kit.h"

namespace flatwise::job {

SampleRecord::SampleRecord(SampleShaft sample) : shaft_{*Shaft::make(sample_shaft(sample))} {
  workshop_.name = "sample shop";
  workshop_.rate_per_hour = 60;
  workshop_.currency = "USD";
  add_gauge("G1", Gauge::Use::bore_gauge, Kind::length, 2e-6, 1e-6);
  add_gauge("T1", Gauge::Use::thermometer, Kind::temperature, 0.2, 0.1);
  add_gauge("L1", Gauge::Use::length, Kind::length, 20e-6, 10e-6);
  add_gauge("W1", Gauge::Use::wrench, Kind::torque, 10, 5);
  add_gauge("P1", Gauge::Use::press_gauge, Kind::force, 100, 50);
  workshop_.stock = {{"TH-SET-5", "set", 4, 0}, {"TH-SEAL", "seal", 20, 0}, {"TH-RING", "ring", 20, 0}};
}

Id SampleRecord::write(EntryBody body, Id by, std::vector<Id> corrects) {
  Entry e;
  e.number = static_cast<int>(entries_.size()) + 1;
  e.id = "e" + std::to_string(e.number);
  e.job = "job";
  e.by = std::move(by);
  e.on = device_;
  e.at = {1'770'000'000'000 + 60'000 * e.number};
  e.follows = entries_.empty() ? "" : entries_.back().id;
  e.corrects = std::move(corrects);
  e.body = std::move(body);
  entries_.push_back(std::move(e));
  return entries_.back().id;
}

Id SampleRecord::write_late(const Id& follows, EntryBody body, Id by, std::vector<Id> corrects) {
  const Id id = write(std::move(body), std::move(by), std::move(corrects));
  entries_.back().follows = follows;
  return id;
}

std::vector<Id> SampleRecord::live(const EntryBody& body) const { return live_answers_to(open()->state, body); }

std::unique_ptr<OpenJob> SampleRecord::open() const {
  auto job = std::make_unique<OpenJob>(OpenJob{std::make_shared<const Shaft>(shaft_), workshop_, entries_, {}, {}});
  job->state = fold(job->shaft, job->workshop, job->entries);
  job->report = judge_through(job->facts(), Stage::release);
  return job;
}

int SampleRecord::station(std::string_view label) const {
  const auto& all = shaft_.stations();
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].label == label) return static_cast<int>(i) + 1;
  return 0;
}

void SampleRecord::book_in() {
  const Entered meter{{2421.2 * 3600, Kind::time}, {}, "2421.2 h"};
  write(BookedIn{"31", "machine", "shaft", "hot and noisy", meter, {}}, "lead");
}

void SampleRecord::answer(Stage stage) {
  const auto job = open();
  for (const Asked& a : asked(job->shaft, job->state.bench))
    if (a.question->stage == stage) write(Answered{std::string{a.question->id}, a.number, Reply::yes});
}

void SampleRecord::read_play(int rotor, double mm) { write(PlayRead{rotor, length(mm), "L1", {}}); }

void SampleRecord::agree() {
  write(WayChosen{{1}, "disturbed"}, "lead");
  write(CustomerSaid{Reply::yes, "the owner", "by telephone", {}}, "lead");
}

void SampleRecord::take_off() {
  for (const int s : way_stations()) write(TakenOff{s});
}

void SampleRecord::inspect() {
  for (const char plane : {'A', 'B'})
    for (int d = 1; d <= 4; ++d) write(BoreRead{1, plane, d, 4, length(99.970), "G1"});
  write(TemperatureRead{1, Measured::part, temperature(20), "T1"});
  write(TemperatureRead{1, Measured::gauge, temperature(20), "T1"});
}

void SampleRecord::lay_out() {
  write(SetRenewed{1, Reply::yes});
  write(FittedRead{1, "TH-100-C3"});
  for (const Half half : {Half::a, Half::b}) write(LeanRead{1, half, {any(degrees(5)), {}, "5°"}});
  for (const Tray& tray : kit(shaft_, {1}, {}))
    for (const KitItem& item : tray.items) {
      write(Laid{1, std::string{item.item}, item.count});
      write(LeftOver{1, std::string{item.item}, 0});
    }
}

void SampleRecord::press(double newton) {
  write(Pressed{1, {any(newtons(newton)), {}, std::to_string(newton) + " N"}, "P1"});
  write(RingPressedSeen{1, RingPressed::outer});
}

void SampleRecord::read_marks() {
  for (int r = 1; r <= 3; ++r) {
    write(MarkSeen{r, Half::a, r % 2 == 1 ? 1 : 4});
    write(MarkSeen{r, Half::b, r % 2 == 1 ? 4 : 1});
  }
}

void SampleRecord::put_back() {
  const std::vector<int> off = way_stations();
  for (auto it = off.rbegin(); it != off.rend(); ++it) {
    const PutOn on{*it};
    write(on, "bench", live_answers_to(open()->state, on));
  }
  write(LabelPutBack{1, "S1"});
}

void SampleRecord::measure_stack() {
  double mm = 0;
  for (const Station& s : shaft_.stations())
    if (s.kind != StationKind::nut) mm += s.length.nominal.si() * 1e3;
  write(StackRead{length(mm), "L1"});
}

void SampleRecord::tighten() {
  for (const End end : {End::a, End::b})
    write(
        NutPulled{end, TorquePull::With::wrench, {any(foot_pounds(900)), {}, "900 ft·lb"}, "W1", {}, {}, {}, {}, 1.0});
}

void SampleRecord::do_all() {
  book_in();
  answer(Stage::booking_in);
  for (int r = 1; r <= 3; ++r) read_play(r);
  agree();
  take_off();
  answer(Stage::teardown);
  inspect();
  answer(Stage::inspection);
  answer(Stage::kit);
  lay_out();
  answer(Stage::press);
  press();
  read_marks();
  answer(Stage::stack);
  put_back();
  measure_stack();
  tighten();
  answer(Stage::test_run);
}

void SampleRecord::sign_all() {
  write(Signed{Role::bench}, "bench");
  write(Signed{Role::lead}, "lead");
  write(Signed{Role::owner}, "owner");
}

Entered SampleRecord::length(double mm) { return {any(millimetres(mm)), {}, std::to_string(mm) + " mm"}; }

Entered SampleRecord::temperature(double c) { return {any(celsius(c)), {}, std::to_string(c) + " °C"}; }

std::vector<int> SampleRecord::way_stations() const {
  std::vector<int> out;
  for (int s = 1; s <= station("1"); ++s) out.push_back(s);
  return out;
}

void SampleRecord::add_gauge(const char* id, Gauge::Use use, Kind kind, double u, double resolution) {
  Gauge g;
  g.id = id;
  g.use = use;
  g.kind = kind;
  g.calibration_expanded_si = u;
  g.resolution_si = resolution;
  g.repeatability_si = resolution;
  g.repeatability_readings = 20;
  g.calibrated_until = {2030, 1, 1};
  workshop_.gauges.push_back(g);
}

}  // namespace flatwise::job
