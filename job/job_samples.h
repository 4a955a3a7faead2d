// job_samples.h: a record written entry by entry, for tests: the invented sample shaft with three rotors, and the answers of a job
// in order. Not part of the library.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/shaft/shaft_samples.h"
#include "job/job_state.h"

namespace flatwise::job {

class SampleRecord {
 public:
  explicit SampleRecord(SampleShaft sample = {.rotors = 3});

  /// Stores an entry and gives its id.
  Id write(EntryBody body, Id by = "bench", std::vector<Id> corrects = {});
  /// One that comes late: its author had seen the record up to `follows`.
  Id write_late(const Id& follows, EntryBody body, Id by = "bench", std::vector<Id> corrects = {});
  /// What the next entries are written on; "tablet" at first.
  void on(std::string device) { device_ = std::move(device); }
  /// Ids of the live answers to the question of `body`.
  [[nodiscard]] std::vector<Id> live(const EntryBody& body) const;
  [[nodiscard]] std::unique_ptr<OpenJob> open() const;
  [[nodiscard]] const Shaft& shaft() const { return shaft_; }
  [[nodiscard]] Workshop& workshop() { return workshop_; }
  [[nodiscard]] int station(std::string_view label) const;

  // --- a job in order, stage by stage; rotor 1 comes off at end A ---
  void book_in();
  void answer(Stage stage);
  void read_play(int rotor, double mm = 0.6);
  void agree();
  void take_off();
  void inspect();
  void lay_out();
  void press(double newton = 4000);
  /// Facing: rotor 2 stayed and sets the reference.
  void read_marks();
  void put_back();
  void measure_stack();
  void tighten();
  /// Everything up to the test run; the record then lacks the signatures only.
  void do_all();
  void sign_all();

 private:
  static Entered length(double mm);
  static Entered temperature(double c);
  [[nodiscard]] std::vector<int> way_stations() const;
  void add_gauge(const char* id, Gauge::Use use, Kind kind, double u, double resolution);

  Shaft shaft_;
  Workshop workshop_;
  std::vector<Entry> entries_;
  std::string device_ = "tablet";
};

}  // namespace flatwise::job
