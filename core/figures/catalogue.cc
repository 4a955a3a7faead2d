#include "core/figures/catalogue.h"

#include <algorithm>

#include "core/beam/figures.h"
#include "core/bearings/figures.h"
#include "core/dynamics/figures.h"
#include "core/fasteners/figures.h"
#include "core/fits/figures.h"
#include "core/metrology/figures.h"
#include "core/stack/figures.h"
#include "core/teardown/figures.h"
#include "core/timing/figures.h"
#include "core/units/near.h"

namespace flatwise {

std::span<const FigureSpec* const> catalogue() {
  static const std::vector<const FigureSpec*> kAll = [] {
    std::vector<const FigureSpec*> all;
    for (const auto& folder :
         {teardown::figures(), metrology::figures(), fits::figures(), bearings::figures(), timing::figures(),
          dynamics::figures(), beam::figures(), stack::figures(), fasteners::figures()})
      for (const FigureSpec& figure : folder) all.push_back(&figure);
    return all;
  }();
  return kAll;
}

const FigureSpec* find_figure(std::string_view name) {
  const auto it = std::ranges::find_if(catalogue(), [&](const FigureSpec* f) { return f->name == name; });
  return it == catalogue().end() ? nullptr : *it;
}

std::string_view nearest_figure(std::string_view name) {
  std::vector<std::string_view> names;
  for (const FigureSpec* f : catalogue()) names.push_back(f->name);
  return nearest(name, names);
}

}  // namespace flatwise
