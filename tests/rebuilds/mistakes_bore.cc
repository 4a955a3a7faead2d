// Worn, oval and tapered bores, and hubs measured hot.
#include <cmath>

#include "tests/rebuilds/mistakes.h"

namespace rebuilds {
namespace {

/// Half of the mistakes just out, where a gauge is tried the hardest; the rest well out.
double how_far(double most, Random& random) {
  return random.chance(0.4) ? random.between(0, 0.2 * most) : random.between(0.2 * most, most);
}

/// What noise may hide of a fitted form's amplitude, at most: noise squared over the amplitude, and two of it near nought.
double form_allowance(double scatter, double oval) {
  return std::min(2 * scatter, 2 * scatter * scatter / std::max(oval / 2, 1e-9));
}

void promise(Mistake& m, double beyond, double u, double guard, double factor) {
  m.promised = normal_cdf((beyond - guard) / u);
  m.pass_allowed = normal_cdf(-factor - beyond / (1.25 * u));
}

std::string plane_word(int plane) { return plane == 0 ? "metrology.plane_a" : "metrology.plane_b"; }

void name(Mistake& m, const char* code, int rotor, int plane, const char* what) {
  std::vector<std::pair<std::string, std::string>> args, near{{"what", what}};
  if (plane >= 0) args = {{"plane", plane_word(plane)}};
  near.insert(near.end(), args.begin(), args.end());
  m.out = {{{code}, at_rotor(rotor), args}};
  m.cannot_tell = {{{"metrology.cannot_tell"}, at_rotor(rotor), near},
                   {{"metrology.readings_disagree"}, at_rotor(rotor), args}};
  m.promised = 0;
}

void wear(Rebuild& r, Mistake& m, Rotor& rotor, Random& random) {
  const int plane = random.whole(0, 1);
  const double beyond = how_far(40e-6, random);
  Plane& p = rotor.planes[plane];
  p.mean = r.drawing.bore_greatest.si - p.oval / 2 + beyond;
  m.told = "bore of rotor " + std::to_string(rotor.number) + " worn by " + in_micrometres(beyond, 1).text;
  name(m, "metrology.bore_over", rotor.number, plane, "metrology.greatest");
  m.after = [=, number = rotor.number, oval = p.oval](Rebuild& to, Mistake& mine, Random&) {
    const BoreKnown known = bore_known(to, to.rotor(number));
    const double guard = known.student * known.size() + form_allowance(known.scatter, oval);
    promise(mine, beyond, known.size(), guard, known.factor);
  };
}

void make_oval(Rebuild& r, Mistake& m, Rotor& rotor, Random& random) {
  const int plane = random.whole(0, 1);
  const double beyond = how_far(25e-6, random);
  Plane& p = rotor.planes[plane];
  p.oval = r.drawing.ovality_limit + beyond;
  p.mean = (r.drawing.bore_least.si + r.drawing.bore_greatest.si) / 2;
  m.told = "bore of rotor " + std::to_string(rotor.number) + " oval by " + in_micrometres(p.oval, 1).text;
  name(m, "metrology.oval", rotor.number, plane, "metrology.ovality");
  m.after = [=, number = rotor.number, oval = p.oval](Rebuild& to, Mistake& mine, Random&) {
    const BoreKnown known = bore_known(to, to.rotor(number));
    const double guard = known.student * known.oval() + 2 * form_allowance(known.scatter, oval);
    promise(mine, beyond, known.oval(), guard, known.factor);
  };
}

void make_taper(Rebuild& r, Mistake& m, Rotor& rotor, Random& random) {
  const double beyond = how_far(20e-6, random), taper = r.drawing.taper_limit + beyond;
  const double middle = (r.drawing.bore_least.si + r.drawing.bore_greatest.si) / 2;
  const bool to_b = random.chance(0.5);
  rotor.planes[0].mean = middle + (to_b ? -0.5 : 0.5) * taper;
  rotor.planes[1].mean = middle + (to_b ? 0.5 : -0.5) * taper;
  m.told = "bore of rotor " + std::to_string(rotor.number) + " tapered by " + in_micrometres(taper, 1).text;
  name(m, "metrology.taper", rotor.number, -1, "metrology.taper_what");
  m.after = [=, number = rotor.number](Rebuild& to, Mistake& mine, Random&) {
    const BoreKnown known = bore_known(to, to.rotor(number));
    const double u = std::sqrt(2 * (known.scatter * known.scatter / 4 + known.resolution * known.resolution));
    promise(mine, beyond, known.taper(), known.student * u, known.factor);
  };
}

void heat(Mistake& m, Rotor& rotor, Random& random) {
  rotor.part_c = random.between(39, 60);  // Four kelvins past the limit: no thermometer here takes that for cool.
  rotor.part_taken = true;
  m.told = "hub of rotor " + std::to_string(rotor.number) + " measured at " + in_celsius(rotor.part_c, 0).text;
  m.not_out = {at_rotor(rotor.number), "metrology."};
  for (const int plane : {0, 1})
    m.names.push_back({{"metrology.too_far_from_20"}, at_rotor(rotor.number), {{"plane", plane_word(plane)}}});
}

}  // namespace

bool put_in_bore(Rebuild& r, Mistake& m, Random& random) {
  if (has_claim(r, "overdue")) return false;
  const int number = free_rotor(r, "bore", random);
  if (number == 0) return false;
  Rotor& rotor = r.rotor(number);
  if (m.kind == Kind::hot_part) {
    heat(m, rotor, random);
    return true;
  }
  r.claimed.emplace_back("gauge-limited");
  if (m.kind == Kind::bore_worn) wear(r, m, rotor, random);
  if (m.kind == Kind::bore_oval) make_oval(r, m, rotor, random);
  if (m.kind == Kind::bore_tapered) make_taper(r, m, rotor, random);
  return true;
}

}  // namespace rebuilds
