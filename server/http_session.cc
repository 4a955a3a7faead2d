#include "server/http_session.h"

#include <algorithm>
#include <boost/asio/post.hpp>
#include <boost/asio/write.hpp>

#include "server/http_writer.h"

namespace flatwise::server {
namespace {

namespace net = boost::asio;
using tcp = net::ip::tcp;

constexpr std::size_t kTogether = 16U << 10U;  ///< A body up to that goes in one piece with its head.

}  // namespace

Session::Session(House& house, Loop& loop, tcp::socket socket)
    : house_{house}, loop_{loop}, socket_{std::move(socket)}, heartbeat_{loop.io}, reader_{house.limits.header_bytes} {
  ++house_.connections;
  loop_.sessions.insert(this);
  Code ignored;
  const auto peer = socket_.remote_endpoint(ignored).address();
  peer_ = peer.to_string();
  loopback_ = peer.is_loopback() || peer_.starts_with("::ffff:127.");
  socket_.set_option(tcp::no_delay(true), ignored);
  socket_.non_blocking(true, ignored);
}

Session::~Session() {
  if (reply_.feed) reply_.feed->end();
  loop_.sessions.erase(this);
  --house_.connections;
}

void Session::begin() {
  within(house_.limits.header);
  advance();
}

void Session::turn_away() { refuse(house_.service.broken(Broken::too_busy)); }

void Session::stop() {
  if (reply_.feed) reply_.feed->end();
  if (state_ == State::waiting && in_head_) close();
}

void Session::look_at_clock(Clock::time_point now) {
  if (now >= until_) close();
}

void Session::close() {
  if (state_ == State::closed) return;
  state_ = State::closed;
  never();
  heartbeat_.cancel();
  if (reply_.feed) reply_.feed->end();
  Code ignored;
  socket_.shutdown(tcp::socket::shutdown_both, ignored);
  socket_.close(ignored);
}

// ---- Reading ------------------------------------------------------------------------------------------------------------

/// Goes as far as it gets with what has come. What it calls may answer at once and so come back here: the loop goes on then.
void Session::advance() {
  if (advancing_) return;
  advancing_ = true;
  while (state_ == State::reading) step();
  advancing_ = false;
}

void Session::step() {
  if (in_head_ && house_.stopping) return close();
  switch (reader_.go_on()) {
    case Reader::Step::more:
      return wait_for_more();
    case Reader::Step::head:
      return on_head();
    case Reader::Step::whole:
      return answer();
    case Reader::Step::wrong:
      return refuse(reader_.wrong() == Broken::body_too_large ? too_much() : house_.service.broken(reader_.wrong()));
  }
}

void Session::wait_for_more() {
  state_ = State::waiting;
  const std::span<char> room = reader_.room();
  socket_.async_read_some(net::buffer(room.data(), room.size()),
                          [self = shared_from_this()](Code ec, std::size_t bytes) { self->on_read(ec, bytes); });
}

void Session::on_read(Code ec, std::size_t bytes) {
  if (state_ == State::closed) return;
  if (ec == net::error::eof && reader_.in_the_middle()) return refuse(house_.service.broken(Broken::cut_short));
  if (ec) return close();
  reader_.came(bytes);
  state_ = State::reading;
  advance();
}

void Session::on_head() {
  in_head_ = false;
  Request& request = reader_.request();
  request.loopback = loopback_;
  request.peer = peer_;
  bare_ = request.method == "HEAD";
  plan_ = house_.service.plan(request);
  if (!reader_.is_framed()) return refuse(house_.service.broken(Broken::unreadable));
  if (plan_.refused) return refuse(*std::move(plan_.refused));
  const auto length = reader_.body_bytes();
  if (length && *length > plan_.body_bytes) return refuse(too_much());
  if (!reader_.has_body()) return answer();
  reader_.most_body(plan_.body_bytes);
  within(house_.limits.body);
  if (reader_.waits_to_go_on()) go_on();
}

Reply Session::too_much() const {
  return house_.service.broken(plan_.body_bytes == 0 ? Broken::body_unasked : Broken::body_too_large);
}

void Session::go_on() {
  static constexpr std::string_view kGoOn = "HTTP/1.1 100 Continue\r\n\r\n";
  state_ = State::answering;
  net::async_write(socket_, net::buffer(kGoOn), [self = shared_from_this()](Code ec, std::size_t) {
    if (self->state_ == State::closed) return;
    if (ec) return self->close();
    self->state_ = State::reading;
    self->advance();
  });
}

void Session::next_request() {
  in_head_ = true;
  bare_ = false;
  reader_.next();
  reply_ = Reply{};
  state_ = State::reading;
  within(house_.limits.header);
  advance();
}

// ---- Answering ----------------------------------------------------------------------------------------------------------

void Session::answer() {
  state_ = State::answering;
  never();
  if (!plan_.pool) return send(house_.service.answer(reader_.request(), loop_.lane));
  const bool taken = house_.pool->submit([self = shared_from_this()](std::size_t lane) mutable {
    Reply reply = self->house_.service.answer(self->reader_.request(), lane);
    net::io_context& io = self->loop_.io;  // A session dies on its own thread: it goes with the posted call.
    net::post(io, [self = std::move(self), reply = std::move(reply)]() mutable { self->send(std::move(reply)); });
  });
  if (!taken) send(house_.service.broken(Broken::too_busy));
}

/// Answers although the body was not read: the rest is dropped, then the connection ends.
void Session::refuse(Reply reply) {
  reply.close = true;
  drain_ = true;
  send(std::move(reply));
}

void Session::send(Reply reply) {
  if (state_ == State::closed) return;
  state_ = State::answering;
  reply_ = std::move(reply);
  const std::string_view body = reply_.fixed.empty() ? std::string_view{reply_.body} : reply_.fixed;
  closing_ = reply_.close || house_.stopping || reply_.feed || !reader_.keeps_alive();
  write_head(out_, reply_, body.size(), closing_);
  parts_[1] = {};
  if (!bare_ && body.size() <= kTogether)
    out_ += body;
  else if (!bare_)
    parts_[1] = net::buffer(body.data(), body.size());
  parts_[0] = net::buffer(out_);
  write();
}

void Session::write() {
  Code ec;
  const std::size_t all = net::buffer_size(parts_);
  std::size_t gone = socket_.write_some(parts_, ec);  // Most replies are taken whole: nothing to wait for.
  if (!ec && gone == all) return on_sent({});
  if (ec && ec != net::error::would_block && ec != net::error::try_again) return close();
  for (net::const_buffer& part : parts_) {
    const std::size_t of_it = std::min(gone, part.size());
    part += of_it;
    gone -= of_it;
  }
  within(house_.limits.write);
  net::async_write(socket_, parts_, [self = shared_from_this()](Code e, std::size_t) { self->on_sent(e); });
}

void Session::on_sent(Code ec) {
  if (state_ == State::closed) return;
  if (ec) return close();
  if (reply_.feed && !bare_) return feed();
  if (drain_) return drain();
  if (closing_) return close();
  next_request();
}

void Session::drain() {
  state_ = State::draining;
  Code ignored;
  socket_.shutdown(tcp::socket::shutdown_send, ignored);
  within(house_.limits.drain);
  dropped_.resize(64U << 10U);
  drain_more();
}

void Session::drain_more() {
  socket_.async_read_some(net::buffer(dropped_), [self = shared_from_this()](Code ec, std::size_t n) {
    self->drained_ += n;
    if (ec || self->drained_ >= self->house_.limits.drained_bytes) return self->close();
    self->drain_more();
  });
}

// ---- A feed: woken when there is something, a heartbeat when there was nothing, ended when the other end goes -----------

void Session::feed() {
  state_ = State::feeding;
  reply_.feed->when_ready([weak = weak_from_this(), &io = loop_.io] {
    net::post(io, [weak] {
      if (const auto self = weak.lock()) self->feed_more();
    });
  });
  never();
  watch_for_end();
  feed_more();
}

void Session::watch_for_end() {
  dropped_.resize(256);
  socket_.async_read_some(net::buffer(dropped_), [self = shared_from_this()](Code ec, std::size_t) {
    if (!ec) return self->watch_for_end();
    self->close();
  });
}

void Session::feed_more() {
  if (feeding_ || state_ == State::closed) return;
  std::optional<std::string> text = reply_.feed->take();
  if (!text) return close();
  if (text->empty()) return wait_a_while();
  write_fed(*std::move(text));
}

void Session::wait_a_while() {
  heartbeat_.expires_after(house_.limits.heartbeat);
  heartbeat_.async_wait([weak = weak_from_this()](Code ec) {
    const auto self = weak.lock();
    if (!ec && self && !self->feeding_) self->write_fed(": here\n\n");
  });
}

void Session::write_fed(std::string text) {
  if (state_ == State::closed) return;
  feeding_ = true;
  out_ = std::move(text);
  within(house_.limits.write);
  net::async_write(socket_, net::buffer(out_), [self = shared_from_this()](Code ec, std::size_t) {
    self->feeding_ = false;
    if (self->state_ == State::closed) return;
    if (ec) return self->close();
    self->never();
    self->feed_more();
  });
}

}  // namespace flatwise::server
