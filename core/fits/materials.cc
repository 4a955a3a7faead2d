#include "core/fits/materials.h"

#include <algorithm>
#include <array>

namespace flatwise::fits {
namespace {

constexpr std::array<Metal, 5> kMetals{{
    {"steel",
     "S355J2, EN 10025-2, 16 to 40 mm",
     {gigapascals(210), 0.3},
     megapascals(345),
     megapascals(470),
     12e-6,
     "EN10025-2"},
    {"bearing steel",
     "100Cr6, ISO 683-17, hardened to 62 HRC",
     {gigapascals(207), 0.3},
     megapascals(1900),
     megapascals(2300),
     11.5e-6,
     "BearingSteel"},
    {"grey iron",
     "EN-GJL-250, EN 1561, walls of 20 to 40 mm",
     {gigapascals(110), 0.26},
     std::nullopt,
     megapascals(195),
     10e-6,
     "EN1561"},
    {"ductile iron",
     "EN-GJS-500-7, EN 1563, to 30 mm",
     {gigapascals(169), 0.275},
     megapascals(320),
     megapascals(500),
     12.5e-6,
     "EN1563"},
    {"aluminium",
     "EN AW-6082 T6, EN 755-2, bars of 20 to 150 mm",
     {gigapascals(70), 0.33},
     megapascals(260),
     megapascals(310),
     23.4e-6,
     "EN755-2"},
}};

}  // namespace

std::span<const Metal> metals() { return kMetals; }

const Metal* find_metal(std::string_view name) {
  const auto it = std::ranges::find(kMetals, name, &Metal::name);
  return it == kMetals.end() ? nullptr : &*it;
}

}  // namespace flatwise::fits
