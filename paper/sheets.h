// sheets.h: what is printed for the bench, laid out as pages of display lists. Pure: no fonts, no files; the width of
// words comes through TextMeasure, the words from the dictionaries.
//
//   auto measure = make_measure();
//   auto pages = map_sheet({.head = head, .shaft = &shaft, .map = &map, .stayed = stayed}, **measure);
//   auto pdf = render_pdf(pages, {.title = "Timing map", .created = now});
//
// Every sheet: A4 or Letter, margins 12 mm, black only, a code to scan, a place for a second look at every blank. What
// does not fit goes to a further page; nothing runs out of its cell.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/teardown/steps.h"
#include "core/timing/map.h"
#include "core/working/working.h"
#include "drawing/display_list.h"
#include "drawing/end_view.h"
#include "drawing/press_curve.h"
#include "drawing/shaft_strip.h"
#include "paper/text_measure.h"
#include "words/words.h"

namespace flatwise::paper {

enum class Paper { a4, letter };
struct PaperSize {
  double width = 0, height = 0;
};
[[nodiscard]] PaperSize size_of(Paper paper);  ///< mm; ISO 216 and ANSI/ASME Y14.1.
inline constexpr double kMargin = 12;

/// What stands on every sheet. Texts come from people (names) or are said by the caller (printed).
struct Head {
  std::string shaft;
  std::string job;  ///< "31"; goes into the codes too.
  std::string workshop;
  bool invented = false;  ///< Said in the foot of every page and on every label.
  std::string printed;    ///< When, as it is to be read: "3 Feb 14:20". The sheets ask no clock.
  std::string from;       ///< From what: "entry 118", a file's name.
  Paper paper = Paper::a4;
  Voice voice;
};

using Pages = std::vector<drawing::DisplayList>;

struct MapSheet {
  Head head;
  const Shaft* shaft = nullptr;
  const timing::Map* map = nullptr;
  std::vector<bool> stayed;                ///< One a rotor: it never left the shaft. Shorter: the rest came off.
  std::vector<bool> off{};                 ///< One a station: it is off now. Empty: told from the rotors that stayed.
  std::vector<drawing::PairMarks> read{};  ///< One a rotor, flat_a and flat_b as read so far. Shorter: not read.
  End stand = End::a;                      ///< Where the mechanic stands.
};
/// Rule in one sentence, strip with marks, an end view a rotor from where the mechanic stands and one from the other
/// end, table with blanks.
[[nodiscard]] Pages map_sheet(const MapSheet& sheet, const TextMeasure& measure);

struct TearDownSheet {
  Head head;
  const Shaft* shaft = nullptr;
  const teardown::Plan* plan = nullptr;
  std::span<const teardown::Step> steps;
  std::vector<drawing::RotorMarks> marks{};  ///< As the map wants them; empty: rotors are drawn upright.
};
/// Strip with the stop point, cautions before their step, steps with tool, label and tick, the STOP bar.
[[nodiscard]] Pages tear_down_sheet(const TearDownSheet& sheet, const TextMeasure& measure);

/// A figure to be reached, with a blank for what was read.
struct Target {
  std::string part;   ///< "Nut A"
  std::string value;  ///< "1000 ft·lb"
  std::string other;  ///< In the other units, limits, how it is pulled; may be empty.
};
struct AssemblySheet {
  Head head;
  const Shaft* shaft = nullptr;
  const teardown::Plan* plan = nullptr;
  std::span<const teardown::Step> steps;
  std::vector<drawing::RotorMarks> marks;
  std::vector<Target> targets{};  ///< Stack length, torque of the nuts in their order.
};
/// The way back: what must be answered before going on, captive parts, targets with blanks.
[[nodiscard]] Pages assembly_sheet(const AssemblySheet& sheet, const TextMeasure& measure);

/// The press of one rotor: the force to expect over the way in, what was read of it, and blanks for the rest.
struct PressBlock {
  int rotor = 1;
  drawing::PressCurve curve;
  std::string expected{};              ///< "2.9 to 5.6 kN"
  std::vector<std::string> travels{};  ///< Where the ram is stopped to read the force.
  std::vector<std::string> notes{};    ///< What the curve's shape would mean, and the fit for bearing and hub.
};
struct BenchSheet {
  Head head;
  const Shaft* shaft = nullptr;
  std::vector<int> rotors;  ///< A page each.
  std::string gauge{};      ///< Written in where it is known.
  std::optional<Length> setting_ring{};
  int directions = 4;
  std::vector<PressBlock> presses{};   ///< Of rotors whose bore was gauged: a page more each.
  std::map<int, std::string> plays{};  ///< Side play of a rotor as it came in.
};
/// Limits, planes and directions, blanks as large as a carpenter's pencil, three answers to mark, look and feel.
[[nodiscard]] Pages bench_sheet(const BenchSheet& sheet, const TextMeasure& measure);

/// One line of a tray's kit, in words.
struct KitLine {
  std::string item;  ///< "bearing set, two halves"
  std::string part_number;
  int count = 0;
  int fresh = 0;
  bool reuse_if_sound = false;
};
struct KitTray {
  std::string name;  ///< "3", "A"
  std::string what;  ///< "rotor 3"
  std::vector<KitLine> lines;
};
struct StockLine {
  std::string item, part_number;
  int to_take = 0;  ///< Wanted less what lies on the trays already.
  std::optional<int> on_shelf, on_order;
};
struct KitSheet {
  Head head;
  std::vector<KitTray> trays;
  std::vector<StockLine> stock;
};
/// A block a tray with a box for every piece put on and a count-out: what is left on the tray, what is missing.
[[nodiscard]] Pages kit_sheet(const KitSheet& sheet, const TextMeasure& measure);

struct Label {
  std::string name;   ///< "S3": 18 mm high, smaller only where it would not fit.
  std::string what;   ///< "spacer"
  std::string where;  ///< "between 2 and 3"
  bool renew = false;
  End end = End::a;  ///< The arrow points to this end.
  std::string code;  ///< "S3": goes behind "part=".
};
struct LabelSheet {
  Head head;
  std::vector<Label> labels;
};
/// Labels of 60 × 40 mm, three abreast.
[[nodiscard]] Pages label_sheet(const LabelSheet& sheet, const TextMeasure& measure);

struct WorkingSheet {
  Head head;
  std::vector<WorkingPtr> workings;
  std::vector<std::string> about{};  ///< One a working: the part it is about ("rotor 3, A"). Shorter: not said.
};
/// Numbered workings: result, formula, a line an input with its origin in a word, sources, findings. What was
/// assumed is bold.
[[nodiscard]] Pages working_sheet(const WorkingSheet& sheet, const TextMeasure& measure);

/// One way of a quote as it stands in its column.
struct QuoteWay {
  std::string name;
  bool framed = false;  ///< What the quote asks a yes for: the heavy frame.
  std::string chip{};   ///< "chosen", "advised"; empty: neither.
  std::vector<drawing::StationState> states{};
  std::string comes_off{}, renewed{}, time{}, price{}, price_of{}, words{};
};
/// A part that the framed way makes due.
struct QuotePart {
  std::string item, part_number;
  int count = 0;
  std::string each{}, sum{};  ///< Prices; empty: not known.
};
struct QuoteSheet {
  Head head;
  const Shaft* shaft = nullptr;
  std::vector<drawing::RotorMarks> marks{};
  std::string machine{}, customer{}, complaint{}, hour_meter{};  ///< Empty: not said.
  std::string price{};                                           ///< Of the framed way, large.
  std::string way{};                                             ///< Its name, number and what comes off.
  drawing::Flag flag = drawing::Flag::waits;  ///< A tick only where the customer's yes stands in the record.
  std::vector<std::string> yes{};             ///< Who said yes or no, when, to what; or that nobody did.
  std::vector<QuoteWay> ways{};
  std::vector<QuotePart> parts{};
  std::string work{}, work_price{}, parts_price{};
  std::vector<std::string> why{};    ///< From which end, and what the next best would cost.
  std::vector<std::string> holds{};  ///< What the quote is valid for.
};
/// The price first, and whether somebody said yes to it; the ways side by side with one in the heavy frame; the parts and the work
/// it is made of; what it holds for; a blank for the day and one for each signature.
[[nodiscard]] Pages quote_sheet(const QuoteSheet& sheet, const TextMeasure& measure);

/// One rotor's line of the hand-over record. Texts are said by the caller; empty: nothing to show.
struct HandOverRow {
  struct Bore {
    std::optional<Answer> answer;
    std::string value;
  };
  int rotor = 0;
  std::string set;  ///< "new", "stayed".
  bool renewed = false;
  Bore a, b;
  std::string press, marks, play;
};
struct HandOverPart {
  std::string title;
  std::vector<std::string> lines;
};
struct HandOverSignature {
  std::string role, says;
  std::string who, when;  ///< Empty: not signed, a blank to sign on.
};
/// An entry of the record in one line.
struct LoggedEntry {
  int number = 0;
  std::string when, who, says;
};
struct HandOverSheet {
  Head head;
  const Shaft* shaft = nullptr;
  std::vector<drawing::StationState> states{};
  std::vector<drawing::RotorMarks> marks{};
  std::string hour_meter{}, out{};
  std::string machine{}, customer{};  ///< Names; empty: not said.
  bool complete = false;
  std::string verdict{};  ///< "Complete", "Blocked", "Released with things open".
  std::vector<std::string>
      because{};  ///< Under it: nothing open, or everything that is; the reason of a forced release.
  std::string next_due{}, next_due_says{};
  std::string bore_limits{}, press_unit{}, play_limits{};  ///< Under the column heads.
  std::vector<HandOverRow> rows{};
  std::vector<std::string> notes{};   ///< What the marks in the rows mean.
  std::vector<HandOverPart> parts{};  ///< Decisions, torque, stack, test run; three abreast.
  std::vector<std::string> corrected{};
  std::vector<HandOverSignature> signatures{};
  int entries = 0;
  std::string chain_head{};        ///< Hash of the last entry, hex.
  std::vector<LoggedEntry> log{};  ///< Every entry, on the pages behind.
};
/// Complete or blocked first, then the shaft, a line a rotor, torque, stack and test run, what was corrected on the way, the
/// signatures, and the head of the chain as text and as a code; behind it every entry with who and when.
[[nodiscard]] Pages hand_over_sheet(const HandOverSheet& sheet, const TextMeasure& measure);

/// What a code on a sheet says: "flatwise:job=31;sheet=map". Characters that mean something in it are replaced by '_'.
[[nodiscard]] std::string code_text(const Head& head, const std::string& key, const std::string& value);

}  // namespace flatwise::paper
