// work_test.cpp: the parts of a long answer, shared among threads, told and stopped.
#include "hydro/what_ifs/work.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/what_ifs/in_order.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <atomic>
#include <chrono>
#include <limits>
#include <stdexcept>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::ElementsAre;

TEST(InParallel, DoesEveryPartOnce) {
  for (const int threads : {0, 1, 2, 7, 1024})
    for (const std::size_t count : {0U, 1U, 2U, 1000U}) {
      std::vector<std::atomic<int>> done(count);
      in_parallel(count, {.threads = threads}, [&](std::size_t i) { ++done[i]; });
      for (const auto& times : done) EXPECT_EQ(times, 1) << threads << " threads";
    }
}

TEST(InParallel, UsesNoMoreThreadsThanParts) {
  EXPECT_EQ(threads_for(0, {.threads = 8}), 1U);
  EXPECT_EQ(threads_for(1, {.threads = 8}), 1U);
  EXPECT_EQ(threads_for(3, {.threads = 8}), 3U);
  EXPECT_EQ(threads_for(100, {.threads = 8}), 8U);
  EXPECT_GE(threads_for(100, {}), 1U);
}

TEST(InParallel, UsesTheThreadThatAsks) {
  const std::thread::id asking = std::this_thread::get_id();
  in_parallel(
      5, {.threads = 1}, [&](std::size_t) { EXPECT_EQ(std::this_thread::get_id(), asking); });
}

TEST(InParallel, RefusesNumbersOfThreads) {
  for (const int threads : {-1, 1025, std::numeric_limits<int>::min()})
    EXPECT_EQ(refusal([&] { in_parallel(1, {.threads = threads}, [](std::size_t) {}); }),
              "threads: is " + std::to_string(threads) + ", must be from 0 to 1024");
}

/// And ends the others: all the parts would take longer than anyone waits.
TEST(InParallel, HandsOverWhatAPartThrows) {
  constexpr std::size_t endless = std::numeric_limits<std::size_t>::max() / 2;
  for (const int threads : {1, 4}) {
    std::atomic<std::size_t> begun = 0;
    const auto part = [&](std::size_t i) {
      ++begun;
      if (i == 10) throw std::out_of_range("part 10");
    };
    EXPECT_THROW(in_parallel(endless, {.threads = threads}, part), std::out_of_range);
    EXPECT_GE(begun, 11U);
  }
}

// A way that is dearer than the answer and not solved must not lose the answer.
TEST(FirstOf, WhatIsThrownCountsOnlyBeforeTheFirst) {
  const auto part = [](std::size_t i) {
    if (i == 5) throw std::domain_error("part 5");
    return i % 4 == 3;
  };
  const auto never = [&](std::size_t i) { return part(i) && i > 5; };
  for (const int threads : {1, 2, 8}) {
    EXPECT_EQ(first_of(8, {.threads = threads}, part), 3U);
    EXPECT_EQ(first_of(3, {.threads = threads}, part), std::nullopt);
    EXPECT_THROW(first_of(8, {.threads = threads}, never), std::domain_error);
  }
}

TEST(InParallel, TellsTheThreadThatAsksAndEndsWithAll) {
  const std::thread::id asking = std::this_thread::get_id();
  std::vector<std::pair<std::size_t, std::size_t>> told;
  const Work work{.threads = 3, .progress = [&](std::size_t done, std::size_t of) {
                    EXPECT_EQ(std::this_thread::get_id(), asking);
                    told.emplace_back(done, of);
                    return true;
                  }};
  in_parallel(200, work, [](std::size_t) {});
  ASSERT_FALSE(told.empty());
  EXPECT_EQ(told.back(), std::pair(std::size_t{200}, std::size_t{200}));
  for (std::size_t i = 1; i < told.size(); ++i) EXPECT_LE(told[i - 1].first, told[i].first);
}

/// Long enough for the next telling to be due.
void take_long(std::size_t) {
  std::this_thread::sleep_for(std::chrono::milliseconds(60));
}

TEST(InParallel, StopsWhenToldSo) {
  int asked = 0;
  const Work work{.threads = 1, .progress = [&](std::size_t, std::size_t) { return ++asked < 2; }};
  try {
    in_parallel(50, work, take_long);
    FAIL() << "was not stopped";
  } catch (const Stopped& stopped) {
    EXPECT_EQ(stopped.done(), 2U);
    EXPECT_EQ(stopped.of(), 50U);
    EXPECT_STREQ(stopped.what(), "stopped after 2 of 50 parts, as the progress function asked");
  }
  EXPECT_EQ(asked, 2);
}

TEST(InParallel, TellsOnlyOnceThatAllIsDone) {
  std::vector<std::size_t> told;
  const Work work{.threads = 1, .progress = [&](std::size_t done, std::size_t) {
                    told.push_back(done);
                    return true;
                  }};
  in_parallel(2, work, take_long);
  EXPECT_THAT(told, ElementsAre(1U, 2U));
  told.clear();
  in_parallel(0, work, take_long);
  EXPECT_THAT(told, ElementsAre(0U));
}

TEST(InParallel, HandsOverWhatTheProgressFunctionThrows) {
  const Work work{
      .progress = [](std::size_t, std::size_t) -> bool { throw std::length_error("x"); }};
  EXPECT_THROW(in_parallel(3, work, [](std::size_t) {}), std::length_error);
}

}  // namespace
}  // namespace hydro
