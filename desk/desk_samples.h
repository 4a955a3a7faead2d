// desk_samples.h: the demo's store in a folder of its own, for the tests here.
#pragma once

#include <fstream>
#include <memory>

#include "desk/demo.h"
#include "store/sqlite/test_place.h"

namespace flatwise::desk {

inline DemoTexts demo_texts() {
  DemoTexts texts;
  for (const std::string_view name : demo_files()) {
    std::ifstream in{std::string{FLATWISE_SOURCE_DIR "/demo/"} + std::string{name}, std::ios::binary};
    texts[std::string{name}] = {std::istreambuf_iterator<char>{in}, {}};
  }
  return texts;
}

/// What was not done, as text.
inline std::string told(const Refusal& refusal) {
  std::string out = refusal.fault ? "fault " + refusal.fault->detail : "";
  for (const Problem& p : refusal.problems) out += std::string{p.code.id()} + " " + p.field + " <" + p.given + ">; ";
  return out;
}

}  // namespace flatwise::desk
