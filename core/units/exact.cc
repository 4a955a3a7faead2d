#include "core/units/exact.h"

#include <bit>
#include <cmath>
#include <limits>
#include <utility>

#include "core/units/problem.h"

namespace flatwise::exact {

bool Whole::is_zero() const {
  for (const std::uint32_t limb : limb_)
    if (limb != 0) return false;
  return true;
}

int Whole::bit_length() const {
  for (int i = kLimbs - 1; i >= 0; --i) {
    const std::uint32_t limb = limb_[static_cast<std::size_t>(i)];
    if (limb != 0) return i * 32 + static_cast<int>(std::bit_width(limb));
  }
  return 0;
}

Whole operator+(const Whole& a, const Whole& b) {
  Whole sum;
  std::uint64_t carry = 0;
  for (std::size_t i = 0; i < Whole::kLimbs; ++i) {
    carry += static_cast<std::uint64_t>(a.limb_[i]) + b.limb_[i];
    sum.limb_[i] = static_cast<std::uint32_t>(carry);
    carry >>= 32;
  }
  sum.overflow_ = a.overflow_ || b.overflow_ || carry != 0;
  return sum;
}

Whole operator-(const Whole& a, const Whole& b) {
  Whole rest;
  std::uint64_t borrow = 0;
  for (std::size_t i = 0; i < Whole::kLimbs; ++i) {
    const std::uint64_t take = b.limb_[i] + borrow;
    borrow = a.limb_[i] < take ? 1 : 0;
    rest.limb_[i] = static_cast<std::uint32_t>(a.limb_[i] + (borrow << 32) - take);
  }
  rest.overflow_ = a.overflow_ || b.overflow_ || borrow != 0;
  return rest;
}

Whole operator*(const Whole& a, const Whole& b) {
  Whole product;
  product.overflow_ = a.overflow_ || b.overflow_;
  if (a.bit_length() + b.bit_length() > Whole::kLimbs * 32) {
    product.overflow_ = true;
    return product;
  }
  for (std::size_t i = 0; i < Whole::kLimbs; ++i) {
    if (a.limb_[i] == 0) continue;  // Most limbs of a typed number are nought.
    std::uint64_t carry = 0;
    for (std::size_t j = 0; i + j < Whole::kLimbs; ++j) {
      carry += static_cast<std::uint64_t>(a.limb_[i]) * b.limb_[j] + product.limb_[i + j];
      product.limb_[i + j] = static_cast<std::uint32_t>(carry);
      carry >>= 32;
    }
  }
  return product;
}

std::strong_ordering operator<=>(const Whole& a, const Whole& b) {
  for (int i = Whole::kLimbs - 1; i >= 0; --i) {
    const auto k = static_cast<std::size_t>(i);
    if (a.limb_[k] != b.limb_[k]) return a.limb_[k] <=> b.limb_[k];
  }
  return std::strong_ordering::equal;
}

Whole Whole::shifted_left(int bits) const {
  Whole shifted;
  shifted.overflow_ = overflow_ || (!is_zero() && bit_length() + bits > kLimbs * 32);
  const int limbs = bits / 32;
  const int part = bits % 32;
  for (int i = kLimbs - 1; i >= limbs; --i) {
    std::uint64_t wide = static_cast<std::uint64_t>(limb_[static_cast<std::size_t>(i - limbs)]) << 32;
    if (i - limbs > 0) wide |= limb_[static_cast<std::size_t>(i - limbs - 1)];
    shifted.limb_[static_cast<std::size_t>(i)] = static_cast<std::uint32_t>((wide << part) >> 32);
  }
  return shifted;
}

Whole power_of_ten(int exponent) {
  Whole power{1};
  for (int i = 0; i < exponent; ++i) power = power * Whole{10};
  return power;
}

bool Whole::less_than(const Whole& other, std::size_t limbs) const {
  for (std::size_t i = limbs; i-- > 0;)
    if (limb_[i] != other.limb_[i]) return limb_[i] < other.limb_[i];
  return false;
}

void Whole::take_away(const Whole& other, std::size_t limbs) {
  std::uint64_t borrow = 0;
  for (std::size_t i = 0; i < limbs; ++i) {
    const std::uint64_t take = other.limb_[i] + borrow;
    borrow = limb_[i] < take ? 1 : 0;
    limb_[i] = static_cast<std::uint32_t>(limb_[i] + (borrow << 32) - take);
  }
}

void Whole::halve(std::size_t limbs) {
  for (std::size_t i = 0; i < limbs; ++i) {
    const std::uint32_t above = i + 1 < limbs ? limb_[i + 1] : 0;
    limb_[i] = limb_[i] >> 1 | above << 31;
  }
}

// Bit by bit, as on paper, but only over the limbs that `a` has: quotient and rest never have more.
Divided divide(const Whole& a, const Whole& divisor) {
  CORE_CHECK(!divisor.is_zero());
  Divided d{Whole{}, a};
  const int longest = a.bit_length();
  int shift = longest - divisor.bit_length();
  if (shift < 0) return d;
  const auto limbs = static_cast<std::size_t>((longest + 31) / 32);
  for (Whole step = divisor.shifted_left(shift); shift >= 0; --shift, step.halve(limbs)) {
    if (d.rest.less_than(step, limbs)) continue;
    d.rest.take_away(step, limbs);
    d.quotient.limb_[static_cast<std::size_t>(shift / 32)] |= std::uint32_t{1} << (shift % 32);
  }
  return d;
}

Ratio operator*(const Ratio& a, const Ratio& b) { return {a.negative != b.negative, a.num * b.num, a.den * b.den}; }

Ratio operator+(const Ratio& a, const Ratio& b) {
  const Whole left = a.num * b.den;
  const Whole right = b.num * a.den;
  const Whole den = a.den * b.den;
  if (a.negative == b.negative) return {a.negative, left + right, den};
  if (left >= right) return {a.negative && left != right, left - right, den};
  return {b.negative, right - left, den};
}

double nearest_double(const Ratio& r) {
  CORE_CHECK(!r.overflowed());
  if (r.num.is_zero()) return 0.0;
  // Scale so that the whole quotient has 54 or 55 bits; what is left below it only tells a half from more than a half.
  const int scale = 54 - (r.num.bit_length() - r.den.bit_length());
  const Divided d =
      divide(scale > 0 ? r.num.shifted_left(scale) : r.num, scale < 0 ? r.den.shifted_left(-scale) : r.den);
  std::uint64_t q = d.quotient.low64();
  const int drop = static_cast<int>(std::bit_width(q)) - 53;
  const std::uint64_t half = std::uint64_t{1} << (drop - 1);
  const std::uint64_t below = q & ((half << 1) - 1);
  q >>= drop;
  const bool up = below > half || (below == half && (!d.rest.is_zero() || (q & 1) != 0));
  const double magnitude = std::ldexp(static_cast<double>(up ? q + 1 : q), drop - scale);
  return r.negative ? -magnitude : magnitude;
}

std::optional<std::int64_t> nearest_whole(const Ratio& r) {
  CORE_CHECK(!r.overflowed());
  const Divided d = divide(r.num, r.den);
  if (d.quotient.bit_length() > 62) return std::nullopt;
  auto q = static_cast<std::int64_t>(d.quotient.low64());
  const auto against_half = d.rest + d.rest <=> r.den;
  if (against_half > 0 || (against_half == 0 && q % 2 != 0)) ++q;
  return r.negative ? -q : q;
}

Ratio pi() {
  // 3.14159 26535 89793 23846 26433 83279 50288 41971 69399 37510 (any table of constants), in three pieces.
  const Whole e17 = power_of_ten(17);
  const Whole num = (Whole{31415926535897932} * e17 + Whole{38462643383279502}) * e17 + Whole{88419716939937510};
  return {false, num, power_of_ten(50)};
}

}  // namespace flatwise::exact
