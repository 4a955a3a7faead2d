#include "paper/pattern_sheet.h"

#include <algorithm>
#include <map>

#include "drawing/couple_arrows.h"
#include "paper/sheet_parts.h"
#include "study/study.h"

namespace flatwise::paper {
namespace {

using job::ArrangedRow;
using Mistake = dynamics::TimingMistake::Kind;

constexpr double kRowHigh = 34, kArrowsWide = 44, kNumberWide = 12, kPad = 2;
constexpr double kText = 3.1, kFlats = 5;
constexpr double kLine = 5.8;  ///< Of the table of mistakes.

Block block(const Sheet& page, double size, bool bold) {
  return {.x = page.left(), .width = page.width(), .type = {.size = size, .bold = bold}, .leading = 1.25};
}

void write_below(Sheet& page, const std::string& text, const Block& at, double gap) {
  page.need(page.height_of(text, at) + gap);
  page.y += page.write(text, at, page.y) + gap;
}

std::string flats_words(const dynamics::Places& places) {
  std::string out;
  for (const int flat : dynamics::flats_of(places)) out += (out.empty() ? "" : " · ") + std::to_string(flat);
  return out;
}

/// Everything about one arrangement in a sentence or two.
std::string figures_words(const Sheet& page, const PatternSheet& sheet, const ArrangedRow& row) {
  const auto shown = [&](AnyQuantity value) { return study::figure_text(value, page.voice()); };
  Args args{{"left", shown({row.row.left_si, sheet.judged})},
            {"worst", shown({row.row.worst_si, sheet.judged})},
            {"couple", shown(any(row.left.couple.size))},
            {"gap", shown(any(row.least_gap))},
            {"rotor", row.gap_after},
            {"next", row.gap_after + 1},
            {"steps", row.row.simplicity.steps},
            {"phrases", row.row.simplicity.phrases}};
  if (row.row.pressed) args.emplace_back("hanger", shown(any(newtons(row.row.pressed->force_n))));
  return page.say({Code{"paper.pattern_figures"}, args});
}

/// Where a text of a picture stands.
drawing::Box box_of(const drawing::Text& text, const TextMeasure& measure) {
  const double wide = measure.width(text.text, text.size, text.bold);
  const double shift = text.anchor == drawing::Anchor::start ? 0 : text.anchor == drawing::Anchor::middle ? 0.5 : 1;
  return {text.at.x - shift * wide, text.at.y - text.size, wide, 1.2 * text.size};
}

/// Whether the names of a picture keep to it and off each other.
bool names_fit(const drawing::DisplayList& picture, const TextMeasure& measure) {
  std::vector<drawing::Box> boxes;
  for (const drawing::Item& item : picture.items) {
    const auto* text = std::get_if<drawing::Text>(&item);
    if (text == nullptr) continue;
    const drawing::Box here = box_of(*text, measure);
    if (here.x < 0 || here.x + here.width > picture.width) return false;
    for (const drawing::Box& b : boxes)
      if (here.x < b.x + b.width && b.x < here.x + here.width && here.y < b.y + b.height && b.y < here.y + here.height)
        return false;
    boxes.push_back(here);
  }
  return true;
}

/// The couples head to tail. Where their names have no room the rotors of one direction are one arrow without a name.
drawing::DisplayList couples_of(const ArrangedRow& row, bool closes, const TextMeasure& measure) {
  constexpr double kWide = kArrowsWide - 4, kHigh = kRowHigh - 3;
  drawing::CoupleArrows arrows = drawing::arrows_of(row.couples, row.tilt, closes);
  drawing::DisplayList named = drawing::couple_arrows(arrows, kWide, kHigh);
  if (names_fit(named, measure)) return named;
  std::map<double, double> sums;
  for (const drawing::CoupleArrow& one : arrows.rotors) sums[one.azimuth] += one.size;
  arrows.rotors.clear();
  for (const auto& [azimuth, size] : sums) arrows.rotors.push_back({0, size, azimuth});
  drawing::DisplayList picture = drawing::couple_arrows(arrows, kWide, kHigh);
  std::erase_if(picture.items, [](const drawing::Item& i) { return std::holds_alternative<drawing::Text>(i); });
  return picture;
}

void draw_row(Sheet& page, const PatternSheet& sheet, std::size_t number) {
  const ArrangedRow& row = sheet.arranged->rows[number];
  page.need(kRowHigh + 1);
  const double top = page.y, x = page.left() + kNumberWide + kArrowsWide + kPad;
  drawing::Pen pen = page.pen();
  pen.box({page.left(), top, page.width(), kRowHigh}, drawing::kNarrow);
  if (number == 0)
    pen.box({page.left() + 0.5, top + 0.5, page.width() - 1, kRowHigh - 1}, {.stroke = drawing::Stroke::heavy},
            "advised");
  pen.text({page.left() + kPad + 1, top + 9}, std::to_string(number + 1), {.size = 6, .bold = true});
  const bool closes = row.row.left_si <= sheet.arranged->list.floor_rms;
  drawing::append(pen.list(), couples_of(row, closes, page.measure()), {page.left() + kNumberWide, top + 1.5});
  Block flats{.x = x, .width = page.right() - x - kPad, .type = {.size = kFlats, .bold = true}, .leading = 1.2};
  const std::string says = flats_words(row.row.places);
  while (flats.type.size > 3 && page.height_of(says, flats) > 2 * 1.2 * kFlats) flats.type.size -= 0.2;
  double y = top + kPad;
  y += page.write(says, flats, y) + 1;
  Block small{.x = x, .width = flats.width, .type = {.size = kText}, .leading = 1.25};
  const std::string figures = figures_words(page, sheet, row);
  while (small.type.size > 1.8 && y + page.height_of(figures, small) > top + kRowHigh - 1.5) small.type.size -= 0.1;
  page.write(figures, small, y);
  page.y += kRowHigh + 1;
}

/// Columns of the table of mistakes: where each ends, as shares of the width.
constexpr double kEnds[] = {0.1, 0.27, 0.42, 0.58, 0.71, 0.86, 1.0};

void draw_line(Sheet& page, const std::vector<std::string>& cells, bool head) {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double from = page.left() + (i == 0 ? 0 : kEnds[i - 1]) * page.width();
    const double room = page.left() + kEnds[i] * page.width() - from - 1.5;
    double size = head ? 2.7 : kText;
    if (const double wide = page.measure().width(cells[i], size, head); wide > room) size *= 0.99 * room / wide;
    page.pen().text({from + room, page.y + 4}, cells[i], {.size = size, .bold = head, .anchor = drawing::Anchor::end});
  }
  page.y += kLine;
  page.rule(page.y, head ? drawing::kWide : drawing::kNarrow);
}

std::vector<std::string> mistake_heads(const Sheet& page) {
  return {page.word(Word{"paper.pattern_rotor"}),  page.word(Word{"paper.pattern_kink"}),
          page.word(Word{"paper.pattern_hanger"}), page.word(Word{"paper.pattern_turned"}),
          page.word(Word{"paper.pattern_gap"}),    page.word(Word{"paper.pattern_worst"}),
          page.word(Word{"paper.pattern_gap"})};
}

void draw_mistakes(Sheet& page, const PatternSheet& sheet) {
  const auto shown = [&](AnyQuantity value) { return study::figure_text(value, page.voice()); };
  page.need(3 * kLine + 10);
  write_below(page, page.word(Word{"paper.pattern_mistakes"}), block(page, 4.2, true), 1);
  draw_line(page, mistake_heads(page), true);
  for (int rotor = 1; rotor <= sheet.shaft->rotor_count(); ++rotor) {
    if (page.need(kLine + 1)) draw_line(page, mistake_heads(page), true);
    const auto& half = job::worst_mistake(*sheet.arranged, rotor, Mistake::half_out, true);
    const auto& turned = job::worst_mistake(*sheet.arranged, rotor, Mistake::rotor_turned, true);
    const auto& worst = job::worst_mistake(*sheet.arranged, rotor, Mistake::rotor_turned, false);
    draw_line(page,
              {std::to_string(rotor), half.kink ? shown(any(half.kink->angle)) : "–", shown(any(half.what.left.larger)),
               shown(any(turned.what.left.larger)), shown(any(turned.what.least_gap)),
               shown(any(worst.what.left.larger)), shown(any(worst.what.least_gap))},
              false);
  }
  page.y += 1.5;
  write_below(page, page.word(Word{"paper.pattern_mistakes_note"}), block(page, 2.9, false), 3);
}

void draw_why(Sheet& page, const PatternSheet& sheet) {
  const job::Arranged& arranged = *sheet.arranged;
  page.y += 2;
  for (std::size_t i = 1; i < arranged.says.size(); ++i)
    write_below(page, page.say(arranged.says[i]), block(page, 3.4, false), 0.8);
  const auto floor = [&](double si) { return study::figure_text({si, sheet.judged}, page.voice()); };
  const Message note{Code{"paper.pattern_floor"},
                     {{"robust", static_cast<std::int64_t>(arranged.list.robust) + 1},
                      {"floor", floor(arranged.list.floor_rms)},
                      {"worst", floor(arranged.list.floor_worst)}}};
  write_below(page, page.say(note), block(page, 3.4, false), 3);
}

void draw_keep(Sheet& page, const PatternSheet& sheet) {
  const Block lines = block(page, 4.2, true);
  page.need(14 + page.height_of(sheet.arranged->definition, lines));
  write_below(page, page.word(Word{"paper.pattern_keep"}), block(page, 3.4, false), 0.6);
  for (std::size_t from = 0; from < sheet.arranged->definition.size();) {
    const std::size_t to = std::min(sheet.arranged->definition.find('\n', from), sheet.arranged->definition.size());
    write_below(page, sheet.arranged->definition.substr(from, to - from), lines, 0.4);
    from = to + 1;
  }
  const std::string lead = page.word(Word{"study.lead"});
  page.pen().text({page.left(), page.y + 7}, lead, {.size = 3.6, .bold = true});
  const double from = page.left() + page.measure().width(lead, 3.6, true) + 2;
  page.pen().line({from, page.y + 7.8}, {page.left() + page.width() / 2, page.y + 7.8});
  page.y += 10;
}

}  // namespace

Pages pattern_sheet(const PatternSheet& sheet, const TextMeasure& measure) {
  const Voice& voice = sheet.head.voice;
  const Shaft& shaft = *sheet.shaft;
  const std::vector<Cell> cells{{word("study.cell.speed", voice), study::figure_text(any(shaft.spec().speed), voice)},
                                {word("study.cell.rotor", voice), study::rotor_text(shaft, voice)}};
  Sheet page{sheet.head, measure, word("paper.pattern_title", voice), cells};
  page.y += 2;
  write_below(page, page.say(sheet.arranged->says.front()), block(page, 6.4, true), 3);
  write_below(page, page.word(Word{"paper.pattern_arrows"}), block(page, 2.9, false), 1.5);
  for (std::size_t i = 0; i < sheet.arranged->rows.size(); ++i) draw_row(page, sheet, i);
  draw_why(page, sheet);
  draw_mistakes(page, sheet);
  draw_keep(page, sheet);
  return page.finish();
}

}  // namespace flatwise::paper
