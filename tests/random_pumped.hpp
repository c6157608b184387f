// random_pumped.hpp: random_layout.hpp's lines on a pump that is about as large as they need, with
// regulators, sets, a filter, a gauge, a second pump, an engine that droops, and faults of them.
#pragma once

#include "hydro/layout/layout.hpp"

#include <cstdint>

namespace hydro {

/// The same seed gives the same layout.
Layout random_pumped(std::uint64_t seed);

}  // namespace hydro
