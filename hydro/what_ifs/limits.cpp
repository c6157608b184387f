#include "hydro/what_ifs/limits.hpp"

#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/physics/site.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <map>
#include <utility>

namespace hydro {
namespace {

template <class Q>
double left_above(const Q& value, const Q& limit) {
  return (si(value) - si(limit)) / si(limit);
}

/// A limit of 0 is a pipe too warm to bear any pressure.
template <class Q>
double left_below(const Q& value, const Q& limit) {
  if (si(limit) > 0) return (si(limit) - si(value)) / si(limit);
  return si(value) > 0 ? -1 : 0;
}

/// None: a limit that no supply has.
std::optional<SupplyLimit> of_supply(Limit limit) {
  switch (limit) {
    case Limit::power:
      return SupplyLimit::power;
    case Limit::least_flow:
      return SupplyLimit::least_flow;
    case Limit::most_flow:
      return SupplyLimit::most_flow;
    case Limit::suction:
      return SupplyLimit::suction;
    case Limit::gauge_range:
      return SupplyLimit::gauge_range;
    default:
      return std::nullopt;
  }
}

class Judging {
 public:
  Judging(const Solution& solution, const Limits& limits)
      : solution_(solution),
        layout_(solution.layout()),
        limits_(limits),
        atmosphere_(atmospheric_pressure(layout_.site())) {}

  std::vector<Margin> run() {
    const Check found = check(solution_, limits_.accepted);
    for (const std::size_t line : judged_lines()) {
      judge_outlets(line);
      judge_pipes(line);
    }
    judge_variations(found);
    judge_supply(layout_.supply_as_it_is(), solution_.supply());
    for (std::size_t i = 0; i < solution_.further_supplies().size(); ++i)
      judge_supply(layout_.further_supplies_as_they_are()[i], solution_.further_supplies()[i]);
    std::vector<Margin> all;
    for (auto& [limit, margin] : nearest_) all.push_back(std::move(margin));
    return all;
  }

 private:
  std::vector<std::size_t> judged_lines() const {
    std::vector<std::size_t> judged;
    for (const std::string& name : limits_.lines) judged.push_back(layout_.index_of(name));
    if (judged.empty())
      for (std::size_t i = 0; i < layout_.lines().size(); ++i) judged.push_back(i);
    std::ranges::sort(judged);
    return judged;
  }

  void note(Margin margin) {
    if (std::ranges::find(limits_.judged, margin.limit) == limits_.judged.end()) return;
    const auto [known, is_first] = nearest_.try_emplace(margin.limit, margin);
    if (is_first) return;
    const auto nearness = [](const Margin& it) { return std::pair(!it.passed, it.left); };
    if (nearness(margin) < nearness(known->second)) known->second = std::move(margin);
  }

  void judge_outlets(std::size_t index) {
    const LineSolution& solved = solution_.lines()[index];
    for (std::size_t i = 0; i < solved.state.size(); ++i) {
      if (solved.state[i] == OutletState::closed || solved.state[i] == OutletState::broken)
        continue;
      const int number = static_cast<int>(i) + 1;
      const Outlet& kind = layout_.outlet_at(index, number);
      const Pressure pressure = solved.pressure[i];
      const auto not_below = [&](Limit limit, const Pressure& least) {
        note({limit,
              solved.name,
              number,
              {},
              left_above(pressure, least),
              is_below(pressure, least)});
      };
      not_below(Limit::rated, kind.rated_pressure());
      if (kind.minimum) not_below(Limit::minimum, *kind.minimum);
      if (kind.maximum)
        note({Limit::maximum,
              solved.name,
              number,
              {},
              left_below(pressure, *kind.maximum),
              is_above(pressure, *kind.maximum)});
    }
  }

  void judge_pipes(std::size_t index) {
    const Line& line = layout_.lines()[index];
    for (const PipeExtremes& it : solution_.lines()[index].pipes) {
      const Velocity accepted = limits_.accepted.velocity;
      note({Limit::velocity,
            line.name,
            {},
            {},
            left_below(it.highest_velocity, accepted),
            it.highest_velocity > accepted});
      constexpr Pressure rounding = 1 * units::Pa;
      note({Limit::atmosphere,
            line.name,
            {},
            {},
            si(it.lowest_pressure) / si(atmosphere_),
            it.lowest_pressure < -rounding});
      const Pipe& pipe = line.pipe_at(it.end);
      if (!pipe.pressure_rating) continue;
      const Pressure rating = *pipe.pressure_rating * left_when_warm(pipe);
      note({Limit::pipe_rating,
            line.name,
            {},
            {},
            left_below(it.highest_pressure, rating),
            is_above(it.highest_pressure, rating)});
    }
  }

  /// 1 where nothing is known of the kind.
  double left_when_warm(const Pipe& pipe) const {
    const Temperature temperature = layout_.water().temperature.value_or(20 * degC);
    return pipe.kind.empty() ? 1 : temperature_factor(pipe.kind, temperature).value_or(1);
  }

  void judge_variations(const Check& found) {
    const CheckOptions& accepted = limits_.accepted;
    for (const Variation& it : found.variations) {
      const bool is_judged = limits_.lines.empty() || std::ranges::count(limits_.lines, it.line);
      if (!is_judged) continue;
      double left = left_below(it.flow, accepted.flow_variation);
      if (it.too_wide && !(left < 0)) left = left_below(it.pressure, accepted.pressure_variation);
      note({Limit::variation, it.line, {}, {}, left, it.too_wide});
    }
  }

  void judge_supply(const Supply& supply, const OperatingPoint& point) {
    const std::vector<SupplyLimit> all_passed = limits_passed(supply, point);
    const auto judge = [&](Limit limit, double left) {
      const bool is_passed = std::ranges::count(all_passed, *of_supply(limit)) > 0;
      note({limit, {}, {}, supply.name, left, is_passed});
    };
    for (std::size_t i = 0; i < point.pumps.size(); ++i) {
      const PumpDuty& duty = point.pumps[i];
      const Pump& pump = i == 0 ? *supply.pump : *supply.second_pump;
      if (pump.power && duty.shaft_power)
        judge(Limit::power, left_below(*duty.shaft_power, *pump.power));
      if (duty.least_flow && *duty.least_flow > Flow{})
        judge(Limit::least_flow, left_above(duty.flow, *duty.least_flow));
      if (duty.most_flow) judge(Limit::most_flow, left_below(duty.flow, *duty.most_flow));
      if (duty.npsh_required && point.npsh_available && *duty.npsh_required > Length{})
        judge(Limit::suction, left_above(*point.npsh_available, *duty.npsh_required));
    }
    if (supply.gauge && supply.gauge->range && point.gauge_reading)
      judge(Limit::gauge_range, left_below(*point.gauge_reading, *supply.gauge->range));
  }

  const Solution& solution_;
  const Layout& layout_;
  const Limits& limits_;
  Pressure atmosphere_;
  std::map<Limit, Margin> nearest_;
};

}  // namespace

std::vector<Limit> every_limit() {
  std::vector<Limit> all;
  for (int i = 0; i <= static_cast<int>(Limit::gauge_range); ++i)
    all.push_back(static_cast<Limit>(i));
  return all;
}

std::vector<Margin> margins(const Solution& solution, const Limits& limits) {
  return Judging(solution, limits).run();
}

std::vector<Margin> passed(const std::vector<Margin>& margins) {
  std::vector<Margin> all;
  std::ranges::copy_if(margins, std::back_inserter(all), &Margin::passed);
  return all;
}

}  // namespace hydro
