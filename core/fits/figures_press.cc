#include <string>

#include "core/fits/figures_parts.h"

namespace flatwise::fits {
namespace {

constexpr double kUsTon = 2000 * 4.4482216152605;  // N; 2000 lbf, exact.
constexpr double kTonneForce = 9806.65;            // N; exact.

Finding hub_yields(Severity severity, Pressure pressure, Pressure onset) {
  return {Code{"fits.hub_yields"},
          severity,
          {{"pressure", any(pressure)}, {"onset", any(onset)}},
          {},
          Message{Code{"fits.gauge_bore_again"}, {}}};
}

Result<Computed> compute_press_pressure(const Given& in) {
  Computed out;
  const auto joint = joint_from(in, out.findings);
  if (!joint) return as_input(joint.error());
  const Length left = after_flattening(length_of(in, "interference"), length_of(in, "roughness-loss"));
  const auto pressure = contact_pressure(*joint, left);
  CORE_CHECK(pressure);
  const auto stress = hoop_stress(*joint, *pressure);
  const auto onset = yield_onset(*joint, pascals(in.si("hub-yield")));
  const auto raceway = outer_raceway_change(*joint, *pressure);
  CORE_CHECK(stress && onset && raceway);
  out.values = {any(*pressure), any(stress->hub),         any(stress->ring),
                any(*onset),    any(stress->ring_inside), any(-*raceway)};
  if (*pressure > *onset) out.findings.push_back(hub_yields(Severity::out, *pressure, *onset));
  return out;
}

FigureSpec press_pressure_figure() {
  return {.name = "press-pressure",
          .formula =
              "p = (δ − loss) / (d [((D² + d²)/(D² − d²) + ν_o)/E_o + ((d² + d_i²)/(d² − d_i²) − ν_i)/E_i]); hub "
              "hoop p (D² + d²)/(D² − d²); ring hoop −p (d² + d_i²)/(d² − d_i²); yield from Y/2 (1 − d²/D²)",
          .inputs = joined({{from_nought("interference", "δ", Kind::length, 1e-2),
                             from_nought("roughness-loss", "loss", Kind::length, 1e-3)},
                            joint_inputs()}),
          .outputs = {{"pressure", "p", Kind::pressure},
                      {"hub-hoop", "σ_o", Kind::pressure},
                      {"ring-hoop", "σ_i", Kind::pressure},
                      {"yield-onset", "p_Y", Kind::pressure},
                      {"ring-inside-hoop", "σ_ii", Kind::pressure},
                      {"raceway-loss", "Δd_i", Kind::length}},
          .sources = {"Shigley9", "DIN7190-1"},
          .compute = compute_press_pressure,
          .example = {{"interference=45 µm", "roughness-loss=0 µm", "joint-diameter=120 mm", "ring-inside=107 mm",
                       "hub-outside=180 mm", "hub-modulus=110 GPa", "hub-poisson=0.26", "hub-yield=250 MPa"},
                      "pressure=5.608 MPa"}};
}

void judge_force(const PressForce& force, bool from_books, std::vector<Finding>& findings) {
  if (force.hub_yields) findings.push_back(hub_yields(Severity::note, force.pressure_greatest, force.yield_onset));
  if (!(force.greatest > Force{}))
    findings.push_back(
        {Code{"fits.nothing_to_press"}, Severity::out, {}, {}, Message{Code{"fits.do_not_fit_loose"}, {}}});
  else if (from_books || force.from_nought)
    findings.push_back(band_hides(force.from_nought));
}

Result<Computed> compute_press_force(const Given& in) {
  Computed out;
  const auto joint = joint_from(in, out.findings);
  if (!joint) return as_input(joint.error());
  const auto force = press_force({.joint = *joint,
                                  .width = length_of(in, "width"),
                                  .roughness_loss = length_of(in, "roughness-loss"),
                                  .interference = {.least = length_of(in, "interference-least"),
                                                   .greatest = length_of(in, "interference-greatest")},
                                  .friction = friction_from(in),
                                  .hub_yield = pascals(in.si("hub-yield"))});
  if (!force) return as_input(force.error());
  out.values = {any(force->least),
                any(force->greatest),
                any_ratio(force->greatest.si() / kUsTon),
                any_ratio(force->greatest.si() / kTonneForce),
                any(force->pressure_least),
                any(force->pressure_greatest),
                any(force->yield_onset),
                any_energy(force->energy_greatest.si())};
  judge_force(*force, in.text("friction-from") == "books", out.findings);
  return out;
}

InputSpec interference_input(std::string_view name, std::string_view symbol) {
  return between(name, symbol, Kind::length, -1e-2, 1e-2);
}

FigureSpec press_force_figure() {
  return {.name = "press-force",
          .formula =
              "F = µ p π d L, p from δ − loss (press-pressure); least with δ_min and µ1, greatest with δ_max and "
              "µ2; work = F L / 2",
          .inputs = joined(
              {{interference_input("interference-least", "δ_min"), interference_input("interference-greatest", "δ_max"),
                from_nought("roughness-loss", "loss", Kind::length, 1e-3), above_nought("width", "L", Kind::length, 2)},
               joint_inputs(),
               friction_inputs()}),
          .outputs = {{"force-least", "F1", Kind::force},
                      {"force-greatest", "F2", Kind::force},
                      {"tonnage", "F2 in US tons", Kind::ratio},
                      {"tonnes-force", "F2 in tonnes", Kind::ratio},
                      {"pressure-least", "p1", Kind::pressure},
                      {"pressure-greatest", "p2", Kind::pressure},
                      {"yield-onset", "p_Y", Kind::pressure},
                      {"work", "W", Kind::energy}},
          .sources = {"Shigley9", "DIN7190-1", "FrictionBooks"},
          .compute = compute_press_force,
          .example = {{"interference-least=15 µm", "interference-greatest=50 µm", "roughness-loss=5 µm", "width=25 mm",
                       "joint-diameter=120 mm", "ring-inside=107 mm", "hub-outside=180 mm", "hub-modulus=110 GPa",
                       "hub-poisson=0.26", "hub-yield=250 MPa"},
                      "force-least=939.7 N"}};
}

// One value for every press, or one a press.
Result<std::vector<double>> per_press(const Given& in, std::string_view name, std::size_t presses) {
  auto values = one_each(in, name, presses);
  if (values && (presses > 0 || !in.has(name))) return *std::move(values);
  return tl::unexpected(Problem{
      Code{"fits.presses_uneven"},
      std::string{name},
      {},
      {{"values", static_cast<std::int64_t>(in.all_si(name).size())}, {"presses", static_cast<std::int64_t>(presses)}},
      std::nullopt});
}

Result<std::vector<FinishedPress>> presses_from(const Given& in) {
  const auto forces = in.all_si("force");
  std::vector<FinishedPress> presses(forces.size());
  const auto fill = [&](std::string_view name, auto put) -> std::optional<Problem> {
    const auto values = per_press(in, name, presses.size());
    if (!values) return values.error();
    for (std::size_t i = 0; i < presses.size(); ++i) put(presses[i], (*values)[i]);
    return std::nullopt;
  };
  using Press = FinishedPress;
  if (auto bad = fill("force", [](Press& p, double v) { p.force = newtons(v); })) return tl::unexpected(*bad);
  if (auto bad = fill("interference", [](Press& p, double v) { p.interference = metres(v); }))
    return tl::unexpected(*bad);
  if (auto bad = fill("joint-diameter", [](Press& p, double v) { p.joint.diameter = metres(v); }))
    return tl::unexpected(*bad);
  if (auto bad = fill("width", [](Press& p, double v) { p.width = metres(v); })) return tl::unexpected(*bad);
  if (auto bad = fill("ring-inside", [](Press& p, double v) { p.joint.ring_inside = metres(v); }))
    return tl::unexpected(*bad);
  if (auto bad = fill("hub-outside", [](Press& p, double v) { p.joint.hub_outside = metres(v); }))
    return tl::unexpected(*bad);
  for (Press& press : presses) {
    press.joint.ring = ring_from(in);
    press.joint.hub = hub_from(in);
  }
  return presses;
}

Finding friction_finding(const ShopFriction& shop) {
  using Standing = ShopFriction::Standing;
  const Args counts{{"presses", shop.presses}, {"missing", shop.missing}, {"wanted", kPressesToNarrow}};
  if (shop.standing == Standing::too_few)
    return {Code{"fits.too_few_presses"}, Severity::note, counts, {}, Message{Code{"fits.record_more"}, counts}};
  if (shop.standing == Standing::too_scattered)
    return {Code{"fits.presses_scatter"}, Severity::note, counts, {}, Message{Code{"fits.look_into_scatter"}, {}}};
  return {Code{"fits.friction_narrowed"}, Severity::note, counts, {}, std::nullopt};
}

Result<Computed> compute_shop_friction(const Given& in) {
  const auto presses = presses_from(in);
  if (!presses) return tl::unexpected(presses.error());
  const auto shop = shop_friction(*presses, length_of(in, "roughness-loss"),
                                  {.least = in.si("book-least"), .greatest = in.si("book-greatest")});
  if (!shop) return as_input(shop.error());
  const bool narrowed = shop->standing == ShopFriction::Standing::narrowed;
  Computed out{.values = {any_ratio(shop->range.least), any_ratio(shop->range.greatest), any_ratio(shop->mean),
                          any_ratio(shop->deviation), any_count(shop->presses), any_count(shop->missing),
                          std::string{narrowed ? "shop" : "books"}}};
  out.findings.push_back(friction_finding(*shop));
  return out;
}

FigureSpec shop_friction_figure() {
  const auto each = [](InputSpec spec) { return optional(repeated(std::move(spec))); };
  auto materials = joint_inputs();
  std::erase_if(materials, [](const InputSpec& s) { return s.kind == Kind::length || s.name == "hub-yield"; });
  return {.name = "shop-friction",
          .formula = "µ_i = F_i / (p_i π d_i L_i); next press: mean ∓ t(0.975, n − 1) s √(1 + 1/n), from eight presses",
          .inputs = joined({{each(above_nought("force", "F_i", Kind::force, kMostForce)),
                             each(above_nought("interference", "δ_i", Kind::length, 1e-2)),
                             each(above_nought("joint-diameter", "d_i", Kind::length, 2)),
                             each(above_nought("width", "L_i", Kind::length, 2)),
                             each(from_nought("ring-inside", "d_ii", Kind::length, 2)),
                             each(above_nought("hub-outside", "D_i", Kind::length, 10)),
                             from_nought("roughness-loss", "loss", Kind::length, 1e-3)},
                            materials,
                            {assumed(above_nought("book-least", "µ1", Kind::ratio, 1), any_ratio(FrictionRange{}.least),
                                     "FrictionBooks"),
                             assumed(above_nought("book-greatest", "µ2", Kind::ratio, 1),
                                     any_ratio(FrictionRange{}.greatest), "FrictionBooks")}}),
          .outputs = {{"friction-least", "µ1", Kind::ratio},
                      {"friction-greatest", "µ2", Kind::ratio},
                      {"mean", "µ", Kind::ratio},
                      {"deviation", "s", Kind::ratio},
                      {"presses", "n", Kind::count},
                      {"missing", "missing", Kind::count},
                      {"friction-from", "from", Kind::ratio, true}},
          .sources = {"Shigley9", "PredictionInterval", "FrictionBooks"},
          .compute = compute_shop_friction,
          .example = {{"force=5.5 kN", "force=5.9 kN", "force=5.2 kN", "force=6.4 kN", "force=5.7 kN", "force=6.1 kN",
                       "force=5.3 kN", "force=5.8 kN", "interference=50 µm", "joint-diameter=120 mm", "width=25 mm",
                       "ring-inside=107 mm", "hub-outside=180 mm", "roughness-loss=5 µm", "hub-modulus=110 GPa",
                       "hub-poisson=0.26"},
                      "friction-least=0.0894"}};
}

}  // namespace

std::vector<FigureSpec> press_figures() {
  return {press_pressure_figure(), press_force_figure(), shop_friction_figure()};
}

}  // namespace flatwise::fits
