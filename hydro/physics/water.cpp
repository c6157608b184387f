#include "hydro/physics/water.hpp"

#include "hydro/quantities/range.hpp"

#include <array>
#include <cmath>

namespace hydro {
namespace {

constexpr Range<Temperature> accepted_temperature{0, 100, degC};
constexpr Range<Density> accepted_density{900, 1100, kg_per_m3};
constexpr Range<KinematicViscosity> accepted_viscosity{0.01, 100, mm2_per_s};

void require_liquid(const Temperature& temperature) {
  Examination examination;
  examination.within("temperature", temperature, accepted_temperature);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

}  // namespace

Density density_of_water(const Temperature& temperature) {
  require_liquid(temperature);
  const double t = temperature / degC;
  const double above =
      999.83952 +
      t * (16.945176 +
           t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return above / (1 + 16.879850e-3 * t) * kg_per_m3;
}

DynamicViscosity viscosity_of_water(const Temperature& temperature) {
  require_liquid(temperature);
  const double T = si(temperature) / 300;
  constexpr double micro = 1e-6;
  return DynamicViscosity::from_value(micro *
                                      (280.68 * std::pow(T, -1.9) + 511.45 * std::pow(T, -7.7) +
                                       61.131 * std::pow(T, -19.6) + 0.45903 * std::pow(T, -40.0)));
}

Pressure vapour_pressure_of_water(const Temperature& temperature) {
  require_liquid(temperature);
  constexpr double critical_temperature = 647.096;  // K
  const double T = si(temperature);
  const double s = 1 - T / critical_temperature;
  const double logarithm =
      critical_temperature / T *
      (-7.85951783 * s + 1.84408259 * std::pow(s, 1.5) - 11.7866497 * std::pow(s, 3) +
       22.6807411 * std::pow(s, 3.5) - 15.9618719 * std::pow(s, 4) + 1.80122502 * std::pow(s, 7.5));
  constexpr double critical_pressure = 22.064;  // MPa
  return critical_pressure * std::exp(logarithm) * MPa;
}

WaterProperties properties(const Water& water) {
  if (auto found = problems(water); !found.empty()) throw InvalidInput(std::move(found));
  const Temperature temperature = water.temperature.value_or(20 * degC);
  const Density density = water.density.value_or(density_of_water(temperature));
  return {.density = density,
          .kinematic_viscosity =
              water.kinematic_viscosity.value_or(viscosity_of_water(temperature) / density),
          .vapour_pressure = vapour_pressure_of_water(temperature)};
}

std::vector<Problem> problems(const Water& water) {
  Examination examination;
  examination.within("temperature", water.temperature, accepted_temperature);
  examination.within("density", water.density, accepted_density);
  examination.within("kinematic_viscosity", water.kinematic_viscosity, accepted_viscosity);
  return examination.take();
}

}  // namespace hydro
