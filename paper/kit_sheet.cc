#include <algorithm>

#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

using drawing::kNarrow;
using drawing::kTickSide;
using drawing::kWide;

constexpr double kText = 3.8;

struct Columns {
  double item, state, part, boxes, right;
};
Columns columns_of(const Sheet& page) {
  const double w = page.width();
  return {page.left() + 13, page.left() + 0.39 * w, page.left() + 0.55 * w, page.left() + 0.735 * w, page.right()};
}

Block block(double x, double to, double size = kText, bool bold = false) {
  return {.x = x, .width = to - x - 2, .type = {.size = size, .bold = bold}, .leading = 1.15};
}

std::string state_words(const Sheet& page, const KitLine& line) {
  if (line.fresh == line.count) return page.word(Word{"paper.new"});
  if (line.fresh == 0) return page.word(Word{"paper.if_sound"});
  return page.say({Code{"paper.some_new"}, {{"fresh", line.fresh}}});
}

// A box a piece while they fit, then a blank for the count.
constexpr int kMostBoxes = 6;

double line_height(const Sheet& page, const KitLine& line) {
  const Columns c = columns_of(page);
  const double item = page.height_of(line.item, block(c.item, c.state));
  const double state = page.height_of(state_words(page, line), block(c.state, c.part, 3.4));
  const double part = page.height_of(line.part_number, block(c.part, c.boxes, 3.4));
  return std::max({7.6, item + 2, state + 2, part + 2});
}

void draw_line(Sheet& page, const KitLine& line) {
  const Columns c = columns_of(page);
  const double height = line_height(page, line);
  drawing::Pen pen = page.pen();
  const auto put = [&](const std::string& text, const Block& at) {
    page.write(text, at, page.y + (height - page.height_of(text, at)) / 2 - 0.2);
  };
  pen.text({c.item - 3, page.y + height / 2 + 1.7}, std::to_string(line.count),
           {.size = 5, .bold = true, .anchor = drawing::Anchor::end});
  put(line.item, block(c.item, c.state, kText, line.fresh == line.count));
  put(state_words(page, line), block(c.state, c.part, 3.4));
  put(line.part_number, block(c.part, c.boxes, 3.4));
  if (line.count <= kMostBoxes)
    for (int i = 0; i < line.count; ++i)
      drawing::draw_tick_box(pen.list(), {c.boxes + i * 6.4, page.y + (height - kTickSide) / 2}, kTickSide);
  else
    pen.line({c.boxes, page.y + height - 2}, {c.boxes + 20, page.y + height - 2});
  page.y += height;
  page.rule(page.y);
}

void tray_head(Sheet& page, const KitTray& tray) {
  page.rule(page.y, kWide);
  drawing::Pen pen = page.pen();
  const Columns c = columns_of(page);
  const std::string name = page.say({Code{"paper.tray_named"}, {{"tray", tray.name}}});
  const double size = size_to_fit(page.measure(), name, {6.4, true, 0.33 * page.width()}, 3);
  pen.text({page.left(), page.y + 7.8}, name, {.size = size, .bold = true});
  const double x = page.left() + page.measure().width(name, size, true) + 4;
  pen.text({x, page.y + 7.8}, tray.what,
           {.size = size_to_fit(page.measure(), tray.what, {3.8, false, c.part - x - 2}, 2)});
  pen.text({c.part, page.y + 7.8}, page.word(Word{"paper.part_number"}), {.size = 2.9});
  const std::string on = page.word(Word{"paper.lies_on_tray"});
  pen.text({c.boxes, page.y + 7.8}, on,
           {.size = size_to_fit(page.measure(), on, {2.9, false, page.right() - c.boxes}, 1.5)});
  page.y += 10.2;
  page.rule(page.y);
}

int pieces(const KitTray& tray) {
  int sum = 0;
  for (const KitLine& line : tray.lines) sum += line.count;
  return sum;
}

// Counting out: what was put on, and what is left when the rotor is built. Both are answered, or it is not done.
constexpr double kCountOut = 11;
void count_out(Sheet& page, const KitTray& tray) {
  drawing::Pen pen = page.pen();
  const double base = page.y + 7.4;
  const double third = page.width() / 3;
  const std::string texts[] = {page.say({Code{"paper.counted"}, {{"pieces", pieces(tray)}}}),
                               page.word(Word{"paper.left_on_tray"}), page.word(Word{"paper.second_look"})};
  for (int i = 0; i < 3; ++i) {
    const auto& text = texts[static_cast<std::size_t>(i)];
    const double x = page.left() + i * third;
    const double size = size_to_fit(page.measure(), text, {3.6, i < 2, third - 20}, 2);
    pen.text({x, base}, text, {.size = size, .bold = i < 2});
    const double from = x + page.measure().width(text, size, i < 2) + 2;
    pen.line({from, base + 0.8}, {x + third - 4, base + 0.8});
  }
  page.y += kCountOut + 2;
}

double tray_height(const Sheet& page, const KitTray& tray) {
  double sum = 10.2 + kCountOut + 2;
  for (const KitLine& line : tray.lines) sum += line_height(page, line);
  return sum;
}

void draw_tray(Sheet& page, const KitTray& tray) {
  page.need(std::min(tray_height(page, tray), 240.0));
  tray_head(page, tray);
  for (const KitLine& line : tray.lines) {
    if (page.need(line_height(page, line) + kCountOut)) tray_head(page, tray);
    draw_line(page, line);
  }
  count_out(page, tray);
}

double stock_x(const Sheet& page, int i) { return page.left() + (0.56 + 0.13 * i) * page.width(); }

void stock_head(Sheet& page) {
  page.rule(page.y, kWide);
  drawing::Pen pen = page.pen();
  pen.text({page.left(), page.y + 6}, page.word(Word{"paper.stock"}), {.size = 4.2, .bold = true});
  pen.text({page.left() + 0.36 * page.width(), page.y + 6}, page.word(Word{"paper.part_number"}), {.size = 2.9});
  const Word heads[] = {Word{"paper.to_take"}, Word{"paper.on_shelf"}, Word{"paper.on_order"}};
  for (int i = 0; i < 3; ++i) {
    const std::string head = page.word(heads[i]);
    pen.text({stock_x(page, i) + 14, page.y + 6}, head,
             {.size = size_to_fit(page.measure(), head, {2.9, false, 22}, 1.5), .anchor = drawing::Anchor::end});
  }
  page.y += 8;
  page.rule(page.y);
}

std::string count_words(const std::optional<int>& count) { return count ? std::to_string(*count) : "?"; }

void draw_stock(Sheet& page, const std::vector<StockLine>& stock) {
  if (stock.empty()) return;
  page.need(8 + 3 * 8.0);
  page.y += 2;
  stock_head(page);
  for (const StockLine& line : stock) {
    const Block item{.x = page.left(), .width = 0.35 * page.width(), .type = {.size = kText}, .leading = 1.15};
    const Block part{
        .x = page.left() + 0.36 * page.width(), .width = 0.19 * page.width(), .type = {.size = 3.4}, .leading = 1.15};
    const double height =
        std::max({7.6, page.height_of(line.item, item) + 2, page.height_of(line.part_number, part) + 2});
    if (page.need(height)) stock_head(page);
    page.write(line.item, item, page.y + (height - page.height_of(line.item, item)) / 2 - 0.2);
    page.write(line.part_number, part, page.y + (height - page.height_of(line.part_number, part)) / 2 - 0.2);
    const bool short_of = line.on_shelf && *line.on_shelf < line.to_take;
    const std::string counts[] = {std::to_string(line.to_take), count_words(line.on_shelf), count_words(line.on_order)};
    drawing::Pen pen = page.pen();
    const double base = page.y + height / 2 + 1.5;
    for (int i = 0; i < 3; ++i)
      pen.text({stock_x(page, i) + 14, base}, counts[i], {.size = 4.4, .bold = true, .anchor = drawing::Anchor::end});
    if (short_of) {
      // Too few: the stopped bar, so that it is seen without reading a figure.
      drawing::draw_flag(pen.list(), drawing::Flag::stopped, {page.right() - 5, base}, 3.6);
    }
    page.y += height;
    page.rule(page.y);
  }
}

}  // namespace

Pages kit_sheet(const KitSheet& sheet, const TextMeasure& measure) {
  const Voice& voice = sheet.head.voice;
  Sheet page{sheet.head,
             measure,
             word("paper.kit", voice),
             {{word("paper.trays", voice), std::to_string(sheet.trays.size())}}};
  const double top = page.y;
  page.code(code_text(sheet.head, "sheet", "kit"), top + 1.5);
  const double room = page.code_left() - page.left();
  page.y += page.write(page.word(Word{"paper.kit_rule"}),
                       {.x = page.left(), .width = room, .type = {.size = 5, .bold = true}, .leading = 1.25}, top + 1);
  page.y += page.write(page.word(Word{"paper.kit_note"}), {.x = page.left(), .width = room, .type = {.size = 3.5}},
                       page.y + 2);
  page.y = std::max(page.y + 2, top + Sheet::kCodeHeight + 2);
  for (const KitTray& tray : sheet.trays) draw_tray(page, tray);
  draw_stock(page, sheet.stock);
  return page.finish();
}

}  // namespace flatwise::paper
