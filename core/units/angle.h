// angle.h: angles, turning speeds and frequencies as three types, so that rad/s, r/min and Hz cannot be mixed.
#pragma once

#include <compare>
#include <numbers>

namespace flatwise {

/// Plane angle. Made and read in radians, degrees or minutes of arc.
class Angle {
 public:
  constexpr Angle() = default;
  [[nodiscard]] constexpr double radians() const { return rad_; }
  [[nodiscard]] constexpr double degrees() const { return rad_ * 180.0 / std::numbers::pi; }
  [[nodiscard]] constexpr double arc_minutes() const { return degrees() * 60.0; }
  friend constexpr auto operator<=>(Angle, Angle) = default;
  friend constexpr Angle operator+(Angle a, Angle b) { return Angle{a.rad_ + b.rad_}; }
  friend constexpr Angle operator-(Angle a, Angle b) { return Angle{a.rad_ - b.rad_}; }
  friend constexpr Angle operator*(double k, Angle a) { return Angle{k * a.rad_}; }
  friend constexpr double operator/(Angle a, Angle b) { return a.rad_ / b.rad_; }
  friend constexpr Angle radians(double v);

 private:
  explicit constexpr Angle(double rad) : rad_{rad} {}
  double rad_ = 0.0;
};
constexpr Angle radians(double v) { return Angle{v}; }
constexpr Angle degrees(double v) { return radians(v * std::numbers::pi / 180.0); }
constexpr Angle arc_minutes(double v) { return degrees(v / 60.0); }

/// Turning speed. Made and read in radians a second or turns a minute.
class AngularSpeed {
 public:
  constexpr AngularSpeed() = default;
  [[nodiscard]] constexpr double radians_per_second() const { return rad_s_; }
  [[nodiscard]] constexpr double turns_per_minute() const { return rad_s_ * 30.0 / std::numbers::pi; }
  friend constexpr auto operator<=>(AngularSpeed, AngularSpeed) = default;
  friend constexpr AngularSpeed radians_per_second(double v);

 private:
  explicit constexpr AngularSpeed(double rad_s) : rad_s_{rad_s} {}
  double rad_s_ = 0.0;
};
constexpr AngularSpeed radians_per_second(double v) { return AngularSpeed{v}; }
constexpr AngularSpeed turns_per_minute(double v) { return radians_per_second(v * std::numbers::pi / 30.0); }

/// Cycles a second; not an angular speed (there is no conversion by accident).
class Frequency {
 public:
  constexpr Frequency() = default;
  [[nodiscard]] constexpr double hertz() const { return hz_; }
  friend constexpr auto operator<=>(Frequency, Frequency) = default;
  friend constexpr Frequency hertz(double v);

 private:
  explicit constexpr Frequency(double hz) : hz_{hz} {}
  double hz_ = 0.0;
};
constexpr Frequency hertz(double v) { return Frequency{v}; }

}  // namespace flatwise
