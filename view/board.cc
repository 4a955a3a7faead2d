#include "view/board.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

#include "view/blocks.h"
#include "view/picture_json.h"
#include "view/rails.h"

namespace flatwise::view {
namespace {

using job::Waiting;

constexpr double kLetterRoom = 16;  // Of a strip, for the letters of its ends.

/// Word, flag and tone of a state; the flag is told by its shape, the colour only repeats it.
struct State {
  Code word;
  std::string_view flag, tone;
};
State state_of(Waiting waiting) {
  switch (waiting) {
    case Waiting::stopped:
      return {Code{"view.board.stopped"}, "stopped", "out"};
    case Waiting::cannot_tell:
      return {Code{"view.board.cannot_tell"}, "unknown", "tell"};
    case Waiting::customer:
      return {Code{"view.board.customer"}, "waits", "strong"};
    case Waiting::parts:
      return {Code{"view.board.parts"}, "waits", "strong"};
    case Waiting::bench:
      return {Code{"view.board.bench"}, "none", "strong"};
    case Waiting::release:
      return {Code{"view.board.release"}, "done", "in"};
    case Waiting::released:
      break;
  }
  return {Code{"view.board.released"}, "done", "in"};
}

std::string say_code(Code code, const Args& args, const Voice& voice) { return say(code.id(), args, voice); }

// Millimetres a strip takes at one millimetre a millimetre of shaft, thread beyond the nuts included.
double full_width(const Shaft& shaft) {
  const drawing::StripDrawing strip = drawing::shaft_strip(shaft, {}, {}, {.width = 116, .numbers = false});
  return (116 - kLetterRoom) / strip.scale;
}

double widest(std::span<const BoardJob> jobs) {
  double width = 1;
  for (const BoardJob& job : jobs) width = std::max(width, full_width(job.job.shaft));
  return width;
}

drawing::DisplayList strip_of(const BoardJob& job, double scale) {
  std::vector<drawing::StationState> states = stations_now(job.job);
  for (const job::Block& block : job.standing.blocks) {
    const std::optional<int> station = station_of(job.job.shaft, block.where);
    if (!station || block.severity == Severity::unanswered) continue;
    drawing::Flag& flag = states[static_cast<std::size_t>(*station)].flag;
    if (flag != drawing::Flag::stopped)
      flag = block.severity == Severity::out ? drawing::Flag::stopped : drawing::Flag::unknown;
  }
  const double width = kLetterRoom + full_width(job.job.shaft) * scale;
  return drawing::shaft_strip(job.job.shaft, states, marks_read(job.job),
                              {.width = width, .numbers = false, .draw_marks = false})
      .list;
}

Json row_json(const BoardJob& job, double scale, Day today, const Voice& voice) {
  const State state = state_of(job.standing.waiting);
  Json json{{"job", job.row.id},
            {"number", job.row.number},
            {"name", job.machine.empty() ? job.job.shaft.spec().name : job.machine},
            {"state", say_code(state.word, {}, voice)},
            {"flag", state.flag},
            {"tone", state.tone}};
  json["stages"] = stage_marks(job.standing, job.standing.present, voice);
  json["strip"] = picture_json(strip_of(job, scale));
  json["next"] = say(job.standing.next.does, job.standing.next.where, voice);
  json["stage"] = job::stage_name(job.standing.present);
  if (job.standing.next.because) json["because"] = say(*job.standing.next.because, voice);
  if (job.row.due) {
    json["due"] = day_text(*job.row.due, voice);
    if (*job.row.due < today && !job.row.released) json["late"] = true;
  }
  if (!job.customer.empty()) json["customer"] = job.customer;
  return json;
}

}  // namespace

Json board_view(const Workshop& workshop, std::span<const BoardJob> jobs, Day today, const Voice& voice) {
  std::vector<const BoardJob*> order;
  for (const BoardJob& job : jobs) order.push_back(&job);
  constexpr Day kNever{9999, 12, 31};
  std::ranges::stable_sort(order, [&](const BoardJob* a, const BoardJob* b) {
    if (a->standing.waiting != b->standing.waiting) return a->standing.waiting < b->standing.waiting;
    return a->row.due.value_or(kNever) < b->row.due.value_or(kNever);
  });
  const double scale = (kStripWidth * 0.6 - kLetterRoom) / widest(jobs);
  Json rows = Json::array();
  for (const BoardJob* job : order) rows.push_back(row_json(*job, scale, today, voice));
  int stopped = 0;
  for (const BoardJob& job : jobs) stopped += job.standing.waiting == Waiting::stopped ? 1 : 0;
  return {{"workshop", workshop.name},
          {"invented", workshop.invented},
          {"head",
           say_code(Code{"view.board.head"}, {{"jobs", static_cast<int>(jobs.size())}, {"stopped", stopped}}, voice)},
          {"rows", std::move(rows)}};
}

std::vector<Json> strips_at_one_scale(std::span<const Shaft> shafts) {
  double greatest = 1;
  for (const Shaft& shaft : shafts) greatest = std::max(greatest, full_width(shaft));
  const double scale = (kStripWidth * 0.6 - kLetterRoom) / greatest;
  std::vector<Json> strips;
  for (const Shaft& shaft : shafts) {
    const std::vector<drawing::StationState> outline(shaft.stations().size(), {.body = drawing::Body::off});
    const double width = kLetterRoom + full_width(shaft) * scale;
    strips.push_back(picture_json(
        drawing::shaft_strip(shaft, outline, {}, {.width = width, .numbers = false, .draw_marks = false}).list));
  }
  return strips;
}

}  // namespace flatwise::view
