// Finding: what is suspect, ranked, with the reason for each. A suspect is not a verdict: no IN or OUT here.
#include <algorithm>

#include "view/blocks.h"
#include "view/play.h"
#include "view/rotor_lists.h"
#include "view/stage_sheets.h"
#include "view/suspects_table.h"

namespace flatwise::view {
namespace {

// What was told of the chosen part at booking in.
Json told_json(const Subject& subject, const Screen& screen, const Spot& spot) {
  const Where part = where_of(subject.job.shaft, spot.station);
  std::vector<FactRow> rows;
  if (part.part == Where::Part::rotor) {
    const job::PlayRead* play = play_of(subject, part.number);
    rows.push_back({tell(screen, Code{"view.booking.swing"}),
                    play != nullptr ? play->swing.typed : tell(screen, Code{"view.not_measured"})});
  }
  std::vector<Word> signs;
  for (const PartLook& look : subject.job.state.bench.looks) {
    if (look.part != part || look.reply.value != Reply::yes) continue;
    constexpr const char* kWords[] = {"sign.rough", "sign.hot", "sign.grease_out", "sign.noisy", "sign.sound"};
    signs.push_back(Word{kWords[static_cast<std::size_t>(look.sign)]});
  }
  rows.push_back({tell(screen, Code{"view.booking.signs_found"}),
                  tell(screen, Code{"view.booking.signs_list"}, {{"signs", signs}})});
  return facts_block(rows, screen.voice);
}

}  // namespace

SheetParts finding_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts{.title = tell(screen, Code{"view.finding.title"})};
  Json table = suspects_table(subject, screen, true);
  if (table.is_null())
    parts.head.push_back(text_block(tell(screen, Code{"view.finding.nothing"})));
  else
    parts.head.push_back(std::move(table));
  const std::vector<int> open = rotors_to_open(subject);
  if (!open.empty())
    parts.head.push_back(
        actions_block({action(tell(screen, Code{"view.finding.to_plan"}, {{"rotors", rotor_runs(screen, open)}}),
                              do_go({.stage = job::Stage::plan}), {.tone = "next"})}));
  parts.left.push_back(text_block(station_name(subject.job.shaft, spot.station, screen.voice), "head", "strong"));
  parts.left.push_back(told_json(subject, screen, spot));
  const int rotor = rotor_at(subject.job.shaft, spot.station);
  if (rotor > 0)
    for (Json& block : play_blocks(subject, screen, rotor)) parts.right.push_back(std::move(block));
  return parts;
}

CellSays finding_cell(const Subject& subject, const Screen& screen, int station) {
  return booking_in_cell(subject, screen, station);
}

}  // namespace flatwise::view
