// pages.h: the page itself: files compiled in, or read from a folder while it is being worked on.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "server/http.h"

namespace flatwise::server {

/// A file compiled in, with its twin by gzip. The table is made by server/CMakeLists.txt from the built page.
struct PageFile {
  std::string_view path;  ///< "/assets/index-4f.js"
  std::string_view bytes, gzip;
};
[[nodiscard]] std::span<const PageFile> page_files();

class Pages {
 public:
  /// `root`: read from there instead.
  explicit Pages(std::optional<std::filesystem::path> root);
  /// A file; for any other path the first page, which finds its own way.
  [[nodiscard]] Reply answer(const Request& request) const;

 private:
  struct Kept {
    PageFile file;
    std::string tag;
  };
  [[nodiscard]] std::optional<Reply> file(const std::string& path, const Request& request) const;
  [[nodiscard]] Reply from_folder(const std::string& path, std::string bytes, const Request& request) const;

  std::optional<std::filesystem::path> root_;
  std::map<std::string, Kept, std::less<>> kept_;
};

}  // namespace flatwise::server
