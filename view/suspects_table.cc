#include "view/suspects_table.h"

#include <nlohmann/json.hpp>

#include "job/suspects.h"
#include "view/blocks.h"
#include "view/rotor_lists.h"

namespace flatwise::view {
namespace {

job::Suspects ranked(const Subject& subject) {
  return job::suspects(subject.job.facts(), subject.lives, subject.hours);
}

std::string reasons(const Screen& screen, const job::Suspect& suspect) {
  std::string all;
  for (const Message& reason : suspect.reasons) all += (all.empty() ? "" : ", ") + say(reason, screen.voice);
  return all;
}

}  // namespace

Json suspects_table(const Subject& subject, const Screen& screen, bool keys) {
  const job::Suspects suspects = ranked(subject);
  if (suspects.ranked.empty()) return nullptr;
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < suspects.ranked.size(); ++i) {
    const job::Suspect& suspect = suspects.ranked[i];
    const std::optional<int> station = station_of(subject.job.shaft, suspect.part);
    if (!station) continue;
    const std::string name = station_name(subject.job.shaft, *station, screen.voice);
    const std::string_view tone = suspect.stands_apart ? "strong" : "plain";
    TableRow row{.cells = {{.text = std::to_string(i + 1), .tone = "strong"},
                           {.text = name, .tone = tone},
                           {.text = reasons(screen, suspect)}},
                 .chosen = {},
                 .action = nullptr};
    if (keys)
      row.action = action(tell(screen, Code{"view.finding.look"}), do_go({.station = *station}),
                          {.says = tell(screen, Code{"view.finding.look_at"}, {{"part", name}})});
    rows.push_back(std::move(row));
  }
  std::string aside;
  for (const Message& message : suspects.says) aside += (aside.empty() ? "" : " ") + say(message, screen.voice);
  return table_block({{tell(screen, Code{"view.finding.rank"})},
                      {tell(screen, Code{"view.finding.part"})},
                      {tell(screen, Code{"view.finding.reason"})}},
                     rows, tell(screen, Code{"view.finding.so_far"}), aside);
}

std::vector<int> rotors_to_open(const Subject& subject) {
  if (subject.job.state.way != nullptr) return subject.job.state.way->open;
  return job::rotors_that_stand_apart(ranked(subject));
}

}  // namespace flatwise::view
