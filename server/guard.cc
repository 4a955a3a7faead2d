#include "server/guard.h"

#include <arpa/inet.h>

#include <algorithm>
#include <array>

namespace flatwise::server {
namespace {

std::string lower(std::string_view text) {
  std::string out{text};
  std::ranges::transform(out, out.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  return out;
}

/// "[::1]:8080" and "name:8080" without port and brackets.
std::string_view name_in(std::string_view host) {
  if (host.starts_with('[')) return host.substr(1, host.find(']') - 1);
  return host.substr(0, host.find(':'));
}

bool is_address(std::string_view text) {
  std::array<unsigned char, 16> bytes{};
  const std::string name{text};
  return inet_pton(AF_INET, name.c_str(), bytes.data()) == 1 || inet_pton(AF_INET6, name.c_str(), bytes.data()) == 1;
}

bool is_local_name(std::string_view name) { return name == "localhost" || name == "127.0.0.1" || name == "::1"; }

}  // namespace

bool is_local_host(std::string_view host) { return is_local_name(lower(name_in(host))); }

bool needs_code(std::string_view listen, const std::vector<std::string>& names) {
  return !is_loopback(listen) || !std::ranges::all_of(names, [](const std::string& n) { return is_local_host(n); });
}

bool is_loopback(std::string_view address) { return address.starts_with("127.") || address == "::1"; }

Guard::Guard(std::string listen, std::vector<std::string> names, LetIn& let_in)
    : listen_{std::move(listen)}, beyond_{!is_loopback(listen_)}, devices_{let_in} {
  for (const std::string& name : names) names_.push_back(lower(name));
}

bool Guard::known_host(std::string_view host) const {
  if (host == "localhost" || host.starts_with("localhost:") || host.starts_with("127.0.0.1:")) return true;
  const std::string name = lower(name_in(host));
  if (is_local_name(name) || name == listen_ || std::ranges::find(names_, name) != names_.end()) return true;
  return beyond_ && is_address(name);  // A number cannot be pointed elsewhere.
}

bool Guard::let_in(const Request& request) const {
  // A proxy on this machine is no sign that who speaks through it is at this machine.
  if (request.loopback && !request.handed_on && is_local_host(request.host)) return true;
  return devices_.knows(request.cookie);
}

std::optional<Guard::Refused> Guard::check(const Request& r) const {
  const auto refuse = [](int status, Code code, std::string field, std::string_view given) {
    return Refused{status, {std::move(code), std::move(field), std::string{given}, {}, std::nullopt}};
  };
  if (!r.whole || r.host.empty()) return refuse(400, Code{"http.host_missing"}, "Host", r.host);
  if (!known_host(r.host)) return refuse(403, Code{"http.host_strange"}, "Host", r.host);
  const bool asks_only = r.method == "GET" || r.method == "HEAD" || r.method == "OPTIONS";
  if (!asks_only || r.path == "/api/events") {
    if (!r.origin.empty()) {
      const std::size_t start = r.origin.find("://");
      const bool ours = start != std::string_view::npos && r.origin.starts_with("http") &&
                        lower(r.origin.substr(start + 3)) == lower(r.host);
      if (!ours) return refuse(403, Code{"http.origin_strange"}, "Origin", r.origin);
    } else if (r.fetch_site == "cross-site" || r.fetch_site == "same-site") {
      return refuse(403, Code{"http.origin_strange"}, "Sec-Fetch-Site", r.fetch_site);
    }
  }
  if (r.path.starts_with("/api/") && r.path != "/api/letin" && !let_in(r))
    return refuse(403, Code{"http.not_let_in"}, "device", "");
  return std::nullopt;
}

}  // namespace flatwise::server
