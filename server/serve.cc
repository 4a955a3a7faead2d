#include "server/serve.h"

#include <sodium.h>

#include "server/api.h"
#include "store/sqlite/open.h"

namespace flatwise::server {
namespace {

using Stores = std::vector<std::unique_ptr<job::Store>>;

/// One connection a lane; the I/O threads, which only read, keep their snapshot between two reads.
job::Stored<Stores> open_all(const Settings& settings, const Listen& listen) {
  Stores stores;
  for (std::size_t lane = 0; lane < listen.lanes(); ++lane) {
    store_sqlite::Options options;
    options.hold_reads = lane < listen.io_threads;
    options.watch = settings.watch;
    auto store = store_sqlite::open_store(settings.data, options);
    if (!store) return tl::unexpected(std::move(store.error()));
    stores.push_back(*std::move(store));
  }
  return stores;
}

class Whole : public Server {
 public:
  Whole(const Settings& settings, const Listen& listen, Stores stores, std::unique_ptr<job::Store> watched)
      : listen_{listen},
        live_{std::move(watched), settings.look},
        let_in_{settings.data / "devices.txt", {.show = settings.show_code, .reached_at = settings.reached_at}},
        guard_{settings.listen, settings.names, let_in_},
        pages_{settings.web_root},
        api_{{std::move(stores), live_, let_in_, guard_, pages_, settings.now}, listen.io_threads} {}

  Result<void> begin(const Limits& limits) {
    auto http = server::listen(listen_, limits, api_);
    if (!http)
      return tl::unexpected(Problem{Code{"serve.cannot_listen"},
                                    "--port",
                                    listen_.address + ", " + std::to_string(listen_.port),
                                    {{"reason", http.error()}},
                                    std::nullopt});
    http_ = *std::move(http);
    return {};
  }
  [[nodiscard]] unsigned short port() const override { return http_->port(); }
  [[nodiscard]] std::string address() const override {
    const bool six = listen_.address.find(':') != std::string::npos;
    return "http://" + (six ? "[" + listen_.address + "]" : listen_.address) + ":" + std::to_string(port()) + "/";
  }
  void run(bool signals) override { http_->run(signals); }
  void stop() override { http_->stop(); }
  void show_code() override { let_in_.show_code(); }

 private:
  Listen listen_;
  Live live_;
  LetIn let_in_;
  Guard guard_;
  Pages pages_;
  Api api_;
  std::unique_ptr<Http> http_;
};

}  // namespace

Problem store_problem(const std::filesystem::path& folder, const job::StoreFault& fault) {
  using K = job::StoreFault::Kind;
  const auto problem = [&](Code code) {
    return Problem{std::move(code), "--data", folder.string(), {{"reason", fault.detail}}, std::nullopt};
  };
  switch (fault.kind) {
    case K::missing:
      return problem(Code{"serve.no_store"});
    case K::newer:
      return problem(Code{"serve.store_newer"});
    case K::damaged:
      return problem(Code{"serve.store_damaged"});
    case K::busy:
      return problem(Code{"serve.store_busy"});
    default:
      return problem(Code{"serve.store_failed"});
  }
}

Result<std::unique_ptr<Server>> Server::make(const Settings& settings) {
  if (sodium_init() < 0) std::abort();  // No randomness: nothing here would be safe.
  const Listen listen{settings.listen, settings.port, settings.io_threads, settings.pool_threads};
  auto stores = open_all(settings, listen);
  if (!stores) return tl::unexpected(store_problem(settings.data, stores.error()));
  auto watched = store_sqlite::open_store(settings.data);
  if (!watched) return tl::unexpected(store_problem(settings.data, watched.error()));
  auto whole = std::make_unique<Whole>(settings, listen, *std::move(stores), *std::move(watched));
  if (auto begun = whole->begin(settings.limits); !begun) return tl::unexpected(std::move(begun.error()));
  return whole;
}

}  // namespace flatwise::server
