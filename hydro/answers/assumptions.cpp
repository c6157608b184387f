#include "hydro/answers/assumptions.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Sentences, each with the lines it is about.
class Collection {
 public:
  void add(const std::string& sentence) { sentences_.push_back(sentence); }
  void add_about(const std::string& line, const std::string& sentence) {
    const auto [known, is_new] = lines_.emplace(sentence, std::vector<std::string>{});
    if (is_new) sentences_.push_back(sentence);
    known->second.push_back(line);
  }
  std::vector<std::string> take() {
    for (std::string& sentence : sentences_) {
      const auto about = lines_.find(sentence);
      if (about != lines_.end()) sentence.insert(0, names(about->second) + ": ");
    }
    return std::move(sentences_);
  }

 private:
  static std::string names(const std::vector<std::string>& lines) {
    constexpr std::size_t most = 4;
    std::string text;
    for (std::size_t i = 0; i < std::min(most, lines.size()); ++i)
      text += (i == 0 ? "" : ", ") + lines[i];
    if (lines.size() > most) text += fmt::format(" and {} more", lines.size() - most);
    return text;
  }

  std::vector<std::string> sentences_;
  std::map<std::string, std::vector<std::string>> lines_;
};

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
  for (const Line& line : layout.lines()) {
    if (!line.ground_rise) found.add_about(line.name, "the ground is level");
    if (!line.loss_coefficient)
      found.add_about(line.name, "nothing is lost in fittings at the inlet");
    if (!line.outlet) continue;
    if (!line.first_at)
      found.add_about(line.name, "the first outlet stands one spacing from the inlet");
    if (!line.outlet_loss_coefficient)
      found.add_about(line.name, "nothing is lost in the line's fittings at the outlets");
    if (!line.outlet->exponent && line.outlet->flow != Flow{} && !line.outlet->compensating)
      found.add_about(line.name, "the outlets' flow exponent is 0.5");
    if (!line.outlet->rated)
      found.add_about(line.name, "the outlets are judged by the pressure of their rating");
    if (line.riser.height > Length{} && !line.riser.inside_diameter)
      found.add_about(line.name, "the risers lift the water without loss");
  }
  for (const Fault& fault : layout.faults()) {
    const auto estimated = [&](const char* value) {
      found.add(fmt::format("{}, outlet {}: {} of the break is an estimate",
                            line_of(fault),
                            outlet_of(fault),
                            value));
    };
    const bool riser_tells = layout.line(line_of(fault)).riser.loss_coefficient.has_value();
    if (const auto* off = std::get_if<HeadOff>(&fault);
        off && !off->loss_coefficient && !riser_tells)
      estimated("the loss coefficient");
    if (const auto* sheared = std::get_if<RiserSheared>(&fault)) {
      if (!sheared->stub) estimated("the height");
      if (!sheared->loss_coefficient && !riser_tells) estimated("the loss coefficient");
    }
  }
  return found.take();
}

}  // namespace hydro
