#include <array>

#include "core/units/any_quantity.h"
#include "core/units/problem.h"

namespace flatwise {
namespace {

struct KindRow {
  Kind kind;
  std::string_view name;
  std::string_view suffix;
};
constexpr std::array<KindRow, kKindCount> kRows{{
    {Kind::length, "length", "_m"},
    {Kind::area, "area", "_m2"},
    {Kind::angle, "angle", "_rad"},
    {Kind::mass, "mass", "_kg"},
    {Kind::time, "time", "_s"},
    {Kind::force, "force", "_n"},
    {Kind::torque, "torque", "_n_m"},
    {Kind::pressure, "pressure", "_pa"},
    {Kind::temperature, "temperature", "_k"},
    {Kind::temperature_rise, "temperature_rise", "_k"},
    {Kind::angular_speed, "angular_speed", "_rad_s"},
    {Kind::frequency, "frequency", "_hz"},
    {Kind::speed, "speed", "_m_s"},
    {Kind::acceleration, "acceleration", "_m_s2"},
    {Kind::inertia, "inertia", "_kg_m2"},
    {Kind::unbalance, "unbalance", "_kg_m"},
    {Kind::expansion, "expansion", "_per_k"},
    {Kind::energy, "energy", "_j"},
    {Kind::density, "density", "_kg_m3"},
    {Kind::stiffness, "stiffness", "_n_per_m"},
    {Kind::section_modulus, "section_modulus", "_m3"},
    {Kind::second_moment, "second_moment", "_m4"},
    {Kind::viscosity, "viscosity", "_m2_s"},
    {Kind::money, "money", ""},
    {Kind::money_rate, "money_rate", "_per_s"},
    {Kind::ratio, "ratio", ""},
    {Kind::count, "count", ""},
}};

constexpr bool rows_stand_in_order() {
  for (std::size_t i = 0; i < kRows.size(); ++i)
    if (kRows[i].kind != static_cast<Kind>(i)) return false;
  return true;
}
static_assert(rows_stand_in_order());

}  // namespace

std::string_view kind_name(Kind kind) { return kRows[static_cast<std::size_t>(kind)].name; }
std::string_view si_suffix(Kind kind) { return kRows[static_cast<std::size_t>(kind)].suffix; }

}  // namespace flatwise
