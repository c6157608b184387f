#include "hydro/diagnosis/candidate.hpp"

#include "hydro/physics/water.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

struct KindWords {
  std::string_view words;
  double PriorOdds::*odds;
  bool has_size = true;
};
/// In the order of the enumeration.
constexpr std::array kind_words{
    KindWords{"no fault", &PriorOdds::no_fault, false},
    KindWords{"head off", &PriorOdds::head_off},
    KindWords{"riser sheared", &PriorOdds::riser_sheared},
    KindWords{"nozzle missing", &PriorOdds::nozzle_missing},
    KindWords{"worn", &PriorOdds::worn},
    KindWords{"clogged", &PriorOdds::clogged},
    KindWords{"wrong outlet", &PriorOdds::wrong_outlet, false},
    KindWords{"leak", &PriorOdds::leak},
    KindWords{"end open", &PriorOdds::end_open, false},
    KindWords{"valve left open", &PriorOdds::valve_left_open, false},
    KindWords{"valve part closed", &PriorOdds::valve_part_closed},
    KindWords{"regulator stuck open", &PriorOdds::regulator_stuck_open, false},
    KindWords{"regulator stuck shut", &PriorOdds::regulator_stuck_shut, false},
    KindWords{"filter dirty", &PriorOdds::filter_dirty},
    KindWords{"engine slow", &PriorOdds::engine_slow},
    KindWords{"pump worn", &PriorOdds::pump_worn},
    KindWords{"supply low", &PriorOdds::supply_low},
    KindWords{"gauge wrong", &PriorOdds::gauge_wrong, false}};
static_assert(kind_words.size() == static_cast<std::size_t>(CandidateKind::gauge_wrong) + 1);

const KindWords& words_for(CandidateKind kind) {
  return kind_words.at(static_cast<std::size_t>(kind));
}

constexpr double most_of_a_share = 0.99;

double number(double it) {
  return it;
}
double number(const Length& it) {
  return si(it);
}

/// So many deviations from the median.
template <class Q>
Q size_at(const Between<Q>& between, double u) {
  constexpr double of_nine_in_ten = 1.6448536269514722;  // normal distribution, either end 5 %
  const double s = std::log(number(between.to) / number(between.from)) / (2 * of_nine_in_ten);
  return between.from * (std::sqrt(number(between.to) / number(between.from)) * std::exp(s * u));
}
double share_at(const Between<double>& between, double u) {
  return std::min(most_of_a_share, size_at(between, u));
}

template <class F>
bool has_fault(const Layout& layout, const std::string& line = {}) {
  return std::ranges::any_of(layout.faults(), [&](const Fault& fault) {
    return std::holds_alternative<F>(fault) && line_of(fault) == line;
  });
}

/// What a leak on a line is measured by: one of its outlets, or the largest there is.
const Outlet* outlet_beside(const Layout& layout, const Line& line) {
  if (line.outlet_count() > 0) return &line.kind_of(1);
  const Outlet* largest = nullptr;
  Flow most{};
  for (const Line& other : layout.lines()) {
    if (other.outlet_count() == 0) continue;
    const Outlet& kind = other.kind_of(1);
    if (const Flow flow = discharge(kind, kind.rated_pressure()); flow > most) {
      most = flow;
      largest = &kind;
    }
  }
  return largest;
}

RotationalSpeed speed_of(const Pump& pump) {
  return pump.speed.value_or(pump.curve_speed.value_or(RotationalSpeed{}));
}

Supply lower(Supply supply, const FaultSizes& sizes, double u) {
  const Length fall = size_at(sizes.supply_low, u);
  const double left = 1 - share_at(sizes.supply_low_share, u);
  if (supply.pump) {
    if (!supply.suction) supply.suction = Suction{};
    supply.suction->lift += fall;
  }
  if (supply.tank) supply.tank->level = std::max(Length{}, supply.tank->level - fall);
  if (supply.pressure) *supply.pressure *= left;
  if (supply.hydrant) {
    supply.hydrant->pressure_at_rest *= left;
    supply.hydrant->residual_pressure *= left;
  }
  return supply;
}

class Lister {
 public:
  Lister(const Layout& layout, const CandidateOptions& options)
      : layout_(layout), options_(options), others_(options.other_outlets) {
    if (!others_.empty()) return;
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int number = 1; number <= layout.lines()[l].outlet_count(); ++number)
        if (const Outlet& kind = layout.outlet_at(l, number);
            std::ranges::find(others_, kind) == others_.end())
          others_.push_back(kind);
  }

  std::vector<Candidate> run(const std::vector<std::string>& gauges) {
    add({.kind = CandidateKind::no_fault});
    for (std::size_t l = 0; l < layout_.lines().size(); ++l) {
      for (int number = 1; number <= layout_.lines()[l].outlet_count(); ++number) outlet(l, number);
      line(l);
    }
    supply();
    for (const std::string& gauge : gauges)
      add({.kind = CandidateKind::gauge_wrong, .gauge = gauge});
    return std::move(found_);
  }

 private:
  void add(Candidate candidate) {
    candidate.odds = options_.odds.of(candidate.kind);
    if (candidate.odds > 0) found_.push_back(std::move(candidate));
  }

  /// Whether a fault can be at this outlet, for what is known of it.
  void add_if_fits(Candidate candidate, const Line& line) {
    const Fault fault = fault_of(candidate, layout_, options_.sizes, 0).value();
    if (open_riser(fault, line) && !line.riser.inside_diameter) return;
    if (problems(fault, line).empty()) add(std::move(candidate));
  }

  void outlet(std::size_t l, int number) {
    const Line& line = layout_.lines()[l];
    if (layout_.is_shut(l) || !layout_.outlet_has_water(l, number)) return;
    add({.kind = CandidateKind::leak,
         .line = line.name,
         .outlet = number,
         .place = line.place_of(number)});
    const auto is_there = [&](const Fault& fault) { return outlet_of(fault) == number; };
    if (std::ranges::any_of(layout_.faults_on(l), is_there)) return;
    for (const CandidateKind kind : {CandidateKind::head_off,
                                     CandidateKind::riser_sheared,
                                     CandidateKind::nozzle_missing,
                                     CandidateKind::worn,
                                     CandidateKind::clogged})
      add_if_fits({.kind = kind, .line = line.name, .outlet = number}, line);
    const Outlet& own = layout_.outlet_at(l, number);
    for (const Outlet& other : others_)
      if (!(other == own))
        add_if_fits({.kind = CandidateKind::wrong_outlet,
                     .line = line.name,
                     .outlet = number,
                     .fitted = other},
                    line);
    if (!own.regulator) return;
    for (const CandidateKind kind :
         {CandidateKind::regulator_stuck_open, CandidateKind::regulator_stuck_shut})
      add_if_fits({.kind = kind, .line = line.name, .outlet = number}, line);
  }

  /// Whether the layout as it is can have it, and is not the same with it.
  bool can_have(const Candidate& candidate) const {
    try {
      const Layout changed = layout_with(candidate, layout_, options_.sizes, 0);
      const std::size_t l = layout_.index_of(candidate.line);
      return candidate.kind != CandidateKind::valve_left_open || !changed.is_shut(l);
    } catch (const InvalidInput&) {
      return false;
    }
  }

  void line(std::size_t l) {
    const Line& line = layout_.lines()[l];
    const auto add_if_possible = [&](CandidateKind kind, const std::optional<Length>& place = {}) {
      Candidate candidate{.kind = kind, .line = line.name, .place = place};
      if (can_have(candidate)) add(std::move(candidate));
    };
    if (layout_.is_shut(l)) return add_if_possible(CandidateKind::valve_left_open);
    if (!layout_.inlet_has_water(l)) return;
    if (line.outlet_count() == 0 && outlet_beside(layout_, line))
      add_if_possible(CandidateKind::leak, 0.5 * line.whole_length());
    if (line.joins.empty()) add_if_possible(CandidateKind::end_open);
    add_if_possible(CandidateKind::valve_part_closed);
    if (!line.regulator) return;
    add_if_possible(CandidateKind::regulator_stuck_open);
    add_if_possible(CandidateKind::regulator_stuck_shut);
  }

  void supply() {
    const Supply& supply = layout_.supply();
    if (supply.filter && supply.filter->loss > Pressure{} && !has_fault<FilterDirty>(layout_))
      add({.kind = CandidateKind::filter_dirty});
    if (supply.pump && supply.pump->curve_speed && !has_fault<EngineSlow>(layout_))
      add({.kind = CandidateKind::engine_slow});
    if (supply.pump && !has_fault<PumpWorn>(layout_)) add({.kind = CandidateKind::pump_worn});
    add({.kind = CandidateKind::supply_low});
  }

  const Layout& layout_;
  const CandidateOptions& options_;
  std::vector<Outlet> others_;
  std::vector<Candidate> found_;
};

void examine(const PriorOdds& odds, Examination& examination) {
  double sum = 0;
  for (const KindWords& kind : kind_words) {
    std::string key(kind.words);
    std::ranges::replace(key, ' ', '_');
    examination.within("odds." + key, odds.*kind.odds, Range<double>{0, 1e9, units::plain});
    sum += odds.*kind.odds;
  }
  if (!(sum > 0)) examination.add("odds", "are all 0; at least one must be above 0");
}

template <class Q>
void examine(const std::string& key,
             const Between<Q>& between,
             const Range<Q>& range,
             Examination& examination) {
  examination.within("sizes." + key + ".from", between.from, range);
  examination.within("sizes." + key + ".to", between.to, range);
  if (!(between.from < between.to))
    examination.add("sizes." + key, "has `from` that is not below `to`");
}

}  // namespace

std::string_view words_of(CandidateKind kind) {
  return words_for(kind).words;
}
double PriorOdds::of(CandidateKind kind) const {
  return this->*words_for(kind).odds;
}
bool has_size(CandidateKind kind) {
  return words_for(kind).has_size;
}

std::vector<Candidate> candidates(const Layout& layout,
                                  const CandidateOptions& options,
                                  const std::vector<std::string>& gauges) {
  if (auto found = problems(options); !found.empty()) throw InvalidInput(std::move(found));
  return Lister(layout, options).run(gauges);
}

std::string describe(const Candidate& candidate) {
  std::string where;
  if (!candidate.line.empty()) where = candidate.line;
  if (candidate.outlet) where += fmt::format(", outlet {}", *candidate.outlet);
  if (!candidate.gauge.empty()) where = candidate.gauge;
  return where + (where.empty() ? "" : ": ") + std::string(words_of(candidate.kind));
}

std::optional<Fault> fault_of(const Candidate& candidate,
                              const Layout& layout,
                              const FaultSizes& sizes,
                              double u) {
  const std::string& name = candidate.line;
  const int outlet = candidate.outlet.value_or(0);
  const Supply& supply = layout.supply();
  /// As fault.hpp has it where nothing is given.
  const auto loss = [&](const Fault& standard) {
    return open_riser(standard, layout.line(name))->loss_coefficient *
           size_at(sizes.loss_coefficient, u);
  };
  switch (candidate.kind) {
    case CandidateKind::no_fault:
    case CandidateKind::supply_low:
    case CandidateKind::gauge_wrong:
      return std::nullopt;
    case CandidateKind::head_off:
      return head_off(name, outlet, loss(head_off(name, outlet)));
    case CandidateKind::riser_sheared:
      return riser_sheared(name, outlet, {}, loss(riser_sheared(name, outlet)));
    case CandidateKind::nozzle_missing:
      return nozzle_missing(
          name, outlet, {}, std::min(1.0, size_at(sizes.discharge_coefficient, u)));
    case CandidateKind::worn:
      return worn(name, outlet, size_at(sizes.worn, u));
    case CandidateKind::clogged:
      return clogged(name, outlet, share_at(sizes.clogged, u));
    case CandidateKind::wrong_outlet:
      return wrong_outlet(name, outlet, candidate.fitted.value());
    case CandidateKind::leak: {
      const Outlet& beside = *outlet_beside(layout, layout.line(name));
      const Pressure at = beside.rated_pressure();
      return leak(
          name, candidate.place.value(), discharge(beside, at) * size_at(sizes.leak, u), at);
    }
    case CandidateKind::end_open:
      return end_open(name);
    case CandidateKind::valve_left_open:
      return valve_left_open(name);
    case CandidateKind::valve_part_closed:
      return valve_part_closed(name, size_at(sizes.valve_part_closed, u));
    case CandidateKind::regulator_stuck_open:
      return regulator_stuck_open(name, candidate.outlet);
    case CandidateKind::regulator_stuck_shut:
      return regulator_stuck_shut(name, candidate.outlet);
    case CandidateKind::filter_dirty:
      return filter_dirty(supply.filter.value().loss * size_at(sizes.filter_dirty, u));
    case CandidateKind::engine_slow:
      return engine_slow(speed_of(supply.pump.value()) * (1 - share_at(sizes.engine_slow, u)));
    case CandidateKind::pump_worn:
      return pump_worn(share_at(sizes.pump_worn, u));
  }
  return std::nullopt;
}

Layout layout_with(const Candidate& candidate,
                   const Layout& layout,
                   const FaultSizes& sizes,
                   double u) {
  if (candidate.kind == CandidateKind::supply_low)
    return layout.with_supply(lower(layout.supply(), sizes, u));
  const std::optional<Fault> fault = fault_of(candidate, layout, sizes, u);
  return fault ? layout.with_fault(*fault) : layout;
}

std::vector<Problem> problems(const CandidateOptions& options) {
  Examination examination;
  examine(options.odds, examination);
  const FaultSizes& sizes = options.sizes;
  const Range<double> share{0, 1, units::plain, true};
  const Range<double> factor{0, 1e6, units::plain, true};
  examine("loss_coefficient", sizes.loss_coefficient, factor, examination);
  examine("discharge_coefficient", sizes.discharge_coefficient, share, examination);
  examine("worn", sizes.worn, factor, examination);
  examine("clogged", sizes.clogged, share, examination);
  examine("leak", sizes.leak, factor, examination);
  examine("valve_part_closed", sizes.valve_part_closed, factor, examination);
  examine("filter_dirty", sizes.filter_dirty, factor, examination);
  examine("engine_slow", sizes.engine_slow, share, examination);
  examine("pump_worn", sizes.pump_worn, share, examination);
  examine("supply_low", sizes.supply_low, Range<Length>{0, 100, units::m, true}, examination);
  examine("supply_low_share", sizes.supply_low_share, share, examination);
  examination.within("sizes.gauge_wrong", sizes.gauge_wrong, Range<Pressure>{0, 1000, kPa, true});
  for (std::size_t i = 0; i < options.other_outlets.size(); ++i)
    examination.include(fmt::format("other_outlets, {}", i + 1),
                        problems(options.other_outlets[i]));
  return examination.take();
}

}  // namespace hydro
