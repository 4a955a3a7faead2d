#include "core/metrology/findings.h"

#include <cmath>
#include <utility>

namespace flatwise::metrology {
namespace {

AnyQuantity length(double m) { return {m, Kind::length}; }

Word answer_word(Answer answer) {
  switch (answer) {
    case Answer::in:
      return Word{"answer.in"};
    case Answer::out:
      return Word{"answer.out"};
    case Answer::cannot_tell:
      break;
  }
  return Word{"answer.cannot_tell"};
}

Message set_aside() { return {Code{"metrology.set_aside"}, {}}; }

/// The arguments that every finding about a value and its limit carries.
Args of_value(const Sized& value, const Judged& judged, Rule rule, const Word& plane) {
  return {{"plane", plane},
          {"value", length(value.value_si)},
          {"uncertainty", length(value.guard_si(rule))},
          {"limit", length(judged.limit_si)},
          {"by", length(std::abs(judged.margin_si))}};
}

Finding cannot_tell(Args args, Word what, bool inside, Message settle) {
  args.emplace_back("what", std::move(what));
  args.emplace_back("side", inside ? Word{"metrology.inside"} : Word{"metrology.outside_of"});
  return {Code{"metrology.cannot_tell"}, Severity::cannot_tell, std::move(args), {}, std::move(settle)};
}

void say_size(const PlaneJudged& p, Rule rule, const Word& plane, bool over, std::vector<Finding>& out) {
  const Judged& judged = over ? p.greatest_judged : p.least_judged;
  if (judged.answer == Answer::in) return;
  Args args = of_value(over ? p.greatest : p.least, judged, rule, plane);
  if (judged.answer == Answer::cannot_tell) {
    const Settle& settle = over ? p.settle_greatest : p.settle_least;
    out.push_back(cannot_tell(std::move(args), over ? Word{"metrology.greatest"} : Word{"metrology.least"},
                              judged.margin_si >= 0, settle_message(settle, false, plane)));
    return;
  }
  if (over && p.direction_known) args.emplace_back("direction", any(p.greatest_at));
  const Code code = over ? Code{"metrology.bore_over"} : Code{"metrology.bore_under"};
  out.push_back({code, Severity::out, std::move(args), {}, set_aside()});
}

void say_form(const PlaneJudged& p, Rule rule, const Word& plane, std::vector<Finding>& out) {
  if (!p.enough_directions) {
    const Code code = p.directions < 3 ? Code{"metrology.too_few_directions"} : Code{"metrology.directions_too_close"};
    out.push_back({code,
                   Severity::cannot_tell,
                   {{"plane", plane}, {"directions", p.directions}},
                   {},
                   Message{Code{"metrology.read_four_directions"}, {{"plane", plane}}}});
    return;
  }
  if (p.form == Answer::in) return;
  Args args = of_value(*p.ovality, p.ovality_judged, rule, plane);
  if (p.form == Answer::cannot_tell) {
    out.push_back(cannot_tell(std::move(args), Word{"metrology.ovality"}, p.ovality_judged.margin_si >= 0,
                              settle_message(p.settle_ovality, true, plane)));
    return;
  }
  if (p.direction_known) args.emplace_back("direction", any(p.greatest_at));
  out.push_back({Code{"metrology.oval"}, Severity::out, std::move(args), {}, set_aside()});
}

Finding plain(Code code, const Word& plane, Code instruction, Args more = {}) {
  Args args{{"plane", plane}};
  args.insert(args.end(), more.begin(), more.end());
  return {code, Severity::cannot_tell, std::move(args), {}, Message{instruction, {{"plane", plane}}}};
}

Finding too_far(const PlaneJudged& p, const Word& plane) {
  return plain(Code{"metrology.too_far_from_20"}, plane, Code{"metrology.let_it_stand"},
               {{"what", p.farthest.gauge ? Word{"metrology.gauge"} : Word{"metrology.part"}},
                {"rise", any(p.farthest.from_20)}});
}

/// Gauge and day where they are known; the sentence does without.
Args gauge_args(const Named& named, const Word& plane) {
  Args args{{"plane", plane}};
  if (!named.gauge.empty()) args.emplace_back("gauge", named.gauge);
  if (!named.until.empty()) args.emplace_back("until", named.until);
  return args;
}

Finding accepted(const Word& plane, const Named& named) {
  Args args = gauge_args(named, plane);
  if (!named.accepted_by.empty()) args.emplace_back("by", named.accepted_by);
  return {Code{"metrology.gauge_accepted"}, Severity::note, std::move(args), {}, std::nullopt};
}

void say_obstacles(const PlaneJudged& p, const Word& plane, const Named& named, std::vector<Finding>& out) {
  if (p.obstacles.far_off) out.push_back(plain(Code{"metrology.far_off"}, plane, Code{"metrology.check_typed"}));
  if (p.obstacles.too_far_from_20) out.push_back(too_far(p, plane));
  if (p.obstacles.disagree)
    out.push_back(plain(Code{"metrology.readings_disagree"}, plane, Code{"metrology.read_all_again"}));
  if (p.obstacles.no_scatter)
    out.push_back(plain(Code{"metrology.no_scatter"}, plane, Code{"metrology.read_three_times"}));
  if (p.obstacles.overdue) out.push_back(overdue_finding(p.would_be, named, plane));
}

/// A difference against its limit: taper, bell-mouth.
void say_difference(const Sized& value, const Judged& judged, const Settle& settle, Rule rule, Word what, Finding found,
                    std::vector<Finding>& out) {
  if (judged.answer == Answer::in) return;
  const Word plane{"metrology.both_planes"};
  Args args = of_value(value, judged, rule, plane);
  if (judged.answer == Answer::cannot_tell) {
    out.push_back(
        cannot_tell(std::move(args), std::move(what), judged.margin_si >= 0, settle_message(settle, true, plane)));
    return;
  }
  args.insert(args.end(), found.args.begin(), found.args.end());
  found.args = std::move(args);
  out.push_back(std::move(found));
}

/// Not std::stable_sort: its buffer makes this compiler warn of optionals it has itself checked.
std::vector<Finding> worst_first(std::vector<Finding>&& all) {
  std::vector<Finding> ordered;
  ordered.reserve(all.size() + 2);
  for (const bool outs : {true, false})
    for (Finding& f : all)
      if ((f.severity == Severity::out) == outs) ordered.push_back(std::move(f));
  return ordered;
}

}  // namespace

Word plane_word(std::string_view plane) {
  if (plane == "A") return Word{"metrology.plane_a"};
  if (plane == "B") return Word{"metrology.plane_b"};
  if (plane == "C") return Word{"metrology.plane_c"};
  return Word{"metrology.plane_this"};
}

std::string_view answer_text(Answer answer) {
  return answer == Answer::in ? "in" : answer == Answer::out ? "out" : "cannot_tell";
}

Message settle_message(const Settle& settle, bool scatter_only, const Word& plane) {
  switch (settle.remedy) {
    case Remedy::take_temperatures:
      return {Code{"metrology.settle_temperatures"}, {{"plane", plane}}};
    case Remedy::readings:
      return {Code{"metrology.settle_readings"}, {{"plane", plane}, {"readings", settle.readings}}};
    case Remedy::gauge:
      if (scatter_only)
        return {Code{"metrology.settle_steadier_gauge"}, {{"plane", plane}, {"holds", length(settle.holds_m)}}};
      return {Code{"metrology.settle_gauge"}, {{"plane", plane}, {"holds", length(settle.holds_m)}}};
    case Remedy::temperatures_and_gauge:
      return {Code{"metrology.settle_temperatures_and_gauge"}, {{"plane", plane}, {"holds", length(settle.holds_m)}}};
    case Remedy::none:
      break;
  }
  return {Code{"metrology.settle_none"}, {{"plane", plane}}};
}

Finding overdue_finding(Answer would_be, const Named& named, const Word& plane) {
  Args args = gauge_args(named, plane);
  args.emplace_back("would_be", answer_word(would_be));
  return {Code{"metrology.gauge_overdue"},
          Severity::cannot_tell,
          std::move(args),
          {},
          Message{Code{"metrology.gauge_in_date_or_accept"}, {}}};
}

std::vector<Finding> plane_findings(const PlaneJudged& p, Rule rule, const Named& named) {
  const Word plane = plane_word(named.plane);
  std::vector<Finding> out;
  say_obstacles(p, plane, named, out);
  const std::size_t obstacles = out.size();
  say_size(p, rule, plane, true, out);
  say_size(p, rule, plane, false, out);
  say_form(p, rule, plane, out);
  // What an obstacle stands before is not said to be out: nobody shall set a hub aside on it.
  if (obstacles > 0) {
    for (Finding& f : out) {
      if (f.severity == Severity::out) f.instruction.reset();
      f.severity = Severity::cannot_tell;
    }
  }
  out = worst_first(std::move(out));
  if (p.not_two_lobed)
    out.push_back({Code{"metrology.not_two_lobed"}, Severity::note, {{"plane", plane}}, {}, std::nullopt});
  if (p.standing == Standing::accepted) out.push_back(accepted(plane, named));
  return out;
}

std::vector<Finding> taper_findings(const TaperJudged& t, Rule rule) {
  std::vector<Finding> out;
  const Word wider = t.wider_at_b ? Word{"metrology.plane_b"} : Word{"metrology.plane_a"};
  say_difference(t.taper, t.taper_judged, t.settle_taper, rule, Word{"metrology.taper_what"},
                 {Code{"metrology.taper"}, Severity::out, {{"wider", wider}}, {}, set_aside()}, out);
  if (t.bell_mouth)
    say_difference(*t.bell_mouth, t.bell_judged, t.settle_bell, rule, Word{"metrology.bell_mouth_what"},
                   {Code{"metrology.bell_mouth"}, Severity::out, {}, {}, set_aside()}, out);
  return worst_first(std::move(out));
}

}  // namespace flatwise::metrology
