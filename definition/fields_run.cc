// The keys of a shaft file that speak of the running shaft: unbalance, the test run, the bar and its loads.
#include "definition/field_lists.h"
#include "definition/fields_shared.h"

namespace flatwise::definition {
namespace {

using namespace takes;

constexpr Field kFields[] = {
    // Unbalance that is not a rotor's.
    {.meaning = Code{"definition.field.unbalance.at"}, .required = true, .example = "\"pulley\""},
    {.meaning = Code{"definition.field.unbalance.amount"},
     .takes = kQuantity,
     .kind = Kind::unbalance,
     .range = {0, 1e3, true},
     .required = true,
     .example = "\"12 g·m\""},
    {.meaning = Code{"definition.field.unbalance.flat"},
     .takes = kWhole,
     .range = kFlat,
     .required = true,
     .example = "3"},

    // The test run, and when it is due again: nothing is assumed, what is not there is not asked.
    {.meaning = Code{"definition.field.test_run.shortest"},
     .takes = kQuantity,
     .kind = Kind::time,
     .range = {0, 24 * 60 * kMinute, true},
     .example = "\"20 min\""},
    {.meaning = Code{"definition.field.test_run.greatest_rise"},
     .takes = kQuantity,
     .kind = Kind::temperature_rise,
     .range = {0, 200, true},
     .example = "\"40 K\""},
    {.meaning = Code{"definition.field.test_run.greatest_vibration"},
     .takes = kQuantity,
     .kind = Kind::speed,
     .range = {0, 0.1, true},
     .example = "\"4.5 mm/s\""},
    {.meaning = Code{"definition.field.service.every"},
     .takes = kQuantity,
     .kind = Kind::time,
     .range = {0, 100'000 * kHour, true},
     .example = "\"400 h\""},
    {.meaning = Code{"definition.field.service.seasons"}, .takes = kWhole, .range = {1, 20}, .example = "1"},
    {.meaning = Code{"definition.field.service.nuts_again"},
     .takes = kQuantity,
     .kind = Kind::time,
     .range = {0, 1000 * kHour, true},
     .example = "\"10 h\""},

    // The bar that all sits on, and what presses on it without turning.
    {.meaning = Code{"definition.field.bar.youngs_modulus"},
     .takes = kQuantity,
     .kind = Kind::pressure,
     .range = {1e9, 1e12},
     .assumed = "207 GPa",
     .assumed_from = "steel; Shigley's table A-5, from memory",
     .example = "\"207 GPa\""},
    {.meaning = Code{"definition.field.bar.poisson"},
     .takes = kNumber,
     .kind = Kind::ratio,
     .range = {0, 0.499},
     .assumed = "0.29",
     .assumed_from = "steel; Shigley's table A-5, from memory",
     .example = "0.29"},
    {.meaning = Code{"definition.field.bar.density"},
     .takes = kQuantity,
     .kind = Kind::density,
     .range = {100, 25'000},
     .assumed = "7850 kg/m³",
     .assumed_from = "steel; EN 1991-1-1, from memory",
     .example = "\"7850 kg/m³\""},
    {.meaning = Code{"definition.field.bar.drive_torque"},
     .takes = kQuantity,
     .kind = Kind::torque,
     .range = {0, 1e6, true},
     .example = "\"250 N·m\""},
    {.meaning = Code{"definition.field.load.at"}, .required = true, .example = "\"pulley\""},
    {.meaning = Code{"definition.field.load.force"},
     .takes = kQuantity,
     .kind = Kind::force,
     .range = {0, 1e6, true},
     .example = "\"1.2 kN\""},
    {.meaning = Code{"definition.field.load.direction"},
     .takes = kQuantity,
     .kind = Kind::angle,
     .range = {-360 * kDegree, 360 * kDegree},
     .assumed = "180°",
     .assumed_from = "down, where no direction is stated",
     .example = "\"90°\""},
    {.meaning = Code{"definition.field.load.along"},
     .takes = kQuantity,
     .kind = Kind::force,
     .range = {-1e6, 1e6},
     .example = "\"150 N\""},
};

}  // namespace

std::span<const Field> run_fields() { return kFields; }

}  // namespace flatwise::definition
