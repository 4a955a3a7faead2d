// type_setter.h: pango behind a small door: one line of text, measured or drawn. Inside paper/ only.
#pragma once

#include <pango/pangocairo.h>

#include <memory>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise::paper {

struct Unref {
  void operator()(gpointer object) const { g_object_unref(object); }
};
template <class T>
using Held = std::unique_ptr<T, Unref>;

class TypeSetter {
 public:
  TypeSetter();
  /// A line at `size` mm in a context where a unit is a millimetre.
  [[nodiscard]] Held<PangoLayout> layout(std::string_view text, double size, bool bold) const;
  [[nodiscard]] double width(std::string_view text, double size, bool bold) const;
  /// Base line below the layout's top, mm.
  [[nodiscard]] static double ascent(PangoLayout* layout);
  /// Valid UTF-8. To be asked before anything is laid out.
  [[nodiscard]] static bool is_text(std::string_view text);
  /// Every character stands in one of our two fonts; else the first that does not.
  [[nodiscard]] Result<bool> check(PangoLayout* layout, std::string_view text) const;

 private:
  Held<PangoFontMap> fonts_;
  Held<PangoContext> context_;
};

}  // namespace flatwise::paper
