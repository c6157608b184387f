#include "changed_input.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>
#include <vector>

namespace hydro {
namespace {

/// All that a layout is described by.
struct Parts {
  Supply supply;
  std::vector<Line> lines;
  std::vector<Supply> further;
  std::vector<Fault> faults;
};

template <class Value>
void scale(std::optional<Value>& value, double factor) {
  if (value) *value *= factor;
}

class Change {
 public:
  Change(const Layout& layout, const NamedInput& named, double change)
      : layout_(layout),
        named_(named),
        change_(change),
        factor_(1 + change),
        parts_{layout.supply(), layout.lines(), layout.further_supplies(), layout.faults()} {}

  std::optional<Layout> layout() {
    const bool is_of_a_supply = named_.input >= Input::supply_pressure;
    if (!(is_of_a_supply ? change_supply() : change_line())) return std::nullopt;
    Layout changed(parts_.supply,
                   parts_.lines,
                   layout_.water(),
                   layout_.site(),
                   layout_.sets(),
                   parts_.further);
    if (!layout_.running_sets().empty()) changed = changed.watering(layout_.running_sets());
    return changed.with_faults(parts_.faults);
  }

 private:
  bool change_line() {
    index_ = layout_.index_of(named_.at);
    Line& line = parts_.lines[index_];
    const std::size_t reach = static_cast<std::size_t>(named_.number - 1);
    Pipe& pipe = named_.number > 0 && named_.number <= static_cast<int>(line.reaches.size())
                     ? line.reaches[reach].pipe
                     : line.pipe;
    switch (named_.input) {
      case Input::inside_diameter:
        pipe.inside_diameter *= factor_;
        return true;
      case Input::hazen_williams:
        scale(pipe.hazen_williams, factor_);
        return true;
      case Input::roughness:
        scale(pipe.roughness, factor_);
        return true;
      case Input::darcy_factor:
        scale(pipe.darcy_factor, factor_);
        return true;
      case Input::length:
        return named_.number == 0 && stretch(line);
      case Input::loss_coefficient:
        return change_inlet(line);
      case Input::outlet_loss_coefficient:
        scale(line.outlet_loss_coefficient, factor_);
        return true;
      case Input::ground_rise:
        return raise_far_end(line);
      case Input::regulator:
        scale(line.regulator, factor_);
        return true;
      case Input::leak:
        for (Fault& fault : parts_.faults)
          if (auto* leak = std::get_if<Leak>(&fault); leak && leak->line == line.name)
            leak->flow *= factor_;
        return true;
      case Input::riser_height:
        return raise_outlets(line);
      case Input::riser_inside_diameter:
        scale(line.riser.inside_diameter, factor_);
        return true;
      case Input::riser_hazen_williams:
        scale(line.riser.hazen_williams, factor_);
        return true;
      case Input::riser_roughness:
        scale(line.riser.roughness, factor_);
        return true;
      case Input::riser_darcy_factor:
        scale(line.riser.darcy_factor, factor_);
        return true;
      case Input::riser_loss_coefficient:
        return change_riser_fittings(line);
      case Input::flow:
        return change_flow(outlet(line));
      case Input::exponent: {
        Outlet& kind = outlet(line);
        if (kind.nozzle || !kind.points.empty() || kind.compensating) return false;
        kind.exponent = kind.exponent.value_or(0.5) * factor_;
        return true;
      }
      case Input::outlet_regulator:
        scale(outlet(line).regulator, factor_);
        return true;
      case Input::ground:
        return raise_ground(line);
      default:
        return false;
    }
  }

  bool stretch(Line& line) {
    const auto scale_place = [&](Length& place) { place *= factor_; };
    scale(line.length, factor_);
    scale(line.spacing, factor_);
    scale(line.first_at, factor_);
    scale(line.connection_length, factor_);
    for (PlacedOutlet& placed : line.outlets) scale_place(placed.place);
    for (PipeReach& reach : line.reaches) scale_place(reach.to);
    for (Line& other : parts_.lines) {
      if (other.fed_by == line.name) scale(other.tap, factor_);
      if (other.joins == line.name) scale(other.joins_at, factor_);
    }
    for (Fault& fault : parts_.faults) {
      if (line_of(fault) != line.name) continue;
      if (auto* leak = std::get_if<Leak>(&fault)) scale_place(leak->place);
      if (auto* cut = std::get_if<LineCut>(&fault)) scale_place(cut->place);
    }
    return true;
  }

  bool change_inlet(Line& line) {
    if (line.valve) return false;
    scale(line.loss_coefficient, factor_);
    for (Fault& fault : parts_.faults)
      if (auto* valve = std::get_if<ValvePartClosed>(&fault); valve && valve->line == line.name)
        valve->loss_coefficient *= factor_;
    return true;
  }

  bool raise_far_end(Line& line) {
    if (!line.elevations.empty()) return false;
    for (std::size_t i = 0; i < parts_.lines.size(); ++i)
      if (hangs_on_it(i) && !parts_.lines[i].elevations.empty()) return false;
    line.ground_rise = line.ground_rise.value_or(Length{}) + change_ * units::m;
    return true;
  }
  bool hangs_on_it(std::size_t line) const {
    for (auto feeder = layout_.feeder_of(line); feeder; feeder = layout_.feeder_of(*feeder))
      if (*feeder == index_) return true;
    return false;
  }

  bool raise_outlets(Line& line) {
    for (Fault& fault : parts_.faults)
      if (auto* sheared = std::get_if<RiserSheared>(&fault); sheared && sheared->line == line.name)
        sheared->stub = open_riser(fault, line)->height + change_ * units::m;
    line.riser.height += change_ * units::m;
    return true;
  }

  bool change_riser_fittings(Line& line) {
    for (Fault& fault : parts_.faults) {
      if (line_of(fault) != line.name) continue;
      const auto open = open_riser(fault, line);
      if (auto* off = std::get_if<HeadOff>(&fault))
        off->loss_coefficient = open->loss_coefficient * factor_;
      if (auto* sheared = std::get_if<RiserSheared>(&fault))
        sheared->loss_coefficient = open->loss_coefficient * factor_;
    }
    scale(line.riser.loss_coefficient, factor_);
    return true;
  }

  /// The kind that stands at the outlet, as a kind of its own.
  Outlet& outlet(Line& line) {
    for (Fault& fault : parts_.faults)
      if (auto* wrong = std::get_if<WrongOutlet>(&fault);
          wrong && wrong->line == line.name && wrong->outlet == named_.number)
        return wrong->fitted;
    if (line.outlets.empty()) {
      std::vector<PlacedOutlet> placed;
      for (int number = 1; number <= line.outlet_count(); ++number)
        placed.push_back({line.place_of(number), line.kind_of(number)});
      line.outlets = std::move(placed);
      line.outlet.reset();
      line.count.reset();
      line.spacing.reset();
      line.first_at.reset();
    }
    return line.outlets[static_cast<std::size_t>(named_.number - 1)].outlet;
  }

  bool change_flow(Outlet& kind) {
    for (Fault& fault : parts_.faults)
      if (auto* missing = std::get_if<NozzleMissing>(&fault);
          missing && missing->line == named_.at && missing->outlet == named_.number) {
        missing->bore = *open_body(fault, layout_.line(named_.at))->bore * std::sqrt(factor_);
        return true;
      }
    kind.flow *= factor_;
    if (kind.nozzle) *kind.nozzle *= std::sqrt(factor_);
    for (RatedPoint& point : kind.points) point.flow *= factor_;
    return true;
  }

  /// Of a line on which nothing hangs, so that nothing lies between its outlets whose ground would
  /// go up with them.
  bool raise_ground(Line& line) {
    for (const Line& other : parts_.lines)
      if (other.fed_by == line.name || other.joins == line.name) return false;
    if (!line.joins.empty()) return false;
    for (const Fault& fault : parts_.faults)
      if (line_of(fault) == line.name &&
          (std::holds_alternative<Leak>(fault) || std::holds_alternative<LineCut>(fault) ||
           std::holds_alternative<EndOpen>(fault)))
        return false;
    std::vector<Length> elevations;
    for (int number = 1; number <= line.outlet_count(); ++number)
      elevations.push_back(layout_.outlet_elevation(index_, number));
    elevations[static_cast<std::size_t>(named_.number - 1)] += change_ * units::m;
    line.elevations = std::move(elevations);
    line.ground_rise.reset();
    return true;
  }

  bool change_supply() {
    Supply& supply = named_.at.empty()
                         ? parts_.supply
                         : *std::ranges::find(parts_.further, named_.at, &Supply::name);
    const auto is_of_it = [&](const Fault& fault) {
      return is_of_the_supply(fault) && supply_of(fault) == named_.at;
    };
    switch (named_.input) {
      case Input::supply_pressure:
        scale(supply.pressure, factor_);
        return true;
      case Input::tank_level:
        supply.tank->level += change_ * units::m;
        return true;
      case Input::hydrant_at_rest:
        supply.hydrant->pressure_at_rest *= factor_;
        return true;
      case Input::hydrant_residual:
        supply.hydrant->residual_pressure *= factor_;
        return true;
      case Input::hydrant_flow:
        supply.hydrant->flow *= factor_;
        return true;
      case Input::pump_head:
        for (PumpPoint& point : pump(supply).points) point.head *= factor_;
        return true;
      case Input::pump_speed: {
        for (Fault& fault : parts_.faults)
          if (auto* slow = std::get_if<EngineSlow>(&fault);
              slow && is_of_it(fault) && slow->pump.value_or(1) == named_.number)
            slow->speed *= factor_;
        Pump& its_pump = pump(supply);
        if (!its_pump.curve_speed) its_pump.curve_speed = 2000 * rpm;
        its_pump.speed = its_pump.speed.value_or(*its_pump.curve_speed) * factor_;
        return true;
      }
      case Input::suction_lift:
        supply.suction->lift += change_ * units::m;
        return true;
      case Input::suction_loss:
        scale(supply.suction->length, factor_);
        scale(supply.suction->loss_coefficient, factor_);
        return true;
      case Input::filter_loss:
        for (Fault& fault : parts_.faults)
          if (auto* dirty = std::get_if<FilterDirty>(&fault); dirty && is_of_it(fault))
            dirty->loss *= factor_;
        supply.filter->loss *= factor_;
        return true;
      default:
        return false;
    }
  }
  Pump& pump(Supply& supply) const {
    return named_.number == 1 ? *supply.pump : *supply.second_pump;
  }

  const Layout& layout_;
  const NamedInput& named_;
  double change_;
  double factor_;
  Parts parts_;
  std::size_t index_ = 0;  // of the line
};

}  // namespace

std::optional<Layout> with_changed(const Layout& layout, const NamedInput& named, double change) {
  try {
    return Change(layout, named, change).layout();
  } catch (const InvalidInput&) {
    return std::nullopt;
  }
}

}  // namespace hydro
