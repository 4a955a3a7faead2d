#include "job/step_key.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace flatwise::job {
namespace {

struct Named {
  std::string_view step;
  Word word;
};

// Every step that core/teardown can plan, in the order of the work.
const auto& names() {
  static const std::array kNames = std::to_array<Named>({
      {"read_marks", Word{"step.read_marks"}},
      {"guard_off", Word{"step.guard_off"}},
      {"belts_off", Word{"step.belts_off"}},
      {"stand_under", Word{"step.stand_under"}},
      {"look_at_nut", Word{"step.look_at_nut"}},
      {"crack_nut", Word{"step.crack_nut"}},
      {"slacken_nut", Word{"step.crack_nut"}},
      {"lift_out", Word{"step.lift_out"}},
      {"lift_out_plain", Word{"step.lift_out"}},
      {"spin_off_nut", Word{"step.spin_off_nut"}},
      {"spin_off_nut_and_washer", Word{"step.spin_off_nut_and_washer"}},
      {"draw", Word{"step.draw"}},
      {"take_off", Word{"step.take_off"}},
      {"slide_off_spacer", Word{"step.slide_off"}},
      {"draw_rotor", Word{"step.draw"}},
      {"slide_spacer_draw_rotor", Word{"step.slide_off_and_draw"}},
      {"stop_row", Word{"step.stop"}},
      {"stop_rotors", Word{"step.stop"}},
      {"stop_bare", Word{"step.stop_bare"}},
      {"tie_back", Word{"step.tie_back"}},
      {"tie_back_with", Word{"step.tie_back"}},
      {"clean_and_lay_out", Word{"step.clean_and_lay_out"}},
      {"count", Word{"step.count"}},
      {"photograph", Word{"step.photograph"}},
      {"enter_what_was_found", Word{"step.enter_what_was_found"}},
      {"lay_out_again", Word{"step.lay_out_again"}},
      {"strap_off", Word{"step.strap_off"}},
      {"fit_before", Word{"step.fit_before"}},
      {"put_on", Word{"step.put_on"}},
      {"slide_on_spacer", Word{"step.slide_on"}},
      {"put_rotor_on", Word{"step.put_on"}},
      {"read_marks_again", Word{"step.read_marks_again"}},
      {"run_up_nut", Word{"step.run_up_nut"}},
      {"nothing_left", Word{"step.nothing_left"}},
      {"lift_in", Word{"step.lift_in"}},
      {"lift_in_plain", Word{"step.lift_in"}},
      {"stands_away", Word{"step.stands_away"}},
      {"belts_on", Word{"step.belts_on"}},
      {"guard_on", Word{"step.guard_on"}},
  });
  return kNames;
}

constexpr std::string_view kPrefix = "teardown.";

/// The whole number at the head of what is left, which it takes off.
std::optional<int> take_number(std::string_view& left) {
  int number = 0;
  const auto [end, fault] = std::from_chars(left.data(), left.data() + left.size(), number);
  if (fault != std::errc{} || number < 1) return std::nullopt;
  left.remove_prefix(static_cast<std::size_t>(end - left.data()));
  return number;
}

}  // namespace

std::optional<StepKey> read_step_key(std::string_view key) {
  if (!key.starts_with(kPrefix)) return std::nullopt;
  key.remove_prefix(kPrefix.size());
  const std::string_view name = key.substr(0, key.find_first_of("/#"));
  const auto it = std::ranges::find(names(), name, &Named::step);
  if (it == names().end()) return std::nullopt;
  StepKey out{it->word, {}, 1};
  key.remove_prefix(name.size());
  while (!key.empty()) {
    const char mark = key.front();
    key.remove_prefix(1);
    const std::optional<int> number = take_number(key);
    if (!number || (mark != '/' && mark != '-' && mark != '#')) return std::nullopt;
    if (mark == '#')
      out.times = *number;
    else
      out.stations.push_back(*number);
  }
  return out;
}

}  // namespace flatwise::job
