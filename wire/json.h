// json.h: the core's results as JSON, one shape for shell, server and WebAssembly. Fields of a kind carry its SI suffix
// ("value_m"). Schemas: schemas/output/.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>

#include "core/doubt/doubt.h"
#include "core/doubt/of_shaft.h"
#include "core/working/figure.h"
#include "core/working/working.h"
#include "job/judge.h"
#include "wire/member_list.h"
#include "words/words.h"

namespace flatwise::wire {

/// Members stay in the order they were put in.
using Json = nlohmann::basic_json<MemberList>;

/// {"kind": "length", "value_m": 0.0381, "shown": "38.1 mm"}; a word: {"kind": "word", "value": "oiled"}.
[[nodiscard]] Json to_json(const AnyQuantity& value, const Voice& voice);
[[nodiscard]] Json to_json(const Value& value, const Voice& voice);
[[nodiscard]] Json to_json(const Args& args, const Voice& voice);
[[nodiscard]] Json to_json(const Finding& finding, const Voice& voice);
[[nodiscard]] Json to_json(const Problem& problem, const Voice& voice);
[[nodiscard]] Json to_json(const Working& working, const Voice& voice);
/// A working; with doubtful inputs also "doubt": for each output both ways and the shares of the inputs, greatest first.
[[nodiscard]] Json to_json(const doubt::Doubted& doubted, const Voice& voice);
/// A figure of a whole shaft with its doubt: schemas/output/common.schema.json, "told_doubt".
[[nodiscard]] Json to_json(const doubt::ToldDoubt& told, const Voice& voice);
/// Puts them in as "doubts"; nothing where there are none.
void add_doubts(Json& json, std::span<const doubt::ToldDoubt> told, const Voice& voice);
[[nodiscard]] Json to_json(const FigureSpec& spec, const Voice& voice);
[[nodiscard]] Json to_json(const job::StageReport& report, const Voice& voice);
[[nodiscard]] Json to_json(const job::JobReport& report, const Voice& voice);

/// {"problems": [...]}.
[[nodiscard]] Json problems_json(std::span<const Problem> problems, const Voice& voice);
/// The same as text, for callers that need no JSON types.
[[nodiscard]] std::string problems_text(std::span<const Problem> problems, const Voice& voice);
/// Text with two-space indents and a line end; bytes that are not UTF-8 are replaced.
[[nodiscard]] std::string dump(const Json& json);

/// "value_m", "expanded_m": the name of a field and the SI suffix of its kind.
[[nodiscard]] std::string value_key(Kind kind, std::string_view stem = "value");

[[nodiscard]] std::string_view name_of(Severity severity);
[[nodiscard]] std::string_view name_of(Answer answer);
[[nodiscard]] std::string_view name_of(OriginKind kind);

}  // namespace flatwise::wire
