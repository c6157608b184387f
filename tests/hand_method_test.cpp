// Christiansen's factor against exact sums, a table and the solver. (That the solver reproduces the
// exact sum is in solve_test.cpp.)
#include "hydro/answers/hand_method.hpp"

#include "hydro/physics/friction.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include <gmock/gmock.h>

namespace hydro {
namespace {

constexpr FirstOutlet half = FirstOutlet::at_half_spacing;

/// Loss with N equal outlets, outlet by outlet, as a share of the whole flow's over the length.
double exact_share(int outlets, double m, double first_spacing) {
  double loss = first_spacing * std::pow(outlets, m);
  for (int going_on = 1; going_on < outlets; ++going_on) loss += std::pow(going_on, m);
  return loss / ((outlets - 1 + first_spacing) * std::pow(outlets, m));
}

// Sums of whole numbers and of their squares have closed forms, N (N + 1) / 2 and N (N + 1) (2 N +
// 1) / 6, and the factor is then exact.
TEST(MultipleOutletFactor, IsExactForWholeExponents) {
  for (int n = 1; n <= 1000; ++n) {
    EXPECT_NEAR(multiple_outlet_factor(n, 1), (n + 1.0) / (2 * n), 1e-15) << n;
    EXPECT_NEAR(multiple_outlet_factor(n, 2), (n + 1.0) * (2 * n + 1) / (6.0 * n * n), 1e-15) << n;
    EXPECT_NEAR(multiple_outlet_factor(n, 2, half), exact_share(n, 2, 0.5), 1e-12) << n;
  }
}

// The table of hand_method.hpp, and that it is not looser than it needs to be.
TEST(MultipleOutletFactor, IsWithinWhatItsHeaderSays) {
  struct Row {
    double m;
    double at_one;
    double at_half;
  };
  for (const Row& row :
       {Row{1.5, 0.0040, 0.0063}, Row{1.75, 0.0017, 0.0027}, Row{1.852, 0.0010, 0.0016}}) {
    double largest = 0;
    double largest_half = 0;
    for (int n = 2; n <= 1000; ++n) {
      const double error = multiple_outlet_factor(n, row.m) / exact_share(n, row.m, 1) - 1;
      const double error_half =
          multiple_outlet_factor(n, row.m, half) / exact_share(n, row.m, 0.5) - 1;
      largest = std::max(largest, std::abs(error));
      largest_half = std::max(largest_half, std::abs(error_half));
    }
    EXPECT_LE(largest, row.at_one);
    EXPECT_GE(largest, 0.9 * row.at_one);
    EXPECT_LE(largest_half, row.at_half);
    EXPECT_GE(largest_half, 0.9 * row.at_half);
  }
}

TEST(MultipleOutletFactor, IsOneForOneOutlet) {
  for (const double m : {1.0, 1.75, 1.852, 2.0}) {
    EXPECT_EQ(multiple_outlet_factor(1, m), 1);
    EXPECT_EQ(multiple_outlet_factor(1, m, half), 1);
  }
}

// J. Keller and R. D. Bliesner, Sprinkle and Trickle Irrigation (1990), table 8.7, from memory, so
// no check by itself: it would show a factor that is not the trade's. Its two digits are rounded up
// here and there (N = 3: 0.534 stands as 0.54), hence 0.01.
TEST(MultipleOutletFactor, IsTheTradesTable) {
  const std::vector<double> at_one{1.00, 0.64, 0.54, 0.49, 0.46, 0.44, 0.43, 0.42, 0.41, 0.40};
  const std::vector<double> at_half{1.00, 0.52, 0.44, 0.41, 0.40, 0.39, 0.38, 0.38, 0.37, 0.37};
  for (std::size_t i = 0; i < at_one.size(); ++i) {
    const int n = static_cast<int>(i) + 1;
    EXPECT_NEAR(multiple_outlet_factor(n, 1.852), at_one[i], 0.01) << n;
    EXPECT_NEAR(multiple_outlet_factor(n, 1.852, half), at_half[i], 0.01) << n;
  }
}

// Outlets whose flow hardly depends on the pressure, on a line that loses 1 % of it: their flows are
// equal to 0.1 %, so the loss is F times the whole flow's to twice that and the factor's own error.
TEST(MultipleOutletFactor, GivesTheSolversLossOfEqualOutlets) {
  for (const double first_at : {12.0, 6.0}) {
    const Line line{.name = "row",
                    .pipe = {.inside_diameter = 44.5 * mm, .hazen_williams = 150},
                    .outlet = Outlet{.flow = 180 * lph, .at = 1000 * kPa, .exponent = 0.1},
                    .count = 20,
                    .spacing = 12 * units::m,
                    .first_at = first_at * units::m};
    const Solution solution = solve(Layout(Supply{.pressure = 1000 * kPa}, {line}));
    const Pressure loss = solution.supply_pressure() - solution.lines()[0].end_pressure;
    ASSERT_LT(loss / kPa, 10);
    const Length alone =
        friction_loss(line.pipe, line.whole_length(), solution.inflow(), solution.water());
    const double factor =
        multiple_outlet_factor(20, 1.852, first_at == 12 ? FirstOutlet::at_one_spacing : half);
    EXPECT_NEAR(loss / (factor * pressure(alone, solution.water().density)), 1, 0.003);
  }
}

TEST(MultipleOutletFactor, RefusesWhatIsOutOfItsRange) {
  EXPECT_THROW(multiple_outlet_factor(0, 1.852), InvalidInput);
  EXPECT_THROW(multiple_outlet_factor(-3, 1.852), InvalidInput);
  for (const double m : {0.99, 2.01, std::numeric_limits<double>::quiet_NaN()})
    EXPECT_THROW(multiple_outlet_factor(10, m), InvalidInput) << m;
}

}  // namespace
}  // namespace hydro
