// guard.h: who may speak to the server: the names it goes by, the pages that may call it, and the devices let in.
//
// The names stop a strange page that has its own name point at this machine; the origin stops one that sends forms here.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/problem.h"
#include "server/http.h"
#include "server/let_in.h"

namespace flatwise::server {

class Guard {
 public:
  /// `listen`: the address bound to; `names`: more names that the server goes by.
  Guard(std::string listen, std::vector<std::string> names, LetIn& let_in);
  /// Status and problem of a request that is not let through.
  struct Refused {
    int status = 403;
    Problem problem;
  };
  [[nodiscard]] std::optional<Refused> check(const Request& request) const;

 private:
  [[nodiscard]] bool known_host(std::string_view host) const;
  [[nodiscard]] bool let_in(const Request& request) const;

  std::string listen_;
  std::vector<std::string> names_;
  bool beyond_ = false;  ///< Other machines can reach it.
  LetIn& devices_;
};

/// A Host header by which only this machine can be meant.
[[nodiscard]] bool is_local_host(std::string_view host);

/// Whether others than this machine are expected, so that a code must be at hand: by the address bound to, or by a name.
[[nodiscard]] bool needs_code(std::string_view listen, const std::vector<std::string>& names);

/// An address that only this machine can reach.
[[nodiscard]] bool is_loopback(std::string_view address);

}  // namespace flatwise::server
