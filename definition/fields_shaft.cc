// The keys of a shaft file. To add one: a row here, its sentence in words/en/definition.toml, and its reading.
#include <array>
#include <numbers>
#include <vector>

#include "definition/field_lists.h"

namespace flatwise::definition {
namespace {

using namespace takes;
using std::string_view;

constexpr double kMm = 1e-3, kMicro = 1e-6, kMinute = 60, kDegree = std::numbers::pi / 180;
constexpr double kTurnsPerMinute = std::numbers::pi / 30;

constexpr std::array<string_view, 2> kEnds{"A", "B"};
constexpr std::array<string_view, 1> kFacing{"facing"};
constexpr std::array<string_view, 5> kClearances{"C2", "CN", "C3", "C4", "C5"};
constexpr std::array<string_view, 3> kTolerances{"normal", "P6", "P5"};
constexpr std::array<string_view, 5> kLubrications{"dry", "oiled", "greased", "moly", "zinc"};
constexpr std::array<string_view, 1> kTwoHalves{"two halves"};
constexpr std::array<string_view, 2> kDecisions{"guard_u", "one_sided"};

constexpr Range kFlatsRange{3, 24}, kFlat{1, 24};
constexpr Range kPartLength{0.1 * kMm, 2}, kPartDiameter{1 * kMm, 2};
constexpr Range kDeviation{0, 20 * kMm};
constexpr Range kMinutes{0, 24 * 60 * kMinute};
constexpr Range kInertia{0, 1e3};
constexpr Range kPrice{0, 1e6};

constexpr string_view kIso2768 = "ISO 2768-1 medium, by the length; from memory";
constexpr string_view kByKind = "common practice, by the kind of part";

constexpr Field kFields[] = {
    // The file.
    {.meaning = Code{"definition.field.shaft_file.shaft"}, .takes = kTable, .required = true, .table = "shaft"},
    {.meaning = Code{"definition.field.shaft_file.rotor"}, .takes = kTable, .required = true, .table = "rotor"},
    {.meaning = Code{"definition.field.shaft_file.between"}, .takes = kTable, .table = "between"},
    {.meaning = Code{"definition.field.shaft_file.stack"}, .takes = kTable, .required = true, .table = "stack"},
    {.meaning = Code{"definition.field.shaft_file.nut"}, .takes = kTable, .table = "nut"},
    {.meaning = Code{"definition.field.shaft_file.minutes"}, .takes = kTable, .table = "minutes"},
    {.meaning = Code{"definition.field.shaft_file.material"}, .takes = kOpenTable, .table = "material"},
    {.meaning = Code{"definition.field.shaft_file.policy"}, .takes = kTable, .table = "policy"},
    {.meaning = Code{"definition.field.shaft_file.unbalance"}, .takes = kTables, .table = "unbalance"},

    // The shaft.
    {.meaning = Code{"definition.field.shaft.name"}, .required = true, .example = "\"Row looseners, seven\"", .change = 1},
    {.meaning = Code{"definition.field.shaft.invented"}, .takes = kFlag, .assumed = "false",
     .assumed_from = "a shaft is real unless its file says otherwise", .example = "true"},
    {.meaning = Code{"definition.field.shaft.flats"}, .takes = kWhole, .range = kFlatsRange, .required = true, .example = "6"},
    {.meaning = Code{"definition.field.shaft.across"}, .takes = kQuantity, .kind = Kind::length, .range = {5 * kMm, 0.5},
     .required = true, .example = "\"1 1/2 in\"", .change = 2},
    {.meaning = Code{"definition.field.shaft.speed"}, .takes = kQuantity, .kind = Kind::angular_speed,
     .range = {0, 6000 * kTurnsPerMinute}, .required = true, .example = "\"480 /min\""},
    {.meaning = Code{"definition.field.shaft.pattern"}, .takes = kWord | kTable, .required = true, .words = kFacing,
     .table = "pattern", .example = "\"facing\""},
    {.meaning = Code{"definition.field.shaft.first_flat"}, .takes = kWhole, .range = kFlat, .example = "1"},
    {.meaning = Code{"definition.field.shaft.drive_end"}, .takes = kWord, .assumed = "B", .assumed_from = "common practice",
     .words = kEnds, .example = "\"B\""},
    {.meaning = Code{"definition.field.shaft.travel"}, .takes = kQuantity, .kind = Kind::speed, .range = {0, 30},
     .example = "\"6 km/h\""},
    {.meaning = Code{"definition.field.shaft.rolling_radius"}, .takes = kQuantity, .kind = Kind::length,
     .range = {10 * kMm, 5}, .example = "\"230 mm\""},
    {.meaning = Code{"definition.field.pattern.step"}, .takes = kWhole, .range = {1, 23}, .example = "2"},
    {.meaning = Code{"definition.field.pattern.flats"}, .takes = kWhole | kList, .range = kFlat, .example = "[1, 4, 1]"},

    // Every rotor.
    {.meaning = Code{"definition.field.rotor.lean"}, .takes = kQuantity, .kind = Kind::angle, .range = {0, 30 * kDegree},
     .required = true, .example = "\"5°\"", .change = 3},
    {.meaning = Code{"definition.field.rotor.mark"}, .assumed = "mark", .assumed_from = "the form of the mark was not given",
     .example = "\"notch\""},
    {.meaning = Code{"definition.field.rotor.tip_radius"}, .takes = kQuantity, .kind = Kind::length, .range = {10 * kMm, 5},
     .required = true, .example = "\"230 mm\""},
    {.meaning = Code{"definition.field.rotor.tine_width"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 1},
     .required = true, .example = "\"34 mm\""},
    {.meaning = Code{"definition.field.rotor.tines"}, .takes = kWhole, .range = {1, 64}, .assumed = "8",
     .assumed_from = "for the drawing only", .example = "8"},
    {.meaning = Code{"definition.field.rotor.mass"}, .takes = kQuantity, .kind = Kind::mass,
     .range = {0, 1e4, true}, .required = true, .example = "\"11.6 kg\""},
    {.meaning = Code{"definition.field.rotor.inertia"}, .takes = kTable, .required = true, .table = "inertia",
     .example = "{ across = \"0.085 kg·m²\", along = \"0.160 kg·m²\" }"},
    {.meaning = Code{"definition.field.rotor.mass_offset"}, .takes = kQuantity, .kind = Kind::length, .range = {-1, 1},
     .assumed = "0 mm", .assumed_from = "a rotor alike on both sides of its bearing", .example = "\"0 mm\""},
    {.meaning = Code{"definition.field.rotor.half"}, .takes = kTable, .table = "half",
     .example = "{ length = \"34 mm\", tolerance = \"0.05 mm\" }"},
    {.meaning = Code{"definition.field.rotor.bearing"}, .takes = kTable, .required = true, .table = "bearing",
     .example = "{ designation = \"TH-100-C3\", d = \"55 mm\", D = \"100 mm\", B = \"21 mm\" }"},
    {.meaning = Code{"definition.field.rotor.hub"}, .takes = kTable, .required = true, .table = "hub",
     .example = "{ fit = \"100 N7\", outside = \"150 mm\", material = \"cast_iron\" }"},
    {.meaning = Code{"definition.field.rotor.snap_rings"}, .takes = kWhole, .range = {0, 2}, .assumed = "2",
     .assumed_from = "common practice: one in first as a stop, then the second", .example = "2"},
    {.meaning = Code{"definition.field.rotor.seals"}, .takes = kWhole, .range = {0, 4}, .assumed = "2",
     .assumed_from = "common practice: one a side", .example = "2"},
    {.meaning = Code{"definition.field.rotor.adapter_set"}, .takes = kTable, .table = "priced",
     .example = "{ part = \"TH-SET-5\", price = \"148.00 GBP\" }"},
    {.meaning = Code{"definition.field.rotor.seal"}, .takes = kTable, .table = "priced",
     .example = "{ part = \"TH-SEAL\", price = \"6.50 GBP\" }"},
    {.meaning = Code{"definition.field.rotor.snap_ring"}, .takes = kTable, .table = "priced",
     .example = "{ part = \"TH-RING\", price = \"3.20 GBP\" }"},
    {.meaning = Code{"definition.field.inertia.across"}, .takes = kQuantity, .kind = Kind::inertia, .range = kInertia,
     .required = true, .example = "\"0.085 kg·m²\""},
    {.meaning = Code{"definition.field.inertia.along"}, .takes = kQuantity, .kind = Kind::inertia, .range = kInertia,
     .required = true, .example = "\"0.160 kg·m²\""},
    {.meaning = Code{"definition.field.half.length"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"34 mm\""},
    {.meaning = Code{"definition.field.half.tolerance"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .assumed_from = kIso2768, .example = "\"0.05 mm\""},
    {.meaning = Code{"definition.field.half.above"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .example = "\"0 mm\""},
    {.meaning = Code{"definition.field.half.below"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .example = "\"0.1 mm\""},
    {.meaning = Code{"definition.field.bearing.designation"}, .required = true, .example = "\"TH-100-C3\""},
    {.meaning = Code{"definition.field.bearing.d"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .required = true, .example = "\"55 mm\""},
    {.meaning = Code{"definition.field.bearing.D"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .required = true, .example = "\"100 mm\""},
    {.meaning = Code{"definition.field.bearing.B"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .required = true, .example = "\"21 mm\""},
    {.meaning = Code{"definition.field.bearing.clearance"}, .takes = kWord, .assumed = "CN",
     .assumed_from = "ISO 5753-1: no sign means normal", .words = kClearances, .example = "\"C3\""},
    {.meaning = Code{"definition.field.bearing.tolerance"}, .takes = kWord, .assumed = "normal",
     .assumed_from = "ISO 492: no sign means normal", .words = kTolerances, .example = "\"normal\""},
    {.meaning = Code{"definition.field.bearing.misalignment"}, .takes = kQuantity, .kind = Kind::angle,
     .range = {0, 5 * kDegree, true}, .assumed = "10′", .assumed_from = "deep groove ball bearing, about 2 to 10′; common practice",
     .example = "\"10′\""},
    {.meaning = Code{"definition.field.bearing.greatest_heating"}, .takes = kQuantity, .kind = Kind::temperature,
     .range = {313.15, 473.15}, .assumed = "110 °C", .assumed_from = "common practice: 110 to 120 °C", .example = "\"110 °C\""},
    {.meaning = Code{"definition.field.bearing.outer_ring_inside"}, .takes = kQuantity, .kind = Kind::length,
     .range = kPartDiameter, .example = "\"86.5 mm\""},
    {.meaning = Code{"definition.field.hub.fit"}, .example = "\"100 N7\""},
    {.meaning = Code{"definition.field.hub.bore_least"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .example = "\"99.955 mm\""},
    {.meaning = Code{"definition.field.hub.bore_greatest"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .example = "\"99.990 mm\""},
    {.meaning = Code{"definition.field.hub.outside"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .required = true, .example = "\"150 mm\""},
    {.meaning = Code{"definition.field.hub.material"}, .required = true, .example = "\"cast_iron\""},
    {.meaning = Code{"definition.field.hub.roughness_loss"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 100 * kMicro},
     .assumed = "6 µm", .assumed_from = "DIN 7190-1: 0.8 of both Rz, turned hub about 6.3 µm, ground ring about 1.6 µm; from memory",
     .example = "\"6 µm\""},
    {.meaning = Code{"definition.field.hub.ovality"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 1 * kMm, true},
     .assumed_from = "half the size tolerance", .example = "\"0.015 mm\""},
    {.meaning = Code{"definition.field.hub.taper"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 1 * kMm, true},
     .assumed_from = "half the size tolerance", .example = "\"0.015 mm\""},
    {.meaning = Code{"definition.field.priced.part"}, .example = "\"TH-SEAL\""},
    {.meaning = Code{"definition.field.priced.price"}, .takes = kQuantity, .kind = Kind::money, .range = kPrice,
     .example = "\"6.50 GBP\""},

    // Spacers between rotors.
    {.meaning = Code{"definition.field.between.spacer"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .required = true, .example = "\"92 mm\"", .change = 4},
    {.meaning = Code{"definition.field.between.tolerance"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .assumed_from = kIso2768, .example = "\"0.1 mm\""},
    {.meaning = Code{"definition.field.between.above"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .example = "\"0 mm\""},
    {.meaning = Code{"definition.field.between.below"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .example = "\"0.2 mm\""},
    {.meaning = Code{"definition.field.between.outside"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .assumed_from = kByKind, .example = "\"55 mm\""},
    {.meaning = Code{"definition.field.between.minutes_off"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .assumed_from = kByKind, .example = "\"1 min\""},
    {.meaning = Code{"definition.field.between.minutes_on"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .assumed_from = kByKind, .example = "\"1 min\""},
    {.meaning = Code{"definition.field.between.part"}, .example = "\"TH-SP-92\""},
    {.meaning = Code{"definition.field.between.price"}, .takes = kQuantity, .kind = Kind::money, .range = kPrice,
     .example = "\"9.00 GBP\""},

    // The stack.
    {.meaning = Code{"definition.field.stack.order"}, .takes = kTables, .required = true, .table = "station"},
    {.meaning = Code{"definition.field.stack.tolerance"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .assumed_from = kIso2768, .example = "\"0.1 mm\""},
    {.meaning = Code{"definition.field.station.nut"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"34 mm\""},
    {.meaning = Code{"definition.field.station.washer"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"6 mm\""},
    {.meaning = Code{"definition.field.station.hanger"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"31 mm\""},
    {.meaning = Code{"definition.field.station.spacer"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"50 mm\""},
    {.meaning = Code{"definition.field.station.rotor"}, .takes = kQuantity | kWord, .kind = Kind::length, .range = kPartLength,
     .words = kTwoHalves, .example = "\"68 mm\""},
    {.meaning = Code{"definition.field.station.pulley"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"70 mm\""},
    {.meaning = Code{"definition.field.station.shoulder"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"12 mm\""},
    {.meaning = Code{"definition.field.station.own"}, .takes = kQuantity, .kind = Kind::length, .range = kPartLength,
     .example = "\"40 mm\""},
    {.meaning = Code{"definition.field.station.name"}, .example = "\"guard disc\""},
    {.meaning = Code{"definition.field.station.repeat"}, .takes = kWhole, .range = {1, 240}, .assumed = "1",
     .assumed_from = "one line is one part", .example = "9", .change = 5},
    {.meaning = Code{"definition.field.station.between"}, .takes = kTable, .table = "between"},
    {.meaning = Code{"definition.field.station.with"}, .takes = kTable, .table = "rotor", .example = "{ lean = \"2°\" }"},
    {.meaning = Code{"definition.field.station.label"}, .example = "\"S3\""},
    {.meaning = Code{"definition.field.station.tolerance"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .assumed_from = kIso2768, .example = "\"0.1 mm\""},
    {.meaning = Code{"definition.field.station.above"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .example = "\"0 mm\""},
    {.meaning = Code{"definition.field.station.below"}, .takes = kQuantity, .kind = Kind::length, .range = kDeviation,
     .example = "\"0.2 mm\""},
    {.meaning = Code{"definition.field.station.outside"}, .takes = kQuantity, .kind = Kind::length, .range = kPartDiameter,
     .assumed_from = kByKind, .example = "\"110 mm\""},
    {.meaning = Code{"definition.field.station.minutes_off"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .assumed_from = kByKind, .example = "\"4 min\""},
    {.meaning = Code{"definition.field.station.minutes_on"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .assumed_from = kByKind, .example = "\"5 min\""},
    {.meaning = Code{"definition.field.station.obstacle"}, .takes = kFlag, .assumed = "false",
     .assumed_from = "only a shoulder stays; everything else comes off", .example = "true"},
    {.meaning = Code{"definition.field.station.fit_before"}, .takes = kTables, .table = "captive",
     .example = "[ { part = \"flange bolts of hanger B\", count = 4 } ]"},
    {.meaning = Code{"definition.field.station.part"}, .example = "\"TH-PULLEY\""},
    {.meaning = Code{"definition.field.station.price"}, .takes = kQuantity, .kind = Kind::money, .range = kPrice,
     .example = "\"85.00 GBP\""},
    {.meaning = Code{"definition.field.captive.part"}, .required = true, .example = "\"flange bolts of hanger B\""},
    {.meaning = Code{"definition.field.captive.count"}, .takes = kWhole, .range = {1, 100}, .assumed = "1",
     .assumed_from = "one part unless a count is given", .example = "4"},

    // The nuts.
    {.meaning = Code{"definition.field.nut.torque"}, .takes = kQuantity, .kind = Kind::torque, .range = {0, 2e4, true},
     .example = "\"900 ft·lb\""},
    {.meaning = Code{"definition.field.nut.tolerance"}, .takes = kNumber, .kind = Kind::ratio, .range = {0.001, 0.5},
     .assumed = "10 %", .assumed_from = "common practice", .example = "\"10 %\""},
    {.meaning = Code{"definition.field.nut.thread"}, .example = "\"1 1/2-6 UNC\""},
    {.meaning = Code{"definition.field.nut.lubrication"}, .takes = kWord, .assumed = "oiled",
     .assumed_from = "common practice: threads are oiled unless the manual says dry", .words = kLubrications,
     .example = "\"oiled\""},
    {.meaning = Code{"definition.field.nut.nut_factor_least"}, .takes = kNumber, .kind = Kind::ratio, .range = {0.03, 1},
     .assumed_from = "published range for the lubrication", .example = "0.12"},
    {.meaning = Code{"definition.field.nut.nut_factor_greatest"}, .takes = kNumber, .kind = Kind::ratio, .range = {0.03, 1},
     .assumed_from = "published range for the lubrication", .example = "0.20"},
    {.meaning = Code{"definition.field.nut.class"}, .example = "\"grade 8\""},
    {.meaning = Code{"definition.field.nut.first"}, .takes = kWord, .assumed = "A",
     .assumed_from = "end A first: no order was given", .words = kEnds, .example = "\"A\""},
    {.meaning = Code{"definition.field.nut.A"}, .takes = kTable, .table = "one_nut", .example = "{ torque = \"900 ft·lb\" }"},
    {.meaning = Code{"definition.field.nut.B"}, .takes = kTable, .table = "one_nut", .example = "{ torque = \"900 ft·lb\" }"},
    {.meaning = Code{"definition.field.one_nut.torque"}, .takes = kQuantity, .kind = Kind::torque, .range = {0, 2e4, true},
     .example = "\"900 ft·lb\""},
    {.meaning = Code{"definition.field.one_nut.tolerance"}, .takes = kNumber, .kind = Kind::ratio, .range = {0.001, 0.5},
     .example = "\"10 %\""},
    {.meaning = Code{"definition.field.one_nut.thread"}, .example = "\"M36x3\""},
    {.meaning = Code{"definition.field.one_nut.lubrication"}, .takes = kWord, .words = kLubrications, .example = "\"oiled\""},
    {.meaning = Code{"definition.field.one_nut.nut_factor_least"}, .takes = kNumber, .kind = Kind::ratio, .range = {0.03, 1},
     .example = "0.12"},
    {.meaning = Code{"definition.field.one_nut.nut_factor_greatest"}, .takes = kNumber, .kind = Kind::ratio,
     .range = {0.03, 1}, .example = "0.20"},
    {.meaning = Code{"definition.field.one_nut.class"}, .example = "\"grade 8\""},

    // Minutes by kind of part.
    {.meaning = Code{"definition.field.minutes.nut"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"6 min\", on = \"8 min\" }"},
    {.meaning = Code{"definition.field.minutes.washer"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"1 min\", on = \"1 min\" }"},
    {.meaning = Code{"definition.field.minutes.spacer"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"1 min\", on = \"1 min\" }"},
    {.meaning = Code{"definition.field.minutes.rotor"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"4 min\", on = \"5 min\" }"},
    {.meaning = Code{"definition.field.minutes.hanger"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"10 min\", on = \"12 min\" }"},
    {.meaning = Code{"definition.field.minutes.pulley"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"12 min\", on = \"15 min\" }"},
    {.meaning = Code{"definition.field.minutes.own"}, .takes = kTable, .table = "off_on",
     .example = "{ off = \"5 min\", on = \"5 min\" }"},
    {.meaning = Code{"definition.field.off_on.off"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .required = true, .example = "\"4 min\""},
    {.meaning = Code{"definition.field.off_on.on"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .required = true, .example = "\"5 min\""},

    // Own materials.
    {.meaning = Code{"definition.field.material.youngs_modulus"}, .takes = kQuantity, .kind = Kind::pressure,
     .range = {1e9, 1e12}, .required = true, .example = "\"170 GPa\""},
    {.meaning = Code{"definition.field.material.poisson"}, .takes = kNumber, .kind = Kind::ratio, .range = {0, 0.499},
     .required = true, .example = "0.275"},
    {.meaning = Code{"definition.field.material.yield"}, .takes = kQuantity, .kind = Kind::pressure, .range = {1e6, 5e9},
     .required = true, .example = "\"310 MPa\""},
    {.meaning = Code{"definition.field.material.expansion"}, .takes = kQuantity, .kind = Kind::expansion,
     .range = {0, 1e-4}, .required = true, .example = "\"11 µm/(m·K)\""},
    {.meaning = Code{"definition.field.material.expansion_half_width"}, .takes = kNumber, .kind = Kind::ratio,
     .range = {0, 0.5}, .assumed = "10 %", .assumed_from = "spread between handbooks; rectangular", .example = "\"10 %\""},

    // Policies.
    {.meaning = Code{"definition.field.policy.renew_disturbed"}, .takes = kFlag, .assumed = "true",
     .assumed_from = "common practice", .example = "true"},
    {.meaning = Code{"definition.field.policy.decision"}, .takes = kWord, .assumed = "guard_u", .assumed_from = "ISO 14253-1",
     .words = kDecisions, .example = "\"guard_u\""},
    {.meaning = Code{"definition.field.policy.look_at_a_mark"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .assumed = "1 min", .assumed_from = "common practice", .example = "\"1 min\""},
    {.meaning = Code{"definition.field.policy.turn_a_half"}, .takes = kQuantity, .kind = Kind::time, .range = kMinutes,
     .assumed = "5 min", .assumed_from = "common practice", .example = "\"5 min\""},
    {.meaning = Code{"definition.field.policy.furthest_from_20"}, .takes = kQuantity, .kind = Kind::temperature_rise,
     .range = {0, 100, true}, .assumed = "15 K", .assumed_from = "common practice", .example = "\"15 K\""},
    {.meaning = Code{"definition.field.policy.open_joint_step"}, .takes = kQuantity, .kind = Kind::length,
     .range = {0, 50 * kMm, true}, .assumed = "1.5 mm", .assumed_from = "common practice", .example = "\"1.5 mm\""},
    {.meaning = Code{"definition.field.policy.least_open_gap"}, .takes = kQuantity, .kind = Kind::length,
     .range = {0, 50 * kMm, true}, .assumed_from = "half the step of an open joint", .example = "\"0.75 mm\""},
    {.meaning = Code{"definition.field.policy.one_person_pull"}, .takes = kQuantity, .kind = Kind::force,
     .range = {0, 2000, true}, .assumed = "400 N", .assumed_from = "common practice", .example = "\"400 N\""},

    // Unbalance that is not a rotor's.
    {.meaning = Code{"definition.field.unbalance.at"}, .required = true, .example = "\"pulley\""},
    {.meaning = Code{"definition.field.unbalance.amount"}, .takes = kQuantity, .kind = Kind::unbalance, .range = {0, 1e3, true},
     .required = true, .example = "\"12 g·m\""},
    {.meaning = Code{"definition.field.unbalance.flat"}, .takes = kWhole, .range = kFlat, .required = true, .example = "3"},
};

}  // namespace

std::span<const Field> shaft_fields() { return kFields; }

}  // namespace flatwise::definition
