// held_lines.hpp: the lines of a layout with the pressure at their start held. Not installed.
//
// What      What the lines draw, and how the outlet that is nearest to falling short stands, at any
//           pressure: the ground on which a supply is set.
#pragma once

#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace hydro {

/// The most that a supply may hold (supply.hpp).
inline constexpr Pressure highest_held = 10000 * kPa;

class HeldLines {
 public:
  /// The pressure an outlet should have.
  using Wanted = std::function<Pressure(const Outlet&)>;

  /// @throws InvalidInput when no outlet that works is open.
  explicit HeldLines(const Layout& layout);

  /// Flow with this pressure held, before this filter if there is one. @throws NotSolved
  Flow flow_at(const Pressure& held, const std::optional<Filter>& filter = {}) const;

  /// The lowest pressure at the start of the lines with which every outlet has what it should, and
  /// the flow with it.
  struct Enough {
    Pressure pressure;
    Flow flow;
  };
  /// None: no pressure that the library accepts is enough.
  std::optional<Enough> enough(const Wanted& wanted) const;

 private:
  struct Judged {
    std::size_t line;
    std::size_t outlet;  ///< from 0 on
    double wanted;       ///< head [m]
  };
  /// How much head the outlet that is worst off has above what it should [m]; minus infinity where
  /// no pressure brings water to it.
  struct Excess {
    double head;
    double slope;  ///< with the head at the start of the lines [-]
    double flow;   ///< of all lines [m3/s]
  };
  std::vector<Judged> judged(const Wanted& wanted) const;
  Excess excess_at(double head, const std::vector<Judged>& outlets) const;
  double first_guess(const std::vector<Judged>& outlets) const;

  Layout layout_;
  WaterProperties water_;
};

}  // namespace hydro
