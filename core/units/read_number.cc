#include "core/units/read_number.h"

#include <algorithm>
#include <cstdint>

namespace flatwise {
namespace {

constexpr int kMostDigits = 15;  // Every number of 15 digits survives the way to a double and back.
constexpr int kGreatestPower = 30;
constexpr int kLeastPower = -45;

bool is_digit(std::string_view s, std::size_t i) { return i < s.size() && s[i] >= '0' && s[i] <= '9'; }
bool is_char(std::string_view s, std::size_t i, char c) { return i < s.size() && s[i] == c; }

/// Digits in a row: their value, how many count (leading noughts do not).
struct Digits {
  std::uint64_t value = 0;
  int significant = 0;
  std::size_t end = 0;

  void take(std::string_view s, std::size_t from) {
    for (end = from; is_digit(s, end); ++end) {
      if (significant == 0 && s[end] == '0') continue;
      if (++significant <= kMostDigits) value = value * 10 + static_cast<std::uint64_t>(s[end] - '0');
    }
  }
};

ReadNumber failed(NumberFault fault, std::size_t at) { return {fault, {}, false, at}; }

/// The fraction "n/d" at `at`, when there is one: digits, slash, digits.
struct Fraction {
  bool there = false;
  Digits upper, lower;
};
Fraction fraction_at(std::string_view s, std::size_t at) {
  Fraction f;
  if (!is_digit(s, at)) return f;
  f.upper.take(s, at);
  if (!is_char(s, f.upper.end, '/') || !is_digit(s, f.upper.end + 1)) return f;
  f.lower.take(s, f.upper.end + 1);
  f.there = true;
  return f;
}

NumberFault fault_of(const Fraction& f) {
  if (std::max(f.upper.significant, f.lower.significant) > kMostDigits) return NumberFault::too_many_digits;
  if (f.lower.significant == 0) return NumberFault::zero_denominator;
  return NumberFault::none;
}

ReadNumber mixed(const Digits& whole, const Fraction& f) {
  if (whole.significant > kMostDigits) return failed(NumberFault::too_many_digits, whole.end);
  if (const NumberFault fault = fault_of(f); fault != NumberFault::none) return failed(fault, f.lower.end);
  if (f.upper.value >= f.lower.value) return failed(NumberFault::improper_fraction, f.lower.end);
  const exact::Whole num = exact::Whole{whole.value} * exact::Whole{f.lower.value} + exact::Whole{f.upper.value};
  return {NumberFault::none, {false, num, exact::Whole{f.lower.value}}, false, f.lower.end};
}

/// What may follow plain digits: a fraction of them, a mixed fraction, or digits that must not be there.
ReadNumber after_whole(std::string_view s, std::size_t at, const Digits& whole) {
  if (const Fraction plain = fraction_at(s, at); plain.there) {
    if (const NumberFault fault = fault_of(plain); fault != NumberFault::none) return failed(fault, plain.lower.end);
    const exact::Ratio value{false, exact::Whole{plain.upper.value}, exact::Whole{plain.lower.value}};
    return {NumberFault::none, value, false, plain.lower.end};
  }
  std::size_t next = whole.end;
  while (is_char(s, next, ' ')) ++next;
  const bool spaced = next > whole.end;
  if (!spaced && is_char(s, next, '-')) ++next;
  if (next > whole.end && is_digit(s, next)) {
    const Fraction part = fraction_at(s, next);
    if (part.there) return mixed(whole, part);
    // "480 1/min" is a number and a unit; "1 500 mm" is neither one number nor two.
    if (spaced && !is_char(s, part.upper.end, '/')) return failed(NumberFault::spaced_digits, part.upper.end);
  }
  if (whole.significant > kMostDigits) return failed(NumberFault::too_many_digits, whole.end);
  return {NumberFault::none, {false, exact::Whole{whole.value}, exact::Whole{1}}, true, whole.end};
}

bool is_exponent(std::string_view s, std::size_t at) {
  if (!is_char(s, at, 'e') && !is_char(s, at, 'E')) return false;
  const bool has_sign = is_char(s, at + 1, '-') || is_char(s, at + 1, '+');
  return is_digit(s, at + (has_sign ? 2 : 1));
}

/// Power of ten after e or E; far powers are held at ±1000, which is out of range all the same.
int read_exponent(std::string_view s, std::size_t& at) {
  ++at;
  const bool negative = is_char(s, at, '-');
  if (negative || is_char(s, at, '+')) ++at;
  int power = 0;
  for (; is_digit(s, at); ++at) power = std::min(1000, power * 10 + (s[at] - '0'));
  return negative ? -power : power;
}

}  // namespace

ReadNumber read_number(std::string_view s, std::size_t at) {
  if (is_char(s, at, ',') && is_digit(s, at + 1)) return failed(NumberFault::comma, at);
  if (!is_digit(s, at) && !(is_char(s, at, '.') && is_digit(s, at + 1))) return failed(NumberFault::no_number, at);
  Digits digits;
  digits.take(s, at);
  std::size_t end = digits.end;
  const bool has_point = is_char(s, end, '.') && !is_char(s, end + 1, '.');
  int power = 0;
  if (has_point) {
    const std::size_t after_point = end + 1;
    digits.take(s, after_point);
    end = digits.end;
    power = -static_cast<int>(std::min<std::size_t>(end - after_point, 1000));
  }
  if (is_char(s, end, ',')) return failed(NumberFault::comma, end);
  const bool has_exponent = is_exponent(s, end);
  if (!has_point && !has_exponent) return after_whole(s, at, digits);
  if (has_exponent) power += read_exponent(s, end);
  if (digits.significant > kMostDigits) return failed(NumberFault::too_many_digits, end);
  if (digits.significant == 0) return {NumberFault::none, {}, false, end};
  if (power > kGreatestPower || power < kLeastPower) return failed(NumberFault::out_of_range, end);
  exact::Ratio value{false, exact::Whole{digits.value}, exact::Whole{1}};
  (power < 0 ? value.den : value.num) =
      power < 0 ? exact::power_of_ten(-power) : value.num * exact::power_of_ten(power);
  return {NumberFault::none, value, false, end};
}

}  // namespace flatwise
