#include "view/rails.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "view/blocks.h"
#include "view/picture_json.h"

namespace flatwise::view {
namespace {

using job::Stage;

// Much is entered in these: the sheet needs the height.
constexpr std::array<Stage, 9> kLow{Stage::booking_in, Stage::finding, Stage::plan,   Stage::inspection, Stage::kit,
                                    Stage::press,      Stage::stack,   Stage::torque, Stage::test_run};

bool low_in(Stage stage) { return std::ranges::find(kLow, stage) != kLow.end(); }

drawing::Flag flag_named(std::string_view name) {
  if (name == "done") return drawing::Flag::done;
  if (name == "stopped") return drawing::Flag::stopped;
  if (name == "waits") return drawing::Flag::waits;
  if (name == "unknown") return drawing::Flag::unknown;
  return drawing::Flag::none;
}

/// One station with what its stage says of it.
struct Seen {
  CellSays says;
  bool off = false;
};

std::vector<Seen> look_at_all(const Subject& subject, const Screen& screen, CellOf cell_of) {
  const auto& off = subject.job.state.off;
  std::vector<Seen> out;
  const int count = static_cast<int>(subject.job.shaft.stations().size());
  for (int i = 0; i < count; ++i) {
    const bool is_off = static_cast<std::size_t>(i) < off.size() && off[static_cast<std::size_t>(i)];
    Seen seen{cell_of(subject, screen, i), is_off};
    if (seen.says.word.empty()) seen.says.word = tell(screen, is_off ? Code{"view.cell.off"} : Code{"view.cell.on"});
    out.push_back(std::move(seen));
  }
  return out;
}

// "Rotor 4, on the shaft, stopped: half B one flat out."
std::string said_aloud(const Subject& subject, const Screen& screen, const Spot& spot, int station, const Seen& seen) {
  std::string rest = seen.says.said;
  if (rest.empty()) {
    const auto findings = findings_at(subject, spot.stage, where_of(subject.job.shaft, station));
    const bool wrong = !findings.empty() && findings.front()->severity != Severity::note;
    const bool plain =
        seen.says.word == tell(screen, Code{"view.cell.on"}) || seen.says.word == tell(screen, Code{"view.cell.off"});
    if (!plain) rest = seen.says.word;
    if (wrong) rest += (rest.empty() ? "" : ": ") + say(*findings.front(), screen.voice);
  }
  return tell(screen, seen.off ? Code{"view.said.off"} : Code{"view.said.on"},
              {{"part", station_name(subject.job.shaft, station, screen.voice)},
               {"renew", seen.says.renew ? tell(screen, Code{"view.said.renew"}) : std::string{}},
               {"marks", seen.says.sub},
               {"rest", rest}});
}

Json cell_json(const Subject& subject, const Screen& screen, const Spot& spot, int index, const Seen& seen,
               const drawing::StationExtent& extent) {
  const Station& station = subject.job.shaft.stations()[static_cast<std::size_t>(index)];
  Json json{{"index", index},           {"kind", name_of(station.kind)},   {"name", station.label},
            {"word", seen.says.word},   {"flag", seen.says.flag},          {"body", seen.off ? "off" : "on"},
            {"renew", seen.says.renew}, {"chosen", index == spot.station}, {"rail", rail_of(station.kind)}};
  json["from"] = extent.from;
  json["to"] = extent.to;
  json["said"] = said_aloud(subject, screen, spot, index, seen);
  if (!seen.says.sub.empty()) json["sub"] = seen.says.sub;
  if (seen.says.tone != "plain") json["tone"] = seen.says.tone;
  return json;
}

std::string_view name_of(job::StageProgress progress) {
  switch (progress) {
    case job::StageProgress::to_come:
      return "to_come";
    case job::StageProgress::open:
      return "open";
    case job::StageProgress::passed:
      break;
  }
  return "passed";
}

}  // namespace

std::string stage_word(Stage stage, const Voice& voice) {
  return word("view.stage." + std::string{job::stage_name(stage)}, voice);
}

drawing::StripOptions strip_options(bool low) {
  return {.width = kStripWidth,
          .greatest_height = low ? kLowStrip : kFullStrip,
          .least_tine_share = low ? 0.45 : 1.0,
          .numbers = false,
          .draw_marks = false};
}

std::string_view rail_of(StationKind kind) {
  if (kind == StationKind::washer) return "none";
  return kind == StationKind::spacer ? "top" : "bottom";
}

int with_a_cell(const Shaft& shaft, int station) {
  const auto& stations = shaft.stations();
  const int count = static_cast<int>(stations.size());
  const auto is = [&](int i, StationKind kind) {
    return i >= 0 && i < count && stations[static_cast<std::size_t>(i)].kind == kind;
  };
  if (!is(station, StationKind::washer)) return station;
  for (const int i : {station - 1, station + 1})
    if (is(i, StationKind::nut)) return i;
  for (int away = 1; away < count; ++away)
    for (const int i : {station - away, station + away})
      if (i >= 0 && i < count && !is(i, StationKind::washer)) return i;
  return station;
}

Json stage_marks(const job::Standing& standing, Stage here, const Voice& voice) {
  Json marks = Json::array();
  for (int i = 0; i < job::kStageCount; ++i) {
    const auto stage = static_cast<Stage>(i);
    const auto at = static_cast<std::size_t>(i);
    const auto progress = at < standing.stages.size() ? standing.stages[at] : job::StageProgress::to_come;
    marks.push_back({{"stage", job::stage_name(stage)},
                     {"word", stage_word(stage, voice)},
                     {"progress", name_of(progress)},
                     {"present", stage == here}});
  }
  return marks;
}

std::vector<drawing::RotorMarks> marks_read(const job::OpenJob& job) {
  std::vector<drawing::RotorMarks> marks(static_cast<std::size_t>(job.shaft.rotor_count()));
  for (const MarkRead& mark : job.state.bench.marks) {
    if (mark.rotor < 1 || mark.rotor > job.shaft.rotor_count()) continue;
    drawing::RotorMarks& rotor = marks[static_cast<std::size_t>(mark.rotor - 1)];
    (mark.half == Half::a ? rotor.a : rotor.b) = azimuth_of_flat(mark.flat.value, job.shaft.flats());
  }
  return marks;
}

std::vector<drawing::StationState> stations_now(const job::OpenJob& job) {
  std::vector<drawing::StationState> states(job.shaft.stations().size());
  for (std::size_t i = 0; i < states.size() && i < job.state.off.size(); ++i)
    if (job.state.off[i]) states[i].body = drawing::Body::off;
  return states;
}

Json strip_json(const Subject& subject, const Screen& screen, const Spot& spot, CellOf cell_of) {
  const std::vector<Seen> seen = look_at_all(subject, screen, cell_of);
  std::vector<drawing::StationState> states = stations_now(subject.job);
  for (std::size_t i = 0; i < states.size(); ++i) {
    states[i].flag = flag_named(seen[i].says.flag);
    states[i].renew = seen[i].says.renew && states[i].body == drawing::Body::off;
    states[i].chosen = static_cast<int>(i) == spot.station;
  }
  const bool low = low_in(spot.stage);
  const drawing::StripDrawing strip =
      drawing::shaft_strip(subject.job.shaft, states, marks_read(subject.job), strip_options(low));
  Json cells = Json::array();
  for (std::size_t i = 0; i < seen.size(); ++i)
    cells.push_back(cell_json(subject, screen, spot, static_cast<int>(i), seen[i], strip.stations[i]));
  const std::string says =
      tell(screen, Code{"view.strip_says"},
           {{"shaft", subject.job.shaft.spec().name}, {"rotors", subject.job.shaft.rotor_count()}});
  return {{"list", picture_json(strip.list)}, {"low", low}, {"stations", std::move(cells)}, {"says", says}};
}

std::string hand_over_address(const Subject& subject) { return "/api/jobs/" + subject.row.id + "/sheets/hand-over"; }

}  // namespace flatwise::view
