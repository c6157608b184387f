#include "hydro/diagnosis/places.hpp"

#include "hydro/physics/gauge.hpp"

#include <algorithm>
#include <cmath>

namespace hydro {

double figure_of(const Reading& reading) {
  if (is_pressure(reading.place)) return si(*reading.pressure);
  return is_flow(reading.place) ? si(flow_read(reading)) : si(*reading.speed);
}

double own_error(const Reading& reading, double figure) {
  if (is_pressure(reading.place))
    return si(reading.pressure_error.value_or(Reading::default_pressure_error));
  if (!is_flow(reading.place))
    return figure * reading.speed_error.value_or(Reading::default_speed_error);
  const double of_flow = reading.flow_error.value_or(Reading::default_flow_error);
  const double of_time =
      reading.time
          ? si(reading.time_error.value_or(Reading::default_time_error)) / si(*reading.time)
          : 0;
  return figure * std::hypot(of_flow, of_time);
}
double own_error(const Reading& reading) {
  return own_error(reading, figure_of(reading));
}

std::vector<std::size_t> outlets_before(const Layout& layout) {
  std::vector<std::size_t> before;
  std::size_t count = 0;
  for (const Line& line : layout.lines()) {
    before.push_back(count);
    count += static_cast<std::size_t>(line.outlet_count());
  }
  return before;
}

Spot spot_of(const Reading& reading, const Layout& layout) {
  Spot place{reading.place};
  if (!is_on_line(reading.place)) return place;
  place.line = layout.index_of(reading.line);
  if (is_at_outlet(reading.place))
    place.outlet =
        outlets_before(layout)[place.line] + static_cast<std::size_t>(reading.outlet - 1);
  return place;
}

double shown(const Spot& place, const SolvedBreak& solved) {
  switch (place.at) {
    case ReadingPlace::supply_gauge:
      return std::max(0.0, solved.gauge_reading);
    case ReadingPlace::after_filter:
      return std::max(0.0, solved.supply_pressure);
    case ReadingPlace::line_inlet:
      return std::max(0.0, solved.inlet_pressure[place.line]);
    case ReadingPlace::pipe:
      return std::max(0.0, solved.line_pressure[place.outlet]);
    case ReadingPlace::riser:
    case ReadingPlace::jet:
      return std::max(0.0, solved.pressure[place.outlet]);
    case ReadingPlace::flush_end:
      return std::max(0.0, solved.end_pressure[place.line]);
    case ReadingPlace::meter:
      return solved.supply_flow;
    case ReadingPlace::bucket:
      return solved.flow[place.outlet];
    case ReadingPlace::engine:
      return solved.pump_speed;
  }
  return 0;
}

std::variant<std::monostate, PressureFigure, FlowFigure> figure_at(const Reading& reading) {
  switch (reading.place) {
    case ReadingPlace::supply_gauge:
      return gauge_reading();
    case ReadingPlace::after_filter:
      return supply_pressure();
    case ReadingPlace::line_inlet:
      return PressureFigure{PressureFigure::Kind::inlet, reading.line};
    case ReadingPlace::pipe:
      return line_pressure_at(reading.line, reading.outlet);
    case ReadingPlace::riser:
    case ReadingPlace::jet:
      return pressure_at(reading.line, reading.outlet);
    case ReadingPlace::flush_end:
      return PressureFigure{PressureFigure::Kind::end, reading.line};
    case ReadingPlace::meter:
      return supply_flow();
    case ReadingPlace::bucket:
      return flow_of(reading.line, reading.outlet);
    case ReadingPlace::engine:
      break;
  }
  return std::monostate{};
}

Layout with_gauge(const Layout& layout) {
  if (layout.supply().gauge) return layout;
  Supply supply = layout.supply();
  supply.gauge = Gauge{};
  return layout.with_supply(std::move(supply));
}

}  // namespace hydro
