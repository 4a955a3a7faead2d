// The keys of a workshop file.
#include <array>

#include "definition/field_lists.h"

namespace flatwise::definition {
namespace {

using namespace takes;
using std::string_view;

constexpr std::array<string_view, 6> kUses{"bore gauge", "thermometer", "length", "feeler", "wrench", "press gauge"};
constexpr Range kDiameter{0.001, 2};

constexpr Field kFields[] = {
    {.meaning = Code{"definition.field.workshop_file.workshop"}, .takes = kTable, .required = true, .table = "workshop"},
    {.meaning = Code{"definition.field.workshop_file.gauge"}, .takes = kTables, .table = "gauge"},
    {.meaning = Code{"definition.field.workshop_file.stock"}, .takes = kTables, .table = "stock"},
    {.meaning = Code{"definition.field.workshop_file.press"}, .takes = kTables, .table = "press"},

    {.meaning = Code{"definition.field.workshop.name"}, .required = true, .example = "\"Workshop at the weir\""},
    {.meaning = Code{"definition.field.workshop.invented"}, .takes = kFlag, .assumed = "false",
     .assumed_from = "a workshop is real unless its file says otherwise", .example = "true"},
    {.meaning = Code{"definition.field.workshop.currency"}, .required = true, .example = "\"GBP\""},
    {.meaning = Code{"definition.field.workshop.rate"}, .takes = kQuantity, .kind = Kind::money_rate, .range = {0, 10},
     .example = "\"48 GBP/h\""},
    {.meaning = Code{"definition.field.workshop.room"}, .takes = kQuantity, .kind = Kind::temperature,
     .range = {253.15, 323.15}, .assumed = "20 °C", .assumed_from = "room temperature was not given", .example = "\"18 °C\""},
    {.meaning = Code{"definition.field.workshop.room_half_width"}, .takes = kQuantity, .kind = Kind::temperature_rise,
     .range = {0, 30}, .assumed = "5 K", .assumed_from = "common practice; rectangular", .example = "\"5 K\""},

    {.meaning = Code{"definition.field.gauge.id"}, .required = true, .example = "\"BG-1\""},
    {.meaning = Code{"definition.field.gauge.use"}, .takes = kWord, .required = true, .words = kUses,
     .example = "\"bore gauge\""},
    {.meaning = Code{"definition.field.gauge.calibration"}, .takes = kReading, .required = true, .example = "\"2.5 µm\""},
    {.meaning = Code{"definition.field.gauge.resolution"}, .takes = kReading, .required = true, .example = "\"1 µm\""},
    {.meaning = Code{"definition.field.gauge.repeatability"}, .takes = kReading, .example = "\"1.2 µm\""},
    {.meaning = Code{"definition.field.gauge.repeatability_readings"}, .takes = kWhole, .range = {2, 1000}, .example = "20"},
    {.meaning = Code{"definition.field.gauge.expansion"}, .takes = kQuantity, .kind = Kind::expansion, .range = {0, 1e-4},
     .assumed = "11.5e-6 /K", .assumed_from = "steel gauge; handbook value", .example = "\"11.5e-6 /K\""},
    {.meaning = Code{"definition.field.gauge.setting_ring"}, .takes = kQuantity, .kind = Kind::length, .range = kDiameter,
     .example = "\"100 mm\""},
    {.meaning = Code{"definition.field.gauge.setting_ring_calibration"}, .takes = kQuantity, .kind = Kind::length,
     .range = {0, 0.001}, .example = "\"1.5 µm\""},
    {.meaning = Code{"definition.field.gauge.least"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 10},
     .example = "\"50 mm\""},
    {.meaning = Code{"definition.field.gauge.greatest"}, .takes = kQuantity, .kind = Kind::length, .range = {0, 10},
     .example = "\"160 mm\""},
    {.meaning = Code{"definition.field.gauge.calibrated_until"}, .takes = kDay, .required = true, .example = "2027-03-31"},
    {.meaning = Code{"definition.field.gauge.accepted_overdue_by"}, .example = "\"the lead, by name\""},

    {.meaning = Code{"definition.field.stock.part"}, .required = true, .example = "\"TH-SEAL\""},
    {.meaning = Code{"definition.field.stock.name"}, .required = true, .example = "\"seal\""},
    {.meaning = Code{"definition.field.stock.on_shelf"}, .takes = kWhole, .range = {0, 100000}, .required = true,
     .example = "12"},
    {.meaning = Code{"definition.field.stock.on_order"}, .takes = kWhole, .range = {0, 100000}, .assumed = "0",
     .assumed_from = "nothing on order unless it is said", .example = "0"},

    {.meaning = Code{"definition.field.press.interference"}, .takes = kQuantity, .kind = Kind::length,
     .range = {-0.001, 0.001}, .required = true, .example = "\"22 µm\""},
    {.meaning = Code{"definition.field.press.joint_diameter"}, .takes = kQuantity, .kind = Kind::length, .range = kDiameter,
     .required = true, .example = "\"100 mm\""},
    {.meaning = Code{"definition.field.press.width"}, .takes = kQuantity, .kind = Kind::length, .range = kDiameter,
     .required = true, .example = "\"21 mm\""},
    {.meaning = Code{"definition.field.press.force"}, .takes = kQuantity, .kind = Kind::force, .range = {0, 5e6},
     .required = true, .example = "\"5200 lbf\""},
};

}  // namespace

std::span<const Field> workshop_fields() { return kFields; }

}  // namespace flatwise::definition
