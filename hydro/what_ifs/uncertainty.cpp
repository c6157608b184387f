#include "hydro/what_ifs/uncertainty.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr Range<double> of_outlets{0, 0.2, units::plain};

bool has_kind(const Layout& layout, const std::string& name) {
  for (std::size_t i = 0; i < layout.lines().size(); ++i)
    for (int number = 1; number <= layout.lines()[i].outlet_count(); ++number)
      if (layout.outlet_at(i, number).name == name) return true;
  return false;
}

void examine_kinds(const std::vector<OutletUncertainty>& outlets,
                   const Layout& layout,
                   Examination& examination) {
  for (std::size_t i = 0; i < outlets.size(); ++i) {
    const OutletUncertainty& entry = outlets[i];
    const std::string which = fmt::format("outlets, {}", i + 1);
    examination.within(
        which + ".manufacturing_variation", entry.manufacturing_variation, of_outlets);
    examination.within(which + ".rating", entry.rating, of_outlets);
    if (!has_kind(layout, entry.outlet))
      examination.add(which + ".outlet",
                      "is " + in_quotes(entry.outlet) +
                          ", must be the name of a kind of outlet that stands in the layout");
    if (std::find_if(outlets.begin(),
                     outlets.begin() + static_cast<std::ptrdiff_t>(i),
                     [&](const OutletUncertainty& before) {
                       return before.outlet == entry.outlet;
                     }) != outlets.begin() + static_cast<std::ptrdiff_t>(i))
      examination.add(which + ".outlet",
                      "is " + in_quotes(entry.outlet) + " again; one entry for each kind");
  }
}

void examine_supplies(const Uncertainty& uncertainty,
                      const Layout& layout,
                      Examination& examination) {
  examination.within("supply_pressure", uncertainty.supply_pressure, Range<Pressure>{0, 1000, kPa});
  examination.within("pump_head", uncertainty.pump_head, Range<double>{0, 0.2, units::plain});
  bool pumps = layout.supply().pump.has_value();
  bool others = !pumps;
  for (const Supply& further : layout.further_supplies()) (further.pump ? pumps : others) = true;
  if (uncertainty.supply_pressure > Pressure{} && !others)
    examination.add("supply_pressure",
                    "is given, but every supply is a pump; a pump varies by its pump_head");
  if (uncertainty.pump_head > 0 && !pumps)
    examination.add("pump_head",
                    "is given, but no supply is a pump; others vary by supply_pressure");
}

}  // namespace

std::vector<Problem> problems(const Uncertainty& uncertainty, const Layout& layout) {
  Examination examination;
  examination.within("manufacturing_variation", uncertainty.manufacturing_variation, of_outlets);
  examination.within("rating", uncertainty.rating, of_outlets);
  examine_kinds(uncertainty.outlets, layout, examination);
  examination.within(
      "inside_diameter", uncertainty.inside_diameter, Range<double>{0, 0.1, units::plain});
  examination.within("wall", uncertainty.wall, Range<double>{0, 1, units::plain});
  examination.within(
      "loss_coefficient", uncertainty.loss_coefficient, Range<double>{0, 2, units::plain});
  examine_supplies(uncertainty, layout, examination);
  examination.within("elevation", uncertainty.elevation, Range<Length>{0, 100, units::m});
  if (uncertainty.elevation > Length{})
    for (const Line& line : layout.lines())
      if (!line.joins.empty())
        examination.add("elevation",
                        "is given, but the far end of line " + in_quotes(line.name) +
                            " lies as high as the place where it joins another");
  return examination.take();
}

Layout realisation(const Layout& layout,
                   const Uncertainty& uncertainty,
                   std::uint64_t seed,
                   std::uint64_t number) {
  const UncertainInputs inputs(layout, uncertainty);
  std::vector<double> drawn(inputs.inputs().size());
  for (std::size_t i = 0; i < drawn.size(); ++i)
    UncertainInputs::draw(inputs.inputs()[i], seed, number, {&drawn[i], 1});
  return inputs.with(drawn);
}

}  // namespace hydro
