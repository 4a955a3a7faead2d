#include "core/timing/say.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>
#include <utility>

#include "core/units/rounding.h"

namespace flatwise::timing {
namespace {

std::vector<std::int64_t> listed(const std::vector<int>& numbers) { return {numbers.begin(), numbers.end()}; }
Where at_rotor(int number) { return {Where::Part::rotor, number}; }
Word half_word(Half half) { return half == Half::a ? Word{"half.a"} : Word{"half.b"}; }
Word end_word(End end) { return end == End::a ? Word{"end.a"} : Word{"end.b"}; }

/// `clockwise` as seen from end A; half a turn is neither.
Word way(int clockwise, int flats) {
  if (2 * std::abs(clockwise) == flats) return Word{"way.either"};
  return clockwise > 0 ? Word{"way.clockwise"} : Word{"way.counter_clockwise"};
}

/// All directions are said from here, until seen_from() says otherwise.
void add_seen(Args& args) { args.emplace_back("seen", end_word(End::a)); }

/// Direction and whether it is half a turn, which has none.
void add_way(Args& args, int clockwise, int flats) {
  args.emplace_back("way", way(clockwise, flats));
  add_seen(args);
  if (2 * std::abs(clockwise) == flats) args.emplace_back("half_turn", 1);
}

struct Speaker {
  const Shaft& shaft;
  const Frame& frame;
  const Reading& reading;
  const Check& check;
  std::vector<Finding> out;

  void say(Code code, Severity severity, Args args, Where where = {}, std::optional<Message> instruction = {}) {
    out.push_back({code, severity, std::move(args), where, std::move(instruction)});
  }
  [[nodiscard]] std::optional<End> reached(int rotor) const {
    for (const Turn& t : check.plan.turns)
      if (t.rotor == rotor) return t.reached_from;
    return std::nullopt;
  }
  void add_end(Args& args, int rotor) const {
    if (const auto end = reached(rotor)) args.emplace_back("end", end_word(*end));
  }
};

void add_kink(Args& args, const RotorVerdict& v) {
  if (!v.kink) return;
  args.emplace_back("kink", any(v.kink->angle));
  args.emplace_back("times", any_ratio(to_two_figures(v.kink->times)));
}

// --- rotors that never left the shaft --------------------------------------------------------------------------------

Message read_again(const std::vector<int>& rotors) {
  return {Code{"timing.read_again"}, {{"rotors", listed(rotors)}, {"count", static_cast<int>(rotors.size())}}};
}

void say_mispaired(Speaker& s) {
  for (const RotorVerdict& v : s.check.rotors) {
    if (!marks_of(s.reading, v.rotor).fixed || v.pair_out.value_or(0) == 0) continue;
    s.say(Code{"timing.fixed_mispaired"}, Severity::out, {{"rotor", v.rotor}, {"flats", std::abs(*v.pair_out)}},
          at_rotor(v.rotor), read_again({v.rotor}));
  }
}

void say_contradiction(Speaker& s, bool tie) {
  std::vector<int> named = s.check.contradicting;
  if (!tie)
    std::erase_if(named,
                  [&](int n) { return s.check.rotors[static_cast<std::size_t>(n) - 1].pair_out.value_or(0) != 0; });
  if (named.empty()) return;
  Args args{{"rotors", listed(named)}, {"count", static_cast<int>(named.size())}};
  if (s.frame.first_flat) {
    args.emplace_back("flat", *s.frame.first_flat);
    s.say(Code{"timing.fixed_against_first_flat"}, Severity::out, std::move(args), {}, read_again(named));
  } else if (tie) {
    s.say(Code{"timing.fixed_disagree"}, Severity::out, std::move(args), {}, read_again(named));
  } else {
    s.say(Code{"timing.fixed_outside"}, Severity::out, std::move(args), {}, read_again(named));
  }
}

void say_references(Speaker& s) {
  for (const Mend& m : s.check.references) {
    Args args{{"flat", m.reference.first_flat}, {"halves", static_cast<int>(m.turns.size())}, {"time", any(m.time)}};
    if (!m.fixed_rotors.empty()) {
      args.emplace_back("rotors", listed(m.fixed_rotors));
      args.emplace_back("count", static_cast<int>(m.fixed_rotors.size()));
    }
    if (!m.half_right.empty()) args.emplace_back("half_rotors", listed(m.half_right));
    if (!m.reference.as_listed) args.emplace_back("mirrored", 1);
    if (m.money) args.emplace_back("money", any_money(*m.money));
    s.say(m.reachable ? Code{"timing.reference"} : Code{"timing.reference_out_of_reach"}, Severity::note,
          std::move(args));
  }
}

// --- stories ---------------------------------------------------------------------------------------------------------

void say_mirrored(Speaker& s) {
  std::optional<Message> instruction;
  if (s.reading.mirror_is_same == true) instruction = Message{Code{"timing.mirrored_may_be_left"}, {}};
  s.say(Code{"timing.mirrored"}, Severity::out, {}, {}, std::move(instruction));
}

void say_other_pattern(Speaker& s, int step) {
  if (step == 0) return s.say(Code{"timing.built_all_alike"}, Severity::out, {});
  if (2 * step == s.frame.flats) return s.say(Code{"timing.built_facing"}, Severity::out, {});
  Args args{{"flats", std::abs(step)}, {"way", way(step, s.frame.flats)}};
  add_seen(args);
  s.say(Code{"timing.built_step"}, Severity::out, std::move(args));
}

void say_whole_turned(Speaker& s, int turned) {
  Args args{{"flats", std::abs(turned)}, {"flat", *s.frame.first_flat}};
  add_way(args, turned, s.frame.flats);
  s.say(Code{"timing.whole_turned"}, Severity::out, std::move(args));
}

void say_story(Speaker& s, const Story& story) {
  switch (story.kind) {
    case Story::Kind::halves_swapped:
      return s.say(Code{"timing.maybe_halves_swapped"}, Severity::note,
                   {{"half", half_word(story.half)},
                    {"rotor", story.rotors[0]},
                    {"other_half", half_word(story.other_half)},
                    {"other", story.rotors[1]}});
    case Story::Kind::rotors_swapped:
      return s.say(Code{"timing.maybe_rotors_swapped"}, Severity::note,
                   {{"rotor", story.rotors[0]}, {"other", story.rotors[1]}});
    case Story::Kind::other_pattern:
      return say_other_pattern(s, story.step_flats);
    case Story::Kind::no_pattern:
      return s.say(Code{"timing.built_to_no_pattern"}, Severity::out, {});
    case Story::Kind::mirrored:
      return say_mirrored(s);
    case Story::Kind::whole_turned:
      return say_whole_turned(s, story.turned);
  }
}

// --- rotor by rotor --------------------------------------------------------------------------------------------------

void say_half_out(Speaker& s, const RotorVerdict& v, Half half) {
  const int flats = half == Half::a ? *v.flats_a : *v.flats_b;
  const int to = half == Half::a ? *v.wanted_a : *v.wanted_b;
  const int from = *mark(marks_of(s.reading, v.rotor), half);
  Args what{{"rotor", v.rotor}, {"half", half_word(half)}, {"flats", std::abs(flats)}, {"from", from}, {"to", to}};
  Args mend = what;
  add_way(what, flats, s.frame.flats);
  add_kink(what, v);
  add_way(mend, -flats, s.frame.flats);
  s.add_end(mend, v.rotor);
  s.say(Code{"timing.half_out"}, Severity::out, std::move(what), at_rotor(v.rotor),
        Message{Code{"timing.turn_half"}, std::move(mend)});
}

Message turn_rotor(const Speaker& s, const RotorVerdict& v) {
  const Marks& marks = marks_of(s.reading, v.rotor);
  Args args{
      {"rotor", v.rotor}, {"from_a", *marks.a}, {"to_a", *v.wanted_a}, {"from_b", *marks.b}, {"to_b", *v.wanted_b}};
  s.add_end(args, v.rotor);
  if (v.verdict == Verdict::both_out) return {Code{"timing.turn_both"}, std::move(args)};
  args.emplace_back("flats", std::abs(*v.flats_a));
  add_way(args, -*v.flats_a, s.frame.flats);
  return {Code{"timing.turn_rotor"}, std::move(args)};
}

void say_whole_rotor(Speaker& s, const RotorVerdict& v) {
  if (v.verdict == Verdict::indexed_wrong) {
    Args args{{"rotor", v.rotor}, {"flats", std::abs(*v.flats_a)}};
    add_way(args, *v.flats_a, s.frame.flats);
    return s.say(Code{"timing.indexed_wrong"}, Severity::out, std::move(args), at_rotor(v.rotor), turn_rotor(s, v));
  }
  Args args{{"rotor", v.rotor},
            {"flats_a", std::abs(*v.flats_a)},
            {"way_a", way(*v.flats_a, s.frame.flats)},
            {"flats_b", std::abs(*v.flats_b)},
            {"way_b", way(*v.flats_b, s.frame.flats)}};
  add_seen(args);
  add_kink(args, v);
  s.say(Code{"timing.both_out"}, Severity::out, std::move(args), at_rotor(v.rotor), turn_rotor(s, v));
}

void say_unread(Speaker& s, const RotorVerdict& v) {
  const Marks& marks = marks_of(s.reading, v.rotor);
  std::vector<Word> halves;
  for (const Half half : {Half::a, Half::b})
    if (!mark(marks, half)) halves.push_back(half_word(half));
  s.say(Code{"timing.unread"}, Severity::cannot_tell, {{"rotor", v.rotor}, {"halves", halves}}, at_rotor(v.rotor),
        Message{Code{"timing.look"}, {{"rotor", v.rotor}, {"halves", halves}}});
  // The half that was read may be out for certain all the same.
  if (v.flats_a.value_or(0) != 0) say_half_out(s, v, Half::a);
  if (v.flats_b.value_or(0) != 0) say_half_out(s, v, Half::b);
}

/// The marks that it hangs on.
Message read_the_rest(const Speaker& s) {
  std::vector<int> unread;
  for (const RotorVerdict& v : s.check.rotors)
    if (v.verdict == Verdict::unread) unread.push_back(v.rotor);
  return {Code{"timing.read_the_rest"}, {{"rotors", listed(unread)}, {"count", static_cast<int>(unread.size())}}};
}

void say_unsure(Speaker& s, const RotorVerdict& v) {
  if (v.pair_out.value_or(0) == 0)
    return s.say(Code{"timing.unsure"}, Severity::cannot_tell, {{"rotor", v.rotor}}, at_rotor(v.rotor),
                 read_the_rest(s));
  Args args{{"rotor", v.rotor}, {"flats", std::abs(*v.pair_out)}};
  add_kink(args, v);
  s.say(Code{"timing.pair_out"}, Severity::out, std::move(args), at_rotor(v.rotor), read_the_rest(s));
}

void say_rotor(Speaker& s, const RotorVerdict& v) {
  switch (v.verdict) {
    case Verdict::right:
      return;
    case Verdict::half_a_out:
      return say_half_out(s, v, Half::a);
    case Verdict::half_b_out:
      return say_half_out(s, v, Half::b);
    case Verdict::indexed_wrong:
    case Verdict::both_out:
      return say_whole_rotor(s, v);
    case Verdict::unread:
      return say_unread(s, v);
    case Verdict::unsure:
      return say_unsure(s, v);
  }
}

// --- what puts it right ----------------------------------------------------------------------------------------------

void say_plan(Speaker& s) {
  const Mend& plan = s.check.plan;
  if (plan.turns.empty()) return;
  Args args{{"halves", static_cast<int>(plan.turns.size())}, {"time", any(plan.time)}};
  if (plan.money) args.emplace_back("money", any_money(*plan.money));
  std::vector<Word> ends;
  for (const End end : {End::a, End::b})
    if (std::ranges::any_of(plan.turns, [&](const Turn& t) { return t.reached_from == end; }))
      ends.push_back(end_word(end));
  if (!ends.empty()) args.emplace_back("ends", ends);
  if (!plan.reachable) return s.say(Code{"timing.out_of_reach"}, Severity::out, std::move(args));
  s.say(Code{"timing.least_work"}, Severity::note, std::move(args));
  if (!plan.money) s.say(Code{"timing.ordered_by_time"}, Severity::note, {});
  if (s.check.equal_plans > 1) s.say(Code{"timing.equal_plans"}, Severity::note, {{"count", s.check.equal_plans}});
}

void say_end(Speaker& s) {
  if (s.check.unread_halves == 0 && s.check.plan.turns.empty())
    return s.say(Code{"timing.all_right"}, Severity::note, {{"rotors", s.frame.rotors()}});
  if (s.check.unread_halves == 0) return say_plan(s);
  const Args args{{"halves", s.check.unread_halves}, {"time", any(s.check.look_time)}};
  s.say(Code{"timing.cannot_tell"}, Severity::cannot_tell, args, {}, Message{Code{"timing.go_and_look"}, args});
}

Word mirrored(const Word& way) {
  if (way == Word{"way.clockwise"}) return Word{"way.counter_clockwise"};
  return way == Word{"way.counter_clockwise"} ? Word{"way.clockwise"} : way;
}

}  // namespace

Message seen_from(Message message, End end) {
  const auto seen = std::ranges::find(message.args, std::string_view{"seen"}, &Arg::name);
  if (seen == message.args.end() || std::get<Word>(seen->value) == end_word(end)) return message;
  seen->value = end_word(end);
  for (Arg& a : message.args)
    if (a.name.starts_with("way")) a.value = mirrored(std::get<Word>(a.value));
  return message;
}

std::vector<Finding> say_check(const Shaft& shaft, const Frame& frame, const Reading& reading, const Check& check,
                               bool contradiction_is_a_tie) {
  Speaker s{shaft, frame, reading, check, {}};
  say_mispaired(s);
  say_contradiction(s, contradiction_is_a_tie);
  say_references(s);
  for (const Story& story : check.stories) say_story(s, story);
  for (const RotorVerdict& v : check.rotors) say_rotor(s, v);
  say_end(s);
  return std::move(s.out);
}

}  // namespace flatwise::timing
