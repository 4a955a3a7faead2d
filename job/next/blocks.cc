// Blocks: what the rules of the stages found, and what only the record can show: decisions, differing answers, signatures.
#include <algorithm>
#include <array>
#include <tuple>

#include "job/next/parts.h"
#include "job/release.h"

namespace flatwise::job {
namespace {

using standing_parts::Course;

constexpr std::array<const char*, 3> kRoleWords{"role.bench", "role.lead", "role.owner"};
Word role_word(Role role) { return Word{kRoleWords[static_cast<std::size_t>(role)]}; }
std::vector<std::int64_t> listed(const std::vector<int>& numbers) { return {numbers.begin(), numbers.end()}; }

/// What only the lead can settle: whether a worn part or a doubtful gauge will do.
Role lifted_by(Code code, Severity severity) {
  const std::string_view id = code.id();
  if (id == "job.gauge_overdue" || id == "metrology.gauge_overdue") return Role::lead;
  return id.starts_with("metrology.") && severity == Severity::out ? Role::lead : Role::bench;
}

/// The question of a finding that says that one was not answered, else empty.
std::string_view question_in(const Message& what) {
  if (what.code != Code{"job.unanswered"} && what.code != Code{"job.answered_no"}) return {};
  for (const Arg& a : what.args)
    if (a.name == "question") return std::string_view{std::get<Word>(a.value).id}.substr(std::size("question.") - 1);
  return {};
}

/// A hand can be hurt by it: nothing goes before it.
bool hurts(const Block& block) { return is_safety(question_in(block.what)); }

/// Within a stage and among equals: parts that will be hidden, then what is still to be taken off or put on, then the rest.
int rank(const Block& block) {
  if (block.what.code == Code{"job.steps_left"}) return 0;
  if (question_in(block.what) == "captive_in") return 0;
  if (block.what.code == Code{"timing.unread"}) return 1;
  // Read while it runs or right after: before what is asked of the run as a whole.
  if (block.what.code.id().starts_with("job.run_")) return 1;
  if (block.what.code == Code{"job.not_back_on"} || block.what.code == Code{"job.still_to_come_off"}) return 1;
  return is_of_signature(block) ? 3 : 2;
}

struct Collector {
  const Facts& facts;
  const JobState& state;
  const Course& course;
  std::vector<Block> out = {};

  Block& add(Code code, Stage stage, Severity severity, Role role, const Args& args, std::optional<Message> mend,
             Where where = {}) {
    return out.emplace_back(Block{{code, args}, where, stage, severity, role, std::move(mend)});
  }
};

// --- what the rules found ---------------------------------------------------------------------------------------------

/// Where the hand goes for it: a nut is a part too, though its finding names only its end.
Where where_of(const Facts& facts, Stage stage, const Finding& finding) {
  const auto nut = std::ranges::find(finding.args, std::string_view{"nut"}, &Arg::name);
  if (stage != Stage::torque || nut == finding.args.end()) return finding.where;
  const auto* end = std::get_if<Word>(&nut->value);
  return end == nullptr ? finding.where
                        : standing_parts::where_of_nut(facts.shaft, *end == Word{"end.a"} ? End::a : End::b);
}

void take_finding(Collector& c, Stage stage, const Finding& finding) {
  if (finding.severity == Severity::note) return;
  // Said rotor by rotor already.
  if (finding.code == Code{"timing.cannot_tell"}) return;
  // A mark that nobody read, and what hangs on it, is missing, not in doubt.
  const bool missing = finding.code == Code{"timing.unread"} || finding.code == Code{"timing.unsure"};
  const Severity severity = missing ? Severity::unanswered : finding.severity;
  c.out.push_back({{finding.code, finding.args},
                   where_of(c.facts, stage, finding),
                   stage,
                   severity,
                   lifted_by(finding.code, severity),
                   finding.instruction});
}

void take_problem(Collector& c, Stage stage, const Problem& problem) {
  const Message said = message_of(problem);
  c.out.push_back({said, {}, stage, Severity::cannot_tell, Role::bench, Message{Code{"job.read_again"}, said.args}});
}

void take_report(Collector& c, const JobReport& report) {
  for (const StageReport& stage : report.stages) {
    for (const Problem& p : stage.problems) take_problem(c, stage.stage, p);
    for (const Finding& f : stage.findings) take_finding(c, stage.stage, f);
  }
}

// --- two answers ------------------------------------------------------------------------------------------------------

Args subject_of(const EntryBody& body, Where where) {
  const auto* answer = std::get_if<Answered>(&body);
  Args args{{"subject",
             answer != nullptr ? Word{"question." + answer->question} : Word{"subject." + std::string{kind_of(body)}}}};
  if (where.part == Where::Part::rotor) args.emplace_back("rotor", where.number);
  return args;
}

/// Nobody wins: what differs is not a fact, so the rules say that it is missing. That is left out where it is the same.
void take_differing(Collector& c) {
  for (const auto& [question, answers] : c.state.live) {
    if (answers.agreed) continue;
    const EntryBody& body = answers.first().body;
    const Where where = standing_parts::where_of(c.facts.shaft, body);
    if (const auto* answer = std::get_if<Answered>(&body))
      std::erase_if(c.out, [&](const Block& b) {
        const auto number = std::ranges::find(b.what.args, std::string_view{"number"}, &Arg::name);
        return question_in(b.what) == answer->question && number != b.what.args.end() &&
               std::get<std::int64_t>(number->value) == answer->number;
      });
    const Args args = subject_of(body, where);
    c.add(Code{"job.two_answers"}, stage_of(body), Severity::cannot_tell, Role::lead, args,
          Message{Code{"job.decide_between"}, args}, where);
  }
}

// --- the plan, the way off and the way back ---------------------------------------------------------------------------

/// A shaft that is open already has passed the plan in fact: what is missing of it then keeps back the release only.
void take_plan(Collector& c) {
  if (c.course.customer_yes && c.course.way_chosen) return;
  const Stage stage = c.course.opened ? Stage::release : Stage::plan;
  if (!c.course.way_chosen)
    c.add(Code{"job.way_not_chosen"}, stage, Severity::unanswered, Role::lead, {}, Message{Code{"job.choose_way"}, {}});
  else if (c.course.customer_no)
    c.add(Code{"job.customer_said_no"}, stage, Severity::unanswered, Role::lead, {},
          Message{Code{"job.choose_other_way"}, {}});
  else
    c.add(Code{"job.customer_not_asked"}, stage, Severity::unanswered, Role::lead, {},
          Message{Code{"job.ask_customer"}, {}});
}

/// Steps are answered one by one once somebody began to: one left out is missed, and one answered no stops the work.
void take_steps(Collector& c, Phase phase) {
  const Stage stage = phase == Phase::teardown ? Stage::teardown : Stage::stack;
  const standing_parts::PhaseSteps steps = standing_parts::steps_of(c.course, c.state, phase);
  const auto where = [](const JobStep& s) { return s.moves.empty() ? Where{} : at_station(s.moves.back() - 1); };
  for (const JobStep* step : steps.refused)
    c.add(Code{"job.step_answered_no"}, stage, Severity::out, Role::bench, {}, step->step.what, where(*step));
  if (!steps.kept || steps.left.empty()) return;
  const Args args{{"stage", Word{"stage." + std::string{stage_name(stage)}}},
                  {"count", static_cast<int>(steps.left.size())}};
  c.add(Code{"job.steps_left"}, stage, Severity::unanswered, Role::bench, args, steps.left.front()->step.what,
        where(*steps.left.front()));
}

void take_way_off_and_back(Collector& c) {
  take_steps(c, Phase::teardown);
  take_steps(c, Phase::assembly);
  if (!c.course.to_come_off.empty() && !c.state.released) {
    const Args args{{"rotors", listed(c.course.to_come_off)}};
    c.add(Code{"job.still_to_come_off"}, Stage::teardown, Severity::unanswered, Role::bench, args,
          Message{Code{"job.take_off"}, args}, at_rotor(c.course.to_come_off.front()));
  }
  if (c.course.stations_off.empty()) return;
  const Args args{{"parts", c.course.stations_off}};
  c.add(Code{"job.not_back_on"}, Stage::stack, Severity::unanswered, Role::bench, args,
        Message{Code{"job.put_back_on"}, args});
}

// --- looked at again, signed ------------------------------------------------------------------------------------------

void take_second_looks(Collector& c) {
  for (const SecondLookWanted& wanted : second_looks_wanted(c.state)) {
    Args args{{"rotor", wanted.rotor}};
    if (wanted.missed != nullptr) args.emplace_back("entry", wanted.missed->number);
    c.add(Code{"job.second_look_wanted"}, Stage::release, Severity::unanswered, Role::lead, args,
          Message{Code{"job.look_again"}, args}, at_rotor(wanted.rotor));
  }
  for (const auto& [question, answers] : c.state.live) {
    const auto* look = std::get_if<SecondLook>(&answers.first().body);
    if (look == nullptr || !answers.agreed || look->right != Reply::no) continue;
    const Args args{{"rotor", look->rotor}};
    c.add(Code{"job.second_look_wrong"}, Stage::timing, Severity::out, Role::bench, args,
          Message{Code{"job.read_marks_again"}, args}, at_rotor(look->rotor));
  }
}

void take_signatures(Collector& c) {
  for (const Signature& s : signatures(c.state)) {
    if (s.entry != nullptr) continue;
    Args args{{"role", role_word(s.as)}};
    if (s.void_by != nullptr) args.emplace_back("entry", s.void_by->number);
    const Code code = s.unseen               ? Code{"job.signature_unseen"}
                      : s.void_by != nullptr ? Code{"job.signature_void"}
                                             : Code{"job.not_signed"};
    c.add(code, Stage::release, Severity::unanswered, s.as, args, Message{Code{"job.sign"}, args});
  }
}

}  // namespace

bool is_of_signature(const Block& block) {
  return block.what.code == Code{"job.not_signed"} || block.what.code == Code{"job.signature_void"} ||
         block.what.code == Code{"job.signature_unseen"};
}

std::vector<Block> release_blocks(const Facts& facts, const JobState& state, const JobReport& report) {
  return release_blocks(facts, state, report, standing_parts::course_of(facts, state));
}

std::vector<Block> release_blocks(const Facts& facts, const JobState& state, const JobReport& report,
                                  const Course& course) {
  Collector c{facts, state, course};
  take_report(c, report);
  take_differing(c);
  take_plan(c);
  take_way_off_and_back(c);
  take_second_looks(c);
  take_signatures(c);
  const auto key = [](const Block& b) {
    return std::tuple{b.stage, !hurts(b), rank(b) == 3, -static_cast<int>(b.severity), rank(b)};
  };
  std::ranges::stable_sort(c.out, {}, key);
  return c.out;
}

}  // namespace flatwise::job
