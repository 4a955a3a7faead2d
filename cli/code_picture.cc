#include "cli/code_picture.h"

#include <arpa/inet.h>
#include <ifaddrs.h>
#include <net/if.h>

#include <array>
#include <memory>

#include "paper/render.h"

namespace flatwise::cli {
namespace {

/// One dark or light square a module, the clear zone included.
class Modules {
 public:
  explicit Modules(const paper::CodeModules& code)
      : side_{code.side + 2 * paper::kQuietModules}, dark_(static_cast<std::size_t>(side_ * side_)) {
    for (const paper::ModuleBox& box : code.dark)
      for (int y = box.y; y < box.y + box.height; ++y)
        for (int x = box.x; x < box.x + box.width; ++x)
          dark_[place(x + paper::kQuietModules, y + paper::kQuietModules)] = true;
  }
  [[nodiscard]] int side() const { return side_; }
  [[nodiscard]] bool dark(int x, int y) const { return y < side_ && dark_[place(x, y)]; }

 private:
  [[nodiscard]] std::size_t place(int x, int y) const { return static_cast<std::size_t>(y * side_ + x); }
  int side_;
  std::vector<bool> dark_;
};

std::string_view half_block(bool upper, bool lower) {
  if (upper) return lower ? "█" : "▀";
  return lower ? "▄" : " ";
}

}  // namespace

std::string code_picture(const std::string& text) {
  const auto code = paper::code_modules(text);
  if (!code) return {};
  const Modules modules{*code};
  std::string out;
  for (int y = 0; y < modules.side(); y += 2) {
    out += "\x1b[30;107m";
    for (int x = 0; x < modules.side(); ++x) out += half_block(modules.dark(x, y), modules.dark(x, y + 1));
    out += "\x1b[0m\n";
  }
  return out;
}

std::string reachable_name(const std::string& listen, const std::vector<std::string>& names) {
  if (!names.empty()) return names.front();
  if (listen != "0.0.0.0" && listen != "::") return listen;
  ifaddrs* first = nullptr;
  if (::getifaddrs(&first) != 0) return {};
  const std::unique_ptr<ifaddrs, decltype(&::freeifaddrs)> all{first, &::freeifaddrs};
  for (const ifaddrs* one = first; one != nullptr; one = one->ifa_next) {
    const bool up = (one->ifa_flags & IFF_UP) != 0 && (one->ifa_flags & IFF_LOOPBACK) == 0;
    if (!up || one->ifa_addr == nullptr || one->ifa_addr->sa_family != AF_INET) continue;
    std::array<char, INET_ADDRSTRLEN> text{};
    const auto* const address = reinterpret_cast<const sockaddr_in*>(one->ifa_addr);
    if (::inet_ntop(AF_INET, &address->sin_addr, text.data(), text.size()) != nullptr) return text.data();
  }
  return {};
}

std::string with_name(std::string_view address, const std::string& name) {
  const bool bare_six = name.find(':') != std::string::npos && !name.starts_with('[');
  const std::string_view port = address.substr(address.rfind(':'));
  return "http://" + (bare_six ? "[" + name + "]" : name) + std::string{port};
}

}  // namespace flatwise::cli
