#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/doubts.h"
#include "cli/files.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "paper/pattern_sheet.h"
#include "paper/render.h"
#include "view/shaft_pattern.h"

namespace flatwise::cli {
namespace {

using Kind = dynamics::TimingMistake::Kind;

std::string flats_text(const dynamics::Places& places) {
  std::string out;
  for (const int flat : dynamics::flats_of(places)) out += (out.empty() ? "" : " ") + std::to_string(flat);
  return out;
}

std::string shown(const Context& context, AnyQuantity value) { return render_value(context, value, {}); }

Table rows_table(const Context& context, const PatternOptions& options, const job::Arranged& arranged) {
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Table table{.head = {"", w("cli.head.flats"), w("cli.head.left"), w("cli.head.worst"), w("cli.head.couple_left"),
                       w("cli.head.least_gap"), w("cli.head.steps"), w("cli.head.phrases")},
              .rows = {},
              .right = "rlrrrrrr"};
  if (options.asked.by_hangers) table.head.push_back(w("cli.head.hanger_hardest")), table.right += 'r';
  for (std::size_t i = 0; i < arranged.rows.size(); ++i) {
    const job::ArrangedRow& row = arranged.rows[i];
    table.rows.push_back(
        {std::to_string(i + 1), flats_text(row.row.places),
         shown(context, view::judged_by(options.asked, row.row.left_si)),
         shown(context, view::judged_by(options.asked, row.row.worst_si)),
         with_doubt(context, any(row.left.couple.size), arranged.doubts, "rows[" + std::to_string(i) + "].couple"),
         shown(context, any(row.least_gap)), std::to_string(row.row.simplicity.steps),
         std::to_string(row.row.simplicity.phrases)});
    if (row.row.pressed) table.rows.back().push_back(shown(context, any(newtons(row.row.pressed->force_n))));
  }
  return table;
}

Table mistakes_table(const Context& context, const Shaft& shaft, const job::Arranged& arranged) {
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Table table{.head = {w("cli.head.rotor"), w("cli.head.half_out"), w("cli.head.hanger"), w("cli.head.rotor_out"),
                       w("cli.head.gap"), w("cli.head.rotor_worst"), w("cli.head.gap")},
              .rows = {},
              .right = "rrrrrrr"};
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor) {
    const auto& half = job::worst_mistake(arranged, rotor, Kind::half_out, true);
    const auto& turned = job::worst_mistake(arranged, rotor, Kind::rotor_turned, true);
    const auto& worst = job::worst_mistake(arranged, rotor, Kind::rotor_turned, false);
    const auto hanger = [&](const job::ArrangedMistake& m) { return shown(context, any(m.what.left.larger)); };
    const auto gap = [&](const job::ArrangedMistake& m) { return shown(context, any(m.what.least_gap)); };
    table.rows.push_back({std::to_string(rotor), half.kink ? shown(context, any(half.kink->angle)) : "–", hanger(half),
                          hanger(turned), gap(turned), hanger(worst), gap(worst)});
  }
  return table;
}

std::string pattern_text(const Context& context, const PatternOptions& options, const Shaft& shaft,
                         const job::Arranged& arranged) {
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  for (const Message& m : arranged.says) out += wrap(say(m, context.voice), context.width) + "\n";
  out += "\n" + lay_out(rows_table(context, options, arranged)) + "\n";
  const Message note{Code{"cli.pattern_note"},
                     {{"robust", static_cast<std::int64_t>(arranged.list.robust) + 1},
                      {"floor", view::judged_by(options.asked, arranged.list.floor_rms)},
                      {"floor_worst", view::judged_by(options.asked, arranged.list.floor_worst)}}};
  out += wrap(say(note, context.voice), context.width) + "\n\n";
  out += word("cli.pattern_mistakes", context.voice) + "\n" + lay_out(mistakes_table(context, shaft, arranged)) + "\n";
  out += wrap(word("cli.pattern_mistakes_note", context.voice), context.width) + "\n\n";
  return out + word("cli.pattern_keep", context.voice) + "\n\n" + arranged.definition + "\n";
}

std::optional<Problem> write_pdf(const Context& context, const PatternOptions& options, const Shaft& shaft,
                                 const job::Arranged& arranged) {
  if (options.pdf.empty()) return std::nullopt;
  const auto measure = paper::make_measure();
  if (!measure) return measure.error();
  paper::PatternSheet sheet{
      .head = {}, .shaft = &shaft, .arranged = &arranged, .judged = view::judged_by(options.asked, 0).kind};
  sheet.head.shaft = shaft.spec().name;
  sheet.head.invented = shaft.spec().invented;
  sheet.head.from = options.shaft_file;
  sheet.head.printed = options.printed;
  sheet.head.paper = options.paper == "letter" ? paper::Paper::letter : paper::Paper::a4;
  sheet.head.voice = context.voice;
  const Result<std::string> pdf =
      paper::render_pdf(paper::pattern_sheet(sheet, **measure), {shaft.spec().name, kCreated});
  if (!pdf) return pdf.error();
  const auto written = write_file(options.pdf, *pdf);
  return written ? std::nullopt : std::optional{written.error()};
}

}  // namespace

Status arrange_pattern(const Context& context, const PatternOptions& options) {
  const Results<Shaft> shaft = load_shaft(context, options.shaft_file);
  if (!shaft) return refuse(context, shaft.error());
  const Results<job::Arranged> arranged = view::arranged_as_asked(*shaft, options.asked);
  if (!arranged)
    return refuse(context, as_options(arranged.error(), {"least-gap", "stay", "error-share", "error-azimuth"}));
  if (const auto problem = write_pdf(context, options, *shaft, *arranged)) return refuse(context, *problem);
  *context.out << (context.json ? wire::dump(view::pattern_json(*shaft, options.asked, *arranged, context.voice))
                                : pattern_text(context, options, *shaft, *arranged));
  return Status::in_order;
}

}  // namespace flatwise::cli
