// Tear-down and assembly.
#include <algorithm>

#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

std::string opens_from(const teardown::Split& split, const Voice& voice) {
  if (split.from_a > 0 && split.from_b > 0) return word("paper.both_ends", voice);
  if (split.from_a > 0) return word("paper.end_a", voice);
  if (split.from_b > 0) return word("paper.end_b", voice);
  return word("paper.none", voice);
}

std::vector<Cell> plan_cells(const teardown::Plan& plan, const Voice& voice, bool off) {
  return {{word("paper.opens_from", voice), opens_from(plan.split, voice)},
          {off ? word("paper.comes_off", voice) : word("paper.goes_on", voice), numbers_words(plan.rotors, voice)}};
}

// A figure to reach: as large as the limits of a bench sheet, a blank beside it and one for the second look.
double target_height(const Sheet& page, const Target& target, double width) {
  return std::max(13.0, 8 + page.height_of(target.other, {.x = 0, .width = width, .type = {.size = 3.2}, .leading = 1.2}));
}

void draw_target(Sheet& page, const Target& target) {
  const double x1 = page.left() + 0.20 * page.width();
  const double x2 = page.left() + 0.56 * page.width();
  const double room = x2 - x1 - 3;
  const double height = target_height(page, target, room);
  page.need(height);
  drawing::Pen pen = page.pen();
  page.write(target.part, {.x = page.left() + 1, .width = x1 - page.left() - 3, .type = {.size = 4.2, .bold = true}, .leading = 1.15}, page.y + 1.6);
  const double size = size_to_fit(page.measure(), target.value, {5, true, room}, 2.5);
  pen.text({x1, page.y + 6.2}, target.value, {.size = size, .bold = true});
  page.write(target.other, {.x = x1, .width = room, .type = {.size = 3.2}, .leading = 1.2}, page.y + 7.2);
  const double each = (page.right() - x2) / 2;
  for (int k = 0; k < 2; ++k) pen.line({x2 + k * each + 1, page.y + height - 3}, {x2 + (k + 1) * each - 3, page.y + height - 3});
  page.y += height;
  page.rule(page.y);
}

double targets_height(const std::vector<Target>& targets) { return targets.empty() ? 0 : 12 + 13.0 * static_cast<double>(targets.size()); }

void draw_targets(Sheet& page, const std::vector<Target>& targets) {
  if (targets.empty()) return;
  page.need(12 + 13);
  page.y += 3;
  page.rule(page.y, drawing::kWide);
  drawing::Pen pen = page.pen();
  const double x2 = page.left() + 0.56 * page.width();
  const double each = (page.right() - x2) / 2;
  pen.text({page.left() + 1, page.y + 4.4}, page.word(Word{"paper.targets"}), {.size = 3.2, .bold = true});
  pen.text({x2 + 1, page.y + 4.4}, page.word(Word{"paper.read"}), {.size = 3.2, .bold = true});
  pen.text({x2 + each + 1, page.y + 4.4}, page.word(Word{"paper.second_look"}), {.size = 3.2, .bold = true});
  page.y += 6;
  page.rule(page.y);
  for (const Target& target : targets) draw_target(page, target);
}

}  // namespace

Pages tear_down_sheet(const TearDownSheet& sheet, const TextMeasure& measure) {
  CORE_CHECK(sheet.shaft != nullptr && sheet.plan != nullptr);
  const Voice& voice = sheet.head.voice;
  Sheet page{sheet.head, measure, word("paper.tear_down", voice), plan_cells(*sheet.plan, voice, true)};
  plan_strip(page, {.shaft = sheet.shaft, .plan = sheet.plan, .marks = sheet.marks});
  constexpr double kFound = 8;
  step_table(page, {.steps = sheet.steps, .second_look = false, .keep_below = Sheet::kCodeHeight + kFound});
  page.need(Sheet::kCodeHeight + kFound);
  page.y += 3;
  page.code(code_text(sheet.head, "sheet", "tear-down"), page.y);
  const double top = page.y;
  page.y += page.write(page.word(Word{"paper.found_on_the_way"}), {.x = page.left(), .width = page.code_left() - page.left(), .type = {.size = 3.5, .bold = true}}, page.y);
  drawing::Pen pen = page.pen();
  for (double line = top + 13; line < top + Sheet::kCodeHeight; line += 8) pen.line({page.left(), line}, {page.code_left(), line});
  page.y = top + Sheet::kCodeHeight;
  return page.finish();
}

Pages assembly_sheet(const AssemblySheet& sheet, const TextMeasure& measure) {
  CORE_CHECK(sheet.shaft != nullptr && sheet.plan != nullptr);
  const Voice& voice = sheet.head.voice;
  Sheet page{sheet.head, measure, word("paper.assembly", voice), plan_cells(*sheet.plan, voice, false)};
  plan_strip(page, {.shaft = sheet.shaft, .plan = sheet.plan, .marks = sheet.marks});
  const double below = targets_height(sheet.targets) + Sheet::kCodeHeight + 4;
  step_table(page, {.steps = sheet.steps, .second_look = true, .keep_below = below});
  draw_targets(page, sheet.targets);
  page.need(Sheet::kCodeHeight + 4);
  page.y += 3;
  page.code(code_text(sheet.head, "sheet", "assembly"), page.y);
  const double top = page.y;
  const double room = page.code_left() - page.left();
  page.y += page.write(page.word(Word{"paper.empty_box_stops"}), {.x = page.left(), .width = room, .type = {.size = 3.5, .bold = true}}, page.y);
  drawing::Pen pen = page.pen();
  double line = top + 16;
  for (const Word& id : {Word{"paper.bench"}, Word{"paper.second_look"}}) {
    const double name = page.measure().width(page.word(id), 3.6, true);
    pen.text({page.left(), line}, page.word(id), {.size = 3.6, .bold = true});
    pen.line({page.left() + name + 2, line + 0.8}, {page.code_left(), line + 0.8});
    line += 8;
  }
  page.y = top + Sheet::kCodeHeight;
  return page.finish();
}

}  // namespace flatwise::paper
