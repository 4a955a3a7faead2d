// Questions: a thing left out is the commonest mistake, so an empty line blocks, and 'no' is an answer that blocks too.
#include <algorithm>

#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

const Answered* answer_to(const Bench& bench, const Asked& asked) {
  const auto it = std::ranges::find_if(
      bench.answers, [&](const Answered& a) { return a.question == asked.question->id && a.number == asked.number; });
  return it == bench.answers.end() ? nullptr : &*it;
}

Where where_of(const Asked& asked) {
  if (asked.question->of == AskedOf::rotor_that_came_off) return at_rotor(asked.number);
  if (asked.question->of == AskedOf::captive_station) return {Where::Part::station, asked.number};
  return {};
}

Args args_of(const Facts& facts, const Asked& asked) {
  const std::string id{asked.question->id};
  Args args{{"question", Word{"question." + id}}, {"number", asked.number}};
  if (asked.question->of == AskedOf::rotor_that_came_off) args.emplace_back("rotor", asked.number);
  if (asked.question->of == AskedOf::nut) args.emplace_back("nut", Word{asked.number == 1 ? "end.a" : "end.b"});
  if (asked.question->of == AskedOf::captive_station) {
    const Station& station = facts.shaft.stations()[static_cast<std::size_t>(asked.number) - 1];
    args.emplace_back("station", station.label);
    std::vector<std::string> parts;
    for (const CaptivePart& p : station.fit_before) parts.push_back(p.name);
    args.emplace_back("parts", std::move(parts));
  }
  return args;
}

void judge_one(const Facts& facts, const Asked& asked, StageReport& report) {
  const Answered* answer = answer_to(facts.bench, asked);
  if (answer != nullptr && answer->reply.value == Reply::yes) return;
  const bool told_no = answer != nullptr && answer->reply.value == Reply::no;
  Args args = args_of(facts, asked);
  Finding finding{told_no ? Code{"job.answered_no"} : Code{"job.unanswered"},
                  told_no ? Severity::out : Severity::unanswered, args, where_of(asked), std::nullopt};
  args.emplace_back("do", Word{"question." + std::string{asked.question->id} + ".do"});
  finding.instruction = Message{Code{"job.do_before_going_on"}, std::move(args)};
  report.findings.push_back(std::move(finding));
}

}  // namespace

void answers(const Facts& facts, StageReport& report) {
  for (const Asked& a : asked(facts.shaft, facts.bench))
    if (a.question->stage == report.stage) judge_one(facts, a, report);
}

}  // namespace flatwise::job::rules
