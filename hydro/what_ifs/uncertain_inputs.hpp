// uncertain_inputs.hpp: the inputs of a layout that are uncertain, one by one, and the layout with
// other values of them. Not installed.
//
// What      An uncertainty (uncertainty.hpp) of a layout is a list of inputs, each with a stream of
//           random numbers that depends on what the input is alone. What is drawn for an input is a
//           factor, or what is added in SI units.
// Threads   Immutable once made.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/normal_variates.hpp"
#include "hydro/what_ifs/uncertainty.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace hydro {

/// The numbers are part of the streams: another order would give other draws.
enum class InputKind : std::uint32_t {
  outlet = 1,  ///< factor on the flow of an outlet; `at` a line, `number` an outlet from 1 on
  rating = 2,  ///< factor on the flow of a kind of outlet; `at` a kind
  inside_diameter = 3,   ///< factor on the bore of a kind of pipe; `at` a kind
  wall = 4,              ///< factor on what its wall is described by; `at` a kind
  loss_coefficient = 5,  ///< factor on the K of a line; `at` a line
  supply_pressure = 6,   ///< [Pa] more; `at` a supply, 0 the first
  pump_head = 7,         ///< factor on the head of a pump; `at` a supply, `number` 1 or 2
  elevation = 8          ///< [m] more; `at` a line, `number` 0 for its far end, or an outlet
};

struct UncertainInput {
  InputKind kind;
  std::size_t at;
  int number;
  double deviation;

  Stream stream() const {
    constexpr unsigned bits_of_kind = 8;
    return {static_cast<std::uint32_t>(number),
            static_cast<std::uint32_t>(at) << bits_of_kind | static_cast<std::uint32_t>(kind)};
  }
};

class UncertainInputs {
 public:
  struct OutletPlace {
    std::size_t line;
    int number;  ///< from 1 on
    std::optional<std::size_t>
        fault;  ///< of Layout::faults(): it fitted the wrong one that stands there
  };
  struct PipePlace {
    enum Part { pipe, riser, reach };
    std::size_t line;
    Part part;
    std::size_t which;  ///< of the reaches
  };

  /// @throws InvalidInput for problems(uncertainty, layout)
  UncertainInputs(Layout layout, const Uncertainty& uncertainty);

  const Layout& layout() const { return layout_; }
  const std::vector<UncertainInput>& inputs() const { return inputs_; }
  const std::vector<std::vector<OutletPlace>>& outlets_of_kind() const { return outlets_of_kind_; }
  const std::vector<std::vector<PipePlace>>& pipes_of_kind() const { return pipes_of_kind_; }

  /// What is drawn for one input in the realisations from `first` on.
  static void draw(const UncertainInput& input,
                   std::uint64_t seed,
                   std::uint64_t first,
                   std::span<double> out);

  /// @param drawn one for each of inputs()
  Layout with(std::span<const double> drawn) const;

  /// A pipe of a kind of which the bore or the wall was drawn.
  static void vary(Pipe& pipe, InputKind kind, double drawn);
  /// A supply of which the pressure or the head of a pump was drawn.
  void vary(Supply& supply, const UncertainInput& input, double drawn) const;

 private:
  struct Parts;

  void list_outlets(const Uncertainty& uncertainty);
  void list_pipes(const Uncertainty& uncertainty);
  void list_lines(const Uncertainty& uncertainty);
  void list_supplies(const Uncertainty& uncertainty);
  void add(InputKind kind, std::size_t at, int number, double deviation);
  void apply(const UncertainInput& input, double drawn, Parts& parts) const;

  Layout layout_;
  double weight_density_;  ///< rho g [N/m3]
  std::vector<UncertainInput> inputs_;
  std::vector<std::vector<OutletPlace>> outlets_of_line_;  ///< empty: none is uncertain
  std::vector<std::vector<OutletPlace>> outlets_of_kind_;
  std::vector<std::vector<PipePlace>> pipes_of_kind_;
};

}  // namespace hydro
