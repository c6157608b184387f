#include "hydro/text/words.hpp"

#include "hydro/answers/check.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace hydro {
namespace {

/// "outlets 3 to 10, 12"; of very many stretches the first ones.
std::string numbers(const std::vector<int>& outlets) {
  constexpr int most_stretches = 12;
  std::string text = outlets.size() == 1 ? "outlet " : "outlets ";
  int stretches = 0;
  for (std::size_t i = 0; i < outlets.size(); ++stretches) {
    if (stretches == most_stretches) return text + fmt::format(" and {} more", outlets.size() - i);
    std::size_t last = i;
    while (last + 1 < outlets.size() && outlets[last + 1] == outlets[last] + 1) ++last;
    if (i > 0) text += ", ";
    text += std::to_string(outlets[i]);
    if (last > i) text += (last > i + 1 ? " to " : ", ") + std::to_string(outlets[last]);
    i = last + 1;
  }
  return text;
}

}  // namespace

Doing doing(const Line& line, const LineSolution& solved, std::size_t index) {
  switch (solved.state[index]) {
    case OutletState::broken:
      return Doing::broken;
    case OutletState::closed:
      return Doing::capped;
    case OutletState::dry:
      return Doing::dry;
    case OutletState::below_minimum:
      return Doing::below_minimum;
    case OutletState::above_maximum:
      return Doing::above_maximum;
    case OutletState::works:
      break;
  }
  return is_below(solved.pressure[index], line.outlet->rated_pressure()) ? Doing::below_rated
                                                                         : Doing::serves;
}

std::string in_words(Doing what) {
  switch (what) {
    case Doing::broken:
      return "BROKEN, water escapes";
    case Doing::capped:
      return "capped";
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
                          const Line& line,
                          const LineSolution& solved,
                          const std::vector<int>& outlets,
                          const Figures& figures) {
  std::string who = fmt::format("{}: {}", line.name, numbers(outlets));
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
    case Doing::dry:
      return fmt::format(
          "{} {} dry: the pressure does not lift water there.", who, one ? "is" : "are");
    case Doing::below_minimum:
      return fmt::format("{} {} under the {} below which {}{}.",
                         who,
                         one ? "is" : "are",
                         figures.limit(*line.outlet->minimum),
                         one ? "it does not work" : "they do not work",
                         lowest());
    case Doing::below_rated:
      return fmt::format("{} {} under the rated {}{}.",
                         who,
                         one ? "is" : "are",
                         figures.limit(line.outlet->rated_pressure()),
                         lowest());
    case Doing::above_maximum:
      return fmt::format("{} {} over the {} above which {}{}.",
                         who,
                         one ? "is" : "are",
                         figures.limit(*line.outlet->maximum),
                         one ? "it mists" : "they mist",
                         highest());
    case Doing::serves:
      break;
  }
  return who;
}

}  // namespace hydro
