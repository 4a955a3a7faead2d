#include <algorithm>
#include <charconv>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/files.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "core/beam/hanger_rows.h"
#include "core/units/parse.h"
#include "job/arrange.h"
#include "paper/pattern_sheet.h"
#include "paper/render.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

using Kind = dynamics::TimingMistake::Kind;

/// "3=4": rotor 3 stays with half A on flat 4.
Result<dynamics::Stays> stays_of(const std::string& typed) {
  dynamics::Stays stays;
  const std::size_t equals = std::min(typed.find('='), typed.size());
  const auto number = [&](std::size_t from, std::size_t to, int& into) {
    const auto read = std::from_chars(typed.data() + from, typed.data() + to, into);
    return read.ec == std::errc{} && read.ptr == typed.data() + to;
  };
  if (equals == typed.size() || !number(0, equals, stays.rotor) || !number(equals + 1, typed.size(), stays.flat))
    return tl::unexpected(Problem{Code{"pattern.stays_form"}, "--stay", typed, {}, std::nullopt});
  return stays;
}

Results<dynamics::PatternWish> wish_of(const PatternOptions& options, const Shaft& shaft) {
  dynamics::PatternWish wish;
  std::vector<Problem> problems;
  wish.judged = options.judged == "both-planes" ? dynamics::Judged::both_planes
                : options.judged == "couple"    ? dynamics::Judged::couple
                                                : dynamics::Judged::larger_plane;
  const auto read = [&](const std::string& typed, flatwise::Kind kind, const char* option, double& into) {
    if (typed.empty()) return;
    const Result<Entered> entered = parse_quantity(typed, kind, option);
    if (entered)
      into = entered->value.si;
    else
      problems.push_back(entered.error());
  };
  double gap_m = 0, azimuth_rad = wish.errors.azimuth.radians();
  read(options.least_gap, flatwise::Kind::length, "--least-gap", gap_m);
  read(options.error_share, flatwise::Kind::ratio, "--error-share", wish.errors.share);
  read(options.error_azimuth, flatwise::Kind::angle, "--error-azimuth", azimuth_rad);
  wish.least_gap = metres(gap_m);
  wish.errors.azimuth = radians(azimuth_rad);
  for (const std::string& typed : options.stays) {
    const Result<dynamics::Stays> stays = stays_of(typed);
    if (stays)
      wish.stays.push_back(*stays);
    else
      problems.push_back(stays.error());
  }
  if (options.by_hangers) {
    auto rows = beam::hanger_rows(shaft);
    if (rows)
      wish.hangers = *std::move(rows);
    else
      problems.push_back(rows.error());
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return wish;
}

std::string flats_text(const dynamics::Places& places) {
  std::string out;
  for (const int flat : dynamics::flats_of(places)) out += (out.empty() ? "" : " ") + std::to_string(flat);
  return out;
}

std::string shown(const Context& context, AnyQuantity value) { return render_value(context, value, {}); }

AnyQuantity judged_by(const PatternOptions& options, double si) {
  return {si, options.judged == "couple" ? flatwise::Kind::torque : flatwise::Kind::force};
}

Table rows_table(const Context& context, const PatternOptions& options, const job::Arranged& arranged) {
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Table table{.head = {"", w("cli.head.flats"), w("cli.head.left"), w("cli.head.worst"), w("cli.head.couple_left"),
                       w("cli.head.least_gap"), w("cli.head.steps"), w("cli.head.phrases")},
              .rows = {},
              .right = "rlrrrrrr"};
  if (options.by_hangers) table.head.push_back(w("cli.head.hanger_hardest")), table.right += 'r';
  for (std::size_t i = 0; i < arranged.rows.size(); ++i) {
    const job::ArrangedRow& row = arranged.rows[i];
    table.rows.push_back({std::to_string(i + 1), flats_text(row.row.places),
                          shown(context, judged_by(options, row.row.left_si)),
                          shown(context, judged_by(options, row.row.worst_si)),
                          shown(context, any(row.left.couple.size)), shown(context, any(row.least_gap)),
                          std::to_string(row.row.simplicity.steps), std::to_string(row.row.simplicity.phrases)});
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

wire::Json row_json(const Context& context, const PatternOptions& options, const job::ArrangedRow& row) {
  const auto value = [&](AnyQuantity q) { return wire::to_json(q, context.voice); };
  wire::Json json{{"flats", dynamics::flats_of(row.row.places)},
                  {"left", value(judged_by(options, row.row.left_si))},
                  {"worst", value(judged_by(options, row.row.worst_si))},
                  {"couple", value(any(row.left.couple.size))},
                  {"force", value(any(row.left.force.size))},
                  {"at_a", value(any(row.left.at_a.size))},
                  {"at_b", value(any(row.left.at_b.size))},
                  {"least_gap", value(any(row.least_gap))},
                  {"gap_after", row.gap_after},
                  {"steps", row.row.simplicity.steps},
                  {"phrases", row.row.simplicity.phrases}};
  if (row.row.pressed) json["hanger"] = value(any(newtons(row.row.pressed->force_n)));
  return json;
}

wire::Json mistake_json(const Context& context, const job::ArrangedMistake& m) {
  const auto value = [&](AnyQuantity q) { return wire::to_json(q, context.voice); };
  return {{"rotor", m.what.rotor},
          {"mistake", m.what.kind == Kind::half_out ? "half_out" : "rotor_turned"},
          {"flats", m.what.flats},
          {"larger", value(any(m.what.left.larger))},
          {"rise", value(any(m.what.rise))},
          {"couple", value(any(m.what.left.couple.size))},
          {"least_gap", value(any(m.what.least_gap))},
          {"gap_to", m.what.gap_to},
          {"strikes", m.what.strikes},
          {"kink", m.kink ? value(any(m.kink->angle)) : wire::Json(nullptr)},
          {"kink_times", m.kink ? wire::Json(m.kink->times) : wire::Json(nullptr)}};
}

wire::Json pattern_json(const Context& context, const PatternOptions& options, const Shaft& shaft,
                        const job::Arranged& arranged) {
  constexpr const char* kProofs[] = {"nought", "complete", "under_floor", "none"};
  wire::Json json{{"shaft", shaft.spec().name}, {"flats", shaft.flats()}, {"judged", options.judged}};
  json["proof"] = kProofs[static_cast<int>(arranged.list.proof)];
  json["errors_decide"] = arranged.list.errors_decide;
  json["under_floor"] = arranged.list.under_floor;
  json["floor_rms"] = wire::to_json(judged_by(options, arranged.list.floor_rms), context.voice);
  json["floor_worst"] = wire::to_json(judged_by(options, arranged.list.floor_worst), context.voice);
  if (options.by_hangers)
    json["hangers_floor"] = wire::to_json(any(newtons(arranged.list.hangers_floor)), context.voice);
  json["robust"] = arranged.list.robust + 1;
  json["says"] = wire::Json::array();
  for (const Message& m : arranged.says) json["says"].push_back(say(m, context.voice));
  json["rows"] = wire::Json::array();
  for (const job::ArrangedRow& row : arranged.rows) json["rows"].push_back(row_json(context, options, row));
  json["mistakes"] = wire::Json::array();
  for (const job::ArrangedMistake& m : arranged.mistakes) json["mistakes"].push_back(mistake_json(context, m));
  json["definition"] = arranged.definition;
  return json;
}

std::string pattern_text(const Context& context, const PatternOptions& options, const Shaft& shaft,
                         const job::Arranged& arranged) {
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  for (const Message& m : arranged.says) out += wrap(say(m, context.voice), context.width) + "\n";
  out += "\n" + lay_out(rows_table(context, options, arranged)) + "\n";
  const Message note{Code{"cli.pattern_note"},
                     {{"robust", static_cast<std::int64_t>(arranged.list.robust) + 1},
                      {"floor", judged_by(options, arranged.list.floor_rms)},
                      {"floor_worst", judged_by(options, arranged.list.floor_worst)}}};
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
  paper::PatternSheet sheet{.head = {}, .shaft = &shaft, .arranged = &arranged, .judged = judged_by(options, 0).kind};
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
  const Results<dynamics::PatternWish> wish = wish_of(options, *shaft);
  if (!wish) return refuse(context, wish.error());
  const Result<job::Arranged> arranged = job::arrange(*shaft, *wish);
  if (!arranged) return refuse(context, arranged.error());
  if (const auto problem = write_pdf(context, options, *shaft, *arranged)) return refuse(context, *problem);
  *context.out << (context.json ? wire::dump(pattern_json(context, options, *shaft, *arranged))
                                : pattern_text(context, options, *shaft, *arranged));
  return Status::in_order;
}

}  // namespace flatwise::cli
