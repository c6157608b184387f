// work.hpp: how many threads a long answer may use, and whom it tells how far it is.
//
// Threads   The progress function is called from the thread that asked, never from another one, and
//           only now and then.
// Errors    Stopped, when the progress function says so. What was found until then is lost.
#pragma once

#include <cstddef>
#include <functional>
#include <stdexcept>

namespace hydro {

/// Threads, and who is told.
struct Work {
  int threads = 0;  ///< 0: as many as the machine runs at once
  /// Told how many of how many parts are done; false stops the work. None: nobody is told.
  std::function<bool(std::size_t done, std::size_t of)> progress = {};
};

/// Thrown when a progress function stops the work.
class Stopped : public std::runtime_error {
 public:
  Stopped(std::size_t done, std::size_t of);
  std::size_t done() const { return done_; }
  std::size_t of() const { return of_; }

 private:
  std::size_t done_;
  std::size_t of_;
};

}  // namespace hydro
