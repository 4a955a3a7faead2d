// Devices: the next one let in from one that is, which are in, and one taken back.
#include <chrono>
#include <nlohmann/json.hpp>
#include <optional>

#include "job/roles.h"
#include "paper/render.h"
#include "record/instant.h"
#include "server/guard.h"
#include "server/input.h"
#include "server/let_in.h"
#include "server/live.h"
#include "server/people.h"
#include "server/routes.h"

namespace flatwise::server {
namespace {

/// No token stands in it, nor a hash of one.
wire::Json tablets_json(const Call& call) {
  const job::Id here = call.shared.let_in.device_of(call.request.cookie);
  wire::Json list = wire::Json::array();
  std::int64_t number = 0;
  for (const LetIn::Device& device : call.shared.let_in.devices()) {
    ++number;
    const std::string unnamed = say(Code{"http.tablet"}.id(), {{"number", number}}, call.voice);
    wire::Json one{
        {"id", device.id}, {"name", device.name.empty() ? unnamed : device.name}, {"here", device.id == here}};
    if (device.since.year > 0) one["since"] = record::text_of(device.since);
    if (device.seen.year > 0) one["seen"] = record::text_of(device.seen);
    list.push_back(std::move(one));
  }
  return {{"tablets", std::move(list)}};
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

/// Only lead and owner say which tablets are in.
std::optional<Reply> refused_to_let_in(const Call& call) {
  Input input{call};
  std::string by;
  input(id_field("by"), by);
  if (auto refused = input.refused(call.voice)) return refused;
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "by");
  if (auto wrong = problem_of_sender(*people, by, job::lacks_role_to_let_in))
    return problem_reply(422, *std::move(wrong), call.voice);
  return std::nullopt;
}

}  // namespace

Reply post_let_in(const Call& call) {
  Input input{call};
  std::string code;
  std::optional<std::string> name;
  input(job::fields::text("code", 1, 32), code);
  input(job::fields::text("name", 0, 80), name);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const LetIn::Let let = call.shared.let_in.try_code(code, name.value_or(""));
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
                  "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict" +
                  (call.request.origin.starts_with("https://") ? "; Secure\r\n" : "\r\n");
  return reply;
}

Reply post_offer(const Call& call) {
  if (auto refused = refused_to_let_in(call)) return *std::move(refused);
  const std::string code = call.shared.let_in.offer(), address = address_for_others(call);
  const std::string way_in = address.empty() ? std::string{} : address + "?code=" + code;
  wire::Json json{{"code", code}, {"holds", std::chrono::seconds{LetIn::kOfferHolds}.count()}};
  if (!way_in.empty()) json["address"] = way_in;
  if (wire::Json picture = code_json(way_in); !picture.is_null()) json["picture"] = std::move(picture);
  return json_reply(json, 200);
}

Reply get_tablets(const Call& call) { return json_reply(tablets_json(call)); }

Reply post_take_back(const Call& call) {
  if (auto refused = refused_to_let_in(call)) return *std::move(refused);
  switch (call.shared.let_in.take_back(call.id())) {
    case LetIn::TakenBack::not_there:
      return problem_reply(404, problem_of(Code{"http.not_there"}, "id", call.id()), call.voice);
    case LetIn::TakenBack::not_kept:
      return problem_reply(503, problem_of(Code{"http.full"}, "id"), call.voice);
    case LetIn::TakenBack::done:
      break;
  }
  call.shared.live.drop_listeners();  // What it listens to ends now; who is in comes back by himself.
  return json_reply(tablets_json(call));
}

}  // namespace flatwise::server
