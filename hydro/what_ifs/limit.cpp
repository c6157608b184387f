#include "hydro/what_ifs/limit.hpp"

#include <algorithm>

namespace hydro {
namespace {

bool is_broken(const Check& check, Limit limit) {
  switch (limit) {
    case Limit::below_rated:
      return !check.below_rated.empty();
    case Limit::below_minimum:
      return !check.below_minimum.empty();
    case Limit::above_maximum:
      return !check.above_maximum.empty();
    case Limit::variations:
      return std::any_of(check.variations.begin(),
                         check.variations.end(),
                         [](const Variation& variation) { return variation.too_wide; });
    case Limit::fast_water:
      return !check.fast_water.empty();
    case Limit::below_atmosphere:
      return !check.below_atmosphere.empty();
    case Limit::over_rating:
      return !check.over_rating.empty();
    case Limit::supply_limits:
      break;
  }
  const auto& further = check.further_supply_limits;
  return !check.supply_limits.empty() ||
         std::any_of(
             further.begin(), further.end(), [](const auto& of_one) { return !of_one.empty(); });
}

}  // namespace

std::vector<Limit> all_limits() {
  return {Limit::below_rated,
          Limit::below_minimum,
          Limit::above_maximum,
          Limit::variations,
          Limit::fast_water,
          Limit::below_atmosphere,
          Limit::over_rating,
          Limit::supply_limits};
}

std::vector<Limit> broken_limits(const Check& check, const std::vector<Limit>& wanted) {
  std::vector<Limit> broken;
  for (const Limit limit : all_limits())
    if (std::find(wanted.begin(), wanted.end(), limit) != wanted.end() && is_broken(check, limit))
      broken.push_back(limit);
  return broken;
}

std::string_view in_words(Limit limit) {
  switch (limit) {
    case Limit::below_rated:
      return "outlets below rated";
    case Limit::below_minimum:
      return "outlets that do not work";
    case Limit::above_maximum:
      return "outlets above their highest pressure";
    case Limit::variations:
      return "waters too unevenly";
    case Limit::fast_water:
      return "water too fast";
    case Limit::below_atmosphere:
      return "pressure below the atmosphere's";
    case Limit::over_rating:
      return "pipe over its rating";
    case Limit::supply_limits:
      break;
  }
  return "supply asked too much";
}

}  // namespace hydro
