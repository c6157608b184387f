// axis.hpp: numbers along an axis of a drawing, and round places on it. Not installed.
#pragma once

#include <string>
#include <vector>

namespace hydro {

/// A place in a drawing [px], y downward.
struct Point {
  double x;
  double y;
};

/// 1, 2 or 5 times a power of ten: the least that is not below `wanted`, which is above 0.
double round_step(double wanted);

/// Runs from the number 0 at `from` [px] to the number `end`, above 0, at `to` [px].
class Axis {
 public:
  Axis(double end, double from, double to) : end_(end), from_(from), to_(to) {}
  /// Ends at the first tick that is not below `highest`.
  static Axis up_to(double highest, double from, double to);

  double end() const { return end_; }
  /// Where a number lies [px].
  double at(double number) const { return from_ + (to_ - from_) * number / end_; }
  /// The round numbers on it, from 0 on: five to eleven.
  std::vector<double> ticks() const;

 private:
  double end_;
  double from_;
  double to_;
};

/// A round number without needless decimals.
std::string tick_label(double round_number);

/// Of a curve that runs to the right, the points that can be told apart: in each column of one px
/// the first, the lowest, the highest and the last.
std::vector<Point> thinned(const std::vector<Point>& curve);

}  // namespace hydro
