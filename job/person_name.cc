#include "job/person_name.h"

namespace flatwise::job {
namespace {

char32_t small(char32_t c) {
  if (c >= U'A' && c <= U'Z') return c + 32;
  if (c >= 0xC0 && c <= 0xDE && c != 0xD7) return c + 32;
  // Pairs of Latin Extended-A: a capital stands before its small letter, at an even or at an odd place.
  const bool odd_first = (c >= 0x139 && c <= 0x148) || (c >= 0x179 && c <= 0x17E);
  if (odd_first) return c % 2 == 1 ? c + 1 : c;
  if (c == 0x178) return 0xFF;
  if (c >= 0x100 && c <= 0x177 && c != 0x130 && c != 0x131 && c != 0x138 && c != 0x149) return c | 1U;
  if (c >= 0x391 && c <= 0x3A9) return c + 32;
  if (c >= 0x410 && c <= 0x42F) return c + 32;
  if (c >= 0x400 && c <= 0x40F) return c + 80;
  return c;
}

/// Of two bytes; longer ones have no small letter here.
void add_pair(std::string& out, unsigned char first, unsigned char second) {
  const char32_t c = small(static_cast<char32_t>((first & 0x1FU) << 6U | (second & 0x3FU)));
  out += static_cast<char>(0xC0U | c >> 6U);
  out += static_cast<char>(0x80U | (c & 0x3FU));
}

bool is_space(char c) { return c == ' ' || (c >= '\t' && c <= '\r'); }

}  // namespace

std::string folded_name(std::string_view name) {
  std::string out;
  bool gap = false;
  for (std::size_t i = 0; i < name.size(); ++i) {
    const auto byte = static_cast<unsigned char>(name[i]);
    const auto next = i + 1 < name.size() ? static_cast<unsigned char>(name[i + 1]) : 0U;
    const bool pair = byte >= 0xC2 && byte <= 0xDF && (next & 0xC0U) == 0x80;
    if (is_space(name[i]) || (byte == 0xC2 && next == 0xA0)) {  // U+00A0: a space that does not break.
      gap = !out.empty();
      i += pair ? 1 : 0;
      continue;
    }
    if (gap) out += ' ';
    gap = false;
    if (pair)
      add_pair(out, byte, static_cast<unsigned char>(next)), ++i;
    else
      out += static_cast<char>(byte < 0x80 ? small(byte) : byte);
  }
  return out;
}

}  // namespace flatwise::job
