// working.h: a result with everything it came from. Table, JSON, page and paper show this one object; no computed
// figure is shown without it.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/units/any_quantity.h"
#include "core/units/code.h"
#include "core/units/problem.h"

namespace flatwise {

/// The three answers of a check with limits.
enum class Answer { in, out, cannot_tell };

/// How bad a finding is. Anything but `note` makes the shell answer with status 1.
enum class Severity {
  note,         ///< Information with its figure; nothing to do.
  unanswered,   ///< A question that must be answered before going on has no answer.
  cannot_tell,  ///< What was read does not decide it.
  out,          ///< Wrong: do something.
};

/// Which part of the shaft a finding is about. Numbers count from end A, from 1; 0 means the whole shaft.
struct Where {
  enum class Part { shaft, station, rotor } part = Part::shaft;
  int number = 0;
  friend bool operator==(const Where&, const Where&) = default;
};

/// The sum worked and this is what it says. `instruction`, where there is one, says what to do about it.
struct Finding {
  Code code;
  Severity severity = Severity::note;
  Args args;
  Where where;
  std::optional<Message> instruction;
};

enum class OriginKind { given, measured, computed, assumed, published };
/// Where an input came from: a line of a file, a reading, a source key, the rule that assumed it.
struct Origin {
  OriginKind kind = OriginKind::given;
  std::string where;
};

/// Standard uncertainty in SI; effective degrees of freedom (none: known without end); expanded U at 95 % two-sided.
struct Uncertainty {
  double standard_si = 0.0;
  std::optional<double> degrees_of_freedom;
  double expanded_si = 0.0;
};

using Value = std::variant<AnyQuantity, std::string>;  ///< Text for choices ("oiled", "N7", "outer").

struct Working;
struct Input {
  std::string name;    ///< As in the figure's spec ("bore", "friction").
  std::string symbol;  ///< As in the formula ("D", "µ").
  Value value;
  Origin origin;
  std::optional<Uncertainty> u;
  std::string typed;                    ///< As a person typed it; empty when nobody did.
  std::shared_ptr<const Working> from;  ///< The working behind a computed input, when there is one.
};
struct Output {
  std::string name;
  std::string symbol;
  Value value;
  std::optional<Uncertainty> u;
};

struct Working {
  std::string figure;  ///< Name in the catalogue; also the key of its title in the dictionary.
  std::vector<Input> inputs;
  std::vector<Output> outputs;  ///< The first is the figure's main one.
  std::string formula;
  std::vector<std::string_view> sources;  ///< Keys of docs/sources.md.
  std::vector<Finding> findings;
  std::optional<Answer> answer;

  [[nodiscard]] const Output* output(std::string_view name) const;
  [[nodiscard]] const Input* input(std::string_view name) const;
  /// Quantity of a named output in SI. CORE_CHECKs that it is there and is a quantity.
  [[nodiscard]] double si(std::string_view name) const;
};
using WorkingPtr = std::shared_ptr<const Working>;

}  // namespace flatwise
