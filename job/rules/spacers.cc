// Spacers counted at their places: doubled, missing, another one's. As it came apart that explains what ran badly, and the way
// back puts it right; as it went back it stops the work.
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

struct Said {
  Code doubled, leave_one, missing, put_in, another, change;
  Severity severity;
};

void judge(const Facts& facts, const SpacerSeen& seen, const Said& said, StageReport& report) {
  const Station& place = facts.shaft.stations()[static_cast<std::size_t>(seen.station)];
  const Length nominal = place.length.nominal;
  const auto add = [&](Code code, Code instruction, Args args) {
    args.emplace_back("part", place.label);
    report.findings.push_back({code, said.severity, args, at_station(seen.station), Message{instruction, args}});
  };
  const int more = seen.count.value - 1;
  if (more > 0) add(said.doubled, said.leave_one, {{"count", more}, {"length", any(nominal * more)}});
  if (more < 0) add(said.missing, said.put_in, {{"length", any(nominal)}});
  if (!seen.label.empty() && seen.label != place.label) add(said.another, said.change, {{"label", seen.label}});
}

}  // namespace

void spacers_off(const Facts& facts, StageReport& report) {
  static constexpr Said kSaid{Code{"teardown.spacers_doubled"},
                              Code{"teardown.put_one_back"},
                              Code{"teardown.spacer_not_there"},
                              Code{"teardown.get_a_spacer"},
                              Code{"teardown.spacer_of_another"},
                              Code{"teardown.put_back_by_label"},
                              Severity::note};
  for (const SpacerSeen& seen : facts.bench.spacers_seen)
    if (seen.phase == Phase::teardown) judge(facts, seen, kSaid, report);
}

void spacers_back(const Facts& facts, StageReport& report) {
  static constexpr Said kSaid{Code{"stack.spacers_more"},
                              Code{"stack.leave_one_spacer"},
                              Code{"stack.spacer_fewer"},
                              Code{"stack.spacer_into_place"},
                              Code{"stack.spacer_of_another"},
                              Code{"stack.change_the_spacer"},
                              Severity::out};
  for (const SpacerSeen& seen : facts.bench.spacers_seen)
    if (seen.phase == Phase::assembly) judge(facts, seen, kSaid, report);
}

}  // namespace flatwise::job::rules
