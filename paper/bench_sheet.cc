#include <algorithm>
#include <cmath>

#include "drawing/section.h"
#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

using drawing::Anchor;
using drawing::kNarrow;
using drawing::kWide;

int decimals(UnitSystem system) { return system == UnitSystem::inch ? 4 : 3; }

std::string shown(Length length, UnitSystem system) {
  return format_quantity(any(length), {.system = system,
                                       .decimals = decimals(system),
                                       .unit = system == UnitSystem::inch ? "in" : "mm",
                                       .currency = {}});
}
// Only the figure, without its unit.
std::string figure(Length length, UnitSystem system) {
  std::string text = shown(length, system);
  while (!text.empty() && (text.back() < '0' || text.back() > '9')) text.pop_back();
  return text;
}

/// What of a reading is known before it is read, and how many digits are to be written before and behind the point.
struct Digits {
  std::string known;  ///< "3.9": all readings anywhere near the limits begin so.
  int before = 0, behind = 0;
};

Digits digits_of(const Limits& limits, UnitSystem system) {
  const Length tolerance = limits.greatest - limits.least;
  const std::string low = figure(limits.least - 10.0 * tolerance, system);
  const std::string high = figure(limits.greatest + 10.0 * tolerance, system);
  std::size_t same = 0;
  while (same < low.size() && same < high.size() && low.size() == high.size() && low[same] == high[same]) ++same;
  const std::size_t point = high.find('.');
  Digits d;
  if (same > point) {
    d.known = high.substr(0, same);
    d.behind = static_cast<int>(high.size() - same);
  } else {
    d.before = static_cast<int>(point);
    d.behind = static_cast<int>(high.size() - point - 1);
  }
  return d;
}

void draw_blank(Sheet& page, const Digits& d, double x, double y, double width) {
  drawing::Pen pen = page.pen();
  if (d.before == 0) {
    const double known = page.measure().width(d.known, 6.4, false);
    const double used = known + 0.6 + d.behind * drawing::kDigitPitch;
    drawing::draw_digit_boxes(pen.list(), {x + std::max(0.0, (width - used) / 2), y}, d.known, known, d.behind);
    return;
  }
  constexpr double kPoint = 1.8;
  const double each = std::min(drawing::kDigitPitch, (width - kPoint - 4) / (d.before + d.behind));
  double at = x + (width - each * (d.before + d.behind) - kPoint) / 2;
  for (int i = 0; i < d.before + d.behind; ++i) {
    if (i == d.before) {
      pen.circle({at + kPoint / 2 - 0.1, y + drawing::kDigitHeight - 0.5}, 0.5, drawing::kBlack);
      at += kPoint;
    }
    pen.box({at, y, std::min(drawing::kDigitWidth, each), drawing::kDigitHeight}, kNarrow);
    at += each;
  }
}

void draw_field(Sheet& page, double y, const std::string& name, const std::string& value) {
  drawing::Pen pen = page.pen();
  const double x = page.left() + 24;
  const double size = size_to_fit(page.measure(), name, {3.6, false, 23}, 2);
  pen.text({page.left(), y}, name, {.size = size});
  pen.line({x, y + 0.8}, {page.left() + 72, y + 0.8});
  if (value.empty()) return;
  const double fit = size_to_fit(page.measure(), value, {4, true, 45}, 2);
  pen.text({x + 2, y}, value, {.size = fit, .bold = true});
}

std::string with_unit(const std::string& name, const Sheet& page) {
  return name + ", " + (page.voice().units == UnitSystem::inch ? "°F" : "°C");
}

void draw_limits(Sheet& page, const BenchSheet& sheet, const Limits& limits) {
  const UnitSystem system = page.voice().units;
  const double room = 0.60 * page.width();
  double y = page.y;
  y += page.write(page.word(Word{"paper.hub_bore"}),
                  {.x = page.left(), .width = room, .type = {.size = 5.2, .bold = true}, .leading = 1.25}, y + 1.5) +
       1.5;
  const std::string main = page.say(
      {Code{"paper.limits"}, {{"least", figure(limits.least, system)}, {"greatest", shown(limits.greatest, system)}}});
  const double size = size_to_fit(page.measure(), main, {8, true, room}, 4);
  page.pen().text({page.left(), y + 7.6}, main, {.size = size, .bold = true});
  const UnitSystem second = other(system);
  const std::string small =
      page.say({Code{"paper.limits_other"},
                {{"least", figure(limits.least, second)}, {"greatest", shown(limits.greatest, second)}}});
  page.write(small, {.x = page.left(), .width = room, .type = {.size = 3.6}}, y + 9.4);
  y += 26;
  draw_field(page, y, page.word(Word{"paper.gauge"}), sheet.gauge);
  draw_field(page, y + 11, page.word(Word{"paper.ring"}), sheet.setting_ring ? shown(*sheet.setting_ring, system) : "");
  draw_field(page, y + 22, with_unit(page.word(Word{"paper.part_temperature"}), page), "");
  draw_field(page, y + 33, with_unit(page.word(Word{"paper.gauge_temperature"}), page), "");
  page.write(page.word(Word{"paper.one_night"}), {.x = page.left(), .width = 76, .type = {.size = 3.3}}, y + 38.5);
}

void draw_where(Sheet& page, const BenchSheet& sheet, int rotor) {
  const Shaft& shaft = *sheet.shaft;
  const Station& station = shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(rotor))];
  const double top = page.y + 4;
  const double section_width = 50;
  const auto section = drawing::hub_section(station, shaft.rotor(rotor), section_width);
  // A hub much higher than wide is drawn smaller, as a whole.
  const double scale = std::min(1.0, 68 / section.height);
  append(page.pen().list(), section, {page.right() - section_width * scale, top}, scale);
  const double circle = 44;
  const double x = page.left() + 84;
  append(page.pen().list(), drawing::direction_circle(sheet.directions, circle), {x, top + 15});
  const Block note{.x = x + circle / 2, .width = 50, .type = {.size = 3, .anchor = Anchor::middle}};
  page.write(page.word(Word{"paper.direction_one"}), note, top + 15 + circle - 1);
}

void draw_readings(Sheet& page, const BenchSheet& sheet, const Limits& limits) {
  const Digits digits = digits_of(limits, page.voice().units);
  drawing::Pen pen = page.pen();
  const double plane = page.left() + 14;
  const double mean = page.right() - 26;
  const double each = (mean - plane - 2) / sheet.directions;
  page.rule(page.y, kWide);
  const double base = page.y + 5.4;
  pen.text({page.left() + 1, base}, page.word(Word{"paper.plane"}), {.size = 3.4, .bold = true});
  for (int i = 0; i < sheet.directions; ++i)
    pen.text({plane + (i + 0.5) * each, base}, page.say({Code{"paper.direction"}, {{"number", i + 1}}}),
             {.size = std::min(3.4, each / 8), .bold = true, .anchor = Anchor::middle});
  pen.text({mean + 13, base}, page.word(Word{"paper.mean"}), {.size = 3.4, .bold = true, .anchor = Anchor::middle});
  page.y += 8;
  for (const char* name : {"A", "B"}) {
    page.rule(page.y);
    pen.text({page.left() + 3, page.y + 11.6}, name, {.size = 8, .bold = true});
    for (int i = 0; i < sheet.directions; ++i) draw_blank(page, digits, plane + i * each, page.y + 4.2, each);
    pen.line({mean + 2, page.y + 13}, {page.right() - 1, page.y + 13});
    page.y += 18.4;
  }
  page.rule(page.y, kWide);
}

void draw_answers(Sheet& page) {
  drawing::Pen pen = page.pen();
  const double top = page.y;
  page.write(page.word(Word{"paper.mark_one"}),
             {.x = page.left(), .width = 0.28 * page.width(), .type = {.size = 4.2, .bold = true}, .leading = 1.2},
             top + 3.6);
  const struct {
    Answer answer;
    Word word;
  } answers[] = {{Answer::in, Word{"drawing.in"}},
                 {Answer::out, Word{"drawing.out"}},
                 {Answer::cannot_tell, Word{"drawing.cannot_tell"}}};
  const double x0 = page.left() + 0.31 * page.width();
  const double each = (page.right() - x0) / 3;
  for (int i = 0; i < 3; ++i) {
    const double x = x0 + i * each;
    drawing::draw_answer(pen.list(), answers[i].answer, {x + 1, top + 3.2}, 6.4);
    const std::string name = page.word(answers[i].word);
    const double size = size_to_fit(page.measure(), name, {4, true, each - 15}, 2);
    pen.text({x + 13.5, top + 8}, name, {.size = size, .bold = true});
    for (int k = 0; k < 2; ++k) {
      drawing::draw_tick_box(pen.list(), {x + 1 + k * 13, top + 12.4}, 5);
      pen.text({x + 7.6 + k * 13, top + 16.4}, k == 0 ? "A" : "B", {.size = 3.6});
    }
  }
  page.y = top + 20.5;
  page.rule(page.y);
}

std::vector<std::string> looks(const Sheet& page, const Rotor& rotor, int flats) {
  std::vector<std::string> out{page.word(Word{"paper.look_bore"})};
  if (rotor.snap_rings != SnapRings::none) out.push_back(page.word(Word{"paper.look_ring_grooves"}));
  if (rotor.seals > 0) out.push_back(page.word(Word{"paper.look_seal_seats"}));
  out.push_back(page.word(Word{"paper.look_bolts"}));
  out.push_back(page.word(Word{"paper.look_halves"}));
  out.push_back(page.say({Code{"paper.look_flats"}, {{"flats", flats}}}));
  return out;
}

void draw_looks(Sheet& page, const std::vector<std::string>& items) {
  drawing::Pen pen = page.pen();
  page.y += page.write(page.word(Word{"paper.look_and_feel"}),
                       {.x = page.left(), .width = page.width(), .type = {.size = 4.2, .bold = true}}, page.y + 2) +
            5.5;
  const double half = page.width() / 2;
  const auto rows = (items.size() + 1) / 2;
  constexpr double kRow = 9.2;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const double x = page.left() + (i < rows ? 0 : half + 1);
    const auto row = static_cast<double>(i % rows);
    const double y = page.y + row * kRow;
    const Block block{.x = x, .width = half - 30, .type = {.size = 3.6}, .leading = 1.15};
    page.write(items[i], block, y + 2.3 - page.height_of(items[i], block) / 2);
    for (int k = 0; k < 2; ++k) {
      const double box = x + half - 26 + k * 12;
      drawing::draw_tick_box(pen.list(), {box, y}, drawing::kTickSide);
      if (i % rows != 0) continue;
      const std::string name = page.word(k == 0 ? Word{"paper.sound"} : Word{"paper.not_sound"});
      pen.text({box + drawing::kTickSide / 2, y - 1.2}, name,
               {.size = size_to_fit(page.measure(), name, {2.6, false, 11}, 1.5), .anchor = Anchor::middle});
    }
  }
  page.y += static_cast<double>(rows) * kRow;
  page.rule(page.y, kWide);
}

void draw_end(Sheet& page, const BenchSheet& sheet, int rotor) {
  const double top = page.y;
  page.code(code_text(sheet.head, "bench", std::to_string(rotor)), top + 3.2);
  const double room = page.code_left() - page.left();
  page.write(page.word(Word{"paper.no_tick"}), {.x = page.left(), .width = room, .type = {.size = 3.5, .bold = true}},
             top + 3);
  drawing::Pen pen = page.pen();
  double x = page.left();
  for (const Word& id : {Word{"paper.bench"}, Word{"paper.second_look"}}) {
    const double name = page.measure().width(page.word(id), 3.5, true);
    pen.text({x, top + 19}, page.word(id), {.size = 3.5, .bold = true});
    pen.line({x + name + 2, top + 19.8}, {x + room / 2 - 4, top + 19.8});
    x += room / 2;
  }
  page.y = top + 4 + Sheet::kCodeHeight;
}

/// A line for what was read, its caption before it.
void draw_line(Sheet& page, const std::string& caption, double x, double y) {
  drawing::Pen pen = page.pen();
  const double room = 0.55 * (page.right() - x);
  pen.text({x, y}, caption, {.size = size_to_fit(page.measure(), caption, {3.6, false, room - 2}, 2)});
  pen.line({x + room, y + 0.8}, {page.right() - 1, y + 0.8});
}

/// The caution first, then the band as a picture, and beside it the blanks.
void draw_press(Sheet& page, const PressBlock& press) {
  constexpr double kPicture = 112, kHigh = 88, kLine = 10.5;
  page.need(kHigh + 60);
  page.rule(page.y, kWide);
  page.y += 3;
  caution_box(page, {.lines = {page.word(Word{"bench.press.before"}), page.word(Word{"bench.press.caution_1"}),
                               page.word(Word{"bench.press.caution_2"}), page.word(Word{"bench.rule"})},
                     .right = page.right()});
  page.y += page.write(page.say({Code{"paper.press_expected"}, {{"range", press.expected}}}),
                       {.x = page.left(), .width = page.width(), .type = {.size = 5, .bold = true}, .leading = 1.2},
                       page.y + 3) +
            5;
  append(page.pen().list(),
         within_its_width(drawing::press_curve(press.curve, {.width = kPicture, .height = kHigh}), page.measure()),
         {page.left(), page.y});
  const double x = page.left() + kPicture + 5;
  double y = page.y + 8;
  page.write(page.word(Word{"paper.force_read"}),
             {.x = x, .width = page.right() - x, .type = {.size = 3.6, .bold = true}}, y - 5);
  for (const std::string& travel : press.travels)
    draw_line(page, page.say({Code{"bench.press.curve_field"}, {{"travel", travel}}}), x, y += kLine);
  draw_line(page, page.word(Word{"paper.press_greatest"}), x, y + kLine);
  page.y += kHigh + 2;
  for (const std::string& note : press.notes)
    page.y +=
        page.write(note, {.x = page.left(), .width = page.width(), .type = {.size = 3.2}, .leading = 1.2}, page.y) + 2;
  page.rule(page.y, kWide);
}

Sheet one(const BenchSheet& sheet, int number, const TextMeasure& measure) {
  const Rotor& rotor = sheet.shaft->rotor(number);
  const Voice& voice = sheet.head.voice;
  const std::string title = say(Code{"paper.bench_sheet"}.id(), {{"rotor", number}}, voice);
  std::vector<Cell> cells{{word("paper.tray", voice), std::to_string(number)}};
  if (!rotor.hub.fit_code.empty()) cells.insert(cells.begin(), {word("paper.fit", voice), rotor.hub.fit_code});
  if (const auto play = sheet.plays.find(number); play != sheet.plays.end())
    cells.push_back({word("paper.side_play_in", voice), play->second});
  Sheet page{sheet.head, measure, title, std::move(cells)};
  draw_limits(page, sheet, rotor.hub.bore);
  draw_where(page, sheet, number);
  page.y += 81;
  draw_readings(page, sheet, rotor.hub.bore);
  draw_answers(page);
  const auto items = looks(page, rotor, sheet.shaft->flats());
  draw_looks(page, items);
  draw_end(page, sheet, number);
  for (const PressBlock& press : sheet.presses)
    if (press.rotor == number) draw_press(page, press);
  return page;
}

}  // namespace

Pages bench_sheet(const BenchSheet& sheet, const TextMeasure& measure) {
  CORE_CHECK(sheet.shaft != nullptr && sheet.directions >= 2 && sheet.directions <= 6);
  std::vector<Sheet> sheets;
  std::size_t total = 0;
  for (const int rotor : sheet.rotors) {
    sheets.push_back(one(sheet, rotor, measure));
    total += sheets.back().page_count();
  }
  Pages pages;
  for (Sheet& each : sheets) {
    Pages more = each.finish({.before = pages.size(), .total = total});
    std::move(more.begin(), more.end(), std::back_inserter(pages));
  }
  return pages;
}

}  // namespace flatwise::paper
