// dictionary.h: what the dictionary compiler writes, one function a language; and the filling of one template, apart
// from any dictionary, for tests. Internal to words/.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "words/words.h"

namespace flatwise::words {

struct Entry {
  std::string_view code;
  std::string_view text;
};

/// Sorted by code. Made at build time from words/en/*.toml.
[[nodiscard]] std::span<const Entry> english();

/// A template with its gaps filled. CORE_CHECKs that every argument is there.
[[nodiscard]] std::string fill(std::string_view text, const Args& args, const Voice& voice);

}  // namespace flatwise::words
