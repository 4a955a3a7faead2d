#include "tests/beam/solid.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <numbers>
#include <sstream>

#include "core/units/gravity.h"

namespace flatwise::beam_tests {
namespace {

constexpr double kLongest = 0.02;  // m, of a brick.
constexpr int kPerLayer =
    100;  // Node numbers: layer * 100 + 1 the middle, then corners, then middles of edges; 51 on: between.

/// Corners 1..n at azimuths of the corners, the middle 0; quadrilaterals of two sides each round the middle.
struct Face {
  int flats;
  double corner_m;
  struct At {
    double x, y;
  };
  [[nodiscard]] At corner(int k) const {
    if (k == 0) return {0, 0};
    const double a = 2 * std::numbers::pi * (k - 1) / flats;
    return {corner_m * std::cos(a), corner_m * std::sin(a)};
  }
  [[nodiscard]] int next(int k) const { return k % flats + 1; }
  /// Id of the middle of side k (from corner k to the next), of the spoke to corner k.
  [[nodiscard]] int side(int k) const { return 1 + flats + k; }
  [[nodiscard]] int spoke(int k) const { return 1 + 2 * flats + (k + 1) / 2; }
  [[nodiscard]] int ids() const { return 1 + 2 * flats + flats / 2; }
  [[nodiscard]] At middle(int a, int b) const {
    return {(corner(a).x + corner(b).x) / 2, (corner(a).y + corner(b).y) / 2};
  }
};

std::vector<double> layers_of(const beam::Beam& b) {
  std::vector<double> corners{0, b.stretches.front().length.si()};
  for (const beam::Hanger& h : b.hangers) corners.push_back(h.at.si());
  for (const beam::Body& body : b.bodies) corners.push_back(body.at.si());
  std::ranges::sort(corners);
  std::vector<double> z{0};
  for (const double c : corners) {
    const double from = z.back();
    if (c - from < 1e-6) continue;
    const double parts = std::ceil((c - from) / kLongest);
    for (double k = 1; k <= parts; ++k) z.push_back(from + (c - from) * k / parts);
  }
  return z;
}

class Deck {
 public:
  Deck(const Shaft& shaft, const beam::ShaftBeam& of)
      : of_{of}, face_{shaft.flats(), of.beam.stretches.front().section.corner_radius.si()}, z_{layers_of(of.beam)} {
    out_ << std::setprecision(12);
  }

  std::string written() {
    nodes();
    bricks();
    for (std::size_t i = 0; i < of_.beam.bodies.size(); ++i) body(static_cast<int>(i));
    held();
    steps();
    return out_.str();
  }

 private:
  [[nodiscard]] int layer_at(double z_m) const {
    const auto it = std::ranges::min_element(z_, {}, [&](double z) { return std::abs(z - z_m); });
    return static_cast<int>(it - z_.begin());
  }
  [[nodiscard]] int middle_of(double z_m) const { return layer_at(z_m) * kPerLayer + 1; }
  void node(int id, Face::At at, double z_m) { out_ << id << ", " << at.x << ", " << at.y << ", " << z_m << "\n"; }

  void nodes() {
    out_ << "*NODE, NSET=ALL\n";
    for (std::size_t i = 0; i < z_.size(); ++i) {
      const int base = static_cast<int>(i) * kPerLayer;
      for (int k = 0; k <= face_.flats; ++k) {
        node(base + 1 + k, face_.corner(k), z_[i]);
        if (i + 1 < z_.size()) node(base + 51 + k, face_.corner(k), (z_[i] + z_[i + 1]) / 2);
      }
      for (int k = 1; k <= face_.flats; ++k) {
        node(base + face_.side(k), face_.middle(k, face_.next(k)), z_[i]);
        if (k % 2 == 1) node(base + face_.spoke(k), face_.middle(0, k), z_[i]);
      }
    }
  }

  void bricks() {
    out_ << "*ELEMENT, TYPE=C3D20, ELSET=BAR\n";
    int id = 0;
    for (std::size_t i = 0; i + 1 < z_.size(); ++i)
      for (int k = 1; k < face_.flats; k += 2) {
        const int a = static_cast<int>(i) * kPerLayer, b = a + kPerLayer, m = face_.next(k), e = face_.next(m);
        const int corner[] = {1, 1 + k, 1 + m, 1 + e};
        const int edge[] = {face_.spoke(k), face_.side(k), face_.side(m), face_.spoke(e)};
        out_ << ++id;
        for (const int base : {a, b})
          for (const int c : corner) out_ << ", " << base + c;
        out_ << ",\n";
        for (const int base : {a, b})
          for (const int c : edge) out_ << base + c << ", ";
        for (int c = 0; c < 4; ++c) out_ << a + 50 + corner[c] << (c < 3 ? ", " : "\n");
      }
    const beam::Elastic& e = of_.beam.elastic;
    out_ << "*MATERIAL, NAME=BAR\n*ELASTIC\n"
         << e.youngs_modulus.si() << ", " << e.poisson << "\n*DENSITY\n"
         << e.density.si() << "\n*SOLID SECTION, ELSET=BAR, MATERIAL=BAR\n";
  }

  void body(int i) {
    const beam::Body& b = of_.beam.bodies[static_cast<std::size_t>(i)];
    const int first = 900'000 + 10 * i, layer = layer_at(b.at.si()) * kPerLayer;
    const double own = b.across.si() - b.mass.si() * b.mass_offset.si() * b.mass_offset.si();
    const double reach = std::sqrt(own / b.mass.si()), at = b.at.si();
    out_ << "*NODE\n";
    node(first, {0, 0}, at);
    node(first + 1, {0, 0}, at);
    node(first + 2, {0, 0}, at + b.mass_offset.si() - reach);
    node(first + 3, {0, 0}, at + b.mass_offset.si() + reach);
    out_ << "*ELEMENT, TYPE=MASS, ELSET=M" << i << "\n"
         << first << ", " << first + 2 << "\n"
         << first + 1 << ", " << first + 3 << "\n*MASS, ELSET=M" << i << "\n"
         << b.mass.si() / 2 << "\n*NSET, NSET=S" << i << "\n";
    for (int id = 1; id <= face_.ids(); ++id) out_ << layer + id << ",\n";
    out_ << first + 2 << ",\n"
         << first + 3 << "\n*RIGID BODY, NSET=S" << i << ", REF NODE=" << first << ", ROT NODE=" << first + 1 << "\n";
    for (const int mass : {first + 2, first + 3}) weights_.push_back({mass, b.mass.si() / 2 * kGravity});
  }

  void held() {
    out_ << "*BOUNDARY\n";
    for (const beam::Hanger& h : of_.beam.hangers) out_ << middle_of(h.at.si()) << ", 1, 2\n";
    // Neither along nor about itself; a corner on the x axis that keeps its y hinders no bending.
    const int first = middle_of(of_.beam.hangers.front().at.si());
    out_ << first << ", 3, 3\n" << first + 1 << ", 2, 2\n*NSET, NSET=HANGERS\n";
    for (const beam::Hanger& h : of_.beam.hangers) out_ << middle_of(h.at.si()) << ",\n";
  }

  void steps() {
    out_ << "*STEP\n*STATIC\n*DLOAD\nBAR, GRAV, " << kGravity << ", 0, -1, 0\n*CLOAD\n";
    for (const auto& [node, weight] : weights_) out_ << node << ", 2, " << -weight << "\n";
    // Directions count clockwise from straight up, seen from end A looking towards B (along z): x then points left.
    for (const beam::Load& l : of_.loads)
      out_ << loaded_node(l) << ", 2, " << l.force.si() * std::cos(l.direction.radians()) << "\n"
           << loaded_node(l) << ", 1, " << -l.force.si() * std::sin(l.direction.radians()) << "\n";
    out_ << "*NODE PRINT, NSET=HANGERS\nRF\n*END STEP\n*STEP\n*FREQUENCY\n24\n*END STEP\n";
  }

  /// A body's reference node where one sits there: nodes of a rigid section take no loads themselves.
  [[nodiscard]] int loaded_node(const beam::Load& l) const {
    for (std::size_t i = 0; i < of_.beam.bodies.size(); ++i)
      if (std::abs((of_.beam.bodies[i].at - l.at).si()) < 1e-6) return 900'000 + 10 * static_cast<int>(i);
    return middle_of(l.at.si());
  }

  const beam::ShaftBeam& of_;
  Face face_;
  std::vector<double> z_;
  std::vector<std::pair<int, double>> weights_;
  std::ostringstream out_;
};

std::vector<double> numbers_in(const std::string& line) {
  std::istringstream in{line};
  std::vector<double> all;
  for (double v = 0; in >> v;) all.push_back(v);
  return all;
}

}  // namespace

std::string solid_deck(const Shaft& shaft, const beam::ShaftBeam& of) { return Deck{shaft, of}.written(); }

SolidAnswer solve_solid(const std::string& folder, const std::string& deck, std::size_t hangers) {
  std::ofstream{folder + "/shaft.inp"} << deck;
  if (std::system(("cd '" + folder + "' && ccx shaft > shaft.log 2>&1").c_str()) != 0) return {};
  SolidAnswer answer;
  std::ifstream dat{folder + "/shaft.dat"};
  std::vector<double> all;
  bool forces = false, modes = false;
  for (std::string line; std::getline(dat, line);) {
    if (line.find("forces (fx,fy,fz)") != std::string::npos) forces = answer.reactions_n.empty(), modes = false;
    if (line.find("E I G E N V A L U E") != std::string::npos) modes = true, forces = false;
    if (line.find("P A R T I C I P A T I O N") != std::string::npos) modes = false;
    const auto numbers = numbers_in(line);
    if (forces && numbers.size() == 4 && answer.reactions_n.size() < hangers) answer.reactions_n.push_back(numbers[2]);
    if (modes && numbers.size() == 5) all.push_back(numbers[2]);
  }
  for (std::size_t i = 0; i + 1 < all.size(); ++i)
    if (std::abs(all[i + 1] / all[i] - 1) < 2e-4) answer.modes_rad_s.push_back(all[i++]);
  return answer;
}

}  // namespace flatwise::beam_tests
