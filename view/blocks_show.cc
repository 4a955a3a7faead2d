// Blocks that show, and where a tap leads: the half of blocks.h that only lays out what it is given.
#include <algorithm>
#include <utility>

#include "view/blocks.h"
#include "view/picture_json.h"

namespace flatwise::view {
namespace {

void put(Json& json, const char* key, const std::string& text) {
  if (!text.empty()) json[key] = text;
}
void put(Json& json, const char* key, std::string_view text) {
  if (!text.empty()) json[key] = text;
}
void put(Json& json, const char* key, const Json& value) {
  if (!value.is_null()) json[key] = value;
}

}  // namespace

Json go(const GoTo& to) {
  Json json = Json::object();
  if (to.stage) json["stage"] = job::stage_name(*to.stage);
  if (to.station) json["station"] = *to.station;
  if (to.from) json["from"] = *to.from == End::a ? "a" : "b";
  if (to.step) json["step"] = *to.step;
  put(json, "page", to.page);
  put(json, "id", to.id);
  return json;
}
Json do_go(const GoTo& to) { return {{"go", go(to)}}; }
Json do_open(const std::string& where) { return {{"open", where}}; }
Json do_record(std::vector<Json> drafts, const std::optional<GoTo>& then, std::string_view key) {
  Json json{{"record", std::move(drafts)}};
  if (then) json["go"] = go(*then);
  put(json, "key", key);
  return json;
}

Json action(std::string label, Json does, const ActionLook& look) {
  Json json{{"label", std::move(label)}, {"tone", look.tone}, {"do", std::move(does)}};
  put(json, "blocked", look.blocked);
  put(json, "says", look.says);
  return json;
}

Json asks_block(std::string_view style, std::vector<Json> questions, std::string head) {
  Json json{{"block", "asks"}, {"style", style}, {"questions", std::move(questions)}};
  put(json, "head", head);
  return json;
}

Json keypad_block(std::vector<Json> fields, std::string first) {
  Json json{{"block", "keypad"}, {"fields", std::move(fields)}};
  put(json, "first", first);
  return json;
}

Json text_block(std::string says, std::string_view size, std::string_view tone) {
  return {{"block", "text"}, {"says", std::move(says)}, {"size", size}, {"tone", tone}};
}

Json caution_block(std::string head, std::vector<std::string> lines, std::string rule) {
  // A line that ends with the rule has said it: nothing is said twice where a hand can be hurt.
  const bool told = std::ranges::any_of(lines, [&](const std::string& line) { return line.ends_with(rule); });
  Json json{{"block", "caution"}, {"head", std::move(head)}, {"lines", std::move(lines)}};
  if (!told) put(json, "rule", rule);
  return json;
}

Json fact(const FactRow& row, const Voice& voice) {
  Json json{{"caption", row.caption}, {"value", row.value}};
  put(json, "tone", row.tone);
  put(json, "other", row.other);
  if (row.working != nullptr) json["working"] = wire::to_json(*row.working, voice);
  return json;
}

Json facts_block(const std::vector<FactRow>& rows, const Voice& voice) {
  Json list = Json::array();
  for (const FactRow& row : rows) list.push_back(fact(row, voice));
  return {{"block", "facts"}, {"rows", std::move(list)}};
}

Json drawing_block(const drawing::DisplayList& list, std::string says, std::vector<TapOn> taps,
                   const DrawingLook& look) {
  Json tap_list = Json::array();
  for (TapOn& tap : taps) {
    Json json{{"id", tap.id}, {"says", tap.says}, {"do", tap.does.is_null() ? do_go({}) : std::move(tap.does)}};
    put(json, "field", tap.field);
    tap_list.push_back(std::move(json));
  }
  Json json{{"block", "drawing"}, {"list", picture_json(list)}, {"says", std::move(says)}};
  json["taps"] = std::move(tap_list);
  if (!look.chosen.empty()) json["chosen"] = look.chosen;
  put(json, "caption", look.caption);
  if (look.wide) json["wide"] = true;
  return json;
}

Json switch_block(std::string label, const std::vector<SwitchChoice>& choices) {
  Json list = Json::array();
  for (const SwitchChoice& choice : choices)
    list.push_back({{"label", choice.label}, {"go", go(choice.to)}, {"chosen", choice.chosen}});
  return {{"block", "switch"}, {"label", std::move(label)}, {"choices", std::move(list)}};
}

Json end_switch(const Screen& screen, const Spot& spot) {
  const auto to = [&](End end) { return GoTo{.stage = spot.stage, .station = spot.station, .from = end}; };
  return switch_block(tell(screen, Code{"view.seen_from"}),
                      {{tell(screen, Code{"view.end_a"}), to(End::a), spot.from == End::a},
                       {tell(screen, Code{"view.end_b"}), to(End::b), spot.from == End::b}});
}

Json grid_block(std::vector<std::string> head, const std::vector<GridRow>& rows, std::string caption) {
  Json list = Json::array();
  for (const GridRow& row : rows) {
    Json cells = Json::array();
    for (const GridCell& cell : row.cells) {
      Json json{{"text", cell.text}};
      put(json, "field", cell.field);
      put(json, "tone", cell.tone);
      cells.push_back(std::move(json));
    }
    list.push_back({{"label", row.label}, {"cells", std::move(cells)}});
  }
  Json json{{"block", "grid"}, {"head", std::move(head)}, {"rows", std::move(list)}};
  put(json, "caption", caption);
  return json;
}

Json answer_block(const AnswerIs& is, const Voice& voice) {
  Json json{{"block", "answer"}, {"sign", is.sign}, {"word", is.word}, {"says", is.says}};
  put(json, "value", is.value);
  put(json, "other", is.other);
  if (is.bar) json["bar"] = picture_json(*is.bar);
  put(json, "do", is.does);
  if (is.working != nullptr) json["working"] = wire::to_json(*is.working, voice);
  return json;
}

Json working_block(std::string about, const Working& working, const Voice& voice, bool open) {
  return {
      {"block", "working"}, {"open", open}, {"about", std::move(about)}, {"working", wire::to_json(working, voice)}};
}

Json table_cell(const TableCell& cell) {
  Json json{{"text", cell.text}};
  put(json, "tone", cell.tone);
  put(json, "flag", cell.flag);
  put(json, "sign", cell.sign);
  put(json, "detail", cell.detail);
  if (cell.bar) json["bar"] = picture_json(*cell.bar);
  return json;
}

Json table_block(const std::vector<TableHead>& head, const std::vector<TableRow>& rows, std::string caption,
                 std::string aside) {
  Json heads = Json::array();
  for (const TableHead& h : head) heads.push_back({{"text", h.text}, {"align", h.right ? "right" : "left"}});
  Json list = Json::array();
  for (const TableRow& row : rows) {
    Json cells = Json::array();
    for (const TableCell& cell : row.cells) cells.push_back(table_cell(cell));
    Json json{{"cells", std::move(cells)}};
    if (row.chosen) json["chosen"] = *row.chosen;
    if (row.advised) json["advised"] = true;
    put(json, "action", row.action);
    list.push_back(std::move(json));
  }
  Json json{{"block", "table"}, {"head", std::move(heads)}, {"rows", std::move(list)}};
  put(json, "caption", caption);
  put(json, "aside", aside);
  return json;
}

Json standing_block(const Subject& subject, bool complete, std::string head, std::string aside,
                    const std::vector<StandingRow>& rows, const std::optional<ForceIs>& force) {
  Json list = Json::array();
  for (const StandingRow& row : rows) {
    Json json{{"part", row.part}, {"what", row.what}, {"lifted_by", row.lifted_by}};
    put(json, "action", row.action);
    put(json, "detail", row.detail);
    list.push_back(std::move(json));
  }
  Json json{{"block", "standing"},
            {"complete", complete},
            {"head", std::move(head)},
            {"aside", std::move(aside)},
            {"rows", std::move(list)}};
  if (force)
    json["force"] = {{"label", force->label},
                     {"reason_label", force->reason_label},
                     {"draft", draft(subject, force->body)},
                     {"into", force->into}};
  return json;
}

Json ways_block(const std::vector<WayIs>& ways, const std::vector<WaysRow>& rows, std::vector<std::string> says) {
  Json list = Json::array();
  for (const WayIs& way : ways)
    list.push_back({{"name", way.name},
                    {"label", way.label},
                    {"advised", way.advised},
                    {"chosen", way.chosen},
                    {"strip", picture_json(way.strip)},
                    {"action", way.action}});
  Json row_list = Json::array();
  for (const WaysRow& row : rows) {
    Json cells = Json::array();
    for (const TableCell& cell : row.cells) cells.push_back(table_cell(cell));
    row_list.push_back({{"label", row.label}, {"cells", std::move(cells)}});
  }
  Json json{{"block", "ways"}, {"ways", std::move(list)}, {"rows", std::move(row_list)}};
  if (!says.empty()) json["says"] = std::move(says);
  return json;
}

Json step_block(const StepIs& is) {
  Json json{{"block", "step"},         {"number", is.number}, {"of", is.of},         {"says", is.says},
            {"cautions", is.cautions}, {"tools", is.tools},   {"labels", is.labels}, {"stop", is.stop}};
  put(json, "note", is.note);
  put(json, "drawing", is.drawing);
  put(json, "question", is.question);
  put(json, "action", is.action);
  put(json, "back", is.back);
  return json;
}

Json actions_block(std::vector<Json> actions) { return {{"block", "actions"}, {"actions", std::move(actions)}}; }

}  // namespace flatwise::view
