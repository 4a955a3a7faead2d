// The frame round every sheet: title, stage rule, band of questions, strip with its cells, and the line that says what to do next.
#include "view/bench_view.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "core/timing/check.h"
#include "view/blocks.h"
#include "view/papers.h"
#include "view/picture_json.h"
#include "view/rails.h"
#include "view/stage_sheets.h"
#include "view/teardown_steps.h"

namespace flatwise::view {
namespace {

using job::Stage;

struct StageView {
  SheetOf sheet;
  CellOf cell;
};
constexpr std::array<StageView, job::kStageCount> kStages{{{booking_in_sheet, booking_in_cell},
                                                           {finding_sheet, finding_cell},
                                                           {plan_sheet, plan_cell},
                                                           {teardown_sheet, teardown_cell},
                                                           {inspection_sheet, inspection_cell},
                                                           {kit_sheet, kit_cell},
                                                           {press_sheet, press_cell},
                                                           {timing_sheet, timing_cell},
                                                           {stack_sheet, stack_cell},
                                                           {torque_sheet, torque_cell},
                                                           {test_run_sheet, test_run_cell},
                                                           {release_sheet, release_cell}}};
const StageView& view_of(Stage stage) { return kStages[static_cast<std::size_t>(stage)]; }

int first_of(const Shaft& shaft, StationKind kind) {
  for (std::size_t i = 0; i < shaft.stations().size(); ++i)
    if (shaft.stations()[i].kind == kind) return static_cast<int>(i);
  return 0;
}

// Where the hand is wanted: by the next step, else by what the stage found, else the first part that the stage is about.
int wanted_station(const Subject& subject, const Spot& spot) {
  const Shaft& shaft = subject.job.shaft;
  const Stage stage = spot.stage;
  if (stage == Stage::teardown)
    if (const std::optional<int> at = station_in_hand(subject, spot.step)) return *at;
  const job::NextStep& next = subject.standing.next;
  if (next.stage == stage)
    if (const std::optional<int> at = station_of(shaft, next.where)) return *at;
  for (const job::StageReport& report : subject.job.report.stages) {
    if (report.stage != stage) continue;
    for (const Finding& finding : report.findings)
      if (finding.severity != Severity::note)
        if (const std::optional<int> at = station_of(shaft, finding.where)) return *at;
  }
  return first_of(shaft, stage == Stage::torque ? StationKind::nut : StationKind::rotor);
}

Spot spot_of(const Subject& subject, const Screen& screen) {
  Spot spot{.stage = screen.stage.value_or(subject.standing.present), .from = screen.from, .step = screen.step};
  const int count = static_cast<int>(subject.job.shaft.stations().size());
  const bool there = screen.station && *screen.station >= 0 && *screen.station < count;
  const int wanted = there ? *screen.station : wanted_station(subject, spot);
  spot.station = with_a_cell(subject.job.shaft, wanted);
  return spot;
}

Json title_json(const Subject& subject, const Screen& screen, const Spot& spot) {
  const bool metric = screen.voice.units == UnitSystem::metric;
  return {{"shaft", subject.job.shaft.spec().name},
          {"job", subject.row.number},
          {"workshop", subject.job.workshop.name},
          {"invented", subject.job.workshop.invented || subject.job.shaft.spec().invented},
          {"stage", stage_word(spot.stage, screen.voice)},
          {"units", tell(screen, metric ? Code{"view.units_metric"} : Code{"view.units_inch"})}};
}

Json job_json(const Subject& subject) {
  const auto& entries = subject.job.entries;
  return {{"id", subject.row.id},
          {"number", subject.row.number},
          {"head", subject.row.head},
          {"entries", subject.row.entries},
          {"last", entries.empty() ? std::string{} : entries.back().id},
          {"machine", subject.row.machine},
          {"released", subject.row.released}};
}

// Questions that the hand must pass before it may go to the shaft.
std::vector<const job::Question*> band_questions(const Subject& subject, Stage stage) {
  std::vector<const job::Question*> out;
  for (const job::Question& q : job::questions()) {
    if (q.stage == stage && job::is_safety(q.id) && (subject.job.state.bench.led || !q.only_led)) out.push_back(&q);
  }
  return out;
}

bool answered_yes(const Subject& subject, std::string_view question) {
  const auto* answer =
      subject.job.state.agreed<job::Answered>(job::question_of(job::Answered{std::string{question}, 0, Reply::yes}));
  return answer != nullptr && answer->reply == Reply::yes;
}

Json band_json(const Subject& subject, const Screen& screen, Stage stage) {
  Json questions = Json::array();
  for (const job::Question* q : band_questions(subject, stage)) {
    const std::string id{q->id};
    const bool yes = answered_yes(subject, id);
    questions.push_back(yes_no(subject, screen,
                               {.label = word("question." + id + ".short", screen.voice),
                                .detail = yes ? std::string{} : word("question." + id + ".do", screen.voice)},
                               [&](Reply reply) { return job::EntryBody{job::Answered{id, 0, reply}}; }));
  }
  if (questions.empty()) return nullptr;
  const Code head = stage == Stage::booking_in ? Code{"view.band.booking_in"} : Code{"view.band.test_run"};
  return {{"head", tell(screen, head)}, {"rule", tell(screen, Code{"view.band.rule"})}, {"questions", questions}};
}

// Why the sheet of a stage stays empty: a question of its band that is not answered yes.
std::string shut_because(const Subject& subject, const Screen& screen, Stage stage) {
  int open = 0;
  for (const job::Question* q : band_questions(subject, stage)) open += answered_yes(subject, q->id) ? 0 : 1;
  if (open == 0 || subject.row.released) return {};
  return tell(screen, Code{"view.shut"}, {{"open", open}});
}

// Questions of this stage that people answered differently: about the chosen part, or about the whole shaft.
Json disagreements_here(const Subject& subject, const Screen& screen, const Spot& spot) {
  Json blocks = Json::array();
  for (const auto& [question, live] : subject.job.state.live) {
    if (live.agreed || job::stage_of(live.first().body) != spot.stage) continue;
    const std::optional<int> at = station_of(subject.job.shaft, part_of(subject.job.shaft, live.first().body));
    if (!at || *at == spot.station) blocks.push_back(disagree_block(subject, screen, question));
  }
  return blocks;
}

Json joined(Json first, Json then) {
  for (Json& block : then) first.push_back(std::move(block));
  return first;
}

Json sheet_json(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  const std::string shut = shut_because(subject, screen, spot.stage);
  if (shut.empty()) {
    parts = view_of(spot.stage).sheet(subject, screen, spot);
    parts.head = joined(disagreements_here(subject, screen, spot), std::move(parts.head));
    const Where part = where_of(subject.job.shaft, spot.station);
    if (spot.stage != Stage::release)  // There they have their own place.
      if (Json papers = papers_block(subject, screen, spot.stage); !papers.is_null())
        parts.foot.push_back(std::move(papers));
    parts.foot.push_back(photos_block(subject, screen, spot.stage, part));
    parts.foot.push_back(note_block(subject, screen, spot.stage, part));
  } else {
    parts.title = stage_word(spot.stage, screen.voice);
  }
  Json json{{"title", parts.title},
            {"left", std::move(parts.left)},
            {"right", std::move(parts.right)},
            {"head", std::move(parts.head)},
            {"foot", std::move(parts.foot)}};
  if (!parts.aside.empty()) json["aside"] = parts.aside;
  if (!shut.empty()) json["shut"] = shut;
  return json;
}

// What can be done about it from where the eye is: go there, unless it is there already.
Json next_action(const Subject& subject, const Screen& screen, const Spot& spot) {
  const job::NextStep& next = subject.standing.next;
  if (subject.row.released) return action(tell(screen, Code{"view.next.paper"}), do_open(hand_over_address(subject)));
  std::optional<int> station = station_of(subject.job.shaft, next.where);
  if (station) station = with_a_cell(subject.job.shaft, *station);
  // The release waits for a second look at marks, which stand on the sheet of timing.
  const Stage to = next.does.code == Code{"job.look_again"} ? Stage::timing : next.stage;
  if (spot.stage == to && (!station || *station == spot.station))
    return to == Stage::release ? signing_action(subject, screen) : Json();
  const Code label = spot.stage == to ? Code{"view.next.go_part"} : Code{"view.next.go_stage"};
  Args args{{"stage", stage_word(to, screen.voice)}};
  if (station) args.emplace_back("part", station_name(subject.job.shaft, *station, screen.voice, true));
  return action(tell(screen, label, args), do_go({.stage = to, .station = station}), {.tone = "next"});
}

// While parts come off the line names the step in hand, and from the first on where it stops.
Json teardown_line(const Subject& subject, const Screen& screen) {
  const std::vector<job::JobStep>& steps = teardown_steps(subject);
  const int at = first_not_done(steps);
  if (at >= static_cast<int>(steps.size())) return nullptr;
  Json json{{"does", say(steps[static_cast<std::size_t>(at)].step.what, screen.voice)},
            {"stage", job::stage_name(Stage::teardown)}};
  if (const std::string stop = stop_words(subject, screen, steps); !stop.empty()) json["because"] = stop;
  json["action"] = done_action(subject, screen, steps, at);
  return json;
}

Json next_json(const Subject& subject, const Screen& screen, const Spot& spot) {
  const job::NextStep& next = subject.standing.next;
  if (next.stage == Stage::teardown && spot.stage == Stage::teardown)
    if (Json line = teardown_line(subject, screen); !line.is_null()) return line;
  // A direction is said from the end where the mechanic stands.
  const Message what = timing::seen_from(next.does, spot.from);
  Json json{{"does", say(what, next.where, screen.voice)}, {"stage", job::stage_name(next.stage)}};
  if (next.because) json["because"] = say(*next.because, screen.voice);
  if (next.takes) json["detail"] = shown(any(*next.takes), screen.voice);
  if (next.because) json["blocked"] = true;
  // On its own sheet a step of the way back is done from here, whichever part is chosen; elsewhere the key leads there.
  const job::JobStep* back = spot.stage == Stage::stack && !spot.step ? way_back_step(subject) : nullptr;
  Json does = back == nullptr ? Json() : put_on_action(subject, screen, *back);
  if (does.is_null()) does = next_action(subject, screen, spot);
  if (!does.is_null()) json["action"] = std::move(does);
  return json;
}

int disagreement_count(const Subject& subject) {
  return static_cast<int>(
      std::ranges::count_if(subject.job.state.live, [](const auto& q) { return !q.second.agreed; }));
}

}  // namespace

Json bench_view(const Subject& subject, const Screen& screen) {
  const Spot spot = spot_of(subject, screen);
  Json json{{"job", job_json(subject)}, {"title", title_json(subject, screen, spot)}};
  json["stage"] = job::stage_name(spot.stage);
  json["station"] = spot.station;
  json["from"] = spot.from == End::a ? "a" : "b";
  json["stages"] = stage_marks(subject.standing, spot.stage, screen.voice);
  json["strip"] = strip_json(subject, screen, spot, view_of(spot.stage).cell);
  json["sheet"] = sheet_json(subject, screen, spot);
  json["next"] = next_json(subject, screen, spot);
  json["disagreements"] = disagreement_count(subject);
  if (Json band = band_json(subject, screen, spot.stage); !band.is_null()) json["band"] = std::move(band);
  return json;
}

}  // namespace flatwise::view
