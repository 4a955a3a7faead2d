#include <algorithm>

#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

constexpr double kText = 3.3;

std::string value_words(const Value& value, const std::optional<Uncertainty>& u, const Voice& voice) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  const Shown shown{.system = voice.units, .decimals = {}, .unit = {}, .currency = voice.currency};
  const auto quantity = std::get<AnyQuantity>(value);
  return u ? format_with_uncertainty(quantity, u->expanded_si, shown) : format_quantity(quantity, shown);
}

// The dictionary's word for a figure or one of its inputs; a figure that is still without words shows its own name.
std::string words_or(const std::string& code, const std::string& name, const Voice& voice) {
  return has_words(code, voice.language) ? word(code, voice) : name;
}

Word origin_word(OriginKind kind) {
  switch (kind) {
    case OriginKind::given:
      return Word{"paper.given"};
    case OriginKind::measured:
      return Word{"paper.measured"};
    case OriginKind::computed:
      return Word{"paper.computed"};
    case OriginKind::assumed:
      return Word{"paper.assumed"};
    case OriginKind::published:
      return Word{"paper.published"};
  }
  return Word{"paper.given"};
}

struct Line {
  std::string symbol, meaning, value, origin;
  bool bold = false;
};

struct Columns {
  double symbol, meaning, value, origin, right;
};
Columns columns_of(const Sheet& page) {
  const double x = page.left() + 9;
  const double w = page.right() - x;
  return {x, x + 0.10 * w, x + 0.48 * w, x + 0.66 * w, page.right()};
}
Block cell(double from, double to, bool bold) {
  return {.x = from, .width = to - from - 2, .type = {.size = kText, .bold = bold}, .leading = 1.2};
}

double height_of(const Sheet& page, const Line& line) {
  const Columns c = columns_of(page);
  return 1.6 + std::max({page.height_of(line.symbol, cell(c.symbol, c.meaning, line.bold)),
                         page.height_of(line.meaning, cell(c.meaning, c.value, line.bold)),
                         page.height_of(line.value, cell(c.value, c.origin, line.bold)),
                         page.height_of(line.origin, cell(c.origin, c.right, line.bold))});
}

void draw(Sheet& page, const Line& line) {
  page.need(height_of(page, line));
  const Columns c = columns_of(page);
  const double height = height_of(page, line);
  page.write(line.symbol, cell(c.symbol, c.meaning, line.bold), page.y);
  page.write(line.meaning, cell(c.meaning, c.value, line.bold), page.y);
  page.write(line.value, cell(c.value, c.origin, line.bold), page.y);
  page.write(line.origin, cell(c.origin, c.right, line.bold), page.y);
  page.y += height;
  page.pen().line({c.symbol, page.y - 0.6}, {c.right, page.y - 0.6});
}

/// Text added to a list of them, once.
void add_once(std::string& list, const std::string& text) {
  if (text.empty() || ("; " + list + "; ").find("; " + text + "; ") != std::string::npos) return;
  list += (list.empty() ? "" : "; ") + text;
}

/// One line an input; a repeated one is one line with all its values.
std::vector<Line> lines_of(const Sheet& page, const Working& working) {
  std::vector<Line> lines;
  const Input* before = nullptr;
  std::string wheres;
  for (const Input& input : working.inputs) {
    const bool assumed = input.origin.kind == OriginKind::assumed;
    std::string value = value_words(input.value, input.u, page.voice());
    if (!input.typed.empty() && input.typed != value) value = input.typed;
    const bool repeated = before != nullptr && before->name == input.name && before->origin.kind == input.origin.kind;
    if (repeated) {
      lines.back().value += "; " + value;
    } else {
      wheres.clear();
      lines.push_back({input.symbol,
                       words_or("figure." + working.figure + "." + input.name, input.name, page.voice()),
                       value,
                       {},
                       assumed});
    }
    add_once(wheres, where_words(input.origin, page.voice()));
    lines.back().origin = page.word(origin_word(input.origin.kind)) + (wheres.empty() ? "" : ", " + wheres);
    before = &input;
  }
  return lines;
}

struct Numbered {
  int number = 0;
  std::string about;
};

void draw_head(Sheet& page, const Working& working, const Numbered& numbered) {
  drawing::Pen pen = page.pen();
  pen.box({page.left(), page.y + 0.8, 7, 6.4}, drawing::kBlack);
  const std::string n = std::to_string(numbered.number);
  pen.text({page.left() + 3.5, page.y + 5.6}, n,
           {.size = size_to_fit(page.measure(), n, {4.2, true, 6}, 2),
            .bold = true,
            .anchor = drawing::Anchor::middle,
            .on_solid = true});
  const double x = page.left() + 9;
  std::string title = words_or("figure." + working.figure, working.figure, page.voice());
  if (!numbered.about.empty()) title += ": " + numbered.about;
  page.y += page.write(title, {.x = x, .width = page.right() - x, .type = {.size = 4.4, .bold = true}, .leading = 1.2},
                       page.y + 0.9) +
            1;
  for (const Output& out : working.outputs) {
    const std::string name = words_or("figure." + working.figure + "." + out.name, out.name, page.voice());
    const std::string value = value_words(out.value, out.u, page.voice());
    const bool main = &out == &working.outputs.front();
    const double half = x + 0.48 * (page.right() - x);
    const Block left{.x = x, .width = half - x - 2, .type = {.size = main ? 3.8 : kText}, .leading = 1.2};
    const Block right{
        .x = half, .width = page.right() - half, .type = {.size = main ? 5 : kText, .bold = true}, .leading = 1.2};
    const double height = std::max(page.height_of(name, left), page.height_of(value, right));
    page.need(height);
    page.write(name, left, page.y + (main ? 1.0 : 0));
    page.write(value, right, page.y);
    page.y += height + 0.4;
  }
}

void draw_sources(Sheet& page, const Working& working) {
  if (working.sources.empty()) return;
  const double x = page.left() + 9;
  const Block block{.x = x, .width = page.right() - x, .type = {.size = 3}, .leading = 1.25};
  const std::string words =
      page.say({Code{"paper.sources"}, {{"sources", sources_words(working.sources, page.voice())}}});
  page.need(page.height_of(words, block));
  page.y += page.write(words, block, page.y);
}

void draw_findings(Sheet& page, const Working& working) {
  const double x = page.left() + 9;
  for (const Finding& finding : working.findings) {
    std::string words = flatwise::say(finding, page.voice());
    if (finding.instruction) words += ' ' + page.say(*finding.instruction);
    const Block block{.x = x, .width = page.right() - x, .type = {.size = 3.5, .bold = true}, .leading = 1.25};
    page.need(page.height_of(words, block));
    page.y += page.write(words, block, page.y + 0.5) + 0.5;
  }
}

void draw(Sheet& page, const Working& working, const Numbered& numbered) {
  const auto lines = lines_of(page, working);
  double height = 26;
  for (const Line& line : lines) height += height_of(page, line);
  page.need(std::min(height, 70.0));  // Together where it can be; a long one may run over.
  page.rule(page.y, drawing::kWide);
  page.y += 0.6;
  draw_head(page, working, numbered);
  const double x = page.left() + 9;
  const Block formula{.x = x, .width = page.right() - x, .type = {.size = 3.8}, .leading = 1.3};
  page.need(page.height_of(working.formula, formula));
  page.y += page.write(working.formula, formula, page.y + 0.4) + 1.2;
  for (const Line& line : lines) draw(page, line);
  draw_sources(page, working);
  draw_findings(page, working);
  page.y += 4;
}

}  // namespace

Pages working_sheet(const WorkingSheet& sheet, const TextMeasure& measure) {
  const Voice& voice = sheet.head.voice;
  Sheet page{sheet.head,
             measure,
             word("paper.workings", voice),
             {{word("paper.figures", voice), std::to_string(sheet.workings.size())}}};
  page.y += page.write(page.word(Word{"paper.assumed_note"}),
                       {.x = page.left(), .width = page.width(), .type = {.size = 3.5}}, page.y + 1) +
            3;
  for (std::size_t i = 0; i < sheet.workings.size(); ++i) {
    CORE_CHECK(sheet.workings[i] != nullptr);
    draw(page, *sheet.workings[i],
         {.number = static_cast<int>(i) + 1, .about = i < sheet.about.size() ? sheet.about[i] : std::string{}});
  }
  return page.finish();
}

}  // namespace flatwise::paper
