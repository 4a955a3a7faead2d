// One [[rotor]] of a readings file: marks, bore, halves, press, rings, count-out.
#include <algorithm>

#include "definition/bench_reader.h"

namespace flatwise::definition {

using Use = Gauge::Use;

namespace {
constexpr std::size_t kMostPoints = 40;  // Of one press; a record takes no more.
}

void BenchReader::read_rotor(const Section& s) {
  const toml::node* number = s.node("number");
  if (!number || !rotor_there(*number, s.whole("number"), s.path("number"))) return;
  const auto rotor = static_cast<int>(s.whole("number"));
  if (s.has("marks")) read_marks(s.table("marks"), rotor);
  for (const Section& bore : s.tables("bore")) read_bore(bore, rotor);
  if (s.has("half_lengths")) read_half_lengths(s.table("half_lengths"), rotor);
  for (const Section& press : s.tables("press")) read_press(press, rotor);
  if (const auto* node = s.node("fitted")) bench_.fitted.push_back({rotor, told(*node, s.text("fitted"))});
  if (s.has("lean_marked")) read_leans(s.table("lean_marked"), rotor);
  read_rings(s, rotor);
  if (s.has("count_out")) read_count_out(s.table("count_out"), rotor);
}

void BenchReader::read_count_out(const Section& s, int rotor) {
  for (const std::string_view item : {"set", "seal", "snap_ring"}) {
    const Section counted = s.table(item);
    const toml::node* laid = counted.node("laid");
    if (!laid) continue;
    Counted c{rotor, std::string{item}, told(*laid, static_cast<int>(counted.whole("laid"))), std::nullopt};
    if (const toml::node* left = counted.node("left")) c.left = told(*left, static_cast<int>(counted.whole("left")));
    bench_.counted.push_back(std::move(c));
  }
}

void BenchReader::read_marks(const Section& s, int rotor) {
  for (const auto& [key, half] : {std::pair{"a", Half::a}, std::pair{"b", Half::b}}) {
    const toml::node* node = s.node(key);
    if (!node || !node->is_integer()) continue;  // Not there, or "not read".
    const std::int64_t flat = s.whole(key);
    if (flat > context_.shaft.flats() && flat <= 24)
      s.problem(Code{"definition.flat_range"}, key, {{"least", 1}, {"greatest", context_.shaft.flats()}});
    bench_.marks.push_back({rotor, half, told(*node, static_cast<int>(flat))});
  }
}

// Four directions, 45° apart, need no list; any other number of readings says where it was taken.
std::vector<Angle> BenchReader::directions(const Section& s) {
  if (const auto* node = s.node("directions"); node && node->is_array()) {
    std::vector<Angle> all;
    for (const toml::node& item : *node->as_array()) {
      const auto read = file_.quantity(item, s.field("directions"), s.path("directions"));
      all.push_back(read ? radians(read->value.si) : Angle{});
    }
    return all;
  }
  return {degrees(0), degrees(45), degrees(90), degrees(135)};
}

void BenchReader::read_bore(const Section& s, int rotor) {
  BoreReading like;
  like.rotor = rotor;
  like.gauge = gauge(s, "gauge", {Use::bore_gauge});
  like.thermometer = gauge(s, "thermometer", {Use::thermometer});
  like.part_temperature = told(s, "part");
  like.gauge_temperature = told(s, "gauge_at");
  if (!s.has("A") && !s.has("B")) s.problem(Code{"definition.no_readings"}, "gauge", {});
  const std::vector<Angle> at = directions(s);
  for (const std::string_view plane : {"A", "B"}) {
    like.plane = plane.front();
    read_plane(s, plane, like, at);
  }
}

void BenchReader::read_plane(const Section& s, std::string_view plane, const BoreReading& like,
                             std::span<const Angle> at) {
  const toml::node* node = s.node(plane);
  if (!node || !node->is_array()) return;
  const toml::array& list = *node->as_array();
  if (list.size() != at.size()) {
    const Args args{{"count", static_cast<std::int64_t>(list.size())},
                    {"directions", static_cast<std::int64_t>(at.size())}};
    if (s.has("directions")) return s.problem(Code{"definition.readings_not_directions"}, plane, args);
    return s.problem(Code{"definition.directions_wanted"}, plane, args);
  }
  std::size_t i = 0;
  for (const toml::node& item : list) {
    BoreReading reading = like;
    reading.direction = at[i++];
    if (item.value<std::string>() == "not read") continue;
    auto read = file_.quantity(item, s.field(plane), s.path(plane));
    if (!read) continue;  // Has its problem already.
    reading.diameter = told(item, *std::move(read));
    bench_.bores.push_back(std::move(reading));
  }
}

void BenchReader::read_half_lengths(const Section& s, int rotor) {
  const std::string id = gauge(s, "gauge", {Use::length});
  for (const auto& [key, half] : {std::pair{"a", Half::a}, std::pair{"b", Half::b}})
    if (auto length = told(s, key))
      bench_.part_lengths.push_back({context_.shaft.station_of_rotor(rotor), half, *std::move(length), id});
}

void BenchReader::read_leans(const Section& s, int rotor) {
  for (const auto& [key, half] : {std::pair{"a", Half::a}, std::pair{"b", Half::b}})
    if (auto angle = told(s, key)) bench_.leans.push_back({rotor, half, *std::move(angle)});
}

void BenchReader::read_rings(const Section& s, int rotor) {
  const toml::node* node = s.node("rings_sound");
  if (!node || !node->is_array()) return;
  const auto rings = static_cast<int>(context_.shaft.rotor(rotor).snap_rings);
  if (node->as_array()->size() > static_cast<std::size_t>(rings))
    s.problem(Code{"definition.too_many_rings"}, "rings_sound", {{"greatest", rings}});
  for (const toml::node& item : *node->as_array())
    if (const auto reply = index_of(item.value<std::string>().value_or(""), s.field("rings_sound").words))
      bench_.reused_rings.push_back({rotor, told(item, static_cast<Reply>(*reply))});
}

void BenchReader::read_press(const Section& s, int rotor) {
  PressReading p;
  p.rotor = rotor;
  p.gauge = gauge(s, "gauge", {Use::press_gauge});
  if (const auto* node = s.node("ring")) p.ring = told(*node, static_cast<RingPressed>(s.word("ring")));
  for (const Section& point : s.tables("curve")) {
    auto travel = told(point, "travel"), at = told(point, "force");
    if (travel && at) bench_.press_points.push_back({rotor, *std::move(travel), *std::move(at), p.gauge});
  }
  if (static_cast<std::size_t>(std::ranges::count(bench_.press_points, rotor, &PressPoint::rotor)) > kMostPoints)
    s.problem(Code{"definition.too_many_points"}, "curve", {{"greatest", static_cast<int>(kMostPoints)}});
  auto force = told(s, "force");
  if (!force) return;
  p.force = *std::move(force);
  bench_.presses.push_back(std::move(p));
}

}  // namespace flatwise::definition
