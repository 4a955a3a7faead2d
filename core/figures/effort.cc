#include "core/figures/effort.h"

#include <algorithm>
#include <cmath>

namespace flatwise {
namespace {

/// The inputs of one run, looked at by name.
class Run {
 public:
  Run(const FigureSpec& spec, std::span<const Input> inputs) : spec_{spec}, inputs_{inputs} {}

  [[nodiscard]] double count() const { return static_cast<double>(inputs_.size()); }
  [[nodiscard]] double count(std::string_view name) const {
    CORE_CHECK(std::ranges::find(spec_.inputs, name, &InputSpec::name) != spec_.inputs.end());
    return static_cast<double>(std::ranges::count(inputs_, name, &Input::name));
  }
  /// The value given, else the assumed one; nought where it is missing or no quantity, which the figure itself refuses.
  [[nodiscard]] double si(std::string_view name) const {
    const auto spec = std::ranges::find(spec_.inputs, name, &InputSpec::name);
    CORE_CHECK(spec != spec_.inputs.end());
    if (const auto it = std::ranges::find(inputs_, name, &Input::name); it != inputs_.end()) return si_of(it->value);
    return spec->assumed ? si_of(*spec->assumed) : 0;
  }

 private:
  static double si_of(const Value& value) {
    const auto* quantity = std::get_if<AnyQuantity>(&value);
    return quantity != nullptr && std::isfinite(quantity->si) ? std::max(0.0, quantity->si) : 0;
  }
  const FigureSpec& spec_;
  std::span<const Input> inputs_;
};

double drawn_us(const Run& run) {
  return 600 + run.si("samples") * (0.012 + 0.0008 * (run.count("length") + run.count("measured-part")));
}

/// The search by halves goes through the sums that half of the rotors can make; beyond the greatest it turns only some of them.
double halves_us(const Run& run) {
  constexpr double kOneSum = 0.3, kGreatest = 4e6;
  return kOneSum * std::min(kGreatest, std::pow(run.si("positions"), std::ceil(run.count("couple") / 2)));
}
double couples_us(const Run& run) { return 1000 + (run.count("couple") <= 1 ? 0 : halves_us(run)); }
double forces_us(const Run& run) { return 1000 + halves_us(run); }

/// As it is given and with each of four things changed, every ball is put in balance at every angle.
double turn_us(const Run& run) {
  constexpr double kTurns = 5, kOneBalance = 9;
  return kTurns * kOneBalance * run.si("angles");
}

struct Longer {
  std::string_view figure;
  double (*us)(const Run& run);
};
constexpr Longer kLonger[] = {
    {"bearing-turn", turn_us},
    {"critical-speeds", [](const Run&) { return 1000.0; }},
    {"hanger-reactions", [](const Run&) { return 100.0; }},
    {"least-couple-pattern", couples_us},
    {"least-force-pattern", forces_us},
    {"open-joint", [](const Run& run) { return 1000 + 100 * run.count(); }},
    {"press-curve", [](const Run&) { return 5000.0; }},
    {"press-curve-read", [](const Run& run) { return 5000 + 150 * run.count(); }},
    {"shaft-deflection", [](const Run&) { return 100.0; }},
    {"stack-drawn", drawn_us},
    {"stack-length", [](const Run&) { return 600.0; }},
    {"tine-gap", [](const Run&) { return 30.0; }},
};

}  // namespace

double takes_us(const FigureSpec& spec, std::span<const Input> inputs) {
  constexpr double kOneRun = 2, kOneInput = 0.5, kEndless = 1e13;
  const Run run{spec, inputs};
  const double plain = kOneRun + kOneInput * run.count();
  const auto* longer = std::ranges::find(kLonger, spec.name, &Longer::figure);
  return longer == std::end(kLonger) ? plain : std::min(kEndless, plain + longer->us(run));
}

}  // namespace flatwise
