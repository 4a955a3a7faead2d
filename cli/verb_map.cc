#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "core/timing/map.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

wire::Json map_json(const Shaft& shaft, const timing::Map& map, const Voice& voice) {
  wire::Json json{{"shaft", shaft.spec().name}, {"flats", shaft.flats()}, {"first_flat", map.reference.first_flat}};
  json["turn_free"] = map.turn_free;
  json["hand_free"] = map.hand_free;
  json["rule"] = wire::Json::array();
  for (const Message& m : map.rule) json["rule"].push_back(say(m, voice));
  json["rotors"] = wire::Json::array();
  for (const timing::RotorMarks& r : map.rotors)
    json["rotors"].push_back({{"rotor", r.rotor},
                              {"flat_a", r.flat_a},
                              {"flat_b", r.flat_b},
                              {"place_a_from_b", r.place_a_from_b},
                              {"place_b_from_b", r.place_b_from_b}});
  return json;
}

std::string map_text(const Context& context, const Shaft& shaft, const timing::Map& map, bool from_b) {
  std::string out = toned(printable(shaft.spec().name), Tone::strong, context.colour) + "\n";
  if (shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  for (const Message& m : map.rule) out += wrap(say(m, context.voice), context.width) + "\n";
  Table table{
      .head = {word("cli.head.rotor", context.voice), word("half.a", context.voice), word("half.b", context.voice)},
      .rows = {},
      .right = "rrr"};
  if (from_b) {
    table.head.push_back(word("cli.head.a_from_b", context.voice));
    table.head.push_back(word("cli.head.b_from_b", context.voice));
    table.right = "rrrrr";
  }
  for (const timing::RotorMarks& r : map.rotors) {
    table.rows.push_back({std::to_string(r.rotor), std::to_string(r.flat_a), std::to_string(r.flat_b)});
    if (!from_b) continue;
    table.rows.back().push_back(std::to_string(r.place_a_from_b));
    table.rows.back().push_back(std::to_string(r.place_b_from_b));
  }
  out += "\n" + lay_out(table) + "\n" + wrap(word("cli.map_note", context.voice), context.width) + "\n";
  if (map.turn_free) out += wrap(word("cli.map_turn_free", context.voice), context.width) + "\n";
  return out;
}

}  // namespace

Status map_marks(const Context& context, const MapOptions& options) {
  const Results<Shaft> shaft = load_shaft(context, options.shaft_file);
  if (!shaft) return refuse(context, shaft.error());
  std::optional<timing::Reference> reference;
  if (options.first_flat || options.mirrored)
    reference = timing::Reference{options.first_flat.value_or(1), !options.mirrored};
  const Result<timing::Map> map = timing::map(*shaft, reference);
  if (!map) return refuse(context, map.error());
  *context.out << (context.json ? wire::dump(map_json(*shaft, *map, context.voice))
                                : map_text(context, *shaft, *map, options.from_b));
  return Status::in_order;
}

}  // namespace flatwise::cli
