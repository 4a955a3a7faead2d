// routes.h: the table of routes, as schemas/api/openapi.json has them, and what a handler gets. Handlers stand in
// routes_*.cc by subject; each reads its input, calls the desk, the store or a view, and writes the answer.
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>

#include "job/store.h"
#include "server/answers.h"
#include "server/http.h"
#include "server/query.h"

namespace flatwise::desk {
class Kept;
}

namespace flatwise::server {

class Live;
class LetIn;

/// What all handlers share; each part looks after its own locks.
struct Shared {
  Live& live;
  LetIn& let_in;
  desk::Kept& opened;
  const std::function<job::Instant()>& now;  ///< The clock by which what is sent was received.
};

struct Call {
  const Request& request;
  const Query& query;
  job::Store& store;
  Shared& shared;
  Voice voice;
  const wire::Json* body = nullptr;  ///< Of a route that takes JSON.
  [[nodiscard]] job::Id id() const { return job::Id{request.captured[0]}; }
};

struct Route {
  enum class Body { none, json, entries, photo };  ///< entries: JSON that the handler reads itself.
  std::string_view method, pattern, operation;
  Reply (*answer)(const Call&);
  bool pool = true;
  Body body = Body::none;
  std::span<const QueryRule> query = {};
};
[[nodiscard]] std::span<const Route> routes();

inline constexpr std::size_t kJsonBytes = 1U << 20U;
inline constexpr std::size_t kPhotoBytes = 16U << 20U;

/// Place in the table of the route of a path, with what stands at its {places}; -1 where there is none. HEAD is a GET.
[[nodiscard]] int match(std::string_view method, std::string_view path, std::array<std::string_view, 2>& captured);
/// Methods that a path knows, as in an Allow header; empty: no such path.
[[nodiscard]] std::string allowed(std::string_view path);

// routes_jobs.cc
Reply get_jobs(const Call&);
Reply get_job(const Call&);
Reply get_machine_jobs(const Call&);
// routes_entries.cc
Reply get_entries(const Call&);
Reply post_entries(const Call&);
// routes_screens.cc
Reply get_board(const Call&);
Reply get_bench(const Call&);
Reply get_machine(const Call&);
Reply get_report(const Call&);
Reply get_sheet(const Call&);
Reply check_shaft(const Call&);
// routes_shop.cc
Reply get_workshop(const Call&);
Reply get_people(const Call&);
Reply post_person(const Call&);
Reply post_at_work(const Call&);
Reply get_customers(const Call&);
Reply post_customer(const Call&);
// routes_gauges.cc
Reply get_gauges(const Call&);
Reply post_gauge(const Call&);
Reply post_calibration(const Call&);
// routes_stock.cc
Reply get_stock(const Call&);
Reply post_stock(const Call&);
Reply post_part(const Call&);
Reply get_moves(const Call&);
// routes_machines.cc
Reply get_machines(const Call&);
Reply post_machine(const Call&);
Reply post_hours(const Call&);
Reply get_shafts(const Call&);
Reply get_shaft(const Call&);
Reply post_shaft(const Call&);
// routes_figures.cc
Reply get_figures(const Call&);
Reply post_figure(const Call&);
// routes_shaft.cc
Reply get_pattern(const Call&);
Reply get_pattern_file(const Call&);
Reply get_bend(const Call&);
Reply get_bend_file(const Call&);
Reply get_bearing(const Call&);
// routes_study.cc
Reply get_study(const Call&);
Reply get_study_file(const Call&);
// routes_other.cc
Reply get_blob(const Call&);
Reply put_blob(const Call&);
Reply get_events(const Call&);
Reply post_let_in(const Call&);
Reply post_offer(const Call&);
// routes_tablets.cc
Reply get_tablets(const Call&);
Reply post_take_back(const Call&);

}  // namespace flatwise::server
