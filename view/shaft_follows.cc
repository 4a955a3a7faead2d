#include "view/shaft_follows.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/timing/map.h"
#include "core/units/parse.h"
#include "definition/fields.h"
#include "drawing/end_view.h"
#include "study/outcome.h"
#include "study/study.h"
#include "view/blocks.h"
#include "view/picture_json.h"

namespace flatwise::view {
namespace {

constexpr double kEndViewSize = 56;

std::string say_code(Code code, const Args& args, const Voice& voice) { return say(code.id(), args, voice); }

/// Facts one by one, each with its caption in words.
class Facts {
 public:
  explicit Facts(const Voice& voice) : voice_{voice} {}
  void add(Code caption, std::string value, std::string other = {}, WorkingPtr working = nullptr) {
    list_.push_back(
        fact({say_code(caption, {}, voice_), std::move(value), {}, std::move(other), std::move(working)}, voice_));
  }
  /// A figure as a study shows it: three digits that count.
  void add(Code caption, AnyQuantity value, WorkingPtr working, std::string other = {}) {
    add(caption, study::figure_text(value, voice_), std::move(other), std::move(working));
  }
  [[nodiscard]] Json take() { return std::move(list_); }
  [[nodiscard]] const Voice& voice() const { return voice_; }

 private:
  const Voice& voice_;
  Json list_ = Json::array();
};

/// What is left of the rotors' couples, between which two the tines come nearest, and what turns at the hangers.
void add_arrangement(const Shaft& shaft, Facts& to) {
  const Result<study::Arranged> stands = study::arranged(study::Way{.typed = {}, .shaft = shaft}, {});
  if (!stands) return;  // A shaft that stands still, or weights nobody gave: nothing turns that could be told.
  const dynamics::Planes planes = dynamics::planes_of(shaft);
  if (stands->quiet())
    to.add(Code{"study.row.couple"}, say_code(Code{"study.none"}, {}, to.voice()), {}, stands->couple);
  else
    to.add(Code{"study.row.couple"}, any(stands->left.couple.size), stands->couple,
           say_code(Code{"study.row.couple.detail"}, {}, to.voice()));
  if (stands->gap != nullptr)
    to.add(Code{"study.row.gap"}, any(metres(stands->gap->si("gap"))), stands->gap,
           say_code(Code{"view.shaft.gap_between"}, {{"rotor", stands->gap_after}, {"next", stands->gap_after + 1}},
                    to.voice()));
  to.add(planes.hangers ? Code{"view.shaft.hanger_load"} : Code{"view.shaft.end_load"}, any(stands->left.larger),
         nullptr, say_code(Code{"view.shaft.rigid"}, {}, to.voice()));
}

/// The field of the definition that an origin's path names: "rotor.bearing.misalignment" is 'misalignment' of a bearing,
/// "nut.a.order" and "material.steel.density" stand in tables of a name of their own.
const definition::Field* field_of(std::string_view path) {
  std::vector<std::string_view> parts;
  for (std::size_t from = 0; from <= path.size();) {
    const std::size_t to = std::min(path.find('.', from), path.size());
    std::string_view part = path.substr(from, to - from);
    parts.push_back(part.substr(0, part.find('[')));
    from = to + 1;
  }
  for (std::size_t back = 2; back <= std::min<std::size_t>(parts.size(), 3); ++back)
    if (const auto* field =
            definition::find_field(definition::Document::shaft, parts[parts.size() - back], parts.back()))
      return field;
  return nullptr;
}

std::string assumed_value(const definition::Field& field, const Voice& voice) {
  const Result<Entered> value = parse_quantity(field.assumed, field.kind, field.key());
  return value ? shown(value->value, voice) : std::string{field.assumed};
}

}  // namespace

Length stack_length(const Shaft& shaft) {
  Length total;
  for (const Station& station : shaft.stations())
    if (station.kind != StationKind::nut) total = total + station.length.nominal;
  return total;
}

std::vector<drawing::RotorMarks> marks_by_pattern(const Shaft& shaft) {
  std::vector<drawing::RotorMarks> marks;
  const Result<timing::Map> map = timing::map(shaft);
  if (!map) return marks;
  for (const timing::RotorMarks& rotor : map->rotors)
    marks.push_back({azimuth_of_flat(rotor.flat_a, shaft.flats()), azimuth_of_flat(rotor.flat_b, shaft.flats())});
  return marks;
}

Json shaft_facts(const Shaft& shaft, const Voice& voice) {
  const ShaftSpec& spec = shaft.spec();
  Facts facts{voice};
  facts.add(Code{"view.shaft.name"}, spec.name);
  facts.add(Code{"view.shaft.profile"},
            say_code(Code{"view.shaft.profile_is"},
                     {{"flats", shaft.flats()}, {"across", any(spec.profile.across_flats)}}, voice),
            shown_other(any(spec.profile.across_flats), voice));
  facts.add(Code{"view.shaft.rotors"}, std::to_string(shaft.rotor_count()));
  facts.add(Code{"view.shaft.lean"}, shown(any(spec.rotors.front().lean), voice));
  facts.add(Code{"view.shaft.stack"}, shown(any(stack_length(shaft)), voice),
            shown_other(any(stack_length(shaft)), voice));
  facts.add(Code{"view.shaft.speed"}, shown(any(spec.speed), voice));
  for (const Nut& nut : spec.nuts)
    facts.add(nut.end == End::a ? Code{"view.shaft.nut_a"} : Code{"view.shaft.nut_b"}, shown(any(nut.torque), voice),
              shown_other(any(nut.torque), voice));
  add_arrangement(shaft, facts);
  return facts.take();
}

Json shaft_end_view(const Shaft& shaft, const Voice& voice) {
  drawing::PairMarks marks;
  if (const Result<timing::Map> map = timing::map(shaft); map && !map->rotors.empty())
    marks = {.flat_a = map->rotors.front().flat_a, .flat_b = map->rotors.front().flat_b};
  Args args{{"rotor", 1}, {"end", Word{"end.a"}}};
  if (marks.flat_a) args.emplace_back("a", *marks.flat_a);
  if (marks.flat_b) args.emplace_back("b", *marks.flat_b);
  return {{"list", picture_json(drawing::end_view(drawing::pair_of(shaft, 1), marks,
                                                  {.seen_from = End::a, .size = kEndViewSize, .number_size = 4.4}))},
          {"says", say_code(Code{"bench.timing.view"}, args, voice)},
          {"title", say_code(Code{"view.shaft.end_view"}, {}, voice)}};
}

Json shaft_assumed(const Shaft& shaft, const Voice& voice) {
  Json list = Json::array();
  std::vector<const definition::Field*> told;  // Both nuts, every rotor: one line.
  for (const auto& [path, origin] : shaft.spec().origins) {
    if (origin.kind != OriginKind::assumed) continue;
    const definition::Field* field = field_of(path);
    if (field == nullptr || std::ranges::find(told, field) != told.end()) continue;
    told.push_back(field);
    Json row{{"caption", say_code(field->meaning, {}, voice)}};
    // What follows from something else has no value of its own: there the reason says it.
    row["value"] = field->assumed.empty() ? origin.where : assumed_value(*field, voice);
    row["why"] = origin.where;
    list.push_back(std::move(row));
  }
  return list;
}

}  // namespace flatwise::view
