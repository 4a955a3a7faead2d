// Press: the force over the way in, as a band, with the force that was read where the ring stood home and the points on the way.
#include "view/press_plot.h"

#include "drawing/press_curve.h"
#include "job/press_path.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

constexpr double kWide = 92,
                 kHigh = 76;  // Half a sheet: as wide as the figures beside it, so that its words are not made small.

}  // namespace

Json press_plot(const Subject& subject, const Screen& screen, int rotor, const Working& band) {
  const job::Facts facts{subject.job.shaft, subject.job.workshop, subject.job.state.bench};
  const auto drawn = job::press_drawn(facts, rotor, band, screen.voice.units);
  if (!drawn) return {};
  drawing::PressCurve curve{.band = drawn->band, .home = drawn->home, .force = drawn->force, .points = drawn->points};
  curve.travel_unit = {drawn->length_unit, drawn->length_si};
  curve.force_unit = {drawn->force_unit, drawn->force_si};
  curve.title = say(drawn->title, screen.voice);
  for (const Message& part : drawn->question)
    curve.question += (curve.question.empty() ? "" : " ") + say(part, screen.voice);
  curve.x_words = say(drawn->x_words, screen.voice);
  if (drawn->read_words) curve.read_words = say(*drawn->read_words, screen.voice);
  return drawing_block(
      drawing::press_curve(curve, {kWide, kHigh}),
      tell(screen, Code{"bench.press.curve_says"},
           {{"least", output_of(band, "force-least")}, {"greatest", output_of(band, "force-greatest")}}),
      {}, {.caption = tell(screen, Code{"bench.press.curve_lead"}, {{"lead", any(job::kPressLead)}})});
}

}  // namespace flatwise::view
