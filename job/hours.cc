#include "job/hours.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <tuple>

#include "job/gauges.h"

namespace flatwise::job {
namespace {

Problem problem(Code code, std::string_view field, std::string given, Args args = {}) {
  return {std::move(code), std::string{field}, std::move(given), std::move(args), std::nullopt};
}

/// As it stands on a meter: hours, with tenths where there are any.
std::string meter(double hours) {
  const auto tenths = static_cast<std::int64_t>(std::llround(hours * 10));
  return std::to_string(tenths / 10) + (tenths % 10 == 0 ? "" : "." + std::to_string(std::abs(tenths % 10))) + " h";
}

/// Hours from the start of the one day to the end of the other.
double hours_between(Day from, Day to) {
  using namespace std::chrono;
  const auto days_of = [](Day d) {
    return sys_days{year{d.year} / month{static_cast<unsigned>(d.month)} / day{static_cast<unsigned>(d.day)}};
  };
  return 24.0 * static_cast<double>((days_of(to) - days_of(from)).count() + 1);
}

Args beside(const HourReading& other) { return {{"hours", meter(other.hours)}, {"day", text_of(other.day)}}; }

void hold_against(const HourReading& fresh, std::span<const HourReading> others, std::vector<Problem>& problems) {
  const HourReading *before = nullptr, *after = nullptr;
  for (const HourReading& other : others) {
    if (other.day <= fresh.day) before = &other;
    if (other.day > fresh.day && after == nullptr) after = &other;
  }
  const std::string given = meter(fresh.hours);
  if (before != nullptr && fresh.hours < before->hours)
    problems.push_back(problem(Code{"shop.hours_fell"}, "hours", given, beside(*before)));
  else if (before != nullptr && fresh.hours - before->hours > hours_between(before->day, fresh.day))
    problems.push_back(problem(Code{"shop.hours_jumped"}, "hours", given, beside(*before)));
  if (after == nullptr) return;
  if (fresh.hours > after->hours)
    problems.push_back(problem(Code{"shop.hours_above"}, "hours", given, beside(*after)));
  else if (after->hours - fresh.hours > hours_between(fresh.day, after->day))
    problems.push_back(problem(Code{"shop.hours_below"}, "hours", given, beside(*after)));
}

}  // namespace

bool is_corrected(const HourReading& reading, std::span<const HourReading> noted) {
  return std::ranges::any_of(noted, [&](const HourReading& other) { return other.corrects == reading.id; });
}

std::vector<HourReading> standing_hours(std::span<const HourReading> noted) {
  std::vector<HourReading> standing;
  for (const HourReading& one : noted)
    if (!is_corrected(one, noted)) standing.push_back(one);
  std::ranges::stable_sort(standing, {}, [](const HourReading& r) { return std::tuple{r.day, r.at.ms, r.id}; });
  return standing;
}

std::optional<HourReading> last_hours(std::span<const HourReading> noted) {
  const std::vector<HourReading> standing = standing_hours(noted);
  return standing.empty() ? std::nullopt : std::optional{standing.back()};
}

std::vector<Problem> problems_of(const HourReading& fresh, std::span<const HourReading> noted,
                                 const HoursAsked& asked) {
  std::vector<Problem> problems;
  if (fresh.day > asked.today)
    problems.push_back(
        problem(Code{"shop.hours_to_come"}, "day", text_of(fresh.day), {{"today", text_of(asked.today)}}));
  std::vector<HourReading> others;
  for (const HourReading& one : noted)
    if (one.id != fresh.id) others.push_back(one);
  const auto meant = std::ranges::find(others, fresh.corrects, &HourReading::id);
  if (!fresh.corrects.empty() && meant == others.end())
    problems.push_back(problem(Code{"shop.no_such_hours"}, "corrects", fresh.corrects));
  else if (!fresh.corrects.empty() && is_corrected(*meant, others))
    problems.push_back(problem(Code{"shop.hours_corrected"}, "corrects", fresh.corrects));
  if (asked.sure) return problems;
  std::erase_if(others, [&](const HourReading& one) { return is_corrected(one, noted) || one.id == fresh.corrects; });
  hold_against(fresh, standing_hours(others), problems);
  return problems;
}

}  // namespace flatwise::job
