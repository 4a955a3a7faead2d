#include <algorithm>
#include <cmath>

#include "paper/sheet_frame.h"
#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

using drawing::Anchor;
using drawing::kNarrow;
using drawing::kWide;
using drawing::PairMarks;

bool stayed(const MapSheet& sheet, int rotor) {
  const auto i = static_cast<std::size_t>(rotor - 1);
  return i < sheet.stayed.size() && sheet.stayed[i];
}

PairMarks read_of(const MapSheet& sheet, int rotor) {
  const auto i = static_cast<std::size_t>(rotor - 1);
  return i < sheet.read.size() ? sheet.read[i] : PairMarks{};
}

// As large as it can be read from across the bench.
void write_rule(Sheet& page, const MapSheet& sheet) {
  const double top = page.y;
  page.code(code_text(sheet.head, "sheet", "map"), top + 1.6);
  const double width = page.code_left() - page.left();
  double size = 6.4;
  for (const double smaller : {6.4, 5.4, 4.4, 3.6}) {
    size = smaller;
    double height = 0;
    for (const Message& line : sheet.map->rule)
      height += page.height_of(page.say(line),
                               {.x = 0, .width = width, .type = {.size = size, .bold = true}, .leading = 1.25});
    if (height <= 23) break;
  }
  for (const Message& line : sheet.map->rule) {
    const bool below_code = page.y > top + Sheet::kCodeHeight;
    const drawing::Type type{.size = size, .bold = true};
    const Block block{.x = page.left(), .width = below_code ? page.width() : width, .type = type, .leading = 1.25};
    page.need(page.height_of(page.say(line), block) + 4);
    page.y += page.write(page.say(line), block, page.y);
  }
  page.y += 1;
  const Message why = {Code{"paper.map_pairs"}, {}};
  page.y += page.write(page.say(why), {.x = page.left(), .width = width, .type = {.size = 3.5}}, page.y);
  page.y = std::max(page.y, top + Sheet::kCodeHeight) + 1;
}

// Where nobody said which stations are off: all outside the row of rotors that stayed, but for what does not come off.
std::vector<bool> off_by_rotors(const MapSheet& sheet) {
  const Shaft& shaft = *sheet.shaft;
  const auto count = static_cast<int>(shaft.stations().size());
  int from = count;
  int to = -1;
  for (int n = 1; n <= shaft.rotor_count(); ++n) {
    if (!stayed(sheet, n)) continue;
    from = std::min(from, n == 1 ? 0 : shaft.station_of_rotor(n));
    to = std::max(to, n == shaft.rotor_count() ? count - 1 : shaft.station_of_rotor(n));
  }
  std::vector<bool> off;
  for (int i = 0; i < count; ++i)
    off.push_back((i < from || i > to) && !shaft.stations()[static_cast<std::size_t>(i)].obstacle);
  return off;
}

std::vector<drawing::StationState> states_of(const MapSheet& sheet) {
  const std::vector<bool> off = sheet.off.empty() ? off_by_rotors(sheet) : sheet.off;
  std::vector<drawing::StationState> states(sheet.shaft->stations().size());
  for (std::size_t i = 0; i < states.size() && i < off.size(); ++i)
    if (off[i]) states[i].body = drawing::Body::off;
  return states;
}

std::vector<int> rotors_that_stayed(const MapSheet& sheet) {
  std::vector<int> out;
  for (int n = 1; n <= sheet.shaft->rotor_count(); ++n)
    if (stayed(sheet, n)) out.push_back(n);
  return out;
}

void draw_strip(Sheet& page, const MapSheet& sheet) {
  std::vector<drawing::RotorMarks> marks;
  for (const timing::RotorMarks& m : sheet.map->rotors)
    marks.push_back({azimuth_of_flat(m.flat_a, sheet.shaft->flats()), azimuth_of_flat(m.flat_b, sheet.shaft->flats())});
  const auto states = states_of(sheet);
  const auto strip =
      drawing::shaft_strip(*sheet.shaft, states, marks,
                           {.width = page.width(), .greatest_height = sheet.shaft->rotor_count() <= 5 ? 44.0 : 31.0});
  page.need(strip.list.height + 8);
  page.y += 1.5;
  append(page.pen().list(), strip.list, {page.left(), page.y});
  page.y += strip.list.height;
  std::string caption = page.word(Word{"paper.map_side_view"});
  const auto kept = rotors_that_stayed(sheet);
  if (kept.size() < sheet.map->rotors.size())
    caption += ' ' + page.word(kept.empty() ? Word{"paper.map_all_off"} : Word{"paper.map_outline"});
  page.y += page.write(caption, {.x = page.left(), .width = page.width(), .type = {.size = 3.0}}, page.y) + 0.6;
  page.rule(page.y);
  page.y += 1;
}

constexpr double kTableHead = 10;
constexpr double kTableTail = 19;  // The sentence below and the names.
constexpr double kComfortableRow = 6.4;
constexpr double kLeastRow = 5.8;
constexpr double kViewsHead = 8;
constexpr double kViewGap = 2;
constexpr double kLeastView = 23;

double table_height(int rotors, double row) { return kTableHead + kTableTail + rotors * row; }

struct Grid {
  int columns = 5;
  double cell_width = 0, cell_height = 0, view = 0;
  double number = 6.4;
};

Grid grid_of(const Sheet& page, int rotors) {
  const int cells = rotors + 1;
  Grid g;
  g.columns = cells <= 6 ? std::max(4, cells) : std::clamp((cells + 1) / 2, 5, 6);
  g.cell_width = page.width() / g.columns;
  g.number = g.columns > 5 ? 5.0 : 6.4;
  // Beside the rotor's number, and no higher than leaves room for the table.
  const double number = page.measure().width(std::to_string(rotors), g.number, true);
  g.view = std::min(g.cell_width - number - (rotors > 9 ? 0.0 : -2.0),
                    cells <= g.columns ? 40.0 : (g.columns > 5 ? 26.0 : 33.0));
  // A little smaller where that keeps the table on the same page.
  const int lines = (cells + g.columns - 1) / g.columns;
  const double left = page.room() - kViewsHead - table_height(rotors, kComfortableRow);
  if (const double fits = left / lines - kViewGap; fits >= kLeastView) g.view = std::min(g.view, fits);
  g.cell_height = g.view + kViewGap;
  return g;
}

void draw_view(Sheet& page, const MapSheet& sheet, const Grid& grid, const timing::RotorMarks& m,
               const drawing::Box& cell, End from) {
  const double view_left = cell.x + std::max((cell.width - grid.view) / 2, cell.width - grid.view - 1.0);
  const drawing::EndViewOptions options{.seen_from = from,
                                        .size = grid.view,
                                        .number_size = grid.columns > 5 ? 2.8 : 3.4,
                                        .id = "rotor-" + std::to_string(m.rotor)};
  append(page.pen().list(),
         drawing::end_view(drawing::pair_of(*sheet.shaft, m.rotor),
                           {.flat_a = m.flat_a, .flat_b = m.flat_b, .wanted_a = {}, .wanted_b = {}}, options),
         {view_left, cell.y});
  page.pen().text({cell.x + 1, cell.y + grid.number * 0.85}, std::to_string(m.rotor),
                  {.size = grid.number, .bold = true});
}

Word seen_from(End end) { return end == End::a ? Word{"paper.seen_from_a"} : Word{"paper.seen_from_b"}; }

void draw_views(Sheet& page, const MapSheet& sheet) {
  const auto& rotors = sheet.map->rotors;
  const End other_end = sheet.stand == End::a ? End::b : End::a;
  const Grid grid = grid_of(page, static_cast<int>(rotors.size()));
  const Word head = sheet.stand == End::a ? Word{"paper.map_from_a"} : Word{"paper.map_from_b"};
  page.need(kViewsHead + grid.cell_height);
  page.y += page.write(page.word(head), {.x = page.left(), .width = page.width(), .type = {.size = 4.2, .bold = true}},
                       page.y) +
            1;
  for (std::size_t i = 0; i <= rotors.size(); ++i) {
    const auto column = static_cast<int>(i) % grid.columns;
    if (column == 0 && i > 0) page.y += grid.cell_height;
    if (column == 0) page.need(grid.cell_height);
    const drawing::Box cell{page.left() + column * grid.cell_width, page.y, grid.cell_width, grid.cell_height};
    if (i < rotors.size()) {
      draw_view(page, sheet, grid, rotors[i], cell, sheet.stand);
      continue;
    }
    page.pen().box({cell.x + 0.3, cell.y - 1, cell.width - 0.6, cell.height}, drawing::kHidden);
    Grid smaller = grid;
    smaller.view = grid.view - 4.5;
    draw_view(page, sheet, smaller, rotors.front(), cell, other_end);
    const std::string words = page.word(seen_from(other_end));
    const double size = size_to_fit(page.measure(), words, {3.2, true, cell.width - 3}, 1.5);
    page.pen().text({cell.x + cell.width / 2, cell.y + cell.height - 2.2}, words,
                    {.size = size, .bold = true, .anchor = Anchor::middle});
  }
  page.y += grid.cell_height + 1;
}

// Where the columns of the table stand, as shares of its width.
constexpr double kColumns[] = {0.0, 0.085, 0.185, 0.285, 0.415, 0.545, 0.69, 0.845};

double column(const Sheet& page, int i) { return page.left() + 1 + kColumns[i] * page.width(); }

void table_head(Sheet& page) {
  page.rule(page.y, kWide);
  const Word heads[][2] = {{Word{"paper.rotor"}, Word{""}},
                           {Word{"paper.half_a"}, Word{"paper.flat"}},
                           {Word{"paper.half_b"}, Word{"paper.flat"}},
                           {Word{"paper.state"}, Word{"paper.now"}},
                           {Word{"paper.read_a"}, Word{"paper.write"}},
                           {Word{"paper.read_b"}, Word{"paper.write"}},
                           {Word{"paper.right"}, Word{"paper.tick"}},
                           {Word{"paper.second"}, Word{"paper.look"}}};
  for (int i = 0; i < 8; ++i) {
    const double room = (i < 7 ? column(page, i + 1) : page.right()) - column(page, i) - 1;
    for (int k = 0; k < 2; ++k) {
      if (heads[i][k].id.empty()) continue;
      const std::string words = page.word(heads[i][k]);
      const double size = size_to_fit(page.measure(), words, {k == 0 ? 3.2 : 2.9, k == 0, room}, 1.5);
      page.pen().text({column(page, i), page.y + (k == 0 ? 4.3 : 8.1)}, words, {.size = size, .bold = k == 0});
    }
  }
  page.y += 9.6;
  page.rule(page.y);
}

struct FlatRead {
  std::optional<int> read;
  int wanted = 0;
  double base = 0;
};

// What was read, with the stopped bar where it is not what the map wants; a blank where nothing was.
void draw_read(Sheet& page, double x, const FlatRead& flat) {
  drawing::Pen pen = page.pen();
  if (!flat.read) {
    pen.line({x + 1, flat.base + 0.3}, {x + 16, flat.base + 0.3});
    return;
  }
  const bool right = *flat.read == flat.wanted;
  pen.text({x + 6, flat.base - 0.2}, std::to_string(*flat.read), {.size = 4, .bold = !right});
  if (!right) drawing::draw_flag(pen.list(), drawing::Flag::stopped, {x + 14, flat.base - 0.4}, 3);
}

void table_row(Sheet& page, const MapSheet& sheet, const timing::RotorMarks& m, double height) {
  drawing::Pen pen = page.pen();
  const double base = page.y + height / 2 + 1.75;
  const drawing::Type figure{.size = 5, .bold = true};
  pen.text({column(page, 0) + 1, base}, std::to_string(m.rotor), figure);
  pen.text({column(page, 1) + 2, base}, std::to_string(m.flat_a), figure);
  pen.text({column(page, 2) + 2, base}, std::to_string(m.flat_b), figure);
  const bool kept = stayed(sheet, m.rotor);
  const std::string state = page.word(kept ? Word{"paper.stayed"} : Word{"paper.to_set"});
  const double room = column(page, 4) - column(page, 3) - 1;
  pen.text({column(page, 3), base - 0.3}, state, {.size = size_to_fit(page.measure(), state, {3.4, false, room}, 1.5)});
  const PairMarks read = read_of(sheet, m.rotor);
  draw_read(page, column(page, 4), {.read = read.flat_a, .wanted = m.flat_a, .base = base});
  draw_read(page, column(page, 5), {.read = read.flat_b, .wanted = m.flat_b, .base = base});
  // What stayed and was read needs no pencil any more.
  const bool settled = kept && read.flat_a == m.flat_a && read.flat_b == m.flat_b;
  for (int k = 6; k < 8 && !settled; ++k)
    drawing::draw_tick_box(pen.list(), {column(page, k) + 1.5, page.y + (height - drawing::kTickSide) / 2},
                           drawing::kTickSide);
  page.y += height;
  page.rule(page.y);
}

void draw_table(Sheet& page, const MapSheet& sheet) {
  const auto rows = static_cast<double>(sheet.map->rotors.size());
  double height = std::clamp((page.room() - kTableHead - kTableTail) / rows, 0.0, 7.5);
  if (height < kLeastRow) {  // Too low for a pencil: a page of its own.
    page.next_page();
    height = std::clamp((page.room() - kTableHead - kTableTail) / rows, kLeastRow, 7.5);
  }
  table_head(page);
  for (const timing::RotorMarks& m : sheet.map->rotors) {
    if (page.need(height)) table_head(page);
    table_row(page, sheet, m, height);
  }
  page.rule(page.y, kWide);
  page.need(kTableTail);
  page.y += 1.2;
  page.y += page.write(page.word(Word{"paper.map_proves_nothing"}),
                       {.x = page.left(), .width = page.width(), .type = {.size = 3.5, .bold = true}}, page.y);
  page.signatures();
}

}  // namespace

Pages map_sheet(const MapSheet& sheet, const TextMeasure& measure) {
  CORE_CHECK(sheet.shaft != nullptr && sheet.map != nullptr && !sheet.map->rotors.empty());
  const Shaft& shaft = *sheet.shaft;
  const Rotor& rotor = shaft.rotor(1);
  Sheet page{
      sheet.head,
      measure,
      flatwise::word("paper.map", sheet.head.voice),
      {{flatwise::word("paper.profile", sheet.head.voice), profile_words(shaft.flats(), sheet.head.voice)},
       {flatwise::word("paper.lean", sheet.head.voice),
        format_quantity(any(rotor.lean),
                        {.system = sheet.head.voice.units, .decimals = {}, .unit = {}, .currency = {}})},
       {flatwise::word("paper.pattern", sheet.head.voice), pattern_words(shaft.spec().pattern, sheet.head.voice)}}};
  write_rule(page, sheet);
  draw_strip(page, sheet);
  draw_views(page, sheet);
  draw_table(page, sheet);
  return page.finish();
}

}  // namespace flatwise::paper
