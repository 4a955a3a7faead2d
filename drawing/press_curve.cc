#include "drawing/press_curve.h"

#include <algorithm>

namespace flatwise::drawing {

DisplayList press_curve(const PressCurve& curve, const PlotSize& size) {
  const double x = 1 / curve.travel_unit.si, y = 1 / curve.force_unit.si;
  Plot plot{.title = curve.title, .question = curve.question};
  PlotBand band{.id = "expected", .x = {}, .low = {}, .high = {}};
  double top = 0;
  for (const fits::CurvePoint& point : curve.band) {
    band.x.push_back(point.travel.si() * x);
    band.low.push_back(point.least.si() * y);
    band.high.push_back(point.greatest.si() * y);
    top = std::max(top, band.high.back());
  }
  const auto mark = [&](Point at, std::string id, std::string words) {
    top = std::max(top, at.y);
    plot.marks.push_back({at, MarkForm::read, std::move(id), std::move(words)});
  };
  int number = 0;
  for (const fits::ReadPoint& point : curve.points)
    mark({point.travel.si() * x, point.force.si() * y}, "point-" + std::to_string(++number), {});
  if (curve.force) mark({curve.home.si() * x, curve.force->si() * y}, "read", curve.read_words);
  plot.bands.push_back(std::move(band));
  plot.x = {curve.x_words, 0, 1.15 * curve.home.si() * x};
  plot.y = {curve.force_unit.name, 0, top > 0 ? top : 1};
  return drawing::plot(plot, size);
}

}  // namespace flatwise::drawing
