// let_in.h: devices beyond this machine. Each shows once the code that stands at the server, and gets a token for its cookie;
// of the token only a hash is kept.
#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

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
  };
  /// `file`: where hashes are kept, made when the first device comes.
  LetIn(std::filesystem::path file, Terminal terminal);

  enum class Answer { let_in, wrong, too_many, not_kept };
  struct Let {
    Answer answer = Answer::wrong;
    std::string token;
  };
  /// The code holds once. After ten wrong tries it is another one; more than five a minute are not looked at.
  [[nodiscard]] Let try_code(std::string_view code);
  /// Whether a Cookie header holds a token of ours.
  [[nodiscard]] bool knows(std::string_view cookie) const;
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
  [[nodiscard]] bool keep(const std::string& hash);

  mutable std::mutex mutex_;
  std::filesystem::path file_;
  Terminal terminal_;
  std::string code_;
  std::optional<Offer> offer_;
  std::vector<std::string> hashes_;
  int wrong_ = 0;
  std::vector<std::chrono::steady_clock::time_point> tries_;
};

}  // namespace flatwise::server
