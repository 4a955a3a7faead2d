#include "core/working/measure_better.h"

namespace flatwise {
namespace {

constexpr double kWorthIt = 0.25;

}  // namespace

std::optional<Message> measure_better(const GreatestDoubt& greatest) {
  if (!(greatest.part >= kWorthIt)) return std::nullopt;
  Message out{Code{"doubt.measure_first"}, {{"input", greatest.input}, {"part", any_ratio(greatest.part)}}};
  if (!greatest.field.empty()) out.args.emplace_back("field", greatest.field);
  if (greatest.now && greatest.halved) {
    out.args.emplace_back("now", *greatest.now);
    out.args.emplace_back("halved", *greatest.halved);
  }
  return out;
}

std::optional<Finding> measure_better_finding(const GreatestDoubt& greatest) {
  std::optional<Message> says = measure_better(greatest);
  if (!says) return std::nullopt;
  return Finding{says->code, Severity::note, std::move(says->args), {}, std::nullopt};
}

}  // namespace flatwise
