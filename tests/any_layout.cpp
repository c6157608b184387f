#include "any_layout.hpp"

#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "growers_layouts.hpp"
#include "random_layout.hpp"
#include "random_looped.hpp"
#include "random_parts.hpp"
#include "random_pumped.hpp"

namespace hydro {
namespace {

constexpr double small_exponent = 0.25;

LoopedMix looped(Mix parts) {
  return {.parts = parts};
}

bool can_be_rated_anew(const Outlet& outlet) {
  constexpr double least = 0.2, most = 1.3;  // the fit to points stays between 0.1 and 1.5
  const double exponent = outlet.exponent.value_or(0.5);
  return outlet.flow > Flow{} && !outlet.compensating && exponent >= least && exponent <= most;
}

void rate_anew(Dice& dice, Outlet& outlet) {
  if (!can_be_rated_anew(outlet) || dice.chance(0.4)) return;
  const Outlet before = outlet;
  outlet.flow = {};
  outlet.at = {};
  outlet.exponent.reset();
  outlet.rated = before.rated_pressure();
  if (dice.chance(0.5)) {
    outlet.nozzle = dice.log_between(0.5, 15) * mm;
    outlet.body_bore.reset();
    outlet.discharge_coefficient = dice.between(0.6, 0.98);
    return;
  }
  for (const double share : {0.5, 1.0, 1.8})
    outlet.points.push_back(
        {share * before.at,
         dice.between(0.98, 1.02) * std::pow(share, before.exponent.value_or(0.5)) * before.flow});
}

Layout altered(Dice& dice, const Layout& layout) {
  std::vector<Line> lines = layout.lines();
  for (Line& line : lines) {
    if (line.outlet) rate_anew(dice, *line.outlet);
    for (PlacedOutlet& placed : line.outlets) rate_anew(dice, placed.outlet);
  }
  Site site = layout.site();
  site.altitude = dice.between(-100, 3000) * units::m;
  Layout other(layout.supply(),
               std::move(lines),
               Water{.temperature = dice.between(1, 45) * degC},
               site,
               layout.sets(),
               layout.further_supplies());
  if (!layout.running_sets().empty()) other = other.watering(layout.running_sets());
  return other.with_possible_faults(layout.faults()).layout;
}

}  // namespace

const std::array<LayoutKind, 11> layout_kinds{{
    {"trees", 0.22, [](std::uint64_t seed) { return random_layout(seed); }},
    {"trees, exponents up to 0.25",
     0.08,
     [](std::uint64_t seed) { return random_layout(seed, {.most_exponent = small_exponent}); }},
    {"farms", 0.20, [](std::uint64_t seed) { return random_layout(seed, {.farm = true}); }},
    {"pumps that fit", 0.10, random_pumped},
    {"looped", 0.20, [](std::uint64_t seed) { return random_looped(seed); }},
    {"looped, exponents up to 0.25",
     0.05,
     [](std::uint64_t seed) {
       return random_looped(seed,
                            looped({.most_lines = 10,
                                    .most_outlets = 25,
                                    .most_exponent = small_exponent,
                                    .farm = true}));
     }},
    {"looped, pressures held",
     0.05,
     [](std::uint64_t seed) {
       return random_looped(seed, looped({.most_lines = 10, .most_outlets = 25}));
     }},
    {"as growers have them", 0.05, growers_layout},
    {"up to 20,000 outlets on a line",
     0.02,
     [](std::uint64_t seed) {
       return random_layout(seed, {.most_lines = 2, .most_outlets = 20'000});
     }},
    {"up to 400 lines",
     0.02,
     [](std::uint64_t seed) {
       return random_layout(seed, {.most_lines = 400, .most_outlets = 4, .farm = true});
     }},
    {"up to 150 lines, looped",
     0.01,
     [](std::uint64_t seed) {
       return random_looped(seed, looped({.most_lines = 150, .most_outlets = 4, .farm = true}));
     }},
}};

AnyLayout any_layout(std::uint64_t seed) {
  constexpr std::uint64_t apart = 1'000'000'000'000;  // from the seeds that layouts are drawn with
  Dice dice(seed + apart);
  double left = dice.between(0, 1);
  std::size_t kind = 0;
  while (kind + 1 < layout_kinds.size() && left >= layout_kinds[kind].share)
    left -= layout_kinds[kind++].share;
  Layout layout = layout_kinds[kind].draw(seed);
  if (dice.chance(0.2)) layout = altered(dice, layout);
  return {kind, std::move(layout)};
}

}  // namespace hydro
