#include "hydro/text/doings.hpp"

#include <algorithm>

namespace hydro {

std::vector<Doing> doings(const Solution& solution, std::size_t line_index) {
  const LineSolution& solved = solution.lines()[line_index];
  std::vector<Doing> all;
  all.reserve(solved.state.size());
  for (std::size_t i = 0; i < solved.state.size(); ++i)
    all.push_back(doing(solution, line_index, i));
  return all;
}

std::string name_of(Doing what) {
  switch (what) {
    case Doing::broken:
      return "broken";
    case Doing::capped:
      return "capped";
    case Doing::shut:
      return "shut";
    case Doing::without_water:
      return "no_water";
    case Doing::dry:
      return "dry";
    case Doing::below_minimum:
      return "below_minimum";
    case Doing::below_rated:
      return "below_rated";
    case Doing::above_maximum:
      return "above_maximum";
    case Doing::serves:
      break;
  }
  return "works";
}

std::string label_of(Doing what) {
  std::string label = name_of(what);
  std::replace(label.begin(), label.end(), '_', ' ');
  return label;
}

}  // namespace hydro
