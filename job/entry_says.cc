#include "job/entry_says.h"

#include "job/step_key.h"

namespace flatwise::job {
namespace {

Word half_word(Half half) { return Word{half == Half::a ? "half.a" : "half.b"}; }
Word end_word(End end) { return Word{end == End::a ? "end.a" : "end.b"}; }
Word reply_word(Reply reply) {
  switch (reply) {
    case Reply::yes:
      return Word{"reply.yes"};
    case Reply::no:
      return Word{"reply.no"};
    case Reply::not_seen:
      break;
  }
  return Word{"reply.not_seen"};
}
Word sign_word(Sign sign) {
  switch (sign) {
    case Sign::rough:
      return Word{"sign.rough"};
    case Sign::hot:
      return Word{"sign.hot"};
    case Sign::grease_out:
      return Word{"sign.grease_out"};
    case Sign::noisy:
      return Word{"sign.noisy"};
    case Sign::sound:
      break;
  }
  return Word{"sign.sound"};
}
Word held_word(Held held) { return held == Held::hanging ? Word{"held.hanging"} : Word{"held.carried"}; }
Word ring_word(RingPressed ring) {
  switch (ring) {
    case RingPressed::outer:
      return Word{"ring.outer"};
    case RingPressed::inner:
      return Word{"ring.inner"};
    case RingPressed::not_seen:
      break;
  }
  return Word{"reply.not_seen"};
}
Word from_word(teardown::OpenedFrom from) {
  switch (from) {
    case teardown::OpenedFrom::a:
      return Word{"end.a"};
    case teardown::OpenedFrom::b:
      return Word{"end.b"};
    case teardown::OpenedFrom::both:
      break;
  }
  return Word{"end.both"};
}
Word item_word(const std::string& item) { return Word{"item." + item}; }
std::string typed(const std::optional<Entered>& entered) { return entered ? entered->typed : std::string{}; }
std::vector<std::int64_t> numbers(const std::vector<int>& list) { return {list.begin(), list.end()}; }

/// The part as it is labelled: "rotor 4", "S3", "the shaft".
struct PartNamer {
  const Shaft& shaft;
  [[nodiscard]] std::string station(int number) const {
    const bool there = number >= 1 && number <= static_cast<int>(shaft.stations().size());
    return there ? shaft.stations()[static_cast<std::size_t>(number) - 1].label : std::to_string(number);
  }
  /// "rotor" with its number where the station is one, else "part" with its label: "4" alone is no name.
  [[nodiscard]] Args named(int number) const {
    const bool there = number >= 1 && number <= static_cast<int>(shaft.stations().size());
    if (there && shaft.stations()[static_cast<std::size_t>(number) - 1].kind == StationKind::rotor)
      return {{"rotor", shaft.stations()[static_cast<std::size_t>(number) - 1].number}};
    return {{"part", station(number)}};
  }
  [[nodiscard]] Args operator()(const Where& where) const {
    if (where.part == Where::Part::rotor && where.number > 0) return {{"rotor", where.number}};
    if (where.part == Where::Part::station && where.number > 0) return {{"part", station(where.number)}};
    return {};
  }
};

Args with(Args args, std::initializer_list<Arg> more) {
  args.insert(args.end(), more.begin(), more.end());
  return args;
}

struct Sentence {
  PartNamer part;

  /// The rotors and the other parts among stations.
  [[nodiscard]] Args of_parts(const std::vector<int>& stations) const {
    std::vector<std::int64_t> rotors;
    std::vector<std::string> parts;
    for (const int number : stations)
      for (const Arg& arg : part.named(number))
        if (const auto* rotor = std::get_if<std::int64_t>(&arg.value))
          rotors.push_back(*rotor);
        else
          parts.push_back(part.station(number));
    return {{"rotors", std::move(rotors)}, {"parts", std::move(parts)}};
  }
  static Arg times(const StepKey& key) { return {"times", key.times == 1 ? std::string{} : std::to_string(key.times)}; }

  Message operator()(const BookedIn& b) const {
    return {Code{"entry.booked_in"},
            {{"number", b.number}, {"complaint", b.complaint}, {"hours", typed(b.hour_meter)}}};
  }
  // A question about a captive part is asked of a station, one about a nut of an end; all others of a rotor.
  Message operator()(const Answered& a) const {
    Args args{{"question", Word{"question." + a.question}}, {"reply", reply_word(a.reply)}};
    if (a.question == "nut_rechecked")
      return {Code{"entry.answered_nut"}, with(args, {{"nut", end_word(a.number == 1 ? End::a : End::b)}})};
    if (a.question == "captive_in")
      return {Code{"entry.answered_part"}, with(args, {{"part", part.station(a.number)}})};
    if (a.number > 0) return {Code{"entry.answered_rotor"}, with(args, {{"rotor", a.number}})};
    return {Code{"entry.answered"}, std::move(args)};
  }
  Message operator()(const Looked& l) const {
    return {Code{"entry.looked"}, with(part(l.part), {{"sign", sign_word(l.sign)}, {"reply", reply_word(l.reply)}})};
  }
  Message operator()(const PlayRead& p) const {
    Args args{{"rotor", p.rotor}, {"typed", p.swing.typed}, {"gauge", p.gauge}, {"push", typed(p.push)}};
    if (p.held) args.emplace_back("held", held_word(*p.held));
    return {Code{"entry.play_read"}, std::move(args)};
  }
  Message operator()(const PhotoTaken& p) const {
    return {Code{"entry.photo_taken"}, with(part(p.part), {{"says", p.says}})};
  }
  Message operator()(const NoteWritten& n) const {
    return {Code{"entry.note_written"}, with(part(n.part), {{"text", n.text}})};
  }
  Message operator()(const WayChosen& w) const {
    return {Code{"entry.way_chosen"}, {{"open", numbers(w.open)}, {"way", Word{"way." + w.way}}}};
  }
  Message operator()(const CustomerSaid& c) const {
    return {Code{"entry.customer_said"},
            {{"reply", reply_word(c.reply)}, {"who", c.who}, {"how", c.how}, {"price", typed(c.price)}}};
  }
  Message operator()(const Ordered& o) const {
    return {Code{"entry.ordered"}, {{"part", o.part_number}, {"count", o.count}}};
  }
  Message operator()(const Received& r) const {
    return {Code{"entry.received"}, {{"part", r.part_number}, {"count", r.count}}};
  }
  Message operator()(const StepDone& s) const {
    const Word phase = s.phase == Phase::teardown ? Word{"phase.teardown"} : Word{"phase.assembly"};
    const Args said{{"phase", phase}, {"reply", reply_word(s.reply)}};
    const std::optional<StepKey> key = read_step_key(s.step);
    if (!key) return {Code{"entry.step_done"}, with(said, {{"step", s.step}})};
    return {Code{"entry.step_done"},
            with(of_parts(key->stations), {said[0], said[1], {"step", key->what}, times(*key)})};
  }
  Message operator()(const TakenOff& t) const { return {Code{"entry.taken_off"}, part.named(t.station)}; }
  Message operator()(const PutOn& p) const { return {Code{"entry.put_on"}, part.named(p.station)}; }
  Message operator()(const OpenedBy& o) const {
    Args args{{"from", from_word(o.from)}};
    if (o.rotors_from_a > 0) args.emplace_back("rotor", o.rotors_from_a);
    return {Code{"entry.opened_by"}, std::move(args)};
  }
  Message operator()(const SpacersFound& s) const {
    const Word phase = s.phase == Phase::teardown ? Word{"phase.teardown"} : Word{"phase.assembly"};
    return {Code{"entry.spacers_found"},
            {{"phase", phase}, {"part", part.station(s.station)}, {"count", s.count}, {"label", s.label}}};
  }
  Message operator()(const BoreRead& b) const {
    return {Code{"entry.bore_read"},
            {{"rotor", b.rotor},
             {"plane", std::string{b.plane}},
             {"direction", b.direction},
             {"typed", b.diameter.typed},
             {"gauge", b.gauge}}};
  }
  Message operator()(const TemperatureRead& t) const {
    const Word what = t.what == Measured::part ? Word{"measured.part"} : Word{"measured.gauge"};
    return {Code{"entry.temperature_read"}, {{"rotor", t.rotor}, {"what", what}, {"typed", t.temperature.typed}}};
  }
  Message operator()(const SetRenewed& s) const {
    return {Code{"entry.set_renewed"}, {{"rotor", s.rotor}, {"reply", reply_word(s.reply)}}};
  }
  Message operator()(const FittedRead& f) const {
    return {Code{"entry.fitted_read"}, {{"rotor", f.rotor}, {"designation", f.designation}}};
  }
  Message operator()(const LeanRead& l) const {
    return {Code{"entry.lean_read"}, {{"rotor", l.rotor}, {"half", half_word(l.half)}, {"typed", l.angle.typed}}};
  }
  Message operator()(const RingSound& r) const {
    return {Code{"entry.ring_sound"}, {{"rotor", r.rotor}, {"ring", r.ring}, {"reply", reply_word(r.sound)}}};
  }
  Message operator()(const Laid& l) const {
    return {Code{"entry.laid"}, {{"rotor", l.rotor}, {"item", item_word(l.item)}, {"count", l.count}}};
  }
  Message operator()(const LeftOver& l) const {
    return {Code{"entry.left_over"}, {{"rotor", l.rotor}, {"item", item_word(l.item)}, {"count", l.count}}};
  }
  Message operator()(const Scrapped& l) const {
    return {Code{"entry.scrapped"}, {{"rotor", l.rotor}, {"item", item_word(l.item)}, {"count", l.count}}};
  }
  Message operator()(const PressPointRead& p) const {
    return {Code{"entry.press_point_read"},
            {{"rotor", p.rotor}, {"travel", p.travel.typed}, {"force", p.force.typed}, {"gauge", p.gauge}}};
  }
  Message operator()(const Pressed& p) const {
    return {Code{"entry.pressed"}, {{"rotor", p.rotor}, {"typed", p.force.typed}, {"gauge", p.gauge}}};
  }
  Message operator()(const RingPressedSeen& r) const {
    return {Code{"entry.ring_pressed_seen"}, {{"rotor", r.rotor}, {"ring", ring_word(r.ring)}}};
  }
  Message operator()(const MarkSeen& m) const {
    return {Code{"entry.mark_seen"}, {{"rotor", m.rotor}, {"half", half_word(m.half)}, {"flat", m.flat}}};
  }
  Message operator()(const LabelPutBack& l) const {
    return {Code{"entry.label_put_back"}, {{"position", l.position}, {"label", l.label}}};
  }
  Message operator()(const StackRead& s) const {
    return {Code{"entry.stack_read"}, {{"typed", s.length.typed}, {"gauge", s.gauge}}};
  }
  Message operator()(const FeelerTried& f) const {
    const Word passed = f.passed ? Word{"feeler.went_in"} : Word{"feeler.did_not_go_in"};
    return {Code{"entry.feeler_tried"}, {{"joint", f.joint}, {"passed", passed}, {"blade", typed(f.blade)}}};
  }
  Message operator()(const PartMeasured& p) const {
    return {Code{"entry.part_measured"},
            {{"part", part.station(p.station)}, {"typed", p.length.typed}, {"gauge", p.gauge}}};
  }
  Message operator()(const NutPulled& n) const {
    return {Code{"entry.nut_pulled"},
            {{"nut", end_word(n.nut)},
             {"typed", n.shown.typed},
             {"gauge", n.gauge},
             {"turned", n.turned ? n.turned->typed : std::string{}}}};
  }
  Message operator()(const ToolTaken& t) const {
    return {Code{"entry.tool_taken"},
            {{"nut", end_word(t.nut)},
             {"length", t.length.typed},
             {"extension", typed(t.extension)},
             {"ratio", typed(t.ratio)}}};
  }
  Message operator()(const NutPulledAgain& n) const {
    return {Code{"entry.nut_pulled_again"}, {{"nut", end_word(n.nut)}, {"typed", n.turned.typed}}};
  }
  Message operator()(const RunRead& r) const {
    switch (r.what) {
      case RunQuantity::room:
        return {Code{"entry.run_room"}, {{"typed", r.value.typed}}};
      case RunQuantity::minutes:
        return {Code{"entry.run_minutes"}, {{"typed", r.value.typed}}};
      case RunQuantity::hanger:
        return {Code{"entry.run_hanger"}, {{"part", part.station(r.station)}, {"typed", r.value.typed}}};
      case RunQuantity::vibration:
        break;
    }
    return {Code{"entry.run_vibration"}, {{"part", part.station(r.station)}, {"typed", r.value.typed}}};
  }
  Message operator()(const SecondLook& s) const {
    return {Code{"entry.second_look"}, {{"rotor", s.rotor}, {"reply", reply_word(s.right)}}};
  }
  Message operator()(const GaugeAccepted& g) const {
    return {Code{"entry.gauge_accepted"}, {{"gauge", g.gauge}, {"reason", g.reason}}};
  }
  Message operator()(const Signed& s) const { return {Code{"entry.signed"}, {{"role", role_word(s.as)}}}; }
  Message operator()(const Released& r) const {
    if (r.forced) return {Code{"entry.released_forced"}, {{"reason", r.reason}}};
    return {Code{"entry.released"}, {}};
  }
  Message operator()(const Withdrawn& w) const { return {Code{"entry.withdrawn"}, {{"reason", w.reason}}}; }
};

Message as_typed(const std::string& text) { return {Code{"entry.answer.typed"}, {{"typed", text}}}; }
Message as_word(Word word) { return {Code{"entry.answer.word"}, {{"word", std::move(word)}}}; }
Message as_count(int count) { return {Code{"entry.answer.count"}, {{"count", count}}}; }

struct Answer {
  Message operator()(const BookedIn& b) const { return as_typed(b.number); }
  Message operator()(const Answered& a) const { return as_word(reply_word(a.reply)); }
  Message operator()(const Looked& l) const { return as_word(reply_word(l.reply)); }
  Message operator()(const PlayRead& p) const {
    if (p.held != Held::hanging) return as_typed(p.swing.typed);
    return {Code{"play.read_hanging"}, {{"typed", p.swing.typed}, {"push", typed(p.push)}}};
  }
  Message operator()(const PhotoTaken& p) const { return as_typed(p.says); }
  Message operator()(const NoteWritten& n) const { return as_typed(n.text); }
  Message operator()(const WayChosen& w) const { return as_word(Word{"way." + w.way}); }
  Message operator()(const CustomerSaid& c) const { return as_word(reply_word(c.reply)); }
  Message operator()(const Ordered& o) const { return as_count(o.count); }
  Message operator()(const Received& r) const { return as_count(r.count); }
  Message operator()(const StepDone& s) const { return as_word(reply_word(s.reply)); }
  Message operator()(const TakenOff&) const { return as_word(Word{"reply.yes"}); }
  Message operator()(const PutOn&) const { return as_word(Word{"reply.yes"}); }
  Message operator()(const OpenedBy& o) const { return as_word(from_word(o.from)); }
  Message operator()(const SpacersFound& s) const { return s.label.empty() ? as_count(s.count) : as_typed(s.label); }
  Message operator()(const BoreRead& b) const { return as_typed(b.diameter.typed); }
  Message operator()(const TemperatureRead& t) const { return as_typed(t.temperature.typed); }
  Message operator()(const SetRenewed& s) const { return as_word(reply_word(s.reply)); }
  Message operator()(const FittedRead& f) const { return as_typed(f.designation); }
  Message operator()(const LeanRead& l) const { return as_typed(l.angle.typed); }
  Message operator()(const RingSound& r) const { return as_word(reply_word(r.sound)); }
  Message operator()(const Laid& l) const { return as_count(l.count); }
  Message operator()(const LeftOver& l) const { return as_count(l.count); }
  Message operator()(const Scrapped& l) const { return as_count(l.count); }
  Message operator()(const Pressed& p) const { return as_typed(p.force.typed); }
  Message operator()(const PressPointRead& p) const { return as_typed(p.force.typed); }
  Message operator()(const RingPressedSeen& r) const { return as_word(ring_word(r.ring)); }
  Message operator()(const MarkSeen& m) const { return {Code{"entry.answer.flat"}, {{"flat", m.flat}}}; }
  Message operator()(const LabelPutBack& l) const { return as_typed(l.label); }
  Message operator()(const StackRead& s) const { return as_typed(s.length.typed); }
  Message operator()(const FeelerTried& f) const {
    return as_word(f.passed ? Word{"feeler.went_in"} : Word{"feeler.did_not_go_in"});
  }
  Message operator()(const PartMeasured& p) const { return as_typed(p.length.typed); }
  Message operator()(const NutPulled& n) const { return as_typed(n.shown.typed); }
  Message operator()(const ToolTaken& t) const { return as_typed(t.length.typed); }
  Message operator()(const NutPulledAgain& n) const { return as_typed(n.turned.typed); }
  Message operator()(const RunRead& r) const { return as_typed(r.value.typed); }
  Message operator()(const SecondLook& s) const { return as_word(reply_word(s.right)); }
  Message operator()(const GaugeAccepted& g) const { return as_typed(g.gauge); }
  Message operator()(const Signed& s) const { return as_word(role_word(s.as)); }
  Message operator()(const Released& r) const { return as_word(r.forced ? Word{"reply.no"} : Word{"reply.yes"}); }
  Message operator()(const Withdrawn& w) const { return as_typed(w.reason); }
};

}  // namespace

Word role_word(Role role) {
  switch (role) {
    case Role::bench:
      return Word{"role.bench"};
    case Role::lead:
      return Word{"role.lead"};
    case Role::owner:
      break;
  }
  return Word{"role.owner"};
}
Message entry_says(const Shaft& shaft, const EntryBody& body) { return std::visit(Sentence{{shaft}}, body); }
Message answer_says(const EntryBody& body) { return std::visit(Answer{}, body); }

}  // namespace flatwise::job
