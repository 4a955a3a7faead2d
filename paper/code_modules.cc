#include <qrencode.h>

#include <memory>

#include "paper/render.h"

namespace flatwise::paper {
namespace {

// Grows a run of dark modules downwards as long as the rows below have it too.
class Merger {
 public:
  explicit Merger(const QRcode& code) : side_{code.width}, dark_(static_cast<std::size_t>(code.width * code.width)) {
    for (std::size_t i = 0; i < dark_.size(); ++i) dark_[i] = (code.data[i] & 1) != 0;
  }
  [[nodiscard]] std::vector<ModuleBox> boxes() {
    std::vector<ModuleBox> out;
    for (int y = 0; y < side_; ++y)
      for (int x = 0; x < side_; ++x)
        if (at(x, y)) out.push_back(take(x, y));
    return out;
  }

 private:
  [[nodiscard]] bool at(int x, int y) const { return dark_[static_cast<std::size_t>(y * side_ + x)]; }
  [[nodiscard]] bool row(int x, int y, int width) const {
    for (int i = 0; i < width; ++i)
      if (!at(x + i, y)) return false;
    return true;
  }
  ModuleBox take(int x, int y) {
    ModuleBox box{x, y, 1, 1};
    while (x + box.width < side_ && at(x + box.width, y)) ++box.width;
    while (y + box.height < side_ && row(x, y + box.height, box.width)) ++box.height;
    for (int j = 0; j < box.height; ++j)
      for (int i = 0; i < box.width; ++i) dark_[static_cast<std::size_t>((y + j) * side_ + x + i)] = false;
    return box;
  }

  int side_;
  std::vector<bool> dark_;
};

}  // namespace

Result<CodeModules> code_modules(const std::string& text) {
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code{
      text.empty() ? nullptr : QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M), &QRcode_free};
  if (!code) return tl::unexpected{Problem{Code{"paper.code_text"}, "code", text, {}, {}}};
  return CodeModules{code->width, Merger{*code}.boxes()};
}

}  // namespace flatwise::paper
