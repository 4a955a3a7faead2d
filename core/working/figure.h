// figure.h: what a computation is (its spec) and how it is run on inputs to give a Working.
//
// Each folder lists its specs in figures.cc and hands them out through one function in figures.h:
//   std::span<const FigureSpec> figures();   // in namespace flatwise::fits, ::timing, ...
// core/figures gathers these lists into the catalogue.
#pragma once

#include <functional>
#include <limits>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/working/working.h"

namespace flatwise {

/// One input of a figure. Title and meaning are dictionary entries: "figure.<figure>.<input>".
struct InputSpec {
  std::string_view name;
  std::string_view symbol;
  Kind kind = Kind::ratio;
  double least_si = -std::numeric_limits<double>::infinity();
  double greatest_si = std::numeric_limits<double>::infinity();
  bool above_least = false;                     ///< The least itself is not allowed (x > 0).
  bool repeated = false;                        ///< May be given many times (readings, parts).
  bool optional = false;                        ///< May be left out, with no default: the model then does without.
  std::optional<Value> assumed = std::nullopt;  ///< Used, and marked assumed, when left out.
  std::string_view assumed_from = {};           ///< Why this default: "common practice", "ISO 1", a source key.
  std::string_view instead = {};  ///< Input that says the same in another way: not both, and none is assumed beside it.
  std::span<const std::string_view> choices = {};  ///< Not empty: a word out of these instead of a quantity.
  bool text = false;                               ///< Free text (a thread, a fit code) instead of a quantity.
};

struct OutputSpec {
  std::string_view name;
  std::string_view symbol;
  Kind kind = Kind::ratio;
  bool text = false;  ///< A word, not a quantity.
};

/// Checked inputs as a figure's function sees them. Asking for a name that is not in the spec is a bug.
class Given {
 public:
  explicit Given(std::vector<Input> inputs) : inputs_{std::move(inputs)} {}
  [[nodiscard]] bool has(std::string_view name) const;
  [[nodiscard]] double si(std::string_view name) const;                   ///< The only or first value.
  [[nodiscard]] std::vector<double> all_si(std::string_view name) const;  ///< All values of a repeated input.
  [[nodiscard]] const std::string& text(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> all_text(std::string_view name) const;
  [[nodiscard]] const Input& input(std::string_view name) const;
  [[nodiscard]] const std::vector<Input>& inputs() const { return inputs_; }
  [[nodiscard]] std::vector<Input> take() && { return std::move(inputs_); }  ///< When nothing more is asked of it.

 private:
  std::vector<Input> inputs_;
};

/// What a figure's function returns: values in the order of the spec's outputs.
struct Computed {
  std::vector<Value> values;
  std::vector<std::optional<Uncertainty>> u = {};  ///< Empty, or one a value.
  std::vector<Finding> findings = {};
  std::optional<Answer> answer = std::nullopt;
};

/// Example of a figure, run by a test and shown on its reference page.
struct Example {
  std::vector<std::string_view> inputs;  ///< "bore=99.98 mm"
  std::string_view expected;             ///< "interference=15 µm": the main output, to the digits written.
};

struct FigureSpec {
  std::string_view name;  ///< "press-force": lower case, hyphens; title in the dictionary under "figure.press-force".
  std::string_view formula;
  std::vector<InputSpec> inputs;
  std::vector<OutputSpec> outputs;
  std::vector<std::string_view> sources;  ///< Keys of docs/sources.md, or "common practice".
  std::function<Result<Computed>(const Given&)> compute;
  Example example;
  // What it does not cover is the dictionary entry "figure.<name>.limits".
};

/// Runs a figure: every input of the spec present (or assumed), of the right kind, finite and in range, none unknown or
/// given twice unless repeated, none beside another that says the same; then computes. Problems name the input, the value and the allowed range.
[[nodiscard]] Results<Working> evaluate(const FigureSpec& spec, std::vector<Input> inputs);

/// Short ways to write an input.
[[nodiscard]] Input given(std::string_view name, AnyQuantity value, Origin origin = {});
[[nodiscard]] Input given(std::string_view name, std::string text, Origin origin = {});
[[nodiscard]] Input measured(std::string_view name, AnyQuantity value, std::string where, std::string typed = {});
[[nodiscard]] Input computed(std::string_view name, std::string_view output, WorkingPtr from);

}  // namespace flatwise
