// http_house.h: what the connections of a server share, and an I/O thread with its connections. Only http_*.cc use it.
#pragma once

#include <utility>  // Asio 1.74 forgets it.

#include <atomic>
#include <boost/asio/io_context.hpp>
#include <boost/asio/steady_timer.hpp>
#include <unordered_set>

#include "server/http.h"
#include "server/pool.h"

namespace flatwise::server {

class Session;

/// An I/O thread with its connections.
struct Loop {
  std::unordered_set<Session*> sessions;  // Outlives io: what waits there holds sessions, which take themselves out.
  std::size_t lane = 0;
  boost::asio::io_context io{1};
  boost::asio::executor_work_guard<boost::asio::io_context::executor_type> guard{io.get_executor()};
  boost::asio::steady_timer rest{io};   ///< Service::idle.
  boost::asio::steady_timer clock{io};  ///< Ends what takes too long.
};

/// What all sessions share.
struct House {
  House(Service& s, const Limits& l) : service{s}, limits{l} {}
  Service& service;
  Limits limits;
  Pool* pool = nullptr;
  std::atomic<std::size_t> connections{0};
  std::atomic<bool> stopping{false};
};

}  // namespace flatwise::server
