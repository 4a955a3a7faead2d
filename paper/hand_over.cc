#include "paper/hand_over.h"

#include <algorithm>
#include <array>

#include "core/units/format.h"
#include "job/entry_says.h"
#include "job/gauges.h"
#include "job/play.h"
#include "job/release.h"
#include "job/service.h"

namespace flatwise::paper {
namespace {

using job::Stage;

/// What every part of the record is told from.
struct Source {
  const HandOverOrder& order;

  [[nodiscard]] const job::OpenJob& job() const { return *order.job; }
  [[nodiscard]] const job::JobState& state() const { return order.job->state; }
  [[nodiscard]] const Voice& voice() const { return order.head.voice; }
  [[nodiscard]] Shown shown() const {
    return {.system = voice().units, .decimals = {}, .unit = {}, .currency = voice().currency};
  }
  [[nodiscard]] std::string say(const Message& m) const { return flatwise::say(m, voice()); }
  [[nodiscard]] std::string word(const Word& w) const { return flatwise::word(w.id, voice()); }
  [[nodiscard]] std::string who(const job::Id& person) const {
    const auto it = order.people.find(person);
    return it == order.people.end() ? person : it->second;
  }
  [[nodiscard]] std::string value(AnyQuantity quantity) const { return format_quantity(quantity, shown()); }
  [[nodiscard]] std::string range(AnyQuantity least, AnyQuantity greatest) const {
    return range_words(least, greatest, voice());
  }
  /// What an entry says, as a line of its own.
  [[nodiscard]] std::string says(const job::Entry& entry) const {
    return capital(say(job::entry_says(job().shaft, entry.body)));
  }
  /// The working of a figure about a part; nullptr when the rules had nothing to compute it from.
  [[nodiscard]] const Working* working(Stage stage, const Where& where, std::string_view about,
                                       std::string_view figure) const {
    for (const job::StageReport& s : job().report.stages) {
      if (s.stage != stage) continue;
      for (const job::Shown& w : s.workings)
        if (w.where == where && w.working->figure == figure && (about.empty() || w.about == about))
          return w.working.get();
    }
    return nullptr;
  }
};

AnyQuantity quantity_of(const Working& working, std::string_view output) {
  return std::get<AnyQuantity>(working.output(output)->value);
}

// --- Verdict ---------------------------------------------------------------------------------------------------------

std::string block_line(const Source& from, const job::Block& block) {
  return capital(flatwise::say(Finding{block.what.code, block.severity, block.what.args, block.where, std::nullopt},
                               from.voice()));
}

void fill_verdict(const Source& from, HandOverSheet& sheet) {
  const job::Released* released = from.state().released;
  const auto& blocks = from.order.standing->blocks;
  const bool forced = released != nullptr && released->forced;
  sheet.complete = released != nullptr && !forced && blocks.empty();
  sheet.verdict = from.word(sheet.complete   ? Word{"paper.complete"}
                            : forced         ? Word{"paper.released_open"}
                            : blocks.empty() ? Word{"paper.not_released"}
                                             : Word{"paper.blocked"});
  if (forced) sheet.because.push_back(from.say({Code{"paper.forced_because"}, {{"reason", released->reason}}}));
  for (const job::Block& block : blocks) sheet.because.push_back(block_line(from, block));
  if (sheet.because.empty())
    sheet.because.push_back(from.word(sheet.complete ? Word{"paper.nothing_open"} : Word{"paper.wants_signing"}));
}

// --- The shaft and a line a rotor -----------------------------------------------------------------------------------

std::optional<int> flat_seen(const Source& from, int rotor, Half half) {
  for (const MarkRead& m : from.state().bench.marks)
    if (m.rotor == rotor && m.half == half) return m.flat.value;
  return std::nullopt;
}

bool renewed(const Source& from, int rotor) {
  return std::ranges::find(from.state().bench.new_set, rotor) != from.state().bench.new_set.end();
}
bool came_off(const Source& from, int rotor) {
  return std::ranges::find(from.state().bench.came_off, rotor) != from.state().bench.came_off.end();
}

void fill_shaft(const Source& from, HandOverSheet& sheet) {
  const Shaft& shaft = from.job().shaft;
  sheet.shaft = &shaft;
  sheet.states.resize(shaft.stations().size());
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor) {
    sheet.states[static_cast<std::size_t>(shaft.station_of_rotor(rotor))].renew = renewed(from, rotor);
    const auto azimuth = [&](Half half) -> std::optional<Angle> {
      const auto flat = flat_seen(from, rotor, half);
      return flat ? std::optional{azimuth_of_flat(*flat, shaft.flats())} : std::nullopt;
    };
    sheet.marks.push_back({azimuth(Half::a), azimuth(Half::b)});
  }
}

const Working* bore_working(const Source& from, int rotor, std::string_view plane) {
  return from.working(Stage::inspection, job::at_rotor(rotor), plane, "bore-at-plane");
}

HandOverRow::Bore bore_of(const Source& from, int rotor, std::string_view plane) {
  const Working* working = bore_working(from, rotor, plane);
  if (working == nullptr) return {};
  return {working->answer, from.value(std::get<AnyQuantity>(working->outputs.front().value))};
}

std::string press_of(const Source& from, int rotor) {
  for (const PressReading& press : from.state().bench.presses) {
    if (press.rotor != rotor) continue;
    const Working* band = from.working(Stage::press, job::at_rotor(rotor), {}, "press-force");
    if (band == nullptr) return press.force.value.typed;
    return from.say(
        {Code{"paper.press_read"},
         {{"read", press.force.value.typed},
          {"expected", from.range(quantity_of(*band, "force-least"), quantity_of(*band, "force-greatest"))}}});
  }
  return {};
}

std::string play_of(const Source& from, int rotor) {
  for (const PlayReading& play : from.state().bench.plays)
    if (play.rotor == rotor) return from.say(job::swing_as_read(play));
  return {};
}

HandOverRow row_of(const Source& from, int rotor) {
  HandOverRow row;
  row.rotor = rotor;
  row.renewed = renewed(from, rotor);
  const bool off = came_off(from, rotor);
  row.set = from.word(row.renewed ? Word{"paper.new"} : off ? Word{"paper.set_kept"} : Word{"paper.stayed"});
  if (off) {
    row.a = bore_of(from, rotor, "A");
    row.b = bore_of(from, rotor, "B");
    row.press = press_of(from, rotor);
  } else {
    row.a.value = from.word(Word{"paper.not_opened"});
  }
  const auto a = flat_seen(from, rotor, Half::a), b = flat_seen(from, rotor, Half::b);
  if (a && b) row.marks = std::to_string(*a) + " · " + std::to_string(*b);
  row.play = play_of(from, rotor);
  return row;
}

void fill_rows(const Source& from, HandOverSheet& sheet) {
  const Shaft& shaft = from.job().shaft;
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor) sheet.rows.push_back(row_of(from, rotor));
  const Hub& hub = shaft.rotor(1).hub;
  sheet.bore_limits = from.range(any(hub.bore.least), any(hub.bore.greatest));
  sheet.press_unit = from.word(Word{"paper.read_expected"});
  sheet.play_limits = from.word(Word{"paper.as_it_came_in"});
  std::optional<AnyQuantity> widest;
  for (const HandOverRow& row : sheet.rows)
    for (const char* plane : {"A", "B"})
      if (const Working* w = bore_working(from, row.rotor, plane); w != nullptr) {
        const AnyQuantity u = quantity_of(*w, "U-size");
        if (!widest || u.si > widest->si) widest = u;
      }
  if (widest) sheet.notes.push_back(from.say({Code{"paper.bore_u"}, {{"u", *widest}}}));
}

// --- What the rules found, in words ------------------------------------------------------------------------------------

void add_findings(const Source& from, Stage stage, HandOverPart& part) {
  for (const job::StageReport& s : from.job().report.stages) {
    if (s.stage != stage) continue;
    for (const Finding& f : s.findings) part.lines.push_back(capital(flatwise::say(f, from.voice())));
  }
  if (part.lines.empty()) part.lines.push_back(from.word(Word{"paper.nothing_entered"}));
}

/// An entry in one line. What was asked is told as what is so, "All guards on: yes.": a question is not a record.
std::string line_of(const Source& from, const job::Entry& entry) {
  constexpr std::array<std::string_view, 3> kReplies{"reply.no", "reply.yes", "reply.not_seen"};
  const auto* answered = std::get_if<job::Answered>(&entry.body);
  if (answered == nullptr || job::stage_of(entry.body) != Stage::test_run) return from.says(entry);
  const std::size_t reply = answered->reply == Reply::yes ? 1 : answered->reply == Reply::no ? 0 : 2;
  Args args{{"what", Word{"question." + answered->question + ".short"}}, {"reply", Word{std::string{kReplies[reply]}}}};
  if (answered->number > 0) args.emplace_back("nut", Word{answered->number == 1 ? "end.a" : "end.b"});
  return from.say({Code{"paper.answered_short"}, std::move(args)});
}

// --- The test run, each reading against its limit ---------------------------------------------------------------------

std::string with_u(const Source& from, const Output& value) {
  const AnyQuantity quantity = std::get<AnyQuantity>(value.value);
  return value.u ? format_with_uncertainty(quantity, value.u->expanded_si, from.shown()) : from.value(quantity);
}

/// "Hanger A: 26.0 ± 0.7 K above the room, at most 40 K: in."
std::string run_line(const Source& from, const job::Shown& shown) {
  const Working& working = *shown.working;
  Args args{{"value", with_u(from, working.outputs.front())}};
  if (shown.where.part == Where::Part::station)
    args.emplace_back("part", from.job().shaft.stations()[static_cast<std::size_t>(shown.where.number) - 1].label);
  if (const Input* limit = working.input("greatest")) args.emplace_back("limit", std::get<AnyQuantity>(limit->value));
  constexpr std::array<const char*, 3> kAnswers{"answer.in", "answer.out", "answer.cannot_tell"};
  if (const auto answer = shown.counts())
    args.emplace_back("answer", Word{kAnswers[static_cast<std::size_t>(*answer)]});
  return capital(from.say({working.figure == "run-rise" ? Code{"paper.run_rise"} : Code{"paper.run_vibration"}, args}));
}

/// The stage works out more than readings: when it is due again stands at the head of the sheet.
bool is_reading(const Working& working) { return working.figure == "run-rise" || working.figure == "run-vibration"; }

/// How long it ran; then heat and vibration of each hanger.
void add_run(const Source& from, HandOverPart& part) {
  for (const RunReading& read : from.state().bench.runs) {
    if (read.what != RunQuantity::minutes) continue;
    Args args{{"ran", read.value.typed}};
    if (const auto& shortest = from.job().shaft.spec().test_run.shortest) args.emplace_back("shortest", any(*shortest));
    part.lines.push_back(from.say({Code{"paper.run_time"}, std::move(args)}));
  }
  for (const job::StageReport& s : from.job().report.stages)
    if (s.stage == Stage::test_run)
      for (const job::Shown& shown : s.workings)
        if (is_reading(*shown.working)) part.lines.push_back(run_line(from, shown));
}

/// A reading that add_run() has told already.
bool told_as_run(const Source& from, const job::LiveAnswers& answers) {
  const auto* read = std::get_if<job::RunRead>(&answers.first().body);
  if (read == nullptr || !answers.agreed || read->what == RunQuantity::room) return false;
  if (read->what == RunQuantity::minutes) return true;
  const Where where = read->station > 0 ? job::at_station(read->station - 1) : Where{};
  const char* figure = read->what == RunQuantity::hanger ? "run-rise" : "run-vibration";
  return from.working(Stage::test_run, where, {}, figure) != nullptr;
}

/// Entries of a stage that hold now, as they were said, in the order they were stored.
void add_entries(const Source& from, Stage stage, HandOverPart& part) {
  std::vector<const job::Entry*> hold;
  for (const auto& [question, answers] : from.state().live)
    for (const job::Entry* entry : answers.entries)
      if (job::stage_of(entry->body) == stage && !told_as_run(from, answers)) hold.push_back(entry);
  std::ranges::sort(hold, {}, &job::Entry::number);
  for (const job::Entry* entry : hold) part.lines.push_back(line_of(from, *entry));
}

/// What came behind the release, with who wrote it and when: no signature above stands for it.
HandOverPart written_after_release(const Source& from) {
  HandOverPart part{from.word(Word{"paper.after_release"}), {}};
  for (const job::Entry& entry : from.job().entries)
    if (from.state().after_release(entry))
      part.lines.push_back(from.say({Code{"paper.after_release_line"},
                                     {{"number", entry.number},
                                      {"says", line_of(from, entry)},
                                      {"who", from.who(entry.by)},
                                      {"when", from.order.when(entry.at)}}}));
  return part;
}

void fill_parts(const Source& from, HandOverSheet& sheet) {
  HandOverPart decisions{from.word(Word{"paper.decisions"}), {}};
  add_entries(from, Stage::plan, decisions);
  if (decisions.lines.empty()) decisions.lines.push_back(from.word(Word{"paper.nothing_entered"}));
  HandOverPart torque{from.word(Word{"paper.torque"}), {}}, stack{from.word(Word{"paper.stack"}), {}},
      run{from.word(Word{"paper.test_run"}), {}};
  add_findings(from, Stage::torque, torque);
  add_findings(from, Stage::stack, stack);
  add_run(from, run);
  add_entries(from, Stage::test_run, run);
  if (run.lines.empty()) run.lines.push_back(from.word(Word{"paper.nothing_entered"}));
  sheet.parts = {std::move(torque), std::move(stack), std::move(run), std::move(decisions)};
  if (HandOverPart after = written_after_release(from); !after.lines.empty()) sheet.parts.push_back(std::move(after));
}

// --- When it is due again ---------------------------------------------------------------------------------------------

/// Large stands what the meter will show; where nobody read it, or no interval is given, what is known instead.
void fill_next_due(const Source& from, HandOverSheet& sheet) {
  const std::optional<job::NextDue> due = job::next_due(from.job().shaft, from.state().bench);
  if (!due) return;
  const job::DueSaid said = job::said(*due);
  sheet.next_due = from.say(said.when);
  for (const Message& because : said.because)
    sheet.next_due_says += (sheet.next_due_says.empty() ? "" : " ") + from.say(because);
}

// --- Corrections, signatures, log -------------------------------------------------------------------------------------

/// A part that came off and went back on is no correction, although the second answers the same question anew.
bool is_correction(const job::Entry& old, const job::Entry& fresh) {
  return old.body.index() == fresh.body.index() || std::holds_alternative<job::Withdrawn>(fresh.body);
}

void fill_corrected(const Source& from, HandOverSheet& sheet) {
  for (const job::Entry& entry : from.job().entries) {
    for (const job::Id& old_id : entry.corrects) {
      const auto old = std::ranges::find(from.job().entries, old_id, &job::Entry::id);
      if (old == from.job().entries.end() || !is_correction(*old, entry)) continue;
      sheet.corrected.push_back(from.say({Code{"paper.corrected_line"},
                                          {{"when", from.order.when(entry.at)},
                                           {"was", from.says(*old)},
                                           {"now", from.says(entry)},
                                           {"who", from.who(entry.by)}}}));
    }
  }
}

struct Signer {
  job::Role role;
  Word name, says;
};

void fill_signatures(const Source& from, HandOverSheet& sheet) {
  const Signer signers[] = {{job::Role::bench, Word{"paper.bench"}, Word{"paper.bench_signs"}},
                            {job::Role::lead, Word{"paper.lead"}, Word{"paper.lead_signs"}},
                            {job::Role::owner, Word{"paper.owner"}, Word{"paper.owner_signs"}}};
  // Who signed for what the record no longer holds, or had not seen all of it, has not signed: the blank waits for him.
  const std::array<job::Signature, 3> signatures = job::signatures(from.state());
  for (const Signer& signer : signers) {
    HandOverSignature line{.role = from.word(signer.name), .says = from.word(signer.says), .who = {}, .when = {}};
    const auto it = std::ranges::find(signatures, signer.role, &job::Signature::as);
    if (it->entry != nullptr) {
      line.who = from.who(it->entry->by);
      line.when = from.order.when(it->entry->at);
    }
    sheet.signatures.push_back(std::move(line));
  }
}

void fill_log(const Source& from, HandOverSheet& sheet) {
  for (const job::Entry& entry : from.job().entries) {
    std::string says = from.says(entry);
    if (const auto by = from.state().replacing(entry); !by.empty())
      says = from.say({Code{"paper.replaced_by"}, {{"says", says}, {"number", by.back()->number}}});
    if (job::clock_was_off(entry))
      says = from.say({Code{"record.clock_off"}, {{"says", says}, {"received", from.order.when(entry.received)}}});
    if (from.state().after_release(entry)) says = from.say({Code{"record.after_release"}, {{"says", says}}});
    sheet.log.push_back({entry.number, from.order.when(entry.at), from.who(entry.by), std::move(says)});
  }
  sheet.entries = static_cast<int>(from.job().entries.size());
  if (!from.job().entries.empty()) sheet.chain_head = from.job().entries.back().hash;
}

}  // namespace

HandOverSheet hand_over(const HandOverOrder& order) {
  const Source from{order};
  HandOverSheet sheet;
  sheet.head = order.head;
  sheet.machine = order.machine;
  sheet.customer = order.customer;
  if (const job::BookedIn* booked = from.state().booked; booked != nullptr && booked->hour_meter)
    sheet.hour_meter = booked->hour_meter->typed;
  if (from.state().released != nullptr && !order.job->entries.empty()) {
    const auto last = std::ranges::find_if(
        order.job->entries, [](const job::Entry& e) { return std::holds_alternative<job::Released>(e.body); });
    if (last != order.job->entries.end()) sheet.out = order.when(last->at);
  }
  fill_verdict(from, sheet);
  fill_next_due(from, sheet);
  fill_shaft(from, sheet);
  fill_rows(from, sheet);
  fill_parts(from, sheet);
  fill_corrected(from, sheet);
  fill_signatures(from, sheet);
  fill_log(from, sheet);
  return sheet;
}

}  // namespace flatwise::paper
