#include "job/questions.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "job/judge.h"

namespace flatwise::job {
namespace {

constexpr std::array<std::string_view, kStageCount> kStageNames{"booking_in", "finding", "plan",     "teardown",
                                                                "inspection", "kit",     "press",    "timing",
                                                                "stack",      "torque",  "test_run", "release"};

constexpr Question kQuestions[] = {
    {"power_locked_off", Stage::booking_in, AskedOf::shaft},
    {"stored_energy_let_off", Stage::booking_in, AskedOf::shaft},
    {"frame_chocked", Stage::booking_in, AskedOf::shaft},
    {"tines_clear", Stage::booking_in, AskedOf::shaft},
    {"spacers_labelled", Stage::teardown, AskedOf::shaft},
    {"hub_bore_sound", Stage::inspection, AskedOf::rotor_that_came_off, true},
    {"ring_grooves_sound", Stage::inspection, AskedOf::rotor_that_came_off, true},
    {"spacers_sound", Stage::inspection, AskedOf::shaft, true},
    {"shaft_flats_sound", Stage::inspection, AskedOf::shaft, true},
    {"hangers_sound", Stage::inspection, AskedOf::shaft, true},
    {"seals_new", Stage::kit, AskedOf::rotor_that_came_off},
    {"bearing_greased", Stage::press, AskedOf::rotor_that_came_off},
    {"snap_rings_home", Stage::press, AskedOf::rotor_that_came_off},
    {"captive_in", Stage::stack, AskedOf::captive_station},
    {"guards_on", Stage::test_run, AskedOf::shaft},
    {"tools_counted", Stage::test_run, AskedOf::shaft, true},
    {"nobody_near", Stage::test_run, AskedOf::shaft, true},
    {"stop_tried", Stage::test_run, AskedOf::shaft, true},
    {"ran_cool_and_quiet", Stage::test_run, AskedOf::shaft},
    {"nut_rechecked", Stage::test_run, AskedOf::nut},
};

/// A question about seals or snap rings is not asked of a rotor that has none.
bool has_the_part(const Rotor& rotor, std::string_view question) {
  if (question == "seals_new") return rotor.seals > 0;
  return (question != "snap_rings_home" && question != "ring_grooves_sound") || rotor.snap_rings != SnapRings::none;
}

void ask(const Shaft& shaft, const Bench& bench, const std::vector<bool>& off, const Question& question,
         std::vector<Asked>& out) {
  switch (question.of) {
    case AskedOf::shaft:
      out.push_back({&question, 0});
      break;
    case AskedOf::rotor_that_came_off:
      for (const int rotor : bench.came_off)
        if (has_the_part(shaft.rotor(rotor), question.id)) out.push_back({&question, rotor});
      break;
    case AskedOf::captive_station:  // What a station hides is only out when the station came off.
      for (std::size_t i = 0; i < off.size(); ++i)
        if (off[i] && !shaft.stations()[i].fit_before.empty()) out.push_back({&question, static_cast<int>(i) + 1});
      break;
    case AskedOf::nut:  // By its end: a shaft with one nut may have it at end B.
      for (const Nut& nut : shaft.spec().nuts) out.push_back({&question, nut.end == End::a ? 1 : 2});
      break;
  }
}

}  // namespace

std::string_view stage_name(Stage stage) { return kStageNames[static_cast<std::size_t>(stage)]; }
std::span<const Question> questions() { return kQuestions; }

bool is_safety(std::string_view question) {
  constexpr std::string_view kBeforeTheRun[] = {"guards_on", "tools_counted", "nobody_near", "stop_tried"};
  const auto it = std::ranges::find(kQuestions, question, &Question::id);
  return (it != std::end(kQuestions) && it->stage == Stage::booking_in) ||
         std::ranges::find(kBeforeTheRun, question) != std::end(kBeforeTheRun);
}

std::vector<std::string_view> question_ids() {
  std::vector<std::string_view> ids;
  for (const Question& q : kQuestions) ids.push_back(q.id);
  return ids;
}

std::vector<Asked> asked(const Shaft& shaft, const Bench& bench) {
  const std::vector<bool> off = stations_off(shaft, bench);
  std::vector<Asked> out;
  for (const Question& q : kQuestions)
    if (bench.led || !q.only_led) ask(shaft, bench, off, q, out);
  return out;
}

}  // namespace flatwise::job
