// How uncertain inputs move what is read, against layouts that are drawn and solved.

#include "hydro/diagnosis/input_errors.hpp"

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/places.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"

#include <cmath>
#include <ostream>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

/// Every input of its own, in turn: where lines have all there is.
Layout rich_farm(const Supply& supply) {
  Line main{.name = "main",
            .pipe = {.name = "wide", .inside_diameter = 2.6 * inch, .hazen_williams = 150},
            .length = 200 * ft,
            .loss_coefficient = 2};
  Line row = sample_row("row", 8, 3 * ft);
  row.fed_by = "main";
  row.reaches = {
      {Pipe{.name = "first", .inside_diameter = 2 * inch, .roughness = 0.01 * mm}, 100 * ft}};
  row.valve = Valve{.kind = ValveKind::globe};
  row.loss_coefficient = 1.5;
  row.outlet_loss_coefficient = 0.4;
  row.riser.loss_coefficient = 1;
  Line hill = sample_row("hill", 3);
  hill.fed_by = "main";
  hill.ground_rise.reset();
  hill.elevations = {1 * ft, 2 * ft, 4 * ft};
  return Layout(supply, {main, row, hill}, {}, {.altitude = 0 * ft, .units = UnitSystem::us});
}

std::vector<Reading> readings() {
  return {{.place = ReadingPlace::supply_gauge},
          {.place = ReadingPlace::after_filter},
          {.place = ReadingPlace::meter},
          {.place = ReadingPlace::line_inlet, .line = "row"},
          {.place = ReadingPlace::pipe, .line = "row", .outlet = 4},
          {.place = ReadingPlace::riser, .line = "row", .outlet = 8},
          {.place = ReadingPlace::bucket, .line = "row", .outlet = 2},
          {.place = ReadingPlace::flush_end, .line = "row"},
          {.place = ReadingPlace::pipe, .line = "hill", .outlet = 3}};
}

struct OneInput {
  std::string what;
  Uncertainty uncertainty;
};

// Its bytes, which are printed otherwise, are not all set.
void PrintTo(const OneInput& input, std::ostream* out) {
  *out << input.what;
}

class InputErrorsOf : public testing::TestWithParam<OneInput> {};

TEST_P(InputErrorsOf, EachInputAreThoseOfSampling) {
  const bool is_pump = GetParam().uncertainty.pump_head > 0;
  Supply supply = is_pump ? sample_pump() : Supply{.pressure = 60 * psi, .gauge = Gauge{}};
  supply.filter = Filter{.loss = 1.5 * psi, .at = 80 * gpm};
  const Layout farm = rich_farm(supply);
  const InputErrors errors(solve(farm), GetParam().uncertainty);
  constexpr int draws = 400;
  const std::vector<Reading> all = readings();
  std::vector<double> sum(all.size()), squares(all.size());
  for (int i = 0; i < draws; ++i) {
    const SolvedBreak solved = read_break(
        solve(realisation(farm, GetParam().uncertainty, 5, static_cast<std::uint64_t>(i))));
    for (std::size_t j = 0; j < all.size(); ++j) {
      const double figure = shown(spot_of(all[j], farm), solved);
      sum[j] += figure;
      squares[j] += figure * figure;
    }
  }
  for (std::size_t j = 0; j < all.size(); ++j) {
    const double mean = sum[j] / draws;
    const double variance = std::max(0.0, squares[j] / draws - mean * mean);
    // A deviation of 400 draws is known to 1 / sqrt(800) of itself, of which four; and a hundredth of
    // the figure's own millionth for rounding.
    EXPECT_NEAR(errors.of(all[j]).norm(),
                std::sqrt(variance),
                4 / std::sqrt(2.0 * draws) * std::sqrt(variance) + 1e-7 * std::abs(mean))
        << words_of(all[j].place);
  }
}

INSTANTIATE_TEST_SUITE_P(Of,
                         InputErrorsOf,
                         testing::Values(OneInput{"outlets", {.manufacturing_variation = 0.03}},
                                         OneInput{"rating", {.rating = 0.03}},
                                         OneInput{"bores", {.inside_diameter = 0.01}},
                                         OneInput{"walls", {.wall = 0.03}},
                                         OneInput{"losses", {.loss_coefficient = 0.05}},
                                         OneInput{"pressure", {.supply_pressure = 1 * psi}},
                                         OneInput{"pump", {.pump_head = 0.02}},
                                         OneInput{"elevations", {.elevation = 0.5 * ft}}),
                         [](const auto& it) { return it.param.what; });

TEST(InputErrors, HangTogetherAsThoseOfSampling) {
  const Layout farm = pumped_farm().watering({"low"});
  const Uncertainty uncertainty = assumed_uncertainty(farm);
  const InputErrors errors(solve(farm), uncertainty);
  const Reading near{.place = ReadingPlace::pipe, .line = "row 1", .outlet = 9};
  const Reading far{.place = ReadingPlace::pipe, .line = "row 2", .outlet = 10};
  constexpr int draws = 1000;
  Eigen::MatrixXd drawn(draws, 2);
  for (int i = 0; i < draws; ++i) {
    const SolvedBreak solved =
        read_break(solve(realisation(farm, uncertainty, 5, static_cast<std::uint64_t>(i))));
    drawn(i, 0) = shown(spot_of(near, farm), solved);
    drawn(i, 1) = shown(spot_of(far, farm), solved);
  }
  const Eigen::MatrixXd apart = drawn.rowwise() - drawn.colwise().mean();
  const double sampled = apart.col(0).dot(apart.col(1)) / apart.col(0).norm() / apart.col(1).norm();
  const Eigen::VectorXd one = errors.of(near), other = errors.of(far);
  const double correlation = one.dot(other) / one.norm() / other.norm();
  // A correlation r of n draws is known to (1 - r^2) / sqrt(n).
  EXPECT_NEAR(correlation, sampled, 4 * (1 - sampled * sampled) / std::sqrt(1.0 * draws));
}

}  // namespace
}  // namespace hydro
