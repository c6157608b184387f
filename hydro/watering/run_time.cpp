#include "hydro/watering/run_time.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace hydro {
namespace {

constexpr double rounding = 1e-9;  ///< share by which an outlet may miss its need and is served
constexpr int most_bursts = 1000;

void throw_if_any(std::vector<Problem> found) {
  if (!found.empty()) throw InvalidInput(std::move(found));
}

/// Outlets, what each gives in a time and what it must give.
class Ways {
 public:
  Ways(const Application& application, const WaterAmount& need, const RunTimeOptions& options)
      : application_(application), options_(options) {
    Examination examination;
    for (const Problem& problem : problems(need)) examination.add(problem.key, problem.message);
    for (const Problem& problem : problems(options))
      examination.add("options." + problem.key, problem.message);
    if (need.depth && !application.rates)
      examination.add(
          "depth",
          "is needed, but neither the spacing nor the area of the ground is known; give "
          "one of them, or a volume per plant");
    if (need.per_plant && !application.outlets_per_plant)
      examination.add("per_plant", "is needed, but outlets_per_plant is not known");
    if (!(application.total > Flow{}))
      examination.add("application", "brings no water; no time is long enough");
    throw_if_any(examination.take());
    for (std::size_t i = 0; i < application.flow.size(); ++i) {
      flows_.push_back(application.flow.si()[i]);
      needs_.push_back(need.depth ? si(*need.depth) * application.area.si()[i]
                                  : si(*need.per_plant) / *application.outlets_per_plant);
    }
  }

  /// Whose share of the need comes in a second, as it leaves the outlets: the weakest quarter's or
  /// the average one's.
  double share_in_a_second(ServedBy served) const {
    if (served == ServedBy::average) {
      double flow = 0, need = 0;
      for (std::size_t i = 0; i < flows_.size(); ++i) {
        flow += flows_[i];
        need += needs_[i];
      }
      return flow / need;
    }
    std::vector<Flow> shares;  // of the need: plain numbers, which uniformity() takes as flows
    for (std::size_t i = 0; i < flows_.size(); ++i)
      shares.push_back(Flow::from_value(flows_[i] / needs_[i]));
    return si(uniformity(shares).low_quarter);
  }

  /// In seconds, losses on top; infinite where nothing comes.
  double time_for(ServedBy served) const {
    return 1 / (options_.effective_portion * share_in_a_second(served));
  }

  /// A run of so many seconds in so many bursts, each of which loses what wets the leaves.
  Watering does(double time, int bursts) const {
    Watering result{.time = Time::from_value(time)};
    int served = 0;
    for (std::size_t i = 0; i < flows_.size(); ++i) {
      const double let_out = flows_[i] * time;
      const double wets = si(options_.wetting_loss) * area_of(i) * bursts;
      const double comes = std::max(0.0, options_.effective_portion * let_out - wets);
      const double used = std::min(comes, needs_[i]);
      result.let_out += Volume::from_value(let_out);
      result.to_the_air += Volume::from_value(let_out - comes);
      result.to_the_roots += Volume::from_value(used);
      result.deeper += Volume::from_value(comes - used);
      result.missing += Volume::from_value(needs_[i] - used);
      served += used >= needs_[i] * (1 - rounding) ? 1 : 0;
    }
    if (time > 0) result.efficiency = result.to_the_roots / result.let_out;
    result.served_share = static_cast<double>(served) / static_cast<double>(flows_.size());
    return result;
  }

  /// How long a run in so many bursts must be [s], so that what wets the leaves is made good.
  double time_in(int bursts) const {
    return time_for(options_.served) * (1 + si(options_.wetting_loss) * bursts / average_depth());
  }

  /// How much faster water comes to the wettest ground than it soaks in [m/s].
  double surplus() const {
    if (!options_.intake_rate || !application_.rates) return 0;
    return options_.effective_portion * si(application_.rates->wettest) - si(*options_.intake_rate);
  }

  Bursts in(int count) const {
    Bursts result{.bursts = count};
    const double whole = time_in(count);
    const double each = whole / count;
    result.each = Time::from_value(each);
    result.does = does(whole, count);
    const double surplus = this->surplus();
    if (surplus > 0) {
      result.standing = Length::from_value(surplus * each);
      if (count > 1) result.rest = Time::from_value(surplus * each / si(*options_.intake_rate));
      result.runs_off = result.standing > options_.surface_storage * (1 + rounding);
    }
    result.whole = Time::from_value(whole + (count - 1) * si(result.rest));
    return result;
  }

 private:
  double area_of(std::size_t i) const {
    return application_.area.empty() ? 0 : application_.area.si()[i];
  }
  /// Of the need, over all the ground [m]; 1 where no area is known: then no wetting loss counts.
  double average_depth() const {
    double need = 0, area = 0;
    for (std::size_t i = 0; i < needs_.size(); ++i) {
      need += needs_[i];
      area += area_of(i);
    }
    return area > 0 ? need / area : HUGE_VAL;
  }

  const Application& application_;
  const RunTimeOptions& options_;
  std::vector<double> flows_;  // [m3/s]
  std::vector<double> needs_;  // [m3]
};

/// @throws InvalidInput where those who are served get nothing
void require_water(const Ways& ways, ServedBy served) {
  if (!(ways.share_in_a_second(served) > 0))
    throw InvalidInput("served",
                       "is low_quarter, but the weakest quarter of the outlets gets no water; mend "
                       "that, or take average");
}

}  // namespace

RunTime run_time(const Application& application,
                 const WaterAmount& need,
                 const RunTimeOptions& options) {
  const Ways ways(application, need, options);
  require_water(ways, options.served);
  RunTime result{.for_average = Time::from_value(ways.time_for(ServedBy::average)),
                 .served = options.served};
  if (ways.share_in_a_second(ServedBy::low_quarter) > 0)
    result.for_low_quarter = Time::from_value(ways.time_for(ServedBy::low_quarter));
  const Bursts once = ways.in(1);
  result.does = once.does;
  result.bursts = once;
  if (!(ways.surplus() > 0)) return result;
  const double longest = si(options.surface_storage) / ways.surplus();
  result.longest_burst = Time::from_value(longest);
  int count = 1;
  while (count < most_bursts && result.bursts.runs_off) result.bursts = ways.in(++count);
  if (result.bursts.runs_off)
    throw InvalidInput("options.surface_storage",
                       "is " + to_message(options.surface_storage, mm) + ", so that more than " +
                           std::to_string(most_bursts) +
                           " bursts would be needed; water more slowly");
  return result;
}

Watering watering(const Application& application,
                  const WaterAmount& need,
                  const Time& time,
                  const RunTimeOptions& options) {
  const Ways ways(application, need, options);
  Examination examination;
  examination.within("time", time, Range<Time>{0, 1e7, units::s});
  throw_if_any(examination.take());
  return ways.does(si(time), 1);
}

std::vector<Bursts> long_or_short(const Application& application,
                                  const WaterAmount& need,
                                  const RunTimeOptions& options,
                                  int most) {
  const Ways ways(application, need, options);
  Examination examination;
  examination.within("most", most, 1, 100);
  throw_if_any(examination.take());
  require_water(ways, options.served);
  std::vector<Bursts> all;
  for (int count = 1; count <= most; ++count) all.push_back(ways.in(count));
  return all;
}

std::vector<Problem> problems(const WaterAmount& need) {
  Examination examination;
  if (need.depth.has_value() == need.per_plant.has_value())
    examination.add("depth, per_plant",
                    need.depth ? "are both given; take one of the two"
                               : "are not given; one of the two is needed");
  examination.within("depth", need.depth, Range<Length>{0, 2000, mm, true});
  examination.within("per_plant", need.per_plant, Range<Volume>{0, 100000, litre, true});
  return examination.take();
}

std::vector<Problem> problems(const RunTimeOptions& options) {
  Examination examination;
  examination.within(
      "effective_portion", options.effective_portion, Range<double>{0, 1, units::plain, true});
  examination.within("intake_rate", options.intake_rate, Range<Velocity>{0, 2000, mm_per_h, true});
  examination.within("surface_storage", options.surface_storage, Range<Length>{0, 500, mm, true});
  examination.within("wetting_loss", options.wetting_loss, Range<Length>{0, 20, mm});
  return examination.take();
}

}  // namespace hydro
