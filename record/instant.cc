#include "record/instant.h"

#include <chrono>

namespace flatwise::record {
namespace {

using namespace std::chrono;

/// Where the pattern has 0 a digit must stand, anything else must stand as it is.
bool looks_like(std::string_view text, std::string_view pattern) {
  if (text.size() != pattern.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (pattern[i] == '0' ? text[i] < '0' || text[i] > '9' : text[i] != pattern[i]) return false;
  return true;
}

int number(std::string_view digits) {
  int value = 0;
  for (const char c : digits) value = value * 10 + (c - '0');
  return value;
}

std::string padded(std::int64_t value, std::size_t width) {
  std::string text = std::to_string(value);
  return std::string(width > text.size() ? width - text.size() : 0, '0') + text;
}

year_month_day calendar(Day day) {
  return {year{day.year}, month{static_cast<unsigned>(day.month)}, std::chrono::day{static_cast<unsigned>(day.day)}};
}

}  // namespace

std::string text_of(Day day) { return padded(day.year, 4) + "-" + padded(day.month, 2) + "-" + padded(day.day, 2); }

std::optional<Day> day_of(std::string_view text) {
  if (!looks_like(text, "0000-00-00")) return std::nullopt;
  const Day day{number(text.substr(0, 4)), number(text.substr(5, 2)), number(text.substr(8, 2))};
  if (day.year < 1 || !calendar(day).ok()) return std::nullopt;
  return day;
}

std::string text_of(job::Instant at) {
  const sys_time<milliseconds> time{milliseconds{at.ms}};
  const auto midnight = floor<days>(time);
  const year_month_day date{midnight};
  const hh_mm_ss clock{time - midnight};
  const Day day{static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
                static_cast<int>(static_cast<unsigned>(date.day()))};
  return text_of(day) + "T" + padded(clock.hours().count(), 2) + ":" + padded(clock.minutes().count(), 2) + ":" +
         padded(clock.seconds().count(), 2) + "." + padded(clock.subseconds().count(), 3) + "Z";
}

std::optional<job::Instant> instant_of(std::string_view text) {
  if (!looks_like(text, "0000-00-00T00:00:00.000Z")) return std::nullopt;
  const std::optional<Day> day = day_of(text.substr(0, 10));
  const int h = number(text.substr(11, 2)), m = number(text.substr(14, 2)), s = number(text.substr(17, 2));
  if (!day || h > 23 || m > 59 || s > 59) return std::nullopt;
  const std::int64_t ms = ((std::int64_t{h} * 60 + m) * 60 + s) * 1000 + number(text.substr(20, 3));
  const auto time = sys_days{calendar(*day)} + milliseconds{ms};
  return job::Instant{time.time_since_epoch().count()};
}

}  // namespace flatwise::record
