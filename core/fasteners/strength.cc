#include "core/fasteners/strength.h"

#include <algorithm>
#include <array>
#include <utility>

namespace flatwise::fasteners {
namespace {

struct Row {
  std::string_view name;
  ThreadSystem system;
  double over, up_to;            ///< Size in inches or millimetres; over 0 means from the least size.
  double proof, yield, tensile;  ///< ksi or MPa.
};
constexpr double kKsi = 6.894757293168361e6;
constexpr double kLeastInch = 0.25, kLeastMetric = 3;

constexpr std::array<Row, 9> kRows{{
    {"grade 2", ThreadSystem::inch, 0, 0.75, 55, 57, 74},
    {"grade 2", ThreadSystem::inch, 0.75, 1.5, 33, 36, 60},
    {"grade 5", ThreadSystem::inch, 0, 1, 85, 92, 120},
    {"grade 5", ThreadSystem::inch, 1, 1.5, 74, 81, 105},
    {"grade 8", ThreadSystem::inch, 0, 1.5, 120, 130, 150},
    {"8.8", ThreadSystem::metric, 0, 16, 580, 640, 800},
    {"8.8", ThreadSystem::metric, 16, 39, 600, 660, 830},
    {"10.9", ThreadSystem::metric, 0, 39, 830, 940, 1040},
    {"12.9", ThreadSystem::metric, 0, 39, 970, 1100, 1220},
}};

std::string tidied(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == ' ' && (out.empty() || out.back() == ' ')) continue;
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  if (out.starts_with("property ")) out.erase(0, 9);
  if (out.starts_with("class ")) out.erase(0, 6);
  if (out.starts_with("sae j429 ")) out.erase(0, 9);
  return out;
}

tl::unexpected<Problem> refused(Code code, std::string_view field, std::string_view given, Args args) {
  args.emplace_back("class", std::string{given});
  return tl::unexpected(Problem{code, std::string{field}, std::string{given}, std::move(args), std::nullopt});
}

}  // namespace

Result<Strength> strength_of(std::string_view strength_class, const ThreadForm& thread, std::string_view field) {
  const std::string name = tidied(strength_class.substr(0, 40));
  const bool inch = thread.system == ThreadSystem::inch;
  const double size = thread.major.si() / (inch ? 0.0254 : 1e-3);
  const Row* known = nullptr;
  for (const Row& row : kRows) {
    if (row.name != name) continue;
    known = &row;
    constexpr double kSlack = 1e-9;  // Sizes come back from metres.
    const double least = inch ? kLeastInch : kLeastMetric;
    if (row.system != thread.system || size < least - kSlack) continue;
    if (!(size > row.over + kSlack && size <= row.up_to + kSlack)) continue;
    const Pressure unit = inch ? pascals(kKsi) : megapascals(1);
    return Strength{name, row.proof * unit, row.yield * unit, row.tensile * unit, inch ? "J429" : "ISO898-1"};
  }
  if (known == nullptr) {
    const std::vector<std::string> classes{"grade 2", "grade 5", "grade 8", "8.8", "10.9", "12.9"};
    return refused(Code{"fasteners.class_unknown"}, field, strength_class, {{"classes", classes}});
  }
  if (known->system != thread.system)
    return refused(Code{"fasteners.class_other_thread"}, field, strength_class, {{"thread", thread.designation}});
  const Length least = inch ? inches(kLeastInch) : millimetres(kLeastMetric);
  const Length greatest = inch ? inches(1.5) : millimetres(39);
  return refused(Code{"fasteners.class_size"}, field, strength_class,
                 {{"size", any(thread.major)}, {"least", any(least)}, {"greatest", any(greatest)}});
}

Force proof_load(Pressure proof_strength, Area area) { return proof_strength * area; }

}  // namespace flatwise::fasteners
