// Press: the force over the way in, as a band, with the force that was read where the ring stood home.
#include "view/press_plot.h"
#include "core/fits/press_curve.h"
#include "core/units/parse.h"
#include "drawing/plot.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

constexpr double kWide = 92,
                 kHigh = 76;  // Half a sheet: as wide as the figures beside it, so that its words are not made small.
constexpr int kTravels = 16;
const Length kLead =
    millimetres(2);  // The chamfers of ring and hub together: common practice, and said so beside the plot.

/// How much of SI one of the unit is.
double one(const std::string& unit, Kind kind) {
  const Result<Entered> read = parse_quantity("1 " + unit, kind, "unit");
  CORE_CHECK(read.has_value());
  return read->value.si;
}

/// The path of the ring by the inputs that the expected band was worked out from, so that both say the same.
fits::PressPath path_of(const Working& band) {
  const auto si = [&](std::string_view name) { return input_of(band, name)->si; };
  const auto length = [&](std::string_view name) { return metres(si(name)); };
  return {
      .pressing = {.joint = {.diameter = length("joint-diameter"),
                             .ring_inside = length("ring-inside"),
                             .hub_outside = length("hub-outside"),
                             .ring = {pascals(si("ring-modulus")), si("ring-poisson")},
                             .hub = {pascals(si("hub-modulus")), si("hub-poisson")}},
                   .width = length("width"),
                   .roughness_loss = length("roughness-loss"),
                   .interference = {.least = length("interference-least"), .greatest = length("interference-greatest")},
                   .friction = {.least = si("friction-least"), .greatest = si("friction-greatest")},
                   .hub_yield = pascals(si("hub-yield"))},
      .lead = kLead};
}

}  // namespace

Json press_plot(const Screen& screen, const PressPlotted& plotted) {
  const fits::PressPath path = path_of(plotted.band);
  const Length home = path.lead + path.pressing.width;
  std::vector<Length> travels{Length{}};
  for (int i = 0; i <= kTravels; ++i)
    travels.push_back(path.lead + (static_cast<double>(i) / kTravels) * path.pressing.width);
  const auto curve = fits::press_curve(path, travels);
  if (!curve) return {};
  const bool metric = screen.voice.units == UnitSystem::metric;
  const std::string x_unit = metric ? "mm" : "in", y_unit = metric ? "kN" : "lbf";
  const double x_si = one(x_unit, Kind::length), y_si = one(y_unit, Kind::force);
  drawing::Plot plot{
      .title = tell(screen, Code{"bench.press.curve"}, {{"rotor", plotted.rotor}}),
      .question = tell(screen, plotted.force ? Code{"bench.press.curve_in"} : Code{"bench.press.curve_asks"})};
  if (plotted.invented) plot.question += " " + tell(screen, Code{"study.demo"});
  drawing::PlotBand band{.id = "expected", .x = {}, .low = {}, .high = {}};
  for (const fits::CurvePoint& point : *curve) {
    band.x.push_back(point.travel.si() / x_si);
    band.low.push_back(point.least.si() / y_si);
    band.high.push_back(point.greatest.si() / y_si);
  }
  double top = band.high.back();
  if (plotted.force) {
    const double read = plotted.force->si / y_si;
    top = std::max(top, read);
    plot.marks.push_back({{home.si() / x_si, read},
                          drawing::MarkForm::read,
                          "read",
                          tell(screen, Code{"bench.press.curve_read"}, {{"force", *plotted.force}})});
  }
  plot.bands.push_back(std::move(band));
  plot.x = {tell(screen, Code{"bench.press.curve_x"}, {{"unit", x_unit}}), 0, 1.15 * home.si() / x_si};
  plot.y = {y_unit, 0, top > 0 ? top : 1};
  return drawing_block(drawing::plot(plot, {kWide, kHigh}),
                       tell(screen, Code{"bench.press.curve_says"},
                            {{"least", output_of(plotted.band, "force-least")},
                             {"greatest", output_of(plotted.band, "force-greatest")}}),
                       {}, {.caption = tell(screen, Code{"bench.press.curve_lead"}, {{"lead", any(kLead)}})});
}

}  // namespace flatwise::view
