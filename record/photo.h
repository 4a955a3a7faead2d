// photo.h: what photos the record takes.
#pragma once

#include <string_view>

namespace flatwise::record {

/// "image/jpeg", "image/png" or "image/webp" by the first bytes; empty: no photo that we take.
///
/// Source     ISO/IEC 10918-1 (SOI and a marker), PNG third edition section 5.2, RFC 9649 section 2.3.
[[nodiscard]] std::string_view photo_type(std::string_view bytes);

}  // namespace flatwise::record
