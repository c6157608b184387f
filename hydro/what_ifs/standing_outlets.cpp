#include "hydro/what_ifs/standing_outlets.hpp"

#include <algorithm>
#include <variant>

namespace hydro {

StandingOutlet with_fault_at(StandingOutlet outlet,
                             const Fault& fault,
                             const std::optional<Mouth>& mouth) {
  outlet.fault = &fault;
  if (const auto* wrong = std::get_if<WrongOutlet>(&fault)) outlet.kind = &wrong->fitted;
  outlet.held = mouth ? mouth->law.held : no_limit;
  return outlet;
}

std::size_t place_of(const Tree& tree, std::size_t line_index, int number) {
  const LinePlaces& places = tree.lines[line_index];
  const auto i = static_cast<std::size_t>(number - 1);
  return i < places.outlets ? tree.place_of(places, i) : nowhere;
}

std::vector<StandingOutlet> standing_outlets(const Layout& layout, const Tree& tree) {
  std::vector<StandingOutlet> all;
  for (std::size_t l = 0; l < layout.lines().size(); ++l) {
    const Line& line = layout.lines()[l];
    for (int number = 1; number <= line.outlet_count(); ++number) {
      const std::size_t place = place_of(tree, l, number);
      double held = no_limit;
      if (place != nowhere && tree.places[place].mouth != none)
        held = tree.mouths[index(tree.places[place].mouth)].law.held;
      const Fault* there = nullptr;
      for (const Fault& fault : layout.faults_on(l))
        if (outlet_of(fault) == number) there = &fault;
      all.push_back({&line, &layout.outlet_at(l, number), there, place, held, layout.is_shut(l)});
    }
  }
  return all;
}

std::vector<std::size_t> open_places(const Tree& tree) {
  std::vector<std::size_t> all;
  for (const LinePlaces& line : tree.lines)
    for (const OpenPlace& open : line.open) all.push_back(open.place);
  return all;
}

OutletReading read_outlet(const StandingOutlet& outlet,
                          double head,
                          double outlet_head,
                          double weight_density) {
  if (outlet.is_shut) return {0, 0, OutletState::closed};
  OutletReading read{0, 0, OutletState::dry};
  if (outlet.place != nowhere) {
    read.pressure = weight_density * std::min(outlet_head, outlet.held);
    read.line_pressure = weight_density * head;
    read.state = state_at(*outlet.kind, Pressure::from_value(read.pressure));
  }
  return outlet.fault ? with_fault(read, *outlet.fault, *outlet.line, weight_density) : read;
}

}  // namespace hydro
