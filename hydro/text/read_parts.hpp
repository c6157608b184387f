// read_parts.hpp: pipes, outlets, valves and faults out of their tables.
// Not installed; for the one file that reads TOML, since its library is slow to compile.
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/text/toml_reader.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace hydro {

using OutletsByName = std::map<std::string, Outlet>;

inline std::string names_of(const auto& definitions) {
  std::vector<std::string> names;
  for (auto it = definitions.begin(); it != definitions.end() && names.size() < listed_at_most;
       ++it)
    names.push_back(it->first);
  return list_in_quotes(names, definitions.size());
}

/// What a field names: [pipe.NAME], [outlet.NAME].
template <class T>
T referred(TableReader& reader,
           const char* key,
           const std::string& name,
           const std::map<std::string, T>& definitions) {
  const auto found = definitions.find(name);
  if (found != definitions.end()) return found->second;
  reader.mistake(key,
                 fmt::format("is {}, but there is no such [{}.NAME]; there are {}",
                             in_quotes(name),
                             key,
                             names_of(definitions)));
  return {};
}

/// A pipe by its nominal size and kind; none if they are not given.
inline std::optional<Pipe> read_nominal_pipe(TableReader& reader) {
  const auto size = reader.text("size");
  const auto kind = reader.text("kind");
  if (!reader.gives("size") && !reader.gives("kind")) return std::nullopt;
  if (reader.gives("inside_diameter"))
    reader.mistake("inside_diameter", "is given, but so is the size; take one of the two ways");
  reader.needed("size", size);
  reader.needed("kind", kind);
  const Pipe placeholder{.inside_diameter = 25 * mm, .hazen_williams = 150};
  if (!size || !kind) return placeholder;  // spares the mistakes that would follow
  try {
    return nominal_pipe(*size, *kind);
  } catch (const InvalidInput& error) {
    for (const Problem& problem : error.problems()) reader.mistake(problem.key, problem.message);
    return placeholder;
  }
}

/// What is given of the wall takes the place of the usual coefficient.
inline Pipe read_pipe(TableReader& reader) {
  Pipe pipe = read_nominal_pipe(reader).value_or(Pipe{});
  const auto bore = reader.quantity<Length>("inside_diameter");
  if (pipe.inside_diameter == Length{})
    pipe.inside_diameter = reader.needed("inside_diameter", bore);
  const auto hazen_williams = reader.number("hazen_williams");
  pipe.roughness = reader.quantity<Length>("roughness");
  pipe.darcy_factor = reader.number("darcy_factor");
  if (hazen_williams || pipe.roughness || pipe.darcy_factor) pipe.hazen_williams = hazen_williams;
  const auto rating = reader.quantity<Pressure>("pressure_rating");
  if (rating) pipe.pressure_rating = rating;
  return pipe;
}

inline std::optional<Compensating> read_compensating(TableReader& reader) {
  auto inner = reader.inside("compensating");
  if (!inner) return std::nullopt;
  const Compensating compensating{.low = inner->needed("low", inner->quantity<Pressure>("low")),
                                  .high = inner->needed("high", inner->quantity<Pressure>("high"))};
  inner->finish();
  return compensating;
}

inline std::vector<RatedPoint> read_points(TableReader& reader) {
  std::vector<RatedPoint> points;
  for (const auto& [pressure, flow] : reader.pairs<Pressure, Flow>("points"))
    points.push_back({pressure, flow});
  if (!points.empty() || !reader.gives("points")) return points;
  reader.mistake("points", "are too few, must be two or more at different pressures");
  return {{1 * bar, 1 * lph}, {2 * bar, 2 * lph}};  // spares the mistakes that would follow
}

inline Outlet read_outlet(TableReader& reader) {
  const bool by_flow = !reader.gives("nozzle") && !reader.gives("points");
  const bool at_pressure = by_flow && !reader.gives("compensating");
  const auto flow = reader.quantity<Flow>("flow");
  const auto at = reader.quantity<Pressure>("at");
  return {.flow = by_flow ? reader.needed("flow", flow) : flow.value_or(Flow{}),
          .at = at_pressure ? reader.needed("at", at) : at.value_or(Pressure{}),
          .exponent = reader.number("exponent"),
          .rated = reader.quantity<Pressure>("rated"),
          .minimum = reader.quantity<Pressure>("minimum"),
          .maximum = reader.quantity<Pressure>("maximum"),
          .compensating = read_compensating(reader),
          .nozzle = reader.quantity<Length>("nozzle"),
          .discharge_coefficient = reader.number("discharge_coefficient"),
          .points = read_points(reader),
          .body_bore = reader.quantity<Length>("body_bore"),
          .regulator = reader.quantity<Pressure>("regulator")};
}

inline Valve read_valve(TableReader& reader) {
  const auto kind = reader.choice<ValveKind>("kind");
  const auto opening = reader.choice<ValveOpening>("opening");
  const Valve valve{.kind = kind, .opening = opening.value_or(ValveOpening::open)};
  if (valve.opening != ValveOpening::shut) reader.needed("kind", kind);
  return valve;
}

/// The name of a line or a supply; empty where the key is left out.
inline std::string read_name_of_other(TableReader& reader, const char* key, const char* left_out) {
  const auto name = reader.text(key);
  if (name && name->empty())
    reader.mistake(key, fmt::format("is empty; leave the key out {}", left_out));
  return name.value_or("");
}

/// The outlet of a wrong one: a kind by its name, or described in place.
inline Outlet read_fitted(TableReader& reader, const OutletsByName& outlets) {
  if (reader.is_table("fitted")) {
    TableReader inner = *reader.inside("fitted");
    Outlet fitted = read_outlet(inner);
    inner.finish();
    return fitted;
  }
  const auto name = reader.text("fitted");
  reader.needed("fitted", name);
  const auto found = outlets.find(name.value_or(""));
  if (found != outlets.end()) return found->second;
  reader.mistake("fitted",
                 fmt::format("is {}, but there is no such [outlet.NAME]; there are {}",
                             in_quotes(name.value_or("")),
                             names_of(outlets)));
  return {.flow = 1 * lpm, .at = 1 * bar};  // spares the mistakes that would follow
}

/// The kinds of fault as they are spelt, "head off" and the rest.
template <std::size_t... I>
std::vector<std::string> kinds_of_fault(std::index_sequence<I...>) {
  return {kind_of(Fault(std::in_place_index<I>))...};
}
inline std::vector<std::string> kinds_of_fault() {
  return kinds_of_fault(std::make_index_sequence<std::variant_size_v<Fault>>());
}

/// A fault of the pump, the engine or the filter; none: the kind is another.
inline std::optional<Fault> read_fault_of_supply(TableReader& reader, const std::string& kind) {
  const auto pump = [&] { return reader.whole_number("pump", 1, 2); };
  const auto supply = [&] {
    return read_name_of_other(reader, "supply", "for a fault of the first supply");
  };
  std::optional<Fault> fault;
  if (kind == "pump worn")
    fault = pump_worn(reader.needed("share", reader.number("share"), 0.5), pump(), supply());
  else if (kind == "engine slow")
    fault = engine_slow(reader.needed("speed", reader.quantity<RotationalSpeed>("speed"), 1 * rpm),
                        pump(),
                        supply());
  else if (kind == "filter dirty")
    fault =
        filter_dirty(reader.needed("loss", reader.quantity<Pressure>("loss"), 1 * kPa), supply());
  if (fault && reader.gives("line")) {
    reader.accept("line");
    reader.mistake("line",
                   fmt::format("is given, but {} is a fault of the supply; leave the key out",
                               in_quotes(kind)));
  }
  return fault;
}

inline Fault read_fault_table(TableReader& reader, const OutletsByName& outlets) {
  const std::string kind = reader.text("kind").value_or("");
  if (const auto fault = read_fault_of_supply(reader, kind)) return *fault;
  const std::vector<std::string> kinds = kinds_of_fault();
  const bool is_known = std::ranges::find(kinds, kind) != kinds.end();
  const auto line_given = reader.text("line");
  const std::string line = is_known ? reader.needed("line", line_given) : line_given.value_or("");
  const auto outlet_if_any = [&] { return reader.whole_number("outlet", 1, most_outlets); };
  const auto outlet = [&] { return reader.needed("outlet", outlet_if_any(), 1); };
  const auto place = [&] { return reader.needed("place", reader.quantity<Length>("place")); };
  const auto share = [&] { return reader.needed("share", reader.number("share"), 0.5); };
  const auto loss = [&] { return reader.number("loss_coefficient"); };

  if (kind == "head off") return head_off(line, outlet(), loss());
  if (kind == "riser sheared")
    return riser_sheared(line, outlet(), reader.quantity<Length>("stub"), loss());
  if (kind == "nozzle missing")
    return nozzle_missing(
        line, outlet(), reader.quantity<Length>("bore"), reader.number("discharge_coefficient"));
  if (kind == "clogged") return clogged(line, outlet(), share());
  if (kind == "worn") return worn(line, outlet(), share());
  if (kind == "wrong outlet") return wrong_outlet(line, outlet(), read_fitted(reader, outlets));
  if (kind == "capped") return capped(line, outlet());
  if (kind == "leak")
    return leak(line,
                place(),
                reader.needed("flow", reader.quantity<Flow>("flow")),
                reader.needed("at", reader.quantity<Pressure>("at")),
                reader.number("exponent"));
  if (kind == "line cut") return line_cut(line, place());
  if (kind == "end open") return end_open(line);
  if (kind == "valve part closed")
    return valve_part_closed(line, reader.needed("loss_coefficient", loss(), 1.0));
  if (kind == "valve left open") return valve_left_open(line);
  if (kind == "regulator stuck open") return regulator_stuck_open(line, outlet_if_any());
  if (kind == "regulator stuck shut") return regulator_stuck_shut(line, outlet_if_any());

  for (const char* key : {"outlet",
                          "place",
                          "loss_coefficient",
                          "stub",
                          "bore",
                          "discharge_coefficient",
                          "share",
                          "fitted",
                          "flow",
                          "at",
                          "exponent",
                          "pump",
                          "speed",
                          "loss",
                          "supply"})
    reader.accept(key);
  reader.mistake("kind",
                 fmt::format("{}; accepted are \"{}\"",
                             reader.gives("kind") ? "is " + in_quotes(kind) : "is not given",
                             fmt::join(kinds, "\", \"")));
  return capped(line, 1);
}

}  // namespace hydro
