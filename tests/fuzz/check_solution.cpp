#include "check_solution.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/text/csv.hpp"
#include "hydro/text/drawing.hpp"
#include "hydro/text/json.hpp"
#include "hydro/text/report.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace hydro {
namespace {

[[noreturn]] void end(const std::string& why) {
  std::fprintf(stderr, "%s\n", why.c_str());
  std::abort();
}

template <class Q>
void finite(const char* what, const Q& quantity) {
  if (!std::isfinite(si(quantity))) end(std::string(what) + " is not finite");
}
template <class Q>
void finite(const char* what, const std::optional<Q>& quantity) {
  if (quantity) finite(what, *quantity);
}
template <class Q>
void all_finite(const char* what, const Series<Q>& series, std::size_t outlets) {
  if (series.size() != outlets) end(std::string(what) + " is not known at every outlet");
  for (const Q& quantity : series) finite(what, quantity);
}

void examine(const LineSolution& line, std::size_t outlets) {
  all_finite("distance", line.distance, outlets);
  all_finite("pressure", line.pressure, outlets);
  all_finite("line_pressure", line.line_pressure, outlets);
  all_finite("flow", line.flow, outlets);
  all_finite("velocity", line.velocity, outlets);
  for (const Flow& flow : line.flow)
    if (!(si(flow) >= 0)) end("an outlet takes in water");
  finite("inflow", line.inflow);
  finite("end_flow", line.end_flow);
  finite("inlet_velocity", line.inlet_velocity);
  finite("inlet_pressure", line.inlet_pressure);
  finite("end_pressure", line.end_pressure);
  for (const Opening& opening : line.openings) {
    finite("opening.line_pressure", opening.line_pressure);
    finite("opening.flow", opening.flow);
    if (!(si(opening.flow) >= 0)) end("an opening takes in water");
  }
  for (const PipeExtremes& pipe : line.pipes) {
    finite("highest_velocity", pipe.highest_velocity);
    finite("lowest_pressure", pipe.lowest_pressure);
    finite("highest_pressure", pipe.highest_pressure);
  }
  if (line.regulator) {
    finite("regulator.pressure", line.regulator->pressure);
    finite("regulator.drop", line.regulator->drop);
  }
}

void examine(const OperatingPoint& supply) {
  finite("supply.flow", supply.flow);
  finite("supply.pressure", supply.pressure);
  finite("source_pressure", supply.source_pressure);
  finite("gauge_reading", supply.gauge_reading);
  finite("filter_loss", supply.filter_loss);
  finite("suction_loss", supply.suction_loss);
  finite("npsh_available", supply.npsh_available);
  for (const PumpDuty& pump : supply.pumps) {
    finite("pump.flow", pump.flow);
    finite("pump.head", pump.head);
    finite("pump.speed", pump.speed);
    finite("water_power", pump.water_power);
    finite("shaft_power", pump.shaft_power);
  }
}

}  // namespace

std::optional<Solution> solved_soundly(const Layout& layout) {
  try {
    Solution solution = solve(layout);
    if (!solution.residuals().are_met()) end("the residuals are not met");
    if (solution.lines().size() != layout.lines().size()) end("a line is missing");
    for (std::size_t i = 0; i < layout.lines().size(); ++i)
      examine(solution.lines()[i], static_cast<std::size_t>(layout.lines()[i].outlet_count()));
    examine(solution.supply());
    for (const OperatingPoint& further : solution.further_supplies()) examine(further);
    return solution;
  } catch (const NotSolved& error) {
    if (error.unfinished().residuals().are_met()) end("not solved, but the residuals are met");
    if (std::getenv("HYDRO_FUZZ_SOLVE_ALL")) end(error.what());
    return std::nullopt;
  }
}

void write_everything(const Solution& solution) {
  for (const std::string& text :
       {report(solution), to_csv(solution), to_json(solution), to_svg(solution)})
    if (text.empty()) end("nothing was written");
}

}  // namespace hydro
