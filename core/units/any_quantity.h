// any_quantity.h: a quantity whose kind is known only at run time: what files, command lines and workings carry.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/angle.h"
#include "core/units/quantity.h"
#include "core/units/temperature.h"

namespace flatwise {

/// What is measured; finer than a dimension (a torque is not an energy, a temperature is not a temperature rise).
enum class Kind : std::uint8_t {
  length,
  area,
  angle,
  mass,
  time,
  force,
  torque,
  pressure,
  temperature,
  temperature_rise,
  angular_speed,
  frequency,
  speed,
  acceleration,
  inertia,
  unbalance,
  expansion,
  energy,
  density,
  stiffness,
  section_modulus,
  second_moment,
  viscosity,  ///< Kinematic.
  money,
  money_rate,
  ratio,
  count,
};
inline constexpr int kKindCount = static_cast<int>(Kind::count) + 1;

/// Value in the SI unit of its kind (m, m2, rad, kg, s, N, N m, Pa, K absolute, K, rad/s, Hz, m/s, m/s2, kg m2, kg m, 1/K, J,
/// kg/m3, N/m, m3, m4, m2/s, currency unit, currency unit a second, 1, 1). Not NaN by contract.
struct AnyQuantity {
  double si = 0.0;
  Kind kind = Kind::ratio;
  friend bool operator==(const AnyQuantity&, const AnyQuantity&) = default;
};

constexpr AnyQuantity any(Length v) { return {v.si(), Kind::length}; }
constexpr AnyQuantity any(Area v) { return {v.si(), Kind::area}; }
constexpr AnyQuantity any(Mass v) { return {v.si(), Kind::mass}; }
constexpr AnyQuantity any(Time v) { return {v.si(), Kind::time}; }
constexpr AnyQuantity any(Force v) { return {v.si(), Kind::force}; }
constexpr AnyQuantity any(Torque v) { return {v.si(), Kind::torque}; }
constexpr AnyQuantity any(Pressure v) { return {v.si(), Kind::pressure}; }
constexpr AnyQuantity any(Speed v) { return {v.si(), Kind::speed}; }
constexpr AnyQuantity any(Acceleration v) { return {v.si(), Kind::acceleration}; }
constexpr AnyQuantity any(Inertia v) { return {v.si(), Kind::inertia}; }
constexpr AnyQuantity any(Unbalance v) { return {v.si(), Kind::unbalance}; }
constexpr AnyQuantity any(Density v) { return {v.si(), Kind::density}; }
constexpr AnyQuantity any(Stiffness v) { return {v.si(), Kind::stiffness}; }
constexpr AnyQuantity any(SectionModulus v) { return {v.si(), Kind::section_modulus}; }
constexpr AnyQuantity any(SecondMoment v) { return {v.si(), Kind::second_moment}; }
constexpr AnyQuantity any(Viscosity v) { return {v.si(), Kind::viscosity}; }
constexpr AnyQuantity any(Angle v) { return {v.radians(), Kind::angle}; }
constexpr AnyQuantity any(AngularSpeed v) { return {v.radians_per_second(), Kind::angular_speed}; }
constexpr AnyQuantity any(Frequency v) { return {v.hertz(), Kind::frequency}; }
constexpr AnyQuantity any(Temperature v) { return {v.kelvin(), Kind::temperature}; }
constexpr AnyQuantity any(TemperatureRise v) { return {v.kelvins(), Kind::temperature_rise}; }
constexpr AnyQuantity any_ratio(double v) { return {v, Kind::ratio}; }
constexpr AnyQuantity any_count(std::int64_t v) { return {static_cast<double>(v), Kind::count}; }
constexpr AnyQuantity any_money(double units) { return {units, Kind::money}; }
constexpr AnyQuantity any_energy(double joules) { return {joules, Kind::energy}; }
constexpr AnyQuantity any_expansion(double per_kelvin) { return {per_kelvin, Kind::expansion}; }

/// What a person typed: the quantity, the text beside it, and for a length the exact integer nanometres.
struct Entered {
  AnyQuantity value;
  std::optional<std::int64_t> nm;  ///< Lengths only; rounded half to even where the text is finer than a nanometre.
  std::string typed;

  [[nodiscard]] Length length() const { return nm ? nanometres(*nm) : Length::from_si(value.si); }
};

/// Stable lower-case name of a kind ("length", "temperature_rise"): used in JSON, schema and error arguments.
[[nodiscard]] std::string_view kind_name(Kind kind);
/// Kind of the difference between two values of a kind: of temperatures a rise, else the kind itself. A doubt, a step of a scale
/// and a deviation are such differences.
[[nodiscard]] constexpr Kind difference_kind(Kind kind) {
  return kind == Kind::temperature ? Kind::temperature_rise : kind;
}
/// Suffix that JSON fields carry for this kind ("_m", "_rad", "_n_m"); count, ratio and money have "", "", "".
[[nodiscard]] std::string_view si_suffix(Kind kind);

}  // namespace flatwise
