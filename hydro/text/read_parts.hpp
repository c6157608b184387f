// read_parts.hpp: pipes, outlets and faults out of their tables.
// Not installed; for the one file that reads TOML, since its library is slow to compile.
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/text/toml_reader.hpp"

#include <map>
#include <optional>
#include <string>
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
          .body_bore = reader.quantity<Length>("body_bore")};
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

inline Fault read_fault_table(TableReader& reader, const OutletsByName& outlets) {
  const std::string line = reader.needed("line", reader.text("line"));
  const std::string kind = reader.needed("kind", reader.text("kind"));
  const auto outlet = [&] {
    return reader.needed("outlet", reader.whole_number("outlet", 1, most_outlets), 1);
  };
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
                          "exponent"})
    reader.accept(key);
  reader.mistake(
      "kind",
      fmt::format("is {}; accepted are \"head off\", \"riser sheared\", \"nozzle missing\", "
                  "\"clogged\", \"worn\", \"wrong outlet\", \"capped\", \"leak\", "
                  "\"line cut\", \"end open\", \"valve part closed\"",
                  in_quotes(kind)));
  return capped(line, 1);
}

}  // namespace hydro
