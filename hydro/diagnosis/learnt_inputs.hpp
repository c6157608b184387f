// learnt_inputs.hpp: the inputs of a layout that a walk can teach, as plain numbers. Not installed.
//
// What      All that is alike at many places (a kind of pipe or outlet, the fittings of a line, a
//           supply); not each outlet by itself, and no height. Each is counted in deviations x of
//           what was assumed, 0 the layout as it is described.
// Formula   As in calibrate.hpp: the value times 1 + s x or exp(S x), or the value + s x.
// Threads   Immutable once made.
#pragma once

#include "hydro/diagnosis/calibrate.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"

#include <cstddef>
#include <optional>
#include <string>

#include <Eigen/Core>

namespace hydro {

/// The part of an uncertainty that is learnt, and the rest.
Uncertainty learnt_part(Uncertainty uncertainty);
Uncertainty unlearnt_part(Uncertainty uncertainty);

class LearntInputs {
 public:
  /// @throws InvalidInput for problems(uncertainty, layout)
  LearntInputs(const Layout& layout, const Uncertainty& uncertainty);

  std::size_t count() const { return inputs_.inputs().size(); }
  const Uncertainty& uncertainty() const { return uncertainty_; }
  /// None where one of them would be far out of what it can be.
  std::optional<Layout> layout_with(const Eigen::VectorXd& x) const;
  /// From a change by one deviation as InputErrors tells it of layout_with(x), to one by x.
  double slope_factor(std::size_t input, double x) const;

  /// What was learnt. @param variance of x that is left
  Learnt tell(std::size_t input, double x, double variance) const;
  /// Inputs of one field of Uncertainty have one number, and so has each kind of outlet by its name.
  std::size_t group_of(std::size_t input) const;
  /// The uncertainty with the variance of each input's group times this, as shares of the values at x.
  Uncertainty shrunk(const Eigen::VectorXd& x, const Eigen::VectorXd& by_input) const;

 private:
  double drawn(const UncertainInput& input, double x) const;
  double deviation_at(const UncertainInput& input, double x, double variance) const;
  const Outlet& outlet_of(const UncertainInput& input) const;
  std::string name_of(const UncertainInput& input) const;
  std::string name_of_pipe(std::size_t kind) const;
  void tell_wall(const UncertainInput& input, double factor, Learnt& learnt) const;

  Uncertainty uncertainty_;
  UncertainInputs inputs_;
};

}  // namespace hydro
