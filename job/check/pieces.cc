#include "job/check/pieces.h"

#include <algorithm>

#include "job/kit.h"

namespace flatwise::job::check_detail {
namespace {

/// By the stock list: what this and other jobs ordered, and the workshop for no job.
int listed_on_order(const Workshop& workshop, std::string_view part) {
  const StockItem* item = find_stock(workshop, part);
  return item == nullptr ? 0 : item->on_order;
}

}  // namespace

int most_pieces(const Rotor& rotor, std::string_view item) {
  const int takes = item == "set" ? 1 : item == "seal" ? rotor.seals : static_cast<int>(rotor.snap_rings);
  return 2 * takes;
}

std::optional<Problem> problem_of_orders(const Workshop& workshop, const JobState& state, const Entry& entry) {
  const PartsDue before = parts_due(state);
  PartsDue after;
  for (const Entry* there : state.added)
    if (std::ranges::find(entry.corrects, there->id) == entry.corrects.end()) add_due(after, there->body);
  add_due(after, entry.body);
  for (const auto& [part, due] : after) {
    const int was = before.contains(part) ? before.find(part)->second : 0;
    const int listed = listed_on_order(workshop, part);
    if (due >= 0 || due >= was || listed + due - was >= 0) continue;
    const auto* received = std::get_if<Received>(&entry.body);
    if (received == nullptr)
      return Problem{Code{"record.came_in_already"}, "corrects", {}, {{"part", part}, {"count", -due}}, std::nullopt};
    return Problem{Code{"record.not_on_order"},
                   "body.count",
                   std::to_string(received->count),
                   {{"part", part}, {"open", std::max({0, due + received->count, listed})}},
                   std::nullopt};
  }
  return std::nullopt;
}

}  // namespace flatwise::job::check_detail
