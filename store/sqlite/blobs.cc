#include "store/sqlite/blobs.h"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <stdexcept>

#include "record/chain.h"

namespace flatwise::store_sqlite {

namespace {
using job::StoreFault;
namespace fs = std::filesystem;

constexpr std::string_view kHalfWritten = ".new-";

StoreFault fault_of_errno(int error, const std::string& what) {
  const auto kind = error == ENOSPC || error == EDQUOT ? StoreFault::Kind::full : StoreFault::Kind::failed;
  return {kind, what + ": " + std::strerror(error)};
}

/// The calls on files, each answering with 0 or an errno.
class Calls {
 public:
  explicit Calls(Watch* watch) : watch_{watch} {}
  ~Calls() {
    if (fd_ >= 0) ::close(fd_);
  }
  Calls(const Calls&) = delete;
  Calls& operator=(const Calls&) = delete;

  [[nodiscard]] int open(const fs::path& path, int flags) {
    if (const int error = watched("open")) return error;
    do fd_ = ::open(path.c_str(), flags | O_CLOEXEC, 0600);
    while (fd_ < 0 && errno == EINTR);
    return fd_ < 0 ? errno : 0;
  }
  [[nodiscard]] int write(std::string_view bytes) {
    while (!bytes.empty()) {
      if (const int error = watched("write")) return error;
      const auto n = ::write(fd_, bytes.data(), std::min<std::size_t>(bytes.size(), 1U << 20U));
      if (n < 0 && errno != EINTR) return errno;
      if (n > 0) bytes.remove_prefix(static_cast<std::size_t>(n));
    }
    return 0;
  }
  [[nodiscard]] int sync_and_close() {
    if (const int error = watched("fsync")) return error;
    if (::fsync(fd_) != 0) return errno;
    if (const int error = watched("close")) return error;
    const int fd = std::exchange(fd_, -1);
    return ::close(fd) != 0 && errno != EINTR ? errno : 0;
  }
  [[nodiscard]] int rename(const fs::path& from, const fs::path& to) {
    if (const int error = watched("rename")) return error;
    return ::rename(from.c_str(), to.c_str()) != 0 ? errno : 0;
  }
  [[nodiscard]] int make_folder(const fs::path& path) {
    if (const int error = watched("mkdir")) return error;
    return ::mkdir(path.c_str(), 0700) != 0 && errno != EEXIST ? errno : 0;
  }
  [[nodiscard]] int sync_folder(const fs::path& path) {
    if (const int error = open(path, O_RDONLY | O_DIRECTORY)) return error;
    return sync_and_close();
  }
  [[nodiscard]] int read(std::string& to) {
    std::array<char, 1U << 16U> part{};
    for (;;) {
      const auto n = ::read(fd_, part.data(), part.size());
      if (n < 0 && errno != EINTR) return errno;
      if (n == 0) return 0;
      if (n > 0) to.append(part.data(), static_cast<std::size_t>(n));
    }
  }

 private:
  [[nodiscard]] int watched(std::string_view call) const { return watch_ ? watch_->file(call) : 0; }
  Watch* watch_;
  int fd_ = -1;
};

/// Makes `folder` where it is not there, and brings its name to the disk. Done on every writing: the folder of an earlier
/// failed one may be there without its name being safe.
int make_safe(const fs::path& folder, Watch* watch) {
  Calls calls{watch};
  if (const int error = calls.make_folder(folder)) return error;
  return calls.sync_folder(folder.parent_path());
}

int write_whole(const fs::path& path, std::string_view bytes, Watch* watch) {
  Calls calls{watch};
  if (const int error = calls.open(path, O_WRONLY | O_CREAT | O_EXCL)) return error;
  if (const int error = calls.write(bytes)) return error;
  return calls.sync_and_close();
}

int put_in_place(const fs::path& root, const fs::path& place, std::string_view bytes, Watch* watch) {
  const fs::path folder = place.parent_path();
  if (const int error = make_safe(root, watch)) return error;
  if (const int error = make_safe(folder, watch)) return error;
  const fs::path half = root / (std::string{kHalfWritten} + random_id());
  int error = write_whole(half, bytes, watch);
  if (error == 0) error = Calls{watch}.rename(half, place);
  if (error != 0) {
    ::unlink(half.c_str());
    return error;
  }
  return Calls{watch}.sync_folder(folder);
}

bool is_hash(const std::string& hash) {
  return hash.size() == 64 &&
         std::ranges::all_of(hash, [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
}

}  // namespace

std::string random_id() {
  if (sodium_init() < 0) throw std::runtime_error{"libsodium does not start"};
  std::array<unsigned char, 16> bytes{};
  randombytes_buf(bytes.data(), bytes.size());
  bytes[6] = static_cast<unsigned char>((bytes[6] & 0x0fU) | 0x40U);
  bytes[8] = static_cast<unsigned char>((bytes[8] & 0x3fU) | 0x80U);
  std::array<char, 33> hex{};
  sodium_bin2hex(hex.data(), hex.size(), bytes.data(), bytes.size());
  std::string id{hex.data()};
  for (const std::size_t at : {8U, 13U, 18U, 23U}) id.insert(at, 1, '-');
  return id;
}

fs::path Blobs::place_of(const std::string& hash) const { return folder_ / hash.substr(0, 2) / hash; }

job::Stored<std::string> Blobs::put(std::string_view bytes) const {
  std::string hash = record::sha256(bytes);
  const auto there = get(hash);
  // There, but its name perhaps not yet on the disk: the writer may have been stopped between rename and fsync.
  int error = 0;
  if (there)
    error = Calls{watch_}.sync_folder(place_of(hash).parent_path());
  else
    error = put_in_place(folder_, place_of(hash), bytes, watch_);
  if (error != 0) return tl::unexpected{fault_of_errno(error, "blob " + hash)};
  return hash;
}

job::Stored<std::string> Blobs::get(const std::string& hash) const {
  using enum StoreFault::Kind;
  if (!is_hash(hash)) return tl::unexpected{StoreFault{missing, "no hash of a blob"}};
  std::string bytes;
  Calls calls{nullptr};
  int error = calls.open(place_of(hash), O_RDONLY);
  if (error == ENOENT || error == ENOTDIR) return tl::unexpected{StoreFault{missing, "blob " + hash}};
  if (error == 0) error = calls.read(bytes);
  if (error != 0) return tl::unexpected{fault_of_errno(error, "blob " + hash)};
  if (record::sha256(bytes) != hash) return tl::unexpected{StoreFault{damaged, "blob " + hash + " is not its bytes"}};
  return bytes;
}

void Blobs::sweep() const noexcept {
  std::error_code error;
  const auto old = fs::file_time_type::clock::now() - std::chrono::hours{1};
  for (fs::directory_iterator it{folder_, error}, end; !error && it != end; it.increment(error)) {
    std::error_code skip;
    if (!it->path().filename().string().starts_with(kHalfWritten)) continue;
    const auto written = fs::last_write_time(it->path(), skip);
    if (!skip && written < old) fs::remove(it->path(), skip);
  }
}

}  // namespace flatwise::store_sqlite
