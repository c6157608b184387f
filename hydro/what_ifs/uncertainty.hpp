// uncertainty.hpp: what of a layout is not known exactly, and the layout as it may really be.
//
// What      How far each input may lie from what the layout says, as a standard deviation. Nothing
//           is assumed: what is not given is exact. A realisation is the layout with one set of
//           inputs drawn at random. Seed and number say which: the same two give the same layout,
//           in whatever order realisations are made and by however many threads; and an input
//           keeps its draw when others become uncertain, or when a line gets more outlets beyond
//           its last one, of a kind that is there already. Outlets are told apart by their numbers,
//           kinds by their order: between others, or of a new kind, new ones can change draws.
// Formula   z normal with mean 0 and standard deviation 1, held within -4 and 4
//           normal      value + s z            or value (1 + s z)
//           lognormal   value exp(S z - S^2/2),  S^2 = ln(1 + s^2): the mean is the value, and s the
//                       standard deviation / mean
// Source    That the flows of new emitters are distributed normally: K. H. Solomon, Trans. ASAE 22
//           (1979) 1034-1038 (from memory), on which the measures of uniformity.hpp that have a Cv
//           rest too. Classes of Cv, ASAE EP405 (from memory): emitters in points, up to 0.05
//           excellent, 0.07 average, 0.11 marginal, 0.15 poor, above unacceptable; line sources,
//           up to 0.10 good, 0.20 average, above marginal to unacceptable. ISO 9261 (from memory):
//           category A up to 0.05, B up to 0.10. Lognormal where a value may be off by a large
//           part of itself, and cannot be below 0: our choice. So is 4: beyond it are 6 draws of
//           100,000, which holding moves (a maker's and a builder's own checks find such), and
//           which leaves 0.9999 of the standard deviation.
// Range     Every relative deviation of a normal input is at most 0.2, so that a factor is never
//           below 0.2. Pressures and levels are held at 0, and each value within what its field
//           accepts.
// Errors    problems() names each field that is out of its accepted interval, or that the layout has
//           nothing for.
// Threads   Plain values and pure functions.
// Example   examples/25_chance_of_trouble.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// Of one kind of outlet, where it is not as the others.
struct OutletUncertainty {
  std::string outlet = {};  ///< the kind's name
  std::optional<double> manufacturing_variation = {};
  std::optional<double> rating = {};
  bool operator==(const OutletUncertainty&) const = default;
};

/// Standard deviations. Those without a unit are shares of the value.
struct Uncertainty {
  /// Cv, of the flow of each outlet by itself at one pressure; normal, 0 to 0.2.
  double manufacturing_variation = 0;
  /// Of the flow of each kind of outlet, all of that kind together: the maker's figure, or wear
  /// alike; normal, 0 to 0.2.
  double rating = 0;
  /// Kinds for which the two above are others.
  std::vector<OutletUncertainty> outlets = {};
  /// Of the bore of each kind of pipe, all of its lengths together (one batch), risers too; normal,
  /// 0 to 0.1.
  double inside_diameter = 0;
  /// Of what the wall of each kind of pipe is described by, whichever it is: C, roughness or factor;
  /// all its lengths together; lognormal, 0 to 1.
  double wall = 0;
  /// Of the K of each line: at its inlet, at its outlets and in its risers, all of one line together;
  /// those of a Valve and of faults are left. Lognormal, 0 to 2.
  double loss_coefficient = 0;
  /// Of each supply that is not a pump: the held pressure, what a tank's level gives, both readings
  /// of a hydrant; normal.
  Pressure supply_pressure = {};
  /// Of the head of each pump by itself, the same share at every flow; normal, 0 to 0.2.
  double pump_head = 0;
  /// Of each elevation that was measured by itself: a line's far end above its near end or, where
  /// they are listed, the ground at each outlet; normal. Not where a line joins another.
  Length elevation = {};
  bool operator==(const Uncertainty&) const = default;
};

/// The layout with its inputs as they are drawn for this realisation. Faults and sets stay. Each
/// outlet is of a kind of its own, so that the measures of uniformity_of_outlets() and the variations
/// of check() say nothing of the solution; chances.hpp has them.
/// @throws InvalidInput for problems(uncertainty, layout)
Layout realisation(const Layout& layout,
                   const Uncertainty& uncertainty,
                   std::uint64_t seed,
                   std::uint64_t number);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Uncertainty& uncertainty, const Layout& layout);

}  // namespace hydro
