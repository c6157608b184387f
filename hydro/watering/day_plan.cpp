#include "hydro/watering/day_plan.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/watering/filling.hpp"
#include "hydro/watering/useful_flow.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>
#include <utility>

namespace hydro {
namespace {

constexpr double rounding = 1e-9;  ///< share of its need that a set may lack and has all

void throw_if_any(std::vector<Problem> found) {
  if (!found.empty()) throw InvalidInput(std::move(found));
}

/// Indices into the sets to water, rising.
using Group = std::vector<std::size_t>;

/// Some sets running together, with the supply set for them.
struct Running {
  Setting setting;
  Solution solution;  ///< with the faults
  std::vector<SupplyLimit> limits;
  bool mists;  ///< some outlet is above its maximum
  Filling filling;
  std::map<std::size_t, Time> needs;  ///< how long each set takes for all; none if it is not served

  bool serves() const { return setting.reached && limits.empty() && solution.inflow() > Flow{}; }
};

Energy energy(const Power& power, const Time& time) {
  return Energy(power * time);
}

/// Of the pumps, or of the pump that must stand behind a held pressure.
Power water_power(const Supply& supply, const OperatingPoint& point) {
  if (supply.pressure)
    return Power::from_value(si(point.source_pressure) * std::max(0.0, si(point.flow)));
  Power power{};
  for (const PumpDuty& duty : point.pumps) power += duty.water_power;
  return power;
}

/// None where the efficiency of one that runs is not known, or there is no pump.
std::optional<Power> shaft_power(const Solution& solution) {
  std::optional<Power> power;
  const auto add = [&](const OperatingPoint& point) {
    for (const PumpDuty& duty : point.pumps) {
      if (!duty.shaft_power) return false;
      power = power.value_or(Power{}) + *duty.shaft_power;
    }
    return true;
  };
  bool known = add(solution.supply());
  for (const OperatingPoint& point : solution.further_supplies()) known = add(point) && known;
  return known ? power : std::nullopt;
}

Power water_power(const Solution& solution) {
  const Layout& layout = solution.layout();
  Power power = water_power(layout.supply_as_it_is(), solution.supply());
  for (std::size_t i = 0; i < solution.further_supplies().size(); ++i)
    power += water_power(layout.further_supplies_as_they_are()[i], solution.further_supplies()[i]);
  return power;
}

class Day {
 public:
  Day(const Layout& layout,
      const std::vector<SetToWater>& sets,
      const DayOptions& options,
      const Work& work)
      : layout_(layout), sets_(sets), options_(options), work_(work) {
    for (const SetToWater& it : sets) plan_.sets.push_back({.set = it.set});
    plan_.earliest = options.earliest;
    plan_.latest = options.latest;
    for (std::size_t i = 0; i < sets.size(); ++i) pending_.push_back(i);
  }

  DayPlan run() {
    Time now = options_.earliest;
    bool goes_on = true;
    while (!pending_.empty() && goes_on) {
      tell_progress();
      const Group group = next_group();
      if (group.empty()) {
        leave(pending_.front(), WhyLeft::not_served);
        pending_.erase(pending_.begin());
        continue;
      }
      goes_on = take_turn(group, now);
    }
    for (const std::size_t set : pending_) leave(set, WhyLeft::day_too_short);
    for (std::size_t set = 0; set < sets_.size(); ++set) tell_application(set);
    add_up();
    return std::move(plan_);
  }

 private:
  void tell_progress() const {
    const std::size_t done = sets_.size() - pending_.size();
    if (work_.progress && !work_.progress(done, sets_.size())) throw Stopped(done, sets_.size());
  }

  /// The first set that is still to run, and as many of the next ones as the supply serves; none
  /// where it does not serve the first in any way.
  Group next_group() {
    Group group{pending_.front()};
    if (options_.together)
      for (std::size_t i = 1; i < pending_.size(); ++i) {
        Group more = group;
        more.push_back(pending_[i]);
        std::ranges::sort(more);
        const Running& running = running_with(more);
        if (running.serves() && !running.mists) group = more;
      }
    return running_with(group).serves() ? group : Group{};
  }

  const Running& running_with(const Group& group) {
    const auto found = known_.find(group);
    if (found != known_.end()) return found->second;
    std::vector<std::string> names;
    for (const std::size_t i : group) names.push_back(sets_[i].set);
    const Layout running = layout_.watering(names);
    Setting setting = set_for_rated_if_possible(running.without_faults(), options_.share);
    Solution solution = setting.solution;
    std::vector<SupplyLimit> limits = setting.limits;
    if (!running.faults().empty()) {
      solution = solve(running.with_supply(setting.solution.layout().supply()));
      limits = limits_passed(solution.layout().supply_as_it_is(), solution.supply());
    }
    const bool mists = !check(solution).above_maximum.empty();
    Filling filling = hydro::filling(running, {.velocity = options_.fill_velocity});
    Running result{
        std::move(setting), std::move(solution), std::move(limits), mists, std::move(filling), {}};
    if (result.serves())
      for (const std::size_t i : group) result.needs[i] = time_for_all(i, result.solution);
    return known_.emplace(group, std::move(result)).first->second;
  }

  Ground ground_of(std::size_t set) const {
    Ground ground = sets_[set].ground;
    if (!ground.lines.empty()) return ground;
    const Layout running = layout_.watering({sets_[set].set});
    for (std::size_t l = 0; l < running.lines().size(); ++l)
      if (running.lines()[l].outlet_count() > 0 && !running.is_shut(l))
        ground.lines.push_back(running.lines()[l].name);
    return ground;
  }

  Time time_for_all(std::size_t set, const Solution& solution) const {
    if (sets_[set].time) return *sets_[set].time;
    try {
      return run_time(application(solution, ground_of(set)), *sets_[set].need, options_.soil)
          .does.time;
    } catch (const InvalidInput& error) {
      std::vector<Problem> found = error.problems();
      for (Problem& problem : found) problem.place = "set " + in_quotes(sets_[set].set);
      throw InvalidInput(std::move(found));
    }
  }

  /// Whether the day goes on after it.
  bool take_turn(const Group& group, Time& now) {
    const Running& running = running_with(group);
    const Solution& solution = running.solution;
    Turn turn{.fill_from = plan_.turns.empty() ? now : Time(now + options_.changeover),
              .speed = running.setting.speed,
              .pressure = solution.supply().source_pressure,
              .gauge_reading = solution.supply().gauge_reading,
              .flow = solution.inflow()};
    for (const std::size_t i : group) turn.sets.push_back(sets_[i].set);
    std::set<std::string> full;
    for (const LineVolume& line : running.filling.lines) {
      full.insert(line.line);
      if (!full_.contains(line.line)) turn.fill += line.volume;
    }
    turn.start =
        turn.fill_from + Time(turn.fill / std::min(running.filling.gentle_flow, turn.flow));
    if (!(turn.start < options_.latest)) return false;

    Time runs = options_.latest - turn.start;
    const auto needs = [&](std::size_t set) { return (1 - share(set)) * running.needs.at(set); };
    for (const std::size_t i : group) runs = std::min(runs, Time(needs(i)));
    for (const std::size_t i : group) {
      SetDay& day = plan_.sets[i];
      day.runs += runs;
      day.share += runs / running.needs.at(i);
      if (day.share > 1 - rounding) day.share = 1;
      last_[i] = group;
      const Solution& solved = running.solution;
      for (const std::string& line : ground_of(i).lines)
        for (std::size_t k = 0; k < solved.line(line).state.size(); ++k)
          day.let_out += Volume::from_value(useful_flow(solved.line(line), k) * si(runs));
    }
    std::erase_if(pending_, [&](std::size_t i) { return share(i) == 1; });

    turn.stop = turn.start + runs;
    turn.let_out = Volume(useful_flow(solution) * runs);
    turn.lost = Volume(lost_flow(solution) * runs);
    turn.run_out = running.filling.run_out;
    const Time as_if_filled_at_full_flow = Time(turn.fill / turn.flow);
    turn.water_energy = energy(water_power(solution), runs + as_if_filled_at_full_flow);
    if (const auto power = shaft_power(solution))
      turn.shaft_energy = energy(*power, runs + as_if_filled_at_full_flow);
    now = turn.stop;
    full_ = std::move(full);
    plan_.turns.push_back(std::move(turn));
    return now < options_.latest;
  }

  double share(std::size_t set) const { return plan_.sets[set].share; }

  void leave(std::size_t set, WhyLeft why) {
    SetDay& day = plan_.sets[set];
    const auto last = last_.find(set);
    const Running& running = running_with(last == last_.end() ? Group{set} : last->second);
    if (const auto needs = running.needs.find(set); needs != running.needs.end())
      day.still_needs = (1 - day.share) * needs->second;
    else if (sets_[set].time)
      day.still_needs = (1 - day.share) * *sets_[set].time;
    day.why_left = why;
    if (why == WhyLeft::not_served) day.limits = running_with({set}).limits;
  }

  void tell_application(std::size_t set) {
    const auto last = last_.find(set);
    if (last == last_.end()) return;
    SetDay& day = plan_.sets[set];
    day.application = application(running_with(last->second).solution, ground_of(set));
    if (sets_[set].need) day.run = run_time(*day.application, *sets_[set].need, options_.soil);
  }

  void add_up() {
    bool shaft_known = !plan_.turns.empty();
    Energy shaft{};
    for (const Turn& turn : plan_.turns) {
      plan_.pumped += turn.pumped();
      plan_.let_out += turn.let_out;
      plan_.lost += turn.lost;
      plan_.fill += turn.fill;
      plan_.pump_time += turn.stop - turn.fill_from;
      plan_.water_energy += turn.water_energy;
      shaft_known = shaft_known && turn.shaft_energy;
      shaft += turn.shaft_energy.value_or(Energy{});
    }
    if (shaft_known) plan_.shaft_energy = shaft;
    const WaterPrices& prices = options_.prices;
    if (!prices.of_volume && !prices.of_energy && !prices.of_pump_time) return;
    if (prices.of_energy && !shaft_known) return;
    plan_.cost = prices.of_volume.value_or(0) * (si(plan_.pumped) / si(prices.volume)) +
                 prices.of_energy.value_or(0) * (si(shaft) / si(prices.energy)) +
                 prices.of_pump_time.value_or(0) * (si(plan_.pump_time) / si(prices.pump_time));
  }

  const Layout& layout_;
  const std::vector<SetToWater>& sets_;
  const DayOptions& options_;
  const Work& work_;
  DayPlan plan_;
  std::vector<std::size_t> pending_;
  std::map<Group, Running> known_;
  std::map<std::size_t, Group> last_;  ///< the turn in which each set ran last
  std::set<std::string> full_;         ///< lines
};

void examine(const Layout& layout, const std::vector<SetToWater>& sets, const DayOptions& options) {
  Examination examination;
  for (const Problem& problem : problems(options)) examination.add(problem.key, problem.message);
  if (sets.empty()) examination.add("sets", "are none, must be one or more");
  std::set<std::string> named;
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const std::string key = "sets, " + std::to_string(i + 1);
    for (const Problem& problem : problems(sets[i]))
      examination.add(key + ", " + problem.key, problem.message);
    const auto known = std::ranges::find(layout.sets(), sets[i].set, &WateringSet::name);
    if (known == layout.sets().end()) {
      examination.add(key + ", set", "is " + in_quotes(sets[i].set) + ", no set of the layout");
      continue;
    }
    if (!named.insert(sets[i].set).second)
      examination.add(key + ", set", "is " + in_quotes(sets[i].set) + " again");
    const Layout running = layout.watering({sets[i].set});
    bool some = false;
    for (std::size_t l = 0; l < running.lines().size(); ++l)
      for (int n = 1; n <= running.lines()[l].outlet_count() && !some; ++n)
        some = running.outlet_has_water(l, n);
    if (!some)
      examination.add(key + ", set", "is " + in_quotes(sets[i].set) + ", which opens no outlet");
  }
  throw_if_any(examination.take());
}

}  // namespace

bool DayPlan::all_fits() const {
  return std::ranges::none_of(sets, [](const SetDay& set) { return set.why_left.has_value(); });
}

DayPlan day_plan(const Layout& layout,
                 const std::vector<SetToWater>& sets,
                 const DayOptions& options,
                 const Work& work) {
  examine(layout, sets, options);
  return Day(layout, sets, options, work).run();
}

std::vector<Problem> problems(const SetToWater& set) {
  Examination examination;
  if (set.time.has_value() == set.need.has_value())
    examination.add("time, need",
                    set.time ? "are both given; take one of the two"
                             : "are not given; one of the two is needed");
  examination.within("time", set.time, Range<Time>{0, 24, units::h, true});
  if (set.need) examination.include("need", problems(*set.need));
  Ground ground = set.ground;
  if (ground.lines.empty()) ground.lines = {"all that the set opens"};
  examination.include("ground", problems(ground));
  return examination.take();
}

std::vector<Problem> problems(const DayOptions& options) {
  constexpr Range<Time> of_the_day{0, 48, units::h};
  const Range<double> money{0, 1e9, units::plain};
  Examination examination;
  examination.within("earliest", options.earliest, of_the_day);
  examination.within("latest", options.latest, of_the_day);
  if (!(options.earliest < options.latest))
    examination.add("latest",
                    "is " + to_message(options.latest, units::h) +
                        ", must be later than earliest, " + to_message(options.earliest, units::h));
  examination.within("changeover", options.changeover, Range<Time>{0, 24, units::h});
  examination.within("fill_velocity", options.fill_velocity, Range<Velocity>{0, 10, m_per_s, true});
  examination.within("share", options.share, Range<double>{0, 5, units::plain, true});
  examination.include("soil", problems(options.soil));
  examination.within("prices.of_volume", options.prices.of_volume, money);
  examination.within("prices.volume", options.prices.volume, Range<Volume>{0, 1e9, m3, true});
  examination.within("prices.of_energy", options.prices.of_energy, money);
  examination.within("prices.energy", options.prices.energy, Range<Energy>{0, 1e9, kWh, true});
  examination.within("prices.of_pump_time", options.prices.of_pump_time, money);
  examination.within(
      "prices.pump_time", options.prices.pump_time, Range<Time>{0, 1e6, units::h, true});
  return examination.take();
}

}  // namespace hydro
