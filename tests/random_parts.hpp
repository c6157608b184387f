// random_parts.hpp: what random layouts are drawn from: pipes, outlets, lines, supplies, sets,
// faults.
#pragma once

#include "hydro/layout/layout.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include "random_layout.hpp"

namespace hydro {

/// The same on every machine, unlike the distributions of the standard library.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * std::ldexp(static_cast<double>(engine_() >> 11), -53);
  }
  double log_between(double low, double high) {
    return std::exp(between(std::log(low), std::log(high)));
  }
  int whole(int low, int high) { return std::min(high, static_cast<int>(between(low, high + 1))); }
  bool chance(double share) { return between(0, 1) < share; }

 private:
  std::mt19937_64 engine_;
};

void give_wall(Dice& dice, const Mix& mix, Pipe& pipe);
Outlet random_outlet(Dice& dice, const Mix& mix);
Riser random_riser(Dice& dice);
/// @param scale of its bore
Line random_line(Dice& dice, const Mix& mix, double scale, bool with_outlets);
/// Makes outlets that stand evenly stand unevenly, and of three kinds.
void place_unevenly(Dice& dice, const Mix& mix, Line& line);
/// An outlet's place exactly, nearly, or anywhere along the line.
Length some_place(Dice& dice, const Line& line);

/// Takes the held pressure of a supply and gives it any source, filter and gauge.
void give_source(Dice& dice, const Mix& mix, Supply& supply);
void give_regulators_and_valves(Dice& dice, std::vector<Line>& lines);
std::vector<WateringSet> random_sets(Dice& dice, const std::vector<Line>& lines);

// Faults: those that do not fit are for Layout::with_possible_faults to leave out.

/// Of even outlets.
std::vector<Fault> random_faults(Dice& dice, const Mix& mix, const std::vector<Line>& lines);
/// That a plain layout does not have.
std::vector<Fault> broad_faults(Dice& dice, const Mix& mix, const std::vector<Line>& lines);
/// Of the first supply, regulators and valves.
std::vector<Fault> farm_faults(Dice& dice, const Mix& mix, const std::vector<Line>& lines);

}  // namespace hydro
