// growers_layouts.hpp: layouts of an ordinary size and shape, from a seed, on which to look for
// faults. All invented.
#pragma once

#include "hydro/layout/layout.hpp"

#include <cstdint>

namespace hydro {

/// One lateral of 12 to 24 outlets, or three to five rows of 5 to 10 along a manifold, some of them
/// shut in half of the cases; by a pump or a held pressure at which every outlet works. Walls by
/// Hazen-Williams.
Layout growers_layout(std::uint64_t seed);

/// A kind of outlet that is never in growers_layout, but could be fitted by mistake in this one: its
/// first outlet's with 1.4 times the flow.
Outlet larger_outlet(const Layout& layout);

}  // namespace hydro
