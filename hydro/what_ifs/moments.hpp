// moments.hpp: means and standard deviations of values that come in blocks. Not installed.
//
// Formula   m of both = m1 + d n2 / (n1 + n2), S of both = S1 + S2 + d^2 n1 n2 / (n1 + n2),
//           d = m2 - m1; S the sum of squared distances from the mean m
// Source    T. F. Chan, G. H. Golub and R. J. LeVeque, The American Statistician 37 (1983) 242-247
//           (from memory).
#pragma once

#include <cmath>
#include <cstddef>

namespace hydro {

struct Moments {
  double count = 0;
  double mean = 0;
  double squares = 0;  ///< S

  void add(const Moments& other) {
    const double both = count + other.count;
    if (!(both > 0)) return;
    const double apart = other.mean - mean;
    mean += apart * (other.count / both);
    squares += other.squares + apart * apart * (count * other.count / both);
    count = both;
  }
  void add(double value) { add({1, value, 0}); }
  double deviation() const { return count > 1 ? std::sqrt(squares / (count - 1)) : 0; }
};

}  // namespace hydro
