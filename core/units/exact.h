// exact.h: whole numbers of up to 640 bits and signed ratios of them: just enough to turn typed text into SI with one
// rounding at the very end. Internal to core/units.
#pragma once

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>

namespace flatwise::exact {

struct Divided;

/// Unsigned whole number, 640 bits. An operation that does not fit sets overflowed(), which then sticks.
class Whole {
 public:
  static constexpr int kLimbs = 20;
  constexpr Whole() = default;
  constexpr Whole(std::uint64_t v)  // NOLINT(google-explicit-constructor): plain numbers are whole numbers
      : limb_{static_cast<std::uint32_t>(v), static_cast<std::uint32_t>(v >> 32)} {}

  [[nodiscard]] bool is_zero() const;
  [[nodiscard]] bool overflowed() const { return overflow_; }
  [[nodiscard]] int bit_length() const;
  [[nodiscard]] std::uint64_t low64() const { return limb_[0] | static_cast<std::uint64_t>(limb_[1]) << 32; }

  friend Whole operator+(const Whole& a, const Whole& b);
  friend Whole operator-(const Whole& a, const Whole& b);  ///< Needs a >= b.
  friend Whole operator*(const Whole& a, const Whole& b);
  friend std::strong_ordering operator<=>(const Whole& a, const Whole& b);
  friend bool operator==(const Whole& a, const Whole& b) { return (a <=> b) == 0; }
  [[nodiscard]] Whole shifted_left(int bits) const;
  friend Divided divide(const Whole& a, const Whole& divisor);

 private:
  // On the lowest limbs alone: what a division does once a bit.
  [[nodiscard]] bool less_than(const Whole& other, std::size_t limbs) const;
  void take_away(const Whole& other, std::size_t limbs);
  void halve(std::size_t limbs);

  std::array<std::uint32_t, kLimbs> limb_{};  ///< Least first.
  bool overflow_ = false;
};

/// 10 to a power from 0 on.
[[nodiscard]] Whole power_of_ten(int exponent);

struct Divided {
  Whole quotient, rest;
};
/// Needs divisor > 0.
[[nodiscard]] Divided divide(const Whole& a, const Whole& divisor);

/// Sign and magnitude as a ratio; den > 0. Never reduced: the widths above hold every typed number.
struct Ratio {
  bool negative = false;
  Whole num;
  Whole den = 1;

  [[nodiscard]] bool overflowed() const { return num.overflowed() || den.overflowed(); }
};
[[nodiscard]] Ratio operator*(const Ratio& a, const Ratio& b);
[[nodiscard]] Ratio operator+(const Ratio& a, const Ratio& b);

/// The nearest double, halves to even. Magnitudes must lie within the normal doubles (parse.cc sees to it).
[[nodiscard]] double nearest_double(const Ratio& r);
/// The nearest whole number, halves to even; none where it does not fit 64 bits.
[[nodiscard]] std::optional<std::int64_t> nearest_whole(const Ratio& r);

/// pi to 50 decimals: a typed number of 15 digits times this is rounded as true pi would be.
[[nodiscard]] Ratio pi();

}  // namespace flatwise::exact
