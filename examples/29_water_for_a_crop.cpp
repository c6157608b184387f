// How much water does the weather ask for, and potatoes in their seventh week? With less known, and with more?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  Weather day{.latitude = 44.5 * degree,
              .day_of_year = 165,
              .minimum_temperature = 50 * degF,
              .maximum_temperature = 81 * degF};
  const Crop potato = crop("potato");
  const StageLengths stages = stage_lengths(potato, "continental");
  const double coefficient = crop_coefficient(potato, stages, 45);

  const auto print = [&](const char* known) {
    const Velocity grass = reference_evapotranspiration(day).rate;
    std::printf(
        "%-34s %8.2f %12.2f\n", known, grass / inch_per_day, coefficient * grass / inch_per_day);
  };
  std::printf("in a day                           grass, in  potatoes, in\n");
  print("from the day's temperatures");
  day.dew_point = 52 * degF;
  day.wind = 1.4 * m_per_s;
  day.sunshine = 11 * units::h;
  print("with dew point, wind and sunshine");
}
