// let_in.h: devices beyond this machine. Each shows once the code that stands at the server, and gets a token for its cookie;
// of the token only a hash is kept, with the name that was typed and the days on which it came and was last seen. Each is taken back
// on its own.
#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/entry.h"
#include "server/times.h"

namespace flatwise::server {

class LetIn {
 public:
  using Clock = std::function<std::chrono::steady_clock::time_point()>;
  /// `show`: tells the code to whoever stands at the server. `reached_at`: the page's address as another device reaches it,
  /// where the server knows one. `now`: another clock, for tests.
  struct Terminal {
    std::function<void(const std::string& code)> show;
    std::function<std::string()> reached_at = [] { return std::string{}; };
    Clock now = std::chrono::steady_clock::now;
    std::function<Day()> today = server::today;
  };
  /// `file`: where hashes are kept, made when the first device comes.
  LetIn(std::filesystem::path file, Terminal terminal);

  enum class Answer { let_in, wrong, too_many, not_kept };
  struct Let {
    Answer answer = Answer::wrong;
    std::string token;
  };
  /// A device that is in. Its name is what was typed when it came; empty: nothing.
  struct Device {
    job::Id id;
    std::string hash;  ///< Of its token.
    Day since{}, seen{};
    std::string name;
  };
  /// The code holds once. After ten wrong tries it is another one; more than five a minute are not looked at. `name`: of the
  /// device, as it was typed there.
  [[nodiscard]] Let try_code(std::string_view code, const std::string& name = {});
  /// Whether a Cookie header holds a token of ours. Notes the day on which it was last seen.
  [[nodiscard]] bool knows(std::string_view cookie);
  /// Devices that are in, in the order they came.
  [[nodiscard]] std::vector<Device> devices() const;
  /// Id of the device with that Cookie header; empty: none of ours, as at the server's own machine.
  [[nodiscard]] job::Id device_of(std::string_view cookie) const;
  enum class TakenBack { done, not_there, not_kept };
  /// The token of that device holds no more, from now on and after the next start too.
  [[nodiscard]] TakenBack take_back(const job::Id& id);
  void show_code();
  /// A code of its own for the page of a device that is in already: for one device, and for kOfferHolds only. The one offered
  /// before it holds no more.
  [[nodiscard]] std::string offer();
  [[nodiscard]] std::string reached_at() const { return terminal_.reached_at(); }

  static constexpr std::chrono::minutes kOfferHolds{10};
  static constexpr std::string_view kCookie = "flatwise_device";

 private:
  struct Offer {
    std::string code;
    std::chrono::steady_clock::time_point until;
  };
  void fresh_code();
  void tell_terminal() const;
  [[nodiscard]] bool is_offered(const std::string& code);
  void wrong_try();
  [[nodiscard]] bool keep(const std::vector<Device>& devices);
  [[nodiscard]] const Device* known(std::string_view cookie) const;

  mutable std::mutex mutex_;
  std::filesystem::path file_;
  Terminal terminal_;
  std::string code_;
  std::optional<Offer> offer_;
  std::vector<Device> devices_;
  int wrong_ = 0;
  std::vector<std::chrono::steady_clock::time_point> tries_;
};

}  // namespace flatwise::server
