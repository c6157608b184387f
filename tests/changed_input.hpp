// changed_input.hpp: a layout with one of the inputs of sensitivity.hpp changed as a user would change
// it, in the description.
#pragma once

#include "hydro/answers/sensitivity.hpp"
#include "hydro/layout/layout.hpp"

#include <optional>
#include <string>

namespace hydro {

struct NamedInput {
  Input input;
  std::string at;
  int number = 0;
};

/// @param change a share of a size; of a height [m]
/// None where the description has no field that changes this alone, or the changed one is refused.
std::optional<Layout> with_changed(const Layout& layout, const NamedInput& named, double change);

}  // namespace hydro
