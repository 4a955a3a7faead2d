// gallery_shafts.h: invented shafts with their maps, plans and sheets for the gallery and the tests of paper/.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/shaft/shaft_samples.h"
#include "core/teardown/steps.h"
#include "core/timing/map.h"
#include "paper/pattern_sheet.h"
#include "paper/sheets.h"
#include "paper/study_sheet.h"

namespace flatwise::paper {

struct GalleryCase {
  std::string name;  ///< Of its files: "nine".
  Shaft shaft;
  timing::Map map;
  teardown::Plan plan;
  std::vector<teardown::Step> steps, back;
  std::vector<bool> stayed;
  std::string job = "31";
};

inline Shaft gallery_shaft(SampleShaft sample, Pattern pattern, std::string name) {
  ShaftSpec spec = sample_shaft(sample);
  spec.name = std::move(name);
  spec.pattern = std::move(pattern);
  auto shaft = Shaft::make(std::move(spec));
  CORE_CHECK(shaft.has_value());
  return *shaft;
}

/// The case of a shaft with some rotors to free.
inline GalleryCase gallery_case(std::string name, Shaft shaft, const std::vector<int>& rotors) {
  auto map = timing::map(shaft);
  const auto state = teardown::all_on(shaft);
  auto plan = teardown::least_cost(shaft, state, rotors, {});
  CORE_CHECK(map.has_value() && plan.has_value());
  std::vector<teardown::RotorFlats> flats;
  for (const auto& m : map->rotors) flats.push_back({m.rotor, m.flat_a, m.flat_b});
  std::vector<bool> stayed(static_cast<std::size_t>(shaft.rotor_count()), true);
  for (const int r : plan->rotors) stayed[static_cast<std::size_t>(r - 1)] = false;
  auto steps = teardown::tear_down_steps(shaft, state, *plan);
  auto back = teardown::assembly_steps(shaft, *plan, flats);
  return {std::move(name),  std::move(shaft), std::move(*map),   std::move(*plan),
          std::move(steps), std::move(back),  std::move(stayed), "31"};
}

inline std::vector<GalleryCase> gallery_cases() {
  std::vector<GalleryCase> cases;
  cases.push_back(gallery_case(
      "nine", gallery_shaft({.rotors = 9}, {.rule = Pattern::Rule::facing}, "Looseners 2, long nine"), {4}));
  cases.push_back(gallery_case(
      "three", gallery_shaft({.rotors = 3}, {.rule = Pattern::Rule::step, .step_flats = 2}, "Looseners 1, short three"),
      {1, 2, 3}));
  cases.push_back(gallery_case("square",
                               gallery_shaft({.rotors = 4, .flats = 4, .lean_degrees = 2},
                                             {.rule = Pattern::Rule::step, .step_flats = 1}, "Orchard four, square"),
                               {4}));
  Pattern listed{.rule = Pattern::Rule::listed, .step_flats = 0, .flats = {1, 3, 4, 5, 1}, .first_flat = {}};
  cases.push_back(gallery_case("five", gallery_shaft({.rotors = 5}, listed, "Looseners 3, quiet five"), {2, 4}));
  cases.push_back(
      gallery_case("many",
                   gallery_shaft({.rotors = 24, .flats = 8}, {.rule = Pattern::Rule::facing},
                                 "Headland and terrace looseners, the very long trial shaft with twenty-four rotors"),
                   {3, 21}));
  return cases;
}

inline std::vector<drawing::RotorMarks> marks_of(const GalleryCase& c) {
  std::vector<drawing::RotorMarks> out;
  for (const auto& m : c.map.rotors)
    out.push_back({azimuth_of_flat(m.flat_a, c.shaft.flats()), azimuth_of_flat(m.flat_b, c.shaft.flats())});
  return out;
}

/// What stayed was read and is right.
inline std::vector<drawing::PairMarks> read_of(const GalleryCase& c) {
  std::vector<drawing::PairMarks> out;
  for (std::size_t i = 0; i < c.map.rotors.size(); ++i)
    out.push_back(c.stayed[i] ? drawing::PairMarks{.flat_a = c.map.rotors[i].flat_a, .flat_b = c.map.rotors[i].flat_b}
                              : drawing::PairMarks{});
  return out;
}

inline std::vector<bool> off_of(const GalleryCase& c) {
  std::vector<bool> off(c.shaft.stations().size());
  for (const int i : c.plan.stations) off[static_cast<std::size_t>(i)] = true;
  return off;
}

inline Head gallery_head(const GalleryCase& c, Paper paper, UnitSystem units) {
  const bool many = c.name == "many";
  return {.shaft = c.shaft.spec().name,
          .job = c.job,
          .workshop = many ? "Tarn Hollow Growers and their neighbours of the upper valley" : "Tarn Hollow Growers",
          .invented = true,
          .printed = "3 Feb 14:20",
          .from = "entry 118",
          .paper = paper,
          .voice = {.language = Language::english, .units = units, .currency = {}}};
}

struct NamedPages {
  std::string name, title;
  Pages pages;
};

inline KitSheet gallery_kit(const GalleryCase& c, const Head& head) {
  KitSheet kit{.head = head, .trays = {}, .stock = {}};
  for (const int r : c.plan.rotors)
    kit.trays.push_back({std::to_string(r),
                         "rotor " + std::to_string(r),
                         {{"bearing set, two halves", "TH-SET-5", 1, 1, false},
                          {"seal", "TH-SEAL", 2, 2, false},
                          {"snap ring", "TH-RING", 2, 0, true}}});
  const auto n = static_cast<int>(c.plan.rotors.size());
  kit.stock = {{"bearing set, two halves", "TH-SET-5", n, 6, 0},
               {"seal", "TH-SEAL", 2 * n, 14, 0},
               {"snap ring", "TH-RING", 2 * n, 3, 2},
               {"spacer S3", "TH-S3", 1, {}, {}}};
  return kit;
}

inline LabelSheet gallery_labels(const GalleryCase& c, const Head& head) {
  LabelSheet labels{.head = head, .labels = {}};
  for (const int i : c.plan.stations) {
    const Station& s = c.shaft.stations()[static_cast<std::size_t>(i)];
    const bool spacer = s.kind == StationKind::spacer;
    const bool rotor = s.kind == StationKind::rotor;
    const std::string where =
        spacer ? "between " + std::to_string(s.number - 1) + " and " + std::to_string(s.number) : "tray " + s.label;
    const std::string name = s.kind == StationKind::nut
                                 ? s.label.substr(s.label.size() - 1)
                                 : (s.kind == StationKind::hanger ? "H" + s.label.substr(s.label.size() - 1) : s.label);
    labels.labels.push_back(
        {name, spacer ? "spacer" : (rotor ? "rotor" : s.label), where, spacer && s.number == 3, End::a, s.label});
  }
  return labels;
}

/// The usual ways of a case side by side.
inline Pages gallery_study(const GalleryCase& c, const Head& head, const TextMeasure& measure) {
  const auto study = study::study(c.shaft, {}, head.voice);
  CORE_CHECK(study.has_value());
  return study_sheet({.head = head, .study = &*study}, measure);
}

/// Its quietest arrangements.
inline Pages gallery_pattern(const GalleryCase& c, const Head& head, const TextMeasure& measure) {
  const auto arranged = job::arrange(c.shaft, {});
  CORE_CHECK(arranged.has_value());
  return pattern_sheet({.head = head, .shaft = &c.shaft, .arranged = &*arranged}, measure);
}

/// Every sheet of a case.
inline std::vector<NamedPages> gallery_sheets(const GalleryCase& c, Paper paper, UnitSystem units,
                                              const TextMeasure& measure) {
  const Head head = gallery_head(c, paper, units);
  const std::vector<Target> targets{{"Nut A", "900 ft·lb", "1220 N·m, ± 10 %. First nut."},
                                    {"Nut B", "900 ft·lb", "1220 N·m, ± 10 %. Second nut."},
                                    {"Stack length", "65.906 ± 0.020 in", "1674.0 ± 0.5 mm"}};
  return {
      {"map", "Timing map",
       map_sheet(
           {.head = head, .shaft = &c.shaft, .map = &c.map, .stayed = c.stayed, .off = off_of(c), .read = read_of(c)},
           measure)},
      {"tear-down", "Tear-down",
       tear_down_sheet({.head = head, .shaft = &c.shaft, .plan = &c.plan, .steps = c.steps, .marks = marks_of(c)},
                       measure)},
      {"assembly", "Assembly",
       assembly_sheet({.head = head,
                       .shaft = &c.shaft,
                       .plan = &c.plan,
                       .steps = c.back,
                       .marks = marks_of(c),
                       .targets = targets},
                      measure)},
      {"bench", "Bench sheet",
       bench_sheet(
           {.head = head, .shaft = &c.shaft, .rotors = c.plan.rotors, .gauge = {}, .setting_ring = millimetres(100)},
           measure)},
      {"kit", "Kit", kit_sheet(gallery_kit(c, head), measure)},
      {"labels", "Labels", label_sheet(gallery_labels(c, head), measure)},
      {"study", "Study", gallery_study(c, head, measure)},
      {"pattern", "Arrangements", gallery_pattern(c, head, measure)}};
}

}  // namespace flatwise::paper
