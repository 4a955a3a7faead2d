// view_samples.h: the demo's long nine with entries written one by one, for tests of the screens. Not part of the library.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "definition/read.h"
#include "job/job_state.h"
#include "job/next.h"
#include "view/bench_view.h"

namespace flatwise::view {

std::string demo_file(const std::string& name);
/// "00000000-0000-7000-8000-<number>".
std::string sample_id(int number);
Entered typed(const std::string& text, Kind kind);

/// A job on a demo shaft, entry by entry; then what a screen is made from.
class SampleJob {
 public:
  explicit SampleJob(const std::string& shaft_toml = demo_file("long-nine.toml"));

  job::Id write(job::EntryBody body, int person = 1, std::vector<job::Id> corrects = {});
  void answer(job::Stage stage, Reply reply = Reply::yes);
  void play(int rotor, const std::string& swing);
  void marks(int rotor, int a, int b);
  /// Everything up to and with a rotor, from end A.
  void take_off(int rotor);

  /// Puts it together; the job must outlive what is made of it.
  const Subject& subject();
  [[nodiscard]] const Shaft& shaft() const { return shaft_; }

 private:
  Shaft shaft_;
  Workshop workshop_;
  std::vector<job::Entry> entries_;
  std::map<job::Id, std::string> people_;
  std::unique_ptr<job::OpenJob> job_;
  std::unique_ptr<job::Standing> standing_;
  job::JobRow row_;
  std::unique_ptr<Subject> subject_;
};

Screen screen_of(UnitSystem units);

}  // namespace flatwise::view
