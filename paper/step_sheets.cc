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
  return std::max(11.8,
                  7.6 + page.height_of(target.other, {.x = 0, .width = width, .type = {.size = 3.2}, .leading = 1.2}));
}

void draw_target(Sheet& page, const Target& target) {
  const double x1 = page.left() + 0.20 * page.width();
  const double x2 = page.left() + 0.56 * page.width();
  const double room = x2 - x1 - 3;
  const double height = target_height(page, target, room);
  page.need(height);
  drawing::Pen pen = page.pen();
  page.write(
      target.part,
      {.x = page.left() + 1, .width = x1 - page.left() - 3, .type = {.size = 4.2, .bold = true}, .leading = 1.15},
      page.y + 1.6);
  const double size = size_to_fit(page.measure(), target.value, {5, true, room}, 2.5);
  pen.text({x1, page.y + 6.2}, target.value, {.size = size, .bold = true});
  page.write(target.other, {.x = x1, .width = room, .type = {.size = 3.2}, .leading = 1.2}, page.y + 7.2);
  const double each = (page.right() - x2) / 2;
  for (int k = 0; k < 2; ++k)
    pen.line({x2 + k * each + 1, page.y + height - 3}, {x2 + (k + 1) * each - 3, page.y + height - 3});
  page.y += height;
  page.rule(page.y);
}

double targets_height(const std::vector<Target>& targets) {
  return targets.empty() ? 0 : 9.5 + 11.8 * static_cast<double>(targets.size());
}

void draw_targets(Sheet& page, const std::vector<Target>& targets) {
  if (targets.empty()) return;
  const std::size_t pages = page.page_count();
  page.need(std::min(targets_height(targets), 200.0));
  page.y += 3;
  if (page.page_count() != pages) {  // The caution of the nuts' own steps is on the page before.
    caution_box(page, {.lines = {page.word(Word{"bench.torque.before"}), page.word(Word{"bench.torque.caution"}),
                                 page.word(Word{"bench.rule"})},
                       .right = page.right()});
    page.y += 3;
  }
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
  step_table(page, {.steps = sheet.steps,
                    .second_look = false,
                    .keep_below = 0,
                    .code = code_text(sheet.head, "sheet", "tear-down"),
                    .sentence = page.word(Word{"paper.found_on_the_way"})});
  // Room that is left is for what was found.
  constexpr int kMostLines = 6;
  for (int i = 0; i < kMostLines && page.y + 10 < page.bottom(); ++i) {
    page.y += 9;
    page.rule(page.y);
  }
  return page.finish();
}

Pages assembly_sheet(const AssemblySheet& sheet, const TextMeasure& measure) {
  CORE_CHECK(sheet.shaft != nullptr && sheet.plan != nullptr);
  const Voice& voice = sheet.head.voice;
  Sheet page{sheet.head, measure, word("paper.assembly", voice), plan_cells(*sheet.plan, voice, false)};
  plan_strip(page, {.shaft = sheet.shaft, .plan = sheet.plan, .marks = sheet.marks, .stops = false});
  constexpr double kNames = 10.5;
  step_table(page, {.steps = sheet.steps,
                    .second_look = true,
                    .keep_below = targets_height(sheet.targets) + kNames,
                    .code = code_text(sheet.head, "sheet", "assembly"),
                    .sentence = page.word(Word{"paper.empty_box_stops"})});
  draw_targets(page, sheet.targets);
  page.need(kNames);
  page.signatures();
  return page.finish();
}

}  // namespace flatwise::paper
