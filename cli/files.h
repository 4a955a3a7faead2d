// files.h: reading and writing whole files, bounded and never half.
#pragma once

#include <string>
#include <string_view>

#include "cli/context.h"
#include "core/units/problem.h"

namespace flatwise::cli {

inline constexpr std::size_t kLargestInput = 4U << 20U;  ///< 4 MiB; nothing a person writes comes near.

/// PDF wants a creation time; the sheets ask no clock, so that the same job gives the same bytes.
inline constexpr const char* kCreated = "2000-01-01T00:00:00Z";

/// Text of a file, or of the standard input for "-". Refuses what is not there, a folder, and more than kLargestInput
/// bytes (read no further than that).
[[nodiscard]] Result<std::string> read_text(const Context& context, const std::string& path);
/// Writes by a new file beside it and a rename: the old content or the new, never a part. Makes missing folders.
[[nodiscard]] Result<std::size_t> write_file(const std::string& path, std::string_view bytes);
/// A path that a file names, seen from that file's folder.
[[nodiscard]] std::string beside(const std::string& file, const std::string& named);

}  // namespace flatwise::cli
