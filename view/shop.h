// shop.h: the workshop's gauges with their dates, and its parts with what jobs still take of them (schemas/api/openapi.json:
// GaugesView, Stock, StockMoves).
#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "job/kit.h"
#include "job/store.h"
#include "wire/json.h"

namespace flatwise::view {

struct GaugesSubject {
  const Workshop& workshop;
  std::span<const job::Calibration> noted;
  std::span<const job::Person> people;
  Day today;
};
/// Found first: what is past its date, then what soon will be, then the rest as the workshop has them.
[[nodiscard]] wire::Json gauges_view(const GaugesSubject& subject, const Voice& voice);
/// One of them; null where there is none of that name.
[[nodiscard]] wire::Json gauge_card(const GaugesSubject& subject, std::string_view id, const Voice& voice);

/// Parts that an open job still takes from the shelf.
struct JobWants {
  job::Id job;
  std::string number;
  std::span<const job::PartWanted> wanted;
};
/// Every part with its level, what open jobs still take of it, what is then left, and whether that is enough.
[[nodiscard]] wire::Json stock_view(const Workshop& workshop, std::span<const JobWants> jobs, const Voice& voice);

struct MovesSubject {
  std::span<const job::StockMove> moves;
  std::span<const job::Person> people;
  const std::map<job::Id, std::string>& jobs;  ///< Number of the job that made a move, by the move's `why`.
};
[[nodiscard]] wire::Json moves_view(const MovesSubject& subject, const Voice& voice);

}  // namespace flatwise::view
