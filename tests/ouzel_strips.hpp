// ouzel_strips.hpp: the four seed-potato strips of Ouzel Bench with their pump: an invented farm.
#pragma once

#include "hydro/layout/layout.hpp"

namespace hydro {

/// Engine-driven pump with suction, filter and gauge, at 2,210 rpm.
Supply ouzel_pump();

/// Four rows along one manifold; sets "rows 1 and 2" and "rows 3 and 4". None runs yet.
Layout ouzel_strips(const Supply& supply = ouzel_pump());

}  // namespace hydro
