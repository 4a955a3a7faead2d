#include "server/pages.h"

#include <fstream>

#include "server/answers.h"
#include "server/query.h"

namespace flatwise::server {
namespace {

constexpr std::string_view kHeaders =
    "X-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\nCross-Origin-Opener-Policy: same-origin\r\n"
    "Cross-Origin-Resource-Policy: same-origin\r\n"
    "Permissions-Policy: camera=(self), microphone=(), geolocation=(), payment=(), usb=()\r\n"
    "Content-Security-Policy: default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; "
    "connect-src 'self'; font-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'none'\r\n";

struct Type {
  std::string_view end, type;
};
constexpr Type kTypes[] = {{".html", "text/html; charset=utf-8"},
                           {".js", "text/javascript; charset=utf-8"},
                           {".css", "text/css; charset=utf-8"},
                           {".json", "application/json"},
                           {".webmanifest", "application/manifest+json"},
                           {".svg", "image/svg+xml"},
                           {".png", "image/png"},
                           {".ico", "image/x-icon"},
                           {".woff2", "font/woff2"},
                           {".woff", "font/woff"},
                           {".wasm", "application/wasm"},
                           {".txt", "text/plain; charset=utf-8"}};

std::string_view type_of(std::string_view path) {
  for (const Type& t : kTypes)
    if (path.ends_with(t.end)) return t.type;
  return "application/octet-stream";
}

/// Files with a hash in their name never change; the others are asked for each time.
std::string_view keeping(std::string_view path) {
  return path.starts_with("/assets/") ? "Cache-Control: public, max-age=31536000, immutable\r\n"
                                      : "Cache-Control: no-cache\r\n";
}

Reply page_reply(std::string_view path) {
  Reply reply;
  reply.type = type_of(path);
  reply.always = kHeaders;
  reply.headers = keeping(path);
  return reply;
}

std::optional<std::string> bytes_of(const std::filesystem::path& file) {
  std::error_code ignored;
  if (!std::filesystem::is_regular_file(file, ignored)) return std::nullopt;
  std::ifstream in{file, std::ios::binary};
  if (!in) return std::nullopt;
  return std::string{std::istreambuf_iterator<char>{in}, {}};
}

/// A plain path of names: nothing that climbs, nothing hidden.
bool is_plain(std::string_view path) {
  return path.starts_with('/') && path.find("/.") == std::string_view::npos &&
         path.find("//") == std::string_view::npos && path.find('\\') == std::string_view::npos;
}

Reply no_page() {
  Reply reply;
  reply.status = 503;
  reply.type = "text/plain; charset=utf-8";
  reply.always = kHeaders;
  reply.headers = "Cache-Control: no-store\r\n";
  reply.body = say(Message{Code{"http.no_page"}, {}}, {}) + "\n";
  return reply;
}

}  // namespace

Pages::Pages(std::optional<std::filesystem::path> root) : root_{std::move(root)} {
  for (const PageFile& file : page_files()) kept_[std::string{file.path}] = {file, tag_of(file.bytes)};
}

Reply Pages::from_folder(const std::string& path, std::string bytes, const Request& request) const {
  Reply reply = page_reply(path);
  reply.headers = "Cache-Control: no-cache\r\n";  // It is being worked on.
  const std::string tag = tag_of(bytes);
  reply.body = std::move(bytes);
  return tagged(std::move(reply), tag, request.if_none_match);
}

std::optional<Reply> Pages::file(const std::string& path, const Request& request) const {
  if (root_) {
    auto bytes = bytes_of(*root_ / path.substr(1));
    if (!bytes) return std::nullopt;
    return from_folder(path, *std::move(bytes), request);
  }
  const auto it = kept_.find(path);
  if (it == kept_.end()) return std::nullopt;
  const Kept& kept = it->second;
  Reply reply = page_reply(path);
  const bool zipped = !kept.file.gzip.empty() && request.encodings.find("gzip") != std::string_view::npos;
  reply.fixed = zipped ? kept.file.gzip : kept.file.bytes;
  if (!kept.file.gzip.empty()) reply.headers += "Vary: Accept-Encoding\r\n";
  if (zipped) reply.headers += "Content-Encoding: gzip\r\n";
  return tagged(std::move(reply), kept.tag, request.if_none_match);
}

Reply Pages::answer(const Request& request) const {
  if (request.method != "GET" && request.method != "HEAD") {
    Reply reply = problem_reply(405, problem_of(Code{"http.method"}, "method", decoded(request.method).value_or("")));
    reply.headers += "Allow: GET, HEAD\r\n";
    return reply;
  }
  const auto path = decoded(request.path, false);
  if (!path || !is_plain(*path))
    return problem_reply(404, problem_of(Code{"http.no_such_path"}, "path", path.value_or("")));
  if (*path != "/")
    if (auto reply = file(*path, request)) return *std::move(reply);
  if (path->starts_with("/assets/")) return problem_reply(404, problem_of(Code{"http.no_such_path"}, "path", *path));
  if (auto reply = file("/index.html", request)) return *std::move(reply);
  return no_page();
}

}  // namespace flatwise::server
