// read_shaft: the file as a whole, and the problems of Shaft::make brought back to its lines.
#include <algorithm>
#include <array>

#include "definition/read.h"
#include "definition/shaft_parts.h"

namespace flatwise::definition {

Section ShaftFile::section(std::string_view key) {
  const Section all{file, "shaft_file", &file.root(), {}};
  Section one = all.table(key);
  return one.note_in(&spec.origins, std::string{key});
}

namespace {

void read_pattern(ShaftFile& to, const Section& shaft) {
  Pattern& p = to.spec.pattern;
  if (shaft.has("first_flat")) p.first_flat = static_cast<int>(shaft.whole("first_flat"));
  const toml::node* node = shaft.node("pattern");
  if (!node) return;
  shaft.note("pattern", to.file.given_at(*node));
  if (!node->is_table()) return;  // "facing", or it has its problem already.
  const Section s = shaft.table("pattern");
  const bool step = s.has("step"), listed = s.has("flats");
  if (step == listed) return shaft.problem(Code{"definition.pattern_form"}, "pattern", {});
  p.rule = step ? Pattern::Rule::step : Pattern::Rule::listed;
  if (step) p.step_flats = static_cast<int>(s.whole("step"));
  if (!listed || !s.node("flats")->is_array()) return;
  for (const toml::node& flat : *s.node("flats")->as_array())
    p.flats.push_back(static_cast<int>(flat.value<std::int64_t>().value_or(0)));
}

void read_top(ShaftFile& to) {
  const Section s = to.section("shaft");
  ShaftSpec& spec = to.spec;
  spec.name = s.text("name");
  spec.invented = s.flag("invented");
  spec.profile = {static_cast<int>(s.whole("flats")), s.length("across")};
  spec.drive_end = s.word("drive_end") == 0 ? End::a : End::b;
  spec.speed = radians_per_second(s.si("speed"));
  if (s.has("travel")) spec.travel = Speed::from_si(s.si("travel"));
  if (s.has("rolling_radius")) spec.rolling_radius = s.length("rolling_radius");
  if (s.has("travel") != s.has("rolling_radius"))
    s.problem(Code{"definition.rolling_needs_both"}, s.has("travel") ? "travel" : "rolling_radius", {});
  read_pattern(to, s);
}

void read_policies(ShaftFile& to) {
  const Section s = to.section("policy");
  Policies& p = to.spec.policies;
  p.renew_disturbed = s.flag("renew_disturbed");
  p.decision = static_cast<Policies::DecisionRule>(s.word("decision"));
  p.look_at_a_mark = Time::from_si(s.si("look_at_a_mark"));
  p.turn_a_half = Time::from_si(s.si("turn_a_half"));
  p.furthest_from_20 = kelvins(s.si("furthest_from_20"));
  p.open_joint_step = s.length("open_joint_step");
  p.one_person_pull = Force::from_si(s.si("one_person_pull"));
  p.least_open_gap = s.has("least_open_gap") ? s.length("least_open_gap") : p.open_joint_step / 2.0;
  if (!s.has("least_open_gap"))
    s.note("least_open_gap", {OriginKind::assumed, std::string{s.field("least_open_gap").assumed_from}});
  else if (p.least_open_gap > p.open_joint_step)
    s.problem(Code{"definition.gap_over_step"}, "least_open_gap",
              {{"value", any(p.least_open_gap)}, {"greatest", any(p.open_joint_step)}});
}

/// Station that `at` names by its label; a problem where none is called so. `also`: one more name that is understood.
std::optional<std::size_t> station_named(const ShaftFile& to, const Section& s, std::string_view also = {}) {
  std::vector<std::string_view> labels;
  for (const Station& st : to.spec.stations) labels.push_back(st.label);
  const std::string at = s.text("at");
  const auto station = index_of(at, labels);
  if (station || !s.has("at") || labels.empty()) return station;
  if (!also.empty()) labels.push_back(also);
  Args args{{"label", at}};
  if (const auto near = meant(at, labels); !near.empty()) args.emplace_back("near", std::string{near});
  s.problem(Code{"definition.unknown_label"}, "at", std::move(args));
  return std::nullopt;
}

void read_unbalances(ShaftFile& to) {
  const Section all{to.file, "shaft_file", &to.file.root(), {}};
  for (const Section& s : all.tables("unbalance")) {
    const auto station = station_named(to, s);
    if (!station) continue;
    to.spec.unbalances.push_back(
        {static_cast<int>(*station), Unbalance::from_si(s.si("amount")), static_cast<int>(s.whole("flat"))});
  }
}

void read_run_and_service(ShaftFile& to) {
  const Section run = to.section("test_run");
  if (const auto v = run.quantity("shortest")) to.spec.test_run.shortest = Time::from_si(v->value.si);
  if (const auto v = run.quantity("greatest_rise")) to.spec.test_run.greatest_rise = kelvins(v->value.si);
  if (const auto v = run.quantity("greatest_vibration"))
    to.spec.test_run.greatest_vibration = Speed::from_si(v->value.si);
  const Section service = to.section("service");
  if (const auto v = service.quantity("every")) to.spec.service.every = Time::from_si(v->value.si);
  if (service.has("seasons")) to.spec.service.seasons = static_cast<int>(service.whole("seasons"));
  if (const auto v = service.quantity("nuts_again")) to.spec.service.nuts_again = Time::from_si(v->value.si);
}

void read_clamped(ShaftFile& to) {
  const Section s = to.section("clamped");
  to.spec.clamped.tube = read_tube(s);
  to.spec.clamped.tube.youngs_modulus = Pressure::from_si(s.si("youngs_modulus"));
  to.spec.clamped.faces = static_cast<Faces>(s.word("faces"));
}

constexpr std::string_view kEveryRotor = "every rotor";

void read_loads(ShaftFile& to) {
  const Section all{to.file, "shaft_file", &to.file.root(), {}};
  std::size_t number = 0;
  for (Section s : all.tables("load")) {
    s.note_in(&to.spec.origins, "load[" + std::to_string(++number) + "]");
    if (!s.has("force") && !s.has("along")) s.problem(Code{"definition.no_load"}, "force", {});
    FixedLoad load{.force = Force::from_si(s.si("force")),
                   .direction = radians(s.si("direction")),
                   .along = Force::from_si(s.si("along"))};
    if (s.text("at") != kEveryRotor) {
      const auto station = station_named(to, s, kEveryRotor);
      if (!station) continue;
      load.station = static_cast<int>(*station);
    }
    to.spec.loads.push_back(load);
  }
}

void read_bar(ShaftFile& to) {
  const Section s = to.section("bar");
  Bar& bar = to.spec.bar;
  bar.youngs_modulus = Pressure::from_si(s.si("youngs_modulus"));
  bar.poisson = s.si("poisson");
  bar.density = Density::from_si(s.si("density"));
  if (s.has("drive_torque")) bar.drive_torque = Torque::from_si(s.si("drive_torque"));
}

// --- Problems of Shaft::make -------------------------------------------------------------------------------------------

struct Located {
  std::string path;
  Place place;
  std::string given;
};

// Walks a dotted path as far as the file has it.
Located locate(const Section& from, std::string_view path, std::string_view full_path) {
  const std::size_t dot = path.find('.');
  const std::string_view key = path.substr(0, dot);
  const Field* known = nullptr;
  for (const Field& f : fields(from.file().document()))
    if (f.key() == key && from.has(key)) known = &f;
  if (!known) return {std::string{full_path}, from.place(), {}};
  const toml::node& node = *from.node(key);
  if (dot != std::string_view::npos && node.is_table()) return locate(from.table(key), path.substr(dot + 1), full_path);
  return {std::string{full_path}, from.place(key), node.is_table() || node.is_array() ? "" : from.file().typed(node)};
}

// "rotor 4.hub.outside" is in the fourth rotor's section, "stack[7].off" on the eighth station's line.
std::optional<std::size_t> number_after(std::string_view field, std::string_view prefix) {
  if (!field.starts_with(prefix)) return std::nullopt;
  std::size_t number = 0;
  for (std::size_t i = prefix.size(); i < field.size() && field[i] >= '0' && field[i] <= '9'; ++i)
    number = number * 10 + static_cast<std::size_t>(field[i] - '0');
  return number;
}

Located locate(ShaftFile& to, const std::string& field) {
  const std::size_t dot = field.find('.');
  const std::string rest = dot == std::string::npos ? std::string{} : field.substr(dot + 1);
  const auto in = [&](const Section& s) { return locate(s, rest, s.path() + "." + rest); };
  if (const auto rotor = number_after(field, "rotor "); rotor && *rotor >= 1 && *rotor <= to.rotor_sections.size())
    return in(to.rotor_sections[*rotor - 1]);
  if (const auto nut = number_after(field, "nut "); nut && *nut >= 1 && *nut <= to.nut_sections.size())
    return in(to.nut_sections[*nut - 1]);
  if (const auto station = number_after(field, "stack["); station && *station < to.line_of_station.size()) {
    const Section& s = to.station_sections[to.line_of_station[*station]];
    return {s.path() + (rest.empty() ? "" : "." + rest), s.place(), {}};
  }
  const std::string_view top = std::string_view{field}.substr(0, dot);
  if (top == "shaft" || top == "stack" || top == "clamped" || top == "test_run" || top == "service")
    return in(to.section(top));
  if (top == "unbalance") {
    const Section all{to.file, "shaft_file", &to.file.root(), {}};
    return {field, all.place("unbalance"), {}};
  }
  return {field, to.file.whole(), {}};
}

// With values missing, Shaft::make would complain of our noughts; these it can say truly as soon as flats are known.
bool holds_although_unsound(Code code) {
  constexpr std::array kCodes{Code{"shaft.odd_flats"},          Code{"shaft.facing_odd_flats"},
                              Code{"shaft.step_range"},         Code{"shaft.flat_range"},
                              Code{"shaft.first_flat_differs"}, Code{"shaft.unbalance_needs_flat"}};
  return std::ranges::find(kCodes, code) != kCodes.end();
}

Results<Shaft> make(ShaftFile& to) {
  const bool sound = to.file.sound();
  const bool flats_known = to.spec.profile.flats >= 3 && to.spec.profile.flats <= 24;
  if (!sound && !flats_known) return tl::unexpected(to.file.take_problems());
  Results<Shaft> made = Shaft::make(to.spec);
  if (made && sound) return made;
  if (!made)
    for (Problem& p : made.error()) {
      if (!sound && !holds_although_unsound(p.code)) continue;
      Located at = locate(to, p.field);
      to.file.add(p.code, std::move(at.path), p.given.empty() ? std::move(at.given) : std::move(p.given),
                  std::move(p.args), std::move(at.place));
    }
  return tl::unexpected(to.file.take_problems());
}

void read_all(ShaftFile& to) {
  read_top(to);
  read_stack(to);
  read_policies(to);
  read_unbalances(to);
  read_bar(to);
  read_clamped(to);
  read_loads(to);
  read_run_and_service(to);
}

constexpr std::size_t kMostDoubts = 60, kMostDoubtedParts = 30'000;

/// The shaft as it would be with a doubtful field at another value; none where it could not be.
std::shared_ptr<const ShaftSpec> moved(File& file, std::string_view path, double si) {
  ShaftFile other{file};
  if (!file.read_with(path, si, [&] { read_all(other); })) return nullptr;
  if (!Shaft::make(other.spec)) return nullptr;
  return std::make_shared<const ShaftSpec>(std::move(other.spec));
}

// A shaft is kept twice for every doubt: of few parts as many as anybody measures, of very many only some.
void add_doubts(ShaftFile& to) {
  const std::size_t parts = 1 + to.spec.stations.size() + to.spec.rotors.size();
  const std::size_t most = std::clamp<std::size_t>(kMostDoubtedParts / parts, 1, kMostDoubts);
  const auto count = to.file.doubts().size();
  if (count > most)
    return to.file.add(Code{"definition.too_many_doubts"}, "file", {},
                       {{"count", static_cast<std::int64_t>(count)}, {"greatest", static_cast<std::int64_t>(most)}},
                       to.file.whole());
  for (const auto& [path, doubted] : to.file.doubts()) {
    const doubt::DoubtfulQuantity& read = doubted.read;
    const double middle = read.middle.value.si, u = read.u->standard_si;
    to.spec.doubts[path] = {.meaning = std::string{doubted.field->meaning.id()},
                            .value = read.middle.value,
                            .u = *read.u,
                            .anywhere = read.shape == doubt::Shape::rectangular,
                            .above = moved(to.file, path, middle + u),
                            .below = moved(to.file, path, middle - u)};
  }
}

}  // namespace

Results<Shaft> read_shaft(std::string_view toml, std::string_view name) {
  File file{Document::shaft, toml, name};
  if (!file.parse()) return tl::unexpected(file.take_problems());
  ShaftFile to{file};
  read_all(to);
  if (file.sound()) add_doubts(to);
  return make(to);
}

}  // namespace flatwise::definition
