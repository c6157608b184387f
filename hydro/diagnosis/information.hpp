// information.hpp: how much a figure to come is expected to tell of which candidate it is, in plain
// numbers. Not installed.
//
// Formula   I = sum over c of P(c) integral of p(y | c) ln(p(y | c) / p(y)) dy
// Accuracy  The trapezoid rule on a normal distribution with four steps to the deviation is exact to
//           rounding; where a figure ranges over 2,000 deviations the narrowest ones are widened, which
//           tells a little less.
// Threads   Pure functions.
#pragma once

#include <vector>

namespace hydro {

/// A normal distribution with its part in a mixture.
struct Part {
  double weight;
  double mean;
  double deviation;
};

/// What is expected of one candidate: its probability, and a mixture whose weights have the sum 1.
struct Expected {
  double probability;
  std::vector<Part> parts;
};

/// [bits]. Probabilities have the sum 1.
double information(const std::vector<Expected>& candidates);

/// [bits], of a figure with a few outcomes: a chance for each, by candidate.
double information(const std::vector<double>& probabilities,
                   const std::vector<std::vector<double>>& chances);

/// [bits]
double entropy(const std::vector<double>& probabilities);

}  // namespace hydro
