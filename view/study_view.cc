#include "view/study_view.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "drawing/shaft_strip.h"
#include "study/pictures.h"
#include "view/picture_json.h"

namespace flatwise::view {
namespace {

using study::Study;
using wire::Json;

constexpr double kStripWidth = 80, kStripHeight = 24;  // Millimetres that the page scales from.
constexpr double kArrowsWidth = 80, kArrowsHeight = 44;

std::string address(const StudyAddress& at, const std::string& file, const std::string& more = {}) {
  std::string query = more;
  if (!at.query.empty()) query += (query.empty() ? "" : "&") + at.query;
  return at.path + "/" + file + (query.empty() ? "" : "?" + query);
}

Json strip_of(const Study& study, int way) {
  const auto at = static_cast<std::size_t>(way);
  std::vector<drawing::RotorMarks> marks;
  for (const Angle tilt : study.outcomes[at].arranged.tilt) marks.push_back({tilt, std::nullopt});
  const drawing::StripDrawing strip = drawing::shaft_strip(
      study.ways[at].shaft, {}, marks,
      {.width = kStripWidth, .greatest_height = kStripHeight, .numbers = false, .draw_marks = false});
  return picture_json(strip.list);
}

Json asked_of(const study::TypedWay& typed) {
  Json json{{"name", typed.name.text}};
  for (const std::string_view field : study::way_fields())
    if (const auto* value = study::field_of(typed, field); value->has_value()) json[field] = (*value)->text;
  return json;
}

Json way_json(const Study& study, int number, const Voice& voice) {
  const auto at = static_cast<std::size_t>(number);
  const study::Way& way = study.ways[at];
  const study::Arranged& arranged = study.outcomes[at].arranged;
  Json changes = Json::array();
  for (const Message& change : way.changes) changes.push_back(study::said(change, voice));
  std::vector<std::int64_t> flats(arranged.flats.begin(), arranged.flats.end());
  Json json{{"name", way.name()},
            {"asked", asked_of(way.typed)},
            {"changes", std::move(changes)},
            {"defined", way.as_defined()},
            {"advised", study.is_best(number)},
            {"strip", strip_of(study, number)},
            {"says", say(Message{Code{"study.strip_says"}, {{"flats", std::move(flats)}}}, voice)}};
  if (arranged.quiet()) json["badge"] = word("study.badge.quiet", voice);
  if (study.is_best(number) && !arranged.quiet()) json["badge"] = word("study.badge.best", voice);
  return json;
}

/// A working in which one that several inputs came from stands at the first of them only.
WorkingPtr without_repeats(const Working& working) {
  Working out = working;
  std::vector<const Working*> seen;
  for (Input& input : out.inputs) {
    if (input.from == nullptr) continue;
    if (std::ranges::find(seen, input.from.get()) != seen.end()) {
      input.from = nullptr;
      continue;
    }
    seen.push_back(input.from.get());
    input.from = without_repeats(*input.from);
  }
  return std::make_shared<const Working>(std::move(out));
}

/// The workings of all cells, each once: several cells open the same.
class FigureList {
 public:
  std::size_t place_of(const WorkingPtr& working) {
    const auto at = std::ranges::find(list_, working);
    if (at == list_.end()) return list_.push_back(working), list_.size() - 1;
    return static_cast<std::size_t>(at - list_.begin());
  }
  [[nodiscard]] Json json(const Voice& voice) const {
    Json out = Json::array();
    for (const WorkingPtr& working : list_) out.push_back(wire::to_json(*without_repeats(*working), voice));
    return out;
  }

 private:
  std::vector<WorkingPtr> list_;
};

struct Cells {
  const Study& study;
  const Voice& voice;
  FigureList figures{};
};

Json cell_json(Cells& cells, const study::Row& row, int way) {
  const Study& study = cells.study;
  const Voice& voice = cells.voice;
  const study::Cell& cell = row.cells[static_cast<std::size_t>(way)];
  Json json{{"value", study::said(cell, voice)}};
  if (const std::string other = study::said_otherwise(cell, voice); !other.empty()) json["other"] = other;
  if (cell.detail) json["detail"] = study::said(*cell.detail, voice);
  if (row.form == study::Form::drawing) {
    json["drawing"] = picture_json(study::couples_of(study, way, kArrowsWidth, kArrowsHeight));
    json["says"] = say(Message{Code{"study.arrows_says"}, {{"left", study::said(cell, voice)}}}, voice);
  }
  if (cell.working) json["working"] = cells.figures.place_of(cell.working);
  if (cell.bad) json["bad"] = true;
  return json;
}

Json row_json(Cells& cells, const study::Row& row) {
  const Voice& voice = cells.voice;
  const std::string code = study::word_of(row);
  Json json{{"key", study::name_of(row.key)}, {"label", word(code, voice)}, {"form", study::name_of(row.form)}};
  if (has_words(code + ".detail")) json["detail"] = word(code + ".detail", voice);
  json["cells"] = Json::array();
  for (int way = 0; way < cells.study.count(); ++way) json["cells"].push_back(cell_json(cells, row, way));
  return json;
}

Json plot_json(const Study& study, const study::PlotData& plot, const StudyAddress& at, const Voice& voice) {
  const std::string key{study::name_of(plot.key)};
  return {{"key", key},
          {"title", study::title_of(plot.key, voice)},
          {"question", study::question_of(plot.key, voice)},
          {"differs", plot.differs},
          {"drawing", picture_json(study::picture_of(study, plot, voice))},
          {"says", study::aloud(study, plot, voice)},
          {"csv", address(at, key + ".csv")},
          {"svg", address(at, key + ".svg")}};
}

Json facts_json(const Study& study, const Voice& voice) {
  Json facts = Json::array();
  const auto add = [&](const std::string& caption, const std::string& value) {
    facts.push_back({{"caption", caption}, {"value", value}});
  };
  add(word("study.cell.study", voice), study.name);
  add(word("paper.shaft", voice), study.shaft.spec().name);
  add(word("study.cell.speed", voice), study::figure_text(any(study.shaft.spec().speed), voice));
  if (study.shaft.rotor_count() > 0) add(word("study.cell.rotor", voice), study::rotor_text(study.shaft, voice));
  return facts;
}

Json finding_json(const Study& study, const Voice& voice) {
  const study::AdviceSaid said = study::said(study, voice);
  Json json{{"way", study.advice.way ? Json(*study.advice.way) : Json(nullptr)},
            {"does", said.does},
            {"because", said.because},
            {"waits", said.waits}};
  if (!study.advice.lines.empty()) json["lines"] = study.advice.lines;
  return json;
}

/// The couple of one rotor, by which all is judged, of the first way that has its working.
Json workings_json(const Study& study, const Voice& voice) {
  Json workings = Json::array();
  for (const study::Outcome& outcome : study.outcomes) {
    const Input* couple = outcome.arranged.couple->input("couple");
    if (couple == nullptr || couple->from == nullptr) continue;
    workings.push_back({{"about", word("study.one_couple", voice)}, {"working", wire::to_json(*couple->from, voice)}});
    break;
  }
  return workings;
}

Json offers_json(const Study& study, const Voice& voice) {
  Json offers = Json::array();
  for (const std::string_view field : study::way_fields())
    offers.push_back({{"field", field},
                      {"label", word("study.offer." + std::string{field}, voice)},
                      {"example", word("study.offer." + std::string{field} + ".example", voice)},
                      {"defined", study::defined_text(study.shaft, field)}});
  return offers;
}

/// The errors by which the floor is made, as they would be typed.
Json errors_json(const Study& study, const Voice& voice) {
  const study::Errors& errors = study.errors;
  const auto one = [&](std::string_view field, std::string label, std::string value, bool said) {
    return Json{{"field", field}, {"label", std::move(label)}, {"value", std::move(value)}, {"said", said}};
  };
  const Message share{Code{"study.error_share.is"}, {{"share", any_ratio(errors.are.share)}}};
  Json list = Json::array();
  list.push_back(one("error_share", word("study.error_share", voice), say(share, voice), errors.share_said));
  list.push_back(one("error_azimuth", word("study.error_azimuth", voice), format_quantity(any(errors.are.azimuth)),
                     errors.azimuth_said));
  return list;
}

}  // namespace

Json study_view(const Study& study, const StudyAddress& at, const Voice& voice) {
  Json json{{"shaft", at.shaft}, {"name", study.name}, {"invented", study.shaft.spec().invented}};
  json["facts"] = facts_json(study, voice);
  json["ways"] = Json::array();
  for (int way = 0; way < study.count(); ++way) json["ways"].push_back(way_json(study, way, voice));
  json["rows"] = Json::array();
  Cells cells{study, voice};
  for (const study::Row& row : study.rows) json["rows"].push_back(row_json(cells, row));
  json["figures"] = cells.figures.json(voice);
  json["plots"] = Json::array();
  for (const study::PlotData& plot : study.plots) json["plots"].push_back(plot_json(study, plot, at, voice));
  json["finding"] = finding_json(study, voice);
  json["workings"] = workings_json(study, voice);
  json["notes"] = Json::array();
  for (const Message& note : study.notes) json["notes"].push_back(study::said(note, voice));
  json["offers"] = offers_json(study, voice);
  json["errors"] = errors_json(study, voice);
  json["most_ways"] = study::kMostWays;
  json["csv"] = address(at, "study.csv");
  json["print"] = {{"a4", address(at, "study.pdf", "paper=a4")}, {"letter", address(at, "study.pdf", "paper=letter")}};
  return json;
}

}  // namespace flatwise::view
