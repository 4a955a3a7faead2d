// Booking in: what the customer says, and what hand, eye and dial find. The eye finds first the yellow band, then the figure.
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "drawing/play_scale.h"
#include "job/play.h"
#include "view/blocks.h"
#include "view/play.h"
#include "view/stage_sheets.h"
#include "view/suspects_table.h"

namespace flatwise::view {
namespace {

using job::Sign;

constexpr double kColumn = 100;  // Millimetres that the page scales a column from.

Json complaint_json(const Subject& subject, const Screen& screen) {
  const job::BookedIn* booked = subject.job.state.booked;
  const std::string none = tell(screen, Code{"view.not_told"});
  int found = 0;
  const int rotors = subject.job.shaft.rotor_count();
  for (int r = 1; r <= rotors; ++r) found += anything_found(subject, r) ? 1 : 0;
  const bool complaint = booked != nullptr && !booked->complaint.empty();
  const bool hours = booked != nullptr && booked->hour_meter;
  return facts_block({{tell(screen, Code{"view.booking.complaint"}), complaint ? booked->complaint : none},
                      {tell(screen, Code{"view.booking.hours"}), hours ? booked->hour_meter->typed : none},
                      {tell(screen, Code{"view.booking.findings"}),
                       tell(screen, Code{"view.booking.count"}, {{"found", found}, {"rotors", rotors}})}},
                     screen.voice);
}

/// One chip a sign: a tap says it is there, another takes it back.
Json chips_json(const Subject& subject, const Screen& screen, Where part) {
  std::vector<Json> chips;
  struct Chip {
    Sign sign;
    Code word;
  };
  for (const Chip& chip : {Chip{Sign::rough, Code{"sign.rough"}}, Chip{Sign::grease_out, Code{"sign.grease_out"}},
                           Chip{Sign::hot, Code{"sign.hot"}}, Chip{Sign::noisy, Code{"sign.noisy"}},
                           Chip{Sign::sound, Code{"sign.sound"}}})
    chips.push_back(yes_no(subject, screen, {.label = tell(screen, chip.word)}, [&](Reply reply) {
      return job::EntryBody{job::Looked{part, job::Stage::booking_in, chip.sign, reply}};
    }));
  return asks_block("chips", std::move(chips), tell(screen, Code{"view.booking.signs"}));
}

Json measure_json(const Subject& subject, const Screen& screen, int rotor) {
  const Length radius = dial_radius(subject, rotor);
  const Args args{{"radius", any(radius)}, {"push", any(job::push_wanted(subject.job.shaft.rotor(rotor)))}};
  return drawing_block(drawing::play_measure(subject.job.shaft, rotor, radius, kColumn),
                       tell(screen, Code{"view.booking.measure"}, args), {},
                       {.caption = tell(screen, Code{"view.booking.hands"}, args)});
}

// The rotor whose swing was read last before this one in the row: shown for comparison.
int read_before(const Subject& subject, int rotor) {
  for (int r = rotor - 1; r >= 1; --r)
    if (play_of(subject, r) != nullptr) return r;
  return 0;
}

/// How the dial stood and the rotor was held: part of the same answer, told once more with it.
Json beside_swing(const Subject& subject, const Screen& screen, const job::PlayRead& read, FieldIs is) {
  job::PlayRead again = read;
  const std::optional<Entered>& told = is.into == "push" ? read.push : read.radius;
  (is.into == "push" ? again.push : again.radius) = Entered{};
  is.body = again;
  Json json = field(subject, screen, is);
  json["key"] = field_key(again) + "/" + is.into;
  json["said"] = Json::array();
  if (told) json["before"] = {{"label", is.label}, {"typed", told->typed}};
  return json;
}

// The swing means nothing without where the dial stood.
FieldIs radius_field(const Screen& screen, const job::PlayRead& read) {
  return {.title = tell(screen, Code{"view.booking.radius_of"}, {{"rotor", read.rotor}}),
          .label = tell(screen, Code{"view.booking.radius"}),
          .body = read,
          .into = "radius",
          .hint = tell(screen, Code{"view.booking.radius_hint"}),
          .marks = {"hand-2"}};
}

FieldIs push_field(const Subject& subject, const Screen& screen, const job::PlayRead& read) {
  const Force wanted = job::push_wanted(subject.job.shaft.rotor(read.rotor));
  return {.title = tell(screen, Code{"view.booking.push_of"}, {{"rotor", read.rotor}}),
          .label = tell(screen, Code{"view.booking.push"}),
          .kind = "force",
          .units = screen.voice.units == UnitSystem::metric ? std::vector<std::string>{"N", "lbf"}
                                                            : std::vector<std::string>{"lbf", "N"},
          .body = read,
          .into = "push",
          .hint = tell(screen, Code{"view.booking.push_hint"}, {{"push", any(wanted)}}),
          .marks = {"hand-3"}};
}

/// Asked once the swing is there; until somebody says, it is shown as what is assumed.
Json held_json(const Subject& subject, const Screen& screen, const job::PlayRead& read) {
  job::PlayRead carried = read, hanging = read;
  carried.held = Held::carried;
  carried.push.reset();
  hanging.held = Held::hanging;
  const Code detail = read.held ? Code{"view.booking.held_told"} : Code{"view.booking.held_assumed"};
  Json json =
      question(subject, screen, {.label = tell(screen, Code{"view.booking.held"}), .detail = tell(screen, detail)},
               {{.label = tell(screen, Code{"view.booking.held_carried"}), .body = carried},
                {.label = tell(screen, Code{"view.booking.held_hanging"}), .body = hanging}});
  json["key"] = field_key(read) + "/held";
  json["said"] = Json::array();
  json.erase("undo");  // It would take the swing back too: that is done at the swing.
  return asks_block("rows", {std::move(json)});
}

Json keypad_json(const Subject& subject, const Screen& screen, int rotor) {
  job::PlayRead body;
  // A swing read again was read the same way, until somebody says another.
  if (const job::PlayRead* read = play_of(subject, rotor)) body = *read;
  body.rotor = rotor;
  body.swing = {};
  body.gauge.clear();
  FieldIs is{.title = tell(screen, Code{"view.booking.swing_of"}, {{"rotor", rotor}}),
             .label = tell(screen, Code{"view.booking.swing"}),
             .body = body,
             .into = "swing",
             .gauge_into = "gauge",
             .gauges = Gauge::Use::length,
             .finest = true,
             .hint = tell(screen, Code{"view.booking.swing_hint"}),
             .marks = {"hand-2", "hand-3"}};
  if (const int before = read_before(subject, rotor)) {
    is.before_label = tell(screen, Code{"view.rotor"}, {{"rotor", before}});
    is.before_typed = play_of(subject, before)->swing.typed;
  }
  if (rotor < subject.job.shaft.rotor_count()) {
    job::PlayRead after;
    after.rotor = rotor + 1;
    is.next = field_key(after);
  }
  std::vector<Json> fields{field(subject, screen, is)};
  if (const job::PlayRead* read = play_of(subject, rotor)) {
    fields.push_back(beside_swing(subject, screen, *read, radius_field(screen, *read)));
    if (read->held == Held::hanging)
      fields.push_back(beside_swing(subject, screen, *read, push_field(subject, screen, *read)));
  }
  // Where all is told it stays with the swing: that is read again sooner than the dial is moved.
  return keypad_block(std::move(fields), field_key(body));
}

}  // namespace

SheetParts booking_in_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  const Shaft& shaft = subject.job.shaft;
  const int rotor = rotor_at(shaft, spot.station);
  SheetParts parts;
  parts.head.push_back(complaint_json(subject, screen));
  if (rotor == 0) {
    parts.title = tell(screen, Code{"view.booking.part"}, {{"part", station_name(shaft, spot.station, screen.voice)}});
    parts.left.push_back(chips_json(subject, screen, where_of(shaft, spot.station)));
    parts.right.push_back(text_block(tell(screen, Code{"view.booking.part_says"}), "note"));
  } else {
    parts.title = tell(screen, Code{"view.booking.title"}, {{"rotor", rotor}});
    parts.left.push_back(measure_json(subject, screen, rotor));
    parts.left.push_back(chips_json(subject, screen, where_of(shaft, spot.station)));
    parts.right.push_back(keypad_json(subject, screen, rotor));
    if (const job::PlayRead* read = play_of(subject, rotor)) parts.right.push_back(held_json(subject, screen, *read));
    for (Json& block : play_blocks(subject, screen, rotor)) parts.right.push_back(std::move(block));
  }
  if (Json suspects = suspects_table(subject, screen, false); !suspects.is_null()) parts.foot.push_back(suspects);
  return parts;
}

CellSays booking_in_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor == 0) {
    if (wrong_sign_at(subject, where_of(subject.job.shaft, station))) {
      cell.word = tell(screen, Code{"view.cell.suspect"});
      cell.flag = "unknown";
    }
    return cell;
  }
  if (const job::PlayRead* play = play_of(subject, rotor)) cell.sub = bare_length(play->swing.length(), screen.voice);
  switch (worn(subject, rotor)) {
    case Worn::not_read:
      cell.word = tell(screen, Code{"view.cell.ask"});
      cell.flag = "unknown";
      break;
    case Worn::read:
      cell.word = tell(screen, Code{"view.cell.read"});
      break;
    case Worn::as_new:
      cell.word = tell(screen, Code{"view.cell.felt"});
      cell.flag = "done";
      break;
    case Worn::doubt:
      cell.word = tell(screen, Code{"view.cell.doubt"});
      cell.flag = "unknown";
      break;
    case Worn::worn:
      cell.word = tell(screen, Code{"view.cell.worn"});
      cell.flag = "stopped";
      cell.tone = "strong";
      break;
  }
  return cell;
}

}  // namespace flatwise::view
