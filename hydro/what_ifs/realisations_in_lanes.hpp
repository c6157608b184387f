// realisations_in_lanes.hpp: realisations of an uncertain layout as differences of its tree, so that
// many are solved at once. Not installed.
//
// What      The tree of the layout as it stands is built and solved once. What is drawn becomes
//           factors on outlets, on the friction and the fittings of reaches and risers, friction laws
//           where they are Darcy-Weisbach's, and supplies. Pipes and supplies are varied by the very
//           functions that make a realisation, so that what is held within a range is held here too.
// Formula   Friction goes as the coefficients of the two laws, fittings as K / D^4, the velocity head
//           of what stands open to the air as 1 / D^4.
// Range     Trees that lanes march on, with elevations that are certain.
// Accuracy  That of lanes.hpp.
// Threads   const functions may be called from many threads, each with a LanesDesk of its own.
#pragma once

#include "hydro/solver/lanes.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

namespace hydro {

/// What one thread works on.
struct LanesDesk {
  Differences differences;
  LaneBlock block;
};

/// What is drawn for each input, each in as many realisations.
struct Drawn {
  std::size_t count;           ///< realisations
  std::vector<double> values;  ///< of input j in the i-th one: entry j * count + i

  const double* of(std::size_t input) const { return values.data() + input * count; }
};

class RealisationsInLanes {
 public:
  /// None where realisations must be solved one by one.
  static std::unique_ptr<const RealisationsInLanes> of(const UncertainInputs& inputs);

  /// Solves the realisations from `first` on of those that were drawn, not more than there are lanes.
  void solve(const Drawn& drawn, std::size_t first, std::size_t count, LanesDesk& desk) const;

  /// How the pressure at an outlet is read.
  struct Reading {
    std::size_t place;  ///< or nowhere
    bool is_open;       ///< to the air
    bool is_capped;
    double height;  ///< of a capped one above the line [m]
    double held;    ///< no more than that by its regulator [m]
  };
  /// Of all lines in their order.
  const std::vector<Reading>& outlets() const { return outlets_; }
  /// The sources of all supplies.
  const std::vector<std::int32_t>& supplies() const { return tree_.of_supplies; }

 private:
  static constexpr std::size_t no_input = nowhere;

  /// Factors on what an outlet lets out.
  struct OutletDraw {
    std::size_t place;
    std::size_t own;     ///< input, or no_input
    std::size_t rating;  ///< likewise
  };
  /// A kind of pipe.
  struct PipeDraw {
    Pipe pipe;
    std::vector<std::size_t> inputs;  ///< in their order
    std::vector<std::size_t> reaches;
    std::vector<std::size_t> risers;  ///< mouths
    std::vector<std::size_t> open;    ///< places where it stands open to the air
  };
  /// A part of some loss coefficients.
  struct LossDraw {
    struct Share {
      std::size_t of;  ///< reach, mouth or place
      double share;    ///< that is drawn
    };
    std::size_t input;
    std::vector<Share> reaches;
    std::vector<std::size_t> risers;  ///< mouths
    std::vector<Share> open;          ///< places where a riser stands open, with its share of 1 + K
  };
  struct SupplyDraw {
    std::size_t which;  ///< 0 the first
    std::vector<std::size_t> inputs;
  };

  RealisationsInLanes(const UncertainInputs& inputs, const WaterProperties& water, Tree tree);

  void read_outlets();
  void list_outlets();
  void list_pipes();
  /// Whether all places of a reach have the same share of their losses drawn.
  bool list_losses();
  void list_supplies();

  void vary_outlets(const Drawn& drawn,
                    std::size_t first,
                    std::size_t count,
                    Differences& to) const;
  void vary_pipes(const Drawn& drawn, std::size_t first, std::size_t count, Differences& to) const;
  void vary_losses(const Drawn& drawn, std::size_t first, std::size_t count, Differences& to) const;
  void vary_supplies(const Drawn& drawn,
                     std::size_t first,
                     std::size_t count,
                     Differences& to) const;

  const UncertainInputs& inputs_;
  WaterProperties water_;
  Tree tree_;
  Lanes lanes_;
  std::vector<OutletDraw> outlet_draws_;
  std::vector<PipeDraw> pipe_draws_;
  std::vector<LossDraw> loss_draws_;
  std::vector<SupplyDraw> supply_draws_;
  std::vector<Reading> outlets_;
};

}  // namespace hydro
