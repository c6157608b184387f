// simulated_fault.hpp: a fault in a world that is not as its layout says, and what a grower with a
// gauge reads of it: to try on it whether the fault is found.
//
// What      The world has another friction law than the layout: where that says Hazen-Williams, it is
//           Darcy-Weisbach. Bores are uneven from reach to reach; outlets, pump, held pressure, losses
//           and elevations are off; gauges show too much or too little, and are read to the nearest
//           1 psi.
// Formula   roughness of a pipe: that by which it loses as much as by its C, at a velocity from 0.6 to
//           1.5 m/s, another for each world; 0 where a smooth one loses more
// Source    How much each is off: World::Errors, common practice, no source.
#pragma once

#include "hydro/diagnosis/candidate.hpp"
#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "random_parts.hpp"

namespace hydro {

/// Standard deviations, or an interval from which they are drawn evenly.
struct WorldErrors {
  double outlets_from = 0.03;  ///< Cv of outlets
  double outlets_to = 0.05;
  double rating = 0.01;       ///< of a kind of outlet
  double bore = 0.01;         ///< of a kind of pipe
  double bore_reach = 0.015;  ///< of each length between outlets by itself
  double losses = 0.2;        ///< K
  double pump_head = 0.02;
  Pressure held = 0.7 * psi;
  Length elevation_from = 0.3 * ft;
  Length elevation_to = 0.5 * ft;
  Pressure gauge_bias = 0.8 * psi;
  Pressure gauge_noise = 0.7 * psi;  ///< before it is read to the nearest 1 psi
};

/// A layout as it is built, and one of its candidates come true.
class SimulatedFault {
 public:
  /// Of the candidates in proportion to their odds, or every kind as often as the others.
  enum class Draw { by_odds, by_kind };

  /// The size of the fault is log-uniform where nine of ten are believed to lie.
  /// @param described without a fault
  SimulatedFault(const Layout& described,
                 const CandidateOptions& options,
                 Draw draw,
                 std::uint64_t seed,
                 const WorldErrors& errors = {});

  const Candidate& candidate() const { return candidate_; }
  /// The layout as it is built, without the fault.
  const Layout& built() const { return built_; }
  /// @param place its place; a pressure
  Reading read(const Reading& place);
  /// Which outlets turn, of so many spread evenly over those that have water.
  std::vector<Sight> look(int most);
  /// What is true of a gauge, for one who knows: standard error and bias.
  static Pressure reading_error(const WorldErrors& errors);

 private:
  bool come_true(const Layout& described, const CandidateOptions& options, double u);

  Dice dice_;
  WorldErrors errors_;
  Layout built_;
  Candidate candidate_;
  SolvedBreak solved_ = {};
  std::map<std::string, double> bias_ = {};  // by gauge [Pa]
};

}  // namespace hydro
