// The least that an HTTP server does here: Beast reads a request, Beast writes a reply that was made beforehand, as long as that of a
// job's card, on one thread. What loopback and the library take at the least, asked in the same run: bench/record/run.py.
//
//   build/release/bench/bench_record_hello PORT [BYTES]
//
// Links: units
#include <utility>  // Asio 1.74 forgets it.

#include <boost/asio.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

namespace {

namespace net = boost::asio;
namespace http = boost::beast::http;
using tcp = net::ip::tcp;
using Code = boost::system::error_code;

class Guest : public std::enable_shared_from_this<Guest> {
 public:
  Guest(tcp::socket socket, std::size_t bytes) : socket_{std::move(socket)} {
    socket_.set_option(tcp::no_delay(true));
    reply_.result(http::status::ok);
    reply_.set(http::field::content_type, "application/json");
    reply_.body() = '"' + std::string(bytes - 2, 'x') + '"';
    reply_.prepare_payload();
  }
  void read() {
    request_ = {};
    http::async_read(socket_, buffer_, request_, [self = shared_from_this()](Code ec, std::size_t) {
      if (!ec) self->write();
    });
  }

 private:
  void write() {
    http::async_write(socket_, reply_, [self = shared_from_this()](Code ec, std::size_t) {
      if (!ec) self->read();
    });
  }
  tcp::socket socket_;
  boost::beast::flat_buffer buffer_;
  http::request<http::empty_body> request_;
  http::response<http::string_body> reply_;
};

void accept(tcp::acceptor& acceptor, std::size_t bytes) {
  acceptor.async_accept([&acceptor, bytes](Code ec, tcp::socket socket) {
    if (!ec) std::make_shared<Guest>(std::move(socket), bytes)->read();
    accept(acceptor, bytes);
  });
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) return std::fputs("bench_record_hello PORT [BYTES]\n", stderr), 2;
  const auto port = static_cast<unsigned short>(std::atoi(argv[1]));
  const int bytes = argc > 2 ? std::atoi(argv[2]) : 460;
  net::io_context io{1};
  tcp::acceptor acceptor{io, {net::ip::address_v4::loopback(), port}};
  accept(acceptor, static_cast<std::size_t>(bytes < 2 ? 2 : bytes));
  io.run();
}
