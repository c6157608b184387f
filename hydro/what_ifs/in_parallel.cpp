#include "hydro/what_ifs/in_parallel.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>
#include <mutex>
#include <numeric>
#include <string>
#include <thread>
#include <utility>
#include <vector>

namespace hydro {
namespace {

constexpr int most_threads = 1024;

class Telling {
 public:
  Telling(const Work& work, std::size_t count) : work_(work), count_(count) {}

  void now_and_then(std::size_t done) {
    constexpr std::chrono::milliseconds pause{50};
    const auto now = std::chrono::steady_clock::now();
    if (!work_.progress || now - last_ < pause) return;
    last_ = now;
    tell(done);
  }
  void at_the_end() {
    if (work_.progress && !told_of_all_) tell(count_);
  }

 private:
  void tell(std::size_t done) {
    told_of_all_ = done == count_;
    if (!work_.progress(done, count_)) throw Stopped(done, count_);
  }

  const Work& work_;
  std::size_t count_;
  bool told_of_all_ = false;
  std::chrono::steady_clock::time_point last_ = std::chrono::steady_clock::now();
};

}  // namespace

Stopped::Stopped(std::size_t done, std::size_t of)
    : std::runtime_error("stopped after " + std::to_string(done) + " of " + std::to_string(of) +
                         " parts, as the progress function asked"),
      done_(done),
      of_(of) {}

std::size_t threads_for(std::size_t count, const Work& work) {
  Examination examination;
  examination.within("threads", work.threads, 0, most_threads);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const std::size_t wanted = work.threads > 0 ? static_cast<std::size_t>(work.threads)
                                              : std::max(1U, std::thread::hardware_concurrency());
  return std::clamp(count, std::size_t{1}, wanted);
}

namespace {

/// Those from `begin` up to `end`.
void do_stage(std::size_t begin,
              std::size_t end,
              std::size_t threads,
              Telling& telling,
              const std::function<void(std::size_t)>& part) {
  std::atomic<std::size_t> next = begin;
  std::atomic<std::size_t> done = begin;
  std::exception_ptr first;
  std::mutex first_mutex;
  const auto end_all = [&] {
    const std::scoped_lock lock(first_mutex);
    if (!first) first = std::current_exception();
    next = end;
  };
  const auto take_parts = [&](auto after_each) {
    try {
      for (std::size_t i = next++; i < end; i = next++) {
        part(i);
        after_each(++done);
      }
    } catch (...) {
      end_all();
    }
  };

  {
    std::vector<std::jthread> others;
    others.reserve(threads - 1);
    for (std::size_t i = 1; i < threads; ++i)
      others.emplace_back([&] { take_parts([](std::size_t) {}); });
    take_parts([&](std::size_t so_far) { telling.now_and_then(so_far); });
  }
  if (first) std::rethrow_exception(first);
}

}  // namespace

void in_stages(std::span<const std::size_t> counts,
               const Work& work,
               const std::function<void(std::size_t)>& part) {
  const std::size_t all = std::reduce(counts.begin(), counts.end());
  Telling telling(work, all);
  std::size_t begin = 0;
  for (const std::size_t count : counts) {
    do_stage(begin, begin + count, threads_for(count, work), telling, part);
    begin += count;
  }
  telling.at_the_end();
}

void in_parallel(std::size_t count,
                 const Work& work,
                 const std::function<void(std::size_t)>& part) {
  in_stages({&count, 1}, work, part);
}

}  // namespace hydro
