// study_view.h: ways of one shaft side by side, as the page shows them (schemas/api/openapi.json, StudyView).
#pragma once

#include <string>

#include "study/study.h"
#include "wire/json.h"

namespace flatwise::view {

/// Where a study was asked for: its files are under the same address with the same question.
struct StudyAddress {
  std::string shaft;  ///< Id of the version.
  std::string path;   ///< "/api/shafts/…/study"
  std::string query;  ///< As it came, without its question mark.
};
[[nodiscard]] wire::Json study_view(const study::Study& study, const StudyAddress& at, const Voice& voice);

}  // namespace flatwise::view
