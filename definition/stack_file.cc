// [stack], [between], [minutes] and [nut]: one line a part, from end A, to stations, rotors and nuts.
#include <algorithm>
#include <array>

#include "core/fasteners/preload.h"
#include "core/fasteners/thread.h"
#include "definition/shaft_parts.h"

namespace flatwise::definition {
namespace {

struct KindRow {
  std::string_view key;
  StationKind kind;
  double minutes_off, minutes_on;  // Common practice, a shop with a press and two hands.
  double outside_per_across;       // For the drawing, where nobody gave a diameter.
};
constexpr std::array<KindRow, 8> kKinds{{
    {"nut", StationKind::nut, 6, 8, 1.6},
    {"washer", StationKind::washer, 1, 1, 1.65},
    {"spacer", StationKind::spacer, 1, 1, 1.45},
    {"rotor", StationKind::rotor, 4, 5, 4.0},
    {"hanger", StationKind::hanger, 10, 12, 2.9},
    {"pulley", StationKind::pulley, 12, 15, 4.7},
    {"shoulder", StationKind::shoulder, 0, 0, 1.5},
    {"own", StationKind::other, 5, 5, 2.0},
}};
const KindRow& row_of(std::string_view key) { return *std::ranges::find(kKinds, key, &KindRow::key); }
bool has_tolerance(const Section& s) { return s.has("tolerance") || s.has("above") || s.has("below"); }

// Everything of [stack] while it is being expanded.
class StackReader {
 public:
  explicit StackReader(ShaftFile& to)
      : to_{to},
        rotor_{to.section("rotor")},
        between_{to.section("between")},
        stack_{to.section("stack")},
        minutes_{to.section("minutes")} {
    rotor_.note_in(&to.spec.origins, "rotor");
  }

  void read() {
    to_.station_sections = stack_.tables("order");
    if (to_.station_sections.empty() && stack_.has("order"))
      stack_.problem(Code{"definition.no_stations"}, "order", {});
    for (std::size_t line = 0; line < to_.station_sections.size() && !full_; ++line) read_line(line);
    if (to_.spec.rotors.empty() && rotor_.table())
      (void)read_rotor(to_, rotor_, std::nullopt);  // Its problems count too.
    name_all();
  }

 private:
  void read_line(std::size_t line);
  void read_kind(std::size_t line, const KindRow& row, bool carries_details);
  void check_details(const Section& s, const KindRow& row) const;
  [[nodiscard]] std::vector<std::string_view> kinds_in(const Section& s) const;
  void push(std::size_t line, Station station, const Origin& tolerance_origin);
  [[nodiscard]] Station station_of(const Section& s, const KindRow& row, bool details, Length length,
                                   Origin& tolerance);
  void read_rotors(std::size_t line, const Section& s, std::int64_t repeat);
  void push_between(std::size_t line, const Section& between);
  void set_minutes(Station& st, const Section* s, const KindRow& row) const;
  void note_station(std::size_t index, std::string_view what, Origin origin) {
    to_.spec.origins["stations[" + std::to_string(index) + "]." + std::string{what}] = std::move(origin);
  }
  [[nodiscard]] ToleranceRule rule_for(Length nominal) const;
  void name_all();
  void name_kind(StationKind kind, const std::string& word);
  void name_own();
  void check_labels();
  void read_nuts();

  ShaftFile& to_;
  Section rotor_, between_, stack_, minutes_;
  bool full_ = false;
  bool between_missed_ = false;
};

// Keys of a line that name a part, as written: a TOML table has no order of its own, its places have.
std::vector<std::string_view> StackReader::kinds_in(const Section& s) const {
  std::vector<std::string_view> kinds;
  for (const KindRow& row : kKinds)
    if (s.has(row.key)) kinds.push_back(row.key);
  std::ranges::sort(kinds, {}, [&](std::string_view key) {
    const auto& at = s.node(key)->source().begin;
    return std::pair{at.line, at.column};
  });
  return kinds;
}

void StackReader::read_line(std::size_t line) {
  const Section& s = to_.station_sections[line];
  const auto kinds = kinds_in(s);
  if (kinds.empty()) {
    std::vector<std::string> names;
    for (const KindRow& row : kKinds) names.emplace_back(row.key);
    return to_.file.add(Code{"definition.no_part"}, s.path(), {}, {{"kinds", std::move(names)}}, s.place());
  }
  const bool nut_and_washer = kinds.size() == 2 && s.has("nut") && s.has("washer");
  if (kinds.size() > 1 && !nut_and_washer) {
    std::vector<std::string> names{kinds.begin(), kinds.end()};
    return s.problem(Code{"definition.two_parts"}, kinds[1], {{"kinds", std::move(names)}});
  }
  // On a line of nut and washer the details are the nut's.
  check_details(s, nut_and_washer ? row_of("nut") : row_of(kinds.front()));
  for (const std::string_view key : kinds) read_kind(line, row_of(key), key == "nut" || kinds.size() == 1);
}

void StackReader::check_details(const Section& s, const KindRow& row) const {
  const auto only_for = [&](std::string_view key, StationKind kind, const char* word) {
    if (row.kind != kind && s.has(key))
      s.problem(Code{"definition.not_for_this_part"}, key,
                {{"key", std::string{key}}, {"part", std::string{row.key}}, {"only", word}});
  };
  only_for("with", StationKind::rotor, "rotor");
  only_for("between", StationKind::rotor, "rotor");
  only_for("name", StationKind::other, "own");
  only_for("stiffness", StationKind::hanger, "hanger");
  if (row.kind == StationKind::nut && s.has("clamped")) s.problem(Code{"definition.nut_is_not_clamped"}, "clamped", {});
  if (row.kind == StationKind::rotor && s.has("mass")) s.problem(Code{"definition.mass_of_rotor"}, "mass", {});
  if (row.kind == StationKind::other && !s.has("name")) s.problem(Code{"definition.own_needs_name"}, row.key, {});
  if (s.has("label") && s.has("repeat") && s.whole("repeat") > 1)
    s.problem(Code{"definition.label_of_many"}, "label", {});
}

ToleranceRule StackReader::rule_for(Length nominal) const {
  ToleranceRule rule{.nominal = nominal, .fallback = std::nullopt};
  if (const toml::node* node = stack_.node("tolerance")) {
    rule.fallback = stack_.length("tolerance");
    rule.fallback_origin = to_.file.given_at(*node);
  }
  return rule;
}

void StackReader::set_minutes(Station& st, const Section* s, const KindRow& row) const {
  const bool of_kind = row.kind != StationKind::shoulder && minutes_.has(row.key);
  const Section kind = of_kind ? minutes_.table(row.key) : Section{to_.file, "off_on", nullptr, {}};
  st.minutes_off = s && s->has("minutes_off") ? Time::from_si(s->si("minutes_off"))
                   : of_kind                  ? Time::from_si(kind.si("off"))
                                              : minutes(row.minutes_off);
  st.minutes_on = s && s->has("minutes_on") ? Time::from_si(s->si("minutes_on"))
                  : of_kind                 ? Time::from_si(kind.si("on"))
                                            : minutes(row.minutes_on);
}

Station StackReader::station_of(const Section& s, const KindRow& row, bool details, Length length, Origin& tolerance) {
  Station st;
  st.kind = row.kind;
  st.obstacle = row.kind == StationKind::shoulder;
  const Section none{to_.file, "station", nullptr, {}};
  const Section& own = details ? s : none;
  st.length = read_toleranced(own, rule_for(length), &tolerance);
  const bool rotor_hub = row.kind == StationKind::rotor && !to_.spec.rotors.empty();
  st.outside = own.has("outside") ? own.length("outside")
               : rotor_hub        ? to_.spec.rotors.back().hub.outside
                                  : row.outside_per_across * to_.spec.profile.across_flats;
  set_minutes(st, details ? &s : nullptr, row);
  if (own.has("stiffness")) st.stiffness = Stiffness::from_si(own.si("stiffness"));
  if (own.has("mass")) st.mass = Mass::from_si(own.si("mass"));
  if (own.has("clamped")) st.clamped = read_tube(own.table("clamped"));
  if (own.has("obstacle")) st.obstacle = own.flag("obstacle");
  if (own.has("name")) st.own_kind = own.text("name");
  if (own.has("label") && own.whole("repeat") == 1) st.label = own.text("label");
  for (const Section& captive : own.tables("fit_before"))
    st.fit_before.push_back({captive.text("part"), static_cast<int>(captive.whole("count"))});
  if (details) st.part = read_priced(to_, s);
  return st;
}

// Adds a station with the origins of what was and was not said on its line.
void StackReader::push(std::size_t line, Station station, const Origin& tolerance_origin) {
  if (to_.spec.stations.size() >= kMostStations) {
    if (!full_)
      stack_.problem(Code{"definition.too_many_stations"}, "order", {{"greatest", static_cast<int>(kMostStations)}});
    full_ = true;
    return;
  }
  const std::size_t index = to_.spec.stations.size();
  const Section& s = to_.station_sections[line];
  const Origin assumed{OriginKind::assumed, "common practice, by the kind of part"};
  const auto from_line = [&](std::string_view key) { return s.has(key) ? to_.file.given_at(*s.node(key)) : assumed; };
  note_station(index, "length", {OriginKind::given, to_.file.whole().file + ":" + std::to_string(s.place().line)});
  note_station(index, "tolerance", tolerance_origin);
  const bool hub = station.kind == StationKind::rotor && !s.has("outside");
  note_station(index, "outside",
               hub ? Origin{OriginKind::computed, "outside diameter of its hub"} : from_line("outside"));
  const KindRow& row = *std::ranges::find(kKinds, station.kind, &KindRow::kind);
  const toml::node* of_kind = row.kind == StationKind::shoulder ? nullptr : minutes_.node(row.key);
  for (const std::string_view key : {"minutes_off", "minutes_on"})
    note_station(index, key, !s.has(key) && of_kind ? to_.file.given_at(*of_kind) : from_line(key));
  if (s.has("clamped")) note_station(index, "clamped", from_line("clamped"));
  for (const std::string_view key : {"stiffness", "mass"})
    note_station(index, key,
                 s.has(key) ? from_line(key) : Origin{OriginKind::assumed, std::string{s.field(key).assumed_from}});
  to_.spec.stations.push_back(std::move(station));
  to_.line_of_station.push_back(line);
}

void StackReader::read_kind(std::size_t line, const KindRow& row, bool carries_details) {
  const Section& s = to_.station_sections[line];
  std::int64_t repeat = carries_details ? s.whole("repeat") : 1;
  if (repeat < 1 || repeat > 240) repeat = 1;  // Has its problem already.
  if (row.kind == StationKind::rotor) return read_rotors(line, s, repeat);
  Origin tolerance;
  const Station station = station_of(s, row, carries_details, s.length(row.key), tolerance);
  for (std::int64_t i = 0; i < repeat && !full_; ++i) push(line, station, tolerance);
}

void StackReader::read_rotors(std::size_t line, const Section& s, std::int64_t repeat) {
  const toml::node& stated = *s.node("rotor");
  const bool two_halves = stated.value<std::string>() == "two halves";
  const auto read = two_halves ? std::nullopt : s.quantity("rotor");
  const std::optional<Length> length = read ? std::optional{read->length()} : std::nullopt;
  Section mine = s.has("with") ? s.table("with").over(rotor_) : rotor_;
  if (s.has("with")) mine.note_in(&to_.spec.origins, "rotors[" + std::to_string(to_.spec.rotors.size()) + "]");
  const Rotor rotor = read_rotor(to_, mine, length);
  if (two_halves && rotor.half.nominal == Length{} && !mine.table("half").has("length"))
    s.problem(Code{"definition.half_unknown"}, "rotor", {});
  const Length halves = 2.0 * rotor.half.nominal;
  const Length slack = 2.0 * (rotor.half.above + rotor.half.below);
  if (length && halves > Length{} && (*length - halves > slack || halves - *length > slack))
    s.problem(Code{"definition.rotor_not_halves"}, "rotor", {{"value", any(*length)}, {"halves", any(halves)}});
  const Section between = s.has("between") ? s.table("between").over(between_) : between_;
  for (std::int64_t i = 0; i < repeat && !full_; ++i) {
    if (i > 0) push_between(line, between);
    to_.spec.rotors.push_back(rotor);
    to_.rotor_sections.push_back(mine);
    Origin tolerance;
    Station station = station_of(s, row_of("rotor"), true, length.value_or(halves), tolerance);
    if (!has_tolerance(s)) station.length = {station.length.nominal, 2.0 * rotor.half.above, 2.0 * rotor.half.below};
    station.rotor = static_cast<int>(to_.spec.rotors.size()) - 1;
    push(line, std::move(station),
         has_tolerance(s) ? tolerance : Origin{OriginKind::computed, "both halves of the rotor"});
    if (full_) {
      to_.spec.rotors.pop_back();
      to_.rotor_sections.pop_back();
    }
  }
}

void StackReader::push_between(std::size_t line, const Section& between) {
  if (!between.has("spacer")) {
    const Section& s = to_.station_sections[line];
    // An own [between] without its spacer has its problem already.
    if (!between_missed_ && !between_.table()) s.problem(Code{"definition.nothing_between"}, "repeat", {});
    between_missed_ = true;
    return;
  }
  const KindRow& row = row_of("spacer");
  Station st;
  st.kind = StationKind::spacer;
  Origin tolerance;
  st.length = read_toleranced(between, rule_for(between.length("spacer")), &tolerance);
  st.outside =
      between.has("outside") ? between.length("outside") : row.outside_per_across * to_.spec.profile.across_flats;
  set_minutes(st, &between, row);
  st.part = read_priced(to_, between);
  push(line, std::move(st), tolerance);
  if (full_) return;
  const std::size_t index = to_.spec.stations.size() - 1;
  note_station(index, "length", to_.file.given_at(*between.node("spacer")));
  for (const std::string_view key : {"outside", "minutes_off", "minutes_on"})
    if (const toml::node* node = between.node(key)) note_station(index, key, to_.file.given_at(*node));
}

// Numbers and labels: spacers S1, S2 ... and rotors 1, 2 ... from end A; hangers and nuts by end.
void StackReader::name_all() {
  auto& stations = to_.spec.stations;
  int spacers = 0, rotors = 0;
  for (Station& st : stations) {
    if (st.kind == StationKind::spacer) st.number = ++spacers;
    if (st.kind == StationKind::rotor) st.number = ++rotors;
    if (!st.label.empty()) continue;
    if (st.kind == StationKind::spacer) st.label = "S" + std::to_string(st.number);
    if (st.kind == StationKind::rotor) st.label = std::to_string(st.number);
  }
  name_own();
  name_kind(StationKind::nut, "nut");
  name_kind(StationKind::washer, "washer");
  name_kind(StationKind::hanger, "hanger");
  name_kind(StationKind::pulley, "pulley");
  name_kind(StationKind::shoulder, "shoulder");
  check_labels();
  read_nuts();
}

// One of a kind is its word, a nut also its end; two are A and B, three hangers A, M and B; more are counted.
void StackReader::name_kind(StationKind kind, const std::string& word) {
  auto& stations = to_.spec.stations;
  const auto count = std::ranges::count(stations, kind, &Station::kind);
  int number = 0;
  bool past_rotor = false;
  for (Station& st : stations) {
    past_rotor = past_rotor || st.kind == StationKind::rotor;
    if (st.kind != kind) continue;
    ++number;
    st.number = count == 1 ? 0 : number;
    if (!st.label.empty()) continue;
    std::string which = std::to_string(number);
    if (count == 1) which = kind != StationKind::nut ? "" : past_rotor ? "B" : "A";
    if (count == 2) which = number == 1 ? "A" : "B";
    if (count == 3 && kind == StationKind::hanger) which = number == 1 ? "A" : number == 2 ? "M" : "B";
    st.label = which.empty() ? word : word + " " + which;
  }
}

void StackReader::name_own() {
  std::map<std::string, int> seen, count;
  for (const Station& st : to_.spec.stations)
    if (st.kind == StationKind::other) ++count[st.own_kind];
  for (Station& st : to_.spec.stations) {
    if (st.kind != StationKind::other) continue;
    const bool many = count[st.own_kind] > 1;
    st.number = many ? ++seen[st.own_kind] : 0;
    if (st.label.empty()) st.label = many ? st.own_kind + " " + std::to_string(st.number) : st.own_kind;
  }
}

void StackReader::check_labels() {
  std::map<std::string_view, std::size_t> first;
  for (std::size_t i = 0; i < to_.spec.stations.size(); ++i) {
    const std::string& label = to_.spec.stations[i].label;
    const auto [at, fresh] = first.emplace(label, i);
    if (fresh || label.empty()) continue;
    const Section& here = to_.station_sections[to_.line_of_station[i]];
    const Section& there = to_.station_sections[to_.line_of_station[at->second]];
    const Section& given = here.has("label") || !there.has("label") ? here : there;
    given.problem(Code{"definition.label_twice"}, given.has("label") ? "label" : "name", {{"label", label}});
  }
}

void StackReader::read_nuts() {
  std::vector<std::size_t> at;
  bool past_rotor = false, first_past_rotor = false;
  for (std::size_t i = 0; i < to_.spec.stations.size(); ++i) {
    past_rotor = past_rotor || to_.spec.stations[i].kind == StationKind::rotor;
    if (to_.spec.stations[i].kind != StationKind::nut) continue;
    if (at.empty()) first_past_rotor = past_rotor;
    at.push_back(i);
  }
  if (at.size() > 2) {
    const Section& line = to_.station_sections[to_.line_of_station[at[2]]];
    line.problem(Code{"definition.too_many_nuts"}, "nut", {{"count", static_cast<int>(at.size())}});
  }
  for (std::size_t k = 0; k < at.size(); ++k) {
    const End end = k >= 1 || (at.size() == 1 && first_past_rotor) ? End::b : End::a;
    to_.spec.stations[at[k]].nut = static_cast<int>(k);
    to_.spec.nuts.push_back(read_nut(to_, end, static_cast<int>(at.size())));
  }
}

// The published range of K, unless the file gives its own; one of the two alone leaves the other as published.
void read_nut_factor(const Section& s, Nut& nut) {
  const auto published = fasteners::nut_factor(nut.lubrication);
  const Origin origin{OriginKind::published, std::string{published.source}};
  const auto one = [&](std::string_view key, double from_table) {
    if (s.has(key)) return s.si(key);
    s.note(key, origin);
    return from_table;
  };
  nut.nut_factor_least = one("nut_factor_least", published.range.least);
  nut.nut_factor_greatest = one("nut_factor_greatest", published.range.greatest);
  if (nut.nut_factor_least > nut.nut_factor_greatest)
    s.problem(Code{"definition.limits_crossed"}, s.has("nut_factor_least") ? "nut_factor_least" : "nut_factor_greatest",
              {{"least", any_ratio(nut.nut_factor_least)}, {"greatest", any_ratio(nut.nut_factor_greatest)}});
}

Thread read_thread(ShaftFile& to, const Section& s) {
  if (!s.has("thread")) return {};
  auto form = fasteners::read_thread(s.text("thread"), s.path("thread"));
  if (form) return {form->designation, form->major, form->pitch};
  to.file.add(std::move(form.error()), s.path("thread"), *s.node("thread"));
  return {};
}

}  // namespace

Tube read_tube(const Section& s) {
  Tube tube;
  if (s.has("outside")) tube.outside = s.length("outside");
  if (s.has("bore")) tube.bore = s.length("bore");
  if (s.has("youngs_modulus")) tube.youngs_modulus = Pressure::from_si(s.si("youngs_modulus"));
  return tube;
}

Nut read_nut(ShaftFile& to, End end, int nuts) {
  const std::string_view letter = end == End::a ? "A" : "B";
  const Section both = to.section("nut");
  Section s = both.has(letter) ? both.table(letter).over(both) : both;
  s.note_in(&to.spec.origins, both.has(letter) ? "nut." + std::string{letter} : "nut");
  for (const std::string_view key : {"torque", "thread"})
    if (!s.has(key))
      to.file.add(Code{"definition.missing"}, both.path(key), {},
                  {{"key", std::string{key}},
                   {"meaning", Word{std::string{s.field(key).meaning.id()}}},
                   {"table", "nut"},
                   {"example", std::string{s.field(key).example}}},
                  both.table() ? both.place() : to.file.whole());
  Nut n;
  n.end = end;
  n.torque = Torque::from_si(s.si("torque"));
  n.torque_tolerance = s.si("tolerance");
  n.thread = read_thread(to, s);
  n.lubrication = static_cast<Lubrication>(s.word("lubrication"));
  read_nut_factor(s, n);
  n.strength_class = s.text("class");
  if (s.has("snug")) n.snug = Torque::from_si(s.si("snug"));
  const End first = s.word("first") == 0 ? End::a : End::b;
  n.order = nuts == 1 || first == end ? 1 : 2;
  to.nut_sections.push_back(s);
  return n;
}

void read_stack(ShaftFile& to) { StackReader{to}.read(); }

}  // namespace flatwise::definition
