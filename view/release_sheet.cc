// Release. Found first: Complete, or Blocked and why, in its frame.
#include "job/release.h"

#include <algorithm>
#include <array>

#include "job/roles.h"
#include "job/service.h"
#include "view/bench_parts.h"
#include "view/papers.h"
#include "view/rails.h"

namespace flatwise::view {
namespace {

using job::Role;
using job::Stage;

Word role_word(Role role) {
  constexpr std::array<std::string_view, 3> kNames{"bench", "lead", "owner"};
  return Word{"role." + std::string{kNames[static_cast<std::size_t>(role)]}};
}
std::string role_name(const Screen& screen, Role role) {
  return tell_big(screen, Code{"bench.word"}, {{"word", role_word(role)}});
}

/// The part a block is about; the stage where it is the whole shaft.
std::string part_name(const Subject& subject, const Screen& screen, const job::Block& block) {
  if (const auto station = station_of(subject.job.shaft, block.where))
    return station_name(subject.job.shaft, *station, screen.voice);
  return stage_word(block.stage, screen.voice);
}

/// Whether who is at the bench may lift it: the lead stands in at the bench, nobody stands in for the lead or the owner.
bool may_lift(const Subject& subject, const Screen& screen, Role role) {
  const auto who = subject.roles.find(screen.by);
  return who == subject.roles.end() || !job::lacks_role(who->second, job::Signed{role});
}

/// A finding as two: what it is, without the part that stands beside it, and the rest of what was said.
struct Said {
  std::string head, rest;
};
std::string without_part(std::string text, const std::string& part) {
  if (text.starts_with(part + ": ")) text.erase(0, part.size() + 2);
  return capital(std::move(text));
}
/// What is long is parted where its first sentence ends, never at a colon: "From end A" alone says nothing.
Said in_short(std::string text, const std::string& part) {
  constexpr std::size_t kShort = 56;  // Characters that go on one line of the list.
  text = without_part(std::move(text), part);
  const std::size_t at = text.size() <= kShort ? std::string::npos : text.find(". ");
  if (at == std::string::npos || at + 2 >= text.size()) return {std::move(text), {}};
  return {text.substr(0, at), text.substr(at + 2)};
}

/// A question nobody answered, or answered no: the question itself is what is open.
bool is_question(const job::Block& block) {
  return block.what.code == Code{"job.unanswered"} || block.what.code == Code{"job.answered_no"};
}
Said question_in_short(std::string text, const std::string& part) {
  const std::size_t at = text.rfind(": ");
  if (at == std::string::npos) return in_short(std::move(text), part);
  Said before = in_short(text.substr(0, at), part);
  Said said = in_short(text.substr(at + 2), part);
  said.rest = (said.rest.empty() ? "" : said.rest + " ") + before.head + ".";
  return said;
}

/// Who may sign is not at the bench: he comes to the page under his own name.
Json ask_for(const Screen& screen, Role role) {
  return action(
      tell(screen, Code{"bench.release.ask_role"}, {{"role", role_word(role)}}), do_go({.page = "people"}),
      {.tone = "next", .says = tell(screen, Code{"bench.release.ask_role_says"}, {{"role", role_word(role)}})});
}

Json block_action(const Subject& subject, const Screen& screen, const job::Block& block, bool first) {
  // Signatures stand below on this sheet.
  if (block.stage == Stage::release && block.where.number == 0)
    return may_lift(subject, screen, block.lifted_by) ? Json() : ask_for(screen, block.lifted_by);
  const Stage stage = block.what.code == Code{"job.second_look_wanted"} ? Stage::timing : block.stage;
  const std::string part = part_name(subject, screen, block);
  const bool may = may_lift(subject, screen, block.lifted_by);
  const Args args{{"part", part}, {"stage", stage_word(stage, screen.voice)}, {"role", role_word(block.lifted_by)}};
  const Code label = !may ? Code{"bench.release.ask"} : first ? Code{"bench.release.now"} : Code{"bench.release.go"};
  return action(tell(screen, label), do_go({.stage = stage, .station = station_of(subject.job.shaft, block.where)}),
                {.tone = first && may ? "next" : "plain",
                 .says = tell(screen, may ? Code{"bench.release.go_says"} : Code{"bench.release.ask_says"}, args)});
}

std::vector<StandingRow> rows_of(const Subject& subject, const Screen& screen) {
  std::vector<StandingRow> rows;
  bool first = true;  // The first that this person may lift is the one to do now.
  for (const job::Block& block : subject.standing.blocks) {
    StandingRow row;
    row.part = part_name(subject, screen, block);
    std::string text = say(block.what, screen.voice);
    Said said = is_question(block) ? question_in_short(std::move(text), row.part) : in_short(std::move(text), row.part);
    row.what = std::move(said.head);
    row.lifted_by = role_name(screen, block.lifted_by);
    row.action = block_action(subject, screen, block, first);
    if (!row.action.is_null() && may_lift(subject, screen, block.lifted_by)) first = false;
    row.detail = std::move(said.rest);
    if (block.instruction)
      row.detail += (row.detail.empty() ? "" : " ") + without_part(say(*block.instruction, screen.voice), row.part);
    rows.push_back(std::move(row));
  }
  return rows;
}

Json standing_here(const Subject& subject, const Screen& screen) {
  const auto& blocks = subject.standing.blocks;
  const bool released = subject.job.state.released != nullptr;
  const int open = static_cast<int>(blocks.size());
  const std::string head = blocks.empty() ? tell(screen, Code{"bench.release.complete"})
                                          : tell(screen, Code{"bench.release.blocked"}, {{"open", open}});
  std::optional<ForceIs> force;
  if (open > 0 && !released && may_lift(subject, screen, job::Role::lead)) {
    job::Released body;
    body.forced = true;
    force = ForceIs{.label = tell(screen, Code{"bench.release.force"}),
                    .reason_label = tell(screen, Code{"bench.release.reason"}),
                    .body = body,
                    .into = "reason"};
  }
  return standing_block(
      subject, blocks.empty(), head,
      tell(screen, blocks.empty() ? Code{"bench.release.aside_complete"} : Code{"bench.release.aside"}),
      rows_of(subject, screen), force);
}

Json sign_key(const Subject& subject, const Screen& screen, Role role, std::string blocked = {}) {
  const std::string_view tone = blocked.empty() ? "next" : "plain";
  return action(tell_big(screen, Code{"bench.release.sign"}, {{"role", role_word(role)}}),
                do_record({draft(subject, job::Signed{role})}), {.tone = tone, .blocked = std::move(blocked)});
}
std::ptrdiff_t open_but_signatures(const Subject& subject) {
  return std::ranges::count_if(subject.standing.blocks, [](const job::Block& b) { return !job::is_of_signature(b); });
}

/// In their order: what each still waits for keeps its key shut.
Json signatures_here(const Subject& subject, const Screen& screen) {
  const auto signatures = job::signatures(subject.job.state);
  std::vector<SignatureRow> rows;
  std::string waits;
  const std::ptrdiff_t open = open_but_signatures(subject);
  if (open > 0) waits = tell(screen, Code{"bench.release.waits_open"}, {{"open", static_cast<int>(open)}});
  for (const job::Signature& signature : signatures) {
    SignatureRow row;
    row.role = role_name(screen, signature.as);
    row.signed_by = signature.entry;
    // What it waits for stands at its key.
    if (signature.void_by != nullptr)
      row.says = tell(screen, signature.unseen ? Code{"bench.release.unseen"} : Code{"bench.release.void"},
                      {{"entry", signature.void_by->number}});
    if (signature.entry == nullptr && subject.job.state.released == nullptr) {
      std::string blocked = waits;
      if (blocked.empty() && !may_lift(subject, screen, signature.as))
        blocked = tell(screen, Code{"bench.release.waits_role"}, {{"role", role_word(signature.as)}});
      row.action = sign_key(subject, screen, signature.as, std::move(blocked));
      if (waits.empty()) waits = tell(screen, Code{"bench.release.waits_role"}, {{"role", role_word(signature.as)}});
    }
    rows.push_back(std::move(row));
  }
  return signatures_block(subject, rows);
}

Json release_action(const Subject& subject, const Screen& screen) {
  const std::size_t open = subject.standing.blocks.size();
  std::string blocked;
  if (open > 0)
    blocked = tell(screen, Code{"bench.release.waits_open"}, {{"open", static_cast<int>(open)}});
  else if (!may_lift(subject, screen, job::Role::lead))
    blocked = tell(screen, Code{"bench.release.waits_role"}, {{"role", role_word(job::Role::lead)}});
  return action(tell(screen, Code{"bench.release.release"}), do_record({draft(subject, job::Released{})}),
                {.tone = blocked.empty() ? "next" : "plain", .blocked = blocked});
}

Json released_block(const Subject& subject, const Screen& screen) {
  const job::Released* released = subject.job.state.released;
  if (released == nullptr) return nullptr;
  const job::LiveAnswers* live = subject.job.state.answers(field_key(*released));
  AnswerIs is{.sign = released->forced ? "stopped" : "done",
              .word = tell(screen, released->forced ? Code{"bench.release.forced"} : Code{"bench.release.released"})};
  if (live != nullptr)
    is.says.push_back(tell(screen, Code{"bench.release.by"},
                           {{"by", person_name(subject, live->first().by)}, {"reason", released->reason}}));
  is.says.push_back(tell(screen, Code{"bench.release.stays"}));
  return answer_block(is, screen.voice);
}

/// When the shaft is due again; null where its definition does not say.
Json next_due_here(const Subject& subject, const Screen& screen) {
  const auto next = job::next_due(subject.job.shaft, subject.job.state.bench);
  if (!next) return nullptr;
  const job::DueSaid said = job::said(*next);
  std::string because;
  for (const Message& one : said.because) because += (because.empty() ? "" : " ") + say(one, screen.voice);
  return facts_block({{.caption = tell(screen, Code{"bench.release.next_due"}),
                       .value = say(said.when, screen.voice),
                       .tone = "strong",
                       .other = because,
                       .working = next->due}},
                     screen.voice);
}

}  // namespace

Json signing_action(const Subject& subject, const Screen& screen) {
  if (subject.job.state.released != nullptr || open_but_signatures(subject) > 0) return nullptr;
  for (const job::Signature& signature : job::signatures(subject.job.state))
    if (signature.entry == nullptr)
      return may_lift(subject, screen, signature.as) ? sign_key(subject, screen, signature.as)
                                                     : ask_for(screen, signature.as);
  return may_lift(subject, screen, Role::lead) ? release_action(subject, screen) : ask_for(screen, Role::lead);
}

SheetParts release_sheet(const Subject& subject, const Screen& screen, const Spot&) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.release.title"}, {{"job", subject.row.number}});
  if (Json block = released_block(subject, screen); !block.is_null()) parts.head.push_back(std::move(block));
  parts.head.push_back(standing_here(subject, screen));
  parts.head.push_back(signatures_here(subject, screen));
  if (subject.job.state.released == nullptr) parts.left.push_back(actions_block({release_action(subject, screen)}));
  if (Json block = next_due_here(subject, screen); !block.is_null()) parts.right.push_back(std::move(block));
  parts.right.push_back(text_block(tell(screen, Code{"bench.release.papers"}), "read", "strong"));
  parts.right.push_back(papers_block(subject, screen, Stage::release));
  parts.foot.push_back(log_block(subject, screen, tell(screen, Code{"bench.release.log"})));
  return parts;
}

CellSays release_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  Severity worst = Severity::note;
  const Where where = where_of(subject.job.shaft, station);
  for (const job::Block& block : subject.standing.blocks)
    if (block.where == where) worst = std::max(worst, block.severity);
  mark_cell(cell, worst, station_came_off(subject, station) && rotor_at(subject.job.shaft, station) > 0);
  if (worst != Severity::note)
    cell.word = tell(screen, worst == Severity::out ? Code{"bench.cell.stop"} : Code{"bench.cell.look"});
  else if (cell.flag == "done")
    cell.word = tell(screen, Code{"bench.cell.done"});
  return cell;
}

}  // namespace flatwise::view
