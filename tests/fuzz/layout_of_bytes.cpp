#include "layout_of_bytes.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace hydro {
namespace {

class Builder {
 public:
  explicit Builder(Bytes& bytes) : bytes_(bytes) {}

  Layout build() {
    Supply supply = any_supply();
    Water water = any_water();
    Site site;
    if (bytes_.chance(0.1)) site.altitude = bytes_.between(-500, 6000) * units::m;
    for (int left = bytes_.byte() % 3; left > 0; --left) {
      further_.push_back(any_supply());
      further_.back().name = "supply " + std::to_string(further_.size());
    }
    const int lines = bytes_.byte() % 12 + 1;
    for (int i = 0; i < lines; ++i) {
      lines_.push_back(any_line());
      lines_.back().name = "line " + std::to_string(i);
    }
    for (Line& line : lines_) connect(line);
    const std::vector<WateringSet> sets = any_sets();
    part_what_does_not_fit(supply, sets);
    Layout layout(supply, lines_, water, site, sets, further_);
    if (!sets.empty() && bytes_.chance(0.8)) layout = layout.watering({sets.front().name});
    std::vector<Fault> faults;
    for (int left = bytes_.byte() % 5; left > 0; --left) faults.push_back(any_fault());
    return layout.with_possible_faults(faults).layout;
  }

 private:
  /// As it is met in fields, or anywhere in the accepted interval.
  double usual_or_any(double low, double high, double lowest, double highest) {
    return bytes_.chance(0.15) ? bytes_.log_between(lowest, highest)
                               : bytes_.log_between(low, high);
  }
  static constexpr double least_kpa = 0.001, most_kpa = 10000;
  Pressure any_pressure() { return usual_or_any(10, 600, least_kpa, most_kpa) * kPa; }
  /// Of this one, in the accepted interval.
  Pressure any_share(double least, double most, const Pressure& pressure) {
    const double kpa = bytes_.log_between(least, most) * (pressure / kPa);
    return std::clamp(kpa, least_kpa, most_kpa) * kPa;
  }
  Flow any_flow() { return usual_or_any(1, 4000, 0.001, 3.6e6) * lph; }
  Length any_length() { return usual_or_any(0.3, 300, 0.001, 1e5) * units::m; }
  Length any_height() {
    return bytes_.chance(0.05) ? bytes_.between(-10000, 10000) * units::m
                               : bytes_.between(-20, 20) * units::m;
  }
  RotationalSpeed any_speed() { return usual_or_any(800, 3600, 1, 1e5) * rpm; }

  Water any_water() {
    if (!bytes_.chance(0.1)) return {};
    Water water;
    if (bytes_.chance(0.5)) water.density = bytes_.between(900, 1100) * kg_per_m3;
    if (bytes_.chance(0.5)) water.kinematic_viscosity = bytes_.log_between(0.01, 100) * mm2_per_s;
    return water;
  }

  Pipe any_pipe() {
    Pipe pipe{.inside_diameter = usual_or_any(10, 200, 0.1, 10000) * mm};
    switch (bytes_.byte() % 4) {
      case 0:
        pipe.hazen_williams = bytes_.between(10, 200);
        break;
      case 1:
        pipe.roughness = bytes_.between(0, 0.05) * pipe.inside_diameter;
        if (*pipe.roughness > 100 * mm) pipe.roughness = 100 * mm;
        break;
      case 2:
        pipe.darcy_factor = bytes_.log_between(0.001, 1);
        break;
      default:
        pipe.hazen_williams = 150;
    }
    return pipe;
  }

  Outlet any_outlet() {
    Outlet outlet;
    switch (bytes_.byte() % 5) {
      case 0:
        outlet = {.flow = any_flow(), .compensating = Compensating{.low = any_pressure()}};
        outlet.compensating->high = any_share(1.001, 100, outlet.compensating->low);
        break;
      case 1:
        outlet = {.rated = any_pressure(),
                  .nozzle = bytes_.log_between(0.1, 100) * mm,
                  .discharge_coefficient = bytes_.between(0.1, 1)};
        break;
      case 2: {
        const Pressure low = any_pressure();
        const Flow flow = any_flow();
        outlet = {.rated = low, .points = {{low, flow}}};
        const double ratio = bytes_.log_between(1.01, 10);
        outlet.points.push_back({ratio * low, std::pow(ratio, bytes_.between(0.11, 1.49)) * flow});
        break;
      }
      default:
        outlet = {.flow = any_flow(), .at = any_pressure(), .exponent = bytes_.between(0, 1.5)};
    }
    if (bytes_.chance(0.3) || outlet.exponent.value_or(1) < 0.1)
      outlet.minimum = any_share(0.001, 1, outlet.rated_pressure());
    if (bytes_.chance(0.2)) outlet.maximum = any_share(1, 10, outlet.rated_pressure());
    if (bytes_.chance(0.2)) outlet.regulator = any_pressure();
    if (bytes_.chance(0.3))
      outlet.body_bore = bytes_.log_between(outlet.nozzle.value_or(0.1 * mm) / mm, 200) * mm;
    return outlet;
  }

  Riser any_riser() {
    Riser riser;
    if (bytes_.chance(0.5)) riser.height = bytes_.between(0, 3) * units::m;
    if (bytes_.chance(0.05)) riser.height = 30 * units::m;
    if (!bytes_.chance(0.4)) return riser;
    const Pipe pipe = any_pipe();
    riser.inside_diameter = pipe.inside_diameter;
    riser.hazen_williams = pipe.hazen_williams;
    riser.roughness = pipe.roughness;
    riser.darcy_factor = pipe.darcy_factor;
    if (bytes_.chance(0.5)) riser.loss_coefficient = bytes_.log_between(0.01, 1e6);
    return riser;
  }

  Valve any_valve() {
    if (bytes_.chance(0.2)) return {.opening = ValveOpening::shut};
    using enum ValveOpening;
    return {ValveKind::gate,
            bytes_.any_of(std::array{open, quarter_closed, half_closed, three_quarters_closed})};
  }

  Line any_line() {
    Line line{.pipe = any_pipe()};
    if (bytes_.chance(0.7)) {
      give_outlets(line);
    } else {
      line.length = any_length();
    }
    if (line.elevations.empty() && bytes_.chance(0.3)) line.ground_rise = any_height();
    if (bytes_.chance(0.2)) line.valve = any_valve();
    if (bytes_.chance(0.15)) line.check_valve = true;
    if (bytes_.chance(0.15)) line.regulator = usual_or_any(10, 400, 1, 10000) * kPa;
    if (bytes_.chance(0.15)) line.loss_coefficient = bytes_.log_between(0.01, 1e9);
    if (bytes_.chance(0.2)) {
      const Length whole = line.whole_length();
      line.reaches.push_back({any_pipe(), bytes_.between(0.01, 0.6) * whole});
      if (bytes_.chance(0.3)) line.reaches.push_back({any_pipe(), bytes_.between(0.7, 1) * whole});
    }
    return line;
  }

  void give_outlets(Line& line) {
    const int count = bytes_.chance(0.03) ? bytes_.whole(1, 200) : bytes_.byte() % 30 + 1;
    const Length spacing = usual_or_any(0.3, 15, 0.001, 100) * units::m;
    if (bytes_.chance(0.2)) {
      Length place{};
      for (int i = 0; i < std::min(count, 30); ++i) {
        place += bytes_.between(0, 2) * spacing;
        line.outlets.push_back({place, any_outlet()});
      }
      if (place == Length{}) line.length = spacing;
    } else {
      line.outlet = any_outlet();
      line.count = count;
      line.spacing = spacing;
      if (bytes_.chance(0.1)) line.first_at = bytes_.between(0, 2) * spacing;
    }
    if (bytes_.chance(0.2)) line.length = 1.1 * line.whole_length();
    line.riser = any_riser();
    if (bytes_.chance(0.1))
      for (int i = 0; i < line.outlet_count(); ++i) line.elevations.push_back(any_height());
    if (bytes_.chance(0.1)) line.outlet_loss_coefficient = bytes_.log_between(0.001, 1e9);
    if (bytes_.chance(0.1)) line.connection_length = bytes_.between(0, 100) * units::m;
  }

  const Line& any_of_the_lines() {
    return lines_[static_cast<std::size_t>(bytes_.byte()) % lines_.size()];
  }
  Length any_place(const Line& line) { return bytes_.between(0, 1) * line.whole_length(); }

  /// To a supply or another line, and its far end maybe to one more.
  void connect(Line& line) {
    const int where = bytes_.byte() % 8;
    if (where == 7 && !further_.empty()) line.fed_by = further_.back().name;
    if (where >= 1 && where < 7 && &line != &lines_.front()) {
      const Line& feeder = any_of_the_lines();
      line.fed_by = feeder.name;
      if (where < 3) line.tap = any_place(feeder);
      if (where == 3 && feeder.outlet_count() > 0)
        line.tap_outlet = bytes_.whole(1, feeder.outlet_count());
    }
    if (!bytes_.chance(0.3)) return;
    const Line& joined = any_of_the_lines();
    line.joins = joined.name;
    line.ground_rise.reset();
    line.elevations.clear();
    const int end = bytes_.byte() % 3;
    if (end == 1) line.joins_at = any_place(joined);
    if (end == 2 && joined.outlet_count() > 0)
      line.joins_outlet = bytes_.whole(1, joined.outlet_count());
  }

  /// Takes lines that a mistake is in off what they are connected to.
  void part_what_does_not_fit(const Supply& supply, const std::vector<WateringSet>& sets) {
    for (std::size_t round = 0; round < lines_.size(); ++round) {
      const std::vector<std::string> places = places_of(lines_);
      bool any = false;
      for (const Problem& problem : problems(supply, lines_, {}, {}, sets, {}, further_))
        for (std::size_t i = 0; i < places.size(); ++i)
          if (problem.place == places[i]) {
            Line& line = lines_[i];
            any = true;
            if (line.elevations.empty() && !line.joins.empty()) line.ground_rise.reset();
            (round % 2 == 0 && !line.joins.empty() ? line.joins : line.fed_by).clear();
            if (line.joins.empty()) line.joins_at.reset(), line.joins_outlet.reset();
            if (line.fed_by.empty()) line.tap.reset(), line.tap_outlet.reset();
          }
      if (!any) return;
    }
  }

  Pump any_pump() {
    const Flow flow = usual_or_any(0.1, 30, 0.0001, 1e4) * lps;
    const Length head = usual_or_any(5, 100, 0.01, 2000) * units::m;
    Pump pump{.points = {{Flow{}, bytes_.between(1.05, 2.4) * head},
                         {flow, head},
                         {bytes_.between(1.1, 3) * flow, bytes_.between(0, 0.9) * head}}};
    if (bytes_.chance(0.2)) pump.points.pop_back();
    if (bytes_.chance(0.4)) pump.shape = CurveShape::quadratic;
    if (!bytes_.chance(0.8)) return pump;
    pump.curve_speed = any_speed();
    if (bytes_.chance(0.5)) pump.speed = any_speed();
    if (bytes_.chance(0.3)) pump.top_speed = any_speed();
    if (!bytes_.chance(0.5)) return pump;
    pump.least_flow = bytes_.between(0, 0.5) * flow;
    pump.most_flow = bytes_.between(0.6, 1) * flow;
    pump.efficiency = bytes_.between(0.01, 1);
    pump.power = usual_or_any(1, 50, 0.001, 1e5) * kW;
    if (bytes_.chance(0.5)) pump.droop = bytes_.between(0, 0.5);
    if (bytes_.chance(0.3))
      pump.npsh_required = {{0.1 * flow, 1 * units::m}, {flow, bytes_.between(1, 20) * units::m}};
    return pump;
  }

  Supply any_supply() {
    Supply supply;
    switch (bytes_.byte() % 4) {
      case 0:
        supply.pressure = bytes_.chance(0.1) ? 0 * kPa : any_pressure();
        break;
      case 1:
        supply.tank = Tank{.level = usual_or_any(0.1, 40, 0.001, 1000) * units::m};
        break;
      case 2:
        supply.hydrant = Hydrant{.pressure_at_rest = any_pressure(), .flow = any_flow()};
        supply.hydrant->residual_pressure =
            bytes_.between(0, 0.9999) * supply.hydrant->pressure_at_rest;
        break;
      default:
        give_pumps(supply);
    }
    if (bytes_.chance(0.3)) supply.filter = Filter{any_pressure(), any_flow()};
    if (bytes_.chance(0.3))
      supply.gauge = Gauge{.height = bytes_.between(-100, 100) * units::m,
                           .after_filter = supply.filter && bytes_.chance(0.5)};
    if (bytes_.chance(0.5)) supply.elevation = any_height();
    return supply;
  }

  void give_pumps(Supply& supply) {
    supply.pump = any_pump();
    if (bytes_.chance(0.3)) {
      supply.second_pump = bytes_.chance(0.5) ? *supply.pump : any_pump();
      if (bytes_.chance(0.5))
        supply.arrangement =
            bytes_.any_of(std::array{PumpArrangement::parallel, PumpArrangement::series});
    }
    if (!bytes_.chance(0.5)) return;
    supply.suction = Suction{.lift = bytes_.between(-30, 10) * units::m};
    if (!bytes_.chance(0.6)) return;
    supply.suction->pipe = any_pipe();
    supply.suction->length = bytes_.between(0, 100) * units::m;
    if (bytes_.chance(0.5)) supply.suction->loss_coefficient = bytes_.log_between(0.01, 10000);
  }

  std::vector<WateringSet> any_sets() {
    std::vector<WateringSet> sets;
    for (int left = bytes_.chance(0.3) ? bytes_.byte() % 3 : 0; left > 0; --left) {
      WateringSet set{.name = "set " + std::to_string(sets.size())};
      for (const Line& line : lines_)
        if (bytes_.chance(0.5)) set.lines.push_back(line.name);
      if (!set.lines.empty()) sets.push_back(std::move(set));
    }
    return sets;
  }

  Fault any_fault() {
    const Line& on = any_of_the_lines();
    const std::string& line = on.name;
    const int outlet = on.outlet_count() > 0 ? bytes_.whole(1, on.outlet_count()) : 1;
    const int pump = bytes_.byte() % 2 + 1;
    const std::string supply =
        !further_.empty() && bytes_.chance(0.3) ? further_.back().name : std::string();
    std::optional<double> loss;
    if (bytes_.chance(0.3)) loss = bytes_.log_between(0.01, 1e6);
    switch (bytes_.byte() % 17) {
      case 0:
        return head_off(line, outlet, loss);
      case 1:
        return riser_sheared(line, outlet, bytes_.between(0, 1) * on.riser.height, loss);
      case 2:
        return nozzle_missing(
            line, outlet, bytes_.log_between(0.1, 200) * mm, bytes_.between(0.1, 1));
      case 3:
        return clogged(line, outlet, bytes_.between(1e-9, 0.999999));
      case 4:
        return worn(line, outlet, bytes_.between(1e-9, 10));
      case 5:
        return wrong_outlet(line, outlet, any_outlet());
      case 6:
        return capped(line, outlet);
      case 7:
        return leak(line, any_place(on), any_flow(), any_pressure(), bytes_.between(0.1, 1.5));
      case 8:
        return line_cut(line, any_place(on));
      case 9:
        return end_open(line);
      case 10:
        return valve_part_closed(line, bytes_.log_between(1e-9, 1e9));
      case 11:
        return valve_left_open(line);
      case 12:
        return bytes_.chance(0.5) ? regulator_stuck_open(line, outlet) : regulator_stuck_open(line);
      case 13:
        return bytes_.chance(0.5) ? regulator_stuck_shut(line, outlet) : regulator_stuck_shut(line);
      case 14:
        return pump_worn(bytes_.between(1e-9, 0.999999), pump, supply);
      case 15:
        return engine_slow(any_speed(), pump, supply);
      default:
        return filter_dirty(any_pressure(), supply);
    }
  }

  Bytes& bytes_;
  std::vector<Line> lines_;
  std::vector<Supply> further_;
};

}  // namespace

Layout layout_of_bytes(Bytes& bytes) {
  return Builder(bytes).build();
}

}  // namespace hydro
