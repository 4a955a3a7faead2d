#include "view/shaft_bend.h"

#include <nlohmann/json.hpp>
#include <tuple>

#include "core/beam/figures.h"
#include "core/timing/map.h"
#include "core/units/csv.h"
#include "core/units/parse.h"
#include "core/working/place_of.h"
#include "job/bending_doubts.h"

namespace flatwise::view {
namespace {

constexpr double kFromShare = 0.1, kToShare = 2;

/// Tilt azimuths as the definition's pattern wants them.
Result<std::vector<Angle>> tilt_of(const Shaft& shaft) {
  const Result<timing::Map> map = timing::map(shaft);
  if (!map) return tl::unexpected(map.error());
  return timing::tilt_azimuths(*map, shaft.flats());
}

/// What holds the shaft stands in its stack: the line where that begins, in the file that the shaft was read from.
Problem brought_back(Problem problem, const Shaft& shaft) {
  if (problem.field != "hanger") return problem;
  problem.field = "stack.order";
  problem.place = place_of(shaft.origin("stations[0].length"));
  return problem;
}

Result<beam::SpeedRange> range_of(const Shaft& shaft, const ResponseAsked& asked) {
  const double own = shaft.spec().speed.radians_per_second();
  beam::SpeedRange range{radians_per_second(kFromShare * own), radians_per_second(kToShare * own), asked.speeds};
  for (const auto& [text, field, into] :
       {std::tuple{&asked.from, "from", &range.from}, std::tuple{&asked.to, "to", &range.to}}) {
    if (text->empty()) continue;
    const Result<Entered> read = parse_quantity(*text, Kind::angular_speed, field);
    if (!read) return tl::unexpected(read.error());
    *into = radians_per_second(read->value.si);
  }
  return range;
}

std::string csv_of(const Shaft& shaft, const ShaftBend& bend, const std::vector<beam::ResponsePoint>& points) {
  const auto cell = [](double v) { return "," + nlohmann::json(v).dump(); };
  std::string out = "speed_r_min";
  for (const beam::Named& h : bend.bending.of.hangers) out += "," + csv_text(h.label + " turning_n");
  for (int r = 1; r <= shaft.rotor_count(); ++r) out += ",rotor_" + std::to_string(r) + "_turning_m";
  out += "\n";
  for (const beam::ResponsePoint& p : points) {
    out += nlohmann::json(p.speed.turns_per_minute()).dump();
    for (const Force f : p.hangers) out += cell(f.si());
    for (const Length x : p.out) out += cell(x.si());
    out += "\n";
  }
  return out;
}

wire::Json hangers_json(const ShaftBend& bend) {
  wire::Json list = wire::Json::array();
  for (std::size_t i = 0; i < bend.bending.of.hangers.size(); ++i) {
    const beam::Reaction &rest = bend.bending.at_rest.reactions[i], &turning = bend.bending.turning.reactions[i];
    list.push_back({{"hanger", bend.bending.of.hangers[i].label},
                    {"at_m", rest.at.si()},
                    {"rest_n", rest.size.si()},
                    {"direction_rad", rest.direction.radians()},
                    {"turning_n", turning.size.si()},
                    {"azimuth_rad", turning.direction.radians()}});
  }
  return list;
}

wire::Json stations_json(const Shaft& shaft, const ShaftBend& bend) {
  wire::Json list = wire::Json::array();
  for (std::size_t i = 0; i < shaft.stations().size(); ++i) {
    const beam::StressAt& s = bend.bending.stresses[i];
    list.push_back({{"part", shaft.stations()[i].label},
                    {"at_m", s.at.si()},
                    {"bends_rest_m", bend.bending.rest_of_station[i].out.si()},
                    {"bends_turning_m", bend.bending.turning_of_station[i].out.si()},
                    {"stress_rest_pa", s.at_rest.si()},
                    {"stress_turning_pa", s.turning.si()},
                    {"torsion_pa", s.torsion.si()},
                    {"together_pa", s.equivalent.si()}});
  }
  return list;
}

wire::Json effects_json(const Shaft& shaft, const ShaftBend& bend) {
  const beam::Effects& e = bend.bending.effects;
  wire::Json list = wire::Json::array();
  for (int r = 0; r < shaft.rotor_count(); ++r) {
    wire::Json shares = wire::Json::array(), mistakes = wire::Json::array();
    for (const beam::Share& s : e.shares[static_cast<std::size_t>(r)]) shares.push_back(s.size.si());
    for (const beam::TimingEffect& m : e.mistakes)
      if (m.rotor == r + 1)
        mistakes.push_back({{"mistake", m.mistake == beam::Mistake::half_out ? "half_out" : "rotor_out"},
                            {"flats_out", m.flats_out},
                            {"greatest_n", m.greatest.si()},
                            {"rise_n", m.rise.si()},
                            {"hanger", bend.bending.of.hangers[static_cast<std::size_t>(m.hanger)].label}});
    list.push_back({{"rotor", r + 1}, {"shares_n", std::move(shares)}, {"mistakes", std::move(mistakes)}});
  }
  return list;
}

}  // namespace

Results<ShaftBend> bend_of(const Shaft& shaft) {
  const auto failed = [](Problem p) { return tl::unexpected(std::vector<Problem>{std::move(p)}); };
  const auto tilt = tilt_of(shaft);
  if (!tilt) return failed(tilt.error());
  auto bending = beam::bending_of(shaft, *tilt);
  if (!bending) return failed(brought_back(bending.error(), shaft));
  auto workings = beam::bending_workings(shaft, bending->of);
  if (!workings) return failed(workings.error());
  return ShaftBend{*std::move(bending), *std::move(workings), job::bending_doubts(shaft)};
}

wire::Json bend_json(const Shaft& shaft, const ShaftBend& bend, const Voice& voice) {
  wire::Json json{
      {"shaft", shaft.spec().name}, {"hangers", hangers_json(bend)}, {"stations", stations_json(shaft, bend)}};
  for (const auto& [key, speeds] : {std::pair{"forward_rad_s", &bend.bending.forward.speeds},
                                    std::pair{"backward_rad_s", &bend.bending.backward.speeds}}) {
    json[key] = wire::Json::array();
    for (const AngularSpeed s : *speeds) json[key].push_back(s.radians_per_second());
  }
  json["rotors"] = effects_json(shaft, bend);
  for (const auto& [key, list] :
       {std::pair{"findings", &bend.bending.findings}, std::pair{"taken", &bend.bending.of.taken}}) {
    json[key] = wire::Json::array();
    for (const Finding& f : *list) json[key].push_back(wire::to_json(f, voice));
  }
  json["workings"] = wire::Json::array();
  for (const Working& working : bend.workings) json["workings"].push_back(wire::to_json(working, voice));
  wire::add_doubts(json, bend.doubts, voice);
  return json;
}

Result<std::string> response_csv(const Shaft& shaft, const ShaftBend& bend, const ResponseAsked& asked) {
  const Result<beam::SpeedRange> range = range_of(shaft, asked);
  if (!range) return tl::unexpected(range.error());
  const auto points = beam::response_of(shaft, bend.bending.of, *range);
  if (!points) return tl::unexpected(points.error());
  return csv_of(shaft, bend, *points);
}

}  // namespace flatwise::view
