// watering_set.hpp: lines that are opened together while all others are shut.
//
// What      A line is open when a set that runs names it, when it feeds such a line, when it hangs on
//           one and no set names it or a line between, or when its far end joins an open line and no
//           set names it. All others are shut at their inlets; water may come to their far ends all
//           the same, where those join a line that has some. A line whose valve was left open is
//           open like one that a set names, if no line that feeds it is named by a set that does
//           not run.
// Threads   Plain values.
#pragma once

#include <string>
#include <vector>

namespace hydro {

/// As it is described.
struct WateringSet {
  std::string name = {};
  std::vector<std::string> lines = {};  ///< by name, one or more
  bool operator==(const WateringSet&) const = default;
};

}  // namespace hydro
