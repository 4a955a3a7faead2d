// read_study: the ways of one shaft, as typed and with their places.
#include "definition/read.h"
#include "definition/tree.h"

namespace flatwise::definition {
namespace {

study::Typed typed_at(const Section& s, std::string_view key) { return {s.file().typed(*s.node(key)), s.place(key)}; }

/// The three forms of a pattern as a way has them in one line.
std::optional<study::Typed> pattern_of(const Section& way) {
  if (!way.has("pattern")) return std::nullopt;
  if (!way.node("pattern")->is_table()) return typed_at(way, "pattern");
  const Section s = way.table("pattern");
  if (s.has("step") == s.has("flats")) {
    way.problem(Code{"definition.pattern_form"}, "pattern", {});
    return std::nullopt;
  }
  if (s.has("step")) return study::Typed{"step " + std::to_string(s.whole("step")), s.place("step")};
  study::Typed flats{"", s.place("flats")};
  if (!s.node("flats")->is_array()) return std::nullopt;
  for (const toml::node& flat : *s.node("flats")->as_array())
    flats.text += (flats.text.empty() ? "" : " ") + std::to_string(flat.value<std::int64_t>().value_or(0));
  return flats;
}

study::TypedWay way_of(const Section& s) {
  study::TypedWay way{.name = {s.text("name"), s.place("name")}};
  way.pattern = pattern_of(s);
  for (const std::string_view key : study::way_fields())
    if (key != "pattern" && s.has(key)) *study::field_of(way, key) = typed_at(s, key);
  return way;
}

}  // namespace

Results<StudyFile> read_study(std::string_view toml, std::string_view name) {
  File file{Document::study, toml, name};
  if (!file.parse()) return tl::unexpected(file.take_problems());
  const Section all{file, "study_file", &file.root(), {}};
  const Section study = all.table("study");
  StudyFile out{
      .order = {.name = study.text("name")}, .shaft = study.text("shaft"), .shaft_place = study.place("shaft")};
  if (study.has("ground")) out.order.ground = typed_at(study, "ground");
  if (study.has("error_share")) out.order.error_share = typed_at(study, "error_share");
  if (study.has("error_azimuth")) out.order.error_azimuth = typed_at(study, "error_azimuth");
  for (const Section& way : all.tables("way")) out.order.ways.push_back(way_of(way));
  if (!file.sound()) return tl::unexpected(file.take_problems());
  return out;
}

}  // namespace flatwise::definition
