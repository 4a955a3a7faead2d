#include "job/arrange.h"

#include <algorithm>
#include <cstdlib>

#include "core/dynamics/pattern_explain.h"
#include "core/dynamics/tine_gap.h"

namespace flatwise::job {
namespace {

ArrangedRow row_of(const Shaft& shaft, const dynamics::PatternRow& row) {
  const std::vector<Angle> tilt = dynamics::tilt_of(row.places, shaft.flats());
  const auto gaps = dynamics::tine_gaps(shaft, tilt);
  const auto least = std::ranges::min_element(gaps, {}, [](const dynamics::NeighbourGap& g) { return g.gap.gap; });
  const auto sets = dynamics::rotating_sets(shaft, tilt);
  const dynamics::Planes planes = dynamics::planes_of(shaft);
  return {.row = row,
          .left = dynamics::resultants(sets, planes),
          .tilt = tilt,
          .couples = dynamics::couples_about_middle(sets, planes, shaft.rotor_count()),
          .least_gap = least->gap.gap,
          .gap_after = least->rotor};
}

Result<ArrangedMistake> mistake_of(const Shaft& shaft, const dynamics::TimingMistake& mistake) {
  ArrangedMistake out{mistake, std::nullopt};
  if (mistake.kind != dynamics::TimingMistake::Kind::half_out) return out;
  const Rotor& rotor = shaft.rotor(mistake.rotor);
  const auto kink = timing::kink({rotor.lean, mistake.flats, shaft.flats(), rotor.bearing.permissible_misalignment});
  if (!kink) return tl::unexpected(kink.error());
  out.kink = *kink;
  return out;
}

/// Turned so that rotor 1 stands on the flat that the definition names, where all may turn.
dynamics::Places on_first_flat(const Shaft& shaft, dynamics::Places places, bool turn_is_free) {
  const std::optional<int> first = shaft.spec().pattern.first_flat;
  if (!first || !turn_is_free) return places;
  const int by = *first - 1 - places.front() + shaft.flats();
  for (int& place : places) place = (place + by) % shaft.flats();
  return places;
}

std::string key_of(std::size_t row, std::string_view figure) {
  return "rows[" + std::to_string(row) + "]." + std::string{figure};
}

/// The list stays as it is: what is asked is how well each arrangement's figures are known, not which would have been found.
std::vector<doubt::ToldDoubt> doubts_of(const Shaft& shaft, const Arranged& arranged) {
  return doubt::told_of_shaft(shaft, [&](const Shaft& s) {
    std::vector<doubt::NamedFigure> figures;
    for (std::size_t i = 0; i < arranged.rows.size(); ++i) {
      const dynamics::Resultants left = dynamics::resultants(s, arranged.rows[i].tilt);
      const std::string row = std::to_string(i + 1);
      figures.push_back({key_of(i, "couple"), Word{"doubt.figure.couple"}, row, any(left.couple.size)});
      figures.push_back({key_of(i, "larger"), Word{"doubt.figure.plane"}, row, any(left.larger)});
    }
    return figures;
  });
}

/// Of the first arrangement that leaves anything doubtful: the advised one where it does. What to measure better stands last, once.
void say_doubts(Arranged& arranged) {
  for (std::size_t i = 0; i < arranged.rows.size(); ++i) {
    const doubt::ToldDoubt* couple = arranged.doubt_of(i, "couple");
    const doubt::ToldDoubt* plane = arranged.doubt_of(i, "larger");
    if (couple == nullptr || plane == nullptr) continue;
    for (Message& message : doubt::says(*couple))
      if (message.code != Code{"doubt.measure_first"}) arranged.says.push_back(std::move(message));
    for (Message& message : doubt::says(*plane)) arranged.says.push_back(std::move(message));
    return;
  }
}

}  // namespace

const doubt::ToldDoubt* Arranged::doubt_of(std::size_t row, std::string_view figure) const {
  const auto it = std::ranges::find(doubts, key_of(row, figure), [](const auto& d) { return d.figure.key; });
  return it == doubts.end() ? nullptr : &*it;
}

const ArrangedMistake& worst_mistake(const Arranged& arranged, int rotor, dynamics::TimingMistake::Kind kind,
                                     bool one_flat) {
  const ArrangedMistake* worst = nullptr;
  for (const ArrangedMistake& m : arranged.mistakes) {
    if (m.what.rotor != rotor || m.what.kind != kind || (one_flat && std::abs(m.what.flats) != 1)) continue;
    if (worst == nullptr || m.what.left.larger > worst->what.left.larger) worst = &m;
  }
  CORE_CHECK(worst != nullptr);
  return *worst;
}

std::string definition_lines(const Shaft& shaft, const dynamics::Places& places, bool turn_is_free) {
  const int flats = shaft.flats(), step = dynamics::step_of(places[0], places[1], flats);
  bool one_step = step != 0;
  std::string list;
  for (std::size_t i = 0; i < places.size(); ++i) {
    one_step = one_step && (i == 0 || dynamics::step_of(places[i - 1], places[i], flats) == step);
    list += (i == 0 ? "" : ", ") + std::to_string(places[i] + 1);
  }
  std::string lines = "pattern = ";
  if (one_step && 2 * step == flats)
    lines += "\"facing\"";
  else if (one_step)
    lines += "{ step = " + std::to_string(step > 0 ? step : step + flats) + " }";
  else
    lines += "{ flats = [" + list + "] }";
  if (!turn_is_free || shaft.spec().pattern.first_flat) lines += "\nfirst_flat = " + std::to_string(places.front() + 1);
  return lines;
}

Result<Arranged> arrange(const Shaft& shaft, const dynamics::PatternWish& wish, int rows) {
  if (shaft.flats() % 2 != 0)
    return tl::unexpected(
        Problem{Code{"shaft.odd_flats"}, "shaft.flats", {}, {{"flats", shaft.flats()}}, std::nullopt});
  const auto task = dynamics::pattern_task(shaft, wish);
  if (!task) return tl::unexpected(task.error());
  auto list = dynamics::list_patterns(*task, rows);
  if (!list) return tl::unexpected(list.error());
  Arranged out{};
  out.turn_is_free = task->turn_is_free();
  for (dynamics::PatternRow& row : list->rows) {
    row.places = on_first_flat(shaft, std::move(row.places), out.turn_is_free);
    out.rows.push_back(row_of(shaft, row));
  }
  out.says = dynamics::explain(*task, *list);
  out.list = *std::move(list);
  const dynamics::Places& advised = out.list.rows.front().places;
  for (const dynamics::TimingMistake& mistake : dynamics::timing_mistakes(shaft, advised)) {
    auto with_kink = mistake_of(shaft, mistake);
    if (!with_kink) return tl::unexpected(with_kink.error());
    out.mistakes.push_back(*std::move(with_kink));
  }
  out.definition = definition_lines(shaft, advised, out.turn_is_free);
  out.doubts = doubts_of(shaft, out);
  say_doubts(out);
  return out;
}

}  // namespace flatwise::job
