// Values with their range and their doubt.
#include <cmath>
#include <limits>
#include <numbers>

#include "definition/tree.h"

namespace flatwise::definition {
namespace {

Args range_args(double value, Kind kind, const Range& range) {
  // Arguments are quantities: never NaN, so a value that is none is left out and the text as typed speaks for itself.
  Args args;
  if (!std::isnan(value)) args.emplace_back("value", AnyQuantity{value, kind});
  if (std::isfinite(range.least))
    args.emplace_back(range.above_least ? "above" : "least", AnyQuantity{range.least, kind});
  if (std::isfinite(range.greatest)) args.emplace_back("greatest", AnyQuantity{range.greatest, kind});
  return args;
}

}  // namespace

bool in_range(double v, const Range& range) {
  if (!std::isfinite(v)) return false;
  // "30°" read to the nearest double is the last digit over what the table's 30 times a degree is rounded to.
  const double last_digit = 4 * std::numeric_limits<double>::epsilon() * std::abs(range.greatest);
  return (range.above_least ? v > range.least : v >= range.least) && v <= range.greatest + last_digit;
}

Problem out_of_range(double value, Kind kind, const Range& range, const std::string& path, std::string given) {
  return {Code{"definition.out_of_range"}, path, std::move(given), range_args(value, kind, range), std::nullopt};
}

bool has_doubt(const toml::node& node) { return node.is_string() && doubt::has_doubt(node.as_string()->get()); }

// All of what is said to be likely must be possible: a mass of 0.1 kg ± 0.2 kg is none.
Result<doubt::DoubtfulQuantity> File::doubtful(const toml::node& node, const Field& field,
                                               const std::string& path) const {
  const std::string& text = node.as_string()->get();
  if (!may_be_doubted(document_, field))
    return tl::unexpected(Problem{Code{"definition.no_doubt"}, path, text, {}, place(node)});
  Result<doubt::DoubtfulQuantity> read = doubt::read_doubtful_quantity(text, field.kind, path);
  if (!read) return read;
  const double half =
      read->shape == doubt::Shape::rectangular ? std::numbers::sqrt3 * read->u->standard_si : read->u->expanded_si;
  for (const double end : {read->middle.value.si - half, read->middle.value.si + half})
    if (!in_range(end, field.range))
      return tl::unexpected(out_of_range(end, field.kind, field.range, path, read->middle.typed));
  return read;
}

bool File::read_with(std::string_view path, double si, const std::function<void()>& read) {
  const std::size_t before = problems_.size();
  moved_ = path;
  moved_si_ = si;
  read();
  moved_ = {};
  const bool holds = problems_.size() == before;
  problems_.erase(problems_.begin() + static_cast<std::ptrdiff_t>(before), problems_.end());
  return holds;
}

}  // namespace flatwise::definition
