#include "server/answers.h"

#include <sodium.h>

#include <array>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "server/times.h"
#include "view/blocks.h"
#include "wire/written.h"

namespace flatwise::server {
namespace {

int status_of(job::StoreFault::Kind kind) {
  using K = job::StoreFault::Kind;
  switch (kind) {
    case K::missing:
      return 404;
    case K::exists:
      return 409;
    case K::changed:
      return 412;
    default:
      return 503;
  }
}

}  // namespace

std::string_view title_of(int status) {
  switch (status) {
    case 200:
      return "OK";
    case 201:
      return "Created";
    case 204:
      return "No Content";
    case 304:
      return "Not Modified";
    case 400:
      return "Bad Request";
    case 401:
      return "Unauthorized";
    case 403:
      return "Forbidden";
    case 404:
      return "Not Found";
    case 405:
      return "Method Not Allowed";
    case 409:
      return "Conflict";
    case 412:
      return "Precondition Failed";
    case 413:
      return "Content Too Large";
    case 415:
      return "Unsupported Media Type";
    case 422:
      return "Unprocessable Content";
    case 429:
      return "Too Many Requests";
    case 431:
      return "Request Header Fields Too Large";
    case 503:
      return "Service Unavailable";
    default:
      return "Internal Server Error";
  }
}

const std::string_view kApiHeaders =
    "Cache-Control: no-cache\r\nX-Content-Type-Options: nosniff\r\n"
    "Content-Security-Policy: default-src 'none'; frame-ancestors 'none'; sandbox\r\n"
    "Referrer-Policy: no-referrer\r\nCross-Origin-Resource-Policy: same-origin\r\n";

Reply json_reply(std::string body, int status) {
  Reply reply;
  reply.status = status;
  reply.type = "application/json";
  reply.always = kApiHeaders;
  reply.body = std::move(body);
  return reply;
}

Reply json_reply(const wire::Json& json, int status) { return json_reply(wire::text_of(json), status); }

Reply bytes_reply(std::string_view type, Result<std::string> bytes) {
  if (!bytes) return problem_reply(503, bytes.error());
  Reply reply;
  reply.type = type;
  reply.always = kApiHeaders;
  reply.body = *std::move(bytes);
  return reply;
}

std::string when_text(job::Instant at, const Voice& voice) {
  const Local there = local(at);
  return view::day_text(there.day, voice) + " " + there.time;
}

Reply problem_reply(int status, std::vector<Problem> problems, const Voice& voice) {
  wire::Json json{{"type", "about:blank"}, {"title", title_of(status)}, {"status", status}};
  if (!problems.empty()) json["detail"] = say(problems.front(), voice).read;
  json["problems"] = wire::problems_json(problems, voice)["problems"];
  Reply reply = json_reply(json, status);
  reply.type = "application/problem+json";
  if (status == 503) reply.headers = "Retry-After: 1\r\n";
  return reply;
}

Reply problem_reply(int status, Problem problem, const Voice& voice) {
  std::vector<Problem> one;
  one.push_back(std::move(problem));
  return problem_reply(status, std::move(one), voice);
}

Problem fault_problem(const job::StoreFault& fault, std::string field, std::string given) {
  using K = job::StoreFault::Kind;
  const auto problem = [&](Code code) { return problem_of(std::move(code), std::move(field), std::move(given)); };
  switch (fault.kind) {
    case K::missing:
      return problem(Code{"http.not_there"});
    case K::exists:
      return problem(Code{"http.taken"});
    case K::changed:
      return problem(Code{"http.changed"});
    case K::busy:
      return problem(Code{"http.busy"});
    case K::full:
      return problem(Code{"http.full"});
    case K::newer:
      return problem(Code{"http.newer"});
    case K::damaged:
    case K::failed:
      break;
  }
  return problem(Code{"http.failed"});
}

Reply fault_reply(const job::StoreFault& fault, const std::string& field) {
  const int status = status_of(fault.kind);
  if (status == 503) std::fprintf(stderr, "store: %s\n", fault.detail.c_str());
  return problem_reply(status, fault_problem(fault, field));
}

Reply refusal_reply(const desk::Refusal& refusal, const std::string& field, const Voice& voice) {
  if (refusal.fault) return fault_reply(*refusal.fault, field);
  return problem_reply(422, refusal.problems, voice);
}

Reply tagged(Reply reply, std::string_view tag, std::string_view if_none_match) {
  const bool known = if_none_match == "*" || (!tag.empty() && if_none_match.find(tag) != std::string_view::npos);
  if (known) {
    reply.status = 304;
    reply.type = {};
    reply.body.clear();
    reply.fixed = {};
  }
  ((reply.headers += "ETag: ") += tag) += "\r\n";
  return reply;
}

std::string tag_of(std::string_view bytes) {
  std::array<unsigned char, 16> digest{};
  crypto_generichash(digest.data(), digest.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                     nullptr, 0);
  std::string tag(2 * digest.size() + 1, '\0');
  sodium_bin2hex(tag.data(), tag.size(), digest.data(), digest.size());
  tag.back() = '"';
  return '"' + tag;
}

}  // namespace flatwise::server
