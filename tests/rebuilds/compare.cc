// What was said against what was put in.
#include <algorithm>
#include <cstdlib>

#include "tests/rebuilds/told.h"

namespace rebuilds {
namespace {

using Pairs = std::vector<std::pair<std::string, std::string>>;

std::string value_in(const Pairs& args, const std::string& name) {
  const auto it = std::ranges::find(args, name, &std::pair<std::string, std::string>::first);
  return it == args.end() ? std::string{} : it->second;
}
int number(const std::string& text) { return std::atoi(text.c_str()); }

std::set<int> number_list(const std::string& text) {
  std::set<int> out;
  for (std::size_t at = 0; at < text.size(); at = text.find(',', at) + 1) {
    out.insert(number(text.substr(at)));
    if (text.find(',', at) == std::string::npos) break;
  }
  return out;
}

bool has_code(const Named& named, const Told& told) {
  return std::ranges::find(named.codes, told.code) != named.codes.end();
}

bool matches(const Named& named, const Told& told) {
  if (!has_code(named, told) || (!named.place.empty() && told.place != named.place)) return false;
  if (!named.todo.empty() && told.todo != named.todo) return false;
  if (named.todo.empty() && told.severity == Told::Severity::note && told.code != "job.units_mixed") return false;
  return std::ranges::all_of(named.args, [&](const auto& a) { return told.arg(a.first) == a.second; });
}
bool said(const Named& named, const AllTold& told) {
  return std::ranges::any_of(told.findings, [&](const Told& t) { return matches(named, t); });
}
bool any_said(const std::vector<Named>& names, const AllTold& told) {
  return std::ranges::any_of(names, [&](const Named& n) { return said(n, told); });
}

void take_halves(const Told& t, TimingTold& out) {
  const int rotor = number(t.arg("rotor"));
  if (t.code == "timing.half_out")
    out.halves[{rotor, t.arg("half") == "half.a" ? 'a' : 'b'}] = number(t.todo_arg("to"));
  if (t.code != "timing.indexed_wrong" && t.code != "timing.both_out") return;
  out.halves[{rotor, 'a'}] = number(t.todo_arg("to_a"));
  out.halves[{rotor, 'b'}] = number(t.todo_arg("to_b"));
}

void take_fixed(const Told& t, TimingTold& out) {
  if (t.code == "timing.fixed_mispaired") out.mispaired.insert(number(t.arg("rotor")));
  if (t.code != "timing.fixed_disagree" && t.code != "timing.fixed_outside" &&
      t.code != "timing.fixed_against_first_flat")
    return;
  out.contradiction = t.code;
  out.contradicting = number_list(t.arg("rotors"));
}

void take_story(const Told& t, TimingTold& out) {
  if (t.code == "timing.built_step")
    out.stories.push_back(t.code + " " + t.arg("flats") + " " + t.arg("way"));
  else if (t.code == "timing.mirrored" || t.code.starts_with("timing.built_") || t.code == "timing.whole_turned")
    out.stories.push_back(t.code);
}

MistakeOutcome compare_marks(const Mistake& m, const TimingVerdict& verdict, const AllTold& told) {
  MistakeOutcome out;
  out.caught = std::ranges::any_of(
      told.findings, [](const Told& t) { return t.code.starts_with("timing.") && t.severity == Told::Severity::out; });
  out.named = verdict.halves_right;
  if (m.kind == Kind::other_pattern || m.kind == Kind::mirrored)
    out.named = verdict.story_right && verdict.halves_right;
  if (m.kind == Kind::fixed_contradict) out.named = verdict.fixed_right && verdict.halves_right;
  out.why = verdict.why;
  return out;
}

MistakeOutcome compare_certain(const Mistake& m, const AllTold& told) {
  MistakeOutcome out;
  out.named = true;
  const bool refused = !m.typed.empty() && std::ranges::find(told.corrected, m.typed) != told.corrected.end();
  if (refused) return {true, true, false, {}};
  for (const Named& named : m.names) {
    if (said(named, told)) continue;
    out.named = false;
    out.why = "no " + named.codes.front() + " at " + (named.place.empty() ? "the shaft" : named.place);
    for (const auto& [name, value] : named.args) out.why += " " + name + "=" + value;
  }
  for (std::size_t i = 1; i < m.not_out.size(); ++i)
    for (const Told& t : told.findings) {
      if (t.place != m.not_out[0] || t.severity != Told::Severity::out || !t.code.starts_with(m.not_out[i])) continue;
      const std::string plane = t.arg("plane"), other = m.other_plane;
      if (!other.empty() && (plane == other || plane == (other == "A" ? "metrology.plane_a" : "metrology.plane_b")))
        continue;
      out.named = false;
      out.why += " " + t.code + " is said to be out on readings that cannot be used";
    }
  const auto of_its_kind = [&](const Told& t) {
    return std::ranges::any_of(m.names, [&](const Named& n) { return has_code(n, t); });
  };
  out.caught = std::ranges::any_of(told.findings, of_its_kind);
  return out;
}

MistakeOutcome compare_gauged(const Mistake& m, const AllTold& told) {
  MistakeOutcome out;
  out.caught = any_said(m.out, told);
  out.named = out.caught && std::ranges::all_of(m.names, [&](const Named& n) { return said(n, told); });
  out.cannot_tell = !out.caught && any_said(m.cannot_tell, told);
  if (out.caught && !out.named)
    out.why = "called out, but " + m.names.front().codes.front() + " is not said as it should be";
  if (!out.caught) out.why = "not called out: no " + m.out.front().codes.front() + " at " + m.out.front().place;
  return out;
}

bool by_gauge(const std::string& code) {
  static const std::set<std::string> kCodes{"metrology.bore_over",    "metrology.bore_under", "metrology.oval",
                                            "metrology.taper",        "fits.force_low",       "fits.force_high",
                                            "stack.not_seated",       "stack.contradiction",  "metrology.rise_out",
                                            "metrology.vibration_out"};
  return kCodes.contains(code);
}
bool undecided_by_gauge(const std::string& code) {
  static const std::set<std::string> kCodes{
      "metrology.cannot_tell", "metrology.readings_disagree", "fits.force_near_low",         "fits.force_near_high",
      "fits.force_near_both",  "stack.cannot_tell",           "fasteners.torque_cannot_tell"};
  return kCodes.contains(code);
}

void compare_clean(const AllTold& told, Outcome& out) {
  for (const std::string& p : told.problems) out.discrete_alarms.push_back("problem " + p);
  for (const Told& t : told.findings) {
    if (t.severity == Told::Severity::note) continue;
    if (by_gauge(t.code) && t.severity == Told::Severity::out) {
      ++out.gauge_alarms;
      out.gauge_alarm_codes.push_back(t.code + " " + t.place);
    } else if (undecided_by_gauge(t.code)) {
      ++out.undecided;
    } else {
      out.discrete_alarms.push_back(t.code + " " + t.place);
      for (const auto& [name, value] : t.args) out.discrete_alarms.back() += " " + name + "=" + value;
    }
  }
}

}  // namespace

std::string Told::arg(const std::string& name) const { return value_in(args, name); }
std::string Told::todo_arg(const std::string& name) const { return value_in(todo_args, name); }

TimingTold timing_told(const AllTold& told) {
  TimingTold out;
  for (const Told& t : told.findings) {
    take_halves(t, out);
    take_fixed(t, out);
    take_story(t, out);
    if (t.code == "timing.all_right") out.all_right = true;
  }
  return out;
}

namespace {

/// A rotor that no mistake touched must not be said to be wrong for certain.
void compare_untouched(const Rebuild& r, const AllTold& told, Outcome& out) {
  for (const Told& t : told.findings) {
    if (t.severity == Told::Severity::note || !t.place.starts_with("rotor ") || t.code.starts_with("timing.")) continue;
    if (by_gauge(t.code) || undecided_by_gauge(t.code) || t.code.ends_with("gauge_overdue")) continue;
    const bool touched =
        std::ranges::any_of(r.claimed, [&](const std::string& c) { return c.starts_with(t.place + " "); });
    if (!touched) out.discrete_alarms.push_back("untouched " + t.place + ": " + t.code);
  }
}

}  // namespace

Outcome compare(const Rebuild& r, const AllTold& told) {
  Outcome out;
  const bool unread = std::ranges::any_of(r.mistakes, [](const Mistake& m) { return m.kind == Kind::mark_not_read; });
  TimingVerdict verdict;
  if (!unread) {
    verdict = judge_timing(r, timing_told(told));
    out.marks_judged = marks_are_wrong(r);
    out.mend_right = verdict.mend_right && verdict.halves_right;
    out.other_story = verdict.halves_right && !verdict.as_made;
    // Marks that are right must not be said to be wrong, whatever else is.
    if (!verdict.halves_right && !out.marks_judged) out.discrete_alarms.push_back("marks: " + verdict.why);
  }
  for (const Mistake& m : r.mistakes) {
    MistakeOutcome one = m.timing        ? compare_marks(m, verdict, told)
                         : m.out.empty() ? compare_certain(m, told)
                                         : compare_gauged(m, told);
    if (!told.refused.empty()) one.why = "file refused: " + told.refused.front();
    out.mistakes.push_back(std::move(one));
  }
  for (const std::string& p : told.refused) out.discrete_alarms.push_back("file refused: " + p);
  if (r.mistakes.empty())
    compare_clean(told, out);
  else
    compare_untouched(r, told, out);
  return out;
}

}  // namespace rebuilds
