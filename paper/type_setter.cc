#include "paper/type_setter.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <set>
#include <string>
#include <unordered_map>

#include "paper/render.h"

namespace flatwise::paper {
namespace {

constexpr const char* kFamilies = "B612, DejaVu Sans";

// Pango works in whole 1/1024 of its unit, the font in 1/64: a unit of 1/16 mm keeps both under a micrometre a letter.
constexpr double kFine = 16.0;

bool ours(PangoFont* font) {
  const std::unique_ptr<PangoFontDescription, decltype(&pango_font_description_free)> described{
      pango_font_describe(font), &pango_font_description_free};
  const std::string_view family = pango_font_description_get_family(described.get());
  return family == "B612" || family == "DejaVu Sans";
}

using Characters = std::set<gunichar>;

// The characters of a run that our fonts lack. Where another font was taken it took what ours have too: a digit before a
// combining sign, say. So first only what is beyond ASCII is named, and the rest is looked at again.
void add_missing(const PangoGlyphItem& run, std::string_view text, Characters& missing) {
  for (int i = 0; i < run.glyphs->num_glyphs; ++i)
    if (const PangoGlyph glyph = run.glyphs->glyphs[i].glyph; (glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0)
      missing.insert(glyph & ~static_cast<PangoGlyph>(PANGO_GLYPH_UNKNOWN_FLAG));
  if (ours(run.item->analysis.font)) return;
  const std::string_view words =
      text.substr(static_cast<std::size_t>(run.item->offset), static_cast<std::size_t>(run.item->length));
  const bool ascii = std::ranges::all_of(words, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
  for (const char* at = words.data(); at < words.data() + words.size(); at = g_utf8_next_char(at))
    if (const gunichar character = g_utf8_get_char(at); ascii || character >= 0x80) missing.insert(character);
}

Characters missing_in(PangoLayout* layout, std::string_view text) {
  Characters missing;
  for (GSList* at = pango_layout_get_lines_readonly(layout); at != nullptr; at = at->next)
    for (GSList* run = static_cast<PangoLayoutLine*>(at->data)->runs; run != nullptr; run = run->next)
      add_missing(*static_cast<PangoGlyphItem*>(run->data), text, missing);
  return missing;
}

// Nobody sees them, and some of them turn round what stands beside them.
bool unseen(gunichar character) {
  const GUnicodeType type = g_unichar_type(character);
  return type == G_UNICODE_CONTROL || type == G_UNICODE_FORMAT;
}

template <class Wanted>
std::string with_codes(std::string_view text, const Wanted& as_code) {
  std::string out;
  const char* const end = text.data() + text.size();
  for (const char* at = text.data(); at < end;) {
    const gunichar character = g_utf8_get_char(at);
    const char* const next = g_utf8_next_char(at);
    if (as_code(character)) {
      std::array<char, 16> code{};
      std::snprintf(code.data(), code.size(), "[U+%04X]", static_cast<unsigned>(character));
      out += code.data();
    } else {
      out.append(at, next);
    }
    at = next;
  }
  return out;
}

// Layout asks for the same words again and again. Without hinting a width is proportional to the size, so one
// measurement a text is enough.
class FontMeasure final : public TextMeasure {
 public:
  [[nodiscard]] double width(std::string_view text, double size, bool bold) const override {
    auto& known = known_[bold ? 1 : 0];
    const auto found = known.find(std::string{text});
    if (found != known.end()) return found->second * size / kMeasuredAt;
    const double wide = setter_.width(text, kMeasuredAt, bold);
    known.emplace(text, wide);
    return wide * size / kMeasuredAt;
  }

 private:
  static constexpr double kMeasuredAt = 10;
  TypeSetter setter_;
  mutable std::array<std::unordered_map<std::string, double>, 2> known_;
};

}  // namespace

TypeSetter::TypeSetter() : fonts_{pango_cairo_font_map_new()}, context_{pango_font_map_create_context(fonts_.get())} {
  const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> options{
      cairo_font_options_create(), &cairo_font_options_destroy};
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context_.get(), options.get());
  pango_cairo_context_set_resolution(context_.get(), 72);
  pango_context_set_round_glyph_positions(context_.get(), FALSE);
  pango_context_set_base_dir(context_.get(), PANGO_DIRECTION_LTR);
  pango_context_set_language(context_.get(), pango_language_from_string("en"));  // Never the machine's locale.
}

std::string TypeSetter::printable(std::string_view text) const {
  std::string line = with_codes(in_one_line(text), unseen);
  if (std::ranges::all_of(line, [](char c) { return c >= ' ' && c <= '~'; })) return line;
  // Each time round at least one kind of character leaves the line, so it ends; once is enough for nearly all.
  for (;;) {
    const Characters missing = missing_in(as_it_is(line, 4, false).get(), line);
    const auto lacks = [&](gunichar character) { return missing.contains(character); };
    std::string next = with_codes(line, lacks);
    if (next == line) return line;
    line = std::move(next);
  }
}

Held<PangoLayout> TypeSetter::layout(std::string_view text, double size, bool bold) const {
  return as_it_is(printable(text), size, bold);
}

Held<PangoLayout> TypeSetter::as_it_is(std::string_view text, double size, bool bold) const {
  Held<PangoLayout> layout{pango_layout_new(context_.get())};
  const std::unique_ptr<PangoFontDescription, decltype(&pango_font_description_free)> font{
      pango_font_description_new(), &pango_font_description_free};
  pango_font_description_set_family_static(font.get(), kFamilies);
  pango_font_description_set_weight(font.get(), bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(font.get(), size * kFine * PANGO_SCALE);
  pango_layout_set_font_description(layout.get(), font.get());
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
  return layout;
}

double TypeSetter::width(std::string_view text, double size, bool bold) const {
  int width = 0;
  pango_layout_get_size(layout(text, size, bold).get(), &width, nullptr);
  return static_cast<double>(width) / PANGO_SCALE / kFine;
}

double TypeSetter::ascent(PangoLayout* layout) {
  return static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE / kFine;
}

bool TypeSetter::is_text(std::string_view text) {
  // The check ends at a zero, which is a character like others.
  for (;;) {
    const std::string_view piece = text.substr(0, text.find('\0'));
    if (g_utf8_validate(piece.data(), static_cast<gssize>(piece.size()), nullptr) != TRUE) return false;
    if (piece.size() == text.size()) return true;
    text.remove_prefix(piece.size() + 1);
  }
}

Result<std::unique_ptr<TextMeasure>> make_measure() {
  auto measure = std::make_unique<FontMeasure>();
  if (!in_our_fonts("0[U+↵]")) return tl::unexpected{Problem{Code{"paper.font_missing"}, "font", kFamilies, {}, {}}};
  return measure;
}

bool in_our_fonts(std::string_view text) { return TypeSetter::is_text(text) && TypeSetter{}.printable(text) == text; }

}  // namespace flatwise::paper
