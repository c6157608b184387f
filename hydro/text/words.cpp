#include "hydro/text/words.hpp"

#include "hydro/answers/check.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace hydro {

std::string stretches(const std::vector<int>& numbers) {
  constexpr int most = 12;
  std::string text;
  int told = 0;
  for (std::size_t i = 0; i < numbers.size(); ++told) {
    if (told == most) return text + fmt::format(" and {} more", numbers.size() - i);
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    if (i > 0) text += ", ";
    text += std::to_string(numbers[i]);
    if (last > i) text += (last > i + 1 ? " to " : ", ") + std::to_string(numbers[last]);
    i = last + 1;
  }
  return text;
}

Doing doing(const Solution& solution, std::size_t line_index, std::size_t outlet_index) {
  const Layout& layout = solution.layout();
  const LineSolution& solved = solution.lines()[line_index];
  switch (solved.state[outlet_index]) {
    case OutletState::broken:
      return Doing::broken;
    case OutletState::closed:
      return solved.shut ? Doing::shut : Doing::capped;
    case OutletState::dry: {
      return layout.outlet_has_water(line_index, static_cast<int>(outlet_index) + 1)
                 ? Doing::dry
                 : Doing::without_water;
    }
    case OutletState::below_minimum:
      return Doing::below_minimum;
    case OutletState::above_maximum:
      return Doing::above_maximum;
    case OutletState::works:
      break;
  }
  const Outlet& kind = layout.outlet_at(line_index, static_cast<int>(outlet_index) + 1);
  return is_below(solved.pressure[outlet_index], kind.rated_pressure()) ? Doing::below_rated
                                                                        : Doing::serves;
}

std::string in_words(Doing what) {
  switch (what) {
    case Doing::broken:
      return "BROKEN, water escapes";
    case Doing::capped:
      return "capped";
    case Doing::shut:
      return "shut";
    case Doing::without_water:
      return "NO WATER, cut off";
    case Doing::dry:
      return "DRY";
    case Doing::below_minimum:
      return "DOES NOT WORK";
    case Doing::below_rated:
      return "below rated";
    case Doing::above_maximum:
      return "MISTS";
    case Doing::serves:
      return "works";
  }
  return {};
}

std::string in_a_sentence(Doing what,
                          const Outlet& kind,
                          const LineSolution& solved,
                          const std::vector<int>& outlets,
                          const Figures& figures) {
  std::string who = fmt::format(
      "{}: outlet{} {}", solved.name, outlets.size() == 1 ? "" : "s", stretches(outlets));
  const bool one = outlets.size() == 1;
  const auto extreme = [&](auto better) {
    const int found = *std::min_element(outlets.begin(), outlets.end(), [&](int a, int b) {
      return better(solved.pressure[static_cast<std::size_t>(a - 1)],
                    solved.pressure[static_cast<std::size_t>(b - 1)]);
    });
    const Pressure value = solved.pressure[static_cast<std::size_t>(found - 1)];
    return one ? fmt::format(" ({})", figures.pressure_with_unit(value))
               : fmt::format(" ({} at outlet {})", figures.pressure_with_unit(value), found);
  };
  const auto lowest = [&] { return extreme([](auto a, auto b) { return a < b; }); };
  const auto highest = [&] { return extreme([](auto a, auto b) { return a > b; }); };
  switch (what) {
    case Doing::broken: {
      Flow escaping{};
      for (const int outlet : outlets)
        escaping += solved.flow[static_cast<std::size_t>(outlet - 1)];
      return fmt::format(
          "{} {} broken, {} escapes.", who, one ? "is" : "are", figures.flow_with_unit(escaping));
    }
    case Doing::capped:
      return fmt::format("{} {} capped.", who, one ? "is" : "are");
    case Doing::shut:
      return fmt::format("{} {} shut.", who, one ? "is" : "are");
    case Doing::without_water:
      return fmt::format("{} {} cut off from the water.", who, one ? "is" : "are");
    case Doing::dry:
      return fmt::format(
          "{} {} dry: the pressure does not lift water there.", who, one ? "is" : "are");
    case Doing::below_minimum:
      return fmt::format("{} {} under the {} below which {}{}.",
                         who,
                         one ? "is" : "are",
                         figures.limit(*kind.minimum),
                         one ? "it does not work" : "they do not work",
                         lowest());
    case Doing::below_rated:
      return fmt::format("{} {} under the rated {}{}.",
                         who,
                         one ? "is" : "are",
                         figures.limit(kind.rated_pressure()),
                         lowest());
    case Doing::above_maximum:
      return fmt::format("{} {} over the {} above which {}{}.",
                         who,
                         one ? "is" : "are",
                         figures.limit(*kind.maximum),
                         one ? "it mists" : "they mist",
                         highest());
    case Doing::serves:
      break;
  }
  return who;
}

std::string in_a_word(const Fault& fault) {
  if (const auto* wrong = std::get_if<WrongOutlet>(&fault))
    return "wrong outlet" + (wrong->fitted.name.empty() ? "" : ", " + wrong->fitted.name);
  const bool says_it = std::holds_alternative<Clogged>(fault) ||
                       std::holds_alternative<Worn>(fault) ||
                       std::holds_alternative<NozzleMissing>(fault) ||
                       std::holds_alternative<RegulatorStuckOpen>(fault) ||
                       std::holds_alternative<RegulatorStuckShut>(fault);
  return says_it ? kind_of(fault) : "";
}

}  // namespace hydro
