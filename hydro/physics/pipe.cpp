#include "hydro/physics/pipe.hpp"

#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <numbers>

namespace hydro {

Area area(const Pipe& pipe) {
  return std::numbers::pi / 4 * pipe.inside_diameter * pipe.inside_diameter;
}

std::vector<Problem> problems(const Pipe& pipe) {
  Examination examination;
  examination.name("name", pipe.name);
  examination.within("inside_diameter", pipe.inside_diameter, Range<Length>{0.1, 10000, mm});
  examination.within("hazen_williams", pipe.hazen_williams, Range<double>{10, 200, units::plain});
  examination.within("roughness", pipe.roughness, Range<Length>{0, 100, mm});
  examination.within("darcy_factor", pipe.darcy_factor, Range<double>{0.001, 1, units::plain});
  examination.within("pressure_rating", pipe.pressure_rating, Range<Pressure>{1, 100000, kPa});
  if (const auto kinds = pipe.kind.empty() ? std::vector<std::string>() : pipe_kinds();
      !pipe.kind.empty() && std::ranges::find(kinds, pipe.kind) == kinds.end())
    examination.add(
        "kind",
        "is " + in_quotes(pipe.kind) + ", must be one of " + list_in_quotes(kinds, kinds.size()));
  const int laws =
      pipe.hazen_williams.has_value() + pipe.roughness.has_value() + pipe.darcy_factor.has_value();
  if (laws != 1)
    examination.add("hazen_williams, roughness, darcy_factor",
                    laws == 0 ? "none is given, one is needed"
                              : "more than one is given, exactly one is needed");
  if (pipe.roughness && *pipe.roughness > 0.05 * pipe.inside_diameter)
    examination.add("roughness",
                    "is " + to_message(*pipe.roughness, mm) +
                        ", must be at most 0.05 of the inside diameter of " +
                        to_message(pipe.inside_diameter, mm));
  return examination.take();
}

}  // namespace hydro
