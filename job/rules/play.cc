// Side play: what a new bearing would show and what the swing means, for each rotor that was rocked. Notes only: a suspect is
// not a verdict, and what was not measured keeps nothing back.
#include "job/play.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"

namespace flatwise::job::rules {

void play(const Facts& facts, StageReport& report) {
  for (int rotor = 1; rotor <= facts.shaft.rotor_count(); ++rotor) {
    const std::optional<Play> play = play_of(facts, rotor);
    if (!play) continue;
    for (const WorkingPtr& working : {play->fresh, play->behind})
      if (working != nullptr) report.workings.push_back({at_rotor(rotor), {}, working});
    const Args args{{"rotor", rotor}, {"typed", play->reading->swing.typed}};
    if (play->behind != nullptr) take_findings(report, at_rotor(rotor), *play->behind, args);
    if (play->stands == PlayStands::not_possible)
      report.findings.push_back({Code{"job.play_not_possible"}, Severity::note, args, at_rotor(rotor),
                                 Message{Code{"job.read_play_again"}, args}});
    const Gauge* gauge = find_gauge(facts.workshop, play->reading->gauge);
    if (gauge != nullptr && overdue(*gauge, facts.bench.date))
      report.findings.push_back({Code{"job.play_gauge_overdue"},
                                 Severity::note,
                                 {{"rotor", rotor}, {"gauge", gauge->id}, {"until", text_of(gauge->calibrated_until)}},
                                 at_rotor(rotor),
                                 std::nullopt});
  }
}

}  // namespace flatwise::job::rules
