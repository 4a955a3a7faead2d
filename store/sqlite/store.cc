#include "store/sqlite/store.h"

namespace flatwise::store_sqlite {

Stored<std::string> SqliteStore::put_blob(std::string_view bytes) {
  if (read_only_) return tl::unexpected{StoreFault{StoreFault::Kind::failed, "opened for reading only"}};
  return blobs_.put(bytes);
}

Stored<std::string> SqliteStore::blob(const std::string& hash) { return blobs_.get(hash); }

}  // namespace flatwise::store_sqlite
