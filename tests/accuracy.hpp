// accuracy.hpp: how far the library is from what others printed, for the table in README.
//
// What      Checks against published values, and against another solver, tell record() what they
//           compare; accuracy.cpp says what the rows of the table are called, and holds README to
//           what was found (the test "accuracy").
// Range     Of published values only those whose inputs were printed too, and which were read, not
//           remembered.
// Threads   Tests run one after another.
#pragma once

namespace hydro {

/// The rows of the table, in their order.
enum class Accuracy {
  water,
  hazen_williams,
  darcy_weisbach,
  colebrook_white,
  measured_friction,
  outlets,
  pipes_under_a_head,
  branches,
  loops,
  pumps,
  suction,
  draining,
  evapotranspiration,
  crops_and_soil,
  application,
  surge,
  tree_heads,
  tree_flows,
  loop_heads,
  loop_flows,
  count
};

/// Notes how far `got` is from `printed`, whose last digit is known to `half_digit`, and returns
/// `got`: EXPECT_NEAR(record(row, got, printed, half_digit), printed, tolerance).
double record(Accuracy row, double got, double printed, double half_digit);

/// The same for `compared` layouts whose worst difference is this share of a scale.
void record_differences(Accuracy row, int compared, double worst);

}  // namespace hydro
