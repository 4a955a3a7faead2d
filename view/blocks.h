// blocks.h: makers of everything a sheet is built from, one function a block of schemas/api/openapi.json. All sheets use
// these, so that the same thing looks and answers the same on every stage. Text comes in ready from words/.
//
//   parts.left.push_back(asks_block("rows", {yes_no(subject, screen, {.label = ...}, body_of)}));
//
// Empty strings and null JSON mean 'not there' and are left out of the JSON.
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/display_list.h"
#include "view/bench_view.h"
#include "view/stage_sheets.h"

namespace flatwise::view {

/// A sentence or word of words/; a test demands that each Code in the sources has one.
[[nodiscard]] inline std::string tell(const Screen& screen, Code code, const Args& args = {}) {
  return say(code.id(), args, screen.voice);
}

// ---- Entries that a tap will make.

/// The body as the contract has it.
[[nodiscard]] Json body_json(const job::EntryBody& body);
/// The part that an entry is about.
[[nodiscard]] Where part_of(const Shaft& shaft, const job::EntryBody& body);

/// EntryDraft of one body: `corrects` lists the live entries of the same question, so that a new answer replaces what its
/// author has seen and nothing else. Empty for what only adds up.
[[nodiscard]] Json draft(const Subject& subject, const job::EntryBody& body);
/// EntryDraft that takes back all live answers to a question; null where there is none.
[[nodiscard]] Json undo_draft(const Subject& subject, const std::string& question);
/// The live answers to a question as [Said]: in two words what was said, by whom, when.
[[nodiscard]] Json said(const Subject& subject, const Screen& screen, const std::string& question);
/// Whether a question has one answer, or several that say the same. No answer counts as agreed.
[[nodiscard]] bool agreed(const Subject& subject, const std::string& question);
/// Name of a person; the id where nobody has that name.
[[nodiscard]] std::string person_name(const Subject& subject, const job::Id& id);

// ---- Where a tap leads.

struct GoTo {
  std::optional<job::Stage> stage{};
  std::optional<int> station{};  ///< Index.
  std::optional<End> from{};
  std::optional<int> step{};
  std::string_view page{};  ///< "board", "machine", "shaft", "people", "job".
  std::string id{};
};
[[nodiscard]] Json go(const GoTo& to);                 ///< Go
[[nodiscard]] Json do_go(const GoTo& to);              ///< Do
[[nodiscard]] Json do_open(const std::string& where);  ///< Do: a paper or another address of this server.
/// Do: entries recorded together; then, where named, somewhere else is shown. `key`: the field whose typed text is kept too.
[[nodiscard]] Json do_record(std::vector<Json> drafts, const std::optional<GoTo>& then = std::nullopt,
                             std::string_view key = {});

struct ActionLook {
  std::string_view tone = "plain";  ///< "next" for the one thing to do now.
  std::string blocked{};            ///< Why it cannot be pressed yet.
  std::string says{};               ///< What a screen reader says instead of the label.
};
[[nodiscard]] Json action(std::string label, Json does, const ActionLook& look = {});

// ---- Questions.

struct Option {
  std::string label;
  job::EntryBody body;
  std::string_view tone{};
};
struct Ask {
  std::string label;
  std::string detail{};
  std::string_view tone{};
};
/// Question with these answers. Its key is that of the first option's body; who said what, whether they agree, what is chosen
/// and the undo come from the state. At least one option.
[[nodiscard]] Json question(const Subject& subject, const Screen& screen, const Ask& ask,
                            const std::vector<Option>& options);
/// Question answered yes or no (and, where asked for, 'not seen').
[[nodiscard]] Json yes_no(const Subject& subject, const Screen& screen, const Ask& ask,
                          const std::function<job::EntryBody(Reply)>& body, bool not_seen = false);
/// The 'before you go on' questions of a stage about the shaft or about this number (rotor, nut or station).
[[nodiscard]] std::vector<Json> job_questions(const Subject& subject, const Screen& screen, job::Stage stage,
                                              job::AskedOf of, int number);
[[nodiscard]] Json asks_block(std::string_view style, std::vector<Json> questions,
                              std::string head = {});  ///< "rows", "chips".
/// Two people answered differently: both, and a key for each to decide. Null where the question is agreed.
[[nodiscard]] Json disagree_block(const Subject& subject, const Screen& screen, const std::string& question);

// ---- Figures to be typed.

struct FieldIs {
  std::string title;                   ///< Of the whole keypad while it is chosen.
  std::string label;                   ///< Over the figure.
  std::string_view kind = "length";    ///< Kind of quantity, or "text", "count".
  std::vector<std::string> units{};    ///< As parse.h spells them; empty: those of the kind, the voice's first.
  job::EntryBody body;                 ///< With the typed text and the gauge left empty.
  std::string into;                    ///< Field of the body that takes the text: "diameter".
  std::string gauge_into{};            ///< Field of the body that takes the gauge: "gauge".
  std::optional<Gauge::Use> gauges{};  ///< Offers the workshop's gauges of this use; the one used last is chosen.
  bool finest =
      false;  ///< Of the side play: chosen is the one it was read with last, else the finest: a dial, not a tape.
  std::string before_label{}, before_typed{};
  std::string reference_label{};  ///< What a difference is typed from: the setting ring.
  std::optional<AnyQuantity> reference{};
  std::string hint{};
  std::vector<std::string> marks{};  ///< Ids in the drawing.
  std::string next{};                ///< Key of the field that follows.
};
[[nodiscard]] Json field(const Subject& subject, const Screen& screen, const FieldIs& is);
/// Key of the field (and question) of a body.
[[nodiscard]] std::string field_key(const job::EntryBody& body);
/// Units a figure of this kind is typed in, the voice's own first.
[[nodiscard]] std::vector<std::string> units_of(Kind kind, UnitSystem system);
[[nodiscard]] Json keypad_block(std::vector<Json> fields, std::string first = {});

// ---- Blocks that show.

[[nodiscard]] Json text_block(std::string says, std::string_view size = "read", std::string_view tone = "plain");
[[nodiscard]] Json caution_block(std::string head, std::vector<std::string> lines, std::string rule = {});

struct FactRow {
  std::string caption, value;
  std::string_view tone{};
  std::string other{};
  WorkingPtr working{};
};
[[nodiscard]] Json fact(const FactRow& row, const Voice& voice);
[[nodiscard]] Json facts_block(const std::vector<FactRow>& rows, const Voice& voice);

struct TapOn {
  std::string id, says;
  Json does;
  std::string field{};  ///< Chooses that field of the keypad; `does` may then be null and becomes 'stay here'.
};
struct DrawingLook {
  std::vector<std::string> chosen{};
  std::string caption{};
  bool wide = false;
};
[[nodiscard]] Json drawing_block(const drawing::DisplayList& list, std::string says, std::vector<TapOn> taps = {},
                                 const DrawingLook& look = {});

struct SwitchChoice {
  std::string label;
  GoTo to;
  bool chosen = false;
};
[[nodiscard]] Json switch_block(std::string label, const std::vector<SwitchChoice>& choices);
/// 'Seen from: end A, end B.'
[[nodiscard]] Json end_switch(const Screen& screen, const Spot& spot);

struct GridCell {
  std::string text, field{};
  std::string_view tone{};
};
struct GridRow {
  std::string label;
  std::vector<GridCell> cells;
};
[[nodiscard]] Json grid_block(std::vector<std::string> head, const std::vector<GridRow>& rows,
                              std::string caption = {});

struct AnswerIs {
  std::string_view sign = "none";  ///< "in", "out", "tell", "done", "stopped", "waits", "unknown", "none".
  std::string word;
  std::vector<std::string> says{};
  std::string value{}, other{};
  std::optional<drawing::DisplayList> bar{};
  std::string does{};  ///< The instruction.
  WorkingPtr working{};
};
[[nodiscard]] Json answer_block(const AnswerIs& is, const Voice& voice);
[[nodiscard]] Json working_block(std::string about, const Working& working, const Voice& voice, bool open = false);
/// Workings of a stage about a part, as [Block], in the order of the report.
[[nodiscard]] std::vector<Json> workings_at(const Subject& subject, const Screen& screen, job::Stage stage,
                                            Where where);

struct TableCell {
  std::string text;
  std::string_view tone{}, flag{}, sign{};
  std::string detail{};
  std::optional<drawing::DisplayList> bar{};
};
struct TableRow {
  std::vector<TableCell> cells;
  std::optional<bool> chosen{};
  Json action{};
  bool advised = false;  ///< In the heavy frame.
};
struct TableHead {
  std::string text;
  bool right = false;
};
[[nodiscard]] Json table_block(const std::vector<TableHead>& head, const std::vector<TableRow>& rows,
                               std::string caption = {}, std::string aside = {});
[[nodiscard]] Json table_cell(const TableCell& cell);

struct StandingRow {
  std::string part, what, lifted_by;
  Json action{};
  std::string detail{};
};
struct ForceIs {
  std::string label, reason_label;
  job::EntryBody body;
  std::string into;
};
[[nodiscard]] Json standing_block(const Subject& subject, bool complete, std::string head, std::string aside,
                                  const std::vector<StandingRow>& rows,
                                  const std::optional<ForceIs>& force = std::nullopt);

struct WayIs {
  std::string name, label;
  bool advised = false, chosen = false;
  drawing::DisplayList strip;
  Json action;
};
struct WaysRow {
  std::string label;
  std::vector<TableCell> cells;  ///< One a way.
};
[[nodiscard]] Json ways_block(const std::vector<WayIs>& ways, const std::vector<WaysRow>& rows,
                              std::vector<std::string> says = {});

struct StepIs {
  int number = 1, of = 1;
  std::string says;
  std::vector<Json> cautions{};
  std::vector<std::string> tools{}, labels{};
  bool stop = false;
  std::string note{};
  Json drawing{}, question{}, action{}, back{};
};
[[nodiscard]] Json step_block(const StepIs& is);
[[nodiscard]] Json actions_block(std::vector<Json> actions);

/// Photos of a part in a stage with the key to take one; note with what was noted. Every sheet's foot.
[[nodiscard]] Json photos_block(const Subject& subject, const Screen& screen, job::Stage stage, Where part);
[[nodiscard]] Json note_block(const Subject& subject, const Screen& screen, job::Stage stage, Where part);

struct SignatureRow {
  std::string role, says;
  const job::Entry* signed_by = nullptr;
  Json action{};
};
[[nodiscard]] Json signatures_block(const Subject& subject, const std::vector<SignatureRow>& rows);
/// All entries of the job, newest first, as they were told; corrected and withdrawn ones say by which.
[[nodiscard]] Json log_block(const Subject& subject, const Screen& screen, std::string head = {});

// ---- What the report and the shaft say, in the form blocks need.

/// Findings of a stage about a part, worst first as the report has them.
[[nodiscard]] std::vector<const Finding*> findings_at(const Subject& subject, job::Stage stage, Where where);
/// "in", "out", "tell", "unknown".
[[nodiscard]] std::string_view sign_of(Severity severity);
[[nodiscard]] std::string_view sign_of(Answer answer);
[[nodiscard]] std::string_view tone_of(Severity severity);
[[nodiscard]] std::string_view tone_of(Answer answer);
/// "none", "stopped", "unknown": for the strip and the cells.
[[nodiscard]] std::string_view flag_of(Severity severity);
/// "Rotor 4", "Spacer S3", "Nut A": the head of a sheet; lower case inside a sentence with `inside`.
[[nodiscard]] std::string station_name(const Shaft& shaft, int station, const Voice& voice, bool inside = false);
/// Number of the rotor at a station; 0 where there is none.
[[nodiscard]] int rotor_at(const Shaft& shaft, int station);
/// The rotor for rotors, the station for everything else.
[[nodiscard]] Where where_of(const Shaft& shaft, int station);
/// Station that a finding or a step is about; none for the whole shaft.
[[nodiscard]] std::optional<int> station_of(const Shaft& shaft, Where where);
[[nodiscard]] std::string instant_text(job::Instant at);  ///< RFC 3339 in UTC with milliseconds.
/// "12 Feb 2026".
[[nodiscard]] std::string day_text(Day day, const Voice& voice);
[[nodiscard]] std::string shown(AnyQuantity value, const Voice& voice);
/// The figure alone, for a cell whose unit stands in the title block: mm to 0.01, inches to 0.001.
[[nodiscard]] std::string bare_length(Length length, const Voice& voice);
[[nodiscard]] std::string shown_other(AnyQuantity value, const Voice& voice);  ///< In the other unit system.
/// range_words() in the other unit system.
[[nodiscard]] std::string range_other(AnyQuantity least, AnyQuantity greatest, const Voice& voice);

}  // namespace flatwise::view
