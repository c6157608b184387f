// remedies.hpp: what could be done for outlets that fall short, and what each remedy buys.
//
// What      wider_pipe        a line, or all rows alike on one feeder, in each of the next sizes up
//           fewer_outlets     the last outlets of a row, or of all rows alike, taken away: the least
//                             number that cures
//           smaller_outlets   all outlets of a kind that fall short changed for ones that give less
//                             at the same pressure: the first step that cures
//           more_pressure     the engine faster, or the held pressure higher, until each outlet has
//                             its rated pressure (set_gauge.hpp)
//           feed_from_middle  a feed pipe along the row to its middle, from which it runs both ways:
//                             the narrowest pipe that cures
//           second_feed       a cross pipe from the far end of a row to that of its neighbour
//           Each is solved by itself; where none of its steps cures, the one that buys most is told.
//           What buys next to nothing is left out (`least_gain`). Rows are alike that begin on the
//           same line and have the same pipe, outlets and spacing; where one of several falls short,
//           they are changed all together, and those that do one by one.
// Formula   cures    no outlet below its rated or lowest or above its highest pressure, no pipe over
//                    its rating and no supply beyond a limit that was not so before
//           ranking  cures first: those with a price from the cheapest on, then those without; then
//                    what does not cure. Within each by what it buys: fewest outlets below rated, then
//                    the highest lowest share of rated pressure, then the least flow; then as above
//           cost     of new pipe over its whole length, by the list; of outlets that are changed or
//                    given up, by the piece; of more pressure, by the kilowatt that the shaft takes
//                    more, where it is known
// Source    Ours; that these are the remedies is common practice, no source.
// Range     What is shut is neither judged nor changed. Labour is what you put into the prices. Pipe
//           that is wider already is left. Outlets that are taken away leave the line as long as it
//           is. Rows with faults, or on which others begin or end, are not fed from the middle; what
//           becomes of one that is stands in inlet_position.hpp: the ground under its feed pipe is
//           taken as even, and a crest there is not seen. A cross pipe is as long as the rows
//           are apart on their feeder.
// Errors    InvalidInput for options out of range and pipes that cannot be; NotSolved, where one of
//           the remedies is not solved; Stopped.
// Threads   Pure function, which uses `work.threads`; the answer does not depend on how many.
// Example   examples/24_cheapest_remedy.cpp
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

enum class RemedyKind {
  wider_pipe,
  fewer_outlets,
  smaller_outlets,
  more_pressure,
  feed_from_middle,
  second_feed
};

/// What may be done, and what it costs.
struct RemedyOptions {
  std::vector<PricedPipe> pipes = {};  ///< that can be had; none: no remedy of pipe is looked for
  int sizes_up = 2;                    ///< so many of the next wider ones are tried, 1 to 20
  double most_outlets_fewer = 0.5;     ///< share of a row that may be given up, 0 to 1 [-]
  double outlet_step = 0.05;  ///< steps in which smaller outlets can be had, 0.001 to 0.5 [-]
  double least_outlet = 0.7;  ///< share of the flow of now, at the same pressure, 0.05 to 1 [-]
  /// Of rated pressure, at the weakest: what gives less, and leaves as many outlets below, is left out.
  double least_gain = 0.01;
  std::optional<double> outlet_price = {};       ///< money for each that is changed
  std::optional<double> lost_outlet_price = {};  ///< money that one is worth which is taken away
  std::optional<double> kilowatt_price = {};     ///< money for one kW more at the shaft
};

/// How a layout stands.
struct Standing {
  int below_rated = 0;                      ///< outlets; dry ones are among them
  std::optional<double> lowest_share = {};  ///< of rated pressure; 0: dry; none: none is judged [-]
  Flow flow = {};                           ///< out of all supplies
  std::optional<Power> shaft_power = {};    ///< of all pumps; none: none there, or one not known
};

/// One thing that could be done.
struct Remedy {
  RemedyKind kind;
  std::vector<std::string> lines;  ///< to which it is done; none: the supply
  std::string deed;                ///< what is done, in the units of the layout
  bool cures;
  std::vector<Margin> passed;  ///< limits that keep it from being a cure
  std::optional<double> cost;  ///< money; none: a price is missing
  Standing after;
  Solution solution;  ///< with it done; its layout can be used on
};

/// What could be done, the best first.
struct Remedies {
  Standing before;
  std::vector<Remedy> ranked;  ///< empty where nothing falls short
};

/// Each remedy solved in the whole layout, and all ranked. @throws InvalidInput, NotSolved, Stopped
Remedies remedies(const Layout& layout, const RemedyOptions& options = {}, const Work& work = {});

}  // namespace hydro
