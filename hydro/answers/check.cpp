#include "hydro/answers/check.hpp"

#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/physics/site.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

namespace hydro {
namespace {

/// Extremes and sums over outlets of one kind that let out water.
struct Spread {
  std::string line;
  const Outlet* kind;
  int lines = 0;  ///< that have such outlets
  int outlets = 0;
  Pressure lowest = {}, highest = {}, sum = {};
  Flow least = {}, most = {};

  void add(const Pressure& pressure, const Flow& flow) {
    lowest = outlets == 0 ? pressure : std::min(lowest, pressure);
    highest = outlets == 0 ? pressure : std::max(highest, pressure);
    least = outlets == 0 ? flow : std::min(least, flow);
    most = outlets == 0 ? flow : std::max(most, flow);
    sum += pressure;
    ++outlets;
  }

  /// Those of another line.
  void add(const Spread& line_spread) {
    lowest = outlets == 0 ? line_spread.lowest : std::min(lowest, line_spread.lowest);
    highest = outlets == 0 ? line_spread.highest : std::max(highest, line_spread.highest);
    least = outlets == 0 ? line_spread.least : std::min(least, line_spread.least);
    most = outlets == 0 ? line_spread.most : std::max(most, line_spread.most);
    sum += line_spread.sum;
    outlets += line_spread.outlets;
    ++lines;
  }

  Variation variation(const CheckOptions& options) const {
    const double pressure = (highest - lowest) / (sum / static_cast<double>(outlets));
    const double flow = (most - least) / most;
    const bool pressure_rule =
        kind->exponent.value_or(0.5) == 0.5 && !kind->compensating && kind->points.empty();
    return {
        line,
        kind->name,
        outlets,
        pressure,
        flow,
        flow > options.flow_variation || (pressure_rule && pressure > options.pressure_variation)};
  }
};

class Checking {
 public:
  Checking(const Solution& solution, const CheckOptions& options)
      : solution_(solution),
        options_(options),
        atmosphere_(atmospheric_pressure(solution.layout().site())) {}

  Check run() {
    for (std::size_t i = 0; i < solution_.lines().size(); ++i) {
      judge_outlets(i);
      judge_pipes(i);
    }
    for (const Spread& spread : on_lines_) report(spread);
    for (const auto& [kind, spread] : together_)
      if (spread.lines > 1) report(spread);
    judge_supply();
    return std::move(found_);
  }

 private:
  void judge_supply() {
    const Layout& layout = solution_.layout();
    found_.supply_limits = limits_passed(layout.supply_as_it_is(), solution_.supply());
    for (std::size_t i = 0; i < solution_.further_supplies().size(); ++i)
      found_.further_supply_limits.push_back(
          limits_passed(layout.further_supplies_as_they_are()[i], solution_.further_supplies()[i]));
    bool some_are_open = false;
    bool some_have_a_way = false;
    bool all_are_dry = true;
    for (const LineSolution& line : solution_.lines())
      for (const OutletState state : line.state) {
        some_are_open = some_are_open || state != OutletState::closed;
        some_have_a_way = some_have_a_way || (state != OutletState::closed && !line.pipes.empty());
        all_are_dry = all_are_dry && (state == OutletState::dry || state == OutletState::closed);
      }
    const bool has_outlets = solution_.layout().outlet_count() > 0;
    found_.all_is_shut = has_outlets && !some_are_open;
    found_.lifts_no_water = some_have_a_way && all_are_dry && !(solution_.inflow() > Flow{});
  }

  void judge_outlets(std::size_t index) {
    const LineSolution& solved = solution_.lines()[index];
    const std::size_t earlier = on_lines_.size();
    for (std::size_t i = 0; i < solved.pressure.size(); ++i) {
      const OutletState state = solved.state[i];
      if (state == OutletState::closed || state == OutletState::broken) continue;
      const int number = static_cast<int>(i) + 1;
      const Outlet& kind = solution_.layout().outlet_at(index, number);
      const Pressure pressure = solved.pressure[i];
      const Pressure rated = kind.rated_pressure();
      if (is_below(pressure, rated))
        found_.below_rated.push_back({solved.name, number, pressure, rated});
      if (kind.minimum && is_below(pressure, *kind.minimum))
        found_.below_minimum.push_back({solved.name, number, pressure, *kind.minimum});
      if (kind.maximum && is_above(pressure, *kind.maximum))
        found_.above_maximum.push_back({solved.name, number, pressure, *kind.maximum});
      if (state == OutletState::dry)
        found_.dry.push_back({solved.name, number, solved.line_pressure[i]});
      else
        spread_of(kind, solved.name, earlier).add(pressure, solved.flow[i]);
    }
    for (std::size_t i = earlier; i < on_lines_.size(); ++i) {
      const Spread& spread = on_lines_[i];
      Spread& together =
          together_.try_emplace(key_of(*spread.kind), Spread{{}, spread.kind}).first->second;
      together.add(spread);
    }
  }

  /// That of this kind on the line whose first one is `earlier`; kinds on a line are few.
  Spread& spread_of(const Outlet& kind, const std::string& line, std::size_t earlier) {
    for (std::size_t i = earlier; i < on_lines_.size(); ++i)
      if (on_lines_[i].kind == &kind || *on_lines_[i].kind == kind) return on_lines_[i];
    return on_lines_.emplace_back(Spread{line, &kind});
  }

  void judge_pipes(std::size_t index) {
    const Line& line = solution_.layout().lines()[index];
    const LineSolution& solved = solution_.lines()[index];
    Velocity fastest{};
    Pressure lowest{};
    for (const PipeExtremes& pipe : solved.pipes) {
      fastest = std::max(fastest, pipe.highest_velocity);
      lowest = std::min(lowest, pipe.lowest_pressure);
      const Pipe& kind = line.pipe_at(pipe.end);
      if (!kind.pressure_rating) continue;
      const Pressure rating = *kind.pressure_rating * left_when_warm(kind);
      if (is_above(pipe.highest_pressure, rating))
        found_.over_rating.push_back({solved.name, pipe.pipe_name, pipe.highest_pressure, rating});
    }
    if (fastest > options_.velocity) found_.fast_water.push_back({solved.name, fastest});
    constexpr Pressure rounding = 1 * units::Pa;
    if (lowest < -rounding)
      found_.below_atmosphere.push_back(
          {solved.name, lowest, atmosphere_ + lowest < solution_.water().vapour_pressure});
  }

  /// 1 where nothing is known of the kind.
  double left_when_warm(const Pipe& pipe) const {
    const Temperature temperature = solution_.layout().water().temperature.value_or(20 * degC);
    return pipe.kind.empty() ? 1 : temperature_factor(pipe.kind, temperature).value_or(1);
  }

  /// All that makes a kind of outlet what it is, in an order; -1 stands for what is not given.
  using Key = std::pair<std::string, std::vector<double>>;
  static Key key_of(const Outlet& kind) {
    std::vector<double> values{si(kind.flow), si(kind.at)};
    const auto add = [&](const auto& given) { values.push_back(given ? si(*given) : -1); };
    add(kind.exponent);
    add(kind.rated);
    add(kind.minimum);
    add(kind.maximum);
    add(kind.nozzle);
    add(kind.discharge_coefficient);
    add(kind.body_bore);
    add(kind.regulator);
    const Compensating range = kind.compensating.value_or(Compensating{});
    values.insert(values.end(), {si(range.low), si(range.high)});
    for (const RatedPoint& point : kind.points)
      values.insert(values.end(), {si(point.pressure), si(point.flow)});
    return {kind.name, std::move(values)};
  }

  void report(const Spread& spread) {
    if (spread.outlets > 0) found_.variations.push_back(spread.variation(options_));
  }

  const Solution& solution_;
  const CheckOptions& options_;
  Pressure atmosphere_;
  std::vector<Spread> on_lines_;
  std::map<Key, Spread> together_;
  Check found_;
};

}  // namespace

Check check(const Solution& solution, const CheckOptions& options) {
  Examination examination;
  const Range<double> share{0, 10, units::plain, true};
  examination.within("pressure_variation", options.pressure_variation, share);
  examination.within("flow_variation", options.flow_variation, share);
  examination.within("velocity", options.velocity, Range<Velocity>{0, 100, m_per_s, true});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return Checking(solution, options).run();
}

}  // namespace hydro
