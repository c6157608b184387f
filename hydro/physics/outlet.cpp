#include "hydro/physics/outlet.hpp"

#include "hydro/physics/outlet_law.hpp"
#include "hydro/quantities/range.hpp"

namespace hydro {

Flow discharge(const Outlet& outlet, const Pressure& pressure) {
  if (auto found = problems(outlet); !found.empty()) throw InvalidInput(std::move(found));
  const OutletLaw law = outlet_law(outlet, 1);  // with the pressure itself for a head
  return Flow::from_value(si(pressure) > 0 ? law.flow(si(pressure)) : 0);
}

std::vector<Problem> problems(const Outlet& outlet) {
  constexpr Range<Pressure> some_pressure{0, 10000, kPa, true};
  Examination examination;
  examination.name("name", outlet.name);
  examination.within("flow", outlet.flow, Range<Flow>{0, 3600000, lph, true});
  examination.within("at", outlet.at, some_pressure);
  examination.within("exponent", outlet.exponent, Range<double>{0.1, 1.5, units::plain});
  examination.within("rated", outlet.rated, some_pressure);
  examination.within("minimum", outlet.minimum, some_pressure);
  examination.within("maximum", outlet.maximum, some_pressure);
  if (outlet.minimum && *outlet.minimum > outlet.rated_pressure())
    examination.add("minimum",
                    "is " + to_message(*outlet.minimum, kPa) + ", must be at most the rated " +
                        to_message(outlet.rated_pressure(), kPa));
  if (outlet.maximum && *outlet.maximum < outlet.rated_pressure())
    examination.add("maximum",
                    "is " + to_message(*outlet.maximum, kPa) + ", must be at least the rated " +
                        to_message(outlet.rated_pressure(), kPa));
  return examination.take();
}

}  // namespace hydro
