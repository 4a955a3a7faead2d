// http_beast.cc: the only place that knows Beast and Asio; they take long to compile. One connection is one Session; all of a
// session happens on its own I/O thread, so nothing here is locked.
#include <utility>  // Asio 1.74 forgets it.

#include <boost/asio.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <ctime>
#include <limits>
#include <thread>
#include <unordered_set>
#include <vector>

#include "server/http.h"
#include "server/pool.h"

namespace flatwise::server {
namespace {

namespace net = boost::asio;
namespace beast = boost::beast;
namespace bhttp = boost::beast::http;
using tcp = net::ip::tcp;
using Code = boost::system::error_code;

class Session;

/// An I/O thread with its connections.
struct Loop {
  std::unordered_set<Session*> sessions;  // Outlives io: what waits there holds sessions, which take themselves out.
  std::size_t lane = 0;
  net::io_context io{1};
  net::executor_work_guard<net::io_context::executor_type> guard{io.get_executor()};
  net::steady_timer tick{io};
};

std::vector<std::unique_ptr<Loop>> make_loops(std::size_t count) {
  std::vector<std::unique_ptr<Loop>> loops;
  for (std::size_t i = 0; i < count; ++i) {
    loops.push_back(std::make_unique<Loop>());
    loops.back()->lane = i;
  }
  return loops;
}

/// What all sessions share.
struct House {
  House(Service& s, const Limits& l) : service{s}, limits{l} {}
  Service& service;
  Limits limits;
  Pool* pool = nullptr;
  std::atomic<std::size_t> connections{0};
  std::atomic<bool> stopping{false};
};

std::string_view view(beast::string_view v) { return {v.data(), v.size()}; }

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

void add_header(Request& r, bhttp::field name, std::string_view value) {
  const auto once = [&](std::string_view& into) {
    r.whole = r.whole && into.data() == nullptr;
    into = value;
  };
  switch (name) {
    case bhttp::field::host:
      return once(r.host);
    case bhttp::field::origin:
      return once(r.origin);
    case bhttp::field::content_type:
      return once(r.content_type);
    case bhttp::field::if_match:
      return once(r.if_match);
    case bhttp::field::if_none_match:
      return once(r.if_none_match);
    case bhttp::field::cookie:
      return once(r.cookie);
    case bhttp::field::accept_encoding:
      r.encodings = value;
      return;
    default:
      return;
  }
}

/// First lines and headers of a reply; the body is put on where it is small.
void write_head(std::string& out, const Reply& reply, std::size_t length, bool close) {
  out.clear();
  out += "HTTP/1.1 ";
  out += std::to_string(reply.status);
  out += ' ';
  out += view(bhttp::obsolete_reason(static_cast<bhttp::status>(reply.status)));
  out += "\r\n";
  out += date_line();
  if (!reply.type.empty()) (out += "Content-Type: ") += reply.type, out += "\r\n";
  if (!reply.feed && reply.status != 204 && reply.status != 304)
    (out += "Content-Length: ") += std::to_string(length), out += "\r\n";
  out += reply.always;
  out += reply.headers;
  if (close) out += "Connection: close\r\n";
  out += "\r\n";
}

class Session : public std::enable_shared_from_this<Session> {
 public:
  Session(House& house, Loop& loop, tcp::socket socket)
      : house_{house}, loop_{loop}, stream_{std::move(socket)}, heartbeat_{loop.io} {
    ++house_.connections;
    loop_.sessions.insert(this);
    Code ignored;
    const auto peer = stream_.socket().remote_endpoint(ignored).address();
    peer_ = peer.to_string();
    loopback_ = peer.is_loopback() || peer_.starts_with("::ffff:127.");
    stream_.socket().set_option(tcp::no_delay(true), ignored);
  }
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;
  ~Session() {
    if (reply_.feed) reply_.feed->end();
    loop_.sessions.erase(this);
    --house_.connections;
  }

  void read_request() {
    if (house_.stopping) return close();
    state_ = State::waiting;
    parser_.emplace();
    parser_->header_limit(static_cast<std::uint32_t>(house_.limits.header_bytes));
    // No limit yet: the plan sets it. Not boost::none, which this Boost takes for less than any length.
    parser_->body_limit(std::numeric_limits<std::uint64_t>::max());
    stream_.expires_after(house_.limits.header);
    bhttp::async_read_header(stream_, buffer_, *parser_,
                             [self = shared_from_this()](Code ec, std::size_t) { self->on_header(ec); });
  }

  /// There are too many already: says so without reading what is asked.
  void turn_away() {
    state_ = State::answering;
    parser_.emplace();
    refuse(house_.service.broken(Broken::too_busy));
  }

  /// The program ends: idle connections and feeds now, the others after their reply.
  void stop() {
    if (reply_.feed) reply_.feed->end();
    if (state_ == State::waiting) close();
  }

 private:
  enum class State { waiting, answering, feeding };

  void close() {
    Code ignored;
    stream_.socket().shutdown(tcp::socket::shutdown_both, ignored);
    stream_.close();
  }

  void on_header(Code ec) {
    if (ec) return failed(ec);
    state_ = State::answering;
    take_head();
    plan_ = house_.service.plan(request_);
    if (!is_framed()) return refuse(house_.service.broken(Broken::unreadable));
    const auto length = parser_->content_length();
    if (plan_.refused) return refuse(*std::move(plan_.refused));
    if (length && *length > plan_.body_bytes) return refuse(too_much());
    if (parser_->is_done()) return answer();
    parser_->body_limit(plan_.body_bytes);
    if (beast::iequals(parser_->get()[bhttp::field::expect], "100-continue")) return go_on();
    read_body();
  }

  /// Whether it is clear where the request ends (RFC 9112 section 6.3): coded in no other way than in chunks.
  [[nodiscard]] bool is_framed() const {
    const auto& head = parser_->get();
    const auto coding = head.find(bhttp::field::transfer_encoding);
    return coding == head.end() || beast::iequals(coding->value(), "chunked");
  }
  [[nodiscard]] Reply too_much() const {
    return house_.service.broken(plan_.body_bytes == 0 ? Broken::body_unasked : Broken::body_too_large);
  }

  void take_head() {
    request_ = Request{};
    const auto& head = parser_->get();
    request_.method = view(head.method_string());
    const std::string_view target = view(head.target());
    const std::size_t mark = target.find('?');
    request_.path = target.substr(0, mark);
    if (mark != std::string_view::npos) request_.query = target.substr(mark + 1);
    for (const auto& field : head) {
      add_header(request_, field.name(), view(field.value()));
      if (field.name() != bhttp::field::unknown) continue;
      if (beast::iequals(field.name_string(), "last-event-id")) request_.last_event_id = view(field.value());
      if (beast::iequals(field.name_string(), "sec-fetch-site")) request_.fetch_site = view(field.value());
    }
    request_.loopback = loopback_;
    request_.peer = peer_;
  }

  void go_on() {
    static constexpr std::string_view kGoOn = "HTTP/1.1 100 Continue\r\n\r\n";
    stream_.expires_after(house_.limits.write);
    net::async_write(stream_, net::buffer(kGoOn), [self = shared_from_this()](Code ec, std::size_t) {
      if (!ec) self->read_body();
    });
  }

  void read_body() {
    stream_.expires_after(house_.limits.body);
    bhttp::async_read(stream_, buffer_, *parser_, [self = shared_from_this()](Code ec, std::size_t) {
      if (ec) return self->failed(ec);
      self->answer();
    });
  }

  /// What cannot be read as a request, or not to its end.
  void failed(Code ec) {
    if (ec == bhttp::error::end_of_stream || ec == beast::error::timeout || ec == net::error::operation_aborted)
      return close();
    if (ec == bhttp::error::header_limit) return refuse(house_.service.broken(Broken::header_too_large));
    if (ec == bhttp::error::body_limit) return refuse(too_much());
    if (ec == bhttp::error::partial_message) return refuse(house_.service.broken(Broken::cut_short));
    if (ec.category() == bhttp::make_error_code(bhttp::error::bad_target).category())
      return refuse(house_.service.broken(Broken::unreadable));
    close();
  }

  void answer() {
    request_.body = parser_->get().body();
    if (!plan_.pool) return send(house_.service.answer(request_, loop_.lane));
    const bool taken = house_.pool->submit([self = shared_from_this()](std::size_t lane) mutable {
      Reply reply = self->house_.service.answer(self->request_, lane);
      net::io_context& io = self->loop_.io;  // A session dies on its own thread: it goes with the posted call.
      net::post(io, [self = std::move(self), reply = std::move(reply)]() mutable { self->send(std::move(reply)); });
    });
    if (!taken) send(house_.service.broken(Broken::too_busy));
  }

  /// Answers although the body was not read: the rest is dropped, then the connection ends.
  void refuse(Reply reply) {
    reply.close = true;
    drain_ = true;
    send(std::move(reply));
  }

  void send(Reply reply) {
    reply_ = std::move(reply);
    const std::string_view body = reply_.fixed.empty() ? std::string_view{reply_.body} : reply_.fixed;
    const bool bare = request_.method == "HEAD";
    closing_ = reply_.close || house_.stopping || reply_.feed || !parser_->get().keep_alive();
    write_head(out_, reply_, body.size(), closing_);
    std::array<net::const_buffer, 2> parts{net::buffer(out_), net::const_buffer{}};
    if (!bare && body.size() <= kTogether) {
      out_ += body;
      parts[0] = net::buffer(out_);
    } else if (!bare) {
      parts[1] = net::buffer(body.data(), body.size());
    }
    stream_.expires_after(house_.limits.write);
    net::async_write(stream_, parts, [self = shared_from_this()](Code ec, std::size_t) { self->on_sent(ec); });
  }

  void on_sent(Code ec) {
    if (ec) return close();
    if (reply_.feed && request_.method != "HEAD") return feed();
    if (drain_) return drain();
    if (closing_) return close();
    read_request();
  }

  void drain() {
    Code ignored;
    stream_.socket().shutdown(tcp::socket::shutdown_send, ignored);
    stream_.expires_after(house_.limits.drain);
    dropped_.resize(64U << 10U);
    drain_more();
  }
  void drain_more() {
    stream_.async_read_some(net::buffer(dropped_), [self = shared_from_this()](Code ec, std::size_t n) {
      self->drained_ += n;
      if (ec || self->drained_ >= self->house_.limits.drained_bytes) return self->close();
      self->drain_more();
    });
  }

  // A feed: woken when there is something, a heartbeat when there was nothing, ended when the other end goes.
  void feed() {
    state_ = State::feeding;
    reply_.feed->when_ready([weak = weak_from_this(), &io = loop_.io] {
      net::post(io, [weak] {
        if (const auto self = weak.lock()) self->feed_more();
      });
    });
    stream_.expires_never();
    watch_for_end();
    feed_more();
  }
  void watch_for_end() {
    dropped_.resize(256);
    stream_.socket().async_read_some(net::buffer(dropped_), [self = shared_from_this()](Code ec, std::size_t) {
      if (!ec) return self->watch_for_end();
      self->heartbeat_.cancel();
      self->reply_.feed->end();
      self->close();
    });
  }
  void feed_more() {
    if (feeding_) return;
    std::optional<std::string> text = reply_.feed->take();
    if (!text) {
      heartbeat_.cancel();
      return close();
    }
    if (text->empty()) return wait_a_while();
    write_fed(*std::move(text));
  }
  void wait_a_while() {
    heartbeat_.expires_after(house_.limits.heartbeat);
    heartbeat_.async_wait([weak = weak_from_this()](Code ec) {
      const auto self = weak.lock();
      if (!ec && self && !self->feeding_) self->write_fed(": here\n\n");
    });
  }
  void write_fed(std::string text) {
    feeding_ = true;
    out_ = std::move(text);
    stream_.expires_after(house_.limits.write);
    net::async_write(stream_, net::buffer(out_), [self = shared_from_this()](Code ec, std::size_t) {
      self->feeding_ = false;
      if (ec) return self->close();
      self->stream_.expires_never();
      self->feed_more();
    });
  }

  static constexpr std::size_t kTogether = 16U << 10U;  ///< A body up to that goes in one piece with its head.
  House& house_;
  Loop& loop_;
  beast::tcp_stream stream_;
  net::steady_timer heartbeat_;
  beast::flat_buffer buffer_;
  std::optional<bhttp::request_parser<bhttp::string_body>> parser_;
  std::string peer_;
  bool loopback_ = false;
  State state_ = State::waiting;
  Request request_;
  Plan plan_;
  Reply reply_;
  std::string out_;
  bool closing_ = false, drain_ = false, feeding_ = false;
  std::string dropped_;
  std::size_t drained_ = 0;
};

class BeastHttp : public Http {
 public:
  BeastHttp(const Listen& where, const Limits& limits, Service& service)
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
    for (const auto& loop : loops_) tick(*loop);
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
        l->tick.cancel();
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
    look_.expires_after(Milliseconds{5});
    look_.async_wait([this](Code ec) {
      if (!ec) look_whether_done();
    });
  }

  void tick(Loop& loop) {
    loop.tick.expires_after(house_.limits.idle);
    loop.tick.async_wait([this, &loop](Code ec) {
      if (ec || house_.stopping) return;
      house_.service.idle(loop.lane);
      tick(loop);
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
      full ? session->turn_away() : session->read_request();
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
  auto http = std::make_unique<BeastHttp>(where, limits, service);
  if (std::string wrong = http->bind(); !wrong.empty()) return tl::unexpected(std::move(wrong));
  return http;
}

}  // namespace flatwise::server
