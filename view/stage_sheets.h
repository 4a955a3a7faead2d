// stage_sheets.h: the sheet of one station in each stage, one function a stage, each in its own file. Only bench_view.cc calls
// these. What the eye must find first on each stands above its function.
#pragma once

#include <nlohmann/json.hpp>

#include "view/bench_view.h"

namespace flatwise::view {

/// Where the eye is, settled: a stage and a station that are there.
struct Spot {
  job::Stage stage = job::Stage::booking_in;
  int station = 0;
  End from = End::a;
  std::optional<int> step;
};

/// The blocks of a sheet by where they stand; bench_view() makes the Sheet of them.
struct SheetParts {
  std::string title{}, aside{};
  Json head = Json::array(), left = Json::array(), right = Json::array(), foot = Json::array();
};

/// What a rail cell says of a station in a stage: the word (at most six letters where it can be), the flag, marks or count.
/// Empty word: the frame says 'on' or 'off'. `said`: what is read aloud after 'Rotor 4, on the shaft,'; empty: the frame takes the
/// word and the first finding about the station in this stage.
struct CellSays {
  std::string word{}, sub{}, said{};
  std::string_view flag = "none", tone = "plain";
  bool renew = false;
};

using SheetOf = SheetParts (*)(const Subject&, const Screen&, const Spot&);
using CellOf = CellSays (*)(const Subject&, const Screen&, int station);

SheetParts booking_in_sheet(const Subject&, const Screen&, const Spot&);
SheetParts finding_sheet(const Subject&, const Screen&, const Spot&);
SheetParts plan_sheet(const Subject&, const Screen&, const Spot&);
SheetParts teardown_sheet(const Subject&, const Screen&, const Spot&);
SheetParts inspection_sheet(const Subject&, const Screen&, const Spot&);
SheetParts kit_sheet(const Subject&, const Screen&, const Spot&);
SheetParts press_sheet(const Subject&, const Screen&, const Spot&);
SheetParts timing_sheet(const Subject&, const Screen&, const Spot&);
SheetParts stack_sheet(const Subject&, const Screen&, const Spot&);
SheetParts torque_sheet(const Subject&, const Screen&, const Spot&);
SheetParts test_run_sheet(const Subject&, const Screen&, const Spot&);
SheetParts release_sheet(const Subject&, const Screen&, const Spot&);

/// What the line at the foot does on the sheet of the release, once nothing else is open: sign, ask who may, release. Null before.
[[nodiscard]] Json signing_action(const Subject& subject, const Screen& screen);

CellSays booking_in_cell(const Subject&, const Screen&, int station);
CellSays finding_cell(const Subject&, const Screen&, int station);
CellSays plan_cell(const Subject&, const Screen&, int station);
CellSays teardown_cell(const Subject&, const Screen&, int station);
CellSays inspection_cell(const Subject&, const Screen&, int station);
CellSays kit_cell(const Subject&, const Screen&, int station);
CellSays press_cell(const Subject&, const Screen&, int station);
CellSays timing_cell(const Subject&, const Screen&, int station);
CellSays stack_cell(const Subject&, const Screen&, int station);
CellSays torque_cell(const Subject&, const Screen&, int station);
CellSays test_run_cell(const Subject&, const Screen&, int station);
CellSays release_cell(const Subject&, const Screen&, int station);

}  // namespace flatwise::view
