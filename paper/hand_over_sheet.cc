#include <algorithm>
#include <array>

#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

using drawing::kHeavy;
using drawing::kWide;

constexpr double kText = 3.5;
constexpr double kRow = 7.2;
constexpr double kSmall = 3.0;
constexpr double kVerdictHead = 14, kReasonsHead = 4, kFrame = 6;  ///< Room above the reasons, and around them.

Block block(double x, double width, double size = kText, bool bold = false) {
  return {.x = x, .width = width, .type = {.size = size, .bold = bold}, .leading = 1.25};
}

/// Writes at the cursor and moves it below.
void write_below(Sheet& page, const std::string& text, const Block& at) { page.y += page.write(text, at, page.y); }

// --- Verdict ---------------------------------------------------------------------------------------------------------

/// Beside the verdict stands when the shaft is due next; where nothing does, the verdict has the whole width.
double verdict_right(const Sheet& page, const HandOverSheet& sheet) {
  return sheet.next_due.empty() ? page.right() : page.left() + 0.66 * page.width();
}

/// Where the reasons of a verdict stand, and how high each is.
Block reason_block(const Sheet& page, double right) {
  const double text = page.left() + 20;
  return block(text, right - text - 3, 4);
}

/// Reasons from `first` on that fit on what is left of the page below `head`; one at least.
std::size_t reasons_that_fit(const Sheet& page, const HandOverSheet& sheet, std::size_t first, double head,
                             double right) {
  std::size_t next = first;
  for (double height = head + kFrame; next < sheet.because.size(); ++next) {
    height += page.height_of(sheet.because[next], reason_block(page, right));
    if (height > page.room() && next > first) break;
  }
  return next;
}

void next_due(Sheet& page, const HandOverSheet& sheet, double x, double top) {
  if (sheet.next_due.empty()) return;
  const double width = page.right() - x;
  drawing::Pen pen = page.pen();
  pen.text({x, top + 3.5}, page.word(Word{"paper.next_due"}), {.size = kSmall});
  pen.text({x, top + 10.4}, sheet.next_due,
           {.size = size_to_fit(page.measure(), sheet.next_due, {7, true, width}, 3.5), .bold = true});
  page.write(sheet.next_due_says, block(x, width, 3.3), top + 12);
}

/// A frame with the verdict and its reasons `from` to `to`; what goes on over the page has the sign alone.
void verdict_frame(Sheet& page, const HandOverSheet& sheet, std::size_t from, std::size_t to, double right) {
  const bool first = from == 0;
  const Block reason = reason_block(page, right);
  double height = (first ? kVerdictHead : kReasonsHead) + kFrame / 2;
  for (std::size_t i = from; i < to; ++i) height += page.height_of(sheet.because[i], reason);
  height = std::max(height, first ? 25.0 : 14.0);
  drawing::Pen pen = page.pen();
  pen.box({page.left() + 0.45, page.y, right - page.left() - 0.9, height}, kHeavy);
  const drawing::Point sign{page.left() + 10, page.y + std::min(height, 25.0) / 2 + (first ? 5 : 3)};
  drawing::draw_flag(pen.list(), sheet.complete ? drawing::Flag::done : drawing::Flag::stopped, sign, first ? 9 : 5);
  if (first)
    pen.text({reason.x, page.y + 10.5}, sheet.verdict,
             {.size = size_to_fit(page.measure(), sheet.verdict, {8, true, reason.width}, 4), .bold = true});
  double y = page.y + (first ? kVerdictHead : kReasonsHead) - 1.5;
  for (std::size_t i = from; i < to; ++i) y += page.write(sheet.because[i], reason, y);
  if (first) next_due(page, sheet, right + 5, page.y);
  page.y += height + 3;
}

/// A job with much open has more reasons than a page: the frame goes on over the page, and no reason is lost.
void verdict(Sheet& page, const HandOverSheet& sheet) {
  const double right = verdict_right(page, sheet);
  std::size_t from = 0;
  do {
    page.y += 1.5;
    const double head = from == 0 ? kVerdictHead : kReasonsHead;
    page.need(head + kFrame + 25);
    const std::size_t to = reasons_that_fit(page, sheet, from, head, right);
    verdict_frame(page, sheet, from, to, right);
    from = to;
  } while (from < sheet.because.size());
}

// --- The shaft -------------------------------------------------------------------------------------------------------

void strip(Sheet& page, const HandOverSheet& sheet) {
  const auto drawn =
      drawing::shaft_strip(*sheet.shaft, sheet.states, sheet.marks, {.width = page.width(), .greatest_height = 31});
  page.need(drawn.list.height + 7);
  append(page.pen().list(), drawn.list, {page.left(), page.y});
  page.y += drawn.list.height + 0.5;
  write_below(page, page.word(Word{"paper.hatched_renewed"}), block(page.left(), page.width(), kSmall));
  page.y += 1;
}

// --- A line a rotor --------------------------------------------------------------------------------------------------

struct Columns {
  double rotor, set, bore_a, bore_b, press, marks, play, right;
};
Columns columns_of(const Sheet& page) {
  const double w = page.width();
  const auto at = [&](double share) { return page.left() + share * w; };
  return {at(0), at(0.075), at(0.165), at(0.325), at(0.485), at(0.74), at(0.84), page.right()};
}

void row_head(Sheet& page, const HandOverSheet& sheet) {
  page.rule(page.y, kWide);
  const Columns c = columns_of(page);
  drawing::Pen pen = page.pen();
  const auto head = [&](double x, double to, const Word& id, const std::string& below) {
    const std::string name = page.word(id);
    pen.text({x, page.y + 4.4}, name,
             {.size = size_to_fit(page.measure(), name, {3.2, true, to - x - 1}, 2), .bold = true});
    pen.text({x, page.y + 8}, below, {.size = size_to_fit(page.measure(), below, {2.7, false, to - x - 1}, 1.6)});
  };
  head(c.rotor, c.set, Word{"paper.rotor"}, {});
  head(c.set, c.bore_a, Word{"paper.set"}, {});
  head(c.bore_a, c.bore_b, Word{"paper.bore_a"}, sheet.bore_limits);
  head(c.bore_b, c.press, Word{"paper.bore_b"}, sheet.bore_limits);
  head(c.press, c.marks, Word{"paper.press_force"}, sheet.press_unit);
  head(c.marks, c.play, Word{"paper.marks"}, "A · B");
  head(c.play, c.right, Word{"paper.side_play"}, sheet.play_limits);
  page.y += 9.6;
  page.rule(page.y);
}

void bore(Sheet& page, const HandOverRow::Bore& bore, double x, double to) {
  drawing::Pen pen = page.pen();
  const double text = x + 7.5;
  if (bore.answer) drawing::draw_answer(pen.list(), *bore.answer, {x, page.y + 1.7}, 3.8);
  pen.text({bore.answer ? text : x, page.y + 5}, bore.value,
           {.size = size_to_fit(page.measure(), bore.value, {kText, false, to - text - 1}, 2)});
}

void row(Sheet& page, const HandOverSheet& sheet, const HandOverRow& row) {
  if (page.need(kRow)) row_head(page, sheet);
  const Columns c = columns_of(page);
  drawing::Pen pen = page.pen();
  const auto put = [&](double x, double to, const std::string& text, bool bold) {
    pen.text({x, page.y + 5}, text,
             {.size = size_to_fit(page.measure(), text, {kText, bold, to - x - 1}, 2), .bold = bold});
  };
  pen.text({c.rotor + 1.5, page.y + 5.4}, std::to_string(row.rotor), {.size = 4.6, .bold = true});
  put(c.set, c.bore_a, row.set, row.renewed);
  bore(page, row.a, c.bore_a, c.bore_b);
  bore(page, row.b, c.bore_b, c.press);
  put(c.press, c.marks, row.press, false);
  put(c.marks, c.play, row.marks, false);
  put(c.play, c.right, row.play, false);
  page.y += kRow;
  page.rule(page.y);
}

void rotors(Sheet& page, const HandOverSheet& sheet) {
  page.need(9.6 + 2 * kRow);
  row_head(page, sheet);
  for (const HandOverRow& r : sheet.rows) row(page, sheet, r);
  page.y += 1.2;
  for (const std::string& note : sheet.notes) {
    page.need(4.5);
    write_below(page, note, block(page.left(), page.width(), kSmall));
  }
  page.y += 1.5;
}

// --- Torque, stack, test run, decisions -------------------------------------------------------------------------------

double part_height(const Sheet& page, const HandOverPart& part, double width) {
  double height = 7.5;
  for (const std::string& line : part.lines) height += page.height_of(line, block(0, width, 3.3));
  return height;
}

void parts_abreast(Sheet& page, std::span<const HandOverPart> parts) {
  const double each = page.width() / static_cast<double>(std::max<std::size_t>(parts.size(), 1));
  double height = 0;
  for (const HandOverPart& part : parts) height = std::max(height, part_height(page, part, each - 5));
  page.need(height + 2);
  page.rule(page.y, kWide);
  drawing::Pen pen = page.pen();
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const double x = page.left() + static_cast<double>(i) * each + (i == 0 ? 0 : 2.5);
    if (i > 0) pen.line({x - 2.5, page.y + 1.5}, {x - 2.5, page.y + height});
    pen.text({x, page.y + 6}, parts[i].title, {.size = 4.4, .bold = true});
    double y = page.y + 7.5;
    for (const std::string& line : parts[i].lines) y += page.write(line, block(x, each - 5, 3.3), y);
  }
  page.y += height + 2;
}

void lines_under(Sheet& page, const std::string& title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  page.need(8 + page.height_of(lines.front(), block(page.left(), page.width(), 3.3)));
  page.rule(page.y, kWide);
  page.pen().text({page.left(), page.y + 6}, title, {.size = 4.4, .bold = true});
  page.y += 7.5;
  for (const std::string& line : lines) {
    page.need(page.height_of(line, block(page.left(), page.width(), 3.3)));
    write_below(page, line, block(page.left(), page.width(), 3.3));
  }
  page.y += 2;
}

// --- Signatures and the chain ------------------------------------------------------------------------------------------

void signature(Sheet& page, const HandOverSignature& s, double x, double width) {
  drawing::Pen pen = page.pen();
  const double line = page.y + 18;
  if (!s.who.empty()) {
    pen.text({x, line - 5.2}, s.who,
             {.size = size_to_fit(page.measure(), s.who, {4.2, true, width - 3}, 2), .bold = true});
    pen.text({x, line - 1.2}, s.when, {.size = kSmall});
  }
  pen.line({x, line}, {x + width - 3, line});
  pen.text({x, line + 4}, s.role, {.size = kText, .bold = true});
  page.write(s.says, block(x, width - 3, kSmall), line + 4.6);
}

void signed_by(Sheet& page, const HandOverSheet& sheet) {
  constexpr double kHeight = 34;
  page.need(kHeight);
  page.rule(page.y, kWide);
  page.pen().text({page.left(), page.y + 6}, page.word(Word{"paper.signed"}), {.size = 4.4, .bold = true});
  const double each =
      (page.width() - Sheet::kCodeSide - 8) / static_cast<double>(std::max<std::size_t>(sheet.signatures.size(), 1));
  for (std::size_t i = 0; i < sheet.signatures.size(); ++i)
    signature(page, sheet.signatures[i], page.left() + static_cast<double>(i) * each, each);
  page.code(code_text(sheet.head, "entry", std::to_string(sheet.entries) + ":" + sheet.chain_head.substr(0, 16)),
            page.y + 3);
  page.y += kHeight - 6;
  const std::string chain =
      page.say({Code{"paper.chain_head"}, {{"entries", sheet.entries}, {"hash", sheet.chain_head}}});
  write_below(page, chain, block(page.left(), page.width() - Sheet::kCodeSide - 8, 2.7));
  page.y += 2;
}

// --- Every entry ---------------------------------------------------------------------------------------------------

void log_head(Sheet& page) {
  page.rule(page.y, kWide);
  drawing::Pen pen = page.pen();
  pen.text({page.left(), page.y + 4.2}, page.word(Word{"paper.entry"}), {.size = 2.9, .bold = true});
  pen.text({page.left() + 12, page.y + 4.2}, page.word(Word{"paper.when"}), {.size = 2.9, .bold = true});
  pen.text({page.left() + 42, page.y + 4.2}, page.word(Word{"paper.who"}), {.size = 2.9, .bold = true});
  pen.text({page.left() + 68, page.y + 4.2}, page.word(Word{"paper.what_was_entered"}), {.size = 2.9, .bold = true});
  page.y += 5.6;
  page.rule(page.y);
}

void log(Sheet& page, const HandOverSheet& sheet) {
  if (sheet.log.empty()) return;
  page.next_page();
  log_head(page);
  const double x = page.left() + 68;
  for (const LoggedEntry& entry : sheet.log) {
    const Block says = block(x, page.right() - x, kSmall);
    const double height = page.height_of(entry.says, says) + 1;
    if (page.need(height)) log_head(page);
    drawing::Pen pen = page.pen();
    pen.text({page.left() + 8, page.y + 3.4}, std::to_string(entry.number),
             {.size = kSmall, .anchor = drawing::Anchor::end});
    pen.text({page.left() + 12, page.y + 3.4}, entry.when,
             {.size = size_to_fit(page.measure(), entry.when, {kSmall, false, 28}, 1.6)});
    pen.text({page.left() + 42, page.y + 3.4}, entry.who,
             {.size = size_to_fit(page.measure(), entry.who, {kSmall, false, 24}, 1.6)});
    page.write(entry.says, says, page.y + 0.4);
    page.y += height;
  }
}

}  // namespace

Pages hand_over_sheet(const HandOverSheet& sheet, const TextMeasure& measure) {
  const Voice& voice = sheet.head.voice;
  Sheet page{sheet.head,
             measure,
             word("paper.hand_over", voice),
             {{word("paper.hour_meter", voice), sheet.hour_meter}, {word("paper.out", voice), sheet.out}}};
  whose_row(page, sheet.machine, sheet.customer);
  verdict(page, sheet);
  strip(page, sheet);
  rotors(page, sheet);
  constexpr std::size_t kAbreast = 3;
  for (std::size_t i = 0; i < sheet.parts.size(); i += kAbreast)
    parts_abreast(page, std::span{sheet.parts}.subspan(i, std::min(kAbreast, sheet.parts.size() - i)));
  lines_under(page, page.word(Word{"paper.corrected"}), sheet.corrected);
  signed_by(page, sheet);
  log(page, sheet);
  return page.finish();
}

}  // namespace flatwise::paper
