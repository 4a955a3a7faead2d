// list_samples.h: what the tests of drawings ask of a display list.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "drawing/display_list.h"

namespace flatwise::drawing {

inline constexpr double kTight = 1e-9;  ///< mm; 1e-11 of a drawing, some hundred roundings.

/// All items of one kind, those of an id, or all.
template <class Kind>
std::vector<Kind> items_of(const DisplayList& list) {
  std::vector<Kind> out;
  for (const Item& item : list.items)
    if (const auto* one = std::get_if<Kind>(&item)) out.push_back(*one);
  return out;
}
template <class Kind>
std::vector<Kind> items_of(const DisplayList& list, const std::string& id) {
  std::vector<Kind> out = items_of<Kind>(list);
  std::erase_if(out, [&](const Kind& one) { return one.id != id; });
  return out;
}
inline std::vector<Path> paths(const DisplayList& list, const std::string& id) { return items_of<Path>(list, id); }

/// Whether corners, middles of arcs and words all stand on the sheet.
inline bool inside(const DisplayList& list) {
  const auto in = [&](Point p) {
    return p.x >= -kTight && p.x <= list.width + kTight && p.y >= -kTight && p.y <= list.height + kTight;
  };
  return std::ranges::all_of(list.items, [&](const Item& item) {
    if (const auto* path = std::get_if<Path>(&item)) return std::ranges::all_of(path->points, in);
    if (const auto* arc = std::get_if<Arc>(&item)) return in(arc->centre);
    const auto* text = std::get_if<Text>(&item);
    return text == nullptr || in(text->at);
  });
}

}  // namespace flatwise::drawing
