// lanes_plan.hpp: a tree as the lanes march along it. Not installed.
#pragma once

#include "hydro/solver/lanes.hpp"
#include "hydro/solver/stand_in.hpp"
#include "hydro/solver/tree.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace hydro {

/// Which law stands at a place; those that no vector takes are evaluated lane by lane.
enum class MouthKind : std::uint8_t {
  closed,
  root,           ///< q = c sqrt(P), on a riser that takes no head
  root_on_riser,  ///< the same on a riser that takes some
  power,          ///< q = c P^x, on a riser that takes no head
  each_by_itself
};

enum class ReachKind : std::uint8_t {
  hazen_williams,
  square,  ///< a constant factor, or fittings alone
  each_by_itself
};

struct PlannedReach {
  ReachKind kind;
  double friction;  ///< of Q^1.852 or of Q^2, over its length
  double fitting;   ///< of Q^2
  double rise;      ///< of the ground [m]
};

struct PlannedMouth {
  MouthKind kind;
  double coefficient;
  double exponent;
  double height;
  double riser_friction = 0;     ///< of Q^1.852, over its length
  double riser_wall_square = 0;  ///< of Q^2, where the factor is constant
  double riser_fitting = 0;      ///< of Q^2
};

/// A mouth on its riser as it is in one scenario, but for the outlet's own factor.
inline Mouth changed(Mouth mouth,
                     const Differences& differences,
                     std::size_t which,
                     std::size_t lane) {
  if (!differences.riser_friction_factor.empty())
    mouth.riser.length *= differences.riser_friction_factor[which][lane];
  if (!differences.riser_fitting_factor.empty())
    mouth.riser.fitting *= differences.riser_fitting_factor[which][lane];
  if (!differences.riser_friction.empty() &&
      mouth.riser.friction.kind() == FrictionLaw::Kind::darcy_weisbach)
    mouth.riser.friction = differences.riser_friction[which * lanes + lane];
  return mouth;
}

/// What a pass leaves of a run, by lane.
struct RunLanes {
  Lane end_head;    ///< x [m]
  Lane end_flow;    ///< drawn by the runs beyond [m3/s]
  Lane end_slope;   ///< of that with the head there
  Lane flow;        ///< at the inlet [m3/s]
  Lane gap;         ///< r [m]
  Lane head_slope;  ///< dH/dx at the inlet, or at the regulator that holds
  Lane flow_slope;  ///< dQ/dx at the inlet
  Lane felt;  ///< share of a rise at the inlet that is felt: 1, or 0 behind a regulator that holds
};

struct SourceLanes {
  Lane head;   ///< [m]
  Lane flow;   ///< drawn [m3/s]
  Lane slope;  ///< of that with the head
  Lane rise;   ///< correction of the head
};

/// A run and all beyond it as the tree itself has them, felt from its inlet.
struct RunAsItIs {
  double feeding;              ///< head before its inlet [m]
  double end_head;             ///< [m]
  double flow;                 ///< drawn [m3/s]
  double flow_share;           ///< of a rise of head before its inlet: the rise of the flow
  double head_share;           ///< likewise of the head at its far end
  double head_slope;           ///< dH/dx at the inlet
  double flow_slope;           ///< dQ/dx at the inlet
  double bend;                 ///< d2H/dx2 by twice dH/dx
  double flow_beyond;          ///< drawn by the runs beyond [m3/s]
  double head_by_flow_beyond;  ///< dH at the inlet with that, x held
  double flow_by_flow_beyond;  ///< dQ likewise
};

/// A place as the tree itself has it.
struct PlaceAsItIs {
  double per_flow = 0;        ///< 1/Q, or 0
  double power = 0;           ///< Q^0.852
  double head_by_factor = 0;  ///< dH at the run's inlet with the outlet's factor, x held
  double flow_by_factor = 0;  ///< dQ likewise
};

struct LanesPlan {
  const Tree* tree;
  double ramp;  ///< outlets with less head than this, but some, are left to settle() [m]
  std::vector<PlannedReach> reaches = {};
  std::vector<PlannedMouth> mouths = {};
  std::vector<bool> is_plain = {};             ///< by place
  std::vector<State> start = {};               ///< by place
  std::vector<double> start_source_head = {};  ///< by source
  std::vector<double> start_source_flow = {};  ///< by source
  std::vector<RunAsItIs> as_it_is = {};        ///< by run; empty: it could not be marched
  std::vector<PlaceAsItIs> places_as_they_are = {};
};

/// A flow of an earlier pass and its power, from which those of the next passes are near.
struct Remembered {
  Lane per_flow;               ///< 1/Q
  Lane power;                  ///< Q^0.852
  std::uint32_t is_known = 0;  ///< a bit for each lane
};

/// An outlet by square root on a riser that takes no head, of its own in each lane.
struct RootInLanes {
  Lane coefficient;
  Lane height;  ///< [m]
};

/// All that one block is worked out in.
struct LanesWork {
  const LanesPlan* plan;
  const Differences* differences;
  std::vector<RunLanes> runs;
  std::vector<SourceLanes> sources;
  /// By place: which of `roots` is there, or none. Empty: nothing is replaced.
  std::vector<std::int32_t> root_at = {};
  std::vector<RootInLanes> roots = {};
  /// By place, where that does not do: the first of Differences::replaced, or none.
  std::vector<std::int32_t> first_replaced = {};
  /// By run: whether it and all beyond it are as in the tree. Empty: none is known to be.
  std::vector<bool> is_quiet = {};
  /// By run: what answers for one that is quiet. None: its tangent, at first.
  const std::vector<StandIn>* stand_ins = nullptr;
  const std::vector<Offer>* offers = nullptr;  ///< by run
  std::vector<Remembered> remembered = {};     ///< by place of the run that is marched on its offer
  LaneBlock* block;
};

/// Notes what is replaced where, in work that has nothing replaced.
void note_replaced(LanesWork& work);

/// By what lanes take one by one.
inline bool is_replaced(const LanesWork& work, std::size_t place) {
  return !work.first_replaced.empty() && work.first_replaced[place] != none;
}

/// Marches and corrects until all of the first lanes are answers or have taken enough passes; sets
/// LaneBlock::met, mass, energy and passes.
void march(LanesWork& work, std::size_t count);

/// The same where stand-ins answer for all that is quiet; without any, their tangents.
void march_in_part(LanesWork& work, std::size_t count);

/// Two passes, both with slopes: for lanes that begin at their answers, or near them. Sets
/// LaneBlock::met, mass and energy.
void march_twice(LanesWork& work, std::size_t count);

/// One run fed with the heads that are there, with stand-ins for those that it feeds, as near as
/// rounding lets it. @return whether all lanes are met, and none of them near running dry
bool march_alone(LanesWork& work, std::size_t run, std::span<const std::size_t> fed);

/// What feeds a run that draws these flows, and is fed itself as its offer says; a source has none.
/// Leaves the heads before the run where the feeder's ends are, and the feeder's flow.
/// @param beside the other runs that the feeder feeds @return as march_alone()
bool march_feeder(LanesWork& work,
                  std::size_t run,
                  const Lane& drawn,
                  std::span<const std::size_t> beside);

/// Whether RunLanes has nearly the slopes of the answer before the first pass.
enum class SlopesAtFirst { unknown, known };

/// One run fed as its offer says, with what is replaced on it. Sets LaneBlock::met and passes.
void march_on_offer(LanesWork& work,
                    std::size_t run,
                    std::span<const std::size_t> fed,
                    std::size_t count,
                    SlopesAtFirst slopes);

/// From a run so marched to the source: the heads at the far ends of its feeders, of which those
/// that have mouths are marched once more, and the source's.
void go_upstream(LanesWork& work,
                 std::size_t run,
                 std::span<const std::vector<std::size_t>> fed_by,
                 std::size_t count);

/// Heads at the far ends of all that is quiet.
void lead_quiet(LanesWork& work, std::size_t count);

std::size_t vector_width();

}  // namespace hydro
