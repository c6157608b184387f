// in_order.hpp: likes of a work done one after the other, until one of them ends it. Not installed.
#pragma once

#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/work.hpp"

#include <algorithm>
#include <cstddef>
#include <exception>
#include <optional>
#include <type_traits>
#include <utility>
#include <vector>

namespace hydro {

/// Results of `part(0)`, `part(1)`, ... until `is_last` says so of those so far, or there are `most`.
/// Threads do some parts ahead; what one of them throws counts only if all before it leave it to be
/// done, so that results and errors are the same for any number of threads.
template <class Part, class IsLast>
auto in_order(std::size_t most, const Work& work, const Part& part, const IsLast& is_last) {
  using Result = std::invoke_result_t<const Part&, std::size_t>;
  std::vector<Result> all;
  const std::size_t at_once = threads_for(most, work);
  while (all.size() < most) {
    const std::size_t from = all.size();
    const std::size_t count = std::min(at_once, most - from);
    std::vector<std::optional<Result>> results(count);
    std::vector<std::exception_ptr> errors(count);
    in_parallel(count, {.threads = work.threads}, [&](std::size_t i) {
      try {
        results[i] = part(from + i);
      } catch (...) {
        errors[i] = std::current_exception();
      }
    });
    for (std::size_t i = 0; i < count; ++i) {
      if (errors[i]) std::rethrow_exception(errors[i]);
      all.push_back(std::move(*results[i]));
      if (is_last(all)) return all;
    }
    if (work.progress && !work.progress(all.size(), most)) throw Stopped(all.size(), most);
  }
  return all;
}

/// All of them.
template <class Part>
auto in_order(std::size_t count, const Work& work, const Part& part) {
  return in_order(count, work, part, [](const auto&) { return false; });
}

/// The least i below `count` for which `part(i)` is true, all of them done; none if for none. What a
/// part throws counts only if it is true for none before it.
template <class Part>
std::optional<std::size_t> first_of(std::size_t count, const Work& work, const Part& part) {
  std::vector<char> is_so(count);
  std::vector<std::exception_ptr> errors(count);
  in_parallel(count, work, [&](std::size_t i) {
    try {
      is_so[i] = part(i);
    } catch (...) {
      errors[i] = std::current_exception();
    }
  });
  for (std::size_t i = 0; i < count; ++i) {
    if (errors[i]) std::rethrow_exception(errors[i]);
    if (is_so[i]) return i;
  }
  return std::nullopt;
}

}  // namespace hydro
