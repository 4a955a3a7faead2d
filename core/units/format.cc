#include "core/units/format.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string_view>

#include "core/units/problem.h"
#include "core/units/rounding.h"
#include "core/units/typed.h"
#include "core/units/unit_table.h"

namespace flatwise {
namespace {

constexpr std::string_view kNoBreakSpace = "\xC2\xA0";
constexpr std::string_view kMinus = "\xE2\x88\x92";
constexpr std::string_view kPlusMinus = "\xC2\xB1";

/// The unit and digits that a kind is worth from a size on.
struct Style {
  Kind kind;
  double from_si;  ///< Used for magnitudes from here on, until the next row of the kind.
  std::string_view metric, inch;
  int metric_decimals, inch_decimals;  ///< Most decimals shown; closing noughts are dropped.
  int figures = 0;                     ///< Not 0: significant figures instead of decimals.
  bool rounds = false;                 ///< Figures before the point are rounded too: no gauge reads so far.
};

// Rows of one kind stand together, the smallest first. 60 times 600 s is ten hours: times in minutes under 10 h.
constexpr std::array kStyles{
    Style{Kind::length, 0.0, "µm", "thou", 1, 2},
    Style{Kind::length, 0.5e-3, "mm", "in", 3, 4},
    // From 500 mm, past the bores that ISO 286 limits: what a tape or a bar reads.
    Style{Kind::length, 0.5, "mm", "in", 2, 3},
    Style{Kind::area, 0.0, "mm²", "in²", 0, 0, 4},
    Style{Kind::angle, 0.0, "′", "′", 1, 1},
    Style{Kind::angle, 0.017453, "°", "°", 1, 1},
    Style{Kind::mass, 0.0, "g", "oz", 0, 0, 4},
    Style{Kind::mass, 1.0, "kg", "lb", 0, 0, 4},
    Style{Kind::time, 0.0, "s", "s", 0, 0, 4},
    Style{Kind::time, 60.0, "min", "min", 1, 1},
    Style{Kind::time, 36'000.0, "h", "h", 1, 1},
    Style{Kind::time, 3.6e8, "h", "h", 0, 0, 4, true},  // 100 000 h: past every hour meter, a life that was worked out.
    Style{Kind::force, 0.0, "N", "lbf", 0, 0, 4},
    Style{Kind::force, 1e4, "kN", "lbf", 0, 0, 4, true},
    Style{Kind::torque, 0.0, "N·m", "in·lb", 0, 0, 4},
    Style{Kind::torque, 13.558, "N·m", "ft·lb", 0, 0, 4},
    Style{Kind::pressure, 0.0, "kPa", "psi", 0, 0, 4},
    Style{Kind::pressure, 1e5, "MPa", "psi", 0, 0, 4},
    Style{Kind::pressure, 1e8, "MPa", "ksi", 0, 0, 4, true},
    Style{Kind::pressure, 1e9, "GPa", "ksi", 0, 0, 4, true},
    Style{Kind::temperature, 0.0, "°C", "°F", 1, 1},
    Style{Kind::temperature_rise, 0.0, "K", "°F", 1, 1},
    Style{Kind::angular_speed, 0.0, "r/min", "r/min", 0, 0, 4},
    Style{Kind::frequency, 0.0, "Hz", "Hz", 0, 0, 4},
    Style{Kind::speed, 0.0, "mm/s", "in/s", 0, 0, 3},
    Style{Kind::speed, 0.25, "m/s", "ft/s", 0, 0, 4},
    Style{Kind::acceleration, 0.0, "m/s²", "ft/s²", 0, 0, 4},
    Style{Kind::inertia, 0.0, "kg·m²", "lb·ft²", 0, 0, 4},
    Style{Kind::unbalance, 0.0, "g·mm", "oz·in", 0, 0, 4},
    Style{Kind::unbalance, 0.1, "kg·m", "lb·in", 0, 0, 4},
    Style{Kind::expansion, 0.0, "µm/(m·K)", "µin/(in·°F)", 0, 0, 4},
    Style{Kind::energy, 0.0, "J", "ft·lbf", 0, 0, 4},
    Style{Kind::density, 0.0, "kg/m³", "lb/in³", 0, 0, 4},
    Style{Kind::stiffness, 0.0, "N/mm", "lbf/in", 0, 0, 4},
    Style{Kind::stiffness, 1e8, "N/mm", "lbf/in", 0, 0, 4, true},
    Style{Kind::section_modulus, 0.0, "mm³", "in³", 0, 0, 4, true},
    Style{Kind::second_moment, 0.0, "mm⁴", "in⁴", 0, 0, 4, true},
    Style{Kind::viscosity, 0.0, "mm²/s", "mm²/s", 0, 0, 4},
    Style{Kind::money, 0.0, "", "", 2, 2},
    Style{Kind::money_rate, 0.0, "", "", 2, 2},
    Style{Kind::ratio, 0.0, "", "", 0, 0, 4},
    Style{Kind::count, 0.0, "", "", 0, 0},
};

const Style& style_of(AnyQuantity q) {
  const Style* best = nullptr;
  for (const Style& style : kStyles)
    if (style.kind == q.kind && (best == nullptr || std::fabs(q.si) >= style.from_si)) best = &style;
  // A bare nought is shown in the everyday unit, not in the smallest.
  const bool has_small =
      q.kind == Kind::length || q.kind == Kind::angle || q.kind == Kind::mass || q.kind == Kind::speed;
  if (q.si == 0.0 && has_small) best += 1;
  return *best;
}

/// How one quantity is going to be written.
struct Layout {
  const Unit* unit = nullptr;  ///< None for money, ratio and count.
  std::string name;            ///< Printed after the number.
  double value = 0.0;          ///< In the unit.
  int decimals = 0;            ///< May be negative: rounded to tens, hundreds, ...
  bool keep_noughts = false;
};

double to_unit(const Unit& unit, double si) {
  return si / unit.factor_as_double() - static_cast<double>(unit.zero_cents) / 100.0;
}

/// Power of ten of the first figure. By text, since two C libraries need not agree on the last bit of a logarithm, and
/// page and shop must show the same digits.
int first_figure_of(double magnitude) {
  std::array<char, 32> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), magnitude, std::chars_format::scientific);
  const std::string_view text{buffer.data(), end.ptr};
  const std::size_t sign = text.find('e') + 1;
  int power = 0;
  for (const char c : text.substr(sign + 1)) power = power * 10 + (c - '0');
  return text[sign] == '-' ? -power : power;
}

/// Exact for the powers that matter here (to 10^22); the same bits everywhere for all.
double ten_to(int power) {
  double result = 1.0;
  for (int i = 0; i < power; ++i) result *= 10.0;
  return result;
}

/// Negative only where it `rounds`: tens, hundreds, ...
int decimals_for_figures(double value, int figures, bool rounds = false) {
  if (value == 0.0) return 0;
  const int magnitude = std::isinf(value) ? 0 : first_figure_of(std::fabs(value));
  return std::clamp(figures - 1 - magnitude, rounds ? -14 : 0, 17);
}

Layout layout_of(AnyQuantity q, const Shown& shown) {
  const Style& style = style_of(q);
  const bool metric = shown.system == UnitSystem::metric;
  const std::string_view wanted = metric ? style.metric : style.inch;
  Layout out;
  if (shown.unit) {
    const std::optional<Folded> folded = fold_typed(*shown.unit);
    CORE_CHECK(folded);
    out.unit = find_unit(q.kind, normal_unit(folded->text));
    CORE_CHECK(out.unit != nullptr);
  } else {
    for (const Unit& unit : all_units())
      if (unit.kind == q.kind && unit.shown == wanted) out.unit = &unit;
  }
  out.value = out.unit != nullptr ? to_unit(*out.unit, q.si) : q.si;
  if (out.unit != nullptr) out.name = out.unit->shown;
  if (q.kind == Kind::money) out.name = shown.currency;
  if (q.kind == Kind::money_rate) {
    out.name = shown.currency + "/h";
    out.value = q.si * 3600.0;
  }
  const bool own_unit = !shown.unit || out.name == wanted;
  out.keep_noughts = shown.decimals || q.kind == Kind::money || q.kind == Kind::money_rate;
  if (shown.decimals)
    out.decimals = *shown.decimals;
  else if (style.figures == 0 && own_unit)
    out.decimals = metric ? style.metric_decimals : style.inch_decimals;
  else
    out.decimals = decimals_for_figures(out.value, style.figures == 0 ? 6 : style.figures, style.rounds && own_unit);
  return out;
}

std::string without_closing_noughts(std::string digits) {
  if (digits.find('.') == std::string::npos) return digits;
  while (digits.back() == '0') digits.pop_back();
  if (digits.back() == '.') digits.pop_back();
  return digits;
}

/// Plain digits of a magnitude; very great and very small ones with a power of ten, which parse_quantity reads too.
std::string digits_of(double magnitude, int decimals, bool keep_noughts) {
  if (std::isinf(magnitude)) return "∞";
  std::array<char, 64> buffer{};
  const bool plain = magnitude < 1e15 && (keep_noughts || magnitude == 0.0 || magnitude >= 1e-5);
  if (plain && decimals < 0) {
    const double step = ten_to(-decimals);
    magnitude = std::nearbyint(magnitude / step) * step;
  }
  const auto end =
      plain ? std::to_chars(buffer.data(), buffer.data() + buffer.size(), magnitude, std::chars_format::fixed,
                            std::clamp(decimals, 0, 17))
            : std::to_chars(buffer.data(), buffer.data() + buffer.size(), magnitude, std::chars_format::scientific, 3);
  CORE_CHECK(end.ec == std::errc{});
  std::string digits{buffer.data(), end.ptr};
  return keep_noughts || !plain ? digits : without_closing_noughts(std::move(digits));
}

bool is_nought(std::string_view digits) { return digits.find_first_of("123456789\xE2") == std::string_view::npos; }

std::string signed_digits(double value, int decimals, bool keep_noughts) {
  std::string digits = digits_of(std::fabs(value), decimals, keep_noughts);
  if (std::size_t e = digits.find("e-"); e != std::string::npos) digits.replace(e + 1, 1, kMinus);
  return value < 0.0 && !is_nought(digits) ? std::string{kMinus} + digits : digits;
}

/// Degree, minute and second of arc stand at the number; all other units after a no-break space.
std::string with_unit(std::string number, std::string_view unit) {
  const bool close = unit == "°" || unit == "′" || unit == "″";
  if (!unit.empty() && !close) number += kNoBreakSpace;
  return number += unit;
}

/// `v` in steps of the place, rounded up.
double steps_up(double v, int place) {
  // The share taken off keeps an exact 0.0040 that arrives as 0.00400000000001 from becoming 0.0041.
  return std::ceil((place < 0 ? v * ten_to(-place) : v / ten_to(place)) * (1.0 - 1e-9));
}

double rounded_up(double v, int place) {
  const double steps = steps_up(v, place);
  return place < 0 ? steps / ten_to(-place) : steps * ten_to(place);
}

/// Two significant figures, rounded up: the power of ten of the last figure kept.
int last_figure_of(double uncertainty) {
  const int second = first_figure_of(uncertainty) - 1;
  return steps_up(uncertainty, second) >= 100.0 ? second + 1
                                                : second;  // 0.0996 becomes 0.10, its last figure one left.
}

}  // namespace

double to_two_figures(double value) {
  if (!(std::fabs(value) > 0.0) || std::isinf(value)) return value;
  const int place = first_figure_of(std::fabs(value)) - 1;
  return place < 0 ? std::round(value * ten_to(-place)) / ten_to(-place)
                   : std::round(value / ten_to(place)) * ten_to(place);
}

UnitSystem other(UnitSystem system) { return system == UnitSystem::metric ? UnitSystem::inch : UnitSystem::metric; }

std::string format_quantity(AnyQuantity value, const Shown& shown) {
  CORE_CHECK(!std::isnan(value.si));
  const Layout layout = layout_of(value, shown);
  return with_unit(signed_digits(layout.value, layout.decimals, layout.keep_noughts), layout.name);
}

std::string format_with_uncertainty(AnyQuantity value, double expanded_si, const Shown& shown) {
  CORE_CHECK(std::isfinite(value.si) && std::isfinite(expanded_si) && expanded_si >= 0.0);
  const Layout layout = layout_of(value, shown);
  double u = layout.unit != nullptr ? expanded_si / layout.unit->factor_as_double() : expanded_si;
  if (value.kind == Kind::money_rate) u = expanded_si * 3600.0;
  int decimals = layout.decimals;
  if (!shown.decimals && u > 0.0) decimals = -last_figure_of(u);
  u = u > 0.0 ? rounded_up(u, -decimals) : 0.0;
  const bool close = layout.name == "°" || layout.name == "′" || layout.name == "″";
  std::string number = signed_digits(layout.value, decimals, true);
  if (close) number += layout.name;
  number += kNoBreakSpace;
  number += kPlusMinus;
  number += kNoBreakSpace;
  number += digits_of(u, decimals, true);
  return with_unit(std::move(number), layout.name);
}

std::string format_exact(double value) {
  CORE_CHECK(std::isfinite(value));
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  CORE_CHECK(end.ec == std::errc{});
  return {buffer.data(), end.ptr};
}

std::string format_exact_length(std::int64_t nm, UnitSystem system) {
  const std::uint64_t size = nm < 0 ? ~static_cast<std::uint64_t>(nm) + 1 : static_cast<std::uint64_t>(nm);
  // mm: nm/1e6. An inch is 127 * 200000 nm: where 127 divides, nm/25.4e6 ends within six decimals; else eight, halves
  // to even: near enough to read back as the same nanometre.
  std::uint64_t whole = size / 1'000'000, part = size % 1'000'000, unit = 1'000'000;
  if (system == UnitSystem::inch) {
    whole = size / 25'400'000;
    const std::uint64_t rest = size % 25'400'000 * 100'000'000;
    unit = 100'000'000;
    part = rest / 25'400'000;
    const std::uint64_t twice = rest % 25'400'000 * 2;
    if (twice > 25'400'000 || (twice == 25'400'000 && part % 2 != 0)) ++part;
    if (part == unit) ++whole, part = 0;
  }
  std::string decimals = std::to_string(unit + part).substr(1);
  std::string number = without_closing_noughts(std::to_string(whole) + "." + decimals);
  if (nm < 0 && !is_nought(number)) number.insert(0, kMinus);
  return with_unit(std::move(number), system == UnitSystem::metric ? "mm" : "in");
}

}  // namespace flatwise
