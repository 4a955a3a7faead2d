// Even figures of a scale.
#include <array>
#include <charconv>
#include <cmath>

#include "core/units/problem.h"
#include "drawing/plot.h"

namespace flatwise::drawing {
namespace {

constexpr double kMostSteps = 6;
/// A scale that ends a millionth of a step beyond an even figure ends on it.
constexpr double kRounding = 1e-6;

double even_step(double span) {
  const double rough = span / kMostSteps;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (factor * power >= rough * (1 - kRounding)) return factor * power;
  return 10 * power;
}

std::string digits_apart(std::string whole) {
  for (int at = static_cast<int>(whole.size()) - 3; at > 0; at -= 3) whole.insert(static_cast<std::size_t>(at), " ");
  return whole;
}

}  // namespace

int Steps::count() const { return static_cast<int>(std::lround((to - from) / step)); }

Steps even_steps(double from, double to) {
  CORE_CHECK(std::isfinite(from) && std::isfinite(to) && from < to);
  const double step = even_step(to - from);
  Steps steps{.from = step * std::floor(from / step + kRounding),
              .to = step * std::ceil(to / step - kRounding),
              .step = step,
              .decimals = 0};
  steps.decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + kRounding)));
  return steps;
}

std::string scale_figure(double value, int decimals) {
  std::array<char, 64> text{};
  const auto [end, error] =
      std::to_chars(text.data(), text.data() + text.size(), std::abs(value), std::chars_format::fixed, decimals);
  CORE_CHECK(error == std::errc{});
  std::string shown{text.data(), end};
  const std::size_t point = std::min(shown.find('.'), shown.size());
  // Four digits stand together, five and more in threes.
  if (point > 4) shown = digits_apart(shown.substr(0, point)) + shown.substr(point);
  const bool nought = shown.find_first_not_of("0. ") == std::string::npos;
  return value < 0 && !nought ? "−" + shown : shown;
}

}  // namespace flatwise::drawing
