// sheets_in_test.h: what the tests of paper/ share: fonts, a folder of their own, programs from outside.
#pragma once

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include "paper/gallery_shafts.h"
#include "paper/render.h"

namespace flatwise::paper {

namespace fs = std::filesystem;
using drawing::DisplayList;

inline constexpr const char* kCreated = "2026-02-03T14:20:00Z";

inline const TextMeasure& fonts() {
  static const auto measure = make_measure();
  CORE_CHECK(measure.has_value());
  return **measure;
}

/// A folder of its own, gone afterwards.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "paper_test_XXXXXX").string();
    path_ = ::mkdtemp(name.data());
  }
  ~Folder() { fs::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  [[nodiscard]] std::size_t files() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator{path_}, {}));
  }

 private:
  fs::path path_;
};

struct Ran {
  int status = -1;
  std::string output;
};
inline Ran run(const std::string& command) {
  Ran ran;
  FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) return ran;
  std::array<char, 4096> buffer{};
  while (const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), pipe)) ran.output.append(buffer.data(), n);
  ran.status = ::pclose(pipe);
  return ran;
}

inline std::string pdf_of(const Pages& pages) {
  auto pdf = render_pdf(pages, {"Sheet", kCreated});
  EXPECT_TRUE(pdf.has_value()) << (pdf ? "" : pdf.error().given);
  return pdf.value_or("");
}

inline std::string squeezed(const std::string& text) {
  std::istringstream words{text};
  std::string out;
  for (std::string word; words >> word;) out += (out.empty() ? "" : " ") + word;
  return out;
}

inline const std::vector<GalleryCase>& cases() {
  static const std::vector<GalleryCase> all = gallery_cases();
  return all;
}

}  // namespace flatwise::paper
