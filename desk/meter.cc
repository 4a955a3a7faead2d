#include "desk/meter.h"

#include <algorithm>
#include <cmath>

#include "desk/stock.h"
#include "job/hours.h"

namespace flatwise::desk {
namespace {

using namespace job;

constexpr double kHour = 3600, kTenth = 0.05;  ///< A meter shows tenths: nearer than half of one is the same.

Id reading_of(const Id& entry) { return id_after(entry + "/hours"); }

/// The reading that an earlier booking of this job brought, by the chain of corrections; none where it brought none, or of another
/// machine.
const HourReading* brought_before(const Entry& entry, std::span<const Entry> before,
                                  std::span<const HourReading> noted) {
  for (const Id& id : entry.corrects) {
    const auto reading = std::ranges::find(noted, reading_of(id), &HourReading::id);
    if (reading != noted.end() && !is_corrected(*reading, noted)) return &*reading;
    const auto old = std::ranges::find(before, id, &Entry::id);
    if (old == before.end()) continue;
    if (const HourReading* found = brought_before(*old, before, noted)) return found;
  }
  return nullptr;
}

}  // namespace

MeterRead meter_read(const Entry& entry, std::span<const Entry> before, std::span<const HourReading> noted) {
  const auto* booked = std::get_if<BookedIn>(&entry.body);
  if (booked == nullptr || !booked->hour_meter) return {};
  const HourReading* earlier = brought_before(entry, before, noted);
  HourReading fresh{.id = reading_of(entry.id),
                    .machine = booked->machine,
                    .day = earlier != nullptr ? earlier->day : day_of(entry.at),
                    .hours = booked->hour_meter->value.si / kHour,
                    .note = {},
                    .by = entry.by,
                    .corrects = earlier != nullptr ? earlier->id : Id{},
                    .at = latest(entry)};
  const auto says_it = [&](const HourReading& one) {
    return one.day == fresh.day && std::abs(one.hours - fresh.hours) < kTenth && !is_corrected(one, noted);
  };
  if (std::ranges::any_of(noted, says_it)) return {};
  MeterRead out;
  for (Problem& problem : problems_of(fresh, noted, {.today = std::max(day_of(latest(entry)), fresh.day)})) {
    problem.field = "body.hour_meter";
    problem.given = booked->hour_meter->typed;
    problem.args.emplace_back("booking", "1");
    out.problems.push_back(std::move(problem));
  }
  if (out.problems.empty()) out.reading = std::move(fresh);
  return out;
}

}  // namespace flatwise::desk
