#include "hydro/physics/riser.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

std::optional<Pipe> Riser::pipe() const {
  if (!inside_diameter) return std::nullopt;
  return Pipe{.inside_diameter = *inside_diameter,
              .hazen_williams = hazen_williams,
              .roughness = roughness,
              .darcy_factor = darcy_factor};
}

std::vector<Problem> problems(const Riser& riser) {
  Examination examination;
  examination.within("height", riser.height, Range<Length>{0, 30, units::m});
  examination.within(
      "loss_coefficient", riser.loss_coefficient, Range<double>{0, 1e6, units::plain});
  if (const auto pipe = riser.pipe()) {
    for (const Problem& problem : problems(*pipe)) examination.add(problem.key, problem.message);
  } else if (riser.hazen_williams || riser.roughness || riser.darcy_factor ||
             riser.loss_coefficient) {
    examination.add("inside_diameter",
                    "is not given, but the riser's loss is: one needs the other");
  }
  return examination.take();
}

}  // namespace hydro
