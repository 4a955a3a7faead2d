#include "core/working/place_of.h"

#include <charconv>

namespace flatwise {

std::optional<Place> place_of(const Origin& origin) {
  const std::size_t colon = origin.where.rfind(':');
  if (origin.kind != OriginKind::given || colon == std::string::npos) return std::nullopt;
  int line = 0;
  const char* const end = origin.where.data() + origin.where.size();
  const auto read = std::from_chars(origin.where.data() + colon + 1, end, line);
  if (read.ptr != end || line < 1) return std::nullopt;
  return Place{origin.where.substr(0, colon), line, 0, {}};
}

}  // namespace flatwise
