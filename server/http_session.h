// http_session.h: one connection, from its first request to its end. All of it happens on its own I/O thread, so nothing here is
// locked. Only http_*.cc use it.
//
// A turn of the loop reads what has come, answers all of it that is whole, and waits for more; a reply goes out at once where the
// system takes it, and only what it does not take is waited for. Time limits are a moment that the loop's clock looks at, not a timer
// for each step: a request then costs one read, one write and one wait.
#pragma once

#include <array>
#include <boost/asio/buffer.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <chrono>
#include <memory>
#include <string>

#include "server/http_house.h"
#include "server/http_reader.h"

namespace flatwise::server {

class Session : public std::enable_shared_from_this<Session> {
 public:
  using Clock = std::chrono::steady_clock;

  Session(House& house, Loop& loop, boost::asio::ip::tcp::socket socket);
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;
  ~Session();

  /// Reads its first request.
  void begin();
  /// There are too many already: says so without reading what is asked.
  void turn_away();
  /// The program ends: idle connections and feeds now, the others after their reply.
  void stop();
  /// Ends it when what it waits for took too long.
  void look_at_clock(Clock::time_point now);

 private:
  using Code = boost::system::error_code;
  enum class State { reading, waiting, answering, draining, feeding, closed };

  void close();
  void within(Milliseconds limit) { until_ = Clock::now() + limit; }
  void never() { until_ = Clock::time_point::max(); }

  void next_request();
  void advance();
  void step();
  void wait_for_more();
  void on_read(Code ec, std::size_t bytes);
  void on_head();
  void go_on();
  void answer();
  [[nodiscard]] Reply too_much() const;

  void refuse(Reply reply);
  void send(Reply reply);
  void write();
  void on_sent(Code ec);
  void drain();
  void drain_more();

  void feed();
  void watch_for_end();
  void feed_more();
  void wait_a_while();
  void write_fed(std::string text);

  House& house_;
  Loop& loop_;
  boost::asio::ip::tcp::socket socket_;
  boost::asio::steady_timer heartbeat_;
  std::string peer_;
  bool loopback_ = false;
  Reader reader_;
  State state_ = State::reading;
  Clock::time_point until_ = Clock::time_point::max();
  Plan plan_;
  Reply reply_;
  std::string out_;                                   ///< Head of the reply, with its body where that is small.
  std::array<boost::asio::const_buffer, 2> parts_{};  ///< What is still to be written.
  bool in_head_ = true;                               ///< Of the request that is read.
  bool bare_ = false;                                 ///< HEAD: no body goes out.
  bool advancing_ = false, closing_ = false, drain_ = false, feeding_ = false;
  std::string dropped_;
  std::size_t drained_ = 0;
};

}  // namespace flatwise::server
