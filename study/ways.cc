#include "study/ways.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

#include "core/fits/iso286.h"
#include "core/timing/map.h"
#include "core/units/format.h"
#include "core/units/guards.h"
#include "core/units/parse.h"

namespace flatwise::study {
namespace {

constexpr std::array<std::string_view, 5> kFields{"pattern", "speed", "lean", "clearance", "fit"};
constexpr double kMostSpeed = 6000 * std::numbers::pi / 30, kMostLean = std::numbers::pi / 6;
/// Under it a rotor stands upright: no wobble, no work.
constexpr double kLeastLean = std::numbers::pi / 1800;
constexpr double kTightest = -50e-6, kLoosest = 1e-3;  // m, of a clearance as it runs.
constexpr double kMostInterference = 1e-3;

template <class W>
auto* member(W& way, std::string_view name) {
  decltype(&way.pattern) const members[] = {&way.pattern, &way.speed, &way.lean, &way.clearance, &way.fit};
  const auto at = std::ranges::find(kFields, name);
  return at == kFields.end() ? nullptr : members[at - kFields.begin()];
}

/// The changes of one way, as they are read one after the other.
struct Change {
  const Shaft& base;
  ShaftSpec spec;
  std::string path;  ///< "ways[1]"
  std::optional<Length> clearance{}, interference{};
  std::vector<Message> changes{};
  std::vector<Problem> problems{};

  void refuse(Problem problem, std::string_view field, const Typed& typed) {
    problem.field = path + "." + std::string{field};
    problem.given = typed.text;
    problem.place = typed.place;
    problems.push_back(std::move(problem));
  }
  void refuse(Code code, std::string_view field, const Typed& typed, Args args = {}) {
    refuse(Problem{code, {}, {}, std::move(args), std::nullopt}, field, typed);
  }
  std::optional<double> quantity(const std::optional<Typed>& typed, Kind kind, std::string_view field) {
    if (!typed) return std::nullopt;
    const Result<Entered> read = parse_quantity(typed->text, kind, field);
    if (read) return read->value.si;
    refuse(read.error(), field, *typed);
    return std::nullopt;
  }
  bool in_range(AnyQuantity value, double least, double greatest, std::string_view field, const Typed& typed) {
    auto wrong = outside(field, value, least, greatest);
    if (wrong) refuse(*std::move(wrong), field, typed);
    return !wrong;
  }
};

std::string lower(std::string_view text) {
  std::string out{text};
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

/// Whole numbers with blanks, commas or the like between them; none where anything else stands there.
std::optional<std::vector<int>> numbers_in(std::string_view text) {
  std::vector<int> numbers;
  std::string plain{text};
  for (std::size_t at = plain.find("·"); at != std::string::npos; at = plain.find("·")) plain.replace(at, 2, " ");
  std::ranges::replace_if(plain, [](char c) { return c == ',' || c == '[' || c == ']'; }, ' ');
  const char *at = plain.data(), *end = plain.data() + plain.size();
  while (true) {
    while (at != end && *at == ' ') ++at;
    if (at == end) break;
    int number = 0;
    const auto read = std::from_chars(at, end, number);
    if (read.ec != std::errc{} || (read.ptr != end && *read.ptr != ' ')) return std::nullopt;
    numbers.push_back(number);
    at = read.ptr;
  }
  if (numbers.empty()) return std::nullopt;
  return numbers;
}

bool same_pattern(const Pattern& a, const Pattern& b, const Shaft& shaft) {
  for (int rotor = 2; rotor <= shaft.rotor_count(); ++rotor)
    if (timing::pattern_offset(a, shaft.flats(), rotor) != timing::pattern_offset(b, shaft.flats(), rotor))
      return false;
  return true;
}

void read_pattern(Change& to, const Typed& typed) {
  const std::string text = lower(typed.text);
  Pattern pattern{
      .rule = Pattern::Rule::facing, .step_flats = 0, .flats = {}, .first_flat = to.spec.pattern.first_flat};
  if (text.starts_with("step")) {
    const auto step = numbers_in(std::string_view{text}.substr(4));
    if (!step || step->size() != 1) return to.refuse(Code{"study.pattern"}, "pattern", typed);
    pattern.rule = Pattern::Rule::step;
    pattern.step_flats = step->front();
  } else if (text != "facing") {
    auto flats = numbers_in(text);
    if (!flats) return to.refuse(Code{"study.pattern"}, "pattern", typed);
    pattern.rule = Pattern::Rule::listed;
    pattern.flats = *std::move(flats);
    if (pattern.first_flat) pattern.first_flat = pattern.flats.front();
  }
  to.spec.pattern = pattern;
}

void note_pattern(Change& to) {
  if (same_pattern(to.spec.pattern, to.base.spec().pattern, to.base)) return;
  const Pattern& p = to.spec.pattern;
  switch (p.rule) {
    case Pattern::Rule::facing:
      return to.changes.push_back({Code{"study.change_facing"}, {}});
    case Pattern::Rule::step:
      return to.changes.push_back({Code{"study.change_step"}, {{"flats", p.step_flats}}});
    case Pattern::Rule::listed:
      return to.changes.push_back({Code{"study.change_flats"}, {{"flats", pattern_text(p)}}});
  }
}

void read_speed(Change& to, const Typed& typed) {
  const auto si = to.quantity(typed, Kind::angular_speed, "speed");
  if (!si || !to.in_range({*si, Kind::angular_speed}, 1e-3, kMostSpeed, "speed", typed)) return;
  const double own = to.base.spec().speed.radians_per_second();
  if (std::abs(*si - own) <= 1e-12 * own) return;  // The same, said in another unit.
  to.spec.speed = radians_per_second(*si);
  to.changes.push_back({Code{"study.change_speed"}, {{"speed", any(to.spec.speed)}}});
}

void read_lean(Change& to, const Typed& typed) {
  const auto si = to.quantity(typed, Kind::angle, "lean");
  if (!si) return;
  if (*si >= 0 && *si < kLeastLean)
    return to.refuse(
        Code{"study.upright"}, "lean", typed,
        {{"least", AnyQuantity{kLeastLean, Kind::angle}}, {"greatest", AnyQuantity{kMostLean, Kind::angle}}});
  if (!to.in_range({*si, Kind::angle}, kLeastLean, kMostLean, "lean", typed)) return;
  bool other = false;
  for (Rotor& rotor : to.spec.rotors) {
    other = other || rotor.lean != radians(*si);
    rotor.lean = radians(*si);
  }
  if (other) to.changes.push_back({Code{"study.change_lean"}, {{"lean", AnyQuantity{*si, Kind::angle}}}});
}

void read_clearance(Change& to, const Typed& typed) {
  const std::string text = lower(typed.text);
  const auto group = std::ranges::find_if(kClearanceGroups, [&](std::string_view g) { return lower(g) == text; });
  if (group != kClearanceGroups.end()) {
    bool other = false;
    for (Rotor& rotor : to.spec.rotors) {
      const auto wanted = static_cast<ClearanceGroup>(group - kClearanceGroups.begin());
      other = other || rotor.bearing.clearance != wanted;
      rotor.bearing.clearance = wanted;
    }
    if (other) to.changes.push_back({Code{"study.change_group"}, {{"group", std::string{*group}}}});
    return;
  }
  const Result<Entered> read = parse_quantity(typed.text, Kind::length, "clearance");
  if (!read) return to.refuse(Code{"study.clearance"}, "clearance", typed);
  if (!to.in_range(read->value, kTightest, kLoosest, "clearance", typed)) return;
  to.clearance = Length::from_si(read->value.si);
  to.changes.push_back({Code{"study.change_clearance"}, {{"clearance", read->value}}});
}

void read_fit(Change& to, const Typed& typed) {
  if (const Result<Entered> read = parse_quantity(typed.text, Kind::length, "fit")) {
    if (!to.in_range(read->value, -kMostInterference, kMostInterference, "fit", typed)) return;
    to.interference = Length::from_si(read->value.si);
    return to.changes.push_back({Code{"study.change_interference"}, {{"interference", read->value}}});
  }
  if (!fits::parse_fit_class(typed.text)) return to.refuse(Code{"study.fit"}, "fit", typed);
  bool other = false;
  for (Rotor& rotor : to.spec.rotors) {
    const Result<Limits> limits = fits::limits_of_fit(rotor.bearing.outside, typed.text);
    if (!limits) return to.refuse(limits.error(), "fit", typed);
    other = other || rotor.hub.bore.least != limits->least || rotor.hub.bore.greatest != limits->greatest;
    rotor.hub.bore = *limits;
    rotor.hub.fit_code = typed.text;
  }
  if (other) to.changes.push_back({Code{"study.change_fit"}, {{"fit", typed.text}}});
}

void read_name(Change& to, const Typed& name) {
  const std::size_t letters = static_cast<std::size_t>(
      std::ranges::count_if(name.text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
  const bool blank = name.text.find_first_not_of(' ') == std::string::npos;
  const bool control = std::ranges::any_of(name.text, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
  if (blank || control || letters > kLongestName)
    to.refuse(Code{"study.name"}, "name", name, {{"greatest", static_cast<std::int64_t>(kLongestName)}});
}

/// The problem of a whole shaft with one of its changes, brought back to the field that made it.
std::string_view field_behind(std::string_view path) {
  if (path.starts_with("shaft.pattern") || path == "shaft.first_flat") return "pattern";
  if (path.starts_with("shaft.speed")) return "speed";
  if (path.find("lean") != std::string_view::npos || path == "shaft.flats") return "lean";
  return "fit";
}

void read_changes(Change& to, const TypedWay& typed) {
  if (typed.pattern) read_pattern(to, *typed.pattern);
  if (typed.speed) read_speed(to, *typed.speed);
  if (typed.lean) read_lean(to, *typed.lean);
  if (typed.clearance) read_clearance(to, *typed.clearance);
  if (typed.fit) read_fit(to, *typed.fit);
}

Results<Way> read_way(const Shaft& base, const TypedWay& typed, std::size_t index) {
  Change to{.base = base, .spec = base.spec(), .path = "ways[" + std::to_string(index) + "]"};
  read_name(to, typed.name);
  const bool any_field =
      std::ranges::any_of(kFields, [&](std::string_view field) { return field_of(typed, field)->has_value(); });
  if (!any_field) to.refuse(Code{"study.nothing_changed"}, "name", typed.name, {{"name", typed.name.text}});
  read_changes(to, typed);
  if (!to.problems.empty()) return tl::unexpected(std::move(to.problems));
  Results<Shaft> shaft = Shaft::make(to.spec);
  if (!shaft) {
    for (Problem& problem : shaft.error()) {
      const std::string_view field = field_behind(problem.field);
      const auto* behind = field_of(typed, field);
      to.refuse(std::move(problem), field, behind->value_or(typed.name));
    }
    return tl::unexpected(std::move(to.problems));
  }
  note_pattern(to);
  return Way{typed, *std::move(shaft), to.clearance, to.interference, std::move(to.changes)};
}

bool same(const Way& a, const Way& b) {
  if (a.clearance != b.clearance || a.interference != b.interference) return false;
  if (a.shaft.spec().speed != b.shaft.spec().speed) return false;
  if (!same_pattern(a.shaft.spec().pattern, b.shaft.spec().pattern, a.shaft)) return false;
  return std::ranges::equal(a.shaft.spec().rotors, b.shaft.spec().rotors, [](const Rotor& p, const Rotor& q) {
    return p.lean == q.lean && p.bearing.clearance == q.bearing.clearance && p.hub.bore.least == q.hub.bore.least &&
           p.hub.bore.greatest == q.hub.bore.greatest;
  });
}

void refuse_twins(const std::vector<Way>& ways, std::vector<Problem>& problems) {
  for (std::size_t i = 1; i < ways.size(); ++i)
    for (std::size_t k = 0; k < i; ++k) {
      const std::string field = "ways[" + std::to_string(i) + "].name";
      const Args names{{"name", ways[i].name()}, {"other", ways[k].name()}};
      const Typed& at = ways[i].typed.name;
      if (lower(ways[i].name()) == lower(ways[k].name()))
        problems.push_back({Code{"study.name_twice"}, field, at.text, names, at.place});
      else if (same(ways[i], ways[k]))
        problems.push_back({Code{"study.ways_alike"}, field, at.text, names, at.place});
    }
}

}  // namespace

bool Way::works_as_defined() const {
  return std::ranges::none_of(changes, [](const Message& change) {
    return change.code == Code{"study.change_lean"} || change.code == Code{"study.change_speed"};
  });
}

std::span<const std::string_view> way_fields() { return kFields; }

std::optional<Typed>* field_of(TypedWay& way, std::string_view name) { return member(way, name); }
const std::optional<Typed>* field_of(const TypedWay& way, std::string_view name) { return member(way, name); }

Results<std::vector<Way>> read_ways(const Shaft& shaft, std::span<const TypedWay> typed) {
  std::vector<Problem> problems;
  const auto count = static_cast<std::int64_t>(typed.size());
  if (count < kFewestWays || count > kMostWays)
    return tl::unexpected(std::vector{Problem{Code{"study.count"},
                                              "ways",
                                              {},
                                              {{"count", count}, {"least", kFewestWays}, {"greatest", kMostWays}},
                                              std::nullopt}});
  std::vector<Way> ways;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    Results<Way> way = read_way(shaft, typed[i], i);
    if (way)
      ways.push_back(*std::move(way));
    else
      std::ranges::move(way.error(), std::back_inserter(problems));
  }
  if (problems.empty()) refuse_twins(ways, problems);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return ways;
}

std::string pattern_text(const Pattern& pattern) {
  if (pattern.rule == Pattern::Rule::facing) return "facing";
  if (pattern.rule == Pattern::Rule::step) return "step " + std::to_string(pattern.step_flats);
  std::string text;
  for (const int flat : pattern.flats) text += (text.empty() ? "" : " ") + std::to_string(flat);
  return text;
}

std::string defined_text(const Shaft& shaft, std::string_view field) {
  const ShaftSpec& spec = shaft.spec();
  if (field == "pattern") return pattern_text(spec.pattern);
  if (field == "speed") return format_quantity(any(spec.speed));
  if (spec.rotors.empty()) return {};
  const Rotor& rotor = spec.rotors.front();
  if (field == "lean") return format_quantity(any(rotor.lean));
  if (field == "clearance") return std::string{kClearanceGroups[static_cast<std::size_t>(rotor.bearing.clearance)]};
  return rotor.hub.fit_code;
}

}  // namespace flatwise::study
