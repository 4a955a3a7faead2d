// typed.h: a value as a mechanic would write it down, and what that text says in SI. Own arithmetic: nothing of the program.
#pragma once

#include <string>

namespace rebuilds {

/// The SI value is that of the text, after its rounding.
struct Typed {
  double si = 0;
  std::string text;
};

[[nodiscard]] Typed in_millimetres(double metres, int decimals);
[[nodiscard]] Typed in_micrometres(double metres, int decimals);
[[nodiscard]] Typed in_inches(double metres, int decimals);
[[nodiscard]] Typed in_thou(double metres, int decimals);
/// "56 23/64 in", to the nearest 1/parts.
[[nodiscard]] Typed in_inch_fractions(double metres, int parts);
[[nodiscard]] Typed in_feet(double metres, int decimals);
[[nodiscard]] Typed in_newton_metres(double newton_metres, int decimals);
[[nodiscard]] Typed in_foot_pounds(double newton_metres, int decimals);
[[nodiscard]] Typed in_newtons(double newtons, int decimals);
[[nodiscard]] Typed in_kilonewtons(double newtons, int decimals);
[[nodiscard]] Typed in_pounds_force(double newtons, int decimals);
/// Temperatures in degrees Celsius; `si` stays in degrees Celsius.
[[nodiscard]] Typed in_celsius(double celsius, int decimals);
[[nodiscard]] Typed in_fahrenheit(double celsius, int decimals);
[[nodiscard]] Typed in_kelvins(double kelvins, int decimals);
[[nodiscard]] Typed in_minutes(double seconds, int decimals);
[[nodiscard]] Typed in_millimetres_a_second(double metres_a_second, int decimals);
[[nodiscard]] Typed in_inches_a_second(double metres_a_second, int decimals);
[[nodiscard]] Typed in_percent(double share, int decimals);
[[nodiscard]] Typed in_degrees(double degrees, bool word);

/// The value to the nearest step.
[[nodiscard]] double to_step(double value, double step);
/// The same figures with another unit behind them: "900 ft·lb" to "900 N·m".
[[nodiscard]] std::string with_unit(const std::string& text, const std::string& unit);

}  // namespace rebuilds
