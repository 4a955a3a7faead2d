// doubt.h: what inputs that are not exactly known make of a figure, and which of them to measure better.
//
//   const std::string texts[] = {"bore=99.968 mm ± 4 µm", "outside=99.985 mm .. 100 mm", ...};
//   const Results<Doubted> answer = ask_with_doubt(*find_figure("interference"), texts);
//   answer->outputs[0].shares[0]                  // the input that doubts it most
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/working/figure.h"

namespace flatwise::doubt {

/// How the values of an input lie about its middle.
enum class Shape {
  normal,       ///< "± U": expanded uncertainty at 95 %, k = 2; with degrees of freedom a scaled t.
  rectangular,  ///< "a .. b": anywhere between, the middle no likelier than the ends.
};

/// One input that is not exactly known. Its value is the middle.
struct DoubtfulInput {
  Input input;  ///< `u` says how much; none: exactly known.
  Shape shape = Shape::normal;
};

/// What one input does to one output.
struct Share {
  std::size_t input = 0;  ///< Place in the working's inputs.
  double moves_si = 0;    ///< What the output moves by for one standard uncertainty of the input, signed.
  double part = 0;        ///< Of the output's variance, 0 to 1.
  double without_si = 0;  ///< Expanded uncertainty that would be left if this input were known exactly.
  double halved_si = 0;   ///< The same if its doubt were halved.
};

/// Shortest description of what the draws gave: JCGM 101's probabilistically symmetric 95 % interval.
struct Drawn {
  double mean_si = 0, standard_si = 0;
  double low_si = 0, high_si = 0;
};

struct DoubtedOutput {
  std::size_t output = 0;      ///< Place in the working's outputs.
  Uncertainty linear;          ///< By first order.
  std::vector<Share> shares;   ///< Greatest part first; inputs without part are left out.
  std::optional<Drawn> drawn;  ///< None where draws fell where the figure does not hold, or none were wanted.
  bool linear_holds = false;   ///< Both ends of the linear interval agree with the drawn ones (JCGM 101, 8).
};

struct Options {
  std::uint64_t seed = 1;
  int digits = 1;           ///< Of the uncertainty that the draws must settle, 1 or 2.
  int most_draws = 200000;  ///< Where they have not settled by then, the finding says so. 0: first order only.
  double longest_us = std::numeric_limits<double>::infinity();  ///< What would take longer, by takes_us(), is refused.
};

/// A figure with its doubt: the working's outputs carry U, its findings say what to measure better, whether the first
/// order was enough, and what the draws met.
struct Doubted {
  Working working;
  std::vector<DoubtedOutput> outputs;  ///< Quantities only, in their order.
  int draws = 0;
};

/// Runs a figure with doubtful inputs.
///
/// Model      First order by half differences over ± one standard uncertainty, Z = (f(x + u) - f(x - u))/2 (GUM 5.1.3,
///            note 2), degrees of freedom by Welch and Satterthwaite; beside it draws of all inputs together (JCGM 101)
///            in batches of 10 000 until mean, deviation and both ends stand still to the digits asked. Where the two
///            disagree the drawn interval is the answer: the output's U is half of it, and its ends are in a finding.
///            A figure whose run takes long is drawn only as often as fits in a second by takes_us(). Where that is not one
///            batch, mean and deviation of those draws make a normal (JCGM 101, 7.2.3); where it is not a hundred, first order
///            stands alone. A finding says either.
/// Inputs     Inputs are independent of each other; what belongs together must be put together before. `u` of inputs:
///            standard > 0.
/// Refuses    What evaluate() refuses; a doubt on a word or a count (doubt.not_a_quantity); a figure that works out an
///            uncertainty itself (doubt.has_its_own): it asks for the doubts it wants as inputs of their own; what would take
///            longer than `longest_us` (doubt.too_long).
/// Accuracy   Linear: exact for linear and for quadratic figures' first order. Draws: the same for one seed everywhere.
/// Source     [GUM] 5.1.2, 5.1.3, G.4; [JCGM101] 6.4, 7.7, 7.9, 8.
[[nodiscard]] Results<Doubted> with_doubt(const FigureSpec& spec, std::vector<DoubtfulInput> inputs,
                                          const Options& options = {});

/// A quantity as typed, with its doubt where it has one.
struct DoubtfulQuantity {
  Entered middle{};
  std::optional<Uncertainty> u{};
  Shape shape = Shape::normal;
};
/// "11.6 kg ± 0.2 kg", "11.6 kg ± 2 %", "11.4 kg .. 11.8 kg", "11.6 kg": as read_doubtful(), without a figure.
[[nodiscard]] Result<DoubtfulQuantity> read_doubtful_quantity(std::string_view text, Kind kind, std::string_view field);

/// "bore=99.968 mm ± 4 µm" (expanded, 95 %), "bore=99.968 mm ± 0.01 %" (of the value), "bore=99.96 mm .. 99.98 mm"
/// (anywhere between), "bore=99.968 mm" (exactly). '+-' stands for '±'. The doubt of a temperature is a rise ("± 2 K").
///
/// Refuses    What read_input() refuses; a doubt that is not above nought (doubt.not_above_nought), ends the wrong way
///            round (doubt.range_reversed), a doubt on a word or a count (doubt.not_a_quantity).
[[nodiscard]] Result<DoubtfulInput> read_doubtful(const FigureSpec& spec, std::string_view text);

/// Whether a text has a doubt in it: those without go the plain way.
[[nodiscard]] bool has_doubt(std::string_view text);

/// Reads all inputs and runs the figure with its doubt.
[[nodiscard]] Results<Doubted> ask_with_doubt(const FigureSpec& spec, std::span<const std::string> texts,
                                              const Options& options = {});

}  // namespace flatwise::doubt
