#include "hydro/what_ifs/realisations_in_lanes.hpp"

#include "hydro/layout/fault.hpp"
#include "hydro/physics/friction_law.hpp"
#include "hydro/physics/supply_law.hpp"
#include "hydro/solver/settle.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <variant>

namespace hydro {
namespace {

constexpr int newton_steps = 60;  // as in SolveOptions

/// The fault of this line's outlets, by outlet; null where there is none.
std::vector<const Fault*> faults_by_outlet(const Layout& layout, std::size_t line) {
  std::vector<const Fault*> faults(static_cast<std::size_t>(layout.lines()[line].outlet_count()),
                                   nullptr);
  for (const Fault& fault : layout.faults_on(line))
    if (const auto outlet = outlet_of(fault))
      faults[static_cast<std::size_t>(*outlet) - 1] = &fault;
  return faults;
}

/// Of an outlet's place in the tree, or nowhere.
std::size_t place_of(const Tree& tree, std::size_t line, std::size_t outlet) {
  const LinePlaces& places = tree.lines[line];
  return outlet < places.outlets ? tree.place_of(places, outlet) : nowhere;
}

/// One past the last place of a line.
std::size_t end_of(const Tree& tree, const LinePlaces& places) {
  return places.last_run == none ? places.start : tree.last_run(places).end;
}

/// How much of 1 + K of a riser that stands open is drawn with the riser's own K.
double drawn_share(const Fault& fault, const Line& line) {
  Line doubled = line;
  if (!doubled.riser.loss_coefficient) return 0;
  *doubled.riser.loss_coefficient *= 2;
  const double K = open_riser(fault, line)->loss_coefficient;
  return (open_riser(fault, doubled)->loss_coefficient - K) / (1 + K);
}

std::vector<Lane>& with_all(std::vector<Lane>& lanes_of, std::size_t size, double value) {
  lanes_of.assign(size, Lane::all(value));
  return lanes_of;
}

void scale(Lane& lane, const Lane& factor, std::size_t count) {
  for (std::size_t i = 0; i < count; ++i) lane[i] *= factor[i];
}

/// An outlet's mouth and a reach serve many places.
void keep_each_once(std::vector<std::size_t>& all) {
  std::ranges::sort(all);
  all.erase(std::unique(all.begin(), all.end()), all.end());
}

}  // namespace

std::unique_ptr<const RealisationsInLanes> RealisationsInLanes::of(const UncertainInputs& inputs) {
  if (std::ranges::find(inputs.inputs(), InputKind::elevation, &UncertainInput::kind) !=
      inputs.inputs().end())
    return nullptr;
  const WaterProperties water = properties(inputs.layout().water());
  Tree tree = make_tree(inputs.layout(), water);
  if (!Lanes::march_on(tree)) return nullptr;
  std::unique_ptr<RealisationsInLanes> made(
      new RealisationsInLanes(inputs, water, std::move(tree)));
  if (!made->list_losses()) return nullptr;
  return made;
}

RealisationsInLanes::RealisationsInLanes(const UncertainInputs& inputs,
                                         const WaterProperties& water,
                                         Tree tree)
    : inputs_(inputs),
      water_(water),
      tree_(std::move(tree)),
      lanes_(tree_, settle(tree_, newton_steps).sweeps) {
  read_outlets();
  list_outlets();
  list_pipes();
  list_supplies();
}

void RealisationsInLanes::read_outlets() {
  const Layout& layout = inputs_.layout();
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const Line& line = layout.lines()[i];
    const auto faults = faults_by_outlet(layout, i);
    for (std::size_t j = 0; j < faults.size(); ++j) {
      Reading reading{place_of(tree_, i, j), false, false, si(line.riser.height), no_limit};
      if (reading.place != nowhere && tree_.places[reading.place].mouth != none)
        reading.held = tree_.mouths[index(tree_.places[reading.place].mouth)].law.held;
      if (faults[j] && !layout.is_shut(i)) {
        reading.is_open = open_riser(*faults[j], line).has_value();
        reading.is_capped = std::holds_alternative<Capped>(*faults[j]);
      }
      outlets_.push_back(reading);
    }
  }
}

void RealisationsInLanes::list_outlets() {
  const Layout& layout = inputs_.layout();
  std::vector<std::size_t> first_of_line;
  std::vector<OutletDraw> draws;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const Line& line = layout.lines()[i];
    const auto faults = faults_by_outlet(layout, i);
    first_of_line.push_back(draws.size());
    for (std::size_t j = 0; j < faults.size(); ++j) {
      const bool is_itself =
          !faults[j] || !(open_riser(*faults[j], line) || open_body(*faults[j], line));
      const std::size_t place = place_of(tree_, i, j);
      const bool lets_out = place != nowhere && tree_.places[place].mouth != none;
      draws.push_back({is_itself && lets_out ? place : nowhere, no_input, no_input});
    }
  }
  const auto draw_of = [&](std::size_t line, int number) -> OutletDraw& {
    return draws[first_of_line[line] + static_cast<std::size_t>(number) - 1];
  };
  for (std::size_t j = 0; j < inputs_.inputs().size(); ++j) {
    const UncertainInput& input = inputs_.inputs()[j];
    if (input.kind == InputKind::outlet) draw_of(input.at, input.number).own = j;
    if (input.kind == InputKind::rating)
      for (const auto& place : inputs_.outlets_of_kind()[input.at])
        draw_of(place.line, place.number).rating = j;
  }
  std::erase_if(draws, [](const OutletDraw& draw) {
    return draw.place == nowhere || (draw.own == no_input && draw.rating == no_input);
  });
  outlet_draws_ = std::move(draws);
}

void RealisationsInLanes::list_pipes() {
  const Layout& layout = inputs_.layout();
  const auto& kinds = inputs_.pipes_of_kind();
  std::vector<PipeDraw> draws(kinds.size());
  for (std::size_t j = 0; j < inputs_.inputs().size(); ++j) {
    const UncertainInput& input = inputs_.inputs()[j];
    if (input.kind == InputKind::inside_diameter || input.kind == InputKind::wall)
      draws[input.at].inputs.push_back(j);
  }
  std::vector<std::size_t> kind_of_line(layout.lines().size());
  std::vector<std::size_t> kind_of_riser(layout.lines().size(), nowhere);
  std::vector<std::vector<std::size_t>> kinds_of_reaches;
  for (const Line& line : layout.lines()) kinds_of_reaches.emplace_back(line.reaches.size());
  for (std::size_t kind = 0; kind < kinds.size(); ++kind)
    for (const auto& place : kinds[kind]) {
      const Line& line = layout.lines()[place.line];
      switch (place.part) {
        case UncertainInputs::PipePlace::pipe:
          kind_of_line[place.line] = kind;
          draws[kind].pipe = line.pipe;
          break;
        case UncertainInputs::PipePlace::reach:
          kinds_of_reaches[place.line][place.which] = kind;
          draws[kind].pipe = line.reaches[place.which].pipe;
          break;
        case UncertainInputs::PipePlace::riser:
          kind_of_riser[place.line] = kind;
          draws[kind].pipe = *line.riser.pipe();
          break;
      }
    }
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const Line& line = layout.lines()[i];
    const LinePlaces& places = tree_.lines[i];
    const auto kind_at = [&](std::size_t reach) {
      return reach < line.reaches.size() ? kinds_of_reaches[i][reach] : kind_of_line[i];
    };
    for (std::size_t place = places.start; place < end_of(tree_, places); ++place) {
      const auto reach = std::ranges::upper_bound(places.ends_of_reaches, place);
      draws[kind_at(static_cast<std::size_t>(reach - places.ends_of_reaches.begin()))]
          .reaches.push_back(index(tree_.places[place].reach));
    }
    for (const OpenPlace& open : places.open) {
      const auto end = open_end(layout.faults_on(i)[open.fault], line);
      if (!end) continue;
      const Pipe* pipe = &line.pipe_at(Length::from_value(si(line.merged(*end))));
      std::size_t reach = 0;
      while (reach < line.reaches.size() && &line.reaches[reach].pipe != pipe) ++reach;
      draws[kind_at(reach)].open.push_back(open.place);
    }
    const auto faults = faults_by_outlet(layout, i);
    for (std::size_t j = 0; j < faults.size() && kind_of_riser[i] != nowhere; ++j) {
      const std::size_t place = place_of(tree_, i, j);
      if (place == nowhere || tree_.places[place].mouth == none) continue;
      PipeDraw& riser = draws[kind_of_riser[i]];
      riser.risers.push_back(index(tree_.places[place].mouth));
      if (faults[j] && open_riser(*faults[j], line)) riser.open.push_back(place);
    }
  }
  for (PipeDraw& draw : draws) {
    keep_each_once(draw.reaches);
    keep_each_once(draw.risers);
  }
  std::erase_if(draws, [](const PipeDraw& draw) { return draw.inputs.empty(); });
  pipe_draws_ = std::move(draws);
}

bool RealisationsInLanes::list_losses() {
  const Layout& layout = inputs_.layout();
  std::vector<std::optional<double>> share_of_reach(tree_.reaches.size());
  for (std::size_t j = 0; j < inputs_.inputs().size(); ++j) {
    const UncertainInput& input = inputs_.inputs()[j];
    if (input.kind != InputKind::loss_coefficient) continue;
    const Line& line = layout.lines()[input.at];
    const LinePlaces& places = tree_.lines[input.at];
    LossDraw draw{j, {}, {}, {}};
    std::vector<double> drawn(end_of(tree_, places) - places.start);
    if (places.first_run != none && !drawn.empty())
      drawn.front() += line.loss_coefficient.value_or(0);
    const auto faults = faults_by_outlet(layout, input.at);
    for (std::size_t k = 0; k < faults.size(); ++k) {
      const std::size_t place = place_of(tree_, input.at, k);
      if (place == nowhere) continue;
      drawn[place - places.start] += line.outlet_loss_coefficient.value_or(0);
      const std::int32_t mouth = tree_.places[place].mouth;
      if (mouth == none) continue;
      if (faults[k] && open_riser(*faults[k], line))
        draw.open.push_back({place, drawn_share(*faults[k], line)});
      else
        draw.risers.push_back(index(mouth));
    }
    for (std::size_t k = 0; k < drawn.size(); ++k) {
      const std::size_t place = places.start + k;
      const auto reach =
          std::ranges::upper_bound(places.ends_of_reaches, place) - places.ends_of_reaches.begin();
      const Pipe& pipe = static_cast<std::size_t>(reach) < line.reaches.size()
                             ? line.reaches[static_cast<std::size_t>(reach)].pipe
                             : line.pipe;
      const std::size_t which = index(tree_.places[place].reach);
      const double whole = tree_.reaches[which].fitting;
      const double share =
          whole > 0 ? fitting_coefficient(drawn[k], si(pipe.inside_diameter)) / whole : 0;
      std::optional<double>& known = share_of_reach[which];
      if (known && *known != share) return false;
      if (!known && share > 0) draw.reaches.push_back({which, share});
      known = share;
    }
    keep_each_once(draw.risers);
    loss_draws_.push_back(std::move(draw));
  }
  return true;
}

void RealisationsInLanes::list_supplies() {
  for (std::size_t j = 0; j < inputs_.inputs().size(); ++j) {
    const UncertainInput& input = inputs_.inputs()[j];
    if (input.kind != InputKind::supply_pressure && input.kind != InputKind::pump_head) continue;
    if (supply_draws_.empty() || supply_draws_.back().which != input.at)
      supply_draws_.push_back({input.at, {}});
    supply_draws_.back().inputs.push_back(j);
  }
}

void RealisationsInLanes::solve(const Drawn& drawn,
                                std::size_t first,
                                std::size_t count,
                                LanesDesk& desk) const {
  vary_outlets(drawn, first, count, desk.differences);
  if (!pipe_draws_.empty() || !loss_draws_.empty()) {
    with_all(desk.differences.fitting_factor, tree_.reaches.size(), 1);
    with_all(desk.differences.riser_fitting_factor, tree_.mouths.size(), 1);
  }
  if (!pipe_draws_.empty()) vary_pipes(drawn, first, count, desk.differences);
  if (!loss_draws_.empty()) vary_losses(drawn, first, count, desk.differences);
  if (!supply_draws_.empty()) vary_supplies(drawn, first, count, desk.differences);
  lanes_.solve(desk.differences, count, desk.block);
}

void RealisationsInLanes::vary_outlets(const Drawn& drawn,
                                       std::size_t first,
                                       std::size_t count,
                                       Differences& to) const {
  if (outlet_draws_.empty() && pipe_draws_.empty() && loss_draws_.empty()) return;
  with_all(to.outlet_factor, tree_.places.size(), 1);
  for (const OutletDraw& draw : outlet_draws_) {
    double* const factor = to.outlet_factor[draw.place].at.data();
    if (draw.own != no_input) std::copy_n(drawn.of(draw.own) + first, count, factor);
    if (draw.rating == no_input) continue;
    const double* const rating = drawn.of(draw.rating) + first;
    for (std::size_t i = 0; i < count; ++i) factor[i] *= rating[i];
  }
}

void RealisationsInLanes::vary_pipes(const Drawn& drawn,
                                     std::size_t first,
                                     std::size_t count,
                                     Differences& to) const {
  const auto is_darcy = [](const FrictionLaw& law) {
    return law.kind() == FrictionLaw::Kind::darcy_weisbach;
  };
  with_all(to.friction_factor, tree_.reaches.size(), 1);
  with_all(to.riser_friction_factor, tree_.mouths.size(), 1);
  // Lanes without a realisation have a law too.
  if (to.friction.empty() && std::ranges::any_of(tree_.reaches, is_darcy, &Reach::friction))
    for (const Reach& reach : tree_.reaches)
      to.friction.insert(to.friction.end(), lanes, reach.friction);
  if (to.riser_friction.empty() && std::ranges::any_of(tree_.mouths, [&](const Mouth& it) {
        return is_darcy(it.riser.friction);
      }))
    for (const Mouth& mouth : tree_.mouths)
      to.riser_friction.insert(to.riser_friction.end(), lanes, mouth.riser.friction);
  for (const PipeDraw& draw : pipe_draws_) {
    const FrictionLaw as_it_stands(draw.pipe, water_);
    const bool by_law = is_darcy(as_it_stands);
    Lane friction = Lane::all(1), fitting = Lane::all(1), bore_area = Lane::all(1);
    std::array<FrictionLaw, lanes> laws;
    laws.fill(as_it_stands);
    Pipe pipe = draw.pipe;
    for (std::size_t i = 0; i < count; ++i) {
      pipe = draw.pipe;
      for (const std::size_t j : draw.inputs)
        UncertainInputs::vary(pipe, inputs_.inputs()[j].kind, drawn.of(j)[first + i]);
      laws[i] = FrictionLaw(pipe, water_);
      if (!by_law) friction[i] = laws[i].coefficient() / as_it_stands.coefficient();
      const double bore = si(pipe.inside_diameter) / si(draw.pipe.inside_diameter);
      bore_area[i] = bore * bore;
      fitting[i] = 1 / (bore_area[i] * bore_area[i]);
    }
    for (const std::size_t reach : draw.reaches) {
      scale(to.friction_factor[reach], friction, count);
      scale(to.fitting_factor[reach], fitting, count);
      if (by_law)
        std::ranges::copy(laws, to.friction.begin() + static_cast<std::ptrdiff_t>(reach * lanes));
    }
    for (const std::size_t mouth : draw.risers) {
      scale(to.riser_friction_factor[mouth], friction, count);
      scale(to.riser_fitting_factor[mouth], fitting, count);
      if (by_law)
        std::ranges::copy(laws,
                          to.riser_friction.begin() + static_cast<std::ptrdiff_t>(mouth * lanes));
    }
    for (const std::size_t place : draw.open) scale(to.outlet_factor[place], bore_area, count);
  }
}

void RealisationsInLanes::vary_losses(const Drawn& drawn,
                                      std::size_t first,
                                      std::size_t count,
                                      Differences& to) const {
  for (const LossDraw& draw : loss_draws_) {
    const double* const factors = drawn.of(draw.input) + first;
    const auto risen = [&](double share, std::size_t i) { return 1 + share * (factors[i] - 1); };
    for (const auto& [reach, share] : draw.reaches)
      for (std::size_t i = 0; i < count; ++i) to.fitting_factor[reach][i] *= risen(share, i);
    for (const std::size_t mouth : draw.risers)
      for (std::size_t i = 0; i < count; ++i) to.riser_fitting_factor[mouth][i] *= factors[i];
    for (const auto& [place, share] : draw.open)
      for (std::size_t i = 0; i < count; ++i)
        to.outlet_factor[place][i] /= std::sqrt(risen(share, i));
  }
}

void RealisationsInLanes::vary_supplies(const Drawn& drawn,
                                        std::size_t first,
                                        std::size_t count,
                                        Differences& to) const {
  const Layout& layout = inputs_.layout();
  if (to.supply.empty())
    for (const Source& source : tree_.sources)
      to.supply.insert(to.supply.end(), lanes, source.law.value_or(SupplyLaw(0)));
  for (const SupplyDraw& draw : supply_draws_) {
    const Supply& nominal =
        draw.which == 0 ? layout.supply() : layout.further_supplies()[draw.which - 1];
    const std::size_t source = index(tree_.of_supplies[draw.which]);
    std::fill_n(to.supply.begin() + static_cast<std::ptrdiff_t>(source * lanes),
                lanes,
                *tree_.sources[source].law);
    for (std::size_t i = 0; i < count; ++i) {
      Supply supply = nominal;
      for (const std::size_t j : draw.inputs)
        inputs_.vary(supply, inputs_.inputs()[j], drawn.of(j)[first + i]);
      to.supply[source * lanes + i] =
          SupplyLaw(with_faults(std::move(supply), layout.faults()), water_);
    }
  }
}

}  // namespace hydro
