// http.h: requests and replies as the rest of server/ sees them. http_*.cc alone know the libraries that read and write them.
//
// A connection belongs to one I/O thread. Light requests are answered there; those that fold, draw, hash or write go to a
// small bounded pool. Each of these threads is a 'lane' with a number, so that each can have its own connection to the store.
#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace flatwise::server {

using Milliseconds = std::chrono::milliseconds;

/// What is refused, and how long is waited. Tests set them small.
struct Limits {
  std::size_t header_bytes = 16U << 10U;
  std::size_t drained_bytes = 1U << 20U;  ///< Read and dropped after a refusal, so that a browser sees the answer.
  Milliseconds drain{1000};
  Milliseconds header{20'000};  ///< Between two requests, with the header of the next.
  Milliseconds body{30'000};
  Milliseconds write{30'000};
  Milliseconds stop{5000};         ///< What is under way may take that long after a signal.
  Milliseconds idle{200};          ///< Between two calls of Service::idle.
  Milliseconds heartbeat{15'000};  ///< A comment on a feed when nothing else was sent.
  std::size_t connections = 256;
  std::size_t turned_away = 32;  ///< Beyond `connections`: told so; those beyond are closed without a word.
  std::size_t waiting = 64;      ///< Requests that wait for the pool.
};

/// What goes out piece by piece to one listener: bounded, and ended when the listener does not keep up.
class Feed {
 public:
  virtual ~Feed() = default;
  /// What waits to be sent, if anything; nullopt when the feed has ended.
  virtual std::optional<std::string> take() = 0;
  /// Called, from any thread, when there is something to take or the feed has ended. It only says so elsewhere: calling back into
  /// the feed from within it would wait for itself.
  virtual void when_ready(std::function<void()> wake) = 0;
  virtual void end() = 0;
};

/// One request. The views live until its reply is written.
struct Request {
  std::string_view method, path, query;  ///< As sent, not decoded.
  std::string_view host, origin, fetch_site, content_type, cookie, if_match, if_none_match, last_event_id, encodings;
  std::string_view body;
  bool whole = true;       ///< False: a header that may stand once stands twice.
  bool loopback = true;    ///< The other end is this machine.
  bool handed_on = false;  ///< It says that it came from elsewhere by way of who sent it: a proxy.
  std::string_view peer;   ///< Its address.
  // Filled by Service::plan:
  int route = -1;  ///< In the table of routes; -1: none.
  std::array<std::string_view, 2> captured;
};

struct Reply {
  int status = 200;
  std::string_view type;    ///< Empty: no content.
  std::string_view always;  ///< Header lines that hold for all of its sort; must outlive the reply.
  std::string headers;      ///< More header lines, each with its line end.
  std::string body;
  std::string_view fixed;      ///< Instead of `body`: bytes that outlive the reply.
  std::shared_ptr<Feed> feed;  ///< Instead of a body.
  bool close = false;
};

/// What is to be done with a request, known from its header.
struct Plan {
  bool pool = false;
  std::size_t body_bytes = 0;    ///< Most that is read.
  std::optional<Reply> refused;  ///< Answer this; the body is dropped.
};

/// Faults below the routes.
enum class Broken { unreadable, header_too_large, body_too_large, body_unasked, cut_short, too_busy };

class Service {
 public:
  Service() = default;
  Service(const Service&) = delete;
  Service& operator=(const Service&) = delete;
  virtual ~Service() = default;
  virtual Plan plan(Request& head) = 0;
  virtual Reply answer(const Request& request, std::size_t lane) = 0;
  virtual Reply broken(Broken what) = 0;
  /// Called now and then on each I/O thread, between two requests.
  virtual void idle(std::size_t lane) = 0;
};

struct Listen {
  std::string address = "127.0.0.1";  ///< Numeric, IPv4 or IPv6.
  unsigned short port = 0;            ///< 0: any that is free.
  std::size_t io_threads = 1;
  std::size_t pool_threads = 2;
  [[nodiscard]] std::size_t lanes() const { return io_threads + pool_threads; }
};

class Http {
 public:
  Http() = default;
  Http(const Http&) = delete;
  Http& operator=(const Http&) = delete;
  virtual ~Http() = default;
  [[nodiscard]] virtual unsigned short port() const = 0;
  /// Answers until stop(), or SIGINT or SIGTERM where `signals`; what is under way is answered first.
  virtual void run(bool signals) = 0;
  virtual void stop() = 0;  ///< From any thread.
};

/// Binds and listens; the error is the system's text.
[[nodiscard]] tl::expected<std::unique_ptr<Http>, std::string> listen(const Listen& where, const Limits& limits,
                                                                      Service& service);

}  // namespace flatwise::server
