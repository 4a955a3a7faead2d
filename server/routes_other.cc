// Photos, and what changes.
#include <charconv>
#include <nlohmann/json.hpp>

#include "record/chain.h"
#include "record/photo.h"
#include "server/live.h"
#include "server/routes.h"

namespace flatwise::server {
namespace {

constexpr std::string_view kPhotoHeaders =
    "Cache-Control: private, max-age=31536000, immutable\r\nX-Content-Type-Options: nosniff\r\n"
    "Content-Security-Policy: default-src 'none'; sandbox\r\nReferrer-Policy: no-referrer\r\n"
    "Cross-Origin-Resource-Policy: same-origin\r\nContent-Disposition: inline\r\n";

}  // namespace

Reply get_blob(const Call& call) {
  auto bytes = call.store.blob(std::string{call.request.captured[0]});
  if (!bytes) return fault_reply(bytes.error(), "hash");
  Reply reply;
  reply.type = record::photo_type(*bytes);
  if (reply.type.empty()) return problem_reply(404, problem_of(Code{"http.not_there"}, "hash"));
  reply.always = kPhotoHeaders;
  reply.body = *std::move(bytes);
  return reply;
}

Reply put_blob(const Call& call) {
  const std::string_view bytes = call.request.body;
  const std::string hash{call.request.captured[0]};
  if (record::photo_type(bytes) != call.request.content_type)
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

}  // namespace flatwise::server
