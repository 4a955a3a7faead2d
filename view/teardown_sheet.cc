// Tear-down: one step at a time. The eye finds first the caution, then the verb.
#include "view/blocks.h"
#include "view/rails.h"
#include "view/stage_sheets.h"

namespace flatwise::view {

SheetParts teardown_sheet(const Subject&, const Screen& screen, const Spot&) {
  return {.title = tell(screen, Code{"view.teardown.title"})};
}

CellSays teardown_cell(const Subject&, const Screen&, int) { return {}; }

Json teardown_done(const Subject&, const Screen&) { return nullptr; }

}  // namespace flatwise::view
