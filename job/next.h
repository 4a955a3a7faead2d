// next.h: what to do next in a job, and what blocks it: always one answer, with its reasons.
#pragma once

#include <optional>
#include <vector>

#include "job/job_state.h"
#include "job/kit.h"
#include "job/steps.h"

namespace flatwise::job {

/// Something open that keeps the job from going on.
struct Block {
  Message what;  ///< "not checked again after the run"
  Where where;
  Stage stage = Stage::booking_in;
  Severity severity = Severity::unanswered;
  Role lifted_by = Role::bench;
  std::optional<Message> instruction;  ///< What lifts it.
};

struct NextStep {
  Message does;                    ///< The verb and the part.
  std::optional<Message> because;  ///< What waits for it.
  Stage stage = Stage::booking_in;
  Where where;
  std::optional<Time> takes;
};

enum class StageProgress { to_come, open, passed };

/// In what a job waits: the word on the board, worst first.
enum class Waiting { stopped, cannot_tell, customer, parts, bench, release, released };

struct Standing {
  NextStep next;
  std::vector<Block> blocks;          ///< Of the release: everything missing, out, or that cannot be told, in order.
  std::vector<StageProgress> stages;  ///< One a Stage.
  Stage present = Stage::booking_in;  ///< Earliest stage with something to do.
  Waiting waiting = Waiting::bench;
  std::optional<ChosenWay> way = {};    ///< The way that was chosen, with its steps; points into the job's state.
  std::vector<PartWanted> wanted = {};  ///< Parts that the way chosen still takes from the shelf.
};

[[nodiscard]] Standing standing(const OpenJob& job);

/// What stands between the hand and a stage, worst first: what earlier stages found out or cannot tell, and what is missing of those
/// that must be closed before this one may begin. Empty: go on. A release waits for everything: it has its own list.
[[nodiscard]] std::vector<const Block*> in_the_way(const Standing& standing, Stage stage);

}  // namespace flatwise::job
