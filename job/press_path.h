// press_path.h: the force to expect over a ring's way in, from the working that page, paper and rules share.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fits/press_curve.h"
#include "core/shaft/shaft.h"
#include "core/units/format.h"
#include "core/working/working.h"
#include "job/judge.h"

namespace flatwise::job {

/// Chamfers of ring and hub together: the ring grips after it. Common practice, and said so beside each curve.
inline constexpr Length kPressLead = millimetres(2);

/// The path of the ring by the inputs that the expected band was worked out from, so that both say the same.
[[nodiscard]] fits::PressPath press_path_of(const Working& band);
/// The band at even steps from the lead to home, with the start; none where the path cannot be pressed at all.
[[nodiscard]] std::optional<std::vector<fits::CurvePoint>> expected_curve(const fits::PressPath& path);

/// The press of a rotor as it is drawn: all but the words put into one language.
struct PressDrawn {
  int rotor = 1;
  bool invented = false;  ///< The shaft is a demo's.
  std::vector<fits::CurvePoint> band{};
  Length home{};                 ///< Travel with the whole width in.
  std::optional<Force> force{};  ///< What was read there.
  std::vector<fits::ReadPoint> points{};
  std::string length_unit{}, force_unit{};
  double length_si = 1, force_si = 1;  ///< How much of SI one of each is.
  std::vector<Message> question{};     ///< Said one after the other.
  Message title{Code{"bench.press.curve"}, {}}, x_words{Code{"bench.press.curve_x"}, {}};
  std::optional<Message> read_words{};
};
/// None where the path cannot be pressed at all.
[[nodiscard]] std::optional<PressDrawn> press_drawn(const Facts& facts, int rotor, const Working& band,
                                                    UnitSystem units);

/// Where the ram is stopped to read the force: even steps from the lead to home, in whole millimetres or sixteenths of an inch as
/// a rule beside the ram shows them. As they are typed.
[[nodiscard]] std::vector<std::string> press_stops(const Rotor& rotor, UnitSystem units);

}  // namespace flatwise::job
