#include "view/torque_tools.h"

#include <algorithm>
#include <utility>

#include "core/fasteners/figures.h"
#include "core/units/parse.h"
#include "drawing/bench_pictures.h"
#include "job/figure_use.h"
#include "study/study.h"

namespace flatwise::view {
namespace {

constexpr double kWays = 104;  // On a telephone no wider than its column.

std::vector<Tool> common_tools(UnitSystem units) {
  const bool metric = units == UnitSystem::metric;
  const std::string wrench = metric ? "1.2 m" : "4 ft";
  return {{wrench, "", 1}, {wrench, metric ? "0.6 m" : "2 ft", 1}, {wrench, "", kMultiplier}};
}

std::string tool_key(const Nut& nut) {
  job::ToolTaken body;
  body.nut = nut.end;
  return field_key(body);
}

const job::ToolTaken* told_tool(const Subject& subject, const Nut& nut) {
  return subject.job.state.agreed<job::ToolTaken>(tool_key(nut));
}

std::optional<Tool> own_tool(const Subject& subject, const Nut& nut) {
  const job::ToolTaken* told = told_tool(subject, nut);
  if (told == nullptr) return std::nullopt;
  return Tool{told->length.typed, told->extension ? told->extension->typed : std::string{},
              told->ratio ? told->ratio->value.si : 1.0, true};
}

Results<Working> worked_out(const Subject& subject, const Nut& nut, const Tool& tool) {
  const Shaft& shaft = subject.job.shaft;
  std::vector<Input> in{
      given("torque", any(nut.torque), job::nut_origin(shaft, nut.end, "torque")),
      given("length", any(length_typed(tool.wrench).length())), given("multiplier", any_ratio(tool.multiplier)),
      given("one-person", any(shaft.spec().policies.one_person_pull), shaft.origin("policy.one_person_pull"))};
  if (!tool.extension.empty()) in.push_back(given("extension", any(length_typed(tool.extension).length())));
  return job::use(fasteners::figures(), "wrench-setting", std::move(in));
}

/// The first that one person can hold; where none can, the one that takes least.
std::size_t advised_of(const std::vector<Way>& ways) {
  std::size_t best = 0;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (!ways[i].too_much) return i;
    if (ways[i].working->si("pull") < ways[best].working->si("pull")) best = i;
  }
  return best;
}

drawing::TorqueWays drawn(const Subject& subject, const Screen& screen, const std::vector<Way>& ways) {
  const Force one = subject.job.shaft.spec().policies.one_person_pull;
  std::vector<drawing::TorqueWay> out;
  const std::size_t advised = advised_of(ways);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const Way& way = ways[i];
    drawing::TorqueWay w;
    w.bar = length_typed(way.tool.wrench).length();
    w.bar_words = way.tool.wrench;
    if (!way.tool.extension.empty())
      w.extension = length_typed(way.tool.extension).length(), w.extension_words = way.tool.extension;
    w.multiplier = way.tool.multiplier;
    if (w.multiplier > 1) w.multiplier_words = figure_only(any_ratio(w.multiplier), screen.voice) + ":1";
    w.pull = Force::from_si(way.working->si("pull"));
    w.too_much = way.too_much;
    w.advised = i == advised;
    w.pull_words = study::figure_text(any(w.pull), screen.voice);
    out.push_back(std::move(w));
  }
  return drawing::torque_ways(
      out, one, tell(screen, Code{"bench.torque.one"}, {{"force", study::figure_text(any(one), screen.voice)}}), kWays);
}

/// A hand feels three figures of a pull at most, in either system.
std::string pull_other(AnyQuantity pull, const Screen& screen) {
  Voice voice = screen.voice;
  voice.units = other(voice.units);
  return study::figure_text(pull, voice);
}

/// One figure of the tool at hand: what was told of it is told again with this one.
Json tool_field(const Subject& subject, const Screen& screen, const job::ToolTaken& now, std::string_view into) {
  job::ToolTaken body = now;
  FieldIs is;
  std::optional<Entered> told;
  if (into == "length") {
    if (!now.length.typed.empty()) told = now.length;
    body.length = Entered{};
    is.label = tell(screen, Code{"bench.torque.own_length"});
  } else if (into == "extension") {
    told = std::exchange(body.extension, Entered{});
    is.label = tell(screen, Code{"bench.torque.own_extension"});
  } else {
    told = std::exchange(body.ratio, Entered{});
    is.label = tell(screen, Code{"bench.torque.own_ratio"});
    is.kind = "number";
  }
  is.title = is.label;
  is.body = body;
  is.into = into;
  is.hint = tell(screen, Code{"bench.torque.to_the_grip"});
  if (told) is.before_label = tell(screen, Code{"bench.torque.reckoned"}), is.before_typed = told->typed;
  Json json = field(subject, screen, is);
  json["key"] = field_key(body) + "#" + std::string{into};
  json["said"] = Json::array();  // The three fields are one question: what stands is said once, beside it.
  if (into != "length") json.erase("undo");
  return json;
}

}  // namespace

Entered length_typed(const std::string& text) {
  Result<Entered> read = parse_quantity(text, Kind::length, "length");
  CORE_CHECK(read.has_value());
  return *std::move(read);
}

std::vector<Way> ways_of(const Subject& subject, const Nut& nut, UnitSystem units) {
  std::vector<Tool> tools = common_tools(units);
  if (auto own = own_tool(subject, nut)) tools.push_back(*std::move(own));
  std::vector<Way> out;
  for (const Tool& tool : tools) {
    Results<Working> working = worked_out(subject, nut, tool);
    if (!working) continue;  // A common one that does not go with this nut; why the own one does not is said beside.
    Way way{tool, std::make_shared<const Working>(*std::move(working)), false};
    way.too_much = way.working->si("pull") > subject.job.shaft.spec().policies.one_person_pull.si();
    out.push_back(std::move(way));
  }
  return out;
}

std::size_t chosen_of(const std::vector<Way>& ways, const Spot& spot) {
  if (spot.step && *spot.step >= 1 && static_cast<std::size_t>(*spot.step) <= ways.size())
    return static_cast<std::size_t>(*spot.step) - 1;
  const auto own = std::ranges::find_if(ways, [](const Way& way) { return way.tool.own; });
  return own == ways.end() ? advised_of(ways) : static_cast<std::size_t>(own - ways.begin());
}

std::string way_name(const Screen& screen, const Way& way) {
  const bool multiplied = way.tool.multiplier > 1;
  const Args args{{"wrench", way.tool.wrench},
                  {"extension", way.tool.extension},
                  {"ratio", multiplied ? figure_only(any_ratio(way.tool.multiplier), screen.voice) : std::string{}}};
  return tell(screen, way.tool.own ? Code{"bench.torque.own_way"} : Code{"bench.torque.way"}, args);
}

Crack crack_of(const Subject& subject, const Screen& screen, const Nut& nut) {
  const std::vector<Way> ways = ways_of(subject, nut, screen.voice.units);
  if (ways.empty()) return {nullptr, {}};
  const Way &bar = ways.front(), &spared = ways[advised_of(ways)];
  const AnyQuantity pull = output_of(*bar.working, "pull");
  Args args{{"torque", any(nut.torque)}, {"bar", bar.tool.wrench}, {"pull", study::figure_text(pull, screen.voice)}};
  if (bar.too_much) args.emplace_back("too_much", 1);
  if (bar.too_much && spared.tool.multiplier > 1)
    args.insert(args.end(), {{"ratio", figure_only(any_ratio(spared.tool.multiplier), screen.voice)},
                             {"spared", study::figure_text(output_of(*spared.working, "pull"), screen.voice)}});
  std::string says = tell(screen, Code{"view.teardown.crack"}, args);
  return {drawing_block(drawn(subject, screen, ways).ways.front(), says), says};
}

Json ways_table(const Subject& subject, const Screen& screen, const std::vector<Way>& ways, std::size_t chosen) {
  const drawing::TorqueWays pictures = drawn(subject, screen, ways);
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const Way& way = ways[i];
    const AnyQuantity pull = output_of(*way.working, "pull");
    TableRow row;
    row.cells = {
        {.text = way_name(screen, way), .bar = pictures.ways[i]},
        {.text = shown(output_of(*way.working, "setting"), screen.voice),
         .tone = "strong",
         .detail = shown_other(output_of(*way.working, "setting"), screen.voice)},
        {.text = tell(screen, way.too_much ? Code{"bench.torque.too_much"} : Code{"bench.torque.one_person"}),
         .tone = way.too_much ? "out" : "in",
         .detail = tell(screen, Code{"bench.torque.pull"},
                        {{"pull", study::figure_text(pull, screen.voice)}, {"other", pull_other(pull, screen)}})}};
    row.chosen = i == chosen;
    row.advised = i == advised_of(ways);
    row.action = action(tell(screen, Code{"bench.torque.this_way"}), do_go({.step = static_cast<int>(i) + 1}),
                        {.tone = i == advised_of(ways) ? "next" : "plain",
                         .says = tell(screen, Code{"bench.torque.take"}, {{"way", way_name(screen, way)}})});
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"bench.torque.ways"})},
                      {tell(screen, Code{"bench.torque.reads"})},
                      {tell(screen, Code{"bench.torque.holds"})}},
                     rows);
}

std::vector<Json> own_tool_fields(const Subject& subject, const Screen& screen, const Nut& nut, const Way& way) {
  job::ToolTaken now;
  now.nut = nut.end;
  if (const job::ToolTaken* told = told_tool(subject, nut)) now = *told;
  std::vector<Json> fields{tool_field(subject, screen, now, "length")};
  // An extension or a ratio alone goes with the length of the way that is chosen.
  if (now.length.typed.empty()) now.length = length_typed(way.tool.wrench);
  if (now.length.typed.empty()) now.length.typed = way.tool.wrench;
  fields.push_back(tool_field(subject, screen, now, "extension"));
  fields.push_back(tool_field(subject, screen, now, "ratio"));
  return fields;
}

std::string own_tool_refused(const Subject& subject, const Screen& screen, const Nut& nut) {
  const std::optional<Tool> own = own_tool(subject, nut);
  if (!own) return {};
  const Results<Working> working = worked_out(subject, nut, *own);
  if (working || working.error().empty()) return {};
  return tell(screen, Code{"bench.torque.own_refused"},
              {{"allowed", say(working.error().front(), screen.voice).allowed}});
}

}  // namespace flatwise::view
