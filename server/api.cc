#include "server/api.h"

#include <cstdio>
#include <nlohmann/json.hpp>

#include "record/strict_json.h"
#include "record/uuid.h"
#include "server/input.h"
#include "server/routes.h"
#include "store/sqlite/open.h"

namespace flatwise::server {
namespace {

const Route& route_of(const Request& request) { return routes()[static_cast<std::size_t>(request.route)]; }

Reply refusal(int status, Code code, std::string field, std::string_view given = {}) {
  return problem_reply(status, problem_of(std::move(code), std::move(field), std::string{given}));
}

std::string lower(std::string_view text) {
  std::string out{text};
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
  return out;
}

bool is_json_type(std::string_view type) {
  std::string plain = lower(type);
  std::erase(plain, ' ');
  std::erase(plain, '"');
  return plain == "application/json" || plain == "application/json;charset=utf-8";
}

bool is_photo_type(std::string_view type) {
  return type == "image/jpeg" || type == "image/png" || type == "image/webp";
}

/// No such path, or not by that method.
Reply no_route(const Request& r) {
  const std::string allow = allowed(r.path);
  if (allow.empty()) return refusal(404, Code{"http.no_such_path"}, "path", decoded(r.path, false).value_or(""));
  Reply reply;
  if (r.method == "OPTIONS") {
    reply.status = 204;
    reply.always = kApiHeaders;
  } else {
    reply = problem_reply(405, problem_of(Code{"http.method"}, "method", decoded(r.method, false).value_or("")));
  }
  reply.headers += "Allow: " + allow + "\r\n";
  return reply;
}

/// What stands at the {places} of a path, where it can be told from its form.
std::optional<Problem> wrong_place(const Request& r) {
  const std::string_view pattern = route_of(r).pattern;
  const auto given = [&] { return decoded(r.captured[0], false).value_or(""); };
  if (pattern.find("{id}") != std::string_view::npos && !record::is_uuid(r.captured[0]))
    return problem_of(Code{"record.not_an_id"}, "id", given());
  if (pattern.find("{hash}") != std::string_view::npos && !is_hash(r.captured[0]))
    return problem_of(Code{"record.not_a_hash"}, "hash", given());
  return std::nullopt;
}

Voice voice_of(const Query& query) {
  Voice voice;
  if (query.find("units") == "inch") voice.units = UnitSystem::inch;
  return voice;
}

bool is_api(std::string_view path) { return path == "/api" || path.starts_with("/api/"); }

}  // namespace

Plan Api::plan(Request& r) {
  Plan plan;
  if (auto refused = parts_.guard.check(r)) {
    plan.refused = problem_reply(refused->status, std::move(refused->problem));
    return plan;
  }
  if (!is_api(r.path)) return plan;
  r.route = match(r.method, r.path, r.captured);
  if (r.route < 0) {
    plan.refused = no_route(r);
    return plan;
  }
  const Route& route = route_of(r);
  plan.pool = route.pool;
  if (route.body == Route::Body::json || route.body == Route::Body::entries) {
    plan.body_bytes = kJsonBytes;
    if (!is_json_type(r.content_type))
      plan.refused = refusal(415, Code{"http.not_json_type"}, "Content-Type", r.content_type);
  } else if (route.body == Route::Body::photo) {
    plan.body_bytes = kPhotoBytes;
    if (!is_photo_type(r.content_type))
      plan.refused = refusal(415, Code{"http.not_a_photo"}, "Content-Type", r.content_type);
  }
  return plan;
}

Reply Api::answer(const Request& request, std::size_t lane) {
  if (!is_api(request.path)) return parts_.pages.answer(request);
  try {
    return call(request, *parts_.stores[lane]);
  } catch (const std::exception& bug) {
    std::fprintf(stderr, "fault of the program: %s\n", bug.what());
    return refusal(500, Code{"http.bug"}, "server");
  }
}

Reply Api::call(const Request& request, job::Store& store) {
  const Route& route = route_of(request);
  if (auto wrong = wrong_place(request)) return problem_reply(400, *std::move(wrong));
  const auto query = read_query(request.query, route.query.data(), route.query.size());
  if (!query) return problem_reply(400, query.error());
  Shared shared{parts_.live, parts_.let_in, opened_, parts_.now};
  Call call{request, *query, store, shared, voice_of(*query)};
  if (route.body != Route::Body::json) return route.answer(call);
  const auto body = record::strict_json(request.body);
  if (!body) return problem_reply(400, body.error(), call.voice);
  if (!body->is_object())
    return problem_reply(400, problem_of(Code{"record.wrong_type"}, "body", {}, {{"wanted", Word{"kind.object"}}}),
                         call.voice);
  call.body = &*body;
  return route.answer(call);
}

void Api::idle(std::size_t lane) {
  if (lane < holding_) store_sqlite::let_go(*parts_.stores[lane]);
}

Reply Api::broken(Broken what) {
  switch (what) {
    case Broken::header_too_large:
      return refusal(431, Code{"http.header_too_large"}, "header");
    case Broken::body_too_large:
      return refusal(413, Code{"http.body_too_large"}, "body");
    case Broken::body_unasked:
      return refusal(400, Code{"http.body_unasked"}, "body");
    case Broken::cut_short:
      return refusal(400, Code{"http.cut_short"}, "body");
    case Broken::too_busy:
      return refusal(503, Code{"http.too_busy"}, "server");
    case Broken::unreadable:
      break;
  }
  return refusal(400, Code{"http.unreadable"}, "request");
}

}  // namespace flatwise::server
