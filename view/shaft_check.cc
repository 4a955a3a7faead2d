#include "view/shaft_check.h"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/working/place_of.h"
#include "definition/fields.h"
#include "definition/read.h"
#include "drawing/shaft_strip.h"
#include "view/blocks.h"
#include "view/picture_json.h"
#include "view/rails.h"
#include "view/shaft_follows.h"

namespace flatwise::view {
namespace {

std::string say_code(Code code, const Args& args, const Voice& voice) { return say(code.id(), args, voice); }

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

/// The line without what stands behind a '#' outside quotes.
std::string_view without_comment(std::string_view line) {
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] == '"') quoted = !quoted;
    if (line[i] == '#' && !quoted) return trimmed(line.substr(0, i));
  }
  return trimmed(line);
}

/// One of the five lines to change, where it stands and what it says.
struct Marked {
  int line = 0, number = 0;
  std::string says;
  std::string key, value;  ///< As they stand there: "lean" and "5°".
};

/// What is written behind a key: to the end of its line, or of its place in a line of the stack.
std::string value_of(std::string_view line, std::string_view key) {
  const std::size_t at = line.find('=', line.find(key) + key.size());
  if (at == std::string_view::npos) return {};
  std::string_view value = trimmed(line.substr(at + 1));
  if (value.starts_with('"')) return std::string{value.substr(1, value.find('"', 1) - 1)};
  return std::string{trimmed(value.substr(0, value.find_first_of(",}")))};
}

// A key at the beginning of its line in its own table; 'repeat' stands inside a line of the stack.
bool stands_on(const definition::Field& field, std::string_view table, std::string_view line) {
  const std::string_view in = field.in() == "station" ? std::string_view{"stack"} : field.in();
  if (table != in) return false;
  if (in == "stack") return line.find(field.key()) != std::string_view::npos;
  if (!line.starts_with(field.key())) return false;
  return trimmed(line.substr(field.key().size())).starts_with("=");
}

std::vector<Marked> marked_lines(std::string_view toml) {
  std::vector<Marked> found;
  std::string_view table;
  for (int number = 1; !toml.empty(); ++number) {
    const std::size_t end = toml.find('\n');
    const std::string_view line = without_comment(toml.substr(0, end));
    toml.remove_prefix(end == std::string_view::npos ? toml.size() : end + 1);
    if (line.size() > 2 && line.front() == '[' && line.back() == ']') table = line.substr(1, line.size() - 2);
    for (const definition::Field& field : definition::fields(definition::Document::shaft)) {
      if (field.change == 0 || !stands_on(field, table, line)) continue;
      const bool known = std::ranges::any_of(found, [&](const Marked& m) { return m.number == field.change; });
      if (!known)
        found.push_back(
            {number, field.change, std::string{line}, std::string{field.key()}, value_of(line, field.key())});
    }
  }
  return found;
}

Json lines_json(std::string_view toml, std::string_view copied, const std::vector<Problem>& problems) {
  const std::vector<Marked> before = copied.empty() ? std::vector<Marked>{} : marked_lines(copied);
  Json lines = Json::array();
  for (const Marked& line : marked_lines(toml)) {
    const bool wrong = std::ranges::any_of(
        problems, [&](const Problem& problem) { return problem.place && problem.place->line == line.line; });
    const bool same =
        std::ranges::any_of(before, [&](const Marked& b) { return b.number == line.number && b.says == line.says; });
    const std::string_view state = wrong ? "wrong" : same ? "as_copied" : "done";
    lines.push_back(
        {{"line", line.line}, {"number", line.number}, {"state", state}, {"key", line.key}, {"value", line.value}});
  }
  return lines;
}

/// The text with one line's `given` at its place written another way; empty where it does not stand there.
struct Mended {
  std::string line, toml;
};
Mended mended(std::string_view toml, const Place& at, const std::string& given, const std::string& way) {
  std::size_t begin = 0;
  for (int line = 1; line < at.line; ++line) {
    begin = toml.find('\n', begin);
    if (begin == std::string_view::npos) return {};
    ++begin;
  }
  const std::string_view line = toml.substr(begin, toml.find('\n', begin) - begin);
  const std::size_t there = given.empty() ? std::string_view::npos : line.find(given, line.find('=') + 1);
  if (there == std::string_view::npos || line.find(given, there + 1) != std::string_view::npos) return {};
  Mended out;
  out.line = std::string{line.substr(0, there)} + way + std::string{line.substr(there + given.size())};
  out.toml = std::string{toml.substr(0, begin)} + out.line + std::string{toml.substr(begin + line.size())};
  return out;
}

/// What would follow from a mend: how long the stack is, or why that is refused too.
std::string follows_from(const std::string& toml, const Place& at, const Voice& voice) {
  const Results<Shaft> shaft = definition::read_shaft(toml, {});
  if (shaft) return say_code(Code{"view.shaft.mend_stack"}, {{"length", any(stack_length(*shaft))}}, voice);
  const auto here = std::ranges::find_if(
      shaft.error(), [&](const Problem& problem) { return problem.place && problem.place->line == at.line; });
  if (here == shaft.error().end()) return say_code(Code{"view.shaft.mend_more"}, {}, voice);
  return say_code(Code{"view.shaft.mend_refused"}, {{"allowed", say(*here, voice).allowed}}, voice);
}

/// Where a problem names ways to write it, each as a whole line, with what would follow: nobody guesses which is meant.
Json mends_json(std::string_view toml, const std::vector<Problem>& problems, const Voice& voice) {
  Json mends = Json::array();
  for (const Problem& problem : problems) {
    if (!problem.place) continue;
    for (const Arg& arg : problem.args) {
      const auto* ways = std::get_if<std::vector<std::string>>(&arg.value);
      if (arg.name != "ways" || ways == nullptr) continue;
      for (const std::string& way : *ways) {
        const Mended out = mended(toml, *problem.place, problem.given, way);
        if (out.line.empty()) continue;
        Json mend{{"line", problem.place->line}, {"label", way}, {"text", out.line}};
        mend["says"] = follows_from(out.toml, *problem.place, voice);
        mends.push_back(std::move(mend));
      }
    }
  }
  return mends;
}

Json strip_json(const Shaft& shaft, const Voice& voice) {
  const drawing::StripDrawing strip = drawing::shaft_strip(shaft, {}, marks_by_pattern(shaft), strip_options(false));
  Json cells = Json::array();
  for (std::size_t i = 0; i < shaft.stations().size(); ++i) {
    const Station& station = shaft.stations()[i];
    const std::string length = shown(any(station.length.nominal), voice);
    Json json{{"index", i},
              {"kind", name_of(station.kind)},
              {"name", station.label},
              {"word", bare_length(station.length.nominal, voice)},
              {"flag", "none"},
              {"body", "on"},
              {"renew", false},
              {"chosen", false}};
    json["rail"] = rail_of(station.kind);
    json["from"] = strip.stations[i].from;
    json["to"] = strip.stations[i].to;
    json["said"] = station_name(shaft, static_cast<int>(i), voice) + ", " + length;
    cells.push_back(std::move(json));
  }
  const std::string says =
      say_code(Code{"view.strip_says"}, {{"shaft", shaft.spec().name}, {"rotors", shaft.rotor_count()}}, voice);
  return {{"list", picture_json(strip.list)}, {"low", false}, {"stations", std::move(cells)}, {"says", says}};
}

/// Whether a part takes something from the field of an origin: "rotor.lean" is of every rotor, "rotors[2].lean" of one.
bool takes(const Shaft& shaft, std::size_t station, std::string_view field) {
  const Station& part = shaft.stations()[station];
  if (field.starts_with("stations[" + std::to_string(station) + "].")) return true;
  if (part.kind == StationKind::nut) {
    const bool end_a = shaft.spec().nuts[static_cast<std::size_t>(part.nut)].end == End::a;
    return field.starts_with("nut.") && !field.starts_with(end_a ? "nut.b." : "nut.a.");
  }
  const int rotor = rotor_at(shaft, static_cast<int>(station));
  return rotor > 0 && (field.starts_with("rotor.") || field.starts_with("rotors[" + std::to_string(rotor - 1) + "]."));
}

/// Which parts hang on which line of the text.
Json hangs_json(const Shaft& shaft) {
  std::map<int, std::set<std::size_t>> by_line;
  for (const auto& [field, origin] : shaft.spec().origins)
    if (const std::optional<Place> place = place_of(origin))
      for (std::size_t i = 0; i < shaft.stations().size(); ++i)
        if (takes(shaft, i, field)) by_line[place->line].insert(i);
  Json hangs = Json::array();
  for (const auto& [line, stations] : by_line) hangs.push_back({{"line", line}, {"stations", stations}});
  return hangs;
}

}  // namespace

Json shaft_check(std::string_view toml, std::string_view copied, const Voice& voice) {
  const Results<Shaft> shaft = definition::read_shaft(toml, {});
  const std::vector<Problem> problems = shaft ? std::vector<Problem>{} : shaft.error();
  Json list = Json::array();
  for (const Problem& problem : problems) list.push_back(wire::to_json(problem, voice));
  Json json{{"problems", std::move(list)}};
  json["facts"] = shaft ? shaft_facts(*shaft, voice) : Json::array();
  json["lines"] = lines_json(toml, copied, problems);
  if (Json mends = mends_json(toml, problems, voice); !mends.empty()) json["mends"] = std::move(mends);
  if (!shaft) return json;
  json["strip"] = strip_json(*shaft, voice);
  json["hangs"] = hangs_json(*shaft);
  json["end_view"] = shaft_end_view(*shaft, voice);
  json["assumed"] = shaft_assumed(*shaft, voice);
  json["name"] = shaft->spec().name;
  return json;
}

}  // namespace flatwise::view
