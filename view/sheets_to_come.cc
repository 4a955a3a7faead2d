// Sheets whose own file is not there yet: a title, nothing else. Whoever adds a sheet takes its two functions out of here.
#include "view/blocks.h"
#include "view/rails.h"
#include "view/stage_sheets.h"

namespace flatwise::view {
namespace {

SheetParts title_only(const Screen& screen, const Spot& spot) {
  return {.title = stage_word(spot.stage, screen.voice)};
}

}  // namespace

SheetParts test_run_sheet(const Subject&, const Screen& screen, const Spot& spot) { return title_only(screen, spot); }
SheetParts release_sheet(const Subject&, const Screen& screen, const Spot& spot) { return title_only(screen, spot); }

CellSays test_run_cell(const Subject&, const Screen&, int) { return {}; }
CellSays release_cell(const Subject&, const Screen&, int) { return {}; }

}  // namespace flatwise::view
