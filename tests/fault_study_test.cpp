// A small study of finding faults in worlds that are not as their layouts say; the large one is
// benchmarks/fault_finding_study.cpp.

#include "fault_study.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "growers_layouts.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

/// Bounds below are so many standard deviations of the count wide: beyond by chance in fewer than one
/// of 10,000 studies, and of a fixed seed in none.
constexpr double wide = 4;

void expect_stated_probabilities_as_often_right(const std::vector<StudiedFault>& study) {
  // The count of places that are right is a sum of ones with the stated probabilities, where those
  // are true: mean sum p; variance, of each fault by itself, at most sum p (1 - p).
  for (const auto answer : {&StudiedFault::found, &StudiedFault::found_with_look}) {
    double expected = 0, variance = 0, right = 0;
    for (const StudiedFault& it : study) {
      if (!it.by_odds) continue;
      const Verdict& said = it.*answer;
      expected += said.stated;
      variance += said.stated * (1 - said.stated);
      right += said.place ? 1 : 0;
    }
    EXPECT_LE(std::abs(right - expected), wide * std::sqrt(variance));
  }
}

void expect_hardly_ever_confident_and_wrong(const std::vector<StudiedFault>& study) {
  // At a true share of 2 % of 60 the count has mean 1.2 and deviation 1.08.
  constexpr double share = 0.02, sure = 0.9;
  const auto all = static_cast<double>(study.size());
  for (const auto answer : {&StudiedFault::found, &StudiedFault::found_with_look}) {
    const auto wrong = std::ranges::count_if(study, [&](const StudiedFault& it) {
      return (it.*answer).stated > sure && !(it.*answer).place;
    });
    EXPECT_LE(static_cast<double>(wrong),
              all * share + wide * std::sqrt(all * share * (1 - share)));
  }
}

void expect_not_much_worse_than_who_knows_the_world(const std::vector<StudiedFault>& study) {
  // Cases in which one of the two is right and the other is not: their difference, at an equal chance,
  // has their sum for variance.
  constexpr double least_ratio = 0.9;
  for (const auto is_right : {&Verdict::right_line, &Verdict::within_two}) {
    double ours = 0, his = 0, differ = 0;
    for (const StudiedFault& it : study) {
      ours += it.found.*is_right ? 1 : 0;
      his += it.observed.*is_right ? 1 : 0;
      differ += it.found.*is_right != it.observed.*is_right ? 1 : 0;
    }
    EXPECT_GE(ours, least_ratio * his - wide * std::sqrt(differ));
  }
}

void expect_open_ends_and_broken_outlets_found(const std::vector<StudiedFault>& study) {
  // Faults that pressure sees: at a true share of one half of n, the count has mean n/2 and deviation
  // sqrt(n)/2. By chance alone, of 12 kinds of walk, it would be a tenth.
  double right = 0, all = 0;
  for (const StudiedFault& it : study) {
    const bool is_seen = it.kind == CandidateKind::head_off ||
                         it.kind == CandidateKind::riser_sheared ||
                         it.kind == CandidateKind::end_open;
    if (!is_seen) continue;
    ++all;
    right += it.found_with_look.place ? 1 : 0;
  }
  EXPECT_GE(all, 10);
  EXPECT_GE(right, all / 2 - wide * std::sqrt(all) / 2);
}

TEST(FaultStudy, OfSixtyFaults) {
  std::vector<Layout> layouts;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) layouts.push_back(growers_layout(seed));
  const std::vector<StudiedFault> study = study_faults(layouts, {.faults = 60, .seed = 5});
  expect_stated_probabilities_as_often_right(study);
  expect_hardly_ever_confident_and_wrong(study);
  expect_not_much_worse_than_who_knows_the_world(study);
  expect_open_ends_and_broken_outlets_found(study);
}

TEST(FaultStudy, IsTheSameByOneThread) {
  const std::vector<Layout> layouts{growers_layout(1)};
  const FaultStudy few{.faults = 2, .seed = 3, .observer = Observer::none, .look = false};
  const std::vector<StudiedFault> by_one = study_faults(layouts, few, {.threads = 1});
  const std::vector<StudiedFault> by_two = study_faults(layouts, few, {.threads = 2});
  for (std::size_t i = 0; i < by_one.size(); ++i)
    EXPECT_EQ(by_one[i].found.stated, by_two[i].found.stated);
}

}  // namespace
}  // namespace hydro
