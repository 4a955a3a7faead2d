// lightweight_mutex.hpp: stands in for the file of that name in Boost 1.74, which asks for std::mutex; this module has
// one thread and its standard library has none.
#pragma once

namespace boost::detail {

struct lightweight_mutex {
  struct scoped_lock {
    explicit scoped_lock(lightweight_mutex&) {}
  };
};

}  // namespace boost::detail
