#include "tests/api/http_client.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace flatwise::api_test {
namespace {

using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

Answer read_head(const std::string& head) {
  Answer answer;
  answer.status = std::stoi(head.substr(head.find(' ') + 1));
  for (std::size_t at = head.find("\r\n") + 2; at < head.size();) {
    const std::size_t end = head.find("\r\n", at);
    const std::size_t colon = head.find(':', at);
    answer.headers[lower(head.substr(at, colon - at))] = head.substr(colon + 2, end - colon - 2);
    at = end + 2;
  }
  return answer;
}

}  // namespace

Connection::Connection(unsigned short port) : fd_{::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)}, port_{port} {
  sockaddr_in at{};
  at.sin_family = AF_INET;
  at.sin_port = htons(port);
  at.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  if (::connect(fd_, reinterpret_cast<const sockaddr*>(&at), sizeof at) != 0) throw std::runtime_error("no server");
}

Connection::~Connection() { ::close(fd_); }

bool Connection::send(std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::send(fd_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (n <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

void Connection::half_close() { ::shutdown(fd_, SHUT_WR); }

bool Connection::fill(std::chrono::milliseconds time) {
  pollfd in{.fd = fd_, .events = POLLIN, .revents = 0};
  if (ended_ || ::poll(&in, 1, static_cast<int>(time.count())) <= 0) return false;
  std::array<char, 65536> bytes{};
  const ssize_t n = ::recv(fd_, bytes.data(), bytes.size(), 0);
  if (n <= 0) {
    ended_ = true;
    return false;
  }
  have_.append(bytes.data(), static_cast<std::size_t>(n));
  return true;
}

Answer Connection::read(bool bare) {
  std::size_t end = 0;
  while ((end = have_.find("\r\n\r\n")) == std::string::npos)
    if (!fill(10s)) return {};
  Answer answer = read_head(have_.substr(0, end + 2));
  have_.erase(0, end + 4);
  if (bare || answer.header("content-type") == "text/event-stream") return answer;
  const std::string length = answer.header("content-length");
  const std::size_t wanted = length.empty() ? 0 : std::stoul(length);
  while (have_.size() < wanted && fill(10s)) {}
  answer.body = have_.substr(0, wanted);
  have_.erase(0, std::min(wanted, have_.size()));
  return answer;
}

Answer Connection::ask(const Ask& ask) {
  send(text_of(ask, port_));
  return read(ask.method == "HEAD");
}

std::string Connection::read_until(std::string_view until, std::chrono::milliseconds time) {
  const auto end = Clock::now() + time;
  while (have_.find(until) == std::string::npos && Clock::now() < end && !ended_)
    fill(std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()));
  return std::exchange(have_, {});
}

bool Connection::closed_within(std::chrono::milliseconds time) {
  const auto end = Clock::now() + time;
  while (!ended_ && Clock::now() < end) fill(50ms);
  return ended_;
}

std::string text_of(const Ask& ask, unsigned short port) {
  std::string text = ask.method + " " + ask.target + " HTTP/1.1\r\n";
  bool host = false;
  for (const std::string& header : ask.headers) {
    host = host || lower(header).starts_with("host:");
    text += header + "\r\n";
  }
  if (!host) text += "Host: 127.0.0.1:" + std::to_string(port) + "\r\n";
  if (!ask.body.empty() || ask.method == "POST" || ask.method == "PUT")
    text += "Content-Length: " + std::to_string(ask.body.size()) + "\r\n";
  return text + "\r\n" + ask.body;
}

Answer ask(unsigned short port, const Ask& ask) { return Connection{port}.ask(ask); }

Ask get(std::string target) { return {.method = "GET", .target = std::move(target)}; }

Ask post(std::string target, std::string json) {
  return {.method = "POST",
          .target = std::move(target),
          .headers = {"Content-Type: application/json"},
          .body = std::move(json)};
}

}  // namespace flatwise::api_test
