#include "desk/definitions.h"

#include <algorithm>
#include <functional>

#include "definition/read.h"

namespace flatwise::desk {

std::shared_ptr<const Shaft> Definitions::find(std::size_t hash, const std::string& toml, const std::string& name) {
  const std::scoped_lock lock{mutex_};
  const auto it =
      std::ranges::find_if(kept_, [&](const Kept& k) { return k.hash == hash && k.toml == toml && k.name == name; });
  if (it == kept_.end()) return nullptr;
  kept_.splice(kept_.begin(), kept_, it);
  return it->shaft;
}

Results<std::shared_ptr<const Shaft>> Definitions::read(const std::string& toml, const std::string& name) {
  const std::size_t hash = std::hash<std::string>{}(toml);
  if (auto known = find(hash, toml, name)) return known;
  Results<Shaft> read = definition::read_shaft(toml, name);  // Not under the lock: the others go on meanwhile.
  if (!read) return tl::unexpected(std::move(read.error()));
  auto shaft = std::make_shared<const Shaft>(*std::move(read));
  const std::scoped_lock lock{mutex_};
  kept_.push_front({hash, toml, name, shaft});
  if (kept_.size() > most_) kept_.pop_back();
  return shaft;
}

}  // namespace flatwise::desk
