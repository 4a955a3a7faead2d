#include "tests/end_to_end/process.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>

namespace flatwise::end_to_end {
namespace {

using Clock = std::chrono::steady_clock;

struct Pipe {
  int read = -1, write = -1;
  explicit Pipe(bool terminal = false) {
    std::array<int, 2> ends{};
    if (terminal) {
      open_terminal();
      return;
    }
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
    read = ends[0];
    write = ends[1];
  }
  ~Pipe() {
    close_read();
    close_write();
  }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;
  void close_read() { shut(read); }
  void close_write() { shut(write); }

 private:
  void open_terminal() {
    read = ::posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (read < 0 || ::grantpt(read) != 0 || ::unlockpt(read) != 0) throw std::runtime_error("no terminal");
    write = ::open(::ptsname(read), O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (write < 0) throw std::runtime_error("no terminal");
  }
  static void shut(int& end) {
    if (end >= 0) ::close(end);
    end = -1;
  }
};

void put_on(int stream, int from) {
  if (from < 0 || ::dup2(from, stream) < 0) std::_Exit(126);
}

/// In the new process: streams, folder, environment, then the command itself.
[[noreturn]] void become(const std::vector<std::string>& command, const Start& start, const Pipe& in, const Pipe& out,
                         const Pipe& err) {
  put_on(STDIN_FILENO, start.in_file ? ::open(start.in_file->c_str(), O_RDONLY) : in.read);
  put_on(STDOUT_FILENO,
         start.out_file ? ::open(start.out_file->c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644) : out.write);
  put_on(STDERR_FILENO, err.write);
  if (::chdir(start.folder.c_str()) != 0) std::_Exit(126);
  for (const auto& [name, value] : start.environment) ::setenv(name.c_str(), value.c_str(), 1);
  if (start.file_limit) {
    const rlimit limit{*start.file_limit, *start.file_limit};
    if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) std::_Exit(126);
    std::signal(SIGXFSZ, SIG_IGN);  // Then a write fails as on a full disk, instead of ending the process.
  }
  std::vector<char*> words;
  for (const std::string& word : command) words.push_back(const_cast<char*>(word.c_str()));
  words.push_back(nullptr);
  ::execvp(words[0], words.data());
  std::_Exit(127);
}

/// Reads what is there; false at the end of the stream.
bool take(int from, std::string& into) {
  std::array<char, 65536> some{};
  const ssize_t got = ::read(from, some.data(), some.size());
  if (got > 0) into.append(some.data(), static_cast<std::size_t>(got));
  return got > 0;
}

/// Feeds and drains until both outputs are at their end, or the time is over (false).
bool attend(const Start& start, Pipe& in, Pipe& out, Pipe& err, Ran& ran) {
  const Clock::time_point until = Clock::now() + std::chrono::seconds{start.seconds};
  std::size_t fed = 0;
  if (start.in.empty()) in.close_write();
  while (out.read >= 0 || err.read >= 0) {
    std::array<pollfd, 3> streams{{{out.read, POLLIN, 0}, {err.read, POLLIN, 0}, {in.write, POLLOUT, 0}}};
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(until - Clock::now()).count();
    if (left <= 0 || ::poll(streams.data(), streams.size(), static_cast<int>(left)) == 0) return false;
    if (streams[0].revents != 0 && !take(out.read, ran.out)) out.close_read();
    if (streams[1].revents != 0 && !take(err.read, ran.err)) err.close_read();
    if (in.write < 0 || streams[2].revents == 0) continue;
    const ssize_t put = ::write(in.write, start.in.data() + fed, std::min<std::size_t>(start.in.size() - fed, 4096));
    if (put > 0) fed += static_cast<std::size_t>(put);
    if (put <= 0 || fed == start.in.size()) in.close_write();
  }
  return true;
}

}  // namespace

std::string program() {
  const char* told = std::getenv("FLATWISE_PROGRAM");
  return told != nullptr ? std::filesystem::absolute(told).string() : FLATWISE_PROGRAM_BUILT;
}

Ran run(const std::vector<std::string>& command, const Start& start) {
  std::signal(SIGPIPE, SIG_IGN);  // A process that reads nothing must not end us.
  Pipe in, out{start.terminal}, err;
  Ran ran;
  const pid_t child = ::fork();
  if (child < 0) throw std::runtime_error("no process");
  if (child == 0) {
    std::signal(SIGPIPE, SIG_DFL);
    if (start.closed_pipe) out.close_read();
    become(command, start, in, out, err);
  }
  in.close_read();
  err.close_write();
  if (start.closed_pipe) out.close_read();
  out.close_write();
  ran.late = !attend(start, in, out, err, ran);
  if (ran.late) ::kill(child, SIGKILL);
  int state = 0;
  ::waitpid(child, &state, 0);
  if (WIFEXITED(state)) ran.status = WEXITSTATUS(state);
  if (WIFSIGNALED(state)) ran.signal = WTERMSIG(state);
  return ran;
}

Ran flatwise(std::vector<std::string> arguments, const Start& start) {
  arguments.insert(arguments.begin(), program());
  Start own = start;
  // A sanitizer's own exit status would pass for one of ours.
  const auto add = [&own](const std::string& name, const std::string& value) {
    const char* set = std::getenv(name.c_str());
    own.environment.emplace(name, (set != nullptr ? std::string{set} + ":" : std::string{}) + value);
  };
  add("ASAN_OPTIONS", "exitcode=99");
  add("UBSAN_OPTIONS", "exitcode=99:halt_on_error=1:print_stacktrace=1");
  add("LSAN_OPTIONS",
      "exitcode=99:print_suppressions=0:suppressions=" FLATWISE_SOURCE_DIR "/tests/leaks-of-others.txt");
  return run(arguments, own);
}

std::string typed(const std::vector<std::string>& arguments) {
  std::string out = "flatwise";
  for (const std::string& a : arguments) out += a.find_first_of(" '\"") == std::string::npos ? " " + a : " '" + a + "'";
  return out;
}

Scratch::Scratch() {
  std::string name = (std::filesystem::temp_directory_path() / "flatwise-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for the test");
  path_ = name;
}

Scratch::~Scratch() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string Scratch::write(const std::string& name, const std::string& bytes) const {
  const std::filesystem::path file = path_ / name;
  std::filesystem::create_directories(file.parent_path());
  std::ofstream{file, std::ios::binary} << bytes;
  return file.string();
}

std::vector<std::string> Scratch::files() const {
  std::vector<std::string> found;
  for (const auto& entry : std::filesystem::recursive_directory_iterator{path_})
    if (!entry.is_directory()) found.push_back(entry.path().lexically_relative(path_).string());
  std::ranges::sort(found);
  return found;
}

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in{file, std::ios::binary};
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return {std::istreambuf_iterator<char>{in}, {}};
}

std::string ours(const std::string& path) { return text_of(std::filesystem::path{FLATWISE_SOURCE_DIR} / path); }

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in{text};
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

}  // namespace flatwise::end_to_end
