// Photos, what changes, and devices let in.
#include <charconv>
#include <chrono>
#include <nlohmann/json.hpp>

#include "job/roles.h"
#include "paper/render.h"
#include "record/chain.h"
#include "server/guard.h"
#include "server/input.h"
#include "server/let_in.h"
#include "server/live.h"
#include "server/people.h"
#include "server/routes.h"

namespace flatwise::server {
namespace {

constexpr std::string_view kPhotoHeaders =
    "Cache-Control: private, max-age=31536000, immutable\r\nX-Content-Type-Options: nosniff\r\n"
    "Content-Security-Policy: default-src 'none'; sandbox\r\nReferrer-Policy: no-referrer\r\n"
    "Cross-Origin-Resource-Policy: same-origin\r\nContent-Disposition: inline\r\n";

/// What the bytes say they are, by their first ones; empty when they are no photo we take.
std::string_view photo_type(std::string_view bytes) {
  // Source: ISO/IEC 10918-1 (SOI and a marker), PNG third edition section 5.2, RFC 9649 section 2.3.
  if (bytes.starts_with("\xFF\xD8\xFF")) return "image/jpeg";
  if (bytes.starts_with(std::string_view{"\x89PNG\r\n\x1A\n", 8})) return "image/png";
  if (bytes.size() >= 12 && bytes.starts_with("RIFF") && bytes.substr(8, 4) == "WEBP") return "image/webp";
  return {};
}

/// The page as the next device reaches it: as this one does; from this very machine as the server knows it, empty where it does not.
std::string address_for_others(const Call& call) {
  const Request& r = call.request;
  if (is_local_host(r.host)) {
    const std::string known = call.shared.let_in.reached_at();
    const std::size_t name = known.find("://");
    return name == std::string::npos || is_local_host(known.substr(name + 3)) ? std::string{} : known;
  }
  return (r.origin.empty() ? "http://" + std::string{r.host} : std::string{r.origin}) + "/";
}

/// The code to scan, as rectangles of dark modules; null where there is no address, or it is too long for a code.
wire::Json code_json(const std::string& text) {
  if (text.empty()) return nullptr;
  const auto code = paper::code_modules(text);
  if (!code) return nullptr;
  wire::Json dark = wire::Json::array();
  for (const paper::ModuleBox& box : code->dark) dark.push_back({box.x, box.y, box.width, box.height});
  return {{"side", code->side}, {"quiet", paper::kQuietModules}, {"dark", std::move(dark)}};
}

}  // namespace

Reply get_blob(const Call& call) {
  auto bytes = call.store.blob(std::string{call.request.captured[0]});
  if (!bytes) return fault_reply(bytes.error(), "hash");
  Reply reply;
  reply.type = photo_type(*bytes);
  if (reply.type.empty()) return problem_reply(404, problem_of(Code{"http.not_there"}, "hash"));
  reply.always = kPhotoHeaders;
  reply.body = *std::move(bytes);
  return reply;
}

Reply put_blob(const Call& call) {
  const std::string_view bytes = call.request.body;
  const std::string hash{call.request.captured[0]};
  if (photo_type(bytes) != call.request.content_type)
    return problem_reply(415, problem_of(Code{"http.not_a_photo"}, "body"));
  if (record::sha256(bytes) != hash) return problem_reply(422, problem_of(Code{"http.other_bytes"}, "hash", hash));
  const auto kept = call.store.put_blob(bytes);
  if (!kept) return fault_reply(kept.error(), "hash");
  return json_reply(wire::Json{{"hash", *kept}, {"bytes", bytes.size()}}, 201);
}

Reply get_events(const Call& call) {
  std::optional<std::int64_t> after;
  if (const auto text = call.query.find("after")) after = std::stoll(std::string{*text});
  if (const std::string_view last = call.request.last_event_id; !last.empty()) {
    std::int64_t number = 0;  // It wins: the browser sends it when it comes back by the same address.
    const auto read = std::from_chars(last.data(), last.data() + last.size(), number);
    if (read.ec != std::errc{} || read.ptr != last.data() + last.size() || number < 0)
      return problem_reply(400, problem_of(Code{"http.not_an_event"}, "Last-Event-ID", decoded(last).value_or("")));
    after = number;
  }
  // From now on means from this answer on: the thread that looks at the store may be behind, and come to this listener later.
  if (!after)
    if (const auto last = call.store.last_change()) after = *last;
  Reply reply;
  reply.type = "text/event-stream";
  reply.always = kApiHeaders;
  if (call.request.method != "HEAD") reply.feed = call.shared.live.listen(after);
  return reply;
}

Reply post_offer(const Call& call) {
  Input input{call};
  std::string by;
  input(id_field("by"), by);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "by");
  if (auto wrong = problem_of_sender(*people, by, job::lacks_role_to_let_in))
    return problem_reply(422, *std::move(wrong), call.voice);
  const std::string code = call.shared.let_in.offer(), address = address_for_others(call);
  const std::string way_in = address.empty() ? std::string{} : address + "?code=" + code;
  wire::Json json{{"code", code}, {"holds", std::chrono::seconds{LetIn::kOfferHolds}.count()}};
  if (!way_in.empty()) json["address"] = way_in;
  if (wire::Json picture = code_json(way_in); !picture.is_null()) json["picture"] = std::move(picture);
  return json_reply(json, 200);
}

Reply post_let_in(const Call& call) {
  Input input{call};
  std::string code;
  input(job::fields::text("code", 1, 32), code);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const LetIn::Let let = call.shared.let_in.try_code(code);
  switch (let.answer) {
    case LetIn::Answer::wrong:
      return problem_reply(401, problem_of(Code{"http.wrong_code"}, "code"));
    case LetIn::Answer::not_kept:
      return problem_reply(503, problem_of(Code{"http.full"}, "code"));
    case LetIn::Answer::too_many: {
      Reply reply = problem_reply(429, problem_of(Code{"http.too_many_tries"}, "code"));
      reply.headers += "Retry-After: 60\r\n";
      return reply;
    }
    case LetIn::Answer::let_in:
      break;
  }
  Reply reply;
  reply.status = 204;
  reply.always = kApiHeaders;
  reply.headers = "Set-Cookie: " + std::string{LetIn::kCookie} + "=" + let.token +
                  "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict\r\n";
  return reply;
}

}  // namespace flatwise::server
