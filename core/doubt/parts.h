// parts.h: what the linear way and the drawn way share. Not for other folders.
#pragma once

#include "core/doubt/doubt.h"

namespace flatwise::doubt {

/// Values of a working's quantities, in the order of `places`.
using Row = std::vector<double>;

/// A figure at a point: its inputs as evaluated, checked once, and which of them are in doubt.
struct Point {
  const FigureSpec& spec;
  std::vector<Input> inputs;         ///< All, in the spec's order, assumed ones too.
  std::vector<std::size_t> doubted;  ///< Places in `inputs`.
  std::vector<Shape> shapes;         ///< One for each doubted input.
  std::vector<std::size_t> places;   ///< Outputs that are quantities.
};

/// The figure's quantities with the doubted inputs at these values; nothing where it does not hold there.
[[nodiscard]] std::optional<Row> values_at(const Point& point, std::span<const double> doubted_si);
[[nodiscard]] double middle_of(const Point& point, std::size_t doubted);

/// First order: what each output moves by for one standard uncertainty of each doubted input. Shape: outputs x doubted.
[[nodiscard]] std::vector<Row> moves(const Point& point, const Row& middle);
[[nodiscard]] DoubtedOutput linear(const Point& point, std::size_t output, const Row& moved);

/// What the draws gave; `drawn` is empty where some fell where the figure does not hold.
struct Draws {
  std::vector<Drawn> drawn;  ///< One for each of Point::places.
  int count = 0, refused = 0;
  bool settled = false;
  bool few = false;  ///< Fewer than one batch: `drawn` is a normal of their mean and deviation.
};
[[nodiscard]] Draws draw(const Point& point, const Options& options);

/// Mean, deviation and the interval of so many values; sorts them.
[[nodiscard]] Drawn summary(std::vector<double>& values);

/// How near is near: half a step of the last digit of the uncertainty told to so many digits, 0.5 10^l where u = c 10^l
/// (JCGM 101, 7.9.2); where nothing moves the output, what rounding does to its value.
[[nodiscard]] double tolerance_of(const Drawn& drawn, int digits);

}  // namespace flatwise::doubt
