// The keys of a shaft file, joined from its parts. To add one: a row in the list of its part, its sentence in
// words/en/definition.toml, and its reading.
#include <vector>

#include "definition/field_lists.h"
#include "definition/fields_shared.h"

namespace flatwise::definition {
namespace {

using namespace takes;

constexpr Range kFlatsRange{3, 24};

constexpr Field kFields[] = {
    // The file.
    {.meaning = Code{"definition.field.shaft_file.shaft"}, .takes = kTable, .required = true, .table = "shaft"},
    {.meaning = Code{"definition.field.shaft_file.rotor"}, .takes = kTable, .required = true, .table = "rotor"},
    {.meaning = Code{"definition.field.shaft_file.between"}, .takes = kTable, .table = "between"},
    {.meaning = Code{"definition.field.shaft_file.stack"}, .takes = kTable, .required = true, .table = "stack"},
    {.meaning = Code{"definition.field.shaft_file.nut"}, .takes = kTable, .table = "nut"},
    {.meaning = Code{"definition.field.shaft_file.clamped"}, .takes = kTable, .table = "clamped"},
    {.meaning = Code{"definition.field.shaft_file.minutes"}, .takes = kTable, .table = "minutes"},
    {.meaning = Code{"definition.field.shaft_file.material"}, .takes = kOpenTable, .table = "material"},
    {.meaning = Code{"definition.field.shaft_file.policy"}, .takes = kTable, .table = "policy"},
    {.meaning = Code{"definition.field.shaft_file.unbalance"}, .takes = kTables, .table = "unbalance"},
    {.meaning = Code{"definition.field.shaft_file.bar"}, .takes = kTable, .table = "bar"},
    {.meaning = Code{"definition.field.shaft_file.load"}, .takes = kTables, .table = "load"},
    {.meaning = Code{"definition.field.shaft_file.test_run"}, .takes = kTable, .table = "test_run"},
    {.meaning = Code{"definition.field.shaft_file.service"}, .takes = kTable, .table = "service"},

    // The shaft.
    {.meaning = Code{"definition.field.shaft.name"},
     .required = true,
     .example = "\"Row looseners, seven\"",
     .change = 1},
    {.meaning = Code{"definition.field.shaft.invented"},
     .takes = kFlag,
     .assumed = "false",
     .assumed_from = "a shaft is real unless its file says otherwise",
     .example = "true"},
    {.meaning = Code{"definition.field.shaft.flats"},
     .takes = kWhole,
     .range = kFlatsRange,
     .required = true,
     .example = "6"},
    {.meaning = Code{"definition.field.shaft.across"},
     .takes = kQuantity,
     .kind = Kind::length,
     .range = {5 * kMm, 0.5},
     .required = true,
     .example = "\"1 1/2 in\"",
     .change = 2},
    {.meaning = Code{"definition.field.shaft.speed"},
     .takes = kQuantity,
     .kind = Kind::angular_speed,
     .range = {0, 6000 * kTurnsPerMinute},
     .required = true,
     .example = "\"480 /min\""},
    {.meaning = Code{"definition.field.shaft.pattern"},
     .takes = kWord | kTable,
     .required = true,
     .words = kFacing,
     .table = "pattern",
     .example = "\"facing\""},
    {.meaning = Code{"definition.field.shaft.first_flat"}, .takes = kWhole, .range = kFlat, .example = "1"},
    {.meaning = Code{"definition.field.shaft.drive_end"},
     .takes = kWord,
     .assumed = "B",
     .assumed_from = "common practice",
     .words = kEnds,
     .example = "\"B\""},
    {.meaning = Code{"definition.field.shaft.travel"},
     .takes = kQuantity,
     .kind = Kind::speed,
     .range = {0, 30},
     .example = "\"6 km/h\""},
    {.meaning = Code{"definition.field.shaft.rolling_radius"},
     .takes = kQuantity,
     .kind = Kind::length,
     .range = {10 * kMm, 5},
     .example = "\"230 mm\""},
    {.meaning = Code{"definition.field.pattern.step"}, .takes = kWhole, .range = {1, 23}, .example = "2"},
    {.meaning = Code{"definition.field.pattern.flats"},
     .takes = kWhole | kList,
     .range = kFlat,
     .example = "[1, 4, 1]"},
};

}  // namespace

std::span<const Field> shaft_fields() {
  static const std::vector<Field> all = [] {
    std::vector<Field> joined(std::begin(kFields), std::end(kFields));
    for (const auto part : {rotor_fields(), stack_fields(), nut_fields(), policy_fields(), run_fields()})
      joined.insert(joined.end(), part.begin(), part.end());
    return joined;
  }();
  return all;
}

}  // namespace flatwise::definition
