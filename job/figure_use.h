// figure_use.h: a rule asks for a figure by name and shows its working.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/working/figure.h"
#include "job/judge.h"

namespace flatwise::job {

/// Evaluates the named figure of a folder. A name that is not there is a bug.
[[nodiscard]] Results<Working> use(std::span<const FigureSpec> figures, std::string_view name,
                                   std::vector<Input> inputs);

/// The same as a working that others can rest on; where it was refused, `.value_or(nullptr)` is none.
[[nodiscard]] Results<WorkingPtr> worked(std::span<const FigureSpec> figures, std::string_view name,
                                         std::vector<Input> inputs);

/// The same, put into the report: the working, or the problems of its inputs. nullptr when it could not be computed.
WorkingPtr show(StageReport& report, Where where, std::string about, std::span<const FigureSpec> figures,
                std::string_view name, std::vector<Input> inputs);

/// An input that a kernel computed without a working of its own.
[[nodiscard]] Input computed_input(std::string_view name, AnyQuantity value, std::string_view by = {});

/// Findings of a working, put into the report as findings about a part.
void take_findings(StageReport& report, Where where, const Working& working, const Args& more = {});

}  // namespace flatwise::job
