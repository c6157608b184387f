#include "hydro/watering/bucket.hpp"

#include "hydro/quantities/range.hpp"

#include <cmath>
#include <utility>

namespace hydro {

BucketRun bucket(const Tank& tank, const Hole& hole, const std::optional<Volume>& need, int steps) {
  Examination examination;
  examination.within("need", need, Range<Volume>{0, 1e6, litre, true});
  examination.within("steps", steps, 2, 1000);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));

  BucketRun result{.empty = time_to_fall(tank, hole), .at_first = outflow(tank, hole)};
  const Area surface = *tank.surface();  // or time_to_fall had refused it
  result.holds = surface * tank.level;
  for (int i = 0; i < steps; ++i) {
    const Time time = i + 1 < steps ? result.empty * double(i) / double(steps - 1) : result.empty;
    const Length level = i + 1 < steps ? level_after(tank, hole, time) : Length{};
    Tank now = tank;
    now.level = level;
    result.steps.push_back({time,
                            Volume(surface * (tank.level - level)),
                            level > Length{} ? outflow(now, hole) : Flow{},
                            level});
  }
  if (!need) return result;
  if (!(result.holds > Volume{}))
    throw InvalidInput("tank.level", "is 0, so that nothing runs out; the need is never met");
  constexpr double rounding = 1e-9;  // a need of three drums is not three and a drop
  const double fills = std::floor(*need / result.holds + rounding);
  if (!(fills <= 1e6))
    throw InvalidInput("need", "takes more than 1000000 fills; take a larger tank");
  const Volume last = *need - fills * result.holds;
  BucketFills takes{.whole = static_cast<int>(fills), .time = fills * result.empty};
  if (last > rounding * result.holds) {
    takes.last = last;
    takes.time += time_to_run_out(tank, hole, last);
  }
  result.for_need = takes;
  return result;
}

}  // namespace hydro
