// smallest_pipe.hpp: the cheapest pipe with which every limit holds.
//
// What      Lines are laid in pipes from a list, each line in one size, or in two and more, the wider
//           ones nearer to the inlet. Of all ways to do so that hold the wanted limits, the answer is
//           the cheapest. Without prices it is the one with the least room inside its pipes.
//           Lines that are named together are laid alike: a whole row field in one choice.
// Formula   cost = sum over lengths of amount x length / per, or of area x length
//           The ways are solved one after another from the cheapest on, until one holds: so nothing
//           cheaper does, whatever the supply, and however the pressures answer. Of ways that cost
//           the same the first is taken, in an order that is always the same.
//           Before that, where every outlet must have its rated pressure and there are several
//           groups, a way to lay one of them is struck out when some outlet falls short with it even
//           in the best company: the others as wide as they come on the water's way to that outlet,
//           as narrow as they come off it. That is safe in a tree with one supply: a pipe that loses
//           less at every flow takes more water, so pressures beyond it never fall, and elsewhere
//           never rise, whether the supply is held or gives less pressure the more it gives. It is
//           not done where lines join or are open to the air, where there are several supplies, or
//           where of two pipes neither always loses less.
//           That more pipe never hurts is NOT true and not used: a wider row starves its neighbour.
// Source    Ours. Enumeration by cost is brute force that ends early; tests/smallest_pipe_test.cpp
//           compares it with brute force that does not.
// Range     Pipe changes at outlets and where other lines begin or end, or every `change_every` from
//           the inlet. Wider means a larger bore. Lines that are laid alike must have the same places
//           at which pipe may change, where more than one size is asked.
// Errors    InvalidInput for a line that is not there, is named twice or is shut, an empty list of
//           pipes or one that cannot be, prices that some have and others not, more ways to lay one
//           group than `most_ways_of_a_group`, or more than `most_tried` tried without an answer;
//           NotSolved, where a way before the answer is not solved: then nothing would be proved.
//           Stopped.
// Threads   Pure functions, which use `work.threads`; the answer does not depend on how many.
// Example   examples/23_smallest_pipe.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/priced_pipe.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// Lines that are laid alike.
struct LinesToSize {
  std::vector<std::string> lines = {};
  int sizes = 1;  ///< at most so many along each of them, 1 to 10
};

/// What the lines must keep to, and how they may be laid.
struct SmallestPipeOptions {
  Limits limits = {.judged = {Limit::rated, Limit::pipe_rating}};  ///< that must hold
  std::optional<Length> change_every = {};     ///< default at outlets and where lines begin or end
  std::size_t most_ways_of_a_group = 100'000;  ///< 1 to 10 million
  std::size_t most_tried = 1'000'000;          ///< 1 to 100 million
};

/// A length of one pipe.
struct LaidPipe {
  std::string line;
  Pipe pipe;
  Length start;  ///< from the line's inlet
  Length end;
};

/// The answer, or that there is none.
struct SmallestPipe {
  bool found;                   ///< if not, the rest is of the widest pipe throughout
  std::vector<LaidPipe> pipes;  ///< line by line as they were named, from the inlet on
  std::optional<double> cost;   ///< money; none: there are no prices
  Volume volume;                ///< inside the pipes
  std::vector<Margin> passed;   ///< limits that are; empty where found
  Solution solution;            ///< so laid; its layout can be used on
  std::size_t ways;             ///< that there are to lay all lines
  std::size_t tried;            ///< of these, solved
};

/// @param lines groups, each laid alike and apart from the others @param pipes in any order
SmallestPipe smallest_pipe(const Layout& layout,
                           const std::vector<LinesToSize>& lines,
                           const std::vector<PricedPipe>& pipes,
                           const SmallestPipeOptions& options = {},
                           const Work& work = {});

/// What one pipe throughout would do.
struct PipeTried {
  Pipe pipe;
  std::optional<double> cost;  ///< money
  Volume volume;               ///< inside the pipes
  /// Of rated pressure, at the outlet with the smallest, 0 where it is dry [-]; none: none is judged.
  std::optional<double> lowest_share;
  std::optional<Pressure> lowest_pressure;  ///< of the same outlet
  Velocity highest_velocity;                ///< in these lines
  double flow_variation;                    ///< the largest in these lines [-]
  std::vector<Margin> passed;               ///< limits that are
  Solution solution;
};

/// One row for each pipe of the list, in its order: these lines are laid in it throughout.
std::vector<PipeTried> try_pipes(const Layout& layout,
                                 const std::vector<std::string>& lines,
                                 const std::vector<PricedPipe>& pipes,
                                 const SmallestPipeOptions& options = {},
                                 const Work& work = {});

}  // namespace hydro
