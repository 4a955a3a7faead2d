// The list of mistakes, and a whole rebuild with none, one or several of them.
#include "tests/rebuilds/mistakes.h"
#include "tests/rebuilds/run.h"

#include <array>

namespace rebuilds {
namespace {

using enum Kind;
using enum Class;

constexpr std::array<KindRow, kKinds> kRows{{
    {mark_not_read, "mark_not_read", "mark not read", left_out},
    {reading_left_out, "reading_left_out", "reading or count left out", left_out},
    {seal_forgotten, "seal_forgotten", "seal forgotten", left_out},
    {ring_forgotten, "ring_forgotten", "snap ring forgotten", left_out},
    {grease_forgotten, "grease_forgotten", "grease forgotten", left_out},
    {captive_forgotten, "captive_forgotten", "captive part forgotten", left_out},
    {safety_forgotten, "safety_forgotten", "safety confirmation forgotten", left_out},
    {label_forgotten, "label_forgotten", "spacers not labelled", left_out},
    {recheck_forgotten, "recheck_forgotten", "nut not checked again", left_out},
    {no_new_set, "no_new_set", "disturbed rotor without a new set", left_out},
    {spacer_missing, "spacer_missing", "spacer missing", left_out},
    {spacer_without_label, "spacer_without_label", "spacer put back without label", left_out},
    {nut_not_torqued, "nut_not_torqued", "nut not torqued", left_out},
    {half_out, "half_out", "half out by k flats", fitted_wrongly},
    {indexed_wrong, "indexed_wrong", "pair right, rotor indexed wrong", fitted_wrongly},
    {halves_swapped, "halves_swapped", "halves of two rotors swapped", fitted_wrongly},
    {other_pattern, "other_pattern", "built to another pattern", fitted_wrongly},
    {mirrored, "mirrored", "mirrored where the hand is fixed", fitted_wrongly},
    {fixed_contradict, "fixed_contradict", "rotors that stayed contradict", fitted_wrongly},
    {spacers_exchanged, "spacers_exchanged", "spacers swapped", fitted_wrongly},
    {spacer_doubled, "spacer_doubled", "spacer or its label doubled", fitted_wrongly},
    {inner_ring, "inner_ring", "pressed on the inner ring", fitted_wrongly},
    {short_bar, "short_bar", "torque from a short bar", fitted_wrongly},
    {joint_open, "joint_open", "spacer or half not home", fitted_wrongly},
    {joint_partly_home, "joint_partly_home", "spacer or half partly home", fitted_wrongly},
    {press_low, "press_low", "press force too low", fitted_wrongly},
    {press_high, "press_high", "press force too high", fitted_wrongly},
    {torque_off, "torque_off", "torque too low or too high", fitted_wrongly},
    {wrong_bearing, "wrong_bearing", "wrong bearing", wrong_part},
    {wrong_lean, "wrong_lean", "wrong inclination", wrong_part},
    {unsound_ring, "unsound_ring", "unsound snap ring reused", wrong_part},
    {bore_worn, "bore_worn", "bore worn in one plane", wrong_part},
    {bore_oval, "bore_oval", "bore oval", wrong_part},
    {bore_tapered, "bore_tapered", "bore tapered", wrong_part},
    {hot_part, "hot_part", "hub measured hot", other},
    {gauge_overdue, "gauge_overdue", "gauge past its date", other},
    {mixed_units, "mixed_units", "value typed in the wrong unit", other},
    {run_cut_short, "run_cut_short", "test run cut short", left_out},
    {run_not_read, "run_not_read", "reading of the test run left out", left_out},
    {run_hot, "run_hot", "hanger runs hot", fitted_wrongly},
    {run_shakes, "run_shakes", "hanger shakes", fitted_wrongly},
}};

bool put(Rebuild& r, Mistake& m, Random& random) {
  switch (m.kind) {
    case mark_not_read:
    case half_out:
    case indexed_wrong:
    case halves_swapped:
    case other_pattern:
    case mirrored:
    case fixed_contradict:
      return put_in_marks(r, m, random);
    case spacers_exchanged:
    case spacer_missing:
    case spacer_doubled:
    case spacer_without_label:
    case joint_open:
    case joint_partly_home:
      return put_in_stack(r, m, random);
    case bore_worn:
    case bore_oval:
    case bore_tapered:
    case hot_part:
      return put_in_bore(r, m, random);
    case press_low:
    case press_high:
    case inner_ring:
    case no_new_set:
      return put_in_press(r, m, random);
    case nut_not_torqued:
    case short_bar:
    case torque_off:
      return put_in_torque(r, m, random);
    case wrong_bearing:
    case wrong_lean:
    case unsound_ring:
      return put_in_parts(r, m, random);
    case gauge_overdue:
    case mixed_units:
    case reading_left_out:
      return put_in_readings(r, m, random);
    case run_cut_short:
    case run_not_read:
    case run_hot:
    case run_shakes:
      return put_in_run(r, m, random);
    default:
      return leave_out(r, m, random);
  }
}

void finish(Rebuild& r, Random& random) {
  read_everything(r, random);
  read_run(r);
  // Which gauges took a reading is only known when all else is written down.
  for (const bool last : {false, true})
    for (Mistake& m : r.mistakes)
      if (m.after && (m.kind == gauge_overdue) == last) m.after(r, m, random);
  if (r.mistakes.empty()) weigh_sound(r);
}

}  // namespace

const KindRow& row_of(Kind kind) { return kRows[static_cast<std::size_t>(kind)]; }

bool put_mistake(Rebuild& to, Kind kind, Random& random) {
  Mistake m;
  m.kind = kind;
  Rebuild before = to;
  if (!put(to, m, random)) {
    to = std::move(before);
    return false;
  }
  to.mistakes.push_back(std::move(m));
  return true;
}

// Of ten rebuilds two are clean, seven have one mistake, kind after kind, and one has several. Of a hundred, ten have limits for the
// test run, and their mistakes there.
Rebuild make_rebuild(unsigned long long seed) {
  constexpr int kBefore = kKinds - kKindsOfRun;
  const auto in_ten = static_cast<int>(seed % 10);
  const bool at_run = seed / 10 % 10 == 9;
  const auto of_run = static_cast<int>((seed / 100 + seed) % kKindsOfRun);
  const auto kind =
      static_cast<Kind>(at_run ? kBefore + of_run
                               : static_cast<int>((seed / 10 * 7 + static_cast<unsigned long long>(in_ten)) % kBefore));
  for (unsigned long long attempt = 0;; ++attempt) {
    Random random{seed * 1000 + attempt}, of_its_run{~(seed * 1000 + attempt)};
    Rebuild r;
    r.seed = seed;
    draw_shaft(r, random);
    draw_shop(r, random);
    build_right(r, random);
    if (at_run) draw_run(r, of_its_run);
    if (in_ten >= 2 && in_ten < 9 && !put_mistake(r, kind, at_run ? of_its_run : random) && attempt < 900) continue;
    if (in_ten == 9)
      for (int wanted = random.whole(2, 4), tries = 0; wanted > 0 && tries < 40; ++tries)
        wanted -= put_mistake(r, static_cast<Kind>(random.whole(0, kBefore - 1)), random) ? 1 : 0;
    if (in_ten == 9 && at_run)
      for (int tries = 0; tries < 8; ++tries)
        if (put_mistake(r, static_cast<Kind>(of_its_run.whole(kBefore, kKinds - 1)), of_its_run)) break;
    finish(r, random);
    return r;
  }
}

}  // namespace rebuilds
