// chances.hpp: how likely outlets fall short when not all of a layout is known exactly.
//
// What      Monte Carlo: many realisations of the layout (uncertainty.hpp) are solved, and what
//           comes out is counted: of every outlet the mean, the spread and the chance that it is
//           below its rated pressure; of the whole the flow, the lowest pressure, the measures of
//           uniformity.
// Formula   mean       m = sum of x / N
//           deviation  s = sqrt(sum of (x - m)^2 / (N - 1))
//           chance     k / N, k of N realisations; its bounds are those of C. J. Clopper and E. S.
//                      Pearson, Biometrika 26 (1934) 404-413 (from memory), with 95 % between
//           quantile   as many of N values are below x as the share says, straight between values
//           Chances and spreads of realisations, not of years: an input is off for good.
// Accuracy  By chance: a mean is off by s / sqrt(N), a chance by sqrt(p (1 - p) / N), each more
//           than twice as much in one of 20. By arithmetic: quantiles of single outlets come from
//           counts in intervals no wider than 1/512 of the value, or 1 Pa or 1e-12 m3/s, and are
//           off by at most that; all else is exact to rounding.
// Range     What wears, clogs or breaks with time is not in it, unless a fault of the layout says so.
// Errors    InvalidInput for options or an uncertainty out of their intervals. NotSolved when one
//           realisation cannot be solved; Stopped.
// Threads   As many as `work` says. The result is the same to the last bit whatever their number.
// Memory    For each realisation 16 bytes, 8 more while quantiles are found, and 24 for each group of
//           outlets in `uniformity`; for each outlet on each thread some 3 KB of realisations that
//           are solved side by side, 1 KB for each of its own inputs that are uncertain, and 4 to
//           8 KB of counts; once more such counts at the end. For each outlet 48 bytes for each
//           block of 128 realisations, or 32 in large layouts and in those solved one by one, that
//           is done before an earlier one: mostly as many as threads, but all others where one
//           thread is held up as long. With `keep` 16 bytes for each outlet of each realisation,
//           which are handed on uncopied.
// Speed     Where elevations are certain and no lines meet in loops, many realisations are solved at
//           once (lanes.hpp), else one by one: some 20 times as slow.
// Example   examples/25_chance_of_trouble.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/series.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/uncertainty.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// How many cases, and what is told of them.
struct ChanceOptions {
  int realisations = 10'000;                          ///< N, 2 to 1,000,000
  std::uint64_t seed = 1;                             ///< of the draws
  std::vector<double> quantiles = {0.05, 0.5, 0.95};  ///< shares to give, each above 0 and below 1
  bool keep = false;  ///< every pressure and flow, up to 100,000,000 of each
};

/// So many of so many realisations.
struct Chance {
  int times = 0;
  int of = 0;
  double share() const { return of > 0 ? static_cast<double>(times) / of : 0; }
  /// Where the true one lies, 95 times of 100.
  double low() const;
  double high() const;
  bool operator==(const Chance&) const = default;
};

/// Of one figure. Q is a quantity, or double.
template <class Q>
struct Spread {
  Q mean = {};
  Q deviation = {};               ///< standard deviation
  std::vector<Q> quantiles = {};  ///< in the order of the shares asked for
};

/// Of one figure at every outlet of a line, from the inlet on.
template <class Q>
struct SeriesSpread {
  Series<Q> mean = {};
  Series<Q> deviation = {};
  std::vector<Series<Q>> quantiles = {};  ///< in the order of the shares asked for
};

/// One line. All have one entry for each outlet, from the inlet on; index 0 is outlet 1.
struct LineChances {
  std::string name;
  SeriesSpread<Pressure> pressure;  ///< at the device
  SeriesSpread<Flow> flow;
  /// Neither closed nor broken, as in check.hpp. Of the others the chances below are 0.
  std::vector<bool> is_judged;
  /// Chances [-].
  std::vector<double> below_rated;
  std::vector<double> below_minimum;
  std::vector<double> above_maximum;
};

/// The measures of uniformity.hpp for outlets of one kind on one line or, with an empty line, on all
/// lines together, over the realisations in which they let out water.
struct UniformityChances {
  std::string line;
  std::string outlet_name;
  int outlets;                                ///< of the kind
  Spread<double> christiansen;                ///< CU [%]
  Spread<double> distribution;                ///< DU of the low quarter, and field EU [%]
  std::optional<Spread<double>> statistical;  ///< Us [%]; none of one outlet
};

/// Every value that was found, realisation after realisation, numbered from 0 on.
struct Kept {
  int outlets = 0;            ///< of all lines, in their order
  Series<Pressure> pressure;  ///< of realisation i at outlet j: entry i * outlets + j
  Series<Flow> flow;
  Series<Flow> inflow;               ///< one for each realisation
  Series<Pressure> lowest_pressure;  ///< one for each realisation; empty where no outlet is judged
};

/// What the realisations came to.
struct Chances {
  int realisations;
  std::uint64_t seed;
  std::vector<double> quantiles;   ///< shares that quantiles were asked for, in their order
  std::vector<LineChances> lines;  ///< in the order of the layout
  Spread<Flow> inflow;             ///< out of all supplies together
  /// At the device, of the outlets that are judged; none: none is.
  std::optional<Spread<Pressure>> lowest_pressure;
  /// That of all outlets at least one is.
  Chance any_below_rated;
  Chance any_below_minimum;
  Chance any_above_maximum;
  /// In how many realisations exactly so many outlets were below rated: entry k for k outlets, up to
  /// the most that were.
  std::vector<int> times_below_rated;
  std::vector<UniformityChances> uniformity;  ///< as uniformity_of_outlets() has them
  std::optional<Kept> kept;
};

/// Realisations 0 to N - 1.
/// @throws InvalidInput, NotSolved, Stopped
Chances chances(const Layout& layout,
                const Uncertainty& uncertainty,
                const ChanceOptions& options = {},
                const Work& work = {});

}  // namespace hydro
