// render.h: display lists to PDF, SVG and PNG, black on white. The only file that knows fonts.
//
//   auto measure = make_measure();
//   auto pdf = render_pdf(pages, {.paper = Paper::a4, .title = "Timing map", .created = "2026-11-25T10:00:00Z"});
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "core/units/problem.h"
#include "drawing/display_list.h"
#include "paper/text_measure.h"

namespace flatwise::paper {

struct Document {
  std::string title;
  std::string created;  ///< ISO 8601 with zone, given by the caller: the same pages give the same bytes.
};

/// Measures with the fonts that render_* sets: B612, and DejaVu Sans for what B612 has not. One thread at a time.
[[nodiscard]] Result<std::unique_ptr<TextMeasure>> make_measure();

/// Whether every character is set as itself. What somebody typed need not be: a character that neither font has is printed as its
/// code, "[U+1F642]". Words of our own must be; tests hold them to it.
[[nodiscard]] bool in_our_fonts(std::string_view text);

/// Pages of any size (each list's width and height in mm) to one PDF.
///
/// Model      Black only: solid, ink and every colour are black, tone is white. Text is set in B612, hatches are lines.
/// Returns    The file's bytes; equal pages, title and creation time give equal bytes.
/// Refuses    A text that is not UTF-8, an empty document, a code too long for its kind, a page over 2 m.
[[nodiscard]] Result<std::string> render_pdf(std::span<const drawing::DisplayList> pages, const Document& document);
/// One page to SVG; text as outlines, so that it needs no font where it is shown.
[[nodiscard]] Result<std::string> render_svg(const drawing::DisplayList& page);
/// One page to PNG at a resolution of 20 to 600 dots an inch.
[[nodiscard]] Result<std::string> render_png(const drawing::DisplayList& page, double dots_per_inch);

/// A QR code's dark modules joined into rectangles, in modules from its upper left corner.
struct ModuleBox {
  int x = 0, y = 0, width = 0, height = 0;
};
struct CodeModules {
  int side = 0;  ///< Without the quiet zone.
  std::vector<ModuleBox> dark;
};
/// QR code (ISO/IEC 18004), error correction M, byte mode.
[[nodiscard]] Result<CodeModules> code_modules(const std::string& text);
inline constexpr int kQuietModules = 4;  ///< Clear all round, ISO/IEC 18004.

/// Writes beside the file and renames over it: the file is there whole or as it was.
[[nodiscard]] Result<std::size_t> write_file_atomically(const std::string& path, std::string_view bytes);

}  // namespace flatwise::paper
