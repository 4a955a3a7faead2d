// questions.h: the 'before you go on' questions of a job. What is not answered blocks: a thing left out is the commonest
// mistake of all.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/shaft/shaft.h"
#include "job/bench.h"

namespace flatwise::job {

/// The stages of the bench, in order.
enum class Stage {
  booking_in,
  finding,
  plan,
  teardown,
  inspection,
  kit,
  press,
  timing,
  stack,
  torque,
  test_run,
  release
};
inline constexpr int kStageCount = static_cast<int>(Stage::release) + 1;
[[nodiscard]] std::string_view stage_name(Stage stage);  ///< "booking_in"; its word is "stage.booking_in".

/// What a question is asked of: once, or once for each ...
enum class AskedOf { shaft, rotor_that_came_off, captive_station, nut };

struct Question {
  std::string_view
      id;  ///< As in a readings file; words: "question.<id>" (asked) and "question.<id>.no" (what no means).
  Stage stage;
  AskedOf of;
  bool only_led =
      false;  ///< Asked only where the record leads the job (Bench::led); a readings file need not answer it.
};
/// All questions there are, in the order of the bench.
[[nodiscard]] std::span<const Question> questions();
[[nodiscard]] std::vector<std::string_view> question_ids();

/// One question with what it is asked about in this job: number of the rotor, of the nut (1 = end A, 2 = end B) or of the
/// station (its index + 1); 0 for the shaft.
struct Asked {
  const Question* question = nullptr;
  int number = 0;
};
/// A hand can be hurt by what it asks: nothing of its stage goes before it.
[[nodiscard]] bool is_safety(std::string_view question);
/// Every question this job must answer.
[[nodiscard]] std::vector<Asked> asked(const Shaft& shaft, const Bench& bench);

}  // namespace flatwise::job
