// The measures of uniformity of many realisations at once against those of one after another.
#include "hydro/what_ifs/uniformity_of_many.hpp"

#include "hydro/answers/uniformity.hpp"

#include <cmath>
#include <cstddef>
#include <random>
#include <vector>

#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr std::size_t count = 37;  // not a multiple of any vector

/// Flows of that many outlets, each of its realisations drawn from another distribution.
SolvedBlock block_of(std::size_t outlets) {
  std::mt19937_64 random(outlets);
  SolvedBlock block{.count = count};
  block.flow.resize(outlets * count);
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = 0; j < outlets; ++j) {
      double& flow = block.flow[j * count + i];
      const auto word = static_cast<double>(random() >> 11) * 0x1p-53;
      switch (i % 6) {
        case 0:  // evenly spread
          flow = 1 + word;
          break;
        case 1:  // over many powers of 10
          flow = std::pow(10, -9 * word);
          break;
        case 2:  // of few values
          flow = std::floor(3 * word);
          break;
        case 3:  // all equal
          flow = 0.7;
          break;
        case 4:  // dry
          flow = 0;
          break;
        default:  // one outlet without water
          flow = j == outlets / 2 ? 0 : 1 + 1e-9 * word;
      }
    }
  return block;
}

// Sums of up to 400 flows in another order: 400 roundings at most, of numbers around 100.
TEST(UniformityOfMany, IsThatOfOneAfterAnother) {
  UniformityOfMany measures;
  for (const std::size_t outlets : {1U, 2U, 3U, 4U, 5U, 7U, 8U, 9U, 16U, 41U, 100U, 400U}) {
    SCOPED_TRACE(outlets);
    const SolvedBlock block = block_of(outlets);
    std::vector<std::size_t> members;
    for (std::size_t j = 0; j < outlets; ++j) members.push_back(j);
    measures.find(block, members);
    for (std::size_t i = 0; i < count; ++i) {
      SCOPED_TRACE(i);
      std::vector<Flow> flows;
      bool any = false;
      for (std::size_t j = 0; j < outlets; ++j) {
        flows.push_back(Flow::from_value(block.flows(j)[i]));
        any = any || block.flows(j)[i] > 0;
      }
      if (!any) {
        EXPECT_TRUE(std::isnan(measures.christiansen[i]));
        EXPECT_TRUE(std::isnan(measures.distribution[i]));
        EXPECT_TRUE(std::isnan(measures.statistical[i]));
        continue;
      }
      const Uniformity<Flow> alone = uniformity(flows);
      EXPECT_NEAR(measures.christiansen[i], alone.christiansen, 1e-11);
      EXPECT_NEAR(measures.distribution[i], alone.distribution, 1e-11);
      EXPECT_EQ(std::isnan(measures.statistical[i]), !alone.statistical);
      if (alone.statistical) {
        EXPECT_NEAR(measures.statistical[i], *alone.statistical, 1e-11);
      }
    }
  }
}

}  // namespace
}  // namespace hydro
