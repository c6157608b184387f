// at_work.hpp: the keywords `threads` and `progress` of answers that take long.
//
// What      Other threads of Python run meanwhile. Now and then Python is heard: whether a signal
//           came (Ctrl-C), and what the function `progress` says. What is raised there ends the work
//           and is raised by the answer.
// Errors    TypeError for a `progress` that is no function.
#pragma once

#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <exception>
#include <string>
#include <utility>
#include <vector>

#include "bindings/function.hpp"
#include "bindings/others_run.hpp"

namespace hydro::bindings {

/// Whom the keyword `progress` tells how far the work is; null: nobody.
struct Progress {
  py::object function = {};
};

template <>
struct Type<Progress> {
  static std::string accepts() { return "Callable[[int, int], bool | None] | bool | None"; }
  static Progress from(py::handle given, const Where& where);
};

/// With those of work behind them.
std::vector<Parameter> with_work(std::vector<Parameter> parameters);

/// What is said of them in the text of a function.
inline constexpr const char* words_on_work =
    "threads: 0: as many as the machine runs at once; the answer is the same whatever their "
    "number. "
    "progress: True: a bar on a terminal; or a function of how many parts are done and of how "
    "many, "
    "which returns False to stop the work (Stopped). Other threads run meanwhile.\n\n";

/// Whether the work goes on. Holds Python's lock. @param raised what Python raised, if it did
bool goes_on(const Progress& progress,
             std::size_t done,
             std::size_t of,
             std::exception_ptr& raised) noexcept;

/// @param answer takes the Work
template <class F>
auto at_work(int threads, const Progress& progress, const F& answer) {
  std::exception_ptr raised;
  const auto worked = [&] {
    OthersRun meanwhile;
    return answer(Work{.threads = threads, .progress = [&](std::size_t done, std::size_t of) {
                         return meanwhile.ask_python(
                             [&] { return goes_on(progress, done, of, raised); });
                       }});
  };
  try {
    auto found = worked();
    if (raised) std::rethrow_exception(raised);
    return found;
  } catch (const Stopped&) {
    if (raised) std::rethrow_exception(raised);
    throw;
  }
}

}  // namespace hydro::bindings
