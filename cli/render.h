// render.h: findings, workings, problems and stage reports as text for people. The same objects go out as JSON by wire/.
#pragma once

#include <string>
#include <vector>

#include "cli/context.h"
#include "core/working/working.h"
#include "job/judge.h"

namespace flatwise::cli {

/// "OUT", "CANNOT TELL", "OPEN", "note" in its tone.
[[nodiscard]] std::string severity_tag(const Context& context, Severity severity);
/// A finding and under it what to do.
[[nodiscard]] std::string render(const Context& context, const Finding& finding);
/// Name, result, formula, one line an input with its origin, the sources and limits; indented, and with it the workings
/// that its computed inputs came from.
[[nodiscard]] std::string render(const Context& context, const Working& working);
/// One line: name, what it is about, main output with its uncertainty, answer.
[[nodiscard]] std::vector<std::string> summary_row(const Context& context, const job::Shown& shown);
[[nodiscard]] std::string render(const Context& context, const Problem& problem);
/// Head with the stage's state, findings worst first, workings as a table, or whole when asked why.
[[nodiscard]] std::string render(const Context& context, const job::StageReport& report);
/// All stages, then the one thing to do next.
[[nodiscard]] std::string render(const Context& context, const job::JobReport& report);

[[nodiscard]] std::string render_value(const Context& context, const Value& value, const std::optional<Uncertainty>& u);
/// "Rotor 4", "hanger B", empty for the whole shaft.
[[nodiscard]] std::string where_text(const Context& context, const Where& where);

}  // namespace flatwise::cli
