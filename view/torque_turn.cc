#include "view/torque_turn.h"

#include <algorithm>

#include "job/turns.h"

namespace flatwise::view {
namespace {

using job::Stage;

constexpr std::size_t kFewParts = 4;

const job::Shown* shown_at(const Subject& subject, std::string_view figure, const Nut& nut) {
  return shown_of(subject, Stage::torque, figure, {}, job::letter_of(nut.end));
}
/// As the record has it; before anything was judged, as the definition alone gives it.
WorkingPtr shown_or(const Subject& subject, std::string_view figure, const Nut& nut, const WorkingPtr& plain) {
  const job::Shown* shown = shown_at(subject, figure, nut);
  return shown != nullptr ? shown->working : plain;
}

std::vector<const Finding*> findings_that(const std::vector<const Finding*>& findings, std::string_view start) {
  std::vector<const Finding*> out;
  for (const Finding* f : findings)
    if (f->code.id().starts_with(start)) out.push_back(f);
  return out;
}

Json what_is_wanted(const Subject& subject, const Screen& screen, const job::TurnOfNut& turn) {
  std::vector<std::string> parts;
  if (turn.untold.size() <= kFewParts)
    for (const int station : turn.untold)
      parts.push_back(subject.job.shaft.stations()[static_cast<std::size_t>(station)].label);
  Args args{{"keys", turn.wanted}};
  if (!parts.empty()) args.emplace_back("parts", std::move(parts));
  return text_block(tell(screen, Code{"bench.torque.turn_wants"}, args), "note");
}

/// "How well snug is met, share of it" in the middle of a sentence.
std::string in_a_list(std::string name) {
  name.resize(std::min(name.size(), name.find(',')));
  if (!name.empty() && name.front() >= 'A' && name.front() <= 'Z')
    name.front() = static_cast<char>(name.front() + 'a' - 'A');
  return name;
}

/// What of these workings nobody gave.
Json what_is_assumed(const Screen& screen, std::initializer_list<const Working*> workings) {
  std::vector<std::string> names;
  for (const Working* working : workings) {
    if (working == nullptr) continue;
    for (const Input& input : working->inputs) {
      if (input.origin.kind != OriginKind::assumed) continue;
      std::string name = in_a_list(word("figure." + working->figure + "." + input.name, screen.voice));
      if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
    }
  }
  if (names.empty()) return nullptr;
  return text_block(tell(screen, Code{"bench.torque.turn_assumed"}, {{"what", std::move(names)}}), "note");
}

FactRow expected_row(const Screen& screen, const WorkingPtr& expected) {
  return {.caption = tell(screen, Code{"bench.torque.turn"}),
          .value = range_words(output_of(*expected, "turn-least"), output_of(*expected, "turn-greatest"), screen.voice),
          .tone = "strong",
          .other = tell(screen, Code{"bench.torque.turn_about"},
                        {{"turn", output_of(*expected, "turn")}, {"snug", *input_of(*expected, "snug")}}),
          .working = expected};
}

FactRow by_angle_row(const Screen& screen, const WorkingPtr& by_angle) {
  return {.caption = tell(screen, Code{"bench.torque.by_angle"}),
          .value = range_words(output_of(*by_angle, "preload-least"), output_of(*by_angle, "preload-greatest"),
                               screen.voice),
          .tone = "strong",
          .working = by_angle};
}

std::vector<FactRow> settled_rows(const Screen& screen, const WorkingPtr& settled) {
  return {{.caption = tell(screen, Code{"bench.torque.settles"}),
           .value = shown(output_of(*settled, "loss"), screen.voice),
           .other = tell(screen, Code{"bench.torque.left"}, {{"left", output_of(*settled, "left")}}),
           .working = settled},
          {.caption = tell(screen, Code{"bench.torque.second"}),
           .value = shown(output_of(*settled, "turn"), screen.voice),
           .other = tell(screen, Code{"bench.torque.second_most"}, {{"most", any(job::most_by_settling(*settled))}}),
           .working = settled}};
}

Json seen_answer(const Subject& subject, const Screen& screen, const Nut& nut,
                 const std::vector<const Finding*>& findings) {
  const job::Shown* seen = shown_at(subject, "turn-expected", nut);
  const auto about = findings_that(findings, "fasteners.turn_");
  if (seen == nullptr || !seen->working->answer)
    return findings_block(screen, findings_that(findings, "torque.turn_needs"));
  const Working& working = *seen->working;
  return measured_block(screen, {.shown = *seen,
                                 .findings = about,
                                 .value = *input_of(working, "turned"),
                                 .expanded_si = input_of(working, "turned-u")->si,
                                 .least = output_of(working, "turn-least"),
                                 .greatest = output_of(working, "turn-greatest")});
}

Json second_answer(const Subject& subject, const Screen& screen, const Nut& nut,
                   const std::vector<const Finding*>& findings) {
  const job::Shown* second = shown_at(subject, "second-pull", nut);
  if (second == nullptr || !second->working->answer) return nullptr;
  const auto about = findings_that(findings, "fasteners.nut_");
  return measured_block(screen, {.shown = *second,
                                 .findings = about,
                                 .value = *input_of(*second->working, "turned"),
                                 .expanded_si = input_of(*second->working, "turned-u")->si,
                                 .least = std::nullopt,
                                 .greatest = std::nullopt});
}

Json turned_field(const Subject& subject, const Screen& screen, const Nut& nut, const job::NutPulled& pulled) {
  job::NutPulled body = pulled;
  body.turned = Entered{};
  FieldIs is;
  is.label = is.title = tell(screen, Code{"bench.torque.turned_field"}, {{"nut", job::letter_of(nut.end)}});
  is.kind = "angle";
  is.body = body;
  is.into = "turned";
  if (pulled.turned)
    is.before_label = tell(screen, Code{"bench.torque.reckoned"}), is.before_typed = pulled.turned->typed;
  is.hint = tell(screen, Code{"bench.torque.turned_hint"});
  Json json = field(subject, screen, is);
  json["key"] = field_key(pulled) + "#turned";
  json["said"] = Json::array();  // What stands in the record was said at the reading's own field.
  json.erase("undo");
  return json;
}

Json second_field(const Subject& subject, const Screen& screen, const Nut& nut, const job::NutPulled& pulled) {
  job::NutPulledAgain body;
  body.nut = nut.end;
  if (pulled.with == TorquePull::With::wrench) body.gauge = pulled.gauge;
  FieldIs is;
  is.label = is.title = tell(screen, Code{"bench.torque.second_field"}, {{"nut", job::letter_of(nut.end)}});
  is.kind = "angle";
  is.body = body;
  is.into = "turned";
  is.hint = tell(screen, Code{"bench.torque.second_hint"});
  return field(subject, screen, is);
}

void add(Json& blocks, Json block) {
  if (!block.is_null()) blocks.push_back(std::move(block));
}

}  // namespace

bool about_turn(const Finding& finding) {
  const std::string_view code = finding.code.id();
  return code.starts_with("fasteners.turn_") || code.starts_with("fasteners.nut_") || code.starts_with("torque.turn_");
}

std::vector<std::string> second_pulls(const Subject& subject, const Screen& screen) {
  std::vector<std::string> lines;
  for (const Nut& nut : subject.job.shaft.spec().nuts) {
    const WorkingPtr settled = shown_or(subject, "settling", nut, job::turn_of(subject.job.shaft, nut).settled);
    if (settled == nullptr) continue;
    lines.push_back(tell(screen, Code{"bench.torque.second_line"},
                         {{"nut", job::letter_of(nut.end)}, {"most", any(job::most_by_settling(*settled))}}));
  }
  return lines;
}

std::vector<Json> turn_fields(const Subject& subject, const Screen& screen, const Nut& nut,
                              const job::NutPulled& pulled) {
  return {turned_field(subject, screen, nut, pulled), second_field(subject, screen, nut, pulled)};
}

void add_turn(const Subject& subject, const Screen& screen, const Nut& nut, const std::vector<const Finding*>& findings,
              SheetParts& parts) {
  const job::TurnOfNut turn = job::turn_of(subject.job.shaft, nut);
  if (!turn.wanted.empty()) {
    add(parts.right, findings_block(screen, findings_that(findings, "torque.turn_needs")));
    return parts.right.push_back(what_is_wanted(subject, screen, turn));
  }
  if (turn.expected == nullptr || turn.settled == nullptr) return;
  const WorkingPtr expected = shown_or(subject, "turn-expected", nut, turn.expected);
  const WorkingPtr settled = shown_or(subject, "settling", nut, turn.settled);
  std::vector<FactRow> rows{expected_row(screen, expected)};
  if (const job::Shown* by_angle = shown_at(subject, "angle-turn", nut))
    rows.push_back(by_angle_row(screen, by_angle->working));
  for (FactRow& row : settled_rows(screen, settled)) rows.push_back(std::move(row));
  parts.right.push_back(facts_block(rows, screen.voice));
  if (turn.after_other) parts.right.push_back(text_block(tell(screen, Code{"bench.torque.after_other"}), "note"));
  add(parts.right, seen_answer(subject, screen, nut, findings));
  add(parts.right, second_answer(subject, screen, nut, findings));
  add(parts.right, what_is_assumed(screen, {turn.springs.get(), expected.get(), settled.get()}));
}

}  // namespace flatwise::view
