#include "core/units/unit_table.h"

#include <array>

#include "core/units/typed.h"

namespace flatwise {
namespace {

// Exact by definition: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound, 1959); standard gravity
// 9.80665 m/s2 (3rd CGPM, 1901); as listed in NIST SP 811 (2008), appendix B. All other factors follow from these.
constexpr std::uint64_t kE3 = 1000, kE4 = 10'000, kE5 = 100'000, kE6 = 1'000'000, kE8 = 100'000'000,
                        kE9 = 1'000'000'000;
constexpr std::uint64_t kE12 = 1'000'000'000'000, kE13 = 10 * kE12, kE16 = kE8 * kE8, kE17 = 10 * kE16;
constexpr std::uint64_t kInch = 254;                // / 1e4 m
constexpr std::uint64_t kFoot = 3048;               // / 1e4 m
constexpr std::uint64_t kPound = 45'359'237;        // / 1e8 kg
constexpr std::uint64_t kLbf = 44'482'216'152'605;  // / 1e13 N: 0.45359237 * 9.80665

// Commonest first within each kind: this is also the order of unit_spellings().
constexpr std::array kUnits{
    Unit{Kind::length, "mm", "mm|MM", 1, kE3},
    Unit{Kind::length, "in", "in|IN|In|inch|inches|\"", kInch, kE4},
    Unit{Kind::length, "µm", "um", 1, kE6},
    Unit{Kind::length, "thou", "thou|mil|mils", kInch, 10'000'000},
    Unit{Kind::length, "m", "m"},
    Unit{Kind::length, "ft", "ft|FT|foot|feet|'", kFoot, kE4},
    Unit{Kind::length, "cm", "cm", 1, 100},
    Unit{Kind::length, "nm", "nm", 1, kE9},
    Unit{Kind::length, "µin", "uin", kInch, 10'000'000'000},
    Unit{Kind::area, "mm²", "mm2|sq*mm", 1, kE6},
    Unit{Kind::area, "in²", "in2|sq*in", kInch* kInch, kE8},
    Unit{Kind::area, "cm²", "cm2|sq*cm", 1, kE4},
    Unit{Kind::area, "m²", "m2|sq*m"},
    Unit{Kind::area, "ft²", "ft2|sq*ft", kFoot* kFoot, kE8},
    Unit{Kind::angle, "°", "\x01|deg|degs|degree|degrees", 1, 180, true},
    Unit{Kind::angle, "′", "'|arcmin|arcmins", 1, 10'800, true},
    Unit{Kind::angle, "″", "\"|arcsec|arcsecs", 1, 648'000, true},
    Unit{Kind::angle, "rad", "rad"},
    Unit{Kind::angle, "mrad", "mrad", 1, kE3},
    Unit{Kind::mass, "kg", "kg|KG"},
    Unit{Kind::mass, "lb", "lb|LB|lbs|lbm", kPound, kE8},
    Unit{Kind::mass, "g", "g", 1, kE3},
    Unit{Kind::mass, "oz", "oz", kPound, 16 * kE8},
    Unit{Kind::mass, "t", "t", kE3},
    Unit{Kind::time, "min", "min|mins|minute|minutes", 60},
    Unit{Kind::time, "h", "h|hr|hrs|hour|hours", 3600},
    Unit{Kind::time, "s", "s|sec|secs|second|seconds"},
    Unit{Kind::time, "ms", "ms", 1, kE3},
    Unit{Kind::time, "d", "d|day|days", 86'400},
    Unit{Kind::force, "N", "N"},
    Unit{Kind::force, "lbf", "lbf|LBF", kLbf, kE13},
    Unit{Kind::force, "kN", "kN", kE3},
    Unit{Kind::force, "kgf", "kgf", 980'665, kE5},
    Unit{Kind::force, "US tonf", "US*tonf|US*ton*force", 2000 * kLbf, kE13},
    Unit{Kind::force, "UK tonf", "UK*tonf|UK*ton*force", 2240 * kLbf, kE13},
    Unit{Kind::torque, "N·m", "N*m|Nm"},
    Unit{Kind::torque, "ft·lb", "ft*lb|lb*ft|ft*lbf|lbf*ft|ftlb|lbft|ftlbf|lbfft|ft*lbs|lbs*ft", kLbf* kFoot, kE17},
    Unit{Kind::torque, "in·lb", "in*lb|lb*in|in*lbf|lbf*in|inlb|lbin|inlbf|lbfin|in*lbs|lbs*in", kLbf* kInch, kE17},
    Unit{Kind::torque, "kN·m", "kN*m|kNm", kE3},
    Unit{Kind::torque, "N·mm", "N*mm|Nmm", 1, kE3},
    Unit{Kind::torque, "kgf·m", "kgf*m|m*kgf|kgfm", 980'665, kE5},
    Unit{Kind::pressure, "MPa", "MPa|N/mm2", kE6},
    Unit{Kind::pressure, "psi", "psi|PSI|lbf/in2|lb/in2", kLbf, 64'516 * kE5},
    Unit{Kind::pressure, "bar", "bar", kE5},
    Unit{Kind::pressure, "kPa", "kPa", kE3},
    Unit{Kind::pressure, "GPa", "GPa|kN/mm2", kE9},
    Unit{Kind::pressure, "Pa", "Pa|N/m2"},
    Unit{Kind::pressure, "ksi", "ksi", kLbf, 64'516 * 100},
    Unit{Kind::temperature, "°C",
         "\x01"
         "C|degC|deg*C|C",
         1, 1, false, 27'315},
    Unit{Kind::temperature, "°F",
         "\x01"
         "F|degF|deg*F|F",
         5, 9, false, 45'967},
    Unit{Kind::temperature, "K", "K"},
    Unit{Kind::temperature_rise, "K", "K"},
    Unit{Kind::temperature_rise, "°F",
         "\x01"
         "F|degF|deg*F|F",
         5, 9},
    Unit{Kind::temperature_rise, "°C",
         "\x01"
         "C|degC|deg*C|C"},
    Unit{Kind::angular_speed, "r/min", "r/min|/min|1/min|min-1|rpm|RPM|rev/min", 1, 30, true},
    Unit{Kind::angular_speed, "rad/s", "rad/s"},
    Unit{Kind::angular_speed, "r/s", "r/s|rps|rev/s", 2, 1, true},
    Unit{Kind::angular_speed, "°/s", "\x01/s|deg/s", 1, 180, true},
    Unit{Kind::frequency, "Hz", "Hz|/s|1/s|s-1"},
    Unit{Kind::frequency, "kHz", "kHz", kE3},
    Unit{Kind::speed, "m/s", "m/s"},
    Unit{Kind::speed, "km/h", "km/h|kmh|kph", kE3, 3600},
    Unit{Kind::speed, "mph", "mph|mi/h", 1'609'344, 3'600'000},
    Unit{Kind::speed, "ft/s", "ft/s", kFoot, kE4},
    Unit{Kind::speed, "mm/s", "mm/s", 1, kE3},
    Unit{Kind::speed, "in/s", "in/s", kInch, kE4},
    Unit{Kind::speed, "m/min", "m/min", 1, 60},
    Unit{Kind::speed, "ft/min", "ft/min", kFoot, 60 * kE4},
    Unit{Kind::acceleration, "m/s²", "m/s2"},
    Unit{Kind::acceleration, "ft/s²", "ft/s2", kFoot, kE4},
    Unit{Kind::acceleration, "g", "g|gn", 980'665, kE5},
    Unit{Kind::inertia, "kg·m²", "kg*m2|kgm2"},
    Unit{Kind::inertia, "lb·ft²", "lb*ft2|lbft2", kPound* kFoot* kFoot, kE16},
    Unit{Kind::inertia, "lb·in²", "lb*in2|lbin2", kPound* kInch* kInch, kE16},
    Unit{Kind::inertia, "kg·cm²", "kg*cm2", 1, kE4},
    Unit{Kind::inertia, "kg·mm²", "kg*mm2", 1, kE6},
    Unit{Kind::unbalance, "g·mm", "g*mm|gmm", 1, kE6},
    Unit{Kind::unbalance, "kg·m", "kg*m|kgm"},
    Unit{Kind::unbalance, "oz·in", "oz*in|in*oz", kPound* kInch, 16 * kE12},
    Unit{Kind::unbalance, "kg·mm", "kg*mm", 1, kE3},
    Unit{Kind::unbalance, "lb·in", "lb*in", kPound* kInch, kE12},
    Unit{Kind::expansion, "µm/(m·K)",
         "um/(m*K)|um/m/K|um/m*K|um/m/\x01"
         "C|um/(m*\x01"
         "C)|ppm/K",
         1, kE6},
    Unit{Kind::expansion, "µin/(in·°F)",
         "uin/(in*\x01"
         "F)|uin/in/\x01"
         "F|uin/in*\x01"
         "F|ppm/\x01"
         "F",
         9, 5 * kE6},
    Unit{Kind::expansion, "/K",
         "/K|1/K|K-1|/\x01"
         "C|1/\x01"
         "C"},
    Unit{Kind::expansion, "/°F",
         "/\x01"
         "F|1/\x01"
         "F|/degF|1/degF",
         9, 5},
    Unit{Kind::energy, "J", "J"},
    Unit{Kind::energy, "ft·lbf", "ft*lbf|lbf*ft|ftlbf", kLbf* kFoot, kE17},
    Unit{Kind::energy, "in·lbf", "in*lbf|lbf*in|inlbf", kLbf* kInch, kE17},
    Unit{Kind::energy, "kJ", "kJ", kE3},
    Unit{Kind::density, "kg/m³", "kg/m3"},
    Unit{Kind::density, "lb/in³", "lb/in3", kPound* kE4, kInch* kInch* kInch},
    Unit{Kind::density, "g/cm³", "g/cm3", kE3},
    Unit{Kind::density, "lb/ft³", "lb/ft3", kPound* kE4, kFoot* kFoot* kFoot},
    Unit{Kind::stiffness, "N/mm", "N/mm", kE3},
    Unit{Kind::stiffness, "lbf/in", "lbf/in|lb/in", kLbf, kInch* kE9},
    Unit{Kind::stiffness, "N/m", "N/m"},
    Unit{Kind::stiffness, "N/µm", "N/um|kN/mm", kE6},
    Unit{Kind::section_modulus, "mm³", "mm3", 1, kE9},
    Unit{Kind::section_modulus, "in³", "in3", kInch* kInch* kInch, kE12},
    Unit{Kind::section_modulus, "cm³", "cm3", 1, kE6},
    Unit{Kind::section_modulus, "m³", "m3"},
    Unit{Kind::second_moment, "mm⁴", "mm4", 1, kE12},
    Unit{Kind::second_moment, "in⁴", "in4", kInch* kInch* kInch* kInch, kE16},
    Unit{Kind::second_moment, "cm⁴", "cm4", 1, kE8},
    Unit{Kind::second_moment, "m⁴", "m4"},
    Unit{Kind::viscosity, "mm²/s", "mm2/s|cSt", 1, kE6},
    Unit{Kind::viscosity, "m²/s", "m2/s"},
    Unit{Kind::ratio, "%", "%", 1, 100},
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_joint(char c) { return c == ' ' || c == '-' || c == '.' || c == '*'; }

bool spelled(const Unit& unit, std::string_view spelling) {
  std::string_view rest = unit.spellings;
  while (!rest.empty()) {
    const std::size_t bar = rest.find('|');
    if (rest.substr(0, bar) == spelling) return true;
    if (bar == std::string_view::npos) break;
    rest.remove_prefix(bar + 1);
  }
  return false;
}

/// What a run of separators between `before` and `after` stands for.
std::string_view joined(std::string_view run, char before, char after) {
  const bool hard_left = before == '/' || before == '(' || before == kDegree || before == 0;
  const bool hard_right = after == '/' || after == ')' || after == 0;
  const bool blank = run.find_first_not_of(' ') == run.npos || (after == 0 && before != 0 && run == ".");
  if (hard_left || hard_right) return blank ? "" : "*";  // A stray dot or hyphen must stay unreadable.
  if (is_digit(after)) return run == "-" ? "-" : "*";
  return "*";
}

}  // namespace

exact::Ratio Unit::factor() const {
  const exact::Ratio plain{false, exact::Whole{num}, exact::Whole{den}};
  return turns ? plain * exact::pi() : plain;
}

double Unit::factor_as_double() const { return exact::nearest_double(factor()); }

std::span<const Unit> all_units() { return kUnits; }

const Unit* find_unit(Kind kind, std::string_view spelling) {
  if (spelling.empty()) return nullptr;
  for (const Unit& unit : kUnits)
    if (unit.kind == kind && spelled(unit, spelling)) return &unit;
  return nullptr;
}

const Unit* find_unit_elsewhere(Kind not_this, std::string_view spelling) {
  if (spelling.empty()) return nullptr;
  for (const Unit& unit : kUnits)
    if (unit.kind != not_this && spelled(unit, spelling)) return &unit;
  return nullptr;
}

std::string normal_unit(std::string_view text) {
  std::string normal;
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] == '^') {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < text.size() && is_joint(text[end])) ++end;
    if (end == i) {
      normal += text[i++];
      continue;
    }
    const char before = normal.empty() ? '\0' : normal.back();
    const char after = end < text.size() ? text[end] : '\0';
    normal += joined(text.substr(i, end - i), before, after);
    i = end;
  }
  return normal;
}

}  // namespace flatwise
