// The three files as the shop would write them. Own formatting: the files' shapes are those of docs/reference.
#include <cstdio>
#include <map>
#include <numbers>

#include "tests/rebuilds/truth.h"

namespace rebuilds {
namespace {

std::string quoted(const std::string& text) { return "\"" + text + "\""; }
std::string key(const std::string& name) { return name.find(' ') == std::string::npos ? name : quoted(name); }
void line(std::string& to, const std::string& name, const std::string& value) { to += name + " = " + value + "\n"; }
void text(std::string& to, const std::string& name, const std::string& value) { line(to, name, quoted(value)); }

std::string numbers(const std::vector<int>& list) {
  std::string out = "[";
  for (const int n : list) out += (out.size() > 1 ? ", " : "") + std::to_string(n);
  return out + "]";
}
std::string texts(const std::vector<std::string>& list) {
  std::string out = "[";
  for (const std::string& s : list) out += (out.size() > 1 ? ", " : "") + quoted(s);
  return out + "]";
}
/// 0.1 as "10 %" or 0.1.
std::string share(double value, Random& random) {
  char figures[32];
  std::snprintf(figures, sizeof figures, "%g", value);
  return random.chance(0.5) ? quoted(in_percent(value, 0).text) : std::string{figures};
}

void write_pattern(const Drawing& d, std::string& out) {
  if (d.rule == Rule::facing) text(out, "pattern", "facing");
  if (d.rule == Rule::step) line(out, "pattern", "{ step = " + std::to_string(d.step) + " }");
  if (d.rule == Rule::listed) line(out, "pattern", "{ flats = " + numbers(d.listed) + " }");
  if (d.first_flat) line(out, "first_flat", std::to_string(*d.first_flat));
}

void write_rotor(const Drawing& d, std::string& out) {
  out += "\n[rotor]\n";
  text(out, "lean", d.lean.front().text);
  text(out, "mark", "notch");
  text(out, "tip_radius", "230 mm");
  text(out, "tine_width", "34 mm");
  text(out, "mass", "25.6 lb");
  line(out, "inertia", "{ across = \"0.085 kg·m²\", along = \"0.16 kg·m²\" }");
  line(out, "half",
       "{ length = " + quoted(d.half_length.text) + ", tolerance = " + quoted(d.half_tolerance.text) + " }");
  line(out, "bearing",
       "{ designation = " + quoted(d.designation) + ", d = " + quoted(d.d.text) + ", D = " + quoted(d.D.text) +
           ", B = " + quoted(d.B.text) + ", tolerance = " + quoted(d.tolerance_class) +
           ", outer_ring_inside = " + quoted(d.ring_inside.text) + " }");
  std::string hub =
      d.fit.empty() ? "bore_least = " + quoted(d.bore_least.text) + ", bore_greatest = " + quoted(d.bore_greatest.text)
                    : "fit = " + quoted(d.fit);
  hub += ", outside = " + quoted(d.hub_outside.text) + ", material = " + quoted(d.material.name);
  hub += ", roughness_loss = " + quoted(d.loss.text);
  if (d.ovality) hub += ", ovality = " + quoted(d.ovality->text);
  if (d.taper) hub += ", taper = " + quoted(d.taper->text);
  line(out, "hub", "{ " + hub + " }");
  line(out, "snap_rings", std::to_string(d.rings));
  line(out, "seals", std::to_string(d.seals));
  line(out, "adapter_set", "{ part = \"TH-SET\", price = \"148.00 EUR\" }");
  line(out, "seal", "{ part = \"TH-SEAL\", price = \"6.50 EUR\" }");
  if (!d.material.text.empty()) out += "\n" + d.material.text;
}

std::string station(const Drawing& d, const Part& p) {
  std::string out = "{ ";
  if (p.kind == "rotor") {
    out += "rotor = \"two halves\"";
    const Typed& lean = d.lean[static_cast<std::size_t>(p.rotor) - 1];
    if (lean.text != d.lean.front().text) out += ", with = { lean = " + quoted(lean.text) + " }";
    return out + " }";
  }
  const bool own = p.kind == "guard disc";
  out += (own ? "own" : p.kind) + " = " + quoted(p.length.text);
  if (own) out += ", name = " + quoted(p.kind);
  out += ", tolerance = " + quoted(p.tolerance.text);
  if (p.obstacle && p.kind != "shoulder") out += ", obstacle = true";
  for (const auto& [part, count] : p.fit_before)
    out += ", fit_before = [ { part = " + quoted(part) + ", count = " + std::to_string(count) + " } ]";
  return out + " }";
}

void write_limits(const RunLimits& run, std::string& out) {
  if (!run.shortest) return;
  out += "\n[test_run]\n";
  text(out, "shortest", run.shortest->text);
  if (run.rise) text(out, "greatest_rise", run.rise->text);
  if (run.vibration) text(out, "greatest_vibration", run.vibration->text);
}

std::string write_shaft(const Drawing& d, Random& random) {
  std::string out = "[shaft]\nname = \"A shaft\"\ninvented = true\n";
  line(out, "flats", std::to_string(d.flats));
  text(out, "across", d.across.text);
  text(out, "speed", "480 /min");
  write_pattern(d, out);
  write_rotor(d, out);
  out += "\n[stack]\norder = [\n";
  for (const Part& p : d.parts) out += "  " + station(d, p) + ",\n";
  out += "]\n\n[nut]\nthread = \"M48x3\"\nlubrication = \"oiled\"\n";
  for (const Nut& n : d.nuts)
    line(out, std::string(1, n.end),
         "{ torque = " + quoted(n.torque.text) + ", tolerance = " + share(n.tolerance, random) + " }");
  write_limits(d.run, out);
  out += "\n[policy]\n";
  if (!d.renew || random.chance(0.5)) line(out, "renew_disturbed", d.renew ? "true" : "false");
  if (d.one_sided) text(out, "decision", "one_sided");
  text(out, "open_joint_step", d.open_step.text);
  if (d.least_gap_given) text(out, "least_open_gap", d.least_gap.text);
  if (d.unbalance) out += "\n[[unbalance]]\nat = \"pulley\"\namount = \"40 g·mm\"\nflat = 1\n";
  return out;
}

std::string write_shop(const Shop& shop) {
  std::string out = "[workshop]\nname = \"A workshop\"\ninvented = true\n";
  text(out, "currency", shop.currency);
  if (shop.rate) text(out, "rate", std::to_string(*shop.rate) + " EUR/h");
  text(out, "room", shop.room.text);
  text(out, "room_half_width", shop.half_width.text);
  for (const Gauge& g : shop.gauges) {
    out += "\n[[gauge]]\n";
    text(out, "id", g.id);
    text(out, "use", g.use);
    text(out, "calibration", g.calibration.text);
    text(out, "resolution", g.resolution.text);
    if (g.repeatability) text(out, "repeatability", g.repeatability->text);
    if (g.repeatability) line(out, "repeatability_readings", std::to_string(g.study));
    if (g.ring) text(out, "setting_ring", g.ring->text);
    if (g.ring_calibration) text(out, "setting_ring_calibration", g.ring_calibration->text);
    if (g.expansion) text(out, "expansion", g.expansion->text);
    line(out, "calibrated_until", g.until);
    if (!g.accepted_by.empty()) text(out, "accepted_overdue_by", g.accepted_by);
  }
  for (const OwnPress& p : shop.presses) {
    out += "\n[[press]]\n";
    text(out, "interference", p.interference.text);
    text(out, "joint_diameter", p.diameter.text);
    text(out, "width", p.width.text);
    text(out, "force", p.force.text);
  }
  return out;
}

std::string marks(const RotorSheet& s) {
  std::string out;
  const auto one = [&](const char* half, const std::optional<int>& flat, bool unread) {
    if (!flat && !unread) return;
    out += (out.empty() ? "" : ", ") + std::string{half} + " = " + (flat ? std::to_string(*flat) : quoted("not read"));
  };
  one("a", s.mark_a, s.mark_a_unread);
  one("b", s.mark_b, s.mark_b_unread);
  return out;
}

void write_bench_parts(const Rebuild& r, const RotorSheet& s, std::string& out) {
  if (s.fitted) text(out, "fitted", *s.fitted);
  std::string leans;
  if (s.lean_a) leans = "a = " + quoted(*s.lean_a);
  if (s.lean_b) leans += (leans.empty() ? "b = " : ", b = ") + quoted(*s.lean_b);
  if (!leans.empty()) line(out, "lean_marked", "{ " + leans + " }");
  if (!s.rings_sound.empty()) line(out, "rings_sound", texts(s.rings_sound));
  if (s.force) {
    std::string press = "force = " + quoted(*s.force) + ", gauge = " + quoted(r.shop.gauge("PG").id);
    if (s.ring) press += ", ring = " + quoted(*s.ring);
    line(out, "press", "{ " + press + " }");
  }
  std::string counts;
  for (const auto& [item, counted] : s.counted) {
    counts += (counts.empty() ? "" : ", ") + item + " = { laid = " + std::to_string(counted.laid);
    if (counted.left) counts += ", left = " + std::to_string(*counted.left);
    counts += " }";
  }
  if (!counts.empty()) line(out, "count_out", "{ " + counts + " }");
}

void write_bore(const Rebuild& r, const RotorSheet& s, std::string& out) {
  if (s.bore[0].empty() && s.bore[1].empty()) return;
  out += "[rotor.bore]\n";
  text(out, "gauge", r.shop.gauge("BG").id);
  if (!s.part.empty()) text(out, "part", s.part);
  if (!s.gauge_at.empty()) text(out, "gauge_at", s.gauge_at);
  if (!s.thermometer.empty()) text(out, "thermometer", s.thermometer);
  if (!s.bore[0].empty()) line(out, "A", texts(s.bore[0]));
  if (!s.bore[1].empty()) line(out, "B", texts(s.bore[1]));
}

void write_torque(const TorqueSheet& t, std::string& out) {
  out += "\n[[torque]]\n";
  text(out, "nut", std::string(1, t.nut));
  text(out, "with", t.bar ? "bar" : "wrench");
  text(out, t.bar ? "pull" : "shown", t.shown.text);
  text(out, "gauge", t.gauge);
  if (t.length) text(out, "tool_length", t.length->text);
  if (t.extension) text(out, "extension", t.extension->text);
}

std::string hanger(const std::string& label, const HangerSheet& s) {
  std::string out = "{ label = " + quoted(label);
  if (s.temperature) out += ", temperature = " + quoted(s.temperature->text);
  if (s.vibration) out += ", vibration = " + quoted(s.vibration->text);
  return out + " }";
}

void write_run(const Rebuild& r, std::string& out) {
  if (!r.run.read) return;
  const RunSheet& run = r.sheet.run;
  out += "\n[test_run]\n";
  if (run.ran) text(out, "ran", run.ran->text);
  if (run.room) text(out, "room", run.room->text);
  text(out, "thermometer", r.shop.gauge("TH").id);
  text(out, "meter", r.shop.gauge("VM").id);
  std::string list;
  for (const auto& [label, s] : run.hangers) list += (list.empty() ? "" : ", ") + hanger(label, s);
  if (!list.empty()) line(out, "hanger", "[ " + list + " ]");
}

void write_answers(const Sheet& sheet, std::string& out) {
  out += "\n[answers]\n";
  for (const auto& [question, replies] : sheet.answers) {
    if (replies.empty()) continue;
    if (replies.begin()->first.empty()) {
      text(out, question, replies.begin()->second);
      continue;
    }
    std::string inner;
    for (const auto& [about, reply] : replies)
      inner += (inner.empty() ? "" : ", ") + key(about) + " = " + quoted(reply);
    line(out, question, "{ " + inner + " }");
  }
}

std::string write_readings(const Rebuild& r) {
  const Sheet& sheet = r.sheet;
  std::string out =
      "[readings]\nshaft = \"shaft.toml\"\nworkshop = \"workshop.toml\"\njob = \"" + std::to_string(r.seed) + "\"\n";
  line(out, "date", sheet.date);
  line(out, "came_off", numbers(sheet.came_off));
  if (!sheet.still_off.empty()) line(out, "still_off", numbers(sheet.still_off));
  line(out, "new_set", numbers(sheet.new_set));
  if (sheet.labels_back) line(out, "labels_back", texts(*sheet.labels_back));
  for (const auto& [number, s] : sheet.rotors) {
    out += "\n[[rotor]]\n";
    line(out, "number", std::to_string(number));
    if (const std::string m = marks(s); !m.empty()) line(out, "marks", "{ " + m + " }");
    write_bench_parts(r, s, out);
    write_bore(r, s, out);
  }
  for (const auto& [label, length] : sheet.parts_measured)
    out += "\n[[part]]\nlabel = " + quoted(label) + "\nlength = " + quoted(length.text) +
           "\ngauge = " + quoted(r.shop.gauge("MIC").id) + "\n";
  if (sheet.stack)
    out += "\n[[stack]]\nlength = " + quoted(sheet.stack->text) + "\ngauge = " + quoted(r.shop.gauge("SL").id) + "\n";
  for (const Felt& f : sheet.feelers)
    out += "\n[[feeler]]\njoint = " + std::to_string(f.joint) + "\npassed = " + (f.passed ? "true" : "false") +
           "\nblade = \"0.05 mm\"\ngauge = " + quoted(r.shop.gauge("FG").id) + "\n";
  for (const TorqueSheet& t : sheet.torques) write_torque(t, out);
  write_run(r, out);
  write_answers(sheet, out);
  return out;
}

}  // namespace

Texts write(const Rebuild& r, Random& random) {
  return {write_shaft(r.drawing, random), write_shop(r.shop), write_readings(r)};
}

}  // namespace rebuilds
