#include "record/chain.h"

#include <sodium.h>

#include <array>

#include "record/canonical.h"
#include "record/instant.h"

namespace flatwise::record {
namespace {

std::string text_or_null(std::string_view text) { return text.empty() ? "null" : canonical_string(text); }

}  // namespace

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, crypto_hash_sha256_BYTES> digest{};
  std::array<char, 2 * crypto_hash_sha256_BYTES + 1> hex{};
  crypto_hash_sha256(digest.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  sodium_bin2hex(hex.data(), hex.size(), digest.data(), digest.size());
  return hex.data();
}

// Put together by hand in the order of the keys: the body is canonical already.
std::string chain_text(const job::EntryRow& row) {
  std::string corrects;
  const std::string received =
      row.received.ms == 0 ? std::string{} : ",\"received\":" + canonical_string(text_of(row.received));
  for (const job::Id& id : row.corrects) corrects += (corrects.empty() ? "" : ",") + canonical_string(id);
  return "{\"at\":" + canonical_string(text_of(row.at)) + ",\"before\":" + text_or_null(row.before) +
         ",\"body\":" + row.body + ",\"by\":" + canonical_string(row.by) + ",\"corrects\":[" + corrects +
         "],\"follows\":" + text_or_null(row.follows) + ",\"id\":" + canonical_string(row.id) +
         ",\"job\":" + canonical_string(row.job) + ",\"kind\":" + canonical_string(row.kind) +
         ",\"number\":" + std::to_string(row.number) + ",\"on\":" + canonical_string(row.on) + received + "}";
}

std::string chain_hash(const job::EntryRow& row) { return sha256(chain_text(row)); }

std::optional<BrokenLink> verify_chain(std::span<const job::EntryRow> rows) {
  std::string before;
  int number = 1;
  for (const job::EntryRow& row : rows) {
    if (row.number != number) return BrokenLink{number, BrokenLink::Why::number};
    if (row.before != before) return BrokenLink{number, BrokenLink::Why::before};
    if (row.hash != chain_hash(row)) return BrokenLink{number, BrokenLink::Why::hash};
    before = row.hash;
    ++number;
  }
  return std::nullopt;
}

}  // namespace flatwise::record
