#include "server/http_writer.h"

#include <array>
#include <ctime>

#include "server/answers.h"
#include "server/json_text.h"

namespace flatwise::server {
namespace {

/// "Date: ...", made once a second.
std::string_view date_line() {
  thread_local std::time_t made = 0;
  thread_local std::string line;
  const std::time_t now = std::time(nullptr);
  if (now != made) {
    std::tm utc{};
    gmtime_r(&now, &utc);
    std::array<char, 64> text{};
    const std::size_t n = std::strftime(text.data(), text.size(), "Date: %a, %d %b %Y %H:%M:%S GMT\r\n", &utc);
    line.assign(text.data(), n);
    made = now;
  }
  return line;
}

}  // namespace

void write_head(std::string& out, const Reply& reply, std::size_t length, bool close) {
  out.clear();
  out += "HTTP/1.1 ";
  number(out, reply.status);
  ((out += ' ') += title_of(reply.status)) += "\r\n";
  out += date_line();
  if (!reply.type.empty()) ((out += "Content-Type: ") += reply.type) += "\r\n";
  if (!reply.feed && reply.status != 204 && reply.status != 304) {
    out += "Content-Length: ";
    number(out, static_cast<std::int64_t>(length));
    out += "\r\n";
  }
  out += reply.always;
  out += reply.headers;
  if (close) out += "Connection: close\r\n";
  out += "\r\n";
}

}  // namespace flatwise::server
