// others_run.hpp: other threads of Python, while C++ solves.
#pragma once

#include <chrono>
#include <thread>

#include <pybind11/pybind11.h>

namespace hydro::bindings {

/// While it lives, Python runs other threads. A daemon thread that comes back when Python shuts
/// down is ended by unwinding its stack (until Python 3.13), which no destructor may let through;
/// so it waits here for the end of the process, as from Python 3.14 on.
class OthersRun {
 public:
  OthersRun() : own_(PyEval_SaveThread()) {}
  OthersRun(const OthersRun&) = delete;
  OthersRun& operator=(const OthersRun&) = delete;
  ~OthersRun() { take_back(); }

  /// From the thread that made it. @param ask runs with Python's lock held, and throws nothing
  template <class F>
  auto ask_python(const F& ask) {
    take_back();
    const auto answer = ask();
    own_ = PyEval_SaveThread();
    return answer;
  }

 private:
  void take_back() noexcept {
    try {
      PyEval_RestoreThread(own_);
    } catch (...) {
      while (true) std::this_thread::sleep_for(std::chrono::hours(1));
    }
  }

  PyThreadState* own_;
};

}  // namespace hydro::bindings
