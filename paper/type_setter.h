// type_setter.h: pango behind a small door: one line of text, measured or drawn. Inside paper/ only.
#pragma once

#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <string_view>

namespace flatwise::paper {

struct Unref {
  void operator()(gpointer object) const { g_object_unref(object); }
};
template <class T>
using Held = std::unique_ptr<T, Unref>;

class TypeSetter {
 public:
  TypeSetter();
  /// One line that our two fonts can set, whatever somebody typed: a line end is a sign, a tab a space, and a character that they
  /// lack, or that would be unseen or turn the line round, stands as its code, "[U+1F642]". For valid UTF-8.
  [[nodiscard]] std::string printable(std::string_view text) const;
  /// What is printable of the text, at `size` mm in a context where a unit is a millimetre.
  [[nodiscard]] Held<PangoLayout> layout(std::string_view text, double size, bool bold) const;
  [[nodiscard]] double width(std::string_view text, double size, bool bold) const;
  /// Base line below the layout's top, mm.
  [[nodiscard]] static double ascent(PangoLayout* layout);
  /// Valid UTF-8. To be asked before anything is laid out.
  [[nodiscard]] static bool is_text(std::string_view text);

 private:
  [[nodiscard]] Held<PangoLayout> as_it_is(std::string_view text, double size, bool bold) const;
  Held<PangoFontMap> fonts_;
  Held<PangoContext> context_;
};

}  // namespace flatwise::paper
