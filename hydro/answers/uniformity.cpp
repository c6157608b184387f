#include "hydro/answers/uniformity.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <numeric>
#include <utility>

#include <boost/math/statistics/univariate_statistics.hpp>

namespace hydro {
namespace {

template <class Q>
const Range<Q> measurable;
template <>
const Range<Flow> measurable<Flow>{0, 1e6, lpm};
template <>
const Range<Volume> measurable<Volume>{0, 1e6, litre};
template <>
const Range<Length> measurable<Length>{0, 1e4, mm};

double mean_of_lowest_quarter(const std::vector<double>& sorted) {
  const double quarter = static_cast<double>(sorted.size()) / 4;
  if (quarter <= 1) return sorted.front();
  const auto edge = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 4);
  const double part = quarter - std::floor(quarter);
  const double sum = std::accumulate(sorted.begin(), edge, 0.0) + part * *edge;
  return sum / quarter;
}

/// @param amounts in SI, none below 0, some above
template <class Q>
Uniformity<Q> measures_of(std::vector<double> amounts) {
  namespace statistics = boost::math::statistics;
  std::sort(amounts.begin(), amounts.end());
  const double mean = statistics::mean(amounts);
  const double low_quarter = mean_of_lowest_quarter(amounts);
  const double deviations =
      std::accumulate(amounts.begin(), amounts.end(), 0.0, [mean](double sum, double amount) {
        return sum + std::abs(amount - mean);
      });
  Uniformity<Q> result{
      .count = static_cast<int>(amounts.size()),
      .mean = Q::from_value(mean),
      .least = Q::from_value(amounts.front()),
      .low_quarter = Q::from_value(low_quarter),
      .christiansen = 100 * (1 - deviations / (static_cast<double>(amounts.size()) * mean)),
      .distribution = 100 * low_quarter / mean};
  if (amounts.size() > 1)
    result.statistical = 100 * (1 - std::sqrt(statistics::sample_variance(amounts)) / mean);
  return result;
}

/// Flows of outlets of one kind.
struct Group {
  std::string line;
  const Outlet* kind;
  std::vector<double> flows = {};  // [m3/s]
  int lines = 1;                   // they stand on
};

bool let_out_water(const Group& group) {
  return std::any_of(group.flows.begin(), group.flows.end(), [](double flow) { return flow > 0; });
}

class Gathering {
 public:
  explicit Gathering(const Solution& solution) : solution_(solution) {}

  std::vector<OutletUniformity> run() {
    for (std::size_t i = 0; i < solution_.lines().size(); ++i)
      for (Group& group : groups_on(i)) {
        add_to_all(group);
        report(std::move(group));
      }
    for (Group& group : together_)
      if (group.lines > 1) report(std::move(group));
    return std::move(found_);
  }

 private:
  /// One for each kind on the line, in the order in which they first stand there.
  std::vector<Group> groups_on(std::size_t line_index) const {
    const LineSolution& solved = solution_.lines()[line_index];
    std::vector<Group> groups;
    for (std::size_t i = 0; i < solved.state.size(); ++i) {
      const OutletState state = solved.state[i];
      if (state == OutletState::closed || state == OutletState::broken) continue;
      const Outlet& kind = solution_.layout().outlet_at(line_index, static_cast<int>(i) + 1);
      auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& known) {
        return known.kind == &kind || *known.kind == kind;
      });
      if (group == groups.end()) group = groups.insert(group, {solved.name, &kind});
      group->flows.push_back(solved.flow.si()[i]);
    }
    return groups;
  }

  void add_to_all(const Group& group) {
    const Outlet& kind = *group.kind;
    const auto [first, last] = places_.equal_range({kind.name, si(kind.flow)});
    const auto place = std::find_if(
        first, last, [&](const auto& known) { return *together_[known.second].kind == kind; });
    if (place == last) {
      places_.emplace(std::pair{kind.name, si(kind.flow)}, together_.size());
      together_.push_back({{}, group.kind, group.flows});
      return;
    }
    Group& all = together_[place->second];
    all.flows.insert(all.flows.end(), group.flows.begin(), group.flows.end());
    ++all.lines;
  }

  void report(Group group) {
    if (let_out_water(group))
      found_.push_back(
          {std::move(group.line), group.kind->name, measures_of<Flow>(std::move(group.flows))});
  }

  const Solution& solution_;
  std::vector<Group> together_;
  /// Where in `together_` kinds of this name and flow are: narrows the search among many.
  std::multimap<std::pair<std::string, double>, std::size_t> places_;
  std::vector<OutletUniformity> found_;
};

}  // namespace

template <class Q>
Uniformity<Q> uniformity(const std::vector<Q>& amounts) {
  Examination examination;
  std::vector<double> numbers;
  for (const Q& amount : amounts) {
    numbers.push_back(si(amount));
    examination.within("amounts, " + std::to_string(numbers.size()), amount, measurable<Q>);
  }
  if (std::all_of(numbers.begin(), numbers.end(), [](double number) { return number == 0; }))
    examination.add(
        "amounts",
        numbers.empty() ? "are none, must be one or more" : "are all 0, must be above 0 somewhere");
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return measures_of<Q>(std::move(numbers));
}

template Uniformity<Flow> uniformity(const std::vector<Flow>&);
template Uniformity<Volume> uniformity(const std::vector<Volume>&);
template Uniformity<Length> uniformity(const std::vector<Length>&);

std::vector<OutletUniformity> uniformity_of_outlets(const Solution& solution) {
  return Gathering(solution).run();
}

double design_emission_uniformity(const Uniformity<Flow>& computed, const EmissionDesign& design) {
  Examination examination;
  if (computed.count < 1) examination.add("computed", "has no flows, must have one or more");
  if (!design.manufacturing_variation)
    examination.add("manufacturing_variation",
                    "is not given, must be from 0 to 0.5: how much new outlets vary, as the maker "
                    "says");
  if (!design.outlets_per_plant)
    examination.add("outlets_per_plant", "is not given, must be from 1 to 1000");
  examination.within("manufacturing_variation",
                     design.manufacturing_variation,
                     Range<double>{0, 0.5, units::plain});
  if (design.outlets_per_plant)
    examination.within("outlets_per_plant", *design.outlets_per_plant, 1, 1000);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return 100 * (1 - 1.27 * *design.manufacturing_variation / std::sqrt(*design.outlets_per_plant)) *
         (si(computed.least) / si(computed.mean));
}

}  // namespace hydro
