// input_errors.hpp: how far what is not known exactly of a layout moves each figure. Not installed.
//
// What      Each uncertain input (uncertainty.hpp) moves a figure by its derivative times its standard
//           deviation. All figures are moved by the same inputs: that is how their errors hang
//           together.
// Formula   covariance of two figures = sum over inputs of (dF/dx s)(dG/dx s)
// Range     Straight lines through the solution. A line that hangs on one whose elevations are listed is
//           taken to go up with what feeds that one. Lognormal inputs are taken as normal ones. Of the
//           losses at an inlet a valve's own part is certain.
// Threads   const functions may be called from many threads at once.
#pragma once

#include "hydro/answers/sensitivity.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"
#include "hydro/what_ifs/uncertainty.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include <Eigen/Core>

namespace hydro {

class InputErrors {
 public:
  /// @throws InvalidInput for problems(uncertainty, layout)
  InputErrors(Solution solution, const Uncertainty& uncertainty);

  std::size_t count() const { return inputs_.inputs().size(); }
  /// What one standard deviation of each input does to what is shown at a place, in SI. An engine's
  /// speed is not moved.
  Eigen::VectorXd of(const Reading& reading) const;
  Eigen::VectorXd of_device(const std::string& line, int outlet) const;

 private:
  /// An input's column, and what it rises by when the figure's input does by one share or metre.
  struct Column {
    std::size_t which;
    double share;
  };
  using Name = std::tuple<Input, std::string, int>;  // of the input; at; number

  template <class Figure>
  Eigen::VectorXd of(const Figure& figure) const;
  void list();
  void list_outlet(std::size_t line, int number, const Column& column);
  void list_pipe(const UncertainInputs::PipePlace& place, InputKind kind, const Column& column);
  void list_losses(std::size_t line, const Column& column);
  void list_elevation(const UncertainInput& input, const Column& column);
  void keep_listed(std::size_t feeder, std::optional<double> share_of_rise, const Column& column);
  void list_supply(const UncertainInput& input, std::size_t which);

  Sensitivities sensitivities_;
  UncertainInputs inputs_;
  std::map<Name, std::vector<Column>> columns_;
};

}  // namespace hydro
