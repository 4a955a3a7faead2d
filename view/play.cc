#include "view/play.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/working/figure.h"
#include "drawing/play_scale.h"
#include "job/play.h"
#include "view/bench_parts.h"
#include "view/blocks.h"

namespace flatwise::view {
namespace {

constexpr double kColumn = 100;  // Millimetres that the page scales a column from.

WorkingPtr behind_of(const Subject& subject, int rotor) {
  return working_of(subject, job::Stage::booking_in, "clearance-from-play", job::at_rotor(rotor));
}

/// What a new bearing would show: with the reading, or before there is one.
WorkingPtr fresh_of(const Subject& subject, int rotor) {
  if (WorkingPtr fresh = working_of(subject, job::Stage::booking_in, "rim-play", job::at_rotor(rotor))) return fresh;
  const Input radius =
      given("radius", any(dial_radius(subject, rotor)), {OriginKind::assumed, "dial at the tine tips"});
  return job::new_bearing_play(subject.job.facts(), rotor, radius);
}

/// Steps of one, two or five that cut a scale into four to eight.
double even_step(double end) {
  double step = std::pow(10.0, std::floor(std::log10(end / 4)));
  for (const double more : {5.0, 2.0})
    if (end / (step * more) >= 3.5) return step * more;
  return step;
}

std::string bare(double si, const Voice& voice) { return bare_length(Length::from_si(si), voice); }

/// The two scales of a swing: above as it is read, below the clearance, which goes as its square.
drawing::DisplayList scale_of(const Screen& screen, const Working& fresh, const Working* behind) {
  drawing::PlayScale scale;
  scale.new_least = fresh.si("swing-least");
  scale.new_greatest = fresh.si("swing-greatest");
  scale.new_words = tell(screen, Code{"view.play.new"});
  scale.end = 2.0 * *scale.new_greatest;
  // A new bearing may show nothing at all: nought is then written once.
  scale.above = {{0, "0"}, {*scale.new_greatest, bare(*scale.new_greatest, screen.voice)}};
  if (*scale.new_least > 0) scale.above.push_back({*scale.new_least, bare(*scale.new_least, screen.voice)});
  if (behind == nullptr) return drawing::play_scale(scale, kColumn);
  const double swing = input_of(*behind, "swing")->si;
  scale.value = swing;
  scale.expanded = input_of(*behind, "swing-u").value_or(AnyQuantity{}).si;
  scale.value_words = bare(swing, screen.voice);
  scale.end = std::max(scale.end, 1.15 * (swing + scale.expanded));
  const double clearance = behind->si("clearance");
  if (!(swing > 0) || !(clearance > 0)) return drawing::play_scale(scale, kColumn);
  const double unit = screen.voice.units == UnitSystem::metric ? 1e-6 : 25.4e-6;  // µm and thou, to step evenly in.
  const double last = clearance * (scale.end / swing) * (scale.end / swing);
  const double step = even_step(last / unit) * unit;
  for (double c = 0; c <= last; c += step)
    scale.below.push_back({swing * std::sqrt(c / clearance), std::to_string(std::lround(c / unit))});
  return drawing::play_scale(scale, kColumn);
}

// The figure of a tick stands beside that of the reading where it would run into it: the limit of a new bearing is what it is held
// against. Left out only where there is no room for both.
void part_labels(drawing::DisplayList& list) {
  const drawing::Text* reading = nullptr;
  for (const drawing::Item& item : list.items)
    if (const auto* text = std::get_if<drawing::Text>(&item); text != nullptr && text->ink == drawing::Ink::next)
      reading = text;
  if (reading == nullptr) return;
  const drawing::Point at = reading->at;
  const double room = 1.3 * 4 * 0.56 * static_cast<double>(reading->text.size());
  std::vector<drawing::Item> kept;
  for (const drawing::Item& item : list.items) {
    const auto* text = std::get_if<drawing::Text>(&item);
    const bool runs_in = text != nullptr && text->ink != drawing::Ink::next && std::abs(text->at.y - at.y) < 0.1 &&
                         std::abs(text->at.x - at.x) < room;
    if (!runs_in) {
      kept.push_back(item);
      continue;
    }
    drawing::Text beside = *text;
    beside.at.x = text->at.x < at.x ? at.x - room : at.x + room;
    if (text->text != "0" && beside.at.x > room / 2 && beside.at.x < list.width - room / 2)
      kept.emplace_back(std::move(beside));
  }
  list.items = std::move(kept);
}

// What a new bearing shows is a range, often from nought.
Json fresh_json(const Screen& screen, const WorkingPtr& fresh) {
  const AnyQuantity least = output_of(*fresh, "swing-least"), greatest = output_of(*fresh, "swing-greatest");
  return facts_block({{.caption = tell(screen, Code{"view.play.new_bearing"}),
                       .value = range_words(least, greatest, screen.voice),
                       .other = range_other(least, greatest, screen.voice),
                       .working = fresh}},
                     screen.voice);
}

Json answer_json(const Subject& subject, const Screen& screen, int rotor, const WorkingPtr& behind) {
  AnswerIs is{.sign = "none", .word = tell(screen, Code{"view.play.clearance"}), .working = behind};
  const auto findings = findings_at(subject, job::Stage::booking_in, job::at_rotor(rotor));
  is.says = sentences(screen, findings);
  is.does = instruction(screen, findings);
  if (behind != nullptr) {
    const AnyQuantity least = output_of(*behind, "clearance-least");
    const AnyQuantity greatest = output_of(*behind, "clearance-greatest");
    is.value = range_words(least, greatest, screen.voice);
    is.other = range_other(least, greatest, screen.voice);
  }
  return answer_block(is, screen.voice);
}

}  // namespace

const job::PlayRead* play_of(const Subject& subject, int rotor) {
  job::PlayRead asked;
  asked.rotor = rotor;
  return subject.job.state.agreed<job::PlayRead>(job::question_of(asked));
}

Length dial_radius(const Subject& subject, int rotor) {
  const job::PlayRead* play = play_of(subject, rotor);
  if (play != nullptr && play->radius) return play->radius->length();
  return subject.job.shaft.rotor(rotor).tip_radius;
}

bool wrong_sign_at(const Subject& subject, Where part) {
  return std::ranges::any_of(subject.job.state.bench.looks, [&](const PartLook& look) {
    return look.part == part && look.sign != Sign::sound && look.reply.value == Reply::yes;
  });
}

bool anything_found(const Subject& subject, int rotor) {
  return play_of(subject, rotor) != nullptr ||
         std::ranges::any_of(subject.job.state.bench.looks,
                             [&](const PartLook& look) { return look.part == job::at_rotor(rotor); });
}

Worn worn(const Subject& subject, int rotor) {
  if (play_of(subject, rotor) == nullptr) return Worn::not_read;
  const WorkingPtr behind = behind_of(subject, rotor);
  if (behind == nullptr) return Worn::read;
  for (const Finding& finding : behind->findings) {
    if (finding.code == Code{"bearings.play_past_new"}) return Worn::worn;
    if (finding.code == Code{"bearings.play_as_new"}) return Worn::as_new;
  }
  return Worn::doubt;
}

std::vector<Json> play_blocks(const Subject& subject, const Screen& screen, int rotor) {
  std::vector<Json> blocks;
  const WorkingPtr behind = behind_of(subject, rotor);
  const WorkingPtr fresh = fresh_of(subject, rotor);
  if (fresh != nullptr) {
    drawing::DisplayList list = scale_of(screen, *fresh, behind.get());
    part_labels(list);
    const bool metric = screen.voice.units == UnitSystem::metric;
    const Code caption = metric ? Code{"view.play.scales_metric"} : Code{"view.play.scales_inch"};
    const std::string says =
        tell(screen, Code{"view.play.scale_says"},
             {{"least", output_of(*fresh, "swing-least")},
              {"greatest", output_of(*fresh, "swing-greatest")},
              {"typed", behind != nullptr ? play_of(subject, rotor)->swing.typed : std::string{}}});
    blocks.push_back(drawing_block(list, says, {}, {.caption = tell(screen, caption)}));
  }
  if (play_of(subject, rotor) != nullptr) blocks.push_back(answer_json(subject, screen, rotor, behind));
  if (fresh != nullptr) blocks.push_back(fresh_json(screen, fresh));
  return blocks;
}

}  // namespace flatwise::view
