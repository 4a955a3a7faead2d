#include "server/http_reader.h"

#include <utility>  // Asio 1.74 forgets it.

#include <algorithm>
#include <boost/beast/http/basic_parser.hpp>
#include <boost/beast/http/error.hpp>
#include <cstring>
#include <functional>
#include <limits>

namespace flatwise::server {
namespace {

namespace beast = boost::beast;
namespace bhttp = boost::beast::http;
using Code = boost::system::error_code;

constexpr std::size_t kReserved = 64U << 10U;  ///< A body announced as larger grows as it comes.
constexpr std::size_t kSlack = 2U << 10U;      ///< Beyond the limit of a head, so that one too long is seen to be.

std::string_view view(beast::string_view v) { return {v.data(), v.size()}; }
bool same(std::string_view a, std::string_view b) { return beast::iequals({a.data(), a.size()}, {b.data(), b.size()}); }

Broken broken_by(Code ec) {
  if (ec == bhttp::error::header_limit) return Broken::header_too_large;
  if (ec == bhttp::error::body_limit) return Broken::body_too_large;
  return Broken::unreadable;
}

}  // namespace

/// Beast's rules of what a request is, with the fields handed on as they stand.
class Reader::Parser final : public bhttp::basic_parser<true> {
 public:
  explicit Parser(Reader& reader) : reader_{reader} {}

 private:
  void on_request_impl(bhttp::verb /*verb*/, beast::string_view method, beast::string_view target, int /*version*/,
                       Code& /*ec*/) override {
    Request& r = reader_.request_;
    r.method = view(method);
    const std::string_view all = view(target);
    const std::size_t mark = all.find('?');
    r.path = all.substr(0, mark);
    if (mark != std::string_view::npos) r.query = all.substr(mark + 1);
  }
  void on_response_impl(int /*status*/, beast::string_view /*reason*/, int /*version*/, Code& /*ec*/) override {}
  void on_field_impl(bhttp::field name, beast::string_view name_text, beast::string_view value, Code& /*ec*/) override {
    if (in_head_) reader_.take_field(static_cast<int>(name), view(name_text), view(value));
  }
  void on_header_impl(Code& /*ec*/) override { in_head_ = false; }  // What comes behind the chunks says nothing.
  void on_body_init_impl(const boost::optional<std::uint64_t>& length, Code& /*ec*/) override {
    if (length) reader_.body_.reserve(std::min<std::size_t>(*length, kReserved));
  }
  std::size_t on_body_impl(beast::string_view piece, Code& /*ec*/) override {
    reader_.body_.append(piece.data(), piece.size());
    return piece.size();
  }
  void on_chunk_header_impl(std::uint64_t /*size*/, beast::string_view /*extensions*/, Code& /*ec*/) override {}
  std::size_t on_chunk_body_impl(std::uint64_t /*remain*/, beast::string_view piece, Code& ec) override {
    return on_body_impl(piece, ec);
  }
  void on_finish_impl(Code& /*ec*/) override {}

  Reader& reader_;
  bool in_head_ = true;
};

Reader::Reader(std::size_t header_bytes) : header_bytes_{header_bytes} {
  head_.bytes.resize(header_bytes_ + kSlack);
  begin();
}
Reader::~Reader() = default;

void Reader::begin() {
  parser_ = std::make_unique<Parser>(*this);
  parser_->header_limit(static_cast<std::uint32_t>(header_bytes_));
  // No limit yet: the plan sets it. Not boost::none, which this Boost takes for less than any length.
  parser_->body_limit(std::numeric_limits<std::uint64_t>::max());
  request_ = Request{};
  unfolded_.clear();
  framed_ = true;
  waits_ = in_tail_ = false;
}

void Reader::Piece::begin_with(std::string_view left) {
  std::memmove(bytes.data(), left.data(), left.size());
  from = 0;
  to = left.size();
}

std::span<char> Reader::room() {
  Piece& piece = in_tail_ ? tail_ : head_;
  return std::span{piece.bytes}.subspan(piece.to);
}

void Reader::came(std::size_t bytes) { (in_tail_ ? tail_ : head_).to += bytes; }

bool Reader::in_the_middle() const { return parser_->got_some() && !parser_->is_done(); }
bool Reader::keeps_alive() const { return parser_->is_header_done() && parser_->keep_alive(); }
bool Reader::has_body() const { return !parser_->is_done(); }
void Reader::most_body(std::size_t bytes) { parser_->body_limit(bytes); }
std::optional<std::uint64_t> Reader::body_bytes() const {
  const auto length = parser_->content_length();
  return length ? std::optional<std::uint64_t>{*length} : std::nullopt;
}

/// A value that stood on one line is where it came; one that was put together from several must be kept.
std::string_view Reader::kept(std::string_view value) {
  const char *begin = head_.bytes.data(), *end = begin + head_.bytes.size();
  const std::less_equal<const char*> before;
  if (before(begin, value.data()) && before(value.data(), end)) return value;
  return *unfolded_.emplace_back(std::make_unique<std::string>(value));
}

void Reader::take_field(int field, std::string_view name, std::string_view value) {
  Request& r = request_;
  const auto once = [&](std::string_view& into) {
    r.whole = r.whole && into.data() == nullptr;
    into = kept(value);
  };
  switch (static_cast<bhttp::field>(field)) {
    case bhttp::field::host:
      return once(r.host);
    case bhttp::field::origin:
      return once(r.origin);
    case bhttp::field::content_type:
      return once(r.content_type);
    case bhttp::field::if_match:
      return once(r.if_match);
    case bhttp::field::if_none_match:
      return once(r.if_none_match);
    case bhttp::field::cookie:
      return once(r.cookie);
    case bhttp::field::accept_encoding:
      r.encodings = kept(value);
      return;
    case bhttp::field::transfer_encoding:
      framed_ = framed_ && same(value, "chunked");
      return;
    case bhttp::field::expect:
      waits_ = same(value, "100-continue");
      return;
    case bhttp::field::forwarded:
    case bhttp::field::via:
      r.handed_on = true;
      return;
    case bhttp::field::unknown:
      if (same(name, "last-event-id")) r.last_event_id = kept(value);
      if (same(name, "sec-fetch-site")) r.fetch_site = kept(value);
      if (same(name.substr(0, 12), "x-forwarded-") || same(name, "x-real-ip")) r.handed_on = true;
      return;
    default:
      return;
  }
}

Reader::Step Reader::go_on() { return parser_->is_header_done() ? read_body() : read_head(); }

Reader::Step Reader::read_head() {
  Code ec;
  const std::string_view left = head_.left();
  head_.from += parser_->put({left.data(), left.size()}, ec);
  if (ec == bhttp::error::need_more && head_.to < head_.bytes.size()) return Step::more;
  if (!ec) return Step::head;
  wrong_ = ec == bhttp::error::need_more ? Broken::header_too_large : broken_by(ec);
  return Step::wrong;
}

Reader::Step Reader::read_body() {
  if (parser_->is_done()) return Step::whole;
  if (!in_tail_) {
    tail_.bytes.resize(head_.bytes.size());
    tail_.begin_with(head_.left());
    in_tail_ = true;
    parser_->eager(true);
  }
  Code ec;
  const std::string_view left = tail_.left();
  tail_.from += parser_->put({left.data(), left.size()}, ec);
  if (ec && ec != bhttp::error::need_more) {
    wrong_ = broken_by(ec);
    return Step::wrong;
  }
  if (parser_->is_done()) {
    request_.body = body_;
    return Step::whole;
  }
  tail_.begin_with(tail_.left());  // Half a line between two chunks, at most.
  if (!room().empty()) return Step::more;
  wrong_ = Broken::unreadable;  // A line between two chunks longer than any head may be.
  return Step::wrong;
}

void Reader::next() {
  head_.begin_with((in_tail_ ? tail_ : head_).left());
  tail_ = {};
  body_ = {};
  begin();
}

}  // namespace flatwise::server
