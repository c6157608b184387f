// names.hpp: lines by their names. Not installed.
#pragma once

#include "hydro/layout/line.hpp"
#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <unordered_map>
#include <vector>

namespace hydro {

using IndexByName = std::unordered_map<std::string, std::size_t>;

/// Of several lines with one name the first.
inline IndexByName index_lines(const std::vector<Line>& lines) {
  IndexByName index;
  for (std::size_t i = 0; i < lines.size(); ++i) index.emplace(lines[i].name, i);
  return index;
}

/// Names for a hint, as many as it can show.
inline std::string names_of(const std::vector<Line>& lines) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < std::min(listed_at_most, lines.size()); ++i)
    names.push_back(lines[i].name);
  return list_in_quotes(names, lines.size());
}

}  // namespace hydro
