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
  /// `file`: where hashes are kept, made when the first device comes. `show`: tells the code to whoever stands at the server.
  LetIn(std::filesystem::path file, std::function<void(const std::string& code)> show);

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

  static constexpr std::string_view kCookie = "flatwise_device";

 private:
  void fresh_code();
  [[nodiscard]] bool keep(const std::string& hash);

  mutable std::mutex mutex_;
  std::filesystem::path file_;
  std::function<void(const std::string&)> show_;
  std::string code_;
  std::vector<std::string> hashes_;
  int wrong_ = 0;
  std::vector<std::chrono::steady_clock::time_point> tries_;
};

}  // namespace flatwise::server
