// bench_parts.h: what the sheets from bench inspection to release share. Inside view/ only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/next.h"
#include "job/steps.h"
#include "view/blocks.h"

namespace flatwise::view {

/// The rotor left the shaft in this job.
[[nodiscard]] bool rotor_came_off(const Subject& subject, int rotor);
/// The station left the shaft in this job; rotors by themselves or because a rotor behind them did.
[[nodiscard]] bool station_came_off(const Subject& subject, int station);

/// How many spacers lie at a spacer's place, as it came apart or as it went back; null for other parts.
[[nodiscard]] Json spacers_question(const Subject& subject, const Screen& screen, Phase phase, int station);
/// Whether parts are off that no step of these moves: each with the answer that it is, or is back. Null where there are none.
[[nodiscard]] Json parts_off_alone(const Subject& subject, const Screen& screen,
                                   const std::vector<job::JobStep>& steps);

/// Report of a stage; nullptr while nothing was judged.
[[nodiscard]] const job::StageReport* report_of(const Subject& subject, job::Stage stage);
/// The working of a figure about a part, with what its answer is worth; `about` empty: the first. nullptr where there is none.
[[nodiscard]] const job::Shown* shown_of(const Subject& subject, job::Stage stage, std::string_view figure, Where where,
                                         std::string_view about = {});
/// The working alone.
[[nodiscard]] WorkingPtr working_of(const Subject& subject, job::Stage stage, std::string_view figure, Where where,
                                    std::string_view about = {});
[[nodiscard]] AnyQuantity output_of(const Working& working, std::string_view name);
/// A quantity that was an input of the working; none where it was not given.
[[nodiscard]] std::optional<AnyQuantity> input_of(const Working& working, std::string_view name);

/// Findings whose code starts with `prefix` ("timing."), of those about the part; empty prefix: all.
[[nodiscard]] std::vector<const Finding*> findings_like(const Subject& subject, job::Stage stage, Where where,
                                                        std::string_view prefix);
[[nodiscard]] Severity worst_of(const std::vector<const Finding*>& findings);
/// The sentences of findings, each once.
[[nodiscard]] std::vector<std::string> sentences(const Screen& screen, const std::vector<const Finding*>& findings);
/// The instruction of the first finding that has one; empty where none has.
[[nodiscard]] std::string instruction(const Screen& screen, const std::vector<const Finding*>& findings);
/// Findings as an answer: sign and word of the worst, all sentences, the first instruction. Null where there are none.
[[nodiscard]] Json findings_block(const Screen& screen, const std::vector<const Finding*>& findings);

/// What stands between the hand and the work of a sheet (job::in_the_way), as its first block: a bar with the reasons, what to do about
/// the first, and keys: there, and on all the same. No blocks where nothing does.
struct StopIs {
  job::Stage stage;
  std::optional<Where> only = {};  ///< Reasons about this part alone.
  std::string stop, wait;          ///< The head: something is out; something is only missing or in doubt.
  std::string all_the_same = {};   ///< The key that goes on; empty: none.
  GoTo on = {};                    ///< Where that leads.
};
[[nodiscard]] std::vector<Json> stop_blocks(const Subject& subject, const Screen& screen, const StopIs& is);

/// What was measured beside its limits: sign and word of what its answer is worth, the value with its uncertainty, the bar.
struct MeasuredIs {
  const job::Shown& shown;  ///< A working with an answer.
  const std::vector<const Finding*>& findings;
  AnyQuantity value;
  double expanded_si = 0;
  std::optional<AnyQuantity> least, greatest;  ///< Without both there is no bar.
  std::string of = {};                         ///< "Plane A", "Force": what alone it is about, where more is judged.
};
[[nodiscard]] Json measured_block(const Screen& screen, const MeasuredIs& is);

/// Flag and tone of a cell by the worst finding about its station; `done` where nothing is open.
void mark_cell(CellSays& cell, Severity worst, bool done);

/// tell() with its first letter a capital: for a line that begins with a part.
[[nodiscard]] std::string tell_big(const Screen& screen, Code code, const Args& args = {});

/// An answer's word: IN, OUT, CANNOT TELL.
[[nodiscard]] std::string answer_word(Answer answer, const Voice& voice);
/// Value and expanded uncertainty in the voice's units.
[[nodiscard]] std::string with_u(AnyQuantity value, double expanded_si, const Voice& voice, bool in_other = false);

}  // namespace flatwise::view
