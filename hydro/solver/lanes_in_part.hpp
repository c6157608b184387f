// lanes_in_part.hpp: many scenarios of one tree that differ in a few outlets, each solved where it
// differs only. Not installed.
//
// What      Where scenarios differ in one run, only that run is marched as in lanes.hpp. For each run
//           that it feeds, with all beyond, stands the polynomial of stand_in.hpp: what it draws by
//           the head before its inlet; and for all before it that of the head it is offered, by the
//           flow that it draws. Both are made once: outward-in, each run is solved by itself at 32
//           heads, with stand-ins for those that it feeds; inward-out, what feeds each run is solved
//           at 32 flows.
//           Where scenarios differ in several runs, or one of them has no offer, all runs on the way
//           to the sources are marched, with stand-ins for the others.
// Formula   As in lanes.hpp; a polynomial has no gap, and its slope is its own.
// Source    Ours. What is upstream and what is downstream of a place are each a law of one pressure
//           and one flow, as a two-terminal part of an electric circuit is.
// Range     Trees that lanes march on. A run in which a law has a bend within the heads that are
//           asked for, in which an outlet runs dry, or that whoever asks wants marched, has no
//           stand-in, nor have those that feed it. A lane that asks a polynomial beyond what it was
//           made for is not met.
// Accuracy  Polynomials are within `stand_in_tolerance` of the flow, or of the head span, at each of
//           16 points between those that they were made from; gaps as in lanes.hpp.
// Threads   const functions may be called from many threads, each with a Desk of its own.
#pragma once

#include "hydro/solver/lanes.hpp"
#include "hydro/solver/lanes_plan.hpp"
#include "hydro/solver/stand_in.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace hydro {

inline constexpr double stand_in_tolerance = 1e-12;

class LanesInPart {
 public:
  /// What is asked of a run: heads before its inlet [m], flows into it [m3/s].
  struct Asked {
    Interval heads;
    Interval flows;
  };
  /// One run at the heads that were tried, a lane each: places of its own in `block`.
  struct Tried {
    std::size_t run;
    Interval range;  ///< of the heads before its inlet, at points_to_try()
    const LaneBlock& block;
  };
  /// @return whether a stand-in is good enough for whoever asks
  using Look = std::function<bool(const Tried&)>;

  /// Refers to the lanes and their tree, which must outlive it. @param asked by run
  /// @param room to work in, as a LaneBlock takes much
  LanesInPart(const Lanes& whole,
              const std::vector<Asked>& asked,
              const Look& look,
              LaneBlock& room);

  std::size_t run_of(std::size_t place) const { return run_of_[place]; }
  bool has_stand_in(std::size_t run) const { return !stand_ins_[run].flow.empty(); }

  /// Of a run: the heads there, and how head and flow at the inlet go with them.
  struct FarEnd {
    Lane head;  ///< [m]
    Lane inlet_head_slope;
    Lane inlet_flow_slope;
  };

  /// What one block is worked out on, over and over.
  class Desk {
   public:
    explicit Desk(const LanesInPart& of, LaneBlock room = {});

    /// Solves the first `count` scenarios; of the differences only `replaced` may be there.
    /// @param near where the march along the run that they are all on may end; none: as in the tree
    void solve(const Differences& differences, std::size_t count, const FarEnd* near = nullptr);

    /// A bit for each lane that is an answer.
    std::uint32_t met() const { return block_.met; }
    int passes() const { return block_.passes; }
    /// Of runs that are marched: their places; and all sources.
    const LaneBlock& block() const { return block_; }
    /// Otherwise what befalls its outlets is known by the head before its inlet, if it has any.
    bool is_marched(std::size_t run) const { return !work_.is_quiet[run]; }
    /// Heads before its inlet [m].
    const Lane& fed(std::size_t run) const;
    FarEnd far_end(std::size_t run) const;

   private:
    bool solve_one_run(std::size_t count, const FarEnd* near);
    void begin_near(std::size_t run, const FarEnd& near, std::size_t count);
    void solve_all_on_the_way(std::size_t count);

    LaneBlock block_;
    const LanesInPart& of_;
    LanesWork work_;
  };

 private:
  void find_stand_in(std::size_t run, LanesWork& work, const Interval& heads, const Look& look);
  void find_offer(std::size_t run, LanesWork& work, const Interval& flows);
  /// Those that have the same feeder.
  std::vector<std::size_t> beside(std::size_t run) const;
  bool have_stand_ins(const std::vector<std::size_t>& runs) const;
  bool is_regulated(std::size_t run) const;

  const LanesPlan& plan_;
  std::vector<std::vector<std::size_t>> fed_by_;         ///< by run: those that it feeds
  std::vector<std::vector<std::size_t>> fed_by_source_;  ///< by source: likewise
  std::vector<std::size_t> run_of_;                      ///< by place
  std::vector<StandIn> stand_ins_;                       ///< by run
  std::vector<Offer> offers_;                            ///< by run
};

}  // namespace hydro
