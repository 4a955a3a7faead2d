// Mistakes in the timing marks.
#include "tests/rebuilds/mistakes.h"

namespace rebuilds {
namespace {

int& mark(Rebuild& r, int rotor, char half) { return half == 'a' ? r.rotor(rotor).mark_a : r.rotor(rotor).mark_b; }
const char* half_name(char half) { return half == 'a' ? "half A" : "half B"; }
/// One or a few rotors wrong; several such mistakes can stand beside each other.
bool claim_some(Rebuild& r) {
  if (has_claim(r, "marks whole")) return false;
  r.claimed.emplace_back("marks some");
  return true;
}
/// A mistake that needs the marks to itself.
bool claim_whole(Rebuild& r) { return !has_claim(r, "marks some") && claim(r, "marks whole"); }
bool all_off(const Rebuild& r) { return r.fixed().empty(); }

bool put_half_out(Rebuild& r, Mistake& m, Random& random) {
  const int rotor = claim_some(r) ? free_rotor(r, "marks", random) : 0;
  if (rotor == 0) return false;
  const char half = random.chance(0.5) ? 'a' : 'b';
  const int by = random.whole(1, r.drawing.flats - 1);
  mark(r, rotor, half) = turned(mark(r, rotor, half), by, r.drawing.flats);
  m.halves = {{rotor, half}};
  m.told =
      std::string{half_name(half)} + " of rotor " + std::to_string(rotor) + " out by " + std::to_string(by) + " flats";
  return true;
}

bool put_indexed(Rebuild& r, Mistake& m, Random& random) {
  const int rotor = claim_some(r) ? free_rotor(r, "marks", random) : 0;
  if (rotor == 0) return false;
  const int by = random.whole(1, r.drawing.flats - 1);
  for (const char half : {'a', 'b'}) {
    mark(r, rotor, half) = turned(mark(r, rotor, half), by, r.drawing.flats);
    m.halves.emplace_back(rotor, half);
  }
  m.told = "rotor " + std::to_string(rotor) + " indexed wrong by " + std::to_string(by) + " flats";
  return marks_are_wrong(r);
}

bool put_swapped(Rebuild& r, Mistake& m, Random& random) {
  if (!claim_some(r)) return false;
  const int one = free_rotor(r, "marks", random), other = free_rotor(r, "marks", random);
  if (one == 0 || other == 0) return false;
  const char first = random.chance(0.5) ? 'a' : 'b', second = random.chance(0.5) ? 'a' : 'b';
  if (mark(r, one, first) == mark(r, other, second)) return false;  // Nothing would show, and nothing would be wrong.
  std::swap(mark(r, one, first), mark(r, other, second));
  m.halves = {{one, first}, {other, second}};
  m.told = std::string{half_name(first)} + " of rotor " + std::to_string(one) + " and " + half_name(second) +
           " of rotor " + std::to_string(other) + " swapped";
  return true;
}

void stand(Rebuild& r, int rotor, int flat) {
  mark(r, rotor, 'a') = flat;
  mark(r, rotor, 'b') = turned(flat, r.drawing.flats / 2, r.drawing.flats);
}

bool put_other_pattern(Rebuild& r, Mistake& m, Random& random) {
  if (!all_off(r) || !claim_whole(r)) return false;
  const Drawing& d = r.drawing;
  m.step = random.chance(0.4) ? d.flats / 2 : random.whole(-d.flats / 2 + 1, d.flats / 2);
  const int first = r.rotor(1).mark_a;
  bool other_hand = true;
  for (const Rotor& rotor : r.rotors) {
    const int flat = turned(first, m.step * (rotor.number - 1), d.flats);
    other_hand = other_hand && flat == flat_of(d, first, true, rotor.number);
    stand(r, rotor.number, flat);
  }
  m.told = "built in steps of " + std::to_string(m.step) + " flats";
  return !other_hand && marks_are_wrong(r);
}

bool put_mirrored(Rebuild& r, Mistake& m, Random&) {
  const Drawing& d = r.drawing;
  const bool hand_fixed = d.rule == Rule::listed || d.first_flat;
  if (!all_off(r) || !hand_fixed || !claim_whole(r)) return false;
  const int first = r.rotor(1).mark_a;
  for (const Rotor& rotor : r.rotors) stand(r, rotor.number, flat_of(d, first, true, rotor.number));
  m.told = "the whole shaft mirrored";
  // A list that is its own mirror, turned, would be another mistake.
  for (int turn = 1; turn <= d.flats; ++turn) {
    const auto same = [&](const Rotor& x) { return x.mark_a == flat_of(d, turn, false, x.number); };
    if (std::ranges::all_of(r.rotors, same)) return false;
  }
  return true;
}

bool put_fixed_contradict(Rebuild& r, Mistake& m, Random& random) {
  const std::vector<int> fixed = r.fixed();
  if (fixed.empty() || !claim_whole(r)) return false;
  const int rotor = random.pick(fixed), by = random.whole(1, r.drawing.flats - 1);
  const bool whole = random.chance(0.6);
  const char half = random.chance(0.5) ? 'a' : 'b';
  for (const char h : {'a', 'b'})
    if (whole || h == half) mark(r, rotor, h) = turned(mark(r, rotor, h), by, r.drawing.flats);
  m.told = "rotor " + std::to_string(rotor) + " stayed and is " + (whole ? "indexed" : "paired") + " wrong by " +
           std::to_string(by);
  return fixed_contradict(r);
}

bool leave_unread(Rebuild& r, Mistake& m, Random& random) {
  if (!claim_whole(r)) return false;
  const int rotor = random.whole(1, r.drawing.rotors);
  const bool a = random.chance(0.5), written = random.chance(0.5);
  m.timing = false;
  m.told = "mark of half " + std::string{a ? "A" : "B"} + " of rotor " + std::to_string(rotor) + " not read";
  m.names = {{{"timing.unread"}, at_rotor(rotor), {{"halves", a ? "half.a" : "half.b"}}},
             {{"timing.cannot_tell"}, {}, {}}};
  m.after = [=](Rebuild& to, Mistake&, Random&) {
    RotorSheet& sheet = to.sheet.rotors[rotor];
    (a ? sheet.mark_a : sheet.mark_b).reset();
    (a ? sheet.mark_a_unread : sheet.mark_b_unread) = written;
  };
  return true;
}

}  // namespace

bool put_in_marks(Rebuild& r, Mistake& m, Random& random) {
  m.timing = true;
  switch (m.kind) {
    case Kind::half_out:
      return put_half_out(r, m, random);
    case Kind::indexed_wrong:
      return put_indexed(r, m, random);
    case Kind::halves_swapped:
      return put_swapped(r, m, random);
    case Kind::other_pattern:
      return put_other_pattern(r, m, random);
    case Kind::mirrored:
      return put_mirrored(r, m, random);
    case Kind::fixed_contradict:
      return put_fixed_contradict(r, m, random);
    default:
      return leave_unread(r, m, random);
  }
}

}  // namespace rebuilds
