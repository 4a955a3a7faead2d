#include "record/photo.h"

namespace flatwise::record {

std::string_view photo_type(std::string_view bytes) {
  if (bytes.starts_with("\xFF\xD8\xFF")) return "image/jpeg";
  if (bytes.starts_with(std::string_view{"\x89PNG\r\n\x1A\n", 8})) return "image/png";
  if (bytes.size() >= 12 && bytes.starts_with("RIFF") && bytes.substr(8, 4) == "WEBP") return "image/webp";
  return {};
}

}  // namespace flatwise::record
