#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <optional>
#include <span>
#include <utility>

namespace hydro {
namespace {

template <class T>
std::int32_t keep(std::vector<T>& store, T value) {
  store.push_back(std::move(value));
  return static_cast<std::int32_t>(store.size() - 1);
}

/// Where a line begins along another.
struct Tap {
  std::size_t feeder;
  double at;  ///< from the feeder's inlet [m]
  std::size_t line;
};

/// Something along a line that is no outlet. At one place they come in this order, after the outlet.
struct Stop {
  enum Kind { pipe_change, tap, leak, open_end, far_end };
  double at;  ///< from the inlet [m]
  Kind kind;
  std::size_t which;  ///< the tap or the fault
};

/// What outlets leave by, and what stands open to the air.
class MouthBuilder {
 public:
  MouthBuilder(const Line& line, const WaterProperties& water)
      : line_(line), water_(water), weight_density_(si(water.density) * gravity) {}

  Mouth sound(const Outlet& outlet) const {
    Mouth mouth{outlet_law(outlet, weight_density_), si(line_.riser.height), false, {}};
    if (const auto pipe = line_.riser.pipe()) {
      mouth.has_riser = true;
      mouth.riser = {
          FrictionLaw(*pipe, water_),
          si(line_.riser.height),
          fitting_coefficient(line_.riser.loss_coefficient.value_or(0), si(pipe->inside_diameter)),
          0};
    }
    return mouth;
  }

  /// None if the fault closes the outlet.
  std::optional<Mouth> faulty(const Fault& fault) const {
    if (std::holds_alternative<Capped>(fault)) return std::nullopt;
    if (const auto open = open_riser(fault, line_)) return open_mouth(*open);
    if (const auto open = open_body(fault, line_))
      return sound({.rated = 1 * bar,
                    .nozzle = open->bore,
                    .discharge_coefficient = open->discharge_coefficient,
                    .regulator = line_.kind_of(outlet_of(fault).value()).regulator});
    if (const auto* wrong = std::get_if<WrongOutlet>(&fault)) return sound(wrong->fitted);
    if (std::holds_alternative<RegulatorStuckShut>(fault)) return std::nullopt;
    if (std::holds_alternative<RegulatorStuckOpen>(fault)) {
      Outlet unregulated = line_.kind_of(outlet_of(fault).value());
      unregulated.regulator.reset();
      return sound(unregulated);
    }
    double share = 1;
    if (const auto* it = std::get_if<Clogged>(&fault)) share -= it->share;
    if (const auto* it = std::get_if<Worn>(&fault)) share += it->share;
    Mouth mouth = sound(line_.kind_of(outlet_of(fault).value()));
    mouth.law.coefficient *= share;
    mouth.law.inverse_coefficient /= share;
    return mouth;
  }

  Mouth hole(const Leak& leak) const {
    return {outlet_law({.flow = leak.flow,
                        .at = leak.at,
                        .exponent = leak.exponent.value_or(Leak::default_exponent)},
                       weight_density_),
            0,
            false,
            {}};
  }

  static Mouth open_end(const Pipe& pipe) { return {open_to_air(pipe, 0), 0, false, {}}; }

 private:
  Mouth open_mouth(const OpenRiser& open) const {
    const Pipe pipe = line_.riser.pipe().value();
    return {open_to_air(pipe, open.loss_coefficient),
            si(open.height),
            true,
            {FrictionLaw(pipe, water_), si(open.height), 0, 0}};
  }

  static OutletLaw open_to_air(const Pipe& pipe, double loss_coefficient) {
    const double velocity_head = fitting_coefficient(1, si(pipe.inside_diameter));
    return {std::sqrt(1 / ((1 + loss_coefficient) * velocity_head)), 0.5};
  }

  const Line& line_;
  const WaterProperties& water_;
  double weight_density_;
};

/// Builds the runs of one line.
class RunBuilder {
 public:
  RunBuilder(const Layout& layout, std::size_t index, const WaterProperties& water, Tree& tree)
      : layout_(layout),
        index_(index),
        line_(layout.lines()[index]),
        faults_(layout.faults_on(index)),
        mouths_(line_, water),
        water_(water),
        length_(si(line_.whole_length())),
        supply_elevation_(si(layout.supply().elevation.value_or(Length{}))),
        slope_(si(layout.ground_rise(index)) / length_),
        reached_elevation_(si(layout.inlet_elevation(index)) - supply_elevation_),
        tree_(tree),
        places_(tree.lines[index]) {}

  /// @param taps on this line, in order
  /// @param run_of_tap by the line that begins there: the run that ends there is entered
  void build(std::int32_t fed_by,
             std::span<const Tap> taps,
             std::vector<std::int32_t>& run_of_tap) {
    const std::vector<Stop> stops = stops_along(taps);
    next_pipe();
    pending_loss_ = line_.loss_coefficient.value_or(0);
    if (line_.valve && line_.valve->opening != ValveOpening::shut)
      pending_loss_ += loss_coefficient(*line_.valve);
    for (const Fault& fault : faults_)
      if (const auto* valve = std::get_if<ValvePartClosed>(&fault))
        pending_loss_ += valve->loss_coefficient;
    begin_run(fed_by);
    if (is_regulated()) add_regulator();
    const int count = line_.outlet_count();
    int number = 1;
    for (const Stop& stop : stops) {
      for (; number <= count && si(line_.place_of(number)) <= stop.at; ++number) add_outlet(number);
      if (stop.kind == Stop::open_end) {
        add_open(stop, mouths_.open_end(line_.pipe_at(Length::from_value(stop.at))));
        end_run();
        return;
      }
      if (stop.kind == Stop::leak)
        add_open(stop, mouths_.hole(std::get<Leak>(faults_[stop.which])));
      else if (stop.kind == Stop::pipe_change)
        change_pipe(stop.at);
      else
        pass(stop.at);
      if (stop.kind == Stop::tap) {
        end_run();
        run_of_tap[taps[stop.which].line] = places_.last_run;
      }
    }
    end_run();
  }

 private:
  std::vector<Stop> stops_along(std::span<const Tap> taps) const {
    std::vector<Stop> stops;
    const auto add = [&](const Length& place, Stop::Kind kind, std::size_t which) {
      stops.push_back({si(line_.merged(place)), kind, which});
    };
    for (std::size_t i = 0; i < line_.reaches.size(); ++i)
      add(line_.reaches[i].to, Stop::pipe_change, i);
    for (std::size_t i = 0; i < taps.size(); ++i) stops.push_back({taps[i].at, Stop::tap, i});
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      if (const auto* leak = std::get_if<Leak>(&faults_[i])) add(leak->place, Stop::leak, i);
      if (const auto end = open_end(faults_[i], line_)) add(*end, Stop::open_end, i);
    }
    stops.push_back({length_, Stop::far_end, 0});
    std::ranges::stable_sort(stops, {}, [](const Stop& it) { return std::pair(it.at, it.kind); });
    return stops;
  }

  bool is_regulated() const {
    return line_.regulator && std::ranges::none_of(faults_, [](const Fault& fault) {
             const auto* stuck = std::get_if<RegulatorStuckOpen>(&fault);
             return stuck && !stuck->outlet;
           });
  }

  /// A place at the inlet, behind the losses of the fittings there and before any step in the ground.
  void add_regulator() {
    add_place(0, 0, 0, 0, none, layout_.inlet_elevation(index_));
    Reach& reach = tree_.reaches[static_cast<std::size_t>(last_.reach)];
    reach.held = si(*line_.regulator) / (si(water_.density) * gravity);
    tree_.has_regulators = true;
    Run& run = tree_.runs.back();
    run.regulated = std::min(run.regulated, run.elevation + reach.held);
    last_.reach = none;
  }

  void next_pipe() {
    pipe_ = next_reach_ < line_.reaches.size() ? &line_.reaches[next_reach_].pipe : &line_.pipe;
    ++next_reach_;
    friction_ = FrictionLaw(*pipe_, water_);
    last_.reach = none;
  }

  void change_pipe(double at) {
    if (at > reached_) pass(at);
    places_.ends_of_reaches.push_back(tree_.places.size());
    next_pipe();
  }

  /// A place without a mouth, where there is none yet.
  void pass(double at) {
    const bool has_one = places_.first_run != none && tree_.places.size() > first_place_;
    if (!has_one || at > reached_) add_place(at, at - reached_, 0, 0, none);
  }

  void add_open(const Stop& stop, Mouth mouth) {
    places_.open.push_back({tree_.places.size(), stop.which});
    add_place(stop.at, stop.at - reached_, 0, 0, keep(tree_.mouths, std::move(mouth)));
  }

  void add_outlet(int number) {
    const double at = si(line_.place_of(number));
    const bool even = line_.outlets.empty() && reached_outlet_ == number - 1 && number > 1;
    const bool in_a_row = tree_.places.size() == first_place_ + places_.outlets;
    if (!in_a_row && places_.of_outlets.empty())
      for (std::size_t i = 0; i < places_.outlets; ++i)
        places_.of_outlets.push_back(first_place_ + i);
    if (!in_a_row || !places_.of_outlets.empty()) places_.of_outlets.push_back(tree_.places.size());
    ++places_.outlets;
    add_place(at,
              even ? si(line_.spacing.value_or(Length{})) : at - reached_,
              line_.outlet_loss_coefficient.value_or(0),
              si(line_.connection_length.value_or(Length{})),
              mouth_of(number),
              line_.elevations.empty()
                  ? std::nullopt
                  : std::optional(line_.elevations[static_cast<std::size_t>(number - 1)]));
    reached_outlet_ = number;
  }

  std::int32_t mouth_of(int number) {
    while (next_fault_ < faults_.size() && outlet_of(faults_[next_fault_]).value_or(0) < number)
      ++next_fault_;
    if (next_fault_ < faults_.size() && outlet_of(faults_[next_fault_]) == number) {
      auto mouth = mouths_.faulty(faults_[next_fault_]);
      return mouth ? keep(tree_.mouths, std::move(*mouth)) : none;
    }
    const Outlet& kind = line_.kind_of(number);
    if (kind_ != &kind && !(kind_ && *kind_ == kind)) {
      kind_ = &kind;
      sound_ = keep(tree_.mouths, mouths_.sound(kind));
    }
    return sound_;
  }

  /// @param gap from the place before, `extra` pipe with it that loses but leads nowhere [m]
  void add_place(double at,
                 double gap,
                 double loss,
                 double extra,
                 std::int32_t mouth,
                 std::optional<Length> ground = {}) {
    if (!in_run_) begin_run(places_.last_run);
    double rise = slope_ * gap;
    if (!line_.elevations.empty())
      rise = si(ground ? *ground : layout_.ground_elevation(index_, Length::from_value(at))) -
             supply_elevation_ - reached_elevation_;
    reached_elevation_ += rise;
    loss += std::exchange(pending_loss_, 0);
    if (!(last_.reach != none && last_.gap == gap && last_.loss == loss && last_.extra == extra &&
          last_.rise == rise))
      last_ = {gap,
               loss,
               extra,
               rise,
               keep(tree_.reaches,
                    Reach{friction_,
                          gap + extra,
                          fitting_coefficient(loss, si(pipe_->inside_diameter)),
                          rise})};
    tree_.places.push_back({last_.reach, mouth});
    reached_ = at;
    reached_outlet_ = 0;
  }

  void begin_run(std::int32_t fed_by) {
    in_run_ = true;
    const double regulated =
        fed_by == none ? no_limit : tree_.runs[static_cast<std::size_t>(fed_by)].regulated;
    places_.last_run =
        keep(tree_.runs,
             Run{fed_by, tree_.places.size(), tree_.places.size(), reached_elevation_, regulated});
    if (places_.first_run == none) {
      places_.first_run = places_.last_run;
      first_place_ = tree_.places.size();
    }
  }

  void end_run() {
    in_run_ = false;
    tree_.runs.back().end = tree_.places.size();
  }

  const Layout& layout_;
  std::size_t index_;
  const Line& line_;
  const std::vector<Fault>& faults_;
  MouthBuilder mouths_;
  const WaterProperties& water_;
  double length_;
  double supply_elevation_;
  double slope_;              ///< of the ground, where it rises evenly
  double reached_elevation_;  ///< of the last place, above the supply [m]
  Tree& tree_;
  LinePlaces& places_;

  bool in_run_ = false;
  std::size_t first_place_ = 0;
  double reached_ = 0;      ///< distance of the last place [m]
  int reached_outlet_ = 0;  ///< number of the outlet at the last place, if one is there
  std::size_t next_reach_ = 0;
  const Pipe* pipe_ = nullptr;
  FrictionLaw friction_;
  double pending_loss_ = 0;  ///< K at the inlet, for the first place
  std::size_t next_fault_ = 0;
  const Outlet* kind_ = nullptr;  ///< that `sound_` is the mouth of
  std::int32_t sound_ = none;
  /// The reach before, to be used again where the next one is the same.
  struct {
    double gap, loss, extra, rise;
    std::int32_t reach = none;
  } last_{};
};

/// A little more than the flow at which a reach would lose `head`: steps on the logarithms, in which
/// every loss is nearly straight.
double capacity_for(const Reach& reach, double head) {
  constexpr double near_enough = 0.05;
  double flow = 1e-3;
  for (int step = 0; step < 8; ++step) {
    double slope = unknown_slope;
    const Loss loss = reach.loss(flow, slope);
    if (!(loss.head > 0 && head > 0)) return no_limit;
    const double factor = std::pow(head / loss.head, loss.head / (flow * loss.slope));
    flow *= factor;
    if (std::abs(factor - 1) < near_enough) break;
  }
  constexpr double generous = 1.2;  // a reach must never be held below what it carries
  return generous * flow;
}

/// Only lines that begin along another: at its far end there is nothing to look for.
std::vector<Tap> taps_of(const Layout& layout) {
  std::vector<Tap> taps;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const Line& line = layout.lines()[i];
    if (!(line.tap || line.tap_outlet) || layout.is_cut_off(i)) continue;
    const std::size_t feeder = layout.feeder_of(i).value();
    taps.push_back({feeder, si(begins_at(line, layout.lines()[feeder])), i});
  }
  std::ranges::stable_sort(taps, {}, [](const Tap& it) { return std::pair(it.feeder, it.at); });
  return taps;
}

/// @param taps sorted by feeder
std::span<const Tap> taps_on(const std::vector<Tap>& taps, std::size_t feeder) {
  const auto is_before = [](const Tap& tap, std::size_t line) { return tap.feeder < line; };
  const auto first = std::lower_bound(taps.begin(), taps.end(), feeder, is_before);
  const auto end = std::lower_bound(first, taps.end(), feeder + 1, is_before);
  return {first, end};
}

/// Lowest and highest ground of a line above the supply, outlets included [m].
std::pair<double, double> ground_of(const Layout& layout, std::size_t index) {
  const Line& line = layout.lines()[index];
  const double supply = si(layout.supply().elevation.value_or(Length{}));
  const double near = si(layout.inlet_elevation(index)) - supply;
  std::pair<double, double> ground{near, near};
  const auto include = [&](double elevation) {
    ground = {std::min(ground.first, elevation), std::max(ground.second, elevation)};
  };
  include(near + si(layout.ground_rise(index)));
  for (const Length& elevation : line.elevations) include(si(elevation) - supply);
  ground.second += si(line.riser.height);
  return ground;
}

void bound_capacities(Tree& tree) {
  constexpr double margin = 2.1;  // of the head span: the supply's head, the whole fall, and some
  const double head = margin * tree.head_span;
  for (std::size_t i = 0; i < tree.reaches.size(); ++i) {
    Reach& reach = tree.reaches[i];
    const Reach* before = i > 0 ? &tree.reaches[i - 1] : nullptr;
    const bool alike = before && before->length == reach.length &&
                       before->fitting == reach.fitting && before->friction == reach.friction;
    reach.capacity = alike ? before->capacity : capacity_for(reach, head);
  }
  for (Mouth& mouth : tree.mouths)
    if (mouth.has_riser) mouth.riser.capacity = capacity_for(mouth.riser, head);
}

}  // namespace

Tree make_tree(const Layout& layout, const WaterProperties& water) {
  Tree tree(SupplyLaw(layout.supply_as_it_is(), water));
  tree.places.reserve(static_cast<std::size_t>(layout.outlet_count()) + layout.lines().size());
  tree.lines.resize(layout.lines().size());

  const std::vector<Tap> taps = taps_of(layout);
  std::vector<std::int32_t> run_of_tap(taps.empty() ? 0 : layout.lines().size(), none);
  double lowest = 0;
  double highest = 0;
  for (const std::size_t i : layout.outward_order()) {
    const auto [low, high] = ground_of(layout, i);
    lowest = std::min(lowest, low);
    highest = std::max(highest, high);
    if (layout.is_cut_off(i)) continue;
    const auto feeder = layout.feeder_of(i);
    const bool tapped = !run_of_tap.empty() && run_of_tap[i] != none;
    const std::int32_t fed_by =
        tapped ? run_of_tap[i] : (feeder ? tree.lines[*feeder].last_run : none);
    RunBuilder(layout, i, water, tree).build(fed_by, taps_on(taps, i), run_of_tap);
  }
  tree.head_span = std::max(std::abs(tree.supply.head_at_rest()), highest - lowest);
  bound_capacities(tree);
  return tree;
}

}  // namespace hydro
