// Kit. Found first: the piece that is wanted and not there, in dash-dots on the tray.
#include "job/kit.h"

#include <algorithm>

#include "drawing/bench_pictures.h"
#include "view/bench_parts.h"

namespace flatwise::view {
namespace {

using drawing::TrayPart;
using drawing::TrayPiece;
using drawing::TrayState;
using job::Stage;

constexpr double kTrayWidth = 190;

Word item_word(std::string_view item) { return Word{"item." + std::string{item}}; }

int laid_of(const Subject& subject, int rotor, std::string_view item) {
  const Counted* counted = job::find_counted(subject.job.state.bench.counted, rotor, item);
  return counted == nullptr ? 0 : counted->laid.value;
}

job::Tray tray_of(const Subject& subject, int rotor) {
  return job::kit(subject.job.shaft, {rotor}, subject.job.state.bench.reused_rings).front();
}

struct CountedOut {
  int there = 0, wanted = 0;
  std::vector<Word> missing;
};
CountedOut counted_out(const Subject& subject, int rotor) {
  CountedOut out;
  for (const job::KitItem& item : tray_of(subject, rotor).items) {
    const int laid = std::min(laid_of(subject, rotor, item.item), item.count);
    out.there += laid;
    out.wanted += item.count;
    if (laid < item.count) out.missing.push_back(item_word(item.item));
  }
  return out;
}

job::EntryBody laid_body(int rotor, std::string_view item, int count) {
  return job::Laid{rotor, std::string{item}, count};
}
job::EntryBody left_body(int rotor, std::string_view item, int count) {
  return job::LeftOver{rotor, std::string{item}, count};
}

job::EntryBody scrapped_body(int rotor, std::string_view item, int count) {
  return job::Scrapped{rotor, std::string{item}, count};
}

/// One piece of the drawing with the item it is counted under.
struct Laid {
  TrayPiece piece;
  std::string_view item;
};

const job::KitItem* item_named(const job::Tray& tray, std::string_view name) {
  const auto it = std::ranges::find(tray.items, name, &job::KitItem::item);
  return it == tray.items.end() ? nullptr : &*it;
}

bool ring_reused(const Subject& subject, int rotor, int ring) {
  const auto* said = subject.job.state.agreed<job::RingSound>(field_key(job::RingSound{rotor, ring, Reply::yes}));
  return said != nullptr && said->sound == Reply::yes;
}

/// As they lie, end A left. The nth of a kind lies there when as many were counted.
std::vector<Laid> pieces_of(const Subject& subject, const Screen& screen, int rotor) {
  const job::Tray tray = tray_of(subject, rotor);
  std::vector<Laid> out;
  const auto put = [&](TrayPart part, std::string_view item, int nth, const std::string& id, Code name) {
    const job::KitItem* wanted = item_named(tray, item);
    if (wanted == nullptr || nth > wanted->count) return;
    const bool there = laid_of(subject, rotor, item) >= nth;
    const bool old = item == "snap_ring" && ring_reused(subject, rotor, nth);
    const TrayState state = !there ? TrayState::wanted : (old ? TrayState::reused : TrayState::fresh);
    out.push_back({{part, state, "tray-" + id, tell(screen, name)}, item});
  };
  out.push_back({{TrayPart::hub, TrayState::reused, "tray-hub", tell(screen, Code{"bench.kit.hub"})}, {}});
  put(TrayPart::half, "set", 1, "half-a", Code{"bench.kit.half_a"});
  put(TrayPart::seal, "seal", 1, "seal-a", Code{"bench.kit.seal_a"});
  put(TrayPart::ring, "snap_ring", 1, "ring-a", Code{"bench.kit.ring_a"});
  put(TrayPart::bearing, "set", 1, "bearing", Code{"bench.kit.bearing"});
  put(TrayPart::ring, "snap_ring", 2, "ring-b", Code{"bench.kit.ring_b"});
  put(TrayPart::seal, "seal", 2, "seal-b", Code{"bench.kit.seal_b"});
  put(TrayPart::half, "set", 1, "half-b", Code{"bench.kit.half_b"});
  return out;
}

Json tray_block(const Subject& subject, const Screen& screen, int rotor) {
  std::vector<TrayPiece> pieces;
  std::vector<TapOn> taps;
  for (const Laid& laid : pieces_of(subject, screen, rotor)) {
    pieces.push_back(laid.piece);
    if (laid.piece.state != TrayState::wanted) continue;
    const int now = laid_of(subject, rotor, laid.item) + 1;
    taps.push_back({.id = laid.piece.id,
                    .says = tell(screen, Code{"bench.kit.tap"}, {{"part", laid.piece.name}, {"rotor", rotor}}),
                    .does = do_record({draft(subject, laid_body(rotor, laid.item, now))})});
  }
  const CountedOut out = counted_out(subject, rotor);
  return drawing_block(drawing::tray(subject.job.shaft, rotor, pieces, kTrayWidth).list,
                       tell(screen, Code{"bench.kit.tray_says"},
                            {{"rotor", rotor}, {"there", out.there}, {"wanted", out.wanted}, {"missing", out.missing}}),
                       std::move(taps), {.caption = tell(screen, Code{"bench.kit.tray_caption"}), .wide = true});
}

Json count_answer(const Subject& subject, const Screen& screen, int rotor) {
  const CountedOut out = counted_out(subject, rotor);
  const auto findings = findings_at(subject, Stage::kit, job::at_rotor(rotor));
  const bool all = out.missing.empty();
  const Args args{{"there", out.there}, {"wanted", out.wanted}, {"missing", out.missing}};
  const bool open = worst_of(findings) != Severity::note;
  return answer_block({.sign = !all ? "stopped" : (open ? "unknown" : "done"),
                       .word = tell(screen, all ? Code{"bench.kit.all_there"} : Code{"bench.kit.missing"}, args),
                       .says = sentences(screen, findings),
                       .does = instruction(screen, findings)},
                      screen.voice);
}

using BodyOfCount = job::EntryBody (*)(int, std::string_view, int);

/// A count by taps: nought to one more than wanted.
Json count_question(const Subject& subject, const Screen& screen, int rotor, const job::KitItem& item, Code label,
                    BodyOfCount body) {
  std::vector<Option> options;
  for (int n = 0; n <= item.count + 1; ++n) options.push_back({std::to_string(n), body(rotor, item.item, n), {}});
  return question(
      subject, screen,
      {.label = tell_big(screen, label, {{"item", item_word(item.item)}, {"wanted", item.count}}),
       .detail = item.fresh == item.count ? tell(screen, Code{"bench.kit.all_new"})
                                          : tell(screen, Code{"bench.kit.some_new"}, {{"fresh", item.fresh}})},
      options);
}

Json count_block(const Subject& subject, const Screen& screen, int rotor, Code head, Code label, BodyOfCount body) {
  std::vector<Json> questions;
  for (const job::KitItem& item : tray_of(subject, rotor).items)
    questions.push_back(count_question(subject, screen, rotor, item, label, body));
  return asks_block("chips", std::move(questions), tell(screen, head));
}

/// Old pieces out of the rotor: as many as are replaced should lie in the scrap box.
Json scrap_block(const Subject& subject, const Screen& screen, int rotor) {
  std::vector<Json> questions;
  for (const job::KitItem& item : tray_of(subject, rotor).items) {
    if (item.fresh == 0) continue;
    std::vector<Option> options;
    for (int n = 0; n <= item.count; ++n)
      options.push_back({std::to_string(n), scrapped_body(rotor, item.item, n), {}});
    const std::string parts =
        item.item == "set" ? tell(screen, Code{"bench.kit.old_set"}) : tell(screen, Code{"bench.kit.old_of"});
    questions.push_back(question(
        subject, screen,
        {.label = tell_big(screen, Code{"bench.kit.old"}, {{"item", item_word(item.item)}, {"wanted", item.fresh}}),
         .detail = parts},
        options));
  }
  return questions.empty() ? Json()
                           : asks_block("chips", std::move(questions), tell(screen, Code{"bench.kit.scrap_head"}));
}

/// What of the shaft, rotors apart, lies off at this moment: the shaft's own tray.
Json shaft_tray(const Subject& subject, const Screen& screen) {
  const auto& stations = subject.job.shaft.stations();
  std::vector<std::string> off;
  int came_off = 0;
  for (std::size_t i = 0; i < stations.size() && i < subject.job.state.off.size(); ++i) {
    if (stations[i].kind == StationKind::rotor) continue;
    if (subject.job.state.came_off[i]) ++came_off;
    if (subject.job.state.off[i])
      off.push_back(station_name(subject.job.shaft, static_cast<int>(i), screen.voice, true));
  }
  if (came_off == 0) return {};
  const int there = static_cast<int>(off.size());
  return facts_block(
      {{tell(screen, Code{"bench.kit.shaft_tray"}),
        there == 0 ? tell(screen, Code{"bench.kit.shaft_tray_empty"})
                   : tell(screen, Code{"bench.kit.shaft_tray_says"}, {{"count", there}, {"parts", off}})}},
      screen.voice);
}

Json old_rings(const Subject& subject, const Screen& screen, int rotor) {
  const SnapRings rings = subject.job.shaft.rotor(rotor).snap_rings;
  std::vector<Json> questions;
  for (int ring = 1; ring <= (rings == SnapRings::two ? 2 : rings == SnapRings::one ? 1 : 0); ++ring)
    questions.push_back(yes_no(
        subject, screen,
        {.label = tell(screen, ring == 1 ? Code{"bench.kit.ring_a_sound"} : Code{"bench.kit.ring_b_sound"})},
        [&](Reply reply) { return job::EntryBody{job::RingSound{rotor, ring, reply}}; }, true));
  return questions.empty() ? Json() : asks_block("rows", std::move(questions), tell(screen, Code{"bench.kit.rings"}));
}

/// The set that went in: new, of the right designation, with the right lean on both halves.
Json set_questions(const Subject& subject, const Screen& screen, int rotor) {
  const Rotor& part = subject.job.shaft.rotor(rotor);
  std::vector<Json> questions{yes_no(subject, screen, {.label = tell(screen, Code{"bench.kit.set_new"})},
                                     [&](Reply reply) { return job::EntryBody{job::SetRenewed{rotor, reply}}; })};
  const std::string& wanted = part.bearing.designation;
  if (!wanted.empty())
    questions.push_back(question(subject, screen, {.label = tell(screen, Code{"bench.kit.designation"})},
                                 {{wanted, job::FittedRead{rotor, wanted}, {}}}));
  for (Json& q : job_questions(subject, screen, Stage::kit, job::AskedOf::rotor_that_came_off, rotor))
    questions.push_back(std::move(q));
  return asks_block("rows", std::move(questions), tell(screen, Code{"bench.kit.in_it"}));
}

Json lean_field(const Subject& subject, const Screen& screen, int rotor, Half half) {
  job::LeanRead body;
  body.rotor = rotor;
  body.half = half;
  FieldIs is;
  is.title = tell(screen, half == Half::a ? Code{"bench.kit.lean_a"} : Code{"bench.kit.lean_b"});
  is.label = is.title;
  is.kind = "angle";
  is.units = {"°"};
  is.body = body;
  is.into = "angle";
  if (half == Half::a) {
    body.half = Half::b;
    is.next = field_key(body);
  }
  return field(subject, screen, is);
}

Json keypad(const Subject& subject, const Screen& screen, int rotor) {
  FieldIs other;
  other.title = tell(screen, Code{"bench.kit.other_designation"});
  other.label = other.title;
  other.kind = "text";
  other.body = job::FittedRead{rotor, {}};
  other.into = "designation";
  return keypad_block({lean_field(subject, screen, rotor, Half::a), lean_field(subject, screen, rotor, Half::b),
                       field(subject, screen, other)});
}

std::string count_text(const std::optional<int>& count) { return count ? std::to_string(*count) : "\u2013"; }

Json stock_table(const Subject& subject, const Screen& screen) {
  const job::JobState& state = subject.job.state;
  const auto trays = job::kit(subject.job.shaft, state.bench.came_off, state.bench.reused_rings);
  std::vector<TableRow> rows;
  for (const job::PartWanted& part : job::parts_wanted(trays, subject.job.workshop, state.bench.counted)) {
    const bool known = part.on_shelf && !part.short_of();
    const std::string after = known ? std::to_string(*part.on_shelf - part.to_take()) : "\u2013";
    TableRow row;
    row.cells = {{.text = tell(screen, Code{"bench.kit.part"},
                               {{"item", item_word(part.item)}, {"part", part.part.part_number}})},
                 {.text = std::to_string(part.wanted), .tone = "strong"},
                 {.text = std::to_string(part.taken)},
                 {.text = count_text(part.on_shelf)},
                 {.text = after, .flag = part.short_of() ? "waits" : ""},
                 {.text = count_text(part.on_order)}};
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"bench.kit.stock"})},
                      {tell(screen, Code{"bench.kit.wanted"}), true},
                      {tell(screen, Code{"bench.kit.taken"}), true},
                      {tell(screen, Code{"bench.kit.on_shelf"}), true},
                      {tell(screen, Code{"bench.kit.after"}), true},
                      {tell(screen, Code{"bench.kit.on_order"}), true}},
                     rows);
}

SheetParts rotor_sheet(const Subject& subject, const Screen& screen, int rotor) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.kit.title"}, {{"rotor", rotor}});
  parts.aside = tell(screen, Code{"bench.kit.aside"});
  parts.head.push_back(tray_block(subject, screen, rotor));
  parts.head.push_back(count_answer(subject, screen, rotor));
  parts.left.push_back(
      count_block(subject, screen, rotor, Code{"bench.kit.laid_head"}, Code{"bench.kit.laid"}, laid_body));
  if (Json rings = old_rings(subject, screen, rotor); !rings.is_null()) parts.left.push_back(std::move(rings));
  parts.left.push_back(
      count_block(subject, screen, rotor, Code{"bench.kit.left_head"}, Code{"bench.kit.left"}, left_body));
  if (Json scrap = scrap_block(subject, screen, rotor); !scrap.is_null()) parts.left.push_back(std::move(scrap));
  parts.right.push_back(set_questions(subject, screen, rotor));
  parts.right.push_back(keypad(subject, screen, rotor));
  if (Json tray = shaft_tray(subject, screen); !tray.is_null()) parts.foot.push_back(std::move(tray));
  parts.foot.push_back(stock_table(subject, screen));
  return parts;
}

/// Away from the rotors that came off: all trays in a row.
SheetParts all_trays(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts;
  parts.title = tell(screen, Code{"bench.kit.trays"});
  parts.aside = station_name(subject.job.shaft, spot.station, screen.voice);
  std::vector<TableRow> rows;
  for (const int rotor : subject.job.state.bench.came_off) {
    const CountedOut out = counted_out(subject, rotor);
    const int station = subject.job.shaft.station_of_rotor(rotor);
    const std::string name = tell_big(screen, Code{"bench.rotor"}, {{"rotor", rotor}});
    TableRow row;
    row.cells = {
        {.text = name},
        {.text = tell(screen, Code{"bench.of"}, {{"there", out.there}, {"wanted", out.wanted}}), .tone = "strong"},
        {.text = kit_cell(subject, screen, station).word, .flag = kit_cell(subject, screen, station).flag}};
    row.action = action(tell(screen, Code{"bench.look"}), do_go({.station = station}),
                        {.says = tell(screen, Code{"bench.go_to"}, {{"part", name}})});
    rows.push_back(std::move(row));
  }
  parts.left.push_back(table_block({{tell(screen, Code{"bench.rotor_head"})},
                                    {tell(screen, Code{"bench.kit.on_tray"}), true},
                                    {tell(screen, Code{"bench.kit.state"})}},
                                   rows));
  parts.right.push_back(text_block(tell(screen, Code{"bench.kit.no_tray"})));
  if (Json tray = shaft_tray(subject, screen); !tray.is_null()) parts.foot.push_back(std::move(tray));
  parts.foot.push_back(stock_table(subject, screen));
  return parts;
}

}  // namespace

SheetParts kit_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const int rotor = rotor_at(subject.job.shaft, spot.station);
  if (rotor > 0 && rotor_came_off(subject, rotor)) return rotor_sheet(subject, screen, rotor);
  return all_trays(subject, screen, spot);
}

CellSays kit_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor == 0 || !rotor_came_off(subject, rotor)) return cell;
  const CountedOut out = counted_out(subject, rotor);
  cell.sub = tell(screen, Code{"bench.of"}, {{"there", out.there}, {"wanted", out.wanted}});
  const Severity worst = worst_of(findings_at(subject, Stage::kit, job::at_rotor(rotor)));
  mark_cell(cell, worst, true);
  cell.word = tell(screen, worst == Severity::note  ? Code{"bench.cell.done"}
                           : worst == Severity::out ? Code{"bench.cell.stop"}
                                                    : Code{"bench.cell.count"});
  cell.renew = subject.job.shaft.spec().policies.renew_disturbed;
  return cell;
}

}  // namespace flatwise::view
