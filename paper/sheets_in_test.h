// sheets_in_test.h: what the tests of paper/ share: fonts, a folder of their own, programs from outside.
#pragma once

#include <algorithm>
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
  CORE_CHECK(pdf.has_value());
  return *pdf;
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

inline std::string text_of(const Pages& pages, const Folder& folder) {
  const std::string file = folder.file("text.pdf");
  CORE_CHECK(write_file_atomically(file, pdf_of(pages)).has_value());
  return run("pdftotext -layout " + file + " -").output;
}

struct Extent {
  double left, top, right, bottom;
};
inline Extent extent(const drawing::Path& path) {
  Extent e{1e9, 1e9, -1e9, -1e9};
  for (const drawing::Point p : path.points)
    e = {std::min(e.left, p.x), std::min(e.top, p.y), std::max(e.right, p.x), std::max(e.bottom, p.y)};
  return e;
}
inline Extent extent(const drawing::Arc& arc) {
  return {arc.centre.x - arc.radius, arc.centre.y - arc.radius, arc.centre.x + arc.radius, arc.centre.y + arc.radius};
}
inline Extent extent(const drawing::Code& code) {
  return {code.at.x, code.at.y, code.at.x + code.side, code.at.y + code.side};
}
inline Extent extent_of(const drawing::Text& text, const TextMeasure& measure) {
  const double width = measure.width(text.text, text.size, text.bold);
  const double left =
      text.at.x -
      (text.anchor == drawing::Anchor::start ? 0 : (text.anchor == drawing::Anchor::middle ? width / 2 : width));
  return {left, text.at.y - 0.72 * text.size, left + width, text.at.y + 0.2 * text.size};
}
inline Extent extent(const drawing::Item& item, const TextMeasure& measure) {
  if (const auto* text = std::get_if<drawing::Text>(&item)) return extent_of(*text, measure);
  if (const auto* path = std::get_if<drawing::Path>(&item)) return extent(*path);
  if (const auto* arc = std::get_if<drawing::Arc>(&item)) return extent(*arc);
  return extent(std::get<drawing::Code>(item));
}

// What stands outside the margins, as words. Lines may reach over by half the widest stroke.
inline std::vector<std::string> over_margins(const DisplayList& page, const TextMeasure& measure) {
  constexpr double kStroke = 0.5;
  std::vector<std::string> out;
  for (const drawing::Item& item : page.items) {
    const Extent e = extent(item, measure);
    if (e.left >= kMargin - kStroke && e.right <= page.width - kMargin + kStroke && e.top >= kMargin - kStroke &&
        e.bottom <= page.height - kMargin + kStroke)
      continue;
    const auto* text = std::get_if<drawing::Text>(&item);
    out.push_back((text != nullptr ? text->text : "a line") + " at " + std::to_string(e.left) + ", " +
                  std::to_string(e.top));
  }
  return out;
}

// Pairs of texts that stand on each other by more than a hair.
inline std::vector<std::string> collisions(const DisplayList& page, const TextMeasure& measure) {
  constexpr double kHair = 0.25;
  std::vector<std::pair<Extent, std::string>> texts;
  for (const drawing::Item& item : page.items)
    if (const auto* text = std::get_if<drawing::Text>(&item); text != nullptr && !text->text.empty())
      texts.emplace_back(extent_of(*text, measure), text->text);
  std::vector<std::string> out;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    for (std::size_t k = i + 1; k < texts.size(); ++k) {
      const Extent& a = texts[i].first;
      const Extent& b = texts[k].first;
      const double wide = std::min(a.right, b.right) - std::max(a.left, b.left);
      const double high = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
      if (wide > kHair && high > kHair) out.push_back(texts[i].second + " / " + texts[k].second);
    }
  }
  return out;
}

}  // namespace flatwise::paper
