// Timing. Found first: the arrow from the flat that was read to the flat that is wanted; before both halves are read, the flats to
// be tapped, and nothing that says what should be read there.
#include <algorithm>

#include "core/timing/check.h"
#include "drawing/end_view.h"
#include "drawing/section.h"
#include "job/marks.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr double kViewSize = 92, kNumber = 6, kCircle = 7;

Half near_half(End from) { return from == End::a ? Half::a : Half::b; }
Half far_half(End from) { return from == End::a ? Half::b : Half::a; }
End end_of(Half half) { return half == Half::a ? End::a : End::b; }
Word half_word(Half half) { return Word{half == Half::a ? "half.a" : "half.b"}; }
Word end_word(End end) { return Word{end == End::a ? "end.a" : "end.b"}; }

std::optional<int> flat_read(const Subject& subject, int rotor, Half half) {
  for (const MarkRead& mark : subject.job.state.bench.marks)
    if (mark.rotor == rotor && mark.half == half) return mark.flat.value;
  return std::nullopt;
}

/// What the sheet goes by: the rotor's marks, which half a tap is for, and the verdict once both are read.
struct Seen {
  int rotor = 0;
  std::optional<int> a, b;
  Half reading = Half::a;
  std::optional<timing::RotorVerdict> verdict{};
  [[nodiscard]] bool both() const { return a && b; }
  [[nodiscard]] std::optional<int> read(Half half) const { return half == Half::a ? a : b; }
  [[nodiscard]] std::optional<int> wanted(Half half) const {
    if (!verdict) return std::nullopt;
    return half == Half::a ? verdict->wanted_a : verdict->wanted_b;
  }
  /// The pair fights in its bearing, whichever half is out.
  [[nodiscard]] bool locks() const { return verdict && verdict->pair_out.value_or(0) != 0; }
  [[nodiscard]] bool out(Half half) const { return wanted(half) && read(half) && *wanted(half) != *read(half); }
};

/// The half nearest the eye first; once both are read it is the one that turns.
Half reading_now(const Seen& seen, End from) {
  const Half near = near_half(from);
  return seen.both() || !seen.read(near) ? near : far_half(from);
}

Seen look(const Subject& subject, int rotor, End from) {
  Seen seen{.rotor = rotor, .a = flat_read(subject, rotor, Half::a), .b = flat_read(subject, rotor, Half::b)};
  seen.reading = reading_now(seen, from);
  if (!seen.both()) return seen;
  const Result<timing::Reading> reading = job::marks_reading(subject.job.facts());
  if (!reading) return seen;
  const Result<timing::Check> check = timing::check(subject.job.shaft, *reading);
  if (!check) return seen;
  const auto it = std::ranges::find(check->rotors, rotor, &timing::RotorVerdict::rotor);
  if (it != check->rotors.end()) seen.verdict = *it;
  return seen;
}

job::EntryBody mark(int rotor, Half half, int flat) { return job::MarkSeen{rotor, half, flat}; }

std::string view_says(const Screen& screen, const Seen& seen, End from) {
  Args args{{"rotor", seen.rotor}, {"end", end_word(from)}};
  if (seen.a) args.emplace_back("a", *seen.a);
  if (seen.b) args.emplace_back("b", *seen.b);
  return tell(screen, Code{"bench.timing.view"}, args);
}

Json end_view_block(const Subject& subject, const Screen& screen, const Seen& seen, End from) {
  const std::string id = "rotor-" + std::to_string(seen.rotor);
  drawing::PairMarks marks{.flat_a = seen.a, .flat_b = seen.b};
  if (seen.verdict) marks.wanted_a = seen.verdict->wanted_a, marks.wanted_b = seen.verdict->wanted_b;
  const auto list = drawing::end_view(
      drawing::pair_of(subject.job.shaft, seen.rotor), marks,
      {.seen_from = from, .size = kViewSize, .number_size = kNumber, .circle = kCircle, .colour = true, .id = id});
  std::vector<TapOn> taps;
  for (int flat = 1; flat <= subject.job.shaft.flats(); ++flat)
    taps.push_back({.id = id + "-flat-" + std::to_string(flat),
                    .says = tell_big(screen, Code{"bench.timing.tap"},
                                     {{"rotor", seen.rotor}, {"half", half_word(seen.reading)}, {"flat", flat}}),
                    .does = do_record({draft(subject, mark(seen.rotor, seen.reading, flat))})});
  DrawingLook look;
  if (const auto flat = seen.read(seen.reading)) look.chosen = {id + "-flat-" + std::to_string(*flat)};
  look.caption = tell(
      screen, Code{"bench.timing.caption"},
      {{"half", half_word(seen.reading)}, {"near", half_word(near_half(from))}, {"far", half_word(far_half(from))}});
  return drawing_block(list, view_says(screen, seen, from), std::move(taps), look);
}

/// Who read what, and every flat as a key too: a hand that cannot hit the drawing, and one that sees no drawing.
Json half_question(const Subject& subject, const Screen& screen, int rotor, Half half) {
  std::vector<Option> options;
  for (int flat = 1; flat <= subject.job.shaft.flats(); ++flat)
    options.push_back({std::to_string(flat), mark(rotor, half, flat), {}});
  return question(subject, screen,
                  {.label = tell_big(screen, Code{"bench.timing.half_on_flat"}, {{"half", half_word(half)}})}, options);
}

TableRow half_row(const Screen& screen, const Seen& seen, Half half) {
  const bool out = seen.out(half);
  const auto text = [](const std::optional<int>& flat) { return flat ? std::to_string(*flat) : std::string{"\u2013"}; };
  TableRow row;
  row.cells.push_back({.text = half == Half::a ? "A" : "B"});
  row.cells.push_back({.text = text(seen.read(half)), .tone = out ? "out" : "strong"});
  if (!seen.both()) return row;  // Nobody reads what they expect to read.
  row.cells.push_back({.text = text(seen.wanted(half)), .tone = "strong"});
  if (!seen.wanted(half))
    row.cells.push_back(seen.locks()
                            ? TableCell{.text = tell(screen, Code{"bench.timing.one_of_two"}), .flag = "stopped"}
                            : TableCell{.text = tell(screen, Code{"bench.timing.not_known"}), .flag = "unknown"});
  else
    row.cells.push_back({.text = tell(screen, out ? Code{"bench.timing.out"} : Code{"bench.timing.right"}),
                         .tone = out ? "out" : "in",
                         .flag = out ? "stopped" : "done"});
  return row;
}

Json read_table(const Screen& screen, const Seen& seen, End from) {
  std::vector<TableHead> head{{tell(screen, Code{"bench.timing.half"})},
                              {tell(screen, Code{"bench.timing.read"}), true}};
  if (seen.both()) {
    head.push_back({tell(screen, Code{"bench.timing.wanted"}), true});
    head.push_back({tell(screen, Code{"bench.timing.so"})});
  }
  return table_block(head, {half_row(screen, seen, near_half(from)), half_row(screen, seen, far_half(from))});
}

std::string verdict_word(const Screen& screen, const timing::RotorVerdict& v, const Seen& seen) {
  using timing::Verdict;
  const auto half_out = [&](Half half, std::optional<int> flats) {
    return tell_big(screen, Code{"bench.timing.half_out"},
                    {{"half", half_word(half)}, {"flats", std::abs(flats.value_or(0))}});
  };
  switch (v.verdict) {
    case Verdict::right:
      return tell(screen, Code{"bench.timing.opposite"}, {{"a", *seen.a}, {"b", *seen.b}});
    case Verdict::half_a_out:
      return half_out(Half::a, v.flats_a);
    case Verdict::half_b_out:
      return half_out(Half::b, v.flats_b);
    case Verdict::indexed_wrong:
      return tell(screen, Code{"bench.timing.rotor_out"}, {{"flats", std::abs(v.flats_a.value_or(0))}});
    case Verdict::both_out:
      return tell(screen, Code{"bench.timing.both_out"});
    case Verdict::unread:
    case Verdict::unsure:
      break;
  }
  if (seen.locks()) return tell(screen, Code{"bench.timing.pair_out"}, {{"flats", std::abs(*v.pair_out)}});
  return tell(screen, Code{"bench.timing.unsure"});
}

/// The directions of findings as seen from the end where the mechanic stands.
std::vector<Finding> as_seen(const std::vector<const Finding*>& findings, End from) {
  std::vector<Finding> out;
  for (const Finding* f : findings) {
    out.push_back(*f);
    out.back().args = timing::seen_from({f->code, f->args}, from).args;
    if (f->instruction) out.back().instruction = timing::seen_from(*f->instruction, from);
  }
  return out;
}
std::vector<const Finding*> pointed_at(const std::vector<Finding>& findings) {
  std::vector<const Finding*> out;
  for (const Finding& f : findings) out.push_back(&f);
  return out;
}

Json verdict_block(const Subject& subject, const Screen& screen, const Seen& seen, End from) {
  const auto findings = findings_like(subject, Stage::timing, job::at_rotor(seen.rotor), "timing.");
  if (!seen.both() || !seen.verdict)
    return answer_block({.sign = "unknown",
                         .word = tell(screen, Code{"bench.timing.read_half"}, {{"half", half_word(seen.reading)}}),
                         .says = {tell(screen, Code{"bench.timing.both_first"})}},
                        screen.voice);
  const bool right = seen.verdict->verdict == timing::Verdict::right;
  const bool known = right || seen.out(Half::a) || seen.out(Half::b) || seen.locks();
  const std::vector<Finding> turned = as_seen(findings, from);
  std::vector<const Finding*> said = pointed_at(turned);
  std::erase_if(said, [](const Finding* f) { return f->code == Code{"timing.kink_locks"}; });  // Stands in its working.
  return answer_block({.sign = right ? "done" : (known ? "stopped" : "unknown"),
                       .word = verdict_word(screen, *seen.verdict, seen),
                       .says = sentences(screen, said),
                       .does = instruction(screen, said)},
                      screen.voice);
}

/// One flat back, one flat on: as seen from the chosen end, the half nearest the eye.
Json turn_keys(const Subject& subject, const Screen& screen, const Seen& seen, End from) {
  std::vector<Json> actions;
  const Half half = near_half(from);
  const int flat = seen.read(half).value_or(1);
  for (const int way : {-1, 1}) {
    const int to = turned_flat(flat, from == End::a ? way : -way, subject.job.shaft.flats());
    const Args args{{"half", half_word(half)}, {"flat", to}, {"end", end_word(from)}};
    const bool wanted = seen.out(half) && seen.wanted(half) == to;
    actions.push_back(
        action(tell_big(screen, way < 0 ? Code{"bench.timing.back"} : Code{"bench.timing.on"}, args),
               do_record({draft(subject, mark(seen.rotor, half, to))}),
               {.tone = wanted ? "next" : "plain", .says = tell_big(screen, Code{"bench.timing.key"}, args)}));
  }
  return actions_block(std::move(actions));
}

/// A half is turned from the end where it is near.
Json near_text(const Screen& screen, const Seen& seen, End from) {
  for (const Half half : {Half::a, Half::b})
    if (seen.out(half) && end_of(half) != from)
      return text_block(tell_big(screen, Code{"bench.timing.near_end"},
                                 {{"half", half_word(half)}, {"end", end_word(end_of(half))}}));
  return nullptr;
}

void add(Json& blocks, Json block) {
  if (!block.is_null()) blocks.push_back(std::move(block));
}

void add_kink(const Subject& subject, const Screen& screen, const Seen& seen, SheetParts& parts) {
  const WorkingPtr kink = working_of(subject, Stage::timing, "kink", job::at_rotor(seen.rotor));
  if (!seen.both() || !seen.verdict || kink == nullptr) return;
  parts.right.push_back(working_block({}, *kink, screen.voice, true));
  parts.left.push_back(drawing_block(
      drawing::pair_section(subject.job.shaft, seen.rotor, seen.verdict->pair_out.value_or(0), kViewSize),
      tell(screen, Code{"bench.timing.section"}, {{"kink", output_of(*kink, "kink")}}), {},
      {.caption = tell(screen, Code{"bench.timing.section_caption"}, {{"kink", output_of(*kink, "kink")}})}));
}

/// How it looks as read, how right looks, and how right looks from the other end.
Json three_looks(const Subject& subject, const Screen& screen, const Seen& seen, End from) {
  constexpr double kSmall = 34, kPitch = 38, kHead = 7;  // On a telephone all three stand abreast.
  drawing::DisplayList list;
  list.width = 2 * kPitch + kSmall;
  list.height = kSmall + kHead;
  const auto pair = drawing::pair_of(subject.job.shaft, seen.rotor);
  const drawing::PairMarks read{.flat_a = seen.a, .flat_b = seen.b};
  const drawing::PairMarks right{.flat_a = seen.verdict->wanted_a, .flat_b = seen.verdict->wanted_b};
  const End other_end = from == End::a ? End::b : End::a;
  const auto put = [&](double x, const drawing::PairMarks& marks, End end, const std::string& head, drawing::Ink ink) {
    drawing::append(list, drawing::end_view(pair, marks, {.seen_from = end, .size = kSmall}), {x, kHead});
    drawing::Text text{};
    text.at = {x + kSmall / 2, 4.4};
    text.text = head;
    text.size = 4;
    text.bold = true;
    text.anchor = drawing::Anchor::middle;
    text.ink = ink;
    list.items.emplace_back(std::move(text));
  };
  put(0, read, from, tell(screen, Code{"bench.timing.as_read"}), drawing::Ink::out);
  put(kPitch, right, from, tell(screen, Code{"bench.timing.right_looks"}), drawing::Ink::in);
  put(2 * kPitch, right, other_end, tell(screen, Code{"bench.timing.right_from"}, {{"end", end_word(other_end)}}),
      drawing::Ink::in);
  return drawing_block(list, tell(screen, Code{"bench.timing.looks"}), {}, {.wide = true});
}

Json second_look(const Subject& subject, const Screen& screen, int rotor) {
  return asks_block("rows", {yes_no(subject, screen,
                                    {.label = tell(screen, Code{"bench.timing.second_look"}),
                                     .detail = tell(screen, Code{"bench.timing.second_look_why"})},
                                    [&](Reply reply) { return job::EntryBody{job::SecondLook{rotor, reply}}; })});
}

/// Of the whole shaft: the mend with its work, what contradicts, what is not read.
void add_whole(const Subject& subject, const Screen& screen, End from, SheetParts& parts) {
  auto findings = findings_like(subject, Stage::timing, {}, "timing.");
  std::erase_if(findings, [](const Finding* f) { return f->severity == Severity::note && !f->instruction; });
  const std::vector<Finding> turned = as_seen(findings, from);
  add(parts.foot, findings_block(screen, pointed_at(turned)));
}

SheetParts rotor_sheet(const Subject& subject, const Screen& screen, const Spot& spot, int rotor) {
  const Seen seen = look(subject, rotor, spot.from);
  SheetParts parts;
  parts.title = seen.both() ? tell(screen, Code{"bench.timing.title"}, {{"rotor", rotor}})
                            : tell(screen, Code{"bench.timing.title_half"},
                                   {{"rotor", rotor}, {"half", half_word(seen.reading)}});
  parts.left.push_back(end_view_block(subject, screen, seen, spot.from));
  parts.head.push_back(end_switch(screen, spot));
  parts.right.push_back(read_table(screen, seen, spot.from));
  parts.right.push_back(verdict_block(subject, screen, seen, spot.from));
  if (seen.both()) {
    parts.left.push_back(turn_keys(subject, screen, seen, spot.from));
    add(parts.left, near_text(screen, seen, spot.from));
  }
  add_kink(subject, screen, seen, parts);
  parts.left.push_back(asks_block("chips", {half_question(subject, screen, rotor, near_half(spot.from)),
                                            half_question(subject, screen, rotor, far_half(spot.from))}));
  if (seen.out(Half::a) || seen.out(Half::b)) parts.foot.push_back(three_looks(subject, screen, seen, spot.from));
  if (seen.both() && rotor_came_off(subject, rotor)) parts.foot.push_back(second_look(subject, screen, rotor));
  add_whole(subject, screen, spot.from, parts);
  return parts;
}

std::string marks_sub(const Subject& subject, int rotor) {
  const auto a = flat_read(subject, rotor, Half::a), b = flat_read(subject, rotor, Half::b);
  if (!a && !b) return "\u2013";
  const auto text = [](const std::optional<int>& flat) { return flat ? std::to_string(*flat) : std::string{"\u2013"}; };
  return text(a) + " \u00b7 " + text(b);
}

TableRow whole_row(const Subject& subject, const Screen& screen, int rotor) {
  const CellSays cell = timing_cell(subject, screen, subject.job.shaft.station_of_rotor(rotor));
  const std::string name = tell_big(screen, Code{"bench.rotor"}, {{"rotor", rotor}});
  TableRow row;
  row.cells = {{.text = name},
               {.text = marks_sub(subject, rotor), .tone = "strong"},
               {.text = cell.word.empty() ? tell(screen, Code{"bench.timing.stayed"}) : cell.word, .flag = cell.flag}};
  row.action = action(tell(screen, Code{"bench.look"}), do_go({.station = subject.job.shaft.station_of_rotor(rotor)}),
                      {.says = tell(screen, Code{"bench.go_to"}, {{"part", name}})});
  return row;
}

/// Away from the rotors: the marks of all of them, so that the row can be read along.
SheetParts whole_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.timing.whole_title"});
  parts.aside = station_name(subject.job.shaft, spot.station, screen.voice);
  std::vector<TableRow> rows;
  for (int r = 1; r <= subject.job.shaft.rotor_count(); ++r) rows.push_back(whole_row(subject, screen, r));
  parts.left.push_back(table_block({{tell(screen, Code{"bench.rotor_head"})},
                                    {tell(screen, Code{"bench.timing.marks_head"}), true},
                                    {tell(screen, Code{"bench.timing.so"})}},
                                   rows));
  parts.right.push_back(text_block(tell(screen, Code{"bench.timing.no_mark"})));
  add_whole(subject, screen, spot.from, parts);
  return parts;
}

}  // namespace

SheetParts timing_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const int rotor = rotor_at(subject.job.shaft, spot.station);
  return rotor > 0 ? rotor_sheet(subject, screen, spot, rotor) : whole_sheet(subject, screen, spot);
}

CellSays timing_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor == 0) return cell;
  cell.sub = marks_sub(subject, rotor);
  const bool read = flat_read(subject, rotor, Half::a) && flat_read(subject, rotor, Half::b);
  const Severity worst = worst_of(findings_like(subject, Stage::timing, job::at_rotor(rotor), "timing."));
  if (!read) {
    cell.word = tell(screen, Code{"bench.cell.read"});
    cell.flag = "unknown";
  } else {
    mark_cell(cell, worst, rotor_came_off(subject, rotor));
    if (worst == Severity::out) cell.word = tell(screen, Code{"bench.cell.stop"});
    if (worst == Severity::note && cell.flag == "done") cell.word = tell(screen, Code{"bench.cell.done"});
    if (worst == Severity::unanswered || worst == Severity::cannot_tell)
      cell.word = tell(screen, Code{"bench.cell.waits"});
  }
  return cell;
}

}  // namespace flatwise::view
