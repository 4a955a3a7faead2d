// gauges.h: the workshop's gauges as inputs of figures, and what a gauge past its date does to an answer.
#pragma once

#include <initializer_list>
#include <span>
#include <string_view>
#include <vector>

#include "core/working/figure.h"
#include "job/judge.h"

namespace flatwise::job {

/// The gauge of that id; nullptr when the workshop has none of that name.
[[nodiscard]] const Gauge* find_gauge(const Workshop& workshop, std::string_view id);
/// What a gauge of this use shows, and what a step on its scale is: of a thermometer a rise.
[[nodiscard]] Kind shows(Gauge::Use use);
[[nodiscard]] Kind step_of_scale(Gauge::Use use);
/// Puts into the gauge what its certificate said on a day: the one noted last of those that had begun by then, or, where none had,
/// the first there was. A reading is worth what its gauge was worth that day: a certificate of later makes it no better.
void certify_for(Gauge& gauge, Day day);
/// Its certificate ran out before the day of the readings, and nobody responsible accepted it by name.
[[nodiscard]] bool overdue(const Gauge& gauge, Day day);

/// What a reading with this gauge is worth: an answer taken with a gauge past its date becomes 'cannot tell', with the
/// answer it would have been. Accepted by name: a note that says by whom. Adds the finding; returns the answer.
[[nodiscard]] Answer answer_with(const Gauge& gauge, Day day, Answer would_be, Where where, StageReport& report);

/// Findings of a working whose readings these gauges took, put into the report. A gauge past its date makes them no worse and
/// no better than 'cannot tell', and so does the working's entry in the report (Shown::answer). nullptr stands for a gauge
/// that was not used.
void take_judged(StageReport& report, Where where, const Working& working, std::initializer_list<const Gauge*> gauges,
                 Day day, const Args& more = {});
void take_judged(StageReport& report, Where where, const Working& working, std::span<const Gauge* const> gauges,
                 Day day, const Args& more = {});

/// "gauge-date", for figures that judge the date themselves: in_date, overdue or accepted.
[[nodiscard]] std::vector<Input> gauge_date(const Gauge& gauge, Day day);
/// A value of the gauge as an input, with its line in the workshop file.
[[nodiscard]] Input gauge_input(std::string_view name, AnyQuantity value, const Gauge& gauge);
/// U (k = 2) that its certificate gives a reading, in the unit of what it shows.
[[nodiscard]] double certified_si(const Gauge& gauge, double reading_si);
/// "calibration": relative as it stands, or divided by the reading where the certificate is absolute.
[[nodiscard]] Input relative_calibration(const Gauge& gauge, double reading_si);
/// Origin text of a place: "readings.toml:12".
[[nodiscard]] std::string text_of(const Place& place);
/// "2026-02-03".
[[nodiscard]] std::string text_of(Day day);

/// A reading that looks like the wanted value in the other unit (inches for millimetres, ft·lb for N·m, lbf for N): a
/// story to offer, never a correction. Adds the note where the ratio is that of the units within `share`.
void offer_unit_slip(AnyQuantity read, AnyQuantity wanted, double share, std::string_view typed, Where where,
                     StageReport& report);

}  // namespace flatwise::job
