// reading.hpp: reads the results of each line off the solved states. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// What is said of an outlet. Pressures in Pa.
struct OutletReading {
  double pressure;
  double line_pressure;
  OutletState state;
};

/// By its pressure alone.
OutletState state_at(const Outlet& outlet, const Pressure& pressure);

/// What a fault at an outlet makes of it.
OutletReading with_fault(OutletReading read,
                         const Fault& fault,
                         const Line& line,
                         double weight_density);

class ResultReader {
 public:
  /// Refers to its arguments; they must outlive it.
  ResultReader(const Layout& layout,
               const WaterProperties& water,
               const Tree& tree,
               const Sweeps& sweeps);

  LineSolution line(std::size_t line_index) const;

  /// @param number 0 the first, 1 on the further ones
  /// @param met whether the equations are; if not, the flow may be beyond all that is accepted
  OperatingPoint supply(const Supply& supply, std::size_t number, bool met) const;

  /// A catalogue that a power law meets badly; a law used where it was not validated.
  std::vector<std::string> notes(std::size_t line_index) const;

 private:
  Pressure pressure_at(double head) const;
  /// Before its fittings; where no water is there, at the first place that has some.
  double head_at_inlet(const LinePlaces& places) const;
  Flow end_flow(std::size_t line_index) const;
  std::vector<PipeExtremes> pipes(std::size_t line_index) const;
  std::optional<RegulatorSolution> regulator(std::size_t line_index) const;

  std::vector<std::string> notes_on_catalogues(std::size_t line_index) const;
  /// Hazen-Williams is a law of turbulent flow: says where it carries much of a loss that is not.
  std::optional<std::string> note_on_slow_flow(std::size_t line_index) const;

  /// A stretch of one kind of pipe that has water, and its places.
  struct Piece {
    const Pipe& pipe;
    Length from;
    Length to;
    std::size_t first;
    std::size_t end;
  };
  std::vector<Piece> pieces(std::size_t line_index) const;

  const Layout& layout_;
  const WaterProperties& water_;
  const Tree& tree_;
  const Sweeps& sweeps_;
  const std::vector<State>& states_;
  double weight_density_;  // rho g [N/m3]
};

}  // namespace hydro
