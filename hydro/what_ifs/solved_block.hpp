// solved_block.hpp: some realisations, one after another, solved. Not installed.
//
// What      As many at once as there are lanes where realisations are differences of one tree
//           (realisations_in_lanes.hpp), else one by one; so is each that the lanes leave unsolved.
// Accuracy  The numbers that solve(realisation(...)) gives: one by one to the last bit, in lanes to
//           1e-9 of them (realisations_in_lanes_test.cpp).
// Threads   const functions may be called from many threads, each with a Desk and a block of its own.
#pragma once

#include "hydro/what_ifs/realisations_in_lanes.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace hydro {

/// Realisations from `first` on. SI; all outlets of all lines in their order, for each outlet one
/// realisation after another.
struct SolvedBlock {
  std::size_t first = 0;
  std::size_t count = 0;
  /// At the device: of outlet j in the i-th one, entry j * count + i.
  std::vector<double> pressure = {};
  std::vector<double> flow = {};    ///< likewise
  std::vector<double> inflow = {};  ///< out of all supplies together, one for each realisation

  std::span<const double> pressures(std::size_t outlet) const { return part(pressure, outlet); }
  std::span<const double> flows(std::size_t outlet) const { return part(flow, outlet); }

 private:
  std::span<const double> part(const std::vector<double>& all, std::size_t outlet) const {
    return std::span(all).subspan(outlet * count, count);
  }
};

class BlockSolver {
 public:
  /// Refers to the inputs, which must outlive it.
  explicit BlockSolver(const UncertainInputs& inputs);

  /// What one thread works on.
  struct Desk {
    Drawn drawn;
    LanesDesk lanes;
  };

  /// @throws NotSolved
  void solve(std::uint64_t seed,
             std::size_t first,
             std::size_t count,
             Desk& desk,
             SolvedBlock& block) const;

  bool is_in_lanes() const { return lanes_ != nullptr; }

 private:
  void solve_in_lanes(std::size_t from, std::size_t count, Desk& desk, SolvedBlock& block) const;
  void solve_alone(std::size_t which, const Drawn& drawn, SolvedBlock& block) const;

  const UncertainInputs& inputs_;
  double weight_density_;  ///< rho g [N/m3]
  std::unique_ptr<const RealisationsInLanes> lanes_;
};

}  // namespace hydro
