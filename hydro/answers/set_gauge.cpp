#include "hydro/answers/set_gauge.hpp"

#include "hydro/answers/held_lines.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/physics/supply_law.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/quantities/unit_text.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <utility>

#include <boost/math/tools/toms748_solve.hpp>

namespace hydro {
namespace {

/// The supply of a layout as something that can be set, and the layout at any setting.
class Settable {
 public:
  /// @throws InvalidInput when nothing can be set at it.
  explicit Settable(const Layout& layout)
      : layout_(layout), supply_(layout.supply_as_it_is()), water_(properties(layout.water())) {
    refuse_what_cannot_be_set();
    std::vector<Fault> kept = layout.faults();
    std::erase_if(kept, is_of_first_supply);
    if (kept.size() < layout.faults().size()) layout_ = layout.without_faults().with_faults(kept);
    for (const Fault& fault : layout.faults())
      if (const auto* slow = std::get_if<EngineSlow>(&fault); slow && slow->supply.empty())
        (slow->pump.value_or(1) == 2 ? supply_.second_pump : supply_.pump)->top_speed = slow->speed;
  }

  /// Such that this flow leaves with this pressure at the start of the lines.
  /// @param more_will_do where water that runs to a pump by itself brings more at any speed
  /// @param wanted_flow below 0 where others push water back: a pump's check valve lets none in
  Setting at_start(const Pressure& pressure, const Flow& wanted_flow, bool more_will_do) const {
    const Flow flow = takes_water_in(supply_) ? wanted_flow : std::max(Flow{}, wanted_flow);
    if (supply_.pressure) {
      const SupplyLaw law(supply_, water_);
      const Pressure held =
          pressure + Pressure::from_value(weight_density() * law.in_full(si(flow)).filter_loss);
      return at_pressure(std::min(held, highest_held), !(held > highest_held));
    }
    const double head = si(pressure) / weight_density();
    const double least = lowest_ratio(), most = highest_ratio();
    if (!(excess_at(least, head, si(flow)) < 0)) return at_ratio(least, more_will_do);
    const double ratio = ratio_for(head, si(flow));
    const bool too_fast = ratio > most * (1 + rounding);
    return at_ratio(too_fast ? most : ratio, !too_fast, too_fast);
  }

  /// Where nothing helps: as it is now.
  Setting as_it_is() const {
    if (supply_.pressure) return at_pressure(*supply_.pressure, false);
    Setting setting = at_ratio(1, true);
    setting.reached = false;
    return setting;
  }

  /// Pressure before the filter, or behind it where the gauge sits there.
  /// @throws InvalidInput where the lines cannot be solved with it held
  Pressure at_gauge(const Pressure& reading) const {
    const Length height = supply_.gauge ? supply_.gauge->height.value_or(Length{}) : Length{};
    const Pressure there = reading + pressure(height, water_.density);
    if (!(there >= Pressure{} && there <= highest_held))
      throw InvalidInput("reading",
                         "is " + to_message(reading, kPa) + ", which is " + to_message(there, kPa) +
                             " at the supply's elevation; there it must be from 0 to " +
                             to_message(highest_held, kPa));
    return there;
  }
  /// The filter that the water passes after the gauge.
  std::optional<Filter> filter_after_gauge() const {
    const bool passed = supply_.gauge && supply_.gauge->after_filter.value_or(false);
    return passed ? std::nullopt : supply_.filter;
  }
  /// What the filter leaves of a pressure at the gauge.
  Pressure at_start_of_lines(const Pressure& gauge, const Flow& flow) const {
    const Supply held{.pressure = gauge, .filter = filter_after_gauge()};
    return Pressure::from_value(weight_density() * SupplyLaw(held, water_).at(si(flow)).head);
  }

 private:
  static constexpr double rounding = 1e-9;

  double weight_density() const { return si(water_.density) * gravity; }

  void refuse_what_cannot_be_set() const {
    const auto refuse = [](const char* why) { throw InvalidInput("supply", why); };
    if (supply_.tank) refuse("is a tank; its pressure cannot be set");
    if (supply_.hydrant) refuse("is a hydrant; its pressure cannot be set");
    for (const auto* pump : {&supply_.pump, &supply_.second_pump})
      if (*pump && !(*pump)->curve_speed)
        refuse("is a pump whose curve_speed is not given; its speed cannot be set without it");
  }

  Setting at_pressure(const Pressure& held, bool reached) const {
    Supply supply = supply_;
    supply.pressure = held;
    Solution solution = solve(layout_.with_supply(supply));
    auto limits = limits_passed(supply, solution.supply());
    return {reached, std::nullopt, held, std::move(limits), std::move(solution)};
  }

  Supply turned(double ratio) const {
    Supply supply = supply_;
    for (auto* pump : {&supply.pump, &supply.second_pump})
      if (*pump) (*pump)->speed = ratio * (*pump)->speed.value_or(*(*pump)->curve_speed);
    return supply;
  }

  Setting at_ratio(double ratio, bool reached, bool is_at_top = false) const {
    Supply supply = turned(ratio);
    const auto speed = supply.pump->speed;
    for (auto* pump : {&supply.pump, &supply.second_pump})  // by no more than rounding
      if (*pump && (*pump)->top_speed)
        (*pump)->speed = std::min(*(*pump)->speed, *(*pump)->top_speed);
    Solution solution = solve(layout_.with_supply(supply));
    auto limits = limits_passed(supply, solution.supply());
    if (is_at_top) limits.insert(limits.begin(), SupplyLimit::top_speed);
    const Pressure pressure = solution.supply().source_pressure;
    return {reached, speed, pressure, std::move(limits), std::move(solution)};
  }

  /// Of top speed to speed, for the pump that comes to it first.
  double highest_ratio() const {
    constexpr RotationalSpeed no_pump_is_faster = 100000 * rpm;  // nor accepted (pump.hpp)
    double ratio = HUGE_VAL;
    for (const auto* pump : {&supply_.pump, &supply_.second_pump})
      if (*pump)
        ratio = std::min(ratio,
                         si((*pump)->top_speed.value_or(no_pump_is_faster)) /
                             si((*pump)->speed.value_or(*(*pump)->curve_speed)));
    return ratio;
  }

  /// Such that no pump is slower than is accepted.
  double lowest_ratio() const {
    constexpr RotationalSpeed no_pump_is_slower = 1 * rpm;  // nor accepted (pump.hpp)
    double ratio = 0;
    for (const auto* pump : {&supply_.pump, &supply_.second_pump})
      if (*pump)
        ratio = std::max(
            ratio, si(no_pump_is_slower) / si((*pump)->speed.value_or(*(*pump)->curve_speed)));
    return ratio;
  }

  /// Head at the start of the lines above this one [m], with all speeds changed alike.
  double excess_at(double ratio, double head, double flow) const {
    return SupplyLaw(without_top_speed(turned(ratio)), water_).at(flow).head - head;
  }

  /// By which the speeds must rise for this head at the start of the lines [m], at this flow [m3/s].
  double ratio_for(double head, double flow) const {
    const auto excess = [&](double ratio) { return excess_at(ratio, head, flow); };
    constexpr double step = 1.1;
    constexpr std::uintmax_t enough_steps = 200;
    std::uintmax_t steps = enough_steps;
    const auto [below, above] = boost::math::tools::bracket_and_solve_root(
        excess, 1.0, step, true, boost::math::tools::eps_tolerance<double>(), steps);
    if (!(steps < enough_steps))
      throw std::runtime_error("the search for the pump's speed did not settle");
    return below + (above - below) / 2;
  }

  static Supply without_top_speed(Supply supply) {
    for (auto* pump : {&supply.pump, &supply.second_pump})
      if (*pump) (*pump)->top_speed.reset();
    return supply;
  }

  Layout layout_;
  Supply supply_;
  WaterProperties water_;
};

/// Whether every outlet that is judged has what it should.
bool has_all(const Solution& solution, const HeldLines::Wanted& wanted) {
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    const LineSolution& line = solution.lines()[l];
    for (std::size_t i = 0; i < line.state.size(); ++i) {
      if (line.state[i] == OutletState::closed || line.state[i] == OutletState::broken) continue;
      const Outlet& kind = solution.layout().outlet_at(l, static_cast<int>(i) + 1);
      if (is_below(line.pressure[i], wanted(kind))) return false;
    }
  }
  return true;
}

Setting set_for(const Layout& layout, const HeldLines::Wanted& wanted) {
  const Settable settable(layout);
  const auto enough = HeldLines(layout).enough(wanted);
  if (!enough) return settable.as_it_is();
  Setting setting = settable.at_start(enough->pressure, enough->flow, true);
  // No less than 0 is ever held; downhill of a slow pump that may be more than is wanted.
  if (!setting.reached && has_all(setting.solution, wanted)) {
    setting.reached = true;
    std::erase(setting.limits, SupplyLimit::top_speed);
  }
  return setting;
}

void require_share(double share) {
  Examination examination;
  examination.within("share", share, Range<double>{0, 5, units::plain, true});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

void require(const std::string& key, const Pressure& pressure) {
  Examination examination;
  examination.within(key, pressure, Range<Pressure>{0, 5000, kPa, true});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

}  // namespace

bool can_be_set(const Supply& supply) {
  const auto turns = [](const std::optional<Pump>& pump) { return !pump || pump->curve_speed; };
  return !supply.tank && !supply.hydrant && turns(supply.pump) && turns(supply.second_pump);
}

Setting set_for_gauge(const Layout& layout, const Pressure& reading) {
  require("reading", reading);
  const Settable settable(layout);
  const Pressure gauge = settable.at_gauge(reading);
  const Flow flow = HeldLines(layout).flow_at(gauge, settable.filter_after_gauge());
  return settable.at_start(settable.at_start_of_lines(gauge, flow), flow, false);
}

Setting set_for_weakest(const Layout& layout, const Pressure& pressure) {
  require("pressure", pressure);
  return set_for(layout, [&](const Outlet&) { return pressure; });
}

Setting set_for_rated(const Layout& layout, double share) {
  require_share(share);
  return set_for(layout, [&](const Outlet& kind) { return share * kind.rated_pressure(); });
}

Setting set_for_rated_if_possible(const Layout& layout, double share) {
  require_share(share);
  const Supply& supply = layout.supply_as_it_is();
  if (can_be_set(supply)) return set_for_rated(layout, share);
  Solution solution = solve(layout);
  const auto weakest = weakest_outlet(solution);
  if (!weakest) throw InvalidInput("layout", "has no outlet that works and is open");
  const bool reached = !is_below(weakest->pressure, share * weakest->rated);
  const Pressure pressure = solution.supply().source_pressure;
  auto limits = limits_passed(supply, solution.supply());
  return {reached, std::nullopt, pressure, std::move(limits), std::move(solution)};
}

}  // namespace hydro
