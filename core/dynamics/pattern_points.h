// pattern_points.h: the sums that half of the rotors can make, as points, in one sector of the n positions' symmetry.
// Inside core/dynamics only.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

namespace flatwise::dynamics::halves {

/// Sums in principal axes (P the plane of most spread, Q the other), scaled: P as x, y and Q as x, y.
using Sum = std::array<double, 4>;

/// One rotor of a half at each of its positions.
struct HalfRotor {
  int rotor = 0;        ///< From 0.
  std::vector<Sum> at;  ///< One a position.
  bool repeats =
      false;  ///< Alike the rotor before it in this half: only places not before that one's, so each set once.
  std::uint32_t ways =
      ~0u;  ///< Ways on from the rotor before it in this half, bit k: k positions on. All set: no limit.
};
using HalfRotors = std::vector<HalfRotor>;

/// A turn by `turn` positions after a mirror: what brings a sum into the first sector.
struct Image {
  int turn = 0;
  bool mirrored = false;
  [[nodiscard]] int place(int from, int positions) const {
    return (turn + (mirrored ? positions - from : from)) % positions;
  }
  [[nodiscard]] Image back(int positions) const {
    return mirrored ? *this : Image{(positions - turn) % positions, false};
  }
};

/// Points in single precision: for telling what is far, never for what is near (the caller works it out anew).
struct Points {
  std::vector<float> x, y, u, v;    ///< P, then Q.
  std::vector<std::uint32_t> code;  ///< Positions of the half's rotors, first rotor the highest digit to base n.
  std::vector<std::uint8_t> image;  ///< 2 turn + mirrored; empty: none was turned.
  bool overflow = false;            ///< More than was allowed: the points are not all there.

  [[nodiscard]] std::size_t size() const { return code.size(); }
  void add(const Sum& s, std::uint32_t of);
};

/// The first sector of the symmetry: azimuth of P from nought to half a position.
class Sector {
 public:
  explicit Sector(int positions);
  /// Within `reach` of the sector (or a little farther, near its point).
  [[nodiscard]] bool holds(const Sum& s, double reach) const {
    return s[1] >= -reach && s[1] * cosine_ - s[0] * sine_ <= reach;
  }
  /// The image of a sum in the sector, and how it was brought there.
  [[nodiscard]] Image fold(Sum& s) const;

 private:
  int positions_;
  double cosine_, sine_;
  std::vector<std::array<double, 2>> between_;  ///< Directions half way between positions, up to half a turn.
  std::vector<std::array<double, 2>> unit_;
};

/// Which points of a half are wanted.
struct Wanted {
  double sign = 1;      ///< Of the sums: -1 for what the other half must make.
  Sum constant{};       ///< Added to the sums before the sign.
  double reach = 0;     ///< How far outside the sector they may lie.
  bool folded = false;  ///< All of them, each brought into the sector; else only those that lie there.
  std::size_t most = 0;
};
[[nodiscard]] Points points_of(const HalfRotors& rotors, int positions, const Wanted& wanted);

/// How many sums a half has, before the sector.
[[nodiscard]] double sums_of(const HalfRotors& rotors, int positions);

/// Positions behind a code, one a rotor of the half.
void read_code(std::uint32_t code, const HalfRotors& rotors, int positions, const Image& image,
               std::vector<int>& places);

}  // namespace flatwise::dynamics::halves
