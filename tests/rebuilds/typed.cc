#include "tests/rebuilds/typed.h"

#include <cmath>
#include <cstdio>
#include <numeric>

namespace rebuilds {
namespace {

// Exact by definition: the international inch, pound and standard gravity.
constexpr double kInch = 0.0254, kPoundForce = 0.45359237 * 9.80665, kFootPound = kPoundForce * 0.3048;

Typed made(double si, double unit, int decimals, const char* name) {
  char figures[40];
  std::snprintf(figures, sizeof figures, "%.*f", decimals, si / unit);
  double said = 0;
  std::sscanf(figures, "%lf", &said);
  return {said * unit, std::string{figures} + " " + name};
}

}  // namespace

Typed in_millimetres(double m, int decimals) { return made(m, 1e-3, decimals, "mm"); }
Typed in_micrometres(double m, int decimals) { return made(m, 1e-6, decimals, "µm"); }
Typed in_inches(double m, int decimals) { return made(m, kInch, decimals, "in"); }
Typed in_thou(double m, int decimals) { return made(m, kInch / 1000, decimals, "thou"); }
Typed in_feet(double m, int decimals) { return made(m, 12 * kInch, decimals, "ft"); }
Typed in_newton_metres(double nm, int decimals) { return made(nm, 1, decimals, "N·m"); }
Typed in_foot_pounds(double nm, int decimals) { return made(nm, kFootPound, decimals, "ft·lb"); }
Typed in_newtons(double n, int decimals) { return made(n, 1, decimals, "N"); }
Typed in_kilonewtons(double n, int decimals) { return made(n, 1e3, decimals, "kN"); }
Typed in_pounds_force(double n, int decimals) { return made(n, kPoundForce, decimals, "lbf"); }
Typed in_celsius(double c, int decimals) { return made(c, 1, decimals, "°C"); }
Typed in_kelvins(double k, int decimals) { return made(k, 1, decimals, "K"); }
Typed in_minutes(double s, int decimals) { return made(s, 60, decimals, "min"); }
Typed in_millimetres_a_second(double v, int decimals) { return made(v, 1e-3, decimals, "mm/s"); }
Typed in_inches_a_second(double v, int decimals) { return made(v, kInch, decimals, "in/s"); }
Typed in_percent(double share, int decimals) { return made(share, 0.01, decimals, "%"); }

Typed in_fahrenheit(double c, int decimals) {
  const Typed f = made(c * 1.8 + 32, 1, decimals, "°F");
  return {(f.si - 32) / 1.8, f.text};
}

Typed in_degrees(double degrees, bool word) {
  char figures[40];
  std::snprintf(figures, sizeof figures, "%g%s", degrees, word ? " deg" : "°");
  return {degrees * std::acos(-1.0) / 180, figures};
}

Typed in_inch_fractions(double m, int parts) {
  const long all = std::lround(m / kInch * parts);
  const long whole = all / parts, rest = all % parts, common = std::gcd(rest, static_cast<long>(parts));
  std::string text;
  if (whole > 0 || rest == 0) text = std::to_string(whole);
  if (rest > 0) text += (whole > 0 ? " " : "") + std::to_string(rest / common) + "/" + std::to_string(parts / common);
  return {static_cast<double>(all) / parts * kInch, text + " in"};
}

double to_step(double value, double step) { return step > 0 ? std::round(value / step) * step : value; }

std::string with_unit(const std::string& text, const std::string& unit) {
  return text.substr(0, text.rfind(' ')) + " " + unit;
}

}  // namespace rebuilds
