#include "core/figures/catalogue.h"

#include <algorithm>
#include <array>

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

std::span<const FigureSection> figure_sections() {
  static const std::array<FigureSection, 9> kSections{{{"teardown", teardown::figures()},
                                                       {"metrology", metrology::figures()},
                                                       {"fits", fits::figures()},
                                                       {"bearings", bearings::figures()},
                                                       {"timing", timing::figures()},
                                                       {"dynamics", dynamics::figures()},
                                                       {"beam", beam::figures()},
                                                       {"stack", stack::figures()},
                                                       {"fasteners", fasteners::figures()}}};
  return kSections;
}

std::string_view section_of(const FigureSpec& figure) {
  const auto it = std::ranges::find_if(figure_sections(), [&](const FigureSection& section) {
    return std::ranges::any_of(section.figures, [&](const FigureSpec& f) { return &f == &figure; });
  });
  CORE_CHECK(it != figure_sections().end());
  return it->name;
}

std::span<const FigureSpec* const> catalogue() {
  static const std::vector<const FigureSpec*> kAll = [] {
    std::vector<const FigureSpec*> all;
    for (const FigureSection& section : figure_sections())
      for (const FigureSpec& figure : section.figures) all.push_back(&figure);
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
