#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "paper/render.h"

namespace flatwise::paper {
namespace {

Problem not_written(const std::string& path, int error) {
  return Problem{Code{"paper.not_written"}, "file", path, {{"reason", std::strerror(error)}}, {}};
}

// Writes and brings to the disk; 0 or errno.
int write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t done = ::write(file, bytes.data(), bytes.size());
    if (done < 0 && errno == EINTR) continue;
    if (done <= 0) return done == 0 ? EIO : errno;
    bytes.remove_prefix(static_cast<std::size_t>(done));
  }
  return ::fsync(file) == 0 ? 0 : errno;
}

}  // namespace

Result<std::size_t> write_file_atomically(const std::string& path, std::string_view bytes) {
  std::string beside = path + ".XXXXXX";
  const int file = ::mkstemp(beside.data());
  if (file < 0) return tl::unexpected{not_written(path, errno)};
  int error = write_all(file, bytes);
  if (error == 0 && ::fchmod(file, 0644) != 0) error = errno;
  if (::close(file) != 0 && error == 0) error = errno;
  if (error == 0 && std::rename(beside.c_str(), path.c_str()) != 0) error = errno;
  if (error != 0) {
    ::unlink(beside.c_str());
    return tl::unexpected{not_written(path, error)};
  }
  return bytes.size();
}

}  // namespace flatwise::paper
