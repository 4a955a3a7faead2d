// Mistakes on the sheet itself: readings left out, gauges past their date, wrong units.
#include "tests/rebuilds/mistakes.h"

namespace rebuilds {
namespace {

struct LeftOut {
  const char* place;  ///< What of a rotor it claims; nullptr: of the shaft.
  const char* code;
  const char* arg;
  const char* value;
  void (*leave)(RotorSheet&);
};
const LeftOut kOfRotor[] = {
    {"bore", "inspection.plane_not_measured", "plane", "A", [](RotorSheet& s) { s.bore[0].clear(); }},
    {"bore", "inspection.plane_not_measured", "plane", "B", [](RotorSheet& s) { s.bore[1].clear(); }},
    {"press", "press.not_read", nullptr, nullptr, [](RotorSheet& s) { s.force.reset(); }},
    {"press", "press.ring_not_told", nullptr, nullptr, [](RotorSheet& s) { s.ring.reset(); }},
    {"press", "press.ring_not_told", nullptr, nullptr, [](RotorSheet& s) { s.ring = "not seen"; }},
    {"bearing", "kit.designation_not_read", nullptr, nullptr, [](RotorSheet& s) { s.fitted.reset(); }},
    {"lean", "kit.lean_not_read", "half", "half.a", [](RotorSheet& s) { s.lean_a.reset(); }},
    {"lean", "kit.lean_not_read", "half", "half.b", [](RotorSheet& s) { s.lean_b.reset(); }},
    {"tray seal", "kit.not_counted", "item", "item.seal", [](RotorSheet& s) { s.counted.erase("seal"); }},
    {"tray seal", "kit.not_counted_out", "item", "item.seal", [](RotorSheet& s) { s.counted["seal"].left.reset(); }},
    {"rings", "kit.ring_not_looked_at", nullptr, nullptr, [](RotorSheet& s) { s.rings_sound = {"not seen"}; }},
};

bool of_rotor(Rebuild& r, Mistake& m, const LeftOut& what, Random& random) {
  if (std::string{what.place} == "rings" && r.drawing.rings == 0) return false;
  const int n = free_rotor(r, what.place, random);
  if (n == 0 || (std::string{what.place} == "press" && !r.rotor(n).new_set)) return false;
  m.told = std::string{what.code} + ", rotor " + std::to_string(n);
  m.names = {{{what.code}, at_rotor(n), {}}};
  if (what.arg != nullptr) m.names.front().args = {{what.arg, what.value}};
  m.after = [n, leave = what.leave](Rebuild& to, Mistake&, Random&) { leave(to.sheet.rotors[n]); };
  return true;
}

bool left_out(Rebuild& r, Mistake& m, Random& random) {
  const int which = random.whole(0, 12);
  if (which < 11) return of_rotor(r, m, kOfRotor[which], random);
  if (which == 11) {
    if (r.labels.empty() || !claim(r, "labels")) return false;
    m.told = "order of the spacers not noted";
    m.names = {{{"stack.order_not_noted"}, {}, {}}};
    m.after = [](Rebuild& to, Mistake&, Random&) { to.sheet.labels_back.reset(); };
    return true;
  }
  if (!claim(r, "length")) return false;
  m.told = "stack not measured";
  m.names = {{{"stack.not_measured"}, {}, {}}};
  m.after = [](Rebuild& to, Mistake&, Random&) { to.sheet.stack.reset(); };
  return true;
}

/// Gauges that took a reading on this sheet.
std::vector<std::string> used(const Rebuild& r) {
  std::vector<std::string> out;
  bool warm = false, pressed = false;
  for (const auto& [n, sheet] : r.sheet.rotors) {
    warm = warm || !sheet.thermometer.empty();
    pressed = pressed || sheet.force.has_value();
  }
  if (std::ranges::any_of(r.rotors, &Rotor::off)) out.emplace_back("BG");
  if (warm) out.emplace_back("TH");
  if (pressed) out.emplace_back("PG");
  const RunSheet& run = r.sheet.run;
  if (r.drawing.run.vibration &&
      std::ranges::any_of(run.hangers, [](const auto& h) { return h.second.vibration.has_value(); }))
    out.emplace_back("VM");
  if (r.sheet.stack) out.emplace_back("SL");
  if (!r.sheet.parts_measured.empty()) out.emplace_back("MIC");
  for (const TorqueSheet& t : r.sheet.torques) out.emplace_back(t.bar ? "PS" : "TW");
  std::erase_if(out, [&](const std::string& id) { return !r.shop.gauge(id).accepted_by.empty(); });
  return out;
}

bool overdue(Rebuild& r, Mistake& m, Random&) {
  if (has_claim(r, "gauge-limited") || has_claim(r, "units") || !claim(r, "overdue")) return false;
  m.after = [](Rebuild& to, Mistake& mine, Random& random) {
    Gauge& gauge = to.shop.gauge(random.pick(used(to)));
    gauge.until = random.pick<std::string>({"2026-11-24", "2026-09-30", "2025-06-30"});
    mine.told = gauge.id + " past its date";
    mine.names = {{{"job.gauge_overdue", "metrology.gauge_overdue"}, {}, {{"gauge", gauge.id}}}};
  };
  return true;
}

void exchange_unit(Mistake& m, std::string& text, const std::string& one, const std::string& other) {
  const bool first = text.ends_with(one);
  m.right = text;
  m.typed = text = with_unit(text, first ? other : one);
  m.told = m.right + " typed as " + m.typed;
  m.names.front().args = {{"typed", text}};
}

bool bore_units(Rebuild& r, Mistake& m, Random& random) {
  const int n = free_rotor(r, "bore", random);
  if (n == 0) return false;
  const int plane = random.whole(0, 1), only = random.whole(-1, 3);  // -1: all four.
  m.names = {{{"job.units_mixed"}, at_rotor(n), {}}};
  m.not_out = {at_rotor(n), "metrology.", "fits.ring_loose"};
  m.other_plane = plane == 0 ? "B" : "A";
  m.after = [=](Rebuild& to, Mistake& mine, Random&) {
    auto& readings = to.sheet.rotors[n].bore[plane];
    for (int i = 0; i < 4; ++i)
      if (only < 0 || only == i) exchange_unit(mine, readings[static_cast<std::size_t>(i)], "mm", "in");
    if (only < 0) mine.names.front().args.clear();
  };
  return true;
}

bool stack_units(Rebuild& r, Mistake& m, Random&) {
  if (!claim(r, "length")) return false;
  m.names = {{{"job.units_mixed"}, {}, {}}};
  m.after = [](Rebuild& to, Mistake& mine, Random&) {
    if (to.sheet.stack->text.find('/') != std::string::npos) to.sheet.stack = in_inches(to.sheet.stack->si, 3);
    exchange_unit(mine, to.sheet.stack->text, "mm", "in");
  };
  return true;
}

bool torque_units(Rebuild& r, Mistake& m, Random& random) {
  const char end = random.pick(r.drawing.nuts).end;
  if (!claim(r, std::string{"nut "} + end)) return false;
  m.names = {{{"job.units_mixed"}, {}, {}}};
  m.after = [=](Rebuild& to, Mistake& mine, Random&) {
    TorqueSheet& pull = *std::ranges::find(to.sheet.torques, end, &TorqueSheet::nut);
    if (pull.bar)
      exchange_unit(mine, pull.shown.text, "N", "lbf");
    else
      exchange_unit(mine, pull.shown.text, "N·m", "ft·lb");
  };
  return true;
}

bool units(Rebuild& r, Mistake& m, Random& random) {
  if (has_claim(r, "overdue")) return false;
  r.claimed.emplace_back("units");
  const int which = random.whole(0, 2);
  return which == 0 ? bore_units(r, m, random) : which == 1 ? stack_units(r, m, random) : torque_units(r, m, random);
}

}  // namespace

bool put_in_readings(Rebuild& r, Mistake& m, Random& random) {
  if (m.kind == Kind::reading_left_out) return left_out(r, m, random);
  return m.kind == Kind::gauge_overdue ? overdue(r, m, random) : units(r, m, random);
}

}  // namespace rebuilds
