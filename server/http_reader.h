// http_reader.h: the bytes of one connection, read as requests one after the other. Only http_*.cc use it.
//
// A request points into the bytes as they came: nothing of its head is copied. They stay where they are until next().
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "server/http.h"

namespace flatwise::server {

class Reader {
 public:
  /// How far go_on() came: wants more bytes, has a whole head, has all, or cannot go on.
  enum class Step { more, head, whole, wrong };

  explicit Reader(std::size_t header_bytes);
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;
  ~Reader();

  /// Where the bytes that come next go; never empty while go_on() wants more.
  [[nodiscard]] std::span<char> room();
  void came(std::size_t bytes);
  /// Reads on in what has come: first to the end of the head, then to the end of the body.
  [[nodiscard]] Step go_on();
  /// What is wrong, after Step::wrong.
  [[nodiscard]] Broken wrong() const { return wrong_; }
  /// Some of a request has come, but not all.
  [[nodiscard]] bool in_the_middle() const;
  /// The request is done with: the next one begins behind it.
  void next();

  // From the head on:
  [[nodiscard]] Request& request() { return request_; }
  /// Whether it is clear where the request ends (RFC 9112 section 6.3): coded in no other way than in chunks.
  [[nodiscard]] bool is_framed() const { return framed_; }
  [[nodiscard]] bool keeps_alive() const;
  [[nodiscard]] bool has_body() const;                            ///< More is to come than the head.
  [[nodiscard]] std::optional<std::uint64_t> body_bytes() const;  ///< As announced; none where it comes in chunks.
  [[nodiscard]] bool waits_to_go_on() const { return waits_; }    ///< "Expect: 100-continue"
  void most_body(std::size_t bytes);

 private:
  class Parser;
  /// Bytes that came; those from `from` to `to` are not read yet.
  struct Piece {
    std::vector<char> bytes;
    std::size_t from = 0, to = 0;
    [[nodiscard]] std::string_view left() const { return {bytes.data() + from, to - from}; }
    /// What is left of another piece, or of this one, from the first byte on.
    void begin_with(std::string_view left);
  };
  void begin();
  void take_field(int field, std::string_view name, std::string_view value);
  [[nodiscard]] std::string_view kept(std::string_view value);
  [[nodiscard]] Step read_head();
  [[nodiscard]] Step read_body();

  std::size_t header_bytes_;
  Piece head_;  ///< Begins with the request; nothing in it moves before next().
  Piece tail_;  ///< The body as it comes, in pieces of the same size; empty where there is none.
  bool in_tail_ = false;
  std::vector<std::unique_ptr<std::string>> unfolded_;  ///< Values that stood on several lines.
  std::string body_;
  std::unique_ptr<Parser> parser_;
  Request request_;
  bool framed_ = true, waits_ = false;
  Broken wrong_ = Broken::unreadable;
};

}  // namespace flatwise::server
