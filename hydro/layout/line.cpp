#include "hydro/layout/line.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>

namespace hydro {

Length Line::place_of(int outlet_number) const {
  const Length first = first_at ? *first_at : spacing.value_or(Length{});
  return first + static_cast<double>(outlet_number - 1) * spacing.value_or(Length{});
}

Length Line::whole_length() const {
  const Length to_last_outlet = outlet_count() > 0 ? place_of(outlet_count()) : Length{};
  return std::max(length.value_or(to_last_outlet), to_last_outlet);
}

std::vector<Problem> problems(const Line& line) {
  constexpr Range<Length> some_length{1e-6, 100, km};
  constexpr Range<double> some_loss{0, 1e9, units::plain};
  Examination examination;

  if (line.name.empty()) examination.add("name", "is empty; every line needs a name of its own");
  examination.name("name", line.name);

  examination.include("pipe", problems(line.pipe));
  examination.include("riser", problems(line.riser));
  if (line.outlet) examination.include("outlet", problems(*line.outlet));

  examination.within("count", line.count.value_or(1), 1, most_outlets);
  examination.within("spacing", line.spacing, some_length);
  examination.within("first_at", line.first_at, Range<Length>{0, 100, km});
  examination.within("length", line.length, some_length);
  examination.within("ground_rise", line.ground_rise, Range<Length>{-10000, 10000, units::m});
  examination.within("loss_coefficient", line.loss_coefficient, some_loss);
  examination.within("outlet_loss_coefficient", line.outlet_loss_coefficient, some_loss);

  if (line.count == 1 && line.first_at == Length{} && !line.length)
    examination.add("length",
                    "is 0: the only outlet stands at the inlet; give the line some length");

  if (line.outlet) {
    if (!line.count) examination.add("count", "is not given; how many outlets are there?");
    if (!line.spacing && !(line.count == 1 && line.first_at))
      examination.add("spacing", "is not given; how far is it from outlet to outlet?");
    constexpr double rounding = 1e-9;
    if (line.length && *line.length < line.place_of(line.outlet_count()) * (1 - rounding))
      examination.add("length",
                      "is " + to_message(*line.length, units::m) + ", shorter than the " +
                          to_message(line.place_of(line.outlet_count()), units::m) +
                          " from the inlet to the last outlet");
  } else {
    const auto needs_outlet = [&](const char* key, bool given) {
      if (given) examination.add(key, "is given, but no outlet is");
    };
    needs_outlet("count", line.count.has_value());
    needs_outlet("spacing", line.spacing.has_value());
    needs_outlet("first_at", line.first_at.has_value());
    needs_outlet("riser", line.riser != Riser{});
    needs_outlet("outlet_loss_coefficient", line.outlet_loss_coefficient.has_value());
    if (!line.length) examination.add("length", "is not given; a line without outlets needs it");
  }
  return examination.take();
}

}  // namespace hydro
