#include "hydro/version.hpp"

#include <string>

#include <gtest/gtest.h>

namespace hydro {
namespace {

// That pkg-config, find_package and Python say the same, their own tests see (consumer_test.cmake,
// python/test_names.py).
TEST(Version, IsTheOneThatCmakeStates) {
  EXPECT_EQ(HYDRO_VERSION_TEXT, std::string{STATED_VERSION});
  EXPECT_EQ(version(), STATED_VERSION);
  EXPECT_EQ(std::to_string(HYDRO_VERSION / 10000) + '.' +
                std::to_string(HYDRO_VERSION / 100 % 100) + '.' +
                std::to_string(HYDRO_VERSION % 100),
            STATED_VERSION);
}

// The number is for the preprocessor, too.
#if HYDRO_VERSION < 100
#error "HYDRO_VERSION is not a number of which #if can ask"
#endif

}  // namespace
}  // namespace hydro
