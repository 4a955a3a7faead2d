// quantities.cc: the compiler refuses what would mix units.
#include "core/units/any_quantity.h"
#include "core/units/code.h"

#ifndef WRONG
#define WRONG 0
#endif

namespace flatwise {

[[maybe_unused]] constexpr Length kGap = millimetres(2) + inches(1);
[[maybe_unused]] constexpr Force kForce = megapascals(2) * square_millimetres(3);
[[maybe_unused]] constexpr double kShare = millimetres(1) / inches(1);
[[maybe_unused]] constexpr Temperature kWarm = celsius(20) + kelvins(15);
constexpr double tilt(Length at_radius, Angle angle) { return at_radius / metres(1) * angle.radians(); }
[[maybe_unused]] constexpr double kTilt = tilt(millimetres(250), degrees(5));

// Refused 1: no match for 'operator\+
#if WRONG == 1
constexpr auto kSum = millimetres(1) + megapascals(1);
#endif
// Refused 2: conversion from 'double' to non-scalar type
#if WRONG == 2
constexpr Length kBare = 0.05;
#endif
// Refused 3: cannot convert .* to 'const double'
#if WRONG == 3
constexpr double kOut = millimetres(50);
#endif
// Refused 4: no match for 'operator<
#if WRONG == 4
constexpr bool kLess = newtons(1) < newton_metres(1);
#endif
// Refused 5: conversion from 'Quantity<2,.*to non-scalar type 'Quantity<1,
#if WRONG == 5
constexpr Length kWrongDimension = newtons(1) / megapascals(1);
#endif
// Refused 6: conversion from 'flatwise::Frequency' to non-scalar type
#if WRONG == 6
constexpr AngularSpeed kSpeed = hertz(9);
#endif
// Refused 7: no match for 'operator\+|no match for 'operator==
#if WRONG == 7
constexpr auto kAngle = degrees(5) + 1.0;
#endif
// Refused 8: conversion from '.*TemperatureRise' to non-scalar type
#if WRONG == 8
constexpr Temperature kRoom = kelvins(20);
#endif
// Refused 9: no matching function for call to 'any\(double\)'
#if WRONG == 9
constexpr AnyQuantity kAny = any(3.0);
#endif
// Refused 10: is not a constant expression
#if WRONG == 10
Code made_while_running(char letter) {
  const char name[] = {letter, 0};
  return Code{name};
}
#endif
// Refused 11: no matching function for call to 'flatwise::Code::Code
#if WRONG == 11
Code made_from_text(const std::string& name) { return Code{name}; }
#endif
// Refused 12: cannot convert 'flatwise::Angle' to 'flatwise::Length'|could not convert .*from 'flatwise::Angle' to
#if WRONG == 12
constexpr double kSwapped = tilt(degrees(5), millimetres(250));
#endif
// Refused 13: no match for 'operator\+'
#if WRONG == 13
constexpr Temperature kTwice = celsius(20) + celsius(15);
#endif
// Refused 14: no match for 'operator\+'
#if WRONG == 14
constexpr auto kSumWithNumber = millimetres(1) + 2.0;
#endif
// Refused 15: could not convert .*from 'double' to
#if WRONG == 15
constexpr double kBareArgument = tilt(0.25, degrees(5));
#endif

}  // namespace flatwise
