// supply_notes.hpp: where a supply works outside what is known of it. Not installed.
#pragma once

#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/supply.hpp"

#include <string>
#include <vector>

namespace hydro {

std::vector<std::string> notes_on(const Supply& supply, const OperatingPoint& point);

}  // namespace hydro
