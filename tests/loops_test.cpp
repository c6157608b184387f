// Laws of layouts in which water can come two ways, over random ones: rings, rows fed from both
// ends, several supplies, check valves. A failure prints its seed.
//
// That opening an outlet raises no pressure is true of all of them: what runs from a place to
// another never falls as the head of the first rises or that of the other falls, in a pipe, a check
// valve and a regulator, and what a supply gives or an outlet lets out goes the same way. Such
// functions have an inverse that keeps the order (W. C. Rheinboldt, On M-functions, J. Math. Anal.
// Appl. 32 (1970) 274-307, from memory). A cross pipe raises the pressure at one of its ends and
// lowers it at the other.
#include "hydro/hydro.hpp"
#include "hydro/physics/supply_law.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "random_looped.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr std::uint64_t some_seeds = 1000;

std::vector<OperatingPoint> all_supplies(const Solution& solution) {
  std::vector<OperatingPoint> all{solution.supply()};
  all.insert(all.end(), solution.further_supplies().begin(), solution.further_supplies().end());
  return all;
}

double elevation_m(const Layout& layout, std::size_t supply) {
  const Supply& it = supply == 0 ? layout.supply() : layout.further_supplies()[supply - 1];
  return si(it.elevation.value_or(Length{}));
}

/// No smaller than Residuals' own scale would make it: the supplies' heads at rest, the rise and
/// fall of the ground, and the risers.
double head_scale_m(const Solution& solution) {
  const Layout& layout = solution.layout();
  double lowest = 1e9, highest = -1e9;
  const auto include = [&](double elevation) {
    lowest = std::min(lowest, elevation);
    highest = std::max(highest, elevation);
  };
  const std::vector<Supply>& further = layout.further_supplies_as_they_are();
  for (std::size_t s = 0; s <= further.size(); ++s) {
    const Supply& supply = s == 0 ? layout.supply_as_it_is() : further[s - 1];
    include(elevation_m(layout, s));
    include(elevation_m(layout, s) + SupplyLaw(supply, solution.water()).head_at_rest());
  }
  for (std::size_t l = 0; l < layout.lines().size(); ++l) {
    include(si(layout.inlet_elevation(l)));
    include(si(layout.inlet_elevation(l) + layout.ground_rise(l)));
    for (int outlet = 1; outlet <= layout.lines()[l].outlet_count(); ++outlet)
      include(si(layout.outlet_elevation(l, outlet)));
  }
  return highest - lowest + 3;
}

double flow_scale(const Solution& solution) {
  double largest = 0;
  for (const LineSolution& line : solution.lines())
    for (const Flow& flow : {line.inflow, line.end_flow})
      largest = std::max(largest, std::abs(si(flow)));
  return largest;
}

/// Flows and heads along the lines, anew from the flows of the solution by the public, typed laws.
class Recomputed {
 public:
  /// What stands at a place of a part: outlets, and all else.
  struct Point {
    double at;
    int outlet;          // its number, else 0
    double out;          // that leaves here [m3/s]
    double lost = 0;     // from the start of the part to here [m]
    double arrives = 0;  // flow [m3/s]
    bool operator<(const Point& other) const {
      return at != other.at ? at < other.at : is_other() < other.is_other();
    }
    bool is_other() const { return outlet == 0; }
  };
  /// A line; or, of one that is cut, what lies before the place or beyond it.
  struct Part {
    bool has_water = false;
    double from = 0, to = 0;
    std::vector<Point> points{};
    double starts_with = 0;         // flow [m3/s]
    double ends_with = 0;           // flow that is left at the end [m3/s]
    std::optional<double> start{};  // total head before the fittings of its inlet [m]
    double head(const Point& point) const { return start.value() - point.lost; }
    double end() const { return head(points.back()); }
  };

  explicit Recomputed(const Solution& solution)
      : solution_(solution), layout_(solution.layout()), parts_(layout_.lines().size()) {
    for (std::size_t l = 0; l < parts_.size(); ++l) make_parts(l);
    for (std::size_t l = 0; l < parts_.size(); ++l)
      for (Part& part : parts_[l]) lose(l, part);
    find_heads();
  }

  Part& part(std::size_t line, double at) {
    const auto end = layout_.open_end_of(line);
    return parts_[line][end && at > si(*end) - 1e-3 ? 1 : 0];
  }
  Part& first(std::size_t line) { return parts_[line][0]; }
  Part& last(std::size_t line) { return parts_[line][layout_.open_end_of(line) ? 1 : 0]; }
  std::array<Part, 2>& parts(std::size_t line) { return parts_[line]; }

  /// Total head at a place, beyond all that stands there.
  std::optional<double> head_at(std::size_t line, const Length& place) {
    const Part& it = part(line, si(place));
    if (!it.start) return std::nullopt;
    const double at = std::clamp(si(place), it.from, it.to);
    const Point* found = nullptr;
    for (const Point& point : it.points)
      if (point.at <= at) found = &point;
    return found ? it.head(*found) : *it.start;
  }

  double loss_coefficient_at_inlet(std::size_t l) const {
    const Line& line = layout_.lines()[l];
    double k = line.loss_coefficient.value_or(0);
    if (line.valve && line.valve->opening != ValveOpening::shut) k += loss_coefficient(*line.valve);
    for (const Fault& fault : layout_.faults_on(l))
      if (const auto* valve = std::get_if<ValvePartClosed>(&fault)) k += valve->loss_coefficient;
    return k;
  }

  double total(const Pressure& pressure, const Length& ground) const {
    return si(hydro::head(pressure, solution_.water().density) + ground);
  }

  /// Whether a regulator or a valve sets the head beyond the inlet, whatever comes.
  bool is_open(std::size_t l) const {
    const LineSolution& solved = solution_.lines()[l];
    const bool by_regulator = solved.regulator && solved.regulator->state != RegulatorState::open &&
                              solved.regulator->state != RegulatorState::stuck_open;
    return !solved.inlet_shut && !by_regulator && solved.check_valve != CheckValveState::shut;
  }

 private:
  void make_parts(std::size_t l) {
    const Line& line = layout_.lines()[l];
    const LineSolution& solved = solution_.lines()[l];
    const double length = si(line.whole_length());
    const auto end = layout_.open_end_of(l);
    const double cut = end ? si(line.merged(*end)) : length;
    parts_[l][0].to = cut;
    parts_[l][1].from = cut;
    parts_[l][1].to = length;
    parts_[l][0].has_water = layout_.has_water(l, end ? *end - 2 * mm : Length{});
    parts_[l][1].has_water = end && layout_.has_water(l, *end);
    const auto add = [&](double at, int outlet, const Flow& out, bool beyond) {
      Part& part = parts_[l][beyond ? 1 : 0];
      part.points.push_back({std::clamp(at, part.from, part.to), outlet, si(out)});
    };
    for (int i = 1; i <= line.outlet_count(); ++i) {
      const double at = si(line.place_of(i));
      add(at, i, solved.flow[static_cast<std::size_t>(i - 1)], end && at > cut);
    }
    bool cut_seen = false;
    for (const Opening& opening : solved.openings) {
      const double at = si(line.merged(opening.distance));
      const bool is_cut = open_end(layout_.faults_on(l)[opening.fault], line).has_value();
      add(at, 0, opening.flow, is_cut ? cut_seen || !parts_[l][0].has_water : end && at > cut);
      cut_seen = cut_seen || is_cut;
    }
    for (const PipeReach& reach : line.reaches) {
      const double at = si(line.merged(reach.to));
      add(at, 0, Flow{}, end && at > cut);
    }
    const auto add_other = [&](const Length& at, const Flow& out) {
      add(si(at), 0, out, end && at > *end - same_place);
    };
    for (std::size_t other = 0; other < layout_.lines().size(); ++other) {
      if (layout_.feeder_of(other) == l)
        add_other(begins_at(layout_.lines()[other], line), solution_.lines()[other].inflow);
      if (layout_.joined_by(other) == l)
        add_other(ends_at(layout_.lines()[other], line), -solution_.lines()[other].end_flow);
    }
    for (Part& part : parts_[l]) {
      part.points.push_back({part.to, 0, 0});
      std::stable_sort(part.points.begin(), part.points.end());
    }
    parts_[l][0].starts_with = si(solved.inflow);
  }

  const Pipe& pipe_to(const Line& line, double at) const {
    for (const PipeReach& reach : line.reaches)
      if (at <= si(line.merged(reach.to))) return reach.pipe;
    return line.pipe;
  }

  void lose(std::size_t l, Part& part) {
    const Line& line = layout_.lines()[l];
    double Q = part.starts_with, at = part.from, lost = 0;
    double k = part.from > 0 ? 0 : loss_coefficient_at_inlet(l);
    for (Point& point : part.points) {
      const Flow flow = Flow::from_value(Q);
      Length pipe = Length::from_value(point.at - at);
      if (point.outlet > 0) {
        pipe += line.connection_length.value_or(Length{});
        k += line.outlet_loss_coefficient.value_or(0);
      }
      const Pipe& is = pipe_to(line, point.at);
      lost += si(friction_loss(is, pipe, flow, solution_.water()) + fitting_loss(is, k, flow));
      point.lost = lost;
      point.arrives = Q;
      Q -= point.out;
      at = point.at;
      k = 0;
    }
    part.ends_with = Q;
  }

  /// From the supplies outward; where nothing passes an inlet, from the place that the far end
  /// joins; where that hangs on itself, from a pressure of the solution.
  void find_heads() {
    do {
      for (bool changed = true; changed;) {
        changed = false;
        for (const std::size_t l : layout_.outward_order())
          for (Part& part : parts_[l]) {
            if (!part.has_water || part.start) continue;
            part.start = &part == &parts_[l][0] ? from_inlet(l) : std::nullopt;
            if (!part.start && &part == &last(l)) part.start = from_far_end(l, part);
            if (part.start) changed = true;
          }
      }
    } while (read_one());
  }

  bool read_one() {
    for (std::size_t l = 0; l < parts_.size(); ++l)
      for (Part& part : parts_[l]) {
        if (!part.has_water || part.start) continue;
        const LineSolution& solved = solution_.lines()[l];
        Pressure there = solved.end_pressure;
        for (const Opening& opening : solved.openings)
          if (&part != &last(l) &&
              open_end(layout_.faults_on(l)[opening.fault], layout_.lines()[l])) {
            there = opening.line_pressure;
            break;
          }
        part.start = total(there, layout_.ground_elevation(l, Length::from_value(part.to))) +
                     part.points.back().lost;
        return true;
      }
    return false;
  }

  std::optional<double> from_inlet(std::size_t l) {
    const LineSolution& solved = solution_.lines()[l];
    if (solved.regulator && solved.regulator->state == RegulatorState::holding)
      return total(solved.regulator->pressure, layout_.inlet_elevation(l)) +
             si(fitting_loss(
                 pipe_to(layout_.lines()[l], 0), loss_coefficient_at_inlet(l), solved.inflow));
    if (!is_open(l)) return std::nullopt;
    const auto feeder = layout_.feeder_of(l);
    if (feeder) return head_at(*feeder, begins_at(layout_.lines()[l], layout_.lines()[*feeder]));
    const std::size_t s = layout_.supply_of(l);
    return total(all_supplies(solution_)[s].pressure, Length::from_value(elevation_m(layout_, s)));
  }

  std::optional<double> from_far_end(std::size_t l, const Part& part) {
    const auto joined = layout_.joined_by(l);
    if (!joined) return std::nullopt;
    const auto there = head_at(*joined, ends_at(layout_.lines()[l], layout_.lines()[*joined]));
    return there ? std::optional(*there + part.points.back().lost) : std::nullopt;
  }

  const Solution& solution_;
  const Layout& layout_;
  std::vector<std::array<Part, 2>> parts_;  // by line: before its open end, and beyond
};

class Loops : public testing::Test {
 protected:
  template <class Law>
  void for_each_layout(Law law, const LoopedMix& mix = {}) {
    for (std::uint64_t seed = 1; seed <= some_seeds && !HasFailure(); ++seed) {
      SCOPED_TRACE("seed " + std::to_string(seed));
      law(random_looped(seed, mix));
    }
  }
};

/// How many, or as many as HYDRO_LOOPED_LAYOUTS says.
std::uint64_t many() {
  const char* wanted = std::getenv("HYDRO_LOOPED_LAYOUTS");
  return wanted ? std::strtoull(wanted, nullptr, 10) : 10'000;
}

TEST_F(Loops, ManyRandomLoopedLayoutsAreSolvedWithinTheTolerance) {
  int looped = 0, last_resorts = 0, most_steps = 0, not_solved = 0;
  int several = 0, taking_in = 0, held_shut = 0, valves = 0, shut_valves = 0, holding = 0;
  int shut_regulators = 0, backwards = 0, inlets_shut = 0, dry = 0, isolated = 0, cuts = 0;
  Residuals worst;
  std::array<int, 7> loops{};
  std::array<int, 9> steps{};  // up to 4, 8, 16, ...
  const std::uint64_t count = many();
  for (std::uint64_t seed = 1; seed <= count; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Layout layout = random_looped(seed);
    ++loops[static_cast<std::size_t>(std::min(loops_of(layout), 6))];
    looped += loops_of(layout) > 0;
    std::optional<Solution> solution;
    try {
      solution = solve(layout);
    } catch (const std::exception& it) {
      ++not_solved;
      ADD_FAILURE() << it.what();
      continue;
    }
    const Residuals& residuals = solution->residuals();
    EXPECT_TRUE(residuals.are_met());
    worst.mass = std::max(worst.mass, residuals.mass);
    worst.energy = std::max(worst.energy, residuals.energy);
    worst.outlet = std::max(worst.outlet, residuals.outlet);
    last_resorts += residuals.last_resort;
    most_steps = std::max(most_steps, residuals.steps);
    std::size_t bin = 0;
    while (bin + 1 < steps.size() && residuals.steps > (4 << bin)) ++bin;
    ++steps[bin];
    several += !layout.further_supplies().empty();
    for (const OperatingPoint& supply : all_supplies(*solution)) {
      taking_in += supply.flow < Flow{};
      held_shut += supply.held_shut;
    }
    for (const LineSolution& line : solution->lines()) {
      dry += static_cast<int>(std::ranges::count(line.state, OutletState::dry));
      valves += line.check_valve.has_value();
      shut_valves += line.check_valve == CheckValveState::shut;
      holding += line.regulator && line.regulator->state == RegulatorState::holding;
      shut_regulators += line.regulator && line.regulator->state == RegulatorState::shut;
      backwards += line.inflow < Flow{};
      inlets_shut += line.inlet_shut && !line.pipes.empty();
      isolated += line.pipes.empty();
    }
    for (const Fault& fault : layout.faults()) cuts += std::holds_alternative<LineCut>(fault);
  }
  std::printf("%llu layouts, %d looped; with 0 to 5 and more loops",
              static_cast<unsigned long long>(count),
              looped);
  for (const int n : loops) std::printf(" %d", n);
  std::printf("\n%d with several supplies, of which %d take water in and %d are held shut\n",
              several,
              taking_in,
              held_shut);
  std::printf(
      "%d check valves, %d of them shut; regulators: %d hold, %d are shut; %d lines run backwards, "
      "%d are fed from their far ends only, %d are isolated; %d dry outlets, %d cuts\n",
      valves,
      shut_valves,
      holding,
      shut_regulators,
      backwards,
      inlets_shut,
      isolated,
      dry,
      cuts);
  std::printf("worst mass %.1e, energy %.1e, outlet %.1e; %d last resorts, %d not solved\n",
              worst.mass,
              worst.energy,
              worst.outlet,
              last_resorts,
              not_solved);
  std::printf("at most %d steps; up to 4, 8, 16 ...:", most_steps);
  for (const int n : steps) std::printf(" %d", n);
  std::printf("\n");
  EXPECT_GE(looped, static_cast<int>(count) / 2);
  EXPECT_GE(std::min({several, taking_in, held_shut, shut_valves, holding, shut_regulators}),
            static_cast<int>(count) / 100);
  EXPECT_GE(std::min({backwards, inlets_shut, isolated, dry, cuts}), static_cast<int>(count) / 100);
}

TEST_F(Loops, TheHeadsLostAreTheSameBothWaysRound) {
  int judged = 0;
  double worst = 0;
  const auto law = [&](const Layout& layout) {
    const Solution solution = solve(layout);
    const double scale = head_scale_m(solution);
    Recomputed anew(solution);
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      const LineSolution& solved = solution.lines()[l];
      SCOPED_TRACE(line.name);
      for (const Recomputed::Part& part : anew.parts(l)) {
        if (!part.has_water) continue;
        ASSERT_TRUE(part.start);
        for (const Recomputed::Point& point : part.points)
          if (point.outlet > 0) {
            const auto i = static_cast<std::size_t>(point.outlet - 1);
            EXPECT_NEAR(
                anew.total(solved.line_pressure[i], layout.outlet_elevation(l, point.outlet)),
                part.head(point),
                1e-9 * scale)
                << "outlet " << point.outlet;
          }
      }
      const auto joined = layout.joined_by(l);
      if (!joined || !anew.last(l).has_water) continue;
      const Length place = ends_at(line, layout.lines()[*joined]);
      ++judged;
      const auto there = anew.head_at(*joined, place);
      ASSERT_TRUE(there);
      const double gap = anew.last(l).end() - *there;
      worst = std::max(worst, std::abs(gap) / scale);
      EXPECT_LE(std::abs(gap), 1e-12 * scale);
      EXPECT_NEAR(anew.total(solved.end_pressure, layout.ground_elevation(l, line.whole_length())),
                  anew.last(l).end(),
                  1e-9 * scale);
    }
  };
  for_each_layout(law);
  std::printf("%d ways round, worst gap %.1e of the head span\n", judged, worst);
  EXPECT_GT(judged, 1000);
}

// 1e-12 of the largest flow at each place, and a line has at most 80 of them.
TEST_F(Loops, LinesKeepTheirWater) {
  double worst = 0;
  const auto law = [&](const Layout& layout) {
    const Solution solution = solve(layout);
    // Where all water stands still rounding moves it by less than a drop in a hundred
    // thousand years.
    constexpr double no_flow = 1e-20;  // m3/s
    const double tolerance = std::max(no_flow, 80e-12 * flow_scale(solution));
    Recomputed anew(solution);
    double out = 0;
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      SCOPED_TRACE(layout.lines()[l].name);
      const LineSolution& solved = solution.lines()[l];
      for (const Recomputed::Part& part : anew.parts(l)) {
        const bool ends = &part == &anew.last(l);
        EXPECT_NEAR(part.ends_with, ends ? si(solved.end_flow) : 0, tolerance);
        for (const Recomputed::Point& point : part.points)
          if (point.outlet > 0) {
            const auto i = static_cast<std::size_t>(point.outlet - 1);
            const Pipe& pipe = layout.lines()[l].pipe_at(solved.distance[i]);
            if (part.has_water) {
              EXPECT_NEAR(si(solved.velocity[i]),
                          si(velocity(pipe, Flow::from_value(point.arrives))),
                          si(velocity(pipe, Flow::from_value(tolerance))));
            }
          }
      }
      for (const Flow& flow : solved.flow) out += si(flow);
      for (const Opening& opening : solved.openings) out += si(opening.flow);
    }
    const double left = std::abs(out - si(solution.inflow()));
    EXPECT_LE(left, tolerance);
    if (left > no_flow) worst = std::max(worst, left / flow_scale(solution));
  };
  for_each_layout(law);
  std::printf("water out less water in: at most %.1e of the largest flow\n", worst);
}

TEST_F(Loops, WaterRunsBackThroughNoCheckValveRegulatorOrPump) {
  int open = 0, shut = 0, held_shut = 0;
  const auto law = [&](const Layout& layout) {
    const Solution solution = solve(layout);
    const double rounding = 1e-11 * head_scale_m(solution);
    Recomputed anew(solution);
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      const LineSolution& solved = solution.lines()[l];
      SCOPED_TRACE(line.name);
      const bool has_check_valve = line.check_valve.value_or(false);
      const bool regulates =
          solved.regulator && solved.regulator->state != RegulatorState::stuck_open;
      if (has_check_valve || regulates) {
        EXPECT_GE(solved.inflow, Flow{});
      }
      if (!anew.first(l).has_water || solved.inlet_shut) continue;
      const double comes = anew.total(solved.inlet_pressure, layout.inlet_elevation(l));
      const double beyond = anew.first(l).start.value();
      if (has_check_valve && !regulates) {
        ASSERT_TRUE(solved.check_valve);
        if (*solved.check_valve == CheckValveState::open) {
          EXPECT_NEAR(beyond, comes, rounding);
          ++open;
        } else {
          EXPECT_GE(beyond, comes - rounding);
          EXPECT_EQ(solved.inflow, Flow{});
          ++shut;
        }
      }
      if (!regulates) continue;
      const double set = anew.total(*line.regulator, layout.inlet_elevation(l));
      const double K_loss = si(
          fitting_loss(line.pipe_at(Length{}), anew.loss_coefficient_at_inlet(l), solved.inflow));
      switch (solved.regulator->state) {
        case RegulatorState::holding:
          EXPECT_NEAR(solved.regulator->pressure / *line.regulator, 1, 1e-12);
          EXPECT_GE(comes - K_loss, set - rounding);
          break;
        case RegulatorState::open:
          EXPECT_LE(beyond - K_loss, set + rounding);
          EXPECT_NEAR(beyond, comes, rounding);
          break;
        case RegulatorState::shut:
          EXPECT_EQ(solved.inflow, Flow{});
          EXPECT_GE(beyond, std::min(comes, set) - rounding);
          break;
        case RegulatorState::stuck_open:
          break;
      }
    }
    const std::vector<OperatingPoint> supplies = all_supplies(solution);
    for (std::size_t s = 0; s < supplies.size(); ++s) {
      const Supply& supply =
          s == 0 ? layout.supply_as_it_is() : layout.further_supplies_as_they_are()[s - 1];
      const OperatingPoint& is = supplies[s];
      if (!takes_water_in(supply)) {
        EXPECT_GE(is.flow, Flow{});
      }
      const OperatingPoint wanted = operating_point(supply, is.flow, layout.water(), layout.site());
      const double above = si(head(is.pressure - wanted.pressure, solution.water().density));
      if (is.held_shut) {
        EXPECT_EQ(is.flow, Flow{});
        EXPECT_GE(above, -rounding);
        ++held_shut;
      } else {
        EXPECT_NEAR(above, 0, rounding);
      }
    }
  };
  for_each_layout(law);
  EXPECT_GT(std::min({open, shut, held_shut}), 20);
}

TEST_F(Loops, TheOrderOfLinesAndOfFurtherSuppliesChangesNoBit) {
  const auto law = [](const Layout& layout) {
    std::mt19937_64 engine(7);
    std::vector<Line> lines = layout.lines();
    std::shuffle(lines.begin(), lines.end(), engine);
    std::vector<Supply> supplies = layout.further_supplies();
    std::shuffle(supplies.begin(), supplies.end(), engine);
    Layout shuffled(layout.supply(), lines, layout.water(), layout.site(), layout.sets(), supplies);
    if (!layout.running_sets().empty()) shuffled = shuffled.watering(layout.running_sets());
    const Solution one = solve(layout);
    const Solution other = solve(shuffled.with_faults(layout.faults()));
    EXPECT_EQ(one.supply().flow, other.supply().flow);
    EXPECT_EQ(one.supply().pressure, other.supply().pressure);
    for (std::size_t s = 0; s < supplies.size(); ++s) {
      const auto same =
          std::ranges::find(supplies, layout.further_supplies()[s].name, &Supply::name);
      const OperatingPoint& is =
          other.further_supplies()[static_cast<std::size_t>(same - supplies.begin())];
      EXPECT_EQ(one.further_supplies()[s].flow, is.flow);
      EXPECT_EQ(one.further_supplies()[s].pressure, is.pressure);
    }
    for (const LineSolution& line : one.lines()) {
      const LineSolution& same = other.line(line.name);
      EXPECT_TRUE(std::ranges::equal(line.flow.si(), same.flow.si())) << line.name;
      EXPECT_TRUE(std::ranges::equal(line.line_pressure.si(), same.line_pressure.si()));
      EXPECT_TRUE(std::ranges::equal(line.velocity.si(), same.velocity.si()));
      EXPECT_EQ(line.inflow, same.inflow);
      EXPECT_EQ(line.end_flow, same.end_flow);
      EXPECT_EQ(line.end_pressure, same.end_pressure);
    }
  };
  for_each_layout(law);
}

/// Least of all changes of pressure, and the largest, in all lines and at all supplies [m].
std::pair<double, double> changes(const Solution& before, const Solution& after) {
  double least = 0, most = 0;
  const auto include = [&](const Pressure& one, const Pressure& other) {
    const double change = si(head(other - one, before.water().density));
    least = std::min(least, change);
    most = std::max(most, change);
  };
  for (std::size_t l = 0; l < before.lines().size(); ++l) {
    const LineSolution &one = before.lines()[l], &other = after.lines()[l];
    include(one.inlet_pressure, other.inlet_pressure);
    include(one.end_pressure, other.end_pressure);
    for (std::size_t i = 0; i < one.flow.size(); ++i)
      include(one.line_pressure[i], other.line_pressure[i]);
  }
  const std::vector<OperatingPoint> one = all_supplies(before), other = all_supplies(after);
  for (std::size_t s = 0; s < one.size(); ++s) include(one[s].pressure, other[s].pressure);
  return {least, most};
}

// 1e-12 of the head's scale in each of up to 1,000 equations along the ways to a place.
double rounding_m(const Solution& solution) {
  return 1e-9 * head_scale_m(solution);
}

TEST_F(Loops, OpeningAnOutletRaisesNoPressure) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    const Solution open = solve(layout);
    for (const Line& line : layout.lines()) {
      if (line.outlet_count() == 0) continue;
      const int outlet = (line.outlet_count() + 1) / 2;
      const auto possible = layout.with_possible_faults({capped(line.name, outlet)});
      if (!possible.skipped.empty()) continue;
      ++judged;
      EXPECT_LE(changes(solve(possible.layout), open).second, rounding_m(open))
          << line.name << ", outlet " << outlet;
    }
  };
  for_each_layout(law);
  EXPECT_GT(judged, 1000);
}

// Two rows unlike each other, a cross pipe between their far ends: the better one gives to the
// other.
TEST_F(Loops, ACrossPipeLowersThePressureAtOneOfItsEnds) {
  const Pipe pipe{.inside_diameter = 1.754 * inch, .hazen_williams = 150};
  const Outlet spray{.flow = 3.52 * gpm, .at = 25 * psi};
  const Line few{.name = "row 1", .pipe = pipe, .outlet = spray, .count = 6, .spacing = 36 * ft};
  const Line many{.name = "row 2", .pipe = pipe, .outlet = spray, .count = 14, .spacing = 36 * ft};
  const Line cross{
      .name = "cross pipe", .fed_by = "row 1", .joins = "row 2", .pipe = pipe, .length = 30 * ft};
  const Layout apart(Supply{.pressure = 34 * psi}, {few, many});
  const Solution before = solve(apart), after = solve(apart.with_line(cross));
  EXPECT_LT(after.line("row 1").end_pressure, before.line("row 1").end_pressure - 0.5 * psi);
  EXPECT_GT(after.line("row 2").end_pressure, before.line("row 2").end_pressure + 0.5 * psi);
}

/// Pressures and flows of the lines of `part` are those that they have in `whole`.
void expect_same_lines(const Solution& part, const Solution& whole) {
  for (const LineSolution& line : part.lines()) {
    const LineSolution& same = whole.line(line.name);
    for (std::size_t i = 0; i < line.pressure.size(); ++i) {
      EXPECT_NEAR(si(head(line.line_pressure[i] - same.line_pressure[i], part.water().density)),
                  0,
                  rounding_m(whole))
          << line.name << ", outlet " << i + 1;
    }
  }
}

TEST_F(Loops, ACrossPipeWhoseValveIsShutIsNone) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    if (!layout.sets().empty()) return;
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      Line line = layout.lines()[l];
      const auto is_on_it = [&](const Line& other) {
        return other.fed_by == line.name || other.joins == line.name;
      };
      if (line.joins.empty() || line.outlet_count() > 0 || !layout.faults_on(l).empty() ||
          std::ranges::any_of(layout.lines(), is_on_it))
        continue;
      ++judged;
      line.valve = Valve{.opening = ValveOpening::shut};
      const auto none =
          layout.without_faults().without(line.name).with_possible_faults(layout.faults());
      const Layout shut = layout.without_faults().with_line(line);
      const auto with_it = shut.with_possible_faults(layout.faults());
      if (none.skipped.size() != with_it.skipped.size()) continue;
      expect_same_lines(solve(none.layout), solve(with_it.layout));
    }
  };
  for_each_layout(law);
  EXPECT_GT(judged, 200);
}

/// Rows of random layouts that look the same from both ends.
std::optional<Line> plain_row(std::uint64_t seed) {
  const Layout layout = random_layout(seed, {.breadth = 0});
  for (Line line : layout.lines()) {
    if (!line.outlet) continue;
    line.fed_by.clear();
    line.first_at.reset();
    line.length.reset();
    line.ground_rise.reset();
    line.loss_coefficient.reset();
    line.outlet_loss_coefficient.reset();
    return line;
  }
  return std::nullopt;
}

TEST_F(Loops, ARowFedAlikeFromBothEndsIsSymmetric) {
  int judged = 0;
  for (std::uint64_t seed = 1; seed <= some_seeds && !HasFailure(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const auto row = plain_row(seed);
    if (!row) continue;
    ++judged;
    const Line back{.name = "back",
                    .fed_by = "hill tank",
                    .joins = row->name,
                    .pipe = row->pipe,
                    .length = row->spacing};
    const Solution solution =
        solve(Layout(Supply{.tank = Tank{.level = 20 * units::m}},
                     {*row, back},
                     {},
                     {},
                     {},
                     {Supply{.tank = Tank{.level = 20 * units::m}, .name = "hill tank"}}));
    const LineSolution& line = solution.line(row->name);
    for (std::size_t i = 0; i < line.flow.size(); ++i) {
      const std::size_t opposite = line.flow.size() - 1 - i;
      EXPECT_NEAR(
          si(head(line.line_pressure[i] - line.line_pressure[opposite], solution.water().density)),
          0,
          1e-11 * 20);
    }
    // What runs through from one tank to the other loses no head worth the name.
    const auto lost = [&](const Flow& flow) {
      return si(friction_loss(row->pipe, *row->spacing, flow, solution.water()));
    };
    EXPECT_NEAR(
        lost(solution.supply().flow), lost(solution.further_supplies()[0].flow), 1e-11 * 20);
  }
  EXPECT_GT(judged, some_seeds / 2);
}

TEST_F(Loops, NoHeadIsLostInACrossPipeBetweenTwoRowsAlike) {
  int judged = 0;
  for (std::uint64_t seed = 1; seed <= some_seeds && !HasFailure(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const auto row = plain_row(seed);
    if (!row) continue;
    ++judged;
    Line one = *row, other = *row;
    one.name = "row 1";
    other.name = "row 2";
    const Line cross{.name = "cross pipe",
                     .fed_by = "row 1",
                     .joins = "row 2",
                     .pipe = row->pipe,
                     .length = row->spacing};
    const Layout apart(Supply{.pressure = 200 * kPa}, {one, other});
    const Solution together = solve(apart.with_line(cross));
    const double scale = head_scale_m(together);
    const double lost = si(friction_loss(
        row->pipe, *row->spacing, together.line("cross pipe").inflow, together.water()));
    EXPECT_NEAR(lost, 0, 1e-11 * scale);
    expect_same_lines(solve(apart), together);
  }
  EXPECT_GT(judged, some_seeds / 2);
}

}  // namespace
}  // namespace hydro
