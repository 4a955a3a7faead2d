#include "server/times.h"

#include <sodium.h>

#include <array>
#include <chrono>
#include <ctime>

#include "record/uuid.h"

namespace flatwise::server {
namespace {

namespace chr = std::chrono;

void add_digits(std::string& out, std::int64_t value, std::size_t digits) {
  std::array<char, 4> text{};
  for (std::size_t i = digits; i > 0; --i, value /= 10) text[i - 1] = static_cast<char>('0' + value % 10);
  out.append(text.data(), digits);
}

}  // namespace

job::Instant now() {
  return {chr::duration_cast<chr::milliseconds>(chr::system_clock::now().time_since_epoch()).count()};
}

Day today() { return day_of(now()); }

void add_instant(std::string& out, job::Instant at) {
  const chr::sys_time<chr::milliseconds> time{chr::milliseconds{at.ms}};
  const auto midnight = chr::floor<chr::days>(time);
  const chr::year_month_day date{midnight};
  const std::int64_t in_day = (time - midnight).count();
  add_digits(out, static_cast<int>(date.year()), 4);
  out += '-';
  add_digits(out, static_cast<unsigned>(date.month()), 2);
  out += '-';
  add_digits(out, static_cast<unsigned>(date.day()), 2);
  out += 'T';
  add_digits(out, in_day / 3'600'000, 2);
  out += ':';
  add_digits(out, in_day / 60'000 % 60, 2);
  out += ':';
  add_digits(out, in_day / 1000 % 60, 2);
  out += '.';
  add_digits(out, in_day % 1000, 3);
  out += 'Z';
}

Local local(job::Instant at) {
  const std::time_t seconds = at.ms / 1000;
  std::tm parts{};
  localtime_r(&seconds, &parts);
  Local out{{parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday}, {}};
  add_digits(out.time, parts.tm_hour, 2);
  out.time += ':';
  add_digits(out.time, parts.tm_min, 2);
  return out;
}

job::Id fresh_id() {
  std::array<std::uint8_t, 10> random{};
  randombytes_buf(random.data(), random.size());
  return record::uuid7(now(), random);
}

}  // namespace flatwise::server
