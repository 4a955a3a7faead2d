// temperature.h: a temperature (a point on a scale) and a temperature rise (a distance) are different types:
// 36 °F read off a thermometer is 2.2 °C, a rise of 36 °F is one of 20 K.
#pragma once

#include <compare>

namespace flatwise {

/// Distance between two temperatures.
class TemperatureRise {
 public:
  constexpr TemperatureRise() = default;
  [[nodiscard]] constexpr double kelvins() const { return k_; }
  friend constexpr auto operator<=>(TemperatureRise, TemperatureRise) = default;
  friend constexpr TemperatureRise operator-(TemperatureRise a) { return TemperatureRise{-a.k_}; }
  friend constexpr TemperatureRise kelvins(double v);

 private:
  explicit constexpr TemperatureRise(double k) : k_{k} {}
  double k_ = 0.0;
};
constexpr TemperatureRise kelvins(double v) { return TemperatureRise{v}; }

/// A temperature, kept in kelvin. Default: 20 °C, the reference temperature of ISO 1.
class Temperature {
 public:
  constexpr Temperature() = default;
  [[nodiscard]] constexpr double celsius() const { return k_ - 273.15; }
  [[nodiscard]] constexpr double fahrenheit() const { return celsius() * 1.8 + 32.0; }
  [[nodiscard]] constexpr double kelvin() const { return k_; }
  friend constexpr auto operator<=>(Temperature, Temperature) = default;
  friend constexpr TemperatureRise operator-(Temperature a, Temperature b) { return kelvins(a.k_ - b.k_); }
  friend constexpr Temperature operator+(Temperature a, TemperatureRise b) { return Temperature{a.k_ + b.kelvins()}; }
  friend constexpr Temperature celsius(double v);
  friend constexpr Temperature kelvin(double v);

 private:
  explicit constexpr Temperature(double k) : k_{k} {}
  double k_ = 293.15;
};
constexpr Temperature celsius(double v) { return Temperature{v + 273.15}; }
constexpr Temperature kelvin(double v) { return Temperature{v}; }
inline constexpr Temperature kReferenceTemperature{};  ///< 20 °C, ISO 1.

}  // namespace flatwise
