#include "hydro/physics/valve.hpp"

#include "hydro/physics/choices.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace hydro {
namespace {

struct Known {
  ValveKind kind;
  ValveOpening opening;
  double loss_coefficient;
};

constexpr std::array known_losses{
    Known{ValveKind::gate, ValveOpening::open, 0.15},
    Known{ValveKind::gate, ValveOpening::quarter_closed, 0.26},
    Known{ValveKind::gate, ValveOpening::half_closed, 2.1},
    Known{ValveKind::gate, ValveOpening::three_quarters_closed, 17},
    Known{ValveKind::ball, ValveOpening::open, 0.05},
    Known{ValveKind::ball, ValveOpening::third_closed, 5.5},
    Known{ValveKind::ball, ValveOpening::two_thirds_closed, 210},
    Known{ValveKind::globe, ValveOpening::open, 10},
    Known{ValveKind::angle, ValveOpening::open, 2},
};

const Known* known(ValveKind kind, ValveOpening opening) {
  const auto found =
      std::find_if(known_losses.begin(), known_losses.end(), [&](const Known& entry) {
        return entry.kind == kind && entry.opening == opening;
      });
  return found == known_losses.end() ? nullptr : &*found;
}

std::string openings_of(ValveKind kind) {
  std::string list;
  for (const Known& entry : known_losses)
    if (entry.kind == kind) list += in_quotes(word_of(entry.opening)) + ", ";
  return list + "or " + in_quotes(word_of(ValveOpening::shut));
}

}  // namespace

double loss_coefficient(const Valve& valve) {
  if (auto found = problems(valve); !found.empty()) throw InvalidInput(std::move(found));
  if (valve.opening == ValveOpening::shut)
    throw InvalidInput("opening", "is \"shut\", which lets nothing through and has no loss");
  return known(valve.kind.value(), valve.opening)->loss_coefficient;
}

std::vector<Problem> problems(const Valve& valve) {
  if (valve.opening == ValveOpening::shut) return {};
  if (!valve.kind)
    return {{{},
             "kind",
             "is not given, must be \"gate\", \"ball\", \"globe\" or \"angle\"; only a valve that "
             "is shut needs none"}};
  if (!known(*valve.kind, valve.opening))
    return {{{},
             "opening",
             "is " + in_quotes(word_of(valve.opening)) + ", must for a valve of kind " +
                 in_quotes(word_of(*valve.kind)) + " be " + openings_of(*valve.kind) +
                 "; for others give the line's loss_coefficient"}};
  return {};
}

}  // namespace hydro
