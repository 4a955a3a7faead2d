#include "core/stack/seat.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>

#include "core/units/guards.h"

namespace flatwise::stack {

Result<SeatJudged> judge_seat(const SeatReading& r) {
  if (auto p = not_above_nought("measured", any(r.measured))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("least-gap", any(r.least_gap))) return tl::unexpected(*std::move(p));
  if (auto p = negative("measured-u", any(r.expanded))) return tl::unexpected(*std::move(p));
  if (!(r.seated.least <= r.seated.greatest))
    return tl::unexpected(Problem{Code{"stack.band_order"},
                                  "band-least",
                                  {},
                                  {{"least", any(r.seated.least)}, {"greatest", any(r.seated.greatest)}},
                                  std::nullopt});
  const Length a = r.seated.least, b = r.seated.greatest, open_from = a + r.least_gap;
  SeatJudged out;
  if (r.measured + r.expanded < a)
    out.seat = Seat::contradiction;
  else if (r.measured - r.expanded > b)
    out.seat = Seat::not_seated;
  else if (r.measured + r.expanded < open_from)
    out.seat = Seat::seated;
  if (out.seat != Seat::cannot_tell) return out;
  const Length wanted = std::max(open_from - r.measured, r.measured - b);
  if (wanted > Length{}) out.expanded_wanted = wanted;
  return out;
}

Result<std::vector<Slip>> explain(Length difference, Length within, std::span<const StackPart> parts) {
  if (auto p = not_finite("difference", any(difference))) return tl::unexpected(*std::move(p));
  if (auto p = negative("within", any(within))) return tl::unexpected(*std::move(p));
  if (parts.empty() || parts.size() > 100'000)
    return tl::unexpected(Problem{
        Code{"stack.part_count"}, "length", {}, {{"count", static_cast<std::int64_t>(parts.size())}}, std::nullopt});
  std::map<double, std::vector<int>> by_length;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (auto p = not_above_nought("part[" + std::to_string(i + 1) + "]", any(parts[i].nominal)))
      return tl::unexpected(*std::move(p));
    by_length[parts[i].nominal.si()].push_back(static_cast<int>(i));
  }
  std::vector<Slip> slips;
  const auto consider = [&](SlipKind kind, const std::vector<int>& these, const std::vector<int>& instead,
                            double change_m) {
    const Length change = metres(change_m), off = difference - change;
    if (std::abs(off.si()) <= within.si()) slips.push_back({kind, these, instead, change, off});
  };
  for (const auto& [length_m, these] : by_length) {
    consider(SlipKind::missing, these, {}, -length_m);
    consider(SlipKind::doubled, these, {}, length_m);
    // Of all lengths only those within reach of the difference can stand in its place.
    const auto from = by_length.lower_bound(length_m + (difference - within).si());
    for (auto it = from; it != by_length.end() && it->first - length_m <= (difference + within).si(); ++it)
      if (it->first != length_m) consider(SlipKind::exchanged, these, it->second, it->first - length_m);
  }
  // Alike to the nanometre, the simpler story first: missing, doubled, exchanged.
  std::ranges::stable_sort(slips, {},
                           [](const Slip& s) { return std::pair{std::round(std::abs(s.off.si()) * 1e9), s.kind}; });
  return slips;
}

}  // namespace flatwise::stack
