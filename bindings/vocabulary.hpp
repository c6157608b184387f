// vocabulary.hpp: what quantities and units are called in Python.
//
// What      The names are those of C++; units that are namesakes of common variables live in
//           hydro.units there as here, but for `m` and `Pa`, which a lateral cannot do without.
#pragma once

#include "hydro/quantities/units.hpp"

#include <cstddef>

namespace hydro::bindings {

template <class Q>
struct NamedUnit {
  const char* name;
  Unit<Q> unit;
  std::size_t strangeness = 0;  ///< how many digits a reader would rather have than this unit
};

/// One of the units is the SI unit, which writes every value exactly; the first one is what
/// messages propose.
template <class Q>
struct Vocabulary;

template <>
struct Vocabulary<Length> {
  static constexpr const char* name = "Length";
  static constexpr NamedUnit<Length> units[] = {
      {"ft", ft}, {"inch", inch}, {"m", units::m}, {"mm", mm}, {"cm", cm}, {"km", km}};
};
template <>
struct Vocabulary<Area> {
  static constexpr const char* name = "Area";
  static constexpr NamedUnit<Area> units[] = {
      {"ft2", ft2}, {"m2", m2}, {"cm2", cm2}, {"acre", acre}, {"hectare", hectare}};
};
template <>
struct Vocabulary<Volume> {
  static constexpr const char* name = "Volume";
  static constexpr NamedUnit<Volume> units[] = {{"gallon", gallon}, {"litre", litre}, {"m3", m3}};
};
template <>
struct Vocabulary<Time> {
  static constexpr const char* name = "Time";
  static constexpr NamedUnit<Time> units[] = {{"units.s", units::s},
                                              {"units.min", units::min},
                                              {"units.h", units::h},
                                              {"units.day", units::day}};
};
template <>
struct Vocabulary<Velocity> {
  static constexpr const char* name = "Velocity";
  static constexpr NamedUnit<Velocity> units[] = {{"ft_per_s", ft_per_s},
                                                  {"m_per_s", m_per_s},
                                                  {"inch_per_h", inch_per_h},
                                                  {"mm_per_h", mm_per_h},
                                                  {"inch_per_day", inch_per_day},
                                                  {"mm_per_day", mm_per_day}};
};
template <>
struct Vocabulary<Pressure> {
  static constexpr const char* name = "Pressure";
  static constexpr NamedUnit<Pressure> units[] = {{"psi", psi},
                                                  {"kPa", kPa},
                                                  {"bar", bar},
                                                  {"MPa", MPa},
                                                  {"Pa", units::Pa},
                                                  {"mH2O", mH2O},
                                                  {"ftH2O", ftH2O},
                                                  {"inHg", inHg}};
};
template <>
struct Vocabulary<Density> {
  static constexpr const char* name = "Density";
  static constexpr NamedUnit<Density> units[] = {{"kg_per_m3", kg_per_m3},
                                                 {"lb_per_ft3", lb_per_ft3}};
};
template <>
struct Vocabulary<DynamicViscosity> {
  static constexpr const char* name = "DynamicViscosity";
  static constexpr NamedUnit<DynamicViscosity> units[] = {{"mPa_s", mPa_s}, {"Pa_s", Pa_s}};
};
template <>
struct Vocabulary<KinematicViscosity> {
  static constexpr const char* name = "KinematicViscosity";
  static constexpr NamedUnit<KinematicViscosity> units[] = {{"mm2_per_s", mm2_per_s},
                                                            {"m2_per_s", m2_per_s}};
};
template <>
struct Vocabulary<Temperature> {
  static constexpr const char* name = "Temperature";
  static constexpr NamedUnit<Temperature> units[] = {
      {"degC", degC}, {"degF", degF}, {"units.K", units::K}};
};
template <>
struct Vocabulary<Flow> {
  static constexpr const char* name = "Flow";
  static constexpr NamedUnit<Flow> units[] = {{"gpm", gpm},
                                              {"gph", gph},
                                              {"lpm", lpm},
                                              {"lph", lph},
                                              {"lps", lps},
                                              {"m3_per_h", m3_per_h},
                                              {"m3_per_s", m3_per_s},
                                              {"ft3_per_s", ft3_per_s}};
};
template <>
struct Vocabulary<RotationalSpeed> {
  static constexpr const char* name = "RotationalSpeed";
  static constexpr NamedUnit<RotationalSpeed> units[] = {{"rpm", rpm}, {"rps", rps, 9}};
};
template <>
struct Vocabulary<Power> {
  static constexpr const char* name = "Power";
  static constexpr NamedUnit<Power> units[] = {{"hp", hp}, {"kW", kW}, {"units.W", units::W}};
};

template <>
struct Vocabulary<Energy> {
  static constexpr const char* name = "Energy";
  static constexpr NamedUnit<Energy> units[] = {{"kWh", kWh}, {"units.J", units::J}};
};
template <>
struct Vocabulary<Angle> {
  static constexpr const char* name = "Angle";
  static constexpr NamedUnit<Angle> units[] = {{"degree", degree}, {"radian", radian}};
};
template <>
struct Vocabulary<Irradiance> {
  static constexpr const char* name = "Irradiance";
  static constexpr NamedUnit<Irradiance> units[] = {{"MJ_per_m2_day", MJ_per_m2_day},
                                                    {"W_per_m2", W_per_m2}};
};

/// Calls `visit` with a null pointer to each quantity, in the order in which classes are made.
template <class Visitor>
void for_each_quantity(const Visitor& visit) {
  const auto one = [&]<class... Q>(const Q*... none) { (visit(none), ...); };
  one(static_cast<const Length*>(nullptr),
      static_cast<const Area*>(nullptr),
      static_cast<const Volume*>(nullptr),
      static_cast<const Time*>(nullptr),
      static_cast<const Velocity*>(nullptr),
      static_cast<const Pressure*>(nullptr),
      static_cast<const Density*>(nullptr),
      static_cast<const DynamicViscosity*>(nullptr),
      static_cast<const KinematicViscosity*>(nullptr),
      static_cast<const Temperature*>(nullptr),
      static_cast<const Flow*>(nullptr),
      static_cast<const RotationalSpeed*>(nullptr),
      static_cast<const Power*>(nullptr),
      static_cast<const Energy*>(nullptr),
      static_cast<const Angle*>(nullptr),
      static_cast<const Irradiance*>(nullptr));
}

}  // namespace hydro::bindings
