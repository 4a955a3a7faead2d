#include "server/let_in.h"

#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <array>
#include <fstream>

namespace flatwise::server {
namespace {

constexpr std::size_t kHashBytes = 32, kTokenBytes = 32, kCodeLetters = 8;
constexpr int kTriesAMinute = 5, kWrongOfOneCode = 10;
// Without letters and digits that look alike, for a code read off a screen.
constexpr std::string_view kLetters = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

std::string hex(const unsigned char* bytes, std::size_t count) {
  std::string out(2 * count + 1, '\0');
  sodium_bin2hex(out.data(), out.size(), bytes, count);
  out.pop_back();
  return out;
}

std::string drawn_code() {
  std::string code;
  for (std::size_t i = 0; i < kCodeLetters; ++i)
    code += kLetters[randombytes_uniform(static_cast<std::uint32_t>(kLetters.size()))];
  return code;
}

/// As it is shown: two halves are read off a screen more surely than eight letters in a row.
std::string in_halves(const std::string& code) { return code.substr(0, 4) + "-" + code.substr(4); }

std::string hash_of(std::string_view token) {
  std::array<unsigned char, kHashBytes> digest{};
  crypto_generichash(digest.data(), digest.size(), reinterpret_cast<const unsigned char*>(token.data()), token.size(),
                     nullptr, 0);
  return hex(digest.data(), digest.size());
}

bool same(const std::string& a, const std::string& b) {
  return a.size() == b.size() && sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

/// As typed by hand: small letters count, dashes and spaces do not.
std::string plain(std::string_view code) {
  std::string out;
  for (const char c : code)
    if (c != '-' && c != ' ') out += c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
  return out;
}

std::vector<std::string> read_hashes(const std::filesystem::path& file) {
  std::vector<std::string> hashes;
  std::ifstream in{file};
  for (std::string line; std::getline(in, line);)
    if (line.size() == 2 * kHashBytes) hashes.push_back(line);
  return hashes;
}

}  // namespace

LetIn::LetIn(std::filesystem::path file, Terminal terminal)
    : file_{std::move(file)}, terminal_{std::move(terminal)}, hashes_{read_hashes(file_)} {
  fresh_code();
}

void LetIn::fresh_code() {
  code_ = drawn_code();
  wrong_ = 0;
}

void LetIn::tell_terminal() const { terminal_.show(in_halves(code_)); }

void LetIn::show_code() {
  const std::scoped_lock lock{mutex_};
  tell_terminal();
}

std::string LetIn::offer() {
  const std::scoped_lock lock{mutex_};
  offer_ = Offer{drawn_code(), terminal_.now() + kOfferHolds};
  return in_halves(offer_->code);
}

bool LetIn::is_offered(const std::string& code) {
  if (offer_ && terminal_.now() >= offer_->until) offer_.reset();
  return offer_ && same(hash_of(code), hash_of(offer_->code));
}

/// Who guesses gets neither code twice to guess at.
void LetIn::wrong_try() {
  tries_.push_back(terminal_.now());
  if (++wrong_ < kWrongOfOneCode) return;
  offer_.reset();
  fresh_code();
  tell_terminal();
}

bool LetIn::keep(const std::string& hash) {
  // One line at the end, on the disk before the device is told: a torn line is no hash and lets nobody in.
  const int fd = ::open(file_.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  if (fd < 0) return false;
  const std::string line = hash + "\n";
  const bool kept = ::write(fd, line.data(), line.size()) == static_cast<ssize_t>(line.size()) && ::fsync(fd) == 0;
  return ::close(fd) == 0 && kept;
}

LetIn::Let LetIn::try_code(std::string_view code) {
  const std::scoped_lock lock{mutex_};
  const auto now = terminal_.now();
  std::erase_if(tries_, [&](auto at) { return now - at > std::chrono::minutes{1}; });
  if (tries_.size() >= kTriesAMinute) return {Answer::too_many, {}};
  const bool at_terminal = same(hash_of(plain(code)), hash_of(code_)), offered = is_offered(plain(code));
  if (!at_terminal && !offered) {
    wrong_try();
    return {Answer::wrong, {}};
  }
  std::array<unsigned char, kTokenBytes> bytes{};
  randombytes_buf(bytes.data(), bytes.size());
  Let let{Answer::let_in, hex(bytes.data(), bytes.size())};
  if (!keep(hash_of(let.token))) return {Answer::not_kept, {}};
  hashes_.push_back(hash_of(let.token));
  if (offered) offer_.reset();
  if (!at_terminal) return let;
  fresh_code();
  tell_terminal();
  return let;
}

bool LetIn::knows(std::string_view cookie) const {
  const std::string name = std::string{kCookie} + "=";
  while (!cookie.empty()) {
    std::string_view one = cookie.substr(0, cookie.find(';'));
    cookie.remove_prefix(std::min(cookie.size(), one.size() + 1));
    while (one.starts_with(' ')) one.remove_prefix(1);
    if (!one.starts_with(name)) continue;
    const std::string hash = hash_of(one.substr(name.size()));
    const std::scoped_lock lock{mutex_};
    bool known = false;
    for (const std::string& kept : hashes_) known = same(kept, hash) || known;
    return known;
  }
  return false;
}

}  // namespace flatwise::server
