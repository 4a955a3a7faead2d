#include "core/dynamics/pattern_points.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "core/dynamics/directions.h"

namespace flatwise::dynamics::halves {
namespace {

/// Goes through the sums of a half, depth first, without keeping them. `near` says whether a sum can still come where it is wanted
/// when what is left adds so much at most.
template <class Near, class Emit>
struct Spread {
  const HalfRotors& rotors;
  int n;
  Near& near;
  Emit& emit;
  std::vector<double> left;  ///< Most that the rotors from each on can move P.

  void down(std::size_t depth, const Sum& so_far, std::uint32_t code, int last) {
    const HalfRotor& rotor = rotors[depth];
    const bool leaf = depth + 1 == rotors.size();
    for (int k = rotor.repeats ? last : 0; k < n; ++k) {
      if (rotor.ways != ~0u && (rotor.ways >> ((k - last + n) % n) & 1u) == 0) continue;
      const Sum& at = rotor.at[static_cast<std::size_t>(k)];
      const Sum sum{so_far[0] + at[0], so_far[1] + at[1], so_far[2] + at[2], so_far[3] + at[3]};
      const std::uint32_t next = code * static_cast<std::uint32_t>(n) + static_cast<std::uint32_t>(k);
      if (!near(sum, leaf ? 0.0 : left[depth + 1])) continue;
      if (leaf)
        emit(sum, next);
      else
        down(depth + 1, sum, next, k);
    }
  }
};

template <class Near, class Emit>
void spread(const HalfRotors& rotors, int positions, const Sum& from, Near near, Emit emit) {
  if (rotors.empty()) {
    if (near(from, 0.0)) emit(from, 0u);
    return;
  }
  std::vector<double> left(rotors.size(), 0.0);
  for (std::size_t i = rotors.size(); i-- > 0;)
    left[i] = std::hypot(rotors[i].at[0][0], rotors[i].at[0][1]) + (i + 1 < rotors.size() ? left[i + 1] : 0);
  Spread<Near, Emit>{rotors, positions, near, emit, std::move(left)}.down(0, from, 0, 0);
}

}  // namespace

void Points::add(const Sum& s, std::uint32_t of) {
  x.push_back(static_cast<float>(s[0]));
  y.push_back(static_cast<float>(s[1]));
  u.push_back(static_cast<float>(s[2]));
  v.push_back(static_cast<float>(s[3]));
  code.push_back(of);
}

Sector::Sector(int positions)
    : positions_{positions},
      cosine_{std::cos(std::numbers::pi / positions)},
      sine_{std::sin(std::numbers::pi / positions)} {
  for (int odd = 1; odd < positions; odd += 2) {
    const double angle = std::numbers::pi * odd / positions;
    between_.push_back({std::cos(angle), std::sin(angle)});
  }
  for (const auto& d : dynamics::directions(positions)) unit_.push_back({d.real(), d.imag()});
}

Image Sector::fold(Sum& s) const {
  Image image;
  const auto mirror = [&] {
    s[1] = -s[1];
    s[3] = -s[3];
    image = {(positions_ - image.turn) % positions_, !image.mirrored};
  };
  if (s[1] < 0) mirror();
  std::size_t k = 0;
  for (const auto& b : between_) k += b[0] * s[1] - b[1] * s[0] > 0;
  const double c = unit_[k][0], t = unit_[k][1];
  s = {c * s[0] + t * s[1], c * s[1] - t * s[0], c * s[2] + t * s[3], c * s[3] - t * s[2]};
  image.turn = (image.turn + positions_ - static_cast<int>(k)) % positions_;
  if (s[1] < 0) mirror();
  return image;
}

Points points_of(const HalfRotors& rotors, int positions, const Wanted& wanted) {
  Points out;
  const Sector sector{positions};
  const auto near = [&](const Sum& sum, double left) {
    return wanted.folded || sector.holds({wanted.sign * sum[0], wanted.sign * sum[1]}, wanted.reach + 1.000001 * left);
  };
  spread(rotors, positions, wanted.constant, near, [&](const Sum& sum, std::uint32_t code) {
    if (out.overflow) return;
    Sum s{wanted.sign * sum[0], wanted.sign * sum[1], wanted.sign * sum[2], wanted.sign * sum[3]};
    Image image;
    if (wanted.folded) image = sector.fold(s);
    if (out.size() == wanted.most) {
      out.overflow = true;
      return;
    }
    out.add(s, code);
    if (wanted.folded) out.image.push_back(static_cast<std::uint8_t>(2 * image.turn + (image.mirrored ? 1 : 0)));
  });
  return out;
}

double sums_of(const HalfRotors& rotors, int positions) {
  double sums = 1;
  int alike = 0;
  for (const HalfRotor& rotor : rotors) {
    alike = rotor.repeats ? alike + 1 : 1;
    sums *= static_cast<double>(positions + alike - 1) / alike;  // Sets of so many out of n positions.
  }
  return sums;
}

void read_code(std::uint32_t code, const HalfRotors& rotors, int positions, const Image& image,
               std::vector<int>& places) {
  const auto n = static_cast<std::uint32_t>(positions);
  for (std::size_t i = rotors.size(); i-- > 0; code /= n)
    places[static_cast<std::size_t>(rotors[i].rotor)] = image.place(static_cast<int>(code % n), positions);
}

}  // namespace flatwise::dynamics::halves
