#include <poll.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <csignal>
#include <cstdlib>
#include <memory>
#include <ostream>
#include <thread>

#include "cli/code_picture.h"
#include "cli/data.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "server/guard.h"
#include "server/serve.h"

namespace flatwise::cli {
namespace {

void line(const Context& context, const Message& message) {
  *context.out << printable(say(message, context.voice)) << std::endl;  // At once: whoever started it waits for this.
}

/// Opens the page in the browser of this desktop, where there is a program for that.
void open_page(const std::string& address) {
  const pid_t child = ::fork();
  if (child != 0) return;
  ::execlp("xdg-open", "xdg-open", address.c_str(), static_cast<char*>(nullptr));
  ::_exit(127);
}

/// A line typed at the terminal of the server shows the code again.
class AskedAgain {
 public:
  explicit AskedAgain(server::Server& server) : thread_{[this, &server] { watch(server); }} {}
  AskedAgain(const AskedAgain&) = delete;
  AskedAgain& operator=(const AskedAgain&) = delete;
  ~AskedAgain() {
    ending_ = true;
    thread_.join();
  }

 private:
  void watch(server::Server& server) {
    while (!ending_) {
      pollfd in{.fd = STDIN_FILENO, .events = POLLIN, .revents = 0};
      if (::poll(&in, 1, 200) <= 0) continue;
      std::array<char, 256> typed{};
      if (::read(STDIN_FILENO, typed.data(), typed.size()) <= 0) return;
      server.show_code();
    }
  }
  std::atomic<bool> ending_{false};
  std::thread thread_;
};

/// Code and address, and on a terminal both as a picture to scan: who is let in by it types nothing.
void show_way_in(const Context& context, const std::string& address, const std::string& code) {
  line(context, {Code{"cli.serve.code"}, {{"code", code}}});
  if (address.empty()) return;
  const std::string way_in = address + "?code=" + code;
  line(context, {Code{"cli.serve.way_in"}, {{"address", way_in}}});
  if (context.colour) *context.out << code_picture(way_in) << std::flush;
}

/// `address`: of the page as another device reaches it, filled when the port is known.
server::Settings settings_of(const Context& context, const ServeOptions& options, const std::string& folder,
                             const std::shared_ptr<std::string>& address) {
  server::Settings settings;
  settings.data = folder;
  settings.listen = options.listen;
  settings.port = static_cast<unsigned short>(options.port);
  settings.names = options.names;
  if (!options.web_root.empty()) settings.web_root = options.web_root;
  settings.reached_at = [address] { return *address; };
  settings.show_code = [context, address](const std::string& code) { show_way_in(context, *address, code); };
  return settings;
}

}  // namespace

bool ServeOptions::for_others() const { return server::needs_code(listen, names); }

Status serve(const Context& context, const ServeOptions& options) {
  const std::string folder = data_folder(options.data);
  if (auto made = make_data(context, folder, options.demo); !made) return refuse(context, made.error());
  const auto reached_at = std::make_shared<std::string>();
  const auto server = server::Server::make(settings_of(context, options, folder, reached_at));
  if (!server) return refuse(context, server.error());
  std::signal(SIGPIPE, SIG_IGN);  // A listener that went away is no reason to end.
  std::signal(SIGCHLD, SIG_IGN);  // Nobody waits for the browser.
  const std::string address = (*server)->address();
  line(context, {Code{"cli.serve.at"}, {{"address", address}, {"folder", folder}}});
  if (const std::string name = reachable_name(options.listen, options.names); !name.empty())
    *reached_at = with_name(address, name);
  if (options.for_others()) (*server)->show_code();
  if (options.open) open_page(address);
  if (!options.for_others()) {
    (*server)->run(true);
  } else {
    const AskedAgain asked{**server};
    (*server)->run(true);
  }
  line(context, {Code{"cli.serve.ended"}, {}});
  return Status::in_order;
}

}  // namespace flatwise::cli
