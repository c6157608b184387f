// lanes.hpp: many scenarios of one tree at once, one in each lane of a vector. Not installed.
//
// What      Blocks of like trees that differ in numbers: how much an outlet lets out, how much a
//           pipe loses, what a supply gives, what an outlet was replaced by. Each is solved to the
//           residuals that solve() meets; whatever the lanes do not settle goes to settle() alone.
// Formula   A run is marched from its far end, where its pressure head x is sought: there the flow
//           is what the runs beyond draw, and every law on the way is explicit, so mass, energy
//           and outlets are met exactly and nothing need be kept of a place. The slopes dH/dx and
//           dQ/dx are marched along. What is left is one gap of head a run, r = H(feeder) - H(x),
//           closed by Newton's method as in sweeps.hpp: outward-in, each run answers a rise dH at
//           its inlet with
//             dx = (r + dH) / (dH/dx),  dQ = (dQ/dx) dx
//           and inward-out the rises are passed on. H(x) is nearly straight, for the flow goes with
//           the square root of the head and the loss nearly with the square of the flow; and its bend
//           is nearly that of the tree itself, H''/(2 H') at the tree's answer, by which each step
//           is corrected.
//           What outlets let out otherwise is taken at first for what it does on the tangent of the
//           tree's answer, two products an outlet: from there one step does for a hundred outlets
//           that vary by 5 %, and the second pass proves it.
//           Powers of flows within 1/8 of those of the tree are the series about them, at a third
//           of the cost (vector_power-inl.hpp).
// Source    Ours: shooting from the far ends, with the tree eliminated as in sweeps.hpp.
// Range     Trees without joints. Long lines that lose nearly all their head answer a breath at the
//           far end with a storm at the inlet: those are left to settle().
// Accuracy  Gaps within Residuals::tolerance, measured by one more pass over all laws at the answer.
// Threads   const functions may be called from many threads, each with a LaneBlock of its own.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/solver/zeroed_pages.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace hydro {

/// Scenarios in a block, whatever the width of the machine's vectors.
inline constexpr std::size_t lanes = 32;

/// One number for each scenario of a block.
struct alignas(64) Lane {
  std::array<double, lanes> at{};
  double& operator[](std::size_t lane) { return at[lane]; }
  double operator[](std::size_t lane) const { return at[lane]; }
  static Lane all(double value) {
    Lane it;
    it.at.fill(value);
    return it;
  }
};

/// A number for each place or source, and in each lane.
using Rows = std::vector<Lane, ZeroedPages<Lane>>;

/// How the scenarios of a block differ from the tree. What is empty does not differ.
struct Differences {
  std::vector<Lane> outlet_factor = {};    ///< by place: of what its outlet lets out
  std::vector<Lane> friction_factor = {};  ///< by reach: of its friction, but not Darcy-Weisbach's
  std::vector<Lane> fitting_factor = {};   ///< by reach
  std::vector<Lane> riser_friction_factor = {};  ///< by mouth: of its riser's, likewise
  std::vector<Lane> riser_fitting_factor = {};   ///< by mouth
  std::vector<SupplyLaw> supply = {};            ///< by source times lanes plus lane
  /// By reach times lanes plus lane: the law there, if the friction is Darcy-Weisbach's.
  std::vector<FrictionLaw> friction = {};
  std::vector<FrictionLaw> riser_friction = {};  ///< by mouth times lanes plus lane: likewise

  /// What stands at a place in one scenario instead of what the tree has; none: nothing.
  struct Replaced {
    std::size_t place;
    std::size_t lane;
    std::optional<Mouth> mouth;
  };
  std::vector<Replaced> replaced = {};  ///< sorted by place; one for a place and lane

  bool only_replaced() const {
    return outlet_factor.empty() && friction_factor.empty() && fitting_factor.empty() &&
           riser_friction_factor.empty() && riser_fitting_factor.empty() && supply.empty() &&
           friction.empty();
  }
};

/// What was found for a block. At each place and lane as in State.
struct LaneBlock {
  Rows head;                ///< by place: pressure head in the line [m]
  Rows outlet_flow;         ///< by place [m3/s]
  Rows outlet_head;         ///< by place: at the device; that of a dry one is 0 [m]
  Rows source_flow;         ///< by source [m3/s]
  Rows source_head;         ///< by source [m]
  Lane mass;                ///< largest gap, of the scale in Residuals
  Lane energy;              ///< largest gap, of the scale in Residuals
  std::uint32_t met = 0;    ///< a bit for each lane that is an answer
  int passes = 0;           ///< that the slowest lane took
  std::uint32_t alone = 0;  ///< a bit for each lane that was left to settle()
};

struct LanesPlan;

class Lanes {
 public:
  /// Refers to the tree, which must outlive it. @param solved the tree's states, from which to begin
  /// @param room to work in, if there is some already
  Lanes(const Tree& tree, const Sweeps& solved, LaneBlock* room = nullptr);
  ~Lanes();
  Lanes(Lanes&&) noexcept;

  /// Whether lanes march on such a tree; else every scenario is settled alone.
  static bool march_on(const Tree& tree);

  /// Solves the first `count` scenarios of a block; the other lanes are idle.
  void solve(const Differences& differences, std::size_t count, LaneBlock& block) const;

  /// Heads before each run [m], nearly, where only something is replaced: runs that are not on the way
  /// from there to a source answer as on their tangents. Sets `met` in the room.
  std::vector<Lane> heads_before_runs(const Differences& differences,
                                      std::size_t count,
                                      LaneBlock& room) const;

  /// The tree of one scenario.
  Tree tree_of(const Differences& differences, std::size_t lane) const;

  /// The tree as they march along it.
  const LanesPlan& plan() const;

  /// Doubles that one vector of this machine holds.
  static std::size_t width();

 private:
  struct Plan;
  void settle_alone(const Differences& differences, std::size_t lane, LaneBlock& block) const;
  std::unique_ptr<const Plan> plan_;
};

}  // namespace hydro
