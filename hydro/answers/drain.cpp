#include "hydro/answers/drain.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <numbers>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/roots.hpp>

namespace hydro {
namespace {

void throw_if_any(std::vector<Problem> found) {
  if (!found.empty()) throw InvalidInput(std::move(found));
}

double surface_of(const Tank& tank, const std::string& prefix) {
  const auto surface = tank.surface();
  if (!surface)
    throw InvalidInput(prefix + "diameter",
                       "is not given, nor is the area; how fast a tank falls depends on it");
  return si(*surface);
}

/// What a unit's conversion there and back may add.
constexpr double rounding = 1e-12;

/// Cd a [m2].
double effective_area(const Hole& hole) {
  return hole.discharge_coefficient.value_or(Hole::default_discharge_coefficient) *
         std::numbers::pi / 4 * si(hole.diameter) * si(hole.diameter);
}

double torricelli(double level) {
  return std::sqrt(2 * gravity * level);
}

void examine(const Tank& tank, const Hole& hole) {
  Examination examination;
  examination.include("tank", problems(tank));
  examination.include("hole", problems(hole));
  throw_if_any(examination.take());
}

/// How fast sqrt(level) falls [m^0.5/s].
double fall_of_the_root(const Tank& tank, const Hole& hole) {
  examine(tank, hole);
  const double surface = surface_of(tank, "tank.");
  if (!(effective_area(hole) < surface))
    throw InvalidInput("hole.diameter",
                       "is " + to_message(hole.diameter, mm) + ", must be smaller than the tank");
  return effective_area(hole) / surface * std::sqrt(gravity / 2);
}

}  // namespace

std::vector<Problem> problems(const Hole& hole) {
  Examination examination;
  examination.within("diameter", hole.diameter, Range<Length>{0.1, 2000, mm});
  examination.within(
      "discharge_coefficient", hole.discharge_coefficient, Range<double>{0.1, 1, units::plain});
  return examination.take();
}

Flow outflow(const Tank& tank, const Hole& hole) {
  examine(tank, hole);
  return Flow::from_value(effective_area(hole) * torricelli(si(tank.level)));
}

Time time_to_fall(const Tank& tank, const Hole& hole, const Length& level) {
  const double fall = fall_of_the_root(tank, hole);
  Examination examination;
  examination.within("level", level, Range<Length>{0, tank.level / units::m, units::m});
  throw_if_any(examination.take());
  return Time::from_value((std::sqrt(si(tank.level)) - std::sqrt(si(level))) / fall);
}

Time time_to_run_out(const Tank& tank, const Hole& hole, const Volume& volume) {
  const double fall = fall_of_the_root(tank, hole);
  const double surface = surface_of(tank, "tank.");
  const double whole = surface * si(tank.level);
  Examination examination;
  examination.within("volume", volume, Range<Volume>{0, 1000 * whole * (1 + rounding), litre});
  throw_if_any(examination.take());
  // The difference of the two roots without their cancellation, for a cup out of a pond.
  const double drop = si(volume) / surface;
  const double left = std::max(0.0, si(tank.level) - drop);
  const double roots = std::sqrt(si(tank.level)) + std::sqrt(left);
  return Time::from_value(roots > 0 ? drop / roots / fall : 0);
}

Length level_after(const Tank& tank, const Hole& hole, const Time& time) {
  const double fall = fall_of_the_root(tank, hole);
  Examination examination;
  examination.within("time", time, Range<Time>{0, 1e12, units::s});
  throw_if_any(examination.take());
  const double root = std::max(0.0, std::sqrt(si(tank.level)) - fall * si(time));
  return Length::from_value(root * root);
}

namespace {

void examine(const Layout& layout, const DrainOptions& options) {
  if (!layout.supply().tank)
    throw InvalidInput("supply.tank", "is not given; only a tank runs empty");
  if (!layout.further_supplies().empty())
    throw InvalidInput(
        "further_supplies",
        "are given; they may fill the tank as it empties, which is not followed here");
  Examination examination;
  examination.within("to_level",
                     options.to_level,
                     Range<Length>{0, layout.supply().tank->level / units::m, units::m});
  examination.within("least_outflow", options.least_outflow, Range<double>{0, 0.5, units::plain});
  examination.within("levels", options.levels, 2, 1000);
  examination.within("tolerance", options.tolerance, Range<double>{1e-12, 0.01, units::plain});
  throw_if_any(examination.take());
}

std::optional<OpenRiser> riser_left_open(const Layout& layout, std::size_t index, int outlet) {
  for (const Fault& fault : layout.faults_on(index))
    if (outlet_of(fault) == outlet)
      if (auto open = open_riser(fault, layout.lines()[index])) return open;
  return std::nullopt;
}

/// By height alone: at rest the water stands as high everywhere as in the tank.
std::optional<LowestMouth> lowest_mouth(const Layout& layout, const Solution& solution) {
  std::optional<LowestMouth> lowest;
  const Length tank = layout.supply().elevation.value_or(Length{});
  const auto consider = [&](std::size_t index, std::optional<int> outlet, const Length& mouth) {
    if (!lowest || mouth - tank < lowest->level)
      lowest = LowestMouth{layout.lines()[index].name, outlet, mouth - tank};
  };
  for (std::size_t index = 0; index < layout.lines().size(); ++index) {
    if (layout.is_cut_off(index)) continue;
    const Line& line = layout.lines()[index];
    const LineSolution& solved = solution.lines()[index];
    for (int outlet = 1; outlet <= line.outlet_count(); ++outlet) {
      const OutletState state = solved.state[static_cast<std::size_t>(outlet - 1)];
      if (!layout.outlet_has_water(index, outlet) || state == OutletState::closed) continue;
      const auto open = riser_left_open(layout, index, outlet);
      const Length height = open ? open->height : line.riser.height;
      consider(index, outlet, layout.outlet_elevation(index, outlet) + height);
    }
    for (const Opening& opening : solved.openings)
      consider(index, std::nullopt, layout.ground_elevation(index, opening.distance));
  }
  return lowest;
}

struct Integral {
  double from;
  double to;
  double value;
  double error;
};

/// By halving where the error is largest: where an outlet falls dry the integrand has a kink, and a
/// bound on each part's own error would ask for much more. Each part is brought to -1 ... 1, since
/// Boost 1.74 does not scale its estimate of the error to other intervals.
template <class Integrand>
Integral integral(const Integrand& integrand, double from, double to, double tolerance) {
  const auto part = [&](double a, double b) {
    const double half = (b - a) / 2;
    double error = 0;
    const double value = boost::math::quadrature::gauss_kronrod<double, 15>::integrate(
        [&](double x) { return half * integrand((a + b) / 2 + half * x); }, -1, 1, 0, 0, &error);
    return Integral{a, b, value, error};
  };
  const auto has_less_error = [](const Integral& a, const Integral& b) {
    return a.error < b.error;
  };
  constexpr std::size_t most_parts = 500;
  constexpr double narrowest = 1e-8;  // of the whole; a pole at the end would go on for ever
  std::vector<Integral> parts{part(from, to)};
  for (;;) {
    Integral whole{from, to, 0, 0};
    for (const Integral& each : parts) {
      whole.value += each.value;
      whole.error += each.error;
    }
    const bool goes_on = whole.error > tolerance * whole.value;  // false for NaN: nothing helps
    const auto worst = std::max_element(parts.begin(), parts.end(), has_less_error);
    const Integral split = *worst;
    const bool is_narrow = split.to - split.from < narrowest * (to - from);
    if (!goes_on || is_narrow || parts.size() == most_parts) return whole;
    const double middle = (split.from + split.to) / 2;
    *worst = part(split.from, middle);
    parts.push_back(part(middle, split.to));
  }
}

/// A layout whose tank stands at one level after another. The time is integrated over
/// u = sqrt(level - where it rests): most outlets' flow goes nearly with u.
class FallingTank {
 public:
  FallingTank(const Layout& layout, const DrainOptions& options)
      : layout_(layout),
        options_(options),
        surface_(surface_of(*layout.supply().tank, "supply.tank.")),
        full_(si(layout.supply().tank->level)) {}

  Drain drain();

 private:
  Solution solution_at(double level) {
    Supply supply = layout_.supply();
    supply.tank->level = Length::from_value(level);
    ++solves_;
    return solve(layout_.with_supply(std::move(supply)));
  }
  double outflow_at(double level) { return si(solution_at(level).inflow()); }
  double level_of(double u) const { return rest_ + u * u; }
  double u_of(double level) const { return std::sqrt(std::max(0.0, level - rest_)); }

  /// From the higher level to the lower one.
  double time_between(double higher, double lower);
  double level_of_least_outflow(double least);
  OutletFall first_fall(FirstFall fall, const DrainStep& before, const DrainStep& after);
  std::vector<OutletFall> first_falls(const std::vector<DrainStep>& steps,
                                      const std::vector<Solution>& solutions);

  const Layout& layout_;
  const DrainOptions& options_;
  double surface_;    // [m2]
  double full_;       // level at first [m]
  double rest_ = 0;   // level at which nothing flows [m]
  double error_ = 0;  // of the time [s]
  int solves_ = 0;
};

double FallingTank::time_between(double higher, double lower) {
  const Integral time =
      integral([&](double u) { return 2 * u * surface_ / outflow_at(level_of(u)); },
               u_of(lower),
               u_of(higher),
               options_.tolerance / 2);  // the other half is left for the falls of single outlets
  error_ += time.error;
  return time.value;
}

double FallingTank::level_of_least_outflow(double least) {
  const double lowest = std::max(0.0, rest_);
  const double outflow_at_lowest = outflow_at(lowest);
  if (!(outflow_at_lowest < least)) return lowest;
  std::uintmax_t steps = 100;
  const auto bracket =
      boost::math::tools::toms748_solve([&](double u) { return outflow_at(level_of(u)) - least; },
                                        u_of(lowest),
                                        u_of(full_),
                                        boost::math::tools::eps_tolerance<double>(40),
                                        steps);
  return level_of(bracket.second);
}

/// The outlet that is worst off, and by how much it is above the limit; none: the limit has no
/// outlet. For dry ones only the sign says something.
struct Worst {
  std::size_t line = 0;
  int outlet = 0;
  double margin = std::numeric_limits<double>::infinity();
};

std::optional<Pressure> limit_of(FirstFall fall, const Outlet& outlet) {
  if (fall == FirstFall::below_rated) return outlet.rated_pressure();
  if (fall == FirstFall::below_minimum) return outlet.minimum;
  return Pressure{};
}

Worst worst_of(FirstFall fall, const Solution& solution) {
  Worst worst;
  const Layout& layout = solution.layout();
  for (std::size_t index = 0; index < layout.lines().size(); ++index) {
    const LineSolution& line = solution.lines()[index];
    for (std::size_t i = 0; i < line.state.size(); ++i) {
      const OutletState state = line.state[i];
      const int number = static_cast<int>(i) + 1;
      const bool is_judged = state != OutletState::closed && state != OutletState::broken;
      if (!is_judged || !layout.outlet_has_water(index, number)) continue;
      const auto limit = limit_of(fall, layout.outlet_at(index, number));
      if (!limit) continue;
      const double margin = fall == FirstFall::dry ? (state == OutletState::dry ? -1 : 1)
                                                   : si(line.pressure[i]) - si(*limit) * (1 - 1e-6);
      if (margin < worst.margin) worst = {index, number, margin};
    }
  }
  return worst;
}

OutletFall FallingTank::first_fall(FirstFall fall,
                                   const DrainStep& before,
                                   const DrainStep& after) {
  std::uintmax_t steps = 100;
  const auto bracket = boost::math::tools::toms748_solve(
      [&](double level) { return worst_of(fall, solution_at(level)).margin; },
      si(after.level),
      si(before.level),
      boost::math::tools::eps_tolerance<double>(30),
      steps);
  const Worst worst = worst_of(fall, solution_at(bracket.first));
  return {fall,
          layout_.lines()[worst.line].name,
          worst.outlet,
          Length::from_value(bracket.first),
          before.time + Time::from_value(time_between(si(before.level), bracket.first))};
}

std::vector<OutletFall> FallingTank::first_falls(const std::vector<DrainStep>& steps,
                                                 const std::vector<Solution>& solutions) {
  std::vector<OutletFall> falls;
  for (const FirstFall fall : {FirstFall::below_rated, FirstFall::below_minimum, FirstFall::dry}) {
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const Worst worst = worst_of(fall, solutions[i]);
      if (!(worst.margin < 0)) continue;
      falls.push_back(i > 0 ? first_fall(fall, steps[i - 1], steps[i])
                            : OutletFall{fall,
                                         layout_.lines()[worst.line].name,
                                         worst.outlet,
                                         steps[0].level,
                                         steps[0].time});
      break;
    }
  }
  std::stable_sort(falls.begin(), falls.end(), [](const OutletFall& a, const OutletFall& b) {
    return a.time < b.time;
  });
  return falls;
}

Drain FallingTank::drain() {
  std::vector<Solution> solutions{solution_at(full_)};
  const double outflow_at_first = si(solutions[0].inflow());
  std::vector<DrainStep> steps{
      {Length::from_value(full_), Time{}, solutions[0].inflow(), Volume{}}};
  const auto mouth = lowest_mouth(layout_, solutions[0]);

  DrainEnd end = DrainEnd::outflow_ceases;
  if (outflow_at_first > 0 && mouth) {
    rest_ = si(mouth->level);
    double last = level_of_least_outflow(options_.least_outflow * outflow_at_first);
    if (last <= 0) end = DrainEnd::tank_empty;
    if (options_.to_level && si(*options_.to_level) >= last) {
      last = si(*options_.to_level);
      end = DrainEnd::level_reached;
    }
    for (int i = 1; i < options_.levels && last < full_; ++i) {
      const double level =
          i + 1 < options_.levels ? full_ + (last - full_) * i / (options_.levels - 1) : last;
      solutions.push_back(solution_at(level));
      steps.push_back(
          {Length::from_value(level),
           steps.back().time + Time::from_value(time_between(si(steps.back().level), level)),
           solutions.back().inflow(),
           Volume::from_value(surface_ * (full_ - level))});
    }
  }
  const double time = si(steps.back().time);
  const double share = time > 0 ? error_ / time : 0;
  if (!(share <= options_.tolerance))
    throw NotDrained("drain: the time, " + to_message(Time::from_value(time), units::s) +
                     ", is known to a share of " + to_message(share, "") + ", must be " +
                     to_message(options_.tolerance, "") +
                     " or less; the last water runs ever slower: give to_level, or a larger "
                     "least_outflow or tolerance");
  std::vector<OutletFall> falls = first_falls(steps, solutions);
  return {std::move(steps), std::move(falls), end, mouth, share, solves_};
}

}  // namespace

Drain drain(const Layout& layout, const DrainOptions& options) {
  examine(layout, options);
  return FallingTank(layout, options).drain();
}

}  // namespace hydro
