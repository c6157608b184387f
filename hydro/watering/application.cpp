#include "hydro/watering/application.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace hydro {
namespace {

constexpr Range<Length> some_spacing{0.01, 1000, units::m};
constexpr Range<Area> some_area{1e-4, 1e9, m2};

/// As uniformity(), but of no water at all too.
Uniformity<Flow> measures_of(const std::vector<double>& flows) {
  if (std::ranges::all_of(flows, [](double flow) { return flow == 0; }))
    return {.count = static_cast<int>(flows.size())};
  std::vector<Flow> amounts;
  amounts.reserve(flows.size());
  for (const double flow : flows) amounts.push_back(Flow::from_value(flow));
  return uniformity(amounts);
}

void examine(const Solution& solution, const Ground& ground) {
  Examination examination;
  for (const Problem& problem : problems(ground)) examination.add(problem.key, problem.message);
  const auto& lines = solution.layout().lines();
  for (const std::string& name : ground.lines) {
    const auto line = std::ranges::find(lines, name, &Line::name);
    if (line == lines.end())
      examination.add("lines", "has " + in_quotes(name) + ", which is no line of the layout");
    else if (ground.row_spacing && !ground.outlet_spacing && line->outlet_count() > 0 &&
             !line->spacing)
      examination.add("row_spacing",
                      "is given, but the outlets of " + in_quotes(name) +
                          " stand unevenly; give outlet_spacing or area");
  }
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

/// Flows of the outlets that count, and what each of them waters [m2].
struct Gathered {
  std::vector<double> flows;
  std::vector<double> areas;

  void add(const LineSolution& line, double area) {
    for (std::size_t i = 0; i < line.state.size(); ++i) {
      if (line.state[i] == OutletState::closed || line.state[i] == OutletState::broken) continue;
      flows.push_back(line.flow.si()[i]);
      if (area > 0) areas.push_back(area);
    }
  }

  Application application(std::vector<std::string> lines, std::optional<double> per_plant) {
    Application result{
        .lines = std::move(lines), .flows = measures_of(flows), .outlets_per_plant = per_plant};
    for (const double flow : flows) result.total += Flow::from_value(flow);
    result.distribution = result.flows.distribution;
    if (!areas.empty()) {
      std::vector<double> on_one_m2;
      for (std::size_t i = 0; i < flows.size(); ++i) on_one_m2.push_back(flows[i] / areas[i]);
      const Uniformity<Flow> rates = measures_of(on_one_m2);
      const auto rate = [](const Flow& flow) { return Velocity::from_value(si(flow)); };
      double ground = 0;
      for (const double area : areas) ground += area;
      result.rates =
          ApplicationRates{.average = Velocity::from_value(si(result.total) / ground),
                           .low_quarter = rate(rates.low_quarter),
                           .driest = rate(rates.least),
                           .wettest = Velocity::from_value(*std::ranges::max_element(on_one_m2))};
      result.distribution = rates.distribution;
    }
    result.flow = Series<Flow>(std::move(flows));
    result.area = Series<Area>(std::move(areas));
    return result;
  }
};

/// Adds those of a line of the ground.
void add(Gathered& gathered,
         const Solution& solution,
         const Ground& ground,
         const std::string& line_name) {
  const auto area = area_per_outlet(solution.layout(), ground, line_name);
  gathered.add(solution.line(line_name), si(area.value_or(Area{})));
}

}  // namespace

Application application(const Solution& solution, const Ground& ground) {
  examine(solution, ground);
  Gathered gathered;
  for (const std::string& name : ground.lines) add(gathered, solution, ground, name);
  if (gathered.flows.empty())
    throw InvalidInput("lines", "have no outlet that is whole and open; nothing is watered");
  return gathered.application(ground.lines, ground.outlets_per_plant);
}

std::vector<Application> application_by_line(const Solution& solution, const Ground& ground) {
  examine(solution, ground);
  std::vector<Application> applications;
  for (const std::string& name : ground.lines) {
    Gathered gathered;
    add(gathered, solution, ground, name);
    if (!gathered.flows.empty())
      applications.push_back(gathered.application({name}, ground.outlets_per_plant));
  }
  return applications;
}

std::optional<Area> area_per_outlet(const Layout& layout,
                                    const Ground& ground,
                                    std::string_view line_name) {
  const Line& line = layout.line(line_name);
  if (ground.area) {
    int outlets = 0;
    for (const std::string& name : ground.lines) outlets += layout.line(name).outlet_count();
    return Area(*ground.area / std::max(1.0, double(outlets)));
  }
  const auto apart = ground.outlet_spacing ? ground.outlet_spacing : line.spacing;
  if (!ground.row_spacing || !apart) return std::nullopt;
  return Area(*apart * *ground.row_spacing);
}

std::vector<Problem> problems(const Ground& ground) {
  Examination examination;
  if (ground.lines.empty()) examination.add("lines", "are none, must be one or more");
  std::vector<std::string> names = ground.lines;
  std::ranges::sort(names);
  if (const auto twice = std::ranges::adjacent_find(names); twice != names.end())
    examination.add("lines", "has " + in_quotes(*twice) + " more than once");
  if (ground.area && (ground.row_spacing || ground.outlet_spacing))
    examination.add("area", "and spacings are both given; take one of the two ways");
  if (ground.outlet_spacing && !ground.row_spacing)
    examination.add("outlet_spacing", "is given, but row_spacing is not");
  examination.within("row_spacing", ground.row_spacing, some_spacing);
  examination.within("outlet_spacing", ground.outlet_spacing, some_spacing);
  examination.within("area", ground.area, some_area);
  examination.within(
      "outlets_per_plant", ground.outlets_per_plant, Range<double>{0.001, 1000, units::plain});
  return examination.take();
}

}  // namespace hydro
