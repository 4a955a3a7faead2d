// data.h: the folder with the record: where it is, how it is opened, and how it comes to be.
#pragma once

#include <memory>
#include <string>

#include "cli/context.h"
#include "job/store.h"

namespace flatwise::cli {

/// As told; else FLATWISE_DATA; else where this system keeps a person's data (XDG_DATA_HOME, ~/.local/share).
[[nodiscard]] std::string data_folder(const std::string& told);
/// Where there is no record yet, one with the invented workshop of the demo is made, from the files in the folder `demo`; empty:
/// from those that the program brings.
[[nodiscard]] Results<void> make_data(const Context& context, const std::string& folder, const std::string& demo);
/// The record that is there.
[[nodiscard]] Result<std::unique_ptr<job::Store>> open_data(const std::string& folder);
/// The demo folder: as told, else where the shell stands; empty where there is none.
[[nodiscard]] std::string demo_at(const std::string& told);

}  // namespace flatwise::cli
