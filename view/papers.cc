#include "view/papers.h"

#include <array>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "view/blocks.h"

namespace flatwise::view {
namespace {

using job::Stage;
constexpr std::string_view kMap = "timing-map", kHandOver = "hand-over";

}  // namespace

std::span<const std::string_view> papers_of(Stage stage) {
  static constexpr std::array<std::string_view, 3> kPlan{"quote", "kit", "tear-down"};
  static constexpr std::array<std::string_view, 3> kTearDown{"tear-down", "labels", kMap};
  static constexpr std::array<std::string_view, 1> kInspection{"bench"};
  static constexpr std::array<std::string_view, 2> kKit{"kit", "labels"};
  static constexpr std::array<std::string_view, 1> kTiming{kMap};
  static constexpr std::array<std::string_view, 2> kStack{"assembly", kMap};
  static constexpr std::array<std::string_view, 1> kTorque{"assembly"};
  static constexpr std::array<std::string_view, 9> kRelease{kHandOver,   "bench",  kMap,       "kit",  "assembly",
                                                            "tear-down", "labels", "workings", "quote"};
  switch (stage) {
    case Stage::plan:
      return kPlan;
    case Stage::teardown:
      return kTearDown;
    case Stage::inspection:
      return kInspection;
    case Stage::kit:
      return kKit;
    case Stage::timing:
      return kTiming;
    case Stage::stack:
      return kStack;
    case Stage::torque:
      return kTorque;
    case Stage::release:
      return kRelease;
    default:
      return {};
  }
}

Json papers_block(const Subject& subject, const Screen& screen, Stage stage) {
  const bool rotors = !job::rotors_opened(subject.job.state).empty();
  std::vector<Json> keys;
  for (const std::string_view name : papers_of(stage)) {
    if (!rotors && name != kMap && name != kHandOver) continue;
    const std::string title = word("sheet." + std::string{name}, screen.voice);
    keys.push_back(action(tell(screen, Code{"bench.paper.print"}, {{"sheet", title}}),
                          do_open("/api/jobs/" + subject.row.id + "/sheets/" + std::string{name})));
  }
  return keys.empty() ? Json() : actions_block(std::move(keys));
}

}  // namespace flatwise::view
