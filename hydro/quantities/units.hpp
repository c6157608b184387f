// units.hpp: the physical quantities of the library and the units people read them in.
//
// What      A quantity (Pressure, Length, Flow, ...) is a Boost.Units SI quantity under a short
//           name: it cannot be made from a bare number, and a wrong dimension does not compile. A
//           Unit turns numbers into quantities and back:  25 * psi  is a Pressure,  p / psi  a
//           double.
// Formula   value in SI = (number + before) * numerator / denominator + after
// Source    Exact definitions: inch 0.0254 m, pound 0.45359237 kg (international yard and pound
//           agreement, 1959); standard gravity 9.80665 m/s2 (CGPM 1901, ISO 80000-3); US gallon 231
//           in3 and the inch of mercury, conventional, 3386.389 Pa (NIST SP 811, 2008, appendix B).
// Accuracy  Each factor is a quotient of two exact doubles: one multiplication and one division, so
//           the error is at most 1 unit in the last place and 25 psi reads back as 25
//           (units_test.cpp).
// Threads   Constants and pure functions.
#pragma once

#include <numbers>

#include <boost/units/absolute.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/acceleration.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/dynamic_viscosity.hpp>
#include <boost/units/systems/si/frequency.hpp>
#include <boost/units/systems/si/kinematic_viscosity.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/units/systems/si/volume.hpp>

namespace hydro {

template <class SiUnit>
using Quantity = boost::units::quantity<SiUnit, double>;

using Length = Quantity<boost::units::si::length>;
using Area = Quantity<boost::units::si::area>;
using Volume = Quantity<boost::units::si::volume>;
using Time = Quantity<boost::units::si::time>;
using Velocity = Quantity<boost::units::si::velocity>;
using Acceleration = Quantity<boost::units::si::acceleration>;
using Pressure = Quantity<boost::units::si::pressure>;
using Density = Quantity<boost::units::si::mass_density>;
using DynamicViscosity = Quantity<boost::units::si::dynamic_viscosity>;
using KinematicViscosity = Quantity<boost::units::si::kinematic_viscosity>;
using RotationalSpeed = Quantity<boost::units::si::frequency>;  ///< turns in a time
using Power = Quantity<boost::units::si::power>;
using Angle = Quantity<boost::units::si::plane_angle>;
using Temperature = Quantity<boost::units::absolute<boost::units::si::temperature>>;
using Flow = Quantity<
    boost::units::divide_typeof_helper<boost::units::si::volume, boost::units::si::time>::type>;
/// Power of radiation on an area.
using Irradiance = Quantity<
    boost::units::divide_typeof_helper<boost::units::si::power, boost::units::si::area>::type>;

/// The value in SI units, for the inner loops.
template <class SiUnit>
constexpr double si(const Quantity<SiUnit>& quantity) {
  return quantity.value();
}
constexpr double si(double number) {
  return number;
}

/// A unit of the quantity Q. `symbol` is what texts and reports print.
template <class Q>
struct Unit {
  double numerator = 1;
  double denominator = 1;
  double before = 0;
  double after = 0;
  const char* symbol = "";

  constexpr double to_si(double number) const {
    return (number + before) * numerator / denominator + after;
  }
  constexpr double from_si(double si) const {
    return (si - after) * denominator / numerator - before;
  }

  friend constexpr Q operator*(double number, const Unit& unit) {
    return Q::from_value(unit.to_si(number));
  }
  friend constexpr double operator/(const Q& quantity, const Unit& unit) {
    return unit.from_si(si(quantity));
  }
};

/// Units that are unlikely to clash with a name of the caller's.
inline constexpr Unit<Length> km{1000, 1, 0, 0, "km"};
inline constexpr Unit<Length> cm{1, 100, 0, 0, "cm"};
inline constexpr Unit<Length> mm{1, 1000, 0, 0, "mm"};
inline constexpr Unit<Length> ft{3048, 10000, 0, 0, "ft"};
inline constexpr Unit<Length> inch{254, 10000, 0, 0, "in"};

inline constexpr Unit<Pressure> psi{44482216152605., 6451600000., 0, 0, "psi"};
inline constexpr Unit<Pressure> kPa{1000, 1, 0, 0, "kPa"};
inline constexpr Unit<Pressure> MPa{1000000, 1, 0, 0, "MPa"};
inline constexpr Unit<Pressure> bar{100000, 1, 0, 0, "bar"};
/// Conventional columns of water: 1000 kg/m3 under standard gravity.
inline constexpr Unit<Pressure> mH2O{980665, 100, 0, 0, "mH2O"};
inline constexpr Unit<Pressure> ftH2O{298906692, 100000, 0, 0, "ftH2O"};
inline constexpr Unit<Pressure> inHg{3386389, 1000, 0, 0, "inHg"};

inline constexpr Unit<Flow> gpm{3785411784., 6e13, 0, 0, "gal/min"};
inline constexpr Unit<Flow> gph{3785411784., 3.6e15, 0, 0, "gal/h"};
inline constexpr Unit<Flow> lps{1, 1000, 0, 0, "L/s"};
inline constexpr Unit<Flow> lpm{1, 60000, 0, 0, "L/min"};
inline constexpr Unit<Flow> lph{1, 3600000, 0, 0, "L/h"};
inline constexpr Unit<Flow> m3_per_s{1, 1, 0, 0, "m3/s"};
inline constexpr Unit<Flow> m3_per_h{1, 3600, 0, 0, "m3/h"};
inline constexpr Unit<Flow> ft3_per_s{28316846592., 1e12, 0, 0, "ft3/s"};

inline constexpr Unit<Area> m2{1, 1, 0, 0, "m2"};
inline constexpr Unit<Area> cm2{1, 10000, 0, 0, "cm2"};
inline constexpr Unit<Area> ft2{9290304, 1e8, 0, 0, "ft2"};
inline constexpr Unit<Area> hectare{10000, 1, 0, 0, "ha"};
/// The international acre, 43,560 square feet.
inline constexpr Unit<Area> acre{40468564224., 1e7, 0, 0, "acre"};

inline constexpr Unit<Volume> gallon{3785411784., 1e12, 0, 0, "gal"};
inline constexpr Unit<Volume> litre{1, 1000, 0, 0, "L"};
inline constexpr Unit<Volume> m3{1, 1, 0, 0, "m3"};

inline constexpr Unit<Velocity> m_per_s{1, 1, 0, 0, "m/s"};
inline constexpr Unit<Velocity> ft_per_s{3048, 10000, 0, 0, "ft/s"};
/// Depths of water in a time: evapotranspiration, application and intake rates.
inline constexpr Unit<Velocity> mm_per_h{1, 3600000, 0, 0, "mm/h"};
inline constexpr Unit<Velocity> mm_per_day{1, 86400000, 0, 0, "mm/day"};
inline constexpr Unit<Velocity> inch_per_h{254, 36000000, 0, 0, "in/h"};
inline constexpr Unit<Velocity> inch_per_day{254, 864000000, 0, 0, "in/day"};

inline constexpr Unit<RotationalSpeed> rpm{1, 60, 0, 0, "rpm"};
inline constexpr Unit<RotationalSpeed> rps{1, 1, 0, 0, "r/s"};

inline constexpr Unit<Power> kW{1000, 1, 0, 0, "kW"};
/// 550 ft lbf/s.
inline constexpr Unit<Power> hp{745.69987158227022, 1, 0, 0, "hp"};

inline constexpr Unit<Angle> degree{std::numbers::pi, 180, 0, 0, "deg"};

inline constexpr Unit<Irradiance> W_per_m2{1, 1, 0, 0, "W/m2"};
inline constexpr Unit<Irradiance> MJ_per_m2_day{1000000, 86400, 0, 0, "MJ/m2/day"};

inline constexpr Unit<Temperature> degC{1, 1, 0, 273.15, "degC"};
inline constexpr Unit<Temperature> degF{5, 9, -32, 273.15, "degF"};

inline constexpr Unit<Density> kg_per_m3{1, 1, 0, 0, "kg/m3"};
inline constexpr Unit<Density> lb_per_ft3{45359237e4, 28316846592., 0, 0, "lb/ft3"};

inline constexpr Unit<DynamicViscosity> mPa_s{1, 1000, 0, 0, "mPa.s"};
inline constexpr Unit<DynamicViscosity> Pa_s{1, 1, 0, 0, "Pa.s"};
inline constexpr Unit<KinematicViscosity> m2_per_s{1, 1, 0, 0, "m2/s"};
inline constexpr Unit<KinematicViscosity> mm2_per_s{1, 1000000, 0, 0, "mm2/s"};

/// Short names that a caller may well use for something else: opened on purpose.
namespace units {
inline constexpr Unit<Length> m{1, 1, 0, 0, "m"};
inline constexpr Unit<Pressure> Pa{1, 1, 0, 0, "Pa"};
inline constexpr Unit<Temperature> K{1, 1, 0, 0, "K"};
inline constexpr Unit<Time> s{1, 1, 0, 0, "s"};
inline constexpr Unit<Time> min{60, 1, 0, 0, "min"};
inline constexpr Unit<Time> h{3600, 1, 0, 0, "h"};
inline constexpr Unit<Time> day{86400, 1, 0, 0, "day"};
inline constexpr Unit<Power> W{1, 1, 0, 0, "W"};
/// Plain numbers (coefficients, shares), so that ranges treat them like quantities.
inline constexpr Unit<double> plain{1, 1, 0, 0, ""};
}  // namespace units

/// Standard gravity [m/s2].
inline constexpr double gravity = 9.80665;

/// Head of a column of water of this density, H = p / (rho g).
constexpr Length head(const Pressure& pressure, const Density& density) {
  return Length::from_value(si(pressure) / (si(density) * gravity));
}
/// Pressure at the foot of a column of water, p = rho g H.
constexpr Pressure pressure(const Length& head, const Density& density) {
  return Pressure::from_value(si(density) * gravity * si(head));
}

/// `25.0_psi` and `25_psi` for `25 * psi`.
inline namespace literals {
// NOLINTBEGIN(bugprone-macro-parentheses): a type and a name cannot stand in parentheses
#define HYDRO_LITERAL(suffix, Q, unit)                             \
  constexpr Q operator""_##suffix(long double number) {            \
    return static_cast<double>(number) * (unit);                   \
  }                                                                \
  constexpr Q operator""_##suffix(unsigned long long int number) { \
    return static_cast<double>(number) * (unit);                   \
  }
HYDRO_LITERAL(m, Length, units::m)
HYDRO_LITERAL(mm, Length, mm)
HYDRO_LITERAL(ft, Length, ft)
HYDRO_LITERAL(in, Length, inch)
HYDRO_LITERAL(psi, Pressure, psi)
HYDRO_LITERAL(kPa, Pressure, kPa)
HYDRO_LITERAL(bar, Pressure, bar)
HYDRO_LITERAL(gpm, Flow, gpm)
HYDRO_LITERAL(gph, Flow, gph)
HYDRO_LITERAL(lps, Flow, lps)
HYDRO_LITERAL(lph, Flow, lph)
HYDRO_LITERAL(degC, Temperature, degC)
HYDRO_LITERAL(degF, Temperature, degF)
#undef HYDRO_LITERAL
// NOLINTEND(bugprone-macro-parentheses)
}  // namespace literals

}  // namespace hydro
