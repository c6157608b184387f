// line.hpp: one line of pipe, with or without outlets, as it lies in the field.
//
// What      A line begins at a supply, or on the line that feeds it: at its far end, at a tap along it
//           or at one of its outlets. Its far end is closed, or joins another line, or the same one;
//           then water may run in it either way. It is of one pipe, or its first lengths are of
//           others. Its outlets stand at even spacing or each at a place of its own, and count from
//           1, from the inlet on. The ground rises evenly with the distance, or is known at every
//           outlet; then it is even from the inlet to the first, and level beyond the last, or even
//           to where the line joins another. The far end of a line that joins lies as high as the
//           place where it does.
//           A check valve lets no water run back out of the line's inlet, and nor does a regulator,
//           which also shuts against more pressure beyond it than it is set to (common practice, no
//           source).
// Range     A place within 1 mm of an outlet or of the far end is taken to be there.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/physics/outlet.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/physics/riser.hpp"
#include "hydro/physics/valve.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The most outlets that one layout may have.
inline constexpr int most_outlets = 1'000'000;
/// The most lines that one layout may have.
inline constexpr std::size_t most_lines = 100'000;
/// The most supplies that one layout may have beside the first.
inline constexpr std::size_t most_further_supplies = 1'000;
/// What is nearer than this to an outlet or to the far end is there.
inline constexpr Length same_place = 1 * mm;
/// The far end of a line may seem this much higher or lower than the place where it joins another.
inline constexpr Length same_height = 1 * cm;

/// A first length of other pipe.
struct PipeReach {
  Pipe pipe = {};
  Length to = {};  ///< its far end, from the line's inlet
  bool operator==(const PipeReach&) const = default;
};

/// One outlet of those that stand unevenly.
struct PlacedOutlet {
  Length place = {};  ///< from the line's inlet
  Outlet outlet = {};
  bool operator==(const PlacedOutlet&) const = default;
};

/// A line as it is described.
struct Line {
  std::string name = {};
  std::string fed_by = {};         ///< the line or further supply it begins at; empty: the supply
  std::optional<Length> tap = {};  ///< where along that line; default its far end
  std::optional<int> tap_outlet = {};    ///< or at which of its outlets
  std::string joins = {};                ///< the line that its far end meets; empty: it is closed
  std::optional<Length> joins_at = {};   ///< where along that line; default its far end
  std::optional<int> joins_outlet = {};  ///< or at which of its outlets
  Pipe pipe = {};
  std::vector<PipeReach> reaches = {};  ///< from the inlet on; beyond them it is of `pipe`
  std::optional<Outlet> outlet = {};    ///< none: a main or a manifold
  std::optional<int> count = {};        ///< of outlets, 1 to most_outlets
  std::optional<Length> spacing = {};   ///< from outlet to outlet
  std::optional<Length> first_at = {};  ///< from the inlet to the first outlet, default one spacing
  std::vector<PlacedOutlet> outlets = {};  ///< instead of the four above: from the inlet on
  std::optional<Length> length = {};       ///< to the far end; default to the last outlet
  std::optional<Length> ground_rise =
      {};  ///< far end above near end; default 0, or what it takes to join
  std::vector<Length> elevations =
      {};  ///< instead: of the ground at every outlet, like the supply's
  Riser riser = {};
  std::optional<Valve> valve = {};         ///< at the inlet, default none
  std::optional<bool> check_valve = {};    ///< at the inlet: no water runs back, default false
  std::optional<Pressure> regulator = {};  ///< at the inlet: no more than this beyond it
  std::optional<double> loss_coefficient =
      {};  ///< K at the inlet, on this pipe's velocity head, default 0
  std::optional<double> outlet_loss_coefficient =
      {};  ///< K in the line at each outlet, on the velocity head arriving, default 0
  std::optional<Length> connection_length =
      {};  ///< pipe that loses as much as an outlet's connection in the line, default 0
  bool operator==(const Line&) const = default;

  int outlet_count() const {
    return outlets.empty() ? count.value_or(0) : static_cast<int>(outlets.size());
  }
  /// Distance of an outlet (from 1 on) from the inlet.
  Length place_of(int outlet_number) const;
  /// The kind that stands at an outlet (from 1 on).
  const Outlet& kind_of(int outlet_number) const;
  /// The outlet at a place, the last one if there are more.
  std::optional<int> outlet_near(const Length& place) const;
  /// The place itself, or that of the outlet or the far end within 1 mm of it.
  Length merged(const Length& place) const;
  /// From the inlet to the far end.
  Length whole_length() const;
  /// The pipe that arrives at a place; at the inlet the first one.
  const Pipe& pipe_at(const Length& place) const;
};

/// Where on its feeder a line begins.
Length begins_at(const Line& line, const Line& feeder);
/// Where on the line that it joins a line ends.
Length ends_at(const Line& line, const Line& joined);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Line& line);

}  // namespace hydro
