#include "job/check/plausible.h"

#include <algorithm>
#include <numbers>

namespace flatwise::job::check_detail {
namespace {

constexpr double kHalf = 0.5, kDouble = 2;
constexpr double kMostTorque = 5;       // Times the torque wanted: a bolt of the class yields at about one and a half.
constexpr double kJointShear = 100e6;   // Pa over the joint; a dry press fit slips at a tenth of it.
constexpr double kLongestWay = 3;       // Widths of the ring: home, its lead, and a gauge that began above the hub.
constexpr double kSteepest = 0.5;       // Swing over the radius it was read at: a rotor half out of its bearing.
constexpr double kMostVibration = 0.2;  // m/s rms; ISO 20816-3 ends its worst zone far below.
constexpr double kLongestRun = 24 * 3600;                  // s
constexpr double kHandCold = 243.15, kHandHot = 423.15;    // K: -30 and 150 °C, a part that somebody measures.
constexpr double kFieldCold = 223.15, kFieldHot = 333.15;  // K: -50 and 60 °C, a room or a field.
constexpr double kRunHot = 523.15;                         // K: 250 °C; no grease is left above.

ReadingRange near_size(Length nominal) { return {any(nominal * kHalf), any(nominal * kDouble)}; }
ReadingRange between(Kind kind, double least, double greatest) { return {{least, kind}, {greatest, kind}}; }

class Finder {
 public:
  explicit Finder(const Shaft& shaft) : shaft_{shaft} {}
  std::vector<Reading> found;

  template <class Body>
  void operator()(const Body& /*no reading*/) {}

  void operator()(const PlayRead& b) {
    if (!has_rotor(b.rotor)) return;
    const Length tip = shaft_.rotor(b.rotor).tip_radius;
    const double radius = b.radius ? b.radius->value.si : tip.si();
    found.push_back({"swing", b.swing.value, between(Kind::length, 0, kSteepest * radius)});
    if (b.radius) found.push_back({"radius", b.radius->value, {any(Length::from_si(0.01)), any(tip * kDouble)}});
  }
  void operator()(const BoreRead& b) {
    if (!has_rotor(b.rotor)) return;
    found.push_back({"diameter", b.diameter.value, near_size(shaft_.rotor(b.rotor).bearing.outside)});
  }
  void operator()(const TemperatureRead& b) {
    found.push_back({"temperature", b.temperature.value, between(Kind::temperature, kHandCold, kHandHot)});
  }
  void operator()(const Pressed& b) {
    if (!has_rotor(b.rotor)) return;
    const Bearing& bearing = shaft_.rotor(b.rotor).bearing;
    const double area = std::numbers::pi * bearing.outside.si() * bearing.width.si();
    found.push_back({"force", b.force.value, between(Kind::force, 0, kJointShear * area)});
  }
  void operator()(const PressPointRead& b) {
    if (!has_rotor(b.rotor)) return;
    const Bearing& bearing = shaft_.rotor(b.rotor).bearing;
    const double area = std::numbers::pi * bearing.outside.si() * bearing.width.si();
    found.push_back({"force", b.force.value, between(Kind::force, 0, kJointShear * area)});
    found.push_back({"travel", b.travel.value, {any(Length{}), any(bearing.width * kLongestWay)}});
  }
  void operator()(const StackRead& b) {
    Length stack;
    for (const Station& s : shaft_.stations())
      if (s.kind != StationKind::nut) stack = stack + s.length.nominal;
    found.push_back({"length", b.length.value, near_size(stack)});
  }
  void operator()(const FeelerTried& b) {
    const Length step = shaft_.spec().policies.open_joint_step;
    if (b.blade) found.push_back({"blade", b.blade->value, {any(micrometres(10)), any(step * kDouble)}});
  }
  void operator()(const PartMeasured& b) {
    const auto& stations = shaft_.stations();
    if (b.station < 1 || b.station > static_cast<int>(stations.size())) return;
    const Station& station = stations[static_cast<std::size_t>(b.station) - 1];
    const bool of_rotor = station.kind == StationKind::rotor;
    if (of_rotor != b.half.has_value()) return;  // Has its problem already.
    const Length nominal =
        of_rotor ? shaft_.spec().rotors[static_cast<std::size_t>(station.rotor)].half.nominal : station.length.nominal;
    found.push_back({"length", b.length.value, near_size(nominal)});
  }
  void operator()(const NutPulled& b) {
    const auto& nuts = shaft_.spec().nuts;
    const auto nut = std::ranges::find(nuts, b.nut, &Nut::end);
    if (nut == nuts.end()) return;
    double most = kMostTorque * nut->torque.si() / std::max(1.0, b.multiplier);
    const bool bar = b.with == TorquePull::With::bar;
    if (bar && !b.tool_length) return;  // Has its problem already.
    if (bar) most /= b.tool_length->value.si;
    found.push_back({"shown", b.shown.value, between(bar ? Kind::force : Kind::torque, 0, most)});
  }
  void operator()(const RunRead& b) {
    switch (b.what) {
      case RunQuantity::room:
        return found.push_back({"value", b.value.value, between(Kind::temperature, kFieldCold, kFieldHot)});
      case RunQuantity::hanger:
        return found.push_back({"value", b.value.value, between(Kind::temperature, kFieldCold, kRunHot)});
      case RunQuantity::vibration:
        return found.push_back({"value", b.value.value, between(Kind::speed, 0, kMostVibration)});
      case RunQuantity::minutes:
        return found.push_back({"value", b.value.value, between(Kind::time, 0, kLongestRun)});
    }
  }

 private:
  [[nodiscard]] bool has_rotor(int number) const { return number >= 1 && number <= shaft_.rotor_count(); }
  const Shaft& shaft_;
};

}  // namespace

std::vector<Reading> readings_of(const Shaft& shaft, const EntryBody& body) {
  Finder finder{shaft};
  std::visit(finder, body);
  return std::move(finder.found);
}

}  // namespace flatwise::job::check_detail
