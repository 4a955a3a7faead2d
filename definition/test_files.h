// test_files.h: the good files of tests/data/definition. For the tests of this folder.
#pragma once

#include <fstream>
#include <iterator>
#include <string>

#include "definition/read.h"

namespace flatwise::definition {

inline std::string good_file(const std::string& name) {
  std::ifstream in{std::string{FLATWISE_SOURCE_DIR "/tests/data/definition/"} + name, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}
inline Shaft good_shaft() { return read_shaft(good_file("nine.toml"), "nine.toml").value(); }
inline Workshop good_workshop() { return read_workshop(good_file("workshop.toml"), "workshop.toml").value(); }

/// All problems as text, for messages.
inline std::string told(const std::vector<Problem>& problems) {
  std::string out;
  for (const Problem& p : problems) {
    const Place at = p.place.value_or(Place{});
    out += std::to_string(at.line) + ":" + std::to_string(at.column) + " " + std::string{p.code.id()} + " " + p.field +
           " <" + p.given + ">\n";
  }
  return out;
}

}  // namespace flatwise::definition
