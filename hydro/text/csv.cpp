#include "hydro/text/csv.hpp"

#include "hydro/answers/comparison.hpp"
#include "hydro/text/csv_rows.hpp"
#include "hydro/text/doings.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/outlet_kinds.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// What there is of one line in one solution.
struct LineReadings {
  const LineSolution& solved;
  std::vector<Doing> doing;

  LineReadings(const Solution& solution, std::size_t line)
      : solved(solution.lines()[line]), doing(doings(solution, line)) {}

  void write(CsvRows& rows, std::size_t outlet) const {
    number(rows, outlet, "pressure", si(solved.pressure[outlet]));
    number(rows, outlet, "line_pressure", si(solved.line_pressure[outlet]));
    number(rows, outlet, "flow", si(solved.flow[outlet]));
    number(rows, outlet, "velocity", si(solved.velocity[outlet]));
    rows.cell(name_of(doing[outlet]));
  }

  void number(CsvRows& rows, std::size_t outlet, const char* name, double value) const {
    require_finite(value, [&] {
      return fmt::format("line {}: outlet {}: {}", in_quotes(solved.name), outlet + 1, name);
    });
    rows.number(value);
  }
};

constexpr auto readings = {
    "pressure_pa", "line_pressure_pa", "flow_m3_per_s", "velocity_m_per_s", "state"};

void write_header(CsvRows& rows, bool with_before) {
  for (const char* name :
       {"line", "outlet", "kind", "rated_pressure_pa", "rated_flow_m3_per_s", "distance_m"})
    rows.cell(name);
  for (const char* name : readings) rows.cell(name);
  if (with_before)
    for (const char* name : readings) rows.cell(std::string("before_") + name);
  rows.end();
}

std::string table(const Solution* before, const Solution& after) {
  const OutletKinds kinds(after);
  CsvRows rows;
  write_header(rows, before != nullptr);
  for (std::size_t line = 0; line < after.lines().size(); ++line) {
    const LineReadings now(after, line);
    std::vector<LineReadings> then;
    if (before) then.emplace_back(*before, line);
    for (std::size_t outlet = 0; outlet < now.doing.size(); ++outlet) {
      const OutletKind& kind = kinds.at(line, outlet);
      rows.cell(now.solved.name);
      rows.number(outlet + 1);
      rows.cell(kind.outlet->name);
      rows.number(si(kind.outlet->rated_pressure()));
      rows.number(si(kind.rated_flow));
      now.number(rows, outlet, "distance", si(now.solved.distance[outlet]));
      now.write(rows, outlet);
      for (const LineReadings& earlier : then) earlier.write(rows, outlet);
      rows.end();
    }
  }
  return rows.take();
}

}  // namespace

std::string to_csv(const Solution& solution) {
  return table(nullptr, solution);
}

std::string to_csv(const Solution& before, const Solution& after) {
  compare(before, after);  // refuses two that do not match
  return table(&before, after);
}

}  // namespace hydro
