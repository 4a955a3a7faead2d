// http_listen.cc: connections taken in and dealt out to the I/O threads, their clocks, signals, and the end.
#include <utility>  // Asio 1.74 forgets it.

#include <algorithm>
#include <boost/asio.hpp>
#include <thread>
#include <vector>

#include "server/http.h"
#include "server/http_house.h"
#include "server/http_session.h"
#include "server/pool.h"

namespace flatwise::server {
namespace {

namespace net = boost::asio;
using tcp = net::ip::tcp;
using Code = boost::system::error_code;

constexpr Milliseconds kLastTurns{5};  ///< While it ends: nothing waits for a clock then.

std::vector<std::unique_ptr<Loop>> make_loops(std::size_t count) {
  std::vector<std::unique_ptr<Loop>> loops;
  for (std::size_t i = 0; i < count; ++i) {
    loops.push_back(std::make_unique<Loop>());
    loops.back()->lane = i;
  }
  return loops;
}

/// How often it is looked whether something took too long: often enough that no limit is overrun by more than an eighth.
Milliseconds clock_turn(const Limits& limits) {
  const Milliseconds least = std::min({limits.header, limits.body, limits.write, limits.drain}) / 8;
  return std::clamp(least, Milliseconds{1}, Milliseconds{500});
}

class Sockets : public Http {
 public:
  Sockets(const Listen& where, const Limits& limits, Service& service)
      : where_{where}, house_{service, limits}, loops_{make_loops(where.io_threads)} {}

  /// Empty, or what the system says.
  std::string bind() {
    Code ec;
    const auto address = net::ip::make_address(where_.address, ec);
    if (ec) return ec.message();
    const tcp::endpoint at{address, where_.port};
    acceptor_.open(at.protocol(), ec);
    if (!ec) acceptor_.set_option(net::socket_base::reuse_address(true), ec);
    if (!ec) acceptor_.bind(at, ec);
    if (!ec) acceptor_.listen(net::socket_base::max_listen_connections, ec);
    if (!ec) port_ = acceptor_.local_endpoint(ec).port();
    return ec ? ec.message() : std::string{};
  }

  [[nodiscard]] unsigned short port() const override { return port_; }

  void run(bool signals) override {
    Pool pool{where_.pool_threads, where_.io_threads, house_.limits.waiting};
    house_.pool = &pool;
    net::signal_set caught{loops_[0]->io};
    if (signals) {
      caught.add(SIGINT);
      caught.add(SIGTERM);
      caught.async_wait([this](Code ec, int) {
        if (!ec) stop();
      });
    }
    caught_ = &caught;
    accept();
    for (const auto& loop : loops_) rest(*loop), look_at_clocks(*loop);
    std::vector<std::thread> threads;
    for (std::size_t i = 1; i < loops_.size(); ++i) threads.emplace_back([loop = loops_[i].get()] { loop->io.run(); });
    loops_[0]->io.run();
    for (std::thread& t : threads) t.join();
  }

  void stop() override {
    net::post(loops_[0]->io, [this] { begin_to_stop(); });
  }

 private:
  void begin_to_stop() {
    if (house_.stopping.exchange(true)) return;
    Code ignored;
    acceptor_.close(ignored);
    caught_->cancel(ignored);
    for (const auto& loop : loops_)
      net::post(loop->io, [l = loop.get()] {
        const std::vector<Session*> all(l->sessions.begin(), l->sessions.end());
        for (Session* s : all) s->stop();
        l->rest.cancel();
        l->clock.cancel();  // It turns quickly from now on.
        l->guard.reset();
      });
    last_.expires_after(house_.limits.stop);
    last_.async_wait([this](Code ec) {
      if (!ec)
        for (const auto& loop : loops_) loop->io.stop();
    });
    look_whether_done();
  }

  /// The last timer must not hold the program up when all has been answered.
  void look_whether_done() {
    if (house_.connections == 0) return static_cast<void>(last_.cancel());
    look_.expires_after(kLastTurns);
    look_.async_wait([this](Code ec) {
      if (!ec) look_whether_done();
    });
  }

  void rest(Loop& loop) {
    loop.rest.expires_after(house_.limits.idle);
    loop.rest.async_wait([this, &loop](Code ec) {
      if (ec || house_.stopping) return;
      house_.service.idle(loop.lane);
      rest(loop);
    });
  }

  void look_at_clocks(Loop& loop) {
    loop.clock.expires_after(house_.stopping ? kLastTurns : clock_turn(house_.limits));
    loop.clock.async_wait([this, &loop](Code ec) {
      if (ec && !house_.stopping) return;
      const std::vector<Session*> all(loop.sessions.begin(), loop.sessions.end());
      const auto now = Session::Clock::now();
      for (Session* s : all) s->look_at_clock(now);
      if (!house_.stopping || !loop.sessions.empty()) look_at_clocks(loop);
    });
  }

  void accept() {
    Loop& loop = *loops_[turn_++ % loops_.size()];
    acceptor_.async_accept(loop.io, [this, &loop](Code ec, tcp::socket socket) {
      if (house_.stopping) return;
      if (!ec) take_in(loop, std::move(socket));
      if (ec != net::error::no_descriptors) return accept();
      look_.expires_after(Milliseconds{100});  // No descriptors left: wait until some are free.
      look_.async_wait([this](Code) { accept(); });
    });
  }

  void take_in(Loop& loop, tcp::socket socket) {
    const std::size_t there = house_.connections;
    if (there >= house_.limits.connections + house_.limits.turned_away) return;  // Closed as it goes.
    net::post(loop.io, [this, &loop, full = there >= house_.limits.connections, s = std::move(socket)]() mutable {
      const auto session = std::make_shared<Session>(house_, loop, std::move(s));
      full ? session->turn_away() : session->begin();
    });
  }

  Listen where_;
  House house_;
  std::vector<std::unique_ptr<Loop>> loops_;
  tcp::acceptor acceptor_{loops_.front()->io};
  net::steady_timer last_{loops_.front()->io}, look_{loops_.front()->io};
  net::signal_set* caught_ = nullptr;
  unsigned short port_ = 0;
  std::size_t turn_ = 0;
};

}  // namespace

tl::expected<std::unique_ptr<Http>, std::string> listen(const Listen& where, const Limits& limits, Service& service) {
  auto http = std::make_unique<Sockets>(where, limits, service);
  if (std::string wrong = http->bind(); !wrong.empty()) return tl::unexpected(std::move(wrong));
  return http;
}

}  // namespace flatwise::server
