#include "hydro/solver/tree.hpp"

#include "hydro/physics/operating_point.hpp"

#include <algorithm>
#include <numeric>
#include <optional>
#include <span>
#include <string_view>
#include <utility>

namespace hydro {
namespace {

template <class T>
std::int32_t keep(std::vector<T>& store, T value) {
  store.push_back(std::move(value));
  return static_cast<std::int32_t>(store.size() - 1);
}

/// Where another line begins along a line, or joins it.
struct Tap {
  std::size_t on;
  double at;  ///< from its inlet [m]
  std::size_t line;
  bool joins;
};

/// By line: the run at whose far end it begins along another line, and that at whose far end it
/// joins along another; both empty where none does.
struct MeetingRuns {
  std::vector<std::int32_t> at_inlet;
  std::vector<std::int32_t> at_far_end;

  static std::int32_t of(std::size_t line, const std::vector<std::int32_t>& runs) {
    return runs.empty() ? none : runs[line];
  }
};

/// Something along a line that is no outlet. At one place they come in this order, after the outlet.
struct Stop {
  enum Kind { pipe_change, tap, leak, open_end, tap_beyond, far_end };
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
        places_(tree.lines[index]) {
    places_.start = tree.places.size();
  }

  /// @param fed_by the run that feeds it, or none; then `source` does
  /// @param taps on this line, in order; the runs that end there are entered into `meeting`
  void build(std::int32_t fed_by,
             std::int32_t source,
             std::span<const Tap> taps,
             MeetingRuns& meeting) {
    const std::vector<Stop> stops = stops_along(taps);
    next_pipe();
    bool has_water = layout_.inlet_has_water(index_);
    if (has_water) begin_line(fed_by, source);
    const int count = line_.outlet_count();
    int number = 1;
    for (const Stop& stop : stops) {
      for (; number <= count && si(line_.place_of(number)) <= stop.at; ++number)
        has_water ? add_outlet(number) : skip_outlet();
      if (stop.kind == Stop::open_end) {
        const Mouth mouth = mouths_.open_end(line_.pipe_at(Length::from_value(stop.at)));
        if (has_water) {
          add_open(stop, mouth);
          end_run();
        }
        has_water = layout_.has_water_beyond_open_end(index_);
        if (!has_water) return;
        begin_beyond(stop, mouth);
      } else if (stop.kind == Stop::pipe_change) {
        change_pipe(stop.at, has_water);
      } else if (has_water && stop.kind == Stop::leak) {
        add_open(stop, mouths_.hole(std::get<Leak>(faults_[stop.which])));
      } else if (has_water) {
        pass(stop.at);
      }
      if (has_water && (stop.kind == Stop::tap || stop.kind == Stop::tap_beyond)) {
        end_run();
        const Tap& tap = taps[stop.which];
        (tap.joins ? meeting.at_far_end : meeting.at_inlet)[tap.line] = places_.last_run;
      }
    }
    end_run();
  }

 private:
  std::vector<Stop> stops_along(std::span<const Tap> taps) const {
    std::vector<Stop> stops;
    double cut = no_limit;
    const auto add = [&](const Length& place, Stop::Kind kind, std::size_t which) {
      stops.push_back({si(line_.merged(place)), kind, which});
    };
    for (std::size_t i = 0; i < line_.reaches.size(); ++i)
      add(line_.reaches[i].to, Stop::pipe_change, i);
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      if (const auto* leak = std::get_if<Leak>(&faults_[i])) add(leak->place, Stop::leak, i);
      if (const auto end = open_end(faults_[i], line_)) {
        add(*end, Stop::open_end, i);
        cut = stops.back().at;
      }
    }
    for (std::size_t i = 0; i < taps.size(); ++i) {
      const bool beyond = taps[i].at > cut - si(same_place);
      stops.push_back({beyond ? std::max(cut, taps[i].at) : taps[i].at,
                       beyond ? Stop::tap_beyond : Stop::tap,
                       i});
    }
    stops.push_back({length_, Stop::far_end, 0});
    std::ranges::stable_sort(stops, {}, [](const Stop& it) { return std::pair(it.at, it.kind); });
    return stops;
  }

  void begin_line(std::int32_t fed_by, std::int32_t source) {
    pending_loss_ = line_.loss_coefficient.value_or(0);
    if (line_.valve && line_.valve->opening != ValveOpening::shut)
      pending_loss_ += loss_coefficient(*line_.valve);
    for (const Fault& fault : faults_)
      if (const auto* valve = std::get_if<ValvePartClosed>(&fault))
        pending_loss_ += valve->loss_coefficient;
    begin_run(fed_by, source);
    places_.first_run = places_.last_run;
    if (layout_.inlet_is_shut(index_)) return;
    tree_.runs.back().one_way = line_.check_valve.value_or(false) || is_regulated();
    if (is_regulated()) add_regulator();
  }

  /// What is open to the air at its near end too.
  void begin_beyond(const Stop& open, const Mouth& mouth) {
    reached_ = open.at;
    reached_elevation_ =
        si(layout_.ground_elevation(index_, Length::from_value(open.at))) - supply_elevation_;
    begin_run(none, keep(tree_.sources, Source{}));
    places_.beyond_run = places_.last_run;
    add_open(open, mouth);
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
    run.head_at_rest = std::min(run.head_at_rest, run.elevation + reach.held);
    last_.reach = none;
  }

  void next_pipe() {
    pipe_ = next_reach_ < line_.reaches.size() ? &line_.reaches[next_reach_].pipe : &line_.pipe;
    ++next_reach_;
    friction_ = FrictionLaw(*pipe_, water_);
    last_.reach = none;
  }

  void change_pipe(double at, bool has_water) {
    if (has_water && at > reached_) pass(at);
    places_.ends_of_reaches.push_back(tree_.places.size());
    next_pipe();
  }

  /// A place without a mouth, where there is none yet.
  void pass(double at) {
    const bool has_one = tree_.places.size() > places_.start;
    if (!has_one || at > reached_) add_place(at, at - reached_, 0, 0, none);
  }

  void add_open(const Stop& stop, Mouth mouth) {
    places_.open.push_back({tree_.places.size(), stop.which});
    add_place(stop.at, stop.at - reached_, 0, 0, keep(tree_.mouths, mouth));
  }

  void add_outlet(int number) {
    const double at = si(line_.place_of(number));
    const bool even = line_.outlets.empty() && reached_outlet_ == number - 1 && number > 1;
    const bool in_a_row = tree_.places.size() == places_.start + places_.outlets;
    if (!in_a_row && places_.of_outlets.empty())
      for (std::size_t i = 0; i < places_.outlets; ++i)
        places_.of_outlets.push_back(places_.start + i);
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

  /// One to which no water comes, before others to which some does.
  void skip_outlet() {
    places_.of_outlets.push_back(nowhere);
    ++places_.outlets;
  }

  std::int32_t mouth_of(int number) {
    while (next_fault_ < faults_.size() && outlet_of(faults_[next_fault_]).value_or(0) < number)
      ++next_fault_;
    if (next_fault_ < faults_.size() && outlet_of(faults_[next_fault_]) == number) {
      auto mouth = mouths_.faulty(faults_[next_fault_]);
      return mouth ? keep(tree_.mouths, *mouth) : none;
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
    if (!in_run_) begin_run(places_.last_run, none);
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

  void begin_run(std::int32_t fed_by, std::int32_t source) {
    in_run_ = true;
    const double head_at_rest = fed_by == none
                                    ? reached_elevation_ + head_at_rest_of(source)
                                    : tree_.runs[static_cast<std::size_t>(fed_by)].head_at_rest;
    places_.last_run = keep(tree_.runs,
                            Run{fed_by,
                                source,
                                tree_.places.size(),
                                tree_.places.size(),
                                reached_elevation_,
                                head_at_rest});
  }

  double head_at_rest_of(std::int32_t source) const {
    const auto& law = tree_.sources[static_cast<std::size_t>(source)].law;
    return law ? law->head_at_rest() : 0;
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

bool has_water_at_far_end(const Layout& layout, std::size_t line) {
  return layout.open_end_of(line) ? layout.has_water_beyond_open_end(line)
                                  : layout.inlet_has_water(line);
}

/// Only lines that meet another along it: at its far end there is nothing to look for, unless it is
/// open to the air.
std::vector<Tap> taps_of(const Layout& layout) {
  std::vector<Tap> taps;
  const auto add = [&](std::size_t on, const Length& at, std::size_t line, bool joins) {
    taps.push_back({on, si(at), line, joins});
  };
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const Line& line = layout.lines()[i];
    if ((line.tap || line.tap_outlet) && !layout.inlet_is_shut(i)) {
      const std::size_t feeder = layout.feeder_of(i).value();
      add(feeder, begins_at(line, layout.lines()[feeder]), i, false);
    }
    if ((line.joins_at || line.joins_outlet) && has_water_at_far_end(layout, i)) {
      const std::size_t joined = layout.joined_by(i).value();
      add(joined, ends_at(line, layout.lines()[joined]), i, true);
    }
  }
  std::ranges::stable_sort(taps, {}, [](const Tap& it) { return std::pair(it.on, it.at); });
  return taps;
}

/// @param taps sorted by line
std::span<const Tap> taps_on(const std::vector<Tap>& taps, std::size_t line) {
  const auto is_before = [](const Tap& tap, std::size_t which) { return tap.on < which; };
  const auto first = std::lower_bound(taps.begin(), taps.end(), line, is_before);
  const auto end = std::lower_bound(first, taps.end(), line + 1, is_before);
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

/// Enters the joints, and which runs they make two-way.
void add_joints(const Layout& layout,
                const MeetingRuns& meeting,
                double highest_at_rest,
                Tree& tree) {
  const auto elevation_at_end = [&](const Run& run) {
    double elevation = run.elevation;
    for (std::size_t i = run.first; i < run.end; ++i)
      elevation += tree.reaches[static_cast<std::size_t>(tree.places[i].reach)].ground_rise;
    return elevation;
  };
  for (const std::size_t i : layout.outward_order()) {
    const auto joined = layout.joined_by(i);
    if (!joined || !has_water_at_far_end(layout, i)) continue;
    const std::int32_t from = tree.lines[i].last_run;
    const std::int32_t met = MeetingRuns::of(i, meeting.at_far_end);
    const std::int32_t to = met != none ? met : tree.lines[*joined].last_run;
    const double rise = elevation_at_end(tree.runs[static_cast<std::size_t>(to)]) -
                        elevation_at_end(tree.runs[static_cast<std::size_t>(from)]);
    tree.joints.push_back({from, to, rise});
    for (const std::int32_t end : {from, to})
      for (std::int32_t run = end; run != none;) {
        Run& on_the_way = tree.runs[static_cast<std::size_t>(run)];
        if (on_the_way.two_way) break;
        on_the_way.two_way = true;
        run = on_the_way.fed_by;
      }
  }
  if (tree.joints.empty()) return;
  for (Run& run : tree.runs) {
    run.head_at_rest = highest_at_rest;
    if (run.one_way && run.two_way) run.when_shut = keep(tree.sources, Source{});
    tree.has_gates = tree.has_gates || run.when_shut != none;
  }
  for (const Source& source : tree.sources)
    tree.has_gates = tree.has_gates || (source.law && !source.takes_in);
}

/// Returns the highest head that one of them has at rest, above the first [m].
double add_supplies(const Layout& layout, const WaterProperties& water, Tree& tree) {
  const std::vector<Supply>& further = layout.further_supplies_as_they_are();
  std::vector<std::size_t> by_name(further.size());
  std::iota(by_name.begin(), by_name.end(), std::size_t{0});
  std::ranges::sort(by_name, {}, [&](std::size_t i) { return std::string_view(further[i].name); });
  tree.of_supplies.resize(further.size() + 1);
  double highest = -no_limit;
  const auto add = [&](const Supply& supply, std::size_t which) {
    const double elevation =
        si(supply.elevation.value_or(Length{})) - si(layout.supply().elevation.value_or(Length{}));
    tree.of_supplies[which] =
        keep(tree.sources, Source{SupplyLaw(supply, water), takes_water_in(supply), elevation});
    const double at_rest = elevation + tree.sources.back().law->head_at_rest();
    highest = std::max(highest, at_rest);
    tree.head_span = std::max(tree.head_span, std::abs(at_rest));
  };
  add(layout.supply_as_it_is(), 0);
  for (const std::size_t i : by_name) add(further[i], i + 1);
  return highest;
}

}  // namespace

std::optional<Mouth> mouth_with(const Fault& fault,
                                const Line& line,
                                const WaterProperties& water) {
  return MouthBuilder(line, water).faulty(fault);
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

Tree make_tree(const Layout& layout, const WaterProperties& water) {
  Tree tree;
  tree.places.reserve(static_cast<std::size_t>(layout.outlet_count()) + layout.lines().size());
  tree.lines.resize(layout.lines().size());
  const double highest_at_rest = add_supplies(layout, water, tree);

  const std::vector<Tap> taps = taps_of(layout);
  const std::size_t count = layout.lines().size();
  MeetingRuns meeting{std::vector<std::int32_t>(taps.empty() ? 0 : count, none),
                      std::vector<std::int32_t>(taps.empty() ? 0 : count, none)};
  double lowest = 0;
  double highest = 0;
  for (const std::size_t i : layout.outward_order()) {
    const auto [low, high] = ground_of(layout, i);
    lowest = std::min(lowest, low);
    highest = std::max(highest, high);
    if (layout.is_cut_off(i)) continue;
    const auto feeder = layout.feeder_of(i);
    std::int32_t fed_by = none;
    std::int32_t source = tree.of_supplies[layout.supply_of(i)];
    if (layout.inlet_is_shut(i)) {
      source = keep(tree.sources, Source{});
    } else if (feeder) {
      const std::int32_t tapped = MeetingRuns::of(i, meeting.at_inlet);
      fed_by = tapped != none ? tapped : tree.lines[*feeder].last_run;
    }
    RunBuilder(layout, i, water, tree).build(fed_by, source, taps_on(taps, i), meeting);
  }
  tree.head_span = std::max(tree.head_span, highest - lowest);
  add_joints(layout, meeting, highest_at_rest, tree);
  bound_capacities(tree);
  return tree;
}

}  // namespace hydro
