#include "cli/data.h"

#include <cstdlib>
#include <filesystem>

namespace flatwise::cli {

namespace fs = std::filesystem;

std::string data_folder(const std::string& told) {
  const auto of = [](const char* name) {
    const char* value = std::getenv(name);
    return std::string{value == nullptr ? "" : value};
  };
  if (!told.empty()) return told;
  if (std::string own = of("FLATWISE_DATA"); !own.empty()) return own;
  if (const std::string data = of("XDG_DATA_HOME"); !data.empty()) return data + "/flatwise";
  if (const std::string home = of("HOME"); !home.empty()) return home + "/.local/share/flatwise";
  return "flatwise-data";
}

std::string demo_at(const std::string& told) {
  std::error_code ignored;
  if (!told.empty()) return told;
  return fs::exists(fs::path{"demo"} / "job-31.toml", ignored) ? "demo" : "";
}

}  // namespace flatwise::cli
