#include "job/shop_rules.h"

#include <algorithm>
#include <string>

#include "job/entry_fields.h"
#include "job/entry_says.h"
#include "job/gauges.h"
#include "job/kit.h"

namespace flatwise::job {
namespace {

Problem problem(Code code, std::string_view field, std::string given, Args args = {}) {
  return {std::move(code), std::string{field}, std::move(given), std::move(args), std::nullopt};
}

bool is_corrected(const Calibration& one, std::span<const Calibration> noted) {
  return std::ranges::any_of(noted, [&](const Calibration& later) { return later.corrects == one.id; });
}

/// The first certificate of the gauge that still holds and is newer; nullptr: none.
const Calibration* newer(const Calibration& c, std::span<const Calibration> noted) {
  const auto it = std::ranges::find_if(noted, [&](const Calibration& old) {
    return old.gauge == c.gauge && old.id != c.id && old.id != c.corrects && c.day && old.day && *c.day < *old.day &&
           !is_corrected(old, noted);
  });
  return it == noted.end() ? nullptr : &*it;
}

}  // namespace

std::vector<Problem> problems_of(const Calibration& c, std::span<const Calibration> noted, Day today) {
  std::vector<Problem> problems;
  if (c.day && *c.day > today)
    problems.push_back(problem(Code{"shop.still_to_come"}, "day", text_of(*c.day), {{"today", text_of(today)}}));
  if (c.day && c.until <= *c.day)
    problems.push_back(problem(Code{"shop.until_before"}, "until", text_of(c.until), {{"day", text_of(*c.day)}}));
  if (const Calibration* last = newer(c, noted))
    problems.push_back(
        problem(Code{"shop.older_certificate"}, "day", text_of(*c.day), {{"last", text_of(*last->day)}}));
  const auto meant = [&](const Calibration& old) { return old.id == c.corrects && old.gauge == c.gauge; };
  if (!c.corrects.empty() && std::ranges::none_of(noted, meant))
    problems.push_back(problem(Code{"shop.no_such_calibration"}, "corrects", c.corrects));
  return problems;
}

std::optional<Problem> problem_of(const StockMove& move) {
  const auto wrong = [&](std::string_view field, int given) -> std::optional<Problem> {
    const std::string reason{fields::kMoveReasons[static_cast<std::size_t>(move.reason)]};
    return problem(Code{"shop.not_such_a_move"}, field, std::to_string(given),
                   {{"reason", Word{"stock_reason." + reason}}});
  };
  const bool counted = move.reason == MoveReason::counted;
  if (counted != move.counted.has_value()) return wrong("counted", move.counted.value_or(0));
  switch (move.reason) {
    case MoveReason::counted:
      if (move.shelf != 0) return wrong("shelf", move.shelf);
      return move.order == 0 ? std::nullopt : wrong("order", move.order);
    case MoveReason::ordered:
      if (move.shelf != 0) return wrong("shelf", move.shelf);
      return move.order != 0 ? std::nullopt : wrong("order", move.order);
    case MoveReason::received:
      if (move.shelf <= 0) return wrong("shelf", move.shelf);
      return move.order <= 0 && move.order >= -move.shelf ? std::nullopt : wrong("order", move.order);
    case MoveReason::scrapped:
      if (move.shelf >= 0) return wrong("shelf", move.shelf);
      return move.order == 0 ? std::nullopt : wrong("order", move.order);
    case MoveReason::job:
      break;
  }
  return problem(Code{"shop.not_such_a_move"}, "reason", "job", {{"reason", Word{"stock_reason.job"}}});
}

std::optional<Problem> problem_of_level(const Workshop& workshop, const StockMove& move) {
  const StockItem* it = find_stock(workshop, move.part_number);
  if (it == nullptr) return problem(Code{"shop.no_such_part"}, "part_number", move.part_number);
  const auto few = [&](std::string_view field, int change, int there) {
    return problem(Code{"shop.not_so_many_there"}, field, std::to_string(change),
                   {{"there", there}, {"part", move.part_number}});
  };
  if (move.shelf < 0 && it->on_shelf + move.shelf < 0) return few("shelf", move.shelf, it->on_shelf);
  if (move.order < 0 && it->on_order + move.order < 0) return few("order", move.order, it->on_order);
  return std::nullopt;
}

std::optional<Problem> problem_of_leaving(std::span<const Person> people, const Person& leaves) {
  if (leaves.role == Role::bench) return std::nullopt;
  const auto stands_in = [&](const Person& p) { return p.active && p.id != leaves.id && p.role == leaves.role; };
  if (std::ranges::any_of(people, stands_in)) return std::nullopt;
  return Problem{Code{"shop.last_of_role"}, "active", leaves.name, {{"role", role_word(leaves.role)}}, std::nullopt};
}

}  // namespace flatwise::job
