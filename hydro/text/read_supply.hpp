// read_supply.hpp: pumps, and what else feeds the lines, out of their tables.
// Not installed; for the one file that reads TOML, since its library is slow to compile. A stand-in
// takes the place of what cannot be read, to spare the mistakes that would follow.
#pragma once

#include "hydro/physics/supply.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/text/read_parts.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace hydro {

/// @param key of the supply's own table: "supply" or "further_supply"
inline std::string ways_to_supply(const std::string& key) {
  return fmt::format("pressure = \"34 psi\", or a table [{0}.pump], [{0}.tank] or [{0}.hydrant]",
                     key);
}

inline std::vector<PumpPoint> read_pump_points(TableReader& reader, const char* key) {
  std::vector<PumpPoint> points;
  for (const auto& [flow, head] : reader.pairs<Flow, Length>(key)) points.push_back({flow, head});
  return points;
}

inline Pump read_pump(TableReader& reader) {
  Pump pump{.points = read_pump_points(reader, "points"),
            .shape = reader.choice<CurveShape>("shape"),
            .curve_speed = reader.quantity<RotationalSpeed>("curve_speed"),
            .speed = reader.quantity<RotationalSpeed>("speed"),
            .top_speed = reader.quantity<RotationalSpeed>("top_speed"),
            .least_flow = reader.quantity<Flow>("least_flow"),
            .most_flow = reader.quantity<Flow>("most_flow"),
            .npsh_required = read_pump_points(reader, "npsh_required"),
            .efficiency = reader.number("efficiency"),
            .efficiencies = {},
            .power = reader.quantity<Power>("power"),
            .droop = reader.number("droop")};
  for (const auto& [flow, efficiency] : reader.pairs<Flow, double>("efficiencies"))
    pump.efficiencies.push_back({flow, efficiency});
  if (!reader.gives("points"))
    reader.mistake("points",
                   "is not given; write two or more of the catalogue, "
                   "[[\"0 gpm\", \"150 ft\"], [\"130 gpm\", \"107.75 ft\"]]");
  for (const char* key : {"points", "npsh_required", "efficiencies"})
    if (reader.is_empty_list(key)) reader.mistake(key, "is empty, must be two or more points");
  for (const char* key : {"power", "efficiency", "efficiencies", "least_flow", "most_flow"})
    if (reader.has_mistake(key)) pump.droop.reset();  // which hangs on them
  return pump;
}

inline Suction read_suction(TableReader& reader, const std::map<std::string, Pipe>& pipes) {
  Suction suction{.lift = reader.needed("lift", reader.quantity<Length>("lift"))};
  if (const auto pipe = reader.text("pipe"))
    suction.pipe = referred(reader, "pipe", *pipe, pipes);
  else if (reader.gives("pipe"))
    suction.pipe = Pipe{};
  suction.length = reader.quantity<Length>("length");
  suction.loss_coefficient = reader.number("loss_coefficient");
  return suction;
}

inline Filter read_filter(TableReader& reader) {
  return {.loss = reader.needed("loss", reader.quantity<Pressure>("loss"), 1 * kPa),
          .at = reader.needed("at", reader.quantity<Flow>("at"), 1 * lps)};
}

inline Gauge read_gauge(TableReader& reader) {
  return {.height = reader.quantity<Length>("height"),
          .range = reader.quantity<Pressure>("range"),
          .after_filter = reader.truth("after_filter")};
}

inline Tank read_tank(TableReader& reader) {
  return {.level = reader.needed("level", reader.quantity<Length>("level"), 1 * units::m),
          .diameter = reader.quantity<Length>("diameter"),
          .area = reader.quantity<Area>("area")};
}

inline Hydrant read_hydrant(TableReader& reader) {
  return {.pressure_at_rest = reader.needed(
              "pressure_at_rest", reader.quantity<Pressure>("pressure_at_rest"), 10 * MPa),
          .residual_pressure =
              reader.needed("residual_pressure", reader.quantity<Pressure>("residual_pressure")),
          .flow = reader.needed("flow", reader.quantity<Flow>("flow"), 1 * lps)};
}

/// The units in which the supply is known: that of its pressure or, where it has none, of its head.
inline UnitSystem units_of_supply(const toml::table& supply) {
  const auto pressure = supply["pressure"].value<std::string>();
  const auto head = supply["pump"]["points"][0][1].value<std::string>();
  const auto level = supply["tank"]["level"].value<std::string>();
  const auto at_rest = supply["hydrant"]["pressure_at_rest"].value<std::string>();
  const std::string text = pressure ? *pressure
                           : head   ? *head
                           : level  ? *level
                                    : at_rest.value_or("");
  const auto has = [&](const char* unit) { return text.find(unit) != std::string::npos; };
  const bool is_length = !pressure && (head || level);
  return has("psi") || (is_length && (has("ft") || has("in"))) ? UnitSystem::us : UnitSystem::si;
}

}  // namespace hydro
