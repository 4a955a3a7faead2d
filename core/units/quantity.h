// quantity.h: a double that remembers its SI dimension at compile time, and nothing else.
//
//   Length bore = millimetres(100);
//   Pressure p = newtons(2e5) / (bore * millimetres(21));
//
// Angles, angular speeds, frequencies and temperatures are classes of their own (angle.h, temperature.h). Torque and
// energy share a dimension: a known gap, see docs/decisions/0002-quantities.md. Text to quantity and back: parse.h,
// format.h. A quantity whose kind is only known at run time: any_quantity.h.
#pragma once

#include <compare>
#include <cstdint>

namespace flatwise {

template <int L, int M, int T, int Th = 0>
class Quantity {
 public:
  constexpr Quantity() = default;
  static constexpr Quantity from_si(double value) { return Quantity{value}; }
  [[nodiscard]] constexpr double si() const { return si_; }

  friend constexpr auto operator<=>(Quantity, Quantity) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity{a.si_ + b.si_}; }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity{a.si_ - b.si_}; }
  friend constexpr Quantity operator-(Quantity a) { return Quantity{-a.si_}; }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity{k * a.si_}; }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity{a.si_ * k}; }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity{a.si_ / k}; }

 private:
  explicit constexpr Quantity(double value) : si_{value} {}
  double si_ = 0.0;
};

template <int A, int B, int C, int D, int E, int F, int G, int H>
constexpr auto operator*(Quantity<A, B, C, D> x, Quantity<E, F, G, H> y) {
  if constexpr (A + E == 0 && B + F == 0 && C + G == 0 && D + H == 0)
    return x.si() * y.si();
  else
    return Quantity<A + E, B + F, C + G, D + H>::from_si(x.si() * y.si());
}
template <int A, int B, int C, int D, int E, int F, int G, int H>
constexpr auto operator/(Quantity<A, B, C, D> x, Quantity<E, F, G, H> y) {
  if constexpr (A == E && B == F && C == G && D == H)
    return x.si() / y.si();
  else
    return Quantity<A - E, B - F, C - G, D - H>::from_si(x.si() / y.si());
}

using Length = Quantity<1, 0, 0>;
using Area = Quantity<2, 0, 0>;
using Mass = Quantity<0, 1, 0>;
using Time = Quantity<0, 0, 1>;
using Speed = Quantity<1, 0, -1>;
using Acceleration = Quantity<1, 0, -2>;
using Force = Quantity<1, 1, -2>;
using Torque = Quantity<2, 1, -2>;  ///< Also a couple, and energy: see the decision record.
using Pressure = Quantity<-1, 1, -2>;
using Inertia = Quantity<2, 1, 0>;    ///< Moment of inertia, kg m2.
using Unbalance = Quantity<1, 1, 0>;  ///< Mass times radius, kg m.
using Density = Quantity<-3, 1, 0>;
using Stiffness = Quantity<0, 1, -2>;  ///< Force per length.
using SectionModulus = Quantity<3, 0, 0>;
using SecondMoment = Quantity<4, 0, 0>;  ///< Of an area: section property, m4.
using Viscosity = Quantity<2, 0, -1>;    ///< Kinematic.

constexpr Length metres(double v) { return Length::from_si(v); }
constexpr Length millimetres(double v) { return Length::from_si(v * 1e-3); }
constexpr Length micrometres(double v) { return Length::from_si(v * 1e-6); }
constexpr Length nanometres(std::int64_t v) { return Length::from_si(static_cast<double>(v) / 1e9); }
constexpr Length inches(double v) { return Length::from_si(v * 0.0254); }
constexpr Length thou(double v) { return Length::from_si(v * 0.0254e-3); }
constexpr Area square_millimetres(double v) { return Area::from_si(v * 1e-6); }
constexpr Mass kilograms(double v) { return Mass::from_si(v); }
constexpr Time seconds(double v) { return Time::from_si(v); }
constexpr Time minutes(double v) { return Time::from_si(v * 60.0); }
constexpr Force newtons(double v) { return Force::from_si(v); }
constexpr Force kilonewtons(double v) { return Force::from_si(v * 1e3); }
constexpr Force pounds_force(double v) { return Force::from_si(v * 4.4482216152605); }
constexpr Torque newton_metres(double v) { return Torque::from_si(v); }
constexpr Torque foot_pounds(double v) { return Torque::from_si(v * 1.3558179483314004); }
constexpr Pressure pascals(double v) { return Pressure::from_si(v); }
constexpr Pressure megapascals(double v) { return Pressure::from_si(v * 1e6); }
constexpr Pressure gigapascals(double v) { return Pressure::from_si(v * 1e9); }
constexpr Inertia kilogram_square_metres(double v) { return Inertia::from_si(v); }

}  // namespace flatwise
