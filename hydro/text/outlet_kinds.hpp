// outlet_kinds.hpp: the kinds of outlets of a layout, each of them once. Not installed.
#pragma once

#include "hydro/solver/solution.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

struct OutletKind {
  const Outlet* outlet;  ///< of the solution's layout
  Flow rated_flow;       ///< at its rated pressure
};

/// Kinds are in the order in which they first stand on the lines; equal ones are one. Must not
/// outlive the solution.
class OutletKinds {
 public:
  explicit OutletKinds(const Solution& solution);

  const std::vector<OutletKind>& all() const { return all_; }
  /// Indices into all(), one for each outlet of the line, outlet 1 first.
  const std::vector<std::size_t>& on_line(std::size_t line_index) const {
    return by_line_[line_index];
  }
  const OutletKind& at(std::size_t line_index, std::size_t outlet_index) const {
    return all_[by_line_[line_index][outlet_index]];
  }

 private:
  std::vector<OutletKind> all_;
  std::vector<std::vector<std::size_t>> by_line_;
};

}  // namespace hydro
