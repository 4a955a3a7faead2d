// answers.h: what is said back: JSON, and problems as RFC 9457 describes them (application/problem+json) with our list.
#pragma once

#include <string>
#include <vector>

#include "core/units/problem.h"
#include "desk/desk.h"
#include "server/http.h"
#include "wire/json.h"

namespace flatwise::server {

/// Header lines of all that is no page.
extern const std::string_view kApiHeaders;

/// Reason phrases of RFC 9110; a title is not a sentence of ours.
[[nodiscard]] std::string_view title_of(int status);
[[nodiscard]] Reply json_reply(std::string body, int status = 200);
[[nodiscard]] Reply json_reply(const wire::Json& json, int status = 200);
/// A file of that media type; 503 where it could not be made.
[[nodiscard]] Reply bytes_reply(std::string_view type, Result<std::string> bytes);
/// A moment as it is read on paper: "3 Feb 2026 14:20".
[[nodiscard]] std::string when_text(job::Instant at, const Voice& voice);
[[nodiscard]] Reply problem_reply(int status, std::vector<Problem> problems, const Voice& voice = {});
[[nodiscard]] Reply problem_reply(int status, Problem problem, const Voice& voice = {});
[[nodiscard]] inline Problem problem_of(Code code, std::string field, std::string given = {}, Args args = {}) {
  return {std::move(code), std::move(field), std::move(given), std::move(args), std::nullopt};
}
/// What a fault of the store says to a person; its detail is for the log.
[[nodiscard]] Problem fault_problem(const job::StoreFault& fault, std::string field, std::string given = {});
/// A fault of the store as a status: 404, 409, 412 or 503. The detail goes to the log only.
[[nodiscard]] Reply fault_reply(const job::StoreFault& fault, const std::string& field);
/// Problems as 422, a fault as fault_reply() has it.
[[nodiscard]] Reply refusal_reply(const desk::Refusal& refusal, const std::string& field, const Voice& voice);
/// 304 where the other end has this already, else `reply` with the tag.
[[nodiscard]] Reply tagged(Reply reply, std::string_view tag, std::string_view if_none_match);
/// A strong tag of some bytes, with its quotes.
[[nodiscard]] std::string tag_of(std::string_view bytes);

}  // namespace flatwise::server
