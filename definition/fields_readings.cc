// The keys of a readings file.
#include <array>
#include <numbers>

#include "definition/field_lists.h"

namespace flatwise::definition {
namespace {

using namespace takes;
using std::string_view;

constexpr double kDegree = std::numbers::pi / 180;
constexpr std::array<string_view, 2> kEnds{"A", "B"};
constexpr std::array<string_view, 1> kNotRead{"not read"};
constexpr std::array<string_view, 3> kRings{"outer", "inner", "not seen"};
constexpr std::array<string_view, 3> kReplies{"yes", "no", "not seen"};
constexpr std::array<string_view, 2> kTools{"wrench", "bar"};
constexpr Range kNumber1{1, 240}, kFlat{1, 24}, kLength{1e-6, 50}, kTemperature{223.15, 573.15};

constexpr Field kFields[] = {
    {.meaning = Code{"definition.field.readings_file.readings"}, .takes = kTable, .required = true, .table = "readings"},
    {.meaning = Code{"definition.field.readings_file.rotor"}, .takes = kTables, .table = "rotor"},
    {.meaning = Code{"definition.field.readings_file.part"}, .takes = kTables, .table = "part"},
    {.meaning = Code{"definition.field.readings_file.stack"}, .takes = kTable | kTables, .table = "stack"},
    {.meaning = Code{"definition.field.readings_file.feeler"}, .takes = kTables, .table = "feeler"},
    {.meaning = Code{"definition.field.readings_file.torque"}, .takes = kTables, .table = "torque"},
    {.meaning = Code{"definition.field.readings_file.answers"}, .takes = kAnswers, .words = kReplies,
     .example = "{ guards_on = \"yes\" }"},

    {.meaning = Code{"definition.field.readings.shaft"}, .example = "\"long-nine.toml\""},
    {.meaning = Code{"definition.field.readings.workshop"}, .example = "\"workshop.toml\""},
    {.meaning = Code{"definition.field.readings.job"}, .required = true, .example = "\"2026-031\""},
    {.meaning = Code{"definition.field.readings.date"}, .takes = kDay, .required = true, .example = "2026-11-25"},
    {.meaning = Code{"definition.field.readings.came_off"}, .takes = kWhole | kList, .range = kNumber1,
     .example = "[4, 5, 6]"},
    {.meaning = Code{"definition.field.readings.still_off"}, .takes = kWhole | kList, .range = kNumber1, .example = "[4]"},
    {.meaning = Code{"definition.field.readings.new_set"}, .takes = kWhole | kList, .range = kNumber1,
     .example = "[4, 5, 6]"},
    {.meaning = Code{"definition.field.readings.labels_back"}, .takes = kText | kList,
     .example = "[\"S1\", \"S2\", \"\", \"S4\"]"},

    {.meaning = Code{"definition.field.rotor.number"}, .takes = kWhole, .range = kNumber1, .required = true, .example = "4"},
    {.meaning = Code{"definition.field.rotor.marks"}, .takes = kTable, .table = "marks", .example = "{ a = 4, b = 1 }"},
    {.meaning = Code{"definition.field.rotor.bore"}, .takes = kTable | kTables, .table = "bore",
     .example = "{ gauge = \"BG-1\", part = \"72 °F\", A = [\"3.9362 in\", \"3.9363 in\", \"3.9362 in\", \"3.9361 in\"] }"},
    {.meaning = Code{"definition.field.rotor.half_lengths"}, .takes = kTable, .table = "half_lengths",
     .example = "{ gauge = \"MIC-1\", a = \"34.02 mm\", b = \"33.98 mm\" }"},
    {.meaning = Code{"definition.field.rotor.press"}, .takes = kTable | kTables, .table = "press",
     .example = "{ force = \"5200 lbf\", gauge = \"PG-1\", ring = \"outer\" }"},
    {.meaning = Code{"definition.field.rotor.fitted"}, .example = "\"TH-100-C3\""},
    {.meaning = Code{"definition.field.rotor.lean_marked"}, .takes = kTable, .table = "lean_marked",
     .example = "{ a = \"5°\", b = \"5°\" }"},
    {.meaning = Code{"definition.field.rotor.rings_sound"}, .takes = kWord | kList, .words = kReplies,
     .example = "[\"yes\", \"yes\"]"},
    {.meaning = Code{"definition.field.rotor.count_out"}, .takes = kTable, .table = "count_out",
     .example = "{ set = { laid = 1, left = 0 }, seal = { laid = 2, left = 0 }, snap_ring = { laid = 2, left = 0 } }"},
    {.meaning = Code{"definition.field.count_out.set"}, .takes = kTable, .table = "counted", .example = "{ laid = 1, left = 0 }"},
    {.meaning = Code{"definition.field.count_out.seal"}, .takes = kTable, .table = "counted", .example = "{ laid = 2, left = 0 }"},
    {.meaning = Code{"definition.field.count_out.snap_ring"}, .takes = kTable, .table = "counted",
     .example = "{ laid = 2, left = 0 }"},
    {.meaning = Code{"definition.field.counted.laid"}, .takes = kWhole, .range = {0, 1000}, .required = true, .example = "2"},
    {.meaning = Code{"definition.field.counted.left"}, .takes = kWhole, .range = {0, 1000}, .example = "0"},
    {.meaning = Code{"definition.field.marks.a"}, .takes = kWhole | kWord, .range = kFlat, .words = kNotRead, .example = "4"},
    {.meaning = Code{"definition.field.marks.b"}, .takes = kWhole | kWord, .range = kFlat, .words = kNotRead, .example = "1"},
    {.meaning = Code{"definition.field.bore.gauge"}, .required = true, .example = "\"BG-1\""},
    {.meaning = Code{"definition.field.bore.part"}, .takes = kQuantity, .kind = Kind::temperature, .range = kTemperature,
     .example = "\"72 °F\""},
    {.meaning = Code{"definition.field.bore.gauge_at"}, .takes = kQuantity, .kind = Kind::temperature, .range = kTemperature,
     .example = "\"70 °F\""},
    {.meaning = Code{"definition.field.bore.thermometer"}, .example = "\"TH-1\""},
    {.meaning = Code{"definition.field.bore.directions"}, .takes = kQuantity | kList, .kind = Kind::angle,
     .range = {0, 360 * kDegree}, .example = "[\"0°\", \"90°\"]"},
    {.meaning = Code{"definition.field.bore.A"}, .takes = kQuantity | kWord | kList, .kind = Kind::length, .range = kLength,
     .words = kNotRead, .example = "[\"3.9362 in\", \"3.9363 in\", \"3.9362 in\", \"3.9361 in\"]"},
    {.meaning = Code{"definition.field.bore.B"}, .takes = kQuantity | kWord | kList, .kind = Kind::length, .range = kLength,
     .words = kNotRead, .example = "[\"99.981 mm\", \"99.983 mm\", \"99.981 mm\", \"99.980 mm\"]"},
    {.meaning = Code{"definition.field.half_lengths.gauge"}, .required = true, .example = "\"MIC-1\""},
    {.meaning = Code{"definition.field.half_lengths.a"}, .takes = kQuantity, .kind = Kind::length, .range = kLength,
     .example = "\"34.02 mm\""},
    {.meaning = Code{"definition.field.half_lengths.b"}, .takes = kQuantity, .kind = Kind::length, .range = kLength,
     .example = "\"33.98 mm\""},
    {.meaning = Code{"definition.field.press.force"}, .takes = kQuantity, .kind = Kind::force, .range = {0, 5e6},
     .required = true, .example = "\"5200 lbf\""},
    {.meaning = Code{"definition.field.press.gauge"}, .required = true, .example = "\"PG-1\""},
    {.meaning = Code{"definition.field.press.ring"}, .takes = kWord, .words = kRings, .example = "\"outer\""},
    {.meaning = Code{"definition.field.lean_marked.a"}, .takes = kQuantity, .kind = Kind::angle, .range = {0, 30 * kDegree},
     .example = "\"5°\""},
    {.meaning = Code{"definition.field.lean_marked.b"}, .takes = kQuantity, .kind = Kind::angle, .range = {0, 30 * kDegree},
     .example = "\"5°\""},

    {.meaning = Code{"definition.field.part.label"}, .required = true, .example = "\"S3\""},
    {.meaning = Code{"definition.field.part.length"}, .takes = kQuantity, .kind = Kind::length, .range = kLength,
     .required = true, .example = "\"92.03 mm\""},
    {.meaning = Code{"definition.field.part.gauge"}, .required = true, .example = "\"MIC-1\""},
    {.meaning = Code{"definition.field.stack.length"}, .takes = kQuantity, .kind = Kind::length, .range = kLength,
     .required = true, .example = "\"1431.2 mm\""},
    {.meaning = Code{"definition.field.stack.gauge"}, .required = true, .example = "\"TM-1\""},
    {.meaning = Code{"definition.field.feeler.joint"}, .takes = kWhole, .range = {1, 1000}, .required = true, .example = "3"},
    {.meaning = Code{"definition.field.feeler.passed"}, .takes = kFlag, .required = true, .example = "false"},
    {.meaning = Code{"definition.field.feeler.blade"}, .takes = kQuantity, .kind = Kind::length, .range = {1e-6, 0.01},
     .required = true, .example = "\"0.05 mm\""},
    {.meaning = Code{"definition.field.feeler.gauge"}, .required = true, .example = "\"FG-1\""},
    {.meaning = Code{"definition.field.torque.nut"}, .takes = kWord, .required = true, .words = kEnds, .example = "\"A\""},
    {.meaning = Code{"definition.field.torque.with"}, .takes = kWord, .required = true, .words = kTools,
     .example = "\"wrench\""},
    {.meaning = Code{"definition.field.torque.shown"}, .takes = kQuantity, .kind = Kind::torque, .range = {0, 2e4},
     .example = "\"350 ft·lb\""},
    {.meaning = Code{"definition.field.torque.pull"}, .takes = kQuantity, .kind = Kind::force, .range = {0, 1e4},
     .example = "\"200 lbf\""},
    {.meaning = Code{"definition.field.torque.gauge"}, .example = "\"TW-1\""},
    {.meaning = Code{"definition.field.torque.tool_length"}, .takes = kQuantity, .kind = Kind::length, .range = {0.01, 10},
     .example = "\"5 ft\""},
    {.meaning = Code{"definition.field.torque.extension"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 3},
     .example = "\"9 in\""},
    {.meaning = Code{"definition.field.torque.extension_angle"}, .takes = kQuantity, .kind = Kind::angle,
     .range = {-180 * kDegree, 180 * kDegree}, .assumed = "0°", .assumed_from = "straight on", .example = "\"0°\""},
    {.meaning = Code{"definition.field.torque.pull_angle"}, .takes = kQuantity, .kind = Kind::angle,
     .range = {1 * kDegree, 179 * kDegree}, .assumed = "90°", .assumed_from = "square to the tool", .example = "\"90°\""},
    {.meaning = Code{"definition.field.torque.multiplier"}, .takes = kNumber, .kind = Kind::ratio, .range = {1, 200},
     .assumed = "1", .assumed_from = "no multiplier", .example = "4"},
};

}  // namespace

std::span<const Field> readings_fields() { return kFields; }

}  // namespace flatwise::definition
