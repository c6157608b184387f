// layout.hpp: the whole of it: the supplies, the lines that hang on them, the water, the place, the
// sets in which it is watered, and what is broken.
//
// What      A Layout is examined when it is made and cannot be changed afterwards; copies share it
//           and cost nothing. A change makes a new layout.
// Errors    InvalidInput with all mistakes of all lines and faults at once, each with its place.
// Threads   Immutable: share it between threads as you like.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/layout/line.hpp"
#include "hydro/layout/watering_set.hpp"
#include "hydro/physics/site.hpp"
#include "hydro/physics/supply.hpp"
#include "hydro/physics/water.hpp"
#include "hydro/quantities/error.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace hydro {

struct PossibleFaults;

/// All that is solved together: examined when it is made, never changed.
class Layout {
 public:
  /// At least one line. Until sets are chosen, all lines are open whose own valve is not shut.
  /// @throws InvalidInput
  Layout(Supply supply,
         std::vector<Line> lines,
         Water water = {},
         Site site = {},
         std::vector<WateringSet> sets = {},
         std::vector<Supply> further_supplies = {});

  const Supply& supply() const;
  /// Beside the first, each with a name.
  const std::vector<Supply>& further_supplies() const;
  const std::vector<Line>& lines() const;
  const Water& water() const;
  const Site& site() const;
  const std::vector<WateringSet>& sets() const;
  const std::vector<Fault>& faults() const;

  /// The supply with what its faults change.
  const Supply& supply_as_it_is() const;
  /// The further supplies with what their faults change.
  const std::vector<Supply>& further_supplies_as_they_are() const;
  /// Names of the sets that run; empty: none was chosen.
  const std::vector<std::string>& running_sets() const;

  /// @throws InvalidInput when there is no line of this name.
  const Line& line(std::string_view name) const;
  std::size_t index_of(std::string_view line_name) const;

  /// Indices of the lines, each after the line that feeds it.
  const std::vector<std::size_t>& outward_order() const;
  /// Index of the line that feeds this one; none: a supply does.
  std::optional<std::size_t> feeder_of(std::size_t line_index) const;
  /// Index of the line that this one's far end meets; none: it meets none.
  std::optional<std::size_t> joined_by(std::size_t line_index) const;
  /// Of the supply at the start of the lines that feed this one: 0 the first, 1 on the further ones.
  std::size_t supply_of(std::size_t line_index) const;
  /// Ground elevation of a line's near end.
  Length inlet_elevation(std::size_t line_index) const;
  /// A line's far end above its near end.
  Length ground_rise(std::size_t line_index) const;
  /// Ground elevation at a distance from the near end.
  Length ground_elevation(std::size_t line_index, const Length& place) const;
  /// Ground elevation of an outlet (from 1 on).
  Length outlet_elevation(std::size_t line_index, int outlet_number) const;

  /// The kind that stands at an outlet (from 1 on), the wrong one where a fault says so.
  const Outlet& outlet_at(std::size_t line_index, int outlet_number) const;

  /// The faults on one line, in the order of its outlets.
  const std::vector<Fault>& faults_on(std::size_t line_index) const;
  /// Where a line is open to the air, and dry beyond; none: it is not.
  std::optional<Length> open_end_of(std::size_t line_index) const;
  /// Whether no water comes to any part of a line, whatever the pressures: on every way to it a line
  /// is open to the air, shut, or its regulator stuck shut, or a check valve points the other way.
  bool is_cut_off(std::size_t line_index) const;
  /// Whether no water comes to it on purpose: by its valve or another, or by the sets that run.
  bool is_shut(std::size_t line_index) const;
  /// Whether nothing passes its inlet, whatever the pressures. Where its far end joins another line
  /// it may have water all the same.
  bool inlet_is_shut(std::size_t line_index) const;
  /// Whether water can come to a place on a line; at one where it is open to the air, to what lies
  /// beyond.
  bool has_water(std::size_t line_index, const Length& place) const;
  /// Whether it can come to an outlet (from 1 on); one at the place where the line is open to the air
  /// stands before it.
  bool outlet_has_water(std::size_t line_index, int outlet_number) const;
  /// Whether it can come to its inlet, and on to where the line is open to the air.
  bool inlet_has_water(std::size_t line_index) const;
  /// Whether it can come to what lies beyond the place where the line is open to the air.
  bool has_water_beyond_open_end(std::size_t line_index) const;

  int outlet_count() const;
  UnitSystem units() const { return site().units.value_or(UnitSystem::si); }

  /// @throws InvalidInput when a fault does not fit the layout, or contradicts another.
  Layout with_fault(Fault fault) const;
  Layout with_faults(const std::vector<Fault>& faults) const;
  /// Those that fit, taken one after another; the others are skipped and listed.
  PossibleFaults with_possible_faults(const std::vector<Fault>& faults) const;
  Layout without_faults() const;

  /// With these sets running and every line shut that they do not open (watering_set.hpp).
  /// @throws InvalidInput for a name that is not a set's, or none.
  Layout watering(const std::vector<std::string>& set_names) const;
  /// With no set chosen.
  Layout without_watering() const;

  /// With another supply. Faults stay. @throws InvalidInput when it is no supply, or when a fault
  /// does not fit it.
  Layout with_supply(Supply supply) const;
  /// With these supplies beside the first. Faults stay.
  /// @throws InvalidInput when one is no supply, or a line or a fault does not fit them.
  Layout with_further_supplies(std::vector<Supply> further_supplies) const;
  /// With this line added, or put in the place of the line of its name. Faults stay.
  /// @throws InvalidInput when the line or a fault does not fit the rest.
  Layout with_line(Line line) const;
  /// Without the line of this name, in the sets too, and its faults. @throws InvalidInput when there is none, when it
  /// is the only one, or when it feeds another.
  Layout without(std::string_view line_name) const;

  /// Whether all parts are the same.
  bool operator==(const Layout& other) const;

 private:
  struct Data;
  explicit Layout(std::shared_ptr<const Data> data) : data_(std::move(data)) {}
  const Line& line_with(std::size_t line_index, int outlet_number) const;
  /// A layout made of changed parts, with these faults and the sets that run here and are still there.
  Layout as_it_was(Layout changed, const std::vector<Fault>& faults) const;
  std::shared_ptr<const Data> data_;
};

/// A fault that does not fit the layout, and why.
struct SkippedFault {
  Fault fault;
  std::vector<Problem> problems;
};

/// A layout with the faults that fit it, and the others.
struct PossibleFaults {
  Layout layout;
  std::vector<SkippedFault> skipped;
};

/// What each line is called in a Problem's place: `line "row 1"`; by its position from 1 on, `line
/// 3`, where it has no name, a name that is too long, or one that an earlier line has.
std::vector<std::string> places_of(const std::vector<Line>& lines);

/// All that is wrong with the parts taken together; empty when nothing is. The place of a Problem
/// is `supply`, `further supply N`, `water`, `site`, one of places_of(lines), `set N` or `fault N`, N
/// from 1 on.
std::vector<Problem> problems(const Supply& supply,
                              const std::vector<Line>& lines,
                              const Water& water,
                              const Site& site,
                              const std::vector<WateringSet>& sets,
                              const std::vector<Fault>& faults,
                              const std::vector<Supply>& further_supplies = {});

/// One sentence on a fault of this layout, with the values used (fault.hpp).
std::string describe(const Fault& fault, const Layout& layout, UnitSystem units);

}  // namespace hydro
