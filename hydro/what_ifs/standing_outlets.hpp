// standing_outlets.hpp: a layout's outlets as the tree has them. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/reading.hpp"
#include "hydro/solver/tree.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace hydro {

/// An outlet as the tree has it.
struct StandingOutlet {
  const Line* line;
  const Outlet* kind;
  const Fault* fault;  ///< none: null
  std::size_t place;   ///< nowhere: no water comes to it
  double held;         ///< by its own regulator [m]
  bool is_shut;
};

/// The same with a fault that comes to it. @param mouth what it then lets water out by; none: nothing
StandingOutlet with_fault_at(StandingOutlet outlet,
                             const Fault& fault,
                             const std::optional<Mouth>& mouth);

/// Where it stands. @param number from 1 on
std::size_t place_of(const Tree& tree, std::size_t line_index, int number);

/// All of them, line by line. They refer to the layout.
std::vector<StandingOutlet> standing_outlets(const Layout& layout, const Tree& tree);

/// Where leaks and open ends are.
std::vector<std::size_t> open_places(const Tree& tree);

/// What is read of one, with the fault that it has. @param head in the line [m]
/// @param outlet_head at the device, before its own regulator [m]
OutletReading read_outlet(const StandingOutlet& outlet,
                          double head,
                          double outlet_head,
                          double weight_density);

}  // namespace hydro
