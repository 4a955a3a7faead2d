#include "job/bending_doubts.h"

#include <limits>

#include "core/beam/of_shaft.h"
#include "core/timing/map.h"

namespace flatwise::job {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

doubt::NamedFigure critical(std::string key, Word name, const std::vector<AngularSpeed>& speeds) {
  return {.key = std::move(key),
          .name = std::move(name),
          .value = {speeds.empty() ? kNone : speeds.front().radians_per_second(), Kind::angular_speed}};
}

/// None at all where the shaft cannot be worked out: whoever asks fills up.
std::vector<doubt::NamedFigure> figures_of(const Shaft& shaft) {
  const Result<timing::Map> map = timing::map(shaft);
  if (!map) return {};
  const auto bending = beam::bending_of(shaft, timing::tilt_azimuths(*map, shaft.flats()));
  if (!bending) return {};
  std::vector<doubt::NamedFigure> figures;
  for (std::size_t i = 0; i < bending->of.hangers.size(); ++i) {
    const std::string at = "hangers[" + std::to_string(i) + "].", &label = bending->of.hangers[i].label;
    figures.push_back({at + "rest", Word{"doubt.figure.hanger_rest"}, label, any(bending->at_rest.reactions[i].size)});
    figures.push_back(
        {at + "turning", Word{"doubt.figure.hanger_turning"}, label, any(bending->turning.reactions[i].size)});
  }
  figures.push_back(critical("forward", Word{"doubt.figure.forward"}, bending->forward.speeds));
  figures.push_back(critical("backward", Word{"doubt.figure.backward"}, bending->backward.speeds));
  return figures;
}

}  // namespace

std::vector<doubt::ToldDoubt> bending_doubts(const Shaft& shaft) { return doubt::told_of_shaft(shaft, figures_of); }

}  // namespace flatwise::job
