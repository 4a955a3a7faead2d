// The compiled kernels of core/lanes: none may define what another file could share with it, or the linker might keep the copy
// that only a wide processor runs.
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> objects_under(const fs::path& folder) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::recursive_directory_iterator{folder}) {
    const std::string path = entry.path().string();
    if (path.ends_with("_kernel.cc.o") && path.find("_avx") != std::string::npos) found.push_back(entry.path());
  }
  return found;
}

/// Symbols that this object defines and others may define too: weak, or unique in the whole program.
std::vector<std::string> shared_symbols(const fs::path& object) {
  const std::string command = "nm --defined-only --demangle '" + object.string() + "'";
  const std::unique_ptr<FILE, int (*)(FILE*)> listing{popen(command.c_str(), "r"), pclose};
  std::vector<std::string> shared;
  std::array<char, 4096> line{};
  while (listing && std::fgets(line.data(), line.size(), listing.get())) {
    const std::string text{line.data()};
    const auto kind = text.find(' ') + 1;
    if (kind > 0 && kind < text.size() && std::string{"WwVvu"}.find(text[kind]) != std::string::npos)
      shared.push_back(text);
  }
  return shared;
}

TEST(Kernels, DefineNothingThatOthersShare) {
  const auto objects = objects_under(fs::path{FLATWISE_BINARY_DIR} / "core");
  ASSERT_FALSE(objects.empty()) << "no kernel was found: where do they lie now?";
  for (const fs::path& object : objects)
    for (const std::string& symbol : shared_symbols(object)) ADD_FAILURE() << object << ": " << symbol;
}

// A kernel file that keeps an inline function of its own is seen.
TEST(Kernels, ASharedFunctionIsSeen) {
  const auto objects = objects_under(fs::path{FLATWISE_BINARY_DIR} / "tests/boundary");
  ASSERT_EQ(objects.size(), 1U);
  EXPECT_EQ(shared_symbols(objects.front()).size(), 1U);
}

}  // namespace
