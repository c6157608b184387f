#include "hydro/watering/surge.hpp"

#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <set>
#include <utility>

namespace hydro {
namespace {

constexpr Range<Length> some_wall{0.05, 200, mm};
constexpr Range<Pressure> some_modulus{1, 1e6, MPa};
constexpr Range<Time> some_closing{0, 1e5, units::s};

void throw_if_any(std::vector<Problem> found) {
  if (!found.empty()) throw InvalidInput(std::move(found));
}

void examine(const StoppedWater& water) {
  Examination examination;
  examination.within("length", water.length, Range<Length>{0, 1000, km, true});
  examination.within("velocity", water.velocity, Range<Velocity>{0, 100, m_per_s});
  examination.within("wave_speed", water.wave_speed, Range<Velocity>{1, 2000, m_per_s});
  examination.within("density", water.density, Range<Density>{500, 2000, kg_per_m3});
  throw_if_any(examination.take());
}

void examine_closing(const Time& closing) {
  Examination examination;
  examination.within("closing", closing, some_closing);
  throw_if_any(examination.take());
}

double joukowsky(const StoppedWater& water) {
  return si(water.density) * si(water.wave_speed) * si(water.velocity);
}

/// The wall that the standard of its kind gives a pipe of this bore; none: no size has this bore.
std::optional<Length> wall_by_table(const Pipe& pipe) {
  constexpr Length as_printed = 0.0006 * inch;
  if (pipe.kind.empty()) return std::nullopt;
  const auto is_bore = [&](const Length& bore) {
    return bore - pipe.inside_diameter < as_printed && pipe.inside_diameter - bore < as_printed;
  };
  for (const std::string& size : pipe_sizes(pipe.kind)) {
    const NominalSize found = nominal_size(size, pipe.kind);
    if (is_bore(found.inside_diameter)) return found.minimum_wall;
    // Many handbooks print this bore instead (nominal_pipe.hpp).
    if (found.outside_diameter && is_bore(*found.outside_diameter - 2.0 * found.minimum_wall))
      return found.minimum_wall;
  }
  return std::nullopt;
}

std::optional<PipeWall> wall_of(const Pipe& pipe, const std::vector<KnownWall>& walls) {
  auto known = std::ranges::find(walls, pipe.name, &KnownWall::pipe);
  if (known == walls.end()) known = std::ranges::find(walls, "", &KnownWall::pipe);
  std::optional<Length> thickness;
  std::optional<Pressure> modulus;
  if (known != walls.end()) {
    thickness = known->thickness;
    modulus = known->modulus;
  }
  if (!thickness) thickness = wall_by_table(pipe);
  if (!modulus && !pipe.kind.empty()) modulus = modulus_of(pipe.kind);
  if (!thickness || !modulus) return std::nullopt;
  return PipeWall{pipe.inside_diameter, *thickness, *modulus};
}

void examine(const Solution& solution, const SurgeOptions& options) {
  Examination examination;
  std::set<std::string> pipes;
  for (const LineSolution& line : solution.lines())
    for (const PipeExtremes& pipe : line.pipes) pipes.insert(pipe.pipe_name);
  for (const KnownWall& wall : options.walls) {
    if (!wall.pipe.empty() && !pipes.contains(wall.pipe))
      examination.add("walls",
                      "has " + in_quotes(wall.pipe) + ", and no line of such pipe has water");
    examination.within("walls.thickness", wall.thickness, some_wall);
    examination.within("walls.modulus", wall.modulus, some_modulus);
    if (!wall.thickness && !wall.modulus)
      examination.add("walls", "has " + in_quotes(wall.pipe) + " without thickness or modulus");
  }
  examination.within("closing", options.closing, some_closing);
  throw_if_any(examination.take());
}

/// One kind of pipe along a line, with the water in it.
struct Part {
  PipeExtremes extremes;
  Velocity wave_speed;
  bool wall_known;
  std::optional<Pressure> rating;
};

/// The way of the water, from where it is stopped back to the supply.
class Way {
 public:
  void add(double length, const Part& part) {
    stretches_.push_back({length, si(part.wave_speed), si(part.extremes.highest_velocity)});
  }

  double length() const {
    return sum([](const Stretch& it) { return it.length; });
  }
  double delay() const {  // [s]
    return sum([](const Stretch& it) { return it.length / it.wave_speed; });
  }
  /// Sum of L V [m2/s].
  double momentum() const {
    return sum([](const Stretch& it) { return it.length * it.velocity; });
  }
  /// Of the water that a wave reaches within this time [s].
  double momentum_within(double time) const {
    double momentum = 0;
    for (const Stretch& it : stretches_) {
      const double passes = std::min(time, it.length / it.wave_speed);
      momentum += passes * it.wave_speed * it.velocity;
      time -= passes;
    }
    return momentum;
  }

 private:
  struct Stretch {
    double length;      // [m]
    double wave_speed;  // [m/s]
    double velocity;    // [m/s]
  };
  template <class Of>
  double sum(Of of) const {
    double all = 0;
    for (const Stretch& it : stretches_) all += of(it);
    return all;
  }
  std::vector<Stretch> stretches_;
};

class Surges {
 public:
  Surges(const Solution& solution, const SurgeOptions& options)
      : solution_(solution), layout_(solution.layout()), options_(options) {
    for (std::size_t i = 0; i < layout_.lines().size(); ++i) parts_.push_back(parts_of(i));
  }

  std::vector<LineSurge> run() const {
    std::vector<LineSurge> all;
    for (std::size_t i = 0; i < parts_.size(); ++i)
      if (std::ranges::any_of(parts_[i], [](const Part& part) {
            return part.extremes.highest_velocity > Velocity{};
          }))
        all.push_back(surge_of(i));
    return all;
  }

 private:
  std::vector<Part> parts_of(std::size_t index) const {
    const Line& line = layout_.lines()[index];
    std::vector<Part> parts;
    for (const PipeExtremes& extremes : solution_.lines()[index].pipes) {
      const Pipe& pipe = line.pipe_at(extremes.end);
      const auto wall = wall_of(pipe, options_.walls);
      parts.push_back({extremes,
                       wave_speed(wall, solution_.water().density),
                       wall.has_value(),
                       rating_of(pipe)});
    }
    return parts;
  }

  std::optional<Pressure> rating_of(const Pipe& pipe) const {
    if (!pipe.pressure_rating) return std::nullopt;
    const Temperature temperature = layout_.water().temperature.value_or(20 * degC);
    const double left =
        pipe.kind.empty() ? 1 : temperature_factor(pipe.kind, temperature).value_or(1);
    return left * *pipe.pressure_rating;
  }

  /// From the far end of a part of a line back to the supply.
  Way way_from(std::size_t index, const Part& last) const {
    Way way;
    Length end = last.extremes.end;
    for (;;) {
      const std::vector<Part>& parts = parts_[index];
      for (auto part = parts.rbegin(); part != parts.rend(); ++part) {
        const Length to = std::min(end, part->extremes.end);
        if (to > part->extremes.start) way.add(si(to - part->extremes.start), *part);
      }
      const auto feeder = layout_.feeder_of(index);
      if (!feeder) return way;
      end = begins_at(layout_.lines()[index], layout_.lines()[*feeder]);
      index = *feeder;
    }
  }

  LineSurge surge_of(std::size_t index, const Part& part) const {
    const Way way = way_from(index, part);
    const double density = si(solution_.water().density);
    const double at_once = density * si(part.wave_speed) * si(part.extremes.highest_velocity);
    const double closing = si(options_.closing);
    LineSurge surge{.line = layout_.lines()[index].name,
                    .pipe_name = part.extremes.pipe_name,
                    .velocity = part.extremes.highest_velocity,
                    .wave_speed = part.wave_speed,
                    .wall_known = part.wall_known,
                    .way = Length::from_value(way.length()),
                    .reflection = Time::from_value(2 * way.delay()),
                    .closing = options_.closing,
                    .rise_at_once = Pressure::from_value(at_once),
                    .rise = Pressure::from_value(at_once),
                    .steady = part.extremes.highest_pressure,
                    .rating = part.rating};
    if (closing > 0)
      surge.rise = Pressure::from_value(2 * density * way.momentum_within(closing / 2) / closing);
    if (!surge.rating) return surge;
    const double to_spare = si(*surge.rating - surge.steady);
    if (at_once <= to_spare)
      surge.shortest_closing = Time{};
    else if (to_spare > 0)
      surge.shortest_closing =
          std::max(surge.reflection, Time::from_value(2 * density * way.momentum() / to_spare));
    return surge;
  }

  LineSurge surge_of(std::size_t index) const {
    LineSurge worst;
    for (const Part& part : parts_[index]) {
      LineSurge surge = surge_of(index, part);
      if (worst.line.empty() || has_less_to_spare(surge, worst)) worst = std::move(surge);
    }
    return worst;
  }

  /// One without a rating has nothing that is known to spare.
  static bool has_less_to_spare(const LineSurge& one, const LineSurge& other) {
    const auto spare = [](const LineSurge& it) {
      return it.rating.value_or(Pressure{}) - it.steady - it.rise;
    };
    return spare(one) < spare(other);
  }

  const Solution& solution_;
  const Layout& layout_;
  const SurgeOptions& options_;
  std::vector<std::vector<Part>> parts_;
};

}  // namespace

Pressure modulus_of(std::string_view kind) {
  static_cast<void>(pipe_sizes(kind));  // throws for an unknown kind
  if (kind.starts_with("PVC")) return 400000 * psi;
  if (kind.starts_with("PE")) return 115000 * psi;
  return 10000000 * psi;
}

Velocity wave_speed(const std::optional<PipeWall>& wall,
                    const Density& density,
                    const Pressure& bulk_modulus) {
  Examination examination;
  examination.within("density", density, Range<Density>{500, 2000, kg_per_m3});
  examination.within("bulk_modulus", bulk_modulus, some_modulus);
  if (wall) {
    examination.within("inside_diameter", wall->inside_diameter, Range<Length>{0.1, 10000, mm});
    examination.within("thickness", wall->thickness, some_wall);
    examination.within("modulus", wall->modulus, some_modulus);
  }
  throw_if_any(examination.take());
  const double K = si(bulk_modulus);
  const double gives =
      wall ? K / si(wall->modulus) * (si(wall->inside_diameter) / si(wall->thickness)) : 0;
  return Velocity::from_value(std::sqrt(K / si(density) / (1 + gives)));
}

Time reflection_time(const StoppedWater& water) {
  examine(water);
  return Time::from_value(2 * si(water.length) / si(water.wave_speed));
}

Pressure surge_rise(const StoppedWater& water, const Time& closing) {
  examine_closing(closing);
  const Time reflection = reflection_time(water);
  const double slower = closing > reflection ? si(reflection) / si(closing) : 1;
  return Pressure::from_value(joukowsky(water) * slower);
}

Time shortest_closing(const StoppedWater& water, const Pressure& rise) {
  examine(water);
  Examination examination;
  examination.within("rise", rise, Range<Pressure>{0, 1e6, kPa, true});
  throw_if_any(examination.take());
  if (joukowsky(water) <= si(rise)) return Time{};
  return Time::from_value(2 * si(water.density) * si(water.length) * si(water.velocity) / si(rise));
}

Length length_at_peak(const StoppedWater& water, const Time& closing) {
  examine(water);
  examine_closing(closing);
  return Length::from_value(
      std::max(0.0, si(water.length) - si(water.wave_speed) * si(closing) / 2));
}

std::vector<LineSurge> surges(const Solution& solution, const SurgeOptions& options) {
  examine(solution, options);
  return Surges(solution, options).run();
}

}  // namespace hydro
