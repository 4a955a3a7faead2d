// dictionary.h: what the dictionary compiler writes, one function a language. Internal to words/.
#pragma once

#include <span>
#include <string_view>

namespace flatwise::words {

struct Entry {
  std::string_view code;
  std::string_view text;
};

/// Sorted by code. Made at build time from words/en/*.toml.
[[nodiscard]] std::span<const Entry> english();

}  // namespace flatwise::words
