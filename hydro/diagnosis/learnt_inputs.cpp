#include "hydro/diagnosis/learnt_inputs.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Of those whose deviation may be a large part of themselves: that of the logarithm.
double log_variance(double deviation) {
  return std::log1p(deviation * deviation);
}
bool is_lognormal(InputKind kind) {
  return kind == InputKind::wall || kind == InputKind::loss_coefficient;
}

/// As it was described: one kind for all of it, instead of a list of outlets that are the same.
void write_as_described(Line& line, const Line& described, const Layout& layout) {
  if (described.outlets.size() == line.outlets.size()) return;
  // What is fitted wrongly stands in its fault; the kind below it was left.
  const std::vector<Fault>& faults = layout.faults();
  for (int number = 1; number <= described.outlet_count(); ++number) {
    const bool is_covered = std::ranges::any_of(faults, [&](const Fault& fault) {
      const auto* wrong = std::get_if<WrongOutlet>(&fault);
      return wrong && wrong->line == line.name && wrong->outlet == number;
    });
    if (is_covered) continue;
    line.outlet = line.outlets[static_cast<std::size_t>(number - 1)].outlet;
    line.count = described.count;
    line.spacing = described.spacing;
    line.first_at = described.first_at;
    line.outlets.clear();
    return;
  }
}

std::string and_more(const std::string& first, std::size_t more) {
  return more == 0 ? first : fmt::format("{} and {} more", first, more);
}

}  // namespace

Uncertainty learnt_part(Uncertainty uncertainty) {
  uncertainty.manufacturing_variation = 0;
  uncertainty.elevation = {};
  for (OutletUncertainty& outlet : uncertainty.outlets) outlet.manufacturing_variation = 0;
  return uncertainty;
}

Uncertainty unlearnt_part(Uncertainty uncertainty) {
  for (OutletUncertainty& outlet : uncertainty.outlets) outlet.rating = 0;
  return {.manufacturing_variation = uncertainty.manufacturing_variation,
          .outlets = std::move(uncertainty.outlets),
          .elevation = uncertainty.elevation};
}

LearntInputs::LearntInputs(const Layout& layout, const Uncertainty& uncertainty)
    : uncertainty_(uncertainty), inputs_(layout, learnt_part(uncertainty)) {}

double LearntInputs::drawn(const UncertainInput& input, double x) const {
  if (is_lognormal(input.kind)) return std::exp(std::sqrt(log_variance(input.deviation)) * x);
  if (input.kind == InputKind::supply_pressure) return input.deviation * x;
  return 1 + input.deviation * x;
}

std::optional<Layout> LearntInputs::layout_with(const Eigen::VectorXd& x) const {
  constexpr double least_factor = 0.2;
  std::vector<double> values;
  for (std::size_t i = 0; i < count(); ++i) {
    const UncertainInput& input = inputs_.inputs()[i];
    values.push_back(drawn(input, x[static_cast<Eigen::Index>(i)]));
    if (input.kind != InputKind::supply_pressure && !(values.back() >= least_factor))
      return std::nullopt;
  }
  const Layout& described = inputs_.layout();
  const Layout varied = inputs_.with(values);
  std::vector<Line> lines = varied.lines();
  for (std::size_t i = 0; i < lines.size(); ++i)
    write_as_described(lines[i], described.lines()[i], described);
  Layout layout(varied.supply(),
                std::move(lines),
                varied.water(),
                varied.site(),
                varied.sets(),
                varied.further_supplies());
  if (!varied.faults().empty()) layout = layout.with_faults(varied.faults());
  return varied.running_sets().empty() ? layout : layout.watering(varied.running_sets());
}

double LearntInputs::slope_factor(std::size_t which, double x) const {
  const UncertainInput& input = inputs_.inputs()[which];
  if (is_lognormal(input.kind)) return std::sqrt(log_variance(input.deviation)) / input.deviation;
  return input.kind == InputKind::supply_pressure ? 1 : 1 / drawn(input, x);
}

double LearntInputs::deviation_at(const UncertainInput& input, double x, double variance) const {
  if (is_lognormal(input.kind))
    return std::sqrt(std::expm1(log_variance(input.deviation) * variance));
  const double deviation = input.deviation * std::sqrt(variance);
  return input.kind == InputKind::supply_pressure ? deviation : deviation / drawn(input, x);
}

const Outlet& LearntInputs::outlet_of(const UncertainInput& input) const {
  const auto& first = inputs_.outlets_of_kind()[input.at].front();
  return inputs_.layout().outlet_at(first.line, first.number);
}

std::string LearntInputs::name_of_pipe(std::size_t kind) const {
  const auto& places = inputs_.pipes_of_kind()[kind];
  const auto& first = places.front();
  const Line& line = inputs_.layout().lines()[first.line];
  using Place = UncertainInputs::PipePlace;
  std::string name = first.part == Place::riser   ? ""
                     : first.part == Place::reach ? line.reaches[first.which].pipe.name
                                                  : line.pipe.name;
  if (!name.empty()) return name;
  std::set<std::size_t> lines;
  for (const auto& place : places) lines.insert(place.line);
  return (first.part == Place::riser ? "risers of " : "pipe of ") +
         and_more(line.name, lines.size() - 1);
}

std::string LearntInputs::name_of(const UncertainInput& input) const {
  const Layout& layout = inputs_.layout();
  switch (input.kind) {
    case InputKind::rating: {
      const Outlet& outlet = outlet_of(input);
      if (!outlet.name.empty()) return outlet.name;
      std::set<std::size_t> lines;
      for (const auto& place : inputs_.outlets_of_kind()[input.at]) lines.insert(place.line);
      return "outlets of " + and_more(layout.lines()[*lines.begin()].name, lines.size() - 1);
    }
    case InputKind::inside_diameter:
    case InputKind::wall:
      return name_of_pipe(input.at);
    case InputKind::supply_pressure:
    case InputKind::pump_head:
      return input.at == 0 ? "supply" : layout.further_supplies()[input.at - 1].name;
    default:
      return layout.lines()[input.at].name;
  }
}

void LearntInputs::tell_wall(const UncertainInput& input, double factor, Learnt& learnt) const {
  const auto& place = inputs_.pipes_of_kind()[input.at].front();
  const Line& line = inputs_.layout().lines()[place.line];
  using Place = UncertainInputs::PipePlace;
  const Pipe pipe = place.part == Place::riser   ? *line.riser.pipe()
                    : place.part == Place::reach ? line.reaches[place.which].pipe
                                                 : line.pipe;
  if (pipe.roughness) {
    learnt.kind = LearntKind::roughness;
    return;
  }
  learnt.kind = pipe.hazen_williams ? LearntKind::hazen_williams : LearntKind::darcy_factor;
  learnt.before = pipe.hazen_williams ? pipe.hazen_williams : pipe.darcy_factor;
  learnt.after = *learnt.before * factor;
}

Learnt LearntInputs::tell(std::size_t which, double x, double variance) const {
  const UncertainInput& input = inputs_.inputs()[which];
  Learnt learnt{.of = name_of(input), .moved = x, .learnt = 1 - variance};
  if (input.kind == InputKind::supply_pressure) {
    learnt.kind = LearntKind::supply_pressure;
    learnt.more = Pressure::from_value(drawn(input, x));
    learnt.more_deviation_before = Pressure::from_value(input.deviation);
    learnt.more_deviation = Pressure::from_value(deviation_at(input, x, variance));
    return learnt;
  }
  learnt.factor = drawn(input, x);
  learnt.deviation_before = input.deviation;
  learnt.deviation = deviation_at(input, x, variance);
  switch (input.kind) {
    case InputKind::wall:
      tell_wall(input, *learnt.factor, learnt);
      break;
    case InputKind::inside_diameter:
      learnt.kind = LearntKind::inside_diameter;
      break;
    case InputKind::loss_coefficient:
      learnt.kind = LearntKind::loss_coefficient;
      break;
    case InputKind::pump_head:
      learnt.kind = LearntKind::pump_head;
      learnt.pump = input.number;
      break;
    default:
      learnt.kind = LearntKind::outlet_flow;
      break;
  }
  return learnt;
}

std::size_t LearntInputs::group_of(std::size_t which) const {
  const UncertainInput& input = inputs_.inputs()[which];
  constexpr std::size_t kinds = 16;  // more than there are in InputKind
  if (input.kind != InputKind::rating) return static_cast<std::size_t>(input.kind);
  for (std::size_t i = 0; i < count(); ++i)
    if (const UncertainInput& other = inputs_.inputs()[i];
        other.kind == InputKind::rating && outlet_of(other).name == outlet_of(input).name)
      return kinds + i;
  return kinds + which;
}

Uncertainty LearntInputs::shrunk(const Eigen::VectorXd& x, const Eigen::VectorXd& by_input) const {
  constexpr double most = 0.2, most_of_bore = 0.1;  // that problems(Uncertainty) accepts
  Uncertainty left = uncertainty_;
  // The largest share of a group, since a value that fell has a larger one.
  double wall = 0, bore = 0, losses = 0, pump = 0, pressure = 0;
  std::map<std::string, double> ratings;
  for (std::size_t i = 0; i < count(); ++i) {
    const UncertainInput& input = inputs_.inputs()[i];
    const auto at = static_cast<Eigen::Index>(i);
    const double deviation = deviation_at(input, x[at], by_input[at]);
    double& largest = input.kind == InputKind::wall               ? wall
                      : input.kind == InputKind::inside_diameter  ? bore
                      : input.kind == InputKind::loss_coefficient ? losses
                      : input.kind == InputKind::pump_head        ? pump
                      : input.kind == InputKind::supply_pressure  ? pressure
                                                                  : ratings[outlet_of(input).name];
    largest = std::max(largest, deviation);
  }
  left.wall = wall;
  left.inside_diameter = std::min(bore, most_of_bore);
  left.loss_coefficient = losses;
  left.pump_head = std::min(pump, most);
  left.supply_pressure = Pressure::from_value(pressure);
  for (const auto& [name, deviation] : ratings) {
    auto entry = std::ranges::find(left.outlets, name, &OutletUncertainty::outlet);
    if (entry == left.outlets.end())
      entry = left.outlets.insert(entry, OutletUncertainty{.outlet = name});
    entry->rating = std::min(deviation, most);
  }
  return left;
}

}  // namespace hydro
