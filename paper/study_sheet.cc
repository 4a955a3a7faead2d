#include "paper/study_sheet.h"

#include <algorithm>

#include "drawing/shaft_strip.h"
#include "paper/sheet_parts.h"
#include "study/pictures.h"

namespace flatwise::paper {
namespace {

using drawing::Pen;
using study::Form;
using study::Row;

constexpr double kLabels = 30;  ///< Width of the column of labels, mm.
constexpr double kPad = 1.6;
constexpr double kLabel = 3.1, kSmall = 2.5;
constexpr double kStripHeight = 20, kArrows = 27;
constexpr double kPlotGap = 8;

double text_size(Form form) { return form == Form::large ? 5 : form == Form::words ? 2.9 : 3.6; }
bool is_bold(Form form) { return form == Form::large || form == Form::figure; }

/// The table of a study, row by row, over as many pages as it takes.
class Table {
 public:
  Table(Sheet& page, const study::Study& study) : page_{page}, study_{study} {
    column_ = (page.width() - kLabels) / study.count();
  }

  void draw() {
    begin();
    draw_names();
    for (const Row& row : study_.rows) {
      const double high = height_of(row);
      if (page_.room() < high) {
        end();
        page_.next_page();
        begin();
      }
      draw_row(row, high);
    }
    end();
  }

 private:
  [[nodiscard]] double left_of(int way) const { return page_.left() + kLabels + way * column_; }
  [[nodiscard]] Block block(Form form) const {
    return {
        .x = 0, .width = column_ - 2 * kPad, .type = {.size = text_size(form), .bold = is_bold(form)}, .leading = 1.2};
  }
  [[nodiscard]] Block label_block(bool detail) const {
    return {.x = page_.left() + kPad,
            .width = kLabels - 2 * kPad,
            .type = {.size = detail ? kSmall : kLabel, .bold = !detail},
            .leading = 1.2};
  }
  [[nodiscard]] Block detail_block() const {
    return {.x = 0, .width = column_ - 2 * kPad, .type = {.size = kSmall}, .leading = 1.2};
  }
  [[nodiscard]] std::string label(const Row& row) const { return word(study::word_of(row), page_.voice()); }
  [[nodiscard]] std::string detail(const Row& row) const {
    const std::string code = study::word_of(row) + ".detail";
    return has_words(code) ? word(code, page_.voice()) : std::string{};
  }
  /// A value is one line, set smaller where it would not fit; words are broken.
  [[nodiscard]] double height_of(const study::Cell& cell, Form form) const {
    const std::string says = study::said(cell, page_.voice());
    double high = form == Form::drawing ? kArrows : 0;
    high += breaks(cell, form) ? page_.height_of(says, block(form)) : 1.2 * text_size(form);
    if (cell.detail) high += page_.height_of(study::said(*cell.detail, page_.voice()), detail_block());
    return high;
  }
  [[nodiscard]] static bool breaks(const study::Cell& cell, Form form) { return form == Form::words || !cell.value; }
  [[nodiscard]] double height_of(const Row& row) const {
    double high = page_.height_of(label(row), label_block(false));
    if (!detail(row).empty()) high += page_.height_of(detail(row), label_block(true));
    for (const study::Cell& cell : row.cells) high = std::max(high, height_of(cell, row.form));
    return high + 2 * kPad;
  }

  void begin() {
    top_ = page_.y;
    page_.rule(top_, drawing::kWide);
  }
  /// Frame and columns of what stands on this page; the advised way's heavy frame goes last, over the rest.
  void end() {
    Pen pen = page_.pen();
    const double bottom = page_.y;
    pen.box({page_.left(), top_, page_.width(), bottom - top_}, drawing::kWide);
    for (int way = 0; way < study_.count(); ++way) pen.line({left_of(way), top_}, {left_of(way), bottom});
    if (!study_.advice.way) return;
    pen.box({left_of(*study_.advice.way) + 0.5, top_ + 0.5, column_ - 1, bottom - top_ - 1},
            {.stroke = drawing::Stroke::heavy}, "advised");
  }

  void draw_names() {
    Pen pen = page_.pen();
    const double name_base = page_.y + kPad + 4;
    page_.write(page_.say({Code{"study.ways"}, {{"ways", study_.count()}}}), label_block(false), page_.y + kPad);
    page_.write(page_.word(Word{"study.strip_note"}), label_block(true), page_.y + kPad + 8);
    for (int way = 0; way < study_.count(); ++way) {
      const std::string& name = study_.ways[static_cast<std::size_t>(way)].name();
      const double size = size_to_fit(page_.measure(), name, {4.2, true, column_ - 2 * kPad - 1}, 1.6);
      pen.text({left_of(way) + kPad + 0.6, name_base}, name, {.size = size, .bold = true});
      const drawing::StripDrawing strip = strip_of(way);
      drawing::append(pen.list(), strip.list, {left_of(way) + kPad, name_base + 2});
    }
    page_.y = name_base + 2 + strip_high_ + kPad;
    page_.rule(page_.y);
  }
  drawing::StripDrawing strip_of(int way) {
    const study::Outcome& outcome = study_.outcomes[static_cast<std::size_t>(way)];
    std::vector<drawing::RotorMarks> marks;
    for (const Angle tilt : outcome.arranged.tilt) marks.push_back({tilt, std::nullopt});
    drawing::StripDrawing strip = drawing::shaft_strip(
        study_.ways[static_cast<std::size_t>(way)].shaft, {}, marks,
        {.width = column_ - 2 * kPad, .greatest_height = kStripHeight, .numbers = false, .draw_marks = false});
    strip_high_ = std::max(strip_high_, strip.list.height);
    return strip;
  }

  void draw_cell(const study::Cell& cell, const Row& row, int way) {
    const double x = left_of(way) + kPad + 0.6;
    double y = page_.y + kPad;
    if (row.form == Form::drawing) {
      drawing::append(page_.pen().list(), study::couples_of(study_, way, column_ - 2 * kPad, kArrows - 1),
                      {left_of(way) + kPad, y});
      y += kArrows;
    }
    const std::string says = study::said(cell, page_.voice());
    Block at = block(row.form);
    at.x = x;
    if (breaks(cell, row.form)) {
      y += page_.write(says, at, y);
    } else {
      at.type.size = size_to_fit(page_.measure(), says, {at.type.size, at.type.bold, at.width - 0.6}, 1.6);
      page_.pen().text({x, y + text_size(row.form)}, says, at.type);
      y += 1.2 * text_size(row.form);
    }
    if (!cell.detail) return;
    Block quiet = detail_block();
    quiet.x = x;
    page_.write(study::said(*cell.detail, page_.voice()), quiet, y);
  }
  void draw_row(const Row& row, double high) {
    double y = page_.y + kPad;
    y += page_.write(label(row), label_block(false), y);
    if (!detail(row).empty()) page_.write(detail(row), label_block(true), y);
    for (int way = 0; way < study_.count(); ++way) draw_cell(row.cells[static_cast<std::size_t>(way)], row, way);
    page_.y += high;
    page_.rule(page_.y);
  }

  Sheet& page_;
  const study::Study& study_;
  double column_ = 0, top_ = 0, strip_high_ = 0;
};

std::vector<Cell> cells_of(const study::Study& study, const Voice& voice) {
  const Shaft& shaft = study.shaft;
  std::vector<Cell> cells{{word("study.cell.speed", voice), study::figure_text(any(shaft.spec().speed), voice)}};
  if (shaft.rotor_count() > 0) cells.push_back({word("study.cell.rotor", voice), study::rotor_text(shaft, voice)});
  return cells;
}

/// What to do in the heavy frame's words, why, and what it waits for.
void draw_advice(Sheet& page, const study::Study& study) {
  const study::AdviceSaid advice = study::said(study, page.voice());
  const auto block = [&](double size, bool bold) {
    return Block{.x = page.left(), .width = page.width(), .type = {.size = size, .bold = bold}, .leading = 1.25};
  };
  const double high = page.height_of(advice.does, block(5, true)) + page.height_of(advice.because, block(3.6, false)) +
                      page.height_of(advice.waits, block(3.6, false)) + 14;
  page.need(high);
  page.y += 3;
  page.y += page.write(advice.does, block(5, true), page.y) + 0.6;
  page.y += page.write(advice.because, block(3.6, false), page.y);
  page.y += page.write(advice.waits, block(3.6, true), page.y);
  if (study.advice.way && !study.ways[static_cast<std::size_t>(*study.advice.way)].as_defined()) {
    const std::string lead = page.word(Word{"study.lead"});
    page.pen().text({page.left(), page.y + 7}, lead, {.size = 3.6, .bold = true});
    const double from = page.left() + page.measure().width(lead, 3.6, true) + 2;
    page.pen().line({from, page.y + 7.8}, {page.left() + page.width() / 2, page.y + 7.8});
    page.y += 10;
  }
  page.y += 2;
}

/// Plots two abreast; the balls of all ways in a row of their own.
void draw_plots(Sheet& page, const study::Study& study) {
  const double wide = (page.width() - kPlotGap) / 2, high = 0.64 * wide;
  std::vector<const study::PlotData*> plots;
  const study::PlotData* balls = nullptr;
  for (const study::PlotData& plot : study.plots) {
    if (plot.key == study::PlotKey::couple) continue;  // The couples stand in the table.
    if (plot.key == study::PlotKey::balls && plot.differs) balls = &plot;
    if (plot.key != study::PlotKey::balls && (plot.differs || plot.key == study::PlotKey::hanger))
      plots.push_back(&plot);
  }
  const auto put = [&](const study::PlotData& plot, double x, const drawing::PlotSize& size) {
    drawing::append(page.pen().list(),
                    within_its_width(study::picture_of(study, plot, page.voice(), size), page.measure()),
                    {x, page.y + 2});
  };
  for (std::size_t i = 0; i < plots.size(); i += 2) {
    page.need(high + 4);
    put(*plots[i], page.left(), {.width = wide, .height = high});
    if (i + 1 < plots.size()) put(*plots[i + 1], page.left() + wide + kPlotGap, {.width = wide, .height = high});
    page.y += high + 5;
  }
  if (balls == nullptr) return;
  page.need(high + 4);
  put(*balls, page.left(), {.width = page.width(), .height = high});
  page.y += high + 5;
}

void draw_notes(Sheet& page, const study::Study& study) {
  const Block block{.x = page.left(), .width = page.width(), .type = {.size = 2.9}, .leading = 1.25};
  for (const Message& note : study.notes) {
    const std::string says = study::said(note, page.voice());
    page.need(page.height_of(says, block) + 1);
    page.y += page.write(says, block, page.y) + 0.8;
  }
}

/// The figures of the advised way, else of the first, each once.
WorkingSheet workings_of(const StudySheet& sheet) {
  const study::Study& study = *sheet.study;
  const auto way = static_cast<std::size_t>(study.advice.way.value_or(0));
  WorkingSheet out{.head = sheet.head, .workings = {}, .about = {}};
  const auto add = [&](const WorkingPtr& working) {
    if (working == nullptr || std::ranges::find(out.workings, working) != out.workings.end()) return;
    out.workings.push_back(working);
    out.about.push_back(study.ways[way].name());
  };
  for (const Row& row : study.rows) add(row.cells[way].working);
  if (const Input* couple = study.outcomes[way].arranged.couple->input("couple"); couple != nullptr) add(couple->from);
  return out;
}

}  // namespace

Pages study_sheet(const StudySheet& sheet, const TextMeasure& measure) {
  const study::Study& study = *sheet.study;
  constexpr double kLeastTitle = 3.5, kBesideTitle = 45;
  const bool fits = measure.width(study.name, kLeastTitle, true) < size_of(sheet.head.paper).width - kBesideTitle;
  const std::string title = fits ? study.name : word("study.cell.study", sheet.head.voice);
  Sheet page{sheet.head, measure, title, cells_of(study, sheet.head.voice)};
  Table{page, study}.draw();
  draw_advice(page, study);
  draw_plots(page, study);
  draw_notes(page, study);
  Pages pages = page.finish();
  for (drawing::DisplayList& behind : working_sheet(workings_of(sheet), measure)) pages.push_back(std::move(behind));
  return pages;
}

}  // namespace flatwise::paper
