#include "hydro/text/supply_words.hpp"

#include "hydro/physics/choices.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>

namespace hydro {
namespace {

std::string short_words(SupplyLimit limit) {
  switch (limit) {
    case SupplyLimit::top_speed:
      return "the engine's top speed";
    case SupplyLimit::power:
      return "the engine's power";
    case SupplyLimit::least_flow:
      return "the pump's least usable flow";
    case SupplyLimit::most_flow:
      return "the pump's largest usable flow";
    case SupplyLimit::suction:
      return "the pump's suction";
    case SupplyLimit::gauge_range:
      return "the gauge's range";
  }
  return {};
}

/// Of one pump, or of the supply.
class Sentences {
 public:
  Sentences(const Supply& supply, const OperatingPoint& point, const Figures& figures)
      : supply_(supply), point_(point), figures_(figures) {}

  std::vector<std::string> on(SupplyLimit limit) const {
    if (limit == SupplyLimit::gauge_range)
      return {fmt::format("{} would have to read {}, but it ends at {}.",
                          whose("gauge"),
                          figures_.pressure_with_unit(*point_.gauge_reading),
                          figures_.limit(*supply_.gauge->range))};
    std::vector<std::string> sentences;
    for (std::size_t i = 0; i < point_.pumps.size(); ++i) {
      Supply alone = supply_;
      if (i == 1) alone.pump = supply_.second_pump;
      alone.second_pump.reset();
      OperatingPoint point = point_;
      point.pumps = {point_.pumps[i]};
      for (const SupplyLimit passed : limits_passed(alone, point))
        if (passed == limit) sentences.push_back(of_pump(limit, i, *alone.pump));
    }
    return sentences;
  }

 private:
  /// "The pump"; of a further supply "hill: the pump".
  std::string whose(const std::string& part) const {
    return supply_.name.empty() ? "The " + part : supply_.name + ": the " + part;
  }

  std::string of_pump(SupplyLimit limit, std::size_t index, const Pump& pump) const {
    const PumpDuty& duty = point_.pumps[index];
    const std::string who = whose(point_.pumps.size() == 1 ? "pump"
                                  : index == 0             ? "first pump"
                                                           : "second pump");
    switch (limit) {
      case SupplyLimit::top_speed:
        return fmt::format("{} would have to turn at {}, over its engine's top speed of {}.",
                           who,
                           figures_.speed(*duty.speed),
                           figures_.speed(*pump.top_speed));
      case SupplyLimit::power:
        return fmt::format("{} takes {}, more than the {} that its engine gives.",
                           who,
                           figures_.power(*duty.shaft_power),
                           figures_.power(*pump.power));
      case SupplyLimit::least_flow:
        if (point_.held_shut)
          return fmt::format(
              "{} gives nothing, since the other supplies hold its check valve shut: it heats the "
              "water; stop it.",
              who);
        return fmt::format(
            "{} gives {}, less than its least usable flow of {}: it heats the water; open another "
            "set or a bypass.",
            who,
            figures_.flow_with_unit(duty.flow),
            figures_.flow_with_unit(*duty.least_flow));
      case SupplyLimit::most_flow:
        return fmt::format(
            "{} gives {}, more than its largest usable flow of {}: run fewer lines at once.",
            who,
            figures_.flow_with_unit(duty.flow),
            figures_.flow_with_unit(*duty.most_flow));
      case SupplyLimit::suction:
        return fmt::format(
            "{} cavitates: it needs a net positive suction head of {} and has {}. Lower it, widen "
            "or clear its suction, or draw less.",
            who,
            figures_.height(*duty.npsh_required),
            figures_.height(*point_.npsh_available));
      case SupplyLimit::gauge_range:
        break;
    }
    return {};
  }

  const Supply& supply_;
  const OperatingPoint& point_;
  const Figures& figures_;
};

/// Then the supply is not to blame.
bool some_are_cut_off(const Solution& solution) {
  for (std::size_t l = 0; l < solution.lines().size(); ++l)
    for (std::size_t i = 0; i < solution.lines()[l].state.size(); ++i)
      if (doing(solution, l, i) == Doing::without_water) return true;
  return false;
}

}  // namespace

std::string name_of(SupplyLimit limit) {
  switch (limit) {
    case SupplyLimit::top_speed:
      return "top_speed";
    case SupplyLimit::power:
      return "power";
    case SupplyLimit::least_flow:
      return "least_flow";
    case SupplyLimit::most_flow:
      return "most_flow";
    case SupplyLimit::suction:
      return "suction";
    case SupplyLimit::gauge_range:
      return "gauge_range";
  }
  return {};
}

std::string in_words(const std::vector<SupplyLimit>& limits) {
  std::string text;
  for (const SupplyLimit limit : limits) text += (text.empty() ? "" : ", ") + short_words(limit);
  return text;
}

std::string in_words(const Supply& supply) {
  if (supply.second_pump)
    return fmt::format("two pumps in {}",
                       word_of(supply.arrangement.value_or(PumpArrangement::parallel)));
  return supply.pump      ? "a pump"
         : supply.tank    ? "a tank"
         : supply.hydrant ? "a hydrant"
                          : "a held pressure";
}

Giving giving(const Flow& flow, const Figures& figures) {
  const bool is_nothing = figures.rounds_to_nothing(flow);
  const bool is_below = flow < Flow{};
  return {is_below && !is_nothing, is_nothing, figures.flow_with_unit(is_below ? -flow : flow)};
}

std::string held_shut_in_words(const OperatingPoint& point, const Figures& figures) {
  return fmt::format("gives nothing: the other supplies hold its check valve shut, {} at rest",
                     figures.pressure_with_unit(point.source_pressure));
}

bool write_that_all_is_dry(Page& page,
                           const Solution& solution,
                           const Check& check,
                           const Figures& figures) {
  const Supply& supply = solution.layout().supply_as_it_is();
  const bool is_alone = solution.further_supplies().empty();
  if (check.all_is_shut) {
    page.paragraph("* ",
                   supply.pump && !(solution.supply().flow > Flow{})
                       ? "Everything is shut: no outlet is open. The pump runs against shut "
                         "valves and heats its water; open a set, or stop it."
                       : "Everything is shut: no outlet is open.");
    return true;
  }
  if (!check.lifts_no_water || some_are_cut_off(solution)) return false;
  std::string why;
  if (!is_alone) {
    why = "no supply lifts";
  } else if (supply.pump) {
    const std::vector<PumpDuty>& pumps = solution.supply().pumps;
    const bool series = supply.arrangement == PumpArrangement::series;
    Length at_rest{};
    for (const PumpDuty& duty : pumps)
      at_rest = series ? at_rest + duty.head : std::max(at_rest, duty.head);
    why = fmt::format("the {} head at rest, {}, does not lift",
                      pumps.size() == 1 ? "pump's" : "pumps'",
                      figures.height(at_rest));
  } else if (supply.tank) {
    why = fmt::format("the tank's level, {}, does not lift", figures.height(supply.tank->level));
  } else {
    why = fmt::format("the supply's pressure, {}, does not lift",
                      figures.pressure_with_unit(solution.supply_pressure()));
  }
  page.paragraph("* ", fmt::format("Everything is dry: {} water to any outlet.", why));
  return true;
}

void write_supply_limits(Page& page,
                         const Solution& solution,
                         const Check& check,
                         const Figures& figures) {
  const Layout& layout = solution.layout();
  const auto write = [&](const Supply& supply,
                         const OperatingPoint& point,
                         const std::vector<SupplyLimit>& limits) {
    const Sentences sentences(supply, point, figures);
    for (const SupplyLimit limit : limits) {
      // Nothing flows: said already, and the cure is another.
      if (limit == SupplyLimit::least_flow && (check.all_is_shut || check.lifts_no_water)) continue;
      for (const std::string& sentence : sentences.on(limit)) page.paragraph("* ", sentence);
    }
  };
  write(layout.supply_as_it_is(), solution.supply(), check.supply_limits);
  for (std::size_t i = 0; i < solution.further_supplies().size(); ++i)
    write(layout.further_supplies_as_they_are()[i],
          solution.further_supplies()[i],
          check.further_supply_limits[i]);
}

}  // namespace hydro
