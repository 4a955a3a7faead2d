// peer.h: a peer in a process of its own, that answers a line with a line and tells its own times, so that the pipe is not in them.
#pragma once

#include <spawn.h>
#include <unistd.h>

#include <cstdio>
#include <string>

#include "bench/measure.h"

namespace flatwise::bench {

/// A Python script on Debian's own interpreter, which has its scipy.
class PythonPeer {
 public:
  explicit PythonPeer(std::string script, std::string argument = {}) {
    int to[2], from[2];
    if (pipe(to) != 0 || pipe(from) != 0) stop("no pipe to the peer");
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, to[0], 0);
    posix_spawn_file_actions_adddup2(&actions, from[1], 1);
    for (const int end : {to[0], to[1], from[0], from[1]}) posix_spawn_file_actions_addclose(&actions, end);
    std::string python = "/usr/bin/python3";
    char* arguments[] = {python.data(), script.data(), argument.empty() ? nullptr : argument.data(), nullptr};
    pid_t pid = 0;
    if (posix_spawn(&pid, python.c_str(), &actions, nullptr, arguments, environ) != 0)
      stop("no /usr/bin/python3 for the peer");
    close(to[0]);
    close(from[1]);
    to_ = fdopen(to[1], "w");
    from_ = fdopen(from[0], "r");
  }
  ~PythonPeer() {
    std::fclose(to_);
    std::fclose(from_);
  }
  PythonPeer(const PythonPeer&) = delete;
  PythonPeer& operator=(const PythonPeer&) = delete;

  std::string ask(const std::string& line) {
    std::fprintf(to_, "%s\n", line.c_str());
    std::fflush(to_);
    char answer[512];
    if (std::fgets(answer, sizeof answer, from_) == nullptr) stop("the peer stopped; it needs python3-scipy");
    return answer;
  }

 private:
  std::FILE *to_ = nullptr, *from_ = nullptr;
};

}  // namespace flatwise::bench
