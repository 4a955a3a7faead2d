// http_client.h: bytes to a server and back over a plain socket: good requests, and all that a good client would never send.
#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flatwise::api_test {

struct Answer {
  int status = 0;                              ///< 0: the connection ended without one.
  std::map<std::string, std::string> headers;  ///< Names in lower case.
  std::string body;
  [[nodiscard]] std::string header(const std::string& name) const {
    const auto it = headers.find(name);
    return it == headers.end() ? std::string{} : it->second;
  }
};

struct Ask {
  std::string method = "GET", target = "/";
  std::vector<std::string> headers = {};  ///< "Name: value"; Host is put in where there is none.
  std::string body = {};
};

class Connection {
 public:
  explicit Connection(unsigned short port);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  /// False when the other end is gone.
  bool send(std::string_view bytes);
  void half_close();  ///< Nothing more comes from us.
  /// The next answer; `bare`: to a HEAD, which has no body.
  [[nodiscard]] Answer read(bool bare = false);
  [[nodiscard]] Answer ask(const Ask& ask);
  /// What comes until `until` stands in it, the time is over, or the end.
  [[nodiscard]] std::string read_until(std::string_view until, std::chrono::milliseconds time);
  /// Whether the other end closes within that time.
  [[nodiscard]] bool closed_within(std::chrono::milliseconds time);

 private:
  bool fill(std::chrono::milliseconds time);
  int fd_ = -1;
  unsigned short port_;
  std::string have_;
  bool ended_ = false;
};

[[nodiscard]] std::string text_of(const Ask& ask, unsigned short port);
/// One request over a connection of its own.
[[nodiscard]] Answer ask(unsigned short port, const Ask& ask);
[[nodiscard]] Ask get(std::string target);
[[nodiscard]] Ask post(std::string target, std::string json);

}  // namespace flatwise::api_test
