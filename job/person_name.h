// person_name.h: when two names are one: on a key of the page and behind --by nobody tells them apart by their letters' size.
#pragma once

#include <string>
#include <string_view>

namespace flatwise::job {

/// A name as it is compared: small letters (Latin, Greek, Cyrillic), one space between words, none at the ends. Empty: no name.
///
/// Source     Unicode Character Database, simple lower case of U+0041..U+024F without Latin Extended-B, U+0391..U+03A9 and
///            U+0400..U+042F. Letters of other scripts stay as they are.
/// Refuses    Nothing: what is no UTF-8 stays byte for byte.
[[nodiscard]] std::string folded_name(std::string_view name);

}  // namespace flatwise::job
