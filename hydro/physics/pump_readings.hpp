// pump_readings.hpp: a pump's curve from what was read at its gauge while the flow was measured.
//
// What      Who has no catalogue reads the gauge with the valve closed, and again while the outlets
//           run into buckets. Two such readings make a curve, more make a better one, and each
//           point of it is as uncertain as the readings are.
// Formula   head of a reading   H = p / (rho g) + height of the gauge + lift + suction loss
//                               + filter loss if the gauge stands after the filter
//           curve               H = a - b Q^2, through two, by least squares of H on Q^2 of more
//           uncertainty         u^2(H) = sum over the readings of (dH/dp u(p))^2 + (dH/dq u(q))^2
// Source    JCGM 100:2008 (GUM), equation 10: first order, the readings independent of each other.
//           Where no uncertainty is given: a gauge is within 3 % of its range (ASME B40.100, grade
//           B, from memory), taken as evenly likely, so that u = 3 % range / sqrt(3) (GUM 4.3.7); a
//           flow by bucket and watch has u = 3 % (a bucket filled within 2 %, half a second in
//           twenty: common practice, no source); a closed valve lets nothing through.
// Range     Uncertainties are standard ones (about two readings in three lie within). Not in them:
//           that a pump's curve is no parabola (trust it between the readings, less outside), and
//           that one gauge may be wrong by the same at every reading, which lifts or lowers the
//           whole curve. Velocity head is neglected. A flow is the bucket's volume over the time.
// Errors    InvalidInput for fewer than two readings, heads that do not fall with the flow, the
//           same flow twice, a gauge whose uncertainty and range are both unknown.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/physics/filter.hpp"
#include "hydro/physics/gauge.hpp"
#include "hydro/physics/pump.hpp"
#include "hydro/physics/suction.hpp"
#include "hydro/physics/water.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// What the gauge showed while this flow ran.
struct PumpReading {
  Pressure gauge = {};
  Flow flow = {};                                  ///< 0: the valve was closed
  std::optional<Pressure> gauge_uncertainty = {};  ///< standard
  std::optional<Flow> flow_uncertainty = {};       ///< standard
  bool operator==(const PumpReading&) const = default;
};

/// Where they were read.
struct PumpReadingPlace {
  std::optional<Suction> suction = {};  ///< none: water at the pump's height, no loss
  std::optional<Gauge> gauge = {};      ///< none: at the pump's height
  std::optional<Filter> filter = {};
  std::optional<RotationalSpeed> speed = {};  ///< at which the pump ran, all the time
  bool operator==(const PumpReadingPlace&) const = default;
};

/// A head and its standard uncertainty.
struct HeadEstimate {
  Length head;
  Length uncertainty;
};

/// The curve that the readings make.
class PumpFromReadings {
 public:
  /// Its points are the readings, its curve_speed the speed; ready to be put into a Supply.
  const Pump& pump() const { return pump_; }
  /// In the order of the flow, with the uncertainties that were used.
  const std::vector<PumpReading>& readings() const { return readings_; }
  HeadEstimate head_at_rest() const { return head(Flow{}); }
  /// @throws InvalidInput for a flow below 0.
  HeadEstimate head(const Flow& flow) const;
  /// Largest distance of a reading's head from the curve; 0 for two.
  Length largest_misfit() const { return fit_of(pump_).largest_misfit; }

 private:
  friend PumpFromReadings pump_from_readings(const std::vector<PumpReading>&,
                                             const PumpReadingPlace&,
                                             const Water&);
  Pump pump_;
  std::vector<PumpReading> readings_;
  std::vector<double> loss_slopes_;  // of suction and filter at each reading's flow [s/m2]
  double weight_density_ = 0;        // rho g [N/m3]
};

PumpFromReadings pump_from_readings(const std::vector<PumpReading>& readings,
                                    const PumpReadingPlace& place = {},
                                    const Water& water = {});

}  // namespace hydro
