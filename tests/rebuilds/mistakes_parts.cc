// Wrong parts, and what was left out: questions nobody answered, parts left on a tray.
#include "tests/rebuilds/mistakes.h"

#include <numbers>

namespace rebuilds {
namespace {

bool bearing(Rebuild& r, Mistake& m, Random& random) {
  const int n = free_rotor(r, "bearing", random);
  if (n == 0) return false;
  const std::string wanted = r.drawing.designation;
  std::string fitted = wanted.substr(0, wanted.rfind('-')) + "-" + random.pick<std::string>({"C2", "C3", "C4", "CN"});
  if (fitted == wanted) fitted += "-2Z";
  m.told = "rotor " + std::to_string(n) + " has " + fitted + " for " + wanted;
  m.names = {{{"kit.wrong_bearing"}, at_rotor(n), {{"read", fitted}, {"wanted", wanted}}}};
  m.after = [=](Rebuild& to, Mistake&, Random&) { to.sheet.rotors[n].fitted = fitted; };
  return true;
}

bool lean(Rebuild& r, Mistake& m, Random& random) {
  const int n = free_rotor(r, "lean", random);
  if (n == 0) return false;
  const double wanted = r.drawing.lean[static_cast<std::size_t>(n) - 1].si * 180 / std::numbers::pi;
  const bool a = random.chance(0.5), word = random.chance(0.3);
  const std::string fitted = in_degrees(wanted > 3 ? 2 : 5, word).text;
  m.told = std::string{"half "} + (a ? "A" : "B") + " of rotor " + std::to_string(n) + " is a " + fitted + " one";
  m.names = {{{"kit.wrong_lean"}, at_rotor(n), {{"half", a ? "half.a" : "half.b"}}}};
  m.after = [=](Rebuild& to, Mistake&, Random&) {
    RotorSheet& sheet = to.sheet.rotors[n];
    (a ? sheet.lean_a : sheet.lean_b) = fitted;
  };
  return true;
}

bool unsound(Rebuild& r, Mistake& m, Random& random) {
  const int n = r.drawing.rings > 0 ? free_rotor(r, "rings", random) : 0;
  if (n == 0) return false;
  m.told = "rotor " + std::to_string(n) + " got an unsound ring back";
  m.names = {{{"kit.ring_not_sound"}, at_rotor(n), {}}};
  m.after = [=](Rebuild& to, Mistake&, Random&) {
    auto& rings = to.sheet.rotors[n].rings_sound;
    if (rings.empty()) rings.emplace_back();
    rings.back() = "no";
  };
  return true;
}

/// A question without an answer, with "not seen", or with "no".
void leave_unanswered(Mistake& m, const std::string& question, const std::string& about, const std::string& place,
                      std::vector<std::pair<std::string, std::string>> args, Random& random) {
  const std::string reply = random.pick<std::string>({"", "", "no", "not seen"});
  args.emplace_back("question", "question." + question);
  m.told = question + (about.empty() ? "" : " of " + about) + ": " + (reply.empty() ? "no answer" : reply);
  m.names = {{{reply == "no" ? "job.answered_no" : "job.unanswered"}, place, std::move(args)}};
  m.after = [=](Rebuild& to, Mistake&, Random&) {
    if (reply.empty())
      to.sheet.answers[question].erase(about);
    else
      to.sheet.answers[question][about] = reply;
  };
}

bool unanswered_of_rotor(Rebuild& r, Mistake& m, const std::string& question, Random& random) {
  const int n = free_rotor(r, question, random);
  if (n == 0) return false;
  leave_unanswered(m, question, std::to_string(n), at_rotor(n), {}, random);
  return true;
}

/// Too few laid out, or one left over at the end.
bool on_tray(Rebuild& r, Mistake& m, const std::string& item, Random& random) {
  const int n = free_rotor(r, "tray " + item, random);
  if (n == 0) return false;
  const bool left = random.chance(0.5);
  m.told = "tray " + std::to_string(n) + ": one " + item + (left ? " left over" : " missing");
  m.names = {{{left ? "kit.left_on_tray" : "kit.missing_on_tray"}, at_rotor(n), {{"item", "item." + item}}}};
  m.after = [=](Rebuild& to, Mistake&, Random&) {
    Counted& counted = to.sheet.rotors[n].counted[item];
    if (left)
      counted.left = 1;
    else
      --counted.laid;
  };
  return true;
}

bool captive(Rebuild& r, Mistake& m, Random& random) {
  std::vector<int> with;
  for (std::size_t i = 0; i < r.part_off.size(); ++i)
    if (r.part_off[i] && !r.drawing.parts[i].fit_before.empty()) with.push_back(static_cast<int>(i));
  if (with.empty()) return false;
  const int at = random.pick(with);
  const std::string label = r.drawing.parts[static_cast<std::size_t>(at)].label;
  if (!claim(r, "captive " + label)) return false;
  leave_unanswered(m, "captive_in", label, "station " + std::to_string(at + 1), {{"station", label}}, random);
  return true;
}

bool unanswered_of_shaft(Rebuild& r, Mistake& m, const std::string& question, Random& random) {
  if (!claim(r, question)) return false;
  leave_unanswered(m, question, {}, {}, {}, random);
  return true;
}

bool recheck(Rebuild& r, Mistake& m, Random& random) {
  const char end = random.pick(r.drawing.nuts).end;
  if (!claim(r, std::string{"recheck "} + end)) return false;
  leave_unanswered(m, "nut_rechecked", std::string(1, end), {}, {{"nut", end == 'A' ? "end.a" : "end.b"}}, random);
  return true;
}

}  // namespace

bool put_in_parts(Rebuild& r, Mistake& m, Random& random) {
  if (m.kind == Kind::wrong_bearing) return bearing(r, m, random);
  if (m.kind == Kind::wrong_lean) return lean(r, m, random);
  return unsound(r, m, random);
}

bool leave_out(Rebuild& r, Mistake& m, Random& random) {
  const bool ask = random.chance(0.5);
  switch (m.kind) {
    case Kind::seal_forgotten:
      return ask ? unanswered_of_rotor(r, m, "seals_new", random) : on_tray(r, m, "seal", random);
    case Kind::ring_forgotten:
      if (r.drawing.rings == 0) return false;
      return ask ? unanswered_of_rotor(r, m, "snap_rings_home", random) : on_tray(r, m, "snap_ring", random);
    case Kind::grease_forgotten:
      return unanswered_of_rotor(r, m, "bearing_greased", random);
    case Kind::captive_forgotten:
      return captive(r, m, random);
    case Kind::safety_forgotten:
      return unanswered_of_shaft(r, m,
                                 random.pick<std::string>({"power_locked_off", "stored_energy_let_off", "frame_chocked",
                                                           "tines_clear", "guards_on", "ran_cool_and_quiet"}),
                                 random);
    case Kind::label_forgotten:
      return unanswered_of_shaft(r, m, "spacers_labelled", random);
    default:
      return recheck(r, m, random);
  }
}

}  // namespace rebuilds
