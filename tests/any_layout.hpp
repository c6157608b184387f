// any_layout.hpp: one of all the kinds of random layouts there are, from a seed.
#pragma once

#include "hydro/layout/layout.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace hydro {

/// Where a layout was drawn from, and of how many of them.
struct LayoutKind {
  std::string_view name;
  double share;
  Layout (*draw)(std::uint64_t seed);
};

/// All kinds; their shares make 1.
extern const std::array<LayoutKind, 11> layout_kinds;

struct AnyLayout {
  std::size_t kind;  ///< of layout_kinds
  Layout layout;
};

/// In every fifth the water and the altitude are not the usual ones, and outlets are rated by their
/// nozzles or by points. The same seed gives the same layout.
AnyLayout any_layout(std::uint64_t seed);

}  // namespace hydro
