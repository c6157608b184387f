#include "hydro/what_ifs/uncertain_inputs.hpp"

#include "hydro/physics/friction_law.hpp"
#include "hydro/physics/water.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <variant>

namespace hydro {
namespace {

/// Index of what is equal in the store, where it is put if it is new there.
template <class T>
std::size_t kind_of(const T& thing, std::vector<T>& store) {
  const auto known = std::ranges::find(store, thing);
  if (known != store.end()) return static_cast<std::size_t>(known - store.begin());
  store.push_back(thing);
  return store.size() - 1;
}

/// What is fitted wrongly at an outlet: index of the fault.
std::optional<std::size_t> wrong_outlet_at(const std::vector<Fault>& faults,
                                           const std::string& line,
                                           int number) {
  for (std::size_t i = 0; i < faults.size(); ++i) {
    const auto* wrong = std::get_if<WrongOutlet>(&faults[i]);
    if (wrong && wrong->line == line && wrong->outlet == number) return i;
  }
  return std::nullopt;
}

const OutletUncertainty* entry_for(const Outlet& outlet, const Uncertainty& uncertainty) {
  for (const OutletUncertainty& entry : uncertainty.outlets)
    if (entry.outlet == outlet.name) return &entry;
  return nullptr;
}

double variation_of(const Outlet& outlet, const Uncertainty& uncertainty) {
  const OutletUncertainty* entry = entry_for(outlet, uncertainty);
  return entry ? entry->manufacturing_variation.value_or(uncertainty.manufacturing_variation)
               : uncertainty.manufacturing_variation;
}

double rating_of(const Outlet& outlet, const Uncertainty& uncertainty) {
  const OutletUncertainty* entry = entry_for(outlet, uncertainty);
  return entry ? entry->rating.value_or(uncertainty.rating) : uncertainty.rating;
}

void scale(Outlet& outlet, double factor) {
  outlet.flow *= factor;
  for (RatedPoint& point : outlet.points) point.flow *= factor;
  if (outlet.nozzle) *outlet.nozzle *= std::sqrt(factor);
}

template <class Number>
void scale(std::optional<Number>& number, double factor) {
  if (number) *number *= factor;
}

/// Within what problems(Pipe) accepts. Pipe or Riser.
template <class P>
void keep_within_range(Length& bore, P& wall) {
  bore = std::clamp(bore, 0.1 * mm, 10 * units::m);
  if (wall.hazen_williams) wall.hazen_williams = std::clamp(*wall.hazen_williams, 10.0, 200.0);
  if (wall.roughness) wall.roughness = std::min({*wall.roughness, 100 * mm, 0.05 * bore});
  if (wall.darcy_factor) wall.darcy_factor = std::clamp(*wall.darcy_factor, 0.001, 1.0);
}

/// @param wall the Pipe or the Riser that has this bore
template <class P>
void vary_pipe(Length& bore, P& wall, InputKind kind, double drawn) {
  if (kind == InputKind::inside_diameter) {
    bore *= drawn;
  } else {
    scale(wall.hazen_williams, drawn);
    scale(wall.roughness, drawn);
    scale(wall.darcy_factor, drawn);
  }
  keep_within_range(bore, wall);
}

void add_pressure(Supply& supply, const Pressure& more, double weight_density) {
  const Pressure most = 10 * MPa;
  if (supply.pressure) supply.pressure = std::clamp(*supply.pressure + more, Pressure{}, most);
  if (supply.tank)
    supply.tank->level =
        std::clamp(supply.tank->level + Length::from_value(si(more) / weight_density),
                   Length{},
                   1000 * units::m);
  if (supply.hydrant) {
    const Pressure held = std::clamp(
        more, -supply.hydrant->residual_pressure, most - supply.hydrant->pressure_at_rest);
    supply.hydrant->pressure_at_rest += held;
    supply.hydrant->residual_pressure += held;
  }
}

void scale_head(std::optional<Pump>& pump, double factor) {
  if (!pump) return;
  for (PumpPoint& point : pump->points) point.head *= factor;
}

}  // namespace

struct UncertainInputs::Parts {
  Supply supply;
  std::vector<Supply> further_supplies;
  std::vector<Line> lines;
  std::vector<Fault> faults;

  Outlet& outlet(const OutletPlace& place) {
    if (place.fault) return std::get<WrongOutlet>(faults[*place.fault]).fitted;
    return lines[place.line].outlets[static_cast<std::size_t>(place.number - 1)].outlet;
  }
  void vary(const PipePlace& place, InputKind kind, double drawn) {
    Line& line = lines[place.line];
    if (place.part == PipePlace::riser)
      vary_pipe(*line.riser.inside_diameter, line.riser, kind, drawn);
    else
      UncertainInputs::vary(
          place.part == PipePlace::reach ? line.reaches[place.which].pipe : line.pipe, kind, drawn);
  }
};

UncertainInputs::UncertainInputs(Layout layout, const Uncertainty& uncertainty)
    : layout_(std::move(layout)),
      weight_density_(si(properties(layout_.water()).density) * gravity) {
  if (auto found = problems(uncertainty, layout_); !found.empty())
    throw InvalidInput(std::move(found));
  list_outlets(uncertainty);
  list_pipes(uncertainty);
  list_lines(uncertainty);
  list_supplies(uncertainty);
}

void UncertainInputs::add(InputKind kind, std::size_t at, int number, double deviation) {
  if (deviation > 0) inputs_.push_back({kind, at, number, deviation});
}

void UncertainInputs::list_outlets(const Uncertainty& uncertainty) {
  const std::vector<Line>& lines = layout_.lines();
  std::vector<Outlet> kinds;
  outlets_of_line_.resize(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (int number = 1; number <= lines[i].outlet_count(); ++number) {
      const Outlet& outlet = layout_.outlet_at(i, number);
      const double variation = variation_of(outlet, uncertainty);
      const double rating = rating_of(outlet, uncertainty);
      const std::size_t kind = kind_of(outlet, kinds);
      if (kind == outlets_of_kind_.size()) {
        outlets_of_kind_.emplace_back();
        add(InputKind::rating, kind, 0, rating);
      }
      if (!(variation > 0) && !(rating > 0)) continue;
      const OutletPlace place{i, number, wrong_outlet_at(layout_.faults(), lines[i].name, number)};
      outlets_of_line_[i].push_back(place);
      add(InputKind::outlet, i, number, variation);
      outlets_of_kind_[kind].push_back(place);
    }
}

void UncertainInputs::list_pipes(const Uncertainty& uncertainty) {
  std::vector<Pipe> kinds;
  const auto list = [&](const Pipe& pipe, const PipePlace& place) {
    const std::size_t kind = kind_of(pipe, kinds);
    if (kind == pipes_of_kind_.size()) {
      pipes_of_kind_.emplace_back();
      add(InputKind::inside_diameter, kind, 0, uncertainty.inside_diameter);
      add(InputKind::wall, kind, 0, uncertainty.wall);
    }
    pipes_of_kind_[kind].push_back(place);
  };
  for (std::size_t i = 0; i < layout_.lines().size(); ++i) {
    const Line& line = layout_.lines()[i];
    list(line.pipe, {i, PipePlace::pipe, 0});
    for (std::size_t j = 0; j < line.reaches.size(); ++j)
      list(line.reaches[j].pipe, {i, PipePlace::reach, j});
    if (const auto riser = line.riser.pipe()) list(*riser, {i, PipePlace::riser, 0});
  }
}

void UncertainInputs::list_lines(const Uncertainty& uncertainty) {
  const double deviation = si(uncertainty.elevation);
  for (std::size_t i = 0; i < layout_.lines().size(); ++i) {
    const Line& line = layout_.lines()[i];
    if (line.loss_coefficient || line.outlet_loss_coefficient || line.riser.loss_coefficient)
      add(InputKind::loss_coefficient, i, 0, uncertainty.loss_coefficient);
    if (line.elevations.empty()) add(InputKind::elevation, i, 0, deviation);
    for (std::size_t j = 1; j <= line.elevations.size(); ++j)
      add(InputKind::elevation, i, static_cast<int>(j), deviation);
  }
}

void UncertainInputs::list_supplies(const Uncertainty& uncertainty) {
  const std::vector<Supply>& further = layout_.further_supplies();
  for (std::size_t i = 0; i <= further.size(); ++i) {
    const Supply& supply = i == 0 ? layout_.supply() : further[i - 1];
    if (supply.pump) add(InputKind::pump_head, i, 1, uncertainty.pump_head);
    if (supply.second_pump) add(InputKind::pump_head, i, 2, uncertainty.pump_head);
    if (!supply.pump) add(InputKind::supply_pressure, i, 0, si(uncertainty.supply_pressure));
  }
}

void UncertainInputs::draw(const UncertainInput& input,
                           std::uint64_t seed,
                           std::uint64_t first,
                           std::span<double> out) {
  constexpr double farthest = 4;
  const double s = input.deviation;
  const auto draw_normal = [&](double mean, double deviation) {
    normal_variates(seed, input.stream(), first, {mean, deviation, farthest}, out);
  };
  switch (input.kind) {
    case InputKind::outlet:
    case InputKind::rating:
    case InputKind::inside_diameter:
    case InputKind::pump_head:
      return draw_normal(1, s);
    case InputKind::wall:
    case InputKind::loss_coefficient: {
      const double variance = std::log1p(s * s);
      draw_normal(-variance / 2, std::sqrt(variance));
      for (double& it : out) it = std::exp(it);
      return;
    }
    case InputKind::supply_pressure:
    case InputKind::elevation:
      return draw_normal(0, s);
  }
}

Layout UncertainInputs::with(std::span<const double> drawn) const {
  Parts parts{layout_.supply(), layout_.further_supplies(), layout_.lines(), layout_.faults()};
  for (std::size_t i = 0; i < parts.lines.size(); ++i) {
    Line& line = parts.lines[i];
    if (outlets_of_line_[i].empty() || !line.outlets.empty()) continue;
    std::vector<PlacedOutlet> placed;
    for (int number = 1; number <= line.outlet_count(); ++number)
      placed.push_back({line.place_of(number), line.kind_of(number)});
    line.outlet.reset();
    line.count.reset();
    line.spacing.reset();
    line.first_at.reset();
    line.outlets = std::move(placed);
  }
  for (std::size_t i = 0; i < inputs_.size(); ++i) apply(inputs_[i], drawn[i], parts);
  Layout varied(std::move(parts.supply),
                std::move(parts.lines),
                layout_.water(),
                layout_.site(),
                layout_.sets(),
                std::move(parts.further_supplies));
  if (!parts.faults.empty()) varied = varied.with_faults(parts.faults);
  return layout_.running_sets().empty() ? varied : varied.watering(layout_.running_sets());
}

void UncertainInputs::apply(const UncertainInput& input, double drawn, Parts& parts) const {
  switch (input.kind) {
    case InputKind::outlet: {
      const std::vector<OutletPlace>& places = outlets_of_line_[input.at];
      scale(parts.outlet(*std::ranges::lower_bound(places, input.number, {}, &OutletPlace::number)),
            drawn);
      return;
    }
    case InputKind::rating:
      for (const OutletPlace& place : outlets_of_kind_[input.at]) scale(parts.outlet(place), drawn);
      return;
    case InputKind::inside_diameter:
    case InputKind::wall:
      for (const PipePlace& place : pipes_of_kind_[input.at]) parts.vary(place, input.kind, drawn);
      return;
    case InputKind::loss_coefficient: {
      Line& line = parts.lines[input.at];
      scale(line.loss_coefficient, drawn);
      scale(line.outlet_loss_coefficient, drawn);
      scale(line.riser.loss_coefficient, drawn);
      return;
    }
    case InputKind::elevation: {
      Line& line = parts.lines[input.at];
      const Length more = Length::from_value(drawn);
      if (input.number > 0)
        line.elevations[static_cast<std::size_t>(input.number - 1)] += more;
      else
        line.ground_rise = line.ground_rise.value_or(Length{}) + more;
      return;
    }
    case InputKind::supply_pressure:
    case InputKind::pump_head:
      vary(input.at == 0 ? parts.supply : parts.further_supplies[input.at - 1], input, drawn);
      return;
  }
}

void UncertainInputs::vary(Pipe& pipe, InputKind kind, double drawn) {
  vary_pipe(pipe.inside_diameter, pipe, kind, drawn);
}

void UncertainInputs::vary(Supply& supply, const UncertainInput& input, double drawn) const {
  if (input.kind == InputKind::supply_pressure)
    add_pressure(supply, Pressure::from_value(drawn), weight_density_);
  else
    scale_head(input.number == 1 ? supply.pump : supply.second_pump, drawn);
}

}  // namespace hydro
