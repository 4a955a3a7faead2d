#include "paper/sheet_parts.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace flatwise::paper {
namespace {

constexpr double kCautionText = 3.5;
constexpr double kCautionLine = 1.3;

Block caution_block(const Sheet& page, const Caution& caution, bool first) {
  const double left = page.left() + caution.triangle + 6;
  return {.x = left,
          .width = caution.right - 3 - left,
          .type = {.size = kCautionText, .bold = first},
          .leading = kCautionLine};
}

double caution_text(const Sheet& page, const Caution& caution) {
  double text = 0;
  for (std::size_t i = 0; i < caution.lines.size(); ++i)
    text += page.height_of(caution.lines[i], caution_block(page, caution, i == 0));
  return text;
}

}  // namespace

std::string profile_words(int flats, const Voice& voice) {
  if (flats == 4) return word("paper.square", voice);
  if (flats == 6) return word("paper.hexagon", voice);
  if (flats == 8) return word("paper.octagon", voice);
  return say(Code{"paper.flats"}.id(), {{"flats", flats}}, voice);
}

std::string pattern_words(const Pattern& pattern, const Voice& voice) {
  switch (pattern.rule) {
    case Pattern::Rule::facing:
      return word("paper.facing", voice);
    case Pattern::Rule::listed:
      return word("paper.listed", voice);
    case Pattern::Rule::step:
      break;
  }
  return say(Code{"paper.step"}.id(), {{"flats", pattern.step_flats}}, voice);
}

std::string numbers_words(const std::vector<int>& numbers, const Voice& voice) {
  if (numbers.empty()) return word("paper.none", voice);
  const auto count = static_cast<int>(numbers.size());
  if (count > 2 && numbers.back() - numbers.front() == count - 1)
    return say(Code{"paper.range"}.id(), {{"first", numbers.front()}, {"last", numbers.back()}}, voice);
  return say(Code{"paper.numbers"}.id(), {{"numbers", std::vector<std::int64_t>(numbers.begin(), numbers.end())}},
             voice);
}

double caution_height(const Sheet& page, const Caution& caution) {
  return std::max(caution_text(page, caution) + 2.6, caution.triangle + 1.6) + 1.8;
}

void caution_box(Sheet& page, const Caution& caution) {
  if (caution.lines.empty()) return;
  const double height = caution_height(page, caution) - 1.8;
  page.need(height + 1.8);
  drawing::Pen pen = page.pen();
  pen.box({page.left() + 0.45, page.y + 0.9, caution.right - page.left() - 0.9, height}, drawing::kHeavy);
  drawing::draw_caution(pen.list(), {page.left() + 3.2, page.y + 0.9 + (height - 0.87 * caution.triangle) / 2},
                        caution.triangle);
  double top = page.y + 0.9 + (height - caution_text(page, caution)) / 2;
  for (std::size_t i = 0; i < caution.lines.size(); ++i)
    top += page.write(caution.lines[i], caution_block(page, caution, i == 0), top - 0.1);
  page.y += height + 1.8;
}

// Whom the sheet is handed to looks for his machine first.
void whose_row(Sheet& page, const std::string& machine, const std::string& customer) {
  if (machine.empty() && customer.empty()) return;
  const double half = page.width() / 2;
  double lowest = 0;
  double x = page.left();
  const double top = page.y;
  for (const auto& [caption, name] :
       {std::pair{Word{"paper.machine"}, &machine}, {Word{"paper.customer"}, &customer}}) {
    const double text = x == page.left() ? x : x + 1.5;
    page.pen().text({text, top + 2.6}, page.word(caption), {.size = 2.6});
    const Block block{.x = text, .width = half - 4.5, .type = {.size = 4, .bold = true}, .leading = 1.25};
    lowest = std::max(lowest, page.write(*name, block, top + 3.4));
    x += half;
  }
  page.y = top + 3.4 + lowest + 1.4;
  page.pen().line({page.left() + half, top - 0.2}, {page.left() + half, page.y - 1.2});
  page.rule(page.y);
  page.y += 2;
}

void plan_strip(Sheet& page, const PlanStrip& strip) {
  const Shaft& shaft = *strip.shaft;
  const auto count = static_cast<int>(shaft.stations().size());
  std::vector<drawing::StationState> states(shaft.stations().size());
  for (const int i : strip.plan->stations) states[static_cast<std::size_t>(i)].body = drawing::Body::off;
  drawing::StripOptions options{.width = page.width(), .greatest_height = 31};
  const teardown::Split split = strip.plan->split;
  if (strip.stops && split.from_a + split.from_b < count) {
    if (split.from_a > 0) options.stop_before.push_back(split.from_a);
    if (split.from_b > 0) options.stop_before.push_back(count - split.from_b);
    options.stop_words = page.word(Word{"paper.stop_here"});
  }
  std::vector<drawing::RotorMarks> marks{strip.marks.begin(), strip.marks.end()};
  const auto drawn = drawing::shaft_strip(shaft, states, marks, options);
  page.need(drawn.list.height + 2);
  append(page.pen().list(), drawn.list, {page.left(), page.y});
  page.y += drawn.list.height + 1.5;
}

drawing::DisplayList within_its_width(drawing::DisplayList picture, const TextMeasure& measure) {
  for (drawing::Item& item : picture.items) {
    auto* text = std::get_if<drawing::Text>(&item);
    if (text == nullptr) continue;
    const double to_left = text->at.x, to_right = picture.width - text->at.x;
    const double room = text->anchor == drawing::Anchor::start ? to_right
                        : text->anchor == drawing::Anchor::end ? to_left
                                                               : 2 * std::min(to_left, to_right);
    const double wide = measure.width(text->text, text->size, text->bold);
    if (wide > room && room > 0) text->size *= 0.995 * room / wide;
  }
  return picture;
}

}  // namespace flatwise::paper
