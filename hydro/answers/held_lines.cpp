#include "hydro/answers/held_lines.hpp"

#include "hydro/solver/settle.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace hydro {
namespace {

Layout with_held(const Layout& layout,
                 const Pressure& pressure,
                 const std::optional<Filter>& filter) {
  return layout.with_supply(
      {.pressure = pressure, .filter = filter, .elevation = layout.supply().elevation});
}

/// The first supply's faults go with the supply.
Layout without_faults_of_first_supply(const Layout& layout) {
  std::vector<Fault> kept = layout.faults();
  if (std::erase_if(kept, is_of_first_supply) == 0) return layout;
  return layout.without_faults().with_faults(kept);
}

/// Broken and capped outlets are not.
bool is_judged(const Fault* fault) {
  return !fault ||
         !(std::holds_alternative<HeadOff>(*fault) ||
           std::holds_alternative<RiserSheared>(*fault) ||
           std::holds_alternative<NozzleMissing>(*fault) || std::holds_alternative<Capped>(*fault));
}

}  // namespace

HeldLines::HeldLines(const Layout& layout)
    : layout_(with_held(without_faults_of_first_supply(layout), 100 * kPa, {})),
      water_(properties(layout.water())) {
  if (judged([](const Outlet& kind) { return kind.rated_pressure(); }).empty())
    throw InvalidInput("layout", "has no open outlet that works; there is nothing to set for");
}

Flow HeldLines::flow_at(const Pressure& held, const std::optional<Filter>& filter) const {
  const Layout here = with_held(layout_, held, filter);
  const Tree tree = make_tree(here, water_);
  const Settled settled = settle(tree, SolveOptions{}.newton_steps);
  if (!settled.met) solve(here);  // throws, with what was reached
  return Flow::from_value(settled.sweeps.source_flow());
}

std::vector<HeldLines::Judged> HeldLines::judged(const Wanted& wanted) const {
  const double weight_density = si(water_.density) * gravity;
  std::vector<Judged> outlets;
  for (std::size_t line = 0; line < layout_.lines().size(); ++line) {
    if (layout_.is_shut(line)) continue;
    const std::vector<Fault>& faults = layout_.faults_on(line);
    auto fault = faults.begin();
    for (int number = 1; number <= layout_.lines()[line].outlet_count(); ++number) {
      while (fault != faults.end() && outlet_of(*fault).value_or(0) < number) ++fault;
      const bool has_fault = fault != faults.end() && outlet_of(*fault) == number;
      if (!is_judged(has_fault ? &*fault : nullptr)) continue;
      outlets.push_back({line,
                         static_cast<std::size_t>(number - 1),
                         si(wanted(layout_.outlet_at(line, number))) / weight_density});
    }
  }
  return outlets;
}

HeldLines::Excess HeldLines::excess_at(double head, const std::vector<Judged>& outlets) const {
  const double weight_density = si(water_.density) * gravity;
  const Layout here = with_held(layout_, Pressure::from_value(head * weight_density), {});
  const Tree tree = make_tree(here, water_);
  const Settled settled = settle(tree, SolveOptions{}.newton_steps);
  if (!settled.met) solve(here);  // throws, with what was reached
  const std::vector<double> rises = settled.sweeps.device_rises();
  Excess worst{std::numeric_limits<double>::infinity(), 0, settled.sweeps.source_flow()};
  for (const Judged& outlet : outlets) {
    const LinePlaces& places = tree.lines[outlet.line];
    const std::size_t place =
        outlet.outlet < places.outlets ? tree.place_of(places, outlet.outlet) : nowhere;
    const std::int32_t reference = place != nowhere ? tree.places[place].mouth : none;
    if (reference == none) return {-HUGE_VAL, 0, worst.flow};
    const State& state = settled.sweeps.states()[place];
    const Mouth& mouth = tree.mouths[static_cast<std::size_t>(reference)];
    const double pressure = state.outlet_flow > 0 ? std::min(state.outlet_head, mouth.law.held)
                                                  : state.head - mouth.height;
    if (pressure - outlet.wanted < worst.head) {
      worst.head = pressure - outlet.wanted;
      worst.slope = rises[place];
    }
  }
  return worst;
}

std::optional<HeldLines::Enough> HeldLines::enough(const Wanted& wanted) const {
  constexpr double close = 1e-9;   // of the wanted head
  constexpr int most_steps = 200;  // Newton's method needs some 3, bisection alone 50
  const double weight_density = si(water_.density) * gravity;
  const double most = si(highest_held) / weight_density;
  const std::vector<Judged> outlets = judged(wanted);
  double scale = 0;
  for (const Judged& outlet : outlets) scale = std::max(scale, outlet.wanted);

  double low = 0;
  double high = most;
  bool low_is_too_little = false;
  bool high_is_enough = false;
  double head = std::min(first_guess(outlets), most);
  for (int step = 0; step < most_steps; ++step) {
    const Excess excess = excess_at(head, outlets);
    if (!(excess.head > -HUGE_VAL)) return std::nullopt;
    const bool enough = excess.head > 0;
    if (std::abs(excess.head) <= close * scale || (enough && head <= 0))
      return Enough{Pressure::from_value(head * weight_density), Flow::from_value(excess.flow)};
    if (!enough && head >= most) return std::nullopt;
    (enough ? high : low) = head;
    (enough ? high_is_enough : low_is_too_little) = true;
    const double far_end = enough ? 0 : most;
    head = excess.slope > 0 ? head - excess.head / excess.slope : far_end;
    if (head > low && head < high) continue;
    const bool far_end_is_known = enough ? low_is_too_little : high_is_enough;
    head = far_end_is_known ? low + (high - low) / 2 : far_end;
  }
  throw std::runtime_error("the search for the pressure at the start of the lines did not settle");
}

/// As if an eighth of the pressure were lost on the way.
double HeldLines::first_guess(const std::vector<Judged>& outlets) const {
  constexpr double usual_loss = 1.125;
  const double supply = si(layout_.supply().elevation.value_or(Length{}));
  double head = 0;
  for (const Judged& outlet : outlets) {
    const double height =
        si(layout_.outlet_elevation(outlet.line, static_cast<int>(outlet.outlet) + 1)) +
        si(layout_.lines()[outlet.line].riser.height) - supply;
    head = std::max(head, height + usual_loss * outlet.wanted);
  }
  return head;
}

}  // namespace hydro
