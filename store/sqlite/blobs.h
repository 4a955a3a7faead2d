// blobs.h: photos and recordings as files, named by the SHA-256 of their bytes: blobs/ab/abcdef... A file is there whole or not
// at all: written under another name, brought to the disk, renamed, and the folder brought to the disk.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "store/sqlite/open.h"

namespace flatwise::store_sqlite {

class Blobs {
 public:
  Blobs(std::filesystem::path folder, Watch* watch) : folder_{std::move(folder)}, watch_{watch} {}

  /// Hash in lower-case hex. Bytes that are there already are not written again.
  [[nodiscard]] job::Stored<std::string> put(std::string_view bytes) const;
  /// missing: none of that hash. damaged: the bytes are not any more those of the hash.
  [[nodiscard]] job::Stored<std::string> get(const std::string& hash) const;
  /// Takes away what writers that were killed left half-written more than an hour ago.
  void sweep() const noexcept;

 private:
  [[nodiscard]] std::filesystem::path place_of(const std::string& hash) const;
  std::filesystem::path folder_;
  Watch* watch_;
};

/// Random name for a row that the store makes itself: a UUID of version 4 (RFC 9562).
[[nodiscard]] std::string random_id();

}  // namespace flatwise::store_sqlite
