// rules.h: the rules of each stage, one function a subject. Each reads the facts and adds what it finds to the report of its
// stage; the order of calls is the order of the sheet. Only judge.cc calls these.
#pragma once

#include "job/judge.h"

namespace flatwise::job::rules {

void answers(const Facts& facts, StageReport& report);  ///< Questions of the report's stage: unanswered, answered no.
void play(const Facts& facts, StageReport& report);     ///< Side play beside a new bearing; notes only.
void way_off(const Facts& facts, StageReport& report);  ///< What came off could come off.
void spacers_off(const Facts& facts, StageReport& report);   ///< Spacers doubled, missing, exchanged as it came apart.
void bores(const Facts& facts, StageReport& report);         ///< Hub bores: size, form, temperature, gauge.
void parts_fitted(const Facts& facts, StageReport& report);  ///< Right bearing, right lean, sets renewed, rings sound.
void count_out(const Facts& facts, StageReport& report);     ///< Nothing left on a tray, nothing missing.
void presses(const Facts& facts, StageReport& report);       ///< Force, ring pressed, gauge.
void marks(const Facts& facts, StageReport& report);         ///< Timing as read, the mend, what it would have done.
void order_back(const Facts& facts, StageReport& report);    ///< Spacers by their labels.
void spacers_back(const Facts& facts, StageReport& report);  ///< The same as it went back, where somebody counted.
void seating(const Facts& facts, StageReport& report);       ///< Stack length and the joint not home.
void nuts(const Facts& facts, StageReport& report);          ///< Torque reached.
void turns(const Facts& facts, StageReport& report);  ///< Angle of turn, settling, the second pull; after the nuts.
void run(const Facts& facts, StageReport& report);    ///< Test run: time, heat, vibration.
void due(const Facts& facts, StageReport& report);    ///< When the shaft is due again: a figure, no finding.

}  // namespace flatwise::job::rules
