// pool.h: a few threads that take work from a bounded queue.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace flatwise::server {

class Pool {
 public:
  using Work = std::function<void(std::size_t lane)>;
  /// Threads are lanes `first_lane`, `first_lane` + 1, ...
  Pool(std::size_t threads, std::size_t first_lane, std::size_t waiting) : waiting_{waiting} {
    for (std::size_t i = 0; i < threads; ++i) threads_.emplace_back([this, lane = first_lane + i] { run(lane); });
  }
  Pool(const Pool&) = delete;
  Pool& operator=(const Pool&) = delete;
  ~Pool() {
    {
      const std::scoped_lock lock{mutex_};
      ending_ = true;
    }
    ready_.notify_all();
    for (std::thread& t : threads_) t.join();
  }
  /// False when too much waits already.
  [[nodiscard]] bool submit(Work work) {
    {
      const std::scoped_lock lock{mutex_};
      if (queue_.size() >= waiting_) return false;
      queue_.push_back(std::move(work));
    }
    ready_.notify_one();
    return true;
  }

 private:
  void run(std::size_t lane) {
    while (true) {
      Work work;
      {
        std::unique_lock lock{mutex_};
        ready_.wait(lock, [this] { return ending_ || !queue_.empty(); });
        if (queue_.empty()) return;
        work = std::move(queue_.front());
        queue_.pop_front();
      }
      work(lane);
    }
  }
  std::size_t waiting_;
  std::mutex mutex_;
  std::condition_variable ready_;
  std::deque<Work> queue_;
  bool ending_ = false;
  std::vector<std::thread> threads_;
};

}  // namespace flatwise::server
