// Drafts of entries, and what was said already: the half of blocks.h that looks at the record.
#include <algorithm>

#include "job/entry_fields.h"
#include "job/entry_says.h"
#include "record/entry_json.h"
#include "record/instant.h"
#include "view/blocks.h"

namespace flatwise::view {
namespace {

using job::Entry;
using job::EntryBody;

Json said_json(const Subject& subject, const Screen& screen, const Entry& entry) {
  return {{"entry", entry.id},
          {"number", entry.number},
          {"shown", say(job::answer_says(entry.body), screen.voice)},
          {"by", person_name(subject, entry.by)},
          {"at", instant_text(entry.at)}};
}

std::string received_text(const Entry& entry, const Voice& voice) {
  const std::optional<Day> day = record::day_of(instant_text(entry.received).substr(0, 10));
  return day ? day_text(*day, voice) : instant_text(entry.received);
}

std::vector<job::Id> live_ids(const Subject& subject, const std::string& question) {
  std::vector<job::Id> ids;
  if (question.empty()) return ids;
  if (const job::LiveAnswers* live = subject.job.state.answers(question))
    for (const Entry* entry : live->entries) ids.push_back(entry->id);
  return ids;
}

// The body that everybody gives who answered; none where nobody did or they differ.
const EntryBody* settled(const Subject& subject, const std::string& question) {
  const job::LiveAnswers* live = subject.job.state.answers(question);
  return live == nullptr || live->entries.empty() || !live->agreed ? nullptr : &live->first().body;
}

/// Number of a part of an entry's body, whatever the body calls it.
struct PartOf {
  const Shaft& shaft;
  [[nodiscard]] Where nut(End end) const {
    for (std::size_t i = 0; i < shaft.stations().size(); ++i) {
      const Station& s = shaft.stations()[i];
      if (s.nut >= 0 && shaft.spec().nuts[static_cast<std::size_t>(s.nut)].end == end)
        return job::at_station(static_cast<int>(i));
    }
    return {};
  }
  [[nodiscard]] Where spacer(int position) const {
    for (std::size_t i = 0; i < shaft.stations().size(); ++i)
      if (shaft.stations()[i].kind == StationKind::spacer && shaft.stations()[i].number == position)
        return job::at_station(static_cast<int>(i));
    return {};
  }
  [[nodiscard]] Where station(int number) const {
    if (number < 1 || number > static_cast<int>(shaft.stations().size())) return {};
    return where_of(shaft, number - 1);
  }
  Where operator()(const job::Answered& a) const {
    if (a.number == 0) return {};
    const auto all = job::questions();
    const auto it = std::find_if(all.begin(), all.end(), [&](const job::Question& q) { return q.id == a.question; });
    if (it == all.end()) return {};
    if (it->of == job::AskedOf::nut) return nut(a.number == 1 ? End::a : End::b);
    return it->of == job::AskedOf::captive_station ? station(a.number) : job::at_rotor(a.number);
  }
  Where operator()(const job::NutPulled& n) const { return nut(n.nut); }
  Where operator()(const job::ToolTaken& t) const { return nut(t.nut); }
  Where operator()(const job::NutPulledAgain& n) const { return nut(n.nut); }
  Where operator()(const job::LabelPutBack& l) const { return spacer(l.position); }
  template <class Body>
  Where operator()(const Body& body) const {
    if constexpr (requires { body.rotor; }) {
      return job::at_rotor(body.rotor);
    } else if constexpr (requires { body.station; }) {
      return station(body.station);
    } else if constexpr (requires { body.part.number; }) {
      return body.part;
    } else {
      return {};
    }
  }
};

}  // namespace

Json body_json(const EntryBody& body) {
  // A figure that is still to be typed has no text yet; the record would take that for a bug.
  EntryBody filled = body;
  std::vector<std::string> blanks;
  const auto fill = [&](const job::FieldSpec& spec, auto& member) {
    using Member = std::remove_cvref_t<decltype(member)>;
    Entered* figure = nullptr;
    if constexpr (std::is_same_v<Member, Entered>) figure = &member;
    if constexpr (std::is_same_v<Member, std::optional<Entered>>) figure = member ? &*member : nullptr;
    if (figure == nullptr || !figure->typed.empty()) return;
    figure->typed = "0";
    blanks.emplace_back(spec.name);
  };
  std::visit([&](auto& b) { job::each_field(b, fill); }, filled);
  Json json = record::body_json(filled);
  for (const std::string& name : blanks) json[name] = "";
  return json;
}

Where part_of(const Shaft& shaft, const EntryBody& body) { return std::visit(PartOf{shaft}, body); }

std::string person_name(const Subject& subject, const job::Id& id) {
  const auto it = subject.people.find(id);
  return it == subject.people.end() ? id : it->second;
}

std::string instant_text(job::Instant at) { return record::text_of(at); }

Json draft(const Subject& subject, const EntryBody& body) {
  return {{"corrects", live_ids(subject, job::question_of(body))}, {"body", body_json(body)}};
}

Json undo_draft(const Subject& subject, const std::string& question) {
  const std::vector<job::Id> ids = live_ids(subject, question);
  if (ids.empty()) return nullptr;
  return {{"corrects", ids}, {"body", body_json(job::Withdrawn{})}};
}

Json said(const Subject& subject, const Screen& screen, const std::string& question) {
  Json list = Json::array();
  if (question.empty()) return list;
  if (const job::LiveAnswers* live = subject.job.state.answers(question))
    for (const Entry* entry : live->entries) list.push_back(said_json(subject, screen, *entry));
  return list;
}

bool agreed(const Subject& subject, const std::string& question) {
  const job::LiveAnswers* live = question.empty() ? nullptr : subject.job.state.answers(question);
  return live == nullptr || live->agreed;
}

/// Whether what was said is this choice. A customer's yes that was noted without a price is one to what he was told.
bool is_choice(const EntryBody& choice, const EntryBody& said) {
  if (job::same_answer(choice, said)) return true;
  const auto* asked = std::get_if<job::CustomerSaid>(&choice);
  const auto* noted = std::get_if<job::CustomerSaid>(&said);
  return asked != nullptr && noted != nullptr && asked->reply == noted->reply && !noted->price;
}

Json question(const Subject& subject, const Screen& screen, const Ask& ask, const std::vector<Option>& options) {
  CORE_CHECK(!options.empty());
  const std::string key = field_key(options.front().body);
  const EntryBody* chosen = settled(subject, key);
  Json json{{"key", key}, {"label", ask.label}};
  Json choices = Json::array();
  for (const Option& option : options) {
    Json choice{{"label", option.label}, {"draft", draft(subject, option.body)}};
    choice["chosen"] = chosen != nullptr && is_choice(option.body, *chosen);
    if (!option.tone.empty()) choice["tone"] = option.tone;
    choices.push_back(std::move(choice));
  }
  json["choices"] = std::move(choices);
  json["said"] = said(subject, screen, key);
  json["agreed"] = agreed(subject, key);
  if (!ask.detail.empty()) json["detail"] = ask.detail;
  if (Json undo = undo_draft(subject, key); !undo.is_null()) json["undo"] = std::move(undo);
  if (!ask.tone.empty()) json["tone"] = ask.tone;
  return json;
}

Json yes_no(const Subject& subject, const Screen& screen, const Ask& ask, const std::function<EntryBody(Reply)>& body,
            bool not_seen) {
  std::vector<Option> options{{tell(screen, Code{"reply.yes"}), body(Reply::yes), {}},
                              {tell(screen, Code{"reply.no"}), body(Reply::no), {}}};
  // 'Not seen' that somebody said elsewhere is an answer too, and shows as one.
  const job::LiveAnswers* live = subject.job.state.answers(job::question_of(body(Reply::yes)));
  const bool so_said = live != nullptr && std::ranges::any_of(live->entries, [&](const Entry* entry) {
                         return job::same_answer(entry->body, body(Reply::not_seen));
                       });
  if (not_seen || so_said) options.push_back({tell(screen, Code{"reply.not_seen"}), body(Reply::not_seen), {}});
  return question(subject, screen, ask, options);
}

std::vector<Json> job_questions(const Subject& subject, const Screen& screen, job::Stage stage, job::AskedOf of,
                                int number) {
  std::vector<Json> out;
  for (const job::Asked& asked : job::asked(subject.job.shaft, subject.job.state.bench)) {
    if (asked.question->stage != stage || asked.question->of != of || asked.number != number) continue;
    const std::string id{asked.question->id};
    out.push_back(yes_no(
        subject, screen, {.label = capital(word("question." + id, screen.voice))},
        [&](Reply reply) { return EntryBody{job::Answered{id, number, reply}}; },
        // Who comes to a shaft that others took apart has not seen it, and says so: it stays open.
        stage == job::Stage::teardown));
  }
  return out;
}

Json disagree_block(const Subject& subject, const Screen& screen, const std::string& question) {
  const job::LiveAnswers* live = subject.job.state.answers(question);
  if (live == nullptr || live->agreed) return nullptr;
  const Where where = part_of(subject.job.shaft, live->first().body);
  const std::optional<int> station = station_of(subject.job.shaft, where);
  Args args{{"count", static_cast<int>(live->entries.size())}};
  if (station) args.emplace_back("part", station_name(subject.job.shaft, *station, screen.voice));
  Json choices = Json::array();
  std::vector<Json> seen;
  for (const Entry* entry : live->entries) {
    Json body = body_json(entry->body);
    if (std::find(seen.begin(), seen.end(), body) != seen.end()) continue;
    seen.push_back(body);
    choices.push_back({{"label", say(job::answer_says(entry->body), screen.voice)},
                       {"draft", draft(subject, entry->body)},
                       {"chosen", false}});
  }
  return {{"block", "disagree"},
          {"head", tell(screen, Code{"view.disagree"}, args)},
          {"answers", said(subject, screen, question)},
          {"choices", std::move(choices)}};
}

Json photos_block(const Subject& subject, const Screen&, job::Stage stage, Where part) {
  Json photos = Json::array();
  for (const Entry* entry : subject.job.state.added) {
    const auto* photo = std::get_if<job::PhotoTaken>(&entry->body);
    if (photo == nullptr || photo->stage != stage || photo->part != part) continue;
    photos.push_back({{"blob", photo->blob},
                      {"says", photo->says},
                      {"by", person_name(subject, entry->by)},
                      {"at", instant_text(entry->at)}});
  }
  job::PhotoTaken empty;
  empty.part = part;
  empty.stage = stage;
  return {{"block", "photos"}, {"photos", std::move(photos)}, {"draft", draft(subject, empty)}};
}

Json note_block(const Subject& subject, const Screen& screen, job::Stage stage, Where part) {
  Json notes = Json::array();
  for (const Entry* entry : subject.job.state.added) {
    const auto* note = std::get_if<job::NoteWritten>(&entry->body);
    if (note != nullptr && note->stage == stage && note->part == part)
      notes.push_back(said_json(subject, screen, *entry));
  }
  job::NoteWritten empty;
  empty.part = part;
  empty.stage = stage;
  return {{"block", "note"},
          {"label", tell(screen, Code{"view.note"})},
          {"draft", draft(subject, empty)},
          {"into", "text"},
          {"said", std::move(notes)}};
}

Json signatures_block(const Subject& subject, const std::vector<SignatureRow>& rows) {
  Json list = Json::array();
  for (const SignatureRow& row : rows) {
    Json json{{"role", row.role}, {"says", row.says}};
    if (row.signed_by != nullptr)
      json["signed"] = {{"by", person_name(subject, row.signed_by->by)}, {"at", instant_text(row.signed_by->at)}};
    if (!row.action.is_null()) json["action"] = row.action;
    list.push_back(std::move(json));
  }
  return {{"block", "signatures"}, {"rows", std::move(list)}};
}

Json log_block(const Subject& subject, const Screen& screen, std::string head) {
  Json list = Json::array();
  const auto entries = subject.job.state.entries;
  for (std::size_t i = entries.size(); i > 0; --i) {
    const Entry& entry = entries[i - 1];
    std::string says = say(job::entry_says(subject.job.shaft, entry.body), screen.voice);
    if (job::clock_was_off(entry))
      says = say({Code{"record.clock_off"}, {{"says", says}, {"received", received_text(entry, screen.voice)}}},
                 screen.voice);
    if (subject.job.state.after_release(entry))
      says = say({Code{"record.after_release"}, {{"says", says}}}, screen.voice);
    Json json{{"number", entry.number},
              {"says", says},
              {"by", person_name(subject, entry.by)},
              {"at", instant_text(entry.at)}};
    if (const auto after = subject.job.state.replacing(entry); !after.empty()) {
      const Entry& by = *after.back();
      json[std::holds_alternative<job::Withdrawn>(by.body) ? "withdrawn_by" : "corrected_by"] = by.number;
    }
    list.push_back(std::move(json));
  }
  Json json{{"block", "log"}, {"entries", std::move(list)}};
  if (!head.empty()) json["head"] = std::move(head);
  return json;
}

}  // namespace flatwise::view
