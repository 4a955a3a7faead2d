// What to do next: the earliest stage that has something to do, and in it what a hand can be hurt by, then what is out.
#include "job/next.h"

#include <algorithm>
#include <array>
#include <functional>

#include "job/next/parts.h"
#include "job/release.h"

namespace flatwise::job {
namespace {

using standing_parts::Course;

constexpr std::size_t index_of(Stage stage) { return static_cast<std::size_t>(stage); }
Word stage_word(Stage stage) { return Word{"stage." + std::string{stage_name(stage)}}; }

struct View {
  const OpenJob& job;
  Course course;
  std::vector<Block> blocks;

  [[nodiscard]] bool blocked(Stage stage) const {
    return std::ranges::any_of(blocks, [&](const Block& b) { return b.stage == stage; });
  }
  [[nodiscard]] bool answered_in(Stage stage) const {
    return std::ranges::any_of(job.state.live,
                               [&](const auto& row) { return stage_of(row.second.first().body) == stage; });
  }
};

/// Stages that must have nothing open before this one may begin, once the shaft is open.
std::vector<Stage> closed_before(Stage stage) {
  if (stage == Stage::stack) return {Stage::teardown};
  if (stage == Stage::torque) return {Stage::stack};
  if (stage == Stage::test_run) return {Stage::timing, Stage::stack, Stage::torque};
  return {};
}

// --- how far each stage is --------------------------------------------------------------------------------------------

/// Side play is read while nobody has decided what to open; it blocks nothing.
bool play_wanted(const View& v) { return !v.course.way_chosen && !v.course.opened && !v.course.not_played.empty(); }

/// What must be so before a stage can be worked in.
bool may_begin(const View& v, Stage stage) {
  const bool safe = !v.blocked(Stage::booking_in);
  switch (stage) {
    case Stage::booking_in:
      return true;
    case Stage::finding:
    case Stage::plan:
      return safe || v.course.opened;
    case Stage::teardown:
    case Stage::kit:
      return v.course.opened || (safe && v.course.way_chosen && v.course.customer_yes);
    case Stage::inspection:
    case Stage::press:
    case Stage::timing:
      return v.course.opened;
    case Stage::stack:
    case Stage::torque:
    case Stage::test_run:
      return v.course.opened &&
             std::ranges::none_of(closed_before(stage), [&](Stage before) { return v.blocked(before); });
    case Stage::release:
      return v.course.opened && !v.blocked(Stage::test_run) && may_begin(v, Stage::test_run);
  }
  return false;
}

bool something_to_do(const View& v, Stage stage) {
  if (v.blocked(stage)) return true;
  if (stage == Stage::booking_in || stage == Stage::finding) return play_wanted(v);
  return stage == Stage::release && v.job.state.released == nullptr;
}

StageProgress progress_of(const View& v, Stage stage) {
  if (!may_begin(v, stage) && !v.answered_in(stage)) return StageProgress::to_come;
  return something_to_do(v, stage) || !may_begin(v, stage) ? StageProgress::open : StageProgress::passed;
}

// --- the one next step ------------------------------------------------------------------------------------------------

std::optional<Time> time_in(const Message& message) {
  for (const Arg& a : message.args)
    if (const auto* q = std::get_if<AnyQuantity>(&a.value); q != nullptr && q->kind == Kind::time)
      return seconds(q->si);
  return std::nullopt;
}

Message because(const View& v, const Block& block) {
  if (block.stage == Stage::release) {
    std::vector<Word> roles;
    constexpr std::array<const char*, 3> kRoleWords{"role.bench", "role.lead", "role.owner"};
    for (const Role role : {Role::bench, Role::lead, Role::owner})
      if (std::ranges::any_of(v.blocks, [&](const Block& b) { return b.lifted_by == role; }))
        roles.push_back(Word{kRoleWords[static_cast<std::size_t>(role)]});
    return {Code{"job.release_waits"}, {{"roles", std::move(roles)}}};
  }
  const auto open =
      static_cast<int>(std::ranges::count_if(v.blocks, [&](const Block& b) { return b.stage == block.stage; }));
  if (block.stage == Stage::booking_in) return {Code{"job.first_touch_waits"}, {{"count", open}}};
  const auto after = static_cast<Stage>(index_of(block.stage) + 1);
  return {Code{"job.stage_waits"}, {{"stage", stage_word(after)}, {"count", open}}};
}

NextStep step_of(const View& v, const Block& block) {
  return {block.instruction ? *block.instruction : block.what, because(v, block), block.stage, block.where,
          time_in(block.instruction ? *block.instruction : block.what)};
}

NextStep read_play(const View& v) {
  const std::vector<int>& left = v.course.not_played;
  const Args args{{"rotor", left.front()}};
  const Message why{Code{"job.plan_waits_for_play"}, {{"rotors", std::vector<std::int64_t>(left.begin(), left.end())}}};
  return {{Code{"job.read_play"}, args}, why, Stage::booking_in, at_rotor(left.front()), std::nullopt};
}

/// While parts are awaited the bench goes on with a rotor whose tray is complete.
const Block* meanwhile(const View& v) {
  const auto waits = [&](int rotor) {
    return std::ranges::any_of(v.blocks,
                               [&](const Block& b) { return b.stage == Stage::kit && b.where == at_rotor(rotor); });
  };
  for (const Block& b : v.blocks)
    if (b.stage > Stage::kit && may_begin(v, b.stage) && b.where.part == Where::Part::rotor && !waits(b.where.number))
      return &b;
  return nullptr;
}

NextStep wait_for_parts(const View& v) {
  const Message why{Code{"job.parts_awaited"}, {{"parts", v.course.parts_missing}}};
  if (const Block* b = meanwhile(v)) {
    NextStep next = step_of(v, *b);
    next.because = why;
    return next;
  }
  return {{Code{"job.get_parts"}, {{"parts", v.course.parts_missing}}}, why, Stage::kit, {}, std::nullopt};
}

/// On the way off and back the next thing is the next step, said as the steps say it.
NextStep step_or_block(const View& v, const Block& block) {
  const bool off = block.what.code == Code{"job.still_to_come_off"};
  if (!off && block.what.code != Code{"job.not_back_on"}) return step_of(v, block);
  const standing_parts::PhaseSteps steps =
      standing_parts::steps_of(v.course, v.job.state, off ? Phase::teardown : Phase::assembly);
  if (steps.left.empty()) return step_of(v, block);
  const JobStep& step = *steps.left.front();
  const Where where = step.moves.empty() ? Where{} : at_station(step.moves.back() - 1);
  return {step.step.what, because(v, block), block.stage, where, std::nullopt};
}

/// What is wrong or cannot be told on a tray is settled without parts; what is only not there waits for them.
bool only_waits(const View& v, const Block& block) {
  return block.stage == Stage::kit && block.severity == Severity::unanswered && !v.course.parts_missing.empty();
}

NextStep next_step(const View& v) {
  if (v.job.state.released != nullptr) return {{Code{"job.all_done"}, {}}, {}, Stage::release, {}, {}};
  if (play_wanted(v) && !v.blocked(Stage::booking_in)) return read_play(v);
  if (v.blocks.empty()) return {{Code{"job.release_it"}, {}}, {}, Stage::release, {}, {}};
  const auto it = std::ranges::find_if(v.blocks, [&](const Block& b) { return may_begin(v, b.stage); });
  const Block& first = it == v.blocks.end() ? v.blocks.front() : *it;
  return only_waits(v, first) ? wait_for_parts(v) : step_or_block(v, first);
}

// --- the word on the board --------------------------------------------------------------------------------------------

Waiting waiting_of(const View& v, const Standing& standing) {
  if (v.job.state.released != nullptr) return Waiting::released;
  const auto any = [&](Severity severity) {
    return std::ranges::any_of(v.blocks, [&](const Block& b) {
      return b.severity == severity && standing.stages[index_of(b.stage)] != StageProgress::to_come;
    });
  };
  if (any(Severity::out)) return Waiting::stopped;
  if (any(Severity::cannot_tell)) return Waiting::cannot_tell;
  if (standing.present == Stage::plan && v.course.way_chosen) return Waiting::customer;
  const bool kit_open = standing.stages[index_of(Stage::kit)] == StageProgress::open;
  if (kit_open && !v.course.parts_missing.empty()) return Waiting::parts;
  return standing.present == Stage::release ? Waiting::release : Waiting::bench;
}

Stage present_stage(const View& v) {
  if (v.job.state.released != nullptr) return Stage::release;
  for (int s = 0; s < kStageCount; ++s) {
    const auto stage = static_cast<Stage>(s);
    if (may_begin(v, stage) && something_to_do(v, stage)) return stage;
  }
  return v.blocks.empty() ? Stage::release : v.blocks.front().stage;
}

}  // namespace

Standing standing(const OpenJob& job) {
  const Facts facts = job.facts();
  View v{job, standing_parts::course_of(facts, job.state), {}};
  v.blocks = release_blocks(facts, job.state, job.report, v.course);
  Standing out{next_step(v), v.blocks, {}, present_stage(v)};
  for (int s = 0; s < kStageCount; ++s) out.stages.push_back(progress_of(v, static_cast<Stage>(s)));
  if (job.state.released != nullptr) out.stages[index_of(Stage::release)] = StageProgress::passed;
  out.waiting = waiting_of(v, out);
  out.way = std::move(v.course.way);
  if (job.state.released == nullptr) out.wanted = v.course.wanted;
  return out;
}

std::vector<const Block*> in_the_way(const Standing& standing, Stage stage) {
  const std::vector<Stage> closed = closed_before(stage);
  std::vector<const Block*> out;
  for (const Block& b : standing.blocks)
    if (b.stage < stage && (b.severity != Severity::unanswered || std::ranges::find(closed, b.stage) != closed.end()))
      out.push_back(&b);
  std::ranges::stable_sort(out, std::greater{}, [](const Block* b) { return b->severity; });
  return out;
}

}  // namespace flatwise::job
