#include <string>
#include <utility>

#include "core/beam/figures.h"
#include "core/beam/figures_parts.h"
#include "core/dynamics/resultants.h"

namespace flatwise::beam {
namespace {

/// A field of a rotor: its own, or the one all rotors share.
Origin rotor_origin(const Shaft& shaft, int number, const std::string& field) {
  const std::string own = "rotors[" + std::to_string(number - 1) + "]." + field;
  return shaft.spec().origins.contains(own) ? shaft.origin(own) : shaft.origin("rotor." + field);
}

class Inputs {
 public:
  Inputs(const Shaft& shaft, const ShaftBeam& of) : shaft_{shaft}, of_{of} {}

  std::vector<Input> all(bool with_loads) {
    add_bar();
    for (std::size_t i = 0; i < of_.hangers.size(); ++i) add_hanger(i);
    for (std::size_t i = 0; i < of_.bodies.size(); ++i) add_body(i);
    add_unbalances();
    if (with_loads) add_loads();
    return std::move(in_);
  }

 private:
  void add(const char* name, AnyQuantity value, Origin origin) { in_.push_back(given(name, value, std::move(origin))); }
  [[nodiscard]] Origin station_origin(int station, const char* field) const {
    return shaft_.origin("stations[" + std::to_string(station) + "]." + field);
  }

  void add_bar() {
    const ShaftSpec& s = shaft_.spec();
    add("speed", any(s.speed), shaft_.origin("shaft.speed"));
    add("length", any(shaft_.total_length()), {OriginKind::computed, "all parts of the stack"});
    add("flats", any_count(s.profile.flats), shaft_.origin("shaft.flats"));
    add("across", any(s.profile.across_flats), shaft_.origin("shaft.across"));
    add("youngs-modulus", any(s.bar.youngs_modulus), shaft_.origin("bar.youngs_modulus"));
    add("poisson", any_ratio(s.bar.poisson), shaft_.origin("bar.poisson"));
    add("density", any(s.bar.density), shaft_.origin("bar.density"));
  }

  void add_hanger(std::size_t i) {
    const Hanger& h = of_.beam.hangers[i];
    const Origin origin = station_origin(of_.hangers[i].station, "stiffness");
    const Origin at{h.stiffness ? OriginKind::computed : origin.kind, "middle of " + of_.hangers[i].label};
    add(h.stiffness ? "soft-hanger" : "hanger", any(h.at), at);
    if (h.stiffness) add("stiffness", any(*h.stiffness), origin);
  }

  void add_body(std::size_t i) {
    const Body& b = of_.beam.bodies[i];
    const Named& named = of_.bodies[i];
    const Station& st = shaft_.stations()[static_cast<std::size_t>(named.station)];
    const bool rotor = st.kind == StationKind::rotor;
    const auto from = [&](const char* field) {
      return rotor ? rotor_origin(shaft_, st.rotor + 1, field) : station_origin(named.station, "mass");
    };
    add("position", any(b.at), {OriginKind::computed, named.label});
    add("mass", any(b.mass), from("mass"));
    add("mass-offset", any(b.mass_offset), from("mass_offset"));
    add("inertia-across", any(b.across), from("inertia.across"));
    add("inertia-along", any(b.along), from("inertia.along"));
    add("lean", any(of_.leans[i]), from("lean"));
    add("azimuth", any(of_.azimuths[i]), {OriginKind::given, named.label});
    add_spinning(rotor, named.label);
  }

  void add_spinning(bool rotor, const std::string& label) {
    const bool rolling = dynamics::spinning_of(shaft_) == dynamics::Spinning::rolling;
    const Origin origin = !rotor    ? Origin{OriginKind::computed, label}
                          : rolling ? shaft_.origin("shaft.travel")
                                    : Origin{OriginKind::assumed, "no travel and rolling radius given"};
    in_.push_back(given("spinning", !rotor ? "with-shaft" : rolling ? "rolling" : "held", origin));
    if (!rolling || spin_said_) return;
    spin_said_ = true;
    add("rolling-speed", any(dynamics::spin_of(shaft_, 1)), {OriginKind::computed, "travel over rolling radius"});
  }

  void add_unbalances() {
    for (const FixedUnbalance& u : shaft_.spec().unbalances) {
      const std::string& label = shaft_.stations()[static_cast<std::size_t>(u.station)].label;
      add("unbalance-at", any(shaft_.middle_of(u.station)), {OriginKind::computed, label});
      add("unbalance", any(u.amount), {OriginKind::given, label});
      add("unbalance-azimuth", any(azimuth_of_flat(u.flat, shaft_.flats())), {OriginKind::given, label});
    }
  }

  void add_loads() {
    for (const Load& l : of_.loads) {
      add("load-at", any(l.at), {OriginKind::given, "load"});
      add("load", any(l.force), {OriginKind::given, "load"});
      add("load-direction", any(l.direction), {OriginKind::given, "load"});
    }
  }

  const Shaft& shaft_;
  const ShaftBeam& of_;
  std::vector<Input> in_;
  bool spin_said_ = false;
};

}  // namespace

Result<std::vector<Working>> bending_workings(const Shaft& shaft, const ShaftBeam& of) {
  const ShaftSpec& s = shaft.spec();
  std::vector<Working> out;
  const auto add = [&](const FigureSpec& figure, std::vector<Input> in) -> std::optional<Problem> {
    Results<Working> working = evaluate(figure, std::move(in));
    if (!working) return working.error().front();
    out.push_back(*std::move(working));
    return std::nullopt;
  };
  std::optional<Problem> wrong =
      add(section_figure(), {given("flats", any_count(s.profile.flats), shaft.origin("shaft.flats")),
                             given("across", any(s.profile.across_flats), shaft.origin("shaft.across")),
                             given("poisson", any_ratio(s.bar.poisson), shaft.origin("bar.poisson"))});
  if (!wrong) wrong = add(deflection_figure(), Inputs{shaft, of}.all(true));
  if (!wrong) wrong = add(reactions_figure(), Inputs{shaft, of}.all(true));
  if (!wrong) wrong = add(critical_figure(), Inputs{shaft, of}.all(false));
  if (wrong) return tl::unexpected(*std::move(wrong));
  return out;
}

}  // namespace flatwise::beam
