// one_decimal.hpp: a figure as reports print it.
#pragma once

#include <array>
#include <cstdio>
#include <string>

namespace hydro {

/// As C prints it, not as the library does.
inline std::string one_decimal(double number) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.1f", number);
  return text.data();
}

}  // namespace hydro
