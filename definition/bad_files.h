// bad_files.h: good files with one mistake each, and the one problem each must give. For tests.
//
// '¦' in what is put in marks where the problem must stand; a test takes it out and counts line and column by itself.
#pragma once

#include <string>
#include <string_view>

namespace flatwise::definition {

inline constexpr std::string_view kMark = "¦";

struct Bad {
  std::string_view from, to;  ///< The first `from` in the good file becomes `to`.
  std::string_view code, field;
};

/// Throws std::out_of_range where the good file does not have `from` any more.
inline std::string broken(std::string good, const Bad& bad) {
  return good.replace(good.find(bad.from), bad.from.size(), bad.to);
}

inline constexpr Bad kBadShafts[] = {
    // The text itself.
    {"name = \"Row looseners, nine\"", "name = \"Row¦\xE9\"", "definition.not_utf8", "file"},
    {"flats = 6", "flats = 6 ¦7", "definition.syntax", "file"},
    {"flats = 6", "flats = 6\nflats = ¦8", "definition.given_twice", "flats"},
    {"[rotor]  ", "¦[shaft]", "definition.given_twice", "shaft"},
    {"pattern = \"facing\"", "pattern = \"facing¦", "definition.syntax", "file"},
    {"pattern = \"facing\"", "pattern = [[[[[[[[[[[[[[[[¦[1]]]]]]]]]]]]]]]]]", "definition.too_deep", "file"},
    {"pattern = \"facing\"", "a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a.a¦.a.a.a = 1", "definition.too_deep", "file"},
    // Keys.
    {"flats = 6", "¦falts = 6\nflats = 6", "definition.unknown_key", "shaft.falts"},
    {"lean = \"5°\"", "lean = \"5°\"\n¦\"länge\" = 3", "definition.unknown_key", "rotor.länge"},
    {"[policy]", "[¦polcy]", "definition.unknown_key", "polcy"},
    {"d = \"55 mm\"", "d = \"55 mm\", ¦e = 1", "definition.unknown_key", "rotor.bearing.e"},
    {"{ hanger = \"31 mm\",", "{ hanger = \"31 mm\", ¦lenght = \"3 mm\",", "definition.unknown_key",
     "stack.order[2].lenght"},
    {"[shaft]\nname = \"Row looseners, nine\"\n", "¦[shaft]\n", "definition.missing", "shaft.name"},
    {"[shaft]\nname = \"Row looseners, nine\"\ninvented = true\nflats = 6\n", "¦[shaft]\nname = \"Row\"\n",
     "definition.missing", "shaft.flats"},
    {"inertia = { across = \"0.085 kg·m²\", along = \"0.160 kg·m²\" }", "inertia = ¦{ across = \"0.085 kg·m²\" }",
     "definition.missing", "rotor.inertia.along"},
    {"[rotor]                # every rotor, unless its line in the stack says otherwise\nlean = \"5°\"", "¦[rotor]",
     "definition.missing", "rotor.lean"},
    {"fit_before = [ { part = \"flange bolts of hanger B\", count = 4 } ]", "fit_before = [ ¦{ count = 4 } ]",
     "definition.missing", "stack.order[8].fit_before[1].part"},
    {"[nut]\ntorque = \"900 ft·lb\"", "¦[nut]", "definition.missing", "nut.torque"},
    // Types.
    {"flats = 6", "flats = ¦\"six\"", "definition.wrong_type", "shaft.flats"},
    {"flats = 6", "flats = ¦6.0", "definition.wrong_type", "shaft.flats"},
    {"invented = true", "invented = ¦\"yes\"", "definition.wrong_type", "shaft.invented"},
    {"name = \"Row looseners, nine\"", "name = ¦9", "definition.wrong_type", "shaft.name"},
    {"name = \"Row looseners, nine\"", "name = ¦\"\"", "definition.empty", "shaft.name"},
    {"name = \"Row looseners, nine\"", "name = ¦\"two\\nlines\"", "definition.not_one_line", "shaft.name"},
    {"name = \"Row looseners, nine\"", "name = ¦2026-11-25", "definition.wrong_type", "shaft.name"},
    {"half = { length = \"34 mm\", tolerance = \"0.05 mm\" }", "half = ¦\"34 mm\"", "definition.wrong_type",
     "rotor.half"},
    {"pattern = \"facing\"", "pattern = ¦[1, 2]", "definition.wrong_type", "shaft.pattern"},
    {"rotor = { off = \"4 min\", on = \"5 min\" }", "rotor = ¦[\"4 min\"]", "definition.wrong_type", "minutes.rotor"},
    {"fit_before = [ { part = \"flange bolts of hanger B\", count = 4 } ]", "fit_before = [ ¦\"flange bolts\" ]",
     "definition.wrong_type", "stack.order[8].fit_before[1]"},
    {"[material.ductile_iron]", "[material]\nsoft = ¦3\n[material.ductile_iron]", "definition.wrong_type",
     "material.soft"},
    // Quantities.
    {"spacer = \"92 mm\"", "spacer = ¦92", "definition.number_without_unit", "between.spacer"},
    {"mass = \"11.6 kg\"", "mass = ¦11.6", "definition.number_without_unit", "rotor.mass"},
    {"mass = \"11.6 kg\"", "mass = ¦nan", "definition.number_without_unit", "rotor.mass"},
    {"spacer = \"92 mm\"", "spacer = ¦\"92\"", "quantity.no_unit", "between.spacer"},
    {"spacer = \"92 mm\"", "spacer = ¦\"92 kg\"", "quantity.other_kind", "between.spacer"},
    {"spacer = \"92 mm\"", "spacer = ¦\"92 mn\"", "quantity.unknown_unit", "between.spacer"},
    {"spacer = \"92 mm\"", "spacer = ¦\"nan mm\"", "quantity.not_finite", "between.spacer"},
    {"spacer = \"92 mm\"", "spacer = ¦\"-92 mm\"", "definition.out_of_range", "between.spacer"},
    {"spacer = \"92 mm\"", "spacer = ¦\"92 m\"", "definition.out_of_range", "between.spacer"},
    {"spacer = \"92 mm\"", "spacer = ¦\"9,2 mm\"", "quantity.comma", "between.spacer"},
    {"torque = \"900 ft·lb\"", "torque = ¦\"0 ft·lb\"", "definition.out_of_range", "nut.torque"},
    {"lean = \"5°\"", "lean = ¦\"31°\"", "definition.out_of_range", "rotor.lean"},
    {"{ spacer = \"50 mm\" }", "{ spacer = ¦\"50 in²\" }", "quantity.other_kind", "stack.order[3].spacer"},
    {"{ rotor = \"68 mm\", repeat = 9 }", "{ rotor = ¦\"two halfs\", repeat = 9 }", "quantity.no_number",
     "stack.order[4].rotor"},
    {"poisson = 0.275", "poisson = ¦0.6", "definition.out_of_range", "material.ductile_iron.poisson"},
    {"poisson = 0.275", "poisson = ¦inf", "definition.out_of_range", "material.ductile_iron.poisson"},
    {"tolerance = \"10 %\"", "tolerance = ¦\"10 mm\"", "quantity.other_kind", "nut.tolerance"},
    {"flats = 6", "flats = ¦2", "definition.out_of_range", "shaft.flats"},
    {"flats = 6", "flats = ¦9223372036854775807", "definition.out_of_range", "shaft.flats"},
    {"repeat = 9", "repeat = ¦0", "definition.out_of_range", "stack.order[4].repeat"},
    {"repeat = 9", "repeat = ¦100000", "definition.out_of_range", "stack.order[4].repeat"},
    // Choices.
    {"drive_end = \"B\"", "drive_end = ¦\"b\"", "definition.not_a_choice", "shaft.drive_end"},
    {"clearance = \"C3\"", "clearance = ¦\"C6\"", "definition.not_a_choice", "rotor.bearing.clearance"},
    {"pattern = \"facing\"", "pattern = ¦\"facin\"", "definition.not_a_choice", "shaft.pattern"},
    {"lubrication = \"oiled\"", "lubrication = ¦\"oil\"", "definition.not_a_choice", "nut.lubrication"},
    // What hangs on two keys.
    {"pattern = \"facing\"", "pattern = ¦{}", "definition.pattern_form", "shaft.pattern"},
    {"pattern = \"facing\"", "pattern = ¦{ step = 2, flats = [1] }", "definition.pattern_form", "shaft.pattern"},
    {"travel = \"6 km/h\"\nrolling_radius = \"230 mm\"\n", "travel = ¦\"6 km/h\"\n", "definition.rolling_needs_both",
     "shaft.travel"},
    {"fit = \"100 N7\",", "fit = ¦\"100 N7\", bore_least = \"99.9 mm\",", "definition.fit_and_limits", "rotor.hub.fit"},
    {"hub = { fit = \"100 N7\",", "hub = ¦{", "definition.no_bore", "rotor.hub.fit"},
    {"fit = \"100 N7\"", "fit = ¦\"100 W7\"", "fits.letter_unknown", "rotor.hub.fit"},
    {"fit = \"100 N7\"", "fit = ¦\"N77\"", "fits.grade_out_of_range", "rotor.hub.fit"},
    {"hub = { fit = \"100 N7\",", "hub = ¦{ bore_least = \"99.99 mm\", bore_greatest = \"99.95 mm\",",
     "shaft.bore_limits", "rotor.hub"},
    {"material = \"ductile_iron\"", "material = ¦\"ductile_irn\"", "definition.unknown_material", "rotor.hub.material"},
    {"tolerance = \"0.05 mm\" }", "tolerance = ¦\"0.05 mm\", above = \"0 mm\" }", "definition.tolerance_twice",
     "rotor.half.tolerance"},
    {"price = \"3.20 GBP\"", "price = ¦\"3.20 EUR\"", "definition.two_currencies", "rotor.snap_ring.price"},
    {"d = \"55 mm\"", "d = ¦\"38 mm\"", "definition.bearing_under_shaft", "rotor.bearing.d"},
    {"thread = \"1 1/2-6 UNC\"", "thread = ¦\"1 1/2\"", "fasteners.thread_without_pitch", "nut.thread"},
    {"lubrication = \"oiled\"", "nut_factor_least = ¦0.9", "definition.limits_crossed", "nut.nut_factor_least"},
    {"open_joint_step = \"1.5 mm\"", "open_joint_step = \"1.5 mm\"\nleast_open_gap = ¦\"2 mm\"",
     "definition.gap_over_step", "policy.least_open_gap"},
    {"at = \"pulley\"", "at = ¦\"puley\"", "definition.unknown_label", "unbalance[1].at"},
    // The stack.
    {"{ spacer = \"50 mm\" }", "¦{ outside = \"50 mm\" }", "definition.no_part", "stack.order[3]"},
    {"{ spacer = \"50 mm\" }", "{ spacer = \"50 mm\", hanger = ¦\"31 mm\" }", "definition.two_parts",
     "stack.order[3].hanger"},
    {"{ spacer = \"50 mm\" }", "{ spacer = \"50 mm\", with = ¦{ lean = \"2°\" } }", "definition.not_for_this_part",
     "stack.order[3].with"},
    {"{ spacer = \"50 mm\" }", "{ own = ¦\"50 mm\" }", "definition.own_needs_name", "stack.order[3].own"},
    {"{ rotor = \"68 mm\", repeat = 9 }", "{ rotor = \"68 mm\", repeat = 9, label = ¦\"R\" }",
     "definition.label_of_many", "stack.order[4].label"},
    {"{ spacer = \"50 mm\" }", "{ spacer = \"50 mm\", label = ¦\"hanger B\" }", "definition.label_twice",
     "stack.order[3].label"},
    {"{ washer = \"6 mm\", nut = \"34 mm\" }", "{ nut = \"34 mm\" }, { nut = ¦\"34 mm\" }", "definition.too_many_nuts",
     "stack.order[10].nut"},
    {"{ rotor = \"68 mm\", repeat = 9 }", "{ rotor = ¦\"60 mm\", repeat = 9 }", "definition.rotor_not_halves",
     "stack.order[4].rotor"},
    {"[between]              # the spacer between two rotors\nspacer = \"92 mm\"", "¦[between]", "definition.missing",
     "between.spacer"},
    // What Shaft::make finds, brought back to its line.
    {"first_flat = 1", "first_flat = ¦7", "shaft.flat_range", "shaft.first_flat"},
    {"[shaft]\nname = \"Row looseners, nine\"\ninvented = true\nflats = 6\nacross = \"1 1/2 in\"\nspeed = \"480 "
     "/min\"\n"
     "drive_end = \"B\"\ntravel = \"6 km/h\"\nrolling_radius = \"230 mm\"\npattern = \"facing\"\nfirst_flat = 1\n",
     "¦[shaft]\nname = \"x\"\nflats = 6\nacross = \"1 1/2 in\"\nspeed = \"480 /min\"\npattern = \"facing\"\n",
     "shaft.unbalance_needs_flat", "shaft.first_flat"},
    {"pattern = \"facing\"", "pattern = { step = ¦6 }", "shaft.step_range", "shaft.pattern.step"},
    {"pattern = \"facing\"", "pattern = { flats = ¦[1, 4, 1] }", "shaft.list_length", "shaft.pattern.flats"},
    {"along = \"0.160 kg·m²\"", "along = ¦\"0.180 kg·m²\"", "shaft.inertia_impossible", "rotor.inertia.along"},
    {"D = \"100 mm\"", "D = ¦\"110 mm\"", "shaft.bearing_not_hub", "rotor.bearing.D"},
    {"outside = \"150 mm\"", "outside = ¦\"99 mm\"", "shaft.hub_thin", "rotor.hub.outside"},
    {"repeat = 9", "repeat = 9, with = { mass = ¦\"0 kg\" }", "definition.out_of_range", "stack.order[4].with.mass"},
};

inline constexpr Bad kBadWorkshops[] = {
    {"currency = \"GBP\"", "currency = ¦\"pounds\"", "definition.currency_form", "workshop.currency"},
    {"rate = \"48 GBP/h\"", "rate = ¦\"48 EUR/h\"", "definition.rate_currency", "workshop.rate"},
    {"rate = \"48 GBP/h\"", "rate = ¦48", "definition.number_without_unit", "workshop.rate"},
    {"use = \"bore gauge\"", "use = ¦\"bore gage\"", "definition.not_a_choice", "gauge[1].use"},
    {"calibration = \"2.5 µm\"", "calibration = ¦\"2.5 K\"", "quantity.other_kind", "gauge[1].calibration"},
    {"calibration = \"2.5 µm\"", "calibration = ¦2.5", "definition.number_without_unit", "gauge[1].calibration"},
    {"calibration = \"2.5 µm\"", "calibration = ¦\"-2.5 µm\"", "definition.out_of_range", "gauge[1].calibration"},
    {"calibration = \"0.5 K\"", "calibration = ¦\"2 %\"", "definition.share_of_temperature", "gauge[2].calibration"},
    {"calibration = \"4 %\"", "calibration = ¦\"400 %\"", "definition.out_of_range", "gauge[5].calibration"},
    {"repeatability = \"1.2 µm\"\nrepeatability_readings = 20\n", "repeatability = ¦\"1.2 µm\"\n",
     "definition.needs_also", "gauge[1].repeatability"},
    {"setting_ring = \"100 mm\"\nsetting_ring_calibration = ", "setting_ring_calibration = ¦", "definition.needs_also",
     "gauge[1].setting_ring_calibration"},
    {"least = \"50 mm\"", "least = ¦\"500 mm\"", "definition.limits_crossed", "gauge[1].least"},
    {"calibrated_until = 2027-03-31", "calibrated_until = ¦\"2027-03-31\"", "definition.wrong_type",
     "gauge[1].calibrated_until"},
    {"calibrated_until = 2027-03-31", "calibrated_until = ¦0027-03-31", "definition.year", "gauge[1].calibrated_until"},
    {"id = \"TH-1\"", "id = ¦\"BG-1\"", "definition.named_twice", "gauge[2].id"},
    {"on_shelf = 12", "on_shelf = ¦-1", "definition.out_of_range", "stock[1].on_shelf"},
    {"force = \"5200 lbf\"", "force = ¦\"5200 lb\"", "quantity.other_kind", "press[1].force"},
};

inline constexpr Bad kBadReadings[] = {
    {"came_off = [7, 8, 9]", "came_off = [7, 8, 9, ¦10]", "definition.unknown_rotor", "readings.came_off"},
    {"came_off = [7, 8, 9]", "came_off = [7, 8, 9, ¦7]", "definition.listed_twice", "readings.came_off"},
    {"came_off = [7, 8, 9]", "came_off = [7, 8, 9, ¦\"1\"]", "definition.wrong_type", "readings.came_off[4]"},
    {"still_off = [7]", "still_off = ¦[6]", "definition.did_not_come_off", "readings.still_off"},
    {"labels_back = [\"S8\"", "labels_back = [¦\"S88\"", "definition.unknown_label", "readings.labels_back"},
    {"date = 2026-11-25", "date = ¦2026", "definition.wrong_type", "readings.date"},
    {"job = \"2026-031\"", "job = ¦2026", "definition.wrong_type", "readings.job"},
    {"number = 8", "number = ¦10", "definition.unknown_rotor", "rotor[2].number"},
    {"number = 8", "number = ¦7", "definition.rotor_twice", "rotor[2].number"},
    {"marks = { a = 1, b = 4 }", "marks = { a = ¦7, b = 4 }", "definition.flat_range", "rotor[1].marks.a"},
    {"marks = { a = 1, b = 4 }", "marks = { a = ¦\"1\", b = 4 }", "definition.not_a_choice", "rotor[1].marks.a"},
    {"marks = { a = 1, b = 4 }", "marks = { a = 1, b = 4, ¦c = 2 }", "definition.unknown_key", "rotor[1].marks.c"},
    {"gauge = \"BG-1\"", "gauge = ¦\"BG-2\"", "definition.unknown_gauge", "rotor[1].bore.gauge"},
    {"gauge = \"BG-1\"", "gauge = ¦\"TW-1\"", "definition.wrong_gauge", "rotor[1].bore.gauge"},
    {"A = [\"3.9362 in\", \"3.9363 in\", \"3.9362 in\", \"3.9361 in\"]", "A = ¦[\"3.9362 in\", \"3.9363 in\"]",
     "definition.directions_wanted", "rotor[1].bore.A"},
    {"directions = [\"0°\", \"90°\"]\nA = ", "directions = [\"0°\"]\nA = ¦", "definition.readings_not_directions",
     "rotor[2].bore[1].A"},
    {"A = [\"3.9362 in\"", "A = [¦\"3.9362\"", "quantity.no_unit", "rotor[1].bore.A[1]"},
    {"A = [\"3.9362 in\"", "A = [¦3.9362", "definition.number_without_unit", "rotor[1].bore.A[1]"},
    {"part = \"72 °F\"", "part = ¦\"72 °\"", "quantity.other_kind", "rotor[1].bore.part"},
    {"ring = \"outer\"", "ring = ¦\"outter\"", "definition.not_a_choice", "rotor[1].press.ring"},
    {"rings_sound = [\"yes\", \"not seen\"]", "rings_sound = ¦[\"yes\", \"yes\", \"no\"]", "definition.too_many_rings",
     "rotor[1].rings_sound"},
    {"label = \"S8\"", "label = ¦\"7\"", "definition.rotor_is_halves", "part[1].label"},
    {"joint = 3", "joint = ¦34", "definition.joint_range", "feeler[1].joint"},
    {"with = \"wrench\"\nshown = \"350 ft·lb\"\ngauge = \"TW-1\"\ntool_length = \"48 in\"\n",
     "with = ¦\"wrench\"\nshown = \"350 ft·lb\"\ngauge = \"TW-1\"\n", "definition.needs_also", "torque[1].with"},
    {"shown = \"350 ft·lb\"", "pull = ¦\"350 lbf\"\nshown = \"350 ft·lb\"", "definition.not_with_this_tool",
     "torque[1].pull"},
    {"laid = 1, left = 0", "laid = ¦-1, left = 0", "definition.out_of_range", "rotor[1].count_out.set.laid"},
    {"guards_on = \"yes\"", "guards_on = ¦\"yess\"", "definition.not_a_choice", "answers.guards_on"},
    {"guards_on = \"yes\"", "¦gards_on = \"yes\"", "definition.unknown_question", "answers.gards_on"},
    {"captive_in = { pulley = \"yes\" }", "captive_in = { puley = ¦\"yes\" }", "definition.unknown_label",
     "answers.captive_in.puley"},
    {"[answers]", "[¦anwers]", "definition.unknown_key", "anwers"},
};

}  // namespace flatwise::definition
