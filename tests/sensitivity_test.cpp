// Sensitivities: central differences of whole solutions on random layouts of every kind, a small model
// of its own in complex numbers, and laws that must hold exactly.
#include "hydro/answers/sensitivity.hpp"

#include "hydro/physics/friction_law.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstdint>
#include <functional>
#include <numbers>
#include <optional>
#include <ostream>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "changed_input.hpp"
#include "random_layout.hpp"
#include "random_looped.hpp"
#include "random_pumped.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using units::m;

// ---- Against central differences of solve() ----

using AnyFigure = std::variant<PressureFigure, FlowFigure>;

/// As the solution has it, in SI units.
double read(const Solution& solution, const AnyFigure& figure) {
  if (const auto* it = std::get_if<PressureFigure>(&figure)) {
    const OperatingPoint& point =
        it->at.empty() ? solution.supply() : solution.further_supplies().front();
    const auto i = static_cast<std::size_t>(it->outlet - 1);
    switch (it->kind) {
      case PressureFigure::Kind::device:
        return si(solution.line(it->at).pressure[i]);
      case PressureFigure::Kind::line:
        return si(solution.line(it->at).line_pressure[i]);
      case PressureFigure::Kind::supply:
        return si(point.pressure);
      case PressureFigure::Kind::gauge:
        return si(point.gauge_reading.value());
      case PressureFigure::Kind::inlet:
        return si(solution.line(it->at).inlet_pressure);
      case PressureFigure::Kind::end:
        return si(solution.line(it->at).end_pressure);
    }
  }
  const auto& it = std::get<FlowFigure>(figure);
  if (it.kind == FlowFigure::Kind::all) return si(solution.inflow());
  if (it.kind == FlowFigure::Kind::supply) return si(solution.supply().flow);
  if (it.kind == FlowFigure::Kind::inflow) return si(solution.line(it.at).inflow);
  return si(solution.line(it.at).flow[static_cast<std::size_t>(it.outlet - 1)]);
}

/// One influence in SI units, by the share or by the metre; and the figure itself.
struct Plain {
  std::vector<NamedInput> inputs;
  std::function<double(const NamedInput&)> of;
  double value;
};
Plain plain(const Sensitivities& sensitivities, const AnyFigure& figure) {
  return std::visit(
      [&](const auto& it) {
        const auto found = sensitivities.of(it);
        Plain result;
        for (const auto& influence : found.influences)
          result.inputs.push_back({influence.input, influence.at, influence.number});
        result.of = [found](const NamedInput& named) {
          const auto influence = found.of(named.input, named.at, named.number);
          return is_height(named.input) ? influence.by_height.value() : si(influence.by_share);
        };
        result.value = si(found.value);
        return result;
      },
      figure);
}

std::vector<AnyFigure> some_figures(const Layout& layout, std::mt19937_64& dice) {
  std::vector<AnyFigure> figures{supply_pressure(), whole_inflow(), supply_flow()};
  if (layout.supply().gauge) figures.push_back(gauge_reading());
  const Line* line = &layout.lines()[dice() % layout.lines().size()];
  figures.push_back(inflow_of(line->name));
  figures.push_back(PressureFigure{PressureFigure::Kind::inlet, line->name});
  // Where elevations are listed the ground beyond the last outlet goes up with that outlet's.
  if (line->elevations.empty())
    figures.push_back(PressureFigure{PressureFigure::Kind::end, line->name});
  for (std::size_t i = 0; i < layout.lines().size() && line->outlet_count() == 0; ++i)
    line = &layout.lines()[i];
  if (const int count = line->outlet_count(); count > 0) {
    const int outlet = 1 + static_cast<int>(dice() % static_cast<std::uint64_t>(count));
    figures.push_back(pressure_at(line->name, outlet));
    figures.push_back(line_pressure_at(line->name, outlet));
    figures.push_back(flow_of(line->name, outlet));
  }
  return figures;
}

std::optional<double> solved(const std::optional<Layout>& layout, const AnyFigure& figure) {
  if (!layout) return std::nullopt;
  try {
    return read(solve(*layout), figure);
  } catch (const NotSolved&) {
    return std::nullopt;
  }
}

/// How well the least loss along a line in a loop is known, which is to 1e-12 of the heads; 1 where
/// one is so small that it is not.
double doubt_of_flows(const Solution& solution) {
  const Layout& layout = solution.layout();
  double heads = 1e5;  // as pressures [Pa]
  for (const LineSolution& line : solution.lines())
    heads = std::max(heads, si(line.inlet_pressure));
  double doubt = 0;
  for (std::size_t i = 0; i < solution.lines().size(); ++i) {
    const LineSolution& line = solution.lines()[i];
    if (line.inflow == Flow{} || line.regulator) continue;
    const double rise = si(pressure(layout.ground_rise(i), solution.water().density));
    const double loss = std::abs(si(line.inlet_pressure - line.end_pressure) - rise);
    doubt = std::max(doubt,
                     Residuals::tolerance * heads / std::max(loss, Residuals::tolerance * heads));
  }
  return doubt;
}

double largest_flow(const Solution& solution) {
  double largest = 0;
  for (const LineSolution& line : solution.lines())
    largest = std::max(largest, std::abs(si(line.inflow)));
  return largest;
}

struct Tally {
  int checked = 0;
  int at_a_bend = 0;  ///< differences of more and less of the input do not agree
  int refused = 0;    ///< the figure has no slope
  std::set<Input> inputs = {};
};

/// A difference of two steps, h and h / 2, whose errors with h^2 cancel (Richardson). What is left
/// is less than what halving the step has changed, times a few where a flow near rest has errors
/// with another power of h; and what the solutions are uncertain by, 1e-12 of their scale, over h.
void check_against_differences(const Layout& layout,
                               const Solution& solution,
                               std::mt19937_64& dice,
                               Tally& tally) {
  constexpr double h = 1e-4;
  constexpr double a_few = 10;
  constexpr double bend = 0.02;
  constexpr int inputs_each = 10;
  const Sensitivities sensitivities(solution);
  const bool is_looped =
      std::ranges::any_of(layout.lines(), [](const Line& line) { return !line.joins.empty(); });
  const double doubt = is_looped ? doubt_of_flows(solution) : 0;
  // Inputs that do nothing to one figure do something to another.
  std::vector<NamedInput> all;
  for (const AnyFigure& figure : some_figures(layout, dice)) {
    const bool is_pressure = std::holds_alternative<PressureFigure>(figure);
    if (!is_pressure && doubt > 1e-7) continue;
    Plain exact;
    try {
      exact = plain(sensitivities, figure);
    } catch (const InvalidInput& error) {
      EXPECT_THAT(error.what(), HasSubstr("stands still"));
      ++tally.refused;
      continue;
    }
    const double value = read(solution, figure);
    if (!is_pressure && std::abs(value) < 1e-9 * largest_flow(solution)) continue;
    EXPECT_DOUBLE_EQ(exact.value, value);
    const double scale = is_pressure
                             ? std::max(1e5, si(solution.supply_pressure()))
                             : std::max({1e-9, std::abs(value), std::abs(si(solution.inflow()))});
    all.insert(all.end(), exact.inputs.begin(), exact.inputs.end());
    for (int i = 0; i < inputs_each && !all.empty(); ++i) {
      const bool any = exact.inputs.empty() || dice() % 4 == 0;
      const std::vector<NamedInput>& inputs = any ? all : exact.inputs;
      NamedInput named = inputs[dice() % inputs.size()];
      if (named.input == Input::length) named.number = 0;
      const auto with = [&](double change) {
        return solved(with_changed(layout, named, change), figure);
      };
      const auto more = with(h), less = with(-h), half_more = with(h / 2), half_less = with(-h / 2);
      if (!more || !less || !half_more || !half_less) continue;
      const double one_sided = std::abs(*more + *less - 2 * value) / h;
      const double coarse = (*more - *less) / (2 * h);
      const double fine = (*half_more - *half_less) / h;
      const double noise = 10 * Residuals::tolerance * scale / h + 10 * doubt * scale;
      if (one_sided > bend * std::abs(fine) + noise) {
        ++tally.at_a_bend;
        continue;
      }
      ++tally.checked;
      tally.inputs.insert(named.input);
      EXPECT_NEAR(
          exact.of(named), fine + (fine - coarse) / 3, a_few * std::abs(fine - coarse) + noise)
          << words_of(named.input) << " of " << named.at << ", " << named.number << "; figure "
          << figure.index() << " is " << value;
    }
  }
}

enum class Kind { trees, farms, pumped, looped };
struct RandomLayouts {
  Kind kind;
  std::uint64_t count;
  std::size_t inputs;  ///< of different names that are met
};
void PrintTo(const RandomLayouts& layouts, std::ostream* out) {
  *out << std::vector<const char*>{"trees", "farms", "pumped", "looped"}.at(
      static_cast<std::size_t>(layouts.kind));
}
Layout random_one(Kind kind, std::uint64_t seed) {
  switch (kind) {
    case Kind::trees:
      return random_layout(seed);
    case Kind::farms:
      return random_layout(seed, {.farm = true});
    case Kind::pumped:
      return random_pumped(seed);
    case Kind::looped:
      break;
  }
  return random_looped(seed);
}

class SensitivityOf : public testing::TestWithParam<RandomLayouts> {};

TEST_P(SensitivityOf, RandomLayoutsIsThatOfDifferences) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= GetParam().count; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937_64 dice(seed);
    const Layout layout = random_one(GetParam().kind, seed);
    try {
      const Solution solution = solve(layout);
      // Where all stands still most gates and outlets are about to turn.
      if (GetParam().kind == Kind::looped && !(largest_flow(solution) > 1e-9)) continue;
      check_against_differences(layout, solution, dice, tally);
    } catch (const NotSolved&) {
    }
  }
  EXPECT_GT(tally.checked, 15 * static_cast<int>(GetParam().count));
  EXPECT_LT(tally.at_a_bend, tally.checked / 50);
  EXPECT_LT(tally.refused, GetParam().kind == Kind::looped ? tally.checked / 100 : 1);
  EXPECT_GE(tally.inputs.size(), GetParam().inputs);
}

INSTANTIATE_TEST_SUITE_P(Of,
                         SensitivityOf,
                         testing::Values(RandomLayouts{Kind::trees, 60, 17},
                                         RandomLayouts{Kind::farms, 80, 28},
                                         RandomLayouts{Kind::pumped, 60, 24},
                                         RandomLayouts{Kind::looped, 150, 27}),
                         testing::PrintToStringParamName());

// ---- Against a model of its own: one line, its equations written anew, in complex numbers ----
//
// The derivative of an analytic function is the imaginary part of its value at x + ih, over h, with no
// difference taken: h may be 1e-30 (W. Squire and G. Trapp, SIAM Rev. 40 (1998) 110-112, from memory).

using Complex = std::complex<double>;

struct RowInputs {
  Complex bore = 0.03, c = 150, length = 1, k_inlet = 2, k_outlet = 0.4;
  Complex riser_height = 0.8, riser_bore = 0.012, riser_c = 140, riser_k = 1.5;
  Complex supply = 30;  // head [m]
  Complex exponent = 0.6;
  std::vector<Complex> flow = std::vector<Complex>(8, 2.5e-4);          // at 20 m [m3/s]
  std::vector<Complex> ground{0.3, 0.7, 0.6, 1.5, 1.4, 1.9, 2.6, 2.4};  // above the supply [m]
};

struct RowFigures {
  std::vector<Complex> pressure, line_pressure, flow;  // heads [m], [m3/s]
  Complex inflow;
};

class Row {
 public:
  explicit Row(const RowInputs& inputs) : in_(inputs) {}

  RowFigures solve() const {
    // The head at the last device that asks for the head of the supply: by bisection, then by
    // Newton's method with a slope that need not be exact.
    double low = 1e-6, high = in_.supply.real();
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      (backwards(middle).head_of_supply.real() > in_.supply.real() ? high : low) = middle;
    }
    Complex last = low;
    constexpr double step = 1e-5;
    const Complex slope = (backwards(low + step).head_of_supply.real() -
                           backwards(low - step).head_of_supply.real()) /
                          (2 * step);
    for (int i = 0; i < 10; ++i) last -= (backwards(last).head_of_supply - in_.supply) / slope;
    return backwards(last).figures;
  }

 private:
  struct Walk {
    RowFigures figures;
    Complex head_of_supply;
  };

  static Complex hazen_williams(Complex length, Complex flow, Complex c, Complex bore) {
    return 10.67 * length * std::pow(flow, 1.852) / (std::pow(c, 1.852) * std::pow(bore, 4.8704));
  }
  static Complex fittings(Complex k, Complex flow, Complex bore) {
    const Complex velocity = flow / (std::numbers::pi / 4 * bore * bore);
    return k * velocity * velocity / (2 * 9.80665);
  }
  Complex outflow(std::size_t i, Complex head) const {
    return in_.flow[i] * std::pow(head / 20.0, in_.exponent);
  }
  Complex head_before_riser(std::size_t i, Complex head) const {
    const Complex q = outflow(i, head);
    return head + in_.riser_height +
           hazen_williams(in_.riser_height, q, in_.riser_c, in_.riser_bore) +
           fittings(in_.riser_k, q, in_.riser_bore);
  }

  /// From the far end to the supply, at this head at the last device.
  Walk backwards(Complex head) const {
    constexpr double spacing = 6;
    const std::size_t n = in_.flow.size();
    Walk walk;
    walk.figures = {std::vector<Complex>(n), std::vector<Complex>(n), std::vector<Complex>(n), 0};
    Complex line_head = head_before_riser(n - 1, head);
    for (std::size_t i = n; i-- > 0;) {
      for (int step = 0; step < 30; ++step) {  // the head at this device
        const double d = 1e-6 * head.real();
        const double slope =
            (head_before_riser(i, head.real() + d) - head_before_riser(i, head.real() - d)).real() /
            (2 * d);
        head -= (head_before_riser(i, head) - line_head) / slope;
      }
      walk.figures.pressure[i] = head;
      walk.figures.line_pressure[i] = line_head;
      walk.figures.flow[i] = outflow(i, head);
      Complex& Q = walk.figures.inflow;
      Q += walk.figures.flow[i];
      line_head += hazen_williams(spacing * in_.length, Q, in_.c, in_.bore) +
                   fittings(in_.k_outlet, Q, in_.bore);
      if (i == 0) line_head += fittings(in_.k_inlet, Q, in_.bore);
      line_head += in_.ground[i] - (i > 0 ? in_.ground[i - 1] : 0);
    }
    walk.head_of_supply = line_head;
    return walk;
  }

  const RowInputs& in_;
};

struct RowInput {
  Input input;
  int number;
  std::function<Complex&(RowInputs&)> of;
  std::string at = "row";
};

TEST(Sensitivity, IsThatOfAModelInComplexNumbers) {
  const RowInputs plain_inputs;
  const Water water;
  const double weight = si(properties(water).density) * gravity;
  Line line{
      .name = "row",
      .pipe = {.inside_diameter = 0.03 * m, .hazen_williams = 150},
      .outlet = Outlet{.flow = 2.5e-4 * m3_per_s, .at = 20 * weight * units::Pa, .exponent = 0.6},
      .count = 8,
      .spacing = 6 * m,
      .riser = {.height = 0.8 * m,
                .inside_diameter = 0.012 * m,
                .hazen_williams = 140,
                .loss_coefficient = 1.5},
      .loss_coefficient = 2,
      .outlet_loss_coefficient = 0.4};
  for (const Complex& ground : plain_inputs.ground) line.elevations.push_back(ground.real() * m);
  const Solution solution =
      solve(Layout{Supply{.pressure = 30 * weight * units::Pa}, {line}, water});
  const Sensitivities sensitivities(solution);

  std::vector<RowInput> inputs{
      {Input::inside_diameter, 0, [](RowInputs& in) -> Complex& { return in.bore; }},
      {Input::hazen_williams, 0, [](RowInputs& in) -> Complex& { return in.c; }},
      {Input::length, 0, [](RowInputs& in) -> Complex& { return in.length; }},
      {Input::loss_coefficient, 0, [](RowInputs& in) -> Complex& { return in.k_inlet; }},
      {Input::outlet_loss_coefficient, 0, [](RowInputs& in) -> Complex& { return in.k_outlet; }},
      {Input::riser_height, 0, [](RowInputs& in) -> Complex& { return in.riser_height; }},
      {Input::riser_inside_diameter, 0, [](RowInputs& in) -> Complex& { return in.riser_bore; }},
      {Input::riser_hazen_williams, 0, [](RowInputs& in) -> Complex& { return in.riser_c; }},
      {Input::riser_loss_coefficient, 0, [](RowInputs& in) -> Complex& { return in.riser_k; }},
      {Input::exponent, 0, [](RowInputs& in) -> Complex& { return in.exponent; }},
      {Input::supply_pressure, 0, [](RowInputs& in) -> Complex& { return in.supply; }, ""}};
  for (const std::size_t i : {0u, 3u, 7u}) {
    const int number = static_cast<int>(i) + 1;
    inputs.push_back({Input::flow, number, [i](RowInputs& in) -> Complex& { return in.flow[i]; }});
    inputs.push_back(
        {Input::ground, number, [i](RowInputs& in) -> Complex& { return in.ground[i]; }});
  }
  // Both are exact; the states are those of equations that are met to 1e-12 of 30 m and of the inflow.
  constexpr double close = 100 * Residuals::tolerance;
  for (const RowInput& it : inputs) {
    RowInputs in = plain_inputs;
    Complex& changed = it.of(in);
    constexpr double h = 1e-30;
    changed += Complex(0, h);
    const double per = (is_height(it.input) ? 1 : changed.real()) / h;
    const RowFigures figures = Row(in).solve();
    const auto expect = [&](const AnyFigure& figure, const Complex& of_model, double unit) {
      const Plain exact = plain(sensitivities, figure);
      const double scale =
          std::holds_alternative<PressureFigure>(figure) ? 30 * weight : si(solution.inflow());
      EXPECT_NEAR(exact.value, of_model.real() * unit, close * scale);
      EXPECT_NEAR(
          exact.of({it.input, it.at, it.number}), of_model.imag() * per * unit, close * scale)
          << words_of(it.input) << " " << it.number;
    };
    for (const int outlet : {1, 5, 8}) {
      const auto i = static_cast<std::size_t>(outlet - 1);
      expect(pressure_at("row", outlet), figures.pressure[i], weight);
      expect(line_pressure_at("row", outlet), figures.line_pressure[i], weight);
      expect(flow_of("row", outlet), figures.flow[i], 1);
    }
    expect(inflow_of("row"), figures.inflow, 1);
    expect(whole_inflow(), figures.inflow, 1);
  }
}

// ---- Laws ----

/// One outlet at the end of a pipe that holds its flow, so that the loss is all that changes.
Layout with_held_flow(Pipe pipe, double loss_coefficient = 0) {
  const Outlet held{.flow = 20 * lpm, .compensating = Compensating{50 * kPa, 400 * kPa}};
  return {Supply{.pressure = 300 * kPa},
          {Line{.name = "row",
                .pipe = std::move(pipe),
                .outlet = held,
                .count = 1,
                .spacing = 50 * m,
                .loss_coefficient = loss_coefficient}}};
}

// Source: h = 10.67 L Q^1.852 / (C^1.852 D^4.8704), the law of Hazen and Williams in SI units as it
// is printed in textbooks; h = f L V^2 / (2 g D), the law of Darcy and Weisbach, that is Q^2 / D^5;
// K V^2 / (2 g), that is Q^2 / D^4.
TEST(Sensitivity, OfALossAtAHeldFlowIsThePrintedExponent) {
  struct Case {
    Pipe pipe;
    double loss_coefficient;
    Input wall;
    double by_bore, by_wall;
  };
  const Length bore = 20 * mm;
  for (const Case& it :
       {Case{{.inside_diameter = bore, .hazen_williams = 150},
             0,
             Input::hazen_williams,
             -4.8704,
             -1.852},
        Case{{.inside_diameter = bore, .darcy_factor = 0.03}, 0, Input::darcy_factor, -5, 1}}) {
    const Solution solution = solve(with_held_flow(it.pipe));
    const auto found = sensitivity(solution, pressure_at("row", 1));
    const double loss = si(solution.supply_pressure() - found.value);
    EXPECT_NEAR(si(found.of(Input::inside_diameter, "row").by_share) / loss, -it.by_bore, 1e-9);
    EXPECT_NEAR(si(found.of(it.wall, "row").by_share) / loss, -it.by_wall, 1e-9);
    EXPECT_NEAR(si(found.of(Input::length, "row").by_share) / loss, -1, 1e-9);
  }
  // A pipe that loses next to nothing, with a fitting.
  const Solution fitting =
      solve(with_held_flow({.inside_diameter = bore, .darcy_factor = 0.001}, 100));
  const auto found = sensitivity(fitting, pressure_at("row", 1));
  const double by_k = si(found.of(Input::loss_coefficient, "row").by_share);
  const double by_wall = si(found.of(Input::darcy_factor, "row").by_share);
  EXPECT_NEAR(by_k + by_wall, -si(fitting.supply_pressure() - found.value), 1e-4);
  EXPECT_NEAR(si(found.of(Input::inside_diameter, "row").by_share), -4 * by_k - 5 * by_wall, 1e-3);
}

// Source: dq / q = x dp / p, the definition of the flow exponent x.
TEST(Sensitivity, OfAnOutletAtTheSupplyIsItsExponent) {
  for (const double x : {0.2, 0.5, 0.8, 1.0}) {
    const Outlet outlet{.flow = 3 * lph, .at = 100 * kPa, .exponent = x};
    const Layout layout{Supply{.pressure = 150 * kPa},
                        {Line{.name = "row",
                              .pipe = {.inside_diameter = 1 * m, .hazen_williams = 150},
                              .outlet = outlet,
                              .count = 1,
                              .spacing = 0.01 * m}}};
    const auto found = sensitivity(solve(layout), flow_of("row", 1));
    const double q = si(found.value);
    EXPECT_NEAR(si(found.of(Input::supply_pressure, "").by_share) / q, x, 1e-11);
    EXPECT_NEAR(si(found.of(Input::flow, "row", 1).by_share) / q, 1, 1e-11);
    EXPECT_NEAR(si(found.of(Input::exponent, "row", 1).by_share) / q, x * std::log(1.5), 1e-11);
  }
}

/// Where losses go with Q^2 and outlets with the square root, on the flat, all pressures go with that
/// of the supply and all flows with its root (Euler's rule for homogeneous functions).
TEST(Sensitivity, AddsUpWhereAllGoesWithTheSupply) {
  const Pipe pipe{.inside_diameter = 25 * mm, .darcy_factor = 0.025};
  const Outlet outlet{.flow = 10 * lpm, .at = 200 * kPa};
  const Solution solution =
      solve(Layout{Supply{.pressure = 300 * kPa},
                   {Line{.name = "main", .pipe = pipe, .length = 30 * m, .loss_coefficient = 2},
                    Line{.name = "row 1",
                         .fed_by = "main",
                         .pipe = pipe,
                         .outlet = outlet,
                         .count = 5,
                         .spacing = 8 * m},
                    Line{.name = "row 2",
                         .fed_by = "main",
                         .joins = "row 1",
                         .pipe = pipe,
                         .outlet = outlet,
                         .count = 2,
                         .spacing = 9 * m}}});
  const Sensitivities sensitivities(solution);
  for (const int i : {1, 3, 5}) {
    const auto pressure = sensitivities.of(pressure_at("row 1", i));
    EXPECT_NEAR(si(pressure.of(Input::supply_pressure, "").by_share), si(pressure.value), 1e-5);
    const auto flow = sensitivities.of(flow_of("row 1", i));
    EXPECT_NEAR(si(flow.of(Input::supply_pressure, "").by_share) / si(flow.value), 0.5, 1e-10);
    // Outlets of half the flow and walls of four times the factor leave all pressures as they are.
    double sum = 0;
    for (const auto& it : pressure.influences) {
      if (it.input == Input::flow) sum += si(it.by_share);
      if (it.input == Input::darcy_factor || it.input == Input::loss_coefficient)
        sum -= 2 * si(it.by_share);
    }
    EXPECT_NEAR(sum, 0, 1e-5);
  }
}

TEST(Sensitivity, OfTheFrictionLawsIsThatOfDifferences) {
  const WaterProperties water = properties(Water{});
  constexpr double h = 1e-4;
  for (const double roughness : {0.0, 1e-6, 1e-4, 4e-4}) {
    for (double reynolds = 500; reynolds < 1e7; reynolds *= 1.17) {
      const double bore = 0.02;
      const double flow = reynolds * std::numbers::pi / 4 * bore * si(water.kinematic_viscosity);
      const auto loss = [&](double bore_share, double wall_share) {
        const Pipe pipe{.inside_diameter = bore * std::exp(bore_share) * m,
                        .roughness = roughness * std::exp(wall_share) * m};
        return std::log(FrictionLaw(pipe, water).per_metre(flow).head);
      };
      const LossPowers powers =
          FrictionLaw({.inside_diameter = bore * m, .roughness = roughness * m}, water)
              .powers(flow);
      // Differences are good to h^2 times third derivatives, which reach some tens in the blend.
      EXPECT_NEAR(powers.bore, (loss(h, 0) - loss(-h, 0)) / (2 * h), 1e-5) << reynolds;
      EXPECT_NEAR(powers.wall, (loss(0, h) - loss(0, -h)) / (2 * h), 1e-6) << reynolds;
    }
  }
}

// ---- The face of it ----

Layout two_rows() {
  const Pipe wide{.name = "wide", .inside_diameter = 40 * mm, .hazen_williams = 150};
  const Pipe narrow{.name = "narrow", .inside_diameter = 25 * mm, .hazen_williams = 150};
  const Outlet head{.name = "head", .flow = 10 * lpm, .at = 200 * kPa};
  const Line row{.name = "row 1",
                 .fed_by = "main",
                 .pipe = narrow,
                 .reaches = {{wide, 20 * m}},
                 .outlet = head,
                 .count = 6,
                 .spacing = 8 * m,
                 .riser = {.height = 1 * m}};
  Line second = row;
  second.name = "row 2";
  return {Supply{.pressure = 250 * kPa},
          {Line{.name = "main", .pipe = wide, .length = 60 * m}, row, second}};
}

TEST(Sensitivity, ComesStrongestFirstAndAddsUp) {
  const auto found = sensitivity(solve(two_rows()), pressure_at("row 1", 6));
  ASSERT_GT(found.influences.size(), 20u);
  for (std::size_t i = 1; i < found.influences.size(); ++i)
    EXPECT_GE(std::abs(si(found.influences[i - 1].by_one_step())),
              std::abs(si(found.influences[i].by_one_step())));
  EXPECT_EQ(found.influences.front().input, Input::supply_pressure);
  const auto by_line = found.by_line();
  const auto by_kind = found.by_kind();
  EXPECT_LT(by_kind.influences.size(), by_line.influences.size());
  double outlets = 0, wide = 0;
  for (const auto& it : found.influences) {
    if (it.input == Input::flow && it.at == "row 1") outlets += si(it.by_share);
    if (it.input == Input::inside_diameter && it.kind == "wide") wide += si(it.by_share);
  }
  const auto of_row = by_line.of(Input::flow, "row 1");
  EXPECT_NEAR(si(of_row.by_share), outlets, 1e-9);
  EXPECT_NEAR(si(found.of(Input::flow, "row 1").by_share), outlets, 1e-9);
  double wide_by_kind = 0;
  for (const auto& it : by_kind.influences)
    if (it.input == Input::inside_diameter && it.kind == "wide") wide_by_kind += si(it.by_share);
  EXPECT_NEAR(wide_by_kind, wide, 1e-9);
  // The pipes of a line with reaches count from 1 on.
  EXPECT_GT(si(found.of(Input::inside_diameter, "row 1", 1).by_share), 0);
  EXPECT_GT(si(found.of(Input::inside_diameter, "row 1", 2).by_share), 0);
  EXPECT_EQ(si(found.of(Input::inside_diameter, "row 1", 3).by_share), 0);
  EXPECT_NEAR(si(found.of(Input::flow, "row 1", 6).by_one_step()),
              si(found.of(Input::flow, "row 1", 6).by_share) / 100,
              1e-12);
  EXPECT_NEAR(si(found.of(Input::riser_height, "row 1").by_one_step()),
              found.of(Input::riser_height, "row 1").by_height.value() * 0.03048,
              1e-9);
}

TEST(Sensitivity, OfWhatDoesNotAnswerIsNothing) {
  const Layout layout = two_rows();
  const Solution broken =
      solve(layout.with_faults({line_cut("row 2", 30 * m), clogged("row 1", 2, 0.5)}));
  EXPECT_THAT(sensitivity(broken, pressure_at("row 2", 5)).influences, IsEmpty());
  EXPECT_THAT(sensitivity(broken, flow_of("row 2", 5)).influences, IsEmpty());
  EXPECT_THAT(sensitivity(broken, line_pressure_at("row 2", 5)).influences, IsEmpty());

  const Solution is_capped = solve(layout.with_fault(capped("row 1", 6)));
  EXPECT_THAT(sensitivity(is_capped, flow_of("row 1", 6)).influences, IsEmpty());
  const auto standing = sensitivity(is_capped, pressure_at("row 1", 6));
  const double weight = si(is_capped.water().density) * gravity;
  const auto in_line = sensitivity(is_capped, line_pressure_at("row 1", 6));
  EXPECT_NEAR(standing.of(Input::riser_height, "row 1").by_height.value(),
              in_line.of(Input::riser_height, "row 1").by_height.value() - weight,
              1e-6);

  Line regulated = layout.line("row 1");
  regulated.outlet->regulator = 100 * kPa;
  const Solution held = solve(layout.with_line(regulated));
  const auto of_held = sensitivity(held, pressure_at("row 1", 3));
  ASSERT_EQ(of_held.influences.size(), 1u);
  EXPECT_EQ(of_held.influences[0].input, Input::outlet_regulator);
  EXPECT_NEAR(si(of_held.influences[0].by_share), 100e3, 1e-6);
  EXPECT_EQ(of_held.influences[0].number, 3);
}

template <class Function>
std::string message_of(Function&& function) {
  try {
    function();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "";
}

TEST(Sensitivity, SaysWhatIsNotThere) {
  const Sensitivities sensitivities(solve(two_rows()));
  const auto message = [&](const auto& figure) {
    return message_of([&] { (void)sensitivities.of(figure); });
  };
  EXPECT_THAT(message(pressure_at("row 3", 1)), HasSubstr("line: \"row 3\" is not in this layout"));
  EXPECT_THAT(message(pressure_at("row 1", 7)), HasSubstr("outlet: is 7, must be from 1 to 6"));
  EXPECT_THAT(message(flow_of("row 1", 0)), HasSubstr("outlet: is 0, must be from 1 to 6"));
  EXPECT_THAT(message(flow_of("main", 1)), HasSubstr("line: is \"main\", which has no outlets"));
  EXPECT_THAT(message(supply_pressure("pond")),
              HasSubstr("supply: \"pond\" is not in this layout"));
  EXPECT_THAT(message(gauge_reading()), HasSubstr("gauge: is not given"));
}

// A pond above the pump's head at rest holds its check valve shut: its gauge knows of the pump alone.
TEST(Sensitivity, OfAGaugeBehindAShutCheckValveIsThatOfThePump) {
  const Pump pump{.points = {{Flow{}, 20 * m}, {200 * lpm, 12 * m}}, .curve_speed = 2000 * rpm};
  Supply pond{.pressure = 400 * kPa};
  pond.name = "pond";
  const Pipe pipe{.inside_diameter = 40 * mm, .hazen_williams = 150};
  const Outlet head{.flow = 10 * lpm, .at = 200 * kPa};
  const Layout layout{
      Supply{.pump = pump, .suction = Suction{.lift = 1 * m}, .gauge = Gauge{}},
      {Line{.name = "main", .pipe = pipe, .outlet = head, .count = 3, .spacing = 20 * m},
       Line{.name = "back", .fed_by = "pond", .joins = "main", .pipe = pipe, .length = 30 * m}},
      {},
      {},
      {},
      {pond}};
  const Solution solution = solve(layout);
  ASSERT_TRUE(solution.supply().held_shut);
  const double weight = si(solution.water().density) * gravity;
  const auto reading = sensitivity(solution, gauge_reading());
  EXPECT_NEAR(si(reading.value), 19 * weight, 1e-6);
  EXPECT_EQ(reading.influences.size(), 3u);
  EXPECT_NEAR(si(reading.of(Input::pump_head, "", 1).by_share), 20 * weight, 1e-6);
  EXPECT_NEAR(si(reading.of(Input::pump_speed, "", 1).by_share), 40 * weight, 1e-6);
  EXPECT_NEAR(reading.of(Input::suction_lift, "").by_height.value(), -weight, 1e-6);
  // Of the pressure in the lines it knows nothing, nor they of the pump.
  const auto in_lines = sensitivity(solution, pressure_at("main", 2));
  EXPECT_EQ(si(in_lines.of(Input::pump_head, "", 1).by_share), 0);
  EXPECT_GT(si(in_lines.of(Input::supply_pressure, "pond").by_share), 0);
}

// Two equal supplies and nothing that flows between them: with one a little higher, the flow is a
// power 0.54 of it, whose slope is infinite.
TEST(Sensitivity, SaysWhereWaterStandsStill) {
  const Pipe pipe{.inside_diameter = 25 * mm, .hazen_williams = 150};
  Supply pond{.pressure = 100 * kPa};
  pond.name = "pond";
  const Layout layout{
      Supply{.pressure = 100 * kPa},
      {Line{.name = "east", .pipe = pipe, .length = 50 * m},
       Line{.name = "west", .fed_by = "pond", .joins = "east", .pipe = pipe, .length = 50 * m}},
      {},
      {},
      {},
      {pond}};
  const Sensitivities sensitivities(solve(layout));
  EXPECT_THAT(message_of([&] { (void)sensitivities.of(supply_flow()); }),
              HasSubstr("stands still"));
}

}  // namespace
}  // namespace hydro
