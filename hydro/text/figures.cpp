#include "hydro/text/figures.hpp"

#include <cmath>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double half_of_last_digit = 0.05;  ///< of flows and velocities, in shown units

/// Without the sign of what is printed as nothing.
std::string rounded(double value, int digits) {
  std::string text = fmt::format("{:.{}f}", value, digits);
  const bool is_nothing = text.find_first_of("123456789") == std::string::npos;
  if (is_nothing && text.front() == '-') text.erase(0, 1);
  return text;
}

}  // namespace

std::string percent(double share) {
  constexpr double rounding = 1e-4;  // a millionth below rated is rated (check.hpp)
  return fmt::format("{:.0f} %", std::floor(100 * share + rounding));
}

std::string percent_past(double share) {
  return 100 * share < 0.5 ? "<1 %" : fmt::format("{:.0f} %", 100 * share);
}

std::string Figures::pressure(const Pressure& value) const {
  return rounded(value / units_.pressure, system_ == UnitSystem::us ? 1 : 0);
}

std::string Figures::pressure_with_unit(const Pressure& value) const {
  return pressure(value) + " " + units_.pressure.symbol;
}

std::string Figures::limit(const Pressure& value) const {
  std::string text = pressure(value);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text + " " + units_.pressure.symbol;
}

const Unit<Flow>& Figures::flow_unit(const Flow& rated) const {
  return rated / units_.flow < 1 ? units_.small_flow : units_.flow;
}

std::string Figures::flow_with_unit(const Flow& value) const {
  return rounded(value / units_.flow, 1) + " " + units_.flow.symbol;
}

bool Figures::rounds_to_nothing(const Flow& value) const {
  return std::abs(value / units_.flow) < half_of_last_digit;
}

bool Figures::rounds_to_nothing(const Velocity& value) const {
  return std::abs(value / units_.velocity) < half_of_last_digit;
}

std::string Figures::height(const Length& value) const {
  return rounded(value / units_.length, 1) + " " + units_.length.symbol;
}

Length Figures::as_printed(const Length& value) const {
  return std::round(10 * (value / units_.length)) / 10 * units_.length;
}

std::string Figures::speed(const RotationalSpeed& value) const {
  return fmt::format("{:.0f} {}", value / rpm, rpm.symbol);
}

std::string Figures::power(const Power& value) const {
  return fmt::format("{:.1f} {}", value / units_.power, units_.power.symbol);
}

std::string Figures::bucket_time(const Flow& value) const {
  if (!(value > Flow{})) return "never";
  const double seconds = si(units_.bucket * units_.volume) / si(value);
  if (seconds < 600) return fmt::format("{:.0f} s", seconds);
  if (seconds < 36000) return fmt::format("{:.0f} min", seconds / 60);
  return seconds < 360000 ? fmt::format("{:.0f} h", seconds / 3600) : "days";
}

}  // namespace hydro
