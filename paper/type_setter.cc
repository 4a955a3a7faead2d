#include "paper/type_setter.h"

#include <array>
#include <optional>
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

std::string character_at(std::string_view text, std::size_t at) {
  std::size_t end = at + 1;
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
  return std::string{text.substr(at, end - at)};
}

Problem missing(std::string_view text, std::size_t at) {
  return Problem{Code{"paper.glyph_missing"}, "text", std::string{text}, {{"character", character_at(text, at)}}, {}};
}

// Where in the text the first character without a glyph of ours stands, in this run.
std::optional<std::size_t> first_missing(const PangoGlyphItem& run) {
  for (int i = 0; i < run.glyphs->num_glyphs; ++i)
    if ((run.glyphs->glyphs[i].glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0)
      return static_cast<std::size_t>(run.item->offset + run.glyphs->log_clusters[i]);
  if (!ours(run.item->analysis.font)) return static_cast<std::size_t>(run.item->offset);
  return std::nullopt;
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

Held<PangoLayout> TypeSetter::layout(std::string_view text, double size, bool bold) const {
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
  return g_utf8_validate(text.data(), static_cast<gssize>(text.size()), nullptr) == TRUE;
}

Result<bool> TypeSetter::check(PangoLayout* layout, std::string_view text) const {
  for (GSList* at = pango_layout_get_lines_readonly(layout); at != nullptr; at = at->next) {
    const auto* line = static_cast<PangoLayoutLine*>(at->data);
    for (GSList* run = line->runs; run != nullptr; run = run->next)
      if (const auto place = first_missing(*static_cast<PangoGlyphItem*>(run->data)))
        return tl::unexpected{missing(text, *place)};
  }
  return true;
}

Result<std::unique_ptr<TextMeasure>> make_measure() {
  auto measure = std::make_unique<FontMeasure>();
  const TypeSetter setter;
  if (auto ok = setter.check(setter.layout("0", 4, false).get(), "0"); !ok)
    return tl::unexpected{Problem{Code{"paper.font_missing"}, "font", kFamilies, {}, {}}};
  return measure;
}

}  // namespace flatwise::paper
