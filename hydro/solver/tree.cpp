#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <utility>

namespace hydro {
namespace {

template <class T>
std::int32_t keep(std::vector<T>& store, T value) {
  store.push_back(std::move(value));
  return static_cast<std::int32_t>(store.size() - 1);
}

/// Builds the run of one line.
class RunBuilder {
 public:
  RunBuilder(const Line& line, const WaterProperties& water, Tree& tree)
      : line_(line),
        water_(water),
        weight_density_(si(water.density) * gravity),
        friction_(line_.pipe, water),
        tree_(tree) {}

  void add_places(const std::vector<Fault>& faults) {
    const int count = line_.outlet_count();
    const double at_inlet = line_.loss_coefficient.value_or(0);
    const double at_outlet = line_.outlet_loss_coefficient.value_or(0);
    const double length = si(line_.whole_length());

    const std::int32_t sound = line_.outlet ? keep(tree_.mouths, sound_mouth()) : none;
    const double first = count > 0 ? si(line_.place_of(1)) : 0;
    const double spacing = si(line_.spacing.value_or(Length{}));
    const std::int32_t first_reach =
        count > 0 ? keep(tree_.reaches, reach(first, at_inlet + at_outlet)) : none;
    const std::int32_t next_reach =
        count > 1 ? keep(tree_.reaches, reach(spacing, at_outlet)) : none;
    auto fault = faults.begin();
    for (int number = 1; number <= count; ++number) {
      const bool faulty = fault != faults.end() && outlet_of(*fault) == number;
      tree_.places.push_back(
          {number == 1 ? first_reach : next_reach, faulty ? faulty_mouth(*fault++) : sound});
    }
    const double tail = length - (count > 0 ? si(line_.place_of(count)) : 0);
    if (count == 0 || tail > 0)
      tree_.places.push_back({keep(tree_.reaches, reach(tail, count == 0 ? at_inlet : 0)), none});
  }

 private:
  Reach reach(double length, double loss_coefficient) const {
    const double share_of_line = length / si(line_.whole_length());
    return {friction_,
            length,
            fitting_coefficient(loss_coefficient, si(line_.pipe.inside_diameter)),
            si(line_.ground_rise.value_or(Length{})) * share_of_line};
  }

  Mouth sound_mouth() const {
    const Riser& riser = line_.riser;
    Mouth mouth{outlet_law(*line_.outlet, weight_density_), si(riser.height), false, {}};
    if (const auto pipe = riser.pipe()) {
      mouth.has_riser = true;
      mouth.riser = {
          FrictionLaw(*pipe, water_),
          si(riser.height),
          fitting_coefficient(riser.loss_coefficient.value_or(0), si(pipe->inside_diameter)),
          0};
    }
    return mouth;
  }

  Mouth open_mouth(const OpenRiser& open) const {
    const Pipe pipe = line_.riser.pipe().value();
    const double velocity_head = fitting_coefficient(1, si(pipe.inside_diameter));
    return {OutletLaw{std::sqrt(1 / ((1 + open.loss_coefficient) * velocity_head)), 0.5},
            si(open.height),
            true,
            {FrictionLaw(pipe, water_), si(open.height), 0, 0}};
  }

  /// Index of the mouth that the fault leaves, none if it closes the outlet.
  std::int32_t faulty_mouth(const Fault& fault) {
    if (std::holds_alternative<Capped>(fault)) return none;
    if (const auto open = open_riser(fault, line_)) return keep(tree_.mouths, open_mouth(*open));
    double share = 1;
    if (const auto* it = std::get_if<Clogged>(&fault)) share -= it->share;
    if (const auto* it = std::get_if<Worn>(&fault)) share += it->share;
    Mouth mouth = sound_mouth();
    mouth.law.coefficient *= share;
    mouth.law.inverse_coefficient /= share;
    return keep(tree_.mouths, mouth);
  }

  const Line& line_;
  const WaterProperties& water_;
  double weight_density_;
  FrictionLaw friction_;
  Tree& tree_;
};

/// A little more than the flow at which a reach would lose `head`: steps on the logarithms, in which
/// every loss is nearly straight.
double capacity_for(const Reach& reach, double head) {
  double flow = 1e-3;
  for (int step = 0; step < 8; ++step) {
    double slope = unknown_slope;
    const Loss loss = reach.loss(flow, slope);
    if (!(loss.head > 0 && head > 0)) return no_limit;
    flow *= std::pow(head / loss.head, loss.head / (flow * loss.slope));
  }
  constexpr double generous = 1.2;  // a reach must never be held below what it carries
  return generous * flow;
}

}  // namespace

Tree make_tree(const Layout& layout, const WaterProperties& water) {
  Tree tree;
  tree.supply_head = si(layout.supply().pressure) / (si(water.density) * gravity);
  tree.places.reserve(static_cast<std::size_t>(layout.outlet_count()) + layout.lines().size());
  tree.run_of_line.resize(layout.lines().size());

  double lowest = 0;
  double highest = 0;
  for (const std::size_t i : layout.outward_order()) {
    const Line& line = layout.lines()[i];
    const std::size_t first = tree.places.size();
    RunBuilder(line, water, tree).add_places(layout.faults_on(i));
    const auto feeder = layout.feeder_of(i);
    const double near =
        si(layout.inlet_elevation(i) - layout.supply().elevation.value_or(Length{}));
    const double far = near + si(line.ground_rise.value_or(Length{}));
    tree.run_of_line[i] = tree.runs.size();
    tree.runs.push_back({feeder ? static_cast<std::int32_t>(tree.run_of_line[*feeder]) : none,
                         first,
                         tree.places.size(),
                         near});
    lowest = std::min({lowest, near, far});
    highest = std::max(highest, std::max(near, far) + si(line.riser.height));
  }
  tree.head_span = std::max(tree.supply_head, highest - lowest);
  constexpr double margin = 2.1;  // of the head span: the supply's head, the whole fall, and some
  for (Reach& reach : tree.reaches) reach.capacity = capacity_for(reach, margin * tree.head_span);
  for (Mouth& mouth : tree.mouths)
    if (mouth.has_riser) mouth.riser.capacity = capacity_for(mouth.riser, margin * tree.head_span);
  return tree;
}

}  // namespace hydro
