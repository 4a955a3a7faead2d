// definitions.h: the definitions of shafts that were read last. Reading one is mostly exact decimal arithmetic, a millisecond and
// more; a version never changes, so it is read once.
#pragma once

#include <list>
#include <memory>
#include <mutex>
#include <string>

#include "core/shaft/shaft.h"

namespace flatwise::desk {

/// Kept by their text, so that it does not matter which store they came from. For all threads at once.
class Definitions {
 public:
  /// `most`: how many are kept; the one used longest ago goes first.
  explicit Definitions(std::size_t most) : most_{most} {}
  /// As definition::read_shaft(); one that cannot be read is not kept.
  [[nodiscard]] Results<std::shared_ptr<const Shaft>> read(const std::string& toml, const std::string& name);

 private:
  struct Kept {
    std::size_t hash = 0;  ///< Only to find it soon: the texts themselves are compared.
    std::string toml, name;
    std::shared_ptr<const Shaft> shaft;
  };
  [[nodiscard]] std::shared_ptr<const Shaft> find(std::size_t hash, const std::string& toml, const std::string& name);

  std::size_t most_;
  std::mutex mutex_;
  std::list<Kept> kept_;  ///< The one used last stands first.
};

}  // namespace flatwise::desk
