// pool.hpp: rooms to work in, as many as are used at once, each used over and over. Not installed.
#pragma once

#include <memory>
#include <mutex>
#include <utility>
#include <vector>

namespace hydro {

template <class Room>
class Pool {
 public:
  /// One that is free, or a new one by `make`. Whoever takes it gives it back.
  template <class Make>
  std::unique_ptr<Room> take(Make make) {
    const std::scoped_lock lock(mutex_);
    if (free_.empty()) return make();
    std::unique_ptr<Room> room = std::move(free_.back());
    free_.pop_back();
    return room;
  }
  void give_back(std::unique_ptr<Room> room) {
    const std::scoped_lock lock(mutex_);
    free_.push_back(std::move(room));
  }

 private:
  std::mutex mutex_;
  std::vector<std::unique_ptr<Room>> free_;
};

}  // namespace hydro
