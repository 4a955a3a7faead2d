#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/files.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "core/beam/figures.h"
#include "core/timing/map.h"
#include "core/units/csv.h"
#include "core/units/parse.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

constexpr int kSpeedsTold = 200;
constexpr double kFromShare = 0.1, kToShare = 2;

/// Tilt azimuths as the definition's pattern wants them.
Result<std::vector<Angle>> tilt_of(const Shaft& shaft) {
  const Result<timing::Map> map = timing::map(shaft);
  if (!map) return tl::unexpected(map.error());
  std::vector<Angle> tilt;
  for (const timing::RotorMarks& r : map->rotors) tilt.push_back(azimuth_of_flat(r.flat_a, shaft.flats()));
  return tilt;
}

/// All that is shown of one shaft.
struct Bend {
  Shaft shaft;
  beam::ShaftBending bending;
  std::vector<Working> workings;
};

Results<Bend> bend_of(const Context& context, const BendOptions& options) {
  const auto failed = [](Problem p) { return tl::unexpected(std::vector<Problem>{std::move(p)}); };
  Results<Shaft> shaft = load_shaft(context, options.shaft_file);
  if (!shaft) return tl::unexpected(std::move(shaft.error()));
  const auto tilt = tilt_of(*shaft);
  if (!tilt) return failed(tilt.error());
  auto bending = beam::bending_of(*shaft, *tilt);
  if (!bending) return failed(bending.error());
  auto workings = beam::bending_workings(*shaft, bending->of);
  if (!workings) return failed(workings.error());
  return Bend{*std::move(shaft), *std::move(bending), *std::move(workings)};
}

Result<beam::SpeedRange> range_of(const Shaft& shaft, const BendOptions& options) {
  const double own = shaft.spec().speed.radians_per_second();
  beam::SpeedRange range{radians_per_second(kFromShare * own), radians_per_second(kToShare * own), kSpeedsTold};
  for (const auto& [text, field, into] :
       {std::tuple{&options.from, "--from", &range.from}, std::tuple{&options.to, "--to", &range.to}}) {
    if (text->empty()) continue;
    const Result<Entered> read = parse_quantity(*text, Kind::angular_speed, field);
    if (!read) return tl::unexpected(read.error());
    *into = radians_per_second(read->value.si);
  }
  if (!options.speeds.empty()) range.speeds = std::stoi(options.speeds);  // Digits only: the command line saw to it.
  return range;
}

/// Figures for programs: a full stop, no unit in the cells, the unit in the head.
std::string csv_of(const Bend& bend, const std::vector<beam::ResponsePoint>& points) {
  const auto cell = [](double v) { return "," + nlohmann::json(v).dump(); };
  std::string out = "speed_r_min";
  for (const beam::Named& h : bend.bending.of.hangers) out += "," + csv_text(printable(h.label + " turning_n"));
  for (int r = 1; r <= bend.shaft.rotor_count(); ++r) out += ",rotor_" + std::to_string(r) + "_turning_m";
  out += "\n";
  for (const beam::ResponsePoint& p : points) {
    out += nlohmann::json(p.speed.turns_per_minute()).dump();
    for (const Force f : p.hangers) out += cell(f.si());
    for (const Length x : p.out) out += cell(x.si());
    out += "\n";
  }
  return out;
}

std::optional<Problem> write_response(const Bend& bend, const BendOptions& options) {
  if (options.csv.empty()) return std::nullopt;
  const Result<beam::SpeedRange> range = range_of(bend.shaft, options);
  if (!range) return range.error();
  const auto points = beam::response_of(bend.shaft, bend.bending.of, *range);
  if (!points) return points.error();
  const auto written = write_file(options.csv, csv_of(bend, *points));
  return written ? std::nullopt : std::optional{written.error()};
}

// --- As text -----------------------------------------------------------------------------------------------------------

class Text {
 public:
  Text(const Context& context, const Bend& bend) : c_{context}, b_{bend} {}

  std::string all() const {
    std::string out = toned(printable(b_.shaft.spec().name), Tone::strong, c_.colour) + "\n";
    if (b_.shaft.spec().invented) out += word("cli.invented", c_.voice) + "\n";
    out += lay_out(hangers()) + "\n" + lay_out(stations()) + "\n" + lay_out(criticals()) + "\n" + lay_out(shares()) +
           "\n" + wrap(word("cli.bend_note", c_.voice), c_.width) + "\n\n";
    for (const auto* list : {&b_.bending.findings, &b_.bending.of.taken})
      for (const Finding& f : *list) out += render(c_, f);
    for (const Working& w : b_.workings)
      if (c_.why) out += "\n" + render(c_, w);
    return out;
  }

 private:
  std::string q(AnyQuantity v) const { return render_value(c_, v, {}); }
  std::string w(std::string_view id) const { return word(id, c_.voice); }

  Table hangers() const {
    Table t{.head = {w("cli.head.hanger"), w("cli.head.at"), w("cli.head.rest"), w("cli.head.towards"),
                     w("cli.head.turning"), w("cli.head.azimuth")},
            .rows = {},
            .right = "lrrrrr"};
    for (std::size_t i = 0; i < b_.bending.of.hangers.size(); ++i) {
      const beam::Reaction &rest = b_.bending.at_rest.reactions[i], &turning = b_.bending.turning.reactions[i];
      t.rows.push_back({printable(b_.bending.of.hangers[i].label), q(any(rest.at)), q(any(rest.size)),
                        q(any(rest.direction)), q(any(turning.size)), q(any(turning.direction))});
    }
    return t;
  }

  Table stations() const {
    Table t{.head = {w("cli.head.station"), w("cli.head.at"), w("cli.head.bends_rest"), w("cli.head.bends_turning"),
                     w("cli.head.stress_rest"), w("cli.head.stress_turning"), w("cli.head.torsion"),
                     w("cli.head.together")},
            .rows = {},
            .right = "lrrrrrrr"};
    for (std::size_t i = 0; i < b_.shaft.stations().size(); ++i) {
      const beam::StressAt& s = b_.bending.stresses[i];
      t.rows.push_back({printable(b_.shaft.stations()[i].label), q(any(s.at)),
                        q(any(b_.bending.rest_of_station[i].out)), q(any(b_.bending.turning_of_station[i].out)),
                        q(any(s.at_rest)), q(any(s.turning)), b_.bending.of.torques.empty() ? "–" : q(any(s.torsion)),
                        q(any(s.equivalent))});
    }
    return t;
  }

  Table criticals() const {
    Table t{
        .head = {w("cli.head.critical"), w("cli.head.forward"), w("cli.head.backward")}, .rows = {}, .right = "rrr"};
    const auto &f = b_.bending.forward.speeds, &back = b_.bending.backward.speeds;
    for (std::size_t i = 0; i < std::max(f.size(), back.size()); ++i)
      t.rows.push_back(
          {std::to_string(i + 1), i < f.size() ? q(any(f[i])) : "–", i < back.size() ? q(any(back[i])) : "–"});
    return t;
  }

  /// What each rotor alone turns each hanger with.
  Table shares() const {
    Table t{.head = {w("cli.head.rotor")}, .rows = {}, .right = "r"};
    for (const beam::Named& h : b_.bending.of.hangers) {
      t.head.push_back(printable(h.label));
      t.right += 'r';
    }
    for (int r = 0; r < b_.shaft.rotor_count(); ++r) {
      t.rows.push_back({std::to_string(r + 1)});
      for (const beam::Share& s : b_.bending.effects.shares[static_cast<std::size_t>(r)])
        t.rows.back().push_back(q(any(s.size)));
    }
    return t;
  }

  const Context& c_;
  const Bend& b_;
};

// --- As JSON -----------------------------------------------------------------------------------------------------------

wire::Json hangers_json(const Bend& bend) {
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

wire::Json stations_json(const Bend& bend) {
  wire::Json list = wire::Json::array();
  for (std::size_t i = 0; i < bend.shaft.stations().size(); ++i) {
    const beam::StressAt& s = bend.bending.stresses[i];
    list.push_back({{"part", bend.shaft.stations()[i].label},
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

wire::Json effects_json(const Bend& bend) {
  const beam::Effects& e = bend.bending.effects;
  wire::Json list = wire::Json::array();
  for (int r = 0; r < bend.shaft.rotor_count(); ++r) {
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

wire::Json bend_json(const Context& context, const Bend& bend) {
  wire::Json json{
      {"shaft", bend.shaft.spec().name}, {"hangers", hangers_json(bend)}, {"stations", stations_json(bend)}};
  for (const auto& [key, speeds] : {std::pair{"forward_rad_s", &bend.bending.forward.speeds},
                                    std::pair{"backward_rad_s", &bend.bending.backward.speeds}}) {
    json[key] = wire::Json::array();
    for (const AngularSpeed s : *speeds) json[key].push_back(s.radians_per_second());
  }
  json["rotors"] = effects_json(bend);
  for (const auto& [key, list] :
       {std::pair{"findings", &bend.bending.findings}, std::pair{"taken", &bend.bending.of.taken}}) {
    json[key] = wire::Json::array();
    for (const Finding& f : *list) json[key].push_back(wire::to_json(f, context.voice));
  }
  json["workings"] = wire::Json::array();
  for (const Working& working : bend.workings) json["workings"].push_back(wire::to_json(working, context.voice));
  return json;
}

}  // namespace

Status bend_shaft(const Context& context, const BendOptions& options) {
  const Results<Bend> bend = bend_of(context, options);
  if (!bend) return refuse(context, bend.error());
  if (auto problem = write_response(*bend, options)) return refuse(context, *std::move(problem));
  *context.out << (context.json ? wire::dump(bend_json(context, *bend)) : Text{context, *bend}.all());
  Severity worst = Severity::note;
  for (const Finding& f : bend->bending.findings) worst = std::max(worst, f.severity);
  return status_of(worst);
}

}  // namespace flatwise::cli
