// definition_test.cc: good files give what they say, with origins; bad ones every problem at once; absurd ones quickly.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "definition/fields.h"
#include "definition/test_files.h"
#include "definition/text.h"

namespace flatwise::definition {
namespace {

std::string with(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}
// Lengths are typed to the nanometre; in metres two roundings of one length may differ in the last bit.
std::int64_t nm(Length length) { return std::llround(length.si() * 1e9); }
Results<Shaft> read(std::string_view text) { return read_shaft(text, "file.toml"); }

// --- The shaft file --------------------------------------------------------------------------------------------------

// Source: tests/data/definition/nine.toml, read by eye; 100 N7 is 99.955 to 99.990 mm (ISO 286-2 table 11, N7, over 80 mm).
// Tolerance: exact; every length is a whole number of nanometres.
TEST(ShaftFile, NineRotorsAreReadAsWritten) {
  const Shaft shaft = good_shaft();
  const ShaftSpec& s = shaft.spec();
  EXPECT_EQ(s.name, "Row looseners, nine");
  EXPECT_TRUE(s.invented);
  EXPECT_EQ(s.profile.flats, 6);
  EXPECT_EQ(nm(s.profile.across_flats), 38'100'000);
  EXPECT_EQ(s.drive_end, End::b);
  EXPECT_DOUBLE_EQ(s.speed.turns_per_minute(), 480);
  EXPECT_EQ(s.pattern.rule, Pattern::Rule::facing);
  EXPECT_EQ(s.pattern.first_flat, 1);
  EXPECT_EQ(s.currency, "GBP");
  ASSERT_EQ(s.rotors.size(), 9U);
  ASSERT_EQ(s.stations.size(), 27U);  // 2 nuts, 2 washers, 2 hangers, 11 spacers, 9 rotors, 1 pulley.
  const Rotor& r = s.rotors[4];
  EXPECT_DOUBLE_EQ(r.lean.degrees(), 5);
  EXPECT_EQ(nm(r.half.nominal), 34'000'000);
  EXPECT_EQ(nm(r.half.above), 50'000);
  EXPECT_EQ(r.bearing.designation, "TH-100-C3");
  EXPECT_EQ(r.bearing.clearance, ClearanceGroup::c3);
  EXPECT_NEAR(r.hub.bore.least.si(), 99.955e-3, 1e-12);
  EXPECT_NEAR(r.hub.bore.greatest.si(), 99.990e-3, 1e-12);
  EXPECT_NEAR(r.hub.ovality_limit.si(), 17.5e-6, 1e-12);
  EXPECT_EQ(r.hub.fit_code, "100 N7");
  EXPECT_EQ(r.hub.material.name, "ductile_iron");
  EXPECT_EQ(r.hub.material.youngs_modulus, gigapascals(170));
  EXPECT_EQ(r.seal.part_number, "TH-SEAL");
  EXPECT_EQ(r.seal.price, 6.5);
}

// Source: tests/data/definition/nine.toml, added up by hand: 34+6+31+50 + 9x68 + 8x92 + 50+31+14+70+6+34 = 1674 mm.
// Tolerance: 1e-12 m, a thousandth of a nanometre: rounding of 27 sums.
TEST(ShaftFile, StationsStandInOrderWithTheSpacerBetween) {
  const Shaft shaft = good_shaft();
  EXPECT_NEAR(shaft.total_length().si(), 1.674, 1e-12);
  std::string labels;
  for (const Station& st : shaft.stations()) labels += st.label + " ";
  EXPECT_EQ(
      labels,
      "nut A washer A hanger A S1 1 S2 2 S3 3 S4 4 S5 5 S6 6 S7 7 S8 8 S9 9 S10 hanger B S11 pulley washer B nut B ");
  EXPECT_EQ(shaft.stations()[5].part.part_number, "TH-SP-92");
  EXPECT_EQ(nm(shaft.stations()[5].length.above), 100'000);
  EXPECT_EQ(nm(shaft.stations()[4].length.above), 100'000);  // Two halves of 0.05 mm each.
  EXPECT_EQ(nm(shaft.stations()[4].outside), 150'000'000);   // The hub's.
  EXPECT_EQ(shaft.stations()[4].minutes_off, minutes(4));
  ASSERT_EQ(shaft.stations()[24].fit_before.size(), 1U);
  EXPECT_EQ(shaft.stations()[24].fit_before[0].count, 4);
}

// Source: ASME B1.1: 1 1/2-6 has pitch 1/6 in. Published K of machine oil 0.10 to 0.26 (docs/sources.md, NutFactors).
// Tolerance: 1e-12 relative: one rounding of a fraction.
TEST(ShaftFile, NutsTakeTheirDataFromOneTable) {
  const ShaftSpec s = good_shaft().spec();
  ASSERT_EQ(s.nuts.size(), 2U);
  EXPECT_EQ(s.nuts[0].end, End::a);
  EXPECT_EQ(s.nuts[1].end, End::b);
  EXPECT_EQ(s.nuts[0].order, 1);
  EXPECT_EQ(s.nuts[1].order, 2);
  EXPECT_NEAR(s.nuts[0].torque.si(), 900 * 1.3558179483314004, 1e-9);
  EXPECT_NEAR(s.nuts[0].thread.pitch.si(), 0.0254 / 6, 1e-15);
  EXPECT_DOUBLE_EQ(s.nuts[0].nut_factor_least, 0.10);
  EXPECT_DOUBLE_EQ(s.nuts[0].nut_factor_greatest, 0.26);
}

TEST(ShaftFile, EveryDefaultIsAnOriginAndEveryGivenValueHasItsLine) {
  const Shaft shaft = good_shaft();
  EXPECT_EQ(shaft.origin("rotor.lean").kind, OriginKind::given);
  EXPECT_EQ(shaft.origin("rotor.lean").where, "nine.toml:15");
  for (const char* assumed : {"rotor.bearing.misalignment", "rotor.bearing.greatest_heating", "rotor.hub.ovality",
                              "rotor.mass_offset", "policy.least_open_gap", "policy.one_person_pull", "policy.decision",
                              "material.ductile_iron.expansion_half_width", "stations[0].minutes_off"}) {
    EXPECT_EQ(shaft.origin(assumed).kind, OriginKind::assumed) << assumed;
    EXPECT_FALSE(shaft.origin(assumed).where.empty()) << assumed;
  }
  EXPECT_EQ(shaft.origin("nut.nut_factor_least").kind, OriginKind::published);
  EXPECT_EQ(shaft.origin("stations[5].tolerance").where, "nine.toml:37");
}

TEST(ShaftFile, ALineMayOverrideWhatRotorsHaveInCommon) {
  const std::string text = with(good_file("nine.toml"), "{ rotor = \"68 mm\", repeat = 9 }",
                                "{ rotor = \"68 mm\", repeat = 7 }, { spacer = \"92 mm\" },\n"
                                "{ rotor = \"68 mm\", repeat = 2, between = { spacer = \"80 mm\" }, "
                                "with = { lean = \"2°\", bearing = { designation = \"TH-100\" } } }");
  const auto shaft = read(text);
  ASSERT_TRUE(shaft.has_value()) << told(shaft.error());
  EXPECT_DOUBLE_EQ(shaft->rotor(7).lean.degrees(), 5);
  EXPECT_DOUBLE_EQ(shaft->rotor(8).lean.degrees(), 2);
  EXPECT_EQ(shaft->rotor(8).bearing.designation, "TH-100");
  EXPECT_EQ(nm(shaft->rotor(8).bearing.outside), 100'000'000);
  EXPECT_EQ(nm(shaft->stations()[static_cast<std::size_t>(shaft->station_of_rotor(8)) + 1].length.nominal), 80'000'000);
  EXPECT_EQ(shaft->origin("rotors[7].lean").where, "file.toml:49");
  EXPECT_EQ(shaft->origin("rotors[7].mass").where, "file.toml:20");
}

TEST(ShaftFile, NutsMayDiffer) {
  const auto shaft =
      read(with(good_file("nine.toml"), "[minutes]", "[nut.B]\ntorque = \"800 ft·lb\"\nthread = \"M36x3\"\n[minutes]"));
  ASSERT_TRUE(shaft.has_value()) << told(shaft.error());
  EXPECT_EQ(shaft->spec().nuts[0].torque, foot_pounds(900));
  EXPECT_EQ(shaft->spec().nuts[1].torque, foot_pounds(800));
  EXPECT_EQ(nm(shaft->spec().nuts[1].thread.major), 36'000'000);
}

TEST(ShaftFile, PatternsAreThree) {
  const std::string good = good_file("nine.toml");
  const auto step = read(with(good, "\"facing\"", "{ step = 2 }"));
  ASSERT_TRUE(step.has_value());
  EXPECT_EQ(step->spec().pattern.rule, Pattern::Rule::step);
  EXPECT_EQ(step->spec().pattern.step_flats, 2);
  const auto listed = read(with(good, "\"facing\"", "{ flats = [1, 3, 5, 1, 3, 5, 1, 3, 5] }"));
  ASSERT_TRUE(listed.has_value());
  EXPECT_EQ(listed->spec().pattern.flats, (std::vector<int>{1, 3, 5, 1, 3, 5, 1, 3, 5}));
}

TEST(ShaftFile, HalvesAndRotorLengthGiveEachOther) {
  const std::string good = good_file("nine.toml");
  const auto halves = read(with(good, "rotor = \"68 mm\"", "rotor = \"two halves\""));
  ASSERT_TRUE(halves.has_value()) << told(halves.error());
  EXPECT_EQ(halves->total_length(), good_shaft().total_length());
  const auto rotor = read(with(good, "half = { length = \"34 mm\", tolerance = \"0.05 mm\" }\n", ""));
  ASSERT_TRUE(rotor.has_value()) << told(rotor.error());
  EXPECT_EQ(nm(rotor->rotor(1).half.nominal), 34'000'000);
  EXPECT_EQ(rotor->origin("rotor.half.tolerance").kind, OriginKind::assumed);
}

// Source: ISO 2768-1:1989 table 1, class m: ±0.3 mm over 30 to 120 mm, ±0.2 mm over 6 to 30 mm, ±0.1 mm to 6 mm; from memory.
// Tolerance: exact.
TEST(ShaftFile, LengthsWithoutToleranceTakeTheGeneralOne) {
  const auto shaft =
      read(with(good_file("nine.toml"), "[stack]                # one line a part, from end A\ntolerance = \"0.1 mm\"",
                "[stack]"));
  ASSERT_TRUE(shaft.has_value());
  EXPECT_EQ(nm(shaft->stations()[2].length.above), 300'000);   // Hanger, 31 mm.
  EXPECT_EQ(nm(shaft->stations()[1].length.above), 100'000);   // Washer, 6 mm.
  EXPECT_EQ(nm(shaft->stations()[23].length.below), 200'000);  // Spacer, 14 mm.
  EXPECT_EQ(shaft->origin("stations[2].tolerance").kind, OriginKind::assumed);
}

TEST(ShaftFile, OddFlatsWithInclinedPairsAreRefusedAtTheirLine) {
  const auto shaft = read(with(with(good_file("nine.toml"), "flats = 6", "flats = 5"), "\"facing\"", "{ step = 1 }"));
  ASSERT_FALSE(shaft.has_value());
  ASSERT_EQ(shaft.error().size(), 1U) << told(shaft.error());
  EXPECT_EQ(shaft.error()[0].code.id(), "shaft.odd_flats");
  EXPECT_EQ(shaft.error()[0].place->line, 5);
}

TEST(ShaftFile, EveryProblemIsToldAtOnceInTheOrderOfLines) {
  std::string text = with(good_file("nine.toml"), "spacer = \"92 mm\"", "spacer = 92");
  text = with(text, "flats = 6", "falts = 6");
  text = with(text, "mass = \"11.6 kg\"", "mass = \"11.6 mm\"");
  text = with(text, "torque = \"900 ft·lb\"", "torque = \"-900 ft·lb\"");
  text = with(text, "repeat = 9", "repeat = 9, label = \"x\"");
  const auto shaft = read(text);
  ASSERT_FALSE(shaft.has_value());
  EXPECT_EQ(told(shaft.error()),
            "2:1 definition.missing shaft.flats <>\n"
            "5:1 definition.unknown_key shaft.falts <falts>\n"
            "20:8 quantity.other_kind rotor.mass <11.6 mm>\n"
            "36:10 definition.number_without_unit between.spacer <92>\n"
            "48:42 definition.label_of_many stack.order[4].label <x>\n"
            "57:10 definition.out_of_range nut.torque <-900 ft·lb>\n");
}

TEST(ShaftFile, AMistypedKeyIsRecognised) {
  const auto shaft = read(with(good_file("nine.toml"), "tip_radius", "tip_raduis"));
  ASSERT_FALSE(shaft.has_value());
  const Problem& unknown = shaft.error().back();
  EXPECT_EQ(unknown.code.id(), "definition.unknown_key");
  const auto near = std::ranges::find(unknown.args, "near", &Arg::name);
  ASSERT_NE(near, unknown.args.end());
  EXPECT_EQ(near->value, ArgValue{"tip_radius"});
}

TEST(ShaftFile, AnotherNumberIsNotAMistypedOne) {
  const auto near_of = [](std::string_view from, std::string_view to) {
    const auto shaft = read(with(good_file("nine.toml"), from, to));
    const Args& args = shaft.error().front().args;
    const auto near = std::ranges::find(args, "near", &Arg::name);
    return near == args.end() ? std::string{} : std::get<std::string>(near->value);
  };
  EXPECT_EQ(near_of("drive_end = \"B\"", "drive_end = \"b\""), "B");
  EXPECT_EQ(near_of("drive_end = \"B\"", "drive_end = \"C\""), "");
  EXPECT_EQ(near_of("clearance = \"C3\"", "clearance = \"C6\""), "");
  EXPECT_EQ(near_of("at = \"pulley\"", "at = \"S12\""), "");
  EXPECT_EQ(near_of("lubrication = \"oiled\"", "lubrication = \"greasd\""), "greased");
}

TEST(ShaftFile, LineEndsAndByteOrderMarkMakeNoDifference) {
  const std::string good = good_file("nine.toml");
  std::string crlf = "\xEF\xBB\xBF";
  for (const char c : with(good, "mass = \"11.6 kg\"", "mass = 11.6"))
    crlf += c == '\n' ? std::string{"\r\n"} : std::string(1, c);
  const auto shaft = read(crlf);
  ASSERT_FALSE(shaft.has_value());
  ASSERT_EQ(shaft.error().size(), 1U);
  EXPECT_EQ(shaft.error()[0].place->line, 20);
  EXPECT_EQ(shaft.error()[0].place->column, 8);
  EXPECT_EQ(shaft.error()[0].place->quoted, "mass = 11.6");
  EXPECT_TRUE(read("\xEF\xBB\xBF" + good).has_value());
}

// --- Absurd sizes ----------------------------------------------------------------------------------------------------

std::string first_code(const Results<Shaft>& read) {
  return read ? "accepted" : std::string{read.error().front().code.id()};
}

// Source: what is asked for: absurd sizes are refused, and what they repeat is not made first.
TEST(AbsurdFiles, AreRefused) {
  const std::string good = good_file("nine.toml");
  std::string lines;
  for (int i = 0; i < 100'000; ++i) lines += "  { spacer = \"50 mm\" },\n";
  const std::string many = with(good, "  { spacer = \"50 mm\" },\n", lines);
  std::string repeats;
  for (int i = 0; i < 3000; ++i) repeats += "  { spacer = \"50 mm\", repeat = 240 },\n";
  const std::string repeated = with(good, "  { spacer = \"50 mm\" },\n", repeats);
  const std::string huge(100'000'000, 'a');
  std::string dots = "a";
  for (int i = 0; i < 1'000'000; ++i) dots += ".a";
  EXPECT_EQ(first_code(read(huge)), "definition.too_long");
  EXPECT_EQ(first_code(read(dots + " = 1")), "definition.too_deep");
  EXPECT_EQ(first_code(read("a = " + std::string(1'000'000, '['))), "definition.too_deep");
  EXPECT_EQ(first_code(read(many)), "definition.too_many");
  EXPECT_EQ(first_code(read(repeated)), "definition.too_many_stations");
}

TEST(AbsurdFiles, OneLineOfAMegabyteIsQuotedShort) {
  const auto shaft = read("x = 1 # " + std::string(1'000'000, 'a'));
  ASSERT_FALSE(shaft.has_value());
  for (const Problem& p : shaft.error()) EXPECT_LE(p.place->quoted.size(), 240U);
}

TEST(AbsurdFiles, ThousandsOfProblemsAreCountedNotTold) {
  std::string text;
  for (int i = 0; i < 2000; ++i) text += "k" + std::to_string(i) + " = 1\n";
  const auto shaft = read(text);
  ASSERT_FALSE(shaft.has_value());
  EXPECT_LE(shaft.error().size(), 501U);
  EXPECT_EQ(shaft.error().back().code.id(), "definition.more_problems");
}

TEST(AbsurdFiles, EmptyTextMissesEveryTable) {
  const auto shaft = read("");
  ASSERT_FALSE(shaft.has_value());
  EXPECT_EQ(told(shaft.error()),
            "0:0 definition.missing shaft <>\n0:0 definition.missing rotor <>\n0:0 definition.missing stack <>\n");
}

// --- Workshop and readings -------------------------------------------------------------------------------------------

// Source: tests/data/definition/workshop.toml, read by eye; 5 ft·lb is 6.779089741657 N·m.
// Tolerance: 1e-12 relative: one rounding each.
TEST(WorkshopFile, IsReadAsWritten) {
  const Workshop w = good_workshop();
  EXPECT_EQ(w.currency, "GBP");
  ASSERT_TRUE(w.rate_per_hour.has_value());
  EXPECT_NEAR(*w.rate_per_hour, 48, 1e-9);
  EXPECT_NEAR(w.room.celsius(), 18, 1e-9);
  EXPECT_EQ(w.origins.at("workshop.room_half_width").kind, OriginKind::assumed);
  ASSERT_EQ(w.gauges.size(), 7U);
  EXPECT_NEAR(w.gauges[0].calibration_expanded_si, 2.5e-6, 1e-18);
  EXPECT_FALSE(w.gauges[0].relative);
  EXPECT_EQ(w.gauges[0].repeatability_readings, 20);
  EXPECT_EQ(nm(*w.gauges[0].setting_ring), 100'000'000);
  EXPECT_EQ(w.gauges[1].kind, Kind::temperature);
  EXPECT_NEAR(w.gauges[1].calibration_expanded_si, 0.5, 1e-12);
  EXPECT_TRUE(w.gauges[4].relative);
  EXPECT_NEAR(w.gauges[4].calibration_expanded_si, 0.04, 1e-15);
  EXPECT_NEAR(w.gauges[4].resolution_si, 6.779089741657002, 1e-11);
  EXPECT_EQ(w.gauges[4].calibrated_until, (Day{2026, 9, 30}));
  EXPECT_EQ(w.gauges[4].accepted_overdue_by, "the lead");
  EXPECT_EQ(w.stock.size(), 1U);
  EXPECT_EQ(w.presses.size(), 1U);
}

// Source: tests/data/definition/readings.toml, read by eye; 3.9362 in is 99 979 480 nm exactly.
// Tolerance: exact for lengths, 1e-9 K and 1e-12 relative for the rest: one rounding each.
TEST(ReadingsFile, IsReadAsWrittenWithWhatWasTyped) {
  const auto bench = read_bench(good_file("readings.toml"), "readings.toml", good_shaft(), good_workshop());
  ASSERT_TRUE(bench.has_value()) << told(bench.error());
  EXPECT_EQ(bench->job, "2026-031");
  EXPECT_EQ(bench->date, (Day{2026, 11, 25}));
  EXPECT_EQ(bench->came_off, (std::vector<int>{7, 8, 9}));
  EXPECT_EQ(bench->still_off, (std::vector<int>{7}));
  ASSERT_EQ(bench->marks.size(), 3U);
  EXPECT_EQ(bench->marks[1].half, Half::b);
  EXPECT_EQ(bench->marks[1].flat.value, 4);
  ASSERT_EQ(bench->bores.size(), 13U);  // 4 + 3, one not read; 2; 4.
  EXPECT_EQ(bench->bores[0].diameter.value.nm, 99'979'480);
  EXPECT_EQ(bench->bores[0].diameter.typed, "3.9362 in");
  EXPECT_EQ(bench->bores[0].diameter.place.line, 27);
  EXPECT_NEAR(bench->bores[1].direction.degrees(), 45, 1e-12);
  EXPECT_NEAR(bench->bores[0].part_temperature->value.value.si, (72 + 459.67) / 1.8, 1e-9);
  EXPECT_EQ(bench->bores[6].plane, 'B');
  EXPECT_NEAR(bench->bores[6].direction.degrees(), 135, 1e-12);  // The third was not read.
  EXPECT_NEAR(bench->bores[8].direction.degrees(), 90, 1e-12);
  ASSERT_EQ(bench->part_lengths.size(), 3U);
  EXPECT_EQ(bench->part_lengths[1].length.value.nm, 34'131'250);  // 1 11/32 in.
  EXPECT_EQ(good_shaft().stations()[static_cast<std::size_t>(bench->part_lengths[2].station)].label, "S8");
  ASSERT_EQ(bench->torques.size(), 2U);
  EXPECT_EQ(bench->torques[1].with, TorquePull::With::bar);
  EXPECT_EQ(bench->torques[1].shown.value.value.kind, Kind::force);
  ASSERT_TRUE(bench->labels_back.has_value());
  EXPECT_EQ((*bench->labels_back)[1].label, "");
  ASSERT_EQ(bench->reused_rings.size(), 2U);
  EXPECT_EQ(bench->reused_rings[1].sound.value, Reply::not_seen);
  ASSERT_EQ(bench->counted.size(), 3U);
  EXPECT_FALSE(bench->counted[2].left.has_value());
  EXPECT_EQ(bench->presses[0].ring->value, RingPressed::outer);
}

TEST(ReadingsFile, AnswersNameRotorsNutsAndParts) {
  const auto bench = read_bench(good_file("readings.toml"), "readings.toml", good_shaft(), good_workshop());
  ASSERT_TRUE(bench.has_value());
  std::set<std::string> said;
  for (const Answered& a : bench->answers)
    said.insert(a.question + " " + std::to_string(a.number) + " " + std::to_string(static_cast<int>(a.reply.value)));
  EXPECT_EQ(said, (std::set<std::string>{"guards_on 0 0", "spacers_labelled 0 0", "bearing_greased 7 0",
                                         "bearing_greased 8 1", "bearing_greased 9 2", "captive_in 25 0",
                                         "nut_rechecked 1 0", "nut_rechecked 2 1"}));
}

// Nine rotors of two halves, two washers, two hangers, eleven spacers, a pulley: 34 parts, 33 joints.
TEST(ReadingsFile, TheLastJointIsAJoint) {
  const std::string last = with(good_file("readings.toml"), "joint = 3", "joint = 33");
  EXPECT_TRUE(read_bench(last, "readings.toml", good_shaft(), good_workshop()).has_value());
}

TEST(ReadingsFile, SaysWhatItBelongsTo) {
  const auto links = read_links(good_file("readings.toml"), "readings.toml");
  ASSERT_TRUE(links.has_value());
  EXPECT_EQ(links->shaft, "nine.toml");
  EXPECT_EQ(links->workshop, "workshop.toml");
  EXPECT_EQ(links->shaft_place.line, 3);
}

TEST(ReadingsFile, PricesInAnotherCurrencyThanTheWorkshopsAreRefused) {
  Workshop other = good_workshop();
  other.currency = "EUR";
  const auto bench = read_bench(good_file("readings.toml"), "readings.toml", good_shaft(), other);
  ASSERT_FALSE(bench.has_value());
  EXPECT_EQ(bench.error()[0].code.id(), "definition.currency_differs");
}

// --- The field table itself ------------------------------------------------------------------------------------------

TEST(FieldTable, EveryTableItNamesIsThereAndEveryDefaultReads) {
  for (const Document document : {Document::shaft, Document::readings, Document::workshop, Document::study}) {
    std::set<std::string_view> seen;
    for (const Field& f : fields(document)) {
      EXPECT_TRUE(seen.insert(f.path()).second) << f.path();
      EXPECT_TRUE(f.table.empty() || !keys_of(document, f.table).empty()) << f.path();
      EXPECT_TRUE(f.assumed.empty() || !f.assumed_from.empty()) << f.path();
      EXPECT_FALSE(f.required && !f.assumed.empty()) << f.path();
    }
  }
}

TEST(FieldTable, FiveLinesAreToBeChanged) {
  std::set<int> changes;
  for (const Field& f : fields(Document::shaft)) EXPECT_TRUE(f.change == 0 || changes.insert(f.change).second);
  EXPECT_EQ(changes, (std::set<int>{1, 2, 3, 4, 5}));
}

}  // namespace
}  // namespace flatwise::definition
