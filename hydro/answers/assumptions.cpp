#include "hydro/answers/assumptions.hpp"

#include "hydro/physics/choices.hpp"
#include "hydro/physics/operating_point.hpp"

#include <algorithm>
#include <cstddef>
#include <map>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Sentences, each with the lines or further supplies it is about. The same sentence about the
/// layout or its first supply, which has no name, is another one.
class Collection {
 public:
  void add(const std::string& sentence) { entries_.push_back({sentence, {}}); }
  void add_about(const std::string& name, const std::string& sentence) {
    const auto [known, is_new] = about_names_.emplace(sentence, entries_.size());
    if (is_new) entries_.push_back({sentence, {}});
    std::vector<std::string>& names = entries_[known->second].names;
    if (names.empty() || names.back() != name) names.push_back(name);
  }
  std::vector<std::string> take() const {
    std::vector<std::string> sentences;
    for (const auto& [sentence, names] : entries_)
      sentences.push_back(names.empty() ? sentence : listed(names) + ": " + sentence);
    return sentences;
  }

 private:
  struct Entry {
    std::string sentence;
    std::vector<std::string> names;
  };

  static std::string listed(const std::vector<std::string>& names) {
    constexpr std::size_t most = 4;
    std::string text;
    for (std::size_t i = 0; i < std::min(most, names.size()); ++i)
      text += (i == 0 ? "" : ", ") + names[i];
    if (names.size() > most) text += fmt::format(" and {} more", names.size() - most);
    return text;
  }

  std::vector<Entry> entries_;
  std::map<std::string, std::size_t> about_names_;  ///< index into entries_
};

void looked_up(const Pipe& pipe, const std::string& line, const UnitSet& shown, Collection& found) {
  if (pipe.kind.empty()) return;
  std::string sentence = fmt::format("pipe {} ({}) has a bore of {:.4g} {}, looked up",
                                     pipe.name,
                                     pipe.kind,
                                     pipe.inside_diameter / shown.bore,
                                     shown.bore.symbol);
  if (pipe.hazen_williams) sentence += fmt::format("; C is {:.3g}", *pipe.hazen_williams);
  if (pipe.pressure_rating)
    sentence += fmt::format(
        "; it is rated {:.3g} {}", *pipe.pressure_rating / shown.pressure, shown.pressure.symbol);
  found.add_about(line, sentence);
}

void assumed_of(const Outlet& kind, const std::string& line, Collection& found) {
  if (!kind.exponent && kind.flow != Flow{} && !kind.compensating)
    found.add_about(line, "the outlets' flow exponent is 0.5");
  if (!kind.rated) found.add_about(line, "the outlets are judged by the pressure of their rating");
}

/// Sentences about a supply; those about a further one begin with its name.
class OfSupply {
 public:
  OfSupply(const Supply& supply, Collection& found) : supply_(supply), found_(found) {}

  /// @param is_alone whether there is no other supply that could push water back into it
  void collect(bool is_alone) {
    if (supply_.pump) of_pump(*supply_.pump, supply_.second_pump ? "first pump" : "pump");
    if (supply_.second_pump) {
      of_pump(*supply_.second_pump, "second pump");
      if (!supply_.arrangement) add("the two pumps run in parallel");
    }
    if (supply_.pump && !supply_.suction)
      add("the water stands at the pump's height and comes to it without loss");
    if (supply_.suction && !supply_.suction->pipe) add("nothing is lost in the suction");
    if (supply_.suction && supply_.suction->pipe && !supply_.suction->loss_coefficient)
      add("nothing is lost in the fittings of the suction");
    if (supply_.gauge && !supply_.gauge->height) add("the gauge sits at the supply's height");
    if (supply_.gauge && supply_.filter && !supply_.gauge->after_filter)
      add("the gauge sits before the filter");
    if (is_alone) return;
    if (takes_water_in(supply_))
      add("where other supplies push water back into it, it takes that in");
    else
      add(fmt::format("the {} has a check valve: no water runs back into it",
                      supply_.pump ? "pump" : "hydrant"));
  }

 private:
  void add(const std::string& sentence) {
    if (supply_.name.empty())
      found_.add(sentence);
    else
      found_.add_about(supply_.name, sentence);
  }

  void of_pump(const Pump& pump, const std::string& whose) {
    if (pump.curve_speed && !pump.speed)
      add(fmt::format("the {} turns at the speed of its curve", whose));
    if (pump.curve_speed && !pump.droop)
      add(fmt::format("the {} engine keeps its speed under load (droop 0)",
                      whose == "pump" ? "pump's" : whose + "'s"));
    if (!pump.least_flow && !pump.most_flow)
      add(fmt::format("the {} may run at any flow: its usable range is not known", whose));
    if (!pump.top_speed && pump.curve_speed)
      add(fmt::format("the {} may turn at any speed: its top speed is not known", whose));
    if (pump.npsh_required.empty())
      add(fmt::format("the {} does not cavitate: the suction head that it needs is not known",
                      whose));
  }

  const Supply& supply_;
  Collection& found_;
};

void assumed_of(const Fault& fault, const Layout& layout, Collection& found) {
  if (is_of_the_supply(fault)) return;
  const std::string which = outlet_of(fault) ? fmt::format(", outlet {}", *outlet_of(fault)) : "";
  const auto estimated = [&](const char* value) {
    found.add(fmt::format("{}{}: {} is an estimate", line_of(fault), which, value));
  };
  const bool riser_tells = layout.line(line_of(fault)).riser.loss_coefficient.has_value();
  if (const auto* off = std::get_if<HeadOff>(&fault); off && !off->loss_coefficient && !riser_tells)
    estimated("the loss coefficient of the break");
  if (const auto* sheared = std::get_if<RiserSheared>(&fault)) {
    if (!sheared->stub) estimated("the height of the break");
    if (!sheared->loss_coefficient && !riser_tells) estimated("the loss coefficient of the break");
  }
  if (const auto* missing = std::get_if<NozzleMissing>(&fault);
      missing && !missing->discharge_coefficient)
    estimated("the discharge coefficient of the open body");
  if (const auto* it = std::get_if<Leak>(&fault); it && !it->exponent)
    estimated("the exponent of the leak");
}

}  // namespace

std::vector<std::string> assumptions(const Layout& layout, UnitSystem units) {
  const UnitSet shown = unit_set(units);
  Collection found;
  if (!layout.supply().elevation)
    found.add("the supply's elevation is 0; all others count from it");
  if (!layout.site().altitude) found.add("the site lies at sea level");
  if (!layout.water().temperature)
    found.add(fmt::format(
        "the water has {:.0f} {}", (20 * degC) / shown.temperature, shown.temperature.symbol));
  const bool is_alone = layout.further_supplies().empty();
  OfSupply(layout.supply(), found).collect(is_alone);
  for (const Supply& further : layout.further_supplies()) {
    if (!further.elevation) found.add_about(further.name, "its elevation is 0");
    OfSupply(further, found).collect(is_alone);
  }
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    if (layout.is_shut(i)) continue;
    const Line& line = layout.lines()[i];
    for (const PipeReach& reach : line.reaches) looked_up(reach.pipe, line.name, shown, found);
    looked_up(line.pipe, line.name, shown, found);
    if (line.valve && line.valve->opening != ValveOpening::shut)
      found.add_about(line.name,
                      fmt::format("its {} valve, {}, has a loss coefficient of {:.3g}, looked up",
                                  word_of(line.valve->kind.value()),
                                  word_of(line.valve->opening),
                                  loss_coefficient(*line.valve)));
    if (!line.ground_rise && line.elevations.empty())
      found.add_about(line.name,
                      line.joins.empty() ? "the ground is level"
                                         : "the ground is even to where the line joins another");
    if (!line.loss_coefficient && !line.valve)
      found.add_about(line.name, "nothing is lost in fittings at the inlet");
    if (line.outlet_count() == 0) continue;
    if (!line.elevations.empty() && line.whole_length() > line.place_of(line.outlet_count()))
      found.add_about(line.name,
                      line.joins.empty()
                          ? "the ground is level beyond the last outlet"
                          : "the ground is even from the last outlet to where the line joins "
                            "another");
    if (line.outlets.empty() && !line.first_at)
      found.add_about(line.name, "the first outlet stands one spacing from the inlet");
    if (!line.outlet_loss_coefficient)
      found.add_about(line.name, "nothing is lost in the line's fittings at the outlets");
    const Outlet* earlier = nullptr;
    for (int number = 1; number <= line.outlet_count(); ++number) {
      const Outlet& kind = line.kind_of(number);
      if (&kind == earlier) break;  // all others are of this kind
      earlier = &kind;
      assumed_of(kind, line.name, found);
    }
    if (line.riser.height > Length{} && !line.riser.inside_diameter)
      found.add_about(line.name, "the risers lift the water without loss");
  }
  for (const Fault& fault : layout.faults()) assumed_of(fault, layout, found);
  return found.take();
}

}  // namespace hydro
