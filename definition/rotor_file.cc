// [rotor]: bearing, hub, halves, prices; and the materials.
#include <array>

#include "core/bearings/rim_play.h"
#include "core/fits/iso286.h"
#include "definition/shaft_parts.h"

namespace flatwise::definition {
namespace {

struct KnownMaterial {
  std::string_view name;
  double youngs_modulus_gpa, poisson, yield_mpa, expansion;
};
// Elastic constants: Shigley's Mechanical Engineering Design, table A-5 (from memory). Yield: the weakest common grade of
// its kind (mild steel EN 10025 S235; 0.1 % proof of EN-GJL-200, EN 1561; EN AW-6082 T6, EN 755-2), from memory.
// Expansion: handbook averages, spread about 10 %.
constexpr std::array<KnownMaterial, 3> kMaterials{{
    {"steel", 207, 0.292, 235, 11.5e-6},
    {"cast_iron", 100, 0.211, 130, 10.5e-6},
    {"aluminium", 71.7, 0.333, 240, 23e-6},
}};
constexpr std::string_view kMaterialReason =
    "common values of the material: the weakest usual grade; handbook, from memory";

struct Iso2768Row {
  double up_to_mm, deviation_mm;
};
// ISO 2768-1:1989 table 1, class m (medium); from memory.
constexpr std::array<Iso2768Row, 8> kMedium{
    {{3, 0.1}, {6, 0.1}, {30, 0.2}, {120, 0.3}, {400, 0.5}, {1000, 0.8}, {2000, 1.2}, {4000, 2.0}}};

Length general_tolerance(Length nominal) {
  for (const Iso2768Row& row : kMedium)
    if (nominal <= millimetres(row.up_to_mm)) return millimetres(row.deviation_mm);
  return millimetres(kMedium.back().deviation_mm);
}

Material own_material(const Section& s, std::string name) {
  Material m;
  m.name = std::move(name);
  m.youngs_modulus = Pressure::from_si(s.si("youngs_modulus"));
  m.poisson = s.si("poisson");
  m.yield = Pressure::from_si(s.si("yield"));
  m.expansion_per_kelvin = s.si("expansion");
  m.expansion_relative_half_width = s.si("expansion_half_width");
  return m;
}

Material read_material(ShaftFile& to, const Section& hub) {
  const std::string name = hub.text("material");
  if (!hub.has("material") || name.empty()) return {};
  const Section all{to.file, "shaft_file", &to.file.root(), {}};
  std::vector<std::string_view> known;
  if (const auto* node = all.node("material"); node && node->is_table()) {
    for (const auto& [key, inner] : *node->as_table()) {
      known.push_back(key.str());
      if (key.str() != name || !inner.is_table()) continue;
      Section own{to.file, "material", inner.as_table(), "material." + name};
      return own_material(own.note_in(&to.spec.origins, "material." + name), name);
    }
  }
  for (const KnownMaterial& m : kMaterials) {
    known.push_back(m.name);
    if (m.name != name) continue;
    hub.note("material.values", {OriginKind::assumed, std::string{kMaterialReason}});
    return {name, gigapascals(m.youngs_modulus_gpa), m.poisson, megapascals(m.yield_mpa), m.expansion, 0.1};
  }
  Args args{{"name", name}, {"known", std::vector<std::string>{known.begin(), known.end()}}};
  if (const auto near = meant(name, known); !near.empty()) args.emplace_back("near", std::string{near});
  hub.problem(Code{"definition.unknown_material"}, "material", std::move(args));
  return {};
}

/// Nobody can press a ring on a hub without its thickness; where it is not stated it follows from d and D.
Length ring_inside(const Section& s, const Bearing& b) {
  if (s.has("outer_ring_inside")) return s.length("outer_ring_inside");
  s.note("outer_ring_inside", {OriginKind::assumed, std::string{s.field("outer_ring_inside").assumed_from}});
  return bearings::estimated_ring_inside(b.bore, b.outside);
}

template <typename Quantity>
std::optional<Quantity> if_stated(const Section& s, std::string_view key) {
  if (!s.has(key)) return std::nullopt;
  return Quantity::from_si(s.si(key));
}
std::optional<double> number_if_stated(const Section& s, std::string_view key) {
  return s.has(key) ? std::optional{s.si(key)} : std::nullopt;
}

/// A problem of the kernel is one of the key behind it.
std::string_view key_of(std::string_view field) {
  if (field == "ball") return "ball_diameter";
  if (field == "pitch") return "pitch_diameter";
  if (field == "inner_groove") return "groove_inner";
  if (field == "outer_groove") return "groove_outer";
  return field == "balls" ? "balls" : "D";
}

BearingInside read_inside(const ShaftFile& to, const Section& s, const Bearing& b) {
  BearingInside inside{.ball_diameter = if_stated<Length>(s, "ball_diameter"),
                       .pitch_diameter = if_stated<Length>(s, "pitch_diameter"),
                       .groove_inner = number_if_stated(s, "groove_inner"),
                       .groove_outer = number_if_stated(s, "groove_outer"),
                       .dynamic_rating = if_stated<Force>(s, "dynamic_rating"),
                       .static_rating = if_stated<Force>(s, "static_rating")};
  if (s.has("balls")) inside.balls = static_cast<int>(s.whole("balls"));
  const bool stated = inside.balls || inside.ball_diameter || inside.pitch_diameter;
  if (!stated || !to.file.sound()) return inside;
  auto sound = bearings::estimated_bearing(b.bore, b.outside, inside);
  if (sound) return inside;
  std::string_view key = key_of(sound.error().field);
  for (const std::string_view other : {"balls", "ball_diameter", "pitch_diameter"})
    if (!s.has(key)) key = other;  // What was estimated cannot be mended: what was stated can.
  to.file.add(std::move(sound.error()), s.path(key), *s.node(key));
  return inside;
}

BearingCare read_care(const Section& s) {
  BearingCare care{.viscosity = if_stated<Viscosity>(s, "viscosity"),
                   .reliability = number_if_stated(s, "reliability")};
  if (s.has("cleanliness")) care.cleanliness = static_cast<Cleanliness>(s.word("cleanliness"));
  if (s.has("inner_warmer")) care.inner_warmer = kelvins(s.si("inner_warmer"));
  return care;
}

Bearing read_bearing(const ShaftFile& to, const Section& s) {
  Bearing b;
  b.designation = s.text("designation");
  b.bore = s.length("d");
  b.outside = s.length("D");
  b.width = s.length("B");
  b.clearance = static_cast<ClearanceGroup>(s.word("clearance"));
  b.tolerance = static_cast<ToleranceClass>(s.word("tolerance"));
  b.permissible_misalignment = radians(s.si("misalignment"));
  b.greatest_heating = kelvin(s.si("greatest_heating"));
  b.outer_ring_inside = ring_inside(s, b);
  b.inside = read_inside(to, s, b);
  b.care = read_care(s);
  // The adapter halves stand between shaft and inner ring.
  const Length across = to.spec.profile.across_flats;
  if (s.has("d") && b.bore > Length{} && across >= b.bore)
    s.problem(Code{"definition.bearing_under_shaft"}, "d", {{"value", any(b.bore)}, {"across", any(across)}});
  return b;
}

Limits limits_from_code(ShaftFile& to, const Section& part, Length nominal, std::string& code_said) {
  code_said = part.text("fit");
  const auto parsed = fits::parse_fit_class(code_said);
  Result<Limits> limits = !parsed           ? tl::unexpected(parsed.error())
                          : parsed->nominal ? fits::limits_of_fit(code_said)
                                            : fits::limits_of_fit(nominal, code_said);
  if (limits) return *limits;
  to.file.add(std::move(limits.error()), part.path("fit"), *part.node("fit"));
  return {};
}

/// How a part's limits are written, and what is said where they are not.
struct LimitKeys {
  std::string_view least, greatest;
  Code missing;
};

// Either a fit code or both limits, from the uppermost table that has any of them. None, with its problem told, where there are none.
std::optional<Limits> read_limits(ShaftFile& to, const Section& part, Length nominal, const LimitKeys& keys,
                                  std::string& code_said) {
  const bool code = part.has("fit"), least = part.has(keys.least), greatest = part.has(keys.greatest);
  if (code && (least || greatest)) {
    part.problem(Code{"definition.fit_and_limits"}, "fit",
                 {{"least", std::string{keys.least}}, {"greatest", std::string{keys.greatest}}});
    return std::nullopt;
  }
  if (code) return limits_from_code(to, part, nominal, code_said);
  if (least && greatest) return Limits{part.length(keys.least), part.length(keys.greatest)};
  if (part.table()) part.problem(keys.missing, least ? keys.least : greatest ? keys.greatest : "fit", {});
  return std::nullopt;
}

void read_bore(ShaftFile& to, const Section& hub, Length bearing_outside, Hub& out) {
  const LimitKeys keys{"bore_least", "bore_greatest", Code{"definition.no_bore"}};
  if (const auto limits = read_limits(to, hub, bearing_outside, keys, out.fit_code)) out.bore = *limits;
}

void read_seat(ShaftFile& to, const Section& rotor, Rotor& out) {
  const Section seat = rotor.table("seat").first_with({"fit", "least", "greatest"});
  if (!seat.table()) return;
  const LimitKeys keys{"least", "greatest", Code{"definition.no_seat"}};
  out.seat = read_limits(to, seat, out.bearing.bore, keys, out.seat_code);
  if (out.seat && out.seat->least > out.seat->greatest) seat.problem(Code{"definition.limits_crossed"}, "least", {});
}

Length form_limit(const Section& hub, std::string_view key, const Limits& bore) {
  if (hub.has(key)) return hub.length(key);
  hub.note(key, {OriginKind::assumed, std::string{hub.field(key).assumed_from}});
  return (bore.greatest - bore.least) / 2.0;
}

Hub read_hub(ShaftFile& to, const Section& rotor, Length bearing_outside) {
  const Section hub = rotor.table("hub");
  Hub h;
  read_bore(to, hub.first_with({"fit", "bore_least", "bore_greatest"}), bearing_outside, h);
  h.outside = hub.length("outside");
  h.ovality_limit = form_limit(hub, "ovality", h.bore);
  h.taper_limit = form_limit(hub, "taper", h.bore);
  h.roughness_loss = hub.length("roughness_loss");
  h.material = read_material(to, hub);
  return h;
}

Toleranced read_half(const Section& rotor, std::optional<Length> stated) {
  const Section half = rotor.table("half");
  Length nominal = half.length("length");
  if (!half.has("length") && stated) {
    nominal = *stated / 2.0;
    half.note("length", {OriginKind::computed, "half of the rotor's length in the stack"});
  }
  Origin origin;
  const Toleranced read = read_toleranced(half, {.nominal = nominal, .fallback = std::nullopt}, &origin);
  half.note("tolerance", origin);
  return read;
}

}  // namespace

Priced read_priced(ShaftFile& to, const Section& section, std::string_view part_key) {
  Priced priced;
  priced.part_number = section.text(part_key);
  const auto price = section.quantity("price");
  if (!price) return priced;
  priced.price = price->value.si;
  const std::size_t end = price->typed.find_last_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
  if (end == std::string::npos || end < 2) return priced;
  const std::string currency = price->typed.substr(end - 2, 3);
  if (to.spec.currency.empty()) to.spec.currency = currency;
  if (to.spec.currency != currency)
    section.problem(Code{"definition.two_currencies"}, "price", {{"currency", currency}, {"first", to.spec.currency}});
  return priced;
}

Toleranced read_toleranced(const Section& section, const ToleranceRule& rule, Origin* origin) {
  const Section s = section.first_with({"tolerance", "above", "below"});
  const bool both = s.has("tolerance"), apart = s.has("above") || s.has("below");
  if (both && apart) s.problem(Code{"definition.tolerance_twice"}, "tolerance", {});
  if (origin && (both || apart))
    *origin = s.file().given_at(*s.node(both ? "tolerance" : s.has("above") ? "above" : "below"));
  if (both) {
    const Length t = s.length("tolerance");
    return {rule.nominal, t, t};
  }
  if (apart) return {rule.nominal, s.length("above"), s.length("below")};
  if (origin)
    *origin = rule.fallback ? rule.fallback_origin
                            : Origin{OriginKind::assumed, std::string{section.field("tolerance").assumed_from}};
  const Length t = rule.fallback ? *rule.fallback : general_tolerance(rule.nominal);
  return {rule.nominal, t, t};
}

Rotor read_rotor(ShaftFile& to, const Section& s, std::optional<Length> stated) {
  Rotor r;
  r.lean = radians(s.si("lean"));
  r.mark = s.text("mark");
  r.tip_radius = s.length("tip_radius");
  r.tine_width = s.length("tine_width");
  r.tines = static_cast<int>(s.whole("tines"));
  r.mass = Mass::from_si(s.si("mass"));
  const Section inertia = s.table("inertia");
  r.across = Inertia::from_si(inertia.si("across"));
  r.along = Inertia::from_si(inertia.si("along"));
  r.mass_offset = s.length("mass_offset");
  r.half = read_half(s, stated);
  r.bearing = read_bearing(to, s.table("bearing"));
  r.hub = read_hub(to, s, r.bearing.outside);
  read_seat(to, s, r);
  r.snap_rings = static_cast<SnapRings>(s.whole("snap_rings"));
  r.seals = static_cast<int>(s.whole("seals"));
  r.adapter_set = read_priced(to, s.table("adapter_set"));
  r.seal = read_priced(to, s.table("seal"));
  r.snap_ring = read_priced(to, s.table("snap_ring"));
  return r;
}

}  // namespace flatwise::definition
