#include "server/live.h"

#include "server/json_text.h"

namespace flatwise::server {
namespace {

constexpr std::size_t kQueueBytes = 256U << 10U;  ///< A few thousand changes.
constexpr int kAtOnce = 500;                      ///< Changes read in one go.
constexpr int kMostMissed = 2000;                 ///< More than that: the page reads anew.

std::string event_text(const job::Change& change) {
  std::string out = "id: ";
  number(out, change.sequence);
  out += "\nevent: " + change.what + "\ndata: {\"id\":";
  quote(out, change.id);
  out += ",\"entry\":";
  if (change.entry.empty())
    out += "null";
  else
    quote(out, change.entry);
  out += "}\n\n";
  return out;
}

}  // namespace

class Listener : public Feed {
 public:
  explicit Listener(std::optional<std::int64_t> from) : after{from} {}

  void push(const std::string& text) {
    const std::scoped_lock lock{mutex_};
    if (ended_) return;
    if (waiting_.size() + text.size() > kQueueBytes)
      ended_ = true;  // It does not keep up.
    else
      waiting_ += text;
    if (wake_) wake_();
  }
  std::optional<std::string> take() override {
    const std::scoped_lock lock{mutex_};
    if (ended_) return std::nullopt;
    return std::exchange(waiting_, {});
  }
  void when_ready(std::function<void()> wake) override {
    const std::scoped_lock lock{mutex_};
    wake_ = std::move(wake);
  }
  /// Nobody is woken any more once it has returned: what `wake` posts to may go then.
  void end() override {
    const std::scoped_lock lock{mutex_};
    ended_ = true;
    if (const auto wake = std::exchange(wake_, {})) wake();
  }
  [[nodiscard]] bool ended() const {
    const std::scoped_lock lock{mutex_};
    return ended_;
  }

  std::optional<std::int64_t> after;  ///< The poller's own.

 private:
  mutable std::mutex mutex_;
  std::string waiting_;
  std::function<void()> wake_;
  bool ended_ = false;
};

Live::Live(std::unique_ptr<job::Store> store, Milliseconds every)
    : store_{std::move(store)}, every_{every}, thread_{[this] { run(); }} {}

Live::~Live() {
  end();
  thread_.join();
}

void Live::drop_listeners() {
  {
    const std::scoped_lock lock{mutex_};
    poked_ = dropping_ = true;
  }
  wake_.notify_all();
}

void Live::end() {
  {
    const std::scoped_lock lock{mutex_};
    ending_ = true;
  }
  wake_.notify_all();
}

void Live::poke() {
  {
    const std::scoped_lock lock{mutex_};
    poked_ = true;
  }
  wake_.notify_all();
}

std::shared_ptr<Feed> Live::listen(std::optional<std::int64_t> after) {
  auto listener = std::make_shared<Listener>(after);
  listener->push("retry: 2000\n\n");
  {
    const std::scoped_lock lock{mutex_};
    if (ending_)
      listener->end();  // Nobody looks any more.
    else
      fresh_.push_back(listener);
    poked_ = true;
  }
  wake_.notify_all();
  return listener;
}

void Live::run() {
  std::unique_lock lock{mutex_};
  while (!ending_) {
    poked_ = false;
    const bool dropping = std::exchange(dropping_, false);
    std::vector<std::shared_ptr<Listener>> fresh = std::exchange(fresh_, {});
    lock.unlock();
    look();
    for (const auto& listener : fresh) catch_up(*listener);
    listeners_.insert(listeners_.end(), fresh.begin(), fresh.end());
    for (const auto& listener : listeners_)
      if (dropping) listener->end();
    std::erase_if(listeners_, [](const auto& l) { return l->ended(); });
    lock.lock();
    wake_.wait_for(lock, every_, [this] { return poked_ || ending_; });
  }
  for (const auto& listener : fresh_) listener->end();
  for (const auto& listener : listeners_) listener->end();
}

/// Sends what came since the last look to all who listen.
void Live::look() {
  const auto last = store_->last_change();
  if (!last) return;  // Busy or gone: the next look finds it.
  if (seen_ < 0) seen_ = *last;
  while (seen_ < *last) {
    const auto changes = store_->changes(seen_, kAtOnce);
    if (!changes || changes->empty()) return;
    std::string text;
    for (const job::Change& change : *changes) text += event_text(change);
    for (const auto& listener : listeners_) listener->push(text);
    seen_ = changes->back().sequence;
  }
}

/// What one listener missed, up to what all have seen.
void Live::catch_up(Listener& listener) {
  std::int64_t after = listener.after.value_or(seen_);
  if (after > seen_ || seen_ - after > kMostMissed) {
    listener.push("event: reload\ndata: {}\n\n");
    after = seen_;
  }
  std::string text;
  while (after < seen_) {
    const auto changes = store_->changes(after, kAtOnce);
    if (!changes || changes->empty()) break;
    for (const job::Change& change : *changes)
      if (change.sequence <= seen_) text += event_text(change);
    after = changes->back().sequence;
  }
  std::string id = "id: ";
  number(id, std::max<std::int64_t>(seen_, 0));
  listener.push(text + id + "\n\n");  // So that a listener that sees nothing can still say where it stood.
}

}  // namespace flatwise::server
