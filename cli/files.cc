#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <system_error>

#include "cli/files.h"
#include "paper/render.h"

namespace flatwise::cli {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Problem> refused(Code code, const std::string& path, Args args = {}) {
  return tl::unexpected(Problem{code, "file", path, std::move(args), Place{path, 0, 0, {}}});
}

Result<std::string> read_stream(std::istream& in, const std::string& name) {
  std::string text(kLargestInput + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(in.gcount()));
  if (in.bad()) return refused(Code{"cli.file_unreadable"}, name, {{"reason", std::strerror(errno)}});
  if (text.size() > kLargestInput)
    return refused(Code{"cli.file_too_large"}, name, {{"greatest", static_cast<std::int64_t>(kLargestInput >> 20U)}});
  return text;
}

}  // namespace

Result<std::string> read_text(const Context& context, const std::string& path) {
  if (path == "-") return read_stream(*context.in, "-");
  std::error_code error;
  if (!fs::exists(path, error)) return refused(Code{"cli.file_missing"}, path);
  if (fs::is_directory(path, error)) return refused(Code{"cli.file_is_folder"}, path);
  std::ifstream in{path, std::ios::binary};
  if (!in) return refused(Code{"cli.file_unreadable"}, path, {{"reason", std::strerror(errno)}});
  return read_stream(in, path);
}

Result<std::size_t> write_file(const std::string& path, std::string_view bytes) {
  std::error_code error;
  const fs::path target{path};
  if (target.has_parent_path()) fs::create_directories(target.parent_path(), error);
  if (error) return refused(Code{"cli.file_unwritable"}, path, {{"reason", error.message()}});
  return paper::write_file_atomically(path, bytes);
}

std::string beside(const std::string& file, const std::string& named) {
  if (file == "-" || fs::path{named}.is_absolute()) return named;
  return (fs::path{file}.parent_path() / named).lexically_normal().string();
}

}  // namespace flatwise::cli
