#include "paper/render.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "paper/type_setter.h"

namespace flatwise::paper {
namespace {

using drawing::Arc;
using drawing::Code;
using drawing::DisplayList;
using drawing::Fill;
using drawing::Ink;
using drawing::Look;
using drawing::Path;
using drawing::Stroke;
using drawing::Text;

constexpr double kPointsInMm = 72.0 / 25.4;
constexpr double kFineUnit = 1.0 / 16.0;  // type_setter.cc: its unit in mm.

struct LineStyle {
  double width = 0;
  std::vector<double> dashes;
};

LineStyle style_of(Stroke stroke) {
  switch (stroke) {
    case Stroke::none:
      return {};
    case Stroke::narrow:
      return {0.25, {}};
    case Stroke::wide:
      return {0.5, {}};
    case Stroke::heavy:
      return {0.9, {}};
    case Stroke::hidden:
      return {0.25, {1.2, 0.7}};
    case Stroke::axis:
      return {0.2, {4, 0.8, 0.6, 0.8}};
    case Stroke::wanted:
      return {0.5, {2.6, 0.6, 0.5, 0.6}};
    case Stroke::part:
      return {0.25, {2.6, 0.6, 0.5, 0.6, 0.5, 0.6}};
  }
  return {};
}

struct Hatch {
  double degrees = 0, pitch = 0, width = 0;  // Degrees: of the lines, up from the horizontal.
};
Hatch hatch_of(Fill fill) {
  if (fill == Fill::cut) return {45, 1.7, 0.2};
  if (fill == Fill::cut_next) return {135, 1.7, 0.2};
  return {60, 1.3, 0.33};
}

struct Destroy {
  void operator()(cairo_t* c) const { cairo_destroy(c); }
  void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
};
using Surface = std::unique_ptr<cairo_surface_t, Destroy>;
using Context = std::unique_ptr<cairo_t, Destroy>;

cairo_status_t append_bytes(void* to, const unsigned char* data, unsigned length) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

class Painter {
 public:
  Painter(cairo_t* c, const TypeSetter& setter) : c_{c}, setter_{&setter} {}

  Result<bool> paint(const Path& path) {
    if (path.points.empty()) return true;
    trace(path);
    fill_and_stroke(path.look);
    return true;
  }
  Result<bool> paint(const Arc& arc) {
    constexpr double kTurn = std::numbers::pi / 180;
    cairo_new_path(c_);
    cairo_arc(c_, arc.centre.x, arc.centre.y, arc.radius, (arc.from - 90) * kTurn, (arc.to - 90) * kTurn);
    if (arc.to - arc.from >= 360) cairo_close_path(c_);
    fill_and_stroke(arc.look);
    return true;
  }
  Result<bool> paint(const Text& text);
  Result<bool> paint(const Code& code);

 private:
  void black(bool yes) { cairo_set_source_rgb(c_, yes ? 0 : 1, yes ? 0 : 1, yes ? 0 : 1); }
  void trace(const Path& path) {
    cairo_new_path(c_);
    for (const drawing::Point p : path.points) cairo_line_to(c_, p.x, p.y);
    if (path.closed) cairo_close_path(c_);
  }
  void fill_and_stroke(const Look& look);
  void hatch(const Hatch& hatch);
  void set_line(const Text& text, const std::string& line, double y);

  cairo_t* c_;
  const TypeSetter* setter_;
};

void Painter::fill_and_stroke(const Look& look) {
  switch (look.fill) {
    case Fill::none:
      break;
    case Fill::sheet:
    case Fill::tone:
      black(false);
      cairo_fill_preserve(c_);
      break;
    case Fill::solid:
    case Fill::ink:
    case Fill::next:
      black(true);
      cairo_fill_preserve(c_);
      break;
    case Fill::cut:
    case Fill::cut_next:
    case Fill::renew:
      hatch(hatch_of(look.fill));
      break;
  }
  if (look.stroke != Stroke::none) {
    const LineStyle style = style_of(look.stroke);
    black(look.ink != Ink::sheet);
    cairo_set_line_width(c_, style.width);
    cairo_set_dash(c_, style.dashes.data(), static_cast<int>(style.dashes.size()), 0);
    cairo_stroke_preserve(c_);
  }
  cairo_new_path(c_);
}

// Lines of a hatch over the bounds of the current path, clipped to it. They run through one origin for the whole page,
// so neighbouring pieces of one part join.
void Painter::hatch(const Hatch& hatch) {
  double x0 = 0;
  double y0 = 0;
  double x1 = 0;
  double y1 = 0;
  cairo_path_extents(c_, &x0, &y0, &x1, &y1);
  const std::unique_ptr<cairo_path_t, decltype(&cairo_path_destroy)> outline{cairo_copy_path(c_), &cairo_path_destroy};
  cairo_save(c_);
  cairo_clip(c_);
  const double turn = hatch.degrees * std::numbers::pi / 180;
  const double dx = std::cos(turn);
  const double dy = -std::sin(turn);
  const auto across = [&](double x, double y) { return -x * dy + y * dx; };
  const auto [least, greatest] = std::minmax({across(x0, y0), across(x1, y0), across(x0, y1), across(x1, y1)});
  const double reach = std::hypot(x1 - x0, y1 - y0);
  for (double k = std::ceil(least / hatch.pitch); k * hatch.pitch <= greatest; ++k) {
    const double offset = k * hatch.pitch;
    const double along = (x0 + x1) / 2 * dx + (y0 + y1) / 2 * dy;
    const double cx = -offset * dy + along * dx;
    const double cy = offset * dx + along * dy;
    cairo_move_to(c_, cx - reach * dx, cy - reach * dy);
    cairo_line_to(c_, cx + reach * dx, cy + reach * dy);
  }
  black(true);
  cairo_set_dash(c_, nullptr, 0, 0);
  cairo_set_line_width(c_, hatch.width);
  cairo_stroke(c_);
  cairo_restore(c_);
  cairo_append_path(c_, outline.get());
}

void Painter::set_line(const Text& text, const std::string& line, double y) {
  const auto layout = setter_->layout(line, text.size, text.bold);
  const double width = setter_->width(line, text.size, text.bold);
  const double shift =
      text.anchor == drawing::Anchor::start ? 0 : (text.anchor == drawing::Anchor::middle ? width / 2 : width);
  black(!text.on_solid);
  cairo_save(c_);
  cairo_translate(c_, text.at.x - shift, y - TypeSetter::ascent(layout.get()));
  cairo_scale(c_, kFineUnit, kFineUnit);
  cairo_move_to(c_, 0, 0);
  pango_cairo_show_layout(c_, layout.get());
  cairo_restore(c_);
  cairo_new_path(c_);
}

Result<bool> Painter::paint(const Text& text) {
  struct Through final : TextMeasure {
    const TypeSetter* setter = nullptr;
    [[nodiscard]] double width(std::string_view words, double size, bool bold) const override {
      return setter->width(words, size, bold);
    }
  } measure;
  measure.setter = setter_;
  if (!TypeSetter::is_text(text.text))
    return tl::unexpected{Problem{flatwise::Code{"paper.not_utf8"}, "text", {}, {}, {}}};
  if (!(text.width > 0)) {
    set_line(text, text.text, text.at.y);
    return true;
  }
  double y = text.at.y;
  for (const std::string& line : break_lines(measure, text.text, {text.size, text.bold, text.width})) {
    set_line(text, line, y);
    y += 1.35 * text.size;
  }
  return true;
}

Result<bool> Painter::paint(const Code& code) {
  const auto modules = code_modules(code.text);
  if (!modules) return tl::unexpected{modules.error()};
  const double module = code.side / modules->side;
  const double quiet = kQuietModules * module;
  black(false);
  cairo_rectangle(c_, code.at.x - quiet, code.at.y - quiet, code.side + 2 * quiet, code.side + 2 * quiet);
  cairo_fill(c_);
  black(true);
  for (const ModuleBox& box : modules->dark)
    cairo_rectangle(c_, code.at.x + box.x * module, code.at.y + box.y * module, box.width * module,
                    box.height * module);
  cairo_fill(c_);
  return true;
}

Result<bool> paint_page(cairo_t* c, const TypeSetter& setter, const DisplayList& page) {
  cairo_set_line_join(c, CAIRO_LINE_JOIN_MITER);
  cairo_set_miter_limit(c, 4);
  Painter painter{c, setter};
  for (const drawing::Item& item : page.items) {
    auto painted = std::visit([&](const auto& shape) { return painter.paint(shape); }, item);
    if (!painted) return painted;
  }
  return true;
}

Problem bad(flatwise::Code code, std::string field, std::string given) {
  return Problem{code, std::move(field), std::move(given), {}, {}};
}

bool possible(const DisplayList& page) {
  constexpr double kGreatestMm = 2000;
  return page.width > 0 && page.height > 0 && page.width <= kGreatestMm && page.height <= kGreatestMm;
}

// Cairo numbers its surfaces through the whole process; the same page must give the same bytes.
void name_the_group(std::string& svg) {
  constexpr std::string_view kBegins = "id=\"surface";
  const std::size_t at = svg.find(kBegins);
  if (at == std::string::npos) return;
  const std::size_t end = svg.find('"', at + kBegins.size());
  svg.replace(at, end - at, "id=\"page");
}

Result<std::string> finished(cairo_surface_t* surface, std::string bytes) {
  if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS)
    return tl::unexpected{
        bad(flatwise::Code{"paper.not_drawn"}, "page", cairo_status_to_string(cairo_surface_status(surface)))};
  return bytes;
}

}  // namespace

Result<std::string> render_pdf(std::span<const DisplayList> pages, const Document& document) {
  if (pages.empty()) return tl::unexpected{bad(flatwise::Code{"paper.no_pages"}, "pages", {})};
  const TypeSetter setter;
  std::string bytes;
  const Surface surface{cairo_pdf_surface_create_for_stream(append_bytes, &bytes, 72, 72)};
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, document.title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, document.created.c_str());
  Context c;
  for (const DisplayList& page : pages) {
    if (!possible(page)) return tl::unexpected{bad(flatwise::Code{"paper.page_size"}, "page", {})};
    cairo_pdf_surface_set_size(surface.get(), page.width * kPointsInMm, page.height * kPointsInMm);
    c.reset(cairo_create(surface.get()));
    cairo_scale(c.get(), kPointsInMm, kPointsInMm);
    if (auto ok = paint_page(c.get(), setter, page); !ok) return tl::unexpected{ok.error()};
    cairo_show_page(c.get());
  }
  c.reset();
  cairo_surface_finish(surface.get());
  return finished(surface.get(), std::move(bytes));
}

Result<std::string> render_svg(const DisplayList& page) {
  if (!possible(page)) return tl::unexpected{bad(flatwise::Code{"paper.page_size"}, "page", {})};
  const TypeSetter setter;
  std::string bytes;
  // Cairo 1.16 writes the size in points whatever the unit of what is drawn: keep points and scale.
  const Surface surface{
      cairo_svg_surface_create_for_stream(append_bytes, &bytes, page.width * kPointsInMm, page.height * kPointsInMm)};
  Context c{cairo_create(surface.get())};
  cairo_scale(c.get(), kPointsInMm, kPointsInMm);
  cairo_set_source_rgb(c.get(), 1, 1, 1);
  cairo_paint(c.get());
  if (auto ok = paint_page(c.get(), setter, page); !ok) return tl::unexpected{ok.error()};
  c.reset();
  cairo_surface_finish(surface.get());
  name_the_group(bytes);
  return finished(surface.get(), std::move(bytes));
}

Result<std::string> render_png(const DisplayList& page, double dots_per_inch) {
  if (!possible(page)) return tl::unexpected{bad(flatwise::Code{"paper.page_size"}, "page", {})};
  if (!(dots_per_inch >= 20 && dots_per_inch <= 600))
    return tl::unexpected{bad(flatwise::Code{"paper.resolution"}, "dots_per_inch", std::to_string(dots_per_inch))};
  const TypeSetter setter;
  const double scale = dots_per_inch / 25.4;
  const Surface surface{cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                                   static_cast<int>(std::lround(page.width * scale)),
                                                   static_cast<int>(std::lround(page.height * scale)))};
  Context c{cairo_create(surface.get())};
  cairo_set_source_rgb(c.get(), 1, 1, 1);
  cairo_paint(c.get());
  cairo_scale(c.get(), scale, scale);
  if (auto ok = paint_page(c.get(), setter, page); !ok) return tl::unexpected{ok.error()};
  std::string bytes;
  cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes);
  return finished(surface.get(), std::move(bytes));
}

}  // namespace flatwise::paper
