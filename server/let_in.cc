#include "server/let_in.h"

#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>

#include "record/instant.h"
#include "record/uuid.h"

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

constexpr std::string_view kBetween = "\t";

/// Up to the next tabulator, taken off the front.
std::string_view next_part(std::string_view& line) {
  const std::string_view part = line.substr(0, line.find(kBetween));
  line.remove_prefix(std::min(line.size(), part.size() + kBetween.size()));
  return part;
}

/// "hash", as it was kept before devices had names, or "hash id since seen name" with tabulators between.
std::vector<LetIn::Device> read_devices(const std::filesystem::path& file) {
  std::vector<LetIn::Device> devices;
  std::ifstream in{file};
  for (std::string text; std::getline(in, text);) {
    std::string_view line = text;
    LetIn::Device device;
    device.hash = next_part(line);
    if (device.hash.size() != 2 * kHashBytes) continue;  // A torn line is no hash and lets nobody in.
    device.id = next_part(line);
    if (!record::is_uuid(device.id)) device.id = fresh_id();
    device.since = record::day_of(next_part(line)).value_or(Day{});
    device.seen = record::day_of(next_part(line)).value_or(Day{});
    device.name = line;
    devices.push_back(std::move(device));
  }
  return devices;
}

/// A name stands on one line.
std::string on_one_line(std::string name) {
  for (char& c : name)
    if (static_cast<unsigned char>(c) < 0x20) c = ' ';
  return name;
}

bool write_all(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t wrote = ::write(fd, text.data(), text.size());
    if (wrote <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(wrote));
  }
  return ::fsync(fd) == 0;
}

}  // namespace

LetIn::LetIn(std::filesystem::path file, Terminal terminal)
    : file_{std::move(file)}, terminal_{std::move(terminal)}, devices_{read_devices(file_)} {
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

bool LetIn::keep(const std::vector<Device>& devices) {
  // Written whole beside the file and put in its place, on the disk before anybody is told: it is the old one or the new one.
  const std::string fresh = file_.string() + ".new";
  const int fd = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (fd < 0) return false;
  std::string text;
  for (const Device& d : devices)
    text +=
        d.hash + "\t" + d.id + "\t" + record::text_of(d.since) + "\t" + record::text_of(d.seen) + "\t" + d.name + "\n";
  const bool wrote = write_all(fd, text);
  return ::close(fd) == 0 && wrote && ::rename(fresh.c_str(), file_.c_str()) == 0;
}

LetIn::Let LetIn::try_code(std::string_view code, const std::string& name) {
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
  const Day today = terminal_.today();
  std::vector<Device> devices = devices_;
  devices.push_back({fresh_id(), hash_of(let.token), today, today, on_one_line(name)});
  if (!keep(devices)) return {Answer::not_kept, {}};
  devices_ = std::move(devices);
  if (offered) offer_.reset();
  if (!at_terminal) return let;
  fresh_code();
  tell_terminal();
  return let;
}

const LetIn::Device* LetIn::known(std::string_view cookie) const {
  const std::string name = std::string{kCookie} + "=";
  while (!cookie.empty()) {
    std::string_view one = cookie.substr(0, cookie.find(';'));
    cookie.remove_prefix(std::min(cookie.size(), one.size() + 1));
    while (one.starts_with(' ')) one.remove_prefix(1);
    if (!one.starts_with(name)) continue;
    const std::string hash = hash_of(one.substr(name.size()));
    const Device* known = nullptr;
    for (const Device& device : devices_)
      if (same(device.hash, hash)) known = &device;
    return known;
  }
  return nullptr;
}

bool LetIn::knows(std::string_view cookie) {
  const std::scoped_lock lock{mutex_};
  const Device* device = known(cookie);
  if (device == nullptr) return false;
  if (const Day today = terminal_.today(); device->seen != today) {
    devices_[static_cast<std::size_t>(device - devices_.data())].seen = today;
    static_cast<void>(keep(devices_));  // It is in either way; only the day it was last seen would be missing.
  }
  return true;
}

std::vector<LetIn::Device> LetIn::devices() const {
  const std::scoped_lock lock{mutex_};
  return devices_;
}

job::Id LetIn::device_of(std::string_view cookie) const {
  const std::scoped_lock lock{mutex_};
  const Device* device = known(cookie);
  return device == nullptr ? job::Id{} : device->id;
}

LetIn::TakenBack LetIn::take_back(const job::Id& id) {
  const std::scoped_lock lock{mutex_};
  std::vector<Device> left = devices_;
  if (std::erase_if(left, [&](const Device& d) { return d.id == id; }) == 0) return TakenBack::not_there;
  if (!keep(left)) return TakenBack::not_kept;
  devices_ = std::move(left);
  return TakenBack::done;
}

}  // namespace flatwise::server
