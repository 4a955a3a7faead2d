// process.h: the built program run as a person or a script runs it: a process with streams, an environment and a folder.
//
//   const Ran ran = flatwise({"map", "demo/long-nine.toml"});
//   ran.status, ran.out, ran.err
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace flatwise::end_to_end {

/// The program under test: FLATWISE_PROGRAM where it is set, else the one of this build.
[[nodiscard]] std::string program();

/// How a process is started. Standard input is empty unless told.
struct Start {
  std::string in = {};                                     ///< Text for the standard input.
  std::optional<std::string> in_file = std::nullopt;       ///< Instead: a file opened as the standard input.
  std::optional<std::string> out_file = std::nullopt;      ///< Instead of catching the output: a file to write it to.
  bool closed_pipe = false;                                ///< The reader of the output is gone before it is written.
  bool terminal = false;                                   ///< The output is a terminal.
  std::string folder = FLATWISE_SOURCE_DIR;                ///< Where it stands.
  std::map<std::string, std::string> environment = {};     ///< Set over ours.
  std::optional<unsigned long> file_limit = std::nullopt;  ///< Greatest size of a file it may write, bytes.
  int seconds = 60;                                        ///< It is ended after that, and `late` says so.
};

struct Ran {
  int status = -1;  ///< Exit status; -1 when it did not end by itself.
  int signal = 0;   ///< The signal that ended it; 0 when it ended by itself.
  bool late = false;
  std::string out, err;
};

/// Runs any command; the first word is looked up in PATH.
[[nodiscard]] Ran run(const std::vector<std::string>& command, const Start& start = {});
/// Runs the program under test.
[[nodiscard]] Ran flatwise(std::vector<std::string> arguments, const Start& start = {});
/// The command as a person would type it, for messages.
[[nodiscard]] std::string typed(const std::vector<std::string>& arguments);

/// A folder of its own under the system's folder for such things; gone, with all in it, at the end.
class Scratch {
 public:
  Scratch();
  ~Scratch();
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  [[nodiscard]] std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  /// Writes a file and gives its path.
  std::string write(const std::string& name, const std::string& bytes) const;
  /// Every file below, by its path from here, sorted.
  [[nodiscard]] std::vector<std::string> files() const;

 private:
  std::filesystem::path path_;
};

[[nodiscard]] std::string text_of(const std::filesystem::path& file);
/// A file of the project.
[[nodiscard]] std::string ours(const std::string& path);
[[nodiscard]] std::vector<std::string> lines_of(const std::string& text);

}  // namespace flatwise::end_to_end
