// The keys of a study file.
#include "definition/field_lists.h"
#include "definition/fields_shared.h"

namespace flatwise::definition {
namespace {

using namespace takes;
using std::string_view;

constexpr Field kFields[] = {
    {.meaning = Code{"definition.field.study_file.study"}, .takes = kTable, .required = true, .table = "study"},
    {.meaning = Code{"definition.field.study_file.way"}, .takes = kTables, .required = true, .table = "way"},

    {.meaning = Code{"definition.field.study.name"}, .example = "\"Row looseners: three ways\""},
    {.meaning = Code{"definition.field.study.shaft"}, .required = true, .example = "\"five.toml\""},
    {.meaning = Code{"definition.field.study.ground"},
     .takes = kQuantity,
     .kind = Kind::force,
     .range = {0, 1e6},
     .example = "\"1.5 kN\""},
    {.meaning = Code{"definition.field.study.error_share"},
     .takes = kQuantity,
     .kind = Kind::ratio,
     .range = {0, 1},
     .example = "\"3 %\""},
    {.meaning = Code{"definition.field.study.error_azimuth"},
     .takes = kQuantity,
     .kind = Kind::angle,
     .range = {0, 30 * kDegree},
     .example = "\"0.5°\""},

    {.meaning = Code{"definition.field.way.name"}, .required = true, .example = "\"Thirds\""},
    {.meaning = Code{"definition.field.way.pattern"},
     .takes = kWord | kTable,
     .words = kFacing,
     .table = "pattern",
     .example = "{ step = 2 }"},
    {.meaning = Code{"definition.field.way.speed"},
     .takes = kQuantity,
     .kind = Kind::angular_speed,
     .range = {0, 6000 * kTurnsPerMinute},
     .example = "\"480 /min\""},
    {.meaning = Code{"definition.field.way.lean"},
     .takes = kQuantity,
     .kind = Kind::angle,
     .range = {0, 30 * kDegree},
     .example = "\"5°\""},
    {.meaning = Code{"definition.field.way.clearance"}, .example = "\"C3\""},
    {.meaning = Code{"definition.field.way.fit"}, .example = "\"100 N7\""},
    {.meaning = Code{"definition.field.pattern.step"}, .takes = kWhole, .range = {1, 23}, .example = "2"},
    {.meaning = Code{"definition.field.pattern.flats"},
     .takes = kWhole | kList,
     .range = {1, 24},
     .example = "[1, 4, 1]"},
};

}  // namespace

std::span<const Field> study_fields() { return kFields; }

}  // namespace flatwise::definition
